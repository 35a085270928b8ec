//! The solenoid and the spool of one kind of control valve: the one set of parameters for every
//! time scale on which a valve is looked at.
//!
//! Used by: [`stroke`](super::stroke) for a click or a current trace, and
//! [`spool_follow`](super::spool_follow) for a running engine.

use super::range::OutOfRange;
use super::solenoid::Solenoid;
use super::spool::Spool;
use serde::{Deserialize, Serialize};

/// Magnetics and mechanics of a kind of valve. Its winding comes with the part, and what gums its
/// spool up with the fault.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize)]
#[cfg_attr(test, derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields, default)]
pub struct Actuator {
    /// Magnetic circuit.
    pub solenoid: Solenoid,
    /// Spool, spring and stops, clean.
    pub spool: Spool,
}

impl Actuator {
    /// The reference valve (engineering estimate).
    pub const REFERENCE: Self = Self { solenoid: Solenoid::REFERENCE, spool: Spool::REFERENCE };

    /// Refuses an actuator that cannot be.
    ///
    /// # Errors
    /// [`OutOfRange`] with the first field outside the range of its description.
    pub fn check(&self) -> Result<(), OutOfRange> {
        self.solenoid.check()?;
        self.spool.check()
    }
}
