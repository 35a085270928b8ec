//! A vehicle for tests: two valves of 11 ohm, in the original and in the mended wiring.
//!
//! The figures are check values: common practice or engineering estimates, no source.

use faultwright::control_module::code::Code;
use faultwright::control_module::code_family::Bank;
use faultwright::control_module::driver_side::DriverSide;
use faultwright::vehicle::per_cam::Cam;
use faultwright::vehicle::spec::{
    HarnessElement, HarnessSpec, Id, LoadOhms, ModuleSpec, OilSpec, SumpSpec, ValveCodes,
    ValvePart, ValveSpec, VehicleSpec,
};

const NOTHING_OHMS: f64 = 1e12;

/// The wiring as first drawn: the module draws its current from behind the valve fuse and relay,
/// and its rail stands whatever becomes of that feed. The second half is wrong on purpose: it is
/// how the stored table was computed. The harness says it by a rail that looks at the battery.
pub fn original() -> VehicleSpec {
    let mut elements = common("battery-minus", 2.1);
    elements.extend([
        load("other-consumers", "valve-feed", "engine-ground", 2_200.0, 24.0, None),
        wire("module-feed-wire", "valve-feed", "module-supply", 0.030),
        load("module-consumption", "module-supply", "module-ground", 470.0, 20.0, None),
        HarnessElement::ModuleSupply {
            id: id("module"),
            supply: id("battery-plus"),
            ground: id("module-ground"),
            rail: id("module-rail"),
            load: LoadOhms { key_off: NOTHING_OHMS, key_on: NOTHING_OHMS, running: None },
        },
    ]);
    vehicle(elements)
}

/// The wiring of a sound design: the module has a fuse and a relay of its own and dies with them,
/// and the alternator returns where it is bolted.
pub fn mended() -> VehicleSpec {
    let mut elements = common("engine-ground", 150.0);
    elements.extend([
        load("other-consumers", "valve-feed", "engine-ground", 2_200.0, 24.0, Some(12.0)),
        fuse("module-fuse", "fuse-box", "module-fuse-out"),
        relay("module-relay", "module-fuse-out", "module-feed"),
        wire("module-feed-wire", "module-feed", "module-supply", 0.030),
        HarnessElement::ModuleSupply {
            id: id("module"),
            supply: id("module-supply"),
            ground: id("module-ground"),
            rail: id("module-rail"),
            load: LoadOhms { key_off: 470.0, key_on: 20.0, running: Some(15.0) },
        },
    ]);
    vehicle(elements)
}

fn common(alternator_return: &str, base_key_off_ohms: f64) -> Vec<HarnessElement> {
    let mut elements = vec![
        HarnessElement::Battery {
            id: id("battery"),
            plus: id("battery-plus"),
            minus: id("battery-minus"),
        },
        HarnessElement::Alternator {
            id: id("alternator"),
            plus: id("battery-plus"),
            minus: id(alternator_return),
        },
        wire("battery-cable", "battery-plus", "fuse-box", 0.002),
        load("base-consumers", "fuse-box", "engine-ground", base_key_off_ohms, 2.1, Some(0.7)),
        fuse("valve-fuse", "fuse-box", "valve-fuse-out"),
        relay("valve-relay", "valve-fuse-out", "valve-feed"),
        wire("splice-wire", "valve-feed", "splice", 0.040),
        wire("module-ground-wire", "module-ground", "engine-ground", 0.010),
        wire("engine-strap", "engine-ground", "battery-minus", 0.002),
    ];
    for valve in ["intake", "exhaust"] {
        elements.extend(valve_branch(valve));
    }
    elements
}

fn valve_branch(valve: &str) -> [HarnessElement; 6] {
    let of = |what: &str| format!("{valve}-{what}");
    let pin = |what: &str, side: &str, other: &str| HarnessElement::Pin {
        id: Id(of(what)),
        connector: Id(of("connector")),
        from: Id(of(side)),
        to: Id(of(other)),
        ohms: 0.005,
    };
    [
        wire(&of("feed-wire"), "splice", &of("feed-harness"), 0.045),
        pin("feed-pin", "feed-harness", "feed-valve"),
        HarnessElement::Coil {
            id: Id(of("coil")),
            valve: Id(of("valve")),
            from: Id(of("feed-valve")),
            to: Id(of("control-valve")),
        },
        pin("control-pin", "control-harness", "control-valve"),
        wire(&of("control-wire"), &of("control-harness"), &of("module-pin"), 0.072),
        HarnessElement::Driver {
            side: DriverSide::Low,
            id: Id(of("driver")),
            valve: Id(of("valve")),
            pin: Id(of("module-pin")),
            supply: id("module-supply"),
            ground: id("module-ground"),
            on_ohms: 0.150,
            off_ohms: 5e6,
            sense_ohms: 0.100,
            bias_ohms: 47e3,
        },
    ]
}

fn vehicle(elements: Vec<HarnessElement>) -> VehicleSpec {
    VehicleSpec {
        name: "test bench".to_owned(),
        year: 2000,
        engine: "two oil-control valves".to_owned(),
        cylinders: 4,
        sump: SumpSpec { full_litres: 5.0, least_litres: 4.0 },
        oil: OilSpec::default(),
        valves: vec![valve("intake", Cam::Intake), valve("exhaust", Cam::Exhaust)],
        valve_parts: vec![ValvePart {
            part_number: id("V-11"),
            ohms_at_20: 11.0,
            ohms_least: 10.0,
            ohms_most: 12.0,
            turns: 1.0,
            actuator: faultwright::physics::actuator::Actuator::REFERENCE,
            fits: vec![id("intake-valve"), id("exhaust-valve")],
        }],
        parts: Vec::new(),
        test_points: Vec::new(),
        harness: HarnessSpec { elements: elements.into() },
        module: ModuleSpec::default(),
        longest_power: None,
    }
}

fn valve(name: &str, cam: Cam) -> ValveSpec {
    // No test here asks for codes.
    let none = Code(0);
    ValveSpec {
        id: Id(format!("{name}-valve")),
        bank: Bank::One,
        cam,
        part_number: id("V-11"),
        connector: Id(format!("{name}-connector")),
        codes: ValveCodes {
            open: none,
            low: none,
            high: none,
            advanced: none,
            retarded: none,
            slow: none,
            correlation: none,
        },
    }
}

fn id(name: &str) -> Id {
    Id::from(name)
}

fn wire(name: &str, from: &str, to: &str, ohms: f64) -> HarnessElement {
    HarnessElement::Wire { id: id(name), from: id(from), to: id(to), ohms }
}

fn fuse(name: &str, from: &str, to: &str) -> HarnessElement {
    HarnessElement::Fuse { id: id(name), from: id(from), to: id(to), ohms: 0.005, rating: 10.0 }
}

fn relay(name: &str, from: &str, to: &str) -> HarnessElement {
    HarnessElement::RelayContact { id: id(name), from: id(from), to: id(to), ohms: 0.015 }
}

fn load(
    name: &str,
    from: &str,
    to: &str,
    key_off: f64,
    key_on: f64,
    running: Option<f64>,
) -> HarnessElement {
    let load = LoadOhms { key_off, key_on, running };
    HarnessElement::Load { id: id(name), from: id(from), to: id(to), load }
}
