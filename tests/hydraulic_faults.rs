//! What each fault of oil, screen and spool does in the warm road test, on both camshafts, and that a
//! sound engine never fails a monitor.
#![expect(clippy::unwrap_used, reason = "a test fails by panicking")]

mod road;

use faultwright::control_module::code_family::Bank;
use faultwright::control_module::verdict::Verdict::{Failed, NotRun, Passed};
use faultwright::numerics::streams::Streams;
use faultwright::physics::oil::Oil;
use faultwright::physics::pulsed_coil::CoilDrive;
use faultwright::physics::sump::{Dipstick, Sump};
use faultwright::physics::warm_up::EngineHeat;
use faultwright::units::{Celsius, Litres, Minutes, Newtons};
use faultwright::vehicle::cam_line::CamCondition;
use faultwright::vehicle::per_bank::CamPlace;
use faultwright::vehicle::per_cam::Cam;
use faultwright::vehicle::route::{Demand, Foot, RouteProfile};
use faultwright::vehicle::run_record::{Idling, RunRecord};
use faultwright::vehicle::running::{EngineCondition, EngineSpec, RunningEngine};
use road::{codes, coil, on, road_test, verdicts, warm};

/// Codes of the intake cam and of the exhaust cam.
fn both(record: &RunRecord) -> (Vec<String>, Vec<String>) {
    (codes(&record.cams.one.intake), codes(&record.cams.one.exhaust))
}

#[test]
fn limit_a_sound_engine_passes_every_monitor_with_twenty_seeds() {
    for seed in 0..20 {
        let record = road_test(seed, |_| ());
        for cam in Cam::BOTH {
            let summary = record.cams.one.of(cam);
            assert_eq!(verdicts(summary), [Passed; 4], "seed {seed} {cam:?}");
            assert!(summary.mean_error.0 < 0.6 && summary.enabled.0 > 149.0);
        }
        assert_eq!(record.idling, Idling::Smooth);
        // Hot idle with both valves' leak: the preparatory study's gauge reads 1.1 to 1.2 bar at 700 rpm; as it
        // comes to idle the engine dips under that for a moment.
        assert!((0.85..1.25).contains(&record.least_pressure.0), "{:?}", record.least_pressure);
    }
}

/// Faults that the road test cannot tell from a sound engine: an instrument may still find them.
#[test]
fn limit_silent_faults_set_no_code() {
    for cam in Cam::BOTH {
        for (what, change) in [
            ("screen 80 %", CamCondition { blockage: 0.8, ..CamCondition::SOUND }),
            ("screen 93 %", CamCondition { blockage: 0.93, ..CamCondition::SOUND }),
            ("stick 0.3 N", CamCondition { stiction: Newtons(0.3), ..CamCondition::SOUND }),
            ("stick 1 N", CamCondition { stiction: Newtons(1.0), ..CamCondition::SOUND }),
            ("contact 5 ohm", CamCondition { coil: coil(19.69), ..CamCondition::SOUND }),
            ("other winding", CamCondition { coil: coil(23.19), ..CamCondition::SOUND }),
        ] {
            let record = road_test(3, on(cam, |valve| *valve = change));
            let (intake, exhaust) = both(&record);
            assert!(intake.is_empty() && exhaust.is_empty(), "{what} {cam:?}");
            assert_eq!(verdicts(record.cams.one.of(cam)), [Passed; 4], "{what} {cam:?}");
        }
    }
    for oil in [
        Oil { thickening: 1.8, ..Oil::TYPICAL_5W_30 },
        Oil { dilution: 0.65, ..Oil::TYPICAL_5W_30 },
    ] {
        assert_eq!(both(&road_test(3, |condition| condition.oil = oil)), (vec![], vec![]));
    }
}

/// Which code appears for which fault, and on its own camshaft only. Early and late change sides
/// with the camshaft: a phaser that stays at rest is late on the intake and early on the exhaust.
#[test]
fn limit_each_fault_sets_its_code_on_its_own_camshaft() {
    let sound = CamCondition::SOUND;
    for (what, valve, intake, exhaust) in [
        ("screen 95 %", CamCondition { blockage: 0.95, ..sound }, &["P000A"][..], &["P000B"][..]),
        ("screen 97 %", CamCondition { blockage: 0.97, ..sound }, &["P000A"], &["P000B"]),
        (
            "screen 98.5 %",
            CamCondition { blockage: 0.985, ..sound },
            &["P000A", "P0011", "P0012", "P0016"],
            &["P000B", "P0014", "P0015", "P0017"],
        ),
        // It is pulled open once and does not come back.
        (
            "stick 2.5 N",
            CamCondition { stiction: Newtons(2.5), ..sound },
            &["P0011", "P0016"],
            &["P0015", "P0017"],
        ),
        ("seized", CamCondition { stiction: Newtons(12.0), ..sound }, &["P0012"], &["P0014"]),
        ("contact 20 ohm", CamCondition { coil: coil(34.69), ..sound }, &["P0012"], &["P0014"]),
        ("open", CamCondition { coil: CoilDrive::OPEN, ..sound }, &["P0012"], &["P0014"]),
        (
            "driver on",
            CamCondition { forced_duty: Some(1.0), ..sound },
            &["P0011", "P0016"],
            &["P0015", "P0017"],
        ),
    ] {
        for (cam, wanted) in [(Cam::Intake, intake), (Cam::Exhaust, exhaust)] {
            let record = road_test(1, on(cam, |condition| *condition = valve));
            assert_eq!(codes(record.cams.one.of(cam)), wanted, "{what} {cam:?}");
            let other = if cam == Cam::Intake { Cam::Exhaust } else { Cam::Intake };
            assert_eq!(verdicts(record.cams.one.of(other)), [Passed; 4], "{what} {cam:?}");
        }
    }
}

/// One friction law for everything: a play operator would let a spool of 2.5 N come back by 1.2 mm
/// where the equation of motion holds it for good. Here a spool returns as long as preload and spring
/// beat its break-away force: from the end of its stroke up to 2.3 N, but from mid-stroke, where
/// control leaves it, only up to about 1.6 N.
#[test]
fn limit_sticking_spool_hunts_first_and_runs_away_below_two_newtons() {
    for cam in Cam::BOTH {
        for (newtons, sets_a_code, runs_away) in
            [(1.0, false, false), (1.5, true, false), (1.9, true, true), (2.2, true, true)]
        {
            let record = road_test(1, on(cam, |valve| valve.stiction = Newtons(newtons)));
            let summary = record.cams.one.of(cam);
            assert_eq!(!codes(summary).is_empty(), sets_a_code, "{newtons} N {cam:?}");
            let stayed_away = verdicts(summary)[3] == Failed;
            assert_eq!(stayed_away, runs_away, "{newtons} N {cam:?}");
        }
    }
}

/// Low oil is chance: compared by codes over seeds, as the preparatory study does (0 of 6 at 3.0 l, 6 of 6 from
/// 2.3 l down). At 2.5 l the preparatory study has none of 6; with a rate of one in twelve here that happens.
#[test]
fn reference_low_oil_by_codes_over_seeds() {
    let with_code = |fill: f64| {
        (0..12)
            .filter(|seed| {
                let record = road_test(*seed, |condition| condition.fill = Litres(fill));
                let (intake, exhaust) = both(&record);
                for code in intake.iter().chain(&exhaust) {
                    assert!(
                        ["P0011", "P0012", "P0014", "P0015"].contains(&code.as_str()),
                        "{code}"
                    );
                }
                !intake.is_empty()
            })
            .count()
    };
    assert_eq!(with_code(3.0), 0);
    assert!(with_code(2.5) <= 3);
    // At 2.3 l one seed in twelve may come through.
    assert!(with_code(2.3) >= 11);
    for fill in [2.2, 2.0] {
        assert_eq!(with_code(fill), 12, "{fill} l");
    }
    // The other program, with its own random numbers, says the same.
    for row in road::rows(include_str!("reference/road.csv")) {
        if row.text("printed_codes") == "seeds" {
            let has_code = !row.text("codes").is_empty();
            assert_eq!(has_code, row.value("fill_l") < 2.4, "{}", row.text("case"));
        }
    }
}

/// Low oil swings the pressure at speed, which nothing else does, and the dipstick tells it.
#[test]
fn limit_low_oil_swings_the_gauge() {
    let swing = |fill| {
        let condition = EngineCondition { fill: Litres(fill), ..EngineCondition::SOUND };
        let mut engine = warm(condition, 2);
        let demand = road::demand(2_500.0, 20.0, 10.0);
        engine.hold(&demand, 3_000);
        let record = engine.hold(&demand, 20_000);
        let pressures = record.trace.points().iter().map(|point| point.pressure.0);
        let (low, high) =
            pressures.fold((f64::MAX, 0.0_f64), |(low, high), bar| (low.min(bar), high.max(bar)));
        (low, high)
    };
    let (low, high) = swing(4.5);
    assert!(low > 4.1 && high - low < 0.15, "{low} {high}");
    let (low, high) = swing(2.2);
    assert!(low < 2.5 && high - low > 1.5, "{low} {high}");
    let curve = Oil::TYPICAL_5W_30.curve().unwrap();
    let stick = Dipstick::between(3.5, 4.5);
    let level = |fill| {
        let since = Some(Minutes(10));
        stick.level(stick.whereabouts(&Sump::TYPICAL, Litres(fill), since, &curve, Celsius(20.0)))
    };
    // Cold oil takes its time to run down: after ten minutes a full sump still reads a little low.
    assert!((0.8..1.0).contains(&level(4.5)) && level(2.2) < -0.8, "{}", level(4.5));
}

/// A monitor that had no chance to see its fault says so.
#[test]
fn limit_short_cold_or_inhibited_runs_decide_nothing() {
    // Idling: only the cam at rest can be judged.
    let record = warm(EngineCondition::SOUND, 1).hold(&Demand::IDLE, 60_000);
    assert_eq!(verdicts(&record.cams.one.intake), [NotRun, NotRun, NotRun, Passed]);
    // The same with a seized spool: still nothing wrong to be seen.
    let seized = on(Cam::Intake, |valve| valve.stiction = Newtons(12.0));
    let mut condition = EngineCondition::SOUND;
    seized(&mut condition);
    let record = warm(condition, 1).hold(&Demand::IDLE, 60_000);
    assert_eq!(verdicts(&record.cams.one.intake), [NotRun, NotRun, NotRun, Passed]);
    // Frost: too cold for any monitor at the start, and slow response waits for 60 °C.
    let cold = EngineHeat::cold(Celsius(-10.0));
    let air = Streams::new(1).stream("aeration");
    let condition = EngineCondition { ambient: Celsius(-10.0), ..EngineCondition::SOUND };
    let mut engine = RunningEngine::new(EngineSpec::TYPICAL, condition, cold, air).unwrap();
    engine.assume_learnt();
    engine.start();
    let record = engine.drive(&RouteProfile::warm_road_test()).unwrap();
    assert_eq!(verdicts(&record.cams.one.exhaust)[2], NotRun);
    // Warmer than it was, although the metal of the head takes the first heat.
    assert!(record.heat.oil.0 > 5.0 && record.heat.oil.0 < 60.0, "{:?}", record.heat);
    assert!(
        codes(&record.cams.one.intake).is_empty() && codes(&record.cams.one.exhaust).is_empty()
    );
    // A circuit code keeps the monitors of its own camshaft from running.
    let inhibited = CamCondition { is_inhibited: true, ..CamCondition::SOUND };
    let record = road_test(1, on(Cam::Exhaust, |valve| *valve = inhibited));
    assert_eq!(verdicts(&record.cams.one.exhaust), [NotRun; 4]);
    assert_eq!(record.cams.one.exhaust.furthest.0, 0.0);
    assert_eq!(verdicts(&record.cams.one.intake), [Passed; 4]);
}

/// A valve held fully on at idle makes the engine stall or idle roughly (published); off, it is
/// smooth again.
#[test]
fn published_valve_held_on_at_idle_is_felt() {
    for cam in Cam::BOTH {
        let mut engine = warm(EngineCondition::SOUND, 1);
        engine.set_cam(
            cam.on(Bank::One),
            CamCondition { forced_duty: Some(1.0), ..CamCondition::SOUND },
        );
        assert!(engine.hold(&Demand::IDLE, 8_000).idling >= Idling::Rough, "{cam:?}");
        engine.set_cam(cam.on(Bank::One), CamCondition::SOUND);
        engine.stop();
        engine.start();
        engine.hold(&Demand::IDLE, 5_000);
        assert_eq!(engine.hold(&Demand::IDLE, 5_000).idling, Idling::Smooth, "{cam:?}");
    }
}

/// How far the cam is out decides between smooth, rough and stalling: a phaser with less travel, held
/// fully on, cannot go as far.
#[test]
fn limit_idle_gets_worse_with_the_angle() {
    for (travel_deg, wanted) in
        [(10.0, Idling::Smooth), (30.0, Idling::Rough), (50.0, Idling::Stalls)]
    {
        let mut spec = EngineSpec::TYPICAL;
        spec.cams.one.intake.phaser.travel_deg = travel_deg;
        let mut condition = EngineCondition::SOUND;
        condition.cams.one.intake.forced_duty = Some(1.0);
        let heat = EngineHeat { coolant: Celsius(89.0), oil: Celsius(88.0) };
        let air = Streams::new(1).stream("aeration");
        let mut engine = RunningEngine::new(spec, condition, heat, air).unwrap();
        engine.start();
        assert_eq!(engine.hold(&Demand::IDLE, 10_000).idling, wanted, "{travel_deg}");
        // Above idle the same angle does no harm.
        engine.stop();
        engine.start();
        let driving = road::demand(2_000.0, 0.0, 0.0);
        engine.hold(&driving, 5_000);
        assert_eq!(engine.hold(&driving, 2_000).idling, Idling::Smooth);
    }
}

/// Stopping empties the gallery and brings the phasers home; what was warm stays warm for a while.
#[test]
fn limit_stopping_parks_the_phasers_and_keeps_the_heat() {
    let mut engine = warm(EngineCondition::SOUND, 1);
    engine.hold(&road::demand(2_000.0, 25.0, 15.0), 5_000);
    assert!((engine.cam(CamPlace::INTAKE).seen().0 - 25.0).abs() < 1.0);
    assert!(engine.pressure().0 > 4.0);
    let before = engine.heat();
    engine.stop();
    assert!(engine.pressure().0 < 0.01, "{:?}", engine.pressure());
    for cam in Cam::BOTH {
        assert!(engine.cam(cam.on(Bank::One)).vane().is_locked(), "{cam:?}");
    }
    assert!((engine.heat().oil.0 - before.oil.0).abs() < 1.0);
    engine.rest(Minutes(24 * 60));
    assert!((engine.heat().oil.0 - 20.0).abs() < 2.0, "{:?}", engine.heat());
    // A spool stuck open keeps its phaser away, and the next start shows it.
    let stuck = CamCondition { stiction: Newtons(4.0), ..CamCondition::SOUND };
    let mut engine = warm(EngineCondition::SOUND, 1);
    engine.set_cam(CamPlace::INTAKE, CamCondition { forced_duty: Some(1.0), ..stuck });
    engine.hold(&Foot::Down.on(Demand::IDLE), 2_000);
    engine.set_cam(CamPlace::INTAKE, stuck);
    engine.stop();
    engine.start();
    let record = engine.hold(&Foot::Down.on(Demand::IDLE), 10_000);
    assert_eq!(codes(&record.cams.one.intake), ["P0011", "P0016"]);
}

/// The module learns a repaired circuit again, and a battery that was off costs it what it knew.
#[test]
fn limit_hold_is_learnt_anew_after_a_repair() {
    let bad = CamCondition { coil: coil(14.69 + 8.5), ..CamCondition::SOUND };
    let mut condition = EngineCondition::SOUND;
    on(Cam::Intake, |valve| *valve = bad)(&mut condition);
    let mut engine = warm(condition, 1);
    let learnt = |engine: &RunningEngine| engine.cam(CamPlace::INTAKE).module().learnt();
    let with_bad = learnt(&engine);
    assert!(with_bad > 1.5, "{with_bad}");
    engine.set_cam(CamPlace::INTAKE, CamCondition::SOUND);
    // What it learnt is now far too much, and yet the proof of the repair must not fail for it.
    engine.start();
    let record = engine.drive(&RouteProfile::warm_road_test()).unwrap();
    assert_eq!(verdicts(&record.cams.one.intake), [Passed; 4], "{:?}", record.cams.one.intake);
    engine.hold(&road::demand(2_000.0, 20.0, 0.0), 600_000);
    assert!((1.0..1.2).contains(&learnt(&engine)), "{}", learnt(&engine));
    engine.forget();
    assert_eq!(learnt(&engine).to_bits(), 1.0_f64.to_bits());
    // With the battery off and another winding it has to find the hold from far below.
    engine.set_cam(CamPlace::INTAKE, bad);
    engine.start();
    let record = engine.drive(&RouteProfile::warm_road_test()).unwrap();
    assert!(codes(&record.cams.one.intake).is_empty(), "{:?}", record.cams.one.intake);
}

/// The same seed and the same steps give the same bits; another seed gives others.
#[test]
fn replay_same_seed_same_bits() {
    let low = |seed| road_test(seed, |condition| condition.fill = Litres(2.2));
    assert_eq!(low(7), low(7));
    assert_ne!(low(7), low(8));
}

/// Ten simulated minutes: the trace stays within its bound and its times are even.
#[test]
fn limit_trace_of_a_long_run_is_thinned_out_evenly() {
    let mut engine = warm(EngineCondition::SOUND, 1);
    let record = engine.hold(&Demand::IDLE, 1_500_000);
    let points = record.trace.points();
    assert!(points.len() <= 6_000 && points.len() > 3_000, "{}", points.len());
    let interval = record.trace.interval().0;
    for pair in points.windows(2) {
        assert!((pair[1].time.0 - pair[0].time.0 - interval).abs() < 1e-9);
    }
}
