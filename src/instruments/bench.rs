//! A battery with resistances on a bench, for the tests of instruments.

use crate::units::Celsius;
use crate::vehicle::assembly::Assembly;
use crate::vehicle::condition::Condition;
use crate::vehicle::harness::{ElectricalState, Machines, Wiring, wire_up};
use crate::vehicle::spec::{
    HarnessElement, HarnessSpec, Id, LoadOhms, ModuleSpec, OilSpec, SumpSpec, VehicleSpec,
};
use std::collections::BTreeMap;

/// A full battery at 20 °C [V], and its resistance [ohm].
pub(super) const BATTERY_V: f64 = 12.7;
pub(super) const BATTERY_OHMS: f64 = 0.008;

/// A battery with resistances between named nodes; "relay" closes with the key.
pub(super) fn bench(resistances: &[(&str, &str, f64)], key_on: bool) -> Vec<(f64, Wiring)> {
    let mut elements = vec![
        HarnessElement::Battery {
            id: Id::from("battery"),
            plus: Id::from("battery-plus"),
            minus: Id::from("battery-minus"),
        },
        HarnessElement::RelayContact {
            id: Id::from("relay"),
            from: Id::from("battery-plus"),
            to: Id::from("switched"),
            ohms: 0.001,
        },
        load("relay-load", "switched", "battery-minus", 1_000.0),
    ];
    for (number, (from, to, ohms)) in resistances.iter().enumerate() {
        elements.push(load(&format!("r{number}"), from, to, *ohms));
    }
    let spec = VehicleSpec {
        name: "bench".to_owned(),
        year: 2000,
        engine: "none".to_owned(),
        cylinders: 4,
        sump: SumpSpec { full_litres: 1.0, least_litres: 0.5 },
        oil: OilSpec::default(),
        valves: Vec::new(),
        valve_parts: Vec::new(),
        parts: Vec::new(),
        test_points: Vec::new(),
        harness: HarnessSpec { elements: elements.into() },
        module: ModuleSpec::default(),
        longest_power: None,
    };
    let mut condition = Condition::sound(&spec);
    condition.battery_charge = 1.0;
    let state = ElectricalState {
        key_on,
        charging: false,
        machines: Machines::RESTING,
        battery_temperature: Celsius(20.0),
        coil_temperature: BTreeMap::new(),
        drivers: BTreeMap::new(),
    };
    let wiring = wire_up(&spec, &condition, &Assembly::default(), &state).unwrap();
    vec![(1.0, wiring)]
}

fn load(id: &str, from: &str, to: &str, ohms: f64) -> HarnessElement {
    HarnessElement::Load {
        id: Id::from(id),
        from: Id::from(from),
        to: Id::from(to),
        load: LoadOhms { key_off: ohms, key_on: ohms, running: None },
    }
}
