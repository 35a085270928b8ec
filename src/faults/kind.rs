//! Names of faults.

use crate::vehicle::spec::Id;
use serde::{Deserialize, Serialize};

/// A kind of fault.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[cfg_attr(test, derive(schemars::JsonSchema))]
pub enum FaultKind {
    /// The winding is broken. Place: a valve.
    OpenCoil,
    /// The winding hangs together by a poor joint of some kilo-ohms. Place: a valve.
    PartlyBrokenCoil,
    /// A failing joint of some ohms inside the valve. Place: a valve.
    PoorJoint,
    /// Part of the winding is bridged. Place: a valve.
    ShortedTurns,
    /// The spool sticks. Place: a valve.
    StickingSpool,
    /// The valve's oil screen is blocked by sludge. Place: a valve.
    BlockedScreen,
    /// A connector's contact is corroded. Place: a pin of a connector.
    CorrodedPin,
    /// A terminal was spread and hardly touches its pin. Place: a pin of a connector.
    SpreadTerminal,
    /// A contact opens when it is shaken, the sooner the warmer it is. Place: a pin of a connector.
    LooseContact,
    /// A contact opens when it is warm, and closes again when it has cooled. Place: a pin of a connector.
    HotContact,
    /// A wire is broken. Place: a wire that ends at a valve's connector.
    BrokenWire,
    /// A wire's insulation has rubbed through to the engine. Place: the control wire of a valve.
    WireToGround,
    /// A control wire has rubbed through to the feed beside it. Place: the control wire of a valve.
    WireToSupply,
    /// A feed wire has rubbed through to the engine and blown its fuse. Place: a wire that feeds valves and has a fuse before it.
    ChafedFeed,
    /// A fuse is blown, and what blew it is gone. Place: a fuse that feeds valves.
    BlownFuse,
    /// A relay's contact is burnt. Place: a relay that feeds valves.
    ResistiveRelay,
    /// Too little oil. Place: `sump`.
    LowOil,
    /// Oil that was never changed: oxidised, thick, full of sludge. Place: `sump`.
    WornOutOil,
    /// Fuel in the oil. Place: `sump`.
    FuelInOil,
    /// Oil of another grade than the maker asks for. Place: `sump`.
    WrongOil,
}

impl FaultKind {
    /// Every kind, in a fixed order.
    pub const ALL: [Self; 20] = [
        Self::OpenCoil,
        Self::PartlyBrokenCoil,
        Self::PoorJoint,
        Self::ShortedTurns,
        Self::StickingSpool,
        Self::BlockedScreen,
        Self::CorrodedPin,
        Self::SpreadTerminal,
        Self::LooseContact,
        Self::HotContact,
        Self::BrokenWire,
        Self::WireToGround,
        Self::WireToSupply,
        Self::ChafedFeed,
        Self::BlownFuse,
        Self::ResistiveRelay,
        Self::LowOil,
        Self::WornOutOil,
        Self::FuelInOil,
        Self::WrongOil,
    ];

    /// The word by which steps and files name it.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::OpenCoil => "open-coil",
            Self::PartlyBrokenCoil => "partly-broken-coil",
            Self::PoorJoint => "poor-joint",
            Self::ShortedTurns => "shorted-turns",
            Self::StickingSpool => "sticking-spool",
            Self::BlockedScreen => "blocked-screen",
            Self::CorrodedPin => "corroded-pin",
            Self::SpreadTerminal => "spread-terminal",
            Self::LooseContact => "loose-contact",
            Self::HotContact => "hot-contact",
            Self::BrokenWire => "broken-wire",
            Self::WireToGround => "wire-to-ground",
            Self::WireToSupply => "wire-to-supply",
            Self::ChafedFeed => "chafed-feed",
            Self::BlownFuse => "blown-fuse",
            Self::ResistiveRelay => "resistive-relay",
            Self::LowOil => "low-oil",
            Self::WornOutOil => "worn-out-oil",
            Self::FuelInOil => "fuel-in-oil",
            Self::WrongOil => "wrong-oil",
        }
    }

    /// Whether it is a matter of the oil, whose place is the sump.
    #[must_use]
    pub const fn is_in_oil(self) -> bool {
        matches!(self, Self::LowOil | Self::WornOutOil | Self::FuelInOil | Self::WrongOil)
    }

    /// Whether renewing the valve takes it away.
    #[must_use]
    pub const fn is_in_valve(self) -> bool {
        matches!(
            self,
            Self::OpenCoil
                | Self::PartlyBrokenCoil
                | Self::PoorJoint
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
