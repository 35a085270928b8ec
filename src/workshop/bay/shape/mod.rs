//! Solids made in code: rings of points joined to skins.
//!
//! Everything in the bay is a loft: a row of rings with as many points each. A turned part is a loft of circles, a
//! plate a loft of one outline drawn in at its edges, a hose a loft along a path. Lengths are metres, `y` is up.

mod edges;
mod forms;
mod loft;
mod outline;
mod path;
mod solid;
mod tube;

pub use forms::{ball, block, lathe, plate, rod};
pub use outline::circle;
pub use path::smooth;
pub use solid::Solid;
pub use tube::{bellows, tube};
