//! What is known of a scenario, for other programs; described in `docs/json-output.md`.

use super::{Draws, Earned, Facts};
use crate::trial::table::Mean;
use serde_json::{Value, json};

/// What the weights say.
#[must_use]
pub fn draws(draws: &Draws) -> Value {
    json!({ "shares": draws.shares, "bits": draws.bits })
}

/// What the worlds tell.
#[must_use]
pub fn facts(facts: &Facts) -> Value {
    let guess = facts.guess.as_ref().map(|guess| {
        json!({
            "diagnosis": guess.diagnosis,
            "repair": guess.remedy,
            "chance": guess.chance,
            "cost": guess.cost,
        })
    });
    json!({
        "never-noticed": facts.telling.never_noticed,
        "hypotheses": facts.telling.discernment.hypotheses,
        "tests": facts.telling.discernment.tests,
        "pairs": facts.telling.discernment.pairs,
        "clusters": facts.telling.discernment.clusters(),
        "value-at-least": facts.value.lower,
        "value": facts.value.upper,
        "guess": guess,
    })
}

/// What apprentices and the guess earn.
#[must_use]
pub fn earned(earned: &Earned, cases: u64) -> Value {
    let mean = |mean: Mean| json!({ "mean": mean.value, "error": mean.error, "of": mean.of });
    let policies = earned.table.lines.iter().map(|line| {
        json!({
            "policy": line.policy.word(),
            "marks": line.marks.map(mean),
            "cost": mean(line.cost),
            "steps": mean(line.steps),
            "right": line.right,
        })
    });
    json!({
        "cases": cases,
        "policies": policies.collect::<Vec<_>>(),
        "guess": earned.guess.map(mean),
    })
}
