//! The engine left to itself: against another program (`tests/reference/idle.py`, adaptive steps), and
//! what it does by itself with camshafts, temperatures and loads.
#![expect(clippy::unwrap_used, reason = "a test fails by panicking")]

mod idle;
mod road;

use faultwright::numerics::streams::Streams;
use faultwright::physics::warm_up::EngineHeat;
use faultwright::units::{Celsius, Rpm};
use faultwright::vehicle::per_cam::Cam;
use faultwright::vehicle::route::Demand;
use faultwright::vehicle::run_record::Idling;
use faultwright::vehicle::running::{EngineCondition, EngineSpec, RunningEngine};

#[test]
fn reference_idle_agrees_with_the_other_program() {
    for name in idle::CASES {
        let coarse = idle::apart(name, 1);
        let fine = idle::apart(name, 10);
        // The program's tick errs by a few revolutions a minute while the speed swings by hundreds; a tenth
        // of it errs by much less, as it should with steps of the first order. What stays is the moment at
        // which a fire falls, which each program takes to its own step, down to these differences.
        for (gap, limit) in coarse.iter().zip([6.0, 0.5, 0.003]) {
            assert!(*gap < limit, "{name}: {coarse:?}");
        }
        for ((fine, coarse), least) in fine.iter().zip(&coarse).zip([0.02, 0.02, 1e-4]) {
            assert!(*fine < (0.4 * coarse).max(least), "{name}: {fine:?} {coarse:?}");
        }
    }
}

/// An engine with its valves as given, at a temperature.
#[expect(clippy::large_types_passed_by_value, reason = "a condition is made where it is used")]
fn engine_at(celsius: f64, seed: u64, condition: EngineCondition) -> RunningEngine {
    let heat = EngineHeat { coolant: Celsius(celsius), oil: Celsius(celsius) };
    let condition = EngineCondition { ambient: Celsius(celsius.min(30.0)), ..condition };
    let air = Streams::new(seed).stream("aeration");
    let mut engine = RunningEngine::new(EngineSpec::TYPICAL, condition, heat, air).unwrap();
    engine.assume_learnt();
    engine.start();
    engine
}

/// Mean and standard deviation of engine speed over the second half of a run.
fn speed_of(record: &faultwright::vehicle::run_record::RunRecord) -> (f64, f64) {
    let points = record.trace.points();
    let late: Vec<f64> = points[points.len() / 2..].iter().map(|point| point.speed.0).collect();
    let mean = late.iter().sum::<f64>() / late.len() as f64;
    let variance = late.iter().map(|rpm| (rpm - mean).powi(2)).sum::<f64>() / late.len() as f64;
    (mean, variance.sqrt())
}

/// Both camshafts at rest: smooth and near the wanted speed from deep frost to a boiling day.
#[test]
fn limit_a_sound_engine_idles_smoothly_at_every_temperature() {
    for celsius in [-20.0, -10.0, 0.0, 20.0, 40.0, 60.0, 90.0, 110.0] {
        for seed in 1..6 {
            let mut engine = engine_at(celsius, seed, EngineCondition::SOUND);
            let record = engine.hold(&Demand::IDLE, 20_000);
            assert_eq!(record.idling, Idling::Smooth, "{celsius} {seed}");
            let (mean, spread) = speed_of(&record);
            let coolant = engine.heat().coolant;
            let wanted = EngineSpec::TYPICAL.idle.control.wanted(Rpm(700.0), coolant).0;
            assert!((mean - wanted).abs() < 40.0, "{celsius} {seed}: {mean} {wanted}");
            assert!(spread < 20.0, "{celsius} {seed}: {spread}");
        }
    }
}

/// Makers' service information: a valve held fully on at idle makes the engine stall or idle roughly,
/// held off the idle is normal. Both camshafts, several seeds.
#[test]
fn published_a_valve_fully_on_at_hot_idle_is_rough_or_stalls() {
    let (mut stalls, mut runs) = (0, 0);
    for cam in Cam::BOTH {
        for seed in 1..11 {
            let mut condition = EngineCondition::SOUND;
            condition.cams.one.of_mut(cam).forced_duty = Some(1.0);
            let record = engine_at(90.0, seed, condition).hold(&Demand::IDLE, 15_000);
            assert!(record.idling >= Idling::Rough, "{cam:?} {seed}");
            stalls += u32::from(record.idling == Idling::Stalls);
            runs += 1;
            condition.cams.one.of_mut(cam).forced_duty = Some(0.0);
            let record = engine_at(90.0, seed, condition).hold(&Demand::IDLE, 15_000);
            assert_eq!(record.idling, Idling::Smooth, "{cam:?} {seed}");
        }
    }
    assert!(stalls > runs / 2, "{stalls} of {runs} stall");
}
