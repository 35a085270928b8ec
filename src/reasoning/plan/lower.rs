//! Lower bounds on the expected cost of the rest of the job.
//!
//! - *Knowing the state*: the cost if somebody told what is true, all covers off (the fully
//!   observable relaxation, often called the MDP bound).
//! - *Two at a time*: the cost is a concave function of the belief, so that a mixture of beliefs
//!   costs at least the mixture of their costs. A belief is split into pairs of states, and each
//!   pair is solved from below on a line of beliefs ([`super::pair`]).
//!
//! - *Telling*: what has to be found out, and what steps can tell for their cost
//!   ([`super::information`]).
//!
//! The first two forget what was done already, so they never overestimate. What is shut they forget too,
//! except where every repair puts everything back: then each repair has to open what it needs and
//! is not open now, and whatever is opened or open is shut once more.

use super::access::Access;
use super::accounts::Accounts;
use super::belief::Belief;
use super::compiled::{Compiled, CompiledStep, Flaw};
use super::covers::Open;
use super::information::Roles;
use super::pair::Pairs;
use std::collections::BTreeMap;

/// Sweeps after which a bound that still creeps up is good enough; every sweep is a bound.
const MOST_SWEEPS: usize = 20_000;
/// Creep that is not worth another sweep, as a share of the greatest value.
const STILL: f64 = 1e-13;
/// States that are paired; lighter ones count by themselves.
const PAIRED: usize = 6;

/// Lower bounds of one problem.
#[derive(Debug, Clone)]
pub struct Lower {
    /// Cost of the rest when the state is known, nothing is in the way.
    pub known: Vec<f64>,
    /// Must be shut at every ending.
    shut_in_the_end: Open,
    /// Covers that every repair leaves shut.
    put_back: Open,
    /// Bounds by what of these is open.
    tables: BTreeMap<Open, Table>,
    roles: Option<Roles>,
    access: BTreeMap<Open, Access>,
}

#[derive(Debug, Clone)]
struct Table {
    /// Cost of each step with what it has to open.
    costs: Vec<f64>,
    known: Vec<f64>,
    pairs: Pairs,
    accounts: Option<Accounts>,
}

impl Lower {
    /// Prepares the bounds.
    ///
    /// # Errors
    /// [`Flaw::Endless`] when there is a state from which nothing can end.
    pub fn new(compiled: &Compiled, name: &dyn Fn(usize) -> String) -> Result<Self, Flaw> {
        if let Some(state) = endless(compiled) {
            return Err(Flaw::Endless { state: name(state) });
        }
        let costs: Vec<f64> = compiled.steps.iter().map(|step| step.cost).collect();
        let known = when_known(compiled, &costs);
        let shut_in_the_end = compiled.shut_in_the_end();
        let repairs = compiled.steps.iter().filter(|step| step.changes);
        let put_back = repairs.fold(shut_in_the_end, |shut, step| shut & step.after.shut);
        let roles = Roles::find(compiled, &known);
        let (tables, access) = (BTreeMap::new(), BTreeMap::new());
        Ok(Self { known, shut_in_the_end, put_back, tables, roles, access })
    }

    /// A bound that is quick to work out.
    #[must_use]
    pub fn quick(&mut self, compiled: &Compiled, belief: &Belief, open: Open) -> f64 {
        let shutting = compiled.covers.shutting(open & self.shut_in_the_end);
        shutting + self.table(compiled, open).quick(belief)
    }

    /// A good bound; `used` are steps that are not offered. `price` is where to begin to look for
    /// the price of information, and comes back as the one that was found.
    #[must_use]
    pub fn of(
        &mut self,
        compiled: &Compiled,
        (belief, open, used): (&Belief, Open, u128),
        price: &mut usize,
        searching: bool,
    ) -> f64 {
        let shutting = compiled.covers.shutting(open & self.shut_in_the_end);
        let table = self.table(compiled, open);
        let mut best = table.quick(belief);
        if belief.weights().len() < 2 {
            return shutting + best;
        }
        if belief.weights().len() <= PAIRED {
            best = best.max(table.of(compiled, belief));
        }
        let Some(table) = self.tables.get_mut(&(open & self.put_back)) else { return shutting };
        if let (Some(roles), Some(accounts)) = (&self.roles, &mut table.accounts) {
            let put_back = self.put_back;
            let access =
                self.access.entry(open).or_insert_with(|| Access::new(compiled, open, put_back));
            let situation = (belief, used, &table.known[..]);
            let from = (*price, searching);
            let found = accounts.bound(compiled, roles, access, situation, from);
            best = best.max(found.0);
            *price = found.1;
        }
        shutting + best
    }

    /// Bounds when each test is made first, by step, at a price; below everything where there is
    /// none.
    pub fn firsts(
        &mut self,
        compiled: &Compiled,
        (belief, open, used): (&Belief, Open, u128),
        price: usize,
    ) -> Vec<f64> {
        let mut firsts = vec![f64::NEG_INFINITY; compiled.steps.len()];
        let shutting = compiled.covers.shutting(open & self.shut_in_the_end);
        self.table(compiled, open);
        if let Some(table) = self.tables.get_mut(&(open & self.put_back))
            && let (Some(roles), Some(accounts)) = (&self.roles, &mut table.accounts)
            && let Some(access) = self.access.get(&open)
        {
            let situation = (belief, used, &table.known[..]);
            accounts.firsts(compiled, roles, access, situation, price, &mut firsts);
        }
        for first in &mut firsts {
            *first += shutting;
        }
        firsts
    }

    fn table(&mut self, compiled: &Compiled, open: Open) -> &mut Table {
        let (put_back, open) = (self.put_back, open & self.put_back);
        let roles = &self.roles;
        self.tables.entry(open).or_insert_with(|| {
            let access: Vec<f64> = compiled
                .steps
                .iter()
                .map(|step| {
                    let opened = if step.changes { step.demand.open & put_back & !open } else { 0 };
                    compiled.covers.opening(opened) + compiled.covers.shutting(opened)
                })
                .collect();
            let costs: Vec<f64> = compiled
                .steps
                .iter()
                .zip(&access)
                .map(|(step, access)| step.cost + access)
                .collect();
            let known = when_known(compiled, &costs);
            let accounts = roles
                .as_ref()
                .map(|roles| Accounts::new(compiled, roles, (&costs, &access, &known)));
            Table { costs, known, pairs: Pairs::new(compiled), accounts }
        })
    }
}

impl Table {
    fn quick(&self, belief: &Belief) -> f64 {
        belief.mean(|state| self.known[state])
    }

    fn of(&mut self, compiled: &Compiled, belief: &Belief) -> f64 {
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
                mass * self.pairs.cost(
                    compiled,
                    (&self.costs, &self.known),
                    first,
                    *state,
                    own / mass,
                )
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
            let tables = (&self.costs[..], &self.known[..]);
            sum += 2.0 * second.1 * self.pairs.cost(compiled, tables, first.0, second.0, 0.5);
            left[0].1 -= second.1;
            left.remove(1);
            left.retain(|(_, weight)| *weight > 0.0);
        }
        sum + left.iter().map(|(state, weight)| weight * self.known[*state]).sum::<f64>()
    }
}

/// Rises from below everything, so that each sweep is a bound. A step that leaves a state as it is has its
/// price and nothing else, and would only slow the rise: of a price at a time instead of at once.
fn when_known(compiled: &Compiled, costs: &[f64]) -> Vec<f64> {
    let ends: Vec<f64> = (0..compiled.states)
        .map(|state| {
            compiled.endings.iter().map(|ending| ending.cost[state]).fold(f64::INFINITY, f64::min)
        })
        .collect();
    let least = ends.iter().copied().fold(f64::INFINITY, f64::min);
    let moving: Vec<Vec<usize>> = (0..compiled.states)
        .map(|state| {
            let steps = 0..compiled.steps.len();
            steps.filter(|step| moves(&compiled.steps[*step], state)).collect()
        })
        .collect();
    let mut known = vec![least; compiled.states];
    for _ in 0..MOST_SWEEPS {
        let mut moved = 0.0_f64;
        let mut size = 1.0_f64;
        for state in 0..compiled.states {
            let best = moving[state].iter().fold(ends[state], |best, number| {
                let step = &compiled.steps[*number];
                let after: f64 = step
                    .chance
                    .iter()
                    .zip(&step.becomes)
                    .map(|(chance, becomes)| chance[state] * known[becomes[state]])
                    .sum();
                best.min(costs[*number] + after)
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

/// Whether a step may change a state into another.
fn moves(step: &CompiledStep, state: usize) -> bool {
    let mut outcomes = step.chance.iter().zip(&step.becomes);
    outcomes.any(|(chance, becomes)| chance[state] > 0.0 && becomes[state] != state)
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
