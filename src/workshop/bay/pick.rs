//! What a ray meets first.

use super::model::{Model, Thing};
use super::piece::{Piece, Shown};
use super::pose::Pose;
use super::shape::Solid;
use crate::vehicle::spec::Id;
use crate::workshop::view::bay::Known;
use bevy::math::Vec3;

/// The named thing that a ray meets first, things as they are by what is known; nothing where scenery is nearer.
#[must_use]
pub fn first_met<'a>(
    model: &'a Model,
    known: &Known,
    [eye, direction]: [Vec3; 2],
) -> Option<&'a Id> {
    let mut nearest = (f32::INFINITY, None);
    for thing in &model.things {
        let pose = thing.pose(known.is_off(&thing.moves_with));
        let ray = [pose.inside(eye), pose.turn.inverse() * direction];
        if let Some(distance) = distance_to(thing, known, ray)
            && distance < nearest.0
        {
            nearest = (distance, Some(&thing.id));
        }
    }
    let before = |piece: &Piece| {
        meets(&piece.solid, [eye, direction]).is_some_and(|distance| distance < nearest.0)
    };
    // What is a hair's breadth inside a wall was drawn on it.
    if model.scenery.iter().any(before) { None } else { nearest.1 }
}

fn distance_to(thing: &Thing, known: &Known, ray: [Vec3; 2]) -> Option<f32> {
    box_met(thing.bounds(), ray)?;
    thing
        .pieces
        .iter()
        .filter(|piece| known.is_shown(&thing.id, piece.shown))
        .filter_map(|piece| meets(&piece.solid, ray))
        .min_by(f32::total_cmp)
}

impl Known {
    /// Whether a piece of a thing is there.
    #[must_use]
    pub fn is_shown(&self, thing: &Id, shown: Shown) -> bool {
        match shown {
            Shown::Always => true,
            Shown::With(mark) => self.has(thing, mark),
            Shown::Without(mark) => !self.has(thing, mark),
        }
    }
}

/// Whether a ray meets a box at all, and how far off.
#[must_use]
pub fn box_met([low, high]: [Vec3; 2], [eye, direction]: [Vec3; 2]) -> Option<f32> {
    let inverse = direction.recip();
    let (one, other) = ((low - eye) * inverse, (high - eye) * inverse);
    let enters = one.min(other).max_element().max(0.0);
    let leaves = one.max(other).min_element();
    (enters <= leaves).then_some(enters)
}

/// How far along a ray a solid is met from outside.
#[must_use]
pub fn meets(solid: &Solid, ray: [Vec3; 2]) -> Option<f32> {
    box_met(solid.bounds(), ray)?;
    let hits = solid.faces.iter().filter_map(|face| triangle_met(solid.triangle(*face), ray));
    hits.min_by(f32::total_cmp)
}

/// The test of Möller and Trumbore for a triangle that is seen from outside.
fn triangle_met([a, b, c]: [Vec3; 3], [eye, direction]: [Vec3; 2]) -> Option<f32> {
    let (side, other) = (b - a, c - a);
    let across = direction.cross(other);
    let area = side.dot(across);
    if area <= f32::EPSILON * side.length() * other.length() {
        return None;
    }
    let from = eye - a;
    let u = from.dot(across) / area;
    let up = from.cross(side);
    let v = direction.dot(up) / area;
    let distance = other.dot(up) / area;
    (u >= 0.0 && v >= 0.0 && u + v <= 1.0 && distance > 0.0).then_some(distance)
}

/// Where a thing is on the bench or in place, by what is known.
#[must_use]
pub fn pose_of(thing: &Thing, known: &Known) -> Pose {
    thing.pose(known.is_off(&thing.moves_with))
}
