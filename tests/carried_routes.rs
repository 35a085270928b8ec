//! The carried roads do what their files say of them: which monitors come to a decision on each.

#![expect(clippy::unwrap_used, reason = "a test fails by panicking")]

use faultwright::control_module::code::Code;
use faultwright::scenario::load::demo;
use faultwright::scenario::shared_routes::{names, route};
use faultwright::units::Celsius;
use faultwright::vehicle::condition::Condition;
use faultwright::vehicle::run_record::Idling;
use faultwright::vehicle::spec::{Id, ValveCodes};
use faultwright::vehicle::whole::Vehicle;
use std::sync::Arc;

fn sound() -> Vehicle {
    let spec = demo().unwrap().vehicle;
    let condition = Condition::sound(&spec);
    Vehicle::new(Arc::new(spec), condition, Celsius(19.0), &[], 0).unwrap()
}

/// Codes that a sound vehicle has come to a decision about, on one drive from this state.
fn decided(vehicle: &mut Vehicle, name: &str) -> Vec<Code> {
    let profile = route(&Id::from(name)).unwrap().profile;
    vehicle.start().unwrap();
    let report = vehicle.drive(&profile).unwrap();
    assert_eq!(report.quality, Idling::Smooth, "{name}");
    assert!(!report.oil_lamp && !vehicle.lamps().0, "{name}");
    vehicle.key_off();
    report.decided
}

fn codes() -> Vec<ValveCodes> {
    demo().unwrap().vehicle.valves.iter().map(|valve| valve.codes).collect()
}

#[track_caller]
fn check(name: &str, decided: &[Code], on_target: bool, response: bool) {
    for codes in codes() {
        for (code, expected) in
            [(codes.advanced, on_target), (codes.retarded, on_target), (codes.slow, response)]
        {
            assert_eq!(decided.contains(&code), expected, "{name}: {code}, {decided:?}");
        }
    }
}

/// From a cold start.
#[test]
fn limit_what_a_road_decides_from_cold() {
    for (name, on_target, response) in [
        ("car-park-loop", false, false),
        ("town", true, false),
        ("motorway", true, false),
        ("cold-start-short-run", false, false),
        ("proving-drive", true, true),
    ] {
        let decided = decided(&mut sound(), name);
        check(name, &decided, on_target, response);
    }
}

/// Warm or cold, the town asks for too few large changes to judge a response by.
#[test]
fn limit_the_town_never_judges_a_response() {
    let mut vehicle = sound();
    decided(&mut vehicle, "proving-drive");
    let warm = decided(&mut vehicle, "town");
    check("town, warm", &warm, true, false);
}

/// The hill times responses only once the oil is warm; a long steady road before it warms it.
#[test]
fn limit_the_hill_wants_warm_oil() {
    let mut vehicle = sound();
    let cold = decided(&mut vehicle, "hill");
    check("hill, cold", &cold, true, false);
    decided(&mut vehicle, "motorway");
    let warm = decided(&mut vehicle, "hill");
    check("hill, warm", &warm, true, true);
}

/// The proving drive is as long as a permanent code may ask for after a clear: 600 s of running, 300
/// s at 40 km/h and above, 30 s of idling without a break (13 CCR 1968.2 (d)(2.5), from memory).
#[test]
fn closed_form_the_proving_drive_is_long_enough() {
    let profile = route(&Id::from("proving-drive")).unwrap().profile;
    let mut before_s = 0.0;
    let (mut fast_s, mut longest_idle_s) = (0.0, 0.0_f64);
    for segment in &profile.segments {
        // Speeds ramp at the start of a segment, which is not counted.
        let steady_s = segment.until_s - before_s - profile.ramp_s;
        before_s = segment.until_s;
        if segment.km_h >= 40.0 {
            fast_s += steady_s;
        }
        if segment.km_h == 0.0 {
            longest_idle_s = longest_idle_s.max(steady_s);
        }
    }
    assert!(profile.duration().0 >= 600.0 && fast_s >= 300.0 && longest_idle_s >= 30.0);
    assert_eq!(names().len(), 6);
}
