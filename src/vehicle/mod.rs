//! One vehicle: what it is made of, in what state it is, and how its parts act on each other.
//!
//! [`spec`] says what was built, [`condition`] what has become of it, [`assembly`] what is taken
//! off and unplugged, [`harness`] turns all three into a network that can be solved.

pub mod assembly;
pub mod condition;
pub mod harness;
pub mod running;
pub mod spec;
