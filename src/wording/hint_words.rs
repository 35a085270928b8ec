//! A hint in words, as much as its grade tells.

use super::amounts::number;
use super::belief_words::{leading, percent};
use super::catalogue::Words;
use super::place::place;
use super::proposal_words::{proposal, whole_money};
use super::step_words;
use crate::reasoning::expert::Proposal;
use crate::reasoning::foresight::Foresight;
use crate::reasoning::hint::{Advice, Area, Duty, Family, Hint, Kind, Question, Why};
use crate::session::setup::Briefing;
use crate::session::step::Section;

/// Outcomes of a test that are told.
const TOLD_OUTCOMES: usize = 3;

/// The hint, a line for each thing that it tells.
#[must_use]
pub fn hint(hint: &Hint, briefing: &Briefing, words: &Words) -> Vec<String> {
    let mut lines = vec![question(&hint.question, words)];
    if let Some(area) = &hint.area {
        lines.push(words.say("hint-area", &[("area", area_name(area, words).into())]));
    }
    if let Some(kind) = hint.kind {
        lines.push(words.say("hint-kind", &[("kind", words.say(kind_key(kind), &[]).into())]));
    }
    if let Some(advice) = &hint.advice {
        lines.extend(self::advice(advice, briefing, words));
    }
    lines
}

fn question(question: &Question, words: &Words) -> String {
    let name = |family: Family| words.say(family_key(family), &[]);
    match question {
        Question::Family(families) => {
            let names: Vec<String> = families.iter().map(|family| name(*family)).collect();
            words.say("hint-family", &[("families", words.one_of(&names).into())])
        }
        Question::Which(family) => words.say("hint-which", &[("family", name(*family).into())]),
        Question::Confirm(family) => words.say("hint-confirm", &[("family", name(*family).into())]),
        Question::Mend => words.say("hint-mend", &[]),
        Question::Duty(duty) => words.say(question_key(*duty), &[]),
    }
}

fn advice(advice: &Advice, briefing: &Briefing, words: &Words) -> Vec<String> {
    let steps: Vec<String> = advice.steps.iter().map(step_words::line).collect();
    let mut lines = Vec::new();
    if !steps.is_empty() {
        let steps = steps.join(&words.say("what-if-then", &[]));
        lines.push(words.say("hint-step", &[("steps", steps.into())]));
    }
    match &advice.why {
        Why::Test(foresight) => lines.extend(why_test(foresight, briefing, words)),
        Why::Repair { remedy, chance } => lines.push(words.say(
            "hint-why-repair",
            &[
                ("repair", proposal(&Proposal::Repair(remedy.clone()), words).into()),
                ("chance", percent(*chance, words).into()),
            ],
        )),
        Why::Duty(duty) => lines.push(words.say(duty_key(*duty), &[])),
    }
    lines
}

fn why_test(foresight: &Foresight, briefing: &Briefing, words: &Words) -> Vec<String> {
    let mut lines = vec![words.say(
        "hint-why-test",
        &[
            ("cost", whole_money(foresight.cost, briefing, words).into()),
            ("bits", number(foresight.bits, 2, words).into()),
            ("open", number(foresight.uncertain, 2, words).into()),
        ],
    )];
    lines.extend(foresight.outcomes.iter().take(TOLD_OUTCOMES).map(|outcome| {
        words.say(
            "hint-why-outcome",
            &[
                ("chance", percent(outcome.chance, words).into()),
                ("belief", leading(&outcome.after, words).into()),
            ],
        )
    }));
    lines
}

fn area_name(area: &Area, words: &Words) -> String {
    let key = match area {
        Area::Valve(valve) => {
            return words.say("hint-area-valve", &[("valve", place(valve, words).into())]);
        }
        Area::Supply => "hint-area-supply",
        Area::Oil => "hint-area-oil",
        Area::Memory => "hint-area-memory",
        Area::Road => "hint-area-road",
        Area::Paper => "hint-area-paper",
        Area::WhatIsOff => "hint-area-off",
    };
    words.say(key, &[])
}

const fn family_key(family: Family) -> &'static str {
    match family {
        Family::Oil => "family-oil",
        Family::Winding => "family-winding",
        Family::Movement => "family-movement",
        Family::Wiring => "family-wiring",
        Family::Supply => "family-supply",
        Family::Nothing => "family-nothing",
    }
}

const fn kind_key(kind: Kind) -> &'static str {
    match kind {
        Kind::Eyes => "hint-kind-eyes",
        Kind::Voltage => "hint-kind-voltage",
        Kind::LoadedVoltage => "hint-kind-loaded-voltage",
        Kind::Resistance => "hint-kind-resistance",
        Kind::Current => "hint-kind-current",
        Kind::Lamp => "hint-kind-lamp",
        Kind::Capture => "hint-kind-capture",
        Kind::Wiggle => "hint-kind-wiggle",
        Kind::Listening => "hint-kind-listening",
        Kind::Dipstick => "hint-kind-dipstick",
        Kind::OilPressure => "hint-kind-oil-pressure",
        Kind::Reading => "hint-kind-reading",
        Kind::Road => "hint-kind-road",
        Kind::Repair => "hint-kind-repair",
        Kind::PuttingBack => "hint-kind-putting-back",
        Kind::Paper => "hint-kind-paper",
    }
}

/// What is open where a duty is next.
const fn question_key(duty: Duty) -> &'static str {
    match duty {
        Duty::RecordCodes | Duty::RecordFrame | Duty::Commit | Duty::Approval => {
            "hint-before-repair"
        }
        Duty::PutBack | Duty::Clear | Duty::KeyOnCheck | Duty::RoadTest | Duty::Rescan => {
            "hint-proof"
        }
        Duty::Write(_) | Duty::HandOver | Duty::HandOverDeclined => "hint-finish",
    }
}

/// Why a duty is one.
const fn duty_key(duty: Duty) -> &'static str {
    match duty {
        Duty::RecordCodes => "duty-record-codes",
        Duty::RecordFrame => "duty-record-frame",
        Duty::Commit => "duty-commit",
        Duty::Approval => "duty-approval",
        Duty::PutBack => "duty-put-back",
        Duty::Clear => "duty-clear",
        Duty::KeyOnCheck => "duty-key-on-check",
        Duty::RoadTest => "duty-road-test",
        Duty::Rescan => "duty-rescan",
        Duty::Write(Section::Concern) => "duty-write-concern",
        Duty::Write(Section::Cause) => "duty-write-cause",
        Duty::Write(Section::Correction) => "duty-write-correction",
        Duty::HandOver => "duty-hand-over",
        Duty::HandOverDeclined => "duty-hand-over-declined",
    }
}
