//! The expert: what the evidence says, what each test would tell, and what it is worth.
//!
//! Sees what an apprentice sees, the steps and events of a session and the briefing, and never
//! the hidden state. A hypothesis is a fault, or several that come together; a *world* is a session
//! of the same case in which they, each at one severity, are the truth. The likelihood of an event comes from taking the
//! same step in every world and comparing: the same physics, with the instrument's tolerance as
//! noise.

pub mod belief;
pub mod consent;
pub mod discernment;
pub mod expert;
pub mod foresight;
pub mod hint;
pub mod likelihood;
pub mod onlooker;
pub mod outcome;
pub mod plan;
pub mod probe;
pub mod prospect;
pub mod remedy;
pub mod review;
pub mod separation;
mod showings;
pub mod tariff;
pub mod way;
pub mod what_if;
pub mod world;
pub mod world_store;
