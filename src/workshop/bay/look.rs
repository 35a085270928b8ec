//! From where a thing is seen best.

use super::camera::{Orbit, Viewpoint};
use super::model::{Model, Thing};
use super::pick::{first_met, pose_of};
use super::pose::Pose;
use crate::vehicle::spec::Id;
use crate::workshop::view::bay::Known;
use bevy::math::Vec3;

/// Directions that are tried, the most usual first: from the front towards the right, and above the horizon [degrees].
const DIRECTIONS: [(f32, f32); 12] = [
    (18.0, 36.0),
    (-18.0, 36.0),
    (8.0, 62.0),
    (50.0, 40.0),
    (-50.0, 40.0),
    (80.0, 22.0),
    (-80.0, 22.0),
    (30.0, 14.0),
    (-30.0, 14.0),
    (125.0, 40.0),
    (-125.0, 40.0),
    (180.0, 55.0),
];
/// Points of a wire that count as its end.
const END_POINTS: usize = 10;
/// How much is shown around the end of a wire [m].
const WIRE_END: f32 = 0.15;
/// Corners of a thing that are looked for.
const SAMPLES: usize = 16;
/// Share of them that is enough.
const ENOUGH: f32 = 0.5;

/// The camera that shows a thing well; the usual one where something hides it from everywhere, so that what is in the
/// way is seen.
#[must_use]
pub fn best_look(model: &Model, known: &Known, id: &Id) -> Option<Orbit> {
    let thing = model.thing(id)?;
    let pose = pose_of(thing, known);
    let [low, high] = thing.bounds_in(pose);
    let size = (high - low).max_element();
    let usual = Viewpoint::Whole.orbit(model.bench);
    let mut best = (0.0, None);
    for ((yaw, pitch), (middle, size, targets)) in DIRECTIONS
        .iter()
        .flat_map(|direction| targets(thing, pose, size).map(move |at| (direction, at)))
    {
        let orbit = Orbit { yaw: yaw.to_radians(), pitch: pitch.to_radians(), ..usual };
        let orbit = orbit.looking_at(middle, size);
        let eye = orbit.eye();
        let is_met = |at: &&Vec3| {
            let direction = (pose.point(**at) - eye).normalize_or(Vec3::NEG_Y);
            first_met(model, known, [eye, direction]) == Some(id)
        };
        let share = targets.iter().filter(is_met).count() as f32 / targets.len().max(1) as f32;
        if best.1.is_none() || share > best.0 {
            best = (share, Some(orbit));
        }
        if share >= ENOUGH {
            break;
        }
    }
    best.1
}

/// What of a thing can be looked at: a point, how much around it has to be seen [m], and what of it should be. A wire is
/// looked at where it leaves the loom, at one end or the other.
fn targets(thing: &Thing, pose: Pose, size: f32) -> impl Iterator<Item = (Vec3, f32, Vec<Vec3>)> {
    let line = &thing.line;
    let end = |points: &[Vec3]| (pose.point(points[points.len() / 2]), WIRE_END, points.to_vec());
    let found = if line.len() < 2 * END_POINTS {
        vec![(thing.middle(pose), size, samples(thing))]
    } else {
        vec![end(&line[line.len() - END_POINTS..]), end(&line[..END_POINTS])]
    };
    found.into_iter()
}

/// Some corners of a thing, spread over it.
fn samples(thing: &Thing) -> Vec<Vec3> {
    let corners: Vec<Vec3> =
        thing.pieces.iter().flat_map(|piece| &piece.solid.corners).copied().collect();
    let every = (corners.len() / SAMPLES).max(1);
    corners.into_iter().step_by(every).collect()
}
