//! How a spool follows its solenoid when only the slow part of the motion matters.
//!
//! Model: static force against spring and preload, with one friction law: stuck until the surplus
//! exceeds the break-away force, then moving against six tenths of it, with the lag of the oil film.
//! Limits: no inertia, no impact; the full equation of motion serves clicks and current traces.

use crate::numerics::elementary::{exp, ln_cosh};
use crate::units::{Amperes, Newtons};
use serde::{Deserialize, Serialize};

/// Sliding friction as a share of the break-away force (engineering estimate).
const SLIDING_SHARE: f64 = 0.6;
/// Lag of a free spool in thin oil [s] (engineering estimate).
const LEAST_LAG_S: f64 = 4e-3;
/// Further lag for each unit of film viscosity [s/(Pa s)] (engineering estimate).
const FILM_LAG: f64 = 0.25;
/// How much break-away force lengthens the film's lag [1/N] (engineering estimate: what sticks also
/// drags).
const LAG_PER_NEWTON: f64 = 6.0;

/// This near its goal a spool has come to rest [mm]: a hundredth of the dead band of a port, so
/// that a lag that never ends does not keep it moving for ever.
const AT_REST_MM: f64 = 5e-4;

/// Magnet and spring of a control valve.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct SpoolSpec {
    /// Current at which the iron bends over [A] (engineering estimate).
    pub saturation_a: f64,
    /// Slope that is left beyond, as a share (engineering estimate).
    pub beyond_saturation: f64,
    /// Growth of inductance with travel [H/m] (engineering estimate).
    pub inductance_slope_h_m: f64,
    /// Preload of the spring [N] (engineering estimate).
    pub preload_n: f64,
    /// Rate of the spring [N/m] (engineering estimate).
    pub rate_n_m: f64,
    /// Travel [mm] (engineering estimate).
    pub stroke_mm: f64,
}

impl SpoolSpec {
    /// A valve that starts to move at 0.28 A and is open at about 0.5 A (engineering estimate).
    pub const TYPICAL: Self = Self {
        saturation_a: 0.8,
        beyond_saturation: 0.04,
        inductance_slope_h_m: 20.0,
        preload_n: 0.8,
        rate_n_m: 600.0,
        stroke_mm: 2.5,
    };

    /// Magnetic force at a current through a share `turns` of the winding, 0 to 1.
    #[must_use]
    #[inline]
    pub fn force(&self, current: Amperes, turns: f64) -> Newtons {
        let m = turns * current.0;
        let bent = self.saturation_a * self.saturation_a * ln_cosh(m / self.saturation_a);
        Newtons(self.inductance_slope_h_m * (bent + 0.5 * self.beyond_saturation * m * m))
    }
}

impl Default for SpoolSpec {
    fn default() -> Self {
        Self::TYPICAL
    }
}

/// Where a spool is.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct SpoolState {
    /// Distance from the stop of the unpowered valve [mm].
    pub position_mm: f64,
    /// Whether it is moving or ready to.
    pub sliding: bool,
}

/// Friction of one valve with one oil for one time step, worked out once.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SpoolFriction {
    break_away_n: f64,
    approach: f64,
}

impl SpoolFriction {
    /// Friction of a spool that breaks away at `break_away`, in a film of a viscosity [Pa s], for
    /// steps of `dt_s` seconds.
    #[must_use]
    pub fn new(break_away: Newtons, film_pa_s: f64, dt_s: f64) -> Self {
        let lag_s = LEAST_LAG_S + FILM_LAG * film_pa_s * (1.0 + LAG_PER_NEWTON * break_away.0);
        Self { break_away_n: break_away.0, approach: 1.0 - exp(-dt_s / lag_s) }
    }
}

/// Moves a spool on by one step under a magnetic force.
#[inline]
pub fn follow(state: &mut SpoolState, spec: &SpoolSpec, friction: &SpoolFriction, force: Newtons) {
    let free_n = force.0 - spec.preload_n;
    let surplus_n = free_n - spec.rate_n_m * state.position_mm * 1e-3;
    if !state.sliding && surplus_n.abs() <= friction.break_away_n {
        return;
    }
    let drag_n = SLIDING_SHARE * friction.break_away_n;
    if surplus_n.abs() <= drag_n {
        state.sliding = false;
        return;
    }
    state.sliding = true;
    let against_n = if surplus_n > 0.0 { drag_n } else { -drag_n };
    let goal_mm = ((free_n - against_n) / spec.rate_n_m * 1e3).clamp(0.0, spec.stroke_mm);
    state.position_mm += (goal_mm - state.position_mm) * friction.approach;
    if (goal_mm - state.position_mm).abs() < AT_REST_MM {
        state.position_mm = goal_mm;
        state.sliding = false;
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const STEP_S: f64 = 1e-3;

    fn settle(state: &mut SpoolState, break_away: f64, current: f64) -> f64 {
        let friction = SpoolFriction::new(Newtons(break_away), 0.0109, STEP_S);
        let force = SpoolSpec::TYPICAL.force(Amperes(current), 1.0);
        for _ in 0..2_000 {
            follow(state, &SpoolSpec::TYPICAL, &friction, force);
        }
        state.position_mm
    }

    /// Starts at 0.28 A, holds at 0.40 A, full stroke at about 0.5 A: the preparatory study's figures.
    #[test]
    fn reference_currents_of_start_hold_and_full_stroke() {
        let at = |current| settle(&mut SpoolState::default(), 0.0, current);
        assert!(at(0.275) == 0.0 && at(0.285) > 0.0);
        assert!((at(0.395) / 2.5 - 0.5).abs() < 0.02, "{}", at(0.395));
        assert!(at(0.47) < 2.5 && (at(0.51) - 2.5).abs() < 1e-9);
    }

    /// From 2.3 N the friction exceeds preload and full spring, so the spool stays where it is.
    #[test]
    fn closed_form_a_spool_that_sticks_harder_than_its_spring_does_not_return() {
        for (break_away, returns) in [(0.0, true), (1.0, true), (2.2, true), (2.4, false)] {
            let mut state = SpoolState::default();
            assert!((settle(&mut state, break_away, 0.9) - 2.5).abs() < 1e-6);
            let back = settle(&mut state, break_away, 0.0);
            assert_eq!(back < 2.5, returns, "{break_away} N: {back} mm");
        }
    }

    /// From where a returning spool comes to rest the law leaves exactly the sliding friction.
    #[test]
    fn closed_form_return_stops_at_the_sliding_friction() {
        let mut state = SpoolState::default();
        settle(&mut state, 2.0, 0.9);
        // Spring and preload at rest equal 1.2 N: x = (1.2 - 0.8) / 600 m.
        let wanted = (0.6 * 2.0 - 0.8) / 600.0 * 1e3;
        assert!((settle(&mut state, 2.0, 0.0) - wanted).abs() < 1e-6);
    }

    #[test]
    fn closed_form_shorted_turns_weaken_the_magnet_as_less_current_would() {
        let spec = SpoolSpec::TYPICAL;
        let got = spec.force(Amperes(1.0), 0.4).0;
        assert_eq!(got.to_bits(), spec.force(Amperes(0.4), 1.0).0.to_bits());
    }
}
