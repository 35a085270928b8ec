//! The posterior over worlds, step by step.

use super::likelihood::{self, KnownCodes};
use super::outcome::{Aspect, aspects};
use super::remedy::Remedy;
use super::world::{Hypothesis, Worlds};
use crate::faults::{FaultName, worn_kinds};
use crate::session::attempt::{Entry, Session};
use crate::session::event::Event;
use crate::session::setup::Briefing;
use crate::session::step::Step;
use crate::vehicle::error::VehicleError;
use std::collections::{BTreeMap, BTreeSet};

/// Worlds below this share of the whole are not simulated further: what they could still add to
/// any expectation lies below the width of the marks' bands.
const NEGLIGIBLE: f64 = 1e-7;

/// What the evidence so far says.
#[derive(Debug, Clone)]
pub struct Belief {
    worlds: Worlds,
    weights: Vec<f64>,
    known: KnownCodes,
    /// What was already counted since the vehicle last changed: the same reading taken twice on
    /// the same state repeats its error and tells nothing new.
    counted: BTreeSet<String>,
    repaired: bool,
}

impl Belief {
    /// Before any evidence.
    #[must_use]
    pub fn prior(worlds: Worlds) -> Self {
        let known = worlds.worlds.first().map(|world| world.session.briefing()).map_or_else(
            KnownCodes::default,
            |briefing| KnownCodes {
                own: briefing.vehicle.own_codes(),
                false_ones: briefing.false_codes.clone(),
            },
        );
        let weights = worlds.priors.clone();
        Self { worlds, weights, known, counted: BTreeSet::new(), repaired: false }
    }

    /// Takes the apprentice's step in every world that still matters and weighs it by how well it
    /// foretold what followed. Returns what each world foretold; `None` for those that do not
    /// matter.
    ///
    /// # Errors
    /// [`VehicleError`] when a world's wiring cannot be solved.
    pub fn learn(&mut self, entry: &Entry) -> Result<Vec<Option<Vec<Aspect>>>, VehicleError> {
        let seen = aspects(&entry.events);
        let mut predicted: Vec<Option<Vec<Aspect>>> = Vec::with_capacity(self.weights.len());
        let remedy = Remedy::in_step(&entry.step).filter(|_| !was_refused(entry));
        self.repaired |= remedy.is_some();
        for (world, weight) in self.worlds.worlds.iter_mut().zip(&self.weights) {
            if let Some(remedy) = &remedy {
                world.left.retain(|fault| !remedy.fixes(fault));
                world.left.extend(brought(&entry.step, world.session.briefing()));
            }
            predicted.push(if *weight > NEGLIGIBLE {
                Some(aspects(&world.session.take_unlogged(&entry.step)?))
            } else {
                None
            });
        }
        if changes_vehicle(&entry.step) {
            self.counted.clear();
        }
        let mark = format!("{:?} {seen:?}", entry.step);
        if seen.is_empty() || !self.counted.insert(mark) {
            return Ok(predicted);
        }
        let spreads = self.spreads(&predicted);
        for (place, weight) in self.weights.iter_mut().enumerate() {
            *weight = match &predicted[place] {
                Some(aspects) => {
                    *weight * likelihood::of_seen(&seen, aspects, &self.known, &spreads[place])
                }
                None => 0.0,
            };
        }
        self.normalise();
        Ok(predicted)
    }

    fn normalise(&mut self) {
        let total: f64 = self.weights.iter().sum();
        // The total cannot vanish: a likelihood never does and the largest weight is kept.
        for weight in &mut self.weights {
            *weight /= total;
        }
    }

    /// For every world and quantity, how far the neighbouring severities of the same fault lie:
    /// the truth may be anywhere between them.
    fn spreads(&self, predicted: &[Option<Vec<Aspect>>]) -> Vec<Vec<f64>> {
        let worlds = &self.worlds.worlds;
        (0..worlds.len())
            .map(|place| {
                let Some(own) = &predicted[place] else {
                    return Vec::new();
                };
                own.iter()
                    .enumerate()
                    .map(|(number, aspect)| {
                        let Aspect::Quantity { value, .. } = aspect else {
                            return 0.0;
                        };
                        worlds
                            .iter()
                            .zip(predicted)
                            .filter(|(world, _)| {
                                world.faults == worlds[place].faults
                                    && world.variant == worlds[place].variant
                            })
                            .filter_map(|(_, other)| match other.as_ref()?.get(number)? {
                                Aspect::Quantity { value: other, .. } if other != value => {
                                    Some((other - value).abs())
                                }
                                _ => None,
                            })
                            .fold(f64::INFINITY, f64::min)
                    })
                    .map(|gap| if gap.is_finite() { 0.6 * gap } else { 0.0 })
                    .collect()
            })
            .collect()
    }

    /// Probability of each hypothesis; sums to one.
    #[must_use]
    pub fn by_hypothesis(&self) -> BTreeMap<Hypothesis, f64> {
        let mut sums = BTreeMap::new();
        for (world, weight) in self.worlds.worlds.iter().zip(&self.weights) {
            *sums.entry(world.faults.clone()).or_insert(0.0) += weight;
        }
        sums
    }

    /// Probability of what is still wrong, repairs taken into account; sums to one.
    #[must_use]
    pub fn by_left(&self) -> BTreeMap<Hypothesis, f64> {
        let mut sums = BTreeMap::new();
        for (world, weight) in self.worlds.worlds.iter().zip(&self.weights) {
            *sums.entry(world.left.clone()).or_insert(0.0) += weight;
        }
        sums
    }

    /// Whether any repair was done.
    #[must_use]
    pub const fn was_repaired(&self) -> bool {
        self.repaired
    }

    /// The share of each fault in what is wrong, `None` for "nothing wrong"; sums to one. See
    /// [`shares`].
    #[must_use]
    pub fn by_fault(&self) -> BTreeMap<Option<FaultName>, f64> {
        shares(&self.by_hypothesis())
    }

    /// Worlds that still matter, with their number and weight, heaviest first; at most `most`.
    #[must_use]
    pub fn leading(&self, most: usize) -> Vec<(usize, f64)> {
        let mut order: Vec<(usize, f64)> = self
            .weights
            .iter()
            .copied()
            .enumerate()
            .filter(|(_, weight)| *weight > NEGLIGIBLE)
            .collect();
        order.sort_by(|a, b| b.1.total_cmp(&a.1).then(a.0.cmp(&b.0)));
        order.truncate(most);
        order
    }

    /// The faults that are still there in a world; none when nothing is, or no longer.
    #[must_use]
    pub fn faults_left(&self, world: usize) -> &[FaultName] {
        &self.worlds.worlds[world].left
    }

    /// What is the truth in a world, mended or not.
    #[must_use]
    pub fn hypothesis(&self, world: usize) -> &Hypothesis {
        &self.worlds.worlds[world].faults
    }

    /// The session of a world.
    #[must_use]
    pub fn session(&self, world: usize) -> &Session {
        &self.worlds.worlds[world].session
    }

    /// The codes that say something.
    #[must_use]
    pub const fn known_codes(&self) -> &KnownCodes {
        &self.known
    }
}

/// Probabilities of hypotheses as shares of single faults: faults that come together share the
/// probability of being there evenly, so that the sum stays one. This is how a list of suspects
/// with confidences that sum to one speaks of more than one fault.
#[must_use]
pub fn shares(belief: &BTreeMap<Hypothesis, f64>) -> BTreeMap<Option<FaultName>, f64> {
    let mut shares = BTreeMap::new();
    for (faults, chance) in belief {
        if faults.is_empty() {
            *shares.entry(None).or_insert(0.0) += chance;
        }
        for fault in faults {
            *shares.entry(Some(fault.clone())).or_insert(0.0) += chance / faults.len() as f64;
        }
    }
    shares
}

/// Faults that a part from the counter brings along: what has been worn elsewhere is as bad as what wore here. Whoever
/// sells it knows, and so does an expert; an apprentice sees it on the bench.
#[must_use]
pub fn brought(step: &Step, briefing: &Briefing) -> Vec<FaultName> {
    let Step::Fit { valve, part_number } = step else { return Vec::new() };
    let Some(offer) = briefing.offer(part_number) else { return Vec::new() };
    let place = || valve.clone();
    worn_kinds(&offer.valve()).map(|kind| FaultName { kind, place: place() }).collect()
}

/// Whether the step was not possible.
#[must_use]
pub fn was_refused(entry: &Entry) -> bool {
    entry.events.iter().any(|event| matches!(event, Event::Refused { .. }))
}

/// Whether a step may change what later readings show.
#[must_use]
pub const fn changes_vehicle(step: &Step) -> bool {
    matches!(
        step,
        Step::Fit { .. }
            | Step::Clean { .. }
            | Step::Mend { .. }
            | Step::Replace { .. }
            | Step::MeasureFromFront { .. }
            | Step::Scope { .. }
            | Step::TopUpOil
            | Step::ChangeOil { .. }
            | Step::ClearCodes
            | Step::Drive { .. }
            | Step::FitGauge
            | Step::ReadGauge { .. }
            | Step::RemoveGauge
            | Step::Key { .. }
            | Step::Command { .. }
            | Step::Plug { .. }
            | Step::Unplug { .. }
            | Step::Power { .. }
    )
}

/// What a step's events cost in money at a labour rate: the sum of what went into the till.
#[must_use]
pub fn cost_of(events: &[Event], labour_per_hour: crate::units::Money) -> f64 {
    events
        .iter()
        .map(|event| match event {
            Event::Spent { minutes, money } => {
                (minutes.at_rate(labour_per_hour) + *money).as_units()
            }
            _ => 0.0,
        })
        .sum()
}
