//! Names that nothing has, that two things have, or that are of the wrong sort.

use super::kinds::{or_else, with_word};
use crate::faults::FaultKind;
use crate::scenario::problem::Thing;
use crate::wording::catalogue::Words;
use crate::wording::place::fault_kind;
use crate::wording::quoted;

/// What a thing is called, and where its right names stand.
const fn keys_of(thing: Thing) -> (&'static str, &'static str) {
    match thing {
        Thing::Vehicle => ("thing-vehicle", "remedy-name-vehicle"),
        Thing::Route => ("thing-route", "remedy-name-route"),
        Thing::Valve => ("thing-valve", "remedy-name-valve"),
        Thing::PartNumber => ("thing-part-number", "remedy-name-part-number"),
        Thing::Part => ("thing-part", "remedy-name-part"),
        Thing::Connector => ("thing-connector", "remedy-name-connector"),
        Thing::Camshaft => ("thing-camshaft", "remedy-name-camshaft"),
        Thing::Fuse => ("thing-fuse", "remedy-name-fuse"),
        Thing::TestPoint => ("thing-test-point", "remedy-name-test-point"),
        Thing::Node => ("thing-node", "remedy-name-node"),
        Thing::Element => ("thing-element", "remedy-name-element"),
        Thing::Fault => ("thing-fault", "remedy-name-fault"),
        Thing::Entry => ("thing-entry", "remedy-name-entry"),
    }
}

/// A name that nothing has.
pub(super) fn unknown(
    thing: Thing,
    found: &str,
    nearest: Option<&String>,
    words: &Words,
) -> String {
    let (name, remedy) = keys_of(thing);
    let arguments = [("thing", words.say(name, &[]).into()), ("found", quoted::word(found).into())];
    or_else(&words.say("flaw-unknown-name", &arguments), nearest, remedy, words)
}

/// A place that cannot have a fault.
pub(super) fn unknown_place(
    kind: FaultKind,
    found: &str,
    nearest: Option<&String>,
    words: &Words,
) -> String {
    let remedy = match kind {
        FaultKind::OpenCoil
        | FaultKind::PartlyBrokenCoil
        | FaultKind::PoorJoint
        | FaultKind::ShortedTurns
        | FaultKind::StickingSpool
        | FaultKind::BlockedScreen => "remedy-valve-fault",
        FaultKind::CorrodedPin
        | FaultKind::SpreadTerminal
        | FaultKind::LooseContact
        | FaultKind::HotContact => "remedy-pin-fault",
        FaultKind::BrokenWire => "remedy-wire-fault",
        FaultKind::WireToGround | FaultKind::WireToSupply => "remedy-control-wire-fault",
        FaultKind::ChafedFeed => "remedy-feed-wire-fault",
        FaultKind::BlownFuse => "remedy-fuse-fault",
        FaultKind::ResistiveRelay => "remedy-relay-fault",
        FaultKind::LowOil | FaultKind::WornOutOil | FaultKind::FuelInOil | FaultKind::WrongOil => {
            "remedy-sump-fault"
        }
    };
    let arguments =
        [("found", quoted::word(found).into()), ("fault", fault_kind(kind, words).into())];
    or_else(&words.say("flaw-no-such-place", &arguments), nearest, remedy, words)
}

/// A name that is there twice.
pub(super) fn repeated(thing: Thing, name: &str, words: &Words) -> String {
    match thing {
        Thing::Element => with_word("flaw-repeated-element", "name", name, words),
        Thing::Camshaft => with_word("flaw-repeated-camshaft", "name", name, words),
        Thing::Fault => with_word("flaw-repeated-fault", "name", name, words),
        Thing::Entry => with_word("flaw-repeated-entry", "name", name, words),
        _ => {
            let thing = words.say(keys_of(thing).0, &[]);
            let name = quoted::word(name);
            words.say("flaw-repeated", &[("thing", thing.into()), ("name", name.into())])
        }
    }
}
