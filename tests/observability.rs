//! Every fault can be seen by somebody who looks in the right place, and a sound vehicle gives
//! nobody a reason to look.

#![expect(clippy::unwrap_used, reason = "a test fails by panicking")]

use faultwright::control_module::code::Code;
use faultwright::faults::{Fault, FaultKind, FaultName, places};
use faultwright::instruments::multimeter::{Display, MeterFunction, Multimeter};
use faultwright::instruments::scope::Cursors;
use faultwright::instruments::test_lamp::Glow;
use faultwright::physics::stroke::Click;
use faultwright::reasoning::probe::{Probe, probes, steps_to};
use faultwright::scenario::draw::{Drawn, DrawnDecoys, attempt_streams, hidden_of};
use faultwright::scenario::load::{Loaded, demo};
use faultwright::session::attempt::Session;
use faultwright::session::event::{Event, Sight};
use faultwright::session::setup::{Briefing, Hidden};
use faultwright::session::step::{KeyPosition, Step};
use faultwright::session::toolbox::Tools;
use faultwright::vehicle::condition::Condition;
use faultwright::vehicle::run_record::Idling;
use faultwright::vehicle::spec::{Id, VehicleSpec};
use std::sync::{Arc, OnceLock};

/// Sound vehicles that are looked at.
const SOUND_VEHICLES: u64 = 20;
/// Most that one whole side of a circuit may take up, and what the module puts on an unplugged
/// control wire, by the service information [V].
const SIDE_V: f64 = 0.5;
const BIAS_V: (f64, f64) = (2.2, 2.8);
/// Least voltage of a well charged battery at rest [V].
const CHARGED_V: f64 = 12.4;
/// Most that a whole wire reads, leads zeroed [ohm]: two tenths of a meter that resolves one.
const WIRE_OHMS: f64 = 0.3;
/// Least that the module's end of a control wire reads against ground [ohm]: assumed, far from any
/// wire that touches the engine.
const MODULE_OHMS: f64 = 1_000.0;

fn scenario() -> &'static Loaded {
    static SCENARIO: OnceLock<Loaded> = OnceLock::new();
    SCENARIO.get_or_init(|| demo().unwrap())
}

fn briefing() -> &'static Arc<Briefing> {
    static BRIEFING: OnceLock<Arc<Briefing>> = OnceLock::new();
    BRIEFING.get_or_init(|| Arc::new(scenario().briefing()))
}

fn spec() -> &'static VehicleSpec {
    &briefing().vehicle
}

/// A vehicle with nominal parts and a meter without error, and at most one fault.
fn nominal(fault: Option<&Fault>) -> Session {
    let mut condition = Condition::sound(spec());
    if let Some(fault) = fault {
        assert!(faultwright::faults::apply(fault, spec(), &mut condition), "{fault:?}");
    }
    let faults = fault.cloned().into_iter().collect();
    let hidden =
        Hidden { condition, faults, old_codes: Vec::new(), meter: Multimeter::ideal(), seed: 0 };
    Session::begin_without_history(Arc::clone(briefing()), hidden).unwrap()
}

/// What a test shows on a copy of the session, leads zeroed.
fn make(probe: &Probe, session: &Session) -> Vec<Event> {
    let mut session = session.fork();
    session.take(&Step::ZeroLeads).unwrap();
    for step in steps_to(&probe.need, spec(), session.vehicle_in_sight()) {
        let events = session.take(&step).unwrap();
        assert!(!events.iter().any(|event| matches!(event, Event::Refused { .. })), "{step:?}");
    }
    let mut shown = Vec::new();
    for (number, step) in probe.steps.iter().enumerate() {
        let events = session.take(step).unwrap();
        if number == probe.shows {
            shown = events;
        }
    }
    shown
}

/// Whether two outcomes of a test differ by more than the instruments' tolerances.
fn differ(sound: &[Event], other: &[Event]) -> bool {
    let telling = |events: &[Event]| -> Vec<Event> {
        let is_telling = |event: &&Event| {
            matches!(
                event,
                Event::Reading { .. }
                    | Event::Seen { .. }
                    | Event::Watched { .. }
                    | Event::LampGlows { .. }
                    | Event::Clamped { .. }
                    | Event::Captured { .. }
                    | Event::OilSeen { .. }
                    | Event::Heard { .. }
                    | Event::Codes { .. }
                    | Event::NoAnswer { .. }
            )
        };
        events.iter().filter(is_telling).cloned().collect()
    };
    let (sound, other) = (telling(sound), telling(other));
    sound.len() != other.len()
        || sound.iter().zip(&other).any(|pair| match pair {
            (
                Event::Reading { display: a, tolerance: tolerance_a, .. },
                Event::Reading { display: b, tolerance: tolerance_b, .. },
            ) => match (a, b) {
                (Display::Value { value: a, .. }, Display::Value { value: b, .. }) => {
                    (a - b).abs() > tolerance_a + tolerance_b
                }
                (a, b) => a != b,
            },
            (
                Event::Clamped { display: a, tolerance: tolerance_a, .. },
                Event::Clamped { display: b, tolerance: tolerance_b, .. },
            ) => match (a, b) {
                (Display::Value { value: a, .. }, Display::Value { value: b, .. }) => {
                    (a - b).abs() > tolerance_a + tolerance_b
                }
                (a, b) => a != b,
            },
            (Event::Captured { capture: a, .. }, Event::Captured { capture: b, .. }) => {
                captures_differ(&a.cursors, &b.cursors)
            }
            (Event::Watched { jumped: a, .. }, Event::Watched { jumped: b, .. }) => a != b,
            (a, b) => a != b,
        })
}

/// Whether the cursors of two captures differ by more than the spread of valves that are alike.
fn captures_differ(one: &Cursors, other: &Cursors) -> bool {
    match (one, other) {
        (
            Cursors::Current { dip: a, end_a: end },
            Cursors::Current { dip: b, end_a: other_end },
        ) => match (a, b) {
            (Some(a), Some(b)) => (a.at_ms - b.at_ms).abs() > 2.0 || (end - other_end).abs() > 0.06,
            (None, None) => (end - other_end).abs() > 0.06,
            _ => true,
        },
        (a, b) => a != b,
    }
}

/// The mildest severity at which the scenario may draw a fault.
fn mildest(name: &FaultName) -> Fault {
    let prior = scenario().scenario.faults.iter().find(|prior| prior.names() == [name.clone()]);
    let severity = prior.map_or(0.0, |prior| prior.severity.0);
    Fault { name: name.clone(), severity }
}

#[test]
fn limit_the_mildest_fault_shows_in_some_test() {
    let tests = probes(spec(), &Tools::All);
    let sound = nominal(None);
    let usual: Vec<Vec<Event>> = tests.iter().map(|probe| make(probe, &sound)).collect();
    let faults = places(spec());
    assert!(faults.len() > 20, "{} faults", faults.len());
    let hidden: Vec<String> = faults
        .iter()
        .map(mildest)
        // What shows on a warm engine alone has a test of its own.
        .filter(|fault| fault.name.kind != FaultKind::HotContact)
        .filter(|fault| {
            let session = nominal(Some(fault));
            !tests.iter().zip(&usual).any(|(probe, usual)| differ(usual, &make(probe, &session)))
        })
        .map(|fault| format!("{fault:?}"))
        .collect();
    assert!(hidden.is_empty(), "no test shows\n{}", hidden.join("\n"));
    // And the comparison itself finds nothing where there is nothing.
    let again = nominal(None);
    for (probe, usual) in tests.iter().zip(&usual) {
        assert!(!differ(usual, &make(probe, &again)), "{probe:?}");
    }
}

/// A contact that minds heat is closed on a cold engine, and open after a road that warms it.
#[test]
fn limit_a_contact_that_opens_when_hot_shows_on_a_warm_engine_alone() {
    let tests = probes(spec(), &Tools::All);
    let warmed = |fault: Option<&Fault>| {
        let mut session = nominal(fault);
        for step in [Step::Dipstick, Step::Drive { route: Id::from("test-hill"), stop_after: None }]
        {
            session.take(&step).unwrap();
        }
        session
    };
    let (cold, warm) = (nominal(None), warmed(None));
    for name in places(spec()).into_iter().filter(|name| name.kind == FaultKind::HotContact) {
        let fault = Fault { name, severity: 1.0 };
        let shows_on = |sound: &Session, faulty: &Session| {
            tests.iter().any(|probe| differ(&make(probe, sound), &make(probe, faulty)))
        };
        assert!(!shows_on(&cold, &nominal(Some(&fault))), "{fault:?} shows cold");
        assert!(shows_on(&warm, &warmed(Some(&fault))), "{fault:?} never shows");
    }
}

/// A sound vehicle as any seed may deal it, with its own parts, battery, oil and meter.
fn sound_vehicle(seed: u64) -> Hidden {
    hidden_of(briefing(), &Drawn::default(), attempt_streams(seed, 0))
}

/// What a meter reads in the state in which a test was made.
fn battery_volts(probe: &Probe, session: &Session) -> f64 {
    let step = Step::Measure {
        function: MeterFunction::Volts,
        red: Id::from("battery-plus"),
        black: Id::from("battery-minus"),
    };
    let steps = probe.steps[..probe.shows].iter().cloned().chain([step]).collect();
    let at_battery = Probe { steps, ..probe.clone() };
    match make(&at_battery, session).iter().find_map(|event| match event {
        Event::Reading { display: Display::Value { value, .. }, .. } => Some(*value),
        _ => None,
    }) {
        Some(volts) => volts,
        None => panic!("the battery gives no reading before {probe:?}"),
    }
}

/// Between which values the data sheet puts a reading.
fn window(probe: &Probe, session: &Session) -> (f64, f64) {
    let (Step::Measure { function, red, black } | Step::Wiggle { function, red, black, .. }) =
        probe.showing()
    else {
        panic!("{probe:?} is no measurement");
    };
    let valve = spec().valves.iter().find(|valve| {
        let stem = valve.id.as_str().trim_end_matches("valve");
        red.as_str().starts_with(stem) && !stem.is_empty()
    });
    let is_unplugged = valve.is_some_and(|valve| probe.need.off.contains(&valve.connector));
    let is_driven = probe.shows > 0;
    match (function, red.as_str(), black.as_str()) {
        (MeterFunction::Volts, point, _) if point.ends_with("control") => {
            let battery = battery_volts(probe, session);
            match (is_unplugged, is_driven) {
                (true, _) => BIAS_V,
                (false, true) => (0.0, SIDE_V),
                (false, false) => (battery - SIDE_V, battery),
            }
        }
        (MeterFunction::Volts, ..) => {
            let battery = battery_volts(probe, session);
            assert!(battery >= CHARGED_V - SIDE_V, "{battery} V at the battery");
            (battery - SIDE_V, battery)
        }
        (MeterFunction::Ohms, point, _) if point.ends_with("valve-feed") => {
            let part = valve.and_then(|valve| spec().valve_part(&valve.part_number)).unwrap();
            // By the service information's own rule for another temperature.
            let factor = 1.0 + 0.0039 * (scenario().scenario.workshop_temperature.0 - 20.0);
            (part.ohms_least * factor, part.ohms_most * factor)
        }
        (MeterFunction::Ohms, _, "battery-minus") => (MODULE_OHMS, f64::INFINITY),
        (MeterFunction::Ohms, ..) => (0.0, WIRE_OHMS),
        (MeterFunction::Amps, ..) => panic!("{probe:?} has no limits yet"),
    }
}

/// Between which values the current of a valve that is switched on lies: the battery as it stands
/// over the coil's window by the data sheet, with up to an ohm of wires and driver beside it.
fn current_window(probe: &Probe, session: &Session) -> (f64, f64) {
    let Step::Clamp { wire } = probe.showing() else {
        panic!("{probe:?} reads no current");
    };
    let valve = spec().valves.iter().find(|valve| {
        let stem = valve.id.as_str().trim_end_matches("valve");
        wire.as_str().starts_with(stem)
    });
    let part = spec().valve_part(&valve.unwrap().part_number).unwrap();
    let battery = battery_volts(probe, session);
    // In the minutes that it takes to clip the probe on, a coil that is switched on warms by some tens of kelvin.
    (battery / (1.25 * part.ohms_most + 1.0), battery / part.ohms_least)
}

/// What is out of the ordinary in the outcome of a test.
fn oddities(probe: &Probe, session: &Session) -> Vec<String> {
    let events = make(probe, session);
    let mut odd = Vec::new();
    for event in &events {
        let is_usual = match event {
            Event::Reading { display, tolerance, .. } => {
                let (least, most) = window(probe, session);
                match display {
                    Display::Value { value, .. } => {
                        least - tolerance <= *value && *value <= most + tolerance
                    }
                    Display::OverLimit => most.is_infinite(),
                }
            }
            // A seal that was squeezed before is what every valve that is out shows.
            Event::Seen { sight, .. } => matches!(sight, Sight::Sound | Sight::UsedSeal),
            Event::OilSeen { level, dry, .. } => !dry && (0.0..=1.05).contains(level),
            Event::Heard { click, .. } => *click == Click::Clear,
            Event::Codes { stored, pending, permanent, lamp, .. } => {
                stored.is_empty() && pending.is_empty() && permanent.is_empty() && !lamp
            }
            Event::LampGlows { glow, .. } => *glow == Glow::Bright,
            Event::Watched { jumped, .. } => !jumped,
            Event::Captured { capture, .. } => {
                matches!(capture.cursors, Cursors::Current { dip: Some(_), end_a } if end_a > 0.5)
            }
            Event::Clamped { display: Display::Value { value, .. }, tolerance, .. } => {
                let (least, most) = current_window(probe, session);
                least - tolerance <= *value && *value <= most + tolerance
            }
            Event::AgainstCare { .. } | Event::NoAnswer { .. } | Event::LeadFuseBlew => false,
            _ => true,
        };
        if !is_usual {
            odd.push(format!("{:?}: {event:?}", probe.showing()));
        }
    }
    odd
}

#[test]
fn limit_a_sound_vehicle_reads_within_its_data_sheet() {
    let tests = probes(spec(), &Tools::All);
    let look = |seed: u64| -> Vec<String> {
        let hidden = sound_vehicle(seed);
        let session = Session::begin_without_history(Arc::clone(briefing()), hidden).unwrap();
        tests
            .iter()
            .flat_map(|probe| oddities(probe, &session))
            .map(|odd| format!("seed {seed}: {odd}"))
            .collect()
    };
    let odd: Vec<String> = (0..SOUND_VEHICLES).flat_map(look).collect();
    assert!(odd.is_empty(), "{}", odd.join("\n"));
    // The windows are narrow enough that a fault leaves them.
    let shorted = places(spec()).into_iter().find(|name| name.kind.word() == "shorted-turns");
    let session = nominal(Some(&mildest(&shorted.unwrap())));
    assert!(tests.iter().any(|probe| !oddities(probe, &session).is_empty()));
}

/// What is out of the ordinary on the roads of a vehicle.
fn oddities_on_the_road(hidden: Hidden) -> Vec<String> {
    let mut session = Session::begin(Arc::clone(briefing()), hidden).unwrap();
    let mut odd = Vec::new();
    if session.has_complaint() {
        odd.push("the customer complains".to_owned());
    }
    session.take(&Step::Dipstick).unwrap();
    session.take(&Step::Key { position: KeyPosition::On }).unwrap();
    // The code reader goes along, as it does on a road test.
    let mut taken = session.take(&Step::ReadCodes).unwrap();
    for route in briefing().routes.keys() {
        taken
            .extend(session.take(&Step::Drive { route: route.clone(), stop_after: None }).unwrap());
        taken.extend(session.take(&Step::Key { position: KeyPosition::On }).unwrap());
        taken.extend(session.take(&Step::ReadCodes).unwrap());
    }
    for event in taken {
        let is_usual = match &event {
            Event::Codes { stored, pending, permanent, .. } => {
                let none: &[Code] = &[];
                stored == none && pending == none && permanent == none
            }
            Event::Driven { engine_lamp, oil_lamp, quality, .. } => {
                !engine_lamp && !oil_lamp && *quality == Idling::Smooth
            }
            _ => true,
        };
        if !is_usual {
            odd.push(format!("{event:?}"));
        }
    }
    odd
}

#[test]
fn limit_a_sound_vehicle_sets_no_code_on_any_road() {
    assert!(briefing().routes.len() >= 3);
    let half = |first: u64| -> Vec<String> {
        (first..SOUND_VEHICLES)
            .step_by(2)
            .flat_map(|seed| {
                let odd = oddities_on_the_road(sound_vehicle(seed));
                odd.into_iter().map(move |odd| format!("seed {seed}: {odd}"))
            })
            .collect()
    };
    let odd: Vec<String> = std::thread::scope(|scope| {
        let halves = [0, 1].map(|first| scope.spawn(move || half(first)));
        halves.into_iter().flat_map(|half| half.join().unwrap()).collect()
    });
    assert!(odd.is_empty(), "{}", odd.join("\n"));
}

#[test]
fn limit_a_sound_valve_of_another_winding_sets_no_code() {
    let other = scenario().scenario.decoys.other_winding.as_ref().unwrap();
    let decoys = DrawnDecoys {
        other_winding: Some((other.place.clone(), other.part_number.clone())),
        old_codes: Vec::new(),
        ..DrawnDecoys::default()
    };
    let drawn = Drawn { faults: Vec::new(), decoys };
    let odd: Vec<String> = (0..4)
        .flat_map(|seed| {
            oddities_on_the_road(hidden_of(briefing(), &drawn, attempt_streams(seed, 0)))
        })
        .collect();
    assert!(odd.is_empty(), "{}", odd.join("\n"));
}
