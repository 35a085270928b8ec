//! The current of a coil that its driver has let go.
//!
//! Purpose: how long a freewheel or clamp voltage stands at a driver's pin after switch-off. Model:
//! the flux of [`Solenoid`] falls through the winding's resistance, the path's and a constant
//! voltage against it, with the spool where it is. Limits: the spool does not move, which holds for
//! the first milliseconds; the voltage against the current does not depend on it.

use super::coil::Winding;
use super::solenoid::{FluxLoop, Solenoid};
use crate::units::{Amperes, Celsius, Millimetres, Ohms, Seconds, Volts};

/// Steps of the integration within one interval.
const STEPS: u32 = 20;
/// Samples kept at most.
const MOST_SAMPLES: usize = 400;
/// Below this the current is over [A].
const OVER_A: f64 = 1e-3;

/// The current after switch-off.
#[derive(Debug, Clone, PartialEq)]
pub struct Release {
    /// Samples from switch-off at the interval asked for [A]; ends when the current is over.
    pub samples: Vec<Amperes>,
}

impl Release {
    /// No current at all.
    pub const NOTHING: Self = Self { samples: Vec::new() };
}

/// Lets the current of a coil run down from a value.
#[must_use]
#[expect(clippy::too_many_arguments, reason = "each is one physical quantity")]
pub fn released(
    solenoid: &Solenoid,
    winding: &Winding,
    coil: Celsius,
    path: Ohms,
    spool: Millimetres,
    from: Amperes,
    against: Volts,
    interval: Seconds,
) -> Release {
    let mut samples = Vec::new();
    if from.0 < OVER_A || interval.0 <= 0.0 {
        return Release { samples };
    }
    let flux = FluxLoop::new(winding, coil, path);
    let inductance_h = solenoid.inductance_h(spool.0 * 1e-3);
    let step_s = interval.0 / f64::from(STEPS);
    let mut m_a = from.0 * flux.driven_turns();
    // The rate of the magnetomotive force is that of the flux over its slope.
    let rate =
        |m_a: f64| flux.flux_rate_v(m_a, -against.0) / (inductance_h * solenoid.shape(m_a).slope);
    while samples.len() < MOST_SAMPLES {
        let current_a = flux.terminal_a(m_a, -against.0);
        if current_a < OVER_A {
            break;
        }
        samples.push(Amperes(current_a));
        for _ in 0..STEPS {
            // Second order, by the middle of the step.
            let middle_a = m_a + 0.5 * step_s * rate(m_a);
            m_a += step_s * rate(middle_a);
        }
    }
    Release { samples }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::numerics::elementary::exp;

    /// Far below saturation a coil is R, L and a voltage: i = (I + V/R) e^(-t R/L) - V/R.
    #[test]
    fn closed_form_of_a_straight_coil() {
        let straight = Solenoid { slope_beyond_saturation: 0.0, ..Solenoid::REFERENCE };
        let against = Volts(0.05);
        let release = released(
            &straight,
            &Winding::REFERENCE,
            Celsius(20.0),
            Ohms(1.0),
            Millimetres(0.0),
            Amperes(0.02),
            against,
            Seconds(1e-4),
        );
        let (ohms, henries) = (12.0, straight.inductance_at_rest.0);
        assert!(release.samples.len() > 10);
        for (number, sample) in release.samples.iter().enumerate() {
            let t = number as f64 * 1e-4;
            let end = against.0 / ohms;
            let expected = (0.02 + end) * exp(-t * ohms / henries) - end;
            assert!((sample.0 - expected).abs() < 0.02 * 0.001, "{t} {} {expected}", sample.0);
        }
    }

    #[test]
    fn limit_no_current_gives_no_samples() {
        let none = released(
            &Solenoid::REFERENCE,
            &Winding::REFERENCE,
            Celsius(20.0),
            Ohms(0.5),
            Millimetres(2.5),
            Amperes(0.0),
            Volts(0.9),
            Seconds(1e-4),
        );
        assert_eq!(none, Release::NOTHING);
    }
}
