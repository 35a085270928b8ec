//! Watches the supply: too low, too high, unsteady, or not the same at both of its inputs.
//!
//! Codes P0560 to P0563 (SAE J2012). The module has two inputs: its own supply, and the battery as
//! it is told it. A poor contact in the module's feed shows in their difference alone.

use crate::control_module::code::Code;
use crate::control_module::freeze_frame::FreezeFrame;
use crate::control_module::standing::{self, Standing, StandingLimits};
use crate::control_module::test_result::{Measure, TestResult};
use crate::control_module::verdict::Finding;
use crate::numerics::digest::DigestBuilder;
use crate::units::{Rpm, Volts};
use serde::{Deserialize, Serialize};

/// System voltage, the general code: the two inputs do not agree (SAE J2012).
pub const INPUTS_APART: Code = Code(0x0560);
/// System voltage unstable (SAE J2012).
pub const UNSTABLE: Code = Code(0x0561);
/// System voltage low (SAE J2012).
pub const LOW: Code = Code(0x0562);
/// System voltage high (SAE J2012).
pub const HIGH: Code = Code(0x0563);

/// For how long one jump makes the supply unsteady \[ms\]: jumps that follow each other faster stand
/// without a break (assumed).
const JUMP_LASTS_MS: u64 = 1_000;

/// Thresholds and times of the supply's diagnosis.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(test, derive(schemars::JsonSchema))]
#[serde(default, deny_unknown_fields)]
pub struct SupplyLimits {
    /// Least engine speed, above the starter's \[rpm\]. Shipped: 600, assumed.
    pub least_rpm: Rpm,
    /// Supply that is too low with the engine running, below \[V\]. Shipped: 11, assumed: where the
    /// circuit diagnosis stops.
    pub low_below: Volts,
    /// Supply that is too high, above \[V\]. Shipped: 16, ISO 16750-2 table 1 for 12 V equipment.
    pub high_above: Volts,
    /// Change from one tenth of a second to the next that is a jump, above \[V\]. Shipped: 1.5, assumed.
    pub jump_above: Volts,
    /// Difference of the two inputs, above \[V\]. Shipped: 2, assumed.
    pub apart_above: Volts,
    /// Time without a break that fails \[ms\]. Shipped: 10,000, assumed.
    pub fail_ms: u64,
    /// Time in which nothing is wrong that passes \[ms\]. Shipped: 10,000, assumed.
    pub pass_ms: u64,
}

impl Default for SupplyLimits {
    fn default() -> Self {
        Self {
            least_rpm: Rpm(600.0),
            low_below: Volts(11.0),
            high_above: Volts(16.0),
            jump_above: Volts(1.5),
            apart_above: Volts(2.0),
            fail_ms: 10_000,
            pass_ms: 10_000,
        }
    }
}

impl SupplyLimits {
    /// The first figure that cannot be used, and what it must be.
    #[must_use]
    pub fn wrong(&self) -> Option<(&'static str, &'static str)> {
        let rules = [
            ("least_rpm", "0 rpm or more", self.least_rpm.0 >= 0.0),
            ("low_below", "above 0 V", self.low_below.0 > 0.0),
            ("high_above", "above low_below", self.high_above.0 > self.low_below.0),
            ("jump_above", "above 0 V", self.jump_above.0 > 0.0),
            ("apart_above", "above 0 V", self.apart_above.0 > 0.0),
            ("fail_ms", "above 0", self.fail_ms > 0),
            ("pass_ms", "above 0", self.pass_ms > 0),
        ];
        rules.into_iter().find(|(_, _, holds)| !holds).map(|(field, expected, _)| (field, expected))
    }

    const fn standing(&self) -> StandingLimits {
        StandingLimits { fail_ms: self.fail_ms, pass_ms: self.pass_ms }
    }
}

/// The diagnosis of the supply during one driving cycle.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct SupplyMonitor {
    limits: SupplyLimits,
    last: Option<Volts>,
    since_jump_ms: u64,
    /// In the order of [`SupplyMonitor::CODES`].
    standing: [Standing; 4],
}

impl SupplyMonitor {
    /// Its codes, in the order in which they are judged.
    pub const CODES: [Code; 4] = [INPUTS_APART, UNSTABLE, LOW, HIGH];

    /// A monitor that has seen nothing.
    #[must_use]
    pub fn new(limits: SupplyLimits) -> Self {
        Self {
            limits,
            last: None,
            since_jump_ms: JUMP_LASTS_MS,
            standing: [Standing::default(); 4],
        }
    }

    /// Forgets everything, as at key-on and after a clear.
    pub fn restart(&mut self) {
        *self = Self::new(self.limits);
    }

    /// Takes a moment, `elapsed_ms` after the one before \[ms\].
    pub fn take(&mut self, now: &FreezeFrame, elapsed_ms: u64) {
        let limits = self.limits;
        let supply_v = now.supply.0;
        let jump_v = self.last.replace(now.supply).map_or(0.0, |last| (supply_v - last.0).abs());
        self.since_jump_ms = if jump_v > limits.jump_above.0 {
            0
        } else {
            self.since_jump_ms.saturating_add(elapsed_ms)
        };
        let is_running = now.engine_speed.0 >= limits.least_rpm.0;
        let wrong = [
            (now.battery.0 - supply_v).abs() > limits.apart_above.0,
            self.since_jump_ms < JUMP_LASTS_MS,
            supply_v < limits.low_below.0,
            supply_v > limits.high_above.0,
        ];
        for (standing, is_wrong) in self.standing.iter_mut().zip(wrong) {
            standing.take(is_running.then_some(is_wrong), elapsed_ms, limits.standing());
        }
    }

    /// Where the four codes stand.
    #[must_use]
    pub fn findings(&self) -> [Finding; 4] {
        standing::findings(Self::CODES, &self.standing, self.limits.standing())
    }

    /// The figures behind them.
    #[must_use]
    pub fn results(&self) -> [TestResult; 4] {
        let limits = self.limits.standing();
        standing::results(Self::CODES, &self.standing, limits, Measure::TimeOfSupplyFault)
    }

    /// Adds the state to a fingerprint.
    pub fn digest(&self, digest: &mut DigestBuilder) {
        digest.whole(self.last.is_some().into());
        digest.number(self.last.map_or(0.0, |last| last.0));
        digest.whole(self.since_jump_ms);
        self.standing.iter().for_each(|standing| standing.digest(digest));
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::control_module::verdict::Verdict;
    use crate::units::{Celsius, KilometresPerHour};

    fn moment(rpm: f64, supply: f64, battery: f64) -> FreezeFrame {
        FreezeFrame {
            engine_speed: Rpm(rpm),
            load: 0.3,
            coolant: Celsius(90.0),
            oil: Celsius(90.0),
            vehicle_speed: KilometresPerHour(0.0),
            supply: Volts(supply),
            battery: Volts(battery),
        }
    }

    /// Failed codes after 12 s of a supply that alternates between two values.
    fn failed(rpm: f64, supply: [f64; 2], battery: f64) -> Vec<String> {
        let mut monitor = SupplyMonitor::new(SupplyLimits::default());
        for task in 0..120 {
            monitor.take(&moment(rpm, supply[task / 5 % 2], battery), 100);
        }
        let all = monitor.findings();
        let failed = all.iter().filter(|finding| finding.verdict == Verdict::Failed);
        failed.map(|finding| finding.code.to_string()).collect()
    }

    /// Codes by SAE J2012; what sets them is assumed.
    #[test]
    fn limit_each_kind_of_wrong_supply_sets_its_code_with_the_engine_running() {
        assert_eq!(failed(800.0, [14.1, 14.1], 14.2), Vec::<String>::new());
        assert_eq!(failed(800.0, [10.9, 10.9], 11.0), ["P0562"]);
        assert_eq!(failed(800.0, [16.1, 16.1], 16.2), ["P0563"]);
        assert_eq!(failed(800.0, [12.0, 12.0], 14.1), ["P0560"]);
        assert_eq!(failed(800.0, [12.4, 14.1], 14.2), ["P0561"]);
        assert_eq!(failed(200.0, [10.0, 10.0], 10.1), Vec::<String>::new(), "the starter turns");
    }

    #[test]
    fn limit_no_verdict_before_its_time() {
        let mut monitor = SupplyMonitor::new(SupplyLimits::default());
        for _ in 0..99 {
            monitor.take(&moment(800.0, 10.0, 10.1), 100);
        }
        assert!(monitor.findings().iter().all(|finding| finding.verdict == Verdict::NotRun));
        assert_eq!(monitor.results()[2].value, 9.9);
        monitor.take(&moment(800.0, 10.0, 10.1), 100);
        assert_eq!(
            monitor.findings().map(|finding| finding.verdict),
            [Verdict::Passed, Verdict::Passed, Verdict::Failed, Verdict::Passed]
        );
        assert!(!monitor.results()[2].passes() && monitor.results()[1].passes());
        monitor.restart();
        assert_eq!(monitor, SupplyMonitor::new(SupplyLimits::default()));
    }

    #[test]
    fn limit_each_unusable_figure_is_named() {
        let shipped = SupplyLimits::default();
        assert_eq!(shipped.wrong(), None);
        for (field, limits) in [
            ("least_rpm", SupplyLimits { least_rpm: Rpm(f64::NAN), ..shipped }),
            ("low_below", SupplyLimits { low_below: Volts(0.0), ..shipped }),
            ("high_above", SupplyLimits { high_above: Volts(11.0), ..shipped }),
            ("jump_above", SupplyLimits { jump_above: Volts(0.0), ..shipped }),
            ("apart_above", SupplyLimits { apart_above: Volts(-1.0), ..shipped }),
            ("fail_ms", SupplyLimits { fail_ms: 0, ..shipped }),
            ("pass_ms", SupplyLimits { pass_ms: 0, ..shipped }),
        ] {
            assert_eq!(limits.wrong().map(|(field, _)| field), Some(field));
        }
    }
}
