//! The equations of coil and spool together, from event to event.
//!
//! State: magnetomotive force [A of the reference winding], place [m], speed [m/s]. The current is
//! integrated rather than the flux, because flux as state would need a root for the current at
//! every evaluation; the flux is continuous all the same, since an impact changes only the speed.
//! Steps are fixed; a step in which the spool sets off, strikes a stop or is held is cut at that
//! moment, found by a root, so that the order of the method survives the event.

use super::super::solenoid::{FluxLoop, Solenoid};
use super::super::spool::{HOLDING_SPEED_M_PER_S, Motion, Spool};
use crate::numerics::{root, stiff};

/// Width to which the moment of an event is found [share of a step]; half a millionth of a
/// microsecond at the longest step.
const EVENT_WIDTH: f64 = 1e-9;

/// The flux has settled when the current is this close to its end [A]; the force is then within a
/// few millionths of a newton of its end.
const SETTLED_A: f64 = 1e-7;

/// Time within a phase after which the flux has settled, its time constants being a few
/// milliseconds, and only a spool in sludge is still on its way [s].
const QUICK_S: f64 = 0.06;

/// How much longer a step is from then on, where the drag is [`HEAVY`].
const LONGER: f64 = 10.0;

/// Drag over `sqrt(spring * mass)` from which a spool creeps whatever happens (2 is critical).
const HEAVY: f64 = 8.0;

/// Magnetomotive force [A], place [m], speed away from rest [m/s].
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct State {
    pub m_a: f64,
    pub x_m: f64,
    pub v_m_per_s: f64,
    pub motion: Motion,
}

/// What happened at a moment, if anything.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Incident {
    /// Nothing: the end of a step, or the state after an incident at the same time.
    None,
    /// The spool set off.
    SetsOff,
    /// It reached a stop; the state still has the speed of arrival.
    Strikes,
    /// Stiction took hold of it; the state still has its last speed.
    IsHeld,
}

/// One moment of a phase, shown to the watcher in order of time.
#[derive(Debug, Clone, Copy)]
pub struct Moment {
    /// Time since the phase began [s].
    pub at_s: f64,
    pub state: State,
    /// Current through the terminals [A].
    pub current_a: f64,
    pub incident: Incident,
}

/// A valve on a supply.
#[derive(Debug, Clone, Copy)]
pub struct Machine<'a> {
    pub solenoid: &'a Solenoid,
    pub spool: &'a Spool,
    pub flux: FluxLoop,
    pub drag_n_s_per_m: f64,
    /// The step while things are quick [s].
    pub step_s: f64,
}

/// When a phase may end before its time.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Until {
    /// All of it; once flux and spool rest, the remaining time is passed over in one go.
    Time,
    /// Flux and spool rest.
    Rest,
}

impl Machine<'_> {
    /// Runs one phase of constant supply and shows every moment to `watch`.
    pub fn run(
        &self,
        supply_v: f64,
        from: State,
        lasting_s: f64,
        until: Until,
        mut watch: impl FnMut(&Moment),
    ) -> State {
        let mut show = |at_s: f64, state: State, incident: Incident| {
            let current_a = self.flux.terminal_a(state.m_a, supply_v);
            watch(&Moment { at_s, state, current_a, incident });
        };
        let mut state = from;
        show(0.0, state, Incident::None);
        let heavy = self.drag_n_s_per_m * self.drag_n_s_per_m
            > HEAVY * HEAVY * self.spool.spring_n_per_m * self.spool.moving_mass_kg;
        // Times are counted in whole steps, not summed.
        let quick_steps = if heavy { (QUICK_S / self.step_s).ceil() } else { f64::INFINITY };
        let mut count = 0.0_f64;
        loop {
            let longer = count >= quick_steps;
            let step_s = if longer { LONGER * self.step_s } else { self.step_s };
            let begin_s =
                if longer { count + (count - quick_steps) * (LONGER - 1.0) } else { count }
                    * self.step_s;
            let left_s = lasting_s - begin_s;
            if left_s <= EVENT_WIDTH * step_s {
                return state;
            }
            if self.rests(&state, supply_v) {
                state.m_a = self.flux.settled_a(supply_v);
                let end_s = if until == Until::Time { lasting_s } else { begin_s };
                show(end_s, state, Incident::None);
                return state;
            }
            state = self.one_step(supply_v, state, begin_s, step_s.min(left_s), &mut show);
            count += 1.0;
        }
    }

    /// One step with all its events.
    fn one_step(
        &self,
        supply_v: f64,
        from: State,
        begin_s: f64,
        step_s: f64,
        show: &mut impl FnMut(f64, State, Incident),
    ) -> State {
        let mut state = from;
        let mut done_s = 0.0;
        while step_s - done_s > EVENT_WIDTH * step_s {
            let (used_s, arrived, incident) = self.advance(supply_v, &state, step_s - done_s);
            done_s += used_s;
            show(begin_s + done_s, arrived, incident);
            state = self.after(arrived, incident);
            if incident != Incident::None {
                show(begin_s + done_s, state, Incident::None);
            }
        }
        state
    }

    /// Goes on by `step_s`, or to the first event before that.
    fn advance(&self, supply_v: f64, from: &State, step_s: f64) -> (f64, State, Incident) {
        let at = |share: f64| self.smooth_step(supply_v, from, share * step_s);
        let cut = |excess: &dyn Fn(&State) -> f64, incident: Incident| {
            // Without a change of sign the event lies at the end of the step.
            let share =
                root::between(0.0, 1.0, EVENT_WIDTH, |share| excess(&at(share))).unwrap_or(1.0);
            (share * step_s, at(share), incident)
        };
        if from.motion == Motion::Held {
            let excess =
                |state: &State| self.spool.break_away_excess_n(self.net_n(state), state.x_m);
            if excess(from) > 0.0 {
                return (0.0, *from, Incident::SetsOff);
            }
            let end = at(1.0);
            if excess(&end) > 0.0 {
                return cut(&excess, Incident::SetsOff);
            }
            return (step_s, end, Incident::None);
        }
        let end = at(1.0);
        let way = from.motion.sign();
        let beyond = |state: &State| {
            if way > 0.0 { state.x_m - self.spool.stroke_m() } else { -state.x_m }
        };
        if beyond(&end) >= 0.0 {
            // A spool that sets off from a stop stands on it at first, never on the one ahead.
            return cut(&beyond, Incident::Strikes);
        }
        let slows = |state: &State| HOLDING_SPEED_M_PER_S - way * state.v_m_per_s;
        let loses = way * self.acceleration_m_per_s2(&end) <= 0.0;
        if loses && self.spool.takes_hold(from.motion, end.v_m_per_s, self.net_n(&end)) {
            if slows(from) < 0.0 {
                return cut(&slows, Incident::IsHeld);
            }
            return (step_s, end, Incident::IsHeld);
        }
        (step_s, end, Incident::None)
    }

    /// The state right after an incident.
    fn after(&self, mut state: State, incident: Incident) -> State {
        match incident {
            Incident::None => {
                // Without stiction a spool may turn round on the way.
                if state.motion != Motion::Held && state.motion.sign() * state.v_m_per_s < 0.0 {
                    state.motion =
                        if state.v_m_per_s > 0.0 { Motion::Opening } else { Motion::Closing };
                }
            }
            Incident::SetsOff => state.motion = self.spool.way_out(self.net_n(&state), state.x_m),
            Incident::Strikes => {
                state.x_m =
                    if state.motion == Motion::Opening { self.spool.stroke_m() } else { 0.0 };
                state.v_m_per_s = 0.0;
                state.motion = Motion::Held;
            }
            Incident::IsHeld => {
                state.v_m_per_s = 0.0;
                state.motion = Motion::Held;
            }
        }
        state
    }

    fn net_n(&self, state: &State) -> f64 {
        self.spool.net_n(self.solenoid.force_n(state.m_a), state.x_m)
    }

    fn acceleration_m_per_s2(&self, state: &State) -> f64 {
        (self.net_n(state)
            - self.drag_n_s_per_m * state.v_m_per_s
            - state.motion.sign() * self.spool.sliding_n())
            / self.spool.moving_mass_kg
    }

    /// Whether nothing will change any more.
    fn rests(&self, state: &State, supply_v: f64) -> bool {
        let settled_a = self.flux.settled_a(supply_v);
        let net_n = self.spool.net_n(self.solenoid.force_n(settled_a), state.x_m);
        state.motion == Motion::Held
            && (state.m_a - settled_a).abs() <= SETTLED_A
            && self.spool.sets_off(net_n, state.x_m) == Motion::Held
    }

    /// A step without events.
    fn smooth_step(&self, supply_v: f64, from: &State, step_s: f64) -> State {
        if step_s <= 0.0 {
            return *from;
        }
        if from.motion == Motion::Held {
            let rate = |y: &[f64; 1]| [self.m_rate(supply_v, y[0], from.x_m, 0.0)];
            let jacobian = [[self.m_rate_slopes(supply_v, from)[0]]];
            let [m_a] = stiff::step(&[from.m_a], step_s, rate, &jacobian);
            return State { m_a, ..*from };
        }
        let rate = |y: &[f64; 3]| {
            let state = State { m_a: y[0], x_m: y[1], v_m_per_s: y[2], ..*from };
            [self.m_rate(supply_v, y[0], y[1], y[2]), y[2], self.acceleration_m_per_s2(&state)]
        };
        let mass_kg = self.spool.moving_mass_kg;
        let pull_n_per_a =
            self.solenoid.inductance_slope_h_per_m * self.solenoid.shape(from.m_a).value_a;
        let jacobian = [
            self.m_rate_slopes(supply_v, from),
            [0.0, 0.0, 1.0],
            [
                pull_n_per_a / mass_kg,
                -self.spool.spring_n_per_m / mass_kg,
                -self.drag_n_s_per_m / mass_kg,
            ],
        ];
        let [m_a, x_m, v_m_per_s] =
            stiff::step(&[from.m_a, from.x_m, from.v_m_per_s], step_s, rate, &jacobian);
        State { m_a, x_m, v_m_per_s, ..*from }
    }

    /// `dm/dt` [A/s], from `Phi' = L1 v g(m) + L(x) g'(m) m'`.
    fn m_rate(&self, supply_v: f64, m_a: f64, x_m: f64, v_m_per_s: f64) -> f64 {
        let shape = self.solenoid.shape(m_a);
        let moving_v = self.solenoid.inductance_slope_h_per_m * v_m_per_s * shape.value_a;
        (self.flux.flux_rate_v(m_a, supply_v) - moving_v)
            / (self.solenoid.inductance_h(x_m) * shape.slope)
    }

    /// Derivatives of [`Self::m_rate`] by current, place and speed.
    fn m_rate_slopes(&self, supply_v: f64, state: &State) -> [f64; 3] {
        let shape = self.solenoid.shape(state.m_a);
        let rise = self.solenoid.inductance_slope_h_per_m;
        let inductance_h = self.solenoid.inductance_h(state.x_m);
        let stiffness_h = inductance_h * shape.slope;
        let rate = self.m_rate(supply_v, state.m_a, state.x_m, state.v_m_per_s);
        [
            (self.flux.flux_rate_slope_v_per_a() - rise * state.v_m_per_s * shape.slope)
                / stiffness_h
                - rate * shape.bend_per_a / shape.slope,
            -rate * rise / inductance_h,
            -rise * shape.value_a / stiffness_h,
        ]
    }
}
