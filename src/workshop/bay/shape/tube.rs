//! Hoses, wires and pipes: a circle carried along a path.

use super::loft::{End, loft};
use super::solid::Solid;
use bevy::math::{Quat, Vec3};
use core::f32::consts::TAU;

/// A tube of one radius along a path [m].
#[must_use]
pub fn tube(path: &[Vec3], radius: f32, around: usize) -> Solid {
    along(path, around, |_| radius)
}

/// A tube with a fold at every `pitch` of its length, `depth` deep [m].
#[must_use]
pub fn bellows(path: &[Vec3], radius: f32, depth: f32, pitch: f32, around: usize) -> Solid {
    along(path, around, |length| radius - depth * (0.5 - 0.5 * (TAU * length / pitch).cos()))
}

fn along(path: &[Vec3], around: usize, radius: impl Fn(f32) -> f32) -> Solid {
    if path.len() < 2 {
        return Solid::default();
    }
    let directions: Vec<Vec3> = (0..path.len())
        .map(|k| {
            let (before, after) = (path[k.saturating_sub(1)], path[(k + 1).min(path.len() - 1)]);
            (after - before).normalize_or(Vec3::Y)
        })
        .collect();
    let mut across = directions[0].any_orthonormal_vector();
    let (mut rings, mut length) = (Vec::with_capacity(path.len()), 0.0);
    for (k, (middle, direction)) in path.iter().zip(&directions).enumerate() {
        if k > 0 {
            // Carried without a twist of its own.
            let turn = Quat::from_rotation_arc(directions[k - 1], *direction);
            across = (turn * across).reject_from(*direction).normalize_or(across);
            length += middle.distance(path[k - 1]);
        }
        let other = across.cross(*direction);
        let radius = radius(length);
        let point = |j: usize| {
            let angle = TAU * j as f32 / around as f32;
            *middle + (across * angle.cos() - other * angle.sin()) * radius
        };
        rings.push((0..around).map(point).collect());
    }
    loft(&rings, End::Flat, End::Flat)
}
