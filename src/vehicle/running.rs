//! stand-in until merge
use serde::{Deserialize, Serialize};
/// R
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct RouteProfile {
    /// s
    pub segments: Vec<Segment>,
}
/// S
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Segment {
    /// end [s]
    pub until_s: f64,
    /// rpm
    pub rpm: f64,
    /// load
    pub load: f64,
    /// t
    pub intake_target: f64,
    /// t
    pub exhaust_target: f64,
    /// v
    pub speed_kmh: f64,
}
