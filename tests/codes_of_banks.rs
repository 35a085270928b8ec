//! Which code follows from which fault on an engine with two banks: that of its own sort and bank, and none of the
//! others'.
#![expect(clippy::unwrap_used, reason = "a test fails by panicking")]

use faultwright::control_module::code::Code;
use faultwright::control_module::code_family::{Bank, CamshaftFamily};
use faultwright::control_module::services::test_result::valve_timing;
use faultwright::control_module::test_result::TestResult;
use faultwright::faults::{Fault, FaultKind, FaultName, apply};
use faultwright::scenario::load::{Loaded, ScenarioText, load, read};
use faultwright::scenario::shared_routes::route;
use faultwright::units::Celsius;
use faultwright::vehicle::condition::{Condition, FittedValve};
use faultwright::vehicle::diagnostic_link::LinkReply;
use faultwright::vehicle::per_cam::Cam;
use faultwright::vehicle::spec::{Id, ValveSpec, VehicleSpec};
use faultwright::vehicle::test_numbers::numbered_tests;
use faultwright::vehicle::whole::Vehicle;
use std::collections::BTreeSet;
use std::path::Path;
use std::sync::{Arc, OnceLock};

const COLD: Celsius = Celsius(19.0);

fn spec() -> &'static VehicleSpec {
    static SCENARIO: OnceLock<Loaded> = OnceLock::new();
    &SCENARIO.get_or_init(|| load(Path::new("signal-box")).unwrap()).vehicle
}

fn vehicle(change: impl FnOnce(&mut Condition)) -> Vehicle {
    let spec = Arc::new(spec().clone());
    let mut condition = Condition::sound(&spec);
    change(&mut condition);
    Vehicle::new(spec, condition, COLD, &[], 7).unwrap()
}

fn with(kind: FaultKind, place: &str, severity: f64) -> Vehicle {
    let fault = Fault { name: FaultName { kind, place: Id::from(place) }, severity };
    vehicle(|condition| assert!(apply(&fault, spec(), condition), "{place}"))
}

fn drive(vehicle: &mut Vehicle) {
    let road = route(&Id::from("proving-drive")).unwrap();
    vehicle.start().unwrap();
    vehicle.drive(&road.profile).unwrap();
    vehicle.key_off();
    vehicle.stand_overnight().unwrap();
}

/// Stored and pending.
fn codes(vehicle: &Vehicle) -> [BTreeSet<Code>; 2] {
    let report = vehicle.module().read_codes();
    [&report.stored, &report.pending].map(|list| list.iter().map(|one| one.code).collect())
}

fn set(codes: &[Code]) -> BTreeSet<Code> {
    codes.iter().copied().collect()
}

/// `bank-2-intake-` of `bank-2-intake-valve`.
fn stem(valve: &ValveSpec) -> &str {
    valve.id.as_str().strip_suffix("valve").unwrap()
}

/// SAE J2012, from P2093 on from memory: sort and bank decide the numbers, for every vehicle that the program carries.
#[test]
fn published_every_carried_valve_has_the_codes_of_its_camshaft_and_bank() {
    use faultwright::control_module::code_family::Camshaft;
    let mut banks = BTreeSet::new();
    for text in ScenarioText::carried() {
        let vehicle = read(text).unwrap().vehicle;
        for valve in &vehicle.valves {
            let camshaft = match valve.cam {
                Cam::Intake => Camshaft::A,
                Cam::Exhaust => Camshaft::B,
            };
            let family = CamshaftFamily::of(camshaft, valve.bank);
            let codes = valve.codes;
            let circuit = [codes.open, codes.low, codes.high];
            let performance = [codes.advanced, codes.retarded, codes.slow, codes.correlation];
            assert_eq!([&circuit[..], &performance].concat(), family.all(), "{}", valve.id);
            banks.insert(valve.bank);
        }
    }
    assert_eq!(banks.len(), 2, "no carried vehicle has a second bank");
}

/// At each of the four valves, at key-on and after a clear: its own code and nobody else's.
#[test]
fn published_a_circuit_fault_of_one_bank_sets_that_bank_s_code_alone() {
    for valve in &spec().valves {
        let codes_of = valve.codes;
        for (kind, place, code) in [
            (FaultKind::OpenCoil, "valve", codes_of.open),
            (FaultKind::PartlyBrokenCoil, "valve", codes_of.open),
            (FaultKind::ShortedTurns, "valve", codes_of.high),
            (FaultKind::CorrodedPin, "feed-pin", codes_of.open),
            (FaultKind::CorrodedPin, "control-pin", codes_of.open),
            (FaultKind::BrokenWire, "feed-wire", codes_of.open),
            (FaultKind::BrokenWire, "control-wire", codes_of.open),
            (FaultKind::WireToGround, "control-wire", codes_of.low),
            (FaultKind::WireToSupply, "control-wire", codes_of.high),
        ] {
            let place = format!("{}{place}", stem(valve));
            let mut vehicle = with(kind, &place, 0.6);
            vehicle.key_on_only().unwrap();
            assert_eq!(codes(&vehicle), [set(&[code]), set(&[code])], "{place} {kind:?}");
            let exchange = vehicle.exchange(&[0x04]).unwrap();
            assert_eq!(exchange.reply, LinkReply::Message(vec![0x44]));
            assert_eq!(codes(&vehicle), [set(&[code]), set(&[code])], "{place} {kind:?}, cleared");
        }
    }
}

/// Each bank has a fuse with nothing else behind it, so that a blown one leaves both of its circuits open; a feed that
/// lies on ground as well holds them low. The other bank's are as they were.
#[test]
fn limit_a_blown_fuse_of_one_bank_leaves_the_other_alive() {
    for bank in Bank::BOTH {
        let number = if bank == Bank::One { 1 } else { 2 };
        let own: Vec<_> = spec().valves.iter().filter(|valve| valve.bank == bank).collect();
        let open: BTreeSet<Code> = own.iter().map(|valve| valve.codes.open).collect();
        let low: BTreeSet<Code> = own.iter().map(|valve| valve.codes.low).collect();
        assert_eq!((open.len(), low.len()), (2, 2));
        let fuse = format!("bank-{number}-fuse");
        let wire = format!("bank-{number}-feed-wire");
        for (kind, place, wanted) in
            [(FaultKind::BlownFuse, fuse, open), (FaultKind::ChafedFeed, wire, low)]
        {
            let mut vehicle = with(kind, &place, 0.5);
            vehicle.key_on_only().unwrap();
            assert_eq!(codes(&vehicle)[0], wanted, "{place}");
        }
    }
}

/// Two driving cycles, from memory: 13 CCR 1968.2 (d)(2.2). The sister valve on bank 1 and everything else on the one
/// gallery stay without a code, and the figures of bank 2 stand under a monitor of their own.
#[test]
fn published_a_hydraulic_fault_of_bank_two_is_found_there_and_nowhere_else() {
    for valve in spec().valves.iter().filter(|valve| valve.bank == Bank::Two) {
        let own = set(&valve.codes.all());
        for (kind, severity) in [(FaultKind::BlockedScreen, 0.8), (FaultKind::StickingSpool, 0.9)] {
            let what = format!("{kind:?} {}", valve.id);
            let mut vehicle = with(kind, valve.id.as_str(), severity);
            drive(&mut vehicle);
            let [stored, pending] = codes(&vehicle);
            assert_eq!(stored, set(&[]), "{what}");
            assert!(!pending.is_empty() && pending.is_subset(&own), "{what}: {pending:?}");
            drive(&mut vehicle);
            let [stored, _] = codes(&vehicle);
            assert!(!stored.is_empty() && stored.is_subset(&own), "{what}: {stored:?}");
            let failed: BTreeSet<Code> = vehicle
                .module()
                .test_results()
                .filter(|result| !result.passes())
                .map(|result| result.code)
                .collect();
            assert!(!failed.is_empty() && failed.is_subset(&own), "{what}: {failed:?}");
        }
    }
}

#[test]
fn limit_a_sound_v_engine_and_one_with_another_winding_set_no_code() {
    let other = |place: &'static str| {
        move |condition: &mut Condition| {
            let part = spec().valve_part(&Id::from("bb-7315-h")).unwrap();
            condition.valves.insert(Id::from(place), FittedValve::new(part, 1.0));
        }
    };
    for is_other in [false, true] {
        let mut vehicle =
            if is_other { vehicle(other("bank-2-exhaust-valve")) } else { vehicle(|_| ()) };
        drive(&mut vehicle);
        drive(&mut vehicle);
        assert_eq!(codes(&vehicle), [set(&[]), set(&[])]);
        assert!(vehicle.module().test_results().all(TestResult::passes));
        // Every one of the figures is that of a monitor that has run.
        let seen: BTreeSet<_> =
            vehicle.module().test_results().map(|it| (it.code, it.measure.number())).collect();
        for test in numbered_tests(spec()) {
            assert!(seen.contains(&(test.code, test.measure.number())), "{test:?} has not run");
        }
    }
}

/// Monitor $36 tells of bank 2 what $35 tells of bank 1, and the camshafts' own data have four numbers.
#[test]
fn published_the_test_results_of_bank_two_stand_under_their_own_monitor() {
    let monitors = |bank: Bank| {
        let of = spec().valves.iter().filter(move |valve| valve.bank == bank);
        let own: BTreeSet<Code> = of.flat_map(|valve| valve.codes.all()).collect();
        let tests = numbered_tests(spec()).into_iter();
        let told: Vec<_> = tests.filter(|test| test.monitor == valve_timing(bank)).collect();
        assert_eq!(told.len(), 12, "six tests for each of two camshafts");
        assert!(told.iter().all(|test| own.contains(&test.code)), "{told:?}");
        told
    };
    assert_eq!((valve_timing(Bank::One), valve_timing(Bank::Two)), (0x35, 0x36));
    monitors(Bank::One);
    let told = monitors(Bank::Two);
    let mut vehicle = vehicle(|_| ());
    vehicle.key_on_only().unwrap();
    let mut ask = |request: &[u8]| match vehicle.exchange(request).unwrap().reply {
        LinkReply::Message(bytes) => bytes,
        other => panic!("{request:02x?}: {other:?}"),
    };
    // Service, then nine bytes a test.
    let bytes = ask(&[0x06, 0x36]);
    assert_eq!(bytes[0], 0x46);
    let heads: Vec<[u8; 2]> = bytes[1..].chunks(9).map(|test| [test[0], test[1]]).collect();
    assert_eq!(heads, told.iter().map(|test| [0x36, test.test]).collect::<Vec<_>>());
    for camshaft in 1..=4_u8 {
        assert_eq!(ask(&[0x22, 0x20, camshaft])[..3], [0x62, 0x20, camshaft]);
    }
}
