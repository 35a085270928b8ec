//! The myopic information-seeker: the test that tells most for its cost, one step ahead.
//!
//! What a test tells is how much less uncertain the fault is expected to be after it, in bits: the
//! entropy of the hypotheses now less its expectation over what the test can show. It never asks what
//! comes after, so it may pay for knowledge that changes no repair.

use super::habits;
use super::job::{Decision, Finder};
use super::reasoner::{Reasoner, tests, was_made};
use super::seen::Seen;
use crate::numerics::elementary::ln;
use crate::reasoning::likelihood::differ;
use crate::reasoning::outcome::{Aspect, aspects};
use crate::reasoning::probe::Probe;
use crate::reasoning::world::{Hypothesis, Worlds};
use crate::session::setup::Briefing;
use crate::session::step::Step;
use crate::vehicle::error::VehicleError;
use std::collections::BTreeMap;
use std::sync::Arc;

/// Share of the belief below which a world is left out of expectations.
const LEAST_SHARE: f64 = 1e-3;
/// Information below which no test is worth making \[bit\].
const LEAST_BITS: f64 = 0.01;

pub(super) struct InformationSeeker {
    reasoner: Reasoner,
    tests: Vec<Probe>,
}

/// Weight of each hypothesis.
type Weights<'a> = BTreeMap<&'a Hypothesis, f64>;

impl InformationSeeker {
    pub(super) fn new(briefing: &Arc<Briefing>, worlds: Worlds) -> Self {
        let tests = tests(briefing, &worlds);
        Self { reasoner: Reasoner::new(worlds), tests }
    }

    /// What a test is expected to tell from here \[bit\].
    fn information(
        &self,
        test: &Probe,
        weighted: &[(usize, f64, Hypothesis)],
        seen: Seen<'_>,
    ) -> Result<f64, VehicleError> {
        let mut way = habits::way_to(&test.need, &seen.briefing.vehicle, seen.sighted);
        way.extend(test.steps[..=test.shows].iter().cloned());
        let known = self.reasoner.belief.known_codes();
        let mut parts: Vec<(Vec<Aspect>, Weights<'_>)> = Vec::new();
        let mut whole = Weights::new();
        for (world, weight, faults) in weighted {
            let mut imagined = self.reasoner.belief.session(*world).fork();
            let mut events = Vec::new();
            for step in &way {
                events = imagined.take_unlogged(step)?;
            }
            let shown = aspects(&events);
            *whole.entry(faults).or_insert(0.0) += weight;
            match parts.iter_mut().find(|(first, _)| !differ(first, &shown, known)) {
                Some((_, part)) => *part.entry(faults).or_insert(0.0) += weight,
                None => parts.push((shown, Weights::from([(faults, *weight)]))),
            }
        }
        let after: f64 = parts.iter().map(|(_, part)| scattered(part)).sum();
        Ok((scattered(&whole) - after) / whole.values().sum::<f64>())
    }
}

/// Entropy of a part of a belief times its weight \[bit\].
fn scattered(part: &Weights<'_>) -> f64 {
    let total: f64 = part.values().sum();
    part.values()
        .filter(|weight| **weight > 0.0)
        .map(|weight| -weight * ln(weight / total) / core::f64::consts::LN_2)
        .sum()
}

impl Finder for InformationSeeker {
    fn intake(&self) -> Vec<Step> {
        habits::intake()
    }

    fn decide(&mut self, seen: Seen<'_>) -> Result<Decision, VehicleError> {
        self.reasoner.catch_up(seen)?;
        if let Some(settled) = self.reasoner.settled(seen)? {
            return Ok(settled);
        }
        let weighted = self.reasoner.leading(LEAST_SHARE);
        let mut best: Option<(f64, &Probe)> = None;
        for test in self.tests.iter().filter(|test| !was_made(test, seen.log)) {
            let bits = self.information(test, &weighted, seen)?;
            if bits < LEAST_BITS {
                continue;
            }
            let mut steps = habits::way_to(&test.need, &seen.briefing.vehicle, seen.sighted);
            steps.extend(test.steps.iter().cloned());
            let cost = self.reasoner.cost(&steps, seen.briefing)?;
            // A test that costs nothing is made at once.
            let worth = if cost > 0.0 { bits / cost } else { f64::INFINITY };
            if best.is_none_or(|(most, _)| worth > most) {
                best = Some((worth, test));
            }
        }
        match best {
            Some((_, test)) => Ok(Decision::Do(self.reasoner.way_of(test, seen)?)),
            None => self.reasoner.favourite(seen),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::faults::{FaultKind, FaultName};
    use crate::vehicle::spec::Id;

    /// Four equal causes are two bits, two are one, one is none; times the weight of the part.
    #[test]
    fn closed_form_entropy_of_equal_causes_is_the_logarithm_of_their_number() {
        let faults = ["a", "b", "c", "d"]
            .map(|place| vec![FaultName { kind: FaultKind::OpenCoil, place: Id::from(place) }]);
        for (count, bits) in [(1_usize, 0.0), (2, 1.0), (4, 2.0)] {
            let part: Weights<'_> =
                faults.iter().take(count).map(|faults| (faults, 0.5 / count as f64)).collect();
            assert!((scattered(&part) - 0.5 * bits).abs() < 1e-12, "{count}");
        }
    }
}
