//! The policy that a search has found, as a tree to read.

use super::search::Search;
use super::upper::{Choice, take};

/// What to do in one situation, and then.
#[derive(Debug, Clone, PartialEq)]
pub struct Plan {
    /// Situation of the search.
    pub situation: usize,
    /// How likely the policy comes here.
    pub chance: f64,
    /// What to do.
    pub choice: Choice,
    /// What to do after each outcome; empty for an ending, and where the tree was cut.
    pub then: Vec<(usize, Plan)>,
}

/// The policy from a situation on, as far as it is reached with at least this chance.
#[must_use]
pub fn plan(search: &mut Search, situation: usize, least_chance: f64) -> Plan {
    grow(search, situation, 1.0, least_chance)
}

fn grow(search: &mut Search, situation: usize, chance: f64, least_chance: f64) -> Plan {
    let choice = search.choice(situation);
    let then = match choice {
        Choice::Step(step) if chance >= least_chance => search
            .after(situation, step)
            .into_iter()
            .map(|(outcome, share, there)| {
                (outcome, grow(search, there, chance * share, least_chance))
            })
            .collect(),
        _ => Vec::new(),
    };
    Plan { situation, chance, choice, then }
}

/// Cost of a step there, covers included.
#[must_use]
pub fn price(search: &Search, situation: usize, step: usize) -> f64 {
    take(search.compiled(), search.open(situation), 0, step).0
}
