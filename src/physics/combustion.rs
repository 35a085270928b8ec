//! Burnt gas left in the cylinders, and what it does to the next fire.
//!
//! Purpose: torque and its scatter at idle from the angles of the two camshafts. Model: the share of
//! burnt gas follows from valve overlap, speed and intake pressure; it slows the flame; a flame that
//! is too slow does not burn its charge before the exhaust valve opens. Limits: mixture taken as
//! right at every temperature, both camshafts with the same lift curve, no gas dynamics in the pipes.
//!
//! Sources. Residual gas: Fox, Cheng and Heywood, SAE 931025 (1993); the paper is not free to read, its
//! two terms and four constants were read in the source of a published engine-cycle program.
//! Flame speed: Rhodes and Keck, SAE 850047 (1985), constants from memory. That what a cycle leaves
//! unburnt changes the next one: Daw and others, SAE 962086 (1996), read in excerpt; here only in its
//! simplest form. Everything else is an engineering estimate.

use crate::numerics::elementary::{exp, pow, sin};
use serde::{Deserialize, Serialize};

/// Constants of the residual gas correlation (see above).
const BACKFLOW: f64 = 1.266;
const BACKFLOW_POWER: f64 = -0.87;
const KEPT: f64 = 0.632;
const KEPT_POWER: f64 = -0.74;
/// The correlation is not asked below this speed [rev/s]: it divides by it.
const LEAST_REV_S: f64 = 2.0;
/// Most residual gas that a cylinder is given; the correlation knows no bound.
const MOST_RESIDUAL: f64 = 0.9;
/// Constants of the flame's slowing (see above).
const SLOWING: f64 = 2.06;
const SLOWING_POWER: f64 = 0.77;

/// Cylinder and valve gear, as far as burnt gas is concerned.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Breathing {
    /// Swept volume of a cylinder [m³].
    pub swept_m3: f64,
    /// Compression ratio, more than 1.
    pub compression: f64,
    /// Inner diameter of a valve's seat [m].
    pub seat_m: f64,
    /// Valves on each side of a cylinder.
    pub valves_a_side: f64,
    /// Most lift of a valve [m].
    pub lift_m: f64,
    /// Crank angle over which a valve is open [degrees], more than any overlap.
    pub open_deg: f64,
    /// Overlap of the valves with both camshafts at rest [degrees at the crank]; less than 0 where the
    /// exhaust closes before the intake opens.
    pub overlap_at_rest_deg: f64,
    /// Share of full flame speed at which a charge burns to 1 - 1/e in time.
    pub slow_flame: f64,
}

impl Breathing {
    /// A four-valve cylinder of 0.35 l (engineering estimate).
    pub const TYPICAL: Self = Self {
        swept_m3: 3.5e-4,
        compression: 10.5,
        seat_m: 0.026,
        valves_a_side: 2.0,
        lift_m: 8.5e-3,
        open_deg: 240.0,
        overlap_at_rest_deg: 6.0,
        slow_flame: 0.2,
    };

    /// Overlap factor [degrees/m] at an overlap [degrees]: seat diameters times the areas under the
    /// lift curves up to the angle at which they cross, over the swept volume.
    ///
    /// Lift is taken as the square of a sine; both curves alike, they cross at half the overlap.
    #[must_use]
    pub fn overlap_factor(&self, overlap_deg: f64) -> f64 {
        if overlap_deg <= 0.0 {
            return 0.0;
        }
        let half_deg = 0.5 * overlap_deg.min(self.open_deg);
        let turn = core::f64::consts::TAU * half_deg / self.open_deg;
        let area_m_deg = self.lift_m
            * (0.5 * half_deg - self.open_deg * sin(turn) / (2.0 * core::f64::consts::TAU));
        2.0 * self.valves_a_side * self.seat_m * area_m_deg / self.swept_m3
    }

    /// Residual gas at an overlap factor [degrees/m], a speed [rev/s] and two pressures [bar], the
    /// exhaust's being the higher.
    #[must_use]
    pub fn residual(
        &self,
        overlap_factor: f64,
        rev_s: f64,
        intake_bar: f64,
        exhaust_bar: f64,
    ) -> Residual {
        let ratio = (intake_bar / exhaust_bar).clamp(0.05, 1.0);
        let drawn_bar = (exhaust_bar - intake_bar).max(0.0);
        let back = BACKFLOW * overlap_factor / rev_s.max(LEAST_REV_S)
            * pow(ratio, BACKFLOW_POWER)
            * drawn_bar.sqrt();
        let kept = KEPT * pow(ratio, KEPT_POWER) / self.compression;
        let within = (MOST_RESIDUAL / (back + kept)).min(1.0);
        Residual { back: back * within, kept: kept * within }
    }

    /// Share of a charge that burns in time at a share of the full flame speed: near 1 for the dilution
    /// of a normal idle, falling away quickly where the flame gets slow.
    #[must_use]
    pub fn burnt(&self, flame: f64) -> f64 {
        let fast = flame.max(0.0) / self.slow_flame;
        1.0 - exp(-fast * fast)
    }

    /// Work that the compression of a charge takes from the crankshaft [J] at an intake pressure [Pa]:
    /// isentropic, exponent 1.35.
    #[must_use]
    pub fn compression_j(&self, intake_pa: f64) -> f64 {
        const SLOPE: f64 = 0.35;
        let full_m3 = self.swept_m3 * self.compression / (self.compression - 1.0);
        intake_pa * full_m3 / SLOPE * (pow(self.compression, SLOPE) - 1.0)
    }
}

/// Residual gas by where it comes from, as shares of the trapped mass.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Residual {
    /// Drawn back out of the exhaust during overlap.
    pub back: f64,
    /// Left in the clearance volume.
    pub kept: f64,
}

impl Residual {
    /// Both together.
    #[must_use]
    pub fn total(&self) -> f64 {
        self.back + self.kept
    }
}

/// Flame speed as a share of that without residual gas, at a share of burnt gas of 0 to 1.
#[must_use]
pub fn flame(burnt_gas: f64) -> f64 {
    (1.0 - SLOWING * pow(burnt_gas.max(0.0), SLOWING_POWER)).max(0.0)
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    const BREATHING: Breathing = Breathing::TYPICAL;

    /// The two terms by hand: no overlap leaves 0.632 (pi/pe)^-0.74 / rc alone.
    #[test]
    fn published_residual_gas_by_hand() {
        let without = BREATHING.residual(0.0, 12.0, 0.5, 1.0);
        assert!((without.total() - 0.632 * 1.670_175_8 / 10.5).abs() < 1e-6, "{without:?}");
        // 2^0.87 = 1.827 663; sqrt(0.5) = 0.707 107
        let with = BREATHING.residual(1.0, 12.5, 0.5, 1.0);
        assert!(
            (with.back - 1.266 / 12.5 * 1.827_663 * core::f64::consts::FRAC_1_SQRT_2).abs() < 1e-6,
            "{with:?}"
        );
        assert_eq!(with.kept.to_bits(), without.kept.to_bits());
    }

    /// Area under a squared sine by the trapezoid rule.
    #[test]
    fn closed_form_overlap_factor_is_the_area_under_the_lift() {
        for overlap_deg in [1.0, 12.0, 40.0, 120.0] {
            let parts = 20_000;
            let width = 0.5 * overlap_deg / f64::from(parts);
            let area: f64 = (0..parts)
                .map(|k| {
                    let angle = (f64::from(k) + 0.5) * width;
                    let lift = sin(core::f64::consts::PI * angle / BREATHING.open_deg);
                    BREATHING.lift_m * lift * lift * width
                })
                .sum();
            let wanted = 2.0 * 2.0 * BREATHING.seat_m * area / BREATHING.swept_m3;
            let got = BREATHING.overlap_factor(overlap_deg);
            assert!((got / wanted - 1.0).abs() < 1e-6, "{overlap_deg}: {got} {wanted}");
        }
        assert_eq!(BREATHING.overlap_factor(-10.0).to_bits(), 0.0_f64.to_bits());
    }

    /// Rhodes and Keck's law (from memory) has no flame left at about two fifths of burnt gas.
    #[test]
    fn limit_flame_goes_out() {
        assert!((flame(0.0) - 1.0).abs() < 1e-15);
        assert!(flame(0.13) > 0.5 && flame(0.38) > 0.0);
        assert!(flame(0.40) <= 0.0 && flame(0.9) <= 0.0);
    }

    /// Isentropic work of a perfect gas from the states at its ends: (p2 V2 - p1 V1) / (k - 1).
    #[test]
    fn closed_form_compression_work() {
        let full = 3.5e-4 * 10.5 / 9.5;
        let end_pa = 40e3 * pow(10.5, 1.35);
        let wanted = (end_pa * full / 10.5 - 40e3 * full) / 0.35;
        assert!((BREATHING.compression_j(40e3) - wanted).abs() < 1e-9);
    }

    proptest! {
        /// More overlap, less speed or less intake pressure never mean less residual gas.
        #[test]
        fn prop_residual_gas_rises_with_overlap_and_falls_with_speed_and_pressure(
            factor in 0.0..20.0_f64, more in 0.0..5.0_f64, rev_s in 3.0..60.0_f64, bar in 0.2..0.98_f64,
        ) {
            let at = |factor, rev_s, bar| BREATHING.residual(factor, rev_s, bar, 1.03).total();
            let here = at(factor, rev_s, bar);
            prop_assert!((0.0..=0.9 + 1e-12).contains(&here));
            prop_assert!(at(factor + more, rev_s, bar) >= here - 1e-12);
            prop_assert!(at(factor, rev_s + 5.0, bar) <= here + 1e-12);
            prop_assert!(at(factor, rev_s, bar + 0.02) <= here + 1e-12);
        }

        #[test]
        fn prop_flame_and_burning_stay_within_nothing_and_all(share in -0.5..1.5_f64, other in 0.0..1.0_f64) {
            prop_assert!((0.0..=1.0).contains(&flame(share)));
            prop_assert!((0.0..=1.0).contains(&BREATHING.burnt(share)));
            prop_assert!(flame(share.max(other)) <= flame(other));
        }
    }
}
