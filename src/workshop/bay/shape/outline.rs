//! Closed outlines in a plane, drawn counter-clockwise.

use bevy::math::{Vec2, vec2};
use core::f32::consts::{FRAC_PI_2, TAU};

/// A circle [m].
#[must_use]
pub fn circle(radius: f32, points: usize) -> Vec<Vec2> {
    (0..points).map(|k| Vec2::from_angle(TAU * k as f32 / points as f32) * radius).collect()
}

/// A rectangle with rounded corners around the origin [m], `steps` straight pieces to each corner.
#[must_use]
pub fn rounded(width: f32, depth: f32, radius: f32, steps: usize) -> Vec<Vec2> {
    let radius = radius.min(width / 2.0).min(depth / 2.0).max(1e-4);
    let half = vec2(width / 2.0 - radius, depth / 2.0 - radius);
    let mut points = Vec::with_capacity(4 * (steps + 1));
    for (quarter, side) in
        [(1.0, 1.0), (-1.0, 1.0), (-1.0, -1.0), (1.0, -1.0)].into_iter().enumerate()
    {
        for step in 0..=steps {
            let angle = FRAC_PI_2 * (quarter as f32 + step as f32 / steps as f32);
            points.push(half * Vec2::from(side) + Vec2::from_angle(angle) * radius);
        }
    }
    points
}
