//! An expert who looks on: belief, plan and what was tested already follow the log, entry by entry.

use super::belief::{Belief, was_refused};
use super::expert::{Expert, Valuation};
use super::outcome::Aspect;
use super::probe::{Probe, steps_to};
use super::review::{disturbs, is_felt_by_module};
use super::world::Worlds;
use crate::session::attempt::Entry;
use crate::session::setup::Briefing;
use crate::session::step::Step;
use crate::vehicle::error::VehicleError;
use std::sync::Arc;

/// An expert who sees what the apprentice sees.
pub struct Onlooker {
    briefing: Arc<Briefing>,
    pub(super) expert: Expert,
    pub(super) belief: Belief,
    seen: usize,
}

impl Onlooker {
    /// Before the first step.
    #[must_use]
    pub fn new(briefing: &Arc<Briefing>, worlds: Worlds) -> Self {
        let expert = Expert::new(Arc::clone(briefing)).with_tests_for(&worlds);
        let briefing = Arc::clone(briefing);
        Self { briefing, expert, belief: Belief::prior(worlds), seen: 0 }
    }

    /// What everybody may know.
    #[must_use]
    pub const fn briefing(&self) -> &Arc<Briefing> {
        &self.briefing
    }

    /// What is believed.
    #[must_use]
    pub const fn belief(&self) -> &Belief {
        &self.belief
    }

    /// Entries that were seen.
    #[must_use]
    pub const fn seen(&self) -> usize {
        self.seen
    }

    /// The tests that are considered.
    #[must_use]
    pub fn tests(&self) -> &[Probe] {
        self.expert.probes()
    }

    /// The value of where things stand, and what would be done first.
    ///
    /// # Errors
    /// [`VehicleError`] when a world's wiring cannot be solved.
    pub fn value(&mut self) -> Result<Valuation, VehicleError> {
        self.expert.value(&self.belief)
    }

    /// Sees the entries of a log that were not seen yet, up to a number of them.
    ///
    /// # Errors
    /// [`VehicleError`] when a world's wiring cannot be solved.
    pub fn follow(&mut self, log: &[Entry], until: usize) -> Result<(), VehicleError> {
        for entry in log.iter().take(until).skip(self.seen) {
            let test = self.test_of(&entry.step);
            self.learn(entry)?;
            self.move_on(entry, test);
        }
        Ok(())
    }

    /// The test that a step is, when the vehicle is ready for it.
    pub(super) fn test_of(&self, step: &Step) -> Option<usize> {
        let (world, _) = self.belief.leading(1).first().copied()?;
        let sighted = self.belief.session(world).vehicle_in_sight();
        self.expert.probes().iter().position(|probe| {
            probe.showing() == step
                && steps_to(&probe.need, &self.briefing.vehicle, sighted).is_empty()
        })
    }

    /// Learns from an entry; what each world had foretold of it.
    pub(super) fn learn(
        &mut self,
        entry: &Entry,
    ) -> Result<Vec<Option<Vec<Aspect>>>, VehicleError> {
        self.belief.learn(entry)
    }

    /// Forgets what an entry makes out of date, and notes the test that it was.
    pub(super) fn move_on(&mut self, entry: &Entry, test: Option<usize>) {
        if disturbs(&entry.step) {
            self.expert.vehicle_changed();
        } else if is_felt_by_module(&entry.step) {
            self.expert.memory_changed();
        }
        if let Some(test) = test.filter(|_| !was_refused(entry)) {
            self.expert.was_made(test);
        }
        self.seen += 1;
    }
}
