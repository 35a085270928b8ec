//! Which sound belongs to which events, on the vehicle that the program carries.

use super::{Heard, goes_on, heard};
use crate::physics::stroke::Click;
use crate::scenario::deal::deal;
use crate::scenario::load;
use crate::session::attempt::{Entry, Session};
use crate::session::event::Event;
use crate::session::setup::Briefing;
use crate::session::step::{Ending, KeyPosition, Step};
use crate::sound::caption::Name;
use crate::sound::passage::{Part, Passage};
use crate::units::Rpm;
use crate::vehicle::run_record::Idling;
use crate::vehicle::spec::Id;
use crate::wording::step_parser::parse;
use std::sync::Arc;

fn session() -> Session {
    let case = deal(&Arc::new(load::demo().unwrap()), 7).unwrap();
    Session::begin_without_history(Arc::clone(&case.briefing), case.hidden.clone()).unwrap()
}

fn briefing() -> Arc<Briefing> {
    Arc::clone(&deal(&Arc::new(load::demo().unwrap()), 7).unwrap().briefing)
}

/// What is heard after a step that is taken.
fn after(session: &mut Session, line: &str) -> Option<Heard> {
    let step = parse(line, session.briefing()).unwrap().unwrap();
    session.take(&step).unwrap();
    heard(session.log(), session.briefing())
}

fn turned(position: KeyPosition) -> Event {
    Event::KeyTurned { position, engine_lamp: false, oil_lamp: false }
}

fn key(position: KeyPosition, quality: Option<Idling>) -> Entry {
    let mut events: Vec<Event> =
        quality.into_iter().map(|quality| Event::Idles { quality }).collect();
    events.push(turned(position));
    Entry { step: Step::Key { position }, events }
}

fn clicks(on: Click, off: Click) -> Entry {
    let valve = Id::from("intake-valve");
    let one = |current_on, click| Event::Heard { valve: valve.clone(), current_on, click };
    Entry {
        step: Step::Power { valve: valve.clone(), seconds: 1, reversed: false },
        events: vec![one(true, on), one(false, off)],
    }
}

fn starter_speed(passage: &Passage) -> Rpm {
    match &passage.parts()[0] {
        Part::Starter(run) => run.speed,
        part => panic!("no starter: {part:?}"),
    }
}

#[test]
fn a_session_is_heard_from_start_to_stop() {
    let mut session = session();
    assert_eq!(after(&mut session, "dipstick"), None);
    assert_eq!(after(&mut session, "key on"), None);
    let start = after(&mut session, "key start").unwrap();
    assert_eq!(start.names, [Name::Starter, Name::Idle { is_rough: false }]);
    assert!(start.passage.is_endless());
    // A charged battery in a workshop: 150 to 250 rpm are usual, common practice, no source.
    assert!((150.0..250.0).contains(&starter_speed(&start.passage).0), "{start:?}");
    // A cold engine idles faster than 700 rpm; whoever comes in meanwhile hears the same.
    let idle = goes_on(session.log(), session.briefing());
    let rpm = |passage: &Passage| match passage.parts().last() {
        Some(Part::Engine(run)) => run.moments.last().unwrap().rpm,
        part => panic!("no engine: {part:?}"),
    };
    assert!((800.0..1_020.0).contains(&rpm(&idle)), "{idle:?}");
    assert_eq!(rpm(&idle).to_bits(), rpm(&start.passage).to_bits());
    // What is read on the way changes nothing, until live data tell the speed itself.
    assert_eq!(after(&mut session, "measure volts battery-plus battery-minus"), None);
    assert_eq!(after(&mut session, "read live-data"), None);
    let shown =
        session.log().iter().flat_map(|entry| &entry.events).find_map(|event| match event {
            Event::LiveData { frame, .. } => Some(frame.rpm),
            _ => None,
        });
    assert_eq!(shown, Some(rpm(&goes_on(session.log(), session.briefing()))));
    let stop = after(&mut session, "key off").unwrap();
    assert_eq!(stop.names, [Name::RunDown]);
    assert!(!stop.passage.is_endless());
    assert_eq!(goes_on(session.log(), session.briefing()), Passage::SILENCE);
    assert_eq!(after(&mut session, "key on"), None);
}

#[test]
fn a_road_is_heard_in_a_few_seconds_and_ends_in_silence() {
    let mut session = session();
    let road = after(&mut session, "drive test-hill").unwrap();
    assert_eq!(road.names[0], Name::Starter);
    assert!(matches!(road.names[1], Name::Road { .. }));
    let seconds = road.passage.samples().count() / 48_000;
    assert!((4..12).contains(&seconds), "{seconds}");
    assert_eq!(goes_on(session.log(), session.briefing()), Passage::SILENCE);
}

#[test]
fn a_click_sounds_as_the_event_calls_it() {
    let briefing = briefing();
    for on in [Click::Clear, Click::Dull, Click::None] {
        for off in [Click::Clear, Click::Dull, Click::None] {
            let heard = heard(&[clicks(on, off)], &briefing).unwrap();
            assert_eq!(heard.names, [Name::Click(on), Name::Click(off)]);
            let of_parts = heard.passage.parts().iter().filter_map(|part| match part {
                Part::Click(impact) => Some(impact.click()),
                _ => None,
            });
            let loud: Vec<Click> =
                [on, off].into_iter().filter(|click| *click != Click::None).collect();
            assert_eq!(of_parts.collect::<Vec<_>>(), loud);
        }
    }
    let none = heard(&[clicks(Click::None, Click::None)], &briefing).unwrap();
    assert_eq!(none.passage, Passage::SILENCE);
}

/// A dull click is softer than a sharp one of the same valve by more than a just noticeable step of 3 dB.
#[test]
fn a_dull_click_is_softer_than_a_sharp_one() {
    let briefing = briefing();
    let level =
        |click| match heard(&[clicks(click, Click::None)], &briefing).unwrap().passage.parts() {
            [Part::Click(impact), ..] => impact.level_db(),
            parts => panic!("{parts:?}"),
        };
    let (sharp, dull) = (level(Click::Clear), level(Click::Dull));
    assert!(sharp > dull + 3.0, "{sharp} {dull}");
}

#[test]
fn the_engine_sounds_as_it_idles() {
    let briefing = briefing();
    let start = |quality| heard(&[key(KeyPosition::Start, Some(quality))], &briefing).unwrap();
    let rough = start(Idling::Rough);
    assert_eq!(rough.names, [Name::Starter, Name::Idle { is_rough: true }]);
    assert!(rough.passage.is_endless());
    let stalls = start(Idling::Stalls);
    assert_eq!(stalls.names, [Name::Starter, Name::Stall]);
    assert!(!stalls.passage.is_endless());
    let dead = start(Idling::DoesNotStart);
    assert_eq!(dead.names, [Name::StarterLabours]);
    assert!(starter_speed(&dead.passage).0 < 80.0);
    for quality in [Idling::Stalls, Idling::DoesNotStart] {
        let log = [key(KeyPosition::Start, Some(quality)), key(KeyPosition::Off, None)];
        assert_eq!(heard(&log, &briefing), None, "an engine that stands runs down");
    }
}

#[test]
fn a_helper_turns_the_engine_for_each_reading() {
    let mut session = session();
    let crank = after(&mut session, "key crank").unwrap();
    assert_eq!(crank.names, [Name::Starter]);
    let reading = after(&mut session, "measure volts battery-plus battery-minus").unwrap();
    assert_eq!(reading, crank);
    assert_eq!(after(&mut session, "key on"), None);
    assert_eq!(after(&mut session, "measure volts battery-plus battery-minus"), None);
}

#[test]
fn an_engine_held_by_hand_comes_back_to_its_idle() {
    let briefing = briefing();
    let read = |rpm| Entry {
        step: Step::ReadGauge { rpm, warm: false },
        events: vec![Event::GaugeRead { rpm, bar: 3.0, swing: 0.1, tolerance: 0.1 }],
    };
    let log = [key(KeyPosition::Start, Some(Idling::Smooth)), read(Some(2_500))];
    let held = heard(&log, &briefing).unwrap();
    assert_eq!(held.names, [Name::Held { rpm: 2_500 }]);
    assert!(held.passage.is_endless());
    assert_eq!(heard(&[log[0].clone(), read(None)], &briefing), None);
    assert_eq!(heard(&log[1..], &briefing), None, "an engine that stands is held");
}

#[test]
fn limit_a_handed_over_vehicle_and_an_empty_log_are_silent() {
    let briefing = briefing();
    assert_eq!(heard(&[], &briefing), None);
    assert_eq!(goes_on(&[], &briefing), Passage::SILENCE);
    let ending = Ending::Repaired;
    let over =
        Entry { step: Step::HandOver { ending }, events: vec![Event::HandedOver { ending }] };
    assert_eq!(heard(&[over], &briefing), Some(Heard::default()));
}
