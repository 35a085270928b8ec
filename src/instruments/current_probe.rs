//! A current probe: a clamp around a wire that parts nothing and adds nothing to the circuit.
//!
//! It measures the field around the wire and so works while the engine runs; its display shows the
//! mean. Iron in its jaws keeps a remanence: a zero offset that a push of its button takes away.
//! No noise: a reading repeats.

use super::multimeter::{Display, Prefix};
use crate::physics::circuit::CircuitError;
use crate::vehicle::harness::Wiring;
use serde::{Deserialize, Serialize};

/// Resolution [A]: engineering estimate of a common low-current clamp.
const COUNT_A: f64 = 0.01;
/// Greatest current [A].
const FULL_SCALE_A: f64 = 60.0;
/// Accuracy once zeroed as share of the reading and in counts: typical values from memory.
const ACCURACY: (f64, f64) = (0.02, 3.0);
/// Largest zero offset of a probe that was not zeroed [A]: engineering estimate.
pub const MOST_OFFSET_A: f64 = 0.12;

/// One probe with its errors.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct CurrentProbe {
    /// Shown over true amperes, near 1.
    pub gain: f64,
    /// What it shows around no current [A].
    pub offset_a: f64,
}

/// A reading.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ProbeReading {
    /// The display.
    pub display: Display,
    /// Half the width within which the true value lies, the zero left out of account [A].
    pub tolerance: f64,
}

impl CurrentProbe {
    /// A probe without errors.
    #[must_use]
    pub const fn ideal() -> Self {
        Self { gain: 1.0, offset_a: 0.0 }
    }

    /// Takes the offset away, with the jaws closed around nothing.
    pub const fn zero(&mut self) {
        self.offset_a = 0.0;
    }

    /// Reads the mean current in an element of the wiring, from its supply side on. `phases` are the
    /// states through which the wiring passes with the share of time of each.
    ///
    /// # Errors
    /// [`CircuitError`] when the network has no solution.
    pub fn read(
        &self,
        phases: &[(f64, Wiring)],
        element: &str,
    ) -> Result<ProbeReading, CircuitError> {
        let mut mean_a = 0.0;
        for (share, wiring) in phases {
            if let Some(number) = wiring.element(element) {
                mean_a += share * wiring.network.solve()?.amperes(number);
            }
        }
        Ok(shown(mean_a * self.gain + self.offset_a))
    }
}

fn shown(amperes: f64) -> ProbeReading {
    let value = (amperes / COUNT_A).round() / (1.0 / COUNT_A) + 0.0;
    if value.abs() > FULL_SCALE_A {
        return ProbeReading { display: Display::OverLimit, tolerance: 0.0 };
    }
    let (share, counts) = ACCURACY;
    ProbeReading {
        display: Display::Value { value, decimals: 2, prefix: Prefix::One },
        tolerance: share * value.abs() + counts * COUNT_A,
    }
}

#[cfg(test)]
mod tests;
