//! The ways on from a situation: which steps may be best there, and what they cost at least.

use super::search::{Search, Way};
use super::upper::{take, test_and_mend};

/// Below this chance of coming somewhere the quick policy makes no tests; below a few times the
/// share of one situation, where more room is given.
const SELDOM: f64 = 0.003;
const TIMES: f64 = 3.0;

impl Search {
    /// Follows a quick policy through so many situations.
    pub(super) fn follow(&mut self, here: usize, mut room: usize) {
        let situation = &mut self.situations[here];
        let seldom = SELDOM.min(TIMES / room as f64);
        let (before, size) = (room, situation.belief.weights().len());
        let there = (&situation.belief, situation.open, situation.used);
        let guides = (&mut self.telling, &self.lower.known[..]);
        let (upper, choice) =
            test_and_mend(&self.compiled, guides, there, (1.0, seldom), &mut room);
        self.work += ((before - room) * size) as u64;
        if upper < situation.bounds.upper {
            situation.bounds.upper = upper.max(situation.bounds.lower);
            situation.choice = choice;
        }
    }

    /// Looks for the ways on from a situation, leaving out those that cannot be better.
    pub(super) fn look(&mut self, here: usize) {
        let situation = &self.situations[here];
        let there = (&situation.belief, situation.open, situation.used);
        let upper = situation.bounds.upper;
        let firsts = self.lower.firsts(&self.compiled, there, situation.price);
        let mut ways: Vec<Way> = Vec::new();
        for step in 0..self.compiled.steps.len() {
            let at_least = firsts[step].max(situation.bounds.lower);
            if there.2 >> step & 1 == 0 && at_least < upper {
                let cost = take(&self.compiled, there.1, there.2, step).0;
                ways.push(Way { step, cost, at_least, weighed: false, to: None });
            }
        }
        let replaced = self.replaced(here, &ways);
        let mut replaced = replaced.into_iter();
        ways.retain(|_| !replaced.next().unwrap_or(false));
        // The way that may be best is opened at once: good policies are made of such.
        loop {
            let best = (0..ways.len())
                .min_by(|a, b| ways[*a].at_least.total_cmp(&ways[*b].at_least).then(a.cmp(b)));
            let Some(place) = best else { break };
            if ways[place].weighed {
                ways[place] = self.way(here, ways[place].step);
                break;
            }
            self.weigh_branches(here, &mut ways[place]);
            if ways[place].at_least >= self.situations[here].bounds.upper {
                ways.remove(place);
            }
        }
        self.situations[here].ways = Some(ways);
    }

    /// Bounds a way by its branches.
    pub(super) fn weigh_branches(&mut self, here: usize, way: &mut Way) {
        let situation = &self.situations[here];
        let (open, used, price) = (situation.open, situation.used, situation.price);
        let upper = situation.bounds.upper;
        let (cost, open, used_then) = take(&self.compiled, open, used, way.step);
        let branches = self.compiled.branches(&situation.belief, way.step);
        way.weighed = true;
        if let [branch] = &branches[..]
            && branch.belief == situation.belief
            && self.compiled.steps[way.step].renews & used == 0
        {
            // It tells nothing here, and makes nothing new that could.
            way.at_least = f64::INFINITY;
            return;
        }
        let mut at_least = cost;
        let mut quicks = Vec::with_capacity(branches.len());
        for branch in &branches {
            let quick = self.lower.quick(&self.compiled, &branch.belief, open);
            at_least += branch.chance * quick;
            quicks.push(quick);
        }
        for (branch, quick) in branches.iter().zip(quicks) {
            if at_least >= upper {
                break;
            }
            let there = (&branch.belief, open, used_then);
            let mut price = price;
            self.work += branch.belief.weights().len() as u64;
            let lower = self.lower.of(&self.compiled, there, &mut price, false);
            at_least += branch.chance * (lower - quick);
        }
        way.at_least = way.at_least.max(at_least);
    }

    /// Steps that another one replaces: it costs no more, leaves the same open, and tells at least
    /// as much, all of it for good.
    fn replaced(&self, here: usize, ways: &[Way]) -> Vec<bool> {
        let situation = &self.situations[here];
        let weights = situation.belief.weights();
        let labels: Vec<Option<Vec<usize>>> = ways
            .iter()
            .map(|way| {
                let step = &self.compiled.steps[way.step];
                if step.changes || !self.useful.lasts(way.step) {
                    return None;
                }
                let sure = |(state, _): &(usize, f64)| {
                    step.chance.iter().position(|chance| chance[*state] >= 1.0)
                };
                weights.iter().map(sure).collect::<Option<Vec<usize>>>()
            })
            .collect();
        let mut replaced = vec![false; ways.len()];
        for place in 0..ways.len() {
            let Some(own) = &labels[place] else { continue };
            let a = &self.compiled.steps[ways[place].step];
            replaced[place] = (0..ways.len()).any(|other| {
                let Some(theirs) = &labels[other] else { return false };
                let b = &self.compiled.steps[ways[other].step];
                let open =
                    |way: &Way| take(&self.compiled, situation.open, situation.used, way.step).1;
                other != place
                    && !replaced[other]
                    && ways[other].cost <= ways[place].cost
                    && a.renews == b.renews
                    && open(&ways[place]) == open(&ways[other])
                    && refines(theirs, own)
            });
        }
        replaced
    }
}

/// Whether whoever knows the fine label knows the coarse one.
fn refines(fine: &[usize], coarse: &[usize]) -> bool {
    let mut of = vec![usize::MAX; fine.iter().max().map_or(0, |most| most + 1)];
    fine.iter().zip(coarse).all(|(fine, coarse)| {
        let known = &mut of[*fine];
        if *known == usize::MAX {
            *known = *coarse;
        }
        *known == *coarse
    })
}
