//! What is worth doing next.
//!
//! Cost of the rest of the job from a belief, in money at the labour rate:
//! - *repairing at once*: repairs in descending order of chance over cost, each followed by its
//!   proof, until nothing is left or until a come-back is cheaper (Kadane and Simon 1977; optimal
//!   for one fault, disjoint repairs and constant costs);
//! - *one test, then repairing*: the cost of the test plus the expectation of the above over its
//!   outcomes, the myopic value;
//! - *two tests*: the cost of a test plus the expectation of the better of the two above.
//!
//! The smallest of these is an upper bound on the optimum. Costs depend on what is already open:
//! they come from walking through the steps in the present state, so shared removals are paid
//! once.

use super::belief::{Belief, cost_of};
use super::likelihood::differ;
use super::outcome::{Aspect, aspects};
use super::probe::{Probe, probes, probes_for, steps_to};
use super::remedy::Remedy;
use super::world::Worlds;
use crate::faults::FaultName;
use crate::numerics::digest::{Digest, DigestBuilder};
use crate::session::attempt::Session;
use crate::session::setup::Briefing;
use crate::session::step::Step;
use crate::vehicle::error::VehicleError;
use std::collections::BTreeMap;
use std::rc::Rc;
use std::sync::Arc;

/// Worlds that a plan looks at; lighter ones are left out of expectations.
const WORLDS_IN_PLAN: usize = 160;

/// What a plan proposes to do first.
#[derive(Debug, Clone, PartialEq)]
pub enum Proposal {
    /// Make this test.
    Test(Probe),
    /// Do this repair and prove it.
    Repair(Remedy),
    /// Nothing more is worth its cost: close the job.
    Close,
}

/// The value of a situation.
#[derive(Debug, Clone, PartialEq)]
pub struct Valuation {
    /// Expected cost of the rest of the job [units of the currency].
    pub cost: f64,
    /// What to do first.
    pub proposal: Proposal,
    /// Expected cost when each test is made first, in the order of [`Expert::probes`].
    pub by_probe: Vec<f64>,
}

/// One world with its weight in a belief.
type Weighted = (usize, f64);

/// Plans for one briefing.
pub struct Expert {
    briefing: Arc<Briefing>,
    probes: Vec<Probe>,
    /// What each probe shows in each world, since the vehicle last changed.
    shown: BTreeMap<(usize, usize), Rc<Vec<Aspect>>>,
    /// Prices by the state that decides them.
    priced: BTreeMap<Digest, Rc<PriceList>>,
}

/// What everything costs from one state, and in what state each test leaves the vehicle.
struct PriceList {
    probes: Vec<(f64, Session)>,
    remedies: BTreeMap<Remedy, f64>,
    comeback: f64,
}

impl Expert {
    /// An expert on a vehicle.
    #[must_use]
    pub fn new(briefing: Arc<Briefing>) -> Self {
        let probes = probes(&briefing.vehicle);
        Self { briefing, probes, shown: BTreeMap::new(), priced: BTreeMap::new() }
    }

    /// The same with tests that one of the worlds asks for, such as the oil pressure gauge.
    #[must_use]
    pub fn with_tests_for(mut self, worlds: &Worlds) -> Self {
        let suspected: Vec<_> = worlds.worlds.iter().map(|world| &world.faults[..]).collect();
        self.probes.extend(probes_for(&self.briefing.vehicle, &suspected));
        self
    }

    /// The tests that are considered.
    #[must_use]
    pub fn probes(&self) -> &[Probe] {
        &self.probes
    }

    /// Forgets what tests would show, because the vehicle has changed.
    pub fn vehicle_changed(&mut self) {
        self.shown.clear();
        self.priced.clear();
    }

    /// Forgets what reading codes and test results would show: what the module remembers changes with every key
    /// turned and connector parted, while what instruments show does not.
    pub fn memory_changed(&mut self) {
        let probes = &self.probes;
        self.shown.retain(|(_, number), _| !probes[*number].shows_memory());
    }

    /// The value of the present situation by up to two tests ahead.
    ///
    /// # Errors
    /// [`VehicleError`] when a world's wiring cannot be solved.
    pub fn value(&mut self, belief: &Belief) -> Result<Valuation, VehicleError> {
        let weighted = belief.leading(WORLDS_IN_PLAN);
        let Some((heaviest, _)) = weighted.first().copied() else {
            return Ok(Valuation { cost: 0.0, proposal: Proposal::Close, by_probe: Vec::new() });
        };
        let prices = self.prices(belief.session(heaviest), belief)?;
        let (repair_at_once, first) = repair_cost(belief, &weighted, &prices);
        let mut cost = repair_at_once;
        let mut proposal = first.map_or(Proposal::Close, Proposal::Repair);
        let mut by_probe = Vec::with_capacity(self.probes.len());
        for number in 0..self.probes.len() {
            let (price, after) = &prices.probes[number];
            let parts = self.partition(belief, &weighted, number)?;
            let mut expected = *price;
            // A test that cannot split the belief costs its price and changes nothing.
            if parts.len() > 1 {
                let after = self.prices(after, belief)?;
                let total: f64 = weighted.iter().map(|(_, weight)| weight).sum();
                for part in &parts {
                    expected += self.value_of_part(belief, part, &after)? / total;
                }
            } else {
                expected += repair_at_once;
            }
            if expected < cost - 1e-9 {
                cost = expected;
                proposal = Proposal::Test(self.probes[number].clone());
            }
            by_probe.push(expected);
        }
        Ok(Valuation { cost, proposal, by_probe })
    }

    /// Unnormalised myopic value of a part of a belief: the sum over its worlds' weights.
    fn value_of_part(
        &mut self,
        belief: &Belief,
        part: &[Weighted],
        prices: &PriceList,
    ) -> Result<f64, VehicleError> {
        let share: f64 = part.iter().map(|(_, weight)| weight).sum();
        let mut best = repair_cost(belief, part, prices).0;
        for number in 0..self.probes.len() {
            let price = prices.probes[number].0;
            if price >= best {
                continue;
            }
            let parts = self.partition(belief, part, number)?;
            if parts.len() < 2 {
                continue;
            }
            let expected: f64 = parts
                .iter()
                .map(|part| {
                    let weight: f64 = part.iter().map(|(_, weight)| weight).sum();
                    weight / share * repair_cost(belief, part, prices).0
                })
                .sum();
            best = best.min(price + expected);
        }
        Ok(best * share)
    }

    /// Splits worlds by what a test shows in them; worlds in one part could not be told apart.
    fn partition(
        &mut self,
        belief: &Belief,
        weighted: &[Weighted],
        number: usize,
    ) -> Result<Vec<Vec<Weighted>>, VehicleError> {
        let mut parts: Vec<(Rc<Vec<Aspect>>, Vec<Weighted>)> = Vec::new();
        for (world, weight) in weighted {
            let shown = self.shows(belief, *world, number)?;
            match parts.iter_mut().find(|(first, _)| !differ(first, &shown, belief.known_codes())) {
                Some((_, part)) => part.push((*world, *weight)),
                None => parts.push((shown, vec![(*world, *weight)])),
            }
        }
        Ok(parts.into_iter().map(|(_, part)| part).collect())
    }

    /// What a test shows in a world, in its present state.
    fn shows(
        &mut self,
        belief: &Belief,
        world: usize,
        number: usize,
    ) -> Result<Rc<Vec<Aspect>>, VehicleError> {
        if let Some(known) = self.shown.get(&(world, number)) {
            return Ok(Rc::clone(known));
        }
        let probe = &self.probes[number];
        let mut session = belief.session(world).fork();
        let way = steps_to(&probe.need, &self.briefing.vehicle, session.vehicle_in_sight());
        walk(&mut session, &way)?;
        let mut shown = Vec::new();
        for (place, step) in probe.steps.iter().enumerate() {
            let events = session.take_unlogged(step)?;
            if place == probe.shows {
                shown = aspects(&events);
            }
        }
        let shown = Rc::new(shown);
        self.shown.insert((world, number), Rc::clone(&shown));
        Ok(shown)
    }

    fn prices(&mut self, from: &Session, belief: &Belief) -> Result<Rc<PriceList>, VehicleError> {
        let state = price_state(from);
        if let Some(known) = self.priced.get(&state) {
            return Ok(Rc::clone(known));
        }
        let labour = self.briefing.prices.labour_per_hour;
        let mut probes = Vec::with_capacity(self.probes.len());
        for probe in &self.probes {
            let mut session = from.fork();
            let mut steps =
                steps_to(&probe.need, &self.briefing.vehicle, session.vehicle_in_sight());
            steps.extend(probe.steps.iter().cloned());
            let cost = walk_priced(&mut session, &steps, labour)?;
            probes.push((cost, session));
        }
        let mut remedies = BTreeMap::new();
        for (world, _) in belief.leading(usize::MAX) {
            for remedy in Remedy::of_all(belief.faults_left(world)) {
                if remedies.contains_key(&remedy) {
                    continue;
                }
                let mut session = from.fork();
                let steps = remedy.steps(&self.briefing, session.vehicle_in_sight());
                let cost = walk_priced(&mut session, &steps, labour)?;
                remedies.insert(remedy, cost + self.proof_cost());
            }
        }
        let list = Rc::new(PriceList {
            probes,
            remedies,
            comeback: self.briefing.prices.comeback.as_units(),
        });
        self.priced.insert(state, Rc::clone(&list));
        Ok(list)
    }

    /// What a proof costs: codes cleared, key on, the shortest of the test roads, a rescan.
    fn proof_cost(&self) -> f64 {
        let prices = &self.briefing.prices;
        let road =
            self.briefing.routes.values().map(|route| route.minutes).min().unwrap_or_default();
        let requests = prices.minutes.request + prices.minutes.request;
        let minutes = requests + prices.minutes.key + road;
        (minutes.at_rate(prices.labour_per_hour) + prices.fuel).as_units()
    }
}

/// Expected cost of repairing at once in descending order of chance over cost, and the first
/// repair. Weights need not be normalised; the cost is per unit of weight.
fn repair_cost(
    belief: &Belief,
    weighted: &[Weighted],
    prices: &PriceList,
) -> (f64, Option<Remedy>) {
    let total: f64 = weighted.iter().map(|(_, weight)| weight).sum();
    let mut left: BTreeMap<&[FaultName], f64> = BTreeMap::new();
    for (world, weight) in weighted {
        let faults = belief.faults_left(*world);
        if !faults.is_empty() {
            *left.entry(faults).or_insert(0.0) += weight / total;
        }
    }
    let mut cost = 0.0;
    let mut first = None;
    // The probability that nobody has yet seen the concern gone.
    let mut going_on = 1.0;
    loop {
        let remaining: f64 = left.values().sum();
        let best = prices
            .remedies
            .iter()
            .map(|(remedy, price)| {
                let chance: f64 = left
                    .iter()
                    .filter(|(faults, _)| remedy.fixes_all(faults))
                    .map(|(_, weight)| weight)
                    .sum();
                (chance, *price, remedy)
            })
            .filter(|(chance, ..)| *chance > 0.0)
            .max_by(|a, b| (a.0 / a.1).total_cmp(&(b.0 / b.1)));
        let Some((chance, price, remedy)) = best else {
            return (cost, first);
        };
        // Stopping leaves the remaining faults to come back.
        if going_on * price >= chance * prices.comeback && remaining < going_on * 0.02 {
            return (cost + remaining * prices.comeback, first);
        }
        cost += going_on * price;
        first.get_or_insert_with(|| remedy.clone());
        going_on -= chance;
        left.retain(|faults, _| !remedy.fixes_all(faults));
    }
}

/// What decides prices: what is off, the key, and what was fetched already.
fn price_state(session: &Session) -> Digest {
    let mut builder = DigestBuilder::new("prices");
    for part in session.parts_off() {
        builder.text(part.as_str());
    }
    let sighted = session.vehicle_in_sight();
    builder.whole(u64::from(sighted.key_on()) + 2 * u64::from(sighted.engine_runs()));
    builder.whole(u64::from(session.instruments_at_hand()));
    builder.finish()
}

fn walk(session: &mut Session, steps: &[Step]) -> Result<(), VehicleError> {
    for step in steps {
        session.take_unlogged(step)?;
    }
    Ok(())
}

fn walk_priced(
    session: &mut Session,
    steps: &[Step],
    labour: crate::units::Money,
) -> Result<f64, VehicleError> {
    let mut cost = 0.0;
    for step in steps {
        cost += cost_of(&session.take_unlogged(step)?, labour);
    }
    Ok(cost)
}
