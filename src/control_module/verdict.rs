//! What one monitor says at one moment.

use crate::control_module::code::Code;
use serde::{Deserialize, Serialize};

/// What a monitor concludes about one code.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum Verdict {
    /// The conditions for a decision were not met, or not for long enough.
    NotRun,
    /// The monitor ran to a decision and found nothing wrong.
    Passed,
    /// The monitor ran to a decision and found the fault that the code names.
    Failed,
}

/// A verdict on one code.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct Finding {
    /// The code it is about.
    pub code: Code,
    /// What is concluded.
    pub verdict: Verdict,
}
