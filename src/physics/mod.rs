//! Laws of components. Knows no vehicle: a network, a coil, a spool, oil, a pump, a phaser.

pub mod coil;
pub mod range;
pub mod solenoid;
pub mod spool;
pub mod stroke;
pub mod thermal;
