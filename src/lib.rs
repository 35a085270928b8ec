//! Faultwright: a teaching simulator for diagnostic reasoning.

pub mod control_module;
pub mod numerics;
pub mod physics;
pub mod units;
pub mod vehicle;
