//! Conditions like those in which a fault was seen.
//!
//! A misfire at full load says nothing about idling. Codes of misfire and of the fuel system are
//! therefore forgotten only after their monitor has passed where it once failed (13 CCR 1968.2
//! (e)(3.4) and (e)(6.4), from memory; the 375 rpm seen in vehicle makers' service text, where the
//! load is given as 10 %; the regulation's 20 %, from memory, is taken).

use crate::control_module::freeze_frame::FreezeFrame;
use crate::control_module::warm_up::REACHED_C;
use crate::numerics::digest::DigestBuilder;
use serde::{Deserialize, Serialize};

/// Engine speed counts as like within this \[rpm\].
pub const WITHIN_RPM: f64 = 375.0;
/// Load counts as like within this, 0 to 1.
pub const WITHIN_LOAD: f64 = 0.2;
/// Driving cycles without such conditions after which a pending code goes all the same.
pub const CYCLES_TO_GIVE_UP: u8 = 80;

/// The conditions of one moment.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Conditions {
    engine_rpm: f64,
    load: f64,
    is_warm: bool,
}

impl Conditions {
    /// The conditions of a moment.
    #[must_use]
    pub fn of(now: &FreezeFrame) -> Self {
        Self { engine_rpm: now.engine_speed.0, load: now.load, is_warm: now.coolant.0 >= REACHED_C }
    }

    /// Whether another moment is like this one.
    #[must_use]
    pub fn are_like(&self, other: &Self) -> bool {
        (self.engine_rpm - other.engine_rpm).abs() <= WITHIN_RPM
            && (self.load - other.load).abs() <= WITHIN_LOAD
            && self.is_warm == other.is_warm
    }

    /// Adds the conditions to a fingerprint.
    pub fn digest(&self, digest: &mut DigestBuilder) {
        digest.number(self.engine_rpm);
        digest.number(self.load);
        digest.whole(self.is_warm.into());
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// 375 rpm, 20 % of load, same warm-up status (13 CCR 1968.2, from memory).
    #[test]
    fn published_similar_conditions() {
        let at = |engine_rpm, load, is_warm| Conditions { engine_rpm, load, is_warm };
        let seen = at(2_000.0, 0.4, true);
        assert!(seen.are_like(&at(2_375.0, 0.25, true)) && seen.are_like(&at(1_625.0, 0.55, true)));
        assert!(!seen.are_like(&at(2_376.0, 0.4, true)));
        assert!(!seen.are_like(&at(2_000.0, 0.61, true)));
        assert!(!seen.are_like(&at(2_000.0, 0.4, false)));
    }
}
