//! One attempt at one case: steps in, events out.
//!
//! The one way through is `Session::take`. The window, the text bench, a script, a replay and a
//! virtual apprentice use that call and nothing else, and what they may know is exactly the
//! events.

pub mod aftermath;
pub mod attempt;
pub mod counterfactual;
pub mod course;
pub mod event;
pub mod journal;
pub mod kept;
pub mod setup;
pub mod shelf;
pub mod step;
mod take;
pub mod toolbox;
