//! One vehicle: what it is made of, in what state it is, and how its parts act on each other.
//!
//! [`spec`] says what was built, [`condition`] what has become of it, [`assembly`] what is taken
//! off and unplugged, [`harness`] turns all three into a network that can be solved,
//! [`circuits`] into what valves and control module feel, [`running`] runs the engine, and
//! [`whole`] is the vehicle as a person finds it.

pub mod assembly;
pub mod cam_line;
pub mod capture;
pub mod circuits;
mod coil_heat;
pub mod condition;
pub mod diagnostic_link;
pub mod driving;
pub mod electricity;
pub mod engine_link;
pub mod error;
mod fuses;
pub mod harness;
pub mod idle;
pub mod loose;
pub mod module_link;
mod oil_level;
pub mod per_bank;
pub mod per_cam;
pub mod pulse;
pub mod route;
pub mod run_record;
pub mod running;
pub mod snapshot;
pub mod spec;
pub mod state;
pub mod stroke_memo;
pub mod test_numbers;
pub mod whole;
