//! The engine bay as plain geometry: what stands where, how it looks, what a ray meets, from where it is seen.
//!
//! It knows no engine but its vectors, so that everything here is tested without a driver. The scene draws it, the
//! panels point into it.

mod anchors;
mod bench;
pub mod camera;
mod layout;
pub mod look;
pub mod model;
pub mod outline;
mod parts;
pub mod pick;
pub mod piece;
pub mod pose;
mod role;
mod scenery;
pub mod shape;
mod wires;

/// The name of the dipstick in the bay, which is also the step that is done there.
pub const DIPSTICK: &str = "dipstick";

#[cfg(test)]
mod tests;
