//! The shapes of the parts, each in a frame of its own: it stands on the origin, `y` is up, `z` towards the front of
//! the vehicle. All sizes are engineering estimates, drawn larger where a thing would be too small to see.

mod battery;
mod cover;
mod duct;
mod fuse;
mod machine;
mod plug;
mod probe;
mod valve;

pub use battery::{CASE, battery};
pub use cover::{engine_cover, heat_shield, lid, manifold, module_cover, plain_cover};
pub use duct::{clamp, duct};
pub use fuse::{fuse, relay};
pub use machine::{alternator, dipstick, starter};
pub use plug::{connector, pin};
pub use probe::test_point;
pub use valve::{SOCKET, valve};
