//! What would have followed from other steps, in truth. It opens the hidden state, so it is there for
//! finished sessions alone.

use super::attempt::{Entry, Session};
use super::step::Step;
use crate::vehicle::error::VehicleError;
use thiserror::Error;

/// Why a moment cannot be gone back to.
#[derive(Debug, Clone, PartialEq, Error)]
pub enum NoMoment {
    /// The vehicle has not been handed back.
    #[error("going back to a moment: the session is not finished after {steps} steps")]
    Unfinished {
        /// Steps taken so far.
        steps: usize,
    },
    /// The session has no such step.
    #[error("going back to a moment: there is no step {asked}, only 1 to {steps}")]
    NoSuchStep {
        /// Which was asked for, from 1.
        asked: usize,
        /// How many there are.
        steps: usize,
    },
    /// The vehicle could not be simulated.
    #[error("going back to a moment: the vehicle cannot be simulated")]
    Vehicle(#[from] VehicleError),
}

/// Whether a session has a moment before the step of this number, from 1.
///
/// # Errors
/// [`NoMoment`] when the session is not finished or has no such step.
pub fn has_moment(finished: &Session, number: usize) -> Result<(), NoMoment> {
    let steps = finished.log().len();
    if finished.ending().is_none() {
        return Err(NoMoment::Unfinished { steps });
    }
    if number == 0 || number > steps {
        return Err(NoMoment::NoSuchStep { asked: number, steps });
    }
    Ok(())
}

/// A finished session as it stood before the step of this number, from 1. `begun` is the same case at its
/// beginning.
///
/// # Errors
/// [`NoMoment`] when the session is not finished or has no such step.
pub fn before_step(finished: &Session, begun: Session, number: usize) -> Result<Session, NoMoment> {
    has_moment(finished, number)?;
    let mut session = begun;
    for entry in &finished.log()[..number - 1] {
        session.take(&entry.step)?;
    }
    Ok(session)
}

impl Session {
    /// What would follow from steps, one after the other, without taking them.
    ///
    /// # Errors
    /// [`VehicleError`] when the wiring cannot be solved.
    pub fn would_follow(&self, steps: &[Step]) -> Result<Vec<Entry>, VehicleError> {
        let mut copy = self.fork();
        steps
            .iter()
            .map(|step| Ok(Entry { step: step.clone(), events: copy.take_unlogged(step)? }))
            .collect()
    }
}
