//! Faults of the oil: what eye, finger, nose and stick make of each, that they can be combined, and
//! what takes them away.
#![expect(clippy::unwrap_used, reason = "a test fails by panicking")]

use faultwright::faults::{Fault, FaultKind, FaultName, apply, places};
use faultwright::physics::oil::Grade;
use faultwright::reasoning::remedy::Remedy;
use faultwright::scenario::load::demo;
use faultwright::scenario::suppose::suppositions;
use faultwright::session::attempt::Session;
use faultwright::session::event::{Breach, Event, OilFeel, OilLook};
use faultwright::session::setup::Hidden;
use faultwright::session::step::{KeyPosition, Step};
use faultwright::vehicle::condition::Condition;
use faultwright::vehicle::spec::Id;
use std::sync::Arc;

const OIL_KINDS: [FaultKind; 4] =
    [FaultKind::LowOil, FaultKind::WornOutOil, FaultKind::FuelInOil, FaultKind::WrongOil];

fn fault(kind: FaultKind, place: &str, severity: f64) -> Fault {
    Fault { name: FaultName { kind, place: Id::from(place) }, severity }
}

fn session(faults: &[Fault]) -> Session {
    let loaded = demo().unwrap();
    let sound = suppositions(&loaded).remove(0).hidden;
    let mut condition = sound.condition.clone();
    for fault in faults {
        assert!(apply(fault, &loaded.vehicle, &mut condition));
    }
    let hidden = Hidden { condition, faults: faults.to_vec(), ..sound };
    Session::begin_without_history(Arc::new(loaded.briefing()), hidden).unwrap()
}

fn oil(session: &mut Session) -> (f64, OilLook, OilFeel, bool) {
    let events = session.take(&Step::Dipstick).unwrap();
    events
        .iter()
        .find_map(|event| match event {
            Event::OilSeen { level, look, feel, smells_of_fuel, .. } => {
                Some((*level, *look, *feel, *smells_of_fuel))
            }
            _ => None,
        })
        .unwrap()
}

#[test]
fn limit_each_oil_fault_tells_itself_at_the_stick_at_every_severity() {
    let sound = oil(&mut session(&[]));
    // Healthy used oil is dark too.
    assert_eq!(sound, (1.0, OilLook::Dark, OilFeel::Usual, false));
    for severity in [0.0, 0.5, 1.0] {
        let of = |kind| oil(&mut session(&[fault(kind, "sump", severity)]));
        let (level, look, feel, fuel) = of(FaultKind::WornOutOil);
        assert_eq!((level, look, feel, fuel), (1.0, OilLook::Sludge, OilFeel::Thick, false));
        let (level, look, feel, fuel) = of(FaultKind::FuelInOil);
        assert!(level >= 1.25, "{level}");
        assert_eq!((look, feel, fuel), (OilLook::Dark, OilFeel::Thin, true));
        let (level, look, feel, fuel) = of(FaultKind::WrongOil);
        assert_eq!((level, look, feel, fuel), (1.0, OilLook::Dark, OilFeel::Thick, false));
    }
}

/// Sludge on a screen, worn-out oil and fuel in it are one state, whatever came first.
#[test]
fn closed_form_faults_of_oil_and_screen_combine_in_any_order() {
    let loaded = demo().unwrap();
    let faults = [
        fault(FaultKind::WornOutOil, "sump", 0.7),
        fault(FaultKind::FuelInOil, "sump", 0.4),
        fault(FaultKind::BlockedScreen, "intake-valve", 0.5),
    ];
    let after = |order: [usize; 3]| {
        let mut condition = Condition::sound(&loaded.vehicle);
        for number in order {
            assert!(apply(&faults[number], &loaded.vehicle, &mut condition));
        }
        condition
    };
    let one = after([0, 1, 2]);
    for order in [[0, 2, 1], [1, 0, 2], [1, 2, 0], [2, 0, 1], [2, 1, 0]] {
        let other = after(order);
        assert!((other.oil.litres - one.oil.litres).abs() < 1e-12);
        assert_eq!(other.valves, one.valves, "{order:?}");
        assert!((other.oil.fuel_share - one.oil.fuel_share).abs() < 1e-15);
        assert!((other.oil.hours - one.oil.hours).abs() < 1e-12);
    }
    assert!(one.valves[&Id::from("intake-valve")].screen_blocked > 0.95);
    let other_screen = one.valves[&Id::from("exhaust-valve")].screen_blocked;
    assert!((0.2..0.6).contains(&other_screen), "{other_screen}");
    let seen = oil(&mut session(&faults));
    assert_eq!((seen.1, seen.3), (OilLook::Sludge, true));
}

#[test]
fn limit_every_oil_fault_has_one_place_and_one_remedy() {
    let loaded = demo().unwrap();
    for kind in OIL_KINDS {
        let found: Vec<_> =
            places(&loaded.vehicle).into_iter().filter(|name| name.kind == kind).collect();
        assert_eq!(found, [FaultName { kind, place: Id::from("sump") }]);
        let wanted = if kind == FaultKind::LowOil { Remedy::TopUp } else { Remedy::ChangeOil };
        assert_eq!(Remedy::of(&found[0]), [wanted]);
    }
}

/// A change of oil and filter takes age, fuel and the wrong grade away; its price is oil by the litre
/// and the filter.
#[test]
fn limit_changing_the_oil_takes_each_of_them_away() {
    for kind in [FaultKind::WornOutOil, FaultKind::FuelInOil, FaultKind::WrongOil] {
        let mut session = session(&[fault(kind, "sump", 1.0)]);
        let events = session.take(&Step::ChangeOil { grade: Grade::Sae5W30 }).unwrap();
        let prices = session.briefing().prices.clone();
        let full = session.briefing().vehicle.sump.full_litres;
        let money = prices.oil_litre.0 * 5 + prices.oil_filter.0;
        assert!(full > 4.0 && full <= 5.0);
        assert!(
            events.iter().any(
                |event| matches!(event, Event::Spent { money: spent, .. } if spent.0 == money)
            )
        );
        let (level, look, feel, fuel) = oil(&mut session);
        assert_eq!(
            (look == OilLook::Sludge, feel, fuel),
            (false, OilFeel::Usual, false),
            "{kind:?}"
        );
        assert!((level - 1.0).abs() < 1e-9, "{kind:?} {level}");
    }
}

#[test]
fn limit_another_grade_than_the_makers_is_against_care_and_felt() {
    let mut session = session(&[]);
    let events = session.take(&Step::ChangeOil { grade: Grade::Sae20W50 }).unwrap();
    let breach = Event::AgainstCare { breach: Breach::WrongOilGrade };
    assert!(events.contains(&breach));
    assert_eq!(oil(&mut session).2, OilFeel::Thick);
    let events = session.take(&Step::ChangeOil { grade: Grade::Sae5W30 }).unwrap();
    assert!(!events.contains(&breach));
    assert_eq!(oil(&mut session).2, OilFeel::Usual);
}

/// Volume is conserved by topping up, and with it hours and fuel thin out by volume.
#[test]
fn conserves_what_is_in_the_oil_when_it_is_topped_up() {
    let mut oil = session(&[fault(FaultKind::FuelInOil, "sump", 1.0)]).truth().condition().oil;
    let (litres, fuel_l, hour_litres) =
        (oil.litres, oil.litres * oil.fuel_share, oil.litres * oil.hours);
    oil.pour(Grade::Sae10W40, 0.8);
    assert!((oil.litres - litres - 0.8).abs() < 1e-12);
    assert!((oil.litres * oil.fuel_share - fuel_l).abs() < 1e-12);
    assert!((oil.litres * oil.hours - hour_litres).abs() < 1e-9);
    let (other, share) = oil.other.unwrap();
    assert_eq!(other, Grade::Sae10W40);
    assert!((share - 0.8 / oil.litres).abs() < 1e-12);
}

/// Soon after a run the stick reads low, then higher and higher: oil runs down.
#[test]
fn limit_the_stick_rises_while_oil_runs_down() {
    let mut session = session(&[]);
    let cold = oil(&mut session).0;
    session.take(&Step::Key { position: KeyPosition::Start }).unwrap();
    session.take(&Step::Key { position: KeyPosition::Off }).unwrap();
    let mut before = oil(&mut session).0;
    assert!(before < cold - 0.2, "{before} {cold}");
    for _ in 0..20 {
        let now = oil(&mut session).0;
        assert!(now >= before);
        before = now;
    }
    assert!(before >= cold - 0.05, "{before}");
}

/// After a drive the oil is hot and has expanded: some time later the stick reads high.
#[test]
fn limit_hot_oil_reads_high_once_it_has_run_down() {
    let mut session = session(&[]);
    let cold = oil(&mut session).0;
    session.take(&Step::Drive { route: Id::from("test-hill"), stop_after: None }).unwrap();
    for _ in 0..4 {
        session.take(&Step::Dipstick).unwrap();
    }
    let hot = oil(&mut session).0;
    // The minutes of the drive pass with the engine off, so the oil is no longer at its hottest.
    assert!(hot > cold, "{hot} {cold}");
}
