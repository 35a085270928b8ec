//! Laws of components. Knows no vehicle: a network, a coil, a spool, oil, a pump, a phaser.

pub mod circuit;
pub mod coil;
