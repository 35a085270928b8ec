//! Upper bounds: what a policy costs that can be worked out without a search.
//!
//! The policy mends without testing: always the step that takes the most expected cost away for its
//! own, until ending is no dearer (in descending order of chance over cost, which is optimal for
//! one fault, disjoint repairs and constant costs: Kadane and Simon 1977).

use super::belief::Belief;
use super::compiled::Compiled;
use super::covers::Open;
use super::telling::Telling;

/// Steps that the policy does at most in a row.
const MOST_DEPTH: usize = 48;
/// Below this chance of coming so far the policy ends if it can.
const NEGLIGIBLE: f64 = 1e-9;

/// What a policy does first.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Choice {
    /// This step.
    Step(usize),
    /// This ending.
    End(usize),
}

/// Cost of testing what tells most for its cost and then mending, and what comes first; where
/// `room` situations have been looked at, or the chance of coming there is `seldom`, without testing.
pub fn test_and_mend(
    compiled: &Compiled,
    (telling, known): (&mut Telling, &[f64]),
    (belief, open, used): (&Belief, Open, u128),
    (reached, seldom): (f64, f64),
    room: &mut usize,
) -> (f64, Choice) {
    let mut best = mend_blindly(compiled, known, belief, open, used);
    if *room == 0 || reached < seldom || belief.weights().len() < 2 {
        return best;
    }
    *room -= 1;
    let Some(step) = telling.best(compiled, (belief, open, used)) else { return best };
    let (mut total, open_then, used_then) = take(compiled, open, used, step);
    for branch in compiled.branches(belief, step) {
        let there = (&branch.belief, open_then, used_then);
        let reached = (reached * branch.chance, seldom);
        let rest = test_and_mend(compiled, (&mut *telling, known), there, reached, room);
        total += branch.chance * rest.0;
        if total >= best.0 {
            return best;
        }
    }
    if total < best.0 {
        best = (total, Choice::Step(step));
    }
    best
}

/// Cost of mending without testing, and what comes first. Infinite when no ending is reached.
#[must_use]
pub fn mend_blindly(
    compiled: &Compiled,
    known: &[f64],
    belief: &Belief,
    open: Open,
    used: u128,
) -> (f64, Choice) {
    descend(compiled, known, belief, open, used, (0, 1.0))
}

fn descend(
    compiled: &Compiled,
    known: &[f64],
    belief: &Belief,
    open: Open,
    used: u128,
    (depth, reached): (usize, f64),
) -> (f64, Choice) {
    let mut best = cheapest_ending(compiled, belief, open);
    if depth >= MOST_DEPTH || (reached < NEGLIGIBLE && best.0.is_finite()) {
        return best;
    }
    let Some(step) = best_repair(compiled, known, belief, open, used) else {
        return best;
    };
    let (cost, open_then, used_then) = take(compiled, open, used, step);
    let mut total = cost;
    for branch in compiled.branches(belief, step) {
        let reached = reached * branch.chance;
        let rest =
            descend(compiled, known, &branch.belief, open_then, used_then, (depth + 1, reached));
        total += branch.chance * rest.0;
        if total >= best.0 {
            return best;
        }
    }
    if total < best.0 {
        best = (total, Choice::Step(step));
    }
    best
}

/// The cheapest ending.
#[must_use]
pub fn cheapest_ending(compiled: &Compiled, belief: &Belief, open: Open) -> (f64, Choice) {
    (0..compiled.endings.len())
        .map(|ending| (compiled.ending_cost(belief, open, ending), Choice::End(ending)))
        .min_by(|a, b| a.0.total_cmp(&b.0))
        .unwrap_or((f64::INFINITY, Choice::End(0)))
}

/// Cost of a step with its covers; what is open and what is used up after it.
#[must_use]
pub fn take(compiled: &Compiled, open: Open, used: u128, step: usize) -> (f64, Open, u128) {
    let details = &compiled.steps[step];
    let (before, open_then) = compiled.covers.meet(open, details.demand);
    let (after, open_then) = compiled.covers.meet(open_then, details.after);
    let mut used_then = used & !details.renews;
    if !details.repeats {
        used_then |= 1 << step;
    }
    (details.cost + before + after, open_then, used_then)
}

fn best_repair(
    compiled: &Compiled,
    known: &[f64],
    belief: &Belief,
    open: Open,
    used: u128,
) -> Option<usize> {
    compiled
        .steps
        .iter()
        .enumerate()
        .filter(|(number, step)| step.changes && used >> number & 1 == 0)
        .map(|(number, step)| {
            let mut saved = 0.0;
            for (chance, becomes) in step.chance.iter().zip(&step.becomes) {
                for (state, weight) in belief.weights() {
                    let to = becomes[*state];
                    if to != *state {
                        saved += weight * chance[*state] * (known[*state] - known[to]);
                    }
                }
            }
            let cost = take(compiled, open, used, number).0;
            (saved / cost, number)
        })
        .filter(|(ratio, _)| *ratio > 0.0)
        .max_by(|a, b| a.0.total_cmp(&b.0).then(b.1.cmp(&a.1)))
        .map(|(_, number)| number)
}
