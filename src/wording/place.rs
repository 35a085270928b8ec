//! Names of places, parts and faults, and which places a step can name.

use super::catalogue::Words;
use crate::faults::{FaultKind, FaultName};
use crate::session::setup::Briefing;
use crate::session::step::ENGINE_BAY;
use crate::vehicle::spec::{HarnessElement, Id, PartKind};
use std::collections::BTreeSet;

/// What kind of place a step asks for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum PlaceKind {
    /// A part that comes off with tools.
    Part,
    /// A connector.
    Connector,
    /// The place of a valve.
    Valve,
    /// A point that a probe can touch.
    TestPoint,
    /// Anything that the eye can examine.
    InView,
    /// A wire or a contact.
    Mendable,
    /// What a hand can wiggle: connectors, contacts and the wires that end at them.
    Wiggled,
    /// A wire that a current clamp fits around.
    Wire,
    /// A fuse or a relay.
    Replaceable,
    /// A road for a test drive.
    Route,
    /// The number of a part.
    PartNumber,
    /// A place where a fault of a named kind can sit.
    FaultPlace,
}

impl PlaceKind {
    /// Every kind, in a fixed order.
    pub const ALL: [Self; 12] = [
        Self::Part,
        Self::Connector,
        Self::Valve,
        Self::TestPoint,
        Self::InView,
        Self::Mendable,
        Self::Wiggled,
        Self::Wire,
        Self::Replaceable,
        Self::Route,
        Self::PartNumber,
        Self::FaultPlace,
    ];

    /// What the kind is called.
    #[must_use]
    pub fn name(self, words: &Words) -> String {
        let key = match self {
            Self::Part => "kind-part",
            Self::Connector => "kind-connector",
            Self::Valve => "kind-valve",
            Self::TestPoint => "kind-test-point",
            Self::InView => "kind-in-view",
            Self::Mendable => "kind-mendable",
            Self::Wiggled => "kind-wiggled",
            Self::Wire => "kind-wire",
            Self::Replaceable => "kind-replaceable",
            Self::Route => "kind-route",
            Self::PartNumber => "kind-part-number",
            Self::FaultPlace => "kind-fault-place",
        };
        words.say(key, &[])
    }

    /// The places of this kind, in the order of their names. They depend on the vehicle alone,
    /// so that what a step offers never hints at the fault.
    #[must_use]
    pub fn places(self, briefing: &Briefing) -> Vec<Id> {
        let vehicle = &briefing.vehicle;
        let parts = |connectors: bool| {
            vehicle
                .parts
                .iter()
                .filter(move |part| (part.kind == PartKind::Connector) == connectors)
                .map(|part| &part.id)
        };
        let elements = |wanted: fn(&HarnessElement) -> bool| {
            vehicle.harness.elements.iter().filter(move |e| wanted(e)).map(HarnessElement::id)
        };
        let found: BTreeSet<Id> = match self {
            Self::Part => parts(false).cloned().collect(),
            Self::Connector => parts(true).cloned().collect(),
            Self::Valve => vehicle.valves.iter().map(|valve| valve.id.clone()).collect(),
            Self::TestPoint => vehicle.test_points.iter().map(|point| point.id.clone()).collect(),
            Self::InView => parts(false)
                .chain(parts(true))
                .chain(elements(is_in_view))
                .cloned()
                .chain([Id::from(ENGINE_BAY)])
                .collect(),
            Self::Mendable => elements(is_mendable).cloned().collect(),
            Self::Wiggled => parts(true)
                .chain(elements(is_mendable))
                .filter(|place| !vehicle.pins_at(place).is_empty())
                .cloned()
                .collect(),
            Self::Wire => elements(|element| {
                matches!(element, HarnessElement::Wire { .. } | HarnessElement::Cable { .. })
            })
            .cloned()
            .collect(),
            Self::Replaceable => elements(is_replaceable).cloned().collect(),
            Self::Route => briefing.routes.keys().cloned().collect(),
            Self::PartNumber => {
                let makers = vehicle.valve_parts.iter().map(|part| &part.part_number);
                makers.chain(briefing.shelf.others.keys()).cloned().collect()
            }
            Self::FaultPlace => {
                crate::faults::places(vehicle).into_iter().map(|fault| fault.place).collect()
            }
        };
        found.into_iter().collect()
    }
}

/// Wires, contacts and boxes that lie open; windings and electronics do not.
const fn is_in_view(element: &HarnessElement) -> bool {
    matches!(
        element,
        HarnessElement::Battery { .. }
            | HarnessElement::Alternator { .. }
            | HarnessElement::Starter { .. }
            | HarnessElement::Wire { .. }
            | HarnessElement::Cable { .. }
            | HarnessElement::Fuse { .. }
            | HarnessElement::RelayContact { .. }
            | HarnessElement::Pin { .. }
    )
}

const fn is_mendable(element: &HarnessElement) -> bool {
    matches!(
        element,
        HarnessElement::Wire { .. } | HarnessElement::Cable { .. } | HarnessElement::Pin { .. }
    )
}

const fn is_replaceable(element: &HarnessElement) -> bool {
    matches!(element, HarnessElement::Fuse { .. } | HarnessElement::RelayContact { .. })
}

/// The name of a place: its message, or its own words where there is none.
#[must_use]
pub fn place(id: &Id, words: &Words) -> String {
    words.find(&format!("place-{id}"), &[]).unwrap_or_else(|| id.as_str().replace('-', " "))
}

/// The names of several places in a row.
#[must_use]
pub fn places(ids: &[Id], words: &Words) -> String {
    let names: Vec<String> = ids.iter().map(|id| place(id, words)).collect();
    words.all_of(&names)
}

/// The name of a kind of fault.
#[must_use]
pub fn fault_kind(kind: FaultKind, words: &Words) -> String {
    let key = match kind {
        FaultKind::OpenCoil => "fault-open-coil",
        FaultKind::PartlyBrokenCoil => "fault-partly-broken-coil",
        FaultKind::PoorJoint => "fault-poor-joint",
        FaultKind::ShortedTurns => "fault-shorted-turns",
        FaultKind::StickingSpool => "fault-sticking-spool",
        FaultKind::BlockedScreen => "fault-blocked-screen",
        FaultKind::CorrodedPin => "fault-corroded-pin",
        FaultKind::SpreadTerminal => "fault-spread-terminal",
        FaultKind::LooseContact => "fault-loose-contact",
        FaultKind::HotContact => "fault-hot-contact",
        FaultKind::BrokenWire => "fault-broken-wire",
        FaultKind::WireToGround => "fault-wire-to-ground",
        FaultKind::WireToSupply => "fault-wire-to-supply",
        FaultKind::ChafedFeed => "fault-chafed-feed",
        FaultKind::BlownFuse => "fault-blown-fuse",
        FaultKind::ResistiveRelay => "fault-resistive-relay",
        FaultKind::LowOil => "fault-low-oil",
        FaultKind::WornOutOil => "fault-worn-out-oil",
        FaultKind::FuelInOil => "fault-fuel-in-oil",
        FaultKind::WrongOil => "fault-wrong-oil",
    };
    words.say(key, &[])
}

/// A fault with its place.
#[must_use]
pub fn fault(name: &FaultName, words: &Words) -> String {
    let (kind, place) = (fault_kind(name.kind, words), place(&name.place, words));
    words.say("fault-at", &[("kind", kind.into()), ("place", place.into())])
}

/// Faults that come together, or that nothing is wrong.
#[must_use]
pub fn diagnoses(names: &[FaultName], words: &Words) -> String {
    if names.is_empty() {
        return diagnosis(None, words);
    }
    let names: Vec<String> = names.iter().map(|name| fault(name, words)).collect();
    words.all_of(&names)
}

/// A diagnosis, which may be that nothing is wrong.
#[must_use]
pub fn diagnosis(name: Option<&FaultName>, words: &Words) -> String {
    name.map_or_else(|| words.say("fault-none", &[]), |name| fault(name, words))
}
