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
    pulse_nm: 0.0,
    viscosity_pa_s: 0.0109,
    air: 0.0,
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
    let drive = PhaserDrive { opening: 0.0, pulse_nm: 8.0, air: 0.03, gallery_pa: 1e5, ..ON };
    vane.step(&Phaser::TYPICAL_INTAKE, &hot(), &drive, 1e-3);
    // 10 and 15 degrees of cam beside 4 cm3 of clearance, as two springs side by side.
    let (one, other) =
        (4e-6 + 4.2e-5 * 10.0_f64.to_radians(), 4e-6 + 4.2e-5 * 15.0_f64.to_radians());
    let springy = 1.0 / (1.0 / one + 1.0 / other);
    let by_hand = (2.0 * 8.0 / (4.2e-5_f64 * 4.2e-5) * springy * 0.03 / 2e5).to_degrees();
    // The pulse also seeps past the seals, by what the leak lets through in a millisecond.
    let seeps = (2.0 * 8.0 / 4.2e-5 * 1e-14 / 0.0109 / 4.2e-5 * 1e-3_f64).to_degrees();
    assert!((vane.away().0 - 20.0 - seeps).abs() < 1e-12 && seeps < 1e-3, "{seeps}");
    assert!((vane.seen().0 - vane.away().0 - by_hand).abs() < 1e-4 * by_hand);
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
            let pulse_nm = 8.0;
            vane.step(&phaser, &hot(), &PhaserDrive { gallery_pa, opening, pulse_nm, ..ON }, 1e-3);
        }
        assert_eq!(!vane.is_locked(), free, "{gallery_pa} {opening}");
        assert_eq!(vane.away().0 > 0.0, free);
    }
}

/// With the pressure gone the pulses of a turning engine ratchet either phaser home through the check
/// valve, for three, four and five cylinders; without a check valve the pulses alone only shake it.
#[test]
fn limit_pulses_pump_a_phaser_home_without_pressure() {
    for phaser in [Phaser::TYPICAL_INTAKE, Phaser::TYPICAL_EXHAUST] {
        for cylinders in [3, 4, 5] {
            let phaser = Phaser { lobes: Lobes { cylinders, ..Lobes::TYPICAL }, ..phaser };
            let steady_nm = phaser.steady_nm(CamshaftDrag::TYPICAL.mean_nm(Rpm(200.0), 0.0109));
            let vane = crank(&phaser, steady_nm, -1.0, 2_000);
            assert!(vane.is_locked() && vane.away().0 == 0.0, "{phaser:?} {vane:?}");
        }
    }
    // Pulses alone, no drag and no spring: pumped with the check valve, on both sides, shaken without.
    for way in [-1.0, 1.0] {
        let pumped = crank(&Phaser::TYPICAL_INTAKE, 0.0, way, 400).away().0;
        assert!(way * (pumped - 20.0) > 5.0, "{pumped}");
        let open = Phaser { has_check_valve: false, ..Phaser::TYPICAL_INTAKE };
        let shaken = crank(&open, 0.0, way, 600).away().0;
        assert!((shaken - 20.0).abs() < 1.5, "{shaken}");
    }
    // Six cylinders on one camshaft have next to no pulses to pump with.
    let six = Lobes { cylinders: 6, ..Lobes::TYPICAL };
    let phaser = Phaser { lobes: six, ..Phaser::TYPICAL_INTAKE };
    assert!((crank(&phaser, 0.0, 1.0, 400).away().0 - 20.0).abs() < 0.1);
}

/// A vane at 20 degrees on an engine that is cranked at 200 rpm without oil pressure.
fn crank(phaser: &Phaser, steady_nm: f64, opening: f64, ticks: u32) -> PhaserState {
    let harmonics_nm = phaser.lobes.harmonics_nm();
    let mut vane = PhaserState::free_at(CrankDegrees(20.0));
    for tick in 0..ticks {
        let crank_rad = 200.0 / 60.0 * core::f64::consts::TAU * 1e-3 * f64::from(tick);
        let pulse_nm = PulseAngle::at(phaser.lobes.cylinders, crank_rad).torque_nm(&harmonics_nm);
        let drive = PhaserDrive { gallery_pa: 0.0, opening, steady_nm, pulse_nm, ..ON };
        vane.step(phaser, &hot(), &drive, 1e-3);
    }
    vane
}

/// An engine that stands: the exhaust's spring beats the dry friction and brings the phaser home at once
/// through an unpowered valve, and past the seals in minutes where a spool that stuck open keeps the
/// port shut; the intake has no such spring and waits for the starter.
#[test]
fn limit_a_standing_phaser_comes_home_where_a_spring_brings_it() {
    let stand = |phaser: &Phaser, opening: f64, seconds: u32| {
        let mut vane = PhaserState::free_at(CrankDegrees(20.0));
        let steady_nm = phaser.standing_nm(CamshaftDrag::TYPICAL.standing_nm());
        for _ in 0..seconds {
            let drive = PhaserDrive { gallery_pa: 0.0, opening, steady_nm, ..ON };
            vane.step(phaser, &hot(), &drive, 1.0);
        }
        vane
    };
    assert_eq!(stand(&Phaser::TYPICAL_EXHAUST, -1.0, 3), PhaserState::LOCKED);
    let slow = stand(&Phaser::TYPICAL_EXHAUST, 1.0, 60);
    assert!((10.0..19.5).contains(&slow.away().0) && !slow.is_locked(), "{slow:?}");
    assert_eq!(stand(&Phaser::TYPICAL_EXHAUST, 1.0, 3_600), PhaserState::LOCKED);
    let waiting = stand(&Phaser::TYPICAL_INTAKE, -1.0, 3_600);
    assert_eq!(waiting.away().0.to_bits(), 20.0_f64.to_bits());
}

/// `theta' = -2 g |T| / (mu D^2)` without pressure and port: a straight line, exact at any step.
#[test]
fn closed_form_seals_leak_in_proportion_to_the_torque() {
    for (steps, dt_s) in [(300_u32, 1.0), (3_000, 0.1)] {
        let mut vane = PhaserState::free_at(CrankDegrees(20.0));
        for _ in 0..steps {
            let drive = PhaserDrive { gallery_pa: 0.0, opening: 0.0, steady_nm: -0.5, ..ON };
            vane.step(&Phaser::TYPICAL_EXHAUST, &hot(), &drive, dt_s);
        }
        let lost = (2.0 * 0.5 / 4.2e-5 * 1e-14 / 0.0109 / 4.2e-5 * 300.0_f64).to_degrees();
        assert!((20.0 - vane.away().0 - lost).abs() < 1e-9, "{vane:?} {lost}");
        assert!((4.0..20.0).contains(&lost), "{lost}");
    }
}

/// The pin lifts at one pressure and drops in at a lower one, and only at rest.
#[test]
fn limit_the_pin_has_hysteresis_and_drops_in_only_at_rest() {
    let phaser = Phaser::TYPICAL_INTAKE;
    // Pulled home against a closed valve, so that only the pin's own oil decides.
    let held = |gallery_pa: f64, start: PhaserState| {
        let mut vane = start;
        for _ in 0..50 {
            let drive = PhaserDrive { gallery_pa, opening: 0.0, steady_nm: -3.0, ..ON };
            vane.step(&phaser, &hot(), &drive, 1e-3);
        }
        vane.is_locked()
    };
    let free_at_rest = PhaserState::free_at(CrankDegrees(0.0));
    assert!(!held(0.3e5, free_at_rest) && held(0.15e5, free_at_rest));
    assert!(!held(0.15e5, PhaserState::free_at(CrankDegrees(10.0))));
    // Between the two pressures a locked one stays locked.
    let mut locked = PhaserState::LOCKED;
    locked.step(&phaser, &hot(), &PhaserDrive { gallery_pa: 0.3e5, ..ON }, 1e-3);
    assert!(locked.is_locked());
    locked.step(&phaser, &hot(), &PhaserDrive { gallery_pa: 0.4e5, ..ON }, 1e-3);
    assert!(!locked.is_locked());
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
            let pulse_nm = PulseAngle::at(4, crank_rad)
                .torque_nm(&Phaser::TYPICAL_INTAKE.lobes.harmonics_nm());
            let drive = PhaserDrive { pulse_nm, opening: 0.3, ..ON };
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

/// `tests/reference/phaser_step.py`: an adaptive solver, a root finder for the flow and the sum over all
/// lobes, at several oils, pressures, screens, speeds and openings.
#[test]
fn reference_steps_of_the_vane_alone() {
    let phaser = Phaser::TYPICAL_INTAKE;
    let harmonics_nm = phaser.lobes.harmonics_nm();
    let mut compared = 0;
    for line in include_str!("../../../tests/reference/phaser_step.csv").lines().skip(1) {
        let row: Vec<f64> = line.split(',').map(|field| field.parse().unwrap()).collect();
        let fluid = Oil::TYPICAL_5W_30.curve().unwrap().fluid(Celsius(row[0]));
        let passage = Port::TYPICAL.passage(row[2], &fluid);
        let start = if row[4] > 0.0 { 5.0 } else { 35.0 };
        let mut times = [0.0; 4];
        for quarter in 0..4 {
            let mut vane = PhaserState::free_at(CrankDegrees(start));
            let mut reached = [None; 4];
            for tick in 0_u32.. {
                let crank_rad = f64::from(quarter) * core::f64::consts::FRAC_PI_4
                    + row[3] / 60.0 * core::f64::consts::TAU * 1e-3 * (f64::from(tick) + 0.5);
                let drive = PhaserDrive {
                    gallery_pa: row[1] * 1e5,
                    opening: row[4],
                    steady_nm: row[5],
                    pulse_nm: PulseAngle::at(4, crank_rad).torque_nm(&harmonics_nm),
                    viscosity_pa_s: fluid.viscosity_pa_s,
                    air: 0.0,
                };
                vane.step(&phaser, &passage, &drive, 1e-3);
                for (time, share) in reached.iter_mut().zip([0.1, 0.4, 0.63, 0.9]) {
                    if time.is_none() && (vane.away().0 - start).abs() >= 30.0 * share {
                        *time = Some(f64::from(tick + 1) * 1e-3);
                    }
                }
                if reached[3].is_some() {
                    break;
                }
            }
            for (sum, time) in times.iter_mut().zip(reached) {
                *sum += 0.25 * time.unwrap();
            }
        }
        for (got, wanted) in times.into_iter().zip(&row[6..]) {
            // A tick, and 1 % for the harmonics that are left out.
            assert!((got - wanted).abs() < 1.2e-3 + 0.01 * wanted, "{line}: {times:?}");
        }
        compared += 1;
    }
    assert_eq!(compared, 19);
}

proptest! {
    /// The vane never leaves its travel, whatever acts on it.
    #[test]
    fn prop_vane_stays_within_its_travel(
        gallery in 0.0_f64..8e5, opening in -1.0_f64..1.0, pulse_nm in -9.0_f64..9.0,
        start in 0.0_f64..50.0, air in 0.0_f64..0.8,
    ) {
        let mut vane = PhaserState::free_at(CrankDegrees(start));
        for _ in 0..300 {
            let drive = PhaserDrive { gallery_pa: gallery, opening, pulse_nm, air, ..ON };
            let drawn = vane.step(&Phaser::TYPICAL_INTAKE, &hot(), &drive, 1e-3);
            prop_assert!((0.0..=50.0).contains(&vane.away().0) && drawn >= 0.0);
        }
    }

    /// Oil volume: what is drawn beyond the leak to the sump fills chambers, cubic millimetre for cubic
    /// millimetre, through stops, pulses and seals; and what one chamber gains the other loses.
    #[test]
    fn conserves_oil_through_the_phaser(
        gallery in 0.0_f64..8e5, steady in -4.0_f64..4.0, size in 0.0_f64..12.0, way in prop::bool::ANY,
        start in 0.0_f64..50.0, celsius in -10.0_f64..120.0, blockage in 0.0_f64..0.98,
        opening in 0.01_f64..1.0,
    ) {
        let phaser = Phaser::TYPICAL_INTAKE;
        let fluid = Oil::TYPICAL_5W_30.curve().unwrap().fluid(Celsius(celsius));
        let passage = Port::TYPICAL.passage(blockage, &fluid);
        let leak = passage.leak_m3_s(passage.supply_pa(gallery));
        let opening = if way { opening } else { -opening };
        let (mut drawn, mut seeped) = (0.0, 0.0);
        let mut vane = PhaserState::free_at(CrankDegrees(start));
        for tick in 0..300 {
            let before = vane.away().0;
            let pulse_nm = size * crate::numerics::elementary::sin(0.4 * f64::from(tick));
            let drive = PhaserDrive {
                gallery_pa: gallery, opening, steady_nm: steady, pulse_nm,
                viscosity_pa_s: fluid.viscosity_pa_s, ..ON
            };
            let ported = (vane.step(&phaser, &passage, &drive, 1e-3) - leak) * 1e-3;
            prop_assert!(ported >= -1e-18);
            drawn += ported;
            // What moved without the port went past the seals, up to what the torque pushes.
            let moved = phaser.chambers_m3(vane.away().0).0 - phaser.chambers_m3(before).0;
            let by_seals = moved - opening.signum() * ported;
            let most = (steady + pulse_nm) / 4.2e-5 * phaser.leak_m3 / fluid.viscosity_pa_s * 1e-3;
            prop_assert!(by_seals.abs() <= most.abs() + 1e-15, "{by_seals} {most}");
            prop_assert!(by_seals * most >= -1e-27);
            seeped += by_seals;
        }
        let (one, other) = phaser.chambers_m3(vane.away().0);
        let (began, other_began) = phaser.chambers_m3(start);
        prop_assert!((one - began - (opening.signum() * drawn + seeped)).abs() < 1e-14);
        prop_assert!((one + other - began - other_began).abs() < 1e-18);
    }
}
