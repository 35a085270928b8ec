//! Current laws of the elements that are not straight lines.

use crate::numerics::elementary::{exp, ln};

/// A diode: exponential junction in series with a resistance.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct DiodeLaw {
    /// Saturation current [A], above zero.
    pub saturation_a: f64,
    /// Ideality factor, 1 to 2.
    pub ideality: f64,
    /// Series resistance [ohm], above zero.
    pub series_ohms: f64,
}

/// Thermal voltage at 27 °C [V]: Boltzmann constant × 300.15 K / elementary charge
/// (SI 2019 exact constants).
const THERMAL_VOLTAGE_V: f64 = 1.380_649e-23 * 300.15 / 1.602_176_634e-19;

/// Leakage conductance across every junction [S], the usual aid of circuit simulators: without
/// it a node between two blocking diodes would float.
const LEAKAGE_S: f64 = 1e-12;

impl DiodeLaw {
    /// Current [A] from anode to cathode and its slope [S] at a voltage [V] across the diode.
    #[must_use]
    pub fn current(&self, volts: f64) -> (f64, f64) {
        let scale_v = self.ideality * THERMAL_VOLTAGE_V;
        // The junction's own voltage solves junction + series drop = volts: a convex, rising
        // function, so that Newton from the right-hand side cannot overshoot.
        let mut junction_v = if volts > 0.0 {
            volts.min(scale_v * ln(1.0 + volts / (self.series_ohms * self.saturation_a)))
        } else {
            volts
        };
        for _ in 0..60 {
            let grown = self.saturation_a * exp(junction_v / scale_v);
            let excess = junction_v + self.series_ohms * (grown - self.saturation_a) - volts;
            let step = excess / (1.0 + self.series_ohms * grown / scale_v);
            junction_v -= step;
            if step.abs() < 1e-15 {
                break;
            }
        }
        let grown = self.saturation_a * exp(junction_v / scale_v);
        let junction_s = grown / scale_v;
        let current = grown - self.saturation_a + LEAKAGE_S * volts;
        (current, junction_s / (1.0 + self.series_ohms * junction_s) + LEAKAGE_S)
    }
}

/// The source inside an ohmmeter: a constant current as long as the voltage it needs stays within
/// what it can give.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct OhmSource {
    /// Current of the range [A], above zero.
    pub range_a: f64,
    /// Open-circuit voltage [V].
    pub compliance_v: f64,
    /// Internal resistance that limits the current near the open-circuit voltage [ohm].
    pub internal_ohms: f64,
}

impl OhmSource {
    /// Current [A] pushed out of the red lead and its slope [S] when `volts` stand between red
    /// and black.
    #[must_use]
    pub fn current(&self, volts: f64) -> (f64, f64) {
        let limited = (self.compliance_v - volts) / self.internal_ohms;
        if limited < self.range_a {
            (limited, -1.0 / self.internal_ohms)
        } else {
            (self.range_a, 0.0)
        }
    }
}
