//! Which tests tell the hypotheses of a scenario apart before anything is known, and how well.
//!
//! Every test that a come-back would pay for is asked in every world as the job begins: worlds in which it shows what
//! nobody could tell apart ([`super::likelihood::differ`]) stay together. Two hypotheses are told as far as their
//! severities are: each pair of a world of one with a world of the other counts alike. Where a contact that minds heat
//! is among the two and the cold vehicle does not tell all, the tests are asked again on a warm one.
//! Variants of harmless oddities are left out, since what is printed on the part tells them.

use super::belief::{Belief, cost_of};
use super::expert::Expert;
use super::foresight::bits_of;
use super::likelihood::{KnownCodes, differ};
use super::outcome::Aspect;
use super::probe::{Probe, steps_to};
use super::remedy::Remedy;
use super::separation::{AFFORDABLE_SHARE, warmed};
use super::showings::Showings;
use super::world::{Hypothesis, World, Worlds};
use crate::faults::FaultKind;
use crate::session::attempt::Session;
use crate::session::setup::Briefing;
use crate::session::step::Step;
use crate::vehicle::error::VehicleError;
use serde::Serialize;
use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

/// What tests tell of a scenario before anything is known.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub struct Discernment {
    /// What might be wrong, with its chance among the cases that a customer brings, likeliest first.
    pub hypotheses: Vec<(Hypothesis, f64)>,
    /// Affordable tests that tell anything, the most telling first.
    pub tests: Vec<TestWorth>,
    /// Every two hypotheses, in their order.
    pub pairs: Vec<Pair>,
}

/// What a test tells as the first one.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct TestWorth {
    /// The step that shows something.
    pub step: Step,
    /// What it costs with the way there, at the labour rate [units of the currency].
    pub cost: f64,
    /// What it is expected to tell of the hypothesis \[bit\].
    pub bits: f64,
}

/// How two hypotheses are told apart.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub struct Pair {
    /// Number of the first in [`Discernment::hypotheses`].
    pub first: usize,
    /// Number of the second.
    pub second: usize,
    /// Share of their severities that some affordable test tells apart, 0 to 1.
    pub told: f64,
    /// How many affordable tests tell them apart at every severity.
    pub tests: usize,
    /// The test that tells most of them, of equal ones the cheapest; `None` where none tells anything.
    pub best: Option<Best>,
    /// Whether one repair takes both away.
    pub shares_remedy: bool,
}

/// The test that tells two hypotheses apart best.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Best {
    /// The step that shows something.
    pub step: Step,
    /// What it costs with the way there, at the labour rate [units of the currency]; on a warm engine without the drive.
    pub cost: f64,
    /// Share of their severities that it alone tells apart, 0 to 1.
    pub told: f64,
    /// Whether the engine has to be warm.
    pub warm: bool,
}

/// Hypotheses that tests leave together.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub struct Cluster {
    /// Numbers in [`Discernment::hypotheses`].
    pub members: Vec<usize>,
    /// The least share of severities that any two of them that are not wholly told are told apart at, 0 to 1.
    pub told: f64,
    /// Whether one repair takes all of them away.
    pub shares_remedy: bool,
}

impl Discernment {
    /// Hypotheses that are joined by pairs which are not told apart at every severity, likeliest first.
    #[must_use]
    pub fn clusters(&self) -> Vec<Cluster> {
        let mut groups: Vec<usize> = (0..self.hypotheses.len()).collect();
        let untold: Vec<&Pair> = self.pairs.iter().filter(|pair| pair.told < 1.0).collect();
        for pair in &untold {
            let (one, other) = (groups[pair.first], groups[pair.second]);
            let joined = one.min(other);
            groups
                .iter_mut()
                .filter(|group| **group == one || **group == other)
                .for_each(|group| *group = joined);
        }
        let named: BTreeSet<usize> = untold.iter().map(|pair| groups[pair.first]).collect();
        named
            .into_iter()
            .map(|group| {
                let members: Vec<usize> =
                    (0..groups.len()).filter(|number| groups[*number] == group).collect();
                let within = untold.iter().filter(|pair| groups[pair.first] == group);
                let told = within.map(|pair| pair.told).fold(1.0, f64::min);
                let all: Vec<&Hypothesis> =
                    members.iter().map(|number| &self.hypotheses[*number].0).collect();
                Cluster { shares_remedy: share_remedy(&all), members, told }
            })
            .collect()
    }
}

/// Whether one repair takes away what is wrong in each of some hypotheses. A sound vehicle asks for none.
fn share_remedy(all: &[&Hypothesis]) -> bool {
    let Some(first) = all.first() else { return false };
    Remedy::of_all(first)
        .iter()
        .any(|remedy| all.iter().all(|faults| !faults.is_empty() && remedy.fixes_all(faults)))
}

/// A test that a come-back would pay for.
#[derive(Clone, Copy)]
struct Asked<'p> {
    probe: &'p Probe,
    number: usize,
    cost: f64,
}

/// Works out which tests tell the hypotheses of some worlds apart, as they begin.
///
/// # Errors
/// [`VehicleError`] when a world's wiring cannot be solved.
pub fn discernment(briefing: &Arc<Briefing>, worlds: &Worlds) -> Result<Discernment, VehicleError> {
    let expert = Expert::new(Arc::clone(briefing)).with_tests_for(worlds);
    let mut shown = worlds.foreseen.clone();
    let all = &worlds.worlds;
    shown.complete(&|world| &all[world].session, 0..all.len(), expert.probes())?;
    let belief = Belief::prior(worlds.clone());
    let hypotheses = likeliest_first(&belief);
    let weighted = belief.leading(usize::MAX);
    let Some((heaviest, _)) = weighted.first() else {
        return Ok(Discernment { hypotheses, tests: Vec::new(), pairs: Vec::new() });
    };
    let mut asked = Vec::new();
    for (number, probe) in expert.probes().iter().enumerate() {
        let cost = cost(probe, belief.session(*heaviest), briefing)?;
        if cost <= AFFORDABLE_SHARE * briefing.prices.comeback.as_units() {
            asked.push(Asked { probe, number, cost });
        }
    }
    let mut tests = Vec::new();
    for test in &asked {
        let foretold: Vec<Option<Vec<Aspect>>> = (0..all.len())
            .map(|world| shown.get(world, test.number).map(|shown| shown.to_vec()))
            .collect();
        let bits = bits_of(&belief, &weighted, &foretold);
        if bits > 0.0 {
            tests.push(TestWorth { step: test.probe.showing().clone(), cost: test.cost, bits });
        }
    }
    tests.sort_by(|a, b| b.bits.total_cmp(&a.bits).then(a.cost.total_cmp(&b.cost)));
    let known = belief.known_codes();
    let own: Vec<Vec<usize>> = hypotheses.iter().map(|(it, _)| plain_worlds(all, it)).collect();
    let mut pairs = Vec::new();
    for first in 0..hypotheses.len() {
        for second in first + 1..hypotheses.len() {
            let told = Told::of(&asked, &shown, known, (&own[first], &own[second]));
            let (first_faults, second_faults) = (&hypotheses[first].0, &hypotheses[second].0);
            pairs.push(Pair {
                first,
                second,
                told: told.share(),
                tests: told.whole,
                best: told.best(&asked, false),
                shares_remedy: share_remedy(&[first_faults, second_faults]),
            });
        }
    }
    let of = Parties { hypotheses: &hypotheses, own: &own, known };
    on_a_warm_engine(&asked, worlds, of, expert.probes(), &mut pairs)?;
    Ok(Discernment { hypotheses, tests, pairs })
}

/// Hypotheses with their chances; equal ones in their own order.
fn likeliest_first(belief: &Belief) -> Vec<(Hypothesis, f64)> {
    let mut all: Vec<(Hypothesis, f64)> = belief.by_hypothesis().into_iter().collect();
    all.sort_by(|a, b| b.1.total_cmp(&a.1));
    all
}

/// The worlds of a hypothesis without anything odd beside it.
fn plain_worlds(worlds: &[World], faults: &Hypothesis) -> Vec<usize> {
    let is_plain = |world: &World| world.variant == 0 && world.faults == *faults;
    (0..worlds.len()).filter(|number| is_plain(&worlds[*number])).collect()
}

/// What a test costs from where a session stands, the way there included.
fn cost(probe: &Probe, session: &Session, briefing: &Briefing) -> Result<f64, VehicleError> {
    let mut session = session.fork();
    let way = steps_to(&probe.need, &briefing.vehicle, session.vehicle_in_sight());
    let mut cost = 0.0;
    for step in way.iter().chain(&probe.steps) {
        cost += cost_of(&session.take_unlogged(step)?, briefing.prices.labour_per_hour);
    }
    Ok(cost)
}

/// Which of the severities of two hypotheses are told apart.
struct Told {
    /// How many pairs of worlds there are.
    of: usize,
    /// How many of them any test tells.
    any: usize,
    /// By its place among those asked, how many of them a test tells.
    by_test: Vec<usize>,
    /// How many tests tell all of them.
    whole: usize,
}

impl Told {
    fn of(
        asked: &[Asked<'_>],
        shown: &Showings,
        known: &KnownCodes,
        (first, second): (&[usize], &[usize]),
    ) -> Self {
        let pairs: Vec<(usize, usize)> =
            first.iter().flat_map(|one| second.iter().map(move |other| (*one, *other))).collect();
        let mut any = vec![false; pairs.len()];
        let mut by_test = Vec::with_capacity(asked.len());
        for test in asked {
            let mut told = 0;
            for ((one, other), any) in pairs.iter().zip(&mut any) {
                if let (Some(one), Some(other)) =
                    (shown.get(*one, test.number), shown.get(*other, test.number))
                    && differ(one, other, known)
                {
                    told += 1;
                    *any = true;
                }
            }
            by_test.push(told);
        }
        let of = pairs.len();
        let whole = by_test.iter().filter(|told| **told == of && of > 0).count();
        Self { of, any: any.iter().filter(|told| **told).count(), by_test, whole }
    }

    /// Share that any test tells. Of hypotheses that no world has, nothing is left untold.
    fn share(&self) -> f64 {
        if self.of == 0 { 1.0 } else { self.any as f64 / self.of as f64 }
    }

    fn best(&self, asked: &[Asked<'_>], warm: bool) -> Option<Best> {
        let best = asked.iter().zip(&self.by_test).filter(|(_, told)| **told > 0).min_by(
            |(one, told), (other, others)| others.cmp(told).then(one.cost.total_cmp(&other.cost)),
        );
        best.map(|(test, told)| Best {
            step: test.probe.showing().clone(),
            cost: test.cost,
            told: *told as f64 / self.of as f64,
            warm,
        })
    }
}

/// Who is to be told apart.
#[derive(Clone, Copy)]
struct Parties<'a> {
    /// Hypotheses with their chances.
    hypotheses: &'a [(Hypothesis, f64)],
    /// The worlds of each.
    own: &'a [Vec<usize>],
    /// Codes that a vehicle can have stored.
    known: &'a KnownCodes,
}

/// Asks again with a warm engine where that may tell more.
fn on_a_warm_engine(
    asked: &[Asked<'_>],
    worlds: &Worlds,
    Parties { hypotheses, own, known }: Parties<'_>,
    probes: &[Probe],
    pairs: &mut [Pair],
) -> Result<(), VehicleError> {
    let minds_heat = |number: usize| {
        hypotheses[number].0.iter().any(|fault| fault.kind == FaultKind::HotContact)
    };
    let may_tell_more =
        |pair: &Pair| pair.told < 1.0 && (minds_heat(pair.first) || minds_heat(pair.second));
    let mut warm = BTreeMap::new();
    for pair in pairs.iter().filter(|pair| may_tell_more(pair)) {
        for world in own[pair.first].iter().chain(&own[pair.second]) {
            if !warm.contains_key(world) {
                let session = &worlds.worlds[*world].session;
                warm.insert(*world, warmed(session, session.briefing())?);
            }
        }
    }
    // What the module remembers was asked before, and is another thing after one more drive.
    let asked: Vec<Asked<'_>> =
        asked.iter().copied().filter(|test| !test.probe.shows_memory()).collect();
    let mut shown = Showings::default();
    shown.complete(&|world| &warm[&world], warm.keys().copied(), probes)?;
    for pair in pairs.iter_mut().filter(|pair| may_tell_more(pair)) {
        let told = Told::of(&asked, &shown, known, (&own[pair.first], &own[pair.second]));
        if told.share() > pair.told {
            pair.told = told.share();
            pair.tests = told.whole;
            pair.best = told.best(&asked, true);
        }
    }
    Ok(())
}
