//! The running engine: ten simulated minutes of road at a thousand ticks a second.

use super::stopwatch::{median, once};
use super::table::Row;
use faultwright::scenario::load::demo;
use faultwright::units::Celsius;
use faultwright::vehicle::condition::Condition;
use faultwright::vehicle::route::RouteProfile;
use faultwright::vehicle::whole::Vehicle;
use std::hint::black_box;
use std::sync::Arc;
use std::time::Duration;

/// Ten minutes: four times the warm road test of two and a half.
const TESTS: u64 = 4;

/// A vehicle with its engine running.
pub fn running_vehicle() -> Vehicle {
    let spec = demo().expect("the scenario that the program carries").vehicle;
    let condition = Condition::sound(&spec);
    let mut vehicle =
        Vehicle::new(Arc::new(spec), condition, Celsius(20.0), &[], 1).expect("a sound vehicle");
    vehicle.start().expect("a sound vehicle");
    vehicle
}

pub fn rows() -> Result<Vec<Row>, String> {
    let vehicle = running_vehicle();
    let route = RouteProfile::warm_road_test();
    let ours = median(|| {
        let mut vehicle = vehicle.clone();
        for _ in 0..TESTS {
            black_box(vehicle.drive(&route).expect("a road that can be driven"));
        }
    });
    let (_, seconds) = once(|| TESTS as f64 * route.duration().0);
    Ok(vec![Row {
        what: "ten minutes of road test, whole vehicle, one core".to_owned(),
        ours,
        other: Duration::from_secs_f64(seconds),
        against: "the simulated time".to_owned(),
        goal: 1_000.0,
    }])
}
