//! A valve with a supply put on it: what is heard.

use super::condition::FittedValve;
use crate::physics::solenoid::Solenoid;
use crate::physics::spool::Spool;
use crate::physics::stroke::{Click, Drive, Stroke, Surroundings, energise};
use crate::units::{Celsius, Millimetres, Newtons, Ohms, Seconds, Volts};

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

/// What sludge that sticks with one newton does to the drag of the oil film, as a factor on top of
/// the clean one: it narrows the gap. Engineering estimate.
const FILM_FACTOR_PER_N: f64 = 2.0;
/// The most that it does: a seized spool does not move anyway. Engineering estimate.
const MOST_FILM_FACTOR: f64 = 12.0;

/// The spool of a fitted valve.
#[must_use]
pub fn spool_of(valve: &FittedValve) -> Spool {
    let film = (FILM_FACTOR_PER_N * valve.stiction_n).clamp(1.0, MOST_FILM_FACTOR);
    Spool { stiction: Newtons(valve.stiction_n), viscosity_multiplier: film, ..Spool::REFERENCE }
}

/// Puts a supply on a valve for a time and takes it off.
#[must_use]
pub fn pulse(
    valve: &FittedValve,
    supply: Volts,
    source: Ohms,
    on_for: Seconds,
    coil: Celsius,
    oil_viscosity_pa_s: f64,
    start: Millimetres,
) -> Pulse {
    let stroke = stroke_of(valve, supply, source, on_for, coil, oil_viscosity_pa_s, start);
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
    valve: &FittedValve,
    supply: Volts,
    source: Ohms,
    on_for: Seconds,
    coil: Celsius,
    oil_viscosity_pa_s: f64,
    start: Millimetres,
) -> Stroke {
    energise(
        &Solenoid::REFERENCE,
        &valve.winding,
        &spool_of(valve),
        Drive { supply, source, on_for },
        Surroundings { coil, oil_viscosity_pa_s, start },
    )
}
