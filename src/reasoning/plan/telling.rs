//! How much a step tells, for its cost.
//!
//! What matters is not which state is true but what would be done about it: states with the same
//! best step are one group, and a step tells as many bits as it takes off the entropy of the groups
//! (Shannon). A guide where to look first, never a bound.

use super::belief::Belief;
use super::compiled::{Branch, Compiled};
use crate::numerics::elementary::ln;
use std::collections::BTreeMap;

/// Groups of states.
#[derive(Debug, Clone)]
pub struct Telling {
    group: Vec<usize>,
}

impl Telling {
    /// Groups states by the step that is best when the state is known; states in which ending is
    /// best form the last group.
    #[must_use]
    pub fn new(compiled: &Compiled, known: &[f64]) -> Self {
        let group = (0..compiled.states)
            .map(|state| {
                compiled
                    .steps
                    .iter()
                    .enumerate()
                    .map(|(number, step)| {
                        let after: f64 = step
                            .chance
                            .iter()
                            .zip(&step.becomes)
                            .map(|(chance, becomes)| chance[state] * known[becomes[state]])
                            .sum();
                        (step.cost + after, number)
                    })
                    .chain(compiled.endings.iter().enumerate().map(|(number, ending)| {
                        (ending.cost[state], compiled.steps.len() + number)
                    }))
                    .min_by(|a, b| a.0.total_cmp(&b.0))
                    .map_or(0, |(_, number)| number)
            })
            .collect();
        Self { group }
    }

    /// Bits that a step is expected to tell for each unit of its cost.
    #[must_use]
    pub fn per_cost(&self, before: &Belief, branches: &[Branch], cost: f64) -> f64 {
        let after: f64 =
            branches.iter().map(|branch| branch.chance * self.entropy(&branch.belief)).sum();
        (self.entropy(before) - after) / cost
    }

    /// Entropy of the groups, in bits.
    fn entropy(&self, belief: &Belief) -> f64 {
        let mut shares: BTreeMap<usize, f64> = BTreeMap::new();
        for (state, weight) in belief.weights() {
            *shares.entry(self.group[*state]).or_default() += weight;
        }
        let nats: f64 =
            shares.values().filter(|share| **share > 0.0).map(|share| -share * ln(*share)).sum();
        nats / core::f64::consts::LN_2
    }
}
