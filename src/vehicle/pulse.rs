//! A valve with a supply put on it: what is heard.

use super::condition::FittedValve;
use crate::physics::actuator::Actuator;
use crate::physics::stroke::{Click, Drive, Stroke, Surroundings, energise};
use crate::units::{Millimetres, Newtons};

/// What came of a pulse.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Pulse {
    /// Sound when the current came on.
    pub on: Click,
    /// Sound when it went off.
    pub off: Click,
    /// Where the spool is at last [mm].
    pub rest: Millimetres,
    /// The fuse of the lead blew and nothing else happened.
    pub fuse_blew: bool,
}

impl Pulse {
    /// Nothing moved and nothing was heard.
    pub const NONE: Self =
        Self { on: Click::None, off: Click::None, rest: Millimetres(0.0), fuse_blew: false };
}

/// Puts a supply on a valve for a time and takes it off.
#[must_use]
pub fn pulse(
    actuator: &Actuator,
    valve: &FittedValve,
    drive: Drive,
    surroundings: Surroundings,
) -> Pulse {
    let stroke = stroke_of(actuator, valve, drive, surroundings);
    Pulse {
        on: Click::of(stroke.engaged.as_ref()),
        off: Click::of(stroke.returned.as_ref()),
        rest: stroke.rest_position,
        fuse_blew: false,
    }
}

/// The stroke of a fitted valve with a supply put on it for a time and taken off.
#[must_use]
pub fn stroke_of(
    actuator: &Actuator,
    valve: &FittedValve,
    drive: Drive,
    surroundings: Surroundings,
) -> Stroke {
    energise(
        &actuator.solenoid,
        &valve.winding,
        &actuator.spool.gummed(Newtons(valve.stiction_n)),
        drive,
        surroundings,
    )
}
