//! Electrical faults and instruments as a session meets them.

#![expect(clippy::unwrap_used, reason = "a test fails by panicking")]

use faultwright::control_module::code::Code;
use faultwright::faults::{Fault, FaultKind, FaultName, apply};
use faultwright::instruments::multimeter::{Display, MeterFunction, Multimeter};
use faultwright::instruments::scope::{Cursors, Signal};
use faultwright::instruments::test_lamp::Glow;
use faultwright::scenario::load::demo;
use faultwright::session::attempt::Session;
use faultwright::session::event::{Breach, Event, Refusal, Sight};
use faultwright::session::setup::{Briefing, Hidden};
use faultwright::session::step::{KeyPosition, Manner, Step};
use faultwright::vehicle::condition::Condition;
use faultwright::vehicle::spec::Id;
use std::sync::{Arc, OnceLock};

fn briefing() -> &'static Arc<Briefing> {
    static BRIEFING: OnceLock<Arc<Briefing>> = OnceLock::new();
    BRIEFING.get_or_init(|| Arc::new(demo().unwrap().briefing()))
}

fn hidden(faults: &[(FaultKind, &str, f64)], seed: u64) -> Hidden {
    let mut condition = Condition::sound(&briefing().vehicle);
    let mut drawn = Vec::new();
    for (kind, place, severity) in faults {
        let name = FaultName { kind: *kind, place: Id::from(*place) };
        let fault = Fault { name, severity: *severity };
        assert!(apply(&fault, &briefing().vehicle, &mut condition), "{fault:?}");
        drawn.push(fault);
    }
    let meter = Multimeter::ideal();
    Hidden { condition, faults: drawn, old_codes: Vec::new(), meter, seed }
}

/// A session on a vehicle that has met no road, covers off as far as both connectors.
fn open(faults: &[(FaultKind, &str, f64)]) -> Session {
    let mut session =
        Session::begin_without_history(Arc::clone(briefing()), hidden(faults, 5)).unwrap();
    for part in ["engine-cover", "duct-clamp", "air-duct", "fuse-box-lid"] {
        take(&mut session, Step::Remove { part: Id::from(part), manner: Manner::Careful });
    }
    session
}

#[expect(clippy::needless_pass_by_value, reason = "a step is written where it is taken")]
fn take(session: &mut Session, step: Step) -> Vec<Event> {
    let events = session.take(&step).unwrap();
    let refused = events.iter().any(|event| matches!(event, Event::Refused { .. }));
    assert!(!refused, "{step:?}: {events:?}");
    events
}

fn key(session: &mut Session, position: KeyPosition) {
    take(session, Step::Key { position });
}

fn measure(session: &mut Session, function: MeterFunction, red: &str, black: &str) -> f64 {
    let step = Step::Measure { function, red: Id::from(red), black: Id::from(black) };
    value(&take(session, step))
}

fn value(events: &[Event]) -> f64 {
    let shown = events.iter().find_map(|event| match event {
        Event::Reading { display, .. } | Event::Clamped { display, .. } => Some(*display),
        _ => None,
    });
    match shown {
        Some(Display::Value { value, .. }) => value,
        Some(Display::OverLimit) => f64::INFINITY,
        None => panic!("no reading in {events:?}"),
    }
}

fn stored(session: &mut Session) -> Vec<String> {
    take(session, Step::ReadCodes)
        .iter()
        .find_map(|event| match event {
            Event::Codes { stored, .. } => Some(stored.iter().map(Code::to_string).collect()),
            _ => None,
        })
        .unwrap()
}

fn breaches(events: &[Event]) -> Vec<&Breach> {
    events
        .iter()
        .filter_map(|event| match event {
            Event::AgainstCare { breach } => Some(breach),
            _ => None,
        })
        .collect()
}

/// A control wire on the supply: the driver protects itself, the valve never moves, the module
/// stores control circuit high, P2089 and P2091 (SAE J2012), and the unplugged wire shows the supply
/// instead of the module's bias.
#[test]
fn published_a_control_wire_on_the_supply_sets_control_circuit_high() {
    for (side, code) in [("intake", "P2089"), ("exhaust", "P2091")] {
        for severity in [0.0, 1.0] {
            let wire = format!("{side}-control-wire");
            let mut session = open(&[(FaultKind::WireToSupply, &wire, severity)]);
            key(&mut session, KeyPosition::On);
            assert_eq!(stored(&mut session), [code], "{severity}");
            let heard =
                take(&mut session, Step::Command { valve: Id(format!("{side}-valve")), on: true });
            assert!(
                heard.iter().any(|event| matches!(
                    event,
                    Event::Heard { click: faultwright::physics::stroke::Click::None, .. }
                )),
                "{heard:?}"
            );
            key(&mut session, KeyPosition::Off);
            take(&mut session, Step::Unplug { connector: Id(format!("{side}-connector")) });
            key(&mut session, KeyPosition::On);
            let control = format!("{side}-harness-control");
            let volts = measure(&mut session, MeterFunction::Volts, &control, "battery-minus");
            assert!(volts > 12.0, "{volts}");
        }
    }
}

/// A chafed feed blows its fuse; a new one of the same rating blows again while the cause is there,
/// and holds once the wire is mended.
#[test]
fn limit_a_new_fuse_blows_again_while_its_cause_is_there() {
    for wire in ["feed-wire", "intake-feed-wire", "exhaust-feed-wire"] {
        for severity in [0.0, 1.0] {
            let mut session = open(&[(FaultKind::ChafedFeed, wire, severity)]);
            let replace = Step::Replace { element: Id::from("valve-fuse") };
            let fed = |session: &mut Session| {
                key(session, KeyPosition::On);
                let volts =
                    measure(session, MeterFunction::Volts, "intake-harness-feed", "battery-minus");
                key(session, KeyPosition::Off);
                volts > 12.0
            };
            assert!(!fed(&mut session));
            take(&mut session, replace.clone());
            assert!(!fed(&mut session), "{wire} {severity}");
            take(&mut session, Step::Remove { part: "valve-fuse".into(), manner: Manner::Careful });
            let seen = take(&mut session, Step::Look { place: "valve-fuse".into() });
            assert!(seen.iter().any(|e| matches!(e, Event::Seen { sight: Sight::BlownFuse, .. })));
            take(&mut session, Step::Mend { element: Id::from(wire) });
            take(&mut session, replace);
            assert!(fed(&mut session), "{wire} {severity}");
        }
    }
}

/// With its fuse blown every load on it complains: both control circuits read low, and the module,
/// which has a fuse of its own, can still be asked.
#[test]
fn limit_a_blown_fuse_stops_both_valves_and_a_new_one_cures_them() {
    let mut session = open(&[(FaultKind::BlownFuse, "valve-fuse", 0.5)]);
    key(&mut session, KeyPosition::On);
    assert_eq!(stored(&mut session), ["P2088", "P2090"]);
    key(&mut session, KeyPosition::Off);
    take(&mut session, Step::Replace { element: "valve-fuse".into() });
    key(&mut session, KeyPosition::On);
    let volts = measure(&mut session, MeterFunction::Volts, "intake-harness-feed", "battery-minus");
    assert!(volts > 12.0, "{volts}");
}

/// A burnt relay contact: under load the feed of both valves sinks, and a new relay mends it.
#[test]
fn closed_form_a_burnt_relay_contact_drops_volts_under_load() {
    let feed = |faults: &[(FaultKind, &str, f64)]| {
        let mut session = open(faults);
        key(&mut session, KeyPosition::On);
        take(&mut session, Step::Command { valve: "intake-valve".into(), on: true });
        let volts =
            measure(&mut session, MeterFunction::Volts, "intake-harness-feed", "battery-minus");
        key(&mut session, KeyPosition::Off);
        take(&mut session, Step::Replace { element: "valve-relay".into() });
        key(&mut session, KeyPosition::On);
        take(&mut session, Step::Command { valve: "intake-valve".into(), on: true });
        let mended =
            measure(&mut session, MeterFunction::Volts, "intake-harness-feed", "battery-minus");
        (volts, mended)
    };
    let (sound, _) = feed(&[]);
    let (burnt, mended) = feed(&[(FaultKind::ResistiveRelay, "valve-relay", 0.0)]);
    // Two ohms in a divider against small consumers of 31 ohm beside a coil of 9.3 ohm at 19 °C and
    // 0.3 ohm of wires and driver: 9.57 and 31 ohm are 7.31 ohm in parallel. In the minutes that the
    // measurement takes, the coil warms by up to 60 K, to 11.8 ohm with the wires: 8.54 ohm in parallel.
    let divided = |ohms: f64| sound * ohms / (ohms + 2.0);
    let (cold, warm) = (divided(7.31), divided(8.54));
    assert!((0.995 * cold..1.005 * warm).contains(&burnt), "{burnt} {cold} {warm}");
    assert!((mended - sound).abs() < 0.04, "{mended} {sound}");
}

/// A failing joint of some ohms reads on the meter what it is; it is no kilohm.
#[test]
fn closed_form_a_poor_joint_adds_its_ohms() {
    let ohms = |faults: &[(FaultKind, &str, f64)]| {
        let mut session = open(faults);
        take(&mut session, Step::Unplug { connector: "exhaust-connector".into() });
        take(&mut session, Step::ZeroLeads);
        measure(&mut session, MeterFunction::Ohms, "exhaust-valve-feed", "exhaust-valve-control")
    };
    let sound = ohms(&[]);
    let poor = ohms(&[(FaultKind::PoorJoint, "exhaust-valve", 0.0)]);
    assert!((poor - sound - 4.0).abs() < 0.15, "{poor} {sound}");
}

/// Two faults on one vehicle are both there.
#[test]
fn limit_faults_compose() {
    let mut session = open(&[
        (FaultKind::PoorJoint, "exhaust-valve", 0.5),
        (FaultKind::CorrodedPin, "exhaust-feed-pin", 0.0),
        (FaultKind::SpreadTerminal, "exhaust-feed-pin", 0.0),
        (FaultKind::WireToSupply, "intake-control-wire", 0.5),
        (FaultKind::LooseContact, "intake-feed-pin", 0.5),
        (FaultKind::HotContact, "intake-feed-pin", 0.5),
        (FaultKind::LowOil, "sump", 0.5),
    ]);
    let condition = session.truth().condition().clone();
    let contact = condition.loose[&Id::from("intake-feed-pin")];
    assert!(contact.openings_per_s > 0.0 && contact.open_from.is_some());
    key(&mut session, KeyPosition::On);
    assert!(stored(&mut session).contains(&"P2089".to_owned()));
    key(&mut session, KeyPosition::Off);
    // 25 ohm of corrosion, 6 of a spread terminal and 11 of a joint on top of the coil.
    take(&mut session, Step::ZeroLeads);
    let whole = measure(
        &mut session,
        MeterFunction::Ohms,
        "exhaust-harness-feed",
        "exhaust-harness-control",
    );
    assert!((whole - 9.3 - 25.0 - 6.0 - 10.95).abs() < 0.5, "{whole}");
}

/// A test lamp loads: a feed that a meter finds good leaves it dim or dark, and a module's pin is no
/// place for it.
#[test]
fn limit_a_test_lamp_finds_a_corroded_feed_and_does_not_belong_on_a_control_pin() {
    let glow = |severity: Option<f64>| {
        let faults: Vec<_> =
            severity.map(|s| (FaultKind::ResistiveRelay, "valve-relay", s)).into_iter().collect();
        let mut session = open(&faults);
        take(&mut session, Step::Unplug { connector: "intake-connector".into() });
        key(&mut session, KeyPosition::On);
        let lamp =
            Step::TestLamp { tip: "intake-harness-feed".into(), clip: "battery-minus".into() };
        let events = take(&mut session, lamp);
        assert!(breaches(&events).is_empty());
        events.iter().find_map(|event| match event {
            Event::LampGlows { glow, .. } => Some(*glow),
            _ => None,
        })
    };
    assert_eq!(glow(None), Some(Glow::Bright));
    assert!(matches!(glow(Some(1.0)), Some(Glow::Dim | Glow::Dark)));
    let mut session = open(&[]);
    key(&mut session, KeyPosition::On);
    let lamp =
        Step::TestLamp { tip: "intake-harness-control".into(), clip: "battery-minus".into() };
    let events = take(&mut session, lamp);
    let wrong = Breach::TestLampOnModule("intake-harness-control".into());
    assert_eq!(breaches(&events), [&wrong]);
}

/// The clamp agrees with the scope's last current, with battery over resistance, and reads while the
/// engine runs; its zero is off until it is taken away.
#[test]
fn closed_form_clamp_and_scope_agree_on_a_driven_valve() {
    let mut session = open(&[]);
    take(&mut session, Step::ZeroClamp);
    key(&mut session, KeyPosition::On);
    take(&mut session, Step::Command { valve: "intake-valve".into(), on: true });
    let battery = measure(&mut session, MeterFunction::Volts, "battery-plus", "battery-minus");
    let clamp = Step::Clamp { wire: "intake-feed-wire".into() };
    let amperes = value(&take(&mut session, clamp.clone()));
    // 9.3 ohm at 19 °C, and by the wiring diagram 0.4 ohm of wires, contacts, driver and shunt.
    // In the minutes that it takes to measure and to clip the probe on, the coil warms by up to 60 K.
    let expected = |kelvin: f64| battery / (9.3 * (1.0 + 0.003_93 * kelvin) + 0.4);
    let (cold, warm) = (expected(-1.0), expected(60.0));
    assert!((warm - 0.03..cold + 0.03).contains(&amperes), "{amperes} {warm} {cold}");
    assert!(amperes < cold - 0.03, "a coil that is switched on for minutes gets warm");
    let scope = Step::Scope { signal: Signal::CoilCurrent, valve: "intake-valve".into() };
    let events = take(&mut session, scope);
    let end_a = events.iter().find_map(|event| match event {
        Event::Captured { capture, .. } => match capture.cursors {
            Cursors::Current { dip: Some(_), end_a } => Some(end_a),
            _ => None,
        },
        _ => None,
    });
    assert!((end_a.unwrap() - amperes).abs() < 0.1, "{end_a:?} {amperes}");
    key(&mut session, KeyPosition::Off);
    for part in ["air-duct", "duct-clamp", "engine-cover"] {
        let refit = Step::Refit { part: part.into(), new_seal: false };
        take(&mut session, refit);
    }
    key(&mut session, KeyPosition::Start);
    let refused = session.take(&clamp).unwrap();
    assert!(matches!(refused[0], Event::Refused { reason: Refusal::Obstacle(_) }));
}

/// At switch-off the current of the coil holds the pin a diode's drop above the supply, and then it
/// falls to the supply; a broken wire leaves nothing to hold it.
#[test]
fn closed_form_a_pin_stands_a_diode_above_the_supply_after_switch_off() {
    let cursors = |faults: &[(FaultKind, &str, f64)]| {
        let mut session = open(faults);
        take(&mut session, Step::Remove { part: "module-cover".into(), manner: Manner::Careful });
        key(&mut session, KeyPosition::On);
        let scope = Step::Scope { signal: Signal::DriverPin, valve: "exhaust-valve".into() };
        let events = take(&mut session, scope);
        events
            .iter()
            .find_map(|event| match event {
                Event::Captured { capture, .. } => {
                    assert!(capture.points.len() <= 200);
                    Some(capture.cursors)
                }
                _ => None,
            })
            .unwrap()
    };
    match cursors(&[]) {
        Cursors::Pin { closed_v, plateau: Some(plateau), open_v } => {
            assert!(closed_v < 0.5, "{closed_v}");
            assert!((0.5..1.1).contains(&(plateau.volts - open_v)), "{plateau:?} {open_v}");
            assert!((1.0..30.0).contains(&plateau.lasts_ms), "{plateau:?}");
        }
        other => panic!("{other:?}"),
    }
    match cursors(&[(FaultKind::BrokenWire, "exhaust-control-wire", 0.5)]) {
        Cursors::Pin { plateau: None, open_v, .. } => {
            assert!((open_v - 2.5).abs() < 0.2, "{open_v}");
        }
        other => panic!("{other:?}"),
    }
}

/// A wiggled loose contact jumps; a sound one and a corroded one stand still.
#[test]
fn limit_a_wiggled_loose_contact_jumps_and_others_do_not() {
    let jumped = |faults: &[(FaultKind, &str, f64)]| {
        let mut session = open(faults);
        key(&mut session, KeyPosition::On);
        let wiggle = Step::Wiggle {
            place: "intake-connector".into(),
            function: MeterFunction::Volts,
            red: "intake-harness-control".into(),
            black: "battery-minus".into(),
        };
        let events = take(&mut session, wiggle);
        events.iter().find_map(|event| match event {
            Event::Watched { jumped, .. } => Some(*jumped),
            _ => None,
        })
    };
    assert_eq!(jumped(&[]), Some(false));
    assert_eq!(jumped(&[(FaultKind::CorrodedPin, "intake-feed-pin", 0.5)]), Some(false));
    assert_eq!(jumped(&[(FaultKind::LooseContact, "exhaust-feed-pin", 1.0)]), Some(false));
    for pin in ["intake-feed-pin", "intake-control-pin"] {
        for severity in [0.0, 1.0] {
            assert_eq!(jumped(&[(FaultKind::LooseContact, pin, severity)]), Some(true));
        }
    }
}

/// A loose contact drops out on the road, the module believes it once it has lasted or come twice,
/// and at rest afterwards nothing is to be measured.
#[test]
fn limit_a_loose_contact_sets_its_code_on_the_road_and_hides_at_rest() {
    let (mut with_code, seeds) = (0, 4_u64);
    for seed in 0..seeds {
        let faults = [(FaultKind::LooseContact, "intake-feed-pin", 1.0)];
        let mut session =
            Session::begin_without_history(Arc::clone(briefing()), hidden(&faults, seed)).unwrap();
        take(&mut session, Step::Dipstick);
        take(
            &mut session,
            Step::Drive { route: briefing().customers_route.clone(), stop_after: None },
        );
        key(&mut session, KeyPosition::On);
        let codes = stored(&mut session);
        assert!(codes.is_empty() || codes == ["P0010"], "{codes:?}");
        with_code += u64::from(!codes.is_empty());
        take(&mut session, Step::Remove { part: "engine-cover".into(), manner: Manner::Careful });
        let volts =
            measure(&mut session, MeterFunction::Volts, "intake-harness-control", "battery-minus");
        assert!(volts > 12.0, "{volts}");
    }
    assert!(with_code >= seeds / 2, "{with_code} of {seeds}");
}

/// A lead pushed in from the front spreads the terminal a little more each time; the component's own
/// pins and a plugged connector are another matter.
#[test]
fn limit_front_probing_spreads_a_terminal_and_back_probing_does_not() {
    let mut session = open(&[]);
    let from_front = |red: &str| Step::MeasureFromFront {
        function: MeterFunction::Volts,
        red: Id::from(red),
        black: "battery-minus".into(),
    };
    let plugged = session.take(&from_front("intake-harness-feed")).unwrap();
    assert!(matches!(plugged[0], Event::Refused { reason: Refusal::Obstacle(_) }), "{plugged:?}");
    take(&mut session, Step::Unplug { connector: "intake-connector".into() });
    measure(&mut session, MeterFunction::Volts, "intake-harness-feed", "battery-minus");
    assert!(breaches(&take(&mut session, from_front("intake-valve-feed"))).is_empty());
    assert!(session.truth().condition().spread_ohms.is_empty());
    for times in 1..=3 {
        let events = take(&mut session, from_front("intake-harness-feed"));
        assert_eq!(breaches(&events), [&Breach::FrontProbed("intake-connector".into())]);
        let ohms = session.truth().condition().spread_ohms[&Id::from("intake-feed-pin")];
        assert!((ohms - 0.5 * f64::from(times)).abs() < 1e-9, "{ohms}");
    }
    let seen = take(&mut session, Step::Look { place: "intake-feed-pin".into() });
    assert!(seen.iter().any(|e| matches!(e, Event::Seen { sight: Sight::SpreadTerminal, .. })));
}

/// Amps across the battery blow the meter's fuse, which is remembered; until it is replaced the
/// meter reads zero as a real one does, whatever flows, and volts and ohms go on.
#[test]
fn limit_a_blown_meter_fuse_reads_no_amps_until_it_is_replaced() {
    let mut session = open(&[]);
    let across = Step::Measure {
        function: MeterFunction::Amps,
        red: "battery-plus".into(),
        black: "battery-minus".into(),
    };
    let events = take(&mut session, across);
    assert_eq!(breaches(&events), [&Breach::AmpsAcrossSource]);
    assert!(events.contains(&Event::MeterFuseBlew));
    take(&mut session, Step::Remove { part: "valve-fuse".into(), manner: Manner::Careful });
    key(&mut session, KeyPosition::On);
    let in_series =
        |session: &mut Session| measure(session, MeterFunction::Amps, "fuse-box", "valve-fuse-out");
    assert!(in_series(&mut session).abs() < 1e-9);
    let volts = measure(&mut session, MeterFunction::Volts, "battery-plus", "battery-minus");
    assert!(volts > 12.0);
    let till = session.till();
    take(&mut session, Step::ReplaceMeterFuse);
    assert!(session.till().money.0 > till.money.0 && session.till().minutes.0 > till.minutes.0);
    let amperes = in_series(&mut session);
    // Small consumers of 31 ohm.
    assert!((amperes - volts / 31.3).abs() < 0.01, "{amperes}");
}
