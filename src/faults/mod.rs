//! What can be wrong: kinds, places and severities, and the change each makes to parameters.
//!
//! A fault never tells an instrument what to read. It changes a resistance, a friction, a
//! blockage or a volume; everything else follows from physics.

mod change;
mod kind;

pub use change::{apply, places, worn_kinds};
pub use kind::{Fault, FaultKind, FaultName};
