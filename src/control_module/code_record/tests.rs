use super::*;
use crate::control_module::code::Code;
use crate::control_module::freeze_frame::FreezeFrame;
use crate::control_module::known_code::Trips;
use crate::units::{Celsius, KilometresPerHour, Rpm, Volts};

/// A code of the general rule, and one that is confirmed at once.
const TWO_TRIPS: KnownCode = KnownCode::general(Code(0x0011));
const ONE_TRIP: KnownCode = KnownCode { trips: Trips::One, ..KnownCode::general(Code(0x0010)) };

fn closed(is_driving_cycle: bool, is_warm_up: bool) -> ClosedCycle {
    ClosedCycle { is_driving_cycle, is_warm_up, is_long_drive: false }
}

/// One driving cycle: F fails, P passes, N does not run; small letters without a warm-up.
fn drive(record: &mut CodeRecord, known: &KnownCode, cycles: &str) {
    for cycle in cycles.chars() {
        match cycle.to_ascii_uppercase() {
            'F' => record.fail(known),
            'P' => record.pass(),
            _ => {}
        }
        record.key_off(closed(true, cycle.is_ascii_uppercase()));
    }
}

/// Pending, confirmed, permanent, lamp, after these cycles of the code.
fn after(known: &KnownCode, cycles: &str) -> [bool; 4] {
    let mut record = CodeRecord::default();
    drive(&mut record, known, cycles);
    state(&record)
}

fn state(record: &CodeRecord) -> [bool; 4] {
    [record.is_pending(), record.is_confirmed(), record.is_permanent(), record.lights_lamp()]
}

const BLANK: [bool; 4] = [false; 4];

/// Vehicle makers' service text on the two-trip rule; 13 CCR 1968.2 (d)(2.2) from memory.
#[test]
fn published_two_trips_confirm_and_light_the_lamp() {
    assert_eq!(after(&TWO_TRIPS, "F"), [true, false, false, false]);
    assert_eq!(after(&TWO_TRIPS, "FF"), [true; 4]);
    assert_eq!(after(&TWO_TRIPS, "FP"), BLANK);
    assert_eq!(after(&TWO_TRIPS, "FPF"), [true, false, false, false]);
    assert_eq!(after(&TWO_TRIPS, "FPFF"), [true; 4]);
}

/// (d)(2.2) from memory: the next cycle is the next in which the monitor ran.
#[test]
fn published_cycles_in_which_the_monitor_did_not_run_leave_a_pending_code() {
    assert_eq!(after(&TWO_TRIPS, "FNNN"), [true, false, false, false]);
    assert_eq!(after(&TWO_TRIPS, "FNNNF"), [true; 4]);
    assert_eq!(after(&TWO_TRIPS, "FNNNP"), BLANK);
}

/// Makers may confirm at the first detection: assumed for circuit codes.
#[test]
fn limit_one_trip_confirms_at_once() {
    let mut record = CodeRecord::default();
    record.fail(&ONE_TRIP);
    assert_eq!(state(&record), [true; 4], "before key-off");
    let once = record;
    record.fail(&ONE_TRIP);
    assert_eq!(record, once, "the same failure again");
}

/// Vehicle makers' service text; the reading chosen is the end of the third passing cycle.
#[test]
fn published_the_lamp_goes_out_after_three_passing_cycles() {
    for (known, confirmed) in [(&TWO_TRIPS, "FF"), (&ONE_TRIP, "F")] {
        for (further, lamp) in [
            ("", true),
            ("P", true),
            ("PP", true),
            ("PPP", false),
            ("PPPPP", false),
            ("PPFPP", true),
            ("PPFPPP", false),
            ("PNPNP", false),
            ("NNN", true),
        ] {
            let [_, is_confirmed, is_permanent, lights_lamp] =
                after(known, &format!("{confirmed}{further}"));
            assert_eq!(lights_lamp, lamp, "{confirmed}{further}");
            assert!(is_confirmed, "the code stays after {confirmed}{further}");
            // Vehicle makers' service text: three consecutive passed cycles.
            assert_eq!(is_permanent, lamp, "a permanent code goes with the lamp");
        }
    }
}

#[test]
fn limit_a_monitor_that_passes_and_fails_in_one_cycle_has_failed() {
    let mut record = CodeRecord::default();
    drive(&mut record, &TWO_TRIPS, "FFPP");
    record.pass();
    record.fail(&TWO_TRIPS);
    record.pass();
    record.key_off(closed(true, true));
    drive(&mut record, &TWO_TRIPS, "PP");
    assert!(record.lights_lamp(), "the count began anew");
    drive(&mut record, &TWO_TRIPS, "P");
    assert!(!record.lights_lamp());
}

/// Vehicle makers' service text: 40 warm-up cycles with the lamp already off; (d)(2.4) from memory:
/// without the fault.
#[test]
fn published_forty_warm_ups_with_the_lamp_out_erase_a_code() {
    let kept = [false, true, false, false];
    for dark in ["FFPPP", "FFPNPNP"] {
        for clean in ["P", "N"] {
            assert_eq!(after(&TWO_TRIPS, &format!("{dark}{}", clean.repeat(39))), kept, "{dark}");
            assert_eq!(after(&TWO_TRIPS, &format!("{dark}{}", clean.repeat(40))), BLANK, "{dark}");
        }
    }
    assert_eq!(after(&TWO_TRIPS, &format!("FFPPP{}", "p".repeat(100))), kept, "no warm-up");
    let lit = after(&TWO_TRIPS, &format!("FF{}", "N".repeat(100)));
    assert_eq!(lit, [true; 4], "the lamp is still on");
    let again = format!("FFPPP{}F{}", "P".repeat(39), "P".repeat(39));
    assert_eq!(after(&TWO_TRIPS, &again), kept, "the fault began the count anew");
    assert_eq!(after(&TWO_TRIPS, &format!("{again}P")), BLANK);
}

#[test]
fn limit_a_fault_that_comes_back_after_the_lamp_needs_its_trips_again() {
    assert_eq!(after(&TWO_TRIPS, "FFPPPF"), [true, true, false, false]);
    assert_eq!(after(&TWO_TRIPS, "FFPPPFF"), [true; 4]);
    assert_eq!(after(&ONE_TRIP, "FPPPF"), [true; 4]);
}

/// Vehicle makers' service text: a permanent code survives a clear and goes after one cycle in
/// which its monitor ran and passed.
#[test]
fn published_a_clear_leaves_a_permanent_code_for_one_passing_cycle() {
    let permanent = [false, false, true, false];
    for (before, left) in
        [("F", BLANK), ("FF", permanent), ("FFP", permanent), ("FFPP", permanent), ("FFPPP", BLANK)]
    {
        let mut record = CodeRecord::default();
        drive(&mut record, &TWO_TRIPS, before);
        record.clear();
        assert_eq!(state(&record), left, "{before}");
        let once = record;
        record.clear();
        assert_eq!(record, once, "{before}: a second clear changes nothing");
        drive(&mut record, &TWO_TRIPS, "NNN");
        assert_eq!(state(&record), left, "{before}: the monitor did not run");
        drive(&mut record, &TWO_TRIPS, "P");
        assert!(record.is_blank(), "{before}");
    }
}

#[test]
fn limit_after_a_clear_the_fault_starts_from_nothing() {
    let mut record = CodeRecord::default();
    drive(&mut record, &TWO_TRIPS, "FF");
    record.clear();
    drive(&mut record, &TWO_TRIPS, "F");
    assert_eq!(state(&record), [true, false, true, false]);
    let mut confirmed = record;
    drive(&mut confirmed, &TWO_TRIPS, "FPP");
    assert!(confirmed.is_permanent(), "confirmed anew, it needs three passing cycles again");
    drive(&mut record, &TWO_TRIPS, "P");
    assert!(record.is_blank());
}

#[test]
fn limit_a_key_on_without_a_start_is_no_cycle() {
    let mut record = CodeRecord::default();
    for _ in 0..5 {
        record.fail(&TWO_TRIPS);
        record.key_off(closed(false, false));
    }
    assert_eq!(state(&record), [true, false, false, false], "five looks are one trip");
    drive(&mut record, &TWO_TRIPS, "F");
    assert!(!record.is_confirmed(), "the start after them belongs to the same trip");
    drive(&mut record, &TWO_TRIPS, "F");
    assert!(record.is_confirmed());
    for _ in 0..50 {
        record.pass();
        record.key_off(closed(false, true));
    }
    assert_eq!(state(&record), [true; 4], "nor do passes without a drive put anything out");
}

#[test]
fn limit_a_code_without_the_lamp_is_never_permanent() {
    let quiet = KnownCode { lights_lamp: false, ..ONE_TRIP };
    assert_eq!(after(&quiet, "F"), [true, true, false, false]);
    assert_eq!(after(&quiet, &format!("F{}", "P".repeat(40))), BLANK);
}

#[test]
fn limit_old_codes_go_on_from_where_they_were() {
    let old = |state| CodeRecord::from_past(state, &TWO_TRIPS);
    let mut pending = old(PastState::Pending);
    drive(&mut pending, &TWO_TRIPS, "F");
    assert_eq!(state(&pending), [true; 4]);

    let mut aged = old(PastState::Confirmed { clean_warm_ups: 38 });
    drive(&mut aged, &TWO_TRIPS, "N");
    assert_eq!(state(&aged), [false, true, false, false]);
    drive(&mut aged, &TWO_TRIPS, "N");
    assert!(aged.is_blank(), "an unrelated code whose monitor never runs ages all the same");

    let mut lit = CodeRecord::default();
    drive(&mut lit, &TWO_TRIPS, "FF");
    assert_eq!(old(PastState::ConfirmedWithLamp), lit);

    lit.clear();
    assert_eq!(old(PastState::PermanentAfterClear), lit);

    let mut dark = CodeRecord::default();
    drive(&mut dark, &TWO_TRIPS, "FFPPPPPPP");
    assert_eq!(old(PastState::Confirmed { clean_warm_ups: 4 }), dark);
}

/// 13 CCR 1968.2 (d)(2.5), from memory: where the rule asks for it, the passing cycle must also be a
/// drive of ordinary length; in the same cycle, not in another.
#[test]
fn published_a_permanent_code_may_ask_for_a_drive() {
    let known = KnownCode { permanent: PermanentRule::OnePassInADrive, ..ONE_TRIP };
    let mut record = CodeRecord::default();
    record.fail(&known);
    record.clear();
    let long = ClosedCycle { is_long_drive: true, ..closed(true, true) };
    record.key_off(long);
    record.pass();
    record.key_off(closed(true, true));
    assert!(record.is_permanent(), "one cycle long, another passed");
    record.pass();
    record.key_off(long);
    assert!(!record.is_permanent());
}

const THERE: FreezeFrame = FreezeFrame {
    engine_speed: Rpm(3_000.0),
    load: 0.7,
    coolant: Celsius(90.0),
    oil: Celsius(90.0),
    vehicle_speed: KilometresPerHour(70.0),
    supply: Volts(14.1),
    battery: Volts(14.2),
};

/// 13 CCR 1968.2 (e)(3.4), from memory: a pass counts only where the fault was seen, or the pending
/// code goes after 80 driving cycles.
#[test]
fn published_similar_conditions_decide_which_cycles_count() {
    let elsewhere = FreezeFrame { load: 0.2, ..THERE };
    let failed_there = || {
        let mut record = CodeRecord::default();
        record.fail(&TWO_TRIPS);
        record.seen_under(Conditions::of(&THERE));
        record.key_off(closed(true, true));
        record
    };
    let pass = |record: &mut CodeRecord, now: &FreezeFrame| {
        record.meet(&Conditions::of(now));
        record.pass();
        record.key_off(closed(true, true));
    };
    let mut record = failed_there();
    pass(&mut record, &elsewhere);
    assert!(record.is_pending());
    pass(&mut record, &THERE);
    assert!(!record.is_pending());

    let mut record = failed_there();
    for _ in 0..79 {
        pass(&mut record, &elsewhere);
    }
    assert!(record.is_pending());
    pass(&mut record, &elsewhere);
    assert!(!record.is_pending());

    let mut record = failed_there();
    record.fail(&TWO_TRIPS);
    record.key_off(closed(true, true));
    for now in [&THERE, &elsewhere, &THERE, &elsewhere] {
        pass(&mut record, now);
    }
    assert!(record.lights_lamp(), "two passing cycles");
    pass(&mut record, &THERE);
    assert!(!record.lights_lamp());
}
