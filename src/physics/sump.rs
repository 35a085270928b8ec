//! The oil in the sump: how much the pump can reach, how much air it swallows, what a dipstick
//! shows.
//!
//! Model: a running engine holds some oil up in head and galleries; what is left above the pick-up
//! decides how often it draws air. A slope, a bend or acceleration moves oil away from the pick-up.
//! Drawing air is a telegraph process, looked at anew at random moments. An engine that was switched
//! off lets its oil run down, thick oil more slowly; oil expands with heat. Limits: one pick-up in
//! the middle of a sump whose bottom slopes to the front, so that braking and downhill do no harm;
//! foam only as an air share.

use crate::numerics::elementary::{exp, ln, sqrt};
use crate::numerics::streams::Stream;
use crate::physics::oil::ViscosityCurve;
use crate::units::{Celsius, Litres, Minutes, Rpm};
use serde::{Deserialize, Serialize};

/// Engine speed to which the speed-dependent figures refer [rpm].
const REFERENCE_RPM: f64 = 6_000.0;
/// Load from which a vehicle accelerates enough to slosh the oil, 0 to 1 (engineering estimate).
const SLOSHING_LOAD: f64 = 0.6;
/// Load that holds a steady speed, 0 to 1 (engineering estimate).
const STEADY_LOAD: f64 = 0.4;
/// Acceleration for each unit of load above the steady one [g] (engineering estimate).
const ACCELERATION_G: f64 = 0.8;
/// Engine speed at which an engine is switched off [rpm]: idle.
const SWITCH_OFF_RPM: f64 = 700.0;
/// Temperature at which the marks of a dipstick hold, and at which volumes are stated [°C].
pub const VOLUMES_AT: Celsius = Celsius(20.0);
/// Kinematic viscosity to which the time of running down refers [mm²/s]: a warm 5W-30.
const RUNS_DOWN_AT_MM2_S: f64 = 13.0;

/// How the vehicle stands or moves, as the oil in the sump feels it.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize)]
#[cfg_attr(test, derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields, default)]
pub struct Tilt {
    /// Uphill, as the rise of the road for each length of it; downhill is below zero \[g\].
    pub uphill: f64,
    /// Across, in a bend or on a cambered road, to either side \[g\].
    pub across_g: f64,
}

/// The shape of a sump and how its oil takes up air.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Sump {
    /// Oil held up in a running engine at any speed [l] (engineering estimate).
    pub held_up_l: f64,
    /// Further oil held up at 6000 rpm, in proportion to speed [l] (engineering estimate).
    pub held_up_fast_l: f64,
    /// Volume below which the pick-up draws air half of the time [l] (engineering estimate).
    pub pickup_l: f64,
    /// Volume that moves away from the pick-up for each g of acceleration [l/g] (engineering
    /// estimate).
    pub slosh_l_per_g: f64,
    /// Volume over which drawing air sets in [l], more than 0 (engineering estimate).
    pub onset_l: f64,
    /// Rate at which it is decided anew whether air is drawn [1/s] (engineering estimate).
    pub gulp_rate_per_s: f64,
    /// Time for the air share in the pump to follow [s] (engineering estimate).
    pub air_lag_s: f64,
    /// Air share of settled oil, 0 to 1 (engineering estimate).
    pub air: f64,
    /// Further air share by churning at 6000 rpm, with the square of speed (engineering estimate).
    pub air_fast: f64,
    /// Further air share while air is drawn (engineering estimate).
    pub air_gulping: f64,
    /// Volume in the sump from which the crankshaft dips into the oil [l] (engineering estimate).
    pub dips_l: f64,
    /// Further air share at 6000 rpm for each litre above that, with the square of speed
    /// (engineering estimate).
    pub air_dipping_per_l: f64,
}

impl Sump {
    /// A sump that takes 4.5 l (engineering estimate).
    pub const TYPICAL: Self = Self {
        held_up_l: 0.35,
        held_up_fast_l: 0.9,
        pickup_l: 1.6,
        slosh_l_per_g: 0.5,
        onset_l: 0.18,
        gulp_rate_per_s: 4.0,
        air_lag_s: 0.15,
        air: 0.03,
        air_fast: 0.04,
        air_gulping: 0.75,
        dips_l: 4.6,
        air_dipping_per_l: 0.35,
    };

    /// Oil that is up in the engine at a speed.
    #[must_use]
    pub fn held_up(&self, speed: Rpm) -> Litres {
        Litres(self.held_up_l + self.held_up_fast_l * speed.0 / REFERENCE_RPM)
    }

    /// Share of the time in which the pump draws air, 0 to 1, at an engine load of 0 to 1.
    #[must_use]
    pub fn gulp_share(&self, fill: Litres, speed: Rpm, load: f64, tilt: Tilt) -> f64 {
        let slosh_g =
            if load > SLOSHING_LOAD { ACCELERATION_G * (load - STEADY_LOAD) } else { 0.0 };
        // Oil moves backwards uphill as it does when the vehicle gathers speed.
        let back_g = (slosh_g + tilt.uphill).max(0.0);
        let away_g = sqrt(back_g * back_g + tilt.across_g * tilt.across_g);
        let margin_l = fill.0 - self.held_up(speed).0 - self.pickup_l - self.slosh_l_per_g * away_g;
        1.0 / (1.0 + exp(margin_l / self.onset_l))
    }

    /// Air share of the oil by churning, 0 to 1: more where the crankshaft dips into it.
    #[must_use]
    pub fn churned_air(&self, fill: Litres, speed: Rpm) -> f64 {
        let relative = speed.0 / REFERENCE_RPM;
        let dips_l = (fill.0 - self.held_up(speed).0 - self.dips_l).max(0.0);
        self.air + (self.air_fast + self.air_dipping_per_l * dips_l) * relative * relative
    }
}

impl Default for Sump {
    fn default() -> Self {
        Self::TYPICAL
    }
}

/// The air in the pump as it changes.
#[derive(Debug, Clone, Serialize, Deserialize)]
pub struct Aeration {
    air: f64,
    is_gulping: bool,
    next_look_s: f64,
    stream: Stream,
}

impl Aeration {
    /// Settled oil; `stream` decides when air is drawn.
    #[must_use]
    pub fn new(sump: &Sump, stream: Stream) -> Self {
        Self { air: sump.air, is_gulping: false, next_look_s: 0.0, stream }
    }

    /// Air share of the oil in the pump, 0 to 1.
    #[must_use]
    pub const fn air(&self) -> f64 {
        self.air
    }

    /// Moves on by `dt_s` seconds.
    #[inline]
    pub fn step(
        &mut self,
        sump: &Sump,
        fill: Litres,
        speed: Rpm,
        load: f64,
        tilt: Tilt,
        dt_s: f64,
    ) {
        self.next_look_s -= dt_s;
        if self.next_look_s <= 0.0 {
            // Waiting times drawn rather than a coin tossed each step: the same process at any step.
            self.is_gulping = self.stream.unit() < sump.gulp_share(fill, speed, load, tilt);
            self.next_look_s += -ln(1.0 - self.stream.unit()) / sump.gulp_rate_per_s;
        }
        let gulped = if self.is_gulping { sump.air_gulping } else { 0.0 };
        let towards = sump.churned_air(fill, speed) + gulped;
        self.air += (towards - self.air) * dt_s / (sump.air_lag_s + dt_s);
    }
}

/// Where the oil of an engine that stands is.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Whereabouts {
    /// In the sump [l], at its temperature.
    pub sump_l: f64,
    /// Still on its way down from head and galleries [l], at its temperature.
    pub up_l: f64,
}

/// A dipstick and the time that oil takes to run back to it.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Dipstick {
    /// Fill at the lower mark, cold and run down [l].
    pub lower_mark_l: f64,
    /// Fill at the upper mark, cold and run down [l].
    pub upper_mark_l: f64,
    /// Minutes in which warm oil that is held up falls to 37 % of what it was (engineering
    /// estimate; hence the custom of waiting five to ten minutes).
    pub drain_min: f64,
}

impl Dipstick {
    /// A dipstick with its marks and the usual time of running down.
    #[must_use]
    pub const fn between(lower_mark_l: f64, upper_mark_l: f64) -> Self {
        Self { lower_mark_l, upper_mark_l, drain_min: 2.0 }
    }

    /// Where a fill stated at 20 °C is some time after the engine was switched off at idle; `None`
    /// is long ago.
    #[must_use]
    pub fn whereabouts(
        &self,
        sump: &Sump,
        fill: Litres,
        since_stop: Option<Minutes>,
        curve: &ViscosityCurve,
        at: Celsius,
    ) -> Whereabouts {
        let expanded_l = fill.0 * curve.expansion(VOLUMES_AT, at);
        let up_l = since_stop.map_or(0.0, |since| {
            // A film that runs off a wall is as thick as the root of viscosity by time (Jeffreys);
            // the same root stretches the time here, which is an engineering estimate.
            let slower = sqrt(curve.kinematic_mm2_s(at) / RUNS_DOWN_AT_MM2_S);
            let held_up_l = sump.held_up(Rpm(SWITCH_OFF_RPM)).0.min(expanded_l);
            held_up_l * exp(-f64::from(since.0) / (self.drain_min * slower))
        });
        Whereabouts { sump_l: expanded_l - up_l, up_l }
    }

    /// Height of the oil on the stick, 0 at the lower mark and 1 at the upper. Too short a wait
    /// reads low, because oil is still on its way down; hot oil reads high, because it has expanded.
    #[must_use]
    pub fn level(&self, oil: Whereabouts) -> f64 {
        (oil.sump_l - self.lower_mark_l) / (self.upper_mark_l - self.lower_mark_l)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::numerics::streams::Streams;
    use crate::physics::oil::Oil;
    use proptest::prelude::*;

    const LEVEL: Tilt = Tilt { uphill: 0.0, across_g: 0.0 };

    /// The preparatory study's table of gulp shares, printed to three decimals.
    #[test]
    fn reference_gulp_share_table() {
        for (fill, row) in [
            (4.5, [0.0, 0.0, 0.0]),
            (3.5, [0.0, 0.001, 0.008]),
            (3.0, [0.005, 0.023, 0.111]),
            (2.5, [0.078, 0.274, 0.667]),
            (2.2, [0.309, 0.667, 0.914]),
            (2.0, [0.576, 0.859, 0.97]),
        ] {
            for (rpm, wanted) in [700.0, 2500.0, 4500.0].into_iter().zip(row) {
                let got = Sump::TYPICAL.gulp_share(Litres(fill), Rpm(rpm), 0.2, LEVEL);
                assert!((got - wanted).abs() <= 5.01e-4, "{fill} l {rpm} rpm: {got} {wanted}");
            }
        }
    }

    /// The long-run share of time in which the process draws air must be the share it was given.
    #[test]
    fn closed_form_long_run_air_is_the_gulp_share() {
        let sump = Sump::TYPICAL;
        for (dt_s, steps) in [(1e-3, 4_000_000), (1e-2, 400_000)] {
            let mut aeration = Aeration::new(&sump, Streams::new(5).stream("aeration"));
            let mut sum = 0.0;
            for _ in 0..steps {
                aeration.step(&sump, Litres(2.2), Rpm(2_500.0), 0.2, LEVEL, dt_s);
                sum += aeration.air();
            }
            let wanted = sump.churned_air(Litres(2.2), Rpm(2_500.0))
                + sump.air_gulping * sump.gulp_share(Litres(2.2), Rpm(2_500.0), 0.2, LEVEL);
            // 4000 s at 4 independent looks a second: standard error 0.75·0.47·√2/√16000 = 0.004.
            assert!((sum / f64::from(steps) - wanted).abs() < 0.016, "{dt_s}");
        }
    }

    #[test]
    fn limit_a_full_sump_draws_no_air_in_a_spirited_hour() {
        let sump = Sump::TYPICAL;
        let mut aeration = Aeration::new(&sump, Streams::new(1).stream("aeration"));
        for _ in 0..3_600_000 {
            aeration.step(&sump, Litres(4.5), Rpm(3_000.0), 0.5, LEVEL, 1e-3);
            assert!(aeration.air() <= sump.churned_air(Litres(4.5), Rpm(3_000.0)) + 1e-12);
        }
    }

    /// The road's slope and a bend move oil as acceleration of the same size does.
    #[test]
    fn closed_form_slope_bend_and_acceleration_move_oil_alike() {
        let share = |load, uphill, across_g| {
            Sump::TYPICAL.gulp_share(Litres(2.9), Rpm(2_500.0), load, Tilt { uphill, across_g })
        };
        // Load 0.9 gathers speed with 0.8·(0.9 - 0.4) = 0.4 g.
        let by_load = share(0.9, 0.0, 0.0);
        assert!((share(0.2, 0.4, 0.0) - by_load).abs() < 1e-12);
        assert!((share(0.2, 0.0, 0.4) - by_load).abs() < 1e-12);
        assert!((share(0.2, 0.0, -0.4) - by_load).abs() < 1e-12);
        assert!((share(0.9, 0.0, 0.3) - share(0.2, 0.5, 0.0)).abs() < 1e-12);
        assert!((share(0.2, -0.2, 0.0) - share(0.2, 0.0, 0.0)).abs() < 1e-12);
    }

    /// What an overfilled sump does: 4.6 l below a crankshaft that holds 0.35 + 0.45 l up at 3000 rpm.
    #[test]
    fn closed_form_a_crankshaft_that_dips_beats_air_into_the_oil() {
        let air = |fill| Sump::TYPICAL.churned_air(Litres(fill), Rpm(3_000.0));
        assert!((air(5.4) - 0.04).abs() < 1e-12);
        assert!((air(6.4) - (0.03 + 0.25 * (0.04 + 0.35))).abs() < 1e-12);
    }

    const STICK: Dipstick = Dipstick::between(3.5, 4.5);

    fn curve() -> ViscosityCurve {
        Oil::TYPICAL_5W_30.curve().unwrap()
    }

    fn level(fill: f64, since: Option<u32>, at: f64) -> f64 {
        let since = since.map(Minutes);
        STICK.level(STICK.whereabouts(&Sump::TYPICAL, Litres(fill), since, &curve(), Celsius(at)))
    }

    #[test]
    fn closed_form_dipstick_cold_and_run_down() {
        assert!((level(4.5, None, 20.0) - 1.0).abs() < 1e-12);
        assert!((level(3.5, None, 20.0)).abs() < 1e-12);
        assert!((level(3.0, None, 20.0) + 0.5).abs() < 1e-12);
    }

    /// By hand: density falls from 866.75 at 20 °C to 821.25 at 90 °C, so 4.5 l become 4.7493; of
    /// 0.455 l held up at idle `e^(-5/2)` are still up after five minutes at 13 mm²/s.
    #[test]
    fn closed_form_dipstick_hot_and_soon_after() {
        assert!((level(4.5, None, 90.0) - (4.5 * 866.75 / 821.25 - 3.5)).abs() < 1e-9);
        let slower = (curve().kinematic_mm2_s(Celsius(90.0)) / 13.0).sqrt();
        let up_l = 0.455 * (-2.5 / slower).exp();
        let wanted = 4.5 * 866.75 / 821.25 - up_l - 3.5;
        assert!((level(4.5, Some(5), 90.0) - wanted).abs() < 1e-9);
    }

    proptest! {
        /// More oil or a longer wait never reads lower; thick oil runs down more slowly.
        #[test]
        fn prop_dipstick_is_monotone(
            fill in 2.8_f64..5.0, more in 0.0_f64..0.5, wait in 0_u32..60, at in -10.0_f64..110.0,
        ) {
            prop_assert!(level(fill + more, Some(wait), at) >= level(fill, Some(wait), at));
            prop_assert!(level(fill, Some(wait + 1), at) >= level(fill, Some(wait), at));
            prop_assert!(level(fill, None, at) >= level(fill, Some(wait), at));
            let up = |at| {
                let since = Some(Minutes(wait));
                STICK.whereabouts(&Sump::TYPICAL, Litres(fill), since, &curve(), Celsius(at)).up_l
            };
            prop_assert!(up(at) >= up(at + 5.0));
        }

        /// Oil is in the sump or on its way there, never elsewhere, and its mass does not change.
        #[test]
        fn conserves_oil_between_head_and_sump(
            fill in 0.2_f64..6.0, wait in 0_u32..600, at in -20.0_f64..120.0,
        ) {
            let since = Some(Minutes(wait));
            let oil = STICK.whereabouts(&Sump::TYPICAL, Litres(fill), since, &curve(), Celsius(at));
            let mass = |litres: f64, at| litres * curve().fluid(at).density_kg_m3;
            let (before, after) =
                (mass(fill, VOLUMES_AT), mass(oil.sump_l + oil.up_l, Celsius(at)));
            prop_assert!((after / before - 1.0).abs() < 1e-12);
            prop_assert!(oil.sump_l >= 0.0 && oil.up_l >= 0.0);
        }

        /// Less oil, a steeper road or a tighter bend never draws less air.
        #[test]
        fn prop_tilt_never_helps(
            fill in 1.8_f64..4.5, less in 0.0_f64..0.5, uphill in 0.0_f64..0.3, across in 0.0_f64..0.8,
        ) {
            let share = |fill, uphill, across_g| {
                Sump::TYPICAL.gulp_share(Litres(fill), Rpm(2_000.0), 0.3, Tilt { uphill, across_g })
            };
            let now = share(fill, uphill, across);
            prop_assert!(share(fill - less, uphill, across) >= now);
            prop_assert!(share(fill, uphill + 0.05, across) >= now);
            prop_assert!(share(fill, uphill, across + 0.05) >= now);
        }
    }
}
