//! Laws of components. Knows no vehicle: a network, a coil, a spool, oil, a pump, a phaser.

pub mod actuator;
pub mod battery;
pub mod circuit;
pub mod coil;
pub mod combustion;
pub mod crank;
pub mod oil;
pub mod orifice;
pub mod phaser;
pub mod port;
pub mod pressure_switch;
pub mod pulsed_coil;
pub mod pump;
pub mod range;
pub mod release;
pub mod solenoid;
pub mod spool;
pub mod spool_follow;
pub mod stroke;
pub mod sump;
pub mod thermal;
pub mod warm_up;
pub mod wire;
