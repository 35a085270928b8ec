//! The engine itself, across the bay, its timing end on the right.

use crate::workshop::bay::layout::{CAM, GROUND, RIDGE};
use crate::workshop::bay::piece::{Finish, Piece, piece};
use crate::workshop::bay::shape::{Solid, block, circle, lathe, plate, rod, smooth, tube};
use bevy::math::{Vec2, Vec3, vec2, vec3};

/// Length of the head along the bay [m].
const LENGTH: f32 = 0.60;
/// Where the cylinders stand [m].
const CYLINDERS: [f32; 4] = [-0.215, -0.085, 0.045, 0.135];

pub fn engine(valves: &[Vec3]) -> Vec<Piece> {
    let mut pieces = vec![
        piece(Finish::Casting, block(vec3(LENGTH, 0.26, 0.32), 0.03, 0.012).at(0.0, 0.12, 0.0)),
        piece(Finish::Iron, block(vec3(LENGTH - 0.06, 0.10, 0.28), 0.04, 0.03).at(0.0, 0.03, 0.0)),
        piece(Finish::Casting, block(vec3(LENGTH, 0.13, 0.36), 0.035, 0.010).at(0.0, 0.385, 0.0)),
        piece(
            Finish::Underside,
            block(vec3(LENGTH - 0.01, 0.008, 0.352), 0.03, 0.002).at(0.0, 0.379, 0.0),
        ),
    ];
    pieces.extend(cam_cover(valves));
    pieces.extend(timing_end());
    pieces.extend(intake());
    pieces.push(piece(Finish::Iron, exhaust()));
    pieces.push(piece(
        Finish::Steel,
        rod(0.014, 0.018).turned_x(90.0).at(GROUND.x, GROUND.y, GROUND.z - 0.018),
    ));
    pieces
}

/// The cover over both camshafts, or in a V over both banks: a bed with two ridges, bolts around it, coils between, a
/// filler cap.
fn cam_cover(valves: &[Vec3]) -> Vec<Piece> {
    let bed = block(vec3(LENGTH + 0.01, 0.050, 0.37), 0.04, 0.012).at(0.0, 0.512, 0.0);
    let mut ridges = Solid::default();
    let mut bosses = Solid::default();
    let mut bores = Solid::default();
    for side in [-CAM, CAM] {
        let profile: Vec<Vec2> = (0..=16)
            .map(|k| Vec2::from_angle(core::f32::consts::PI * k as f32 / 16.0) * vec2(0.062, 0.045))
            .collect();
        ridges.add(plate(&profile, LENGTH - 0.05, 0.014).turned_x(90.0).turned_y(90.0).at(
            -LENGTH / 2.0 + 0.025,
            0.553,
            side,
        ));
    }
    for valve in valves {
        let at = |solid: Solid| solid.at(valve.x, 0.0, valve.z);
        bosses.add(at(lathe(&[(0.046, 0.56), (0.042, RIDGE - 0.006), (0.038, RIDGE)])));
        bores.add(at(lathe(&[(0.024, RIDGE - 0.002), (0.024, RIDGE + 0.0006)])));
    }
    let mut bolts = Solid::default();
    for k in 0..6_u8 {
        let x = -0.275 + 0.11 * f32::from(k);
        for z in [-0.168, 0.168] {
            bolts.add(
                lathe(&[
                    (0.013, 0.560),
                    (0.013, 0.566),
                    (0.009, 0.567),
                    (0.009, 0.576),
                    (0.006, 0.578),
                ])
                .at(x, 0.0, z),
            );
        }
    }
    let mut coils = Solid::default();
    for x in CYLINDERS {
        coils.add(block(vec3(0.048, 0.040, 0.040), 0.008, 0.005).at(x - 0.02, 0.560, 0.0));
        coils.add(rod(0.013, 0.030).turned_x(90.0).at(x - 0.02, 0.584, 0.010));
    }
    let cap =
        lathe(&[(0.036, 0.590), (0.040, 0.596), (0.040, 0.616), (0.034, 0.624), (0.012, 0.626)]);
    let grip = block(vec3(0.054, 0.016, 0.014), 0.006, 0.004).at(0.0, 0.622, 0.0);
    vec![
        piece(Finish::Casting, bed),
        piece(Finish::Casting, ridges),
        piece(Finish::Casting, bosses),
        // What is dark where a valve is out.
        piece(Finish::Underside, bores),
        piece(Finish::Steel, bolts),
        piece(Finish::BlackPlastic, coils),
        piece(Finish::Yellow, cap.and(grip).at(-0.215, 0.0, CAM)),
    ]
}

/// Timing cover, pulleys and belt.
fn timing_end() -> Vec<Piece> {
    let cover = block(vec3(0.030, 0.38, 0.33), 0.012, 0.010).at(LENGTH / 2.0 + 0.012, 0.14, 0.0);
    let pulley = |radius: f32, y: f32, z: f32| {
        lathe(&[
            (radius, 0.0),
            (radius + 0.004, 0.004),
            (radius - 0.003, 0.010),
            (radius + 0.004, 0.016),
            (radius, 0.020),
            (radius * 0.4, 0.022),
        ])
        .turned_z(-90.0)
        .at(LENGTH / 2.0 + 0.055, y, z)
    };
    let crank = pulley(0.066, 0.15, 0.0);
    let pump = pulley(0.045, 0.33, -0.05);
    let belt: Vec<_> = [
        (0.152, -0.068),
        (0.332, -0.098),
        (0.380, -0.050),
        (0.345, 0.0),
        (0.302, 0.245),
        (0.270, 0.283),
        (0.236, 0.250),
        (0.090, 0.030),
        (0.082, -0.010),
        (0.110, -0.056),
        (0.152, -0.068),
    ]
    .iter()
    .map(|(y, z)| vec3(LENGTH / 2.0 + 0.065, *y, *z))
    .collect();
    vec![
        piece(Finish::Casting, cover),
        piece(Finish::Steel, crank.and(pump)),
        piece(Finish::Rubber, tube(&belt, 0.008, 8)),
    ]
}

/// Plenum and runners in front, and the pipe to it from the throttle.
fn intake() -> Vec<Piece> {
    let plenum = lathe(&[
        (0.030, 0.0),
        (0.046, 0.012),
        (0.050, 0.030),
        (0.050, 0.400),
        (0.046, 0.418),
        (0.020, 0.430),
    ])
    .turned_z(-90.0)
    .at(-0.27, 0.385, 0.345);
    let mut runners = Solid::default();
    let mut flanges = Solid::default();
    for x in CYLINDERS {
        let x = x - 0.02;
        let path = [
            vec3(x, 0.395, 0.345),
            vec3(x, 0.462, 0.320),
            vec3(x, 0.478, 0.245),
            vec3(x, 0.455, 0.170),
        ];
        runners.add(tube(&smooth(&path, 8), 0.030, 18));
        flanges
            .add(block(vec3(0.092, 0.014, 0.060), 0.02, 0.004).turned_x(90.0).at(x, 0.455, 0.178));
    }
    let pipe = [
        vec3(0.315, 0.625, -0.115),
        vec3(0.338, 0.56, -0.07),
        vec3(0.372, 0.50, 0.10),
        vec3(0.330, 0.42, 0.29),
        vec3(0.20, 0.385, 0.345),
        vec3(0.12, 0.385, 0.345),
    ];
    let flap = lathe(&[(0.036, 0.0), (0.044, 0.004), (0.044, 0.045), (0.034, 0.050)])
        .at(0.315, 0.605, -0.115);
    let motor = rod(0.024, 0.060).turned_z(-90.0).at(0.345, 0.628, -0.115);
    vec![
        piece(Finish::GreyPlastic, plenum.and(runners)),
        piece(Finish::Casting, flanges),
        piece(Finish::Casting, flap),
        piece(Finish::BlackPlastic, motor),
        piece(Finish::BlackPlastic, tube(&smooth(&pipe, 8), 0.036, 18)),
    ]
}

/// Manifold at the back.
fn exhaust() -> Solid {
    let mut solid =
        block(vec3(0.50, 0.014, 0.075), 0.03, 0.004).turned_x(90.0).at(0.0, 0.45, -0.192);
    for x in CYLINDERS {
        let x = x - 0.02;
        let path = [
            vec3(x, 0.45, -0.18),
            vec3(x, 0.442, -0.250),
            vec3(x * 0.6, 0.36, -0.290),
            vec3(x * 0.15, 0.22, -0.290),
        ];
        solid.add(tube(&smooth(&path, 8), 0.027, 16));
    }
    let collar: Vec<Vec2> = circle(0.062, 20);
    solid.and(plate(&collar, 0.10, 0.01).at(0.0, 0.12, -0.290))
}
