//! The wiring: names, figures, and whether current can flow where the vehicle needs it.

use super::{names, well_named};
use crate::physics::wire;
use crate::scenario::findings::{Findings, nearest};
use crate::scenario::problem::{HarnessNeed, ProblemKind, Thing};
use crate::vehicle::spec::{HarnessElement, Id, LoadOhms, PartKind, VehicleSpec};
use std::collections::{BTreeMap, BTreeSet};

/// Resistances that the solver takes without losing digits [ohm]: a tenth of a milliohm, which is a
/// short thick cable, to the ten megohms of a meter's input.
const OHMS: (f64, f64) = (1e-4, 1e7);
/// Ratings of blade fuses [A].
const RATING: (f64, f64) = (0.5, 120.0);

/// Checks the wiring.
pub(super) fn check(findings: &mut Findings<'_>, spec: &VehicleSpec) {
    let elements = &spec.harness.elements;
    let list = "vehicle.harness.elements";
    names(findings, (list, "id"), Thing::Element, elements.iter().map(HarnessElement::id));
    for (number, element) in elements.iter().enumerate() {
        let path = format!("{list}[{number}]");
        for node in element.nodes() {
            let field = field_of(element, node);
            well_named(findings, &format!("{path}.{field}"), node);
        }
        if let Some(node) = repeated(&element.nodes()) {
            findings.add(&path, ProblemKind::SameEnds { node: node.clone() });
        }
        for (field, ohms) in resistances(element) {
            findings.number(&format!("{path}.{field}"), ohms, OHMS);
        }
        if let HarnessElement::Cable { metres, mm2, .. } = element {
            findings.number(&format!("{path}.metres"), *metres, wire::METRES);
            findings.number(&format!("{path}.mm2"), *mm2, wire::MM2);
        }
        if let HarnessElement::Fuse { rating, .. } = element {
            findings.number(&format!("{path}.rating"), *rating, RATING);
        }
        owners(findings, &path, element, spec);
    }
    needs(findings, spec);
    ways(findings, spec);
}

/// The first node that an element touches twice.
fn repeated<'n>(nodes: &[&'n Id]) -> Option<&'n Id> {
    let mut seen = BTreeSet::new();
    nodes.iter().copied().find(|node| !seen.insert(*node))
}

/// The field of an element that holds a node.
fn field_of(element: &HarnessElement, node: &Id) -> &'static str {
    let fields: &[(&'static str, &Id)] = match element {
        HarnessElement::Battery { plus, minus, .. }
        | HarnessElement::Alternator { plus, minus, .. }
        | HarnessElement::Starter { plus, minus, .. } => &[("plus", plus), ("minus", minus)],
        HarnessElement::Wire { from, to, .. }
        | HarnessElement::Cable { from, to, .. }
        | HarnessElement::Fuse { from, to, .. }
        | HarnessElement::RelayContact { from, to, .. }
        | HarnessElement::Pin { from, to, .. }
        | HarnessElement::Coil { from, to, .. }
        | HarnessElement::Load { from, to, .. } => &[("from", from), ("to", to)],
        HarnessElement::Driver { pin, supply, ground, .. } => {
            &[("pin", pin), ("supply", supply), ("ground", ground)]
        }
        HarnessElement::ModuleSupply { supply, ground, rail, .. } => {
            &[("supply", supply), ("ground", ground), ("rail", rail)]
        }
    };
    fields.iter().find(|(_, name)| *name == node).map_or("id", |(field, _)| field)
}

fn resistances(element: &HarnessElement) -> Vec<(&'static str, f64)> {
    let load = |load: &LoadOhms| {
        let running = load.running.map(|ohms| ("load.running", ohms));
        [("load.key_off", load.key_off), ("load.key_on", load.key_on)]
            .into_iter()
            .chain(running)
            .collect()
    };
    match element {
        HarnessElement::Wire { ohms, .. }
        | HarnessElement::Fuse { ohms, .. }
        | HarnessElement::RelayContact { ohms, .. }
        | HarnessElement::Pin { ohms, .. } => vec![("ohms", *ohms)],
        HarnessElement::Driver { on_ohms, off_ohms, sense_ohms, bias_ohms, .. } => vec![
            ("on_ohms", *on_ohms),
            ("off_ohms", *off_ohms),
            ("sense_ohms", *sense_ohms),
            ("bias_ohms", *bias_ohms),
        ],
        HarnessElement::ModuleSupply { load: ohms, .. }
        | HarnessElement::Load { load: ohms, .. } => load(ohms),
        HarnessElement::Battery { .. }
        | HarnessElement::Alternator { .. }
        | HarnessElement::Cable { .. }
        | HarnessElement::Starter { .. }
        | HarnessElement::Coil { .. } => Vec::new(),
    }
}

/// Checks that an element's connector or valve exists.
fn owners(findings: &mut Findings<'_>, path: &str, element: &HarnessElement, spec: &VehicleSpec) {
    match element {
        HarnessElement::Pin { connector, .. } => {
            let connectors =
                spec.parts.iter().filter(|part| part.kind == PartKind::Connector).map(|p| &p.id);
            findings.name(&format!("{path}.connector"), Thing::Connector, connector, connectors);
        }
        HarnessElement::Coil { valve, .. } | HarnessElement::Driver { valve, .. } => {
            let valves = spec.valves.iter().map(|valve| &valve.id);
            findings.name(&format!("{path}.valve"), Thing::Valve, valve, valves);
        }
        _ => {}
    }
}

/// Notes that no element is of a sort, and every one after the first.
fn just_one(
    findings: &mut Findings<'_>,
    spec: &VehicleSpec,
    what: HarnessNeed,
    is_sort: impl Fn(&HarnessElement) -> bool,
) {
    let list = "vehicle.harness.elements";
    let elements = spec.harness.elements.iter().enumerate();
    let mut of_sort = elements.filter(|(_, element)| is_sort(element));
    if of_sort.next().is_none() {
        findings.add(list, ProblemKind::HarnessLacks { what });
    }
    for (number, element) in of_sort {
        let kind = ProblemKind::Repeated { thing: Thing::Element, name: element.id().to_string() };
        findings.add(&format!("{list}[{number}]"), kind);
    }
}

/// Checks for what every wiring needs: one battery, one supply of the module, two named nodes.
fn needs(findings: &mut Findings<'_>, spec: &VehicleSpec) {
    let list = "vehicle.harness.elements";
    let elements = &spec.harness.elements;
    just_one(findings, spec, HarnessNeed::Battery, |element| {
        matches!(element, HarnessElement::Battery { .. })
    });
    just_one(findings, spec, HarnessNeed::ModuleSupply, |element| {
        matches!(element, HarnessElement::ModuleSupply { .. })
    });
    let nodes: BTreeSet<&Id> = elements.iter().flat_map(HarnessElement::nodes).collect();
    for (node, what) in
        [("battery-minus", HarnessNeed::BatteryMinus), ("engine-ground", HarnessNeed::EngineGround)]
    {
        if !nodes.iter().any(|known| **known == *node) {
            findings.add(list, ProblemKind::HarnessLacks { what });
        }
    }
    let grounds: BTreeSet<&Id> = elements
        .iter()
        .filter_map(|element| match element {
            HarnessElement::ModuleSupply { ground, .. } => Some(ground),
            _ => None,
        })
        .collect();
    for (number, element) in elements.iter().enumerate() {
        if let HarnessElement::Driver { ground, .. } = element
            && !grounds.contains(ground)
        {
            let path = format!("{list}[{number}].ground");
            findings.add(&path, ProblemKind::HarnessLacks { what: HarnessNeed::DriverGround });
        }
    }
}

/// Notes nodes at which one element ends, and nodes that no way connects with the rest.
fn ways(findings: &mut Findings<'_>, spec: &VehicleSpec) {
    let elements = &spec.harness.elements;
    let mut ends: BTreeMap<&Id, Vec<usize>> = BTreeMap::new();
    for (number, element) in elements.iter().enumerate() {
        for node in element.nodes() {
            ends.entry(node).or_default().push(number);
        }
    }
    // The drivers' bias resistors hang on the rail without saying so.
    let rails: BTreeSet<&Id> = elements
        .iter()
        .filter_map(|element| match element {
            HarnessElement::ModuleSupply { rail, .. } => Some(rail),
            _ => None,
        })
        .collect();
    let mut reached: BTreeSet<&Id> = BTreeSet::new();
    let mut next: Vec<&Id> =
        ends.keys().filter(|node| ***node == *"battery-minus").copied().collect();
    while let Some(node) = next.pop() {
        if reached.insert(node) {
            let touching = ends.get(node).map_or(&[][..], Vec::as_slice);
            next.extend(touching.iter().filter_map(|at| elements.get(*at)).flat_map(|e| e.nodes()));
        }
    }
    for (node, touching) in &ends {
        let Some((number, element)) =
            touching.first().and_then(|at| Some((*at, elements.get(*at)?)))
        else {
            continue;
        };
        let path = format!("vehicle.harness.elements[{number}].{}", field_of(element, node));
        if touching.len() == 1 && !rails.contains(node) {
            let others = ends.keys().map(|other| other.as_str());
            let nearest = nearest(node.as_str(), others);
            findings.add(&path, ProblemKind::HangingNode { node: (*node).clone(), nearest });
        } else if !reached.is_empty() && !reached.contains(node) {
            findings.add(&path, ProblemKind::IslandNode { node: (*node).clone() });
        }
    }
}
