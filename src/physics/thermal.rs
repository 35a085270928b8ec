//! How a coil warms itself, and whether its enamel has had enough.
//!
//! Model: one lump of copper and iron that takes the power lost in the turns that carry current and
//! gives it to its surroundings through one thermal resistance. Heat of a failing joint stays in
//! the joint. Limits: no gradient inside the coil, surroundings at a steady temperature.
//! All parameters are engineering estimates.

use super::coil::Winding;
use crate::numerics::elementary::exp;
use crate::units::{Celsius, Ohms, Seconds, Volts, Watts};
use serde::{Deserialize, Serialize};

/// Where a coil's heat goes.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct HeatPath {
    /// Heat that warms the coil by one kelvin [J/K], above 0.
    pub capacity_j_per_k: f64,
    /// Kelvins above the surroundings for each watt [K/W], above 0.
    pub resistance_k_per_w: f64,
}

/// A steady supply in series with a coil.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Supply {
    /// Mean voltage over the whole circuit [V]: supply times duty where it is pulsed.
    pub volts: Volts,
    /// Everything in series with the valve's pins [ohm], 0 or more.
    pub source: Ohms,
}

/// Longest step of [`HeatPath::heat`] [s]; the time constant is about 160 to 360 s, so the second-order
/// step errs by less than a thousandth of a kelvin.
const LONGEST_STEP_S: f64 = 1.0;

/// Most steps in one call of [`HeatPath::heat`]: eleven days, after which every coil is as warm as
/// it will be, and which keeps a senseless duration from running for ever.
const MOST_STEPS: f64 = 1e6;

impl HeatPath {
    /// A valve lying on a bench, in still air (engineering estimate).
    pub const IN_AIR: Self = Self { capacity_j_per_k: 45.0, resistance_k_per_w: 8.0 };

    /// A valve fitted in the cylinder head (engineering estimate).
    pub const IN_HEAD: Self = Self { capacity_j_per_k: 45.0, resistance_k_per_w: 3.5 };

    /// The coil's temperature after `lasting` at constant power: the exact solution.
    #[must_use]
    pub fn step(&self, coil: Celsius, around: Celsius, power: Watts, lasting: Seconds) -> Celsius {
        let goal_c = around.0 + power.0 * self.resistance_k_per_w;
        let kept = exp(-lasting.0 / (self.capacity_j_per_k * self.resistance_k_per_w));
        Celsius(goal_c + (coil.0 - goal_c) * kept)
    }

    /// The coil's temperature after `lasting` at constant voltage, its resistance rising as it warms.
    ///
    /// Fixed steps, each exact for the power at the middle of the step.
    #[must_use]
    pub fn heat(
        &self,
        winding: &Winding,
        coil: Celsius,
        around: Celsius,
        supply: Supply,
        lasting: Seconds,
    ) -> Celsius {
        // What is not a number of seconds, or less than none, changes nothing.
        let lasting_s = if lasting.0 > 0.0 { lasting.0 } else { 0.0 };
        let steps = (lasting_s / LONGEST_STEP_S).ceil().clamp(1.0, MOST_STEPS);
        let whole = Seconds(lasting_s / steps);
        let half = Seconds(0.5 * whole.0);
        let mut now = coil;
        let mut taken = 0.0;
        while taken < steps {
            let middle = self.step(now, around, power_in_coil(winding, now, supply), half);
            now = self.step(now, around, power_in_coil(winding, middle, supply), whole);
            taken += 1.0;
        }
        now
    }
}

/// What a steady current leaves in the coil [W]; shorted turns carry none, the joint is elsewhere.
#[must_use]
pub fn power_in_coil(winding: &Winding, coil: Celsius, supply: Supply) -> Watts {
    let current_a = supply.volts.0 / (winding.terminal_ohms(coil).0 + supply.source.0);
    Watts(current_a * current_a * winding.carrying_ohms(coil).0)
}

/// Kelvins past the class at which a wire burns through (engineering estimate).
const BURNS_THROUGH_K: f64 = 50.0;

/// What heat has done to a winding, from nothing to the worst.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Damage {
    /// Nothing.
    None,
    /// Enamel gave way between turns.
    TurnsShort,
    /// The wire has burnt through.
    BurntThrough,
}

/// The enamel of a winding's wire: what it has been through stays with it.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Enamel {
    class: Celsius,
    hottest: Celsius,
}

impl Enamel {
    /// Thermal class 180 (letter H) of IEC 60085 [°C]; from memory, and assumed for these valves.
    pub const CLASS_180: Celsius = Celsius(180.0);

    /// New enamel of a class, now at a temperature.
    #[must_use]
    pub const fn new(class: Celsius, now: Celsius) -> Self {
        Self { class, hottest: now }
    }

    /// Takes note of the coil's temperature.
    pub fn feel(&mut self, coil: Celsius) {
        // Written so that what is not a number leaves the memory as it was.
        if coil.0 > self.hottest.0 {
            self.hottest = coil;
        }
    }

    /// What the hottest moment has left behind.
    #[must_use]
    pub fn damage(&self) -> Damage {
        if self.hottest.0 > self.class.0 + BURNS_THROUGH_K {
            Damage::BurntThrough
        } else if self.is_damaged() {
            Damage::TurnsShort
        } else {
            Damage::None
        }
    }

    /// The hottest that the coil has been [°C].
    #[must_use]
    pub const fn hottest(&self) -> Celsius {
        self.hottest
    }

    /// Whether the class was ever passed. The damage lasts: cooling does not take it back.
    #[must_use]
    pub fn is_damaged(&self) -> bool {
        self.hottest.0 > self.class.0
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::Amperes;
    use proptest::prelude::*;

    /// Series resistance with which the tables below were computed [ohm].
    const SOURCE: Ohms = Ohms(0.5);

    fn current(winding: &Winding, coil: Celsius, supply: Supply) -> Amperes {
        Amperes(supply.volts.0 / (winding.terminal_ohms(coil).0 + supply.source.0))
    }

    /// Computed by an independent ODE solver for this project: seconds, °C, ohm at the pins, ampere.
    /// Printed to 0.1 K, 0.01 ohm (0.001 A), so half of the last digit, and as much again for the
    /// rounding of the time to print.
    fn check(
        winding: Winding,
        path: HeatPath,
        around: f64,
        volts: f64,
        rows: [(f64, f64, f64, f64); 6],
    ) {
        let supply = Supply { volts: Volts(volts), source: SOURCE };
        for (t_s, t_c, ohms, amperes) in rows {
            let coil = path.heat(&winding, Celsius(around), Celsius(around), supply, Seconds(t_s));
            let read = winding.terminal_ohms(coil).0;
            let drawn = current(&winding, coil, supply).0;
            assert!((coil.0 - t_c).abs() <= 0.1, "{t_s} s: {} {t_c}", coil.0);
            assert!((read - ohms).abs() <= 0.01, "{t_s} s: {read} {ohms}");
            assert!((drawn - amperes).abs() <= 0.001, "{t_s} s: {drawn} {amperes}");
        }
    }

    #[test]
    fn reference_a_healthy_coil_on_the_bench() {
        check(
            Winding::REFERENCE,
            HeatPath::IN_AIR,
            20.0,
            12.6,
            [
                (0.0, 20.0, 11.0, 1.096),
                (30.0, 28.3, 11.36, 1.062),
                (60.0, 35.7, 11.68, 1.034),
                (300.0, 73.2, 13.3, 0.913),
                (1800.0, 101.5, 14.52, 0.839),
                (3600.0, 101.7, 14.53, 0.838),
            ],
        );
    }

    #[test]
    fn reference_a_fitted_coil_at_four_tenths_duty_and_shorted_to_ground() {
        check(
            Winding::REFERENCE,
            HeatPath::IN_HEAD,
            95.0,
            14.1 * 0.4,
            [
                (0.0, 95.0, 14.24, 0.383),
                (30.0, 96.3, 14.3, 0.381),
                (60.0, 97.3, 14.34, 0.38),
                (300.0, 101.1, 14.51, 0.376),
                (1800.0, 102.2, 14.55, 0.375),
                (3600.0, 102.2, 14.55, 0.375),
            ],
        );
        check(
            Winding::REFERENCE,
            HeatPath::IN_HEAD,
            95.0,
            14.1,
            [
                (0.0, 95.0, 14.24, 0.956),
                (30.0, 102.8, 14.58, 0.935),
                (60.0, 109.1, 14.85, 0.918),
                (300.0, 130.9, 15.8, 0.865),
                (1800.0, 135.9, 16.01, 0.854),
                (3600.0, 135.9, 16.01, 0.854),
            ],
        );
    }

    #[test]
    fn reference_shorted_turns_on_the_bench() {
        check(
            Winding { shorted_share: 0.6, ..Winding::REFERENCE },
            HeatPath::IN_AIR,
            20.0,
            12.6,
            [
                (0.0, 20.0, 4.4, 2.571),
                (30.0, 38.1, 4.71, 2.417),
                (60.0, 53.8, 4.99, 2.297),
                (300.0, 127.9, 6.27, 1.862),
                (1800.0, 175.9, 7.1, 1.659),
                (3600.0, 176.1, 7.1, 1.658),
            ],
        );
    }

    /// At constant power the step is exact whatever its length.
    #[test]
    fn closed_form_one_step_is_as_good_as_many() {
        let path = HeatPath::IN_AIR;
        let once = path.step(Celsius(20.0), Celsius(20.0), Watts(10.0), Seconds(500.0));
        let mut many = Celsius(20.0);
        for _ in 0..500 {
            many = path.step(many, Celsius(20.0), Watts(10.0), Seconds(1.0));
        }
        assert!((once.0 - many.0).abs() < 1e-10);
        assert!((once.0 - (100.0 - 80.0 * exp(-500.0 / 360.0))).abs() < 1e-10);
    }

    /// The resting temperature solves `T = Ta + Rth P(T)`, whatever the way there.
    #[test]
    fn closed_form_a_coil_settles_where_loss_and_cooling_balance() {
        let seven = Winding { ohms_at_20: Ohms(7.0), turns: 0.8, ..Winding::REFERENCE };
        let supply = Supply { volts: Volts(12.0), source: SOURCE };
        let around = Celsius(20.0);
        let end = HeatPath::IN_AIR.heat(&seven, around, around, supply, Seconds(20_000.0));
        let balance = 20.0 + 8.0 * power_in_coil(&seven, end, supply).0;
        assert!((end.0 - balance).abs() < 1e-6, "{} {balance}", end.0);
    }

    /// Neither an 11-ohm nor a 7-ohm coil reaches its enamel's class on a bench supply; shorted turns
    /// beside a hot engine do.
    #[test]
    fn limit_what_damages_a_coil_and_what_does_not() {
        let outcome = |winding: Winding, path: HeatPath, around: f64, volts: f64| {
            let supply = Supply { volts: Volts(volts), source: SOURCE };
            let mut enamel = Enamel::new(Enamel::CLASS_180, Celsius(around));
            let mut coil = Celsius(around);
            for _ in 0..60 {
                coil = path.heat(&winding, coil, Celsius(around), supply, Seconds(60.0));
                enamel.feel(coil);
            }
            // Left to cool, it forgets nothing.
            enamel.feel(Celsius(around));
            (enamel.is_damaged(), enamel.hottest().0)
        };
        let seven = Winding { ohms_at_20: Ohms(7.0), turns: 0.8, ..Winding::REFERENCE };
        let shorted = Winding { shorted_share: 0.6, ..Winding::REFERENCE };
        assert!(!outcome(Winding::REFERENCE, HeatPath::IN_AIR, 20.0, 12.0).0);
        assert!(!outcome(seven, HeatPath::IN_AIR, 20.0, 12.6).0);
        assert!(!outcome(shorted, HeatPath::IN_AIR, 20.0, 12.6).0);
        let (damaged, hottest) = outcome(shorted, HeatPath::IN_HEAD, 110.0, 14.3);
        assert!(damaged && hottest > 180.0, "{hottest}");
    }

    proptest! {
        #[test]
        fn prop_a_coil_stays_between_its_surroundings_and_its_goal(
            around in -40.0..120.0_f64, power in 0.0..40.0_f64, t_s in 0.0..5000.0_f64,
        ) {
            let path = HeatPath::IN_AIR;
            let coil = path.step(Celsius(around), Celsius(around), Watts(power), Seconds(t_s)).0;
            prop_assert!(coil >= around - 1e-9 && coil <= around + 8.0 * power + 1e-9);
        }

        /// The step is fine enough, and of second order: a tenth of it changes less than a thousandth of a
        /// kelvin, where a step that took its power from its beginning would be out by a fiftieth.
        #[test]
        fn prop_many_short_calls_make_a_long_one(volts in 10.0..16.0_f64, tenths in 600..4000_u32) {
            let supply = Supply { volts: Volts(volts), source: SOURCE };
            let (start, path) = (Celsius(20.0), HeatPath::IN_AIR);
            let heat = |from, t| path.heat(&Winding::REFERENCE, from, start, supply, Seconds(t));
            let long = heat(start, f64::from(tenths) * 0.1).0;
            let short = (0..tenths).fold(start, |coil, _| heat(coil, 0.1)).0;
            prop_assert!((long - short).abs() < 1e-3, "{long} {short}");
        }
    }
}
