//! The same answers however the work is cut up: in one go or in slices, paused and gone on, on one
//! thread or on many. `replay.rs` has the pinned digests and the journal.
#![expect(clippy::unwrap_used, reason = "a test fails by panicking")]

use faultwright::control_module::performance_monitor::Conditions;
use faultwright::numerics::digest::Digest;
use faultwright::numerics::streams::Streams;
use faultwright::physics::actuator::Actuator;
use faultwright::physics::coil::Winding;
use faultwright::physics::oil::Oil;
use faultwright::physics::phaser::PulseAngle;
use faultwright::physics::stroke::{Drive, Stroke, Surroundings, energise};
use faultwright::physics::warm_up::EngineHeat;
use faultwright::reasoning::belief::Belief;
use faultwright::reasoning::expert::Expert;
use faultwright::reasoning::outcome::aspects;
use faultwright::reasoning::probe::steps_to;
use faultwright::reasoning::world::{Supposition, World, Worlds};
use faultwright::scenario::load::demo;
use faultwright::scenario::suppose::suppositions;
use faultwright::session::attempt::Session;
use faultwright::session::step::Step;
use faultwright::units::{
    Celsius, CrankDegrees, Litres, Millimetres, Newtons, Ohms, Rpm, Seconds, Volts,
};
use faultwright::vehicle::assembly::Assembly;
use faultwright::vehicle::cam_line::{CamCondition, CamLine, CamSpec, SharedTick};
use faultwright::vehicle::circuits::{Felt, feel};
use faultwright::vehicle::condition::{Condition, FittedValve, Seal};
use faultwright::vehicle::harness::{DriverState, ElectricalState};
use faultwright::vehicle::per_bank::PerBank;
use faultwright::vehicle::per_cam::PerCam;
use faultwright::vehicle::route::RouteProfile;
use faultwright::vehicle::running::{EngineCondition, EngineSpec, RunningEngine};
use faultwright::vehicle::spec::Id;
use faultwright::vehicle::stroke_memo::StrokeMemo;
use proptest::prelude::*;
use std::collections::BTreeMap;
use std::sync::Arc;

/// An engine with something of everything: a spool that sticks, a blocked screen, air in the oil.
fn engine() -> RunningEngine {
    let condition = EngineCondition {
        fill: Litres(2.3),
        cams: PerBank::single(PerCam {
            intake: CamCondition { stiction: Newtons(1.5), ..CamCondition::SOUND },
            exhaust: CamCondition { blockage: 0.95, ..CamCondition::SOUND },
        }),
        ..EngineCondition::SOUND
    };
    let air = Streams::new(3).stream("air in the oil");
    let heat = EngineHeat::cold(Celsius(70.0));
    let mut engine = RunningEngine::new(EngineSpec::TYPICAL, condition, heat, air).unwrap();
    engine.start();
    engine
}

/// A fingerprint of everything in an engine: its debug text writes every number so that it can be
/// read back to the last bit.
fn fingerprint(engine: &RunningEngine) -> Digest {
    Digest::of(format!("{engine:?} {:?}", engine.record()).as_bytes())
}

/// Drives in slices of so many ticks; between two, engine and driver are put aside, copied and the
/// copies go on, as after a pause.
fn drive_in_slices(road: &RouteProfile, slice: impl Fn(u32) -> u32) -> RunningEngine {
    let mut engine = engine();
    engine.begin_run();
    let mut driver = road.driver();
    let mut tick = 0_u32;
    for number in 0.. {
        for _ in 0..slice(number) {
            let Some(demand) = driver.demand(f64::from(tick) * 1e-3) else {
                return engine;
            };
            engine.tick(&demand);
            tick += 1;
        }
        let paused = (engine.clone(), driver.clone());
        drop(engine);
        (engine, driver) = paused;
    }
    engine
}

#[test]
fn replay_speed_and_pauses_of_a_drive_change_nothing() {
    let road = RouteProfile::warm_road_test();
    let mut in_one_go = engine();
    let record = in_one_go.drive(&road).unwrap();
    let wanted = fingerprint(&in_one_go);
    let cuts: [fn(u32) -> u32; 4] = [
        // A picture at a time, at one, at sixty-four times the speed, and as frames happen to come.
        |_| 16,
        |_| 1_024,
        |number| 1 + number * number % 97,
        |number| [7, 100, 1, 999, 10][number as usize % 5],
    ];
    for (number, cut) in cuts.into_iter().enumerate() {
        let sliced = drive_in_slices(&road, cut);
        assert_eq!(sliced.record(), record, "cut {number}");
        assert_eq!(fingerprint(&sliced), wanted, "cut {number}");
    }
}

#[test]
fn replay_the_same_drive_four_times_in_one_process_is_the_same() {
    let road = RouteProfile::warm_road_test();
    let drive = || {
        let mut engine = engine();
        engine.drive(&road).unwrap();
        fingerprint(&engine)
    };
    let first = drive();
    assert!((1..4).all(|_| drive() == first));
}

/// The number of threads decides who begins which world and when, and nothing else.
#[test]
fn replay_worlds_begun_on_one_thread_or_many_are_the_same() {
    let scenario = demo().unwrap();
    let briefing = Arc::new(scenario.briefing());
    // One in seventeen, so that faults of every part of the list are among them.
    let supposed: Vec<Supposition> = suppositions(&scenario).into_iter().step_by(17).collect();
    let begun = |threads| {
        let worlds = Worlds::begin_on(threads, &briefing, &supposed, &|_, _| {}).unwrap();
        let priors: Vec<u64> = worlds.priors.iter().map(|prior| prior.to_bits()).collect();
        let worlds: Vec<_> = worlds
            .worlds
            .iter()
            .map(|world| (world.faults.clone(), world.variant, world.session.digest()))
            .collect();
        (priors, worlds)
    };
    let alone = begun(1);
    assert!(alone.0.len() > 1, "too few worlds to tell their order");
    for threads in [2, 5] {
        assert_eq!(begun(threads), alone, "{threads} threads");
    }
}

/// Strokes remembered together with other worlds, tests asked on many threads from copies that share
/// their way: what the expert foresees is what each world shows by itself, walked to from its start.
#[test]
fn replay_what_the_expert_foresees_is_what_each_world_shows_by_itself() {
    let scenario = demo().unwrap();
    let briefing = Arc::new(scenario.briefing());
    let supposed: Vec<Supposition> = suppositions(&scenario).into_iter().step_by(9).collect();
    let begin = |supposed: &Supposition| {
        Session::begin_without_history(Arc::clone(&briefing), supposed.hidden.clone()).unwrap()
    };
    let strokes = Arc::new(StrokeMemo::default());
    let worlds: Vec<World> = supposed
        .iter()
        .map(|supposed| {
            let mut session = begin(supposed);
            session.share_strokes(&strokes);
            let (faults, left) = (supposed.faults.clone(), supposed.faults.clone());
            World { faults, left, variant: supposed.variant, session }
        })
        .collect();
    let priors = vec![1.0 / worlds.len() as f64; worlds.len()];
    let worlds = Worlds::of(worlds, priors);
    let mut expert = Expert::new(Arc::clone(&briefing)).with_tests_for(&worlds);
    expert.value(&Belief::prior(worlds)).unwrap();
    let mut stroked = 0;
    for (world, supposed) in supposed.iter().enumerate() {
        for (number, probe) in expert.probes().iter().enumerate() {
            let mut alone = begin(supposed);
            for step in steps_to(&probe.need, &briefing.vehicle, alone.vehicle_in_sight()) {
                alone.take_unlogged(&step).unwrap();
            }
            let shown: Vec<_> = probe.steps.iter().map(|it| alone.take_unlogged(it)).collect();
            let shown = aspects(shown[probe.shows].as_ref().unwrap());
            assert_eq!(expert.foreseen(world, number), Some(&shown[..]), "{supposed:?} {probe:?}");
            stroked += probe.steps.iter().filter(|it| matches!(it, Step::Command { .. })).count();
        }
    }
    assert!(2 * strokes.size() < stroked, "{} kept of {stroked}", strokes.size());
}

/// What is kept of the wiring is what would be felt anew, whatever was changed since, and does not
/// depend on what the drivers do at the moment.
#[test]
fn replay_circuits_that_were_kept_are_those_felt_anew() {
    let spec = demo().unwrap().vehicle;
    let mut chance = Streams::new(5).stream("changes");
    let mut condition = Condition::sound(&spec);
    let mut assembly = Assembly::default();
    let mut state = ElectricalState {
        key_on: true,
        charging: false,
        machines: faultwright::vehicle::harness::Machines::RESTING,
        battery_temperature: Celsius(20.0),
        coil_temperature: BTreeMap::new(),
        drivers: BTreeMap::new(),
    };
    let kept = Felt::default();
    let mut different = 0;
    let mut before = None;
    for _ in 0..200 {
        let mut pick = |of: usize| ((chance.unit() * of as f64) as usize).min(of - 1);
        let part = &spec.parts[pick(spec.parts.len())].id;
        let element = spec.harness.elements[pick(spec.harness.elements.len())].id().clone();
        let valve = spec.valves[pick(spec.valves.len())].id.clone();
        match pick(8) {
            0 if assembly.is_off(part) => assembly.put_back(part),
            0 => assembly.take_off(part),
            1 => drop(condition.extra_ohms.insert(element, pick(3) as f64)),
            2 => drop(condition.leak_to_ground_ohms.insert(element, 0.5)),
            3 => state.charging = !state.charging,
            4 => drop(state.coil_temperature.insert(valve, Celsius(90.0))),
            5 => drop(condition.valves.remove(&valve)),
            6 => drop(state.drivers.insert(valve, DriverState::On)),
            _ => {}
        }
        let anew = feel(&spec, &condition, &assembly, &state).unwrap();
        // A copy, as a forked session has, keeps the same.
        let copy = kept.clone();
        for memory in [&copy, &kept] {
            assert_eq!(memory.feel(&spec, &condition, &assembly, state.clone()).unwrap(), anew);
        }
        different += usize::from(before.replace(anew.clone()) != Some(anew));
    }
    assert!(different > 20, "the changes hardly changed anything: {different}");
}

/// A camshaft that is parked does not feel the torque pulse, so that it need not be worked out.
#[test]
fn limit_a_parked_camshaft_feels_no_pulse() {
    let fluid = Oil::TYPICAL_5W_30.curve().unwrap().fluid(Celsius(90.0));
    let conditions = Conditions {
        speed: Rpm(2_000.0),
        oil: Celsius(90.0),
        supply: Volts(14.1),
        circuit_is_sound: true,
    };
    let (mut parked, mut moved) = (0, 0);
    for wanted in [0.0, 12.0] {
        let mut line = CamLine::new(CamSpec::INTAKE, CamCondition::SOUND, &fluid);
        for tick in 0..3_000_u32 {
            if tick.is_multiple_of(10) {
                let target = if tick < 1_000 { wanted } else { 0.0 };
                line.control(0.5, Some(CrankDegrees(target)), &conditions, true);
            }
            let shared =
                |pulses| SharedTick { gallery_pa: 4e5, pulses, air: 0.03, is_turning: true };
            let pulses = PulseAngle::at(4, f64::from(tick) * 0.2);
            let mut unfelt = line.clone();
            let is_parked = line.is_parked();
            let drawn = line.tick(&shared(pulses));
            let drawn_without = unfelt.tick(&shared(PulseAngle::STANDING));
            if is_parked {
                parked += 1;
                assert_eq!(drawn.to_bits(), drawn_without.to_bits());
                assert_eq!(format!("{line:?}"), format!("{unfelt:?}"));
            } else {
                moved += 1;
            }
        }
    }
    assert!(parked > 3_000 && moved > 500, "{parked} {moved}");
}

fn valve(stiction_n: f64, winding: Winding) -> FittedValve {
    let part_number = Id::from("any");
    FittedValve { part_number, winding, screen_blocked: 0.0, stiction_n, seal: Seal::Good }
}

const fn supplied(supply_v: f64, source_ohms: f64, on_s: f64) -> Drive {
    Drive { supply: Volts(supply_v), source: Ohms(source_ohms), on_for: Seconds(on_s) }
}

const WARM: Surroundings =
    Surroundings { coil: Celsius(90.0), oil_viscosity_pa_s: 0.012, start: Millimetres(0.0) };

fn simulated(valve: &FittedValve, drive: Drive, around: Surroundings) -> Stroke {
    let Actuator { solenoid, spool } = Actuator::REFERENCE;
    energise(&solenoid, &valve.winding, &spool.gummed(Newtons(valve.stiction_n)), drive, around)
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]

    /// Asked twice of one memo, and for neighbours in a number or two in between: always what is simulated
    /// without one, to the bit.
    #[test]
    fn prop_remembered_strokes_are_those_simulated_anew(
        supply_v in 6.0..15.0_f64,
        source_ohms in 0.1..8.0_f64,
        stiction_n in 0.0..3.0_f64,
        coil_c in -20.0..80.0_f64,
        shorted_share in 0.01..0.5_f64,
        start_mm in 0.1..2.0_f64,
    ) {
        let memo = StrokeMemo::default();
        let winding = Winding { shorted_share, ..Winding::REFERENCE };
        let around = Surroundings { coil: Celsius(coil_c), start: Millimetres(start_mm), ..WARM };
        let drive = supplied(supply_v, source_ohms, 0.12);
        let asked = [
            (valve(stiction_n, winding), drive, around),
            (valve(stiction_n, winding), supplied(supply_v.next_up(), source_ohms, 0.12), around),
            (valve(stiction_n, winding), supplied(supply_v, source_ohms, 0.5), around),
            (valve(stiction_n + 1.0, winding), drive, around),
            (valve(stiction_n, Winding::REFERENCE), drive, around),
            (valve(stiction_n, winding), drive, WARM),
        ];
        for _ in 0..2 {
            for (valve, drive, around) in &asked {
                let kept = memo.stroke(&Actuator::REFERENCE, valve, *drive, *around);
                prop_assert_eq!(&*kept, &simulated(valve, *drive, *around));
            }
        }
        prop_assert_eq!(memo.size(), asked.len());
    }
}

/// Thousands of strokes, each of which is hardly one, and among them a favourite that is asked for again and
/// again: it is never simulated anew.
#[test]
fn limit_a_memo_of_strokes_does_not_grow_without_end_and_keeps_what_is_asked_for() {
    const MOST: usize = 2_048;
    let memo = StrokeMemo::default();
    let sound = valve(0.1, Winding::REFERENCE);
    let ask = |supply_v: f64| {
        memo.stroke(&Actuator::REFERENCE, &sound, supplied(supply_v, 0.5, 0.001), WARM)
    };
    let favourite = ask(12.0);
    let mut sizes = Vec::new();
    for number in 1..=2 * MOST {
        let _ = ask(1e-6 * number as f64);
        assert!(Arc::ptr_eq(&ask(12.0), &favourite), "simulated anew after {number}");
        sizes.push(memo.size());
    }
    assert!(sizes.iter().all(|size| *size <= MOST));
    assert!(sizes.windows(2).any(|pair| pair[1] < pair[0]), "nothing was ever forgotten");
}
