//! The vehicle's battery while it starts, stands and drives, and the heat of its coils.
#![expect(clippy::unwrap_used, reason = "a test fails by panicking")]

use faultwright::faults::{Fault, FaultKind, FaultName, apply};
use faultwright::instruments::multimeter::{Display, Multimeter};
use faultwright::scenario::load::demo;
use faultwright::session::attempt::Session;
use faultwright::session::event::Event;
use faultwright::session::setup::{Briefing, Hidden};
use faultwright::units::Celsius;
use faultwright::vehicle::condition::Condition;
use faultwright::vehicle::run_record::Idling;
use faultwright::vehicle::spec::Id;
use faultwright::vehicle::whole::Vehicle;
use faultwright::wording::step_parser;
use std::sync::{Arc, OnceLock};

fn briefing() -> &'static Arc<Briefing> {
    static BRIEFING: OnceLock<Arc<Briefing>> = OnceLock::new();
    BRIEFING.get_or_init(|| Arc::new(demo().unwrap().briefing()))
}

fn vehicle(celsius: f64, change: impl FnOnce(&mut Condition)) -> Vehicle {
    let spec = Arc::new(briefing().vehicle.clone());
    let mut condition = Condition::sound(&spec);
    change(&mut condition);
    Vehicle::new(spec, condition, Celsius(celsius), &[], 1).unwrap()
}

fn session(change: impl FnOnce(&mut Condition)) -> Session {
    let mut condition = Condition::sound(&briefing().vehicle);
    change(&mut condition);
    let hidden = Hidden {
        condition,
        faults: Vec::new(),
        old_codes: Vec::new(),
        meter: Multimeter::ideal(),
        seed: 0,
    };
    Session::begin_without_history(Arc::clone(briefing()), hidden).unwrap()
}

#[track_caller]
fn take(session: &mut Session, steps: &str) -> Vec<Event> {
    let mut last = Vec::new();
    for line in steps.lines() {
        let step = step_parser::parse(line, briefing()).unwrap().unwrap();
        last = session.take(&step).unwrap();
        assert!(!last.iter().any(|e| matches!(e, Event::Refused { .. })), "{line}: {last:?}");
    }
    last
}

#[track_caller]
fn volts(session: &mut Session) -> f64 {
    let events = take(session, "measure volts battery-plus battery-minus");
    events
        .iter()
        .find_map(|event| match event {
            Event::Reading { display: Display::Value { value, .. }, .. } => Some(*value),
            _ => None,
        })
        .unwrap()
}

/// Workshop pages: a good battery stays between 9.6 and 10.5 V at its posts while a small engine is cranked,
/// at 20 °C nearer the upper figure; in frost 1 to 2 V less.
#[test]
fn published_supply_dips_while_cranking() {
    let mut warm = session(|_| ());
    take(&mut warm, "key crank");
    let reads = volts(&mut warm);
    assert!((9.6..10.9).contains(&reads), "{reads}");
    take(&mut warm, "key on");
    let rests = volts(&mut warm);
    assert!((12.3..12.7).contains(&rests), "{rests}");
    let turns = |celsius: f64| vehicle(celsius, |_| ()).cranking().unwrap().unwrap();
    let (mild, frost) = (turns(20.0), turns(-20.0));
    assert!(mild.fires() && frost.fires(), "{mild:?} {frost:?}");
    // 100 to 300 A (workshop pages), a thicker oil more slowly and with more current.
    assert!((100.0..300.0).contains(&mild.current.0), "{mild:?}");
    assert!(frost.current.0 > mild.current.0 && frost.rad_s < mild.rad_s, "{mild:?} {frost:?}");
}

/// A weak battery turns the engine slowly, an empty one not at all, and the module loses its supply.
#[test]
fn limit_a_weak_battery_cranks_slowly_or_not_at_all() {
    let mut before = f64::INFINITY;
    for charge in [0.95, 0.5, 0.3, 0.2, 0.1, 0.0] {
        let car = vehicle(20.0, |condition| condition.battery_charge = charge);
        let turns = car.cranking().unwrap().unwrap();
        assert!(turns.rad_s < before || turns.rad_s.abs() < 1e-9, "{charge}: {turns:?}");
        before = turns.rad_s;
        let mut car = car;
        let idles = car.start().unwrap();
        let wanted = if turns.fires() { Idling::Smooth } else { Idling::DoesNotStart };
        assert_eq!(idles, wanted, "{charge}: {turns:?}");
        assert_eq!(car.engine_runs(), turns.fires(), "{charge}");
    }
    assert!(before.abs() < 1e-9, "an empty battery turns nothing: {before}");
}

/// Key on with the engine stopped empties the battery, running fills it again.
#[test]
fn conserves_charge_between_key_on_and_running() {
    let mut car = vehicle(20.0, |condition| condition.battery_charge = 0.8);
    car.key_on_only().unwrap();
    car.pass_minutes(60).unwrap();
    let drained = car.condition().battery_charge;
    // Consumers of 2.6, 31 and 17 ohm at some 12.4 V for an hour, out of 50 A h.
    let by_hand = 0.8 - 12.4 * (1.0 / 2.6 + 1.0 / 31.0 + 1.0 / 17.0) / 50.0;
    assert!((drained - by_hand).abs() < 0.012, "{drained} {by_hand}");
    assert_eq!(car.start().unwrap(), Idling::Smooth);
    car.pass_minutes(120).unwrap();
    assert!(car.condition().battery_charge > drained + 0.1, "{}", car.condition().battery_charge);
}

/// Stopped hot, the head first soaks the coils and then lets them cool to the air.
#[test]
fn limit_a_hot_engine_soaks_and_then_cools() {
    let mut car = vehicle(20.0, |_| ());
    assert_eq!(car.start().unwrap(), Idling::Smooth);
    let route = briefing().routes.get(&Id::from("test-hill")).unwrap();
    car.drive(&route.profile).unwrap();
    let running = car.engine_temperature().0;
    car.key_off();
    let mut hottest = running;
    for _ in 0..10 {
        car.pass_minutes(1).unwrap();
        hottest = hottest.max(car.engine_temperature().0);
    }
    assert!(hottest > running + 1.0, "{running} {hottest}");
    assert!(hottest < running + 15.0, "{running} {hottest}");
    car.stand_overnight().unwrap();
    car.stand_overnight().unwrap();
    assert!(car.engine_temperature().0 < 25.0, "{:?}", car.engine_temperature());
    for valve in &briefing().vehicle.valves {
        let coil = car.coil_temperature(&valve.id).0;
        assert!((coil - car.engine_temperature().0).abs() < 1.0, "{coil}");
    }
}

/// Held on by request: a sound coil warms to where loss and cooling balance, well under its class, and is as
/// good as before. A wire that touches ground warms it just so with nobody asking.
#[test]
fn limit_a_sound_coil_survives_whatever_holds_it_on() {
    let valve = Id::from("intake-valve");
    let mut car = vehicle(20.0, |_| ());
    car.key_on_only().unwrap();
    car.command(&valve, true).unwrap();
    car.pass_minutes(60).unwrap();
    let held = car.coil_temperature(&valve).0;
    assert!((45.0..120.0).contains(&held), "{held}");
    assert_eq!(car.condition().valves, Condition::sound(&briefing().vehicle).valves);
    let name = FaultName { kind: FaultKind::WireToGround, place: Id::from("intake-control-wire") };
    let mut car = vehicle(20.0, |condition| {
        let fault = Fault { name, severity: 1.0 };
        assert!(apply(&fault, &briefing().vehicle, condition));
    });
    car.key_on_only().unwrap();
    car.pass_minutes(60).unwrap();
    assert!((car.coil_temperature(&valve).0 - held).abs() < 15.0);
    assert!(car.coil_temperature(&Id::from("exhaust-valve")).0 < 22.0);
}

/// Shorted turns that are held on pass the class of the enamel: more turns short, and the damage stays.
#[test]
fn limit_shorted_turns_held_on_are_damaged_for_good() {
    let valve = Id::from("intake-valve");
    let shorted = |condition: &mut Condition| {
        condition.valves.get_mut(&valve).unwrap().winding.shorted_share = 0.9;
    };
    let mut car = vehicle(20.0, shorted);
    car.key_on_only().unwrap();
    car.command(&valve, true).unwrap();
    car.pass_minutes(60).unwrap();
    let after = car.condition().valves[&valve].clone();
    assert!(after.winding.shorted_share > 0.9, "{after:?} {:?}", car.coil_temperature(&valve));
    car.key_off();
    car.stand_overnight().unwrap();
    assert_eq!(car.condition().valves[&valve], after);
}
