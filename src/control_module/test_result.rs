//! What a monitor measured, beside the limits that it compared with (after SAE J1979 service $06).
//!
//! A verdict says only passed or failed. The figure behind it says by how much, and that the
//! monitor has run at all: there is none until its monitor has come to a decision since the clear.

use crate::control_module::code::Code;
use crate::numerics::digest::DigestBuilder;
use serde::{Deserialize, Serialize};

/// What is measured.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
pub enum Measure {
    /// Longest time without a break in which the camshaft was off its target to the side that the
    /// code names \[s\].
    TimeOffTarget,
    /// Largest share of the time in which the camshaft hunted, 0 to 1.
    HuntingShare,
    /// Time to follow a change of target \[s\]: of the last changes, the one that decides. Where four
    /// of six must be slow it is the fourth slowest.
    ResponseTime,
    /// Longest time without a break in which the camshaft lay wrong at rest \[s\].
    TimeWrongAtRest,
    /// Time for which a circuit fault has stood, counted up and down \[s\].
    TimeOfCircuitFault,
    /// Longest time without a break outside a limit of the supply \[s\].
    TimeOfSupplyFault,
    /// Longest time without a break in which oil pressure did not go with the engine \[s\].
    TimeOfOilPressureFault,
}

impl Measure {
    /// The unit of value and limits; empty for a share.
    #[must_use]
    pub const fn unit(self) -> &'static str {
        match self {
            Self::HuntingShare => "",
            _ => "s",
        }
    }

    /// Whether a value that reaches its upper limit fails; otherwise it must exceed it.
    #[must_use]
    pub const fn fails_at_its_limit(self) -> bool {
        !matches!(self, Self::HuntingShare | Self::ResponseTime)
    }

    /// A number for fingerprints and for a reader's list, fixed here.
    #[must_use]
    pub const fn number(self) -> u8 {
        match self {
            Self::TimeOffTarget => 1,
            Self::HuntingShare => 2,
            Self::ResponseTime => 3,
            Self::TimeWrongAtRest => 4,
            Self::TimeOfCircuitFault => 5,
            Self::TimeOfSupplyFault => 6,
            Self::TimeOfOilPressureFault => 7,
        }
    }
}

/// The last value of one test of a monitor, with its limits. The test is passed while the value
/// lies within them.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct TestResult {
    /// The code that the test can set.
    pub code: Code,
    /// What is measured.
    pub measure: Measure,
    /// The last value, in the unit of the measure.
    pub value: f64,
    /// Least value that passes.
    pub least: f64,
    /// The limit above: see [`TestResult::passes`] whether it passes itself.
    pub most: f64,
}

impl TestResult {
    /// Whether the value lies within the limits. A time for which something was wrong fails when it
    /// reaches its limit, a share or a response time when it exceeds it.
    #[must_use]
    pub fn passes(&self) -> bool {
        let is_below = if self.measure.fails_at_its_limit() {
            self.value < self.most
        } else {
            self.value <= self.most
        };
        self.value >= self.least && is_below
    }

    /// Adds the result to a fingerprint.
    pub fn digest(&self, digest: &mut DigestBuilder) {
        digest.whole(self.code.0.into());
        digest.whole(self.measure.number().into());
        for value in [self.value, self.least, self.most] {
            digest.number(value);
        }
    }
}
