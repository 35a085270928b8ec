//! What stands in every bay and has no name: block, head and covers of the engine, walls, pipes and vessels.

mod body;
mod engine;
mod vessels;

use super::piece::Finish;
use super::piece::{Piece, piece};
use super::shape::block;
use bevy::math::{Vec3, vec3};

/// Everything that has no name; the engine is bored where its valves stand.
pub fn scenery(valves: &[Vec3]) -> Vec<Piece> {
    let mut pieces = engine::engine(valves);
    pieces.extend(body::body());
    pieces.extend(vessels::vessels());
    pieces.push(piece(Finish::Floor, block(vec3(9.0, 0.02, 7.0), 0.05, 0.005).at(0.4, -0.02, 0.0)));
    pieces
}
