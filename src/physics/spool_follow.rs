//! How coil and spool of a running engine follow the average current, tick by tick.
//!
//! Model: the equations of [`stroke`](super::stroke), the same parameters, with these approximations:
//!
//! 1. only the average of the pulses drives the coil (no ripple, no dither of the spool);
//! 2. one linearly implicit Euler step a tick, of first order in the tick: the force is taken along its
//!    tangent at the last current, and the voltage that motion induces counts in full;
//! 3. break-away, holding and stops are looked at once a tick. Within the tick in which a spool turns
//!    round, its speed is taken to fall in a straight line.
//!
//! The mass stays. Without it a spool would follow with the lag of its drag alone, drag over spring
//! rate, which is 1 ms in hot oil, while a quarter of the period of the reference mass on its spring is 10 ms:
//! then a spool that sticks would stop where it in truth swings through. In cold oil or sludge the drag
//! outweighs the mass and what is left is that first-order lag.
//!
//! Limits: as in `stroke`; differences between the two are bounded by tests
//! (`tests/valve_time_scales.rs`): the end of a travel by 0.05 mm or, where the spool is held on the
//! way, 0.25 mm, and its time by 3 ms and a tenth.

use super::actuator::Actuator;
use super::solenoid::{FluxLoop, Pull};
use super::spool::{Motion, Spool};
use crate::units::{Amperes, Millimetres};
use serde::{Deserialize, Serialize};

/// A valve with one oil, one circuit and one length of tick, worked out once.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Follower {
    actuator: Actuator,
    dt_s: f64,
    stroke_m: f64,
    /// Conductance of the loops over the tick [S/s].
    conductance_per_tick: f64,
    driven_turns: f64,
    missing_share: f64,
    mass_per_tick: f64,
    /// `m/dt + b + k dt` [N s/m].
    resistance: f64,
    sliding_n: f64,
}

/// Coil and spool.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct SpoolState {
    m_a: f64,
    x_m: f64,
    v_m_per_s: f64,
    motion: Motion,
    pull: Pull,
    current_a: f64,
}

impl SpoolState {
    /// Distance from the stop of the unpowered valve.
    #[must_use]
    pub fn position(&self) -> Millimetres {
        Millimetres(self.x_m * 1e3)
    }

    /// Distance from the stop of the unpowered valve [m].
    #[must_use]
    #[inline]
    pub const fn position_m(&self) -> f64 {
        self.x_m
    }

    /// Whether the spool slides, and which way.
    #[must_use]
    pub const fn motion(&self) -> Motion {
        self.motion
    }

    /// Average current at the terminals.
    #[must_use]
    pub const fn current(&self) -> Amperes {
        Amperes(self.current_a)
    }
}

impl Follower {
    /// A valve whose spool is `spool` (the actuator's own, or the same gummed up), in an oil of a
    /// viscosity [Pa s], in a circuit, for ticks of `dt_s` seconds (more than 0).
    #[must_use]
    pub fn new(
        actuator: &Actuator,
        spool: &Spool,
        oil_viscosity_pa_s: f64,
        flux: &FluxLoop,
        dt_s: f64,
    ) -> Self {
        let mass_per_tick = spool.moving_mass_kg / dt_s;
        let drag = spool.drag_n_s_per_m(oil_viscosity_pa_s);
        Self {
            actuator: Actuator { solenoid: actuator.solenoid, spool: *spool },
            dt_s,
            stroke_m: spool.stroke_m(),
            conductance_per_tick: flux.conductance_s() / dt_s,
            driven_turns: flux.driven_turns(),
            missing_share: flux.missing_share(),
            mass_per_tick,
            resistance: mass_per_tick + drag + spool.spring_n_per_m * dt_s,
            sliding_n: spool.sliding_n(),
        }
    }

    /// A spool at rest at a distance from its stop [mm, 0 to the stroke], without current.
    #[must_use]
    pub fn resting_at(&self, place: Millimetres) -> SpoolState {
        SpoolState {
            m_a: 0.0,
            x_m: place.0 * 1e-3,
            v_m_per_s: 0.0,
            motion: Motion::Held,
            pull: self.actuator.solenoid.pull(0.0),
            current_a: 0.0,
        }
    }

    /// Moves on by one tick. `settled` is the average current that the pulses would settle at.
    #[inline]
    pub fn follow(&self, state: &mut SpoolState, settled: Amperes) {
        let (solenoid, spool) = (&self.actuator.solenoid, &self.actuator.spool);
        let settled_m_a = self.driven_turns * settled.0;
        // 1. The magnetomotive force if the spool stood still, and what it loses for each metre a
        //    second: Phi' = (settled - m)/G with Phi = L(x) g(m), linear in this tick.
        let inertia =
            self.conductance_per_tick * solenoid.inductance_h(state.x_m) * state.pull.slope;
        let share = 1.0 / (1.0 + inertia);
        let still_a = (inertia * state.m_a + settled_m_a) * share;
        let mut m_a = still_a;
        if state.motion == Motion::Held {
            state.pull = solenoid.pull(m_a);
            state.motion = spool.sets_off(spool.net_n(state.pull.force_n, state.x_m), state.x_m);
        } else {
            let way = state.motion.sign();
            let n_per_a = solenoid.inductance_slope_h_per_m * state.pull.value_a;
            let a_per_speed = self.conductance_per_tick * self.dt_s * n_per_a * share;
            // 2. Mass, drag, spring and the induced voltage against the force along its tangent.
            let net_n =
                spool.net_n(state.pull.force_n + n_per_a * (still_a - state.m_a), state.x_m);
            let v_m_per_s = (self.mass_per_tick * state.v_m_per_s + net_n - way * self.sliding_n)
                / (self.resistance + n_per_a * a_per_speed);
            m_a = still_a - a_per_speed * v_m_per_s;
            self.slide(state, v_m_per_s, solenoid.pull(m_a));
        }
        state.m_a = m_a;
        state.current_a = (settled.0 - (settled_m_a - m_a) * self.missing_share).max(0.0);
    }

    /// Takes a spool to the place that its speed of this tick brings it to, or to where it is stopped.
    #[inline]
    fn slide(&self, state: &mut SpoolState, v_m_per_s: f64, pull: Pull) {
        let spool = &self.actuator.spool;
        let way = state.motion.sign();
        state.pull = pull;
        let before_m_per_s = core::mem::replace(&mut state.v_m_per_s, v_m_per_s);
        let mut wanted_m = state.x_m + v_m_per_s * self.dt_s;
        let turns_round = way * v_m_per_s < 0.0;
        if turns_round && spool.stiction.0 > 0.0 {
            // 3. It came to rest on the way: half the speed it had, for the time that took.
            let rested = before_m_per_s / (before_m_per_s - v_m_per_s);
            wanted_m = state.x_m + 0.5 * before_m_per_s * rested * self.dt_s;
        }
        state.x_m = wanted_m.clamp(0.0, self.stroke_m);
        let at_stop =
            wanted_m <= 0.0 && v_m_per_s < 0.0 || wanted_m >= self.stroke_m && v_m_per_s > 0.0;
        let slows = way * (v_m_per_s - before_m_per_s) <= 0.0;
        let net_n = spool.net_n(pull.force_n, state.x_m);
        if at_stop || slows && spool.takes_hold(state.motion, v_m_per_s, net_n) {
            state.v_m_per_s = 0.0;
            state.motion = Motion::Held;
        } else if turns_round {
            state.motion = if way > 0.0 { Motion::Closing } else { Motion::Opening };
        }
    }
}

#[cfg(test)]
mod tests;
