//! What an instructor would like to know of a scenario before handing it out.
//!
//! Three depths, each dearer than the one before: what the weights alone say ([`Draws`], at once); what the worlds of the
//! scenario tell ([`Facts`], some ten seconds the first time, since worlds are kept); what virtual apprentices earn on
//! some of its cases ([`Earned`], minutes).

pub mod json;
pub mod text;

use super::runner::{self, Listener, Plan, TrialError, worked};
use super::table::{Mean, Table};
use crate::faults::FaultName;
use crate::numerics::elementary::{exp, ln};
use crate::reasoning::belief::Belief;
use crate::reasoning::discernment::{Discernment, Pair, discernment};
use crate::reasoning::expert::Expert;
use crate::reasoning::foresight::entropy;
use crate::reasoning::plan::budget::Bounds;
use crate::reasoning::remedy::Remedy;
use crate::reasoning::world::{Hypothesis, Supposition, Worlds};
use crate::scenario::deal::{DealError, deal};
use crate::scenario::doubts::Simulated;
use crate::scenario::draw::Case;
use crate::scenario::load::Loaded;
use crate::scenario::suppose::suppositions;
use crate::scenario::warning::WarningKind;
use crate::vehicle::error::VehicleError;
use crate::virtual_apprentices::guesser::guesser;
use crate::virtual_apprentices::policy::Policy;
use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

/// What the weights of a scenario say, without any simulation.
#[derive(Debug, Clone, PartialEq)]
pub struct Draws {
    /// What can be drawn, with its share of all draws, likeliest first; equal ones in the order of their names.
    pub shares: Vec<(Hypothesis, f64)>,
    /// Entropy of the draw \[bit\].
    pub bits: f64,
}

impl Draws {
    /// Of a scenario.
    #[must_use]
    pub fn of(loaded: &Loaded) -> Self {
        let scenario = &loaded.scenario;
        let mut weights: BTreeMap<Hypothesis, f64> =
            scenario.faults.iter().map(|prior| (prior.names(), prior.weight)).collect();
        weights.insert(Vec::new(), scenario.no_fault);
        weights.retain(|_, weight| *weight > 0.0);
        let total: f64 = weights.values().sum();
        for weight in weights.values_mut() {
            *weight /= total;
        }
        let bits = entropy(&weights);
        let mut shares: Vec<(Hypothesis, f64)> = weights.into_iter().collect();
        shares.sort_by(|a, b| b.1.total_cmp(&a.1));
        Self { shares, bits }
    }

    /// How many equally likely ones would be as uncertain.
    #[must_use]
    pub fn as_many_equal(&self) -> f64 {
        exp(self.bits * ln(2.0))
    }
}

/// One repair at once, for which nothing is looked at.
#[derive(Debug, Clone, PartialEq)]
pub struct Guess {
    /// The likeliest fault that it takes away.
    pub diagnosis: FaultName,
    /// The repair that takes away what is wrong in more cases than any other.
    pub remedy: Remedy,
    /// Chance that it mends the vehicle, 0 to 1.
    pub chance: f64,
    /// Expected cost, proof and come-back included [units of the currency].
    pub cost: f64,
}

/// What can be told of a scenario's faults at all.
#[derive(Debug, Clone, PartialEq)]
pub struct Telling {
    /// Entries that nobody notices at any severity, by their number from 0.
    pub never_noticed: Vec<usize>,
    /// Which tests tell what apart.
    pub discernment: Discernment,
}

/// What the worlds of a scenario tell.
#[derive(Debug, Clone, PartialEq)]
pub struct Facts {
    /// What can be told of its faults.
    pub telling: Telling,
    /// Expected cost of the job under the expert's plan, before anything is known; duties and the proof of a repair are
    /// left out [units of the currency].
    pub value: Bounds,
    /// The best single guess; `None` where nothing is ever wrong.
    pub guess: Option<Guess>,
}

impl Facts {
    /// Of a scenario with its worlds, as they begin. `heard` is told how many of how many guesses are worked.
    ///
    /// # Errors
    /// [`VehicleError`] when a vehicle cannot be simulated.
    pub fn of(
        loaded: &Arc<Loaded>,
        worlds: &Worlds,
        heard: &(dyn Fn(usize, usize) + Sync),
    ) -> Result<Self, VehicleError> {
        let briefing = Arc::new(loaded.briefing());
        let telling = Telling::of(loaded, worlds)?;
        let mut expert = Expert::new(Arc::clone(&briefing)).with_tests_for(worlds);
        let value = expert.value(&Belief::prior(worlds.clone()))?.cost;
        let guess = Guess::of(loaded, &telling.discernment.hypotheses, heard)?;
        Ok(Self { telling, value, guess })
    }
}

impl Telling {
    /// Of a scenario with its worlds, as they begin.
    ///
    /// # Errors
    /// [`VehicleError`] when a vehicle cannot be simulated.
    pub fn of(loaded: &Arc<Loaded>, worlds: &Worlds) -> Result<Self, VehicleError> {
        let noticed: BTreeSet<&Hypothesis> = worlds.worlds.iter().map(|it| &it.faults).collect();
        let entries = loaded.scenario.faults.iter().enumerate();
        let never_noticed = entries
            .filter(|(_, prior)| prior.weight > 0.0 && !noticed.contains(&prior.names()))
            .map(|(number, _)| number)
            .collect();
        let discernment = discernment(&Arc::new(loaded.briefing()), worlds)?;
        Ok(Self { never_noticed, discernment })
    }

    /// What is doubtful about entries of the list of faults: those that nobody notices, and those that no affordable test
    /// tells from another that asks for another repair.
    #[must_use]
    pub fn doubts(&self, loaded: &Loaded) -> Simulated {
        let entry = |faults: &Hypothesis| {
            loaded.scenario.faults.iter().position(|prior| prior.names() == *faults)
        };
        let mut doubts: Simulated = Vec::new();
        for number in &self.never_noticed {
            if let Some(prior) = loaded.scenario.faults.get(*number) {
                doubts.push((*number, WarningKind::NeverNoticed { faults: prior.names() }));
            }
        }
        let untold = |pair: &&Pair| pair.told <= 0.0 && !pair.shares_remedy;
        for pair in self.discernment.pairs.iter().filter(untold) {
            let first = &self.discernment.hypotheses[pair.first].0;
            let second = &self.discernment.hypotheses[pair.second].0;
            for (faults, rival) in [(first, second), (second, first)] {
                if let Some(number) = entry(faults) {
                    let kind =
                        WarningKind::NotTold { faults: faults.clone(), rival: rival.clone() };
                    doubts.push((number, kind));
                }
            }
        }
        doubts
    }
}

impl Guess {
    /// The best guess among cases that a customer brings, worked on the middle severity of each hypothesis.
    fn of(
        loaded: &Arc<Loaded>,
        hypotheses: &[(Hypothesis, f64)],
        heard: &(dyn Fn(usize, usize) + Sync),
    ) -> Result<Option<Self>, VehicleError> {
        let mut best: Option<(f64, Remedy)> = None;
        for remedy in hypotheses.iter().flat_map(|(faults, _)| Remedy::of_all(faults)) {
            let chance = chance_of(&remedy, hypotheses);
            // Of equal ones the first, which is of the likeliest hypothesis.
            if best.as_ref().is_none_or(|(most, _)| chance > *most) {
                best = Some((chance, remedy));
            }
        }
        let Some((chance, remedy)) = best else { return Ok(None) };
        let mended = hypotheses
            .iter()
            .filter(|(faults, _)| !faults.is_empty() && remedy.fixes_all(faults))
            .find_map(|(faults, _)| faults.first().cloned());
        let Some(diagnosis) = mended else { return Ok(None) };
        let supposed = suppositions(loaded);
        let mut cost = 0.0;
        for (number, (faults, share)) in hypotheses.iter().enumerate() {
            heard(number, hypotheses.len());
            if let Some(supposition) = middle(&supposed, faults) {
                let case = case_of(loaded, supposition);
                let mut apprentice = guesser(diagnosis.clone(), remedy.clone());
                cost += share * worked(&case, apprentice.as_mut(), None)?.cost();
            }
        }
        Ok(Some(Self { diagnosis, remedy, chance, cost }))
    }
}

/// Chance that a repair takes away what is wrong.
fn chance_of(remedy: &Remedy, hypotheses: &[(Hypothesis, f64)]) -> f64 {
    let mended = |faults: &Hypothesis| !faults.is_empty() && remedy.fixes_all(faults);
    hypotheses.iter().filter(|(faults, _)| mended(faults)).map(|(_, share)| share).sum()
}

/// The supposition in the middle of those of a hypothesis, without anything odd beside it.
fn middle<'s>(supposed: &'s [Supposition], faults: &Hypothesis) -> Option<&'s Supposition> {
    let own: Vec<&Supposition> =
        supposed.iter().filter(|it| it.variant == 0 && it.faults == *faults).collect();
    own.get(own.len() / 2).copied()
}

/// A supposition as a case to be worked.
fn case_of(loaded: &Arc<Loaded>, supposition: &Supposition) -> Case {
    Case {
        briefing: Arc::new(loaded.briefing()),
        hidden: supposition.hidden.clone(),
        rubric: loaded.scenario.rubric,
        scenario: Arc::clone(loaded),
        seed: 0,
    }
}

/// What apprentices and the guess earn on some cases of a scenario.
#[derive(Debug, Clone, PartialEq)]
pub struct Earned {
    /// The habits.
    pub table: Table,
    /// Marks of the best single guess on the same cases; `None` where nothing is ever wrong.
    pub guess: Option<Mean>,
}

/// Why nothing is known of what apprentices earn.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum NotEarned {
    /// The trial stopped.
    #[error("working the cases of a scenario")]
    Trial(#[from] TrialError),
    /// A seed yields no case.
    #[error("dealing the cases of a scenario")]
    Deal(#[from] DealError),
}

impl Earned {
    /// Has every habit, and the guess, work the cases of the plan's seeds.
    ///
    /// # Errors
    /// [`NotEarned`].
    pub fn of(
        loaded: &Arc<Loaded>,
        (worlds, guess): (&Worlds, Option<&Guess>),
        plan: &Plan,
        listener: &dyn Listener,
    ) -> Result<Option<Self>, NotEarned> {
        let rows = runner::run(loaded, plan, &BTreeSet::<(u64, Policy)>::new(), listener)?;
        let Some(table) = Table::of(&rows) else { return Ok(None) };
        let mut marks = Vec::new();
        if let Some(guess) = guess {
            for seed in plan.seeds.clone() {
                let case = deal(loaded, seed)?;
                let mut apprentice = guesser(guess.diagnosis.clone(), guess.remedy.clone());
                let worked =
                    worked(&case, apprentice.as_mut(), Some(worlds)).map_err(TrialError::from)?;
                marks.extend(worked.judged.map(|judged| judged.total));
            }
        }
        Ok(Some(Self { table, guess: Mean::of(&marks) }))
    }
}
