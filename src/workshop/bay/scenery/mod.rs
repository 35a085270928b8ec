//! What stands in every bay and has no name: block, head and covers of the engine, walls, pipes and vessels.

mod body;
mod engine;
mod vessels;

use super::piece::Finish;
use super::piece::{Piece, piece};
use super::shape::block;
use bevy::math::vec3;

/// Everything that has no name.
pub fn scenery() -> Vec<Piece> {
    let mut pieces = engine::engine();
    pieces.extend(body::body());
    pieces.extend(vessels::vessels());
    pieces.push(piece(Finish::Floor, block(vec3(9.0, 0.02, 7.0), 0.05, 0.005).at(0.4, -0.02, 0.0)));
    pieces
}
