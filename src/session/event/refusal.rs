//! Why something was not possible, or was not answered.

use crate::control_module::code::Code;
use crate::session::toolbox::Tool;
use crate::vehicle::assembly::Obstacle;
use crate::vehicle::spec::Id;
use serde::{Deserialize, Serialize};

/// Why a step was not possible.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Refusal {
    /// Something is in the way or off.
    Obstacle(Obstacle),
    /// The vehicle has no such thing.
    NoSuchPlace(Id),
    /// The valve is still in the engine.
    StillFitted(Id),
    /// The part does not fit there.
    DoesNotFit(Id),
    /// The engine runs.
    EngineRuns,
    /// The engine stands.
    EngineStands,
    /// The pressure gauge is not in its tap.
    NoGauge,
    /// The pressure gauge is still in its tap.
    GaugeFitted,
    /// Parts are off that the engine needs to run.
    CannotRun(Vec<Id>),
    /// The key is off.
    KeyOff,
    /// The key must be off for this.
    KeyMustBeOff,
    /// The data sheet forbids power from outside.
    PowerForbidden,
    /// Confidences would sum to more than 100 %.
    TooMuchConfidence(u16),
    /// There are no hints where the session is assessed.
    NoHints,
    /// No reader has shown that code in this session.
    CodeNotRead(Code),
    /// The case does not have that tool.
    NoSuchTool(Tool),
    /// The time for the case is over: what is left is to close up, to write up and to hand back.
    TimeIsUp,
    /// The vehicle has been handed back.
    Finished,
    /// A number lies outside what makes sense.
    OutOfRange,
}

/// Why the module did not answer.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum NoAnswer {
    /// The key is off.
    KeyOff,
    /// The reader's display stays dark.
    ReaderDark,
    /// The reader works and nothing answers although the key is on.
    NoReply,
    /// The module refused for a reason that the reader cannot name.
    NotOffered,
    /// Not while the engine runs.
    EngineRuns,
}
