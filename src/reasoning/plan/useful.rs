//! Steps that can still tell or change something, whatever comes after.
//!
//! Two states can be told apart as long as some step shows something else in them, now or after
//! changes that leave both possible. What tells no two of the states that are left apart, and
//! changes none of them, nor renews a step that does, is of no use any more: it counts as spent, so
//! that situations that differ only in such steps are one.

use super::belief::Belief;
use super::compiled::Compiled;

/// Two states that an ending does not treat alike, whatever steps are left.
const ALWAYS: u128 = u128::MAX;

/// For every two states, the steps that are of use while both are possible.
#[derive(Debug, Clone)]
pub struct Useful {
    states: usize,
    /// At `states * a + b` with `a <= b`.
    steps: Vec<u128>,
    /// For every two states, the steps that do not treat both alike, or [`ALWAYS`].
    apart: Vec<u128>,
    /// Steps that can be renewed.
    renewed: u128,
    /// Steps that are of no use any more once their outcome is known.
    lasting: u128,
}

impl Useful {
    /// Works them out.
    #[must_use]
    pub fn new(compiled: &Compiled) -> Self {
        let states = compiled.states;
        let renewed = compiled.steps.iter().fold(0, |mask, step| mask | step.renews);
        let (steps, apart) = (vec![0; states * states], vec![0; states * states]);
        let mut useful = Self { states, steps, apart, renewed, lasting: u128::MAX };
        let mut leads = Vec::new();
        for (number, step) in compiled.steps.iter().enumerate() {
            let bit = 1_u128 << number;
            for a in 0..states {
                for b in a..states {
                    let differ = step.chance.iter().any(|chance| chance[a] != chance[b]);
                    let mut changes = false;
                    if step.changes {
                        for (chance, becomes) in step.chance.iter().zip(&step.becomes) {
                            let (to_a, to_b) = (becomes[a], becomes[b]);
                            let both = chance[a] > 0.0 && chance[b] > 0.0;
                            let moves =
                                (chance[a] > 0.0 && to_a != a) || (chance[b] > 0.0 && to_b != b);
                            changes |= moves;
                            if both && moves {
                                leads.push((useful.at(a, b), useful.at(to_a, to_b)));
                            }
                        }
                    }
                    let alike = (step.becomes.iter().zip(&step.chance)).all(|(becomes, chance)| {
                        chance[a] <= 0.0
                            || becomes[a] == becomes[b]
                            || (becomes[a] == a && becomes[b] == b)
                    });
                    let at = useful.at(a, b);
                    useful.steps[at] |= if differ || changes { bit } else { 0 };
                    useful.apart[at] |= if differ || !alike { bit } else { 0 };
                }
            }
        }
        for a in 0..states {
            for b in a..states {
                if compiled.endings.iter().any(|ending| ending.cost[a] != ending.cost[b]) {
                    useful.apart[states * a + b] = ALWAYS;
                }
            }
        }
        leads.sort_unstable();
        leads.dedup();
        loop {
            let mut moved = useful.count_renewing(compiled);
            for (from, to) in &leads {
                let both = useful.steps[*from] | useful.steps[*to];
                moved |= both != useful.steps[*from];
                useful.steps[*from] = both;
            }
            if !moved {
                break;
            }
        }
        for (number, step) in compiled.steps.iter().enumerate() {
            let again = (0..states).any(|a| {
                (a..states).any(|b| {
                    let same = step.chance.iter().all(|chance| chance[a] == chance[b]);
                    same && useful.steps[states * a + b] >> number & 1 == 1
                })
            });
            useful.lasting &= !(u128::from(again) << number);
        }
        useful
    }

    /// What renews a step that is of use is of use itself; whether that added any.
    fn count_renewing(&mut self, compiled: &Compiled) -> bool {
        let mut added = false;
        for (number, step) in compiled.steps.iter().enumerate().filter(|(_, step)| step.renews != 0)
        {
            let bit = 1_u128 << number;
            for steps in &mut self.steps {
                if *steps & step.renews != 0 && *steps & bit == 0 {
                    *steps |= bit;
                    added = true;
                }
            }
        }
        added
    }

    /// Whether a step that is certain in every state is of no use once its outcome is known.
    #[must_use]
    pub const fn lasts(&self, step: usize) -> bool {
        self.lasting >> step & 1 == 1
    }

    fn at(&self, a: usize, b: usize) -> usize {
        self.states * a.min(b) + a.max(b)
    }

    /// Steps of use in a belief.
    #[must_use]
    pub fn of(&self, belief: &Belief) -> u128 {
        let weights = belief.weights();
        let mut useful = 0;
        for (place, (a, _)) in weights.iter().enumerate() {
            for (b, _) in &weights[place..] {
                useful |= self.steps[self.states * a + b];
            }
        }
        useful
    }

    /// The same belief with one state for all that no step tells apart any more, or treats in
    /// another way, when these are spent.
    #[must_use]
    pub fn merged(&self, belief: Belief, used: u128) -> Belief {
        let left = !used | self.renewed;
        let mut kept: Vec<(usize, f64)> = Vec::with_capacity(belief.weights().len());
        for (state, weight) in belief.weights() {
            let like = |(other, _): &&mut (usize, f64)| {
                let apart = self.apart[self.states * *other + state];
                apart != ALWAYS && apart & left == 0
            };
            match kept.iter_mut().find(like) {
                Some((_, sum)) => *sum += weight,
                None => kept.push((*state, *weight)),
            }
        }
        if kept.len() == belief.weights().len() {
            return belief;
        }
        Belief::from_weights(kept).map_or(belief, |(merged, _)| merged)
    }
}
