//! A tick takes nothing from the heap, so its cost never depends on what was asked for before.
#![expect(clippy::unwrap_used, reason = "a test fails by panicking")]

use allocation_counter::{AllocationInfo, measure};
use faultwright::numerics::streams::Streams;
use faultwright::physics::warm_up::EngineHeat;
use faultwright::units::{Celsius, Litres, Newtons};
use faultwright::vehicle::cam_line::CamCondition;
use faultwright::vehicle::per_bank::PerBank;
use faultwright::vehicle::per_cam::PerCam;
use faultwright::vehicle::route::RouteProfile;
use faultwright::vehicle::run_record::{CamSummary, MOST_POINTS};
use faultwright::vehicle::running::{EngineCondition, EngineSpec, RunningEngine};
use std::hint::black_box;

const TICKS_IN_A_SECOND: usize = 1_000;
/// Ticks between two points of a fresh trace.
const TICKS_IN_A_POINT: usize = 100;

fn engine(condition: &EngineCondition, heat: EngineHeat) -> RunningEngine {
    let air = Streams::new(7).stream("air in the oil");
    RunningEngine::new(EngineSpec::TYPICAL, *condition, heat, air).unwrap()
}

/// What some milliseconds of a road test take, the record begun and the engine warm.
fn taken(engine: &mut RunningEngine, ticks: usize) -> AllocationInfo {
    let road = RouteProfile::warm_road_test();
    engine.start();
    let mut driver = road.driver();
    let mut time_s = 0.0;
    measure(|| {
        for _ in 0..ticks {
            let demand = driver.demand(time_s).unwrap_or_else(|| {
                // Round again.
                driver = road.driver();
                time_s = 0.0;
                driver.demand(time_s).unwrap()
            });
            engine.tick(&demand);
            time_s += 1e-3;
        }
    })
}

#[test]
fn limit_a_tick_takes_nothing_from_the_heap() {
    // Long enough for a trace that fills and is thinned out; every hundredth tick the temperatures
    // move on, every tenth the control module runs.
    let mut engine = engine(&EngineCondition::SOUND, EngineHeat::cold(Celsius(20.0)));
    let ticks = MOST_POINTS * TICKS_IN_A_POINT + 10 * TICKS_IN_A_SECOND;
    let was_at = engine.heat().oil;
    let taken = taken(&mut engine, ticks);
    assert_eq!((taken.count_total, taken.bytes_total), (0, 0), "{taken:?}");
    // The oil has warmed up many times the step at which it is worked out again.
    assert!(engine.heat().oil.0 > was_at.0 + 10.0);
    let record = engine.record();
    assert!(record.trace.points().len() <= MOST_POINTS);
    assert!(record.trace.interval().0 > 0.15, "the trace was never thinned out");
    assert!(!record.cams.one.intake.steps.is_empty(), "the monitors timed nothing");
}

#[test]
fn limit_a_tick_with_faults_takes_nothing_from_the_heap() {
    let sticking = CamCondition { stiction: Newtons(2.5), ..CamCondition::SOUND };
    let blocked = CamCondition { blockage: 0.97, ..CamCondition::SOUND };
    let condition = EngineCondition {
        fill: Litres(2.2),
        cams: PerBank::single(PerCam { intake: sticking, exhaust: blocked }),
        ..EngineCondition::SOUND
    };
    let mut engine = engine(&condition, EngineHeat::cold(Celsius(85.0)));
    let taken = taken(&mut engine, 160 * TICKS_IN_A_SECOND);
    assert_eq!((taken.count_total, taken.bytes_total), (0, 0), "{taken:?}");
    let record = engine.record();
    let failures =
        record.cams.one.intake.failures().count() + record.cams.one.exhaust.failures().count();
    assert!(failures > 0, "no monitor found a fault");
}

/// Four phasers take no more than two: what a bank needs is there before the engine starts.
#[test]
fn limit_a_tick_of_a_v_engine_takes_nothing_from_the_heap() {
    let one = EngineSpec::TYPICAL.cams.one;
    let spec = EngineSpec { cams: PerBank { one, two: Some(one) }, ..EngineSpec::TYPICAL };
    let blocked = CamCondition { blockage: 0.97, ..CamCondition::SOUND };
    let sound = EngineCondition::SOUND.cams.one;
    let two = Some(PerCam { intake: blocked, exhaust: CamCondition::SOUND });
    let condition = EngineCondition { cams: PerBank { one: sound, two }, ..EngineCondition::SOUND };
    let air = Streams::new(7).stream("air in the oil");
    let heat = EngineHeat::cold(Celsius(85.0));
    let mut engine = RunningEngine::new(spec, condition, heat, air).unwrap();
    let taken = taken(&mut engine, 160 * TICKS_IN_A_SECOND);
    assert_eq!((taken.count_total, taken.bytes_total), (0, 0), "{taken:?}");
    let record = engine.record();
    let failures = |bank: &PerCam<CamSummary>| bank.intake.failures().count();
    assert_eq!(failures(&record.cams.one), 0);
    assert!(failures(record.cams.two.as_ref().unwrap()) > 0, "no monitor found the fault");
}

/// The counter counts: otherwise the tests above could not fail.
#[test]
fn limit_the_counter_sees_a_single_byte() {
    let taken = measure(|| {
        black_box(vec![0_u8; 1]);
    });
    assert_eq!((taken.count_total, taken.bytes_total), (1, 1));
}
