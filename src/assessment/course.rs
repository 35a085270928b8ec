//! How belief moved over a session: the suspects that mattered, step by step.

use crate::reasoning::review::Review;
use crate::reasoning::world::Hypothesis;
use std::collections::BTreeMap;

/// Suspects that are followed at most, the truth among them.
pub const MOST_SUSPECTS: usize = 4;
/// A suspect that never reaches this chance is one of many.
const WORTH_FOLLOWING: f64 = 0.15;

/// The course of belief.
#[derive(Debug, Clone, PartialEq)]
pub struct Course {
    /// The suspects that mattered, in the order in which they were likeliest at their height, the truth first.
    pub suspects: Vec<Followed>,
    /// The chance of all others together, before the first step and after each.
    pub others: Vec<f64>,
    /// For each step whether it is shown to have cost more than the best.
    pub is_dearer: Vec<bool>,
}

/// One suspect over the session.
#[derive(Debug, Clone, PartialEq)]
pub struct Followed {
    /// Which; none is "nothing wrong".
    pub hypothesis: Hypothesis,
    /// Whether it was so.
    pub is_truth: bool,
    /// Its chance, 0 to 1, before the first step and after each.
    pub chances: Vec<f64>,
}

/// The course of belief in a review, with what was really wrong.
#[must_use]
pub fn course(review: &Review, truth: &Hypothesis) -> Course {
    let beliefs: Vec<&BTreeMap<Hypothesis, f64>> = review
        .steps
        .first()
        .map(|step| &step.before)
        .into_iter()
        .chain(review.steps.iter().map(|step| &step.after))
        .collect();
    let mut heights: BTreeMap<&Hypothesis, f64> = BTreeMap::new();
    for belief in &beliefs {
        for (hypothesis, chance) in *belief {
            let height = heights.entry(hypothesis).or_insert(0.0);
            *height = height.max(*chance);
        }
    }
    let mut order: Vec<(&Hypothesis, f64)> = heights
        .into_iter()
        .filter(|(hypothesis, height)| *height >= WORTH_FOLLOWING || *hypothesis == truth)
        .collect();
    order.sort_by(|a, b| {
        (b.0 == truth).cmp(&(a.0 == truth)).then(b.1.total_cmp(&a.1)).then(a.0.cmp(b.0))
    });
    order.truncate(MOST_SUSPECTS);
    let suspects: Vec<Followed> = order
        .into_iter()
        .map(|(hypothesis, _)| Followed {
            hypothesis: hypothesis.clone(),
            is_truth: hypothesis == truth,
            chances: beliefs
                .iter()
                .map(|belief| belief.get(hypothesis).copied().unwrap_or(0.0))
                .collect(),
        })
        .collect();
    let others = (0..beliefs.len())
        .map(|place| 1.0 - suspects.iter().map(|it| it.chances[place]).sum::<f64>())
        .map(|rest| rest.clamp(0.0, 1.0))
        .collect();
    let is_dearer = review
        .steps
        .iter()
        .map(|step| step.regret.is_some_and(|regret| regret.lower > 0.0))
        .collect();
    Course { suspects, others, is_dearer }
}
