//! Covers: over the engine, over a hot place, over the control module, over the fuses.

use crate::workshop::bay::piece::{Finish, Piece, piece};
use crate::workshop::bay::shape::{Solid, block, plate, rod};
use bevy::math::{Vec2, Vec3, vec2, vec3};

/// A large plastic cover with a raised field, ribs and studs.
pub fn engine_cover(size: Vec3) -> Vec<Piece> {
    let (w, h, d) = (size.x, size.y, size.z);
    let field = block(vec3(w * 0.78, 0.016, d * 0.62), 0.05, 0.010).at(0.0, h - 0.004, -d * 0.03);
    let mut ribs = Solid::default();
    for k in 0..5_u8 {
        let x = w * (0.10 * f32::from(k) - 0.20);
        ribs.add(block(vec3(w * 0.045, 0.008, d * 0.46), 0.010, 0.003).at(x, h + 0.011, -d * 0.03));
    }
    let mut studs = Solid::default();
    for (x, z) in [(-0.44, 0.40), (0.44, 0.40), (-0.44, -0.40), (0.44, -0.40)] {
        studs.add(rod(0.016, 0.010).at(x * w, h - 0.003, z * d));
    }
    vec![
        piece(Finish::BlackPlastic, block(size, 0.07, 0.035)),
        piece(Finish::GreyPlastic, field),
        piece(Finish::BlackPlastic, ribs),
        piece(Finish::Rubber, studs),
    ]
}

/// A bent and beaded sheet on two brackets.
pub fn heat_shield() -> Vec<Piece> {
    const BEND: [(f32, f32); 5] =
        [(-0.085, -0.007), (-0.060, 0.0), (0.0, 0.006), (0.060, 0.0), (0.085, -0.007)];
    let over = BEND.map(|(x, y)| vec2(x, y + 0.003));
    let under = BEND.map(|(x, y)| vec2(x, y));
    let mut outline: Vec<Vec2> = under.to_vec();
    outline.extend(over.iter().rev());
    let mut sheet = Solid::default();
    // The bent outline does not see its own middle; strip by strip it does.
    for k in 0..BEND.len() - 1 {
        let strip = [under[k], under[k + 1], over[k + 1], over[k]];
        sheet.add(plate(&strip, 0.150, 0.0005).turned_x(90.0).at(0.0, 0.030, -0.075));
    }
    let mut beads = Solid::default();
    for z in [-0.045, 0.0, 0.045] {
        beads.add(block(vec3(0.096, 0.007, 0.014), 0.006, 0.003).at(0.0, 0.034, z));
    }
    let screws =
        rod(0.010, 0.008).at(-0.050, 0.034, 0.062).and(rod(0.010, 0.008).at(0.050, 0.034, 0.062));
    vec![
        piece(Finish::HeatSheet, sheet),
        piece(Finish::HeatSheet, beads),
        piece(Finish::Steel, screws),
    ]
}

/// An intake manifold that lies flat over valves in a row: a shallow chamber with a runner to each cylinder, over a
/// length from the first valve to the last [m].
pub fn manifold(length: f32) -> Vec<Piece> {
    let (width, depth) = (length + 0.15, 0.15);
    let chamber = block(vec3(width, 0.012, depth), 0.030, 0.005);
    let mut runners = Solid::default();
    let mut bolts = Solid::default();
    for k in [-1.0_f32, 0.0, 1.0] {
        let x = k * width * 0.30;
        runners.add(block(vec3(0.046, 0.008, depth * 0.86), 0.012, 0.004).at(x, 0.010, 0.0));
        bolts.add(rod(0.010, 0.006).at(x + width * 0.14, 0.011, depth * 0.40));
    }
    vec![
        piece(Finish::Casting, chamber),
        piece(Finish::Casting, runners),
        piece(Finish::Steel, bolts),
    ]
}

/// A hood over the control module.
pub fn module_cover(size: Vec3) -> Vec<Piece> {
    let grip = block(vec3(size.x * 0.34, 0.010, 0.030), 0.008, 0.004).at(0.0, size.y, 0.0);
    let screw = |x: f32| rod(0.010, 0.006).at(x * size.x, size.y - 0.001, size.z * 0.34);
    vec![
        piece(Finish::GreyPlastic, block(size, 0.020, 0.010)),
        piece(Finish::BlackPlastic, grip),
        piece(Finish::Steel, screw(-0.38).and(screw(0.38))),
    ]
}

/// The lid of the fuse box, clips at both ends and a label with the places of the fuses.
pub fn lid(size: Vec3) -> Vec<Piece> {
    let clip = |x: f32| block(vec3(0.014, size.y + 0.014, 0.040), 0.004, 0.003).at(x, -0.014, 0.0);
    let label = block(vec3(size.x * 0.52, 0.002, size.z * 0.56), 0.004, 0.0005).at(
        0.0,
        size.y - 0.0005,
        0.0,
    );
    let mut print = Solid::default();
    for row in 0..3_u8 {
        for column in 0..4_u8 {
            let at = vec2(
                size.x * (0.11 * f32::from(column) - 0.165),
                size.z * (0.15 * f32::from(row) - 0.15),
            );
            print.add(block(vec3(size.x * 0.075, 0.001, size.z * 0.07), 0.001, 0.0003).at(
                at.x,
                size.y + 0.0012,
                at.y,
            ));
        }
    }
    let edge = size.x / 2.0;
    vec![
        piece(Finish::BlackPlastic, block(size, 0.018, 0.010)),
        piece(Finish::White, label),
        piece(Finish::GreyPlastic, print),
        piece(Finish::Red, clip(-edge).and(clip(edge))),
    ]
}

/// A cover that hides nothing which the file tells of.
pub fn plain_cover(size: Vec3) -> Vec<Piece> {
    let screws = rod(0.010, 0.006).at(-size.x * 0.36, size.y, 0.0).and(rod(0.010, 0.006).at(
        size.x * 0.36,
        size.y,
        0.0,
    ));
    vec![piece(Finish::GreyPlastic, block(size, 0.015, 0.006)), piece(Finish::Steel, screws)]
}
