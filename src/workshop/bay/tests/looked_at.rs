//! What is seen from where, and what a ray meets.

use super::bays;
use crate::vehicle::spec::{Id, VehicleSpec};
use crate::workshop::bay::camera::{Orbit, Viewpoint};
use crate::workshop::bay::model::Model;
use crate::workshop::bay::pick::{box_met, first_met, meets, pose_of};
use crate::workshop::bay::pose::Pose;
use crate::workshop::bay::shape::ball;
use crate::workshop::view::bay::{BayAction, BayView, Known};
use bevy::math::{Vec2, Vec3, vec2, vec3};
use proptest::prelude::*;
use std::sync::Arc;

const RATIO: f32 = 1.6;

/// Everything that hides a place taken off.
fn laid_open(spec: &VehicleSpec, id: &Id) -> Known {
    let point = spec.test_point(id);
    let mut left: Vec<Id> = match (spec.part(id), point) {
        (Some(part), _) => part.behind.clone(),
        (None, Some(point)) => point.behind.iter().chain(&point.unplugged).cloned().collect(),
        (None, None) => {
            // Contacts show in a plug that is off; fuses and relays under their lid.
            let mut parts = spec.parts.iter();
            parts.by_ref().map(|part| part.id.clone()).filter(|part| part != id).collect()
        }
    };
    let mut known = Known::default();
    while let Some(part) = left.pop() {
        if let Some(spec) = spec.part(&part) {
            left.extend(spec.behind.iter().cloned());
        }
        known.off.insert(part);
    }
    known
}

/// The share of a grid around a thing in the picture in which it is met.
fn share_met(model: &Model, known: &Known, orbit: Orbit, id: &Id) -> f32 {
    const GRID: u16 = 16;
    let thing = model.thing(id).unwrap();
    let pose = pose_of(thing, known);
    if !thing.line.is_empty() {
        // Too thin for a grid.
        let is_met = |at: &&Vec3| {
            let eye = orbit.eye();
            first_met(model, known, [eye, (pose.point(**at) - eye).normalize()]) == Some(id)
        };
        let met = thing.line.iter().filter(is_met).count();
        return met as f32 / thing.line.len() as f32;
    }
    let corners = thing.pieces.iter().flat_map(|piece| &piece.solid.corners);
    let seen = corners.filter_map(|at| orbit.seen(pose.point(*at), RATIO));
    let seen = seen.filter(|at| at.cmpge(Vec2::ZERO).all() && at.cmple(Vec2::ONE).all());
    let (low, high) =
        seen.fold((Vec2::ONE, Vec2::ZERO), |(low, high), at| (low.min(at), high.max(at)));
    let mut met = 0;
    for row in 0..GRID {
        for column in 0..GRID {
            let share = vec2(f32::from(column) + 0.5, f32::from(row) + 0.5) / f32::from(GRID);
            let at = low + (high - low) * share;
            met += u16::from(first_met(model, known, orbit.ray(at, RATIO)) == Some(id));
        }
    }
    f32::from(met) / f32::from(GRID * GRID)
}

#[test]
fn every_place_is_in_the_picture_when_one_goes_to_it() {
    let (spec, model) = bays().swap_remove(0);
    let model = Arc::new(model);
    for thing in &model.things {
        let mut bay = BayView::new(Arc::clone(&model), Vec::new());
        bay.known = laid_open(&spec, &thing.id);
        bay.look(&BayAction::GoTo(thing.id.clone()));
        let share = share_met(&model, &bay.known, bay.orbit, &thing.id);
        assert!(share > 0.02, "{} takes {share} of its place in the picture", thing.id);
    }
}

#[test]
fn the_cover_is_met_until_it_is_off() {
    let (_, model) = bays().swap_remove(0);
    let orbit = Viewpoint::Whole.orbit(model.bench);
    let cover = Id::from("engine-cover");
    let thing = model.thing(&cover).unwrap();
    let at = orbit.seen(thing.middle(thing.home), RATIO).unwrap();
    let mut known = Known::default();
    assert_eq!(first_met(&model, &known, orbit.ray(at, RATIO)), Some(&cover));
    known.off.insert(cover.clone());
    assert_ne!(first_met(&model, &known, orbit.ray(at, RATIO)), Some(&cover));
    let bench = Viewpoint::Bench.orbit(model.bench);
    let at = bench.seen(thing.middle(pose_of(thing, &known)), RATIO).unwrap();
    assert_eq!(first_met(&model, &known, bench.ray(at, RATIO)), Some(&cover));
}

#[test]
fn closed_form_a_ray_meets_a_ball_at_its_radius() {
    let ball = ball(1.0);
    let found = meets(&ball, [vec3(0.01, 0.02, 5.0), -Vec3::Z]).unwrap();
    assert!((found - 4.0).abs() < 0.03, "{found}");
    assert_eq!(meets(&ball, [vec3(0.0, 0.0, 5.0), Vec3::Z]), None);
    assert_eq!(meets(&ball, [vec3(1.01, 0.0, 5.0), -Vec3::Z]), None);
    // From inside nothing is met: a skin is seen from outside.
    assert_eq!(meets(&ball, [Vec3::ZERO, Vec3::X]), None);
}

#[test]
fn limit_a_box_is_met_from_inside_at_once_and_not_behind() {
    let unit = [Vec3::ZERO, Vec3::ONE];
    assert_eq!(box_met(unit, [Vec3::splat(0.5), Vec3::X]), Some(0.0));
    assert_eq!(box_met(unit, [vec3(2.0, 0.5, 0.5), Vec3::X]), None);
    assert_eq!(box_met(unit, [vec3(-2.0, 0.5, 0.5), Vec3::X]), Some(2.0));
}

#[test]
fn limit_a_way_begins_and_ends_where_it_should() {
    let home = Pose::facing(vec3(0.1, 0.2, 0.3), 20.0);
    let away = Pose::facing(vec3(1.1, 0.5, 0.0), 80.0);
    for (share, wanted) in [(0.0, home), (1.0, away), (7.0, away)] {
        let now = home.towards(away, share);
        assert!(now.at.distance(wanted.at) < 1e-6 && now.turn.angle_between(wanted.turn) < 1e-3);
    }
    assert!(home.towards(away, 0.5).at.y > away.at.y, "it is not lifted");
}

fn orbits() -> impl Strategy<Value = Orbit> {
    (-4.0_f32..4.0, 0.05_f32..1.4, 0.3_f32..5.0, -0.8_f32..0.8, 0.1_f32..0.9).prop_map(
        |(yaw, pitch, distance, x, y)| Orbit { target: vec3(x, y, 0.1), yaw, pitch, distance },
    )
}

proptest! {
    #[test]
    fn prop_a_ray_through_a_point_of_the_picture_is_seen_there(
        orbit in orbits(), x in 0.0_f32..1.0, y in 0.0_f32..1.0, far in 0.1_f32..4.0,
    ) {
        let [eye, direction] = orbit.ray(vec2(x, y), RATIO);
        let seen = orbit.seen(eye + direction * far, RATIO).unwrap();
        prop_assert!(seen.distance(vec2(x, y)) < 1e-3, "{seen} for {x} {y}");
    }

    #[test]
    fn prop_the_camera_stays_above_the_floor_and_in_its_bounds(
        orbit in orbits(), drags in proptest::collection::vec((-3.0_f32..3.0, -3.0_f32..3.0), 0..8),
    ) {
        let mut now = orbit;
        for (k, (x, y)) in drags.into_iter().enumerate() {
            let drag = Vec2::new(x, y);
            now = if k % 2 == 0 { now.turned(drag) } else { now.shifted(drag).nearer(1.0 + y.abs()) };
            prop_assert!(now.eye().y > 0.0, "{now:?}");
            prop_assert!((0.28..=6.0).contains(&now.distance), "{now:?}");
            prop_assert!(now.yaw.abs() <= core::f32::consts::PI + 1e-3, "{now:?}");
        }
    }

    #[test]
    fn prop_a_camera_on_its_way_turns_the_shorter_way(one in orbits(), other in orbits()) {
        let half = one.towards(other, 0.5);
        prop_assert!((half.yaw - one.yaw).abs() <= core::f32::consts::FRAC_PI_2 + 1e-3);
        let end = one.towards(other, 1.0);
        prop_assert!(end.eye().distance(other.eye()) < 1e-2);
    }
}
