//! Whatever happens to a module, in any order.

use super::*;
use proptest::prelude::*;

/// What can happen to a module.
#[derive(Debug, Clone, Copy)]
enum Event {
    KeyOn,
    Start(f64),
    Stop,
    KeyOff,
    Run(u64),
    Valve(usize, usize),
    Supply(f64),
    Note(Code, Verdict),
    Clear,
    Disconnect,
}

fn any_event() -> impl Strategy<Value = Event> {
    prop_oneof![
        3 => Just(Event::KeyOn),
        2 => (-20.0..90.0).prop_map(Event::Start),
        1 => Just(Event::Stop),
        2 => Just(Event::KeyOff),
        6 => (1_u64..8).prop_map(Event::Run),
        2 => (0_usize..2, 0_usize..5).prop_map(|(driver, valve)| Event::Valve(driver, valve)),
        1 => prop::sample::select(vec![10.0, 12.56, 14.1]).prop_map(Event::Supply),
        2 => (
            prop::sample::select(vec![INTAKE_EARLY, EXHAUST_EARLY]),
            prop::sample::select(vec![Verdict::NotRun, Verdict::Passed, Verdict::Failed]),
        )
            .prop_map(|(code, verdict)| Event::Note(code, verdict)),
        1 => Just(Event::Clear),
        1 => Just(Event::Disconnect),
    ]
}

fn apply(bench: &mut Bench, event: Event) {
    match event {
        Event::KeyOn => bench.module.key_on(bench.tick),
        Event::Start(coolant) => {
            bench.now.coolant = Celsius(coolant);
            bench.module.engine_started(Celsius(coolant), bench.tick);
        }
        Event::Stop => bench.module.engine_stopped(bench.tick),
        Event::KeyOff => bench.module.key_off(bench.tick),
        Event::Run(seconds) => {
            bench.run(seconds);
        }
        Event::Valve(driver, valve) => {
            bench.valves[driver] = [HEALTHY, OPEN, PARTLY_BROKEN, GROUNDED, SHORTED_TURNS][valve];
        }
        Event::Supply(volts) => bench.now.supply = Volts(volts),
        Event::Note(code, verdict) => bench.note(code, verdict),
        Event::Clear => {
            let _ = bench.module.clear_codes(bench.tick);
        }
        Event::Disconnect => bench.module.battery_disconnected(bench.tick),
    }
}

proptest! {
    /// Whatever happens, the memory names only codes whose monitor has said so: performance codes
    /// that were noted as failed, circuit codes of a driver whose valve was ever unsound.
    #[test]
    fn prop_no_code_without_its_monitor(events in prop::collection::vec(any_event(), 1..60)) {
        let mut bench = Bench::sound();
        let mut allowed = Vec::new();
        for event in events {
            match event {
                Event::Valve(driver, valve) if valve > 0 => {
                    allowed.extend([INTAKE, EXHAUST][driver].all());
                }
                Event::Note(code, Verdict::Failed) => allowed.push(code),
                _ => {}
            }
            apply(&mut bench, event);
            let report = bench.module.read_codes();
            let named = report.stored.iter().chain(&report.pending).map(|reported| reported.code);
            for code in named.chain(report.permanent.iter().copied()) {
                prop_assert!(allowed.contains(&code), "{code} after {event:?}");
            }
            if let Some((owner, _)) = bench.module.freeze_frame() {
                let mut listed = report.stored.iter().chain(&report.pending);
                prop_assert!(listed.any(|reported| reported.code == owner));
            }
        }
    }

    /// In any state a clear leaves only permanent codes, and a second one changes nothing; a
    /// refused one changes nothing at all.
    #[test]
    fn prop_a_clear_is_idempotent(events in prop::collection::vec(any_event(), 1..60)) {
        let mut bench = Bench::sound();
        for event in events {
            apply(&mut bench, event);
        }
        let before = bench.module.clone();
        match bench.module.clear_codes(bench.tick) {
            Err(_) => prop_assert_eq!(&bench.module, &before),
            Ok(cleared) => {
                let report = bench.module.read_codes();
                prop_assert_eq!(report.stored.len() + report.pending.len(), 0);
                prop_assert_eq!(&report.permanent, &before.read_codes().permanent);
                prop_assert_eq!(&cleared.permanent_left, &report.permanent);
                prop_assert_eq!(report.decisions.len(), 0);
                prop_assert!(!report.commands_lamp);
                let once = bench.module.clone();
                prop_assert!(bench.module.clear_codes(bench.tick).is_ok());
                prop_assert_eq!(&bench.module, &once);
            }
        }
    }

    /// Equal states have equal fingerprints and, as far as these runs reach, no others; the same
    /// events give the same state.
    #[test]
    fn prop_the_fingerprint_follows_the_state(
        shared in prop::collection::vec(any_event(), 1..20),
        further in any_event(),
    ) {
        let mut one = Bench::sound();
        let mut two = Bench::sound();
        for event in shared {
            apply(&mut one, event);
            apply(&mut two, event);
        }
        prop_assert_eq!(&one.module, &two.module);
        apply(&mut two, further);
        let is_same = one.module == two.module;
        prop_assert_eq!(is_same, fingerprint(&one.module) == fingerprint(&two.module));
    }
}
