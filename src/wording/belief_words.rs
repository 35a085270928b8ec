//! What is believed, in words: the likeliest suspects with their chances.

use super::amounts::number;
use super::catalogue::Words;
use super::place::diagnoses;
use crate::reasoning::world::Hypothesis;
use std::collections::BTreeMap;

/// Suspects that are named; the rest together are left out.
const NAMED_SUSPECTS: usize = 2;
/// Chance from which a suspect is worth naming.
const WORTH_NAMING: f64 = 0.05;

/// The likeliest suspects with their chances.
#[must_use]
pub fn leading(belief: &BTreeMap<Hypothesis, f64>, words: &Words) -> String {
    let mut order: Vec<(&Hypothesis, f64)> =
        belief.iter().map(|(faults, chance)| (faults, *chance)).collect();
    order.sort_by(|a, b| b.1.total_cmp(&a.1));
    let named: Vec<String> = order
        .into_iter()
        .take(NAMED_SUSPECTS)
        .filter(|(_, chance)| *chance >= WORTH_NAMING)
        .map(|(faults, chance)| {
            words.say(
                "belief-one",
                &[
                    ("fault", diagnoses(faults, words).into()),
                    ("chance", percent(chance, words).into()),
                ],
            )
        })
        .collect();
    if named.is_empty() {
        words.say("belief-open", &[])
    } else {
        named.join(&words.say("list-comma", &[]))
    }
}

/// A chance in whole per cent.
#[must_use]
pub fn percent(chance: f64, words: &Words) -> String {
    number(100.0 * chance, 0, words)
}
