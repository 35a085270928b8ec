//! How long a camshaft takes to follow a change of its target.

use crate::control_module::cam_control::{PERIOD_S, TARGET_DRIFT_DEG};
use crate::control_module::performance_limits::PerformanceLimits;
use crate::units::{CrankDegrees, Seconds};
use serde::{Deserialize, Serialize};

/// Timed steps that are looked at together.
pub const WINDOW: usize = 6;
/// Timed steps that are kept for a log.
const KEPT: usize = 64;

/// One timed change of target.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize)]
pub struct StepResponse {
    /// New target less old one.
    pub size: CrankDegrees,
    /// Time to the counted share of the change, or the limit when it was not reached.
    pub time: Seconds,
    /// Whether it was longer than the limit for slow.
    pub is_slow: bool,
}

/// A change of target whose clock is running.
#[derive(Debug, Clone, Copy, Serialize, Deserialize)]
struct Running {
    from_deg: f64,
    size_deg: f64,
    measured_at_start_deg: f64,
    elapsed_s: f64,
}

/// Times the changes of target of one camshaft.
#[derive(Debug, Clone, Serialize, Deserialize)]
pub struct StepTimer {
    running: Option<Running>,
    target_deg: Option<f64>,
    #[serde(with = "as_list")]
    kept: [StepResponse; KEPT],
    count: usize,
}

/// The kept steps as a list, because a notation knows no arrays of this length.
mod as_list {
    use super::{KEPT, StepResponse};
    use serde::de::Error as _;
    use serde::{Deserialize as _, Deserializer, Serialize as _, Serializer};

    pub(super) fn serialize<S: Serializer>(
        kept: &[StepResponse; KEPT],
        serializer: S,
    ) -> Result<S::Ok, S::Error> {
        kept.as_slice().serialize(serializer)
    }

    pub(super) fn deserialize<'de, D: Deserializer<'de>>(
        deserializer: D,
    ) -> Result<[StepResponse; KEPT], D::Error> {
        let list = Vec::<StepResponse>::deserialize(deserializer)?;
        <[StepResponse; KEPT]>::try_from(list)
            .map_err(|list| D::Error::invalid_length(list.len(), &"as many steps as are kept"))
    }
}

impl Default for StepTimer {
    fn default() -> Self {
        Self { running: None, target_deg: None, kept: [StepResponse::default(); KEPT], count: 0 }
    }
}

impl StepTimer {
    /// The timed steps, oldest first; of a very long run only the last 64 are kept, oldest not
    /// first.
    #[must_use]
    pub fn responses(&self) -> &[StepResponse] {
        self.kept.get(..self.count.min(KEPT)).unwrap_or(&self.kept)
    }

    /// Number of steps timed.
    #[must_use]
    pub const fn count(&self) -> usize {
        self.count
    }

    /// How many of the last six were slow, and how many were not.
    #[must_use]
    pub fn slow_and_quick(&self) -> (usize, usize) {
        let looked_at = self.count.min(WINDOW);
        let slow = (self.count - looked_at..self.count)
            .filter(|index| self.kept.get(index % KEPT).is_some_and(|step| step.is_slow))
            .count();
        (slow, looked_at - slow)
    }

    /// The time that decides whether a window of steps is slow when `slow_steps` of them have to be
    /// [s]: among the last six the one of that rank, slowest first; nothing while there are fewer.
    #[must_use]
    pub fn deciding_s(&self, slow_steps: u8) -> f64 {
        let looked_at = self.count.min(WINDOW);
        let mut times = [0.0; WINDOW];
        for (time, index) in times.iter_mut().zip(self.count - looked_at..self.count) {
            *time = self.kept.get(index % KEPT).map_or(0.0, |step| step.time.0);
        }
        times.sort_unstable_by(|a, b| b.total_cmp(a));
        times.get(usize::from(slow_steps).saturating_sub(1)).copied().unwrap_or(0.0)
    }

    /// Forgets a running clock, because the conditions for timing were lost.
    pub fn abandon(&mut self, target_deg: f64) {
        self.running = None;
        self.target_deg = Some(target_deg);
    }

    /// Looks at target and measured angle [degrees] once every ten milliseconds.
    pub fn update(&mut self, target_deg: f64, measured_deg: f64, limits: &PerformanceLimits) {
        let old_deg = self.target_deg.replace(target_deg).unwrap_or(target_deg);
        let size_deg = target_deg - old_deg;
        let is_step = size_deg.abs() > limits.step_deg;
        let has_left = self.running.is_some_and(|step| {
            (target_deg - step.from_deg - step.size_deg).abs() > TARGET_DRIFT_DEG
        });
        if is_step || has_left {
            // A new change cuts the last one short; it still counts if it was slow already.
            if let Some(step) = self.running.take().filter(|step| step.elapsed_s > limits.slow_s) {
                self.keep_if_moved(&step, measured_deg, limits);
            }
        }
        if is_step {
            self.running = Some(Running {
                from_deg: old_deg,
                size_deg,
                measured_at_start_deg: measured_deg,
                elapsed_s: 0.0,
            });
        }
        let Some(mut step) = self.running else { return };
        step.elapsed_s += PERIOD_S;
        self.running = Some(step);
        let way = step.size_deg.signum();
        let travelled_deg = way * (measured_deg - step.from_deg);
        if travelled_deg >= limits.step_share * step.size_deg.abs() {
            self.running = None;
            // Where the cam was already past the mark, there was nothing to time.
            if step.elapsed_s > 1.5 * PERIOD_S {
                self.keep(&step, limits);
            }
        } else if step.elapsed_s >= limits.step_limit_s - 0.5 * PERIOD_S {
            self.running = None;
            self.keep_if_moved(&step, measured_deg, limits);
        }
    }

    /// Keeps a step that never reached its mark, if it was a response at all: a cam that does not
    /// move is not slow, it is off target.
    fn keep_if_moved(&mut self, step: &Running, measured_deg: f64, limits: &PerformanceLimits) {
        let moved_deg = step.size_deg.signum() * (measured_deg - step.measured_at_start_deg);
        if moved_deg >= limits.least_move_deg {
            self.keep(step, limits);
        }
    }

    fn keep(&mut self, step: &Running, limits: &PerformanceLimits) {
        if let Some(slot) = self.kept.get_mut(self.count % KEPT) {
            *slot = StepResponse {
                size: CrankDegrees(step.size_deg),
                time: Seconds(step.elapsed_s),
                is_slow: step.elapsed_s > limits.slow_s,
            };
            self.count += 1;
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const LIMITS: PerformanceLimits = PerformanceLimits::TYPICAL;

    /// Moves at `rate` degrees a second towards each target for `hold_s` seconds.
    #[expect(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "a small whole number of periods"
    )]
    fn follow(timer: &mut StepTimer, rate: f64, hold_s: f64, targets: &[f64]) {
        let mut at = targets[0];
        for target in targets {
            for _ in 0..(hold_s / PERIOD_S).round() as u32 {
                let step = rate * PERIOD_S;
                at += (target - at).clamp(-step, step);
                timer.update(*target, at, &LIMITS);
            }
        }
    }

    /// At a constant rate the time is 60 % of the step over the rate.
    #[test]
    fn closed_form_time_at_a_constant_rate() {
        let mut timer = StepTimer::default();
        follow(&mut timer, 50.0, 5.0, &[0.0, 20.0, 5.0, 5.0, 12.0]);
        let [up, down] = timer.responses() else { panic!("{:?}", timer.responses()) };
        // One period of quantisation.
        assert!((up.time.0 - 0.24).abs() < 0.011 && !up.is_slow, "{up:?}");
        assert!((down.time.0 - 0.18).abs() < 0.011 && down.size.0 == -15.0, "{down:?}");
    }

    #[test]
    fn limit_a_cam_that_does_not_move_is_not_timed_and_one_that_creeps_is() {
        let mut stuck = StepTimer::default();
        follow(&mut stuck, 0.0, 5.0, &[0.0, 20.0, 0.0, 20.0]);
        assert_eq!(stuck.count(), 0);
        let mut creeping = StepTimer::default();
        follow(&mut creeping, 1.0, 5.0, &[0.0, 20.0, 0.0]);
        assert!(creeping.responses()[0].is_slow);
        assert!((creeping.responses()[0].time.0 - 3.0).abs() < 1e-9);
    }

    #[test]
    fn limit_only_the_last_six_count() {
        let mut timer = StepTimer::default();
        follow(&mut timer, 10.0, 5.0, &[0.0, 20.0, 0.0, 20.0, 0.0]);
        assert_eq!(timer.slow_and_quick(), (4, 0));
        assert!(timer.deciding_s(4) > LIMITS.slow_s && timer.deciding_s(5) == 0.0);
        follow(&mut timer, 200.0, 5.0, &[0.0, 20.0, 0.0, 20.0, 0.0]);
        assert_eq!(timer.slow_and_quick(), (2, 4));
        assert!(timer.deciding_s(4) < LIMITS.slow_s && timer.deciding_s(2) > LIMITS.slow_s);
        for _ in 0..40 {
            follow(&mut timer, 200.0, 1.0, &[0.0, 20.0, 0.0]);
        }
        assert_eq!(timer.slow_and_quick(), (0, 6));
        assert_eq!(timer.responses().len(), KEPT);
    }

    /// Engine speed takes the target along after a step: a little of that leaves the clock running,
    /// more stops it.
    #[test]
    fn limit_a_target_that_drifts_after_its_step() {
        let mut timer = StepTimer::default();
        follow(&mut timer, 50.0, 1.0, &[0.0]);
        for update in 0..100 {
            let target = 20.0 + 0.01 * f64::from(update);
            timer.update(target, 0.5 * f64::from(update), &LIMITS);
        }
        assert_eq!(timer.count(), 1);
        assert!((timer.responses()[0].time.0 - 0.25).abs() < 0.011);
        let mut timer = StepTimer::default();
        follow(&mut timer, 50.0, 1.0, &[0.0]);
        for update in 0..20 {
            timer.update(20.0 + 0.2 * f64::from(update), 0.0, &LIMITS);
        }
        for update in 0..100 {
            timer.update(23.8, 0.5 * f64::from(update), &LIMITS);
        }
        assert_eq!(timer.count(), 0);
    }

    #[test]
    fn limit_a_step_cut_short_counts_only_when_it_was_slow_already() {
        let mut timer = StepTimer::default();
        follow(&mut timer, 10.0, 0.3, &[0.0, 20.0, 0.0]);
        assert_eq!(timer.count(), 0);
        follow(&mut timer, 10.0, 0.8, &[0.0, 20.0, 0.0]);
        assert!(timer.count() == 1 && timer.responses()[0].is_slow);
    }
}
