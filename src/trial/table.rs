//! Rows summed up: one line for each policy, and how hard the scenario or a case is.

use super::row::{Outcome, Row, Rows};
use crate::numerics::elementary::sqrt;
use crate::reasoning::plan::budget::Bounds;
use crate::virtual_apprentices::policy::Policy;

/// A mean over sessions with its standard error.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Mean {
    /// Over how many sessions.
    pub of: usize,
    /// The mean.
    pub value: f64,
    /// Standard deviation of the mean; `None` for fewer than two sessions, which tell nothing of it.
    pub error: Option<f64>,
}

impl Mean {
    /// The mean of some numbers, in their order; `None` of none.
    #[must_use]
    pub fn of(numbers: &[f64]) -> Option<Self> {
        let count = numbers.len() as f64;
        if numbers.is_empty() {
            return None;
        }
        let value = numbers.iter().sum::<f64>() / count;
        let squares: f64 = numbers.iter().map(|number| (number - value) * (number - value)).sum();
        let error = (numbers.len() > 1).then(|| sqrt(squares / (count - 1.0) / count));
        Some(Self { of: numbers.len(), value, error })
    }
}

/// What a policy came to.
#[derive(Debug, Clone, PartialEq)]
pub struct Line {
    /// Who.
    pub policy: Policy,
    /// Sessions worked.
    pub sessions: usize,
    /// Cost of a case, a come-back included [units of the currency].
    pub cost: Mean,
    /// Points out of a hundred; `None` where nothing was marked.
    pub marks: Option<Mean>,
    /// Regret of a session as far as it is shown [units of the currency]; `None` where nothing was marked.
    pub regret: Option<Mean>,
    /// The same at most.
    pub regret_at_most: Option<Mean>,
    /// Steps of a session.
    pub steps: Mean,
    /// Share of sessions after which the customer does not come back, 0 to 1.
    pub right: f64,
    /// Share handed back as repaired without proof, 0 to 1; `None` where nothing was marked.
    pub unproved: Option<f64>,
    /// Share that was never handed back, 0 to 1. They count as failures, with no marks.
    pub unfinished: f64,
}

/// How hard something is.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Difficulty {
    /// Expected cost of the job under the expert's plan, before anything is known [units of the
    /// currency]. It is the same for every case of a scenario; `None` where nothing was marked.
    pub value: Option<Bounds>,
    /// Steps of the planner; `None` where it took no part.
    pub planner_steps: Option<f64>,
    /// Cost with the planner [units of the currency]; `None` where it took no part.
    pub planner_cost: Option<f64>,
    /// Points between the best and the worst policy's mean; `None` where nothing was marked.
    pub marks_apart: Option<f64>,
    /// Cost between the dearest and the cheapest policy's mean [units of the currency].
    pub cost_apart: f64,
}

/// The whole of a trial.
#[derive(Debug, Clone, PartialEq)]
pub struct Table {
    /// A line for each policy that took part, in the order of [`Policy::ALL`].
    pub lines: Vec<Line>,
    /// How hard the scenario is.
    pub difficulty: Difficulty,
    /// How hard each case is, by its seed.
    pub by_case: Vec<(u64, Difficulty)>,
}

impl Table {
    /// The table of rows, which must be in their order of seed and policy; `None` of none.
    #[must_use]
    pub fn of(rows: &Rows) -> Option<Self> {
        let all: Vec<&Row> = rows.rows.iter().collect();
        let lines = lines(&all);
        if lines.is_empty() {
            return None;
        }
        let mut by_case = Vec::new();
        for case in rows.rows.chunk_by(|a, b| a.seed == b.seed) {
            if let Some(first) = case.first() {
                let case: Vec<&Row> = case.iter().collect();
                by_case.push((first.seed, difficulty(&case)));
            }
        }
        Some(Self { lines, difficulty: difficulty(&all), by_case })
    }

    /// The line of a policy, if it took part.
    #[must_use]
    pub fn line(&self, policy: Policy) -> Option<&Line> {
        self.lines.iter().find(|line| line.policy == policy)
    }
}

fn lines(rows: &[&Row]) -> Vec<Line> {
    Policy::ALL.into_iter().filter_map(|policy| line(policy, rows)).collect()
}

fn line(policy: Policy, rows: &[&Row]) -> Option<Line> {
    let own: Vec<&Row> = rows.iter().copied().filter(|row| row.policy == policy).collect();
    let gather = |of: &dyn Fn(&Row) -> Option<f64>| -> Vec<f64> {
        own.iter().filter_map(|row| of(row)).collect()
    };
    let share = |is_so: &dyn Fn(&Row) -> bool| {
        own.iter().filter(|row| is_so(row)).count() as f64 / own.len() as f64
    };
    let marks = Mean::of(&gather(&|row| Some(row.judged?.total)));
    Some(Line {
        policy,
        sessions: own.len(),
        cost: Mean::of(&gather(&|row| Some(row.cost())))?,
        regret: Mean::of(&gather(&|row| Some(row.judged?.regret?.lower))),
        regret_at_most: Mean::of(&gather(&|row| Some(row.judged?.regret?.upper))),
        steps: Mean::of(&gather(&|row| Some(f64::from(row.steps))))?,
        right: share(&|row| row.outcome.is_right()),
        unproved: marks.map(|_| share(&|row| row.judged.is_some_and(|judged| judged.unproved))),
        unfinished: share(&|row| row.outcome == Outcome::Unfinished),
        marks,
    })
}

fn difficulty(rows: &[&Row]) -> Difficulty {
    let lines = lines(rows);
    let apart = |of: &dyn Fn(&Line) -> Option<f64>| {
        let values: Vec<f64> = lines.iter().filter_map(of).collect();
        let most = values.iter().copied().reduce(f64::max)?;
        Some(most - values.iter().copied().reduce(f64::min)?)
    };
    let planner = lines.iter().find(|line| line.policy == Policy::Planner);
    let values: Vec<Bounds> = rows.iter().filter_map(|row| row.judged?.value).collect();
    let mean = |of: fn(&Bounds) -> f64| {
        Mean::of(&values.iter().map(of).collect::<Vec<_>>()).map(|mean| mean.value)
    };
    Difficulty {
        value: mean(|value| value.lower)
            .zip(mean(|value| value.upper))
            .map(|(lower, upper)| Bounds { lower, upper }),
        planner_steps: planner.map(|line| line.steps.value),
        planner_cost: planner.map(|line| line.cost.value),
        marks_apart: apart(&|line| Some(line.marks?.value)),
        cost_apart: apart(&|line| Some(line.cost.value)).unwrap_or_default(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Two and four: mean three, standard deviation of the sample the root of two, of the mean one.
    #[test]
    fn closed_form_standard_error_of_two_numbers_is_half_their_distance() {
        let mean = Mean::of(&[2.0, 4.0]).unwrap();
        assert_eq!((mean.of, mean.value), (2, 3.0));
        assert!((mean.error.unwrap() - 1.0).abs() < 1e-15);
    }

    #[test]
    fn limit_of_one_number_no_error_is_known_and_of_none_no_mean() {
        assert_eq!(Mean::of(&[7.0]), Some(Mean { of: 1, value: 7.0, error: None }));
        assert_eq!(Mean::of(&[]), None);
    }
}
