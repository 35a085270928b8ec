//! The running engine: ten simulated minutes of road at a thousand ticks a second, and single ticks.

use super::stopwatch::{median, once};
use super::table::Row;
use faultwright::numerics::streams::Streams;
use faultwright::physics::warm_up::EngineHeat;
use faultwright::scenario::load::demo;
use faultwright::units::Celsius;
use faultwright::vehicle::condition::Condition;
use faultwright::vehicle::route::{Demand, RouteProfile};
use faultwright::vehicle::running::{EngineCondition, EngineSpec, RunningEngine};
use faultwright::vehicle::whole::Vehicle;
use std::hint::black_box;
use std::sync::Arc;
use std::time::Duration;

/// Ten minutes: four times the warm road test of two and a half.
const TESTS: u64 = 4;
/// What a tick stands for.
const TICK: Duration = Duration::from_millis(1);
/// Ticks at idle that are timed together: the stopwatch is too coarse for one.
const IDLE_TICKS: usize = 10_000;

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
    let row = |what: &str, ours, other| Row {
        what: what.to_owned(),
        ours,
        other,
        against: "the simulated time".to_owned(),
        goal: 1_000.0,
    };
    Ok(vec![
        row(
            "ten minutes of road test, whole vehicle, one core",
            ours,
            Duration::from_secs_f64(seconds),
        ),
        row("one tick of the whole engine, on the road", tick(&on_the_road(&route)), TICK),
        row("one tick of the whole engine, idling", tick(&idling()), TICK),
    ])
}

/// What the driver asks in each tick of a road test, worked out beforehand.
fn on_the_road(route: &RouteProfile) -> Vec<Demand> {
    let mut driver = route.driver();
    (0_u32..).map_while(|tick| driver.demand(f64::from(tick) * TICK.as_secs_f64())).collect()
}

fn idling() -> Vec<Demand> {
    vec![Demand::IDLE; IDLE_TICKS]
}

/// One tick of a warm engine: both camshafts with their valves and oil, crankshaft, air, heat, control
/// module and record.
fn tick(demands: &[Demand]) -> Duration {
    let heat = EngineHeat { coolant: Celsius(90.0), oil: Celsius(90.0) };
    let air = Streams::new(1).stream("air in the oil");
    let mut engine =
        RunningEngine::new(EngineSpec::TYPICAL, EngineCondition::SOUND, heat, air).expect("sound");
    engine.start();
    let together = median(|| {
        for demand in demands {
            engine.tick(demand);
        }
        black_box(engine.pressure());
    });
    assert!(engine.speed().0 > 500.0, "a stalled engine has nothing to work out");
    Duration::from_secs_f64(together.as_secs_f64() / demands.len() as f64)
}
