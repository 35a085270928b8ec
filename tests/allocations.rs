//! A tick takes nothing from the heap, so its cost never depends on what was asked for before; a file takes little of it,
//! whatever it holds.
#![expect(clippy::unwrap_used, reason = "a test fails by panicking")]

use allocation_counter::{AllocationInfo, measure};
use faultwright::numerics::streams::Streams;
use faultwright::physics::warm_up::EngineHeat;
use faultwright::scenario::load::{MOST_BYTES, ScenarioText, read_bytes};
use faultwright::units::{Celsius, Litres, Newtons};
use faultwright::vehicle::cam_line::CamCondition;
use faultwright::vehicle::per_bank::PerBank;
use faultwright::vehicle::per_cam::PerCam;
use faultwright::vehicle::route::RouteProfile;
use faultwright::vehicle::run_record::{CamSummary, MOST_POINTS};
use faultwright::vehicle::running::{EngineCondition, EngineSpec, RunningEngine};
use std::hint::black_box;

/// Heap that reading a scenario may take at any moment [byte]: the text some times over, and what is noted of its values.
const MOST_HEAP: u64 = 16 << 20;
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

/// Texts of the greatest size that is read, each of which asks the reader for as much as it can.
fn greedy_texts() -> Vec<String> {
    let most = usize::try_from(MOST_BYTES).unwrap();
    let full = |begin: &str, part: &str| {
        let mut text = begin.to_owned();
        text.push_str(&part.repeat((most - begin.len()) / part.len()));
        text
    };
    let demo = ScenarioText::demo().scenario_text;
    let in_demo = |from: &str, to: &str| {
        let (before, after) = demo.split_once(from).unwrap();
        let room = most - demo.len() - from.len();
        format!("{before}{from}{}{after}", to.repeat(room / to.len()))
    };
    vec![
        full("", "("),
        full("(faults: [", "["),
        full("[", "0,"),
        full("(", "a:1,"),
        full("(routes: {", "a:(),"),
        full("(title: \"", "a"),
        full("(title: \"", "\\n"),
        full("", "/*"),
        full("(version: ", "9"),
        full("#![enable(", "implicit_some,"),
        in_demo("faults: [", "(kind: LowOil, place: \"sumpf\", weight: -1, severity: (2, -2)),"),
        in_demo("old_codes: [", "(code: \"P0456\", chance: 7),"),
        in_demo("history: [", "\"a\","),
        in_demo("answers: {", "symptom: \"a\","),
    ]
}

/// Whatever a file of a mebibyte holds, reading it takes a bounded part of the heap, and what is said of it is short.
#[test]
fn limit_reading_a_hostile_scenario_takes_a_bounded_part_of_the_heap() {
    let vehicle = ScenarioText::demo().vehicle_text;
    for text in greedy_texts() {
        let (scenario, vehicle) = (text.clone().into_bytes(), vehicle.clone().into_bytes());
        let mut said = String::new();
        let taken = measure(|| said = format!("{:?}", read_bytes(scenario, vehicle).err()));
        let begin: String = text.chars().take(24).collect();
        assert!(said.starts_with("Some("), "{begin} was taken");
        assert!(said.len() < 100_000, "{begin}: {} bytes are said of it", said.len());
        assert!(taken.bytes_max < MOST_HEAP, "{begin}: {taken:?}");
    }
}

/// The counter counts: otherwise the tests above could not fail.
#[test]
fn limit_the_counter_sees_a_single_byte() {
    let taken = measure(|| {
        black_box(vec![0_u8; 1]);
    });
    assert_eq!((taken.count_total, taken.bytes_total), (1, 1));
}
