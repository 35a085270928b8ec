//! Near-first: always the test that is nearest to hand.
//!
//! It weighs the evidence like the planner and stops at the same confidence, but asks of a test only
//! what it costs to get to it, never what it could tell.

use super::habits;
use super::job::{Decision, Finder};
use super::reasoner::{Reasoner, tests, was_made};
use super::seen::Seen;
use crate::reasoning::probe::Probe;
use crate::reasoning::world::Worlds;
use crate::session::setup::Briefing;
use crate::session::step::Step;
use crate::vehicle::error::VehicleError;
use std::sync::Arc;

pub(super) struct NearFirst {
    reasoner: Reasoner,
    tests: Vec<Probe>,
}

impl NearFirst {
    pub(super) fn new(briefing: &Arc<Briefing>, worlds: Worlds) -> Self {
        let tests = tests(briefing, &worlds);
        Self { reasoner: Reasoner::new(worlds), tests }
    }
}

impl Finder for NearFirst {
    fn intake(&self) -> Vec<Step> {
        habits::intake()
    }

    fn decide(&mut self, seen: Seen<'_>) -> Result<Decision, VehicleError> {
        self.reasoner.catch_up(seen)?;
        if let Some(settled) = self.reasoner.settled(seen)? {
            return Ok(settled);
        }
        let mut nearest: Option<(f64, &Probe)> = None;
        for test in self.tests.iter().filter(|test| !was_made(test, seen.log)) {
            let mut steps = habits::way_to(&test.need, &seen.briefing.vehicle, seen.sighted);
            steps.extend(test.steps.iter().cloned());
            let cost = self.reasoner.cost(&steps, seen.briefing)?;
            if nearest.is_none_or(|(least, _)| cost < least) {
                nearest = Some((cost, test));
            }
        }
        match nearest {
            Some((_, test)) => Ok(Decision::Do(self.reasoner.way_of(test, seen)?)),
            None => self.reasoner.favourite(seen),
        }
    }
}
