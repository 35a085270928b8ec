//! The life of one code in the memory.
//!
//! The rules are those of 13 CCR 1968.2 (d)(2), read in vehicle makers' service text and, where
//! marked, from memory. The readings chosen where sources differ:
//!
//! - A *driving cycle* runs from a start of the engine to the key-off after it, and takes in what
//!   was found with the same key-on before that start. A key-off without a start closes no cycle:
//!   a failure found then is stored, but it and one in the next driving cycle are one trip.
//! - A *passing cycle* is a driving cycle in which the monitor ran and passed and did not fail. A
//!   cycle in which it did not run counts neither for nor against.
//! - A *pending* code stays as long as the last cycle in which its monitor ran had a failure, also
//!   beside the confirmed code: service $07 shows the current or last cycle.
//! - The *lamp* goes out at the end of the third consecutive passing cycle, so that it stays dark at
//!   the fourth start.
//! - Warm-ups towards *erasing* are counted from the cycle after that, in cycles without a failure;
//!   the monitor need not have run, since the rule asks that the fault be not seen again.
//! - A *permanent* code goes with the lamp, or, after a clear, at the end of the first passing
//!   cycle; where [`PermanentRule::OnePassInADrive`] asks for it, of the first that was also a drive
//!   of ordinary length.
//! - A code of misfire or of the fuel system knows the conditions in which it failed. For it a
//!   passing cycle is one in which such conditions came again
//!   ([`crate::control_module::similar_conditions`]); after 80 driving cycles without them a pending
//!   code goes all the same.

use crate::control_module::known_code::{KnownCode, PastState, PermanentRule};
use crate::control_module::similar_conditions::{CYCLES_TO_GIVE_UP, Conditions};
use crate::numerics::digest::DigestBuilder;
use serde::{Deserialize, Serialize};

/// Consecutive passing cycles until the lamp goes out: vehicle makers' service text, and
/// (d)(2.3) from memory.
pub const PASSING_CYCLES_TO_DARK: u8 = 3;
/// Warm-up cycles without the fault until a confirmed code is erased: vehicle makers' service
/// text, and (d)(2.4) from memory.
pub const WARM_UPS_TO_ERASE: u8 = 40;

/// What the key cycle was that a key-off closes.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct ClosedCycle {
    /// The engine had been started in it.
    pub is_driving_cycle: bool,
    /// It was a warm-up cycle.
    pub is_warm_up: bool,
    /// It held a drive of ordinary length.
    pub is_long_drive: bool,
}

/// One code's state.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize)]
pub struct CodeRecord {
    is_pending: bool,
    is_confirmed: bool,
    is_permanent: bool,
    lights_lamp: bool,
    /// A clear has come since the code became permanent.
    is_cleared: bool,
    /// Driving cycles with a failure since the last passing cycle, up to the number that confirms.
    trips: u8,
    /// The open driving cycle is among them.
    is_trip_counted: bool,
    passing_cycles: u8,
    clean_warm_ups: u8,
    has_failed: bool,
    has_passed: bool,
    permanent_rule: PermanentRule,
    /// Where the fault was seen, for codes that are forgotten only there.
    seen_under: Option<Conditions>,
    /// Such conditions have come again in this driving cycle.
    has_met_them: bool,
    /// Driving cycles since the failure in which they have not.
    cycles_without_them: u8,
}

impl CodeRecord {
    /// The record of a code that earlier driving has left.
    #[must_use]
    pub fn from_past(state: PastState, known: &KnownCode) -> Self {
        let record = Self { permanent_rule: known.permanent, ..Self::default() };
        match state {
            PastState::Pending => Self { is_pending: true, trips: 1, ..record },
            PastState::Confirmed { clean_warm_ups } => Self {
                is_confirmed: true,
                passing_cycles: PASSING_CYCLES_TO_DARK,
                clean_warm_ups,
                ..record
            },
            PastState::ConfirmedWithLamp => Self {
                is_pending: true,
                is_confirmed: true,
                is_permanent: true,
                lights_lamp: true,
                trips: known.trips.count(),
                ..record
            },
            PastState::PermanentAfterClear => {
                Self { is_permanent: true, is_cleared: true, ..record }
            }
        }
    }

    /// Takes a failure; the same one again changes nothing.
    pub fn fail(&mut self, known: &KnownCode) {
        self.has_failed = true;
        self.permanent_rule = known.permanent;
        self.cycles_without_them = 0;
        self.is_pending = true;
        self.passing_cycles = 0;
        self.clean_warm_ups = 0;
        if !self.is_trip_counted {
            self.is_trip_counted = true;
            self.trips = self.trips.saturating_add(1).min(known.trips.count());
        }
        if self.trips >= known.trips.count() {
            self.is_confirmed = true;
            if known.lights_lamp {
                self.lights_lamp = true;
                self.is_permanent = true;
                self.is_cleared = false;
            }
        }
    }

    /// Takes a pass.
    pub fn pass(&mut self) {
        self.has_passed = true;
    }

    /// Takes the conditions in which a fault was seen that is forgotten only in such conditions.
    pub const fn seen_under(&mut self, conditions: Conditions) {
        self.seen_under = Some(conditions);
    }

    /// Takes the conditions of a moment with the engine running.
    pub fn meet(&mut self, conditions: &Conditions) {
        self.has_met_them |= self.seen_under.is_some_and(|seen| seen.are_like(conditions));
    }

    /// Key-off.
    pub fn key_off(&mut self, cycle: ClosedCycle) {
        if cycle.is_driving_cycle {
            self.close_driving_cycle(cycle);
        }
        self.has_failed = false;
        self.has_passed = false;
        self.has_met_them = false;
    }

    fn close_driving_cycle(&mut self, cycle: ClosedCycle) {
        self.is_trip_counted = false;
        if self.has_failed {
            return;
        }
        if cycle.is_warm_up && !self.lights_lamp {
            self.clean_warm_ups = self.clean_warm_ups.saturating_add(1);
            if self.clean_warm_ups >= WARM_UPS_TO_ERASE {
                self.is_confirmed = false;
            }
        }
        if self.seen_under.is_some() && !self.has_met_them {
            self.wait_for_like_conditions();
            return;
        }
        if !self.has_passed {
            return;
        }
        self.is_pending = false;
        self.trips = 0;
        self.passing_cycles = self.passing_cycles.saturating_add(1).min(PASSING_CYCLES_TO_DARK);
        if self.passing_cycles >= PASSING_CYCLES_TO_DARK {
            self.lights_lamp = false;
            // After a clear there is no lamp to go out with.
            self.is_permanent &= self.is_cleared;
        }
        let is_enough = match self.permanent_rule {
            PermanentRule::OnePass => true,
            PermanentRule::OnePassInADrive => cycle.is_long_drive,
        };
        if self.is_cleared && is_enough {
            self.is_permanent = false;
        }
    }

    fn wait_for_like_conditions(&mut self) {
        self.cycles_without_them = self.cycles_without_them.saturating_add(1);
        if self.cycles_without_them >= CYCLES_TO_GIVE_UP {
            self.is_pending = false;
            self.trips = 0;
        }
    }

    /// A clear: all goes but a permanent code.
    pub fn clear(&mut self) {
        *self = Self {
            is_permanent: self.is_permanent,
            is_cleared: self.is_permanent,
            permanent_rule: self.permanent_rule,
            ..Self::default()
        };
    }

    /// Whether nothing is left to remember.
    #[must_use]
    pub const fn is_blank(&self) -> bool {
        !(self.is_pending || self.is_confirmed || self.is_permanent)
    }

    /// Whether the code is pending (service $07).
    #[must_use]
    pub const fn is_pending(&self) -> bool {
        self.is_pending
    }

    /// Whether the code is confirmed (service $03).
    #[must_use]
    pub const fn is_confirmed(&self) -> bool {
        self.is_confirmed
    }

    /// Whether the code is permanent (service $0A).
    #[must_use]
    pub const fn is_permanent(&self) -> bool {
        self.is_permanent
    }

    /// Whether the fault was found since the key was turned on.
    #[must_use]
    pub const fn has_failed(&self) -> bool {
        self.has_failed
    }

    /// Whether the code asks for the warning lamp.
    #[must_use]
    pub const fn lights_lamp(&self) -> bool {
        self.lights_lamp
    }

    /// Adds the state to a fingerprint, field by field in declared order.
    pub fn digest(&self, digest: &mut DigestBuilder) {
        for flag in [
            self.is_pending,
            self.is_confirmed,
            self.is_permanent,
            self.lights_lamp,
            self.is_cleared,
            self.is_trip_counted,
            self.has_failed,
            self.has_passed,
        ] {
            digest.whole(flag.into());
        }
        for count in
            [self.trips, self.passing_cycles, self.clean_warm_ups, self.cycles_without_them]
        {
            digest.whole(count.into());
        }
        digest.whole(match self.permanent_rule {
            PermanentRule::OnePass => 0,
            PermanentRule::OnePassInADrive => 1,
        });
        digest.whole(self.has_met_them.into());
        digest.whole(self.seen_under.is_some().into());
        if let Some(conditions) = &self.seen_under {
            conditions.digest(digest);
        }
    }
}

#[cfg(test)]
mod tests;
