//! The accounts of [`super::information`] at prices of information, belief by belief.

use super::access::Access;
use super::belief::Belief;
use super::columns::{Room, Shown, Sums, Test};
use super::compiled::Compiled;
use super::information::{Kind, Leaf, Roles};
use crate::numerics::elementary::{exp, ln};

/// Prices that are tried: from this share of the cheapest step, each so much more than the last.
const CHEAPEST: f64 = 0.25;
const RATIO: f64 = 1.3;
const PRICES: usize = 20;

/// What holds for one set of costs: at each price, what does not depend on the belief.
#[derive(Debug, Clone)]
pub struct Accounts {
    prices: Vec<Price>,
    room: Room,
}

#[derive(Debug, Clone)]
struct Price {
    of_information: f64,
    /// By leaf and state: `exp(-excess / price)`.
    share: Vec<Vec<f64>>,
    /// By leaf: logarithm of the guess at its outcome.
    guess: Vec<f64>,
    /// By step and state, what a repair tells beyond its cost where it does not mend.
    failed: Vec<(usize, Vec<f64>)>,
    /// By step: the guess from which on an outcome tells nothing beyond the cost.
    cap: Vec<f64>,
}

impl Accounts {
    /// Prepares them. `costs` are those of the steps, `known` the cost when the state is known,
    /// `access` what of a step's cost is for covers.
    #[must_use]
    pub fn new(
        compiled: &Compiled,
        roles: &Roles,
        (costs, access, known): (&[f64], &[f64], &[f64]),
    ) -> Self {
        let cheapest = compiled.steps.iter().map(|step| step.cost).fold(f64::INFINITY, f64::min);
        let excess = |step: usize, state: usize| {
            let details = &compiled.steps[step];
            let after: f64 = details
                .chance
                .iter()
                .zip(&details.becomes)
                .map(|(chance, becomes)| chance[state] * known[becomes[state]])
                .sum();
            (costs[step] + after - known[state]).max(0.0)
        };
        let excess: Vec<Vec<f64>> = (0..compiled.steps.len())
            .map(|step| (0..compiled.states).map(|state| excess(step, state)).collect())
            .collect();
        let mut prices = Vec::with_capacity(PRICES);
        let mut price = cheapest * CHEAPEST;
        for _ in 0..PRICES {
            prices.push(Price::new(compiled, roles, &excess, access, known, price));
            price *= RATIO;
        }
        Self { prices, room: Room::default() }
    }

    /// Where to begin to look for a price.
    pub const BEGIN: usize = PRICES / 2;

    /// The bound at a price of the list; or, `searching`, at the best one near it, and which that
    /// is.
    pub fn bound(
        &mut self,
        compiled: &Compiled,
        roles: &Roles,
        access: &Access,
        (belief, used, known): (&Belief, u128, &[f64]),
        (mut place, searching): (usize, bool),
    ) -> (f64, usize) {
        let weights = belief.weights();
        self.room.columns.gather(compiled, roles, (weights, used));
        self.room.expect(access, weights, used);
        let Room { columns, tests, masses, sums } = &mut self.room;
        let shown = Shown { weights, used, known, access, columns, tests, masses };
        let mut at = |place: usize| self.prices[place].bound(compiled, roles, &shown, sums);
        let mut best = at(place);
        if !searching {
            return (best, place);
        }
        let mut rising = false;
        while place + 1 < PRICES {
            let next = at(place + 1);
            if next <= best {
                break;
            }
            (best, place, rising) = (next, place + 1, true);
        }
        while !rising && place > 0 {
            let next = at(place - 1);
            if next <= best {
                break;
            }
            (best, place) = (next, place - 1);
        }
        (best, place)
    }
}

impl Accounts {
    /// The bound at a price when each of the tests is made first, in all states: `firsts` by step,
    /// left alone where it is not known.
    pub fn firsts(
        &mut self,
        compiled: &Compiled,
        roles: &Roles,
        access: &Access,
        (belief, used, known): (&Belief, u128, &[f64]),
        place: usize,
        firsts: &mut [f64],
    ) {
        let (bound, _) = self.bound(compiled, roles, access, (belief, used, known), (place, false));
        let Room { columns, tests, masses, sums } = &mut self.room;
        let weights = belief.weights();
        let shown = Shown { weights, used, known, access, columns, tests, masses };
        let price = &self.prices[place];
        for test in shown.tests {
            // What it could tell where it pays is taken out, what it does tell is put in; behind a
            // cover the first stays in, which is less than the truth.
            let hoped =
                if test.home.is_none() { price.tell(compiled, &shown, test, sums) } else { 0.0 };
            let step = test.column.step;
            let told = price.of_information * shown.told(test);
            firsts[step] = bound + hoped + compiled.steps[step].cost - told;
        }
        for step in 0..firsts.len() {
            if !compiled.steps[step].changes && used >> step & 1 == 0 {
                firsts[step] = firsts[step].max(bound);
            }
        }
    }
}

impl Price {
    fn new(
        compiled: &Compiled,
        roles: &Roles,
        excess: &[Vec<f64>],
        access: &[f64],
        known: &[f64],
        price: f64,
    ) -> Self {
        let states = compiled.states;
        let mut guesses: Vec<Vec<f64>> = vec![Vec::new(); compiled.steps.len()];
        let mut failed = Vec::new();
        for (number, step) in compiled.steps.iter().enumerate().filter(|(_, step)| step.changes) {
            let ends = &roles.ends[number];
            let least = (0..states)
                .filter(|state| !ends[*state])
                .map(|state| excess[number][state] - access[number])
                .fold(f64::INFINITY, f64::min)
                .max(0.0);
            let mends = |outcome: usize| {
                (0..states).any(|s| step.chance[outcome][s] > 0.0 && step.becomes[outcome][s] != s)
            };
            let good = (0..step.chance.len()).filter(|outcome| mends(*outcome)).count();
            let bad = step.chance.len() - good;
            let each = exp(-least / price).min(0.5 / bad.max(1) as f64);
            let rest = (1.0 - each * bad as f64) / good.max(1) as f64;
            let guess: Vec<f64> = (0..step.chance.len())
                .map(|outcome| ln(if mends(outcome) { rest } else { each }))
                .collect();
            let beyond: Vec<f64> = (0..states)
                .map(|state| {
                    if ends[state] {
                        return 0.0;
                    }
                    let cross: f64 =
                        step.chance.iter().zip(&guess).map(|(c, g)| c[state] * g).sum();
                    let told = price * (roles.order[number][state] - cross);
                    (told - (excess[number][state] - access[number]).max(0.0)).max(0.0)
                })
                .collect();
            if beyond.iter().any(|beyond| *beyond > 0.0) {
                failed.push((number, beyond));
            }
            guesses[number] = guess;
        }
        let over = |leaf: &Leaf, state: usize| match leaf.kind {
            Kind::Ending(ending) => compiled.endings[ending].cost[state] - known[state],
            Kind::Mended(step, _) => excess[step][state],
            Kind::Perhaps => 0.0,
        };
        let share = roles
            .leaves
            .iter()
            .map(|leaf| {
                (0..states)
                    .map(
                        |s| if leaf.states[s] { exp(-over(leaf, s).max(0.0) / price) } else { 0.0 },
                    )
                    .collect()
            })
            .collect();
        let guess = roles
            .leaves
            .iter()
            .map(|leaf| match leaf.kind {
                Kind::Mended(step, outcome) => guesses[step][outcome],
                _ => 0.0,
            })
            .collect();
        let cap = compiled.steps.iter().map(|step| exp(-step.cost / price)).collect();
        Self { of_information: price, share, guess, failed, cap }
    }

    fn bound(&self, compiled: &Compiled, roles: &Roles, shown: &Shown<'_>, room: &mut Sums) -> f64 {
        let weights = shown.weights;
        room.left.clear();
        for (place, (leaf, guess)) in roles.leaves.iter().zip(&self.guess).enumerate() {
            let share = &self.share[place];
            let mass: f64 = weights.iter().map(|(state, weight)| weight * share[*state]).sum();
            let way = match leaf.kind {
                Kind::Mended(step, _) => shown.access.repair[step],
                _ => 0.0,
            };
            let left = if mass > 0.0 {
                self.of_information * (guess - ln(mass)) + way
            } else {
                f64::INFINITY
            };
            room.left.push(left);
        }
        room.beyond.clear();
        room.beyond.resize(shown.access.order.len() * weights.len(), 0.0);
        room.hidden = false;
        let mut total = 0.0;
        for test in shown.tests {
            total -= self.tell(compiled, shown, test, room);
        }
        for (place, (state, weight)) in weights.iter().enumerate() {
            let end = roles.of_state[*state].iter().map(|leaf| room.left[*leaf]);
            let mut value = shown.known[*state] + end.fold(f64::INFINITY, f64::min);
            for (step, beyond) in &self.failed {
                if shown.used >> step & 1 == 0 {
                    value -= beyond[*state];
                }
            }
            if room.hidden {
                let behind = &mut room.beyond[place..];
                value -= shown.access.passed(behind, weights.len(), roles.wanted[*state]);
            }
            total += weight * value;
        }
        total
    }

    /// What a test tells beyond its cost: the mean where nothing is in the way, else put down
    /// behind the cover, state by state.
    fn tell(&self, compiled: &Compiled, shown: &Shown<'_>, test: &Test, room: &mut Sums) -> f64 {
        let column = test.column;
        let cap = self.cap[column.step];
        if test.shown as f64 * cap <= 1.0 {
            return 0.0;
        }
        let own = compiled.steps[column.step].cost;
        let states = shown.weights.len();
        let masses = &shown.masses[test.masses..test.masses + column.outcomes];
        let scale = scale(masses, cap);
        let beyond = |told: f64| (self.of_information * told - own).max(0.0);
        let guess = |mass: &f64| if *mass > 0.0 { ln((mass * scale).min(cap)) } else { 0.0 };
        room.guess.clear();
        room.guess.extend(masses.iter().map(guess));
        let home = test.home.map(|home| home * states);
        room.hidden |= home.is_some();
        if column.sure {
            let guess = room.guess.iter().zip(masses).map(|(guess, mass)| (beyond(-guess), mass));
            let Some(home) = home else { return guess.map(|(beyond, mass)| beyond * mass).sum() };
            let labels = &shown.columns.labels[column.from..column.from + states];
            for (sum, label) in room.beyond[home..].iter_mut().zip(labels) {
                *sum += beyond(-room.guess[usize::from(*label)]);
            }
            return 0.0;
        }
        let rows = &shown.columns.rows[column.from..];
        room.told.clear();
        room.told.extend_from_slice(&rows[..states]);
        for (row, guess) in rows[states..].chunks_exact(states).zip(&room.guess) {
            for (told, chance) in room.told.iter_mut().zip(row) {
                *told -= chance * guess;
            }
        }
        if let Some(home) = home {
            for (sum, told) in room.beyond[home..].iter_mut().zip(&room.told) {
                *sum += beyond(*told);
            }
            return 0.0;
        }
        let weights = shown.weights.iter().map(|(_, weight)| weight);
        weights.zip(&room.told).map(|(weight, told)| weight * beyond(*told)).sum()
    }
}

/// By what the chances of outcomes are multiplied to sum to one when none may be above the cap.
fn scale(masses: &[f64], cap: f64) -> f64 {
    let mut scale = 1.0;
    let mut capped = 0;
    loop {
        let over = |mass: &&f64| **mass * scale > cap;
        let now = masses.iter().filter(over).count();
        if now == capped {
            return scale;
        }
        capped = now;
        let rest: f64 = masses.iter().filter(|mass| !over(mass)).sum();
        let room = 1.0 - capped as f64 * cap;
        if rest <= 0.0 || room <= 0.0 {
            return scale;
        }
        scale = room / rest;
    }
}
