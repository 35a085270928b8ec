//! Names of faults.

use crate::vehicle::spec::Id;
use serde::{Deserialize, Serialize};

/// A kind of fault.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
pub enum FaultKind {
    /// The winding is broken.
    OpenCoil,
    /// The winding hangs together by a poor joint of some kilo-ohms.
    PartlyBrokenCoil,
    /// Part of the winding is bridged.
    ShortedTurns,
    /// The spool sticks.
    StickingSpool,
    /// The valve's oil screen is blocked by sludge.
    BlockedScreen,
    /// A connector's contact is corroded.
    CorrodedPin,
    /// A wire is broken.
    BrokenWire,
    /// A wire's insulation has rubbed through to the engine.
    WireToGround,
    /// Too little oil.
    LowOil,
}

impl FaultKind {
    /// Every kind, in a fixed order.
    pub const ALL: [Self; 9] = [
        Self::OpenCoil,
        Self::PartlyBrokenCoil,
        Self::ShortedTurns,
        Self::StickingSpool,
        Self::BlockedScreen,
        Self::CorrodedPin,
        Self::BrokenWire,
        Self::WireToGround,
        Self::LowOil,
    ];

    /// The word by which steps and files name it.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::OpenCoil => "open-coil",
            Self::PartlyBrokenCoil => "partly-broken-coil",
            Self::ShortedTurns => "shorted-turns",
            Self::StickingSpool => "sticking-spool",
            Self::BlockedScreen => "blocked-screen",
            Self::CorrodedPin => "corroded-pin",
            Self::BrokenWire => "broken-wire",
            Self::WireToGround => "wire-to-ground",
            Self::LowOil => "low-oil",
        }
    }

    /// Whether renewing the valve takes it away.
    #[must_use]
    pub const fn is_in_valve(self) -> bool {
        matches!(
            self,
            Self::OpenCoil
                | Self::PartlyBrokenCoil
                | Self::ShortedTurns
                | Self::StickingSpool
                | Self::BlockedScreen
        )
    }
}

/// A fault as a person names it: what, and where.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct FaultName {
    /// Kind.
    pub kind: FaultKind,
    /// A valve's place, a wire, a pin, or the sump.
    pub place: Id,
}

/// A fault as the generator makes it.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Fault {
    /// Kind and place.
    pub name: FaultName,
    /// Severity from the mildest of its kind (0) to the worst (1).
    pub severity: f64,
}
