//! Air filter, coolant and brake fluid vessels, washer filler, hoses, the boxes of fuses and module, the battery's tray.

use crate::workshop::bay::layout::{BATTERY, FUSE_BOX, FUSE_BOX_SIZE, MODULE, MODULE_SIZE};
use crate::workshop::bay::piece::{Finish, Piece, piece};
use crate::workshop::bay::shape::{Solid, bellows, block, lathe, rod, smooth, tube};
use crate::workshop::bay::wires::{LOOM, LOOM_RADIUS};
use bevy::math::{Vec3, vec3};

pub fn vessels() -> Vec<Piece> {
    let mut pieces = air_filter();
    pieces.extend(fluids());
    pieces.extend(boxes());
    pieces.extend(hoses());
    pieces
}

fn air_filter() -> Vec<Piece> {
    let at = |solid: Solid| solid.at(-0.595, 0.0, 0.0);
    let lower = block(vec3(0.29, 0.17, 0.27), 0.035, 0.010).at(0.0, 0.36, 0.0);
    let upper = block(vec3(0.30, 0.115, 0.28), 0.040, 0.022).at(0.0, 0.535, 0.0);
    let seam = block(vec3(0.312, 0.016, 0.292), 0.040, 0.004).at(0.0, 0.525, 0.0);
    let mut ribs = Solid::default();
    for k in 0..5_u8 {
        ribs.add(block(vec3(0.012, 0.010, 0.20), 0.004, 0.003).at(
            -0.09 + 0.045 * f32::from(k),
            0.645,
            0.0,
        ));
    }
    let mut clips = Solid::default();
    for (x, z) in [(-0.08, 0.146), (0.08, 0.146)] {
        clips.add(block(vec3(0.022, 0.060, 0.010), 0.004, 0.003).at(x, 0.500, z));
    }
    let neck = rod(0.042, 0.05).turned_z(-90.0).at(0.125, 0.600, 0.0);
    vec![
        piece(Finish::BlackPlastic, at(lower.and(upper).and(ribs).and(neck))),
        piece(Finish::GreyPlastic, at(seam)),
        piece(Finish::Steel, at(clips)),
    ]
}

fn fluids() -> Vec<Piece> {
    let coolant = block(vec3(0.17, 0.16, 0.14), 0.05, 0.040).at(-0.40, 0.50, -0.40);
    let coolant_neck = rod(0.030, 0.03).at(-0.40, 0.645, -0.40);
    let cap = lathe(&[(0.042, 0.668), (0.044, 0.676), (0.044, 0.696), (0.036, 0.702)]);
    let brake = block(vec3(0.12, 0.09, 0.10), 0.03, 0.020).at(0.42, 0.60, -0.43);
    let cylinder = rod(0.030, 0.16).turned_x(90.0).at(0.42, 0.56, -0.50);
    let brake_cap = lathe(&[(0.034, 0.688), (0.036, 0.694), (0.036, 0.714), (0.030, 0.718)]);
    let servo = lathe(&[(0.12, 0.0), (0.13, 0.02), (0.12, 0.06), (0.05, 0.09)])
        .turned_x(90.0)
        .at(0.42, 0.53, -0.53);
    let filler = tube(
        &smooth(&[vec3(-0.30, 0.30, 0.42), vec3(-0.31, 0.45, 0.42), vec3(-0.33, 0.530, 0.425)], 6),
        0.020,
        14,
    );
    let filler_cap = lathe(&[(0.032, 0.0), (0.034, 0.006), (0.034, 0.016), (0.026, 0.022)])
        .at(-0.33, 0.527, 0.425);
    vec![
        piece(Finish::MilkyPlastic, coolant.and(coolant_neck).and(brake)),
        piece(Finish::Blue, cap.at(-0.40, 0.0, -0.40).and(filler_cap)),
        piece(Finish::Yellow, brake_cap.at(0.42, 0.0, -0.43)),
        piece(Finish::BlackPlastic, servo.and(filler)),
        piece(Finish::Casting, cylinder),
    ]
}

/// Fuse box without its lid, module with its plug, the battery's tray and strap.
fn boxes() -> Vec<Piece> {
    let size = FUSE_BOX_SIZE;
    let at_box = |solid: Solid| solid.moved(bevy::math::Affine3A::from_translation(FUSE_BOX));
    let case = block(vec3(size.x, size.y - 0.030, size.z), 0.016, 0.006);
    let deck = block(vec3(size.x - 0.016, 0.012, size.z - 0.016), 0.010, 0.003).at(
        0.0,
        size.y - 0.032,
        0.0,
    );
    let mut sockets = Solid::default();
    for k in 0..5_u8 {
        sockets.add(block(vec3(0.040, 0.004, 0.018), 0.003, 0.001).at(
            -0.095 + 0.046 * f32::from(k),
            size.y - 0.021,
            0.048,
        ));
    }
    let at_module = |solid: Solid| solid.moved(bevy::math::Affine3A::from_translation(MODULE));
    let casting = block(MODULE_SIZE, 0.014, 0.006);
    let mut fins = Solid::default();
    for k in 0..7_u8 {
        fins.add(block(vec3(MODULE_SIZE.x - 0.05, 0.012, 0.007), 0.003, 0.002).at(
            -0.005,
            MODULE_SIZE.y - 0.002,
            -0.060 + 0.020 * f32::from(k),
        ));
    }
    let plug =
        block(vec3(0.036, 0.048, 0.14), 0.008, 0.005).at(MODULE_SIZE.x / 2.0 + 0.014, 0.006, 0.0);
    let shelf =
        block(vec3(0.30, 0.016, 0.24), 0.015, 0.004).at(MODULE.x, MODULE.y - 0.018, MODULE.z);
    let tray =
        block(vec3(0.31, 0.030, 0.23), 0.020, 0.008).at(BATTERY.x, BATTERY.y - 0.022, BATTERY.z);
    let stand = block(vec3(0.20, BATTERY.y - 0.06, 0.16), 0.02, 0.01)
        .at(BATTERY.x, 0.05, BATTERY.z)
        .and(
            block(vec3(0.18, FUSE_BOX.y - 0.07, 0.10), 0.02, 0.01).at(FUSE_BOX.x, 0.07, FUSE_BOX.z),
        )
        .and(block(vec3(0.16, MODULE.y - 0.09, 0.10), 0.02, 0.01).at(MODULE.x, 0.07, MODULE.z));
    vec![
        piece(Finish::BlackPlastic, at_box(case)),
        piece(Finish::GreyPlastic, at_box(deck)),
        piece(Finish::Underside, at_box(sockets)),
        piece(Finish::Casting, at_module(casting.and(fins))),
        piece(Finish::BlackPlastic, at_module(plug)),
        piece(Finish::Underside, shelf.and(tray).and(stand)),
    ]
}

fn hoses() -> Vec<Piece> {
    let upper = [
        vec3(0.30, 0.455, 0.475),
        vec3(0.30, 0.475, 0.41),
        vec3(0.24, 0.455, 0.30),
        vec3(0.255, 0.43, 0.19),
    ];
    let heater = [
        vec3(-0.31, 0.47, -0.08),
        vec3(-0.35, 0.52, -0.20),
        vec3(-0.27, 0.56, -0.36),
        vec3(-0.24, 0.56, -0.50),
    ];
    let small = [vec3(-0.37, 0.56, -0.36), vec3(-0.31, 0.60, -0.30), vec3(-0.30, 0.50, -0.10)];
    let loom = smooth(&LOOM, 20);
    let intake: Vec<Vec3> =
        smooth(&[vec3(-0.72, 0.42, 0.10), vec3(-0.76, 0.40, 0.25), vec3(-0.74, 0.40, 0.50)], 14);
    vec![
        piece(Finish::Rubber, tube(&smooth(&upper, 8), 0.024, 16)),
        piece(Finish::Rubber, tube(&smooth(&heater, 8), 0.016, 14)),
        piece(Finish::Rubber, tube(&smooth(&small, 8), 0.010, 12)),
        piece(Finish::Rubber, bellows(&loom, LOOM_RADIUS, 0.003, 0.014, 14)),
        piece(Finish::BlackPlastic, bellows(&intake, 0.036, 0.006, 0.02, 18)),
    ]
}
