//! How long something has been wrong without a break.

use crate::control_module::code::Code;
use crate::control_module::test_result::{Measure, TestResult};
use crate::control_module::verdict::{Finding, Verdict};
use crate::numerics::digest::DigestBuilder;
use crate::units::{Seconds, Tick};
use serde::{Deserialize, Serialize};

/// The time that one condition has stood, since the driving cycle began.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
pub struct Standing {
    wrong_ms: u64,
    longest_wrong_ms: u64,
    right_ms: u64,
    has_failed: bool,
}

/// How long it takes to fail, and to pass.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct StandingLimits {
    /// Time that it must be wrong without a break to fail \[ms\].
    pub fail_ms: u64,
    /// Time that it must be right in all to pass \[ms\].
    pub pass_ms: u64,
}

impl Standing {
    /// Takes whether it is wrong; `None` while the conditions for a judgement are not met, which
    /// breaks what must be seen without a break.
    pub fn take(&mut self, is_wrong: Option<bool>, elapsed_ms: u64, limits: StandingLimits) {
        match is_wrong {
            Some(true) => {
                self.wrong_ms = self.wrong_ms.saturating_add(elapsed_ms).min(limits.fail_ms);
                self.longest_wrong_ms = self.longest_wrong_ms.max(self.wrong_ms);
                self.has_failed |= self.wrong_ms >= limits.fail_ms;
            }
            Some(false) => {
                self.wrong_ms = 0;
                self.right_ms = self.right_ms.saturating_add(elapsed_ms).min(limits.pass_ms);
            }
            None => self.wrong_ms = 0,
        }
    }

    /// What it has come to. A failure stays for the driving cycle.
    #[must_use]
    pub const fn verdict(&self, limits: StandingLimits) -> Verdict {
        if self.has_failed {
            Verdict::Failed
        } else if self.right_ms >= limits.pass_ms {
            Verdict::Passed
        } else {
            Verdict::NotRun
        }
    }

    /// Longest time without a break in which it was wrong.
    #[must_use]
    pub fn longest(&self) -> Seconds {
        Seconds(Tick(self.longest_wrong_ms).as_seconds())
    }

    /// Adds the state to a fingerprint.
    pub fn digest(&self, digest: &mut DigestBuilder) {
        for count in [self.wrong_ms, self.longest_wrong_ms, self.right_ms, self.has_failed.into()] {
            digest.whole(count);
        }
    }
}

/// Where several codes stand, each by its own condition.
#[must_use]
pub fn findings<const N: usize>(
    codes: [Code; N],
    standing: &[Standing; N],
    limits: StandingLimits,
) -> [Finding; N] {
    core::array::from_fn(|at| Finding { code: codes[at], verdict: standing[at].verdict(limits) })
}

/// The figures behind them: the longest time without a break, which fails at its limit.
#[must_use]
pub fn results<const N: usize>(
    codes: [Code; N],
    standing: &[Standing; N],
    limits: StandingLimits,
    measure: Measure,
) -> [TestResult; N] {
    core::array::from_fn(|at| TestResult {
        code: codes[at],
        measure,
        value: standing[at].longest().0,
        least: 0.0,
        most: Tick(limits.fail_ms).as_seconds(),
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    const LIMITS: StandingLimits = StandingLimits { fail_ms: 500, pass_ms: 300 };

    fn after(readings: &[(Option<bool>, u64)]) -> (Verdict, f64) {
        let mut standing = Standing::default();
        for (is_wrong, times) in readings {
            for _ in 0..*times {
                standing.take(*is_wrong, 100, LIMITS);
            }
        }
        (standing.verdict(LIMITS), standing.longest().0)
    }

    #[test]
    fn closed_form_only_an_unbroken_time_fails() {
        let (wrong, right, idle) = (Some(true), Some(false), None);
        assert_eq!(after(&[(wrong, 5)]), (Verdict::Failed, 0.5));
        assert_eq!(after(&[(wrong, 4), (right, 1), (wrong, 4)]), (Verdict::NotRun, 0.4));
        assert_eq!(after(&[(wrong, 4), (idle, 1), (wrong, 4)]), (Verdict::NotRun, 0.4));
        assert_eq!(after(&[(wrong, 4), (right, 3)]), (Verdict::Passed, 0.4));
        assert_eq!(after(&[(right, 2), (idle, 9), (right, 1)]), (Verdict::Passed, 0.0));
        assert_eq!(after(&[(right, 9), (wrong, 5), (right, 9)]), (Verdict::Failed, 0.5));
    }
}
