//! How much each kind of mark counts, and where the pass line lies.
//!
//! Purpose: the scenario's author decides what a case is there to teach; the weights say so.
//! Inputs are whole numbers as written in a scenario; outputs are shares of the whole.
//!
//! ```
//! use faultwright::assessment::rubric::{HintPrices, MarkWeights, Rubric};
//!
//! let weights = MarkWeights {
//!     test_choice: 30, access_order: 10, reading: 10, calibration: 10,
//!     repair: 15, proof: 15, care: 5, record: 5,
//! };
//! let rubric = Rubric { weights, pass_percent: 60, hints: HintPrices::default() };
//! assert_eq!(rubric.weights.total(), 100);
//! ```

use crate::session::step::HintGrade;
use serde::{Deserialize, Serialize};

/// What a mark is given for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum MarkCategory {
    /// Information that the tests gave for their cost.
    TestChoice,
    /// Cheap and near first, shared removals once.
    AccessOrder,
    /// Readings predicted against readings seen.
    Reading,
    /// Confidences against what the evidence allowed.
    Calibration,
    /// Parts and work with evidence for them.
    Repair,
    /// What shows that the repair worked.
    Proof,
    /// Seals, connectors and safety.
    Care,
    /// Concern, cause and correction written up.
    Record,
}

impl MarkCategory {
    /// Every category, in the order of the report.
    pub const ALL: [Self; 8] = [
        Self::TestChoice,
        Self::AccessOrder,
        Self::Reading,
        Self::Calibration,
        Self::Repair,
        Self::Proof,
        Self::Care,
        Self::Record,
    ];

    /// The word by which files name it.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::TestChoice => "test_choice",
            Self::AccessOrder => "access_order",
            Self::Reading => "reading",
            Self::Calibration => "calibration",
            Self::Repair => "repair",
            Self::Proof => "proof",
            Self::Care => "care",
            Self::Record => "record",
        }
    }
}

/// Weight of each category, whole numbers, 0 to 1000; only their ratios count.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(test, derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct MarkWeights {
    /// Information for its cost.
    pub test_choice: u16,
    /// Order of work and access.
    pub access_order: u16,
    /// Reading the instruments.
    pub reading: u16,
    /// Confidences.
    pub calibration: u16,
    /// Repair.
    pub repair: u16,
    /// Proof of the repair.
    pub proof: u16,
    /// Care and safety.
    pub care: u16,
    /// Write-up.
    pub record: u16,
}

impl MarkWeights {
    /// The weight of one category.
    #[must_use]
    pub const fn of(&self, category: MarkCategory) -> u16 {
        match category {
            MarkCategory::TestChoice => self.test_choice,
            MarkCategory::AccessOrder => self.access_order,
            MarkCategory::Reading => self.reading,
            MarkCategory::Calibration => self.calibration,
            MarkCategory::Repair => self.repair,
            MarkCategory::Proof => self.proof,
            MarkCategory::Care => self.care,
            MarkCategory::Record => self.record,
        }
    }

    /// Share of a category in the whole, 0 to 1; the shares of all categories sum to one.
    #[must_use]
    pub fn share_of(&self, category: MarkCategory) -> f64 {
        f64::from(self.of(category)) / f64::from(self.total().max(1))
    }

    /// The sum of all weights.
    #[must_use]
    pub fn total(&self) -> u32 {
        MarkCategory::ALL.iter().map(|category| u32::from(self.of(*category))).sum()
    }
}

/// How a session is weighed.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(test, derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Rubric {
    /// Weight of each category.
    pub weights: MarkWeights,
    /// Share of the whole from which a session passes [%], 0 to 100.
    pub pass_percent: u8,
    /// What hints cost.
    #[serde(default)]
    pub hints: HintPrices,
}

/// What a hint of each grade takes from the sum of the marks, in points out of a hundred, 0 to 100; none
/// is cheaper than the one before.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(test, derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields, default)]
pub struct HintPrices {
    /// What kind of question is open.
    pub question: u8,
    /// Where to go.
    pub area: u8,
    /// What class of test.
    pub kind: u8,
    /// The very step.
    pub step: u8,
}

impl Default for HintPrices {
    /// Our judgement, no source: a nudge is a slip, to be told the step is half a mark for it.
    fn default() -> Self {
        Self { question: 1, area: 2, kind: 4, step: 8 }
    }
}

impl HintPrices {
    /// The price of a grade.
    #[must_use]
    pub const fn of(&self, grade: HintGrade) -> u8 {
        match grade {
            HintGrade::Question => self.question,
            HintGrade::Area => self.area,
            HintGrade::Kind => self.kind,
            HintGrade::Step => self.step,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn closed_form_total_counts_every_category_once() {
        let weights = MarkWeights {
            test_choice: 1,
            access_order: 2,
            reading: 4,
            calibration: 8,
            repair: 16,
            proof: 32,
            care: 64,
            record: 128,
        };
        assert_eq!(weights.total(), 255);
        for (bit, category) in MarkCategory::ALL.iter().enumerate() {
            assert_eq!(weights.of(*category), 1 << bit, "{category:?}");
        }
    }
}
