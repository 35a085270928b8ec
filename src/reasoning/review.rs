//! A finished session seen by the expert, step by step.

use super::belief::{Belief, cost_of, was_refused};
use super::expert::{Expert, Proposal};
use super::probe::{Probe, steps_to};
use super::remedy::Remedy;
use super::world::{Hypothesis, Worlds};
use crate::session::attempt::Entry;
use crate::session::setup::Briefing;
use crate::session::step::{KeyPosition, Step};
use crate::vehicle::error::VehicleError;
use std::collections::BTreeMap;
use std::sync::Arc;

/// Regret below this share of the value of the situation counts as none: near-ties are ties, and
/// the value is itself an upper bound by a short look-ahead.
const TIE_BAND: f64 = 0.03;

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
    pub value: f64,
    /// What the expert would have done there.
    pub proposal: Proposal,
    /// Expected cost of this step and what comes after it, less that of the best; `None` for
    /// steps that are never weighed: duties such as reading codes and checking oil, notes, the
    /// first tests that confirm what would already be repaired, and everything after the first
    /// repair.
    pub regret: Option<f64>,
}

/// The whole session seen by the expert.
#[derive(Debug, Clone)]
pub struct Review {
    /// One for each entry of the log.
    pub steps: Vec<StepReview>,
    /// Expected cost of the whole job at the start.
    pub value_at_start: f64,
    /// Probability of each hypothesis at the end.
    pub at_end: BTreeMap<Hypothesis, f64>,
}

impl Review {
    /// Sum of all regrets.
    #[must_use]
    pub fn total_regret(&self) -> f64 {
        self.steps.iter().filter_map(|step| step.regret).sum()
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
    let mut expert = Expert::new(Arc::clone(briefing)).with_tests_for(&worlds);
    let mut belief = Belief::prior(worlds);
    let mut steps = Vec::with_capacity(log.len());
    let mut valuation = expert.value(&belief)?;
    let value_at_start = valuation.cost;
    let mut repaired = false;
    let mut confirmations = 0;
    for (number, entry) in log.iter().enumerate() {
        let before = belief.by_hypothesis();
        let value = valuation.cost;
        let cost = cost_of(&entry.events, briefing.prices.labour_per_hour);
        let confirms = is_test(&entry.step)
            && !was_refused(entry)
            && matches!(valuation.proposal, Proposal::Repair(_));
        confirmations += u32::from(confirms);
        let is_free = confirms && confirmations <= FREE_CONFIRMATIONS;
        let judged = !was_refused(entry) && !repaired && !is_free && is_weighed(&entry.step);
        let expected_here = probe_of(expert.probes(), &entry.step, briefing, &belief)
            .and_then(|number| valuation.by_probe.get(number).copied());
        let proposal = valuation.proposal.clone();
        let remedy = Remedy::in_step(&entry.step).filter(|_| !was_refused(entry));
        belief.learn(entry)?;
        if disturbs(&entry.step) {
            expert.vehicle_changed();
        } else if is_felt_by_module(&entry.step) {
            expert.memory_changed();
        }
        let next = if repaired { valuation.clone() } else { expert.value(&belief)? };
        let regret = judged.then(|| {
            let spent = match (&remedy, expected_here) {
                // Where a step is a test, what it was worth is an expectation over what it might
                // have shown, so that luck is neither praised nor blamed.
                (None, Some(expected)) => expected,
                // A repair is weighed by its chance before it was done.
                (Some(remedy), _) => cost + rest_after(&before, remedy, cost, value),
                _ => cost + next.cost,
            };
            let regret = (spent - value).max(0.0);
            if regret < TIE_BAND * value { 0.0 } else { regret }
        });
        repaired |= remedy.is_some();
        steps.push(StepReview {
            entry: number,
            before,
            after: belief.by_hypothesis(),
            cost,
            value,
            proposal,
            regret,
        });
        valuation = next;
        progress(number + 1, log.len());
    }
    let at_end = belief.by_hypothesis();
    Ok(Review { steps, value_at_start, at_end })
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

/// Probability that a repair takes something away that is wrong: the fault, or one of several.
#[must_use]
pub fn chance(belief: &BTreeMap<Hypothesis, f64>, remedy: &Remedy) -> f64 {
    belief
        .iter()
        .filter(|(faults, _)| faults.iter().any(|fault| remedy.fixes(fault)))
        .map(|(_, weight)| weight)
        .sum()
}

/// The test that a step is, when the vehicle is ready for it.
fn probe_of(probes: &[Probe], step: &Step, briefing: &Briefing, belief: &Belief) -> Option<usize> {
    let (world, _) = belief.leading(1).first().copied()?;
    let sighted = belief.session(world).vehicle_in_sight();
    probes.iter().position(|probe| {
        probe.showing() == step && steps_to(&probe.need, &briefing.vehicle, sighted).is_empty()
    })
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
