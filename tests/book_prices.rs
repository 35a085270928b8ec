//! What the workshop's book says of a step before it is taken.
#![expect(clippy::unwrap_used, reason = "a test fails by panicking")]

use faultwright::scenario::deal::deal;
use faultwright::scenario::load;
use faultwright::session::attempt::Session;
use faultwright::session::event::Event;
use faultwright::session::step::Step;
use faultwright::wording::step_parser::parse;
use std::sync::Arc;

/// Every use of an instrument twice, the engine cover off so that everything is in reach: what the book says before
/// is what is spent, the first time and the second.
#[test]
fn conserves_the_book_says_what_is_then_spent() {
    let case = deal(&Arc::new(load::demo().unwrap()), 7).unwrap();
    let begun = Session::begin_without_history(Arc::clone(&case.briefing), case.hidden.clone());
    let mut session = begun.unwrap();
    let step = |line: &str| parse(line, &case.briefing).unwrap().unwrap();
    for line in ["remove engine-cover", "gauge fit", "key on"] {
        session.take(&step(line)).unwrap();
    }
    let lines = [
        "measure volts battery-plus battery-minus",
        "measure volts battery-plus battery-minus from-front",
        "wiggle intake-feed-wire volts intake-harness-feed battery-minus",
        "zero leads",
        "lamp battery-plus battery-minus",
        "clamp intake-feed-wire",
        "zero clamp",
        "scope current intake-valve",
        "scope pin intake-valve",
        "dipstick",
        "read codes",
        "read freeze-frame",
        "read readiness",
        "read live-data",
        "read live-data oil",
        "read test-results",
        "read vehicle-information",
        "command intake-valve on",
        "clear codes",
        "gauge idle",
        "replace meter-fuse",
    ];
    for line in lines.iter().chain(&lines) {
        price_is_kept(&mut session, &step(line), line);
    }
    for line in ["gauge remove", "unplug intake-connector", "refit engine-cover"] {
        let step = step(line);
        if line.starts_with("gauge") {
            price_is_kept(&mut session, &step, line);
        } else {
            session.take(&step).unwrap();
        }
    }
    for line in ["power intake-valve for 2 s", "gauge fit"] {
        price_is_kept(&mut session, &step(line), line);
    }
    for line in ["gauge remove", "plug intake-connector"] {
        session.take(&step(line)).unwrap();
    }
    price_is_kept(&mut session, &step("drive town-loop"), "drive town-loop");
}

/// Repairs, the key and the papers: what lies on the counter with a price costs that.
#[test]
fn conserves_the_counter_says_what_is_then_spent() {
    let case = deal(&Arc::new(load::demo().unwrap()), 7).unwrap();
    let begun = Session::begin_without_history(Arc::clone(&case.briefing), case.hidden.clone());
    let mut session = begun.unwrap();
    let step = |line: &str| parse(line, &case.briefing).unwrap().unwrap();
    for line in ["remove engine-cover", "unplug intake-connector", "remove intake-valve"] {
        let events = session.take(&step(line)).unwrap();
        assert!(!events.iter().any(|event| matches!(event, Event::Refused { .. })), "{line}");
    }
    let part = &case.briefing.vehicle.valve_parts[0].part_number;
    for line in [
        "ask approval",
        "clean intake-valve",
        &format!("fit intake-valve {part}"),
        "mend intake-control-wire",
        "mend intake-feed-pin",
        "change oil 5W-30",
        "write cause Sludge on the screen",
        "key on",
        "key off",
        "hand over",
    ] {
        price_is_kept(&mut session, &step(line), line);
    }
}

fn price_is_kept(session: &mut Session, step: &Step, line: &str) {
    let before = session.till();
    let said = session.book_price(step).unwrap();
    session.take(step).unwrap();
    let spent = session.till();
    assert!(said.minutes.0 > 0, "{line}");
    assert_eq!(before.minutes + said.minutes, spent.minutes, "{line}");
    assert_eq!(before.money + said.money, spent.money, "{line}");
}

#[test]
fn limit_the_book_knows_no_wait_and_no_other_step() {
    let case = deal(&Arc::new(load::demo().unwrap()), 7).unwrap();
    let session =
        Session::begin_without_history(Arc::clone(&case.briefing), case.hidden.clone()).unwrap();
    for line in ["gauge idle warm", "remove engine-cover", "top up"] {
        let step = parse(line, &case.briefing).unwrap().unwrap();
        assert_eq!(session.book_price(&step), None, "{line}");
    }
}
