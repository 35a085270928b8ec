//! A table of readings in cases, for the program and for the simulator.

use super::agreement::Agreement;
use super::case::Case;
use super::reading::Reading;
use super::table;
use super::wiring::Wiring;

/// One table.
pub struct Comparison {
    pub name: &'static str,
    pub wiring: Wiring,
    /// Where the simulator's values are stored.
    pub file: &'static str,
    pub cases: Vec<Case>,
    pub readings: Vec<Reading>,
    /// Values that must at least be compared.
    pub least: usize,
}

impl Comparison {
    /// The simulator's values: run where it is installed, from the stored file elsewhere.
    pub fn simulated(&self) -> Vec<Vec<f64>> {
        table::simulated(self.wiring, self.file, &self.cases, &self.readings)
    }

    /// Compares the program with the simulator, whose values are returned.
    ///
    /// # Panics
    /// When something disagrees.
    pub fn check(&self) -> Vec<Vec<f64>> {
        let simulated = self.simulated();
        self.with(&simulated).settle(self.name, self.least);
        simulated
    }

    /// Compares the program with what is stored, whether the simulator is installed or not.
    pub fn with_stored(&self) -> Agreement {
        self.with(&table::stored(self.file, &self.cases, &self.readings))
    }

    fn with(&self, simulated: &[Vec<f64>]) -> Agreement {
        Agreement::of(self.wiring, &self.cases, &self.readings, simulated)
    }
}
