//! Lower bounds on the expected cost of the rest of the job.
//!
//! - *Knowing the state*: the cost if somebody told what is true, all covers off (the fully
//!   observable relaxation, often called the MDP bound).
//! - *Two at a time*: the cost is a concave function of the belief, so that a mixture of beliefs
//!   costs at least the mixture of their costs. A belief is split into pairs of states, and each
//!   pair is solved from below on a line of beliefs ([`super::pair`]).
//!
//! Both forget what was done already and what is shut, so both never overestimate.

use super::belief::Belief;
use super::compiled::{Compiled, Flaw};
use super::pair::Pairs;
use super::problem::Problem;

/// Sweeps after which a bound that still creeps up is good enough; every sweep is a bound.
const MOST_SWEEPS: usize = 20_000;
/// Creep that is not worth another sweep, as a share of the greatest value.
const STILL: f64 = 1e-13;
/// States that are paired; lighter ones count by themselves.
const PAIRED: usize = 16;

/// Lower bounds of one problem.
#[derive(Debug, Clone)]
pub struct Lower {
    /// Cost of the rest when the state is known, nothing is in the way.
    pub known: Vec<f64>,
    pairs: Pairs,
}

impl Lower {
    /// Prepares the bounds.
    ///
    /// # Errors
    /// [`Flaw::Endless`] when there is a state from which nothing can end.
    pub fn new(problem: &Problem, compiled: &Compiled) -> Result<Self, Flaw> {
        if let Some(state) = endless(compiled) {
            return Err(Flaw::Endless { state: problem.states[state].name.clone() });
        }
        let known = when_known(compiled);
        let pairs = Pairs::new(compiled);
        Ok(Self { known, pairs })
    }

    /// A bound that is quick to work out.
    #[must_use]
    pub fn quick(&self, belief: &Belief) -> f64 {
        belief.mean(|state| self.known[state])
    }

    /// The best bound there is.
    #[must_use]
    pub fn of(&mut self, compiled: &Compiled, belief: &Belief) -> f64 {
        let mut heavy: Vec<(usize, f64)> = belief.weights().to_vec();
        if heavy.len() < 2 {
            return self.quick(belief);
        }
        heavy.sort_by(|a, b| b.1.total_cmp(&a.1).then(a.0.cmp(&b.0)));
        let light = heavy.split_off(heavy.len().min(PAIRED));
        let rest: f64 = light.iter().map(|(state, weight)| weight * self.known[*state]).sum();
        let star = self.star(compiled, &heavy);
        let couples = self.couples(compiled, &heavy);
        (rest + star.max(couples)).max(self.quick(belief))
    }

    /// The heaviest state shared out among all others.
    fn star(&mut self, compiled: &Compiled, heavy: &[(usize, f64)]) -> f64 {
        let (first, weight) = heavy[0];
        let others: f64 = heavy[1..].iter().map(|(_, weight)| weight).sum();
        heavy[1..]
            .iter()
            .map(|(state, own)| {
                let mass = own + weight * own / others;
                mass * self.pairs.cost(compiled, &self.known, first, *state, own / mass)
            })
            .sum()
    }

    /// The two heaviest remainders paired evenly, again and again.
    fn couples(&mut self, compiled: &Compiled, heavy: &[(usize, f64)]) -> f64 {
        let mut left = heavy.to_vec();
        let mut sum = 0.0;
        while left.len() > 1 {
            left.sort_by(|a, b| b.1.total_cmp(&a.1).then(a.0.cmp(&b.0)));
            let (first, second) = (left[0], left[1]);
            sum += 2.0 * second.1 * self.pairs.cost(compiled, &self.known, first.0, second.0, 0.5);
            left[0].1 -= second.1;
            left.remove(1);
            left.retain(|(_, weight)| *weight > 0.0);
        }
        sum + left.iter().map(|(state, weight)| weight * self.known[*state]).sum::<f64>()
    }
}

/// Rises from below everything, so that each sweep is a bound.
fn when_known(compiled: &Compiled) -> Vec<f64> {
    let ends: Vec<f64> = (0..compiled.states)
        .map(|state| {
            compiled.endings.iter().map(|ending| ending.cost[state]).fold(f64::INFINITY, f64::min)
        })
        .collect();
    let least = ends.iter().copied().fold(f64::INFINITY, f64::min);
    let mut known = vec![least; compiled.states];
    for _ in 0..MOST_SWEEPS {
        let mut moved = 0.0_f64;
        let mut size = 1.0_f64;
        for state in 0..compiled.states {
            let best = compiled.steps.iter().fold(ends[state], |best, step| {
                let after: f64 = step
                    .chance
                    .iter()
                    .zip(&step.becomes)
                    .map(|(chance, becomes)| chance[state] * known[becomes[state]])
                    .sum();
                best.min(step.cost + after)
            });
            moved = moved.max(best - known[state]);
            known[state] = known[state].max(best);
            size = size.max(known[state].abs());
        }
        if moved <= STILL * size {
            break;
        }
    }
    known
}

/// A state from which no ending can be reached, if there is one.
fn endless(compiled: &Compiled) -> Option<usize> {
    let mut ends: Vec<bool> = (0..compiled.states)
        .map(|state| compiled.endings.iter().any(|ending| ending.cost[state].is_finite()))
        .collect();
    for _ in 0..compiled.states {
        for state in 0..compiled.states {
            ends[state] |= compiled.steps.iter().any(|step| {
                let mut leaves = false;
                let safe = step.chance.iter().zip(&step.becomes).all(|(chance, becomes)| {
                    let to = becomes[state];
                    leaves |= chance[state] > 0.0 && to != state && ends[to];
                    chance[state] <= 0.0 || to == state || ends[to]
                });
                safe && leaves
            });
        }
    }
    ends.iter().position(|ends| !ends)
}
