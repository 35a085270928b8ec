//! What is worth doing next.
//!
//! A belief in its present state becomes a problem for the planner ([`super::prospect`]); the
//! planner encloses the expected cost of the rest of the job between two bounds. It is stopped by
//! the number of situations it has looked at, never by a clock, so that every debrief of a session
//! is the same.

use super::belief::Belief;
use super::likelihood::differ;
use super::outcome::{Aspect, aspects};
use super::plan::budget::{Bounds, Enough};
use super::probe::{Probe, probes, probes_for, steps_to};
use super::prospect::{First, Prospect, Scene};
use super::remedy::Remedy;
use super::tariff::Tariff;
use super::world::Worlds;
use crate::numerics::digest::{Digest, DigestBuilder};
use crate::session::attempt::Session;
use crate::session::setup::Briefing;
use crate::session::step::Step;
use crate::vehicle::error::VehicleError;
use std::collections::{BTreeMap, BTreeSet};
use std::rc::Rc;
use std::sync::Arc;

/// Worlds that a plan looks at, at most, and the share of the belief that may be left out.
const WORLDS_IN_PLAN: usize = 160;
const LEFT_OUT: f64 = 0.002;
/// Situations that the search may look at, for the value and for a step that is weighed.
const FOR_VALUE: Enough =
    Enough { relative: 0.01, absolute: 0.5, situations: 100_000, work: 300_000 };
const FOR_STEP: Enough =
    Enough { relative: 0.01, absolute: 0.5, situations: 100_000, work: 150_000 };

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
    pub cost: Bounds,
    /// What to do first.
    pub proposal: Proposal,
}

/// Plans for one briefing.
pub struct Expert {
    briefing: Arc<Briefing>,
    probes: Vec<Probe>,
    tariff: Option<Tariff>,
    /// What each probe shows in each world, since the vehicle last changed.
    shown: BTreeMap<(usize, usize), Rc<Vec<Aspect>>>,
    /// Probes made since then.
    made: BTreeSet<usize>,
    /// The situation that was valued last, and what decided it.
    last: Option<(Digest, Valuation, Option<Prospect>)>,
}

impl Expert {
    /// An expert on a vehicle.
    #[must_use]
    pub fn new(briefing: Arc<Briefing>) -> Self {
        let probes = probes(&briefing.vehicle);
        let tariff = Tariff::new(&briefing).ok();
        let (shown, made) = (BTreeMap::new(), BTreeSet::new());
        Self { briefing, probes, tariff, shown, made, last: None }
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
        self.made.clear();
        self.last = None;
    }

    /// Forgets what reading codes and test results would show: what the module remembers changes with every key
    /// turned and connector parted, while what instruments show does not.
    pub fn memory_changed(&mut self) {
        let reads = |number: &usize| self.probes[*number].shows_memory();
        self.shown.retain(|(_, number), _| !reads(number));
        self.made.retain(|number| !reads(number));
        self.last = None;
    }

    /// A test was made: on the unchanged vehicle it would show the same again.
    pub fn was_made(&mut self, probe: usize) {
        self.made.insert(probe);
    }

    /// The value of the present situation.
    ///
    /// # Errors
    /// [`VehicleError`] when a world's wiring cannot be solved.
    pub fn value(&mut self, belief: &Belief) -> Result<Valuation, VehicleError> {
        let weighted = counting(belief);
        let Some((heaviest, _)) = weighted.first().copied() else {
            let cost = Bounds { lower: 0.0, upper: 0.0 };
            return Ok(Valuation { cost, proposal: Proposal::Close });
        };
        let state = self.state(&weighted, belief.session(heaviest));
        if let Some((last, valuation, _)) = &self.last
            && *last == state
        {
            return Ok(valuation.clone());
        }
        let mut prospect = self.prospect(belief, &weighted)?;
        let valuation = if let Some(prospect) = &mut prospect {
            let cost = prospect.run(&FOR_VALUE);
            let proposal = match prospect.first() {
                First::Probe(number) => Proposal::Test(self.probes[number].clone()),
                First::Remedy(remedy) => Proposal::Repair(remedy),
                First::Close => Proposal::Close,
            };
            Valuation { cost, proposal }
        } else {
            // A vehicle that is too large for the planner: at worst it comes back as it is.
            let upper = self.briefing.prices.comeback.as_units();
            Valuation { cost: Bounds { lower: 0.0, upper }, proposal: Proposal::Close }
        };
        self.last = Some((state, valuation.clone(), prospect));
        Ok(valuation)
    }

    /// Expected cost of the rest of the job when a test is made first, in the situation that was
    /// valued last; `None` when that is not known.
    pub fn weigh(&mut self, probe: usize) -> Option<Bounds> {
        let (_, _, prospect) = self.last.as_mut()?;
        prospect.as_mut()?.weigh_probe(probe, &FOR_STEP)
    }

    /// The same for a repair with its proof.
    pub fn weigh_repair(&mut self, remedy: &Remedy) -> Option<Bounds> {
        let (_, _, prospect) = self.last.as_mut()?;
        prospect.as_mut()?.weigh_remedy(remedy, &FOR_STEP)
    }

    /// The same for anything that was done in the situation that was valued last: what it cost, and
    /// what each world foretold of it, by the number of the world. `belief` has learnt from it
    /// already, so that its sessions show what is open now. Nothing told is one group.
    pub fn weigh_done(
        &mut self,
        belief: &Belief,
        cost: f64,
        foretold: Option<&[Option<Vec<Aspect>>]>,
    ) -> Option<Bounds> {
        let groups = self.groups_foretold(belief, foretold)?;
        let (_, _, prospect) = self.last.as_mut()?;
        let prospect = prospect.as_mut()?;
        let first = prospect.worlds().next()?;
        let open = self.tariff.as_ref()?.open_in(belief.session(first));
        Some(prospect.weigh_shown(cost, open, &groups, &FOR_STEP))
    }

    /// Whether what was done could have told any two worlds apart that counted in the situation that was
    /// valued last; `None` when that is not known.
    #[must_use]
    pub fn tells_apart(&self, belief: &Belief, foretold: &[Option<Vec<Aspect>>]) -> Option<bool> {
        let groups = self.groups_foretold(belief, Some(foretold))?;
        Some(groups.iter().any(|group| *group > 0))
    }

    /// For each world that counted in the situation that was valued last, the group of worlds that foretold
    /// what could not be told apart.
    fn groups_foretold(
        &self,
        belief: &Belief,
        foretold: Option<&[Option<Vec<Aspect>>]>,
    ) -> Option<Vec<usize>> {
        let (_, _, prospect) = self.last.as_ref()?;
        let mut firsts: Vec<&Vec<Aspect>> = Vec::new();
        let group = |world: usize| {
            let Some(shown) = foretold.and_then(|all| all[world].as_ref()) else { return 0 };
            let like = |first: &&Vec<Aspect>| !differ(first, shown, belief.known_codes());
            firsts.iter().position(like).unwrap_or_else(|| {
                firsts.push(shown);
                firsts.len() - 1
            })
        };
        Some(prospect.as_ref()?.worlds().map(group).collect())
    }

    /// Whether a test was made on the vehicle as it is.
    #[must_use]
    pub fn has_made(&self, probe: usize) -> bool {
        self.made.contains(&probe)
    }

    /// The situation as a problem; `None` when the vehicle is too large for the planner.
    ///
    /// # Errors
    /// [`VehicleError`] when a world's wiring cannot be solved.
    fn prospect(
        &mut self,
        belief: &Belief,
        weighted: &[(usize, f64)],
    ) -> Result<Option<Prospect>, VehicleError> {
        let mut groups = Vec::with_capacity(self.probes.len());
        for number in 0..self.probes.len() {
            groups.push(self.grouped(belief, weighted, number)?);
        }
        let Some(tariff) = &self.tariff else { return Ok(None) };
        let scene = Scene {
            briefing: &self.briefing,
            tariff,
            belief,
            weighted,
            probes: &self.probes,
            groups: &groups,
            made: &self.made,
        };
        Ok(Prospect::new(&scene)?.ok())
    }

    /// What decides a value: beliefs, what is off and fetched, what was seen already.
    fn state(&self, weighted: &[(usize, f64)], session: &Session) -> Digest {
        let mut builder = DigestBuilder::new("situation");
        for (world, weight) in weighted {
            builder.whole(*world as u64);
            builder.whole(weight.to_bits());
        }
        for part in session.parts_off() {
            builder.text(part.as_str());
        }
        let sighted = session.vehicle_in_sight();
        builder.whole(u64::from(sighted.key_on()) + 2 * u64::from(sighted.engine_runs()));
        builder.whole(u64::from(session.instruments_at_hand()));
        for made in &self.made {
            builder.whole(*made as u64);
        }
        builder.finish()
    }

    /// Groups of worlds by what a test shows in them; worlds in one could not be told apart.
    fn grouped(
        &mut self,
        belief: &Belief,
        weighted: &[(usize, f64)],
        number: usize,
    ) -> Result<Vec<usize>, VehicleError> {
        let mut firsts: Vec<Rc<Vec<Aspect>>> = Vec::new();
        let mut groups = Vec::with_capacity(weighted.len());
        for (world, _) in weighted {
            let shown = self.shows(belief, *world, number)?;
            let like = |first: &Rc<Vec<Aspect>>| !differ(first, &shown, belief.known_codes());
            let group = firsts.iter().position(like).unwrap_or_else(|| {
                firsts.push(Rc::clone(&shown));
                firsts.len() - 1
            });
            groups.push(group);
        }
        Ok(groups)
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
}

/// Worlds that a plan looks at, heaviest first; the lightest are left out together.
fn counting(belief: &Belief) -> Vec<(usize, f64)> {
    let mut weighted = belief.leading(WORLDS_IN_PLAN);
    let mut left_out = 0.0;
    while let Some((_, weight)) = weighted.last() {
        left_out += weight;
        if left_out > LEFT_OUT || weighted.len() == 1 {
            break;
        }
        weighted.pop();
    }
    weighted
}

fn walk(session: &mut Session, steps: &[Step]) -> Result<(), VehicleError> {
    for step in steps {
        session.take_unlogged(step)?;
    }
    Ok(())
}
