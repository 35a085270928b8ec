//! One test of a circuit, from single readings to a verdict: a debounce, then an honest counter.
//!
//! The counter gains the time for which a believed fault stands and loses the time for which its
//! absence is believed, no faster and no slower. A moment in which the test could not run moves
//! nothing.

use crate::control_module::circuit_limits::CircuitLimits;
use crate::control_module::verdict::Verdict;
use crate::numerics::digest::DigestBuilder;
use crate::units::Tick;
use serde::{Deserialize, Serialize};

/// What can be wrong with a driver's circuit, as far as its module can tell.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
pub enum CircuitFault {
    /// No current can flow.
    Open,
    /// The control wire is held near ground.
    Low,
    /// Too much current flows, or the control wire is held at the supply.
    High,
}

/// What one reading says to one test.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum Reading {
    /// The test does not apply at this moment.
    NotRun,
    /// Nothing wrong.
    Pass,
    /// This is wrong.
    Fault(CircuitFault),
}

/// The state of one test since key-on or since a clear.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct DebouncedTest {
    /// The reading that has come without a break, and since when.
    candidate: Reading,
    candidate_since: Tick,
    /// The last reading that lasted for the debounce time.
    believed: Reading,
    /// The fault that the counter is about.
    suspect: Option<CircuitFault>,
    failing_ms: u64,
    passing_ms: u64,
    /// How many times a fault has come to be believed where none was.
    interruptions: u8,
    has_failed: bool,
}

impl DebouncedTest {
    /// A test that has seen nothing yet.
    #[must_use]
    pub const fn new() -> Self {
        Self {
            candidate: Reading::NotRun,
            candidate_since: Tick(0),
            believed: Reading::NotRun,
            suspect: None,
            failing_ms: 0,
            passing_ms: 0,
            interruptions: 0,
            has_failed: false,
        }
    }

    /// Takes the reading of `tick`, the time `elapsed_ms` after the reading before \[ms\].
    pub fn take(&mut self, reading: Reading, elapsed_ms: u64, tick: Tick, limits: &CircuitLimits) {
        let was_standing = reading == self.candidate && self.stands(tick, elapsed_ms, limits);
        if reading != self.candidate {
            self.candidate = reading;
            self.candidate_since = tick;
        }
        if reading == Reading::NotRun || !self.stands(tick, 0, limits) {
            return;
        }
        // One fault that turns into another has not gone away in between.
        let is_onset = !self.sees_fault();
        self.believed = reading;
        // The time before the reading was believed is not evidence.
        let evidence_ms = if was_standing { elapsed_ms } else { 0 };
        match reading {
            Reading::Fault(fault) => self.count_up(fault, evidence_ms, is_onset, limits),
            Reading::Pass | Reading::NotRun => self.count_down(evidence_ms, limits),
        }
    }

    /// Whether the candidate had lasted for the debounce time, `before_ms` before `tick`.
    fn stands(&self, tick: Tick, before_ms: u64, limits: &CircuitLimits) -> bool {
        let lasted_ms = tick.0.saturating_sub(self.candidate_since.0);
        lasted_ms >= limits.debounce_ms.saturating_add(before_ms)
    }

    fn count_up(
        &mut self,
        fault: CircuitFault,
        evidence_ms: u64,
        is_onset: bool,
        limits: &CircuitLimits,
    ) {
        self.passing_ms = 0;
        if is_onset {
            self.interruptions = self.interruptions.saturating_add(1);
        }
        if self.suspect.is_some_and(|suspect| suspect != fault) {
            // Another fault first speaks against the one that was suspected.
            self.failing_ms = self.failing_ms.saturating_sub(evidence_ms);
            if self.failing_ms > 0 {
                return;
            }
            self.has_failed = false;
            self.suspect = Some(fault);
            return;
        }
        self.suspect = Some(fault);
        self.failing_ms = self.failing_ms.saturating_add(evidence_ms).min(limits.mature_ms);
        let drops_out = limits
            .interruptions_to_mature
            .is_some_and(|enough| is_onset && self.interruptions >= enough.get());
        if drops_out || self.failing_ms >= limits.mature_ms {
            self.failing_ms = limits.mature_ms;
            self.has_failed = true;
        }
    }

    fn count_down(&mut self, evidence_ms: u64, limits: &CircuitLimits) {
        if self.failing_ms > 0 {
            self.failing_ms = self.failing_ms.saturating_sub(evidence_ms);
        } else {
            self.passing_ms = self.passing_ms.saturating_add(evidence_ms).min(limits.mature_ms);
        }
        if self.failing_ms == 0 {
            self.suspect = None;
            self.has_failed = false;
        }
    }

    /// The fault that has matured and has not healed since.
    #[must_use]
    pub fn failed(&self) -> Option<CircuitFault> {
        self.suspect.filter(|_| self.has_failed)
    }

    /// Time for which a fault has stood, counted up and down \[ms\].
    #[must_use]
    pub fn standing_ms(&self, fault: CircuitFault) -> u64 {
        if self.suspect == Some(fault) { self.failing_ms } else { 0 }
    }

    /// Whether a fault is believed at the moment, matured or not.
    #[must_use]
    pub fn sees_fault(&self) -> bool {
        matches!(self.believed, Reading::Fault(_))
    }

    /// What the test has come to.
    #[must_use]
    pub fn verdict(&self, limits: &CircuitLimits) -> Verdict {
        if self.has_failed {
            Verdict::Failed
        } else if self.believed == Reading::Pass && self.passing_ms >= limits.mature_ms {
            Verdict::Passed
        } else {
            Verdict::NotRun
        }
    }

    /// Adds the state to a fingerprint, field by field in declared order.
    pub fn digest(&self, digest: &mut DigestBuilder) {
        digest.whole(reading_number(self.candidate));
        digest.whole(self.candidate_since.0);
        digest.whole(reading_number(self.believed));
        digest.whole(self.suspect.map_or(0, fault_number));
        digest.whole(self.failing_ms);
        digest.whole(self.passing_ms);
        digest.whole(self.interruptions.into());
        digest.whole(self.has_failed.into());
    }
}

impl Default for DebouncedTest {
    fn default() -> Self {
        Self::new()
    }
}

/// Numbers for fingerprints, fixed here so that a new variant cannot shift the others.
fn fault_number(fault: CircuitFault) -> u64 {
    match fault {
        CircuitFault::Open => 1,
        CircuitFault::Low => 2,
        CircuitFault::High => 3,
    }
}

fn reading_number(reading: Reading) -> u64 {
    match reading {
        Reading::NotRun => 0,
        Reading::Fault(fault) => fault_number(fault),
        Reading::Pass => 4,
    }
}

#[cfg(test)]
mod tests;
