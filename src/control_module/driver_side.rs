//! On which side of its valve a driver's switch sits.

use serde::{Deserialize, Serialize};

/// The side of a driver.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[cfg_attr(test, derive(schemars::JsonSchema))]
pub enum DriverSide {
    /// Between the valve and ground: the feed is steady, and a resting pin is up at the supply.
    #[default]
    Low,
    /// Between the supply and the valve: the ground is steady, and a resting pin is down at ground.
    High,
}
