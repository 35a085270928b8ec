//! The comparisons with the circuit simulator, as `tests/reference` makes them.
#![expect(dead_code, reason = "the page only counts what the other test asks")]

#[path = "../reference/agreement.rs"]
pub mod agreement;
#[path = "../reference/asked/mod.rs"]
pub mod asked;
#[path = "../reference/case.rs"]
mod case;
#[path = "../reference/circumstances.rs"]
mod circumstances;
#[path = "../reference/comparison.rs"]
mod comparison;
#[path = "../reference/reading.rs"]
mod reading;
#[path = "../reference/simulator.rs"]
mod simulator;
#[path = "../reference/table.rs"]
mod table;
#[path = "../reference/vehicle.rs"]
mod vehicle;
#[path = "../reference/wiring.rs"]
mod wiring;
