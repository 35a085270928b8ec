//! A belief in its present state as a plain problem for the planner.
//!
//! States are what can still be told apart or has to be mended differently, and "mended". Covers
//! are the parts and connectors that are in the way, the key, and instruments that are fetched
//! once; the search starts from what is open now. Steps are the tests and the repairs, each repair
//! with everything put back and its proof on the road. The one ending closes up; where the fault is
//! still there it costs a come-back.

use super::belief::{Belief, cost_of};
use super::plan::belief::Belief as Chances;
use super::plan::budget::{Bounds, Enough};
use super::plan::compiled::{Compiled, CompiledEnding, CompiledStep, Flaw};
use super::plan::covers::{Demand, Open};
use super::plan::search::Search;
use super::plan::upper::{Choice, take};
use super::probe::Probe;
use super::remedy::Remedy;
use super::tariff::Tariff;
use crate::session::setup::Briefing;
use crate::session::step::Step;
use crate::vehicle::error::VehicleError;
use std::collections::{BTreeMap, BTreeSet};

/// What is known where the problem is made.
pub struct Scene<'a> {
    /// What everybody may know.
    pub briefing: &'a Briefing,
    /// Prices.
    pub tariff: &'a Tariff,
    /// What is believed.
    pub belief: &'a Belief,
    /// Worlds that count, heaviest first.
    pub weighted: &'a [(usize, f64)],
    /// Every test.
    pub probes: &'a [Probe],
    /// For every test and every world that counts, which group of worlds it would show: those in
    /// one group could not be told apart.
    pub groups: &'a [Vec<usize>],
    /// Tests that were made and would show the same again.
    pub made: &'a BTreeSet<usize>,
}

/// A situation with its search.
pub struct Prospect {
    search: Search,
    /// Step of the problem for every test; `None` where there was no room.
    steps: Vec<Option<usize>>,
    remedies: Vec<(Remedy, usize)>,
    /// Steps of tests that were made already.
    made: u128,
    /// Worlds that count, their weights and their states.
    worlds: Vec<(usize, f64, usize)>,
}

/// What the planner would do first.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum First {
    /// This test.
    Probe(usize),
    /// This repair.
    Remedy(Remedy),
    /// Close up.
    Close,
}

impl Prospect {
    /// Makes the problem.
    ///
    /// # Errors
    /// The outer error when a world's wiring cannot be solved, [`Flaw`] when the vehicle is too
    /// large for the planner.
    pub fn new(scene: &Scene<'_>) -> Result<Result<Self, Flaw>, VehicleError> {
        let oil = oil(scene)?;
        Ok(Self::build(scene, oil))
    }

    fn build(scene: &Scene<'_>, oil: f64) -> Result<Self, Flaw> {
        let states = States::of(scene);
        let remedies: Vec<Remedy> = states
            .list
            .iter()
            .flat_map(|state| state.remedies.clone())
            .collect::<BTreeSet<_>>()
            .into_iter()
            .collect();
        let room = Compiled::MOST_STEPS.saturating_sub(remedies.len());
        let mut compiled = Vec::new();
        let mut steps = vec![None; scene.probes.len()];
        let (mut made, mut idle) = (0_u128, 0_u128);
        for (number, probe) in scene.probes.iter().enumerate() {
            let labels = states.labels(number);
            let count = labels.iter().copied().max().map_or(1, |most| most + 1);
            let is_made = scene.made.contains(&number);
            if compiled.len() >= room {
                break;
            }
            let place = compiled.len();
            steps[number] = Some(place);
            made |= u128::from(is_made) << place;
            idle |= u128::from(is_made || count < 2) << place;
            compiled.push((labels, test(scene, probe, &states, number, count)?));
        }
        idle |= dominated(&compiled, idle);
        let mut compiled: Vec<CompiledStep> = compiled.into_iter().map(|(_, step)| step).collect();
        let mut placed = Vec::with_capacity(remedies.len());
        for remedy in remedies {
            let extra = if remedy == Remedy::TopUp { oil } else { 0.0 };
            placed.push((remedy.clone(), compiled.len()));
            compiled.push(repair(scene, &remedy, &states, extra)?);
        }
        let comeback = scene.briefing.prices.comeback.as_units();
        let mut cost: Vec<f64> = states
            .list
            .iter()
            .map(|state| if state.remedies.is_empty() { 0.0 } else { comeback })
            .collect();
        cost.push(0.0);
        let weights = states.list.iter().enumerate().map(|(place, state)| (place, state.weight));
        let Some((prior, _)) = Chances::from_weights(weights.collect()) else {
            return Err(Flaw::None { what: "states with a prior" });
        };
        let heaviest = scene.weighted.first().map_or(0, |(world, _)| *world);
        let open = scene.tariff.open_in(scene.belief.session(heaviest));
        let problem = Compiled {
            states: states.list.len() + 1,
            prior,
            covers: scene.tariff.covers().clone(),
            steps: compiled,
            endings: vec![CompiledEnding { cost, demand: scene.tariff.closed_up() }],
        };
        let search = Search::from(problem, open, idle)?;
        let worlds = scene.weighted.iter().zip(&states.place);
        let worlds = worlds.map(|((world, weight), state)| (*world, *weight, *state)).collect();
        Ok(Self { search, steps, remedies: placed, made, worlds })
    }

    /// Bounds on the expected cost of the rest of the job.
    pub fn run(&mut self, enough: &Enough) -> Bounds {
        let root = self.search.root();
        self.search.run(root, enough, &mut |_| true)
    }

    /// What is best first, as far as is known.
    #[must_use]
    pub fn first(&self) -> First {
        match self.search.choice(self.search.root()) {
            Choice::End(_) => First::Close,
            Choice::Step(step) => self
                .remedies
                .iter()
                .find(|(_, place)| *place == step)
                .map(|(remedy, _)| First::Remedy(remedy.clone()))
                .or_else(|| {
                    self.steps.iter().position(|place| *place == Some(step)).map(First::Probe)
                })
                .unwrap_or(First::Close),
        }
    }

    /// Bounds when a test is made first.
    pub fn weigh_probe(&mut self, number: usize, enough: &Enough) -> Option<Bounds> {
        let step = self.steps.get(number).copied().flatten()?;
        if self.made >> step & 1 == 1 {
            let rest = self.search.bounds(self.search.root());
            let price = self.price(step);
            return Some(Bounds { lower: price + rest.lower, upper: price + rest.upper });
        }
        Some(self.weigh(step, enough))
    }

    /// Bounds when a repair is done and proved first.
    pub fn weigh_remedy(&mut self, wanted: &Remedy, enough: &Enough) -> Option<Bounds> {
        let (_, step) = self.remedies.iter().find(|(remedy, _)| remedy == wanted)?;
        let step = *step;
        Some(self.weigh(step, enough))
    }

    /// Repairs that may be called for.
    pub fn repairs(&self) -> impl Iterator<Item = &Remedy> {
        self.remedies.iter().map(|(remedy, _)| remedy)
    }

    /// Worlds that count.
    pub fn worlds(&self) -> impl Iterator<Item = usize> + '_ {
        self.worlds.iter().map(|(world, ..)| *world)
    }

    /// Bounds when something was done that cost so much, left this open, and shows which group of
    /// worlds is true: one group number for each of [`Prospect::worlds`].
    pub fn weigh_shown(
        &mut self,
        cost: f64,
        open: Open,
        groups: &[usize],
        enough: &Enough,
    ) -> Bounds {
        let mut parts: BTreeMap<usize, Vec<(usize, f64)>> = BTreeMap::new();
        for ((_, weight, state), group) in self.worlds.iter().zip(groups) {
            parts.entry(*group).or_default().push((*state, *weight));
        }
        let total: f64 = self.worlds.iter().map(|(_, weight, _)| weight).sum();
        let after = parts
            .into_values()
            .filter_map(Chances::from_weights)
            .map(|(belief, weight)| (weight / total, belief))
            .collect();
        let root = self.search.root();
        let more = Enough { situations: self.search.size() + enough.situations, ..*enough };
        self.search.weigh_other(root, (cost, open), after, &more)
    }

    fn weigh(&mut self, step: usize, enough: &Enough) -> Bounds {
        let root = self.search.root();
        let more = Enough { situations: self.search.size() + enough.situations, ..*enough };
        self.search.weigh(root, step, &more, &mut |_| true)
    }

    fn price(&self, step: usize) -> f64 {
        let open = self.search.open(self.search.root());
        take(self.search.compiled(), open, 0, step).0
    }

    /// Situations looked at so far.
    #[must_use]
    pub fn size(&self) -> usize {
        self.search.size()
    }
}

/// Worlds that call for the same repairs and that no test tells apart.
struct State {
    remedies: Vec<Remedy>,
    weight: f64,
    /// One of its worlds, by its place among those that count.
    world: usize,
}

struct States<'a> {
    list: Vec<State>,
    /// The state of each world that counts.
    place: Vec<usize>,
    groups: &'a [Vec<usize>],
}

impl<'a> States<'a> {
    fn of(scene: &Scene<'a>) -> Self {
        let mut places: BTreeMap<(Vec<Remedy>, Vec<usize>), usize> = BTreeMap::new();
        let mut list: Vec<State> = Vec::new();
        let mut of_world = Vec::with_capacity(scene.weighted.len());
        for (world, (number, weight)) in scene.weighted.iter().enumerate() {
            // What takes it away, not only what is named after it.
            let mut remedies = Remedy::of_all(scene.belief.faults_left(*number));
            remedies.sort();
            let shown = scene.groups.iter().map(|groups| groups[world]).collect();
            let place = *places.entry((remedies.clone(), shown)).or_insert_with(|| {
                list.push(State { remedies, weight: 0.0, world });
                list.len() - 1
            });
            list[place].weight += weight;
            of_world.push(place);
        }
        Self { list, place: of_world, groups: scene.groups }
    }

    /// The group of every state in one test, numbered as they appear.
    fn labels(&self, probe: usize) -> Vec<usize> {
        let mut names: Vec<usize> = Vec::new();
        self.list
            .iter()
            .map(|state| {
                let group = self.groups[probe][state.world];
                names.iter().position(|name| *name == group).unwrap_or_else(|| {
                    names.push(group);
                    names.len() - 1
                })
            })
            .collect()
    }
}

fn unchanged(states: &States<'_>) -> Vec<usize> {
    (0..=states.list.len()).collect()
}

/// A test; what the mended vehicle would show is never asked.
fn test(
    scene: &Scene<'_>,
    probe: &Probe,
    states: &States<'_>,
    number: usize,
    count: usize,
) -> Result<CompiledStep, Flaw> {
    let mut chance = vec![vec![0.0; states.list.len() + 1]; count];
    // The worlds carry the errors of instruments already, as the width within which readings count as
    // one; a mistake beside that is rarer than anything that would change a plan.
    for (state, label) in states.labels(number).into_iter().enumerate() {
        chance[label][state] = 1.0;
    }
    if let Some(row) = chance.first_mut() {
        row[states.list.len()] = 1.0;
    }
    Ok(CompiledStep {
        cost: scene.tariff.of_steps(scene.briefing, &probe.steps),
        // Without mistakes a test done again tells nothing, and need not be remembered.
        repeats: true,
        demand: scene.tariff.demand(&probe.need, &probe.steps)?,
        after: Demand::default(),
        becomes: vec![unchanged(states); count],
        chance,
        renews: 0,
        changes: false,
    })
}

fn repair(
    scene: &Scene<'_>,
    remedy: &Remedy,
    states: &States<'_>,
    extra: f64,
) -> Result<CompiledStep, Flaw> {
    let spec = &scene.briefing.vehicle;
    let mended = states.list.len();
    let mut chance = vec![vec![0.0; mended + 1]; 2];
    let mut becomes = vec![unchanged(states), unchanged(states)];
    chance[0][mended] = 1.0;
    for (place, state) in states.list.iter().enumerate() {
        let faults = scene.belief.faults_left(scene.weighted[state.world].0);
        // On a sound vehicle the road shows nothing, whatever was renewed.
        let works = remedy.fixes_all(faults);
        chance[usize::from(!works)][place] = 1.0;
        if works && !faults.is_empty() {
            becomes[0][place] = mended;
        }
    }
    let mut steps = remedy.work(scene.briefing);
    let cost = scene.tariff.of_steps(scene.briefing, &steps)
        + extra
        + scene.tariff.of_proof(scene.briefing);
    steps.push(Step::ReadCodes);
    Ok(CompiledStep {
        cost,
        repeats: false,
        demand: scene.tariff.demand(&remedy.need(spec), &steps)?,
        after: scene.tariff.closed_up(),
        chance,
        becomes,
        renews: 0,
        changes: true,
    })
}

/// Tests that another one replaces: it tells the same, asks no more of the covers and costs no more.
fn dominated(tests: &[(Vec<usize>, CompiledStep)], idle: u128) -> u128 {
    let within = |a: Open, b: Open| a & !b == 0;
    let mut out = 0_u128;
    for (place, (labels, step)) in tests.iter().enumerate() {
        let replaced = tests.iter().enumerate().any(|(other, (theirs, test))| {
            let blocked = (idle | out) >> other & 1 == 1;
            let same = within(test.demand.open, step.demand.open)
                && within(test.demand.shut, step.demand.shut)
                && theirs == labels;
            other != place && !blocked && same && test.cost <= step.cost
        });
        out |= u128::from(replaced && idle >> place & 1 == 0) << place;
    }
    out
}

/// What the oil costs that is missing where oil is missing, in the likeliest such world.
fn oil(scene: &Scene<'_>) -> Result<f64, VehicleError> {
    let low = scene.weighted.iter().find(|(world, _)| {
        scene.belief.faults_left(*world).iter().any(|fault| Remedy::TopUp.fixes(fault))
    });
    let Some((world, _)) = low else { return Ok(0.0) };
    let mut session = scene.belief.session(*world).fork();
    if session.vehicle_in_sight().engine_runs() {
        return Ok(0.0);
    }
    let labour = scene.briefing.prices.labour_per_hour;
    let step = Step::TopUpOil;
    let all = cost_of(&session.take_unlogged(&step)?, labour);
    Ok(all - scene.tariff.of_steps(scene.briefing, &[step]))
}
