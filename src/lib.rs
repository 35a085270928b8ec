//! Faultwright: a teaching simulator for diagnostic reasoning on a vehicle with a hidden fault.
//!
//! A module imports only from rows below its own; `tests/architecture` holds the table and reads every path.

pub mod command_line;
#[cfg(feature = "workshop")]
pub mod workshop;
