//! The battery and its posts.

use crate::workshop::bay::piece::{Finish, Piece, piece};
use crate::workshop::bay::shape::{Solid, block, lathe, rod};
use bevy::math::{Vec3, vec3};

/// Size of the battery's case [m].
pub const CASE: Vec3 = vec3(0.27, 0.19, 0.19);

/// The case with its lid and plugs, and the posts, the positive one first.
pub fn battery([plus, minus]: &[Vec3; 2]) -> Vec<Piece> {
    let lid = block(vec3(CASE.x + 0.006, 0.030, CASE.z + 0.006), 0.014, 0.005).at(
        0.0,
        CASE.y - 0.030,
        0.0,
    );
    let mut plugs = Solid::default();
    for k in 0..6_u8 {
        plugs.add(rod(0.013, 0.007).at(-0.085 + 0.034 * f32::from(k), CASE.y - 0.001, -0.010));
    }
    let label = block(vec3(0.150, 0.074, 0.002), 0.006, 0.0005).at(0.0, 0.055, CASE.z / 2.0);
    let stripe =
        block(vec3(0.150, 0.018, 0.002), 0.002, 0.0005).at(0.0, 0.108, CASE.z / 2.0 + 0.001);
    let mut pieces = vec![
        piece(Finish::BlackPlastic, block(vec3(CASE.x, CASE.y - 0.020, CASE.z), 0.012, 0.006)),
        piece(Finish::GreyPlastic, lid),
        piece(Finish::BlackPlastic, plugs),
        piece(Finish::White, label),
        piece(Finish::Green, stripe),
    ];
    for (at, positive) in [(plus, true), (minus, false)] {
        pieces.extend(
            post(positive)
                .into_iter()
                .map(|part| Piece { solid: part.solid.at(at.x, at.y, at.z), ..part }),
        );
    }
    pieces
}

/// A post with its cable clamp and its sign in front.
fn post(positive: bool) -> Vec<Piece> {
    let post = lathe(&[(0.017, 0.0), (0.015, 0.030), (0.012, 0.032)]);
    let clamp = block(vec3(0.058, 0.016, 0.042), 0.014, 0.003).at(0.010, 0.006, 0.0);
    let bolt = rod(0.007, 0.034).turned_x(90.0).at(0.030, 0.014, -0.017);
    let mark = if positive {
        let across = block(vec3(0.020, 0.002, 0.005), 0.001, 0.0005);
        let along = block(vec3(0.005, 0.002, 0.020), 0.001, 0.0005);
        across.and(along)
    } else {
        block(vec3(0.020, 0.002, 0.005), 0.001, 0.0005)
    };
    let colour = if positive { Finish::Red } else { Finish::Blue };
    vec![
        piece(Finish::Contact, post),
        piece(Finish::Contact, clamp),
        piece(Finish::Steel, bolt),
        piece(colour, mark.at(0.0, 0.001, 0.040)),
    ]
}
