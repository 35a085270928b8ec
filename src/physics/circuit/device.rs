//! Current laws of the elements that are not straight lines.

use crate::numerics::elementary::{exp, ln, pow, sqrt};

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
pub(super) const LEAKAGE_S: f64 = 1e-12;

/// Voltage in reverse, in units of the exponential's scale, beyond which the exponential (below
/// 2e-35) no longer shows: for saturation currents up to a thousand amperes.
const FAR_IN_REVERSE: f64 = 80.0;

impl DiodeLaw {
    /// Current [A] from anode to cathode and its slope [S] at a voltage [V] across the diode.
    #[must_use]
    pub fn current(&self, volts: f64) -> (f64, f64) {
        if self.is_far_in_reverse(volts) {
            // What the exponential still adds lies below the last bit of both sums.
            (LEAKAGE_S * volts - self.saturation_a, LEAKAGE_S)
        } else {
            self.current_by_iteration(volts)
        }
    }

    /// Whether the exponential no longer shows at a voltage [V] across the diode.
    pub(super) fn is_far_in_reverse(&self, volts: f64) -> bool {
        volts < -FAR_IN_REVERSE * self.scale_v()
    }

    /// Voltage over which the exponential grows by e [V].
    pub(super) fn scale_v(&self) -> f64 {
        self.ideality * THERMAL_VOLTAGE_V
    }

    fn current_by_iteration(&self, volts: f64) -> (f64, f64) {
        let scale_v = self.scale_v();
        // The junction's own voltage solves junction + series drop = volts: a convex, rising
        // function, so that Newton from the right-hand side cannot overshoot.
        let mut junction_v = if volts > 0.0 {
            volts.min(scale_v * ln(1.0 + volts / (self.series_ohms * self.saturation_a)))
        } else {
            volts
        };
        let mut grown = self.saturation_a * exp(junction_v / scale_v);
        for _ in 0..60 {
            let excess = junction_v + self.series_ohms * (grown - self.saturation_a) - volts;
            let step = excess / (1.0 + self.series_ohms * grown / scale_v);
            let next_v = junction_v - step;
            // A step that is lost in rounding leaves the exponential as it is.
            if next_v.to_bits() != junction_v.to_bits() {
                junction_v = next_v;
                grown = self.saturation_a * exp(junction_v / scale_v);
            }
            if step.abs() < 1e-15 {
                break;
            }
        }
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
        if self.is_limited(volts) {
            (self.limited_a(volts), -1.0 / self.internal_ohms)
        } else {
            (self.range_a, 0.0)
        }
    }

    /// Whether it gives less than the current of its range.
    pub(super) fn is_limited(&self, volts: f64) -> bool {
        self.limited_a(volts) < self.range_a
    }

    fn limited_a(&self, volts: f64) -> f64 {
        (self.compliance_v - volts) / self.internal_ohms
    }
}

/// The filament of a lamp in equilibrium: what it takes up it radiates, and its resistance follows
/// its own heat.
///
/// Power goes with the fourth power of the absolute temperature, by the law of Stefan and Boltzmann;
/// the resistance of tungsten with about its 1.2th power (handbooks' rule for 300 to 3,000 K, from
/// memory). A filament that is dark therefore has a tenth of the resistance of one that glows.
/// Limits: no heat flows away through gas or supports, and the emissivity is the same at all heats.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct FilamentLaw {
    /// Rated voltage [V], above zero.
    pub rated_v: f64,
    /// Power at the rated voltage [W], above zero.
    pub rated_w: f64,
    /// Temperature at the rated voltage [K], above that of the room.
    pub rated_k: f64,
}

/// Temperature of a filament that carries nothing [K].
const ROOM_K: f64 = 293.15;
/// How the resistance of tungsten follows its absolute temperature.
const TUNGSTEN_EXPONENT: f64 = 1.2;
/// Hottest filament that is looked for, as a share of the rated temperature: beyond it is vapour.
const HOTTEST_SHARE: f64 = 4.0;

impl FilamentLaw {
    /// Resistance at an absolute temperature [ohm].
    #[must_use]
    pub fn ohms(&self, kelvin: f64) -> f64 {
        self.rated_v * self.rated_v / self.rated_w * pow(kelvin / self.rated_k, TUNGSTEN_EXPONENT)
    }

    /// Power that it radiates at an absolute temperature, less what the room gives back [W].
    #[must_use]
    pub fn radiated_w(&self, kelvin: f64) -> f64 {
        let fourth = |k: f64| k * k * k * k;
        let full = fourth(self.rated_k) - fourth(ROOM_K);
        self.rated_w * (fourth(kelvin) - fourth(ROOM_K)) / full
    }

    /// Absolute temperature at which it settles with a voltage across it [K].
    #[must_use]
    pub fn settled_k(&self, volts: f64) -> f64 {
        // Voltage rises strictly with temperature, so halving finds the one temperature; sixty
        // halvings leave nothing that a number could hold.
        let (mut low, mut high) = (ROOM_K, HOTTEST_SHARE * self.rated_k);
        for _ in 0..60 {
            let middle = 0.5 * (low + high);
            if self.radiated_w(middle) * self.ohms(middle) < volts * volts {
                low = middle;
            } else {
                high = middle;
            }
        }
        0.5 * (low + high)
    }

    /// Current [A] and its slope [S] at a voltage [V] across it.
    #[must_use]
    pub fn current(&self, volts: f64) -> (f64, f64) {
        let kelvin = self.settled_k(volts);
        let ohms = self.ohms(kelvin);
        // With u = P R: dI/dV = (1 - V^2 R' / (R u')) / R, where ' is by temperature.
        let warmth = TUNGSTEN_EXPONENT * ohms / kelvin;
        let full = pow(self.rated_k, 4.0) - pow(ROOM_K, 4.0);
        let radiance = self.rated_w * 4.0 * kelvin * kelvin * kelvin / full;
        let rise = radiance * ohms + self.radiated_w(kelvin) * warmth;
        let slope = (1.0 - 2.0 * volts * volts * warmth / (ohms * rise)) / ohms;
        (volts / ohms, slope)
    }

    /// Power that it takes up at a voltage across it [W].
    #[must_use]
    pub fn watts(&self, volts: f64) -> f64 {
        volts * self.current(volts).0
    }

    /// Voltage across it at an absolute temperature [V], zero or more: the closed form that runs
    /// the other way.
    #[must_use]
    pub fn volts_at(&self, kelvin: f64) -> f64 {
        sqrt((self.radiated_w(kelvin) * self.ohms(kelvin)).max(0.0))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        /// The way round the iteration is no other answer.
        #[test]
        fn prop_far_in_reverse_the_iteration_finds_the_same_bits(
            volts in -60.0_f64..-0.1, ideality in 1.0_f64..2.0, power in -14.0_f64..-6.0, series_ohms in 0.001_f64..1.0,
        ) {
            let saturation_a = crate::numerics::elementary::pow(10.0, power);
            let law = DiodeLaw { saturation_a, ideality, series_ohms };
            let (current, slope) = law.current(volts);
            let (wanted_current, wanted_slope) = law.current_by_iteration(volts);
            prop_assert_eq!(current.to_bits(), wanted_current.to_bits());
            prop_assert_eq!(slope.to_bits(), wanted_slope.to_bits());
        }
    }
}
