//! What is worth doing next.
//!
//! A belief in its present state becomes a problem for the planner ([`super::prospect`]); the
//! planner encloses the expected cost of the rest of the job between two bounds. It is stopped by
//! the number of situations it has looked at, never by a clock, so that every debrief of a session
//! is the same.

use super::belief::Belief;
use super::likelihood::{KnownCodes, differ};
use super::outcome::Aspect;
use super::plan::budget::{Bounds, Enough};
use super::probe::{Probe, probes, probes_for};
use super::prospect::{First, Prospect, Scene};
use super::remedy::Remedy;
use super::showings::{Showing, Showings};
use super::tariff::Tariff;
use super::world::Worlds;
use crate::numerics::digest::{Digest, DigestBuilder};
use crate::session::attempt::Session;
use crate::session::setup::Briefing;
use crate::vehicle::error::VehicleError;
use std::collections::BTreeSet;
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
    shown: Showings,
    /// Probes made since then.
    made: BTreeSet<usize>,
    /// The situation that was valued last, and what decided it.
    last: Option<(Digest, Valuation, Option<Prospect>)>,
}

impl Expert {
    /// An expert on a vehicle.
    #[must_use]
    pub fn new(briefing: Arc<Briefing>) -> Self {
        let probes = probes(&briefing.vehicle, &briefing.tools);
        let tariff = Tariff::new(&briefing).ok();
        let (shown, made) = (Showings::default(), BTreeSet::new());
        Self { briefing, probes, tariff, shown, made, last: None }
    }

    /// The same with tests that one of the worlds asks for, such as the oil pressure gauge, and with what
    /// is known of these worlds as they were begun.
    #[must_use]
    pub fn with_tests_for(mut self, worlds: &Worlds) -> Self {
        let suspected: Vec<_> = worlds.worlds.iter().map(|world| &world.faults[..]).collect();
        self.probes.extend(probes_for(&self.briefing.vehicle, &self.briefing.tools, &suspected));
        self.shown = worlds.foreseen.clone();
        self
    }

    /// The tests that are considered.
    #[must_use]
    pub fn probes(&self) -> &[Probe] {
        &self.probes
    }

    /// What a test shows in a world, as far as it was worked out for a value; by number of the world in
    /// the belief and of the test in [`Expert::probes`].
    #[must_use]
    pub fn foreseen(&self, world: usize, probe: usize) -> Option<&[Aspect]> {
        self.shown.get(world, probe).map(|shown| &shown[..])
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
        self.shown.forget(|number| reads(&number));
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
        let mut prospect = self.prospect_of(belief, &weighted)?;
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
        self.weigh_test(probe, &FOR_STEP)
    }

    /// The same, known no better than is enough.
    pub(super) fn weigh_test(&mut self, probe: usize, enough: &Enough) -> Option<Bounds> {
        let (_, _, prospect) = self.last.as_mut()?;
        prospect.as_mut()?.weigh_probe(probe, enough)
    }

    /// The same for a repair with its proof.
    pub fn weigh_repair(&mut self, remedy: &Remedy) -> Option<Bounds> {
        let (_, _, prospect) = self.last.as_mut()?;
        prospect.as_mut()?.weigh_remedy(remedy, &FOR_STEP)
    }

    /// Repairs that the situation that was valued last may call for.
    pub(super) fn repairs(&self) -> Vec<Remedy> {
        let prospect = self.last.as_ref().and_then(|(_, _, prospect)| prospect.as_ref());
        prospect.map_or_else(Vec::new, |prospect| prospect.repairs().cloned().collect())
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
        let (_, _, prospect) = self.last.as_ref()?;
        let first = prospect.as_ref()?.worlds().next()?;
        self.weigh_shown(belief.session(first), belief.known_codes(), cost, foretold)
    }

    /// The same with any session that shows what is open after it.
    pub(super) fn weigh_shown(
        &mut self,
        after: &Session,
        known: &KnownCodes,
        cost: f64,
        foretold: Option<&[Option<Vec<Aspect>>]>,
    ) -> Option<Bounds> {
        let groups = self.groups_foretold(known, foretold)?;
        let (_, _, prospect) = self.last.as_mut()?;
        let open = self.tariff.as_ref()?.open_in(after);
        let prospect = prospect.as_mut()?;
        Some(prospect.weigh_shown(cost, open, &groups, &FOR_STEP))
    }

    /// Whether what was done could have told any two worlds apart that counted in the situation that was
    /// valued last; `None` when that is not known.
    #[must_use]
    pub fn tells_apart(&self, belief: &Belief, foretold: &[Option<Vec<Aspect>>]) -> Option<bool> {
        let groups = self.groups_foretold(belief.known_codes(), Some(foretold))?;
        Some(groups.iter().any(|group| *group > 0))
    }

    /// For each world that counted in the situation that was valued last, the group of worlds that foretold
    /// what could not be told apart.
    fn groups_foretold(
        &self,
        known: &KnownCodes,
        foretold: Option<&[Option<Vec<Aspect>>]>,
    ) -> Option<Vec<usize>> {
        let (_, _, prospect) = self.last.as_ref()?;
        let mut firsts: Vec<&Vec<Aspect>> = Vec::new();
        let group = |world: usize| {
            let shown = foretold.and_then(|all| all.get(world)).and_then(Option::as_ref);
            let Some(shown) = shown else { return 0 };
            let like = |first: &&Vec<Aspect>| !differ(first, shown, known);
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

    /// The present situation as a problem, for whoever wants to search it otherwise than
    /// [`Expert::value`] does; `None` when the vehicle is too large for the planner.
    ///
    /// # Errors
    /// [`VehicleError`] when a world's wiring cannot be solved.
    pub fn prospect(&mut self, belief: &Belief) -> Result<Option<Prospect>, VehicleError> {
        self.prospect_of(belief, &counting(belief))
    }

    fn prospect_of(
        &mut self,
        belief: &Belief,
        weighted: &[(usize, f64)],
    ) -> Result<Option<Prospect>, VehicleError> {
        let worlds = weighted.iter().map(|(world, _)| *world);
        self.shown.complete(&|world| belief.session(world), worlds, &self.probes)?;
        let groups: Vec<Vec<usize>> =
            (0..self.probes.len()).map(|number| self.grouped(belief, weighted, number)).collect();
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

    /// Groups of worlds by what a test shows in them; worlds in one could not be told apart. A world in
    /// which that is not known would be a group of its own.
    fn grouped(&self, belief: &Belief, weighted: &[(usize, f64)], number: usize) -> Vec<usize> {
        let mut firsts: Vec<Option<&Showing>> = Vec::new();
        weighted
            .iter()
            .map(|(world, _)| {
                let shown = self.shown.get(*world, number);
                let like = |first: Option<&Showing>| match (first, shown) {
                    (Some(first), Some(shown)) => !differ(first, shown, belief.known_codes()),
                    _ => false,
                };
                firsts.iter().copied().position(like).unwrap_or_else(|| {
                    firsts.push(shown);
                    firsts.len() - 1
                })
            })
            .collect()
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
