//! What is in the way of tests, for the accounts of [`super::information`].

use super::compiled::Compiled;
use super::covers::Open;

/// What is in the way of tests, from one state of the covers: each cover is counted once against
/// all that is told behind it.
#[derive(Debug, Clone)]
pub struct Access {
    /// For each step, the place in `order` of the cover that it is counted behind.
    pub(super) homes: Vec<Option<usize>>,
    pub(super) order: Vec<Counted>,
    /// By step, what a repair has to open that stays open.
    pub(super) repair: Vec<f64>,
}

/// A cover, and what it costs.
#[derive(Debug, Clone, Copy)]
pub(super) struct Counted {
    cover: usize,
    cost: f64,
    /// Place in `order` of a cover that all tests behind this one have in the way as well.
    into: Option<usize>,
}

impl Access {
    /// What is in the way.
    #[must_use]
    pub fn new(compiled: &Compiled, open: Open, put_back: Open) -> Self {
        let shut = compiled.shut_in_the_end();
        let cost = |cover: usize| {
            let one = 1 << cover;
            compiled.covers.opening(one) + compiled.covers.shutting(one & shut)
        };
        let tests: Vec<Open> = (compiled.steps.iter())
            .map(|step| if step.changes { 0 } else { step.demand.open & !open })
            .collect();
        let count = |cover: usize| tests.iter().filter(|mask| *mask >> cover & 1 == 1).count();
        let all = tests.iter().fold(0, |mask, test| mask | test);
        let mut covers: Vec<usize> =
            (0..64).filter(|cover| all >> cover & 1 == 1 && cost(*cover) > 0.0).collect();
        covers.sort_by_key(|cover| (count(*cover), *cover));
        let home = |mask: Open| covers.iter().position(|cover| mask >> cover & 1 == 1);
        // Covers that all tests counted behind a cover have in common.
        let mut common = vec![Open::MAX; covers.len()];
        for mask in &tests {
            if let Some(home) = home(*mask) {
                common[home] &= mask;
            }
        }
        let mut order = Vec::with_capacity(covers.len());
        for (place, cover) in covers.iter().enumerate() {
            let behind = common[place];
            let into = (place + 1..covers.len())
                .find(|other| behind != Open::MAX && behind >> covers[*other] & 1 == 1);
            if let Some(into) = into {
                common[into] &= behind;
            }
            order.push(Counted { cover: *cover, cost: cost(*cover), into });
        }
        let repair = compiled
            .steps
            .iter()
            .map(|step| compiled.covers.opening(step.demand.open & !open & !put_back));
        Self {
            homes: tests.iter().map(|mask| home(*mask)).collect(),
            repair: repair.collect(),
            order,
        }
    }

    /// What sums behind the covers are left when each cover is paid for that is not wanted anyway;
    /// they stand so far apart.
    pub(super) fn passed(&self, sums: &mut [f64], apart: usize, wanted: Open) -> f64 {
        let mut left = 0.0;
        for (place, cover) in self.order.iter().enumerate() {
            let free = wanted >> cover.cover & 1 == 1;
            let beyond = sums[place * apart] - if free { 0.0 } else { cover.cost };
            if beyond > 0.0 {
                match cover.into {
                    Some(into) => sums[into * apart] += beyond,
                    None => left += beyond,
                }
            }
        }
        left
    }
}
