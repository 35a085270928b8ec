//! What is against the rules of care.

use crate::vehicle::spec::{Care, Id};
use serde::{Deserialize, Serialize};

/// What was done against the rules.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Breach {
    /// A connector was parted with the key on.
    KeyOnWhileUnplugging(Id),
    /// Resistance measured on a live circuit.
    OhmsOnLiveCircuit,
    /// Resistance measured with the component still plugged in.
    OhmsWhilePlugged(Id),
    /// Amperes across a source.
    AmpsAcrossSource,
    /// A probe pushed into a connector's terminal from the front.
    FrontProbed(Id),
    /// A test lamp put on a control module's pin or on the wire to it.
    TestLampOnModule(Id),
    /// A part's own rule.
    Part(Id, Care),
    /// A valve powered for longer than the data sheet allows.
    PoweredTooLong(Id),
    /// Polarity reversed.
    ReversedPolarity(Id),
    /// Driven or started with the oil lamp on or the stick dry.
    RunWithoutOil,
    /// Driven without having looked at the oil first.
    DrivenUnchecked,
    /// Driven with something left off.
    DrivenIncomplete,
    /// Codes cleared before they were read.
    ClearedUnread,
    /// Oil of another grade than the maker asks for was filled in.
    WrongOilGrade,
    /// A part fitted or work done before a diagnosis was committed to.
    RepairBeforeDiagnosis,
    /// A part fitted without the customer's approval.
    RepairWithoutApproval,
    /// A part fitted or work done beyond what the customer has approved.
    RepairBeyondApproval,
}
