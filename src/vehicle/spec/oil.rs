//! The oil that the maker asks for, and where its pressure is measured.

use super::Id;
use crate::physics::oil::Grade;
use crate::units::Minutes;
use serde::{Deserialize, Serialize};

/// Oil and its pressure as the vehicle was built.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize)]
#[cfg_attr(test, derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields, default)]
pub struct OilSpec {
    /// Grade that the maker asks for; 5W-30 where the file says nothing.
    pub grade: Grade,
    /// Where a pressure gauge is screwed in.
    pub gauge_tap: GaugeTap,
}

/// The tap for a pressure gauge at the main gallery.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(test, derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields, default)]
pub struct GaugeTap {
    /// Parts that must be off to reach it.
    pub behind: Vec<Id>,
    /// Time to screw a gauge in [min].
    pub fit: Minutes,
    /// Time to take it out and close the tap tight [min].
    pub remove: Minutes,
}

impl Default for GaugeTap {
    /// A tap that lies open: together with starting, warming up and reading about half an hour
    /// (common practice, no source).
    fn default() -> Self {
        Self { behind: Vec::new(), fit: Minutes(14), remove: Minutes(9) }
    }
}
