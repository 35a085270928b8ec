//! A finished session seen by the expert, step by step.

use super::belief::{cost_of, was_refused};
use super::expert::Proposal;
use super::foresight::bits_of;
use super::onlooker::Onlooker;
use super::plan::budget::Bounds;
use super::remedy::Remedy;
use super::world::{Hypothesis, Worlds};
use crate::session::attempt::Entry;
use crate::session::setup::Briefing;
use crate::session::step::{KeyPosition, Step};
use crate::vehicle::error::VehicleError;
use std::collections::BTreeMap;
use std::sync::Arc;

/// Regret shown below this share of the value of the situation counts as none: near-ties are ties,
/// and worlds, groups and prices are themselves not known better.
const TIE_BAND: f64 = 0.03;

/// Bounds on a regret that are further apart than this share of the value tell nothing, unless all
/// of it is regret.
const WIDE: f64 = 0.25;

/// Tests that confirm what the expert would already repair, and cost no regret: the trade wants a
/// direct test of a part before it is touched, and one more check is not redundant.
const FREE_CONFIRMATIONS: u32 = 2;

/// What the expert says of one step.
#[derive(Debug, Clone)]
pub struct StepReview {
    /// Which entry of the log.
    pub entry: usize,
    /// Probability of each hypothesis before the step.
    pub before: BTreeMap<Hypothesis, f64>,
    /// Probability of each hypothesis after it.
    pub after: BTreeMap<Hypothesis, f64>,
    /// What the step cost [units of the currency].
    pub cost: f64,
    /// Expected cost of the rest of the job before the step.
    pub value: Bounds,
    /// What the expert would have done there.
    pub proposal: Proposal,
    /// What the step was expected to tell \[bit\]; `None` for repairs and for steps that are never weighed.
    pub told: Option<f64>,
    /// Expected cost of this step and what comes after it, less that of the best; `None` for
    /// steps that are never weighed: duties such as reading codes and checking oil, notes, the
    /// first tests that confirm what would already be repaired, and everything after the first
    /// repair.
    pub regret: Option<Regret>,
}

/// By how much a step was dearer, in expectation, than the best: at least and at most.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Regret {
    /// Shown, zero or more: what marks rest on.
    pub lower: f64,
    /// Not excluded.
    pub upper: f64,
    /// Whether the two are too far apart to say anything: nothing is shown, and much not excluded.
    pub is_wide: bool,
}

impl Regret {
    /// Between the bounds of a step and those of the best that could be done. The step is itself
    /// something that could be done, so the best costs no more than it may cost at most.
    #[must_use]
    pub fn between(step: Bounds, best: Bounds) -> Self {
        let least_known = best.upper.min(step.upper);
        let shown = (step.lower - least_known).max(0.0);
        let lower = if shown < TIE_BAND * least_known { 0.0 } else { shown };
        let upper = (step.upper - best.lower).max(lower);
        let is_wide = lower <= 0.0 && upper > WIDE * least_known;
        Self { lower, upper, is_wide }
    }
}

/// The whole session seen by the expert.
#[derive(Debug, Clone)]
pub struct Review {
    /// One for each entry of the log.
    pub steps: Vec<StepReview>,
    /// Expected cost of the whole job at the start.
    pub value_at_start: Bounds,
    /// Probability of each hypothesis at the end.
    pub at_end: BTreeMap<Hypothesis, f64>,
}

impl Review {
    /// Sum of all regrets that are shown.
    #[must_use]
    pub fn total_regret(&self) -> f64 {
        self.steps.iter().filter_map(|step| step.regret).map(|regret| regret.lower).sum()
    }

    /// Sum of all that is not excluded.
    #[must_use]
    pub fn total_regret_at_most(&self) -> f64 {
        self.steps.iter().filter_map(|step| step.regret).map(|regret| regret.upper).sum()
    }
}

/// Reviews a log. `progress` hears how many of how many entries are done.
///
/// # Errors
/// [`VehicleError`] when a world's wiring cannot be solved.
pub fn review(
    briefing: &Arc<Briefing>,
    worlds: Worlds,
    log: &[Entry],
    progress: &dyn Fn(usize, usize),
) -> Result<Review, VehicleError> {
    let mut onlooker = Onlooker::new(briefing, worlds);
    let mut steps = Vec::with_capacity(log.len());
    let mut valuation = onlooker.value()?;
    let value_at_start = valuation.cost;
    let mut repaired = false;
    let mut confirmations = 0;
    for (number, entry) in log.iter().enumerate() {
        let before = onlooker.belief.by_hypothesis();
        let weighted = onlooker.belief.leading(usize::MAX);
        let value = valuation.cost;
        let cost = cost_of(&entry.events, briefing.prices.labour_per_hour);
        let confirms = !was_refused(entry)
            && match valuation.proposal {
                Proposal::Repair(_) => is_test(&entry.step),
                // Nobody says that nothing is wrong without having driven.
                Proposal::Close => matches!(entry.step, Step::Drive { .. }),
                Proposal::Test(_) => false,
            };
        confirmations += u32::from(confirms);
        let is_free = confirms && confirmations <= FREE_CONFIRMATIONS;
        let judged = !was_refused(entry) && !repaired && !is_free && is_weighed(&entry.step);
        let test = onlooker.test_of(&entry.step);
        let proposal = valuation.proposal.clone();
        let remedy = Remedy::in_step(&entry.step).filter(|_| !was_refused(entry));
        let foretold = onlooker.learn(entry)?;
        let (expert, belief) = (&mut onlooker.expert, &onlooker.belief);
        let is_told = test.is_none_or(|test| !expert.has_made(test));
        let told = (judged && remedy.is_none())
            .then(|| if is_told { bits_of(belief, &weighted, &foretold) } else { 0.0 });
        // What a step was worth is an expectation over what it might have shown in every world, so
        // that luck is neither praised nor blamed; a repair is weighed by its chance.
        let expected = match &remedy {
            _ if !judged => None,
            Some(remedy) => {
                let rest = |value| cost + rest_after(&before, remedy, cost, value);
                let plain = bounds(rest(value.lower), rest(value.upper));
                // The planner knows repairs that take away all that is wrong, or nothing of it.
                let planned =
                    if is_whole(&before, remedy) { expert.weigh_repair(remedy) } else { None };
                Some(planned.unwrap_or(plain))
            }
            None => expert.weigh_done(belief, cost, is_told.then_some(&foretold)),
        };
        onlooker.move_on(entry, test);
        let next = if repaired { valuation.clone() } else { onlooker.value()? };
        let then = bounds(cost + next.cost.lower, cost + next.cost.upper);
        let regret = judged.then(|| Regret::between(expected.unwrap_or(then), value));
        repaired |= remedy.is_some();
        steps.push(StepReview {
            entry: number,
            before,
            after: onlooker.belief.by_hypothesis(),
            cost,
            value,
            proposal,
            told,
            regret,
        });
        valuation = next;
        progress(number + 1, log.len());
    }
    let at_end = onlooker.belief.by_hypothesis();
    Ok(Review { steps, value_at_start, at_end })
}

const fn bounds(lower: f64, upper: f64) -> Bounds {
    Bounds { lower, upper }
}

/// Expected cost of what is left to do after a repair that cost something. Where it takes away one
/// of several faults, what it cost was part of the job.
fn rest_after(belief: &BTreeMap<Hypothesis, f64>, remedy: &Remedy, cost: f64, value: f64) -> f64 {
    belief
        .iter()
        .map(|(faults, chance)| {
            let fixed = faults.iter().filter(|fault| remedy.fixes(fault)).count();
            chance
                * match fixed {
                    0 => value,
                    all if all == faults.len() => 0.0,
                    _ => (value - cost).max(0.0),
                }
        })
        .sum()
}

/// Whether a repair takes away all that is wrong or nothing of it, whatever is wrong.
fn is_whole(belief: &BTreeMap<Hypothesis, f64>, remedy: &Remedy) -> bool {
    belief.keys().all(|faults| {
        let fixed = faults.iter().filter(|fault| remedy.fixes(fault)).count();
        fixed == 0 || fixed == faults.len()
    })
}

/// Probability that a repair takes something away that is wrong: the fault, or one of several.
#[must_use]
pub fn chance(belief: &BTreeMap<Hypothesis, f64>, remedy: &Remedy) -> f64 {
    belief
        .iter()
        .filter(|(faults, _)| faults.iter().any(|fault| remedy.fixes(fault)))
        .map(|(_, weight)| weight)
        .sum()
}

/// Steps that show something of a part or a circuit.
const fn is_test(step: &Step) -> bool {
    matches!(
        step,
        Step::Measure { .. }
            | Step::MeasureFromFront { .. }
            | Step::Wiggle { .. }
            | Step::TestLamp { .. }
            | Step::Clamp { .. }
            | Step::Scope { .. }
            | Step::Power { .. }
            | Step::Command { .. }
            | Step::Look { .. }
    )
}

/// Steps whose choice is weighed. Reading the sheet, asking, codes, freeze frame, oil and looking
/// before touching are duties of the trade and never regretted; notes cost nothing.
const fn is_weighed(step: &Step) -> bool {
    matches!(
        step,
        Step::Remove { .. }
            | Step::Refit { .. }
            | Step::Unplug { .. }
            | Step::Plug { .. }
            | Step::Measure { .. }
            | Step::MeasureFromFront { .. }
            | Step::Wiggle { .. }
            | Step::TestLamp { .. }
            | Step::Clamp { .. }
            | Step::Scope { .. }
            | Step::FitGauge
            | Step::ReadGauge { .. }
            | Step::RemoveGauge
            | Step::Power { .. }
            | Step::Command { .. }
            | Step::Look { .. }
            | Step::Drive { .. }
            | Step::Fit { .. }
            | Step::Clean { .. }
            | Step::Mend { .. }
            | Step::Replace { .. }
            | Step::TopUpOil
            | Step::ChangeOil { .. }
    )
}

/// Whether the module may have noticed a step that leaves what instruments show as it was.
#[must_use]
pub const fn is_felt_by_module(step: &Step) -> bool {
    matches!(
        step,
        Step::Key { .. }
            | Step::Plug { .. }
            | Step::Unplug { .. }
            | Step::Command { .. }
            | Step::Scope { .. }
    )
}

/// Whether what tests would show has to be worked out anew after a step.
#[must_use]
pub const fn disturbs(step: &Step) -> bool {
    matches!(
        step,
        Step::Fit { .. }
            | Step::Clean { .. }
            | Step::Mend { .. }
            | Step::Replace { .. }
            | Step::MeasureFromFront { .. }
            | Step::TopUpOil
            | Step::ChangeOil { .. }
            | Step::ClearCodes
            | Step::Drive { .. }
            | Step::Key { position: KeyPosition::Start }
    )
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn prop_bounds_of_a_regret_are_ordered_and_never_negative(
            step in (0.0..500.0_f64, 0.0..200.0_f64),
            best in (0.0..500.0_f64, 0.0..200.0_f64),
        ) {
            let step = bounds(step.0, step.0 + step.1);
            let best = bounds(best.0, best.0 + best.1);
            let regret = Regret::between(step, best);
            prop_assert!(0.0 <= regret.lower && regret.lower <= regret.upper);
            prop_assert!(!(regret.is_wide && regret.lower > 0.0));
        }
    }
}
