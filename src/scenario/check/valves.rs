//! Valves, the parts that fit them, and their codes.

use super::names;
use crate::control_module::code::Code;
use crate::control_module::code_family::Bank;
use crate::scenario::draw::WINDING_SPREAD;
use crate::scenario::findings::Findings;
use crate::scenario::problem::{ProblemKind, Thing, ValveNeed};
use crate::vehicle::spec::{HarnessElement, Id, PartKind, ValveCodes, ValveSpec, VehicleSpec};
use std::collections::BTreeSet;

/// Resistance of a winding [ohm] and its turns against the reference: what the coil's model takes.
const WINDING_OHMS: (f64, f64) = (1.0, 100.0);
const TURNS: (f64, f64) = (0.05, 20.0);

/// Checks valves and their parts.
pub(super) fn check(findings: &mut Findings<'_>, spec: &VehicleSpec) {
    if spec.valves.is_empty() {
        findings.add("vehicle.valves", ProblemKind::Empty);
    }
    let valve_ids = || spec.valves.iter().map(|valve| &valve.id);
    let numbers = || spec.valve_parts.iter().map(|part| &part.part_number);
    names(findings, ("vehicle.valves", "id"), Thing::Valve, valve_ids());
    names(findings, ("vehicle.valve_parts", "part_number"), Thing::PartNumber, numbers());
    for (number, part) in spec.valve_parts.iter().enumerate() {
        let path = |field: &str| format!("vehicle.valve_parts[{number}].{field}");
        findings.number(&path("ohms_at_20"), part.ohms_at_20, WINDING_OHMS);
        findings.number(&path("ohms_least"), part.ohms_least, WINDING_OHMS);
        findings.number(&path("ohms_most"), part.ohms_most, WINDING_OHMS);
        findings.number(&path("turns"), part.turns, TURNS);
        let (solenoid, spool) = (part.actuator.solenoid.check(), part.actuator.spool.check());
        for (of, checked) in [("solenoid", solenoid), ("spool", spool)] {
            if let Err(wrong) = checked {
                let path = path(&format!("actuator.{of}.{}", wrong.parameter));
                findings.number(&path, wrong.got, (wrong.lowest, wrong.highest));
            }
        }
        let spread = part.ohms_at_20 * WINDING_SPREAD;
        let (lowest, highest) = (part.ohms_at_20 - spread, part.ohms_at_20 + spread);
        if lowest < part.ohms_least || highest > part.ohms_most {
            let part_number = part.part_number.clone();
            findings.add(&path("ohms_at_20"), ProblemKind::NarrowWindow { part_number });
        }
        if part.fits.is_empty() {
            findings.add(&path("fits"), ProblemKind::Empty);
        }
        for (at, valve) in part.fits.iter().enumerate() {
            findings.name(&path(&format!("fits[{at}]")), Thing::Valve, valve, valve_ids());
        }
    }
    let mut codes = BTreeSet::new();
    let mut camshafts = BTreeSet::new();
    let partners: BTreeSet<_> = spec.valves.iter().map(|valve| (valve.cam, valve.bank)).collect();
    let is_v_engine = spec.has_two_banks();
    for (number, valve) in spec.valves.iter().enumerate() {
        let path = |field: &str| format!("vehicle.valves[{number}].{field}");
        // A bank has one camshaft of each sort; a second valve would drive the first one's.
        if !camshafts.insert(valve.camshaft()) {
            let name = valve.id.to_string();
            findings.add(&path("cam"), ProblemKind::Repeated { thing: Thing::Camshaft, name });
        }
        if is_v_engine && !partners.contains(&(valve.cam, other(valve.bank))) {
            findings.add(&path("cam"), ProblemKind::NoPartner { valve: valve.id.clone() });
        }
        findings.name(&path("part_number"), Thing::PartNumber, &valve.part_number, numbers());
        let part = spec.valve_part(&valve.part_number);
        if part.is_some_and(|part| !part.fits.contains(&valve.id)) {
            let (part_number, valve) = (valve.part_number.clone(), valve.id.clone());
            findings.add(&path("part_number"), ProblemKind::DoesNotFit { part_number, valve });
        }
        for (field, code) in own_codes(&valve.codes) {
            if !codes.insert(code) {
                let path = path(&format!("codes.{field}"));
                findings.add(&path, ProblemKind::RepeatedCode { code });
            }
        }
        for what in lacking(spec, valve) {
            let field = if what == ValveNeed::Connector { "connector" } else { "id" };
            let valve = valve.id.clone();
            findings.add(&path(field), ProblemKind::ValveLacks { valve, what });
        }
    }
}

const fn other(bank: Bank) -> Bank {
    match bank {
        Bank::One => Bank::Two,
        Bank::Two => Bank::One,
    }
}

/// The codes of a valve with the fields that hold them.
pub(super) fn own_codes(codes: &ValveCodes) -> [(&'static str, Code); 7] {
    [
        ("open", codes.open),
        ("low", codes.low),
        ("high", codes.high),
        ("advanced", codes.advanced),
        ("retarded", codes.retarded),
        ("slow", codes.slow),
        ("correlation", codes.correlation),
    ]
}

/// What a valve needs and the vehicle does not have.
fn lacking(spec: &VehicleSpec, valve: &ValveSpec) -> Vec<ValveNeed> {
    let elements = &spec.harness.elements;
    let is_part = |id: &Id, kind| spec.part(id).is_some_and(|part| part.kind == kind);
    let coil = elements.iter().find_map(|element| match element {
        HarnessElement::Coil { valve: of, from, to, .. } if *of == valve.id => Some((from, to)),
        _ => None,
    });
    let has_pin_at = |node: &Id| {
        elements.iter().any(|element| match element {
            HarnessElement::Pin { connector, to, .. } => {
                *connector == valve.connector && to == node
            }
            _ => false,
        })
    };
    let has_driver = elements.iter().any(
        |element| matches!(element, HarnessElement::Driver { valve: of, .. } if *of == valve.id),
    );
    let mut lacking = Vec::new();
    let mut need = |what, is_there: bool| {
        if !is_there {
            lacking.push(what);
        }
    };
    need(ValveNeed::Part, is_part(&valve.id, PartKind::Valve));
    need(ValveNeed::Connector, is_part(&valve.connector, PartKind::Connector));
    need(ValveNeed::Coil, coil.is_some());
    // Without a coil there is nothing to say about its pins.
    need(ValveNeed::Pins, coil.is_none_or(|(from, to)| has_pin_at(from) && has_pin_at(to)));
    need(ValveNeed::Driver, has_driver);
    lacking
}
