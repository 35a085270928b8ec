//! The moving part of an oil-control valve, and the one law of friction for it.
//!
//! Model: a mass on a preloaded spring between two stops, with a drag from the oil in its gap and a
//! dry friction from varnish. At rest the dry friction holds against up to the stiction `Fst`; once
//! the spool slides it resists with `Fc = 0.6 Fst`; when the spool has slowed to a crawl it is held
//! again. Stops take the spool without rebound. Limits: no flow forces, no jamming by a particle.
//!
//! The full motion in [`stroke`](super::stroke) and the one of the running engine in
//! [`spool_follow`](super::spool_follow) take their mass, spring, drag, break-away and sliding friction
//! from here, so both say the same about whether a sticking spool comes back.

use super::range::{OutOfRange, within};
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

/// What sludge that sticks with one newton does to the drag of the oil film, as a factor on the
/// clean one: it narrows the gap. Engineering estimate.
const FILM_FACTOR_PER_N: f64 = 2.0;
/// The most that it does: a seized spool does not move anyway. Engineering estimate.
const MOST_FILM_FACTOR: f64 = 12.0;

/// A spool, its spring, its stops and what rubs on it.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(test, derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields, default)]
pub struct Spool {
    /// Mass that moves: spool, plunger and a share of the spring [kg], 0.001 to 1.
    pub moving_mass_kg: f64,
    /// Force of the spring at rest [N], 0 to 100.
    pub preload: Newtons,
    /// Rate of the spring [N/m], 1 to 100000.
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

impl Default for Spool {
    fn default() -> Self {
        Self::REFERENCE
    }
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

    /// The same spool gummed up until it breaks away at `stiction` [N, 0 to 1000]: what sticks also
    /// thickens the film, by twice the newtons, at least once and at most twelve times.
    #[must_use]
    pub fn gummed(&self, stiction: Newtons) -> Self {
        let film = (FILM_FACTOR_PER_N * stiction.0).clamp(1.0, MOST_FILM_FACTOR);
        Self { stiction, viscosity_multiplier: film, ..*self }
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
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn limit_what_cannot_be_is_refused_by_name() {
        for (wrong, name) in [
            (Spool { moving_mass_kg: 0.0, ..Spool::REFERENCE }, "moving_mass_kg"),
            (Spool { stroke: Millimetres(-2.5), ..Spool::REFERENCE }, "stroke"),
            (Spool { stiction: Newtons(f64::NAN), ..Spool::REFERENCE }, "stiction"),
        ] {
            assert_eq!(wrong.check().map_err(|error| error.parameter), Err(name));
        }
        assert_eq!(Spool::REFERENCE.check(), Ok(()));
    }

    #[test]
    fn closed_form_gum_thickens_the_film_within_two_bounds() {
        for (stiction, film) in [(0.0, 1.0), (0.1, 1.0), (2.0, 4.0), (6.0, 12.0), (12.0, 12.0)] {
            let spool = Spool::REFERENCE.gummed(Newtons(stiction));
            assert_eq!(spool.viscosity_multiplier.to_bits(), f64::to_bits(film), "{stiction}");
            assert_eq!(spool.check(), Ok(()));
        }
    }

    proptest! {
        /// A resting spool sets off the way it is pulled, and only when pulled harder than it sticks.
        #[test]
        fn prop_a_resting_spool_goes_where_it_is_pulled(
            stiction in 0.0..4.0_f64, net in -8.0..8.0_f64, share in 0.0..1.0_f64,
        ) {
            let spool = Spool::REFERENCE.gummed(Newtons(stiction));
            let place = share * spool.stroke_m();
            match spool.sets_off(net, place) {
                Motion::Held => prop_assert!(net.abs() <= stiction || place <= 0.0 && net < 0.0),
                Motion::Opening => prop_assert!(net > stiction),
                Motion::Closing => prop_assert!(-net > stiction && place > 0.0),
            }
        }
    }
}
