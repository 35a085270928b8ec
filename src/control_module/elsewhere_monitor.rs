//! Monitors of what the simulation does not hold, such as a leak of fuel vapour: where such a fault is
//! present, its code is found in every cycle that meets the monitor's conditions.
//!
//! A circuit is watched with the key on, anything else while the engine runs. The rule of a code says
//! which: what one trip confirms is a circuit here (assumed, as are both times).

use crate::control_module::code::Code;
use crate::control_module::known_code::{KnownCode, Trips};
use crate::control_module::verdict::{Finding, Verdict};
use crate::numerics::digest::DigestBuilder;
use serde::{Deserialize, Serialize};

/// Time with the key on after which a faulty circuit is found \[ms\] (assumed).
const CIRCUIT_MS: u64 = 5_000;
/// Time with the engine running in one cycle after which anything else is found \[ms\] (assumed; within
/// every road that is driven for a test).
const RUNNING_MS: u64 = 90_000;

/// The monitors that find what is present elsewhere, during one driving cycle.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize)]
pub struct ElsewhereMonitor {
    present: Vec<(Code, bool)>,
    key_on_ms: u64,
    running_ms: u64,
}

impl ElsewhereMonitor {
    /// Monitors of the faults that are present, by the rules of their codes.
    #[must_use]
    pub fn new(present: &[KnownCode]) -> Self {
        let present = present.iter().map(|known| (known.code, known.trips == Trips::One)).collect();
        Self { present, key_on_ms: 0, running_ms: 0 }
    }

    /// Forgets the time, as at key-on and after a clear.
    pub const fn restart(&mut self) {
        self.key_on_ms = 0;
        self.running_ms = 0;
    }

    /// Takes a moment, `elapsed_ms` after the one before \[ms\].
    pub const fn take(&mut self, is_running: bool, elapsed_ms: u64) {
        self.key_on_ms = self.key_on_ms.saturating_add(elapsed_ms);
        if is_running {
            self.running_ms = self.running_ms.saturating_add(elapsed_ms);
        }
    }

    /// What they have come to.
    pub fn findings(&self) -> impl Iterator<Item = Finding> {
        self.present.iter().map(|(code, is_circuit)| {
            let is_found = if *is_circuit {
                self.key_on_ms >= CIRCUIT_MS
            } else {
                self.running_ms >= RUNNING_MS
            };
            let verdict = if is_found { Verdict::Failed } else { Verdict::NotRun };
            Finding { code: *code, verdict }
        })
    }

    /// Adds the state to a fingerprint, where there is anything to watch.
    pub fn digest(&self, digest: &mut DigestBuilder) {
        if !self.present.is_empty() {
            digest.whole(self.key_on_ms);
            digest.whole(self.running_ms);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::control_module::code_family::rule_of_unrelated;

    /// P0073 is a circuit, P0456 a leak.
    #[test]
    fn limit_a_circuit_is_found_with_the_key_on_and_a_leak_in_a_drive() {
        let rules = [rule_of_unrelated(Code(0x0073)), rule_of_unrelated(Code(0x0456))];
        let mut monitor = ElsewhereMonitor::new(&rules);
        let found = |monitor: &ElsewhereMonitor| -> Vec<String> {
            let failed = monitor.findings().filter(|one| one.verdict == Verdict::Failed);
            failed.map(|one| one.code.to_string()).collect()
        };
        monitor.take(false, CIRCUIT_MS - 1);
        assert_eq!(found(&monitor), Vec::<String>::new());
        monitor.take(false, 2 * RUNNING_MS);
        assert_eq!(found(&monitor), ["P0073"]);
        monitor.take(true, RUNNING_MS);
        assert_eq!(found(&monitor), ["P0073", "P0456"]);
        monitor.restart();
        assert_eq!(found(&monitor), Vec::<String>::new());
    }
}
