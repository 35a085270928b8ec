use super::*;
use crate::instruments::bench::{BATTERY_OHMS, BATTERY_V, bench};

fn shown_around(probe: &CurrentProbe, phases: &[(f64, Wiring)]) -> f64 {
    match probe.read(phases, "r0").unwrap().display {
        Display::Value { value, .. } => value,
        Display::OverLimit => f64::INFINITY,
    }
}

/// Ohm's law, to a count of ten milliamperes.
#[test]
fn closed_form_a_current_is_shown_to_a_count() {
    for ohms in [1.0, 4.7, 11.0, 56.0, 4_700.0] {
        let amperes = BATTERY_V / (ohms + BATTERY_OHMS);
        let phases = bench(&[("battery-plus", "battery-minus", ohms)], false);
        let shown = shown_around(&CurrentProbe::ideal(), &phases);
        assert!((shown - amperes).abs() <= 0.005 + 1e-12, "{ohms}: {shown} {amperes}");
        assert_eq!(shown, (shown * 100.0).round() / 100.0);
    }
}

#[test]
fn closed_form_an_offset_adds_itself_until_it_is_zeroed() {
    let phases = bench(&[("battery-plus", "battery-minus", 11.0)], false);
    let mut probe = CurrentProbe { offset_a: 0.07, ..CurrentProbe::ideal() };
    let before = shown_around(&probe, &phases);
    probe.zero();
    assert!((before - shown_around(&probe, &phases) - 0.07).abs() < 1e-9);
    // Turned round, the current changes its sign and the offset does not.
    let back = bench(&[("battery-minus", "battery-plus", 11.0)], false);
    let probe = CurrentProbe { offset_a: 0.07, ..probe };
    assert!((shown_around(&probe, &back) + before - 2.0 * 0.07).abs() < 1e-9);
}

#[test]
fn closed_form_the_mean_of_the_phases() {
    let state = |ohms| bench(&[("battery-plus", "battery-minus", ohms)], false).remove(0).1;
    let phases = [(0.25, state(10.0)), (0.75, state(1e9))];
    let shown = shown_around(&CurrentProbe::ideal(), &phases);
    assert!((shown - 0.25 * BATTERY_V / 10.008).abs() <= 0.005);
}

#[test]
fn limit_beyond_its_jaws_and_around_nothing() {
    let phases = bench(&[("battery-plus", "battery-minus", 0.1)], false);
    assert!(shown_around(&CurrentProbe::ideal(), &phases).is_infinite());
    let nothing = CurrentProbe::ideal().read(&phases, "no-such-wire").unwrap();
    assert_eq!(nothing.display, Display::Value { value: 0.0, decimals: 2, prefix: Prefix::One });
}

/// A clamp is no element of the circuit: what it reads does not depend on its being there.
#[test]
fn conserves_the_circuit_that_it_is_closed_around() {
    let phases = bench(&[("battery-plus", "battery-minus", 11.0)], false);
    let before = phases.clone();
    let _ = shown_around(&CurrentProbe::ideal(), &phases);
    assert_eq!(phases[0].1, before[0].1);
}
