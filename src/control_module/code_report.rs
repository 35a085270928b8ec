//! What a code reader gets from the module.

use crate::control_module::code::Code;
use crate::control_module::known_code::ReadinessGroup;
use crate::control_module::verdict::Finding;
use crate::units::Seconds;
use serde::{Deserialize, Serialize};

/// A stored or pending code.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct ReportedCode {
    /// The code.
    pub code: Code,
    /// Whether the freeze frame belongs to it.
    pub has_freeze_frame: bool,
}

/// One readiness bit.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct Readiness {
    /// The group of monitors.
    pub group: ReadinessGroup,
    /// Whether every monitor of the group has come to a decision, either way, since the clear.
    pub is_complete: bool,
}

/// All that a code reader asks for in one go. Lists are in the order of codes or groups.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct CodeReport {
    /// Confirmed codes (service $03).
    pub stored: Vec<ReportedCode>,
    /// Codes seen in the current or last cycle in which their monitor ran (service $07); a
    /// confirmed code whose fault is still there is among them.
    pub pending: Vec<ReportedCode>,
    /// Permanent codes (service $0A).
    pub permanent: Vec<Code>,
    /// Whether the module commands the warning lamp on (service $01 PID $01); the lamp's own check
    /// at key-on is not in it.
    pub commands_lamp: bool,
    /// Readiness bits of the groups that this module has (service $01 PID $01).
    pub readiness: Vec<Readiness>,
    /// The last decision about each code since the clear (after service $06): the proof that a
    /// monitor without a readiness bit has run.
    pub decisions: Vec<Finding>,
    /// Warm-up cycles since the clear (PID $30), 0 to 255; it stops at 255.
    pub warm_ups_since_clear: u8,
    /// Time with the engine running since the clear.
    pub running_since_clear: Seconds,
}

/// What a clear has done.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct ClearReport {
    /// Stored and pending codes that were erased.
    pub erased: Vec<Code>,
    /// Permanent codes, which stay.
    pub permanent_left: Vec<Code>,
}

/// Why the module does not clear.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize, thiserror::Error)]
pub enum Refusal {
    /// The module is asleep.
    #[error("clearing codes: the key is off, expected key on with the engine off")]
    KeyOff,
    /// Conditions not correct.
    #[error("clearing codes: the engine is running, expected key on with the engine off")]
    EngineRunning,
}
