//! Whether a driving cycle was a drive of ordinary length.

use crate::numerics::digest::DigestBuilder;
use crate::units::KilometresPerHour;
use serde::{Deserialize, Serialize};

/// Running time that it takes \[ms\] (13 CCR 1968.2 (d)(2.5), from memory: 600 s).
const RUNNING_MS: u64 = 600_000;
/// Time at or above [`FAST_KM_H`] that it takes \[ms\] (same: 300 s).
const FAST_MS: u64 = 300_000;
/// Speed that counts as driving \[km/h\] (same: 25 mph, 40 km/h).
const FAST_KM_H: f64 = 40.0;
/// Idling without a break that it takes \[ms\] (same: 30 s).
const IDLE_MS: u64 = 30_000;
/// Speed up to which the vehicle idles \[km/h\] (same: 1 mph).
const STANDING_KM_H: f64 = 1.6;

/// Follows one driving cycle.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
pub struct DrivePattern {
    running_ms: u64,
    fast_ms: u64,
    idle_ms: u64,
    has_idled: bool,
}

impl DrivePattern {
    /// The engine has run for another `elapsed_ms` \[ms\] at a speed of the vehicle.
    pub fn ran(&mut self, elapsed_ms: u64, speed: KilometresPerHour) {
        self.running_ms = self.running_ms.saturating_add(elapsed_ms);
        if speed.0 >= FAST_KM_H {
            self.fast_ms = self.fast_ms.saturating_add(elapsed_ms);
        }
        self.idle_ms =
            if speed.0 <= STANDING_KM_H { self.idle_ms.saturating_add(elapsed_ms) } else { 0 };
        self.has_idled |= self.idle_ms >= IDLE_MS;
    }

    /// Whether everything was there.
    #[must_use]
    pub const fn is_complete(&self) -> bool {
        self.running_ms >= RUNNING_MS && self.fast_ms >= FAST_MS && self.has_idled
    }

    /// Adds the state to a fingerprint.
    pub fn digest(&self, digest: &mut DigestBuilder) {
        for count in [self.running_ms, self.fast_ms, self.idle_ms, self.has_idled.into()] {
            digest.whole(count);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn driven(parts: &[(u64, f64)]) -> bool {
        let mut pattern = DrivePattern::default();
        for (seconds, km_h) in parts {
            for _ in 0..seconds * 10 {
                pattern.ran(100, KilometresPerHour(*km_h));
            }
        }
        pattern.is_complete()
    }

    /// 13 CCR 1968.2 (d)(2.5), from memory: 600 s, 300 s at 40 km/h, 30 s of idling in one piece.
    #[test]
    fn published_drive_pattern() {
        assert!(driven(&[(30, 0.0), (300, 40.0), (270, 20.0)]));
        assert!(!driven(&[(30, 0.0), (300, 40.0), (269, 20.0)]), "too short");
        assert!(!driven(&[(30, 0.0), (299, 40.0), (300, 39.0)]), "too slow");
        assert!(!driven(&[(20, 0.0), (300, 50.0), (20, 0.0), (300, 30.0)]), "idled in two pieces");
    }
}
