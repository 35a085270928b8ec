//! Events and debrief as JSON, one object a line; described in `docs/json-output.md`.

use crate::assessment::debrief::Debrief;
use crate::assessment::lessons::Lesson;
use crate::assessment::mark::{About, Critical, Mark, ProofPart, Remark};
use crate::assessment::rubric::Rubric;
use crate::reasoning::expert::Proposal;
use crate::reasoning::hint::{Area, Hint, Question, Why};
use crate::reasoning::remedy::Remedy;
use crate::reasoning::review::Redundant;
use crate::reasoning::world::Hypothesis;
use crate::session::attempt::Till;
use crate::session::event::Event;
use crate::session::step::Step;
use crate::units::Money;
use serde_json::{Value, json};
use std::collections::BTreeMap;

/// Version of the format; a change that a reader could trip over raises it.
pub const VERSION: u32 = 1;

/// The first line before what follows from a session: in which version it is, and of what.
#[must_use]
pub fn header(scenario: &str, session: Option<&str>) -> Value {
    header_about("events", scenario, session)
}

/// The same before something else that is told of a session.
#[must_use]
pub fn header_about(what: &str, scenario: &str, session: Option<&str>) -> Value {
    let mut header = header_of(what);
    header["scenario"] = json!(scenario);
    header["session"] = json!(session);
    header
}

/// The first line of every output: what follows, and in which version.
#[must_use]
pub fn header_of(what: &str) -> Value {
    json!({
        "format": format!("faultwright {what}"),
        "version": VERSION,
        "program": env!("CARGO_PKG_VERSION"),
    })
}

/// One event of an entry, numbered from 1.
#[must_use]
pub fn event(entry: usize, step: &Step, event: &Event) -> Value {
    json!({ "entry": entry, "step": step, "event": event })
}

/// What a hint told, by the entry in which it was asked for.
#[must_use]
pub fn hint(entry: usize, hint: &Hint) -> Value {
    let mut object = json!({ "grade": hint.grade, "question": question(&hint.question) });
    if let Some(area) = &hint.area {
        object["area"] = match area {
            Area::Valve(valve) => json!({ "valve": valve }),
            Area::Supply => json!("supply"),
            Area::Oil => json!("oil"),
            Area::Memory => json!("memory"),
            Area::Road => json!("road"),
            Area::Paper => json!("paper"),
            Area::WhatIsOff => json!("what-is-off"),
        };
    }
    if let Some(kind) = hint.kind {
        object["kind"] = json!(kind.word());
    }
    if let Some(advice) = &hint.advice {
        object["steps"] = json!(advice.steps);
        object["why"] = match &advice.why {
            Why::Test(foresight) => json!({
                "cost": rounded(foresight.cost),
                "bits": rounded(foresight.bits),
                "bits-open": rounded(foresight.uncertain),
            }),
            Why::Repair { remedy, chance } => {
                json!({ "repair": repair(remedy), "chance": rounded(*chance) })
            }
            Why::Duty(duty) => json!({ "duty": duty.word() }),
        };
    }
    json!({ "entry": entry, "hint": object })
}

fn question(question: &Question) -> Value {
    match question {
        Question::Family(families) => {
            json!({ "family": families.iter().map(|family| family.word()).collect::<Vec<_>>() })
        }
        Question::Which(family) => json!({ "which": family.word() }),
        Question::Confirm(family) => json!({ "confirm": family.word() }),
        Question::Mend => json!("mend"),
        Question::Duty(duty) => json!({ "duty": duty.word() }),
    }
}

/// What is in the till after an entry.
#[must_use]
pub fn till(entry: usize, till: Till, labour_per_hour: Money) -> Value {
    json!({
        "entry": entry,
        "till": {
            "minutes": till.minutes,
            "money": till.money,
            "total": till.total(labour_per_hour),
        },
    })
}

/// The judgement of a session.
#[must_use]
pub fn debrief(debrief: &Debrief, rubric: &Rubric) -> Value {
    json!({
        "debrief": {
            "total": rounded(debrief.total),
            "pass-percent": rubric.pass_percent,
            "passed": debrief.passed,
            "critical": debrief.critical.iter().map(|critical| match critical {
                Critical::Unsafe => "unsafe",
                Critical::Unproved => "unproved",
                Critical::NotRepaired => "not-repaired",
            }).collect::<Vec<_>>(),
            "lessons": debrief.lessons.iter().map(lesson).collect::<Vec<_>>(),
            "ending": debrief.ending,
            "faults": debrief.faults,
            "came-back": debrief.comes_back(),
            "aftermath": debrief.aftermath,
            "value-at-start": rounded(debrief.review.value_at_start.upper),
            "value-at-start-at-least": rounded(debrief.review.value_at_start.lower),
            "total-regret": rounded(debrief.review.total_regret()),
            "total-regret-at-most": rounded(debrief.review.total_regret_at_most()),
            "hints": debrief.hints.iter().map(|hint| json!({
                "entry": hint.entry + 1,
                "grade": hint.grade,
                "points": hint.points,
            })).collect::<Vec<_>>(),
            "marks": debrief.marks.iter().map(|m| mark(m, rubric)).collect::<Vec<_>>(),
            "steps": debrief.review.steps.iter().map(|step| json!({
                "entry": step.entry + 1,
                "cost": rounded(step.cost),
                "value": rounded(step.value.upper),
                "value-at-least": rounded(step.value.lower),
                "regret": step.regret.map(|regret| rounded(regret.lower)),
                "regret-at-most": step.regret.map(|regret| rounded(regret.upper)),
                "regret-told": step.regret.map(|regret| !regret.is_wide),
                "bits": step.told.map(rounded),
                "redundant": step.redundant.map(|it| redundant(it == Redundant::Repeated)),
                "best": proposal(&step.proposal),
                "belief-before": belief(&step.before),
                "belief": belief(&step.after),
            })).collect::<Vec<_>>(),
        },
    })
}

fn mark(mark: &Mark, rubric: &Rubric) -> Value {
    let most = 100.0 * rubric.weights.share_of(mark.category);
    json!({
        "for": mark.category,
        "points": rounded(mark.share * most),
        "of": rounded(most),
        "remarks": mark.remarks.iter().map(remark).collect::<Vec<_>>(),
    })
}

fn lesson(lesson: &Lesson) -> Value {
    let entries: Vec<usize> = lesson.entries.iter().map(|entry| entry + 1).collect();
    json!({
        "about": lesson.kind.word(),
        "entries": entries,
        "points": rounded(lesson.points),
        "money": rounded(lesson.money),
        "critical": lesson.is_critical,
    })
}

fn remark(remark: &Remark) -> Value {
    let about = match &remark.about {
        About::Regret { least, most, best } => {
            let (least, most) = (rounded(*least), rounded(*most));
            json!({ "regret": least, "regret-at-most": most, "best": proposal(best) })
        }
        About::Premature { chance, price, best } => json!({
            "premature-at": rounded(*chance),
            "regret": price.map(|(least, _)| rounded(least)),
            "regret-at-most": price.map(|(_, most)| rounded(most)),
            "best": proposal(best),
        }),
        About::Redundant { is_repeated, cost } => {
            json!({ "redundant": redundant(*is_repeated), "cost": rounded(*cost) })
        }
        About::NotTold { count, most } => json!({ "not-told": count, "at-most": rounded(*most) }),
        About::NoRegret => json!("no-regret"),
        About::RemovedAgain(part) => json!({ "removed-again": part }),
        About::NoDetour => json!("no-detour"),
        About::Prediction { met } => json!({ "prediction-met": met }),
        About::OtherQuantity => json!("other-quantity"),
        About::Sign { met } => json!({ "sign-met": met }),
        About::FewPredictions(count) => json!({ "few-predictions": count }),
        About::Breach(breach) => json!({ "breach": breach }),
        About::SoundReadings => json!("sound-readings"),
        About::Confidence { distance } => json!({ "confidence-distance": rounded(*distance) }),
        About::NoConfidence => json!("no-confidence"),
        About::Repair { chance } => json!({ "repair-chance": rounded(*chance) }),
        About::WornPart { fault } => json!({ "worn-part": fault }),
        About::Part { fault, is_mended } => json!({ "fault": fault, "mended": is_mended }),
        About::Declined { fault } => json!({ "declined": fault }),
        About::CameBack { came_back } => json!({ "came-back": came_back }),
        About::Proof(part) => json!({ "proof": match part {
            ProofPart::Recorded => "recorded",
            ProofPart::Cleared => "cleared",
            ProofPart::KeyOnCheck => "key-on-check",
            ProofPart::RoadTest => "road-test",
            ProofPart::Rescan => "rescan",
            ProofPart::Declined => "declined",
        } }),
        About::ClosedUnproved => json!("closed-unproved"),
        About::Unrelated { code, reported } => json!({ "unrelated": code, "reported": reported }),
        About::NoBreach => json!("no-breach"),
        About::LeftOff(part) => json!({ "left-off": part }),
        About::Written(section) => json!({ "written": section }),
    };
    json!({ "entry": remark.entry.map(|entry| entry + 1), "good": remark.good, "about": about })
}

const fn redundant(is_repeated: bool) -> &'static str {
    if is_repeated { "repeated" } else { "same-in-every-world" }
}

pub(super) fn proposal(proposal: &Proposal) -> Value {
    match proposal {
        Proposal::Test(probe) => json!({ "test": probe.showing() }),
        Proposal::Repair(remedy) => repair(remedy),
        Proposal::Close => json!("close"),
    }
}

fn repair(remedy: &Remedy) -> Value {
    match remedy {
        Remedy::Renew(valve) => json!({ "renew": valve }),
        Remedy::Clean(valve) => json!({ "clean": valve }),
        Remedy::Mend(element) => json!({ "mend": element }),
        Remedy::MendAndFuse(element) => json!({ "mend-and-fuse": element }),
        Remedy::Replace(element) => json!({ "replace": element }),
        Remedy::TopUp => json!("top-up-oil"),
        Remedy::ChangeOil => json!("change-oil"),
        Remedy::Together(parts) => {
            json!({ "together": parts.iter().map(repair).collect::<Vec<_>>() })
        }
    }
}

/// Faults that come together are one hypothesis: the first is named as `fault`, the others as `also`.
pub(super) fn belief(belief: &BTreeMap<Hypothesis, f64>) -> Value {
    belief
        .iter()
        .filter(|(_, chance)| **chance >= 0.001)
        .map(|(faults, chance)| {
            let mut one = json!({ "fault": faults.first(), "chance": rounded(*chance) });
            if let [_, also @ ..] = &faults[..]
                && !also.is_empty()
            {
                one["also"] = json!(also);
            }
            one
        })
        .collect()
}

/// Four digits behind the point: more would pretend to more than an expectation holds.
pub(super) fn rounded(value: f64) -> f64 {
    (value * 1e4).round() / 1e4 + 0.0
}
