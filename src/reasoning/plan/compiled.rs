//! A problem made ready for the search: names become places, lists become tables.

use super::belief::Belief;
use super::covers::{Covers, Demand, Open};
use super::problem::{Problem, Repeat};
use thiserror::Error;

/// Why a problem cannot be put to the search.
#[derive(Debug, Clone, PartialEq, Error)]
pub enum Flaw {
    /// More of something than there is room for.
    #[error("too many {what}: {found}, at most {most}")]
    TooMany {
        /// Of what.
        what: &'static str,
        /// At most so many.
        most: usize,
        /// So many were found.
        found: usize,
    },
    /// There is none of something that is needed.
    #[error("there are no {what}")]
    None {
        /// Of what.
        what: &'static str,
    },
    /// Two things have one name.
    #[error("two {what} are called `{name}`")]
    Twice {
        /// Of what.
        what: &'static str,
        /// The name.
        name: String,
    },
    /// A name that nothing bears.
    #[error("there is no {what} called `{name}`")]
    Unknown {
        /// What it should be.
        what: &'static str,
        /// The name.
        name: String,
    },
    /// A cost that is none. A step costs more than nothing, so that no policy goes on for ever.
    #[error("`{of}` has a cost of {cost}")]
    Cost {
        /// Of what.
        of: String,
        /// As given.
        cost: f64,
    },
    /// A prior that is none.
    #[error("state `{state}` has a prior of {prior}")]
    Prior {
        /// Which state.
        state: String,
        /// As given.
        prior: f64,
    },
    /// Chances that do not sum to one, or are not there.
    #[error("step `{step}` in state `{state}`: the chances sum to {sum} and not to 1")]
    Chances {
        /// Which step.
        step: String,
        /// In which state.
        state: String,
        /// What they sum to.
        sum: f64,
    },
    /// Covers that must be off for each other.
    #[error("cover `{cover}` is behind itself")]
    Circle {
        /// One of them.
        cover: String,
    },
    /// A step wants one cover open and shut.
    #[error("`{step}` wants a cover open and shut at once")]
    OpenAndShut {
        /// Which.
        step: String,
    },
    /// A state in which nothing can end.
    #[error("no ending can be reached from state `{state}`")]
    Endless {
        /// Which.
        state: String,
    },
}

/// How far chances may be from one together.
const SUM_TOLERANCE: f64 = 1e-9;

/// One step.
#[derive(Debug, Clone)]
pub struct CompiledStep {
    /// Cost without covers.
    pub cost: f64,
    /// Whether it is offered again.
    pub repeats: bool,
    /// Covers.
    pub demand: Demand,
    /// How the covers are left after it: a proof on the road wants everything back.
    pub after: Demand,
    /// `chance[outcome][state]`.
    pub chance: Vec<Vec<f64>>,
    /// `becomes[outcome][state]`.
    pub becomes: Vec<Vec<usize>>,
    /// Steps that may be done again after it.
    pub renews: u128,
    /// Whether it changes any state.
    pub changes: bool,
}

/// One ending.
#[derive(Debug, Clone)]
pub struct CompiledEnding {
    /// Cost in each state; infinite where it is not possible.
    pub cost: Vec<f64>,
    /// Covers.
    pub demand: Demand,
}

/// A problem ready for the search.
#[derive(Debug, Clone)]
pub struct Compiled {
    /// Number of states.
    pub states: usize,
    /// Belief at the start.
    pub prior: Belief,
    /// Covers.
    pub covers: Covers,
    /// Steps.
    pub steps: Vec<CompiledStep>,
    /// Endings.
    pub endings: Vec<CompiledEnding>,
}

/// What may come of a step.
#[derive(Debug, Clone)]
pub struct Branch {
    /// Which outcome.
    pub outcome: usize,
    /// How likely it is.
    pub chance: f64,
    /// What is believed then.
    pub belief: Belief,
}

impl Compiled {
    /// Most steps of a problem.
    pub const MOST_STEPS: usize = 128;

    /// Makes a problem ready.
    ///
    /// # Errors
    /// [`Flaw`] when it contradicts itself.
    pub fn new(problem: &Problem) -> Result<Self, Flaw> {
        let states = &problem.states;
        all_different("states", states.iter().map(|state| &state.name))?;
        all_different("covers", problem.covers.iter().map(|cover| &cover.name))?;
        all_different("steps", problem.steps.iter().map(|step| &step.name))?;
        all_different("endings", problem.endings.iter().map(|ending| &ending.name))?;
        if problem.steps.len() > Self::MOST_STEPS {
            let found = problem.steps.len();
            return Err(Flaw::TooMany { what: "steps", most: Self::MOST_STEPS, found });
        }
        if let Some(state) =
            states.iter().find(|state| !(state.prior.is_finite() && state.prior >= 0.0))
        {
            return Err(Flaw::Prior { state: state.name.clone(), prior: state.prior });
        }
        let weights = states.iter().enumerate().map(|(number, state)| (number, state.prior));
        let Some((prior, _)) = Belief::from_weights(weights.collect()) else {
            return Err(Flaw::None { what: "states with a prior" });
        };
        let covers = Covers::new(&problem.covers)?;
        let steps = (0..problem.steps.len())
            .map(|number| step(problem, &covers, number))
            .collect::<Result<Vec<_>, _>>()?;
        let endings = problem
            .endings
            .iter()
            .map(|ending| {
                let mut cost = vec![ending.otherwise.unwrap_or(f64::INFINITY); states.len()];
                for (name, value) in &ending.costs {
                    cost[state_called(problem, name)?] = *value;
                }
                if let Some(cost) =
                    cost.iter().find(|cost| cost.is_nan() || **cost == f64::NEG_INFINITY)
                {
                    return Err(Flaw::Cost { of: ending.name.clone(), cost: *cost });
                }
                let demand =
                    covers.demand(&problem.covers, &ending.name, &ending.open, &ending.shut)?;
                Ok(CompiledEnding { cost, demand })
            })
            .collect::<Result<Vec<_>, _>>()?;
        if endings.is_empty() {
            return Err(Flaw::None { what: "endings" });
        }
        Ok(Self { states: states.len(), prior, covers, steps, endings })
    }

    /// What may come of a step, in the order of its outcomes; impossible ones are left out.
    #[must_use]
    pub fn branches(&self, belief: &Belief, step: usize) -> Vec<Branch> {
        let step = &self.steps[step];
        let mut branches = Vec::with_capacity(step.chance.len());
        for (outcome, (chance, becomes)) in step.chance.iter().zip(&step.becomes).enumerate() {
            let weights = belief
                .weights()
                .iter()
                .map(|(state, weight)| (becomes[*state], weight * chance[*state]))
                .collect();
            if let Some((belief, chance)) = Belief::from_weights(weights) {
                branches.push(Branch { outcome, chance, belief });
            }
        }
        branches
    }

    /// What must be shut whichever way it ends.
    #[must_use]
    pub fn shut_in_the_end(&self) -> Open {
        self.endings.iter().fold(Open::MAX, |shut, ending| shut & ending.demand.shut)
    }

    /// Expected cost of an ending, covers included; infinite where it is not possible.
    #[must_use]
    pub fn ending_cost(&self, belief: &Belief, open: Open, ending: usize) -> f64 {
        let ending = &self.endings[ending];
        belief.mean(|state| ending.cost[state]) + self.covers.meet(open, ending.demand).0
    }
}

fn step(problem: &Problem, covers: &Covers, number: usize) -> Result<CompiledStep, Flaw> {
    let step = &problem.steps[number];
    if !(step.cost.is_finite() && step.cost > 0.0) {
        return Err(Flaw::Cost { of: step.name.clone(), cost: step.cost });
    }
    all_different("outcomes", step.outcomes.iter())?;
    if step.outcomes.is_empty() {
        return Err(Flaw::None { what: "outcomes" });
    }
    for name in step.chances.keys() {
        state_called(problem, name)?;
    }
    let states = problem.states.len();
    let mut chance = vec![vec![0.0; states]; step.outcomes.len()];
    for (number, state) in problem.states.iter().enumerate() {
        let row = step.chances.get(&state.name).unwrap_or(&step.otherwise);
        let sum: f64 = row.iter().sum();
        let good = row.len() == step.outcomes.len()
            && row.iter().all(|chance| (0.0..=1.0).contains(chance))
            && (sum - 1.0).abs() <= SUM_TOLERANCE;
        if !good {
            let (step, state) = (step.name.clone(), state.name.clone());
            return Err(Flaw::Chances { step, state, sum });
        }
        for (outcome, value) in row.iter().enumerate() {
            chance[outcome][number] = value / sum;
        }
    }
    let mut becomes = vec![(0..states).collect::<Vec<_>>(); step.outcomes.len()];
    for change in &step.becomes {
        let outcome = step
            .outcomes
            .iter()
            .position(|name| *name == change.on)
            .ok_or_else(|| Flaw::Unknown { what: "outcome", name: change.on.clone() })?;
        becomes[outcome][state_called(problem, &change.from)?] = state_called(problem, &change.to)?;
    }
    let mut renews = 0;
    for name in &step.renews {
        let place = problem
            .steps
            .iter()
            .position(|other| other.name == *name)
            .ok_or_else(|| Flaw::Unknown { what: "step", name: name.clone() })?;
        renews |= 1 << place;
    }
    let changes = becomes.iter().any(|row| row.iter().enumerate().any(|(from, to)| from != *to));
    Ok(CompiledStep {
        cost: step.cost,
        repeats: step.repeat == Repeat::Independent,
        demand: covers.demand(&problem.covers, &step.name, &step.open, &step.shut)?,
        after: Demand::default(),
        chance,
        becomes,
        renews,
        changes,
    })
}

fn state_called(problem: &Problem, name: &str) -> Result<usize, Flaw> {
    problem
        .states
        .iter()
        .position(|state| state.name == name)
        .ok_or_else(|| Flaw::Unknown { what: "state", name: name.to_owned() })
}

fn all_different<'a>(
    what: &'static str,
    names: impl Iterator<Item = &'a String>,
) -> Result<(), Flaw> {
    let mut seen = std::collections::BTreeSet::new();
    for name in names {
        if !seen.insert(name) {
            return Err(Flaw::Twice { what, name: name.clone() });
        }
    }
    Ok(())
}
