//! Each kind of problem: what is wrong, and what to do.

use super::{form, names, place_in, trouble_words};
use crate::scenario::draw::WINDING_SPREAD;
use crate::scenario::problem::{HarnessNeed, ProblemKind, ValveNeed};
use crate::scenario::schema::LONGEST_NAME;
use crate::vehicle::spec::Id;
use crate::wording::amounts::short_number;
use crate::wording::catalogue::Words;
use crate::wording::{quoted, step_words};

/// Numbers outside this range are written with a power of ten: a hundred zeros help nobody.
const WRITTEN_OUT: core::ops::Range<f64> = 1e-6..1e15;

/// What is wrong, and what to do.
#[expect(clippy::too_many_lines, reason = "one short arm for each kind of problem")]
pub(super) fn said(kind: &ProblemKind, words: &Words) -> String {
    let plain = |key: &str| words.say(key, &[]);
    let one = |key: &str, name: &str, word: &str| with_word(key, name, word, words);
    match kind {
        ProblemKind::Syntax { fault } => form::syntax(*fault, words),
        ProblemKind::TooDeep { most } => words.say("flaw-too-deep", &[("most", (*most).into())]),
        ProblemKind::TooManyValues { most } => {
            words.say("flaw-too-many-values", &[("most", (*most).into())])
        }
        ProblemKind::WrongFormat { found, expected } => words.say(
            "flaw-wrong-format",
            &[("found", quoted::word(found).into()), ("expected", (*expected).into())],
        ),
        ProblemKind::WrongVersion { found, newest } => form::version(found, *newest, words),
        ProblemKind::NewerField { field, since } => {
            words.say("flaw-newer-field", &[("field", (*field).into()), ("since", (*since).into())])
        }
        ProblemKind::UnknownField { found, expected, nearest } => {
            let wrong = one("flaw-unknown-field", "found", found);
            out_of_list(wrong, nearest.as_ref(), expected, words)
        }
        ProblemKind::MissingField { field } => one("flaw-missing-field", "field", field),
        ProblemKind::RepeatedField { field } => one("flaw-repeated-field", "field", field),
        ProblemKind::UnknownVariant { found, expected, nearest } => {
            let wrong = one("problem-unknown-word", "found", found);
            out_of_list(wrong, nearest.as_ref(), expected, words)
        }
        ProblemKind::WrongShape { expected } => form::shape(*expected, words),
        ProblemKind::NumberDoesNotFit => plain("flaw-number-does-not-fit"),
        ProblemKind::NotACode { found } => one("flaw-not-a-code", "found", found),
        ProblemKind::NotFinite { found } => one("flaw-not-finite", "found", found),
        ProblemKind::OutOfRange { found, least, most } => words.say(
            "flaw-out-of-range",
            &[
                ("found", figure(*found).into()),
                ("least", figure(*least).into()),
                ("most", figure(*most).into()),
            ],
        ),
        ProblemKind::WrongOrder { first, second } => words.say(
            "flaw-wrong-order",
            &[("first", figure(*first).into()), ("second", figure(*second).into())],
        ),
        ProblemKind::TooMany { found, most } => words.say(
            "flaw-too-many",
            &[
                ("found", (*found).into()),
                ("most", (*most).into()),
                ("surplus", found.saturating_sub(*most).into()),
            ],
        ),
        ProblemKind::Empty => plain("flaw-empty"),
        ProblemKind::AllWeightsZero => plain("flaw-all-weights-zero"),
        ProblemKind::BadName { found } => words.say(
            "flaw-bad-name",
            &[("found", quoted::word(found).into()), ("most", LONGEST_NAME.into())],
        ),
        ProblemKind::LeavesFolder { found } => one("flaw-leaves-folder", "found", found),
        ProblemKind::UnknownName { thing, found, nearest } => {
            names::unknown(*thing, found, nearest.as_ref(), words)
        }
        ProblemKind::UnknownPlace { kind, found, nearest } => {
            names::unknown_place(*kind, found, nearest.as_ref(), words)
        }
        ProblemKind::Repeated { thing, name } => names::repeated(*thing, name, words),
        ProblemKind::VehicleUnreadable { file, trouble } => words.say(
            "flaw-vehicle-unreadable",
            &[
                ("file", place_in(file, *trouble).into()),
                ("said", trouble_words(*trouble, words).into()),
            ],
        ),
        ProblemKind::NoAnswer { topic } => {
            one("flaw-no-answer", "topic", step_words::customer_topic(*topic))
        }
        ProblemKind::NoPrice { part_number } => one("flaw-no-price", "part", part_number.as_str()),
        ProblemKind::OwnCode { code, valve } => words.say(
            "flaw-own-code",
            &[("code", code.to_string().into()), ("valve", quoted::word(valve.as_str()).into())],
        ),
        ProblemKind::NobodysCode { code } => one("flaw-nobodys-code", "code", &code.to_string()),
        ProblemKind::RepeatedCode { code } => one("flaw-repeated-code", "code", &code.to_string()),
        ProblemKind::SamePlace { place } => one("flaw-same-place", "place", place),
        ProblemKind::SameWinding { part_number } => {
            one("flaw-same-winding", "part", part_number.as_str())
        }
        ProblemKind::DoesNotFit { part_number, valve } => words.say(
            "flaw-does-not-fit",
            &[
                ("part", quoted::word(part_number.as_str()).into()),
                ("valve", quoted::word(valve.as_str()).into()),
            ],
        ),
        ProblemKind::NarrowWindow { part_number } => words.say(
            "flaw-narrow-window",
            &[
                ("part", quoted::word(part_number.as_str()).into()),
                ("spread", short_number(WINDING_SPREAD * 100.0, 1, words).into()),
            ],
        ),
        ProblemKind::NoPartner { valve } => one("flaw-no-partner", "valve", valve.as_str()),
        ProblemKind::UnevenBanks { cylinders } => {
            words.say("flaw-uneven-banks", &[("cylinders", (*cylinders).into())])
        }
        ProblemKind::ValveLacks { valve, what } => one(valve_key(*what), "valve", valve.as_str()),
        ProblemKind::HarnessLacks { what } => plain(harness_key(*what)),
        ProblemKind::HangingNode { node, nearest } => {
            let wrong = one("flaw-hanging-node", "node", node.as_str());
            or_else(&wrong, nearest.as_ref(), "remedy-hanging-node", words)
        }
        ProblemKind::IslandNode { node } => one("flaw-island-node", "node", node.as_str()),
        ProblemKind::SameEnds { node } => one("flaw-same-ends", "node", node.as_str()),
        ProblemKind::BlockersInACircle { parts } => circle(parts, words),
        ProblemKind::NoTorque { part } => one("flaw-no-torque", "part", part.as_str()),
    }
}

/// A message about one word.
pub(super) fn with_word(key: &str, name: &str, word: &str, words: &Words) -> String {
    words.say(key, &[(name, quoted::word(word).into())])
}

/// What is wrong, then the likeliest right name, or else the remedy of a key.
pub(super) fn or_else(
    wrong: &str,
    nearest: Option<&String>,
    remedy: &str,
    words: &Words,
) -> String {
    let remedy = match nearest {
        Some(nearest) => with_word("remedy-nearest", "list", nearest, words),
        None => words.say(remedy, &[]),
    };
    format!("{wrong} {remedy}")
}

/// What is wrong, then the likeliest right word, then those that can stand there.
fn out_of_list(
    wrong: String,
    nearest: Option<&String>,
    expected: &[&'static str],
    words: &Words,
) -> String {
    let mut text = wrong;
    let mut add = |sentence: String| {
        text.push(' ');
        text.push_str(&sentence);
    };
    if let Some(nearest) = nearest {
        add(with_word("remedy-nearest", "list", nearest, words));
    }
    let list: Vec<String> = expected.iter().map(ToString::to_string).collect();
    if list.is_empty() {
        add(words.say("remedy-take-out", &[]));
    } else {
        add(words.say("remedy-allowed", &[("list", quoted::one_of(&list, words).into())]));
    }
    text
}

/// A number as a file writes it, with a point in every language.
fn figure(value: f64) -> String {
    if value == 0.0 || WRITTEN_OUT.contains(&value.abs()) {
        value.to_string()
    } else {
        format!("{value:e}")
    }
}

const fn valve_key(what: ValveNeed) -> &'static str {
    match what {
        ValveNeed::Part => "flaw-valve-no-part",
        ValveNeed::Connector => "flaw-valve-no-connector",
        ValveNeed::Pins => "flaw-valve-no-pins",
        ValveNeed::Coil => "flaw-valve-no-coil",
        ValveNeed::Driver => "flaw-valve-no-driver",
    }
}

const fn harness_key(what: HarnessNeed) -> &'static str {
    match what {
        HarnessNeed::Battery => "flaw-no-battery",
        HarnessNeed::BatteryMinus => "flaw-no-battery-minus",
        HarnessNeed::EngineGround => "flaw-no-engine-ground",
        HarnessNeed::ModuleSupply => "flaw-no-module-supply",
        HarnessNeed::DriverGround => "flaw-no-driver-ground",
    }
}

fn circle(parts: &[Id], words: &Words) -> String {
    let names: Vec<String> = parts.iter().map(|part| quoted::word(part.as_str())).collect();
    let arguments =
        [("count", names.len().into()), ("parts", quoted::all_of(&names, words).into())];
    words.say("flaw-blocked-in-a-circle", &arguments)
}
