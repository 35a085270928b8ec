//! Faultwright: a teaching simulator for diagnostic reasoning.

pub mod control_module;
pub mod faults;
pub mod instruments;
pub mod numerics;
pub mod physics;
pub mod session;
pub mod units;
pub mod vehicle;
pub mod wording;
