//! The guesser: repairs one thing at once, looks at nothing before, and gives up where it did not help.
//!
//! It is none of the habits that a trial compares: it is told what to repair, such as the likeliest of a scenario,
//! and shows what that alone would earn.

use super::job::{Decision, Finder, Job};
use super::seen::{Seen, VirtualApprentice};
use crate::faults::FaultName;
use crate::reasoning::remedy::Remedy;
use crate::session::step::Step;
use crate::vehicle::error::VehicleError;

/// How sure it says it is [%]: it has no reason to be less.
const SURE: u8 = 90;

struct Guesser {
    guess: Option<(FaultName, Remedy)>,
}

/// Somebody who repairs this at once.
#[must_use]
pub fn guesser(diagnosis: FaultName, remedy: Remedy) -> Box<dyn VirtualApprentice> {
    Box::new(Job::new(Guesser { guess: Some((diagnosis, remedy)) }))
}

impl Finder for Guesser {
    fn intake(&self) -> Vec<Step> {
        vec![Step::ReadJobSheet]
    }

    fn decide(&mut self, _: Seen<'_>) -> Result<Decision, VehicleError> {
        Ok(self.guess.take().map_or(Decision::GiveUp, |(diagnosis, remedy)| Decision::Repair {
            confidences: vec![(diagnosis.clone(), SURE)],
            diagnosis,
            remedy,
        }))
    }
}
