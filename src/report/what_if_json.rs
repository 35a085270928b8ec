//! What else could have been done at a moment, as JSON; described in `docs/json-output.md`.

use super::json::{belief, proposal, rounded};
use crate::reasoning::expert::Proposal;
use crate::reasoning::foresight::Foresight;
use crate::reasoning::plan::budget::Bounds;
use crate::reasoning::review::Regret;
use crate::reasoning::what_if::{Alternative, Choices};
use crate::reasoning::world::Hypothesis;
use crate::session::attempt::Entry;
use crate::session::event::Event;
use crate::session::step::Step;
use serde_json::{Value, json};
use std::collections::BTreeMap;

/// Where things stood before a step, numbered from 1.
#[must_use]
pub fn moment(
    number: usize,
    step: Option<&Step>,
    known: &BTreeMap<Hypothesis, f64>,
    (value, best): (Bounds, &Proposal),
) -> Value {
    json!({
        "moment": {
            "entry": number,
            "step": step,
            "belief": belief(known),
            "value": rounded(value.upper),
            "value-at-least": rounded(value.lower),
            "best": proposal(best),
        },
    })
}

/// One alternative, with what would have followed from it in truth.
#[must_use]
pub fn alternative(alternative: &Alternative, truth: &[Entry]) -> Value {
    let mut object = json!({
        "steps": alternative.steps,
        "repeats": alternative.is_repeat,
        "in-truth": shown(truth),
    });
    add(&mut object, &foreseen(&alternative.foresight));
    add(&mut object, &compared(alternative.total, alternative.regret));
    json!({ "alternative": object })
}

/// Everything that could have come next, an object each, with what tests would have shown in truth.
#[must_use]
pub fn choices(choices: &Choices, truth: &dyn Fn(&[Step]) -> Option<Vec<Entry>>) -> Vec<Value> {
    choices
        .ranked
        .iter()
        .map(|ranked| {
            let mut object = json!({ "what": proposal(&ranked.proposal), "steps": ranked.steps });
            if let Some(foresight) = &ranked.foresight {
                add(&mut object, &foreseen(foresight));
                object["in-truth"] = json!(truth(&ranked.steps).as_deref().map(shown));
            }
            add(&mut object, &compared(Some(ranked.total), Some(ranked.regret)));
            json!({ "choice": object })
        })
        .collect()
}

/// What followed from the last of some steps.
fn shown(truth: &[Entry]) -> &[Event] {
    truth.last().map_or(&[], |entry| &entry.events)
}

fn foreseen(foresight: &Foresight) -> Value {
    let outcomes: Vec<Value> = foresight
        .outcomes
        .iter()
        .map(|outcome| {
            json!({
                "chance": rounded(outcome.chance),
                "events": outcome.events,
                "belief": belief(&outcome.after),
            })
        })
        .collect();
    json!({
        "cost": rounded(foresight.cost),
        "bits": rounded(foresight.bits),
        "bits-open": rounded(foresight.uncertain),
        "outcomes": outcomes,
    })
}

fn compared(total: Option<Bounds>, regret: Option<Regret>) -> Value {
    json!({
        "total": total.map(|total| rounded(total.upper)),
        "total-at-least": total.map(|total| rounded(total.lower)),
        "regret": regret.map(|regret| rounded(regret.lower)),
        "regret-at-most": regret.map(|regret| rounded(regret.upper)),
        "regret-told": regret.map(|regret| !regret.is_wide),
    })
}

/// Puts the fields of one object into another.
fn add(object: &mut Value, more: &Value) {
    for (name, value) in more.as_object().into_iter().flatten() {
        object[name] = value.clone();
    }
}
