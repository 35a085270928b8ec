//! The vehicles that are carried beside the first one: valves that are switched in their feed, an engine
//! with one phaser and one with four. All are files alone; what they ask of wiring, module and engine is held here.
#![expect(clippy::unwrap_used, reason = "a test fails by panicking")]

use faultwright::control_module::driver_side::DriverSide;
use faultwright::faults::{Fault, FaultKind, FaultName, apply};
use faultwright::instruments::multimeter::{Display, MeterFunction, Multimeter};
use faultwright::numerics::streams::Streams;
use faultwright::physics::warm_up::EngineHeat;
use faultwright::scenario::load::{Loaded, load};
use faultwright::units::{Celsius, Rpm};
use faultwright::vehicle::assembly::Assembly;
use faultwright::vehicle::circuits::feel;
use faultwright::vehicle::condition::Condition;
use faultwright::vehicle::engine_link::{Withheld, engine_condition, engine_spec};
use faultwright::vehicle::harness::{DriverState, ElectricalState, Machines, wire_up};
use faultwright::vehicle::per_bank::CamPlace;
use faultwright::vehicle::route::Demand;
use faultwright::vehicle::running::RunningEngine;
use faultwright::vehicle::spec::{HarnessElement, Id, VehicleSpec};
use faultwright::vehicle::whole::Vehicle;
use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;
use std::sync::Arc;

const COLD: Celsius = Celsius(19.0);

/// A scenario on the vehicle with switched feeds, one on that with one phaser, and one on that with two banks.
fn switched_feed() -> Loaded {
    load(Path::new("malt-house")).unwrap()
}

fn one_phaser() -> Loaded {
    load(Path::new("gravel-pit")).unwrap()
}

fn two_banks() -> Loaded {
    load(Path::new("signal-box")).unwrap()
}

fn with(spec: &VehicleSpec, faults: &[(FaultKind, &str, f64)]) -> Vehicle {
    let mut condition = Condition::sound(spec);
    for (kind, place, severity) in faults {
        let name = FaultName { kind: *kind, place: Id::from(*place) };
        let fault = Fault { name, severity: *severity };
        assert!(apply(&fault, spec, &mut condition), "{place}");
    }
    Vehicle::new(Arc::new(spec.clone()), condition, COLD, &[], 7).unwrap()
}

fn stored(vehicle: &Vehicle) -> BTreeSet<String> {
    vehicle.module().read_codes().stored.iter().map(|one| one.code.to_string()).collect()
}

fn set(codes: &[&str]) -> BTreeSet<String> {
    codes.iter().map(|code| (*code).to_owned()).collect()
}

fn state(drivers: BTreeMap<Id, DriverState>) -> ElectricalState {
    ElectricalState {
        key_on: true,
        charging: false,
        machines: Machines::RESTING,
        battery_temperature: Celsius(20.0),
        coil_temperature: BTreeMap::new(),
        drivers,
    }
}

/// Volts between two points, with one valve driven or none and perhaps a connector off.
fn volts(
    spec: &VehicleSpec,
    driven: Option<&str>,
    unplugged: Option<&str>,
    red: &str,
    black: &str,
) -> f64 {
    let mut assembly = Assembly::default();
    if let Some(connector) = unplugged {
        assembly.take_off(&Id::from(connector));
    }
    let driven = driven.map(|valve| (Id::from(valve), DriverState::On));
    let state = state(driven.into_iter().collect());
    let wiring = wire_up(spec, &Condition::sound(spec), &assembly, &state).unwrap();
    let read = Multimeter::ideal().read(MeterFunction::Volts, &[(1.0, wiring)], red, black);
    match read.unwrap().display {
        Display::Value { value, .. } => value,
        Display::OverLimit => f64::INFINITY,
    }
}

/// Half of the rail from the two equal bias resistors, less what a meter of ten megohms draws, and half a
/// tenth of a volt more by the open switch, which leads to the supply; the battery less what the loop drops
/// when it is driven.
#[test]
fn closed_form_a_switched_feed_rests_at_ground_floats_at_half_the_rail_and_is_driven_to_the_supply()
{
    let spec = switched_feed().vehicle;
    for cam in ["intake", "exhaust"] {
        let (valve, connector) = (format!("{cam}-valve"), format!("{cam}-connector"));
        let drive = format!("{cam}-harness-drive");
        let ground = format!("{cam}-harness-ground");
        let at = |driven, unplugged, point: &str| {
            volts(&spec, driven, unplugged, point, "battery-minus")
        };
        assert!(at(None, None, &drive).abs() < 0.05, "{cam}: a sound coil holds it at ground");
        let floats = at(None, Some(&connector), &drive);
        assert!((2.5..2.6).contains(&floats), "{cam}: {floats} V");
        let driven = at(Some(&valve), None, &drive);
        assert!((11.8..12.7).contains(&driven), "{cam}: {driven} V");
        assert!(at(Some(&valve), Some(&connector), &drive) > 12.0);
        // The other wire is ground whatever happens, and lifts by its own drop alone.
        assert!(at(None, None, &ground).abs() < 0.02);
        assert!((0.0..0.15).contains(&at(Some(&valve), None, &ground)), "{cam}");
    }
}

/// What each fault of one valve's circuit is called, at key-on: the same words as with a switch in the
/// ground, but for a winding that takes too much, which pulls a driven pin down and not up.
#[test]
fn published_circuit_faults_of_a_switched_feed_set_the_code_of_what_holds_the_pin() {
    use FaultKind::{
        BlownFuse, BrokenWire, ChafedFeed, CorrodedPin, OpenCoil, PartlyBrokenCoil, ShortedTurns,
        WireToGround, WireToSupply,
    };
    let spec = switched_feed().vehicle;
    for (cam, open, low, high) in
        [("intake", "P0010", "P2088", "P2089"), ("exhaust", "P0013", "P2090", "P2091")]
    {
        for (kind, place, code) in [
            (OpenCoil, "valve", open),
            (PartlyBrokenCoil, "valve", open),
            (BrokenWire, "ground-wire", open),
            (BrokenWire, "drive-wire", open),
            (CorrodedPin, "ground-pin", open),
            (CorrodedPin, "drive-pin", open),
            (ShortedTurns, "valve", low),
            (WireToGround, "drive-wire", low),
            (WireToSupply, "drive-wire", high),
        ] {
            // The pulse at key-on is too short for a few bridged turns to be told from the freewheeling.
            let mild = if kind == ShortedTurns { 0.5 } else { 0.1 };
            for severity in [mild, 0.9] {
                let place = format!("{cam}-{place}");
                let mut vehicle = with(&spec, &[(kind, &place, severity)]);
                vehicle.key_on_only().unwrap();
                assert_eq!(stored(&vehicle), set(&[code]), "{place} {kind:?} {severity}");
            }
        }
    }
    // The drivers have a fuse beside the module's, so that it still speaks: of both circuits.
    for (kind, place) in [(BlownFuse, "driver-fuse"), (ChafedFeed, "driver-feed-wire")] {
        let mut vehicle = with(&spec, &[(kind, place, 0.5)]);
        vehicle.key_on_only().unwrap();
        assert_eq!(stored(&vehicle), set(&["P2088", "P2090"]), "{place}");
    }
}

#[test]
fn limit_sound_vehicles_set_no_code_and_reach_their_targets() {
    for loaded in [switched_feed(), one_phaser(), two_banks()] {
        let spec = &loaded.vehicle;
        let mut vehicle = with(spec, &[]);
        vehicle.key_on_only().unwrap();
        let road = faultwright::scenario::shared_routes::route(&Id::from("proving-drive")).unwrap();
        vehicle.start().unwrap();
        let report = vehicle.drive(&road.profile).unwrap();
        vehicle.key_off();
        assert_eq!(stored(&vehicle), BTreeSet::new(), "{}", spec.name);
        assert!(vehicle.module().read_codes().pending.is_empty(), "{}", spec.name);
        assert_eq!(report.cams.len(), spec.valves.len());
    }
}

/// A wire against the supply drives the valve for good, and one against ground leaves it without drive.
#[test]
fn limit_a_drive_wire_at_the_supply_moves_the_camshaft_and_one_at_ground_does_not() {
    let spec = switched_feed().vehicle;
    let of = |kind| {
        let mut vehicle = with(&spec, &[(kind, "intake-drive-wire", 0.5)]);
        vehicle.key_on_only().unwrap();
        vehicle.driven(&Id::from("intake-valve")).unwrap().unwrap().circuit
    };
    let at_supply = of(FaultKind::WireToSupply);
    assert!(at_supply.forced().is_some_and(|amperes| amperes > 1.2), "{at_supply:?}");
    let at_ground = of(FaultKind::WireToGround);
    assert_eq!(at_ground.forced(), None);
    assert!(at_ground.mean_current(1.0).0 < 0.01, "{at_ground:?}");
}

#[test]
fn regress_the_old_name_of_a_driver_reads_as_one_in_the_ground() {
    let old = "LowSideDriver(id: \"d\", valve: \"v\", pin: \"p\", supply: \"s\", ground: \"g\", \
               on_ohms: 0.1, off_ohms: 1e6, sense_ohms: 0.1, bias_ohms: 1e4)";
    let named = |text: &str| ron::from_str::<HarnessElement>(text).unwrap();
    let driver = named(old);
    assert!(matches!(driver, HarnessElement::Driver { side: DriverSide::Low, .. }));
    assert_eq!(named(&old.replacen("LowSideDriver", "Driver", 1)), driver);
    let high = old.replacen("LowSideDriver(", "Driver(side: High, ", 1);
    assert!(matches!(named(&high), HarnessElement::Driver { side: DriverSide::High, .. }));
    let dray = load(Path::new("market-hill")).unwrap().vehicle;
    assert!(dray.valves.iter().all(|valve| dray.side_of(&valve.id) == DriverSide::Low));
}

/// A camshaft without a valve has no phaser, whatever the module's map would ask of it.
#[test]
fn limit_an_engine_with_one_valve_leaves_the_other_camshaft_where_it_is() {
    let spec = one_phaser().vehicle;
    assert_eq!(spec.valves.len(), 1);
    let sound = Condition::sound(&spec);
    let state = ElectricalState { charging: true, ..state(BTreeMap::new()) };
    let circuits = feel(&spec, &sound, &Assembly::default(), &state).unwrap();
    let free = [Withheld { drive: false, movement: false }];
    let condition = engine_condition(&spec, &sound, &circuits, &free, COLD);
    let heat = EngineHeat { coolant: Celsius(90.0), oil: Celsius(90.0) };
    let air = Streams::new(1).stream("aeration");
    let mut engine = RunningEngine::new(engine_spec(&spec), condition, heat, air).unwrap();
    engine.brake(true);
    engine.start();
    let demand = Demand { speed: Rpm(2_500.0), load: 0.6, ..Demand::IDLE };
    for _ in 0..5_000 {
        engine.tick(&demand);
    }
    assert!(engine.cam(CamPlace::INTAKE).seen().0 > 15.0);
    assert!(engine.cam(CamPlace::EXHAUST).seen().0.abs() < 0.5);
    assert!(engine.cam(CamPlace::EXHAUST).duty() < 1e-9);
}
