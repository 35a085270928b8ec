//! The planner: whatever the expert of the debrief would do.

use super::habits;
use super::job::{Decision, Finder};
use super::reasoner::{Reasoner, was_made};
use super::seen::Seen;
use crate::reasoning::expert::{Expert, Proposal};
use crate::reasoning::review::{disturbs, is_felt_by_module};
use crate::reasoning::world::Worlds;
use crate::session::setup::Briefing;
use crate::session::step::Step;
use crate::vehicle::error::VehicleError;
use std::sync::Arc;

pub(super) struct Planner {
    reasoner: Reasoner,
    expert: Expert,
}

impl Planner {
    pub(super) fn new(briefing: &Arc<Briefing>, worlds: Worlds) -> Self {
        let expert = Expert::new(Arc::clone(briefing)).with_tests_for(&worlds);
        Self { reasoner: Reasoner::new(worlds), expert }
    }
}

impl Finder for Planner {
    fn intake(&self) -> Vec<Step> {
        habits::intake()
    }

    fn decide(&mut self, seen: Seen<'_>) -> Result<Decision, VehicleError> {
        for entry in self.reasoner.catch_up(seen)? {
            if disturbs(&entry.step) {
                self.expert.vehicle_changed();
            } else if is_felt_by_module(&entry.step) {
                self.expert.memory_changed();
            }
            let made = self.expert.probes().iter().position(|it| *it.showing() == entry.step);
            if let Some(probe) = made {
                self.expert.was_made(probe);
            }
        }
        let valuation = self.expert.value(&self.reasoner.belief)?;
        match valuation.proposal {
            // Where the expert would look a second time at what it has seen, evidence and likelihood
            // disagree, and what speaks loudest decides.
            Proposal::Test(probe) if was_made(&probe, seen.log) => self.reasoner.favourite(seen),
            Proposal::Test(probe) => Ok(Decision::Do(self.reasoner.way_of(&probe, seen)?)),
            Proposal::Repair(remedy) => {
                Ok(self.reasoner.repair(remedy).unwrap_or(Decision::GiveUp))
            }
            Proposal::Close => Ok(Decision::NothingWrong),
        }
    }
}
