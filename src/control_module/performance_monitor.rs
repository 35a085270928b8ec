//! Watches one camshaft: is it on target, does it hunt, is it quick, does it lie right at rest.
//!
//! Every verdict is honest: a monitor that had no chance to see the fault says [`Verdict::NotRun`].
//! It passes only after it held a target away from rest long enough, timed enough steps, or saw the
//! camshaft at rest long enough. A failure stays for the driving cycle.
//!
//! Inputs: the measured angle every millisecond by [`PerformanceMonitor::sample`], target and
//! conditions every ten milliseconds by [`PerformanceMonitor::update`].

use crate::control_module::cam_control::{PERIOD_S, TARGET_DRIFT_DEG};
use crate::control_module::performance_limits::{CamCodes, PerformanceLimits, RestsAt};
use crate::control_module::step_response::{StepResponse, StepTimer, WINDOW};
use crate::control_module::test_result::{Measure, TestResult};
use crate::control_module::verdict::{Finding, Verdict};
use crate::units::{Celsius, CrankDegrees, Rpm, Seconds, Volts};
use serde::{Deserialize, Serialize};

/// Steps that have to be timed before slow response is judged.
const LEAST_STEPS: usize = 4;

/// Share of the error that has to lie on one side for hunting to be called early or late (assumed).
const ONE_SIDED: f64 = 0.8;

/// What decides whether the monitors may run.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Conditions {
    /// Engine speed.
    pub speed: Rpm,
    /// Oil temperature.
    pub oil: Celsius,
    /// Supply voltage.
    pub supply: Volts,
    /// Whether no circuit code stands against the valve.
    pub circuit_is_sound: bool,
}

/// A monitor's finding with the moment of its first failure since the driving cycle began.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct DatedFinding {
    /// The finding.
    pub finding: Finding,
    /// When it first failed.
    pub failed_at: Option<Seconds>,
}

/// When each fault was first seen [updates since the driving cycle began].
#[derive(Debug, Clone, Copy, Default, Serialize, Deserialize)]
struct Failures {
    early: Option<u32>,
    late: Option<u32>,
    slow: Option<u32>,
    correlation: Option<u32>,
}

/// The performance monitors of one camshaft during one driving cycle.
#[derive(Debug, Clone, Serialize, Deserialize)]
pub struct PerformanceMonitor {
    codes: CamCodes,
    rests_at: RestsAt,
    limits: PerformanceLimits,
    updates: u32,
    failures: Failures,
    // Samples since the last update.
    samples: u32,
    sum_deg: f64,
    beyond: u32,
    target_deg: f64,
    /// Target from which the time since a change is counted.
    settled_at_deg: f64,
    // Target error and hunting.
    filtered_deg: f64,
    off_target_s: f64,
    since_change_s: f64,
    hunting_share: f64,
    hunting_deg: f64,
    hunting_size_deg: f64,
    held_s: f64,
    // Rest.
    wrong_at_rest_s: f64,
    right_at_rest_s: f64,
    rest_is_proved: bool,
    steps: StepTimer,
    enabled_s: f64,
    // Figures behind the verdicts.
    longest_early_s: f64,
    longest_late_s: f64,
    most_hunting_early: f64,
    most_hunting_late: f64,
    longest_wrong_at_rest_s: f64,
}

impl PerformanceMonitor {
    /// Monitors at the start of a driving cycle.
    #[must_use]
    pub fn new(codes: CamCodes, rests_at: RestsAt, limits: PerformanceLimits) -> Self {
        Self {
            codes,
            rests_at,
            limits,
            updates: 0,
            failures: Failures::default(),
            samples: 0,
            sum_deg: 0.0,
            beyond: 0,
            target_deg: 0.0,
            settled_at_deg: 0.0,
            filtered_deg: 0.0,
            off_target_s: 0.0,
            since_change_s: 0.0,
            hunting_share: 0.0,
            hunting_deg: 0.0,
            hunting_size_deg: 0.0,
            held_s: 0.0,
            wrong_at_rest_s: 0.0,
            right_at_rest_s: 0.0,
            rest_is_proved: false,
            steps: StepTimer::default(),
            enabled_s: 0.0,
            longest_early_s: 0.0,
            longest_late_s: 0.0,
            most_hunting_early: 0.0,
            most_hunting_late: 0.0,
            longest_wrong_at_rest_s: 0.0,
        }
    }

    /// Begins a new driving cycle with nothing found yet.
    pub fn begin_cycle(&mut self) {
        *self = Self::new(self.codes, self.rests_at, self.limits);
    }

    /// Takes in the measured angle away from rest, once a millisecond.
    #[inline]
    pub fn sample(&mut self, measured: CrankDegrees) {
        self.samples += 1;
        self.sum_deg += measured.0;
        if (self.target_deg - measured.0).abs() > self.limits.hunting_deg {
            self.beyond += 1;
        }
    }

    /// Mean of the samples since the last update, because single ones would beat with the torque
    /// pulses.
    fn mean_measured_deg(&self) -> f64 {
        self.sum_deg / f64::from(self.samples.max(1))
    }

    /// Judges the last ten milliseconds, which ran towards `target`.
    pub fn update(&mut self, target: CrankDegrees, conditions: &Conditions) {
        let measured_deg = self.mean_measured_deg();
        let share_beyond = f64::from(self.beyond) / f64::from(self.samples.max(1));
        self.samples = 0;
        self.sum_deg = 0.0;
        self.beyond = 0;
        self.updates += 1;
        if (target.0 - self.settled_at_deg).abs() > TARGET_DRIFT_DEG {
            self.settled_at_deg = target.0;
            self.since_change_s = 0.0;
        } else {
            self.since_change_s += PERIOD_S;
        }
        self.target_deg = target.0;
        if !self.is_enabled(conditions) {
            self.wait(target.0);
            return;
        }
        self.enabled_s += PERIOD_S;
        let error_deg = target.0 - measured_deg;
        self.judge_target_error(error_deg);
        self.judge_hunting(error_deg, share_beyond);
        self.judge_rest(measured_deg);
        if conditions.oil.0 >= self.limits.slow_least_oil_c {
            self.steps.update(target.0, measured_deg, &self.limits);
            let (slow, _) = self.steps.slow_and_quick();
            if slow >= usize::from(self.limits.slow_steps) {
                self.failures.slow.get_or_insert(self.updates);
            }
        } else {
            self.steps.abandon(target.0);
        }
    }

    fn is_enabled(&self, conditions: &Conditions) -> bool {
        let limits = &self.limits;
        conditions.circuit_is_sound
            && conditions.speed.0 >= limits.least_rpm
            && (limits.least_oil_c..=limits.most_oil_c).contains(&conditions.oil.0)
            && (limits.least_supply_v..=limits.most_supply_v).contains(&conditions.supply.0)
    }

    /// Lets go of everything that has to be seen without a break.
    fn wait(&mut self, target_deg: f64) {
        self.filtered_deg = 0.0;
        self.off_target_s = 0.0;
        self.hunting_share = 0.0;
        self.hunting_deg = 0.0;
        self.hunting_size_deg = 0.0;
        self.wrong_at_rest_s = 0.0;
        self.right_at_rest_s = 0.0;
        self.steps.abandon(target_deg);
    }

    fn judge_target_error(&mut self, error_deg: f64) {
        let share = PERIOD_S / (self.limits.error_filter_s + PERIOD_S);
        self.filtered_deg += (error_deg - self.filtered_deg) * share;
        if self.filtered_deg.abs() <= self.limits.off_target_deg {
            self.off_target_s = 0.0;
        } else {
            self.off_target_s += PERIOD_S;
            let longest = if self.is_late(self.filtered_deg) {
                &mut self.longest_late_s
            } else {
                &mut self.longest_early_s
            };
            *longest = longest.max(self.off_target_s);
            if self.off_target_s >= self.limits.off_target_s {
                self.fail_towards(self.filtered_deg);
            }
        }
        if self.target_deg >= self.limits.held_target_deg
            && self.since_change_s >= self.limits.settle_s
        {
            self.held_s += PERIOD_S;
        }
    }

    fn judge_hunting(&mut self, error_deg: f64, share_beyond: f64) {
        if self.since_change_s < self.limits.settle_s {
            return;
        }
        let share = PERIOD_S / (self.limits.hunting_memory_s + PERIOD_S);
        self.hunting_share += (share_beyond - self.hunting_share) * share;
        self.hunting_deg += (error_deg - self.hunting_deg) * share;
        self.hunting_size_deg += (error_deg.abs() - self.hunting_size_deg) * share;
        // To and fro is early: "over-advanced or system performance" is the one code that says so.
        let is_one_sided = self.hunting_deg.abs() >= ONE_SIDED * self.hunting_size_deg;
        let (most, failed) = if is_one_sided && self.is_late(self.hunting_deg) {
            (&mut self.most_hunting_late, &mut self.failures.late)
        } else {
            (&mut self.most_hunting_early, &mut self.failures.early)
        };
        *most = most.max(self.hunting_share);
        if self.hunting_share > self.limits.hunting_share {
            failed.get_or_insert(self.updates);
        }
    }

    /// Fails the code for a camshaft that is short of its target (positive error) or past it.
    fn fail_towards(&mut self, error_deg: f64) {
        let is_late = self.is_late(error_deg);
        let slot = if is_late { &mut self.failures.late } else { &mut self.failures.early };
        slot.get_or_insert(self.updates);
    }

    /// Whether a camshaft is late that is short of its target (positive error) or past it.
    fn is_late(&self, error_deg: f64) -> bool {
        let is_short = error_deg > 0.0;
        match self.rests_at {
            RestsAt::Retarded => is_short,
            RestsAt::Advanced => !is_short,
        }
    }

    fn judge_rest(&mut self, measured_deg: f64) {
        if self.target_deg != 0.0 {
            self.wrong_at_rest_s = 0.0;
            self.right_at_rest_s = 0.0;
        } else if measured_deg > self.limits.rest_error_deg {
            self.right_at_rest_s = 0.0;
            self.wrong_at_rest_s += PERIOD_S;
            self.longest_wrong_at_rest_s = self.longest_wrong_at_rest_s.max(self.wrong_at_rest_s);
            if self.wrong_at_rest_s >= self.limits.rest_s {
                self.failures.correlation.get_or_insert(self.updates);
            }
        } else {
            self.wrong_at_rest_s = 0.0;
            self.right_at_rest_s += PERIOD_S;
            self.rest_is_proved |= self.right_at_rest_s >= self.limits.rest_s;
        }
    }

    /// What is found so far on each code: early, late, slow, correlation.
    #[must_use]
    pub fn findings(&self) -> [DatedFinding; 4] {
        let on_target_is_proved = self.held_s >= self.limits.held_s;
        // The window cannot fill up with slow steps any more once it holds enough quick ones.
        let enough_quick = WINDOW + 1 - usize::from(self.limits.slow_steps).min(WINDOW);
        let (_, quick) = self.steps.slow_and_quick();
        let speed_is_proved = self.steps.count() >= LEAST_STEPS && quick >= enough_quick;
        [
            (self.codes.early, self.failures.early, on_target_is_proved),
            (self.codes.late, self.failures.late, on_target_is_proved),
            (self.codes.slow, self.failures.slow, speed_is_proved),
            (self.codes.correlation, self.failures.correlation, self.rest_is_proved),
        ]
        .map(|(code, failed, is_proved)| DatedFinding {
            finding: Finding {
                code,
                verdict: match (failed, is_proved) {
                    (Some(_), _) => Verdict::Failed,
                    (None, true) => Verdict::Passed,
                    (None, false) => Verdict::NotRun,
                },
            },
            failed_at: failed.map(|updates| Seconds(f64::from(updates) * PERIOD_S)),
        })
    }

    /// The figures behind the findings, whether decided or not. Early and late have two each: they
    /// also tell of hunting.
    #[must_use]
    pub fn results(&self) -> [TestResult; 6] {
        let limits = &self.limits;
        let deciding_s = self.steps.deciding_s(limits.slow_steps);
        [
            (self.codes.early, Measure::TimeOffTarget, self.longest_early_s, limits.off_target_s),
            (
                self.codes.early,
                Measure::HuntingShare,
                self.most_hunting_early,
                limits.hunting_share,
            ),
            (self.codes.late, Measure::TimeOffTarget, self.longest_late_s, limits.off_target_s),
            (self.codes.late, Measure::HuntingShare, self.most_hunting_late, limits.hunting_share),
            (self.codes.slow, Measure::ResponseTime, deciding_s, limits.slow_s),
            (
                self.codes.correlation,
                Measure::TimeWrongAtRest,
                self.longest_wrong_at_rest_s,
                limits.rest_s,
            ),
        ]
        .map(|(code, measure, value, most)| TestResult {
            code,
            measure,
            value,
            least: 0.0,
            most,
        })
    }

    /// The timed changes of target.
    #[must_use]
    pub fn step_responses(&self) -> &[StepResponse] {
        self.steps.responses()
    }

    /// Time in which the conditions for monitoring were met.
    #[must_use]
    pub const fn enabled(&self) -> Seconds {
        Seconds(self.enabled_s)
    }
}

#[cfg(test)]
mod tests;
