//! A small vehicle and job for the tests: names that begin alike, two connectors, one of each
//! kind of wiring element.

use crate::control_module::code::Code;
use crate::control_module::code_family::Bank;
use crate::control_module::driver_side::DriverSide;
use crate::session::setup::{
    Approval, Briefing, ElectricalMinutes, JobSheet, Prices, Route, SmallParts, StepMinutes,
};
use crate::session::shelf::Shelf;
use crate::session::step::CustomerTopic;
use crate::session::toolbox::{TimeLimit, Tools};
use crate::units::{Celsius, Minutes, Money};
use crate::vehicle::per_cam::Cam;
use crate::vehicle::route::RouteProfile;
use crate::vehicle::spec::{
    Care, HarnessElement, HarnessSpec, Id, LoadOhms, ModuleSpec, OilSpec, PartKind, PartSpec,
    SumpSpec, TestPointSpec, ValveCodes, ValvePart, ValveSpec, VehicleSpec,
};
use std::collections::BTreeMap;

fn ids(names: &[&str]) -> Vec<Id> {
    names.iter().map(|name| Id::from(*name)).collect()
}

pub(super) fn code(text: &str) -> Code {
    text.parse().unwrap()
}

pub(super) fn briefing() -> Briefing {
    Briefing {
        vehicle: vehicle(),
        mode: crate::session::journal::Mode::Practice,
        job: JobSheet {
            title: "Rough at times".to_owned(),
            concern: "Sluggish when warm, yellow lamp on.".to_owned(),
            kilometres: 128_400,
            history: vec!["Oil change 14 months ago".to_owned()],
            answers: BTreeMap::from([(CustomerTopic::When, "Mostly uphill.".to_owned())]),
        },
        approval: Approval::Everything,
        tools: Tools::All,
        time_limit: TimeLimit::None,
        shelf: Shelf::default(),
        prices: prices(),
        routes: ["town", "hill-road"]
            .map(|name| {
                let profile = RouteProfile { ramp_s: 3.0, start_rpm: 700.0, segments: Vec::new() };
                (Id::from(name), Route { minutes: Minutes(25), profile })
            })
            .into(),
        customers_route: Id::from("hill-road"),
        workshop_temperature: Celsius(18.0),
        false_codes: BTreeMap::new(),
    }
}

fn prices() -> Prices {
    let one = Minutes(1);
    Prices {
        currency: "€".to_owned(),
        labour_per_hour: Money(60_00),
        minutes: StepMinutes {
            ask: one,
            consult: one,
            look: one,
            dipstick: one,
            key: one,
            start: one,
            measure: one,
            fetch_meter: one,
            power: one,
            connect_reader: one,
            request: one,
            clean: one,
            mend_pin: one,
            mend_wire: one,
            top_up: one,
            change_oil: one,
            read_gauge: one,
            approval: one,
            write: one,
            hand_over: one,
            fetch_part: one,
            electrical: ElectricalMinutes::default(),
        },
        valves: BTreeMap::from([(Id::from("hd-4470-1"), Money(48_50))]),
        seal: Money(3_20),
        mending: Money(4_00),
        oil_litre: Money(11_00),
        oil_filter: Money(9_50),
        cleaning: Money(6_00),
        small_parts: SmallParts::default(),
        fuel: Money(2_50),
        comeback: Money(15_000),
    }
}

fn vehicle() -> VehicleSpec {
    let mut elements = supply();
    elements.extend(branch("intake"));
    elements.extend(branch("exhaust"));
    VehicleSpec {
        name: "Marlow Estate".to_owned(),
        year: 2016,
        engine: "1.8 petrol".to_owned(),
        cylinders: 4,
        sump: SumpSpec { full_litres: 4.5, least_litres: 3.5 },
        oil: OilSpec::default(),
        valves: vec![
            valve(
                "intake",
                Cam::Intake,
                ["P0010", "P2088", "P2089", "P0011", "P0012", "P000A", "P0016"],
            ),
            valve(
                "exhaust",
                Cam::Exhaust,
                ["P0013", "P2090", "P2091", "P0014", "P0015", "P000B", "P0017"],
            ),
        ],
        valve_parts: vec![valve_part("hd-4470-1", 7.4), valve_part("HD-4470-3", 12.2)],
        parts: parts(),
        test_points: test_points(),
        harness: HarnessSpec { elements: elements.into() },
        module: ModuleSpec::default(),
        longest_power: Some(3.0),
    }
}

fn valve(name: &str, cam: Cam, codes: [&str; 7]) -> ValveSpec {
    let [open, low, high, advanced, retarded, slow, correlation] = codes.map(code);
    ValveSpec {
        id: Id(format!("{name}-valve")),
        bank: Bank::One,
        cam,
        part_number: Id::from("hd-4470-1"),
        connector: Id(format!("{name}-connector")),
        codes: ValveCodes { open, low, high, advanced, retarded, slow, correlation },
    }
}

fn valve_part(number: &str, ohms: f64) -> ValvePart {
    ValvePart {
        part_number: Id::from(number),
        ohms_at_20: ohms,
        ohms_least: ohms - 0.5,
        ohms_most: ohms + 0.5,
        turns: 1.0,
        actuator: crate::physics::actuator::Actuator::REFERENCE,
        fits: ids(&["intake-valve", "exhaust-valve"]),
    }
}

/// Listed so that the parts in the way come after what they cover.
fn parts() -> Vec<PartSpec> {
    let part = |id: &str, kind, behind: &[&str], care: &[Care]| PartSpec {
        id: Id::from(id),
        kind,
        behind: ids(behind),
        remove: Minutes(5),
        refit: Minutes(6),
        care: care.to_vec(),
        torque_nm: (kind == PartKind::Valve).then_some(9.5),
    };
    let valve_care = [Care::BreakSealLoose, Care::NewSeal, Care::Torque, Care::Hot];
    vec![
        part("intake-valve", PartKind::Valve, &["engine-cover", "intake-connector"], &valve_care),
        part("exhaust-valve", PartKind::Valve, &["exhaust-connector"], &valve_care),
        part("intake-connector", PartKind::Connector, &["engine-cover"], &[Care::KeyOff]),
        part("exhaust-connector", PartKind::Connector, &["air-duct"], &[Care::KeyOff]),
        part("air-duct", PartKind::Duct, &["engine-cover", "duct-clamp"], &[]),
        part("duct-clamp", PartKind::Clamp, &[], &[]),
        part("engine-cover", PartKind::Cover, &[], &[]),
    ]
}

fn test_points() -> Vec<TestPointSpec> {
    let point = |id: &str, behind: &[&str], unplugged: Option<&str>| TestPointSpec {
        id: Id::from(id),
        node: Id(format!("{id}-node")),
        behind: ids(behind),
        unplugged: unplugged.map(Id::from),
    };
    vec![
        point("battery-plus", &[], None),
        point("battery-minus", &[], None),
        point("intake-valve", &["engine-cover"], None),
        point("intake-harness-feed", &["engine-cover"], None),
        point("intake-valve-feed", &["engine-cover"], Some("intake-connector")),
        point("intake-valve-control", &["engine-cover"], Some("intake-connector")),
        point("exhaust-valve-feed", &[], Some("exhaust-connector")),
    ]
}

fn supply() -> Vec<HarnessElement> {
    let id = Id::from;
    let load = LoadOhms { key_off: 2_000.0, key_on: 3.0, running: None };
    vec![
        HarnessElement::Battery {
            id: id("battery"),
            plus: id("battery-plus"),
            minus: id("battery-minus"),
        },
        HarnessElement::Alternator {
            id: id("alternator"),
            plus: id("battery-plus"),
            minus: id("engine-ground"),
        },
        HarnessElement::Starter {
            id: id("starter"),
            plus: id("battery-plus"),
            minus: id("engine-ground"),
        },
        HarnessElement::Fuse {
            id: id("fuse-3"),
            from: id("battery-plus"),
            to: id("fused"),
            ohms: 0.01,
            rating: 7.5,
        },
        HarnessElement::RelayContact {
            id: id("main-relay"),
            from: id("fused"),
            to: id("switched"),
            ohms: 0.01,
        },
        HarnessElement::ModuleSupply {
            id: id("module"),
            supply: id("switched"),
            ground: id("engine-ground"),
            rail: id("rail"),
            load,
        },
        HarnessElement::Load {
            id: id("other-loads"),
            from: id("switched"),
            to: id("engine-ground"),
            load,
        },
        HarnessElement::Wire {
            id: id("ground-strap"),
            from: id("engine-ground"),
            to: id("battery-minus"),
            ohms: 0.002,
        },
    ]
}

fn branch(name: &str) -> Vec<HarnessElement> {
    let id = |end: &str| Id(format!("{name}-{end}"));
    let valve = Id(format!("{name}-valve"));
    let pin = |contact: &str, from: &str, to: &str| HarnessElement::Pin {
        id: id(contact),
        connector: id("connector"),
        from: id(from),
        to: id(to),
        ohms: 0.005,
    };
    vec![
        HarnessElement::Wire {
            id: id("feed-wire"),
            from: Id::from("switched"),
            to: id("harness-feed"),
            ohms: 0.045,
        },
        pin("feed-pin", "harness-feed", "valve-feed"),
        HarnessElement::Coil {
            id: id("coil"),
            valve: valve.clone(),
            from: id("valve-feed"),
            to: id("valve-control"),
        },
        pin("control-pin", "harness-control", "valve-control"),
        HarnessElement::Wire {
            id: id("control-wire"),
            from: id("harness-control"),
            to: id("module-control"),
            ohms: 0.072,
        },
        HarnessElement::Driver {
            id: id("driver"),
            valve,
            side: DriverSide::Low,
            pin: id("module-control"),
            supply: Id::from("switched"),
            ground: Id::from("engine-ground"),
            on_ohms: 0.15,
            off_ohms: 5e6,
            sense_ohms: 0.1,
            bias_ohms: 47e3,
        },
    ]
}
