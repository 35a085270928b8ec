//! A place that a probe can touch.

use crate::workshop::bay::piece::{Finish, Piece, piece};
use crate::workshop::bay::shape::{ball, lathe};

/// A small ring with a point in it, as a wiring diagram draws a measuring point.
pub fn test_point() -> Vec<Piece> {
    let ring = lathe(&[(0.0085, -0.0015), (0.0105, -0.0025), (0.0105, 0.0025), (0.0085, 0.0015)]);
    vec![piece(Finish::Yellow, ring), piece(Finish::Contact, ball(0.0055))]
}
