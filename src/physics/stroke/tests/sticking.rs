//! Spools that stick, and inputs at the edge of what can be.

use super::*;
use crate::physics::coil::OPEN_COIL;
use proptest::prelude::*;

fn full(spool: &Spool) -> Stroke {
    energise(&Solenoid::REFERENCE, &Winding::REFERENCE, spool, BENCH, AT_20)
}

/// Full-stroke spring: 2.3 N. Stiction above it keeps the spool where the coil left it.
#[test]
fn limit_a_spool_that_sticks_harder_than_its_spring_does_not_return() {
    for (stiction, returns) in [(0.0, true), (1.0, true), (2.5, false), (4.0, false)] {
        let spool = sticking(stiction, 1.0 + 2.0 * stiction);
        let stroke = full(&spool);
        assert_eq!(stroke.end_position, Millimetres(2.5), "{stiction}");
        let expected = Millimetres(if returns { 0.0 } else { 2.5 });
        assert_eq!(stroke.rest_position, expected, "{stiction}");
        assert_eq!(stroke.has_returned(), returns);
        assert_eq!(stroke.returned.is_some(), returns);
    }
}

/// Between those, spring and sliding friction balance on the way: `F0 + k x = 0.6 Fst`.
#[test]
fn closed_form_a_spool_stays_where_friction_balances_the_spring() {
    for stiction in [1.5, 1.8, 2.2] {
        let spool = sticking(stiction, 2.0 + 2.0 * stiction);
        let balance_mm = (0.6 * stiction - 0.8) / 0.6;
        // It is held at 0.1 mm/s: with the drag of these cases 5 um short.
        let there = full(&spool).rest_position.0;
        assert!((0.0..0.01).contains(&(there - balance_mm)), "{stiction}: {there} {balance_mm}");
    }
}

#[test]
fn limit_a_spool_stuck_at_the_far_stop_moves_nothing() {
    let there = Surroundings { start: Millimetres(2.5), ..AT_20 };
    let stroke =
        energise(&Solenoid::REFERENCE, &Winding::REFERENCE, &sticking(2.5, 5.0), BENCH, there);
    assert!(!stroke.has_moved() && !stroke.has_returned());
    assert_eq!((stroke.engaged, stroke.returned, stroke.dip), (None, None, None));
    assert_eq!(stroke.rest_position, Millimetres(2.5));
    // The current rises without a dip all the same.
    let rises = stroke.trace.samples.windows(2).all(|pair| pair[1].0 >= pair[0].0);
    assert!(rises && (stroke.end_current.0 - 1.09375).abs() < 1e-9);
}

#[test]
fn limit_an_open_coil_draws_next_to_nothing_and_ends_at_once() {
    let open = Winding { joint: OPEN_COIL, ..Winding::REFERENCE };
    let stroke = energise(&Solenoid::REFERENCE, &open, &Spool::REFERENCE, BENCH, AT_20);
    assert!(!stroke.has_moved() && stroke.has_returned());
    assert!((stroke.end_current.0 / 12.6e-12 - 1.0).abs() < 1e-6);
    assert_eq!(Click::of(stroke.engaged.as_ref()), Click::None);
}

/// Force goes with the square of the current: a reversed supply moves the spool just the same.
#[test]
fn closed_form_a_reversed_supply_mirrors_the_current_and_nothing_else() {
    let there = full(&Spool::REFERENCE);
    let drive = Drive { supply: Volts(-12.6), ..BENCH };
    let back = energise(&Solenoid::REFERENCE, &Winding::REFERENCE, &Spool::REFERENCE, drive, AT_20);
    assert_eq!((there.engaged, there.returned), (back.engaged, back.returned));
    assert_eq!(there.dip.unwrap().percent().to_bits(), back.dip.unwrap().percent().to_bits());
    let mirrored =
        there.trace.samples.iter().zip(&back.trace.samples).all(|(a, b)| (a.0 + b.0).abs() < 1e-15);
    assert!(mirrored && back.end_current.0 < 0.0);
}

/// What a scope shows is what was measured: the trace passes by the peak, the trough and the end.
#[test]
fn limit_the_trace_shows_the_dip() {
    let stroke = full(&Spool::REFERENCE);
    let samples = &stroke.trace.samples;
    assert_eq!(samples.len(), Trace::SAMPLES);
    assert_eq!(samples[0], crate::units::Amperes(0.0));
    let impact_s = stroke.engaged.unwrap().at.0;
    let impact =
        (0..599).take_while(|k| f64::from(*k) * stroke.trace.interval.0 < impact_s).count() - 1;
    let peak = samples[..impact].iter().fold(0.0_f64, |most, sample| most.max(sample.0));
    let trough = samples[impact].0.min(samples[impact + 1].0);
    let dip = stroke.dip.unwrap();
    // Between two samples the current bends by about a hundredth.
    assert!((peak - dip.peak.0).abs() < 0.01, "{peak} {dip:?}");
    assert!((trough - dip.trough.0).abs() < 0.02, "{trough} {dip:?}");
    assert!((samples[599].0 - stroke.end_current.0).abs() < 1e-6);
}

#[test]
fn limit_a_supply_for_no_time_or_no_number_of_seconds_does_nothing() {
    for on_for in [0.0, -1.0, f64::NAN] {
        let drive = Drive { on_for: Seconds(on_for), ..BENCH };
        let stroke =
            energise(&Solenoid::REFERENCE, &Winding::REFERENCE, &Spool::REFERENCE, drive, AT_20);
        assert!(!stroke.has_moved() && stroke.has_returned(), "{on_for}");
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(40))]

    /// Whatever the fault, a stroke ends with numbers, inside the stops, and says one thing about
    /// the return in two ways.
    #[test]
    fn prop_a_stroke_ends_with_numbers_inside_the_stops(
        supply_v in -30.0..30.0_f64, share in 0.0..0.99_f64, joint_power in -3.0..12.0_f64,
        stiction in 0.0..15.0_f64, oil_power in -3.0..2.0_f64, start in 0.0..2.5_f64,
        on_s in 0.0..0.3_f64, coil_c in -40.0..180.0_f64,
    ) {
        use crate::numerics::elementary::pow;
        let winding = Winding {
            shorted_share: share,
            joint: Ohms(pow(10.0, joint_power)),
            ..Winding::REFERENCE
        };
        let surroundings = Surroundings {
            coil: Celsius(coil_c),
            oil_viscosity_pa_s: pow(10.0, oil_power),
            start: Millimetres(start),
        };
        let drive = Drive { supply: Volts(supply_v), source: Ohms(0.5), on_for: Seconds(on_s) };
        let spool = sticking(stiction, 2.0);
        let stroke = energise(&Solenoid::REFERENCE, &winding, &spool, drive, surroundings);
        for position in [stroke.end_position.0, stroke.rest_position.0] {
            prop_assert!((0.0..=2.5).contains(&position), "{position}");
        }
        prop_assert!(stroke.trace.samples.iter().all(|sample| sample.0.is_finite()));
        prop_assert!(stroke.end_current.0.is_finite());
        if stroke.returned.is_some() && start == 0.0 {
            prop_assert!(stroke.has_returned());
        }
        if let Some(dip) = stroke.dip {
            prop_assert!((0.0..=100.0).contains(&dip.percent()), "{dip:?}");
        }
    }
}
