use super::*;
use crate::control_module::known_code::{PastCode, Trips};
use crate::units::{KilometresPerHour, Rpm, Volts};

const CIRCUIT: Code = Code(0x0010);
const PHASE: Code = Code(0x0011);
const VAPOUR: Code = Code(0x0442);

fn known() -> Vec<KnownCode> {
    let rule = KnownCode::general;
    vec![
        KnownCode {
            trips: Trips::One,
            readiness: Some(ReadinessGroup::Components),
            ..rule(CIRCUIT)
        },
        KnownCode { readiness: Some(ReadinessGroup::ValveTiming), ..rule(PHASE) },
        KnownCode { readiness: Some(ReadinessGroup::FuelVapour), ..rule(VAPOUR) },
    ]
}

fn memory() -> CodeMemory {
    CodeMemory::new(known(), &History::default())
}

/// Values that can be told apart by the engine speed.
fn frame(engine_speed: f64) -> FreezeFrame {
    FreezeFrame {
        engine_speed: Rpm(engine_speed),
        load: 0.3,
        coolant: Celsius(88.0),
        oil: Celsius(92.0),
        vehicle_speed: KilometresPerHour(50.0),
        supply: Volts(14.1),
        battery: Volts(14.2),
    }
}

fn fails(code: Code) -> [Finding; 1] {
    [Finding { code, verdict: Verdict::Failed }]
}

fn passes(code: Code) -> [Finding; 1] {
    [Finding { code, verdict: Verdict::Passed }]
}

fn drive(memory: &mut CodeMemory, findings: &[Finding], from: f64, to: f64) {
    memory.engine_started(Celsius(from));
    memory.note(findings, &frame(2_000.0));
    memory.note_coolant(Celsius(to));
    memory.engine_ran(60_000, KilometresPerHour(50.0));
    memory.key_off();
}

fn codes(reported: &[ReportedCode]) -> Vec<Code> {
    reported.iter().map(|reported| reported.code).collect()
}

fn complete(memory: &CodeMemory) -> Vec<bool> {
    memory.report().readiness.iter().map(|readiness| readiness.is_complete).collect()
}

/// SAE J1979 service $02: the first code to fail keeps its values.
#[test]
fn published_the_first_failing_code_owns_the_freeze_frame() {
    let mut memory = memory();
    memory.note(&fails(PHASE), &frame(1_500.0));
    memory.note(&fails(PHASE), &frame(1_600.0));
    memory.note(&fails(CIRCUIT), &frame(2_500.0));
    assert_eq!(memory.freeze_frame(), Some((PHASE, frame(1_500.0))));
    let report = memory.report();
    let owners = |list: &[ReportedCode]| {
        list.iter().map(|reported| (reported.code, reported.has_freeze_frame)).collect::<Vec<_>>()
    };
    assert_eq!(owners(&report.stored), [(CIRCUIT, false)]);
    assert_eq!(owners(&report.pending), [(CIRCUIT, false), (PHASE, true)]);
}

#[test]
fn limit_the_freeze_frame_goes_with_its_code_and_waits_for_a_new_failure() {
    let mut memory = memory();
    memory.note(&fails(PHASE), &frame(1_500.0));
    memory.note(&fails(CIRCUIT), &frame(2_500.0));
    drive(&mut memory, &[passes(PHASE), passes(CIRCUIT)].concat(), 80.0, 90.0);
    assert_eq!(memory.freeze_frame(), Some((PHASE, frame(1_500.0))), "it failed in this cycle");
    drive(&mut memory, &passes(PHASE), 80.0, 90.0);
    assert_eq!(memory.freeze_frame(), None);
    assert!(memory.is_confirmed(CIRCUIT));
    memory.note(&fails(CIRCUIT), &frame(900.0));
    assert_eq!(memory.freeze_frame(), Some((CIRCUIT, frame(900.0))));
}

/// Vehicle makers' service text, list of what service $04 erases.
#[test]
fn published_a_clear_erases_all_but_permanent_codes() {
    let mut memory = memory();
    drive(&mut memory, &[fails(CIRCUIT), fails(PHASE), passes(VAPOUR)].concat(), 20.0, 90.0);
    assert!(memory.commands_lamp());
    assert_eq!(complete(&memory), [true; 3]);
    let cleared = memory.clear();
    assert_eq!(cleared.erased, [CIRCUIT, PHASE]);
    assert_eq!(cleared.permanent_left, [CIRCUIT]);
    let report = memory.report();
    let empty = CodeReport {
        stored: vec![],
        pending: vec![],
        permanent: vec![CIRCUIT],
        commands_lamp: false,
        readiness: [
            ReadinessGroup::Components,
            ReadinessGroup::FuelVapour,
            ReadinessGroup::ValveTiming,
        ]
        .map(|group| Readiness { group, is_complete: false })
        .to_vec(),
        decisions: vec![],
        warm_ups_since_clear: 0,
        running_since_clear: Seconds(0.0),
    };
    assert_eq!(report, empty);
    assert_eq!(memory.freeze_frame(), None);

    let once = memory.clone();
    let again = memory.clear();
    assert_eq!(memory, once);
    assert_eq!(again.erased, []);
    assert_eq!(again.permanent_left, [CIRCUIT]);
}

/// A clear in the middle of a key-on begins a new driving cycle: passes from before the next start
/// do not make a drive.
#[test]
fn limit_a_clear_after_a_drive_does_not_lend_its_drive() {
    let mut memory = memory();
    memory.engine_started(Celsius(20.0));
    memory.note(&fails(CIRCUIT), &frame(700.0));
    memory.note_coolant(Celsius(90.0));
    memory.clear();
    memory.note(&passes(CIRCUIT), &frame(0.0));
    memory.key_off();
    assert_eq!(memory.report().permanent, [CIRCUIT]);
    drive(&mut memory, &passes(CIRCUIT), 85.0, 90.0);
    assert_eq!(memory.report().permanent, []);
    assert_eq!(memory.report().warm_ups_since_clear, 0);
}

#[test]
fn limit_readiness_follows_decisions_either_way() {
    let mut memory = memory();
    memory.clear();
    let undecided = Finding { code: PHASE, verdict: Verdict::NotRun };
    memory.note(&[undecided], &frame(0.0));
    assert_eq!(complete(&memory), [false, false, false]);
    memory.note(&passes(PHASE), &frame(0.0));
    assert_eq!(complete(&memory), [false, false, true]);
    memory.note(&fails(CIRCUIT), &frame(0.0));
    assert_eq!(complete(&memory), [true, false, true]);
    let decided = [fails(CIRCUIT), passes(PHASE)].concat();
    assert_eq!(memory.report().decisions, decided);
    memory.note(&[undecided], &frame(0.0));
    assert_eq!(memory.report().decisions, decided, "no decision does not undo one");
    memory.note(&fails(PHASE), &frame(0.0));
    assert_eq!(memory.report().decisions, [fails(CIRCUIT), fails(PHASE)].concat());
}

/// SAE J1979 PID $30 is one byte and, from memory, stops at its maximum.
#[test]
fn published_counters_since_the_clear() {
    let mut memory = memory();
    memory.clear();
    drive(&mut memory, &[], 20.0, 71.0);
    drive(&mut memory, &[], 55.0, 75.0);
    drive(&mut memory, &[], 20.0, 70.0);
    assert_eq!(memory.report().warm_ups_since_clear, 1);
    assert_eq!(memory.report().running_since_clear, Seconds(180.0));
    for _ in 0..300 {
        drive(&mut memory, &[], 20.0, 90.0);
    }
    assert_eq!(memory.report().warm_ups_since_clear, 255);
}

#[test]
fn limit_an_old_unrelated_code_ages_away() {
    let past = PastCode {
        code: VAPOUR,
        state: PastState::Confirmed { clean_warm_ups: 37 },
        freeze_frame: Some(frame(1_800.0)),
    };
    let history = History {
        codes: vec![past],
        results: Vec::new(),
        undecided: vec![PHASE],
        warm_ups_since_clear: 60,
        running_seconds_since_clear: 100_000,
        kilometres_since_clear: 2_000,
    };
    let mut memory = CodeMemory::new(known(), &history);
    let report = memory.report();
    assert_eq!(report.stored, [ReportedCode { code: VAPOUR, has_freeze_frame: true }]);
    assert!(!report.commands_lamp);
    assert_eq!(report.decisions, [passes(CIRCUIT), passes(VAPOUR)].concat(), "seen long ago");
    assert_eq!(complete(&memory), [true, true, false]);
    assert_eq!(report.running_since_clear, Seconds(100_000.0));

    memory.note(&fails(CIRCUIT), &frame(900.0));
    assert_eq!(memory.freeze_frame().map(|(code, _)| code), Some(VAPOUR), "the slot is taken");
    for (drives, left) in [(2, vec![CIRCUIT, VAPOUR]), (1, vec![CIRCUIT])] {
        for _ in 0..drives {
            drive(&mut memory, &[], 20.0, 90.0);
        }
        assert_eq!(codes(&memory.report().stored), left);
    }
    assert_eq!(memory.freeze_frame(), None);
    assert_eq!(memory.report().warm_ups_since_clear, 63);
}

#[test]
fn limit_a_finding_without_a_rule_follows_the_general_one() {
    let stray = Code(0x0300);
    let mut memory = memory();
    memory.note(&fails(stray), &frame(0.0));
    memory.engine_started(Celsius(20.0));
    memory.key_off();
    assert_eq!(codes(&memory.report().pending), [stray]);
    memory.note(&fails(stray), &frame(0.0));
    assert!(memory.is_confirmed(stray) && memory.commands_lamp());
}

#[test]
fn limit_an_old_pending_or_lit_code_was_last_decided_as_failed() {
    for state in [PastState::Pending, PastState::ConfirmedWithLamp] {
        let past = PastCode { code: VAPOUR, state, freeze_frame: None };
        let history = History { codes: vec![past], ..History::default() };
        let decisions = CodeMemory::new(known(), &history).report().decisions;
        assert_eq!(decisions, [passes(CIRCUIT), passes(PHASE), fails(VAPOUR)].concat());
    }
}

#[test]
fn limit_a_forgotten_code_leaves_no_trace() {
    let mut memory = memory();
    let mut untouched = memory.clone();
    drive(&mut memory, &fails(PHASE), 20.0, 90.0);
    drive(&mut untouched, &passes(PHASE), 20.0, 90.0);
    assert_ne!(memory, untouched);
    drive(&mut memory, &passes(PHASE), 20.0, 90.0);
    drive(&mut untouched, &passes(PHASE), 20.0, 90.0);
    assert_eq!(memory, untouched);
}

/// 40 CFR 86.010-18 (freeze frame), as a public excerpt gives it: a frame of another fault makes room for
/// one of the fuel system or of misfire; between those two the first one stays (from memory).
#[test]
fn published_misfire_and_fuel_take_the_freeze_frame() {
    let misfire = Code(0x0300);
    let fuel = Code(0x0171);
    let mut rules = known();
    for (code, group) in [(misfire, ReadinessGroup::Misfire), (fuel, ReadinessGroup::FuelSystem)] {
        rules.push(KnownCode { readiness: Some(group), ..KnownCode::general(code) });
    }
    let mut memory = CodeMemory::new(rules, &History::default());
    memory.note(&fails(PHASE), &frame(1_500.0));
    memory.note(&fails(fuel), &frame(2_500.0));
    assert_eq!(memory.freeze_frame(), Some((fuel, frame(2_500.0))));
    memory.note(&fails(misfire), &frame(3_000.0));
    memory.note(&fails(CIRCUIT), &frame(3_500.0));
    assert_eq!(memory.freeze_frame(), Some((fuel, frame(2_500.0))), "whichever comes first");
}

/// SAE J1979 service $06, from memory: the last result of each test stays until the clear.
#[test]
fn published_the_last_test_results_stay_until_the_clear() {
    let mut memory = memory();
    let result = |code, value| TestResult {
        code,
        measure: Measure::TimeOffTarget,
        value,
        least: 0.0,
        most: 4.5,
    };
    memory.clear();
    memory.note_results(&[result(PHASE, 1.0)]);
    assert_eq!(memory.results().count(), 0, "its monitor has not decided");
    memory.note(&[fails(PHASE), passes(VAPOUR)].concat(), &frame(0.0));
    memory.note_results(&[result(PHASE, 4.5), result(VAPOUR, 0.2)]);
    memory.note_results(&[result(PHASE, 1.0)]);
    drive(&mut memory, &[], 20.0, 90.0);
    let kept: Vec<TestResult> = memory.results().copied().collect();
    assert_eq!(kept, [result(PHASE, 1.0), result(VAPOUR, 0.2)]);
    memory.clear();
    assert_eq!(memory.results().count(), 0);
}

/// SAE J1979 PIDs $21 and $4D, from memory: distance and time with the lamp on.
#[test]
fn published_counters_with_the_lamp() {
    let mut memory = memory();
    drive(&mut memory, &passes(CIRCUIT), 20.0, 90.0);
    assert_eq!(memory.counters().minutes_with_lamp, 0);
    for _ in 0..3 {
        drive(&mut memory, &fails(CIRCUIT), 20.0, 90.0);
    }
    let counters = memory.counters();
    // Three minutes at 50 km/h are 2.5 km.
    assert_eq!((counters.minutes_with_lamp, counters.kilometres_with_lamp), (3, 2));
    assert_eq!((counters.minutes_since_clear, counters.kilometres_since_clear), (4, 3));
    for _ in 0..4 {
        drive(&mut memory, &passes(CIRCUIT), 20.0, 90.0);
    }
    assert_eq!(memory.counters().minutes_with_lamp, 6, "held from the fourth start on");
}
