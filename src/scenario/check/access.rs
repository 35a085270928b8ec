//! Parts that come off, and test points: names, what is in the way, fuses, torques.

use super::names;
use crate::scenario::findings::Findings;
use crate::scenario::problem::{ProblemKind, Thing};
use crate::units::Minutes;
use crate::vehicle::spec::{Care, HarnessElement, Id, PartKind, VehicleSpec};
use std::collections::BTreeSet;

/// Longest time to take a part off or put it back [min]: a working day.
const LONGEST_MINUTES: f64 = 480.0;
/// Tightening torque of anything on a valve cover or an engine [N m].
const TORQUE_NM: (f64, f64) = (0.5, 400.0);

/// Checks parts and test points.
pub(super) fn check(findings: &mut Findings<'_>, spec: &VehicleSpec) {
    let part_ids = || spec.parts.iter().map(|part| &part.id);
    let connectors =
        || spec.parts.iter().filter(|part| part.kind == PartKind::Connector).map(|part| &part.id);
    let fuses = || {
        spec.harness.elements.iter().filter_map(|element| match element {
            HarnessElement::Fuse { id, .. } => Some(id),
            _ => None,
        })
    };
    names(findings, ("vehicle.parts", "id"), Thing::Part, part_ids());
    for (number, part) in spec.parts.iter().enumerate() {
        let path = |field: &str| format!("vehicle.parts[{number}].{field}");
        behind(findings, &path("behind"), &part.behind, spec);
        for (field, Minutes(minutes)) in [("remove", part.remove), ("refit", part.refit)] {
            findings.number(&path(field), f64::from(minutes), (0.0, LONGEST_MINUTES));
        }
        if let Some(torque) = part.torque_nm {
            findings.number(&path("torque_nm"), torque, TORQUE_NM);
        } else if part.care.contains(&Care::Torque) {
            findings.add(&path("care"), ProblemKind::NoTorque { part: part.id.clone() });
        }
        if part.kind == PartKind::Fuse {
            findings.name(&path("id"), Thing::Fuse, &part.id, fuses());
        }
    }
    circles(findings, spec);
    let tap = &spec.oil.gauge_tap;
    behind(findings, "vehicle.oil.gauge_tap.behind", &tap.behind, spec);
    for (field, Minutes(minutes)) in [("fit", tap.fit), ("remove", tap.remove)] {
        let path = format!("vehicle.oil.gauge_tap.{field}");
        findings.number(&path, f64::from(minutes), (0.0, LONGEST_MINUTES));
    }

    let points = spec.test_points.iter().map(|point| &point.id);
    names(findings, ("vehicle.test_points", "id"), Thing::TestPoint, points);
    let nodes: BTreeSet<&Id> =
        spec.harness.elements.iter().flat_map(HarnessElement::nodes).collect();
    for (number, point) in spec.test_points.iter().enumerate() {
        let path = |field: &str| format!("vehicle.test_points[{number}].{field}");
        findings.name(&path("node"), Thing::Node, &point.node, nodes.iter().copied());
        behind(findings, &path("behind"), &point.behind, spec);
        if let Some(connector) = &point.unplugged {
            findings.name(&path("unplugged"), Thing::Connector, connector, connectors());
        }
    }
}

fn behind(findings: &mut Findings<'_>, path: &str, behind: &[Id], spec: &VehicleSpec) {
    for (number, blocker) in behind.iter().enumerate() {
        let path = format!("{path}[{number}]");
        findings.name(&path, Thing::Part, blocker, spec.parts.iter().map(|part| &part.id));
    }
}

/// Notes parts each of which must come off before the others: none of them ever could.
fn circles(findings: &mut Findings<'_>, spec: &VehicleSpec) {
    let mut settled = BTreeSet::new();
    for (number, part) in spec.parts.iter().enumerate() {
        let mut way = Vec::new();
        if let Some(circle) = circle_from(spec, &part.id, &mut way, &mut settled) {
            let path = format!("vehicle.parts[{number}].behind");
            findings.add(&path, ProblemKind::BlockersInACircle { parts: circle });
        }
    }
}

/// Follows what is in the way of `part`, with `way` the parts that led here; every part is settled
/// once, so that each circle is found once. The list is at most a few hundred long, which bounds
/// the depth.
fn circle_from<'s>(
    spec: &'s VehicleSpec,
    part: &'s Id,
    way: &mut Vec<&'s Id>,
    settled: &mut BTreeSet<&'s Id>,
) -> Option<Vec<Id>> {
    if let Some(start) = way.iter().position(|earlier| *earlier == part) {
        return Some(way.iter().skip(start).map(|id| (*id).clone()).collect());
    }
    if !settled.insert(part) {
        return None;
    }
    way.push(part);
    let mut found = None;
    for blocker in spec.part(part).map_or(&[][..], |part| &part.behind) {
        let circle = circle_from(spec, blocker, way, settled);
        found = found.or(circle);
    }
    way.pop();
    found
}
