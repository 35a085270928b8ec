//! Lower bound by what has to be found out: Shannon's accounts over a whole policy.
//!
//! Take any policy. What is unknown about the state at the start (its entropy) is either told by
//! the steps of the policy or still unknown where it ends. A price of information turns this into
//! a bound on cost: per nat, what is unknown is worth the price, and from that is taken what a step
//! can tell beyond its own cost. For a step and any guess `w` at its outcomes, what it tells is at
//! most the mean over the states of the divergence of the state's chances from the guess, so that
//! every guess and every price gives a bound; good ones are looked for. A test that shows the same
//! when repeated tells something only once. What is unknown at an ending, or when a repair has
//! worked, is bounded in the same way by a guess at the states that may end there.
//!
//! All costs are counted beyond those of knowing the state ([`super::lower`]). Covers that are in
//! the way of tests alone are counted against all that is told behind them, once.

use super::compiled::Compiled;
use super::covers::Open;
use crate::numerics::elementary::ln;

/// A cost that is none but for rounding.
const NOTHING: f64 = 1e-9;

/// How steps act on states, as far as this bound asks.
#[derive(Debug, Clone)]
pub struct Roles {
    /// Outcome that a state is sure to show in a step, if there is one: `[step][state]`.
    pub(super) sure: Vec<Vec<Option<u8>>>,
    /// Sum of `p ln p` over the outcomes of a step in a state.
    pub(super) order: Vec<Vec<f64>>,
    /// Ways in which a job can be over, and the states that can end there.
    pub(super) leaves: Vec<Leaf>,
    /// Leaves of each state.
    pub(super) of_state: Vec<Vec<usize>>,
    /// Covers that the last repair of each state may want.
    pub(super) wanted: Vec<Open>,
    /// Whether a step ends the job for sure in a state.
    pub(super) ends: Vec<Vec<bool>>,
}

/// A way in which a job can be over.
#[derive(Debug, Clone)]
pub(super) struct Leaf {
    pub(super) kind: Kind,
    pub(super) states: Vec<bool>,
}

/// What ends it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Kind {
    /// An ending.
    Ending(usize),
    /// A step that shows this outcome in all its states, and mends them.
    Mended(usize, usize),
    /// A step that may show an outcome that is only seen when it has mended.
    Perhaps,
}

impl Roles {
    /// Finds them; `None` where a repair can leave it open whether it has mended, for which these
    /// accounts are not made, and where a step that is not certain may be repeated.
    #[must_use]
    pub fn find(compiled: &Compiled, known: &[f64]) -> Option<Self> {
        let states = compiled.states;
        let best = compiled.endings.iter().enumerate().max_by_key(|(number, ending)| {
            let over = (0..states).filter(|state| ending.cost[*state] <= known[*state] + NOTHING);
            (over.count(), core::cmp::Reverse(*number))
        })?;
        let over: Vec<bool> =
            (0..states).map(|state| best.1.cost[state] <= known[state] + NOTHING).collect();
        let mut roles = Self {
            sure: Vec::new(),
            order: Vec::new(),
            leaves: Vec::new(),
            of_state: vec![Vec::new(); states],
            wanted: vec![0; states],
            ends: Vec::new(),
        };
        for (number, ending) in compiled.endings.iter().enumerate() {
            let states = ending.cost.iter().map(|cost| cost.is_finite()).collect();
            roles.add(Leaf { kind: Kind::Ending(number), states });
        }
        let renewed = compiled.steps.iter().fold(0, |mask, step| mask | step.renews);
        for (number, step) in compiled.steps.iter().enumerate() {
            let row = |state: usize| step.chance.iter().map(move |chance| chance[state]);
            let sure: Vec<Option<u8>> = (0..states)
                .map(|state| {
                    let place = row(state).position(|chance| chance >= 1.0)?;
                    u8::try_from(place).ok()
                })
                .collect();
            let repeatable = step.repeats || renewed >> number & 1 == 1;
            if repeatable && sure.iter().any(Option::is_none) {
                return None;
            }
            roles.order.push((0..states).map(|state| row(state).map(plog).sum()).collect());
            let mut ends = vec![false; states];
            for (outcome, (chance, becomes)) in step.chance.iter().zip(&step.becomes).enumerate() {
                if (0..states).all(|state| chance[state] <= 0.0 || becomes[state] == state) {
                    continue;
                }
                if (0..states).any(|state| chance[state] > 0.0 && !over[becomes[state]]) {
                    return None;
                }
                let certain: Vec<bool> = chance.iter().map(|chance| *chance >= 1.0).collect();
                let perhaps: Vec<bool> =
                    (0..states).map(|state| chance[state] > 0.0 && !certain[state]).collect();
                for (end, certain) in ends.iter_mut().zip(&certain) {
                    *end |= certain;
                }
                if perhaps.contains(&true) {
                    roles.add(Leaf { kind: Kind::Perhaps, states: perhaps });
                }
                for (wanted, can) in roles.wanted.iter_mut().zip(chance) {
                    if *can > 0.0 {
                        *wanted |= step.demand.open;
                    }
                }
                roles.add(Leaf { kind: Kind::Mended(number, outcome), states: certain });
            }
            roles.ends.push(ends);
            roles.sure.push(sure);
        }
        Some(roles)
    }

    fn add(&mut self, leaf: Leaf) {
        for (state, _) in leaf.states.iter().enumerate().filter(|(_, can)| **can) {
            self.of_state[state].push(self.leaves.len());
        }
        self.leaves.push(leaf);
    }
}

/// `p ln p`.
pub(super) fn plog(chance: f64) -> f64 {
    if chance > 0.0 { chance * ln(chance) } else { 0.0 }
}
