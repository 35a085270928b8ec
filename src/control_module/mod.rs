//! The engine control module: signals in, drives and opinions out. It does not know physics.

pub mod cam_control;
pub mod code;
pub mod performance_limits;
pub mod performance_monitor;
pub mod step_response;
pub mod verdict;
