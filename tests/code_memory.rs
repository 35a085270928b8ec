//! The code memory against a second account of its rules.
//!
//! The memory keeps counters and moves on from cycle to cycle. The account here keeps the whole
//! past and says what must hold now by looking back over it, so that a slip in one is unlikely to
//! be in the other.

use faultwright::control_module::code::Code;
use faultwright::control_module::freeze_frame::FreezeFrame;
use faultwright::control_module::known_code::{History, KnownCode, PermanentRule, Trips};
use faultwright::control_module::memory::CodeMemory;
use faultwright::control_module::verdict::{Finding, Verdict};
use faultwright::units::{Celsius, KilometresPerHour, Rpm, Volts};
use proptest::prelude::*;

/// The codes of the test: two trips, one trip, one trip without the lamp, one trip whose permanent code
/// asks for a drive of ordinary length.
const KNOWN: [KnownCode; 4] = [
    KnownCode::general(Code(0x0011)),
    KnownCode { trips: Trips::One, ..KnownCode::general(Code(0x0010)) },
    KnownCode { trips: Trips::One, lights_lamp: false, ..KnownCode::general(Code(0x2088)) },
    KnownCode {
        trips: Trips::One,
        permanent: PermanentRule::OnePassInADrive,
        ..KnownCode::general(Code(0x0013))
    },
];

/// One thing that happens to the memory.
#[derive(Debug, Clone, Copy)]
enum Step {
    /// Key on, whether the engine is started, whether it warms up, whether the drive is a long one,
    /// each code's two verdicts, key off.
    KeyCycle { is_driven: bool, warms_up: bool, is_long: bool, verdicts: [[Verdict; 2]; 4] },
    /// Key on, clear, key off.
    Clear,
}

/// What one step means to one code.
#[derive(Debug, Clone, Copy, PartialEq)]
enum Mark {
    /// A failure, in the driving cycle of this number.
    Failure(usize),
    /// A driving cycle without a failure: whether the monitor passed, whether it was a warm-up,
    /// whether it was long.
    Clean {
        passed: bool,
        warmed_up: bool,
        long: bool,
    },
    Clear,
}

/// The past of one code, in order.
fn marks(steps: &[Step], code: usize) -> Vec<Mark> {
    let mut cycle = 0;
    let mut marks = Vec::new();
    for step in steps {
        match step {
            Step::Clear => {
                marks.push(Mark::Clear);
                cycle += 1;
            }
            Step::KeyCycle { is_driven, warms_up, is_long, verdicts } => {
                let verdicts = verdicts[code];
                if verdicts.contains(&Verdict::Failed) {
                    marks.push(Mark::Failure(cycle));
                } else if *is_driven {
                    let passed = verdicts.contains(&Verdict::Passed);
                    marks.push(Mark::Clean { passed, warmed_up: *warms_up, long: *is_long });
                }
                cycle += usize::from(*is_driven);
            }
        }
    }
    marks
}

fn is_pass(mark: &Mark) -> bool {
    matches!(mark, Mark::Clean { passed: true, .. })
}

/// Whether the mark lets a permanent code go that was cleared.
fn is_proof(mark: &Mark, known: &KnownCode) -> bool {
    let needs_drive = known.permanent == PermanentRule::OnePassInADrive;
    matches!(mark, Mark::Clean { passed: true, long, .. } if *long || !needs_drive)
}

/// Whether the failure at `at` confirms: it is one of enough failing cycles since the last pass or
/// clear.
fn confirms(marks: &[Mark], at: usize, trips: usize) -> bool {
    let Mark::Failure(_) = marks[at] else { return false };
    let mut cycles: Vec<usize> = marks[..=at]
        .iter()
        .rev()
        .take_while(|mark| !is_pass(mark) && **mark != Mark::Clear)
        .filter_map(|mark| if let Mark::Failure(cycle) = mark { Some(*cycle) } else { None })
        .collect();
    cycles.dedup();
    cycles.len() >= trips
}

/// The stretches of `marks` between failures.
fn fault_free(marks: &[Mark]) -> impl Iterator<Item = &[Mark]> {
    marks.split(|mark| matches!(mark, Mark::Failure(_)))
}

/// How many marks of a fault-free stretch it takes until the monitor has passed three times.
fn third_pass(stretch: &[Mark]) -> Option<usize> {
    let passes = stretch.iter().enumerate().filter(|(_, mark)| is_pass(mark));
    passes.map(|(at, _)| at + 1).nth(2)
}

/// What must hold now: pending, confirmed, permanent, lamp.
fn expected(marks: &[Mark], known: &KnownCode) -> [bool; 4] {
    let trips = usize::from(known.trips.count());
    let last_clear = marks.iter().rposition(|mark| *mark == Mark::Clear);
    let first = last_clear.map_or(0, |at| at + 1);
    let confirmations: Vec<usize> =
        (0..marks.len()).filter(|at| confirms(marks, *at, trips)).collect();
    let since_clear = || confirmations.iter().filter(|at| **at >= first);

    let last_failure =
        marks.iter().rposition(|mark| matches!(mark, Mark::Failure(_))).filter(|at| *at >= first);
    let is_pending = last_failure.is_some_and(|at| !marks[at..].iter().any(is_pass));

    let goes_dark = |at: usize, until: usize| {
        fault_free(&marks[at + 1..until]).any(|stretch| third_pass(stretch).is_some())
    };
    let is_lit = |until: usize| {
        known.lights_lamp && since_clear().any(|at| *at < until && !goes_dark(*at, until))
    };

    let is_confirmed = since_clear().any(|at| {
        // Look for a stretch with forty warm-ups in cycles that began with the lamp out.
        let mut start = at + 1;
        !fault_free(&marks[at + 1..]).any(|stretch| {
            let end = start + stretch.len();
            let dark_warm_ups = (start..end)
                .filter(|cycle| matches!(marks[*cycle], Mark::Clean { warmed_up: true, .. }))
                .filter(|cycle| !is_lit(*cycle))
                .count();
            start = end + 1;
            dark_warm_ups >= 40
        })
    });

    // A new confirmation takes the place of an older one.
    let is_permanent = known.lights_lamp
        && confirmations.last().is_some_and(|at| {
            let after = &marks[at + 1..];
            let passes_after_clear = after
                .iter()
                .position(|mark| *mark == Mark::Clear)
                .is_some_and(|clear| after[clear..].iter().any(|mark| is_proof(mark, known)));
            let until = after.iter().position(|mark| *mark == Mark::Clear);
            let before_clear = &after[..until.unwrap_or(after.len())];
            let passes_thrice =
                fault_free(before_clear).any(|stretch| third_pass(stretch).is_some());
            !passes_after_clear && !passes_thrice
        });
    [is_pending, is_confirmed, is_permanent, is_lit(marks.len())]
}

fn frame() -> FreezeFrame {
    FreezeFrame {
        engine_speed: Rpm(2_000.0),
        load: 0.3,
        coolant: Celsius(90.0),
        oil: Celsius(90.0),
        vehicle_speed: KilometresPerHour(50.0),
        supply: Volts(14.1),
        battery: Volts(14.2),
    }
}

fn apply(memory: &mut CodeMemory, step: Step) {
    match &step {
        Step::Clear => {
            memory.clear();
        }
        Step::KeyCycle { is_driven, warms_up, is_long, verdicts } => {
            if *is_driven {
                memory.engine_started(Celsius(20.0));
            }
            for moment in 0..2 {
                for (known, verdicts) in KNOWN.iter().zip(verdicts) {
                    let finding = Finding { code: known.code, verdict: verdicts[moment] };
                    memory.note(&[finding], &frame());
                }
            }
            if *is_driven {
                memory.note_coolant(Celsius(if *warms_up { 90.0 } else { 60.0 }));
                memory.engine_ran(30_000, KilometresPerHour(0.0));
                let fast = if *is_long { 60.0 } else { 30.0 };
                memory.engine_ran(570_000, KilometresPerHour(fast));
            }
            memory.key_off();
        }
    }
}

/// Pending, confirmed, permanent. Of the lamp only the sum over all codes can be seen.
fn actual(memory: &CodeMemory, code: Code) -> [bool; 3] {
    let report = memory.report();
    [
        report.pending.iter().any(|reported| reported.code == code),
        report.stored.iter().any(|reported| reported.code == code),
        report.permanent.contains(&code),
    ]
}

fn any_verdict() -> impl Strategy<Value = Verdict> {
    prop_oneof![
        2 => Just(Verdict::NotRun),
        5 => Just(Verdict::Passed),
        2 => Just(Verdict::Failed),
    ]
}

/// A step and how many times it comes in a row: mostly once, at times often enough to erase.
fn any_run() -> impl Strategy<Value = (Step, usize)> {
    let verdicts = prop::array::uniform4(prop::array::uniform2(any_verdict()));
    let key_cycle = (prop::bool::weighted(0.8), prop::bool::weighted(0.8), any::<bool>(), verdicts)
        .prop_map(|(is_driven, warms_up, is_long, verdicts)| Step::KeyCycle {
            is_driven,
            warms_up,
            is_long,
            verdicts,
        });
    let step = prop_oneof![12 => key_cycle, 1 => Just(Step::Clear)];
    (step, prop_oneof![4 => 1_usize..4, 1 => 36_usize..44])
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(512))]

    #[test]
    fn reference_memory_agrees_with_looking_back(
        runs in prop::collection::vec(any_run(), 1..12),
    ) {
        let mut memory = CodeMemory::new(KNOWN, &History::default());
        let mut steps = Vec::new();
        for (step, times) in runs {
            for _ in 0..times {
                apply(&mut memory, step);
                steps.push(step);
            }
            let mut is_lit = false;
            for (index, known) in KNOWN.iter().enumerate() {
                let expected = expected(&marks(&steps, index), known);
                let actual = actual(&memory, known.code);
                prop_assert_eq!(&actual[..], &expected[..3], "{} after {:?}", known.code, step);
                is_lit |= expected[3];
            }
            prop_assert_eq!(memory.commands_lamp(), is_lit, "lamp after {:?}", step);
        }
    }
}

/// The account itself, on sequences whose outcome the rules give by hand: otherwise both could be
/// wrong alike.
#[test]
fn published_looking_back_follows_the_rules() {
    let cycle = |letter: char| match letter {
        'F' => [Verdict::Failed; 2],
        'P' => [Verdict::Passed; 2],
        _ => [Verdict::NotRun; 2],
    };
    let of_both = |letters: &str| {
        let steps: Vec<Step> = letters
            .chars()
            .map(|letter| match letter {
                'C' => Step::Clear,
                _ => Step::KeyCycle {
                    is_driven: true,
                    warms_up: true,
                    is_long: letter.is_ascii_uppercase(),
                    verdicts: [cycle(letter.to_ascii_uppercase()); 4],
                },
            })
            .collect();
        [0, 3].map(|code| expected(&marks(&steps, code), &KNOWN[code]))
    };
    let after = |letters: &str| of_both(letters)[0];
    assert_eq!(after("F"), [true, false, false, false]);
    assert_eq!(after("FP"), [false; 4]);
    assert_eq!(after("FF"), [true; 4]);
    assert_eq!(after("FFPP"), [false, true, true, true]);
    assert_eq!(after("FFPPP"), [false, true, false, false]);
    assert_eq!(after(&format!("FFPPP{}", "P".repeat(39))), [false, true, false, false]);
    assert_eq!(after(&format!("FFPPP{}", "P".repeat(40))), [false; 4]);
    assert_eq!(after("FFC"), [false, false, true, false]);
    assert_eq!(after("FFCP"), [false; 4]);
    // The code that asks for a long drive: capital letters are long ones.
    let permanent = |letters: &str| of_both(letters)[1][2];
    assert!(permanent("F") && permanent("FC") && permanent("FCp") && permanent("FCpp"));
    assert!(!permanent("FCP") && !permanent("FCpP"));
    assert!(!permanent("Fppp"), "three passing cycles need no drive");
}
