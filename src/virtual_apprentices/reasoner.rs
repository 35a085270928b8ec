//! Evidence weighed as the expert weighs it: what near-first, information-seeker and planner share.
//!
//! They hold the same belief and stop at the same confidence, so that they differ in nothing but the
//! choice of the next test.

use super::habits;
use super::job::Decision;
use super::seen::Seen;
use crate::instruments::multimeter::Display;
use crate::numerics::whole::to_usize;
use crate::reasoning::belief::{Belief, cost_of, was_refused};
use crate::reasoning::expert::Expert;
use crate::reasoning::probe::Probe;
use crate::reasoning::remedy::Remedy;
use crate::reasoning::world::{Hypothesis, Worlds};
use crate::session::attempt::{Entry, Session};
use crate::session::event::Event;
use crate::session::setup::Briefing;
use crate::session::step::{Bound, Quantity, Step};
use crate::vehicle::error::VehicleError;
use std::collections::BTreeMap;
use std::sync::Arc;

/// Chance on the evidence from which a repair is begun, or nothing is said to be wrong.
const SURE: f64 = 0.9;
/// Least chance that goes on the list of suspects.
const LISTED: f64 = 0.01;
/// Width of a prediction to each side [V, ohm or A], as a share of the value and at least.
const FORETOLD_SHARE: f64 = 0.1;
const FORETOLD_LEAST: f64 = 0.3;

/// A belief that follows the log.
pub(super) struct Reasoner {
    pub(super) belief: Belief,
    learnt: usize,
}

impl Reasoner {
    pub(super) fn new(worlds: Worlds) -> Self {
        Self { belief: Belief::prior(worlds), learnt: 0 }
    }

    /// Learns what was added to the log, and returns it.
    pub(super) fn catch_up<'a>(&mut self, seen: Seen<'a>) -> Result<&'a [Entry], VehicleError> {
        let new = &seen.log[self.learnt..];
        for entry in new {
            self.belief.learn(entry)?;
        }
        self.learnt = seen.log.len();
        Ok(new)
    }

    /// A session that stands for what is most likely there.
    pub(super) fn likeliest(&self) -> Option<&Session> {
        self.belief.leading(1).first().map(|(world, _)| self.belief.session(*world))
    }

    /// Worlds with at least this share of the belief, heaviest first, with the faults that each has
    /// left.
    pub(super) fn leading(&self, share: f64) -> Vec<(usize, f64, Hypothesis)> {
        let leading = self.belief.leading(usize::MAX).into_iter();
        leading
            .filter(|(_, weight)| *weight >= share)
            .map(|(world, weight)| (world, weight, self.belief.faults_left(world).to_vec()))
            .collect()
    }

    /// The steps of a test from here, a reading foretold by what is most likely there.
    pub(super) fn way_of(&self, probe: &Probe, seen: Seen<'_>) -> Result<Vec<Step>, VehicleError> {
        let mut steps = habits::way_to(&probe.need, &seen.briefing.vehicle, seen.sighted);
        let before = steps.len() + probe.shows;
        steps.extend(probe.steps.iter().cloned());
        if let (Step::Measure { .. }, Some(session)) = (probe.showing(), self.likeliest()) {
            let mut imagined = session.fork();
            let mut shown = Vec::new();
            for step in &steps[..=before] {
                shown = imagined.take_unlogged(step)?;
            }
            steps.splice(before..before, foretold(&shown));
        }
        Ok(steps)
    }

    /// What steps would cost from here [units of the currency].
    pub(super) fn cost(&self, steps: &[Step], briefing: &Briefing) -> Result<f64, VehicleError> {
        let Some(session) = self.likeliest() else {
            return Ok(0.0);
        };
        let mut imagined = session.fork();
        let mut cost = 0.0;
        for step in steps {
            cost += cost_of(&imagined.take_unlogged(step)?, briefing.prices.labour_per_hour);
        }
        Ok(cost)
    }

    /// What the evidence settles, if it does: the cheapest repair that is sure enough, or that
    /// nothing is wrong.
    pub(super) fn settled(&self, seen: Seen<'_>) -> Result<Option<Decision>, VehicleError> {
        self.best(seen, SURE)
    }

    /// What the evidence speaks for most, when no test is left.
    pub(super) fn favourite(&self, seen: Seen<'_>) -> Result<Decision, VehicleError> {
        let (chances, nothing) = self.chances(seen.log);
        let most = chances.values().copied().fold(nothing, f64::max);
        Ok(self.best(seen, most)?.unwrap_or(Decision::GiveUp))
    }

    fn best(&self, seen: Seen<'_>, enough: f64) -> Result<Option<Decision>, VehicleError> {
        let (chances, nothing) = self.chances(seen.log);
        if nothing >= enough {
            return Ok(Some(Decision::NothingWrong));
        }
        let mut cheapest: Option<(f64, Remedy)> = None;
        for (remedy, _) in chances.into_iter().filter(|(_, chance)| *chance >= enough) {
            let cost = self.cost(&remedy.steps(seen.briefing, seen.sighted), seen.briefing)?;
            if cheapest.as_ref().is_none_or(|(least, _)| cost < *least) {
                cheapest = Some((cost, remedy));
            }
        }
        Ok(cheapest.and_then(|(_, remedy)| self.repair(remedy)))
    }

    /// A repair with its diagnosis and the confidences that the evidence allows.
    pub(super) fn repair(&self, remedy: Remedy) -> Option<Decision> {
        let by_fault = self.belief.by_fault();
        let (diagnosis, _) = by_fault
            .iter()
            .filter_map(|(fault, chance)| fault.as_ref().map(|fault| (fault, *chance)))
            .filter(|(fault, _)| remedy.fixes(fault))
            .max_by(|a, b| a.1.total_cmp(&b.1))?;
        // Rounded down, so that the sum stays within a hundred.
        let percent = |chance: f64| u8::try_from(to_usize(100.0 * chance)).unwrap_or(100);
        let confidences = by_fault
            .iter()
            .filter(|(_, chance)| **chance >= LISTED)
            .filter_map(|(fault, chance)| Some((fault.clone()?, percent(*chance))))
            .collect();
        Some(Decision::Repair { diagnosis: diagnosis.clone(), confidences, remedy })
    }

    /// The chance of every repair that was not done yet, and that nothing is wrong any more.
    fn chances(&self, log: &[Entry]) -> (BTreeMap<Remedy, f64>, f64) {
        let done: Vec<Remedy> = log
            .iter()
            .filter(|entry| !was_refused(entry))
            .filter_map(|entry| Remedy::in_step(&entry.step))
            .collect();
        let mut left: BTreeMap<Hypothesis, f64> = BTreeMap::new();
        for (_, weight, faults) in self.leading(0.0) {
            *left.entry(faults).or_insert(0.0) += weight;
        }
        let nothing = left.remove(&Vec::new()).unwrap_or(0.0);
        let mut chances = BTreeMap::new();
        for remedy in left.keys().flat_map(|faults| Remedy::of_all(faults)) {
            if done.contains(&remedy) || chances.contains_key(&remedy) {
                continue;
            }
            let fixed = left.iter().filter(|(faults, _)| remedy.fixes_all(faults));
            let chance = fixed.map(|(_, chance)| chance).sum();
            chances.insert(remedy, chance);
        }
        (chances, nothing)
    }
}

/// The prediction that fits what an imagined reading showed.
fn foretold(shown: &[Event]) -> Option<Step> {
    shown.iter().find_map(|event| match event {
        Event::Reading { function, display, tolerance, .. } => {
            let of = Some(Quantity::from(*function));
            Some(match display {
                Display::Value { value, .. } => {
                    let wide = (FORETOLD_SHARE * value.abs()).max(FORETOLD_LEAST) + tolerance;
                    Step::Predict { least: value - wide, most: Bound::Value(value + wide), of }
                }
                Display::OverLimit => Step::Predict { least: 0.0, most: Bound::OverLimit, of },
            })
        }
        _ => None,
    })
}

/// The tests that the expert considers.
pub(super) fn tests(briefing: &Arc<Briefing>, worlds: &Worlds) -> Vec<Probe> {
    Expert::new(Arc::clone(briefing)).with_tests_for(worlds).probes().to_vec()
}

/// Whether a test was made since the last repair: a second time it tells nothing new.
pub(super) fn was_made(probe: &Probe, log: &[Entry]) -> bool {
    log.iter()
        .rev()
        .take_while(|entry| Remedy::in_step(&entry.step).is_none())
        .any(|entry| entry.step == *probe.showing())
}
