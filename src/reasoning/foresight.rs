//! What steps would tell before anybody has taken them.
//!
//! In every world that counts the steps are taken on a copy; worlds that would show what nobody could
//! tell apart ([`super::likelihood::differ`]) are one outcome. An outcome has the chance of its worlds, and
//! what it would mean is the belief within them. So chances sum to one, beliefs after them average to the
//! belief before, and what is told is the mutual information of outcome and hypothesis in bits: this is the
//! planner's own picture of a test ([`super::prospect`]).

use super::belief::{Belief, cost_of};
use super::likelihood::{KnownCodes, differ};
use super::outcome::{Aspect, aspects};
use super::world::Hypothesis;
use crate::numerics::elementary::ln;
use crate::session::attempt::Session;
use crate::session::event::Event;
use crate::session::step::Step;
use crate::units::Money;
use crate::vehicle::error::VehicleError;
use std::collections::BTreeMap;

/// What steps would tell from where things stand.
#[derive(Debug, Clone, PartialEq)]
pub struct Foresight {
    /// What they are expected to cost, at the labour rate [units of the currency].
    pub cost: f64,
    /// How uncertain the hypothesis is before them \[bit\].
    pub uncertain: f64,
    /// What they are expected to tell of it \[bit\], zero to [`Foresight::uncertain`].
    pub bits: f64,
    /// What they can show, likeliest first; the chances sum to one.
    pub outcomes: Vec<Outcome>,
}

/// One thing that steps can show.
#[derive(Debug, Clone, PartialEq)]
pub struct Outcome {
    /// Chance, 0 to 1.
    pub chance: f64,
    /// What would follow from the last of the steps, as the likeliest world of this outcome shows it.
    pub events: Vec<Event>,
    /// What would be believed after it.
    pub after: BTreeMap<Hypothesis, f64>,
}

/// Takes steps in a copy of every world and says what they would tell.
///
/// # Errors
/// [`VehicleError`] when a world's wiring cannot be solved.
pub fn foresee(belief: &Belief, steps: &[Step]) -> Result<Foresight, VehicleError> {
    Ok(imagine(belief, steps)?.foresight)
}

/// What was imagined of steps, with what the expert needs to weigh them.
pub(super) struct Imagined {
    pub(super) foresight: Foresight,
    /// What the last step shows in every world, by its number; `None` for worlds that do not count.
    pub(super) foretold: Vec<Option<Vec<Aspect>>>,
    /// The likeliest world after the steps; `None` when nothing is believed at all.
    pub(super) likeliest: Option<Session>,
}

pub(super) fn imagine(belief: &Belief, steps: &[Step]) -> Result<Imagined, VehicleError> {
    let weighted = belief.leading(usize::MAX);
    let mut foretold = Vec::new();
    let mut shown: Vec<Vec<Event>> = Vec::with_capacity(weighted.len());
    let mut likeliest = None;
    let mut cost = 0.0;
    let total: f64 = weighted.iter().map(|(_, weight)| weight).sum();
    for (world, weight) in &weighted {
        let mut session = belief.session(*world).fork();
        let labour = session.briefing().prices.labour_per_hour;
        let (events, spent) = take_all(&mut session, steps, labour)?;
        cost += spent * weight / total;
        if foretold.len() <= *world {
            foretold.resize(world + 1, None);
        }
        foretold[*world] = Some(aspects(&events));
        shown.push(events);
        likeliest.get_or_insert(session);
    }
    let groups = grouped(belief, &weighted, &foretold);
    let parts = parts(belief, &weighted, &groups);
    let uncertain = entropy(&belief.by_hypothesis());
    // Rounding may put it beside what is possible.
    let bits = told_by(&parts).min(uncertain);
    let mut outcomes: Vec<Outcome> = parts
        .into_iter()
        .map(|part| Outcome {
            chance: part.chance,
            events: shown[part.first].clone(),
            after: part.after,
        })
        .collect();
    outcomes.sort_by(|a, b| b.chance.total_cmp(&a.chance));
    Ok(Imagined { foresight: Foresight { cost, uncertain, bits, outcomes }, foretold, likeliest })
}

/// Events of the last step, and what all of them cost.
fn take_all(
    session: &mut Session,
    steps: &[Step],
    labour_per_hour: Money,
) -> Result<(Vec<Event>, f64), VehicleError> {
    let mut events = Vec::new();
    let mut spent = 0.0;
    for step in steps {
        events = session.take_unlogged(step)?;
        spent += cost_of(&events, labour_per_hour);
    }
    Ok((events, spent))
}

/// Worlds that would show the same.
pub(super) struct Part {
    pub(super) chance: f64,
    /// Its likeliest world, by its place among those weighed.
    first: usize,
    after: BTreeMap<Hypothesis, f64>,
}

/// What a step is expected to have told \[bit\] that each world had foretold, from what was believed before
/// it, heaviest first: worlds with their number and weight.
pub(super) fn bits_of(
    belief: &Belief,
    before: &[(usize, f64)],
    foretold: &[Option<Vec<Aspect>>],
) -> f64 {
    told_by(&parts(belief, before, &grouped(belief, before, foretold)))
}

/// The group of each weighed world: those in one could not be told apart.
fn grouped(
    belief: &Belief,
    weighted: &[(usize, f64)],
    foretold: &[Option<Vec<Aspect>>],
) -> Vec<usize> {
    let known: &KnownCodes = belief.known_codes();
    let mut firsts: Vec<&Vec<Aspect>> = Vec::new();
    let of_world = |(world, _): &(usize, f64)| {
        let Some(shown) = foretold.get(*world).and_then(Option::as_ref) else { return 0 };
        let like = |first: &&Vec<Aspect>| !differ(first, shown, known);
        firsts.iter().position(like).unwrap_or_else(|| {
            firsts.push(shown);
            firsts.len() - 1
        })
    };
    weighted.iter().map(of_world).collect()
}

pub(super) fn parts(belief: &Belief, weighted: &[(usize, f64)], groups: &[usize]) -> Vec<Part> {
    let total: f64 = weighted.iter().map(|(_, weight)| weight).sum();
    let mut parts: BTreeMap<usize, Part> = BTreeMap::new();
    for (place, ((world, weight), group)) in weighted.iter().zip(groups).enumerate() {
        let share = weight / total;
        let part = parts.entry(*group).or_insert_with(|| Part {
            chance: 0.0,
            first: place,
            after: BTreeMap::new(),
        });
        part.chance += share;
        *part.after.entry(belief.hypothesis(*world).clone()).or_insert(0.0) += share;
    }
    let mut parts: Vec<Part> = parts.into_values().filter(|part| part.chance > 0.0).collect();
    for part in &mut parts {
        for chance in part.after.values_mut() {
            *chance /= part.chance;
        }
    }
    parts
}

/// What is told \[bit\]: the entropy of all parts together less that which is expected within them.
fn told_by(parts: &[Part]) -> f64 {
    let mut whole = BTreeMap::new();
    for part in parts {
        for (faults, chance) in &part.after {
            *whole.entry(faults.clone()).or_insert(0.0) += part.chance * chance;
        }
    }
    let within: f64 = parts.iter().map(|part| part.chance * entropy(&part.after)).sum();
    // Rounding makes neither less than nothing nor more than everything of it.
    let before = entropy(&whole);
    (before - within).clamp(0.0, before)
}

/// Entropy of probabilities that sum to one \[bit\].
#[must_use]
pub fn entropy(belief: &BTreeMap<Hypothesis, f64>) -> f64 {
    belief
        .values()
        .filter(|chance| **chance > 0.0)
        .map(|chance| -chance * ln(*chance) / core::f64::consts::LN_2)
        .sum::<f64>()
        .max(0.0)
}
