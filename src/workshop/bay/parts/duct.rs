//! An air duct and the clamp that holds it.

use crate::workshop::bay::piece::{Finish, Piece, piece};
use crate::workshop::bay::shape::{Solid, bellows, block, rod, smooth, tube};
use bevy::math::{Vec3, vec3};
use core::f32::consts::TAU;

/// Radius of an air duct [m].
pub const DUCT_RADIUS: f32 = 0.037;

/// A duct along a path: a folded stretch in its first third, cuffs at both ends.
pub fn duct(through: &[Vec3]) -> Vec<Piece> {
    let path = smooth(through, 14);
    let count = path.len();
    let (from, to) = (count * 12 / 100, count * 45 / 100);
    // A fold needs some points of its own.
    let folds = smooth(&path[from..=to.min(count - 1)], 5);
    let cuff = |stretch: &[Vec3]| tube(stretch, DUCT_RADIUS + 0.006, 24);
    vec![
        piece(Finish::BlackPlastic, tube(&path[..=from], DUCT_RADIUS, 24)),
        piece(Finish::Rubber, bellows(&folds, DUCT_RADIUS + 0.004, 0.010, 0.022, 24)),
        piece(Finish::BlackPlastic, tube(&path[to..], DUCT_RADIUS, 24)),
        piece(Finish::Rubber, cuff(&path[..3]).and(cuff(&path[count - 4..]))),
    ]
}

/// A worm-drive clamp around the upright axis.
pub fn clamp() -> Vec<Piece> {
    let radius = DUCT_RADIUS + 0.008;
    let ring = |height: f32| -> Vec<Vec3> {
        (0..=32)
            .map(|k| {
                let angle = TAU * k as f32 / 32.0;
                vec3(radius * angle.cos(), height, radius * angle.sin())
            })
            .collect()
    };
    let mut band = Solid::default();
    for height in [0.004, 0.010, 0.016] {
        band.add(tube(&ring(height), 0.004, 6));
    }
    let housing = block(vec3(0.034, 0.018, 0.016), 0.003, 0.002).at(0.0, 0.001, radius + 0.008);
    let screw = rod(0.008, 0.016).turned_z(-90.0).at(0.016, 0.010, radius + 0.008);
    vec![piece(Finish::Steel, band), piece(Finish::Steel, housing), piece(Finish::Contact, screw)]
}
