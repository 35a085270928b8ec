use super::*;
use crate::physics::oil::Oil;
use crate::physics::port::Port;
use crate::units::Celsius;
use proptest::prelude::*;

fn hot() -> Passage {
    Port::TYPICAL.passage(0.0, &Oil::TYPICAL_5W_30.curve().unwrap().fluid(Celsius(90.0)))
}

const ON: PhaserDrive = PhaserDrive {
    gallery_pa: 4.2e5,
    opening: 1.0,
    steady_nm: 0.0,
    pulse: 0.0,
    air: 0.0,
    is_turning: true,
};

/// The preparatory study's drag table [N m], printed to two decimals.
#[test]
fn reference_mean_drag_table() {
    let curve = Oil::TYPICAL_5W_30.curve().unwrap();
    for (rpm, temperature, wanted) in [
        (700.0, 20.0, 1.73),
        (700.0, 90.0, 1.16),
        (2000.0, 20.0, 1.77),
        (2000.0, 90.0, 0.95),
        (4000.0, 20.0, 2.06),
        (4000.0, 90.0, 0.87),
    ] {
        let mu = curve.fluid(Celsius(temperature)).viscosity_pa_s;
        let got = CamshaftDrag::TYPICAL.mean_nm(Rpm(rpm), mu);
        assert!((got - wanted).abs() < 0.005_01, "{rpm} {temperature}: {got}");
    }
}

/// Without pulses and drag the vane moves at the rate of the flow formula, by hand.
#[test]
fn closed_form_constant_drive_moves_at_two_q_over_d() {
    let mut vane = PhaserState::LOCKED;
    let flow = vane.step(&Phaser::TYPICAL_INTAKE, &hot(), &ON, 1e-3);
    let supply_pa = hot().supply_pa(4.2e5);
    let expected = hot().flow_m3_s(1.0, supply_pa);
    assert!((flow - expected - hot().leak_m3_s(supply_pa)).abs() < 1e-18);
    let rate_deg_s = (2.0 * expected / 4.2e-5).to_degrees();
    assert!((vane.away().0 - rate_deg_s * 1e-3).abs() < 1e-12);
    // 50 to 150 degrees a second at 2 to 3 bar is what such phasers do; 4.2 bar is a little more.
    assert!((50.0..180.0).contains(&rate_deg_s), "{rate_deg_s}");
}

/// Pulses on, spool closed: nothing moves, but the vane gives way by torque/(D²)·V·air/p.
#[test]
fn closed_form_ripple_of_an_aerated_chamber() {
    let mut vane = PhaserState::free_at(CrankDegrees(20.0));
    let drive = PhaserDrive { opening: 0.0, pulse: 1.0, air: 0.03, gallery_pa: 1e5, ..ON };
    vane.step(&Phaser::TYPICAL_INTAKE, &hot(), &drive, 1e-3);
    let by_hand = (2.0 * 8.0 / (4.2e-5_f64 * 4.2e-5) * 6e-6 * 0.03 / 2e5).to_degrees();
    assert_eq!(vane.away().0.to_bits(), 20.0_f64.to_bits());
    assert!((vane.seen().0 - 20.0 - by_hand).abs() < 1e-9);
    assert!((0.4..0.6).contains(&by_hand), "{by_hand}");
}

#[test]
fn limit_the_pin_holds_until_oil_and_spool_lift_it() {
    let phaser = Phaser::TYPICAL_INTAKE;
    for (gallery_pa, opening, free) in
        [(0.3e5, 1.0, false), (4.2e5, 0.05, false), (4.2e5, -1.0, false), (0.5e5, 0.5, true)]
    {
        let mut vane = PhaserState::LOCKED;
        for _ in 0..200 {
            let pulse = 1.0;
            vane.step(&phaser, &hot(), &PhaserDrive { gallery_pa, opening, pulse, ..ON }, 1e-3);
        }
        assert_eq!(!vane.is_locked(), free, "{gallery_pa} {opening}");
        assert_eq!(vane.away().0 > 0.0, free);
    }
}

/// A full chamber takes no oil: at the end of the travel only the leak is drawn.
#[test]
fn conserves_oil_at_the_end_of_the_travel() {
    let mut vane = PhaserState::free_at(CrankDegrees(49.0));
    let mut drawn = 0.0;
    let mut last = 0.0;
    for _ in 0..1_000 {
        last = vane.step(&Phaser::TYPICAL_INTAKE, &hot(), &ON, 1e-3);
        drawn += (last - hot().leak_m3_s(hot().supply_pa(4.2e5))) * 1e-3;
    }
    assert_eq!(vane.away().0.to_bits(), 50.0_f64.to_bits());
    assert!((last - hot().leak_m3_s(hot().supply_pa(4.2e5))).abs() < 1e-18);
    // One degree at the crank is half a degree of cam; the step that meets the stop is not counted.
    let wanted = 4.2e-5 * 0.5_f64.to_radians();
    assert!((drawn / wanted - 1.0).abs() < 0.15, "{drawn} {wanted}");
}

/// With the pressure gone the pulses of a turning engine ratchet either phaser home, and a standing
/// engine moves nothing.
#[test]
fn limit_pulses_bring_both_phasers_home_without_pressure() {
    for phaser in [Phaser::TYPICAL_INTAKE, Phaser::TYPICAL_EXHAUST] {
        let cranking_rad_s = 200.0 / 60.0 * core::f64::consts::TAU;
        let steady_nm = phaser.steady_nm(CamshaftDrag::TYPICAL.mean_nm(Rpm(200.0), 0.0109));
        let mut vane = PhaserState::free_at(CrankDegrees(20.0));
        let mut crank_rad = 0.0;
        for _ in 0..2_000 {
            crank_rad += cranking_rad_s * 1e-3;
            let drive = PhaserDrive {
                gallery_pa: 0.0,
                opening: -1.0,
                steady_nm,
                pulse: pulse(crank_rad),
                ..ON
            };
            vane.step(&phaser, &hot(), &drive, 1e-3);
        }
        assert!(vane.is_locked() && vane.away().0 == 0.0, "{phaser:?} {vane:?}");
        let mut standing = PhaserState::free_at(CrankDegrees(20.0));
        let drive = PhaserDrive { gallery_pa: 0.0, opening: -1.0, is_turning: false, ..ON };
        for _ in 0..2_000 {
            standing.step(&phaser, &hot(), &drive, 1e-3);
        }
        assert_eq!(standing.away().0.to_bits(), 20.0_f64.to_bits());
    }
}

/// The signs of the two camshafts: drag holds the intake back and carries the exhaust away, so the
/// exhaust's spring must beat the drag of warm oil, and the intake's must not beat that of a start.
#[test]
fn limit_springs_leave_both_phasers_a_pull_towards_rest() {
    let curve = Oil::TYPICAL_5W_30.curve().unwrap();
    let drag = |rpm, celsius| {
        let mu = curve.fluid(Celsius(celsius)).viscosity_pa_s;
        CamshaftDrag::TYPICAL.mean_nm(Rpm(rpm), mu)
    };
    for celsius in [20.0, 90.0] {
        assert!(Phaser::TYPICAL_EXHAUST.steady_nm(drag(700.0, celsius)) < 0.0);
        assert!(Phaser::TYPICAL_INTAKE.steady_nm(drag(200.0, celsius)) < 0.0);
    }
    assert!(Phaser::TYPICAL_INTAKE.steady_nm(1.4) < Phaser::TYPICAL_INTAKE.steady_nm(1.2));
    assert!(Phaser::TYPICAL_EXHAUST.steady_nm(1.4) > Phaser::TYPICAL_EXHAUST.steady_nm(1.2));
}

/// Euler steps through pulses and check valve: halving the step halves the error, on average over
/// the phase of the last pulse.
#[test]
fn closed_form_vane_motion_is_of_first_order() {
    let travel = |steps: u32, seconds: f64| {
        let mut vane = PhaserState::free_at(CrankDegrees(0.0));
        let dt_s = seconds / f64::from(steps);
        for k in 0..steps {
            let crank_rad = 2_000.0 / 60.0 * core::f64::consts::TAU * dt_s * f64::from(k);
            let drive = PhaserDrive { pulse: pulse(crank_rad), opening: 0.3, ..ON };
            vane.step(&Phaser::TYPICAL_INTAKE, &hot(), &drive, dt_s);
        }
        vane.away().0
    };
    let mut ratio = 0.0;
    for k in 0..8 {
        let seconds = 0.2 + 0.002 * f64::from(k);
        let truth = travel(200_000, seconds);
        ratio += (travel(100, seconds) - truth).abs() / (travel(200, seconds) - truth).abs();
    }
    assert!((1.7..2.3).contains(&(ratio / 8.0)), "{}", ratio / 8.0);
}

proptest! {
    /// The vane never leaves its travel, whatever acts on it.
    #[test]
    fn prop_vane_stays_within_its_travel(
        gallery in 0.0_f64..8e5, opening in -1.0_f64..1.0, pulse in -1.0_f64..1.0,
        start in 0.0_f64..50.0, air in 0.0_f64..0.8,
    ) {
        let mut vane = PhaserState::free_at(CrankDegrees(start));
        for _ in 0..300 {
            let drive = PhaserDrive { gallery_pa: gallery, opening, pulse, air, ..ON };
            let drawn = vane.step(&Phaser::TYPICAL_INTAKE, &hot(), &drive, 1e-3);
            prop_assert!((0.0..=50.0).contains(&vane.away().0) && drawn >= 0.0);
        }
    }
}
