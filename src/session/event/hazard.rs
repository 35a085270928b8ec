//! What can hurt somebody.

use serde::{Deserialize, Serialize};

/// What a caution is about.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Hazard {
    /// Hot engine, oil or coolant.
    Hot,
    /// Belts and fans.
    MovingParts,
    /// Short-circuit current of a battery.
    BatteryCurrent,
    /// A vehicle on a road.
    Road,
    /// Exhaust fumes indoors.
    Fumes,
    /// Used oil on the skin.
    UsedOil,
}
