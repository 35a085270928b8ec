//! Planted errors in the shipped files, and what becomes of them.

mod doubts;
mod draws;
mod format_page;
mod hostile;
mod hostile_corpus;
mod library;
mod old_files;
mod planted;
mod scenario_checks;
mod shipped;
mod shipped_wiring;
mod syntax_errors;
mod together;
mod valve_checks;
mod vehicle_checks;
