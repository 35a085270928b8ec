//! A battery with resistances between named nodes, and the program's meter on them.

use faultwright::instruments::multimeter::{Display, MeterFunction, Multimeter};
use faultwright::units::Celsius;
use faultwright::vehicle::assembly::Assembly;
use faultwright::vehicle::condition::Condition;
use faultwright::vehicle::harness::{ElectricalState, Machines, Wiring, wire_up};
use faultwright::vehicle::spec::{
    HarnessElement, HarnessSpec, Id, LoadOhms, ModuleSpec, OilSpec, SumpSpec, VehicleSpec,
};
use std::collections::BTreeMap;

/// The wiring of a full battery at 20 °C and these resistances.
pub fn wiring(resistances: &[(&str, &str, f64)]) -> Wiring {
    let mut elements = vec![HarnessElement::Battery {
        id: Id::from("battery"),
        plus: Id::from("battery-plus"),
        minus: Id::from("battery-minus"),
    }];
    for (number, (from, to, ohms)) in resistances.iter().enumerate() {
        elements.push(HarnessElement::Load {
            id: Id(format!("resistance-{number}")),
            from: Id::from(*from),
            to: Id::from(*to),
            load: LoadOhms { key_off: *ohms, key_on: *ohms, running: None },
        });
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
        key_on: false,
        charging: false,
        machines: Machines::RESTING,
        battery_temperature: Celsius(20.0),
        coil_temperature: BTreeMap::new(),
        drivers: BTreeMap::new(),
    };
    wire_up(&spec, &condition, &Assembly::default(), &state).expect("a network")
}

/// What an ideal meter shows between a node and the battery's negative post.
pub fn read(function: MeterFunction, resistances: &[(&str, &str, f64)], red: &str) -> f64 {
    let phases = [(1.0, wiring(resistances))];
    let reading =
        Multimeter::ideal().read(function, &phases, red, "battery-minus").expect("a reading");
    match reading.display {
        Display::Value { value, .. } => value,
        Display::OverLimit => f64::INFINITY,
    }
}
