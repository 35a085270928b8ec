//! Every first step with what it costs at least and at most, and so what is given away by taking it.

use super::budget::{Bounds, Enough};
use super::search::Search;
use super::upper::Choice;

/// What a situation is worth, and every first step in it.
#[derive(Debug, Clone, PartialEq)]
pub struct Ranking {
    /// Least expected cost of the rest.
    pub value: Bounds,
    /// What the best policy that is known does first.
    pub best: Choice,
    /// Every step that is offered, cheapest first by the cost of the best policy that is known.
    pub steps: Vec<Rank>,
}

/// One first step.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Rank {
    /// Which.
    pub step: usize,
    /// Expected cost of taking it and going on as well as can be.
    pub cost: Bounds,
    /// What that is above the least expected cost. Where the lower end is nought the step has not
    /// been shown to be worse than the best.
    pub regret: Bounds,
}

/// Ranks the steps of a situation: first its value is searched for, until that is `enough`, then each
/// step until that is enough `for_each`. `go_on` is asked all the time whether to stop; what is known
/// by then still holds.
pub fn ranking(
    search: &mut Search,
    situation: usize,
    (enough, for_each): (&Enough, &Enough),
    go_on: &mut dyn FnMut(Bounds) -> bool,
) -> Ranking {
    search.run(situation, enough, go_on);
    let offered: Vec<usize> = search.offered(situation).collect();
    let costs: Vec<(usize, Bounds)> = offered
        .into_iter()
        .map(|step| (step, search.weigh(situation, step, for_each, go_on)))
        .collect();
    // What was found on the way to the steps counts for the value too.
    let value = costs.iter().fold(search.bounds(situation), |value, (_, cost)| Bounds {
        upper: value.upper.min(cost.upper),
        ..value
    });
    let mut steps: Vec<Rank> = costs
        .into_iter()
        .map(|(step, cost)| Rank { step, cost, regret: regret(cost, value) })
        .collect();
    steps.sort_by(|a, b| a.cost.upper.total_cmp(&b.cost.upper).then(a.step.cmp(&b.step)));
    let best = match steps.first() {
        Some(first) if first.cost.upper < search.bounds(situation).upper => {
            Choice::Step(first.step)
        }
        _ => search.choice(situation),
    };
    Ranking { value, best, steps }
}

/// What lies between a cost and the least one.
#[must_use]
pub fn regret(cost: Bounds, least: Bounds) -> Bounds {
    Bounds {
        lower: (cost.lower - least.upper).max(0.0),
        upper: (cost.upper - least.lower).max(0.0),
    }
}
