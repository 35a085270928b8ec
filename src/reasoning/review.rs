//! A finished session seen by the expert, step by step.

use super::belief::{changes_vehicle, cost_of, was_refused};
use super::expert::{Proposal, Valuation};
use super::foresight::bits_of;
use super::onlooker::Onlooker;
use super::plan::budget::Bounds;
use super::remedy::Remedy;
use super::world::{Hypothesis, Worlds};
use crate::session::attempt::Entry;
use crate::session::setup::Briefing;
use crate::session::step::Step;
use crate::vehicle::error::VehicleError;
use kinds::{is_only_for_what_it_shows, is_test, is_weighed, serves_a_reading};
use stage::Stage;
use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

mod kinds;
mod stage;

pub use kinds::{disturbs, is_felt_by_module};

/// Regret shown below this share of the value of the situation counts as none: near-ties are ties,
/// and worlds, groups and prices are themselves not known better.
const TIE_BAND: f64 = 0.03;

/// Bounds on a regret that are further apart than this share of the value tell nothing, unless all
/// of it is regret.
const WIDE: f64 = 0.25;

/// Tests that confirm what the expert would already repair, and cost no regret: the trade wants a
/// direct test of a part before it is touched, and one more check is not redundant.
const FREE_CONFIRMATIONS: u32 = 2;

/// Chance that nothing is wrong any more from which a concern that is still there is not explained by
/// what is believed.
const UNEXPLAINED: f64 = 0.5;

/// What the expert says of one step.
#[derive(Debug, Clone)]
pub struct StepReview {
    /// Which entry of the log.
    pub entry: usize,
    /// Probability of each hypothesis before the step.
    pub before: BTreeMap<Hypothesis, f64>,
    /// The same for what no repair has taken away yet: what was still wrong before the step.
    pub left: BTreeMap<Hypothesis, f64>,
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
    /// first tests that confirm what would already be repaired, and the proof of a repair. Where the
    /// proof fails, the search goes on and is weighed again.
    pub regret: Option<Regret>,
    /// Why the step could tell nothing; `None` where it could, or was not there to tell anything.
    pub redundant: Option<Redundant>,
}

/// Why a test could tell nothing.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Redundant {
    /// It shows the same in every world that still counts.
    SameInEveryWorld,
    /// It was made before on the vehicle as it is.
    Repeated,
}

/// By how much a step was dearer, in expectation, than the best: at least and at most.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Regret {
    /// Shown, zero or more: what marks rest on.
    pub lower: f64,
    /// Not excluded.
    pub upper: f64,
    /// Whether the two are too far apart to say anything: nothing is shown, and much not excluded. Such
    /// a step does not count.
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

    /// Of which nothing is known but that it lies below this.
    const fn unknown(upper: f64) -> Self {
        Self { lower: 0.0, upper, is_wide: true }
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
    let valuation = onlooker.value()?;
    let value_at_start = valuation.cost;
    let mut reviewer = Reviewer {
        briefing,
        log,
        onlooker,
        valuation,
        stage: Stage::Searching,
        confirmations: 0,
        taken: BTreeSet::new(),
    };
    let mut steps = Vec::with_capacity(log.len());
    for number in 0..log.len() {
        steps.push(reviewer.step(number)?);
        progress(number + 1, log.len());
    }
    Ok(Review { steps, value_at_start, at_end: reviewer.onlooker.belief.by_hypothesis() })
}

/// What is known while a log is gone through.
struct Reviewer<'a> {
    briefing: &'a Arc<Briefing>,
    log: &'a [Entry],
    onlooker: Onlooker,
    valuation: Valuation,
    stage: Stage,
    confirmations: u32,
    /// Steps taken since the vehicle last changed.
    taken: BTreeSet<String>,
}

impl Reviewer<'_> {
    fn step(&mut self, number: usize) -> Result<StepReview, VehicleError> {
        let entry = &self.log[number];
        let refused = was_refused(entry);
        let searching = self.stage == Stage::Searching;
        let before = self.onlooker.belief.by_hypothesis();
        let left = self.onlooker.belief.by_left();
        let Valuation { cost: value, proposal } = self.valuation.clone();
        let cost = cost_of(&entry.events, self.briefing.prices.labour_per_hour);
        let is_free = searching && !refused && self.confirms(&entry.step, &proposal);
        let judged = searching && !refused && !is_free && is_weighed(&entry.step);
        let weighted = self.onlooker.belief.leading(usize::MAX);
        let test = self.onlooker.test_of(&entry.step);
        let remedy = Remedy::in_step(&entry.step).filter(|_| !refused);
        let unexplained = self.is_unexplained(&left);
        let foretold = self.onlooker.learn(entry)?;
        let (expert, belief) = (&mut self.onlooker.expert, &self.onlooker.belief);
        // What a step was worth is an expectation over what it might have shown in every world, so
        // that luck is neither praised nor blamed; a repair is weighed by its chance.
        let is_repeated = !refused
            && (!self.taken.insert(format!("{:?}", entry.step))
                || test.is_some_and(|test| expert.has_made(test)));
        let told = (judged && remedy.is_none())
            .then(|| if is_repeated { 0.0 } else { bits_of(belief, &weighted, &foretold) });
        let mut redundant = None;
        let expected = match &remedy {
            _ if !judged => None,
            Some(remedy) => {
                let rest = |value| cost + rest_after(&left, remedy, cost, value);
                let plain = bounds(rest(value.lower), rest(value.upper));
                // The planner knows repairs that take away all that is wrong, or nothing of it.
                let planned =
                    if is_whole(&left, remedy) { expert.weigh_repair(remedy) } else { None };
                Some(planned.unwrap_or(plain))
            }
            None => {
                if is_only_for_what_it_shows(&entry.step) && !serves_a_reading(self.log, number) {
                    redundant = if is_repeated {
                        // A loose contact shows itself at the second shake or the third.
                        let shakes = matches!(entry.step, Step::Wiggle { .. });
                        (!shakes).then_some(Redundant::Repeated)
                    } else if expert.tells_apart(belief, &foretold) == Some(false) {
                        Some(Redundant::SameInEveryWorld)
                    } else {
                        None
                    };
                }
                expert.weigh_done(belief, cost, (!is_repeated).then_some(&foretold))
            }
        };
        self.onlooker.move_on(entry, test);
        self.forget(&entry.step);
        let next = self.next(entry)?;
        let then = bounds(cost + next.cost.lower, cost + next.cost.upper);
        let regret = judged.then(|| {
            if unexplained {
                return Regret::unknown(value.upper.max(cost));
            }
            Regret::between(expected.unwrap_or(then), value)
        });
        self.valuation = next;
        Ok(StepReview {
            entry: number,
            before,
            left,
            after: self.onlooker.belief.by_hypothesis(),
            cost,
            value,
            proposal,
            told,
            regret,
            redundant,
        })
    }

    /// Whether a step confirms what the expert would do already, and is one of those that are free.
    fn confirms(&mut self, step: &Step, proposal: &Proposal) -> bool {
        let confirms = match proposal {
            Proposal::Repair(_) => is_test(step),
            // Nobody says that nothing is wrong without having driven.
            Proposal::Close => matches!(step, Step::Drive { .. }),
            Proposal::Test(_) => false,
        };
        self.confirmations += u32::from(confirms);
        confirms && self.confirmations <= FREE_CONFIRMATIONS
    }

    /// Forgets what was taken, where taking it again would be another thing.
    fn forget(&mut self, step: &Step) {
        let alters_instrument =
            matches!(step, Step::ZeroLeads | Step::ZeroClamp | Step::ReplaceMeterFuse);
        let opens = matches!(step, Step::Remove { .. } | Step::Refit { .. });
        if changes_vehicle(step) || opens || alters_instrument {
            self.taken.clear();
        }
    }

    /// The value of the situation after an entry. While a repair is proved nothing is weighed, and it is
    /// not worked out.
    fn next(&mut self, entry: &Entry) -> Result<Valuation, VehicleError> {
        let own = &self.onlooker.belief.known_codes().own;
        let was = self.stage;
        self.stage = was.after(entry, own);
        match (was, self.stage) {
            (Stage::Proving { .. }, Stage::Proving { .. }) => return Ok(self.valuation.clone()),
            (Stage::Proving { .. }, Stage::Searching) => self.confirmations = 0,
            (Stage::Searching, _) => {}
        }
        let mut valuation = self.onlooker.value()?;
        if self.stage == Stage::Searching && self.is_unexplained(&self.onlooker.belief.by_left()) {
            let upper = valuation.cost.upper.max(self.briefing.prices.comeback.as_units());
            valuation.cost = bounds(0.0, upper);
        }
        Ok(valuation)
    }

    /// Whether the concern is still there although nothing that is believed in would leave it there: the
    /// plans are then made for another vehicle than this one, and their bounds hold for none.
    fn is_unexplained(&self, left: &BTreeMap<Hypothesis, f64>) -> bool {
        let nothing = left.get(&Hypothesis::new()).copied().unwrap_or(0.0);
        self.onlooker.belief.was_repaired() && nothing >= UNEXPLAINED
    }
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
