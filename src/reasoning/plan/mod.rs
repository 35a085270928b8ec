//! Planning under uncertainty, on a plain problem that knows nothing of engines.
//!
//! A [`problem::Problem`] has states with priors, covers that must be open or shut, steps that cost
//! something, show something and may change the state, and endings with their final costs. Costs
//! add up and are not discounted. [`search::Search`] finds what to do first and encloses the least
//! expected cost between a lower and an upper bound that close in for as long as it is let run: on
//! a small problem until they meet, on a large one until the time is up. The upper bound is always
//! the cost of a policy that exists.
//!
//! Whether a step that is repeated shows something new is the problem's to say
//! ([`problem::Repeat`]): the two have different optima.
//!
//! In: a problem in its own units of cost. Out: costs in the same units, names by their place in
//! the problem's lists.

pub mod access;
pub mod accounts;
pub mod belief;
pub mod budget;
mod columns;
pub mod compiled;
pub mod covers;
pub mod information;
pub mod lower;
pub mod pair;
pub mod policy;
pub mod problem;
pub mod ranking;
pub mod search;
pub mod telling;
pub mod upper;
pub mod useful;
mod ways;

#[cfg(test)]
mod structured_tests;
#[cfg(test)]
mod tests;
