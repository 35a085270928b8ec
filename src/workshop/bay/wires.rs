//! The harness: wires as tubes through a loom, contacts in their plugs, and the points that probes touch.

use super::anchors::{Anchor, Anchors, pin_number};
use super::model::{Sort, Thing};
use super::parts;
use super::piece::{Finish, piece};
use super::pose::Pose;
use super::shape::{smooth, tube};
use crate::vehicle::spec::{HarnessElement, Id, PartKind, VehicleSpec};
use crate::workshop::view::bay::Mark;
use bevy::math::{Vec3, vec3};

/// The loom's line from the fuse box in front of the engine to the control module [m].
pub const LOOM: [Vec3; 6] = [
    vec3(0.53, 0.47, 0.385),
    vec3(0.40, 0.520, 0.330),
    vec3(0.26, 0.565, 0.215),
    vec3(-0.20, 0.565, 0.215),
    vec3(-0.36, 0.500, 0.270),
    vec3(-0.42, 0.455, 0.290),
];
/// Radius of the loom's sleeve [m].
pub const LOOM_RADIUS: f32 = 0.019;
/// Ends nearer to each other than this are joined directly [m].
const DIRECT: f32 = 0.50;
/// A wire with less resistance than this is drawn as thick as a cable [ohm]: engineering estimate.
const CABLE_OHMS: f64 = 0.004;

/// A wire between two nodes.
fn ends(element: &HarnessElement) -> Option<(&Id, &Id, f32)> {
    match element {
        HarnessElement::Wire { from, to, ohms, .. } => {
            Some((from, to, if *ohms < CABLE_OHMS { 0.0105 } else { 0.0052 }))
        }
        HarnessElement::Cable { from, to, mm2, .. } => {
            Some((from, to, if *mm2 > 6.0 { 0.0105 } else { 0.0052 }))
        }
        _ => None,
    }
}

/// Every wire whose ends are somewhere; an end without a place is a splice in the loom.
pub fn wires(spec: &VehicleSpec, anchors: &Anchors) -> Vec<Thing> {
    let mut things = Vec::new();
    let found = spec.harness.elements.iter().filter_map(|element| Some((element, ends(element)?)));
    for (number, (element, (from, to, radius))) in found.enumerate() {
        let route = route(anchors.place(from), anchors.place(to), number);
        let path = smooth(&route, 4);
        let bare = smooth(&bare_stretch(&route), 5);
        let finish = colour(element, spec, number);
        let pieces = vec![
            piece(finish, tube(&path, radius, 10)),
            piece(Finish::Copper, tube(&bare, radius * 1.25, 10)).with(Mark::RubbedThrough),
        ];
        let at = Pose::upright(Vec3::ZERO);
        things.push(Thing {
            id: element.id().clone(),
            sort: Sort::Wire,
            pieces,
            line: path,
            home: at,
            away: at,
            moves_with: element.id().clone(),
        });
    }
    things
}

/// Points on the way from one end to the other.
fn route(from: Option<Anchor>, to: Option<Anchor>, number: usize) -> Vec<Vec3> {
    let out = |anchor: Anchor| anchor.at + anchor.leaves * 0.045;
    if let (Some(one), Some(other)) = (from, to)
        && one.at.distance(other.at) < DIRECT
    {
        let middle = out(one).midpoint(out(other)) + Vec3::Z * 0.05;
        return vec![one.at, out(one), middle, out(other), other.at];
    }
    // Beside the others in the loom.
    let angle = 2.4 * number as f32;
    let beside = vec3(0.0, angle.cos(), angle.sin()) * LOOM_RADIUS * 0.42;
    let loom = smooth(&LOOM, 6);
    let stop = |anchor: Option<Anchor>| match anchor {
        Some(anchor) => nearest(&loom, out(anchor)),
        None => loom.len() / 3,
    };
    let (start, end) = (stop(from), stop(to));
    let mut points = Vec::new();
    if let Some(anchor) = from {
        points.extend([anchor.at, out(anchor)]);
    }
    let mut inside: Vec<Vec3> =
        loom[start.min(end)..=start.max(end)].iter().map(|at| *at + beside).collect();
    if start > end {
        inside.reverse();
    }
    points.extend(inside);
    if let Some(anchor) = to {
        points.extend([out(anchor), anchor.at]);
    }
    points
}

/// The number of the point that is nearest.
fn nearest(line: &[Vec3], point: Vec3) -> usize {
    let distance = |k: &usize| line[*k].distance(point);
    (0..line.len()).min_by(|one, other| distance(one).total_cmp(&distance(other))).unwrap_or(0)
}

/// The stretch that is bare where insulation is rubbed through: where the wire leaves the loom.
fn bare_stretch(route: &[Vec3]) -> Vec<Vec3> {
    let last = route.len() - 1;
    let (one, other) = (route[last.saturating_sub(2)], route[last - 1]);
    vec![one.lerp(other, 0.45), one.lerp(other, 0.62), one.lerp(other, 0.8)]
}

fn colour(element: &HarnessElement, spec: &VehicleSpec, number: usize) -> Finish {
    let Some((from, to, radius)) = ends(element) else { return Finish::White };
    let battery = spec.harness.elements.iter().find_map(|element| match element {
        HarnessElement::Battery { plus, minus, .. } => Some((plus, minus)),
        _ => None,
    });
    match battery {
        Some((plus, _)) if from == plus || to == plus => Finish::Red,
        Some((_, minus)) if from == minus || to == minus => Finish::BlackPlastic,
        _ if radius > 0.01 => Finish::BlackPlastic,
        _ => {
            [Finish::Yellow, Finish::Blue, Finish::Green, Finish::White, Finish::Violet][number % 5]
        }
    }
}

/// The contacts in the plugs.
pub fn pins(spec: &VehicleSpec, things: &[Thing]) -> Vec<Thing> {
    let mut found = Vec::new();
    for element in &*spec.harness.elements {
        let HarnessElement::Pin { id, connector, .. } = element else { continue };
        let Some(plug) = things.iter().find(|thing| thing.id == *connector) else { continue };
        let number = pin_number(id, connector, spec);
        let side = if number.is_multiple_of(2) { -0.010 } else { 0.010 };
        let foot = Pose::upright(vec3(side, 0.012 * (number / 2) as f32, 0.0));
        found.push(Thing {
            id: id.clone(),
            sort: Sort::Pin,
            pieces: parts::pin(),
            line: Vec::new(),
            home: plug.home.and(foot),
            away: plug.away.and(foot),
            moves_with: connector.clone(),
        });
    }
    found
}

/// The points that probes touch: each beside the thing at which its node is.
pub fn test_points(spec: &VehicleSpec, things: &[Thing], anchors: &Anchors) -> Vec<Thing> {
    let mut found: Vec<Thing> = Vec::new();
    for point in &spec.test_points {
        let carrier = carrier(&point.node, point.unplugged.as_ref(), spec, things);
        let taken = found.iter().filter(|other| carrier.is_some_and(|c| c.id == other.moves_with));
        let number = taken.count();
        let side = if number.is_multiple_of(2) { -0.011 } else { 0.011 };
        let (home, away, moves_with) = if let Some(thing) = carrier {
            let foot = if spec.part(&thing.id).is_some_and(|part| part.kind == PartKind::Valve) {
                Pose::upright(parts::SOCKET + vec3(side, 0.0, 0.024)).and(facing_front())
            } else {
                Pose::upright(vec3(side, 0.024, 0.034))
            };
            (thing.home.and(foot), thing.away.and(foot), thing.id.clone())
        } else {
            // One that is only a splice lies on the loom.
            let splice = Pose::upright(LOOM[1] + Vec3::Y * (LOOM_RADIUS + 0.004));
            let at = anchors.place(&point.node).map_or(splice, |anchor| anchor.probe);
            (at, at, point.id.clone())
        };
        let sort = Sort::TestPoint;
        let pieces = parts::test_point();
        let (id, line) = (point.id.clone(), Vec::new());
        found.push(Thing { id, sort, pieces, line, home, away, moves_with });
    }
    found
}

fn facing_front() -> Pose {
    Pose { at: Vec3::ZERO, turn: bevy::math::Quat::from_rotation_x(90_f32.to_radians()) }
}

/// The thing that carries a point: the valve for its own pins, the plug for its back.
fn carrier<'a>(
    node: &Id,
    unplugged: Option<&Id>,
    spec: &VehicleSpec,
    things: &'a [Thing],
) -> Option<&'a Thing> {
    let found = spec.harness.elements.iter().find_map(|element| match element {
        HarnessElement::Pin { connector, from, to, .. } if from == node || to == node => {
            Some((connector, to == node))
        }
        _ => None,
    });
    let (connector, is_own) = found?;
    let valve = spec.valves.iter().find(|valve| valve.connector == *connector);
    let id = match valve {
        Some(valve) if is_own || unplugged.is_some() => &valve.id,
        _ => connector,
    };
    things.iter().find(|thing| thing.id == *id)
}
