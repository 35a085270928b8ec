//! How much a step tells, for its cost.
//!
//! What matters is not which state is true but what would be done about it: states with the same
//! best step are one group, and a step tells as much as it takes off the entropy of the groups
//! (Shannon). A guide to good policies, never a bound.

use super::belief::Belief;
use super::compiled::Compiled;
use super::covers::Open;
use super::upper::take;
use crate::numerics::elementary::ln;

/// Groups of states.
#[derive(Debug, Clone)]
pub struct Telling {
    group: Vec<usize>,
    groups: usize,
    room: Vec<f64>,
}

impl Telling {
    /// Groups states by the step that is best when the state is known; states in which ending is
    /// best are grouped by the ending.
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
        let groups = compiled.steps.len() + compiled.endings.len();
        Self { group, groups, room: Vec::new() }
    }

    /// The test that is expected to tell most for its cost, if any tells anything.
    pub fn best(
        &mut self,
        compiled: &Compiled,
        (belief, open, used): (&Belief, Open, u128),
    ) -> Option<usize> {
        let mut best: Option<(f64, usize)> = None;
        let plogs = |masses: &[f64]| masses.iter().map(|mass| plog(*mass)).sum::<f64>();
        self.room.clear();
        self.room.resize(self.groups, 0.0);
        for (state, weight) in belief.weights() {
            self.room[self.group[*state]] += weight;
        }
        let before = -plogs(&self.room);
        for (number, step) in compiled.steps.iter().enumerate() {
            if step.changes || used >> number & 1 == 1 {
                continue;
            }
            let outcomes = step.chance.len();
            self.room.clear();
            self.room.resize(outcomes * self.groups, 0.0);
            for (chance, masses) in step.chance.iter().zip(self.room.chunks_exact_mut(self.groups))
            {
                for (state, weight) in belief.weights() {
                    masses[self.group[*state]] += weight * chance[*state];
                }
            }
            let after: f64 = self
                .room
                .chunks_exact(self.groups)
                .map(|masses| plog(masses.iter().sum()) - plogs(masses))
                .sum();
            let told = (before - after) / take(compiled, open, used, number).0;
            if told > NOTHING && best.is_none_or(|(most, _)| told > most) {
                best = Some((told, number));
            }
        }
        best.map(|(_, number)| number)
    }
}

/// Told for a unit of cost, this is nothing.
const NOTHING: f64 = 1e-12;

fn plog(chance: f64) -> f64 {
    if chance > 0.0 { chance * ln(chance) } else { 0.0 }
}
