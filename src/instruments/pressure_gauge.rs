//! A mechanical pressure gauge with a hose, screwed into the tap at the main gallery.
//!
//! A Bourdon gauge of class 1.6 by EN 837-1 (largest error 1.6 % of the span, everywhere on the
//! scale) with a throttle against pulsation. Scale and damping are engineering estimates of what
//! hangs in a workshop. Limits: no hysteresis, no influence of temperature.

use crate::numerics::elementary::exp;
use crate::numerics::streams::Stream;
use crate::units::{Bars, Seconds};
use serde::{Deserialize, Serialize};

/// Full scale [bar].
pub const SPAN_BAR: f64 = 10.0;
/// Distance of two marks of the scale [bar]; the eye reads half of it.
pub const DIVISION_BAR: f64 = 0.2;
/// Largest error [share of the span]: class 1.6 (EN 837-1, table of maximum permissible errors).
const CLASS: f64 = 0.016;
/// Share of its class that the error of a gauge in use takes up: engineering estimate.
const ERROR_SHARE: f64 = 0.6;
/// Time in which the needle has followed 63 % of a jump [s].
const DAMPING_S: f64 = 0.4;
/// Time that nobody reads while the needle settles [s].
pub const SETTLES_S: f64 = 3.0;

/// Largest error by the gauge's class [bar].
pub const TOLERANCE_BAR: f64 = CLASS * SPAN_BAR;

/// One gauge with the error that it was born with.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct PressureGauge {
    /// What it shows above the truth [bar].
    pub error_bar: f64,
}

/// What the eye reads.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct GaugeReading {
    /// Middle of the needle's swing, to half a division [bar].
    pub bar: f64,
    /// Width of its swing, to half a division [bar].
    pub swing_bar: f64,
}

impl PressureGauge {
    /// A gauge without error.
    #[must_use]
    pub const fn ideal() -> Self {
        Self { error_bar: 0.0 }
    }

    /// A gauge with an error of its own.
    #[must_use]
    pub fn drawn(mut stream: Stream) -> Self {
        let most = ERROR_SHARE * TOLERANCE_BAR;
        Self { error_bar: stream.between(-most, most) }
    }

    /// Watches pressures that follow each other at an interval; the first seconds are not read.
    /// Nothing to watch reads as no pressure.
    #[must_use]
    pub fn read(&self, pressures: &[Bars], interval: Seconds) -> GaugeReading {
        let kept = exp(-interval.0 / DAMPING_S);
        let mut needle = pressures.first().map_or(0.0, |first| first.0);
        let (mut low, mut high, mut elapsed_s) = (f64::INFINITY, f64::NEG_INFINITY, 0.0);
        for pressure in pressures {
            needle = pressure.0 + (needle - pressure.0) * kept;
            elapsed_s += interval.0;
            if elapsed_s > SETTLES_S {
                low = low.min(needle);
                high = high.max(needle);
            }
        }
        if low > high {
            (low, high) = (needle, needle);
        }
        // The needle rests on its pin without pressure, whatever its error.
        let is_alive = high > 0.0;
        let error_bar = if is_alive { self.error_bar } else { 0.0 };
        let middle = (f64::midpoint(low, high) + error_bar).clamp(0.0, SPAN_BAR);
        GaugeReading { bar: to_the_eye(middle), swing_bar: to_the_eye(high - low) }
    }
}

/// A pointer is read to half a division.
fn to_the_eye(bar: f64) -> f64 {
    let halves = 2.0 / DIVISION_BAR;
    (bar * halves).round() / halves + 0.0
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn read(pressures: &[f64]) -> GaugeReading {
        let pressures: Vec<Bars> = pressures.iter().copied().map(Bars).collect();
        PressureGauge::ideal().read(&pressures, Seconds(0.1))
    }

    /// EN 837-1: class 1.6 is 1.6 % of the span; scale intervals are 1, 2 or 5 times a power of ten.
    #[test]
    fn published_class_and_scale() {
        assert!((TOLERANCE_BAR - 0.16).abs() < 1e-12);
        assert!((DIVISION_BAR - 0.2).abs() < 1e-12);
    }

    #[test]
    fn closed_form_steady_pressure_is_read_to_half_a_division() {
        assert_eq!(read(&[1.14; 80]), GaugeReading { bar: 1.1, swing_bar: 0.0 });
        assert_eq!(read(&[1.16; 80]), GaugeReading { bar: 1.2, swing_bar: 0.0 });
        assert_eq!(read(&[14.0; 80]).bar.to_bits(), 10.0_f64.to_bits());
        assert_eq!(read(&[]), GaugeReading { bar: 0.0, swing_bar: 0.0 });
    }

    /// A square wave of amplitude a and half period T leaves a needle with time constant τ swinging
    /// by a·tanh(T/2τ) to either side.
    #[test]
    fn closed_form_damping_narrows_a_square_wave() {
        let (half_period, tau) = (1.0, DAMPING_S);
        let interval = 0.001;
        let pressures: Vec<Bars> =
            (0..30_000).map(|k| Bars(if (k / 1_000) % 2 == 0 { 3.0 } else { 1.0 })).collect();
        let reading = PressureGauge::ideal().read(&pressures, Seconds(interval));
        let wanted = 2.0 * (half_period / (2.0 * tau)).tanh();
        assert!((reading.swing_bar - wanted).abs() <= 0.051, "{reading:?} {wanted}");
        assert!((reading.bar - 2.0).abs() <= 0.051, "{reading:?}");
    }

    #[test]
    fn limit_a_drawn_gauge_stays_within_its_class() {
        for seed in 0..200 {
            let stream = crate::numerics::streams::Streams::new(seed).stream("pressure gauge");
            assert!(PressureGauge::drawn(stream).error_bar.abs() < TOLERANCE_BAR);
        }
    }

    proptest! {
        /// More pressure never reads lower, and a reading is never further off than class and eye.
        #[test]
        fn prop_reading_is_monotone_and_within_its_class(
            bar in 0.05_f64..9.5, more in 0.0_f64..0.4, seed in 0_u64..50,
        ) {
            let stream = crate::numerics::streams::Streams::new(seed).stream("pressure gauge");
            let gauge = PressureGauge::drawn(stream);
            let read = |bar| gauge.read(&[Bars(bar); 80], Seconds(0.1)).bar;
            prop_assert!(read(bar + more) >= read(bar));
            prop_assert!((read(bar) - bar).abs() <= TOLERANCE_BAR + DIVISION_BAR / 4.0 + 1e-9);
        }
    }
}
