//! Virtual apprentices: ways of working a case that a program follows to the letter.
//!
//! Each stands for a habit that a workshop knows, from guessing to planning. They are there to show
//! what a scenario is worth: what guessing costs in it, how far the marks tell the habits apart, and
//! how hard its cases are. All of them meet a session as a person does: they see the briefing, the log
//! of steps and events, and what anyone standing beside the vehicle sees ([`seen::Seen`]), and answer
//! with the next step. None can reach the hidden state.
//!
//! What is common to all of them, since it is what the trade asks for and not what they differ in:
//! a repair is approved, everything is put back, codes are cleared and checked with the key on, the
//! longest road of the scenario is driven, codes are read again, the job is written up. How a fault is
//! *found* is a policy's own ([`policy::Policy`]), one file each.
//!
//! The policies were fixed before any mark was looked at, and none may be altered so that a rubric
//! looks right; `tests/trial_ranking.rs` holds the rubric against them.

mod book;
mod by_the_book;
pub mod guesser;
mod habits;
mod information_seeker;
mod job;
mod near_first;
mod parts_swapper;
mod planner;
pub mod policy;
mod random_tester;
mod reasoner;
pub mod seen;
pub mod work;

pub use habits::intake;
