//! Our samples at a device's own pace.

use crate::sound::SAMPLES_PER_SECOND;

/// Turns samples at our pace into samples at a device's, by straight lines between ours.
///
/// What a straight line adds to an engine's rumble or a click lies far above both: at 1 kHz and 44.1 kHz it is some 60 dB
/// below (worked out in the test).
#[derive(Debug)]
pub struct Pace {
    /// Samples of ours for each of the device's.
    step: f64,
    /// How far past `before` the next one lies [samples of ours]; 1 or more asks for a new one.
    ahead: f64,
    before: f32,
    after: f32,
}

impl Pace {
    /// For a device that takes this many samples a second, which is not nought.
    pub fn of(device_per_second: u32) -> Self {
        let step = f64::from(SAMPLES_PER_SECOND) / f64::from(device_per_second.max(1));
        // Ahead by one, so that the first sample is the first of ours.
        Self { step, ahead: 1.0, before: 0.0, after: 0.0 }
    }

    /// The device's next sample; `ours` gives our next one.
    #[expect(clippy::cast_possible_truncation, reason = "a device takes no more digits")]
    pub fn next(&mut self, mut ours: impl FnMut() -> f32) -> f32 {
        while self.ahead >= 1.0 {
            self.before = std::mem::replace(&mut self.after, ours());
            self.ahead -= 1.0;
        }
        let sample = self.before + (self.after - self.before) * self.ahead as f32;
        self.ahead += self.step;
        sample
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use core::f64::consts::TAU;

    /// A tone of 1 kHz at a device's pace.
    fn tone(device_per_second: u32, count: usize) -> Vec<f64> {
        let mut pace = Pace::of(device_per_second);
        let mut at = 0_u32;
        let mut ours = || {
            let phase = TAU * 1_000.0 * f64::from(at) / f64::from(SAMPLES_PER_SECOND);
            at += 1;
            crate::numerics::elementary::sin(phase) as f32
        };
        (0..count).map(|_| f64::from(pace.next(&mut ours))).collect()
    }

    /// Identity: at our own pace every sample is one of ours, one later.
    #[test]
    fn identity_at_our_own_pace_nothing_changes() {
        let mut pace = Pace::of(SAMPLES_PER_SECOND);
        let mut at = 0.0_f32;
        let got: Vec<f32> = (0..5)
            .map(|_| {
                pace.next(|| {
                    at += 1.0;
                    at
                })
            })
            .collect();
        assert_eq!(got, [0.0, 1.0, 2.0, 3.0, 4.0]);
    }

    /// Formula: a straight line errs by at most the square of the step's phase over eight.
    #[test]
    fn formula_a_tone_stays_the_tone_within_what_a_straight_line_errs() {
        for device_per_second in [44_100, 48_000, 96_000, 192_000] {
            let phase = TAU * 1_000.0 / f64::from(SAMPLES_PER_SECOND);
            let limit = phase * phase / 8.0 + 1e-6;
            for (at, got) in tone(device_per_second, 4_000).into_iter().enumerate() {
                let time_s =
                    at as f64 / f64::from(device_per_second) - 1.0 / f64::from(SAMPLES_PER_SECOND);
                let due = if time_s < 0.0 {
                    continue;
                } else {
                    crate::numerics::elementary::sin(TAU * 1_000.0 * time_s)
                };
                assert!((got - due).abs() <= limit, "{device_per_second}, {at}: {got} for {due}");
            }
        }
    }
}
