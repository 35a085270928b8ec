//! Turned parts, blocks and plates.

use super::loft::{End, loft};
use super::outline::{circle, rounded};
use super::solid::Solid;
use bevy::math::{Vec2, Vec3, vec3};
use core::f32::consts::FRAC_PI_2;

/// How finely something of a size is drawn [m]: nobody sees the corners of what is small.
struct Fineness {
    /// Points around a turned part.
    around: usize,
    /// Pieces of a rounded corner.
    corner: usize,
    /// Pieces of a rounded edge.
    edge: usize,
    /// Pieces from pole to pole of a ball.
    poles: usize,
}

impl Fineness {
    const fn of(size: f32) -> Self {
        if size < 0.012 {
            Self { around: 8, corner: 1, edge: 1, poles: 4 }
        } else if size < 0.045 {
            Self { around: 14, corner: 2, edge: 2, poles: 6 }
        } else {
            Self { around: 24, corner: 5, edge: 4, poles: 10 }
        }
    }
}

/// An outline at a height: its second direction points away from whoever looks from the front.
fn ring(outline: &[Vec2], height: f32) -> Vec<Vec3> {
    outline.iter().map(|point| vec3(point.x, height, -point.y)).collect()
}

/// A part turned about the upright axis: radius and height [m] from the bottom up. A radius of zero at an end is a tip.
#[must_use]
pub fn lathe(profile: &[(f32, f32)]) -> Solid {
    let tip = |point: Option<&(f32, f32)>| match point {
        Some((radius, height)) if *radius <= 0.0 => End::Tip(vec3(0.0, *height, 0.0)),
        _ => End::Flat,
    };
    let (start, end) = (tip(profile.first()), tip(profile.last()));
    let widest = profile.iter().map(|(radius, _)| *radius).fold(0.0, f32::max);
    let around = Fineness::of(widest).around;
    let rings: Vec<Vec<Vec3>> = profile
        .iter()
        .filter(|(radius, _)| *radius > 0.0)
        .map(|(radius, height)| ring(&circle(*radius, around), *height))
        .collect();
    loft(&rings, start, end)
}

/// A rod along the upright axis from the origin, its edges broken [m].
#[must_use]
pub fn rod(radius: f32, length: f32) -> Solid {
    let broken = (radius * 0.2).min(length * 0.2);
    lathe(&[
        (radius - broken, 0.0),
        (radius, broken),
        (radius, length - broken),
        (radius - broken, length),
    ])
}

/// A ball around the origin [m].
#[must_use]
pub fn ball(radius: f32) -> Solid {
    let steps = Fineness::of(radius).poles;
    let profile: Vec<(f32, f32)> = (0..=steps)
        .map(|step| {
            let up = FRAC_PI_2 * (2.0 * step as f32 / steps as f32 - 1.0);
            let is_pole = step == 0 || step == steps;
            (if is_pole { 0.0 } else { radius * up.cos() }, radius * up.sin())
        })
        .collect();
    lathe(&profile)
}

/// A block that stands on the origin, its upright edges rounded by `radius`, the others by `bevel` [m].
#[must_use]
pub fn block(size: Vec3, radius: f32, bevel: f32) -> Solid {
    let fineness = Fineness::of(size.max_element());
    let outline = |inset: f32| {
        let radius = (radius - inset).max(radius * 0.3);
        rounded(size.x - 2.0 * inset, size.z - 2.0 * inset, radius, fineness.corner)
    };
    raised(outline, size.y, bevel, fineness.edge)
}

/// A plate of any outline that its middle sees whole, standing on the origin, its edges rounded by `bevel` [m].
#[must_use]
pub fn plate(outline: &[Vec2], height: f32, bevel: f32) -> Solid {
    let middle = outline.iter().sum::<Vec2>() / outline.len().max(1) as f32;
    let reach = outline.iter().map(|point| point.distance(middle)).fold(1e-4, f32::max);
    let drawn_in = |inset: f32| {
        let share = 1.0 - inset / reach;
        outline.iter().map(|point| middle + (*point - middle) * share).collect()
    };
    raised(drawn_in, height, bevel, Fineness::of(reach).edge)
}

fn raised(outline: impl Fn(f32) -> Vec<Vec2>, height: f32, bevel: f32, steps: usize) -> Solid {
    let bevel = bevel.min(height / 2.0);
    let mut rings = Vec::new();
    for step in 0..=steps {
        let angle = FRAC_PI_2 * step as f32 / steps as f32;
        rings.push(ring(&outline(bevel * (1.0 - angle.sin())), bevel * (1.0 - angle.cos())));
    }
    for step in (0..=steps).rev() {
        let angle = FRAC_PI_2 * step as f32 / steps as f32;
        let up = height - bevel * (1.0 - angle.cos());
        rings.push(ring(&outline(bevel * (1.0 - angle.sin())), up));
    }
    loft(&rings, End::Flat, End::Flat)
}
