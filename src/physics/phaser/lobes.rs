//! The torque with which the valves' springs push a camshaft to and fro.
//!
//! Model: while a lobe opens and closes its valve it takes one full sine of torque: first the
//! spring holds the camshaft back, then it drives it on. A camshaft adds up the lobes of its
//! cylinders, evenly spaced; of the sum the first three harmonics are kept. Each is the Fourier
//! coefficient of one lobe, times the number of lobes, because only orders that are a multiple of
//! the number of cylinders survive. Limits: no inertia of the valves, no tappet friction, and the
//! small turn of the lobes by the phaser itself is left out.

use crate::numerics::elementary::{cos, sin};
use serde::{Deserialize, Serialize};

const RADIANS_PER_DEGREE: f64 = core::f64::consts::PI / 180.0;
/// This near its own order a lobe's coefficient is taken at its limit.
const SAME_ORDER: f64 = 1e-6;

/// Number of harmonics that are kept.
pub const HARMONICS: usize = 3;

/// The lobes of one camshaft.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Lobes {
    /// Cylinders that the camshaft serves, 1 to 12: of a V engine one bank.
    pub cylinders: u8,
    /// Lobes for each of them on this camshaft, 1 or 2.
    pub per_cylinder: u8,
    /// Greatest torque of one lobe [N m] (engineering estimate).
    pub lobe_nm: f64,
    /// Angle of the camshaft over which a lobe lifts its valve [degrees], 90 to 150; 120 is an
    /// event of 240 degrees at the crankshaft (common practice, no source).
    pub event_deg: f64,
}

impl Lobes {
    /// Four cylinders with two valves each on this camshaft: pulses of 8 N m.
    pub const TYPICAL: Self =
        Self { cylinders: 4, per_cylinder: 2, lobe_nm: 4.232_3, event_deg: 120.0 };

    /// Torque of the first three harmonics away from rest [N m]; the order of the first is the
    /// number of cylinders to a turn of the camshaft.
    #[must_use]
    pub fn harmonics_nm(&self) -> [f64; HARMONICS] {
        let cylinders = f64::from(self.cylinders);
        let lobes = cylinders * f64::from(self.per_cylinder);
        let event_rad = self.event_deg * RADIANS_PER_DEGREE;
        let own_order = core::f64::consts::TAU / event_rad;
        [1.0, 2.0, 3.0].map(|harmonic| {
            let order = harmonic * cylinders;
            let overlap_rad = if (own_order - order).abs() < SAME_ORDER {
                0.5 * event_rad
            } else {
                2.0 * own_order * sin(0.5 * order * event_rad)
                    / (own_order * own_order - order * order)
            };
            lobes * self.lobe_nm * overlap_rad / core::f64::consts::PI
        })
    }
}

/// Where the pulses of a camshaft stand: the sines of its first three harmonics.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PulseAngle([f64; HARMONICS]);

impl PulseAngle {
    /// No pulses: the crankshaft stands.
    pub const STANDING: Self = Self([0.0; HARMONICS]);

    /// For a number of cylinders at an angle of the crankshaft [rad]. Repeats after two turns of the
    /// crankshaft.
    #[must_use]
    #[inline]
    pub fn at(cylinders: u8, crank_rad: f64) -> Self {
        // A camshaft turns once for two turns of the crankshaft.
        let angle = 0.5 * f64::from(cylinders) * crank_rad;
        let (s, c) = (sin(angle), cos(angle));
        // Sines of the double and of the triple angle.
        Self([s, 2.0 * s * c, s * (3.0 - 4.0 * s * s)])
    }

    /// Half a pulse later: where the pulses of the other bank's camshafts stand, when the banks fire by turns.
    #[must_use]
    #[inline]
    pub const fn half_a_pulse_later(self) -> Self {
        let [first, second, third] = self.0;
        Self([-first, second, -third])
    }

    /// Torque of the pulses [N m] for harmonics of [`Lobes::harmonics_nm`].
    #[must_use]
    #[inline]
    pub fn torque_nm(&self, harmonics_nm: &[f64; HARMONICS]) -> f64 {
        self.0[0] * harmonics_nm[0] + self.0[1] * harmonics_nm[1] + self.0[2] * harmonics_nm[2]
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The series against the sum over all lobes of a camshaft, angle by angle: what the three harmonics
    /// leave out is small where the first is not.
    #[test]
    fn closed_form_harmonics_are_those_of_the_sum_of_all_lobes() {
        for (cylinders, event_deg) in
            [(3_u8, 120.0), (3, 110.0), (4, 120.0), (4, 130.0), (5, 125.0), (6, 130.0)]
        {
            let lobes = Lobes { cylinders, per_cylinder: 1, lobe_nm: 1.0, event_deg };
            let event = event_deg * RADIANS_PER_DEGREE;
            let one = |from_middle: f64| {
                let turn = core::f64::consts::TAU;
                let angle = from_middle - turn * (from_middle / turn).round();
                if angle.abs() < 0.5 * event { sin(turn * angle / event) } else { 0.0 }
            };
            // Projections of the sum on the sines, by many points.
            let points = 20_000;
            for (harmonic, coefficient) in (1_u32..).zip(lobes.harmonics_nm()) {
                let order = f64::from(harmonic) * f64::from(cylinders);
                let mut projected = 0.0;
                for k in 0..points {
                    let cam = core::f64::consts::TAU * f64::from(k) / f64::from(points);
                    let sum: f64 = (0..cylinders)
                        .map(|n| {
                            one(cam - core::f64::consts::TAU * f64::from(n) / f64::from(cylinders))
                        })
                        .sum();
                    projected += 2.0 * sum * sin(order * cam) / f64::from(points);
                }
                assert!(
                    (projected - coefficient).abs() < 2e-4,
                    "{cylinders} {harmonic}: {projected} {coefficient}"
                );
            }
        }
    }

    /// Banks of three cylinders that fire by turns, 120 degrees of the crankshaft apart, and of four, 90 degrees:
    /// half a pulse is what lies between two fires.
    #[test]
    fn closed_form_half_a_pulse_is_the_way_from_fire_to_fire() {
        for (cylinders, between_deg) in [(3_u8, 120.0), (4, 90.0)] {
            for step in 0..200 {
                let crank_rad = f64::from(step) * 0.05;
                let later = PulseAngle::at(cylinders, crank_rad).half_a_pulse_later();
                let wanted =
                    PulseAngle::at(cylinders, crank_rad + between_deg * RADIANS_PER_DEGREE);
                for (got, wanted) in later.0.into_iter().zip(wanted.0) {
                    assert!((got - wanted).abs() < 1e-12, "{cylinders} {crank_rad}");
                }
            }
        }
    }

    /// Pulses a turn of the crankshaft: half the cylinders; in size, twice the lobes twice the torque, and six
    /// cylinders on one camshaft nearly cancel where four do not.
    #[test]
    fn limit_pulses_count_with_the_cylinders() {
        for (cylinders, in_two_turns) in [(3_u8, 3), (4, 4), (6, 6)] {
            let mut crossings = 0;
            let mut before = PulseAngle::at(cylinders, 1e-4).0[0];
            for k in 1..=40_000_u32 {
                let crank = 1e-4 + 2.0 * core::f64::consts::TAU * f64::from(k) / 40_000.0;
                let now = PulseAngle::at(cylinders, crank).0[0];
                crossings += u32::from(before < 0.0 && now >= 0.0);
                before = now;
            }
            assert_eq!(crossings, in_two_turns, "{cylinders}");
        }
        let first = |lobes: Lobes| lobes.harmonics_nm()[0];
        assert!((first(Lobes::TYPICAL) - 8.0).abs() < 1e-3, "{}", first(Lobes::TYPICAL));
        let single = Lobes { per_cylinder: 1, ..Lobes::TYPICAL };
        assert!((first(Lobes::TYPICAL) / first(single) - 2.0).abs() < 1e-12);
        let six = Lobes { cylinders: 6, ..Lobes::TYPICAL };
        assert!(first(six).abs() < 1e-9, "{}", first(six));
        assert!(first(Lobes { cylinders: 3, ..Lobes::TYPICAL }) > 8.0);
    }
}
