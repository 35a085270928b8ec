//! Problems with only two states, solved from below.
//!
//! On the line of beliefs between two states the cost is concave, so that straight lines between
//! lower bounds at the marks of a scale lie below it. Raised again and again from the cost of
//! knowing the state, they close in on the cost of the best policy that may open covers for nothing
//! and repeat any step with an independent outcome: less than the true cost, never more.

use super::compiled::Compiled;

/// Parts of the scale.
const PARTS: usize = 8;
/// Sweeps over the scale.
const MOST_SWEEPS: usize = 6;
/// Rise that is not worth another sweep, as a share of the greatest value.
const STILL: f64 = 1e-3;

/// What is known of each pair so far.
#[derive(Debug, Clone)]
pub struct Pairs {
    /// The scale of the pair of states `a` and `b`, `a` the smaller, at `states * a + b`.
    scales: Vec<Option<Box<[f64; PARTS + 1]>>>,
    states: usize,
}

impl Pairs {
    /// No pair is known yet.
    #[must_use]
    pub fn new(compiled: &Compiled) -> Self {
        Self { scales: vec![None; compiled.states * compiled.states], states: compiled.states }
    }

    /// Lower bound on the cost when only two states are possible, the second with a probability.
    /// `costs` are those of the steps, `known` that of the rest when the state is known.
    #[must_use]
    pub fn cost(
        &mut self,
        compiled: &Compiled,
        (costs, known): (&[f64], &[f64]),
        first: usize,
        second: usize,
        of_second: f64,
    ) -> f64 {
        let (low, high, at) = if first < second {
            (first, second, of_second)
        } else {
            (second, first, 1.0 - of_second)
        };
        let scale = self.scales[self.states * low + high]
            .get_or_insert_with(|| Box::new(raise(compiled, costs, known, low, high)));
        along(scale, at)
    }
}

/// Between two marks of a scale.
fn along(scale: &[f64; PARTS + 1], at: f64) -> f64 {
    let place = at.clamp(0.0, 1.0) * PARTS as f64;
    #[expect(
        clippy::cast_sign_loss,
        clippy::cast_possible_truncation,
        reason = "between nought and the number of parts"
    )]
    let mark = (place.floor() as usize).min(PARTS - 1);
    let share = place - mark as f64;
    scale[mark] * (1.0 - share) + scale[mark + 1] * share
}

fn raise(
    compiled: &Compiled,
    costs: &[f64],
    known: &[f64],
    low: usize,
    high: usize,
) -> [f64; PARTS + 1] {
    let at_mark = |mark: usize| mark as f64 / PARTS as f64;
    let mut scale = core::array::from_fn(|mark| {
        known[low] * (1.0 - at_mark(mark)) + known[high] * at_mark(mark)
    });
    let useful: Vec<_> = compiled
        .steps
        .iter()
        .zip(costs)
        .filter(|(step, _)| {
            step.chance.iter().zip(&step.becomes).any(|(chance, becomes)| {
                (chance[low] - chance[high]).abs() > 0.0
                    || becomes[low] != low
                    || becomes[high] != high
            })
        })
        .collect();
    let size = scale.iter().fold(1.0_f64, |size, value| size.max(value.abs()));
    for _ in 0..MOST_SWEEPS {
        let mut moved = 0.0_f64;
        for mark in 1..PARTS {
            let of_high = at_mark(mark);
            let of_low = 1.0 - of_high;
            let mut best = compiled
                .endings
                .iter()
                .map(|ending| of_low * ending.cost[low] + of_high * ending.cost[high])
                .fold(f64::INFINITY, f64::min);
            for (step, own) in &useful {
                let mut cost = **own;
                for (chance, becomes) in step.chance.iter().zip(&step.becomes) {
                    let (mut to_low, mut to_high) = (0.0, 0.0);
                    for (state, weight) in [(low, of_low), (high, of_high)] {
                        let weight = weight * chance[state];
                        match becomes[state] {
                            after if after == low => to_low += weight,
                            after if after == high => to_high += weight,
                            after => cost += weight * known[after],
                        }
                    }
                    let both = to_low + to_high;
                    if both > 0.0 {
                        cost += both * along(&scale, to_high / both);
                    }
                }
                best = best.min(cost);
            }
            if best > scale[mark] {
                moved = moved.max(best - scale[mark]);
                scale[mark] = best;
            }
        }
        if moved <= STILL * size {
            break;
        }
    }
    scale
}
