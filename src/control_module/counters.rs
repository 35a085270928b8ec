//! Counters that a code reader asks for: since the last clear, and with the lamp on.
//!
//! Rules, from memory of SAE J1979 service $01 where no other source is given:
//!
//! - none of them wraps; each stops at its largest value (PIDs $21, $30, $31, $4D, $4E);
//! - a clear sets all of them to nothing (vehicle makers' service text, list for service $04);
//! - distance and time with the lamp on start from nothing when the lamp comes on, stand still when
//!   it goes out, and go back to nothing with the clear or with the erasing after 40 warm-ups
//!   (vehicle makers' service text, "distance since the lamp was set").

use crate::control_module::code_record::WARM_UPS_TO_ERASE;
use crate::numerics::digest::DigestBuilder;
use crate::units::KilometresPerHour;
use serde::{Deserialize, Serialize};

const MS_PER_MINUTE: u64 = 60_000;
/// Metres that one kilometre an hour makes in a millisecond.
const METRES_PER_KMH_MS: f64 = 1.0 / 3_600.0;

/// Where the counters stand, as a code reader gets them.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
pub struct CounterReport {
    /// Warm-up cycles since the clear (PID $30), 0 to 255.
    pub warm_ups_since_clear: u8,
    /// Distance since the clear \[km\] (PID $31), whole kilometres, 0 to 65,535.
    pub kilometres_since_clear: u16,
    /// Time with the engine running since the clear \[min\] (PID $4E), whole minutes, 0 to 65,535.
    pub minutes_since_clear: u16,
    /// Distance with the lamp commanded on \[km\] (PID $21), whole kilometres, 0 to 65,535.
    pub kilometres_with_lamp: u16,
    /// Time with the engine running and the lamp commanded on \[min\] (PID $4D), whole minutes,
    /// 0 to 65,535.
    pub minutes_with_lamp: u16,
}

/// Distance and running time together.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize)]
struct Driven {
    metres: f64,
    running_ms: u64,
}

impl Driven {
    fn kilometres(self) -> u16 {
        whole_up_to_u16(self.metres / 1_000.0)
    }

    fn minutes(self) -> u16 {
        u16::try_from(self.running_ms / MS_PER_MINUTE).unwrap_or(u16::MAX)
    }

    fn digest(&self, digest: &mut DigestBuilder) {
        digest.number(self.metres);
        digest.whole(self.running_ms);
    }
}

/// The whole part of a number that is not negative, at most what two bytes hold.
#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "clamped to the range of the type first"
)]
fn whole_up_to_u16(value: f64) -> u16 {
    value.clamp(0.0, f64::from(u16::MAX)) as u16
}

/// The counters of one module.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize)]
pub struct Counters {
    warm_ups: u8,
    since_clear: Driven,
    is_lit: bool,
    with_lamp: Driven,
    /// Warm-up cycles since the lamp went out.
    dark_warm_ups: u8,
}

impl Counters {
    /// Counters that earlier driving with the lamp out has left.
    #[must_use]
    pub fn from_past(warm_ups: u8, running_seconds: u32, kilometres: u16) -> Self {
        Self {
            warm_ups,
            since_clear: Driven {
                metres: f64::from(kilometres) * 1_000.0,
                running_ms: u64::from(running_seconds) * 1_000,
            },
            ..Self::default()
        }
    }

    /// The engine has run for another `elapsed_ms` \[ms\] while the vehicle moved at `speed`.
    pub fn ran(&mut self, elapsed_ms: u64, speed: KilometresPerHour) {
        // Milliseconds between two tasks are far below what a float holds exactly.
        let metres =
            f64::from(u32::try_from(elapsed_ms).unwrap_or(u32::MAX)) * speed.0 * METRES_PER_KMH_MS;
        let count = |driven: &mut Driven| {
            driven.metres += metres;
            driven.running_ms = driven.running_ms.saturating_add(elapsed_ms);
        };
        count(&mut self.since_clear);
        if self.is_lit {
            count(&mut self.with_lamp);
        }
    }

    /// A warm-up cycle is complete.
    pub const fn warmed_up(&mut self) {
        self.warm_ups = self.warm_ups.saturating_add(1);
        if self.is_lit {
            return;
        }
        self.dark_warm_ups = self.dark_warm_ups.saturating_add(1);
        if self.dark_warm_ups >= WARM_UPS_TO_ERASE {
            self.with_lamp = Driven { metres: 0.0, running_ms: 0 };
        }
    }

    /// Takes whether the lamp is commanded on.
    pub fn note_lamp(&mut self, is_lit: bool) {
        if is_lit && !self.is_lit {
            self.with_lamp = Driven::default();
            self.dark_warm_ups = 0;
        }
        self.is_lit = is_lit;
    }

    /// A clear.
    pub fn clear(&mut self) {
        *self = Self::default();
    }

    /// Time with the engine running since the clear \[ms\].
    #[must_use]
    pub const fn running_ms_since_clear(&self) -> u64 {
        self.since_clear.running_ms
    }

    /// Where they stand.
    #[must_use]
    pub fn report(&self) -> CounterReport {
        CounterReport {
            warm_ups_since_clear: self.warm_ups,
            kilometres_since_clear: self.since_clear.kilometres(),
            minutes_since_clear: self.since_clear.minutes(),
            kilometres_with_lamp: self.with_lamp.kilometres(),
            minutes_with_lamp: self.with_lamp.minutes(),
        }
    }

    /// Adds the state to a fingerprint in declared order.
    pub fn digest(&self, digest: &mut DigestBuilder) {
        digest.whole(self.warm_ups.into());
        self.since_clear.digest(digest);
        digest.whole(self.is_lit.into());
        self.with_lamp.digest(digest);
        digest.whole(self.dark_warm_ups.into());
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn hour_at(counters: &mut Counters, km_h: f64) {
        for _ in 0..36_000 {
            counters.ran(100, KilometresPerHour(km_h));
        }
    }

    /// An hour at 61 km/h in steps of a tenth of a second is 61 km, and 60 minutes.
    #[test]
    fn closed_form_distance_is_speed_times_time() {
        let mut counters = Counters::default();
        hour_at(&mut counters, 61.001);
        let report = counters.report();
        assert_eq!((report.kilometres_since_clear, report.minutes_since_clear), (61, 60));
        assert_eq!((report.kilometres_with_lamp, report.minutes_with_lamp), (0, 0));
    }

    /// Vehicle makers' service text on the distance with the lamp: it counts with the lamp on, is
    /// held when it goes out, begins anew when it comes on again, goes with the clear and with the
    /// erasing after forty warm-ups.
    #[test]
    fn published_distance_with_the_lamp() {
        let mut counters = Counters::default();
        hour_at(&mut counters, 20.5);
        counters.note_lamp(true);
        hour_at(&mut counters, 30.6);
        counters.note_lamp(true);
        hour_at(&mut counters, 30.6);
        let with_lamp = |counters: &Counters| counters.report().kilometres_with_lamp;
        assert_eq!(with_lamp(&counters), 61);
        counters.note_lamp(false);
        hour_at(&mut counters, 10.5);
        assert_eq!((with_lamp(&counters), counters.report().minutes_with_lamp), (61, 120));
        let mut again = counters;
        again.note_lamp(true);
        hour_at(&mut again, 5.5);
        assert_eq!(with_lamp(&again), 5);
        for _ in 0..39 {
            counters.warmed_up();
        }
        assert_eq!(with_lamp(&counters), 61);
        counters.warmed_up();
        assert_eq!(with_lamp(&counters), 0);
        assert_eq!(counters.report().kilometres_since_clear, 92);
        counters.clear();
        assert_eq!(counters.report(), CounterReport::default());
    }

    /// From memory, SAE J1979: counters stop at their maximum.
    #[test]
    fn published_counters_do_not_wrap() {
        let mut counters = Counters::from_past(255, u32::MAX, u16::MAX);
        counters.note_lamp(true);
        counters.warmed_up();
        counters.ran(u64::MAX, KilometresPerHour(255.0));
        let full = CounterReport {
            warm_ups_since_clear: u8::MAX,
            kilometres_since_clear: u16::MAX,
            minutes_since_clear: u16::MAX,
            kilometres_with_lamp: u16::MAX,
            minutes_with_lamp: u16::MAX,
        };
        assert_eq!(counters.report(), full);
    }
}
