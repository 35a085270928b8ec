//! The moving part of an oil-control valve, and the one law of friction for it.
//!
//! Model: a mass on a preloaded spring between two stops, with a drag from the oil in its gap and a
//! dry friction from varnish. At rest the dry friction holds against up to the stiction `Fst`; once
//! the spool slides it resists with `Fc = 0.6 Fst`; when the spool has slowed to a crawl it is held
//! again. Stops take the spool without rebound. Limits: no flow forces, no jamming by a particle.
//!
//! The full motion in [`stroke`](super::stroke) and the reduced one in [`Spool::follow`] share the
//! break-away, the sliding friction and the crawl at which the spool is held, so both say the same
//! about whether a sticking spool comes back. They differ in how quickly it gets there: the reduced
//! one has no mass and a lag in place of the drag.

use super::range::{OutOfRange, within};
use crate::numerics::elementary::exp;
use crate::units::{Millimetres, Newtons};
use serde::{Deserialize, Serialize};

/// Sliding friction as a share of the stiction (engineering estimate).
pub const SLIDING_SHARE: f64 = 0.6;

/// Speed below which a slowing spool is held [m/s] (assumed): far below every speed that can be heard
/// or seen, and enough that a spool that creeps towards its place comes to rest there.
pub const HOLDING_SPEED_M_PER_S: f64 = 1e-4;

/// Multiplier of the drag for a valve that was taken out and drained: a film of oil stays in the
/// gap (engineering estimate).
pub const DRAINED: f64 = 0.3;

/// Lag of the reduced motion without oil [s] (engineering estimate).
const LAG_S: f64 = 4e-3;
/// Lag added for each pascal-second of oil [1/Pa] (engineering estimate).
const LAG_PER_PA_S: f64 = 0.25;
/// How stiction thickens that: varnish narrows the gap [1/N] (engineering estimate).
const LAG_PER_N: f64 = 6.0;

/// A spool, its spring, its stops and what rubs on it.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Spool {
    /// Mass that moves: spool, plunger and a share of the spring [kg], 0.001 to 1.
    pub moving_mass_kg: f64,
    /// Force of the spring at rest [N], 0 to 100.
    pub preload: Newtons,
    /// Rate of the spring [N/m], 1 to 100 000.
    pub spring_n_per_m: f64,
    /// Distance between the stops [mm], 0.01 to 20.
    pub stroke: Millimetres,
    /// Drag in oil of the reference viscosity [N s/m], 0 to 1000.
    pub oil_drag_n_s_per_m: f64,
    /// Viscosity to which that drag belongs [Pa s], 0.0001 to 100.
    pub reference_viscosity_pa_s: f64,
    /// Drag that is left without oil [N s/m], 0.001 to 1000.
    pub dry_drag_n_s_per_m: f64,
    /// Force that holds the spool at rest [N], 0 (clean) to 1000 (seized).
    pub stiction: Newtons,
    /// Factor on the oil's drag for sludge in the gap, 0 to 1000; 1 is clean.
    pub viscosity_multiplier: f64,
}

/// Whether the spool slides, and which way.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
pub enum Motion {
    /// At rest: on a stop, or held by stiction.
    #[default]
    Held,
    /// Sliding away from rest.
    Opening,
    /// Sliding back to rest.
    Closing,
}

impl Motion {
    /// +1 for opening, -1 for closing, 0 when held.
    pub(super) const fn sign(self) -> f64 {
        match self {
            Self::Held => 0.0,
            Self::Opening => 1.0,
            Self::Closing => -1.0,
        }
    }
}

/// Where a spool is in the reduced motion.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct SpoolState {
    /// Distance from the rest stop [mm], 0 to the stroke.
    pub position: Millimetres,
    /// Whether it slides.
    pub motion: Motion,
}

impl Spool {
    /// The reference spool, clean: engineering estimate. The reference viscosity is that of the 5W-30 of
    /// the oil model at 20 °C.
    pub const REFERENCE: Self = Self {
        moving_mass_kg: 0.025,
        preload: Newtons(0.8),
        spring_n_per_m: 600.0,
        stroke: Millimetres(2.5),
        oil_drag_n_s_per_m: 5.0,
        reference_viscosity_pa_s: 0.134_882_6,
        dry_drag_n_s_per_m: 0.15,
        stiction: Newtons(0.0),
        viscosity_multiplier: 1.0,
    };

    /// Refuses a spool that cannot be.
    ///
    /// # Errors
    /// [`OutOfRange`] with the first field outside the range of its description.
    pub fn check(&self) -> Result<(), OutOfRange> {
        within("moving_mass_kg", self.moving_mass_kg, 0.001, 1.0)?;
        within("preload", self.preload.0, 0.0, 100.0)?;
        within("spring_n_per_m", self.spring_n_per_m, 1.0, 1e5)?;
        within("stroke", self.stroke.0, 0.01, 20.0)?;
        within("oil_drag_n_s_per_m", self.oil_drag_n_s_per_m, 0.0, 1000.0)?;
        within("reference_viscosity_pa_s", self.reference_viscosity_pa_s, 1e-4, 100.0)?;
        within("dry_drag_n_s_per_m", self.dry_drag_n_s_per_m, 0.001, 1000.0)?;
        within("stiction", self.stiction.0, 0.0, 1000.0)?;
        within("viscosity_multiplier", self.viscosity_multiplier, 0.0, 1000.0)
    }

    pub(super) fn stroke_m(&self) -> f64 {
        self.stroke.0 * 1e-3
    }

    /// Magnetic force less spring force [N].
    pub(super) fn net_n(&self, force_n: f64, position_m: f64) -> f64 {
        force_n - self.preload.0 - self.spring_n_per_m * position_m
    }

    /// Dry friction while sliding [N].
    pub(super) fn sliding_n(&self) -> f64 {
        SLIDING_SHARE * self.stiction.0
    }

    /// Drag of the oil and of what is left without it [N s/m].
    pub(super) fn drag_n_s_per_m(&self, oil_viscosity_pa_s: f64) -> f64 {
        let thickness = oil_viscosity_pa_s / self.reference_viscosity_pa_s;
        self.oil_drag_n_s_per_m * thickness * self.viscosity_multiplier + self.dry_drag_n_s_per_m
    }

    /// By how much the net force exceeds what holds a resting spool [N]; negative while it is held. A stop
    /// holds against any force that presses on it, so only the ways that are open count.
    pub(super) fn break_away_excess_n(&self, net_n: f64, position_m: f64) -> f64 {
        let opening = if position_m < self.stroke_m() { net_n } else { f64::NEG_INFINITY };
        let closing = if position_m > 0.0 { -net_n } else { f64::NEG_INFINITY };
        opening.max(closing) - self.stiction.0
    }

    /// Which way a resting spool sets off under a net force, if it does.
    pub(super) fn sets_off(&self, net_n: f64, position_m: f64) -> Motion {
        if self.break_away_excess_n(net_n, position_m) > 0.0 {
            self.way_out(net_n, position_m)
        } else {
            Motion::Held
        }
    }

    /// The way of a spool at the moment it breaks away: from a stop there is only one, even where
    /// rounding has left the net force a hair on the wrong side of nothing.
    pub(super) fn way_out(&self, net_n: f64, position_m: f64) -> Motion {
        let opening = position_m <= 0.0 || net_n > 0.0 && position_m < self.stroke_m();
        if opening { Motion::Opening } else { Motion::Closing }
    }

    /// Whether stiction takes hold of a sliding spool of this speed [m/s, away from rest]: it crawls, and
    /// the net force that pulls it on is no more than stiction can carry.
    pub(super) fn takes_hold(&self, motion: Motion, speed_m_per_s: f64, net_n: f64) -> bool {
        self.stiction.0 > 0.0
            && motion.sign() * speed_m_per_s <= HOLDING_SPEED_M_PER_S
            && motion.sign() * net_n <= self.stiction.0
    }

    /// Follows a magnetic force for `dt_s` seconds in the reduced motion: held until the net force
    /// exceeds the stiction, then sliding with a lag towards the place where it equals the sliding
    /// friction, then held again. For a loop of about a millisecond with a force that changes
    /// slowly; a click or a current trace needs [`stroke`](super::stroke).
    ///
    /// The lag is `4 ms + 0.25/Pa mu (1 + 6/N Fst)`; it stands for the whole drag, so
    /// `viscosity_multiplier` has no part in it.
    pub fn follow(
        &self,
        state: &mut SpoolState,
        force: Newtons,
        oil_viscosity_pa_s: f64,
        dt_s: f64,
    ) {
        let start_m = state.position.0 * 1e-3;
        let net_n = self.net_n(force.0, start_m);
        // 1. A spool that is pulled back past the friction's balance comes to rest before it turns.
        if state.motion.sign() * net_n <= self.sliding_n() {
            state.motion = Motion::Held;
        }
        if state.motion == Motion::Held {
            state.motion = self.sets_off(net_n, start_m);
            if state.motion == Motion::Held {
                return;
            }
        }
        // 2. It slides towards the balance, which may lie beyond a stop.
        let way = state.motion.sign();
        let balance_m = start_m + (net_n - way * self.sliding_n()) / self.spring_n_per_m;
        let lag_s = LAG_S + LAG_PER_PA_S * oil_viscosity_pa_s * (1.0 + LAG_PER_N * self.stiction.0);
        let free_m = balance_m + (start_m - balance_m) * exp(-dt_s / lag_s);
        // 3. A stop or stiction may hold it.
        let end_m = free_m.clamp(0.0, self.stroke_m());
        state.position = Millimetres(end_m * 1e3);
        let speed_m_per_s = (balance_m - free_m) / lag_s;
        let at_stop = free_m <= 0.0 && way < 0.0 || free_m >= self.stroke_m() && way > 0.0;
        if at_stop || self.takes_hold(state.motion, speed_m_per_s, self.net_n(force.0, end_m)) {
            state.motion = Motion::Held;
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    const WARM_OIL: f64 = 0.011;

    fn sticking(newtons: f64) -> Spool {
        Spool { stiction: Newtons(newtons), ..Spool::REFERENCE }
    }

    fn after(spool: &Spool, mut state: SpoolState, newtons: f64, ticks: u32) -> SpoolState {
        for _ in 0..ticks {
            spool.follow(&mut state, Newtons(newtons), WARM_OIL, 1e-3);
        }
        state
    }

    /// Without stiction and stops in the way: `x = (F - F0)/k (1 - e^(-t/tau))`.
    #[test]
    fn closed_form_a_clean_spool_lags_by_one_time_constant() {
        let lag_s = 4e-3 + 0.25 * WARM_OIL;
        for ticks in [1, 5, 40] {
            let there = after(&sticking(0.0), SpoolState::default(), 1.7, ticks).position.0;
            let expected = 1.5 * (1.0 - exp(-f64::from(ticks) * 1e-3 / lag_s));
            assert!((there - expected).abs() < 1e-12, "{ticks}: {there} {expected}");
        }
    }

    /// Held up to the stiction, then off to where the lower sliding friction balances.
    #[test]
    fn closed_form_a_sticking_spool_is_held_and_then_jumps() {
        let spool = sticking(1.0);
        let held = after(&spool, SpoolState::default(), 0.8 + 0.999, 1000);
        assert_eq!(held, SpoolState::default());
        let there = after(&spool, held, 0.8 + 1.001, 1000);
        // (1.001 - 0.6)/600 m, less the crawl at which it is held: 0.1 mm/s in a lag of 23 ms.
        let balance_mm = 0.401 / 0.6;
        let short_mm = balance_mm - there.position.0;
        assert!((0.0..0.003).contains(&short_mm), "{short_mm}");
        assert_eq!(there.motion, Motion::Held);
        // To come back, the spring must overcome the stiction from here.
        let back_n = spool.preload.0 + 0.6 * there.position.0 - 1.0;
        assert_eq!(after(&spool, there, back_n + 1e-6, 1000), there);
        assert!(after(&spool, there, back_n - 1e-6, 1000).position.0 < there.position.0);
    }

    #[test]
    fn limit_a_seized_spool_does_not_stir() {
        let there = SpoolState { position: Millimetres(1.3), motion: Motion::Held };
        assert_eq!(after(&sticking(12.0), there, 8.0, 1000), there);
    }

    #[test]
    fn limit_what_cannot_be_is_refused_by_name() {
        for (wrong, name) in [
            (Spool { moving_mass_kg: 0.0, ..Spool::REFERENCE }, "moving_mass_kg"),
            (Spool { stroke: Millimetres(-2.5), ..Spool::REFERENCE }, "stroke"),
            (sticking(f64::NAN), "stiction"),
        ] {
            assert_eq!(wrong.check().map_err(|error| error.parameter), Err(name));
        }
        assert_eq!(Spool::REFERENCE.check(), Ok(()));
    }

    proptest! {
        /// Any forces, any stiction: inside the stops, and never against the net force.
        #[test]
        fn prop_a_spool_stays_inside_its_stops_and_goes_where_it_is_pulled(
            stiction in 0.0..4.0_f64,
            forces in prop::collection::vec(0.0..6.0_f64, 1..200),
            oil in 0.0..3.0_f64,
        ) {
            let spool = sticking(stiction);
            let mut state = SpoolState::default();
            for force in forces {
                let before = state.position.0;
                spool.follow(&mut state, Newtons(force), oil, 1e-3);
                let moved = state.position.0 - before;
                prop_assert!((0.0..=2.5).contains(&state.position.0));
                prop_assert!(moved * spool.net_n(force, before * 1e-3) >= -1e-15);
            }
        }

        /// The step is exact for a constant force, so a finer loop gives the same place.
        #[test]
        fn prop_ten_short_steps_make_a_long_one(force in 0.9..2.2_f64, oil in 0.0..1.0_f64) {
            let spool = sticking(0.0);
            let (mut one, mut ten) = (SpoolState::default(), SpoolState::default());
            spool.follow(&mut one, Newtons(force), oil, 1e-3);
            for _ in 0..10 {
                spool.follow(&mut ten, Newtons(force), oil, 1e-4);
            }
            prop_assert!((one.position.0 - ten.position.0).abs() < 1e-12);
        }
    }
}
