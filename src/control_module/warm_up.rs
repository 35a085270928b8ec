//! Warm-up cycles.

use crate::numerics::digest::DigestBuilder;
use crate::units::Celsius;
use serde::{Deserialize, Serialize};

/// Rise of the coolant since the start that a warm-up cycle asks for \[K\]: 22, printed as 40 °F in
/// vehicle makers' service text.
pub const RISE_K: f64 = 22.0;
/// Temperature that the coolant must reach as well \[°C\]: 71, printed as 160 °F in vehicle makers'
/// service text. One maker prints 70 °C; the more usual figure is taken.
pub const REACHED_C: f64 = 71.0;

/// Follows the coolant through one driving cycle.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize)]
pub struct WarmUp {
    start: Option<Celsius>,
    is_complete: bool,
}

impl WarmUp {
    /// A start of the engine. A later one in the same driving cycle changes nothing: the rise is
    /// counted from the first.
    pub fn engine_started(&mut self, coolant: Celsius) {
        self.start.get_or_insert(coolant);
    }

    /// Takes the coolant's temperature with the engine running. Answers whether this moment
    /// completes the warm-up cycle.
    pub fn take(&mut self, coolant: Celsius) -> bool {
        let is_warm =
            self.start.is_some_and(|start| coolant.0 >= REACHED_C && coolant.0 - start.0 >= RISE_K);
        let completes = is_warm && !self.is_complete;
        self.is_complete |= is_warm;
        completes
    }

    /// Whether the engine has been started in this cycle.
    #[must_use]
    pub const fn is_driving_cycle(&self) -> bool {
        self.start.is_some()
    }

    /// Whether the warm-up cycle is complete.
    #[must_use]
    pub const fn is_complete(&self) -> bool {
        self.is_complete
    }

    /// Adds the state to a fingerprint.
    pub fn digest(&self, digest: &mut DigestBuilder) {
        digest.whole(self.start.is_some().into());
        digest.number(self.start.map_or(0.0, |start| start.0));
        digest.whole(self.is_complete.into());
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn completes(start: f64, end: f64) -> bool {
        let mut warm_up = WarmUp::default();
        warm_up.engine_started(Celsius(start));
        warm_up.take(Celsius(end))
    }

    /// Vehicle makers' service text: a rise of at least 22 K and at least 71 °C.
    #[test]
    fn published_warm_up_examples() {
        assert!(completes(20.0, 71.0));
        assert!(!completes(55.0, 75.0), "the rise is only 20 K");
        assert!(!completes(20.0, 70.0), "70 °C is the other maker's figure");
        assert!(completes(49.0, 71.0), "both limits are met exactly");
        assert!(!completes(49.5, 71.0));
    }

    #[test]
    fn limit_a_cycle_completes_once_and_counts_from_the_first_start() {
        let mut warm_up = WarmUp::default();
        assert!(!warm_up.take(Celsius(90.0)), "no start, no cycle");
        warm_up.engine_started(Celsius(20.0));
        assert!(!warm_up.take(Celsius(60.0)));
        warm_up.engine_started(Celsius(60.0));
        assert!(warm_up.take(Celsius(75.0)));
        assert!(!warm_up.take(Celsius(80.0)));
        assert!(warm_up.is_complete());
    }
}
