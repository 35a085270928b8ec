//! The code reader on a vehicle: bytes over the link, and what a person gets to see of them.

#![expect(clippy::unwrap_used, reason = "a test fails by panicking")]

use faultwright::control_module::known_code::ReadinessGroup;
use faultwright::control_module::services::Service;
use faultwright::control_module::services::parameter::{self, MONITOR_STATUS};
use faultwright::control_module::services::reply::{self, NEGATIVE};
use faultwright::control_module::services::support;
use faultwright::faults::{Fault, FaultKind, FaultName, apply};
use faultwright::instruments::multimeter::Multimeter;
use faultwright::physics::stroke::Click;
use faultwright::scenario::load::demo;
use faultwright::session::attempt::Session;
use faultwright::session::event::{Event, NoAnswer};
use faultwright::session::setup::{Briefing, Hidden};
use faultwright::units::Celsius;
use faultwright::vehicle::condition::Condition;
use faultwright::vehicle::diagnostic_link::{LinkCondition, LinkReply};
use faultwright::vehicle::spec::Id;
use faultwright::vehicle::whole::Vehicle;
use faultwright::wording::step_parser;
use proptest::prelude::*;
use std::sync::{Arc, OnceLock};

fn briefing() -> &'static Arc<Briefing> {
    static BRIEFING: OnceLock<Arc<Briefing>> = OnceLock::new();
    BRIEFING.get_or_init(|| Arc::new(demo().unwrap().briefing()))
}

fn sound() -> Condition {
    Condition::sound(&briefing().vehicle)
}

fn session(condition: Condition) -> Session {
    let meter = Multimeter::ideal();
    let hidden = Hidden { condition, faults: Vec::new(), old_codes: Vec::new(), meter, seed: 0 };
    Session::begin_without_history(Arc::clone(briefing()), hidden).unwrap()
}

fn take(session: &mut Session, line: &str) -> Vec<Event> {
    let step = step_parser::parse(line, briefing()).unwrap().unwrap();
    session.take(&step).unwrap()
}

fn no_answer(events: &[Event]) -> Option<NoAnswer> {
    events.iter().find_map(|event| match event {
        Event::NoAnswer { reason } => Some(*reason),
        _ => None,
    })
}

fn vehicle() -> Vehicle {
    let spec = Arc::new(briefing().vehicle.clone());
    Vehicle::new(spec, sound(), Celsius(20.0), &[], 0).unwrap()
}

fn ask(vehicle: &mut Vehicle, request: &[u8]) -> Vec<u8> {
    match vehicle.exchange(request).unwrap().reply {
        LinkReply::Message(bytes) => bytes,
        other => panic!("{request:02X?}: {other:?}"),
    }
}

/// The reader tells apart only what it can: dark without power, silent without an answer. Who turns
/// the key knows that it is off.
#[test]
fn limit_what_a_broken_link_looks_like() {
    let broken = |link: LinkCondition| Condition { link, ..sound() };
    let no_power = LinkCondition { power_ohms: 1e9, ..LinkCondition::SOUND };
    let cut = LinkCondition { pair_ohms: 1e9, ..LinkCondition::SOUND };
    let joined = LinkCondition { across_ohms: Some(0.2), ..LinkCondition::SOUND };
    let mut no_supply = sound();
    // The valves' feed as well, or the module lives on what comes back to it through the coils.
    for wire in ["module-feed-wire", "feed-wire"] {
        no_supply.extra_ohms.insert(Id::from(wire), 1e9);
    }
    let mut no_ground = sound();
    no_ground.extra_ohms.insert(Id::from("module-ground-wire"), 1e9);
    for (condition, key_off, key_on) in [
        (sound(), Some(NoAnswer::KeyOff), None),
        (broken(no_power), Some(NoAnswer::ReaderDark), Some(NoAnswer::ReaderDark)),
        (broken(cut), Some(NoAnswer::KeyOff), Some(NoAnswer::NoReply)),
        (broken(joined), Some(NoAnswer::KeyOff), Some(NoAnswer::NoReply)),
        (no_supply, Some(NoAnswer::KeyOff), Some(NoAnswer::NoReply)),
        (no_ground, Some(NoAnswer::KeyOff), Some(NoAnswer::NoReply)),
    ] {
        for request in ["read codes", "read readiness", "clear codes", "command intake-valve on"] {
            let mut session = session(condition.clone());
            assert_eq!(no_answer(&take(&mut session, request)), key_off, "{request} {condition:?}");
            take(&mut session, "key on");
            assert_eq!(no_answer(&take(&mut session, request)), key_on, "{request} {condition:?}");
        }
    }
}

/// Every number in a support map is answered for, and with the width that this reader expects.
#[test]
fn limit_what_the_module_names_it_answers() {
    let mut vehicle = vehicle();
    vehicle.start().unwrap();
    let mut base = 0;
    let mut asked = 0;
    loop {
        let bytes = ask(&mut vehicle, &[0x01, base]);
        let data = reply::data(Service::CurrentData, &bytes).unwrap();
        let named = support::numbers(base, data[1..].try_into().unwrap());
        for number in named.iter().filter(|number| !support::asks_for_map(**number)) {
            let bytes = ask(&mut vehicle, &[0x01, *number]);
            let data = reply::data(Service::CurrentData, &bytes).unwrap();
            let parts = parameter::parts(Service::CurrentData, data).unwrap();
            assert_eq!(parts.len(), 1, "{number:02X}");
            asked += 1;
        }
        match base.checked_add(support::SPAN).filter(|next| named.contains(next)) {
            Some(next) => base = next,
            None => break,
        }
    }
    assert!(asked > 8, "{asked}");
    assert_eq!(ask(&mut vehicle, &[0x01, 0x03]), [NEGATIVE, 0x01, 0x31]);
    assert_eq!(ask(&mut vehicle, &[0x01, 0x03, MONITOR_STATUS])[..2], [0x41, MONITOR_STATUS]);
}

/// Service $04 asks for the key on and the engine off (common practice): `7F 04 22` otherwise.
#[test]
fn closed_form_refusals_while_the_engine_runs() {
    let mut vehicle = vehicle();
    vehicle.start().unwrap();
    assert_eq!(ask(&mut vehicle, &[0x04]), [NEGATIVE, 0x04, 0x22]);
    assert_eq!(ask(&mut vehicle, &[0x2F, 0x30, 0x01, 3, 1]), [NEGATIVE, 0x2F, 0x22]);
    assert_eq!(ask(&mut vehicle, &[0x2F, 0x30, 0x03, 3, 1]), [NEGATIVE, 0x2F, 0x31]);
    assert_eq!(ask(&mut vehicle, &[0x08, 0x01]), [NEGATIVE, 0x08, 0x12]);
    vehicle.key_off();
    vehicle.key_on_only().unwrap();
    assert_eq!(ask(&mut vehicle, &[0x04]), [0x44]);
    let exchange = vehicle.exchange(&[0x2F, 0x30, 0x01, 3, 1]).unwrap();
    assert_eq!(exchange.reply, LinkReply::Message(vec![0x6F, 0x30, 0x01, 3, 1]));
    assert_eq!(exchange.heard, Some((Id::from("intake-valve"), Click::Clear)));
}

/// A command goes through driver, wiring and valve: an open control wire lets nothing be heard
/// although the module says that it switched.
#[test]
fn limit_a_command_moves_nothing_through_an_open_wire() {
    let mut condition = sound();
    let name = FaultName { kind: FaultKind::BrokenWire, place: Id::from("intake-control-wire") };
    assert!(apply(&Fault { name, severity: 1.0 }, &briefing().vehicle, &mut condition));
    let mut session = session(condition);
    take(&mut session, "key on");
    for (valve, expected) in [("intake-valve", Click::None), ("exhaust-valve", Click::Clear)] {
        let events = take(&mut session, &format!("command {valve} on"));
        let heard = events.iter().find_map(|event| match event {
            Event::Heard { click, .. } => Some(*click),
            _ => None,
        });
        assert_eq!(heard, Some(expected), "{valve}");
    }
}

fn waiting(session: &mut Session) -> Vec<ReadinessGroup> {
    let events = take(session, "read readiness");
    let Some(Event::Readiness { groups, .. }) = events.first() else {
        panic!("{events:?}");
    };
    assert!(!groups.is_empty());
    groups.iter().filter(|group| !group.is_complete).map(|group| group.group).collect()
}

/// A clear takes readiness away; the circuits are decided at once, valve timing after a drive that
/// asks enough of it.
#[test]
fn limit_readiness_tells_whether_a_drive_was_enough() {
    let mut session = session(sound());
    take(&mut session, "dipstick");
    take(&mut session, "key on");
    assert_eq!(waiting(&mut session), []);
    take(&mut session, "read codes");
    take(&mut session, "clear codes");
    let after_clear = waiting(&mut session);
    assert!(after_clear.contains(&ReadinessGroup::ValveTiming), "{after_clear:?}");
    take(&mut session, "drive town-loop");
    take(&mut session, "key on");
    assert!(waiting(&mut session).contains(&ReadinessGroup::ValveTiming));
    take(&mut session, "drive test-hill");
    take(&mut session, "key on");
    assert_eq!(waiting(&mut session), []);
}

#[test]
fn limit_chosen_live_data_come_in_their_order() {
    let mut session = session(sound());
    take(&mut session, "key start");
    let events = take(&mut session, "read live-data run-time oil rpm");
    let Some(Event::LiveItems { values }) = events.first() else {
        panic!("{events:?}");
    };
    let shown: Vec<f64> = values.iter().map(|value| value.value.unwrap()).collect();
    assert!(shown[0] >= 15.0, "idled for a while: {shown:?}");
    assert!((15.0..30.0).contains(&shown[1]), "{shown:?}");
    assert!((600.0..900.0).contains(&shown[2]), "{shown:?}");
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    /// Whatever is sent, a module that is awake answers with something that begins like an answer.
    #[test]
    fn prop_hostile_requests_are_answered(request in proptest::collection::vec(any::<u8>(), 0..12)) {
        static AWAKE: OnceLock<Vehicle> = OnceLock::new();
        let mut vehicle = AWAKE
            .get_or_init(|| {
                let mut vehicle = vehicle();
                vehicle.key_on_only().unwrap();
                vehicle
            })
            .clone();
        let bytes = ask(&mut vehicle, &request);
        let first = request.first().copied().unwrap_or(0);
        prop_assert!(bytes[0] == NEGATIVE && bytes[1] == first || bytes[0] == first | 0x40);
    }
}
