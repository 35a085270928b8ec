//! The body around the bay: wings, strut towers, bulkhead and front.

use crate::workshop::bay::piece::{Finish, Piece, piece};
use crate::workshop::bay::shape::{Solid, block, lathe, rod};
use bevy::math::vec3;

pub fn body() -> Vec<Piece> {
    let mut paint = Solid::default();
    let mut towers = Solid::default();
    let mut nuts = Solid::default();
    let mut inner = Solid::default();
    for side in [-1.0_f32, 1.0] {
        paint.add(block(vec3(0.14, 0.62, 1.24), 0.06, 0.035).at(side * 0.895, 0.10, -0.02));
        inner.add(block(vec3(0.05, 0.48, 1.08), 0.02, 0.01).at(side * 0.812, 0.12, 0.0));
        let tower =
            lathe(&[(0.155, 0.10), (0.140, 0.44), (0.128, 0.555), (0.112, 0.575), (0.070, 0.582)]);
        towers.add(tower.at(side * 0.695, 0.0, -0.345));
        for k in 0..3_u8 {
            let angle = f32::from(k) * 2.094 + 0.5;
            nuts.add(rod(0.011, 0.016).at(
                side * 0.695 + 0.085 * angle.cos(),
                0.578,
                -0.345 + 0.085 * angle.sin(),
            ));
        }
        nuts.add(lathe(&[(0.040, 0.58), (0.038, 0.596), (0.020, 0.602)]).at(
            side * 0.695,
            0.0,
            -0.345,
        ));
    }
    let bulkhead = block(vec3(1.70, 0.62, 0.08), 0.02, 0.015).at(0.0, 0.10, -0.54);
    let scuttle = block(vec3(1.86, 0.06, 0.17), 0.04, 0.02).at(0.0, 0.695, -0.605);
    let front = block(vec3(1.66, 0.080, 0.085), 0.03, 0.02).at(0.0, 0.485, 0.545);
    let apron = block(vec3(1.66, 0.42, 0.04), 0.02, 0.015).at(0.0, 0.08, 0.555);
    let latch = block(vec3(0.10, 0.035, 0.06), 0.008, 0.006).at(0.0, 0.560, 0.545);
    let mut slots = Solid::default();
    for k in 0..12_u8 {
        slots.add(block(vec3(0.070, 0.008, 0.012), 0.004, 0.002).at(
            -0.55 + 0.10 * f32::from(k),
            0.753,
            -0.60,
        ));
    }
    let radiator = block(vec3(0.92, 0.36, 0.045), 0.02, 0.010).at(0.0, 0.10, 0.478);
    let tank = block(vec3(0.96, 0.045, 0.062), 0.02, 0.014).at(0.0, 0.435, 0.478);
    let floor = block(vec3(1.62, 0.06, 1.0), 0.02, 0.01).at(0.0, 0.02, 0.0);
    vec![
        piece(Finish::Body, paint.and(front).and(towers).and(bulkhead)),
        piece(Finish::Underside, inner.and(apron).and(floor)),
        piece(Finish::BlackPlastic, scuttle.and(tank)),
        piece(Finish::Underside, slots.and(radiator)),
        piece(Finish::Steel, nuts.and(latch)),
    ]
}
