//! A coil that is switched on and off many times a second, with a freewheel path beside it.
//!
//! Model: inductance and resistance in series; while the switch is closed the supply drives the
//! current, while it is open the current runs on through a diode against its drop, and stops when it
//! reaches zero. Both parts are exponentials, and the periodic solution that they form is closed:
//!
//! - *continuous* conduction: the current never reaches zero, the inductance has no part in the average,
//!   `R I = d V - (1 - d) Vf`;
//! - *discontinuous*: it starts from zero in each period, dies after `t0 = T (1-d)' `, and the drop
//!   counts only that long, `R I = d V - (t0 / T) Vf`.
//!
//! Limits: the drop is a constant, and the inductance does not change within a period. Discontinuous
//! conduction means little current, where the iron is far from saturation and the spool at rest, so the
//! inductance there is the one to use.
//!
//! Source: textbook analysis of a buck converter with a resistive-inductive load; the boundary is found
//! again by the tests from the current's least value.

use crate::numerics::elementary::{exp, ln_1p};
use crate::numerics::root;
use crate::units::{Amperes, Henries, Ohms, Volts};
use serde::{Deserialize, Serialize};

/// Duty to which a duty for a current is found.
const DUTY_WIDTH: f64 = 1e-12;

/// Current in a coil after a time [A]: from `from_a` towards `settled_a` with `time_constants` gone by.
#[must_use]
#[inline]
pub fn current_after(from_a: f64, settled_a: f64, time_constants: f64) -> f64 {
    settled_a + (from_a - settled_a) * exp(-time_constants)
}

/// A driver with its pulses, a coil and the freewheel path.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct CoilDrive {
    /// Voltage across the circuit while the driver is on [V].
    pub v_on: Volts,
    /// Drop of the freewheel path against the current while it is off [V], 0 or more.
    pub v_freewheel: Volts,
    /// Resistance of the whole circuit [ohm], more than 0; infinite when it is open.
    pub r_total: Ohms,
    /// Inductance for little current with the spool at rest [H], more than 0.
    pub inductance: Henries,
    /// Pulses a second [1/s], more than 0 (common practice 100 to 300, no source).
    pub pulses_per_s: f64,
}

/// One period of the settled pulses.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Ripple {
    /// Average current.
    pub average: Amperes,
    /// Least current.
    pub least: Amperes,
    /// Greatest current.
    pub most: Amperes,
    /// Share of the period in which current flows, 0 to 1; 1 is continuous conduction.
    pub conducting: f64,
}

impl CoilDrive {
    /// An open circuit.
    pub const OPEN: Self = Self {
        v_on: Volts(0.0),
        v_freewheel: Volts(0.0),
        r_total: Ohms(f64::INFINITY),
        inductance: Henries(12e-3),
        pulses_per_s: 300.0,
    };

    /// Average current at a duty of 0 to 1, whatever the conduction.
    #[must_use]
    #[inline]
    pub fn average(&self, duty: f64) -> Amperes {
        self.ripple(duty).average
    }

    /// The settled pulses at a duty of 0 to 1.
    #[must_use]
    pub fn ripple(&self, duty: f64) -> Ripple {
        let full_a = self.v_on.0 / self.r_total.0;
        if duty <= 0.0 || full_a <= 0.0 {
            let none = Amperes(0.0);
            return Ripple { average: none, least: none, most: none, conducting: 0.0 };
        }
        if duty >= 1.0 {
            let full = Amperes(full_a);
            return Ripple { average: full, least: full, most: full, conducting: 1.0 };
        }
        let back_a = self.v_freewheel.0 / self.r_total.0;
        // Time constants of the coil in one period, and what is left of a difference after each part.
        let period = self.r_total.0 / (self.inductance.0 * self.pulses_per_s);
        let (left_on, left_off) = (exp(-duty * period), exp(-(1.0 - duty) * period));
        let least_a = (full_a * (1.0 - left_on) * left_off - back_a * (1.0 - left_off))
            / (1.0 - left_on * left_off);
        if least_a >= 0.0 {
            let most_a = full_a + (least_a - full_a) * left_on;
            return Ripple {
                average: Amperes(duty * full_a - (1.0 - duty) * back_a),
                least: Amperes(least_a),
                most: Amperes(most_a),
                conducting: 1.0,
            };
        }
        let most_a = full_a * (1.0 - left_on);
        let off = ln_1p(most_a / back_a) / period;
        Ripple {
            average: Amperes((duty * full_a - off * back_a).max(0.0)),
            least: Amperes(0.0),
            most: Amperes(most_a),
            conducting: duty + off,
        }
    }

    /// Duty that gives an average current; more than 1 when the circuit cannot give it.
    #[must_use]
    pub fn duty_for(&self, current: Amperes) -> f64 {
        if current.0 <= 0.0 {
            return 0.0;
        }
        let linear =
            (current.0 * self.r_total.0 + self.v_freewheel.0) / (self.v_on.0 + self.v_freewheel.0);
        // Where the current pauses, less duty is enough than the straight line asks for.
        let pauses = linear < 1.0 && self.ripple(linear).conducting < 1.0;
        if pauses {
            let missing = |duty: f64| self.average(duty).0 - current.0;
            root::between(0.0, linear, DUTY_WIDTH, missing).unwrap_or(linear)
        } else {
            linear
        }
    }
}

#[cfg(test)]
mod tests;
