use super::*;
use crate::physics::coil::Winding;
use crate::physics::solenoid::Solenoid;
use crate::units::{Celsius, Newtons, Ohms};
use proptest::prelude::*;

const COLD_OIL: f64 = 0.135;

fn loop_of(winding: &Winding) -> FluxLoop {
    FluxLoop::new(winding, Celsius(20.0), Ohms(0.5))
}

/// A valve of the reference actuator with another spool.
fn valve(spool: &Spool, dt_s: f64) -> Follower {
    Follower::new(&Actuator::REFERENCE, spool, COLD_OIL, &loop_of(&Winding::REFERENCE), dt_s)
}

/// What an implicit step makes of a seized plunger and iron that does not saturate:
/// `i_n = I (1 - (1 + dt/tau)^-n)`, `tau = L/R`.
#[test]
fn closed_form_current_of_a_seized_plunger_is_geometric() {
    let solenoid = Solenoid { saturation: Amperes(1e3), ..Solenoid::REFERENCE };
    let actuator = Actuator { solenoid, spool: Spool::REFERENCE };
    let seized = Spool { stiction: Newtons(1000.0), ..Spool::REFERENCE };
    let valve = Follower::new(&actuator, &seized, COLD_OIL, &loop_of(&Winding::REFERENCE), 1e-3);
    let mut state = valve.resting_at(Millimetres(1.0));
    let tau_s = (12e-3 + 20.0 * 1e-3) * 1.04 / 11.5;
    let mut left = 1.0;
    for _ in 0..20 {
        valve.follow(&mut state, Amperes(0.6));
        left /= 1.0 + 1e-3 / tau_s;
        let exact = 0.6 * (1.0 - left);
        assert!((state.current().0 - exact).abs() < 1e-6, "{} {exact}", state.current().0);
    }
    assert!((state.position().0 - 1.0).abs() < 1e-15);
}

/// A free spool under a constant force (no iron, the spring itself pushes it out with 1 N): the place is a
/// sum of two geometric series, whose ratios solve `(m + b dt + k dt^2) z^2 - (2 m + b dt) z + m = 0`.
#[test]
fn closed_form_motion_of_a_free_spool_is_two_geometric_series() {
    let solenoid = Solenoid { inductance_slope_h_per_m: 0.0, ..Solenoid::REFERENCE };
    let spool = Spool { preload: Newtons(-1.0), oil_drag_n_s_per_m: 12.0, ..Spool::REFERENCE };
    let actuator = Actuator { solenoid, spool };
    let dt = 1e-3;
    let valve = Follower::new(&actuator, &spool, COLD_OIL, &loop_of(&Winding::REFERENCE), dt);
    let mut state = valve.resting_at(Millimetres(0.0));
    // The first tick only finds that it is no longer held.
    valve.follow(&mut state, Amperes(0.0));
    let (m, b, k) = (0.025, spool.drag_n_s_per_m(COLD_OIL), 600.0);
    let (all, middle) = (m + b * dt + k * dt * dt, 2.0 * m + b * dt);
    let root = (middle * middle - 4.0 * all * m).sqrt();
    assert!(root > 0.0);
    let (slow, quick) = ((middle + root) / (2.0 * all), (middle - root) / (2.0 * all));
    let end_m = 1.0 / k;
    let first_m = dt * dt / all;
    // x_n = X + p slow^n + q quick^n with x_0 = 0 and x_1 = dt^2/(m + b dt + k dt^2).
    let q = (first_m - end_m + end_m * slow) / (quick - slow);
    let p = -end_m - q;
    let (mut slows, mut quicks) = (1.0, 1.0);
    for tick in 1..200 {
        valve.follow(&mut state, Amperes(0.0));
        slows *= slow;
        quicks *= quick;
        let exact = end_m + p * slows + q * quicks;
        assert!((state.position_m() - exact).abs() < 1e-15, "{tick}");
    }
    assert!((state.position_m() / end_m - 1.0).abs() < 0.01);
}

/// Halving the tick halves the error of place and current, through break-away and induced voltage.
#[test]
fn closed_form_following_is_of_first_order() {
    let run = |dt_s: f64| {
        let valve = valve(&Spool::REFERENCE.gummed(Newtons(0.3)), dt_s);
        let mut state = valve.resting_at(Millimetres(0.0));
        for _ in 0..(6e-3 / dt_s).round() as u32 {
            valve.follow(&mut state, Amperes(1.0));
        }
        (state.position().0, state.current().0)
    };
    let truth = run(2.5e-7);
    let (coarse, fine) = (run(1e-4), run(5e-5));
    assert!(truth.0 > 0.3 && truth.0 < 2.5, "{truth:?}");
    for (coarse, fine, truth) in [(coarse.0, fine.0, truth.0), (coarse.1, fine.1, truth.1)] {
        let ratio = (coarse - truth) / (fine - truth);
        assert!((1.5..2.7).contains(&ratio), "{ratio}");
    }
}

/// Held up to the stiction, then it goes.
#[test]
fn closed_form_a_sticking_spool_is_held_up_to_its_stiction() {
    let spool = Spool::REFERENCE.gummed(Newtons(1.0));
    let valve = valve(&spool, 1e-3);
    let after = |amperes: f64| {
        let mut state = valve.resting_at(Millimetres(0.0));
        for _ in 0..2_000 {
            valve.follow(&mut state, Amperes(amperes));
        }
        state.position().0
    };
    // The current whose steady force is preload plus stiction, by halving.
    let force =
        |amperes: f64| Solenoid::REFERENCE.force_at(Amperes(amperes), &Winding::REFERENCE).0;
    let (mut low, mut high) = (0.2, 1.0);
    for _ in 0..60 {
        let middle = 0.5 * (low + high);
        if force(middle) < 1.8 { low = middle } else { high = middle }
    }
    assert_eq!(after(low - 1e-6).to_bits(), 0.0_f64.to_bits());
    assert!(after(high + 1e-6) > 0.6, "{}", after(high + 1e-6));
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(32))]

    /// What the supply gives is found in copper, field, spring, mass, drag, friction and stops; what
    /// the implicit step loses on the way is of the order of the tick.
    #[test]
    fn conserves_energy_but_for_the_tick(
        volts in 4.0..16.0_f64, stiction in 0.0..2.0_f64, turns in 0.7..1.4_f64, on_ms in 5_u32..40,
    ) {
        let winding = Winding { turns, ..Winding::REFERENCE };
        let spool = Spool::REFERENCE.gummed(Newtons(stiction));
        let imbalance = |dt_s: f64| {
            let valve = Follower::new(&Actuator::REFERENCE, &spool, COLD_OIL, &loop_of(&winding), dt_s);
            let mut state = valve.resting_at(Millimetres(0.0));
            let (mut supplied, mut lost) = (0.0, 0.0);
            let drag = spool.drag_n_s_per_m(COLD_OIL);
            for _ in 0..(f64::from(on_ms) * 1e-3 / dt_s).round() as u32 {
                let before = state;
                valve.follow(&mut state, Amperes(volts / 11.5));
                let current = state.current().0;
                supplied += volts * current * dt_s;
                let moved = state.x_m - before.x_m;
                lost += 11.5 * current * current * dt_s + spool.sliding_n() * moved.abs();
                lost += drag * moved * moved / dt_s;
                if state.motion == Motion::Held && before.motion != Motion::Held {
                    lost += 0.5 * spool.moving_mass_kg * before.v_m_per_s * before.v_m_per_s;
                }
            }
            let solenoid = Solenoid::REFERENCE;
            let field = solenoid.inductance_h(state.x_m)
                * (state.m_a * state.pull.value_a - solenoid.coenergy_per_henry(state.m_a));
            let spring = spool.preload.0 * state.x_m
                + 0.5 * spool.spring_n_per_m * state.x_m * state.x_m;
            let moving = 0.5 * spool.moving_mass_kg * state.v_m_per_s * state.v_m_per_s;
            (lost + field + spring + moving) / supplied - 1.0
        };
        let (coarse, fine) = (imbalance(1e-4), imbalance(1e-5));
        prop_assert!(coarse.abs() < 0.03, "{coarse}");
        prop_assert!(fine.abs() < 0.004 && fine.abs() < 0.5 * coarse.abs() + 2e-4, "{coarse} {fine}");
    }

    /// Any currents, any stiction: inside the stops, and all is a number.
    #[test]
    fn prop_a_spool_stays_inside_its_stops(
        stiction in 0.0..12.0_f64, oil in 0.002..20.0_f64, share in 0.0..0.95_f64,
        currents in prop::collection::vec(0.0..2.0_f64, 1..200),
    ) {
        let winding = Winding { shorted_share: share, ..Winding::REFERENCE };
        let spool = Spool::REFERENCE.gummed(Newtons(stiction));
        let valve = Follower::new(&Actuator::REFERENCE, &spool, oil, &loop_of(&winding), 1e-3);
        let mut state = valve.resting_at(Millimetres(0.0));
        for current in currents {
            for _ in 0..5 {
                valve.follow(&mut state, Amperes(current));
            }
            prop_assert!((0.0..=2.5).contains(&state.position().0));
            prop_assert!(state.current().0.is_finite() && state.current().0 >= 0.0);
        }
    }
}
