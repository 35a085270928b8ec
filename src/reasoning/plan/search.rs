//! The search: two bounds on the least expected cost, closing in.
//!
//! A situation is what is open, what may not be repeated, and what is believed. From the situation
//! at hand the search walks, again and again, to where the bounds are still far apart: by the step
//! that looks cheapest at best, then by the outcome that adds most to the gap; there it looks one
//! step further and carries the better bounds back. Every other walk instead follows the best policy
//! that is known, and where that would mend blindly the test that tells most for its cost: the first
//! kind of walk raises the lower bound, the second brings the upper one down. Known as bounded
//! real-time dynamic programming (H. B. `McMahan`, M. Likhachev and G. Gordon 2005, cited from memory);
//! here over beliefs that are kept exactly and met again whatever the order of the evidence.

use super::belief::Belief;
use super::compiled::{Branch, Compiled, Flaw};
use super::covers::Open;
use super::lower::Lower;
use super::problem::Problem;
use super::telling::Telling;
use super::upper::{Choice, mend_blindly, take};
use std::collections::BTreeMap;

/// Steps that one walk goes down at most.
const MOST_DEPTH: usize = 200;

/// What is enough.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Enough {
    /// Gap as a share of the upper bound.
    pub relative: f64,
    /// Gap in units of cost.
    pub absolute: f64,
    /// Situations that may be kept.
    pub situations: usize,
}

impl Enough {
    /// Until the bounds meet, but for rounding.
    pub const EXACT: Self = Self { relative: 1e-9, absolute: 1e-9, situations: 1_000_000 };

    fn is_met(&self, bounds: Bounds) -> bool {
        let near = self.absolute.max(self.relative * bounds.upper.abs());
        // Where no policy is known yet, no gap is near; where there is none, nothing is to be found.
        bounds.lower.is_infinite() || (bounds.upper.is_finite() && bounds.gap() <= near)
    }
}

/// What a cost lies between.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Bounds {
    /// At least.
    pub lower: f64,
    /// At most; the cost of a policy that exists.
    pub upper: f64,
}

impl Bounds {
    /// Distance.
    #[must_use]
    pub fn gap(&self) -> f64 {
        (self.upper - self.lower).max(0.0)
    }
}

/// One step that may come next.
#[derive(Debug, Clone)]
struct Way {
    step: usize,
    cost: f64,
    /// What it costs at least with all that follows, before anybody has looked where it leads.
    at_least: f64,
    /// Outcome, chance, situation; `None` until the way looks like the best, because most never do.
    to: Option<Vec<Leg>>,
}

type Leg = (usize, f64, usize);

/// What a walk does next.
enum Next {
    /// A way was opened here.
    Opened,
    /// On to this situation.
    On(usize),
    /// Nothing is left to look at.
    Nothing,
}

#[derive(Debug, Clone)]
struct Situation {
    open: Open,
    used: u128,
    belief: Belief,
    bounds: Bounds,
    choice: Choice,
    /// Ways on, once looked for, that may be better than what is known.
    ways: Option<Vec<Way>>,
}

type Key = (Open, u128, Vec<(usize, u64)>);

/// A search on one problem.
#[derive(Debug, Clone)]
pub struct Search {
    compiled: Compiled,
    lower: Lower,
    telling: Telling,
    situations: Vec<Situation>,
    known: BTreeMap<Key, usize>,
    root: usize,
    walks: u64,
}

impl Search {
    /// A search that has not looked further than the start.
    ///
    /// # Errors
    /// [`Flaw`] when the problem contradicts itself.
    pub fn new(problem: &Problem) -> Result<Self, Flaw> {
        let compiled = Compiled::new(problem)?;
        let lower = Lower::new(problem, &compiled)?;
        let telling = Telling::new(&compiled, &lower.known);
        let mut search = Self {
            lower,
            telling,
            situations: Vec::new(),
            known: BTreeMap::new(),
            root: 0,
            walks: 0,
            compiled,
        };
        let prior = search.compiled.prior.clone();
        search.root = search.situation(0, 0, prior);
        Ok(search)
    }

    /// The problem as it was made ready.
    #[must_use]
    pub const fn compiled(&self) -> &Compiled {
        &self.compiled
    }

    /// The situation at the start.
    #[must_use]
    pub const fn root(&self) -> usize {
        self.root
    }

    /// Least expected cost of a situation lies between these.
    #[must_use]
    pub fn bounds(&self, situation: usize) -> Bounds {
        self.situations[situation].bounds
    }

    /// What the best policy that is known does there.
    #[must_use]
    pub fn choice(&self, situation: usize) -> Choice {
        self.situations[situation].choice
    }

    /// What is believed there.
    #[must_use]
    pub fn belief(&self, situation: usize) -> &Belief {
        &self.situations[situation].belief
    }

    /// What is open there.
    #[must_use]
    pub fn open(&self, situation: usize) -> Open {
        self.situations[situation].open
    }

    /// Situations that were looked at.
    #[must_use]
    pub fn size(&self) -> usize {
        self.situations.len()
    }

    /// Steps that may be taken there: not used up.
    pub fn offered(&self, situation: usize) -> impl Iterator<Item = usize> + use<> {
        let used = self.situations[situation].used;
        (0..self.compiled.steps.len()).filter(move |step| used >> step & 1 == 0)
    }

    /// Searches from a situation until the bounds are near enough, the room is used up, or
    /// `go_on` says no; it hears the bounds after every walk.
    pub fn run(
        &mut self,
        from: usize,
        enough: &Enough,
        go_on: &mut dyn FnMut(Bounds) -> bool,
    ) -> Bounds {
        loop {
            let bounds = self.bounds(from);
            if enough.is_met(bounds) || self.size() >= enough.situations || !go_on(bounds) {
                return bounds;
            }
            if !self.walk(from) {
                return self.bounds(from);
            }
        }
    }

    /// Expected cost of taking a step first and then going on as well as is known, with its own
    /// search until near enough.
    pub fn weigh(
        &mut self,
        situation: usize,
        step: usize,
        enough: &Enough,
        go_on: &mut dyn FnMut(Bounds) -> bool,
    ) -> Bounds {
        let way = self.way(situation, step);
        loop {
            let bounds = self.bounds_of(&way);
            if enough.is_met(bounds) || self.size() >= enough.situations || !go_on(bounds) {
                return bounds;
            }
            let Some((_, _, widest)) = self.widest(&way) else { return bounds };
            if !self.walk(widest) {
                return self.bounds_of(&way);
            }
        }
    }

    /// Where a step leads: outcome, chance, situation.
    pub fn after(&mut self, situation: usize, step: usize) -> Vec<(usize, f64, usize)> {
        self.way(situation, step).to.unwrap_or_default()
    }

    fn situation(&mut self, open: Open, used: u128, belief: Belief) -> usize {
        let key = (open, used, belief.key());
        if let Some(known) = self.known.get(&key) {
            return *known;
        }
        let (upper, choice) = mend_blindly(&self.compiled, &self.lower.known, &belief, open, used);
        let lower = self.lower.of(&self.compiled, &belief).min(upper);
        let bounds = Bounds { lower, upper };
        self.situations.push(Situation { open, used, belief, bounds, choice, ways: None });
        let number = self.situations.len() - 1;
        self.known.insert(key, number);
        number
    }

    fn way(&mut self, situation: usize, step: usize) -> Way {
        let here = &self.situations[situation];
        let (cost, open, used) = take(&self.compiled, here.open, here.used, step);
        let branches = self.compiled.branches(&here.belief, step);
        let to = branches
            .into_iter()
            .map(|branch| {
                (branch.outcome, branch.chance, self.situation(open, used, branch.belief))
            })
            .collect();
        Way { step, cost, at_least: cost, to: Some(to) }
    }

    fn bounds_of(&self, way: &Way) -> Bounds {
        let Some(legs) = &way.to else {
            return Bounds { lower: way.at_least, upper: f64::INFINITY };
        };
        let mut bounds = Bounds { lower: way.cost, upper: way.cost };
        for (_, chance, to) in legs {
            let there = self.situations[*to].bounds;
            bounds.lower += chance * there.lower;
            bounds.upper += chance * there.upper;
        }
        bounds
    }

    /// The branch that adds most to the gap, if any has one.
    fn widest(&self, way: &Way) -> Option<(usize, f64, usize)> {
        way.to
            .iter()
            .flatten()
            .map(|(outcome, chance, to)| {
                (*outcome, chance * self.situations[*to].bounds.gap(), *to)
            })
            .filter(|(_, gap, _)| *gap > 0.0)
            .max_by(|a, b| a.1.total_cmp(&b.1).then(b.0.cmp(&a.0)))
    }

    /// One walk down and back; false when there was nothing left to look at.
    fn walk(&mut self, from: usize) -> bool {
        let mut path = vec![from];
        let mut moved = false;
        let mut here = from;
        self.walks += 1;
        let along_policy = self.walks.is_multiple_of(2);
        while path.len() < MOST_DEPTH {
            if self.situations[here].ways.is_none() {
                self.look(here);
                moved = true;
                break;
            }
            moved |= self.back_up(here);
            match self.next(here, along_policy) {
                Next::Opened => {
                    moved = true;
                    break;
                }
                Next::On(there) => here = there,
                Next::Nothing => break,
            }
            path.push(here);
        }
        for situation in path.into_iter().rev() {
            moved |= self.back_up(situation);
        }
        // A walk that moved nothing would be the same the next time.
        moved
    }

    /// Where to look next: along the cheapest way at best that has a gap.
    fn next(&mut self, here: usize, along_policy: bool) -> Next {
        let situation = &self.situations[here];
        let Some(ways) = situation.ways.as_ref() else { return Next::Nothing };
        if along_policy
            && let Choice::Step(step) = situation.choice
            && let Some(way) = ways.iter().find(|way| way.step == step && way.to.is_some())
            && let Some((_, _, to)) = self.widest(way)
        {
            return Next::On(to);
        }
        let mut ranked: Vec<(f64, usize)> = ways
            .iter()
            .enumerate()
            .map(|(place, way)| (self.bounds_of(way).lower, place))
            .filter(|(lower, _)| *lower < situation.bounds.upper)
            .collect();
        ranked.sort_by(|a, b| a.0.total_cmp(&b.0).then(a.1.cmp(&b.1)));
        for (_, place) in ranked {
            if ways[place].to.is_none() {
                let step = ways[place].step;
                let way = self.way(here, step);
                if let Some(ways) = &mut self.situations[here].ways {
                    ways[place] = way;
                }
                return Next::Opened;
            }
            if let Some((_, _, to)) = self.widest(&ways[place]) {
                return Next::On(to);
            }
        }
        Next::Nothing
    }

    /// Looks for the ways on from a situation, leaving out those that cannot be better.
    fn look(&mut self, here: usize) {
        let (open, used, belief) = {
            let situation = &self.situations[here];
            (situation.open, situation.used, situation.belief.clone())
        };
        let mut ways = Vec::new();
        let mut tests = Vec::new();
        for step in 0..self.compiled.steps.len() {
            if used >> step & 1 == 1 {
                continue;
            }
            let cost = take(&self.compiled, open, used, step).0;
            let branches = self.compiled.branches(&belief, step);
            let tells = branches.len() > 1 || branches.iter().any(|branch| branch.belief != belief);
            if !tells {
                continue;
            }
            let upper = self.situations[here].bounds.upper;
            let quick = |branch: &Branch| branch.chance * self.lower.quick(&branch.belief);
            if cost + branches.iter().map(quick).sum::<f64>() >= upper {
                continue;
            }
            let at_least = branches.iter().fold(cost, |sum, branch| {
                sum + branch.chance * self.lower.of(&self.compiled, &branch.belief)
            });
            if at_least < upper {
                tests.push((self.telling.per_cost(&belief, &branches, cost), ways.len()));
                ways.push(Way { step, cost, at_least, to: None });
            }
        }
        // What tells most for its cost is opened at once: good policies are made of such tests.
        let best = tests.into_iter().max_by(|a, b| a.0.total_cmp(&b.0).then(b.1.cmp(&a.1)));
        if let Some((_, place)) = best {
            ways[place] = self.way(here, ways[place].step);
        }
        self.situations[here].ways = Some(ways);
    }

    /// Carries the bounds of what comes after into a situation; whether that changed them.
    fn back_up(&mut self, here: usize) -> bool {
        let situation = &self.situations[here];
        let Some(ways) = &situation.ways else { return false };
        let mut upper = situation.bounds.upper;
        let mut choice = situation.choice;
        // Ways that were left out cost at least the upper bound of that time, an ending at least
        // what is known: neither is below the bound that stands.
        let ending =
            super::upper::cheapest_ending(&self.compiled, &situation.belief, situation.open);
        let mut lower = ending.0.min(upper);
        for way in ways {
            let bounds = self.bounds_of(way);
            lower = lower.min(bounds.lower);
            if bounds.upper < upper {
                upper = bounds.upper;
                choice = Choice::Step(way.step);
            }
        }
        let situation = &mut self.situations[here];
        let before = situation.bounds;
        situation.bounds.lower = situation.bounds.lower.max(lower.min(upper));
        situation.bounds.upper = upper;
        situation.choice = choice;
        situation.bounds != before
    }
}
