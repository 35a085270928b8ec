//! A reading does not depend on an instrument that was laid aside.

use faultwright::faults::{Fault, apply, places};
use faultwright::instruments::multimeter::{Display, MeterFunction, Multimeter};
use faultwright::scenario::load::demo;
use faultwright::session::attempt::Session;
use faultwright::session::event::Event;
use faultwright::session::setup::{Briefing, Hidden};
use faultwright::session::step::{ServiceTopic, Step};
use faultwright::vehicle::condition::Condition;
use faultwright::vehicle::spec::Id;
use faultwright::wording::step_parser;
use proptest::prelude::*;
use std::collections::BTreeMap;
use std::sync::{Arc, Mutex, OnceLock, PoisonError};

fn briefing() -> &'static Arc<Briefing> {
    static BRIEFING: OnceLock<Arc<Briefing>> = OnceLock::new();
    BRIEFING.get_or_init(|| Arc::new(demo().expect("the scenario").briefing()))
}

/// A session with one of the faults that its vehicle can have, by its number in their list.
fn begin(number: usize) -> Session {
    static BEGUN: Mutex<BTreeMap<usize, Session>> = Mutex::new(BTreeMap::new());
    let vehicle = &briefing().vehicle;
    let names = places(vehicle);
    let number = number % names.len();
    let mut begun = BEGUN.lock().unwrap_or_else(PoisonError::into_inner);
    begun
        .entry(number)
        .or_insert_with(|| {
            let fault = Fault { name: names[number].clone(), severity: 0.5 };
            let mut condition = Condition::sound(vehicle);
            assert!(apply(&fault, vehicle, &mut condition), "{fault:?}");
            let hidden = Hidden {
                condition,
                faults: vec![fault],
                old_codes: Vec::new(),
                meter: Multimeter { ohms_gain: 1.004, volts_gain: 0.998, ..Multimeter::ideal() },
                seed: 0,
            };
            Session::begin_without_history(Arc::clone(briefing()), hidden).expect("a session")
        })
        .fork()
}

/// Ways into which the vehicle is put before anything is measured.
const STATES: [&str; 4] = [
    "remove engine-cover",
    "remove engine-cover; unplug intake-connector",
    "remove engine-cover; key on",
    "remove engine-cover; unplug intake-connector; key on",
];

/// Measuring steps that blow no fuse and need nothing but the cover off.
fn measure() -> impl Strategy<Value = Step> {
    let point = || {
        prop::sample::select(vec![
            "battery-plus",
            "battery-minus",
            "engine-ground",
            "intake-harness-feed",
            "intake-harness-control",
        ])
    };
    let function = prop::sample::select(vec![MeterFunction::Volts, MeterFunction::Ohms]);
    (function, point(), point()).prop_filter_map("two points", |(function, red, black)| {
        (red != black).then(|| Step::Measure {
            function,
            red: Id::from(red),
            black: Id::from(black),
        })
    })
}

/// Things to do with other instruments, or with the same one elsewhere, that change no part.
fn elsewhere() -> impl Strategy<Value = Step> {
    prop_oneof![
        3 => measure(),
        1 => Just(Step::Dipstick),
        1 => Just(Step::ReadJobSheet),
        1 => Just(Step::Consult { topic: ServiceTopic::Wiring }),
        1 => Just(Step::Look { place: Id::from("intake-connector") }),
        1 => Just(Step::ReadCodes),
        1 => Just(Step::ReadFreezeFrame),
    ]
}

fn reading(session: &mut Session, step: &Step) -> Option<Event> {
    let events = session.take(step).expect("a network");
    events.into_iter().find(|event| matches!(event, Event::Reading { .. }))
}

/// What the display shows [V or ohm]; nothing for over limit.
fn figure(event: Option<&Event>) -> Option<f64> {
    match event {
        Some(Event::Reading { display: Display::Value { value, .. }, .. }) => Some(*value),
        _ => None,
    }
}

/// Within what an hour with the key on takes out of the battery and puts into a coil.
fn near(first: Option<f64>, second: Option<f64>) -> bool {
    match (first, second) {
        (Some(first), Some(second)) => (first - second).abs() <= 0.3 * first.abs() + 0.02,
        (None, None) => true,
        _ => false,
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(128))]

    /// Whatever was done elsewhere in between, the same leads on the same points show the same.
    #[test]
    fn prop_a_reading_does_not_depend_on_what_was_laid_aside(
        fault in 0_usize..64,
        state in prop::sample::select(STATES.to_vec()),
        wanted in measure(),
        before in proptest::collection::vec(elsewhere(), 1..6),
    ) {
        let mut session = begin(fault);
        for line in state.split("; ") {
            let step = step_parser::parse(line, briefing()).expect("words").expect("a step");
            session.take(&step).expect("a network");
        }
        let mut other = session.fork();
        let first = reading(&mut session, &wanted);
        prop_assert!(first.is_some(), "{wanted:?} is refused");
        for step in &before {
            other.take(step).expect("a network");
        }
        let second = reading(&mut other, &wanted);
        if state.ends_with("key on") {
            // Meanwhile the battery empties and a coil that a fault feeds gets warm, which volts show by a
            // little and ohms on a live circuit by anything.
            if matches!(wanted, Step::Measure { function: MeterFunction::Volts, .. }) {
                let (first, second) = (figure(first.as_ref()), figure(second.as_ref()));
                prop_assert!(near(first, second), "{first:?} {second:?} after {before:?}");
            }
        } else {
            prop_assert_eq!(first, second, "after {:?}", before);
        }
    }
}
