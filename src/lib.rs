//! Faultwright: a teaching simulator for diagnostic reasoning on a vehicle with a hidden fault.
//!
//! A module imports only from rows below its own; `tests/architecture` holds the table and reads
//! every path.

pub mod assessment;
pub mod command_line;
pub mod control_module;
pub mod faults;
pub mod instruments;
pub mod numerics;
pub mod physics;
pub mod reasoning;
pub mod report;
pub mod scenario;
pub mod session;
pub mod sound;
pub mod trial;
pub mod units;
pub mod vehicle;
pub mod virtual_apprentices;
pub mod wording;

#[cfg(feature = "workshop")]
pub mod workshop;
