//! Drives that are broken off: what is seen on the way, what they cost, and that they are the beginning of the whole.
#![expect(clippy::unwrap_used, reason = "a test fails by panicking")]

use faultwright::faults::{Fault, FaultKind, FaultName, apply};
use faultwright::instruments::multimeter::Multimeter;
use faultwright::scenario::load::demo;
use faultwright::session::attempt::{Session, Till};
use faultwright::session::course::Course;
use faultwright::session::event::Event;
use faultwright::session::setup::{Briefing, Hidden};
use faultwright::session::step::Step;
use faultwright::units::{Minutes, Money, Seconds};
use faultwright::vehicle::condition::Condition;
use faultwright::vehicle::spec::Id;
use faultwright::wording::step_parser;
use std::sync::{Arc, OnceLock};

const ROAD: &str = "test-hill";

fn briefing() -> &'static Arc<Briefing> {
    static BRIEFING: OnceLock<Arc<Briefing>> = OnceLock::new();
    BRIEFING.get_or_init(|| Arc::new(demo().unwrap().briefing()))
}

/// A vehicle whose intake camshaft is late to move, with the code reader connected or not.
fn begin(with_reader: bool) -> Session {
    let name = FaultName { kind: FaultKind::StickingSpool, place: Id::from("intake-valve") };
    let mut condition = Condition::sound(&briefing().vehicle);
    assert!(apply(&Fault { name, severity: 0.9 }, &briefing().vehicle, &mut condition));
    let hidden = Hidden {
        condition,
        faults: Vec::new(),
        old_codes: Vec::new(),
        meter: Multimeter::ideal(),
        seed: 0,
    };
    let mut session = Session::begin(Arc::clone(briefing()), hidden).unwrap();
    if with_reader {
        take(&mut session, "key on");
        take(&mut session, "read codes");
    }
    session
}

fn step(line: &str) -> Step {
    step_parser::parse(line, briefing()).unwrap().unwrap()
}

fn take(session: &mut Session, line: &str) -> Vec<Event> {
    session.take(&step(line)).unwrap()
}

fn course(session: &Session, line: &str) -> Course {
    session.course(&step(line)).unwrap().unwrap()
}

fn spent(events: &[Event]) -> Till {
    events
        .iter()
        .find_map(|event| match event {
            Event::Spent { minutes, money } => Some(Till { minutes: *minutes, money: *money }),
            _ => None,
        })
        .unwrap()
}

#[test]
fn replay_what_is_seen_on_the_way_is_that_of_the_whole_road_as_far_as_it_goes() {
    let session = begin(true);
    let before = session.digest();
    let whole = course(&session, &format!("drive {ROAD}"));
    assert_eq!(whole.duration, briefing().routes[&Id::from(ROAD)].profile.duration());
    let wanted: Vec<f64> = whole.cams.iter().flat_map(|cam| cam.wanted.clone()).collect();
    assert!(wanted.iter().any(|angle| *angle > 5.0), "the module asked for nothing");
    for seconds in [1.0, 30.0, 77.0] {
        let part = course(&session, &format!("drive {ROAD} for {seconds} s"));
        assert!(part.duration > Seconds(seconds));
        // Both are thinned out alike, or not at all: points are found by their time.
        let mut compared = 0;
        for (index, point) in part.points.iter().enumerate() {
            if point.time >= Seconds(seconds) {
                break;
            }
            let Some(at) = whole.points.iter().position(|it| it.time == point.time) else {
                continue;
            };
            assert_eq!(whole.points[at], *point);
            for (of_whole, of_part) in whole.cams.iter().zip(&part.cams) {
                assert_eq!(of_whole.wanted[at], of_part.wanted[index]);
                assert_eq!(of_whole.actual[at], of_part.actual[index]);
            }
            compared += 1;
        }
        assert!(f64::from(compared) >= seconds, "{compared} points in {seconds} s");
    }
    assert_eq!(session.digest(), before, "looking ahead changed the session");
}

#[test]
fn limit_without_a_reader_the_dashboard_alone_is_seen() {
    let seen = course(&begin(false), &format!("drive {ROAD} for 20 s"));
    assert!(seen.cams.is_empty());
    assert!(seen.points.iter().any(|point| point.km_h > 0.0));
    assert!(seen.points.iter().all(|point| point.rpm % 50.0 == 0.0));
}

#[test]
fn closed_form_a_broken_off_drive_costs_the_way_out_and_back_and_never_more_than_the_whole() {
    let route = &briefing().routes[&Id::from(ROAD)];
    let (whole_s, whole) = (
        route.profile.duration().0,
        Till { minutes: route.minutes, money: briefing().prices.fuel },
    );
    for seconds in [1_u16, 10, 60, 100, 10_000] {
        let line = format!("drive {ROAD} for {seconds} s");
        let mut session = begin(false);
        let share = (2.0 * f64::from(seconds) / whole_s).min(1.0);
        let least = f64::from(whole.minutes.0) * share;
        let priced = session.book_price(&step(&line)).unwrap();
        assert!(f64::from(priced.minutes.0) >= least && f64::from(priced.minutes.0) < least + 1.0);
        assert!(priced.minutes >= Minutes(1) && priced.money > Money(0));
        let events = take(&mut session, &line);
        assert_eq!(spent(&events), priced);
        let stopped = events.iter().find_map(|event| match event {
            Event::Driven { stopped_after, .. } => Some(*stopped_after),
            _ => None,
        });
        assert_eq!(stopped.unwrap(), Some(seconds).filter(|it| f64::from(*it) < whole_s));
    }
    let mut session = begin(false);
    assert_eq!(spent(&take(&mut session, &format!("drive {ROAD}"))), whole);
}

#[test]
fn limit_a_monitor_that_needs_more_road_has_not_run_on_a_short_one() {
    let decided = |line: &str| {
        take(&mut begin(true), line)
            .into_iter()
            .find_map(|event| match event {
                Event::Driven { decided, .. } => Some(decided.len()),
                _ => None,
            })
            .unwrap()
    };
    assert!(decided(&format!("drive {ROAD} for 5 s")) < decided(&format!("drive {ROAD}")));
}

#[test]
fn limit_no_course_of_what_is_no_drive_or_would_be_refused() {
    let mut session = begin(false);
    assert_eq!(session.course(&step("dipstick")).unwrap(), None);
    take(&mut session, "gauge fit");
    let refused = take(&mut session, &format!("drive {ROAD}"));
    assert!(refused.iter().any(|event| matches!(event, Event::Refused { .. })));
    assert_eq!(session.course(&step(&format!("drive {ROAD}"))).unwrap(), None);
}
