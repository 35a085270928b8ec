//! Everything has a shape and a place of its own.

use super::{bays, lies_open};
use crate::vehicle::spec::{HarnessElement, Id, PartKind, VehicleSpec};
use crate::workshop::bay::model::{Sort, Thing};
use crate::workshop::bay::pose::Pose;
use bevy::math::Vec3;
use std::collections::{BTreeMap, BTreeSet};

/// How far boxes around two things may reach into each other before they count as one in the other [m].
const TOUCH: f32 = 0.004;

/// Boxes around the pieces of a thing.
fn boxes(thing: &Thing, pose: Pose) -> Vec<[Vec3; 2]> {
    let one = |pieces: &crate::workshop::bay::piece::Piece| {
        let alone = Thing { pieces: vec![pieces.clone()], ..thing.clone() };
        alone.bounds_in(pose)
    };
    thing.pieces.iter().map(one).collect()
}

fn overlap(one: &[[Vec3; 2]], other: &[[Vec3; 2]]) -> bool {
    let meet = |[low, high]: &[Vec3; 2], [least, most]: &[Vec3; 2]| {
        (high.min(*most) - low.max(*least)).min_element() > TOUCH
    };
    one.iter().any(|one| other.iter().any(|other| meet(one, other)))
}

/// Whether one part is in the way of the other, at whatever distance: a cover holds what it covers.
fn hides(spec: &VehicleSpec, one: &Id, other: &Id) -> bool {
    let behind = |part: &Id| spec.part(part).map_or(&[][..], |part| &part.behind);
    let mut reached = BTreeSet::new();
    let mut left = vec![other];
    while let Some(part) = left.pop() {
        if reached.insert(part) {
            left.extend(behind(part));
        }
    }
    reached.contains(one)
}

#[test]
fn every_part_and_every_place_of_every_vehicle_has_a_shape() {
    for (spec, model) in bays() {
        let parts = spec.parts.iter().map(|part| &part.id);
        let points = spec.test_points.iter().map(|point| &point.id);
        let open = spec.harness.elements.iter().filter(|element| {
            // A contact is drawn in its plug; without one there is nowhere to draw it.
            let plug = |connector: &Id| spec.part(connector).is_some();
            lies_open(element)
                && !matches!(element, HarnessElement::Pin { connector, .. } if !plug(connector))
        });
        for id in parts.chain(points).chain(open.map(HarnessElement::id)) {
            let thing = model.thing(id).unwrap_or_else(|| panic!("{id} has no place"));
            assert!(thing.pieces.iter().any(|piece| !piece.solid.faces.is_empty()), "{id}");
        }
        let mut names = BTreeSet::new();
        for thing in &model.things {
            assert!(names.insert(&thing.id), "{} is there twice", thing.id);
        }
    }
}

#[test]
fn no_two_parts_are_in_each_other() {
    for (spec, model) in bays() {
        let is_solid =
            |thing: &&Thing| matches!(thing.sort, Sort::Part | Sort::Connector | Sort::Fixed);
        let solid: Vec<&Thing> = model.things.iter().filter(is_solid).collect();
        for (k, one) in solid.iter().enumerate() {
            for other in &solid[k + 1..] {
                if hides(&spec, &one.id, &other.id) || hides(&spec, &other.id, &one.id) {
                    continue;
                }
                // A plug sits on its valve.
                let is_plug_of = |one: &Thing, other: &Thing| {
                    spec.valve(&one.id).is_some_and(|valve| valve.connector == other.id)
                };
                if is_plug_of(one, other) || is_plug_of(other, one) {
                    continue;
                }
                // What the wiring names is behind no part by its file, and under a lid all the same.
                let is_cover = |thing: &Thing| {
                    spec.part(&thing.id).is_some_and(|part| part.kind == PartKind::Cover)
                };
                if [(one, other), (other, one)]
                    .iter()
                    .any(|(one, other)| is_cover(one) && other.sort == Sort::Fixed)
                {
                    continue;
                }
                let meet = overlap(&boxes(one, one.home), &boxes(other, other.home));
                assert!(!meet, "{} and {}", one.id, other.id);
            }
        }
    }
}

#[test]
fn on_the_bench_everything_lies_apart_and_on_the_top() {
    for (_, model) in bays() {
        let parts: Vec<&Thing> =
            model.things.iter().filter(|thing| thing.sort == Sort::Part).collect();
        let [middle, size] = model.bench;
        for (k, one) in parts.iter().enumerate() {
            let [low, high] = one.bounds_in(one.away);
            assert!((low.y - middle.y).abs() < 1e-3, "{} floats at {}", one.id, low.y);
            for (low, high, middle, size) in
                [(low.x, high.x, middle.x, size.x), (low.z, high.z, middle.z, size.z)]
            {
                let inside = low > middle - size / 2.0 && high < middle + size / 2.0;
                assert!(inside, "{} hangs over the edge", one.id);
            }
            for other in &parts[k + 1..] {
                let meet = overlap(&[one.bounds_in(one.away)], &[other.bounds_in(other.away)]);
                assert!(!meet, "{} and {}", one.id, other.id);
            }
        }
    }
}

#[test]
fn wires_that_meet_at_a_node_meet_in_the_bay() {
    for (spec, model) in bays() {
        let mut ends: BTreeMap<&Id, Vec<(Vec3, &Id)>> = BTreeMap::new();
        for element in &*spec.harness.elements {
            let (HarnessElement::Wire { id, from, to, .. }
            | HarnessElement::Cable { id, from, to, .. }) = element
            else {
                continue;
            };
            let line = &model.thing(id).unwrap().line;
            let length: f32 = line.windows(2).map(|pair| pair[0].distance(pair[1])).sum();
            assert!(length > 0.08, "{id} is {length} m long");
            ends.entry(from).or_default().push((line[0], id));
            ends.entry(to).or_default().push((line[line.len() - 1], id));
        }
        for (node, places) in ends {
            for (place, id) in &places {
                // A splice is somewhere in the loom, which is as thick as a thumb.
                let apart = place.distance(places[0].0);
                assert!(apart < 0.03, "{id} ends {apart} m from {node}");
            }
        }
    }
}

#[test]
fn what_a_part_carries_goes_with_it() {
    for (spec, model) in bays() {
        for point in &spec.test_points {
            let thing = model.thing(&point.id).unwrap();
            let Some(carrier) = model.thing(&thing.moves_with) else { continue };
            let apart = |off: bool| thing.pose(off).at.distance(carrier.pose(off).at);
            assert!((apart(false) - apart(true)).abs() < 1e-4, "{}", point.id);
        }
    }
}

#[test]
fn an_unplugged_connector_hangs_clear_of_its_valve() {
    for (spec, model) in bays() {
        for part in spec.parts.iter().filter(|part| part.kind == PartKind::Connector) {
            let plug = model.thing(&part.id).unwrap();
            let moved = plug.home.at.distance(plug.away.at);
            assert!((0.02..0.25).contains(&moved), "{} moves {moved} m", part.id);
        }
    }
}
