//! The engine control module: signals in, drives and opinions out. It does not know physics.

pub mod code;
pub mod verdict;
