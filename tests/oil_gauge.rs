//! The oil pressure gauge in the workshop: fitted, read warm and as it is, taken out; and what it
//! tells of each fault of the oil.
#![expect(clippy::unwrap_used, reason = "a test fails by panicking")]

use faultwright::faults::{Fault, FaultKind, FaultName, apply};
use faultwright::physics::oil::Grade;
use faultwright::reasoning::probe::gauge_probe;
use faultwright::scenario::load::demo;
use faultwright::scenario::suppose::suppositions;
use faultwright::session::attempt::Session;
use faultwright::session::event::{Event, Hazard, Refusal};
use faultwright::session::setup::Hidden;
use faultwright::session::step::{Ending, KeyPosition, Step};
use faultwright::vehicle::spec::Id;
use std::sync::Arc;

fn session(kind: Option<FaultKind>, severity: f64) -> Session {
    let loaded = demo().unwrap();
    let sound = suppositions(&loaded).remove(0).hidden;
    let mut condition = sound.condition.clone();
    if let Some(kind) = kind {
        let name = FaultName { kind, place: Id::from("sump") };
        assert!(apply(&Fault { name, severity }, &loaded.vehicle, &mut condition));
    }
    let hidden = Hidden { condition, ..sound };
    Session::begin_without_history(Arc::new(loaded.briefing()), hidden).unwrap()
}

fn key(position: KeyPosition) -> Step {
    Step::Key { position }
}

fn read(session: &mut Session, rpm: Option<u16>, warm: bool) -> (f64, f64) {
    let events = session.take(&Step::ReadGauge { rpm, warm }).unwrap();
    events
        .iter()
        .find_map(|event| match event {
            Event::GaugeRead { bar, swing, .. } => Some((*bar, *swing)),
            _ => None,
        })
        .unwrap_or_else(|| panic!("{events:?}"))
}

fn warm_idle(kind: Option<FaultKind>, severity: f64) -> (f64, f64) {
    let mut session = session(kind, severity);
    let probe = gauge_probe(&session.briefing().vehicle.clone());
    for step in &probe.steps[..probe.shows] {
        session.take(step).unwrap();
    }
    read(&mut session, None, true)
}

fn refusal(events: &[Event]) -> Option<&Refusal> {
    events.iter().find_map(|event| match event {
        Event::Refused { reason } => Some(reason),
        _ => None,
    })
}

/// The preparatory study: 1.1 to 1.2 bar with sound oil at hot idle, 1.6 bar oxidised, 0.7 bar
/// diluted. Here the oil is at 80 °C, not at 100, so every pressure is higher; their order and their
/// ratios hold.
#[test]
fn reference_warm_idle_pressures_stand_as_in_the_study() {
    let (sound, swing) = warm_idle(None, 0.0);
    assert!((1.1..=2.1).contains(&sound) && swing < 0.2, "{sound} {swing}");
    let (worn, _) = warm_idle(Some(FaultKind::WornOutOil), 0.5);
    assert!((1.2..=2.0).contains(&(worn / sound)), "{worn} {sound}");
    let (fuel, _) = warm_idle(Some(FaultKind::FuelInOil), 0.5);
    assert!((0.5..=0.85).contains(&(fuel / sound)), "{fuel} {sound}");
    let (wrong, _) = warm_idle(Some(FaultKind::WrongOil), 1.0);
    assert!(wrong > sound * 1.3, "{wrong} {sound}");
    // Too little oil: the pump draws air, and the needle cannot stand still.
    let (low, swing) = warm_idle(Some(FaultKind::LowOil), 0.5);
    assert!(low < sound && swing >= 0.3, "{low} {swing}");
}

/// Cold oil holds the relief valve open at idle already; a higher speed never lowers the reading.
#[test]
fn limit_the_reading_rises_with_speed_and_falls_with_heat() {
    let mut session = session(None, 0.0);
    session.take(&Step::FitGauge).unwrap();
    assert_eq!(read(&mut session, None, false), (0.0, 0.0));
    session.take(&key(KeyPosition::Start)).unwrap();
    let cold = read(&mut session, None, false).0;
    let warm: Vec<f64> = [None, Some(1_000), Some(2_000), Some(3_500)]
        .into_iter()
        .map(|rpm| read(&mut session, rpm, true).0)
        .collect();
    assert!(cold > warm[0] + 1.0, "{cold} {warm:?}");
    assert!(warm.is_sorted(), "{warm:?}");
    // The trade's rule: 0.7 bar for each 1000 rpm.
    assert!(warm[1] >= 0.7 && warm[2] >= 1.4 && warm[3] >= 2.45, "{warm:?}");
}

/// Warming up takes its time once; after that a reading costs the reading alone.
#[test]
fn limit_warming_up_is_paid_once() {
    let mut session = session(None, 0.0);
    session.take(&Step::FitGauge).unwrap();
    session.take(&key(KeyPosition::Start)).unwrap();
    let minutes = |session: &mut Session| {
        let before = session.till().minutes.0;
        read(session, None, true);
        session.till().minutes.0 - before
    };
    let (first, second) = (minutes(&mut session), minutes(&mut session));
    assert!((5..=30).contains(&(first - second)), "{first} {second}");
    assert_eq!(second, session.briefing().prices.minutes.read_gauge.0);
    assert!(session.truth().engine_temperature().0 > 70.0);
}

#[test]
fn limit_what_the_gauge_refuses_and_warns_of() {
    let mut session = session(None, 0.0);
    let take = |session: &mut Session, step: Step| session.take(&step).unwrap();
    let idle = Step::ReadGauge { rpm: None, warm: false };
    assert_eq!(refusal(&take(&mut session, idle.clone())), Some(&Refusal::NoGauge));
    assert_eq!(refusal(&take(&mut session, Step::RemoveGauge)), Some(&Refusal::NoGauge));
    let events = take(&mut session, Step::FitGauge);
    assert!(events.contains(&Event::Caution { hazard: Hazard::UsedOil }));
    assert!(!events.contains(&Event::Caution { hazard: Hazard::Hot }));
    assert_eq!(refusal(&take(&mut session, Step::FitGauge)), Some(&Refusal::GaugeFitted));
    let drive = Step::Drive { route: Id::from("town-loop"), stop_after: None };
    assert_eq!(refusal(&take(&mut session, drive)), Some(&Refusal::GaugeFitted));
    let over = Step::HandOver { ending: Ending::Repaired };
    assert_eq!(refusal(&take(&mut session, over)), Some(&Refusal::GaugeFitted));
    let held = |rpm| Step::ReadGauge { rpm: Some(rpm), warm: false };
    assert_eq!(refusal(&take(&mut session, held(2_000))), Some(&Refusal::EngineStands));
    take(&mut session, key(KeyPosition::Start));
    for rpm in [999, 4_001] {
        assert_eq!(refusal(&take(&mut session, held(rpm))), Some(&Refusal::OutOfRange));
    }
    assert_eq!(refusal(&take(&mut session, Step::RemoveGauge)), Some(&Refusal::EngineRuns));
    let events = take(&mut session, Step::ReadGauge { rpm: None, warm: true });
    for hazard in [Hazard::MovingParts, Hazard::Fumes, Hazard::Hot] {
        assert!(events.contains(&Event::Caution { hazard }), "{hazard:?}");
    }
    take(&mut session, key(KeyPosition::Off));
    let events = take(&mut session, Step::RemoveGauge);
    assert!(events.contains(&Event::Caution { hazard: Hazard::Hot }));
    assert!(events.contains(&Event::GaugeRemoved));
}

/// What changing the oil puts right shows at the gauge.
#[test]
fn limit_fresh_oil_brings_the_pressure_back() {
    let sound = warm_idle(None, 0.0).0;
    for kind in [FaultKind::WornOutOil, FaultKind::FuelInOil, FaultKind::WrongOil] {
        let mut session = session(Some(kind), 1.0);
        session.take(&Step::ChangeOil { grade: Grade::Sae5W30 }).unwrap();
        session.take(&Step::FitGauge).unwrap();
        session.take(&key(KeyPosition::Start)).unwrap();
        let after = read(&mut session, None, true).0;
        assert!((after - sound).abs() <= 0.11, "{kind:?} {after} {sound}");
    }
}
