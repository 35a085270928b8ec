//! Methods that integrate: first against their own exact answer, then the order in which their
//! answer comes near that of the equation.

use faultwright::numerics::elementary::{exp, pow};
use faultwright::numerics::stiff;
use faultwright::physics::coil::Winding;
use faultwright::physics::thermal::{HeatPath, Supply, power_in_coil};
use faultwright::physics::warm_up::{EngineHeat, WarmUp};
use faultwright::units::{Celsius, Ohms, Seconds, Volts, Watts};
use proptest::prelude::*;

/// A complex number, real part first.
type Complex = (f64, f64);

const fn times(a: Complex, b: Complex) -> Complex {
    (a.0 * b.0 - a.1 * b.1, a.0 * b.1 + a.1 * b.0)
}

fn over(a: Complex, b: Complex) -> Complex {
    let size = b.0 * b.0 + b.1 * b.1;
    ((a.0 * b.0 + a.1 * b.1) / size, (a.1 * b.0 - a.0 * b.1) / size)
}

/// What a method of order four with one fourfold pole at `1/gamma` makes of `y' = z y` in a step of
/// one: the series of `(1 - gamma z)^4 e^z` up to the fourth power over `(1 - gamma z)^4`. The
/// pole is that of the L-stable set of Hairer and Wanner, volume II, section IV.7, from memory.
fn stability(z: Complex) -> Complex {
    const GAMMA: f64 = 0.572_82;
    let binomial = [1.0, -4.0, 6.0, -4.0, 1.0];
    let factorial = [1.0, 1.0, 2.0, 6.0, 24.0];
    let mut top = (0.0, 0.0);
    let mut power = (1.0, 0.0);
    for k in 0..5 {
        let mut share = 0.0;
        let mut gammas = 1.0;
        for j in 0..=k {
            share += binomial[j] * gammas / factorial[k - j];
            gammas *= GAMMA;
        }
        top = (top.0 + share * power.0, top.1 + share * power.1);
        power = times(power, z);
    }
    let root = (1.0 - GAMMA * z.0, -GAMMA * z.1);
    let square = times(root, root);
    over(top, times(square, square))
}

proptest! {
    /// A turning and decaying pair, from slow to far beyond the step, in one step.
    #[test]
    fn prop_a_linear_pair_follows_the_stability_function_exactly(
        decay in -200.0..0.0_f64, turn in -200.0..200.0_f64, step_s in 1e-3..1.0_f64,
    ) {
        let rate = |y: &[f64; 2]| [decay * y[0] - turn * y[1], turn * y[0] + decay * y[1]];
        let jacobian = [[decay, -turn], [turn, decay]];
        let next = stiff::step(&[1.0, 0.0], step_s, rate, &jacobian);
        let exact = stability((decay * step_s, turn * step_s));
        prop_assert!((next[0] - exact.0).abs() < 1e-10, "{next:?} {exact:?}");
        prop_assert!((next[1] - exact.1).abs() < 1e-10, "{next:?} {exact:?}");
    }

    /// L-stable: whatever decays never grows, at any step.
    #[test]
    fn prop_what_decays_never_grows(decay in -1e9..0.0_f64, turn in -1e9..1e9_f64) {
        let rate = |y: &[f64; 2]| [decay * y[0] - turn * y[1], turn * y[0] + decay * y[1]];
        let jacobian = [[decay, -turn], [turn, decay]];
        let next = stiff::step(&[1.0, 0.0], 1.0, rate, &jacobian);
        prop_assert!(next[0] * next[0] + next[1] * next[1] <= 1.0 + 1e-9, "{next:?}");
    }

    /// Coolant alone, thermostat shut: each explicit step keeps `1 - G dt/C` of the way that is
    /// left, and nothing else.
    #[test]
    fn prop_coolant_alone_follows_its_discrete_solution(
        start in -20.0..80.0_f64, air in -20.0..40.0_f64, heat in 0.0..900.0_f64,
        dt_s in 0.01..1.0_f64, steps in 1_u32..2_000,
    ) {
        let alone = WarmUp { coolant_oil_w_k: 0.0, thermostat_c: 1_000.0, ..WarmUp::TYPICAL };
        let mut engine = EngineHeat::cold(Celsius(start));
        for _ in 0..steps {
            engine.step(&alone, Watts(heat), Celsius(air), dt_s);
        }
        let goal = air + heat / alone.coolant_air_w_k;
        let kept = 1.0 - alone.coolant_air_w_k * dt_s / alone.coolant_j_k;
        let exact = goal + (start - goal) * pow(kept, f64::from(steps));
        prop_assert!((engine.coolant.0 - exact).abs() < 1e-9, "{} {exact}", engine.coolant.0);
    }
}

/// A coil on constant voltage, its resistance rising as it warms: halving the step divides the
/// error by four. One call is one step as long as it lasts no longer than a second, so the power
/// is made large to see the error at all.
#[test]
fn closed_form_order_two_of_a_warming_coil() {
    let quick = HeatPath { capacity_j_per_k: 0.5, resistance_k_per_w: 8.0 };
    let supply = Supply { volts: Volts(12.0), source: Ohms(0.5) };
    let after = |steps: u32| {
        let length = Seconds(4.0 / f64::from(steps));
        (0..steps).fold(Celsius(20.0), |coil, _| {
            quick.heat(&Winding::REFERENCE, coil, Celsius(20.0), supply, length)
        })
    };
    let truth = after(4_096).0;
    let (coarse, fine) = ((after(32).0 - truth).abs(), (after(64).0 - truth).abs());
    let ratio = coarse / fine;
    assert!((3.6..4.4).contains(&ratio), "{coarse:e} {fine:e} {ratio}");
    assert!(fine < 0.05, "{fine}");
    // The truth itself settles where heating and cooling balance.
    let settled = (0..200).fold(Celsius(20.0), |coil, _| {
        quick.heat(&Winding::REFERENCE, coil, Celsius(20.0), supply, Seconds(0.5))
    });
    let balance = 20.0 + 8.0 * power_in_coil(&Winding::REFERENCE, settled, supply).0;
    assert!((settled.0 - balance).abs() < 1e-9, "{} {balance}", settled.0);
}

/// The stability function itself agrees with the exponential up to the fourth power: halving a small
/// argument divides the difference by thirty-two.
#[test]
fn closed_form_the_stability_function_is_of_order_four() {
    let error = |z: f64| (stability((z, 0.0)).0 - exp(z)).abs();
    let ratio = error(-0.04) / error(-0.02);
    assert!((30.0..34.0).contains(&ratio), "{ratio}");
}
