//! The engine control module: signals in, drives and opinions out. It does not know physics.

pub mod cam_control;
pub mod circuit_limits;
pub mod circuit_monitor;
pub mod code;
pub mod code_record;
pub mod code_report;
pub mod counters;
pub mod debounced_test;
pub mod drive_pattern;
pub mod freeze_frame;
pub mod idle_control;
pub mod known_code;
pub mod memory;
pub mod module;
pub mod module_setup;
pub mod performance_limits;
pub mod performance_monitor;
pub mod services;
pub mod similar_conditions;
pub mod step_response;
pub mod test_result;
pub mod verdict;
pub mod warm_up;
