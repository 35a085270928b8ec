//! Scenarios: the files that instructors write, what is wrong with them, and the draw of a case.
//!
//! [`schema`] is what a file holds, [`load`] finds and reads it, [`problem`] says what is wrong
//! with it and where, [`draw`] makes a case of it: one vehicle with hidden faults and the job sheet
//! that the apprentice sees. [`writing`] changes a file's text value by value.
//!
//! ```
//! use faultwright::scenario::{draw, load};
//! use std::sync::Arc;
//!
//! # fn main() -> Result<(), Box<dyn std::error::Error>> {
//! let loaded = Arc::new(load::demo()?);
//! let case = draw::draw(&loaded, 7, &draw::any_case)?;
//! assert_eq!(case.briefing.job, loaded.scenario.job);
//! # Ok(())
//! # }
//! ```

mod carried;
mod check;
pub mod deal;
pub mod doubts;
pub mod draw;
mod findings;
pub mod load;
mod migration;
mod outline;
pub mod problem;
pub mod schema;
pub mod seal;
pub mod seeds;
pub mod shared_routes;
pub mod showing;
pub mod solvable;
pub mod suppose;
mod syntax;
pub mod warning;
pub mod writing;

#[cfg(test)]
mod tests;
