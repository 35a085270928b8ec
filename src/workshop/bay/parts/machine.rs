//! Alternator, starter and dipstick.

use crate::workshop::bay::piece::{Finish, Piece, piece};
use crate::workshop::bay::shape::{Solid, block, lathe, rod, tube};
use bevy::math::{Vec3, vec3};
use core::f32::consts::TAU;

/// An alternator, its shaft along x, its pulley on the right.
pub fn alternator() -> Vec<Piece> {
    let housing = lathe(&[
        (0.050, -0.060),
        (0.066, -0.050),
        (0.070, -0.030),
        (0.070, 0.030),
        (0.064, 0.046),
        (0.040, 0.054),
        (0.020, 0.060),
    ]);
    let mut slots = Solid::default();
    for k in 0..12_u8 {
        let angle = TAU * f32::from(k) / 12.0;
        slots.add(
            block(vec3(0.010, 0.034, 0.006), 0.002, 0.001)
                .at(0.0, -0.017, 0.069)
                .turned_y(angle.to_degrees()),
        );
    }
    let pulley = lathe(&[
        (0.030, 0.058),
        (0.034, 0.060),
        (0.034, 0.064),
        (0.028, 0.068),
        (0.034, 0.072),
        (0.028, 0.076),
        (0.034, 0.080),
        (0.034, 0.084),
        (0.012, 0.086),
    ]);
    let stud = rod(0.010, 0.030).turned_x(-60.0).at(0.0, -0.055, 0.0);
    [
        piece(Finish::Casting, housing),
        piece(Finish::Underside, slots),
        piece(Finish::Steel, pulley),
        piece(Finish::Copper, stud),
    ]
    .map(|part| Piece { solid: part.solid.turned_z(-90.0), ..part })
    .into()
}

/// A starter, its shaft along x.
pub fn starter() -> Vec<Piece> {
    let motor = rod(0.046, 0.150).turned_z(-90.0).at(-0.075, 0.0, 0.0);
    let switch = rod(0.026, 0.100).turned_z(-90.0).at(-0.070, 0.066, 0.012);
    let nose =
        lathe(&[(0.046, 0.0), (0.040, 0.020), (0.028, 0.050)]).turned_z(-90.0).at(0.075, 0.0, 0.0);
    vec![
        piece(Finish::Iron, motor),
        piece(Finish::Iron, switch),
        piece(Finish::Casting, nose),
        piece(Finish::Copper, rod(0.009, 0.016).turned_z(90.0).at(-0.068, 0.070, 0.012)),
    ]
}

/// The dipstick in its tube, a loop to pull it by.
pub fn dipstick() -> Vec<Piece> {
    let path: Vec<Vec3> = (0..=20)
        .map(|k| {
            let angle = TAU * k as f32 / 20.0;
            vec3(0.021 * angle.sin(), 0.056 + 0.026 * -angle.cos(), 0.0)
        })
        .collect();
    let pipe = [vec3(0.0, 0.012, 0.0), vec3(0.0, -0.06, 0.012), vec3(-0.01, -0.20, 0.0)];
    vec![
        piece(Finish::Yellow, tube(&path, 0.0062, 10).and(rod(0.010, 0.026).at(0.0, 0.008, 0.0))),
        piece(Finish::Steel, tube(&crate::workshop::bay::shape::smooth(&pipe, 6), 0.008, 12)),
    ]
}
