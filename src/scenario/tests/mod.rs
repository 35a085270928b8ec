//! Planted errors in the shipped files, and what becomes of them.

mod draws;
mod hostile;
mod planted;
mod scenario_checks;
mod shipped;
mod syntax_errors;
mod vehicle_checks;
