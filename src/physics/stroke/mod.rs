//! One stroke of a valve: a supply is put on its coil for a while and taken off again.
//!
//! Purpose: what can be heard, seen with a current probe and felt when a valve is energised.
//! Model: the flux of [`Solenoid`] driven through [`Winding`] and the source's resistance, and the
//! full motion of [`Spool`] with mass, drag, stiction and stops without rebound. After switch-off the
//! current freewheels through the same resistance without a diode's drop.
//! Limits: coil temperature, oil and supply stay as they are during the stroke.
//!
//! ```
//! use faultwright::physics::{coil::Winding, solenoid::Solenoid, spool::Spool};
//! use faultwright::physics::stroke::{Click, Drive, Surroundings, energise};
//! use faultwright::units::{Celsius, Millimetres, Ohms, Seconds, Volts};
//!
//! let stroke = energise(
//!     &Solenoid::REFERENCE,
//!     &Winding::REFERENCE,
//!     &Spool::REFERENCE,
//!     Drive { supply: Volts(12.6), source: Ohms(0.52), on_for: Seconds(0.12) },
//!     Surroundings { coil: Celsius(20.0), oil_viscosity_pa_s: 0.135, start: Millimetres(0.0) },
//! );
//! assert_eq!(Click::of(stroke.engaged.as_ref()), Click::Clear);
//! assert!(stroke.has_returned());
//! ```

mod click;
mod motion;
mod recorder;
#[cfg(test)]
mod tests;

pub use click::{CLEAR, Click, DULL, Impact};

use super::coil::Winding;
use super::solenoid::{FluxLoop, Solenoid};
use super::spool::{Motion, Spool};
use crate::units::{Amperes, Celsius, Millimetres, Ohms, Seconds, Volts};
use motion::{Machine, State, Until};
use recorder::Recorder;

/// The step of the integration [s]. Chosen by halving: against the independent solution every time,
/// current and energy of the reference cases is then settled to better than a thousandth.
const STEP_S: f64 = 50e-6;

/// Longest time for which a supply stays on [s]; long before, everything rests.
const LONGEST_ON_S: f64 = 10.0;

/// How long the spool is watched after switch-off [s]. A cold healthy one needs 0.16 s; one that is
/// still on its way after this does not come back in a time that anyone waits for.
const WATCHED_S: f64 = 1.0;

/// A supply put on a coil.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Drive {
    /// Voltage of the supply [V], -60 to 60; negative is reversed.
    pub supply: Volts,
    /// Resistance of everything in series with the valve's pins [ohm], 0 to 1e12.
    pub source: Ohms,
    /// How long it stays on [s], 0 to 10; longer is taken as 10.
    pub on_for: Seconds,
}

/// What the valve finds itself in.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Surroundings {
    /// Temperature of the coil [°C].
    pub coil: Celsius,
    /// Dynamic viscosity of the oil in the spool's gap [Pa s], 0 or more.
    pub oil_viscosity_pa_s: f64,
    /// Where the spool is at switch-on [mm], 0 to the stroke; not 0 if it stuck there before.
    pub start: Millimetres,
}

/// The current's first peak, and the trough into which the moving spool pulls it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Dip {
    /// Greatest current up to the impact, or up to switch-off without one [A].
    pub peak: Amperes,
    /// Least current after that peak, up to the same moment [A]; the peak itself if there is no dip.
    pub trough: Amperes,
}

impl Dip {
    /// Depth of the dip as a share of the peak [%], 0 to 100.
    #[must_use]
    pub fn percent(&self) -> f64 {
        if self.peak.0 == 0.0 { 0.0 } else { 100.0 * (1.0 - self.trough.0 / self.peak.0) }
    }
}

/// The current from switch-on, for a scope.
#[derive(Debug, Clone, PartialEq)]
pub struct Trace {
    /// Time between two samples [s]; the first is at switch-on.
    pub interval: Seconds,
    /// The samples [A], always [`Trace::SAMPLES`] of them.
    pub samples: Vec<Amperes>,
}

impl Trace {
    /// Number of samples.
    pub const SAMPLES: usize = 600;
}

/// What came of a stroke.
#[derive(Debug, Clone, PartialEq)]
pub struct Stroke {
    /// When the spool set off, since switch-on [s]; none if it did not move while the supply was on.
    pub first_motion: Option<Seconds>,
    /// Its first impact on the far stop.
    pub engaged: Option<Impact>,
    /// Where it was at switch-off [mm].
    pub end_position: Millimetres,
    /// Current at switch-off [A].
    pub end_current: Amperes,
    /// Peak and trough of the current; none if the spool did not move.
    pub dip: Option<Dip>,
    /// Its impact on the rest stop after switch-off, if it came back to it within a second.
    pub returned: Option<Impact>,
    /// Where it was at last [mm].
    pub rest_position: Millimetres,
    /// The current from switch-on.
    pub trace: Trace,
}

impl Stroke {
    /// Whether the spool moved while the supply was on.
    #[must_use]
    pub const fn has_moved(&self) -> bool {
        self.first_motion.is_some()
    }

    /// Whether the spool is at its rest stop at last, having left it or not.
    #[must_use]
    pub fn has_returned(&self) -> bool {
        self.rest_position.0 <= 0.0
    }
}

/// Puts a supply on a valve and takes it off again.
#[must_use]
pub fn energise(
    solenoid: &Solenoid,
    winding: &Winding,
    spool: &Spool,
    drive: Drive,
    surroundings: Surroundings,
) -> Stroke {
    energise_in_steps(solenoid, winding, spool, drive, surroundings, STEP_S)
}

fn energise_in_steps(
    solenoid: &Solenoid,
    winding: &Winding,
    spool: &Spool,
    drive: Drive,
    surroundings: Surroundings,
    step_s: f64,
) -> Stroke {
    let machine = Machine {
        solenoid,
        spool,
        flux: FluxLoop::new(winding, surroundings.coil, drive.source),
        drag_n_s_per_m: spool.drag_n_s_per_m(surroundings.oil_viscosity_pa_s),
        step_s,
    };
    let start = State {
        m_a: 0.0,
        x_m: surroundings.start.0.clamp(0.0, spool.stroke.0) * 1e-3,
        v_m_per_s: 0.0,
        motion: Motion::Held,
    };
    // What is not a number of seconds is no time at all.
    let on_s = if drive.on_for.0 > 0.0 { drive.on_for.0.min(LONGEST_ON_S) } else { 0.0 };
    let mut recorder = Recorder::new(spool.moving_mass_kg, drive.supply.0);
    let end = machine.run(drive.supply.0, start, on_s, Until::Time, |moment| {
        recorder.watch_on(moment);
    });
    let dip = recorder.dip();
    let rest = machine.run(0.0, end, WATCHED_S, Until::Rest, |moment| {
        recorder.watch_off(moment, on_s);
    });
    Stroke {
        first_motion: recorder.first_motion,
        engaged: recorder.engaged,
        end_position: Millimetres(end.x_m * 1e3),
        end_current: Amperes(machine.flux.terminal_a(end.m_a, drive.supply.0)),
        dip,
        returned: recorder.returned,
        rest_position: Millimetres(rest.x_m * 1e3),
        trace: recorder.trace(),
    }
}
