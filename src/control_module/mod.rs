//! The engine control module: signals in, drives and opinions out. It does not know physics.

pub mod circuit_limits;
pub mod circuit_monitor;
pub mod code;
pub mod debounced_test;
pub mod verdict;
