//! What tests show in the states of a belief, and how likely.

use super::access::Access;
use super::compiled::Compiled;
use super::information::{Roles, plog};

/// What tests show in some states, put side by side; kept while the states stay the same.
#[derive(Debug, Clone, Default)]
pub(super) struct Columns {
    pub(super) states: Vec<usize>,
    /// Steps that were left out.
    pub(super) without: u128,
    pub(super) tests: Vec<Column>,
    /// Outcome in each state, of tests that leave none open.
    pub(super) labels: Vec<u8>,
    /// Of the other tests: `sum p ln p` in each state, then the chances, outcome by outcome.
    pub(super) rows: Vec<f64>,
}

/// Where a test stands in them.
#[derive(Debug, Clone, Copy)]
pub(super) struct Column {
    pub(super) step: usize,
    pub(super) outcomes: usize,
    /// Where labels or rows begin.
    pub(super) from: usize,
    pub(super) sure: bool,
}

impl Columns {
    pub(super) fn gather(
        &mut self,
        compiled: &Compiled,
        roles: &Roles,
        (weights, used): (&[(usize, f64)], u128),
    ) {
        let same = self.states.iter().eq(weights.iter().map(|(state, _)| state));
        if same && self.without & !used == 0 {
            return;
        }
        self.without = used;
        self.states.clear();
        self.states.extend(weights.iter().map(|(state, _)| *state));
        self.tests.clear();
        self.labels.clear();
        self.rows.clear();
        for (step, details) in compiled.steps.iter().enumerate() {
            if details.changes || used >> step & 1 == 1 {
                continue;
            }
            let row = &roles.sure[step];
            let from = self.labels.len();
            let labels = self.states.iter().map_while(|state| row[*state]);
            self.labels.extend(labels);
            let sure = self.labels.len() == from + self.states.len();
            let outcomes = details.chance.len();
            if sure {
                self.tests.push(Column { step, outcomes, from, sure });
                continue;
            }
            self.labels.truncate(from);
            let from = self.rows.len();
            for row in core::iter::once(&roles.order[step]).chain(&details.chance) {
                self.rows.extend(self.states.iter().map(|state| row[*state]));
            }
            self.tests.push(Column { step, outcomes, from, sure });
        }
    }
}

/// What a belief expects of the tests, whatever the price.
pub(super) struct Shown<'a> {
    pub(super) weights: &'a [(usize, f64)],
    pub(super) used: u128,
    pub(super) known: &'a [f64],
    pub(super) access: &'a Access,
    pub(super) columns: &'a Columns,
    pub(super) tests: &'a [Test],
    pub(super) masses: &'a [f64],
}

/// A test that may tell something.
#[derive(Debug, Clone, Copy)]
pub(super) struct Test {
    pub(super) column: Column,
    pub(super) home: Option<usize>,
    /// How many outcomes have a chance, and where those chances begin.
    pub(super) shown: usize,
    pub(super) masses: usize,
}

impl Room {
    /// Chances of the outcomes of every test that may tell something.
    pub(super) fn expect(&mut self, access: &Access, weights: &[(usize, f64)], used: u128) {
        self.tests.clear();
        self.masses.clear();
        let states = weights.len();
        for column in &self.columns.tests {
            let home = access.homes[column.step];
            if used >> column.step & 1 == 1 {
                continue;
            }
            let from = self.masses.len();
            self.masses.resize(from + column.outcomes, 0.0);
            let masses = &mut self.masses[from..];
            if column.sure {
                let labels = &self.columns.labels[column.from..column.from + states];
                for (label, (_, weight)) in labels.iter().zip(weights) {
                    masses[usize::from(*label)] += weight;
                }
            } else {
                let rows = self.columns.rows[column.from + states..].chunks_exact(states);
                for (mass, row) in masses.iter_mut().zip(rows) {
                    *mass =
                        row.iter().zip(weights).map(|(chance, (_, weight))| chance * weight).sum();
                }
            }
            let shown = masses.iter().filter(|mass| **mass > 0.0).count();
            if shown < 2 {
                self.masses.truncate(from);
            } else {
                self.tests.push(Test { column: *column, home, shown, masses: from });
            }
        }
    }
}

/// Room to work in.
#[derive(Debug, Clone, Default)]
pub(super) struct Room {
    pub(super) columns: Columns,
    pub(super) tests: Vec<Test>,
    pub(super) masses: Vec<f64>,
    pub(super) sums: Sums,
}

/// Room for what is worked out at one price.
#[derive(Debug, Clone, Default)]
pub(super) struct Sums {
    pub(super) left: Vec<f64>,
    pub(super) guess: Vec<f64>,
    pub(super) told: Vec<f64>,
    /// What is told behind each cover, by the place of the state.
    pub(super) beyond: Vec<f64>,
    /// Whether anything is.
    pub(super) hidden: bool,
}

impl Shown<'_> {
    /// What a test is expected to tell \[nats\].
    pub(super) fn told(&self, test: &Test) -> f64 {
        let column = test.column;
        let masses = &self.masses[test.masses..test.masses + column.outcomes];
        let entropy: f64 = masses.iter().map(|mass| -plog(*mass)).sum();
        if column.sure {
            return entropy;
        }
        let order = &self.columns.rows[column.from..column.from + self.weights.len()];
        entropy
            + order.iter().zip(self.weights).map(|(order, (_, weight))| order * weight).sum::<f64>()
    }
}
