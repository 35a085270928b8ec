//! The oil in the sump: how much the pump can reach, how much air it swallows, what a dipstick
//! shows.
//!
//! Model: a running engine holds some oil up in head and galleries; what is left above the pick-up
//! decides how often it draws air. Drawing air is a telegraph process, looked at anew at random
//! moments. Limits: no slope or cornering direction, one pick-up, foam only as an air share.

use crate::numerics::elementary::{exp, ln};
use crate::numerics::streams::Stream;
use crate::units::{Litres, Millimetres, Minutes, Rpm};
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
    };

    /// Oil that is up in the engine at a speed.
    #[must_use]
    pub fn held_up(&self, speed: Rpm) -> Litres {
        Litres(self.held_up_l + self.held_up_fast_l * speed.0 / REFERENCE_RPM)
    }

    /// Share of the time in which the pump draws air, 0 to 1, at an engine load of 0 to 1.
    #[must_use]
    pub fn gulp_share(&self, fill: Litres, speed: Rpm, load: f64) -> f64 {
        let slosh_g =
            if load > SLOSHING_LOAD { ACCELERATION_G * (load - STEADY_LOAD) } else { 0.0 };
        let margin_l =
            fill.0 - self.held_up(speed).0 - self.pickup_l - self.slosh_l_per_g * slosh_g;
        1.0 / (1.0 + exp(margin_l / self.onset_l))
    }

    /// Air share of the oil by speed alone, 0 to 1.
    #[must_use]
    fn churned_air(&self, speed: Rpm) -> f64 {
        let relative = speed.0 / REFERENCE_RPM;
        self.air + self.air_fast * relative * relative
    }
}

impl Default for Sump {
    fn default() -> Self {
        Self::TYPICAL
    }
}

/// The air in the pump as it changes.
#[derive(Debug, Clone)]
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
    pub fn step(&mut self, sump: &Sump, fill: Litres, speed: Rpm, load: f64, dt_s: f64) {
        self.next_look_s -= dt_s;
        if self.next_look_s <= 0.0 {
            // Waiting times drawn rather than a coin tossed each step: the same process at any step.
            self.is_gulping = self.stream.unit() < sump.gulp_share(fill, speed, load);
            self.next_look_s += -ln(1.0 - self.stream.unit()) / sump.gulp_rate_per_s;
        }
        let gulped = if self.is_gulping { sump.air_gulping } else { 0.0 };
        let towards = sump.churned_air(speed) + gulped;
        self.air += (towards - self.air) * dt_s / (sump.air_lag_s + dt_s);
    }
}

/// A dipstick and the time that oil takes to run back to it.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Dipstick {
    /// Fill at the lower mark [l] (engineering estimate).
    pub lower_mark_l: f64,
    /// Length of stick for each litre [mm/l] (engineering estimate).
    pub mm_per_l: f64,
    /// Distance of the tip below the lower mark [mm] (engineering estimate).
    pub tip_mm: f64,
    /// Minutes in which the held-up oil falls to 37 % of what it was (engineering estimate; hence
    /// the custom of waiting five to ten minutes).
    pub drain_min: f64,
}

impl Dipstick {
    /// One litre between the marks, the upper one at 4.5 l (engineering estimate).
    pub const TYPICAL: Self =
        Self { lower_mark_l: 3.5, mm_per_l: 20.0, tip_mm: 16.0, drain_min: 2.0 };

    /// Height of the oil above the lower mark, negative below it; `None` when the stick comes out
    /// dry. Too short a wait reads low, because oil is still on its way down.
    #[must_use]
    pub fn reading(&self, sump: &Sump, fill: Litres, since_stop: Minutes) -> Option<Millimetres> {
        let held_up_l = sump.held_up(Rpm(SWITCH_OFF_RPM)).0;
        let still_up_l = held_up_l * exp(-f64::from(since_stop.0) / self.drain_min);
        let height_mm = (fill.0 - still_up_l - self.lower_mark_l) * self.mm_per_l;
        (height_mm > -self.tip_mm).then_some(Millimetres(height_mm))
    }
}

impl Default for Dipstick {
    fn default() -> Self {
        Self::TYPICAL
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::numerics::streams::Streams;
    use proptest::prelude::*;

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
                let got = Sump::TYPICAL.gulp_share(Litres(fill), Rpm(rpm), 0.2);
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
                aeration.step(&sump, Litres(2.2), Rpm(2_500.0), 0.2, dt_s);
                sum += aeration.air();
            }
            let wanted = sump.churned_air(Rpm(2_500.0))
                + sump.air_gulping * sump.gulp_share(Litres(2.2), Rpm(2_500.0), 0.2);
            // 4000 s at 4 independent looks a second: standard error 0.75·0.47·√2/√16000 = 0.004.
            assert!((sum / f64::from(steps) - wanted).abs() < 0.016, "{dt_s}");
        }
    }

    #[test]
    fn limit_a_full_sump_draws_no_air_in_a_spirited_hour() {
        let sump = Sump::TYPICAL;
        let mut aeration = Aeration::new(&sump, Streams::new(1).stream("aeration"));
        for _ in 0..3_600_000 {
            aeration.step(&sump, Litres(4.5), Rpm(3_000.0), 0.5, 1e-3);
            assert!(aeration.air() <= sump.churned_air(Rpm(3_000.0)) + 1e-12);
        }
    }

    #[test]
    fn closed_form_dipstick_between_the_marks() {
        let stick = Dipstick::TYPICAL;
        let after_an_hour = |fill| stick.reading(&Sump::TYPICAL, Litres(fill), Minutes(60));
        assert!((after_an_hour(4.5).unwrap().0 - 20.0).abs() < 1e-9);
        assert!((after_an_hour(3.0).unwrap().0 + 10.0).abs() < 1e-9);
        assert_eq!(after_an_hour(2.2), None);
    }

    proptest! {
        /// More oil or a longer wait never reads lower.
        #[test]
        fn prop_dipstick_is_monotone(fill in 2.8_f64..5.0, more in 0.0_f64..0.5, wait in 0_u32..60) {
            let read = |fill, wait| {
                let reading = Dipstick::TYPICAL.reading(&Sump::TYPICAL, Litres(fill), Minutes(wait));
                reading.map_or(f64::NEG_INFINITY, |height| height.0)
            };
            prop_assert!(read(fill + more, wait) >= read(fill, wait));
            prop_assert!(read(fill, wait + 1) >= read(fill, wait));
        }
    }
}
