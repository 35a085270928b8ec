//! Laws of components. Knows no vehicle: a network, a coil, a spool, oil, a pump, a phaser.

pub mod oil;
pub mod phaser;
pub mod port;
pub mod pump;
pub mod spool_follow;
pub mod sump;
pub mod warm_up;
