//! stand-in until merge
use crate::units::{Celsius, Ohms};
use serde::{Deserialize, Serialize};
/// W
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Winding {
    /// o
    pub ohms_at_20: Ohms,
    /// t
    pub turns: f64,
    /// s
    pub shorted_share: f64,
    /// j
    pub joint: Ohms,
}
impl Winding {
    /// r
    #[must_use]
    pub fn terminal_ohms(&self, at: Celsius) -> Ohms {
        Ohms(
            self.ohms_at_20.0 * (1.0 - self.shorted_share) * (1.0 + 0.00393 * (at.0 - 20.0))
                + self.joint.0,
        )
    }
}
