//! A belief: which states may be true, and how likely.

/// States that are possible, in rising order, with their probabilities, which sum to one.
#[derive(Debug, Clone, PartialEq)]
pub struct Belief {
    weights: Vec<(usize, f64)>,
}

/// Scale on which two beliefs count as one: far finer than any input is known, far coarser than
/// what rounding does when the same evidence comes in another order.
const SAME: f64 = 1e12;

impl Belief {
    /// A belief from weights, zero or more, and their sum; `None` when there is no weight at all.
    #[must_use]
    pub fn from_weights(mut weights: Vec<(usize, f64)>) -> Option<(Self, f64)> {
        weights.retain(|(_, weight)| *weight > 0.0);
        weights.sort_by_key(|(state, _)| *state);
        weights.dedup_by(|next, kept| {
            let same = next.0 == kept.0;
            if same {
                kept.1 += next.1;
            }
            same
        });
        let total: f64 = weights.iter().map(|(_, weight)| weight).sum();
        if total <= 0.0 {
            return None;
        }
        for (_, weight) in &mut weights {
            *weight /= total;
        }
        Some((Self { weights }, total))
    }

    /// The possible states with their probabilities.
    #[must_use]
    pub fn weights(&self) -> &[(usize, f64)] {
        &self.weights
    }

    /// Expectation of a quantity over the states.
    #[must_use]
    pub fn mean(&self, of: impl Fn(usize) -> f64) -> f64 {
        self.weights.iter().map(|(state, weight)| weight * of(*state)).sum()
    }

    /// What two beliefs share when they are the same but for rounding.
    #[must_use]
    pub fn key(&self) -> Vec<(usize, u64)> {
        #[expect(
            clippy::cast_sign_loss,
            clippy::cast_possible_truncation,
            reason = "a probability times a million millions is a small whole number"
        )]
        self.weights
            .iter()
            .map(|(state, weight)| (*state, (weight * SAME).round() as u64))
            .collect()
    }
}
