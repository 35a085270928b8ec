//! Whether what the oil-pressure switch or sensor says goes with the engine's speed.
//!
//! Codes P0520 to P0524 (SAE J2012). An engine that stands has no pressure, one that turns fast
//! enough has some. A switch can only contradict that; a sensor also has a range.

use crate::control_module::code::Code;
use crate::control_module::freeze_frame::FreezeFrame;
use crate::control_module::standing::{self, Standing, StandingLimits};
use crate::control_module::test_result::{Measure, TestResult};
use crate::control_module::verdict::Finding;
use crate::numerics::digest::DigestBuilder;
use crate::units::{Bars, Rpm, Volts};
use serde::{Deserialize, Serialize};

/// Oil pressure sensor or switch circuit (SAE J2012).
pub const CIRCUIT: Code = Code(0x0520);
/// Range or performance of the sensor (SAE J2012).
pub const PERFORMANCE: Code = Code(0x0521);
/// Voltage of the sensor low (SAE J2012).
pub const LOW_VOLTAGE: Code = Code(0x0522);
/// Voltage of the sensor high (SAE J2012).
pub const HIGH_VOLTAGE: Code = Code(0x0523);
/// Oil pressure too low (SAE J2012).
pub const TOO_LOW: Code = Code(0x0524);

/// What the module is told of the oil pressure.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum OilPressureSignal {
    /// The switch of the oil lamp.
    Switch {
        /// Its contact is closed, which says that there is no pressure.
        is_closed: bool,
    },
    /// A sensor on the module's 5 V rail.
    Sensor {
        /// Its voltage.
        voltage: Volts,
    },
}

/// How a sensor's voltage goes with pressure.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(test, derive(schemars::JsonSchema))]
#[serde(default, deny_unknown_fields)]
pub struct SensorRange {
    /// Voltage below which the wire counts as shorted \[V\]. Shipped: 0.25, assumed.
    pub low_below: Volts,
    /// Voltage above which it counts as open \[V\]. Shipped: 4.75, assumed.
    pub high_above: Volts,
    /// Voltage at no pressure \[V\]. Shipped: 0.5, usual for sensors of a 5 V rail (no source).
    pub at_zero: Volts,
    /// Voltage at `full` \[V\]. Shipped: 4.5, as before.
    pub at_full: Volts,
    /// Pressure at `at_full` \[bar\]. Shipped: 10, assumed.
    pub full: Bars,
    /// Pressure of a standing engine above which the sensor is wrong \[bar\]. Shipped: 0.6, assumed.
    pub most_at_rest: Bars,
    /// Pressure of a running engine below which it is too low \[bar\]. Shipped: 0.7, published as 10 psi
    /// at hot idle, under which one should look further (general guidance, not a standard).
    pub least_running: Bars,
}

impl Default for SensorRange {
    fn default() -> Self {
        Self {
            low_below: Volts(0.25),
            high_above: Volts(4.75),
            at_zero: Volts(0.5),
            at_full: Volts(4.5),
            full: Bars(10.0),
            most_at_rest: Bars(0.6),
            least_running: Bars(0.7),
        }
    }
}

/// Thresholds and times of the oil pressure's diagnosis.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(test, derive(schemars::JsonSchema))]
#[serde(default, deny_unknown_fields)]
pub struct OilPressureLimits {
    /// Time for which the engine must have stood until there can be no pressure \[ms\]. Shipped: 5,000,
    /// assumed.
    pub rest_ms: u64,
    /// Engine speed from which there must be pressure \[rpm\]. Shipped: 1,500, assumed.
    pub running_from: Rpm,
    /// Time without a break that fails \[ms\]. Shipped: 5,000, assumed.
    pub fail_ms: u64,
    /// Time in which nothing is wrong that passes \[ms\]. Shipped: 5,000, assumed.
    pub pass_ms: u64,
    /// How a sensor is read, where there is one in the switch's place.
    pub sensor: SensorRange,
}

impl Default for OilPressureLimits {
    fn default() -> Self {
        Self {
            rest_ms: 5_000,
            running_from: Rpm(1_500.0),
            fail_ms: 5_000,
            pass_ms: 5_000,
            sensor: SensorRange::default(),
        }
    }
}

impl OilPressureLimits {
    /// The first figure that cannot be used, and what it must be.
    #[must_use]
    pub fn wrong(&self) -> Option<(&'static str, &'static str)> {
        let sensor = &self.sensor;
        let rules = [
            ("running_from", "above 0 rpm", self.running_from.0 > 0.0),
            ("fail_ms", "above 0", self.fail_ms > 0),
            ("pass_ms", "above 0", self.pass_ms > 0),
            ("sensor.low_below", "0 V or more", sensor.low_below.0 >= 0.0),
            ("sensor.at_zero", "low_below or more", sensor.at_zero.0 >= sensor.low_below.0),
            ("sensor.at_full", "above at_zero", sensor.at_full.0 > sensor.at_zero.0),
            ("sensor.high_above", "at_full or more", sensor.high_above.0 >= sensor.at_full.0),
            ("sensor.full", "above 0 bar", sensor.full.0 > 0.0),
            ("sensor.most_at_rest", "0 bar or more", sensor.most_at_rest.0 >= 0.0),
            ("sensor.least_running", "0 bar or more", sensor.least_running.0 >= 0.0),
        ];
        rules.into_iter().find(|(_, _, holds)| !holds).map(|(field, expected, _)| (field, expected))
    }

    const fn standing(&self) -> StandingLimits {
        StandingLimits { fail_ms: self.fail_ms, pass_ms: self.pass_ms }
    }

    fn pressure(&self, voltage: Volts) -> Bars {
        let sensor = &self.sensor;
        let share = (voltage.0 - sensor.at_zero.0) / (sensor.at_full.0 - sensor.at_zero.0);
        Bars(share * sensor.full.0)
    }
}

/// The diagnosis of the oil pressure during one driving cycle.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct OilPressureMonitor {
    limits: OilPressureLimits,
    stood_ms: u64,
    /// In the order of [`OilPressureMonitor::CODES`].
    standing: [Standing; 5],
}

impl OilPressureMonitor {
    /// Its codes, in the order in which they are judged.
    pub const CODES: [Code; 5] = [CIRCUIT, PERFORMANCE, LOW_VOLTAGE, HIGH_VOLTAGE, TOO_LOW];

    /// A monitor that has seen nothing.
    #[must_use]
    pub fn new(limits: OilPressureLimits) -> Self {
        Self { limits, stood_ms: 0, standing: [Standing::default(); 5] }
    }

    /// Forgets everything, as at key-on and after a clear.
    pub fn restart(&mut self) {
        *self = Self::new(self.limits);
    }

    /// Takes a moment, `elapsed_ms` after the one before \[ms\].
    pub fn take(&mut self, signal: OilPressureSignal, now: &FreezeFrame, elapsed_ms: u64) {
        let limits = self.limits;
        let is_standing = now.engine_speed.0 <= 0.0;
        self.stood_ms = if is_standing { self.stood_ms.saturating_add(elapsed_ms) } else { 0 };
        let rests = is_standing && self.stood_ms >= limits.rest_ms;
        let runs = now.engine_speed.0 >= limits.running_from.0;
        let wrong = match signal {
            OilPressureSignal::Switch { is_closed } => {
                [rests.then_some(!is_closed), None, None, None, runs.then_some(is_closed)]
            }
            OilPressureSignal::Sensor { voltage } => {
                let sensor = &limits.sensor;
                let is_low = voltage.0 < sensor.low_below.0;
                let is_high = voltage.0 > sensor.high_above.0;
                let pressure = (!is_low && !is_high).then(|| limits.pressure(voltage));
                let at_rest = pressure.filter(|_| rests);
                let running = pressure.filter(|_| runs);
                [
                    None,
                    at_rest.map(|bar| bar.0 > sensor.most_at_rest.0),
                    Some(is_low),
                    Some(is_high),
                    running.map(|bar| bar.0 < sensor.least_running.0),
                ]
            }
        };
        for (standing, is_wrong) in self.standing.iter_mut().zip(wrong) {
            standing.take(is_wrong, elapsed_ms, limits.standing());
        }
    }

    /// Where the five codes stand.
    #[must_use]
    pub fn findings(&self) -> [Finding; 5] {
        standing::findings(Self::CODES, &self.standing, self.limits.standing())
    }

    /// The figures behind them.
    #[must_use]
    pub fn results(&self) -> [TestResult; 5] {
        let limits = self.limits.standing();
        standing::results(Self::CODES, &self.standing, limits, Measure::TimeOfOilPressureFault)
    }

    /// Adds the state to a fingerprint.
    pub fn digest(&self, digest: &mut DigestBuilder) {
        digest.whole(self.stood_ms);
        self.standing.iter().for_each(|standing| standing.digest(digest));
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::control_module::verdict::Verdict;
    use crate::units::{Celsius, KilometresPerHour};

    /// Verdicts after 12 s at a speed.
    fn after(rpm: f64, signal: OilPressureSignal) -> Vec<(String, Verdict)> {
        let now = FreezeFrame {
            engine_speed: Rpm(rpm),
            load: 0.3,
            coolant: Celsius(90.0),
            oil: Celsius(90.0),
            vehicle_speed: KilometresPerHour(0.0),
            supply: Volts(14.1),
            battery: Volts(14.2),
        };
        let mut monitor = OilPressureMonitor::new(OilPressureLimits::default());
        for _ in 0..120 {
            monitor.take(signal, &now, 100);
        }
        let decided = monitor.findings().into_iter().filter(|one| one.verdict != Verdict::NotRun);
        decided.map(|one| (one.code.to_string(), one.verdict)).collect()
    }

    fn only(code: &str, verdict: Verdict) -> Vec<(String, Verdict)> {
        vec![(code.to_owned(), verdict)]
    }

    /// Codes by SAE J2012; a switch is closed without pressure and open with it.
    #[test]
    fn limit_a_switch_must_follow_the_engine() {
        let closed = OilPressureSignal::Switch { is_closed: true };
        let open = OilPressureSignal::Switch { is_closed: false };
        assert_eq!(after(0.0, closed), only("P0520", Verdict::Passed));
        assert_eq!(after(0.0, open), only("P0520", Verdict::Failed));
        assert_eq!(after(2_000.0, open), only("P0524", Verdict::Passed));
        assert_eq!(after(2_000.0, closed), only("P0524", Verdict::Failed));
        assert_eq!(after(800.0, closed), vec![], "at idle nothing is said");
    }

    #[test]
    fn limit_a_sensor_has_a_range_and_must_follow_the_engine() {
        let sensor = |volts| OilPressureSignal::Sensor { voltage: Volts(volts) };
        let failed = |rpm, volts| -> Vec<String> {
            let all = after(rpm, sensor(volts));
            let failed = all.into_iter().filter(|(_, verdict)| *verdict == Verdict::Failed);
            failed.map(|(code, _)| code).collect()
        };
        assert_eq!(failed(0.0, 0.1), ["P0522"]);
        assert_eq!(failed(0.0, 4.9), ["P0523"]);
        assert_eq!(failed(0.0, 1.0), ["P0521"], "1.25 bar at rest");
        assert_eq!(failed(2_000.0, 0.7), ["P0524"], "0.5 bar at 2,000 rpm");
        assert_eq!(failed(0.0, 0.5), Vec::<String>::new());
        assert_eq!(failed(2_000.0, 2.0), Vec::<String>::new());
    }

    #[test]
    fn limit_each_unusable_figure_is_named() {
        let shipped = OilPressureLimits::default();
        assert_eq!(shipped.wrong(), None);
        let sensor = shipped.sensor;
        let with = |sensor| OilPressureLimits { sensor, ..shipped };
        for (field, limits) in [
            ("running_from", OilPressureLimits { running_from: Rpm(0.0), ..shipped }),
            ("fail_ms", OilPressureLimits { fail_ms: 0, ..shipped }),
            ("pass_ms", OilPressureLimits { pass_ms: 0, ..shipped }),
            ("sensor.low_below", with(SensorRange { low_below: Volts(f64::NAN), ..sensor })),
            ("sensor.at_zero", with(SensorRange { at_zero: Volts(0.1), ..sensor })),
            ("sensor.at_full", with(SensorRange { at_full: Volts(0.5), ..sensor })),
            ("sensor.high_above", with(SensorRange { high_above: Volts(4.0), ..sensor })),
            ("sensor.full", with(SensorRange { full: Bars(0.0), ..sensor })),
            ("sensor.most_at_rest", with(SensorRange { most_at_rest: Bars(-1.0), ..sensor })),
            ("sensor.least_running", with(SensorRange { least_running: Bars(-1.0), ..sensor })),
        ] {
            assert_eq!(limits.wrong().map(|(field, _)| field), Some(field));
        }
    }
}
