//! The bench beside the vehicle, and who lies where on it.

use super::layout::{footprint, lying};
use super::model::{Sort, Thing};
use super::piece::{Finish, Piece, piece};
use super::pose::Pose;
use super::shape::{Solid, ball, block, lathe, rod, smooth, tube};
use bevy::math::{Vec2, Vec3, vec2, vec3};

/// Space between parts on the bench [m].
const APART: f32 = 0.05;
/// Height of the top [m].
pub const TOP: f32 = 0.52;
/// Room for the lamp and the rag beside the parts [m].
const ASIDE: f32 = 0.30;
/// Least width and depth for parts [m].
const LEAST: Vec2 = vec2(0.90, 0.50);
/// Width at which a row ends [m].
const ROW: f32 = 1.05;

/// Lays footprints (width and depth [m]) in rows, the deepest at the back. The middle of each, from the middle of the
/// room that all of them take, and the size of that room.
#[must_use]
pub fn packed(sizes: &[Vec2]) -> (Vec<Vec2>, Vec2) {
    let mut order: Vec<usize> = (0..sizes.len()).collect();
    order.sort_by(|one, other| sizes[*other].y.total_cmp(&sizes[*one].y));
    let mut middles = vec![Vec2::ZERO; sizes.len()];
    let (mut from, mut depth, mut widest) = (vec2(0.0, 0.0), 0.0_f32, 0.0_f32);
    for number in order {
        let size = sizes[number];
        if from.x > 0.0 && from.x + size.x > ROW {
            from = vec2(0.0, from.y + depth + APART);
            depth = 0.0;
        }
        middles[number] = from + size / 2.0;
        from.x += size.x + APART;
        depth = depth.max(size.y);
        widest = widest.max(from.x - APART);
    }
    let room = vec2(widest, from.y + depth).max(LEAST);
    let taken = vec2(widest, from.y + depth);
    for middle in &mut middles {
        *middle -= taken / 2.0;
    }
    (middles, room)
}

/// Gives every part that comes off its place on the bench; the bench's middle and size.
pub fn lay(things: &mut [Thing], left: f32) -> [Vec3; 2] {
    let parts: Vec<usize> = (0..things.len()).filter(|k| things[*k].sort == Sort::Part).collect();
    let sizes: Vec<Vec2> = parts.iter().map(|k| footprint(&things[*k])).collect();
    let (middles, room) = packed(&sizes);
    let (from, bench) = placed(left, room);
    for (number, middle) in parts.into_iter().zip(middles) {
        let thing = &mut things[number];
        let turned = Pose { at: Vec3::ZERO, turn: lying(thing) };
        let [low, high] = thing.bounds_in(turned);
        // What has its foot elsewhere than in its middle lies by its middle all the same.
        let foot = low.midpoint(high).with_y(low.y);
        thing.away = Pose { at: from + vec3(middle.x, 0.0, middle.y) - foot, ..turned };
    }
    bench
}

/// Middle of the parts' room on the bench, and the bench's width, height and depth.
#[must_use]
pub fn placed(left: f32, room: Vec2) -> (Vec3, [Vec3; 2]) {
    let size = vec3(room.x + ASIDE + 3.0 * APART, TOP, room.y + 2.0 * APART);
    let middle = vec3(left + size.x / 2.0, TOP, 0.05);
    (middle + Vec3::X * (ASIDE / 2.0 + APART / 2.0), [middle, size])
}

/// The bench itself with a lamp and a rag.
pub fn furniture([middle, size]: [Vec3; 2]) -> Vec<Piece> {
    let at = |solid: Solid| solid.at(middle.x, 0.0, middle.z);
    let top = block(vec3(size.x, 0.045, size.z), 0.012, 0.006).at(0.0, TOP - 0.045, 0.0);
    let mut planks = Solid::default();
    for k in 1..4_u8 {
        let z = size.z * (f32::from(k) / 4.0 - 0.5);
        planks.add(block(vec3(size.x - 0.02, 0.0012, 0.003), 0.0005, 0.0003).at(
            0.0,
            TOP - 0.0008,
            z,
        ));
    }
    let mut legs = Solid::default();
    for (x, z) in [(-0.5, -0.5), (0.5, -0.5), (-0.5, 0.5), (0.5, 0.5)] {
        let foot = vec2(x * (size.x - 0.10), z * (size.z - 0.10));
        legs.add(block(vec3(0.06, TOP - 0.045, 0.06), 0.008, 0.003).at(foot.x, 0.0, foot.y));
    }
    legs.add(block(vec3(size.x - 0.08, 0.03, size.z - 0.12), 0.006, 0.004).at(0.0, 0.12, 0.0));
    let left = -size.x / 2.0 + ASIDE / 2.0;
    let mut pieces = vec![
        piece(Finish::Wood, at(top)),
        piece(Finish::Sludge, at(planks)),
        piece(Finish::Iron, at(legs)),
        piece(Finish::Cloth, at(rag().at(left + 0.02, TOP, size.z * 0.22))),
    ];
    pieces.extend(
        lamp()
            .into_iter()
            .map(|part| Piece { solid: at(part.solid.at(left, TOP, -size.z * 0.30)), ..part }),
    );
    pieces
}

/// A lamp on a jointed arm, its shade over the parts.
fn lamp() -> Vec<Piece> {
    let foot = lathe(&[(0.075, 0.0), (0.075, 0.012), (0.060, 0.022), (0.018, 0.030), (0.0, 0.032)]);
    let (knee, head) = (vec3(-0.06, 0.30, -0.02), vec3(0.13, 0.44, 0.05));
    let arm = tube(&smooth(&[vec3(0.0, 0.02, 0.0), knee], 4), 0.009, 12).and(tube(
        &smooth(&[knee, head], 4),
        0.009,
        12,
    ));
    let joints = ball(0.017)
        .moved(bevy::math::Affine3A::from_translation(knee))
        .and(ball(0.017).moved(bevy::math::Affine3A::from_translation(head)));
    let shade = lathe(&[
        (0.095, -0.085),
        (0.098, -0.082),
        (0.060, -0.020),
        (0.030, 0.010),
        (0.022, 0.030),
        (0.0, 0.034),
    ]);
    let bulb = lathe(&[(0.0, -0.088), (0.070, -0.0855), (0.0701, -0.085)]);
    let hang = |solid: Solid| solid.turned_z(18.0).at(head.x + 0.015, head.y - 0.01, head.z);
    vec![
        piece(Finish::Green, foot.and(hang(shade))),
        piece(Finish::Steel, arm.and(joints).and(rod(0.012, 0.03).at(0.0, 0.025, 0.0))),
        piece(Finish::Glow, hang(bulb)),
    ]
}

/// A rag that somebody has dropped: folds that run out from where it was held.
fn rag() -> Solid {
    const ACROSS: usize = 22;
    let (width, depth) = (0.24_f32, 0.19_f32);
    let height = |u: f32, v: f32| {
        let fold = (9.0 * u + 2.6 * v).sin() * 0.5 + (5.0 * v - 7.0 * u * v).sin() * 0.5;
        let rim = (1.0 - u.abs().max(v.abs())).clamp(0.0, 1.0);
        0.006 + 0.016 * (0.5 + 0.5 * fold) * (0.25 + 0.75 * rim) + 0.020 * rim * rim
    };
    let mut solid = Solid::default();
    for row in 0..=ACROSS {
        for column in 0..=ACROSS {
            let (u, v) =
                (2.0 * column as f32 / ACROSS as f32 - 1.0, 2.0 * row as f32 / ACROSS as f32 - 1.0);
            let swing = 1.0 + 0.10 * (3.0 * u + 1.3).sin() * v;
            solid.corners.push(vec3(
                u * width / 2.0 * (1.0 + 0.08 * (2.0 * v).sin()),
                height(u, v),
                v * depth / 2.0 * swing,
            ));
        }
    }
    let number =
        |row: usize, column: usize| u32::try_from(row * (ACROSS + 1) + column).unwrap_or(0);
    for row in 0..ACROSS {
        for column in 0..ACROSS {
            let [a, b] = [number(row, column), number(row, column + 1)];
            let [c, d] = [number(row + 1, column + 1), number(row + 1, column)];
            solid.faces.extend([[a, d, c], [a, c, b]]);
        }
    }
    solid
}
