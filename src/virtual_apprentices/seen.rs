//! What an apprentice has before the eyes.

use crate::session::attempt::{Entry, Session, Sighted};
use crate::session::setup::Briefing;
use crate::session::step::Step;
use crate::vehicle::error::VehicleError;
use std::sync::Arc;

/// Everything that an apprentice may go by. It holds no session, so that nothing hidden can be asked
/// of it.
#[derive(Debug, Clone, Copy)]
pub struct Seen<'a> {
    /// What everybody may know.
    pub briefing: &'a Arc<Briefing>,
    /// Every step so far with what followed.
    pub log: &'a [Entry],
    /// What anyone standing beside the vehicle sees: what is off, and the key.
    pub sighted: Sighted<'a>,
}

impl<'a> Seen<'a> {
    /// What a session shows to who works on it.
    #[must_use]
    pub fn of(session: &'a Session) -> Self {
        Self {
            briefing: session.briefing(),
            log: session.log(),
            sighted: session.vehicle_in_sight(),
        }
    }
}

/// Somebody who works on a case by a fixed habit.
pub trait VirtualApprentice {
    /// The next step.
    ///
    /// # Errors
    /// [`VehicleError`] when a vehicle that the apprentice imagines cannot be simulated.
    fn next(&mut self, seen: Seen<'_>) -> Result<Step, VehicleError>;
}
