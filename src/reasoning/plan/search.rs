//! The search: two bounds on the least expected cost, closing in.
//!
//! A situation is what is open, what may not be repeated, and what is believed. From the situation
//! at hand the search walks, again and again, to where the bounds are still far apart: by the step
//! that looks cheapest at best, then by the outcome that adds most to the gap; there it looks one
//! step further and carries the better bounds back, which raises the lower bound. Now and then a walk
//! follows the best policy that is known instead, and from its end a quick policy is followed
//! through ([`super::upper`]), which brings the upper bound down. Known as bounded real-time dynamic
//! programming (H. B. `McMahan`, M. Likhachev and G. Gordon 2005, cited from memory); here over beliefs
//! that are kept exactly, in which states that nothing can tell apart any more are one state, and
//! which are met again whatever the order of the evidence ([`super::useful`]).

use super::belief::Belief;
use super::budget::{Bounds, Enough};
use super::compiled::{Compiled, Flaw};
use super::covers::Open;
use super::lower::Lower;
use super::problem::Problem;
use super::telling::Telling;
use super::upper::{Choice, cheapest_ending, mend_blindly, take};
use super::useful::Useful;
use std::collections::BTreeMap;

/// Steps that one walk goes down at most.
const MOST_DEPTH: usize = 200;

/// One walk of so many follows the best policy that is known; the others go where it may be beaten.
const POLICY_WALK: u64 = 8;
/// Situations that the quick policy is followed through from a leaf of the best policy, and from
/// the start; there it is followed again, further, when walks have doubled often enough.
const ROOM: usize = 60;
const ROOM_AT_ROOT: usize = 1_000;
const LATER: u64 = 128;
const ROOM_A_WALK: usize = 32;

/// One step that may come next.
#[derive(Debug, Clone)]
pub(super) struct Way {
    pub(super) step: usize,
    pub(super) cost: f64,
    /// What it costs at least with all that follows, before anybody has looked where it leads.
    pub(super) at_least: f64,
    /// Whether that looks at its branches.
    pub(super) weighed: bool,
    /// Outcome, chance, situation; `None` until the way looks like the best, because most never do.
    pub(super) to: Option<Vec<Leg>>,
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
pub(super) struct Situation {
    pub(super) open: Open,
    pub(super) used: u128,
    pub(super) belief: Belief,
    pub(super) bounds: Bounds,
    pub(super) choice: Choice,
    pub(super) price: usize,
    /// Ways on, once looked for, that may be better than what is known.
    pub(super) ways: Option<Vec<Way>>,
}

type Key = (Open, u128, Vec<(usize, u64)>);

/// A search on one problem.
#[derive(Debug, Clone)]
pub struct Search {
    pub(super) compiled: Compiled,
    pub(super) lower: Lower,
    pub(super) telling: Telling,
    pub(super) useful: Useful,
    pub(super) situations: Vec<Situation>,
    known: BTreeMap<Key, usize>,
    root: usize,
    walks: u64,
    pub(super) work: u64,
}

impl Search {
    /// A search that has not looked further than the start.
    ///
    /// # Errors
    /// [`Flaw`] when the problem contradicts itself.
    pub fn new(problem: &Problem) -> Result<Self, Flaw> {
        let compiled = Compiled::new(problem)?;
        Self::begin(compiled, 0, 0, &|state| problem.states[state].name.clone())
    }

    /// A search on a problem that was made ready, from where some covers are open and some steps
    /// are not offered.
    ///
    /// # Errors
    /// [`Flaw::Endless`] when there is a state from which nothing can end.
    pub fn from(compiled: Compiled, open: Open, used: u128) -> Result<Self, Flaw> {
        Self::begin(compiled, open, used, &|state| state.to_string())
    }

    fn begin(
        compiled: Compiled,
        open: Open,
        used: u128,
        name: &dyn Fn(usize) -> String,
    ) -> Result<Self, Flaw> {
        let lower = Lower::new(&compiled, name)?;
        let telling = Telling::new(&compiled, &lower.known);
        let mut search = Self {
            lower,
            telling,
            useful: Useful::new(&compiled),
            situations: Vec::new(),
            known: BTreeMap::new(),
            root: 0,
            walks: 0,
            work: 0,
            compiled,
        };
        let prior = search.compiled.prior.clone();
        search.root = search.situation(open, used, prior, 10);
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
        let end = self.work.saturating_add(enough.work);
        loop {
            let bounds = self.bounds(from);
            if self.is_enough(enough, bounds, end) || !go_on(bounds) {
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
        self.refine(&way, enough, go_on)
    }

    /// Expected cost of something that is no step of the problem: what it cost, and what is open
    /// and believed after it, each with its chance. What is used up stays as it is there.
    pub fn weigh_other(
        &mut self,
        situation: usize,
        (cost, open): (f64, Open),
        after: Vec<(f64, Belief)>,
        enough: &Enough,
    ) -> Bounds {
        let used = self.situations[situation].used;
        let legs = after
            .into_iter()
            .enumerate()
            .map(|(outcome, (chance, belief))| {
                (outcome, chance, self.situation(open, used, belief, 10))
            })
            .collect();
        let way = Way { step: usize::MAX, cost, at_least: cost, weighed: true, to: Some(legs) };
        self.refine(&way, enough, &mut |_| true)
    }

    fn refine(
        &mut self,
        way: &Way,
        enough: &Enough,
        go_on: &mut dyn FnMut(Bounds) -> bool,
    ) -> Bounds {
        let end = self.work.saturating_add(enough.work);
        loop {
            let bounds = self.bounds_of(way);
            if self.is_enough(enough, bounds, end) || !go_on(bounds) {
                return bounds;
            }
            let Some((_, _, widest)) = self.widest(way) else { return bounds };
            if !self.walk(widest) {
                return self.bounds_of(way);
            }
        }
    }

    /// Where a step leads: outcome, chance, situation.
    pub fn after(&mut self, situation: usize, step: usize) -> Vec<(usize, f64, usize)> {
        self.way(situation, step).to.unwrap_or_default()
    }

    fn is_enough(&self, enough: &Enough, bounds: Bounds, end: u64) -> bool {
        enough.is_met(bounds) || self.size() >= enough.situations || self.work >= end
    }

    /// Work done so far.
    #[must_use]
    pub const fn work(&self) -> u64 {
        self.work
    }

    fn situation(&mut self, open: Open, used: u128, belief: Belief, price: usize) -> usize {
        let used = used | !self.useful.of(&belief);
        let belief = self.useful.merged(belief, used);
        let key = (open, used, belief.key());
        if let Some(known) = self.known.get(&key) {
            return *known;
        }
        let (upper, choice) = mend_blindly(&self.compiled, &self.lower.known, &belief, open, used);
        let mut price = price;
        self.work += 4 * belief.weights().len() as u64;
        let lower =
            self.lower.of(&self.compiled, (&belief, open, used), &mut price, true).min(upper);
        let bounds = Bounds { lower, upper };
        self.situations.push(Situation { open, used, belief, bounds, choice, ways: None, price });
        let number = self.situations.len() - 1;
        self.known.insert(key, number);
        number
    }

    pub(super) fn way(&mut self, situation: usize, step: usize) -> Way {
        let here = &self.situations[situation];
        let price = here.price;
        let (cost, open, used) = take(&self.compiled, here.open, here.used, step);
        let branches = self.compiled.branches(&here.belief, step);
        let to = branches
            .into_iter()
            .map(|branch| {
                (branch.outcome, branch.chance, self.situation(open, used, branch.belief, price))
            })
            .collect();
        Way { step, cost, at_least: cost, weighed: true, to: Some(to) }
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
            .filter(|(_, gap, _)| *gap > 1e-11)
            .max_by(|a, b| a.1.total_cmp(&b.1).then(b.0.cmp(&a.0)))
    }

    /// One walk down and back; false when there was nothing left to look at.
    fn walk(&mut self, from: usize) -> bool {
        let mut path = vec![from];
        let mut moved = false;
        let mut here = from;
        self.walks += 1;
        if self.walks >= LATER && self.walks.is_power_of_two() {
            let walks = usize::try_from(self.walks).unwrap_or(usize::MAX);
            self.follow(from, ROOM_A_WALK.saturating_mul(walks));
        }
        let along_policy = self.walks.is_multiple_of(POLICY_WALK);
        while path.len() < MOST_DEPTH {
            if self.situations[here].ways.is_none() {
                if along_policy || here == from {
                    self.follow(here, if here == from { ROOM_AT_ROOT } else { ROOM });
                }
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
                let mut way = ways[place].clone();
                if way.weighed {
                    way = self.way(here, way.step);
                } else {
                    self.weigh_branches(here, &mut way);
                }
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

    /// Carries the bounds of what comes after into a situation; whether that changed them.
    fn back_up(&mut self, here: usize) -> bool {
        let situation = &self.situations[here];
        let Some(ways) = &situation.ways else { return false };
        let mut upper = situation.bounds.upper;
        let mut choice = situation.choice;
        // Ways that were left out cost at least the upper bound of that time, an ending at least
        // what is known: neither is below the bound that stands.
        let ending = cheapest_ending(&self.compiled, &situation.belief, situation.open);
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
