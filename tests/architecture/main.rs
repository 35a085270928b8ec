//! The arrows of the house, checked in the source: which module may name which, and which may name the outside.
//!
//! One crate has no compiler to hold its layers apart, so this test reads every `use`, path and macro under `src/` and
//! refuses any arrow that the table in `house` does not allow. `planted` proves that the check refuses what it should.

#![expect(clippy::unwrap_used, reason = "a test fails by panicking")]

mod findings;
mod house;
mod names;
mod outside;
mod planted;
mod rules;
mod tree;
mod window_fence;
