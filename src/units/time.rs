//! Simulated time as an integer.

use serde::{Deserialize, Serialize};

/// A moment of simulated time: whole milliseconds since the session began.
///
/// An integer, because summed floating-point seconds drift and differ with the step size.
/// Ten- and hundred-millisecond tasks of the control module are whole numbers of ticks.
#[derive(
    Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Default, Serialize, Deserialize,
)]
#[serde(transparent)]
pub struct Tick(pub u64);

impl Tick {
    /// Ticks in one second.
    pub const PER_SECOND: u64 = 1_000;

    /// The tick that lies `seconds` whole seconds later.
    #[must_use]
    pub const fn plus_seconds(self, seconds: u64) -> Self {
        Self(self.0 + seconds * Self::PER_SECOND)
    }

    /// Seconds since the session began [s].
    #[must_use]
    pub fn as_seconds(self) -> f64 {
        self.0 as f64 / Self::PER_SECOND as f64
    }
}
