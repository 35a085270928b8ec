//! The circuit diagnosis of one driver.
//!
//! A low-side driver sits between the valve's control wire and ground, a high-side driver between the
//! supply and that wire ([`DriverSide`]). Two tests look at it. The *idle test* reads the pin's voltage
//! while the switch is off: a good coil holds it at the far end of its circuit, the feed of one and the
//! ground of the other, and the bias leaves it at half of the rail when nothing is connected. The
//! *current test* compares the current with what a good coil of that temperature would take. Each counts for itself ([`DebouncedTest`]); together they own
//! three codes, of which at most one is failed at a time, because a pin that reads wrong at rest
//! says nothing about the coil.
//!
//! Model and limits: the module sees only its own pin, its shunt and its own supply. It cannot
//! tell a broken coil from a broken wire or feed, takes a dead common feed for a short to ground,
//! and lets a resistive contact pass. A resting high-side pin looks the same with a good coil and with
//! a short to ground; only a pulse tells them apart.

use crate::control_module::circuit_limits::CircuitLimits;
use crate::control_module::code::Code;
use crate::control_module::debounced_test::{CircuitFault, DebouncedTest, Reading};
use crate::control_module::driver_side::DriverSide;
use crate::control_module::test_result::{Measure, TestResult};
use crate::control_module::verdict::{Finding, Verdict};
use crate::numerics::digest::DigestBuilder;
use crate::units::{Amperes, Celsius, Ohms, Tick, Volts};
use serde::{Deserialize, Serialize};

/// Rise of copper's resistance for each kelvin, referred to 20 °C \[1/K\]: IEC 60028.
const COPPER_PER_K: f64 = 0.003_93;

/// What the module's own electronics tell it about one driver.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct DriverSense {
    /// Mean voltage at the driver's pin over one period \[V\]: the voltage with the switch open at
    /// duty 0, with the switch closed at duty 1, weighted by the duty in between.
    pub feedback: Volts,
    /// Mean current of the coil as the shunt lets the module believe \[A\], 0 or more: a driver that
    /// protects itself, or whose wire is grounded outside, shows little or none.
    pub current: Amperes,
    /// Share of the time in which the switch is commanded closed, 0 to 1.
    pub duty: f64,
    /// Supply at the module \[V\].
    pub supply: Volts,
    /// Resistance that the module expects of the coil at 20 °C \[ohm\], above 0.
    pub expected_ohms_at_20: Ohms,
    /// What the module takes the coil's temperature to be \[°C\]: the oil's, as a rule.
    pub coil_temperature_estimate: Celsius,
}

/// The three codes of one driver, and on which side it sits.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct DriverCodes {
    /// Circuit open; intake P0010, exhaust P0013 (SAE J2012).
    pub open: Code,
    /// Control circuit low; intake P2088, exhaust P2090 (SAE J2012).
    pub low: Code,
    /// Control circuit high; intake P2089, exhaust P2091 (SAE J2012).
    pub high: Code,
    /// The side of its switch.
    #[serde(default)]
    pub side: DriverSide,
}

impl DriverCodes {
    /// The three codes in the order open, low, high.
    #[must_use]
    pub const fn all(&self) -> [Code; 3] {
        [self.open, self.low, self.high]
    }
}

/// What one moment says to the two tests.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Readings {
    /// The idle test's reading.
    pub idle: Reading,
    /// The current test's reading.
    pub current: Reading,
}

/// Reads one moment, without memory.
///
/// The order matters: a pin that is wrong at rest silences the current test, which could not tell
/// an open circuit from one that is grounded outside.
#[must_use]
pub fn read(sense: &DriverSense, side: DriverSide, limits: &CircuitLimits) -> Readings {
    let supply_v = sense.supply.0;
    if !(limits.supply_from.0..=limits.supply_to.0).contains(&supply_v) {
        return Readings { idle: Reading::NotRun, current: Reading::NotRun };
    }
    let idle = read_idle(sense, side, limits);
    let current = match idle {
        Reading::Fault(_) => Reading::NotRun,
        Reading::NotRun | Reading::Pass => read_current(sense, side, limits),
    };
    Readings { idle, current }
}

/// The pin with the switch off. Between duty 0 and 1 the closed part of a low-side driver adds almost
/// nothing to the mean, so the mean over the open share is the open voltage or a little more. That of a
/// high-side driver adds almost the supply, so what is left is the open voltage or a little less.
fn read_idle(sense: &DriverSense, side: DriverSide, limits: &CircuitLimits) -> Reading {
    if sense.duty > limits.off_read_up_to_duty {
        return Reading::NotRun;
    }
    let open_v = match side {
        DriverSide::Low => sense.feedback.0 / (1.0 - sense.duty),
        DriverSide::High => (sense.feedback.0 - sense.duty * sense.supply.0) / (1.0 - sense.duty),
    };
    if open_v < limits.low_below.0 {
        match side {
            DriverSide::Low => Reading::Fault(CircuitFault::Low),
            DriverSide::High => Reading::Pass,
        }
    } else if open_v < limits.open_below.0 {
        Reading::Fault(CircuitFault::Open)
    } else {
        match side {
            DriverSide::Low => Reading::Pass,
            DriverSide::High => Reading::Fault(CircuitFault::High),
        }
    }
}

/// What a driver on this side is said to have when its current is too high, or when it has none and its
/// pin does not follow the switch: its wire is held at the end to which the switch does not lead.
const fn held_away(side: DriverSide) -> CircuitFault {
    match side {
        DriverSide::Low => CircuitFault::High,
        DriverSide::High => CircuitFault::Low,
    }
}

/// The current against that of a good coil at the temperature the module believes.
fn read_current(sense: &DriverSense, side: DriverSide, limits: &CircuitLimits) -> Reading {
    if sense.duty < limits.current_read_from_duty {
        return Reading::NotRun;
    }
    let warm = 1.0 + COPPER_PER_K * (sense.coil_temperature_estimate.0 - 20.0);
    let expected_ohms = sense.expected_ohms_at_20.0 * warm + limits.rest_of_loop.0;
    let driven_v = sense.supply.0 * sense.duty;
    // Voltages are compared rather than resistances, so that no current divides by zero.
    let expected_v = sense.current.0 * expected_ohms;
    // How far the switch moves the pin from where it rests.
    let moved_v = match side {
        DriverSide::Low => sense.supply.0 - sense.feedback.0,
        DriverSide::High => sense.feedback.0,
    };
    if driven_v < expected_v * limits.high_below_ratio {
        Reading::Fault(held_away(side))
    } else if driven_v < expected_v * limits.open_from_ratio {
        Reading::Pass
    } else if moved_v < limits.pulled_down_ratio * driven_v {
        // No current, and the pin stays where it is although the switch is commanded closed.
        Reading::Fault(held_away(side))
    } else {
        Reading::Fault(CircuitFault::Open)
    }
}

/// The circuit diagnosis of one driver since key-on or since a clear.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct CircuitMonitor {
    limits: CircuitLimits,
    codes: DriverCodes,
    started: Tick,
    last: Option<Tick>,
    idle: DebouncedTest,
    current: DebouncedTest,
    has_failed_since_start: bool,
}

impl CircuitMonitor {
    /// A monitor that has seen nothing, started at tick 0.
    #[must_use]
    pub const fn new(limits: CircuitLimits, codes: DriverCodes) -> Self {
        Self {
            limits,
            codes,
            started: Tick(0),
            last: None,
            idle: DebouncedTest::new(),
            current: DebouncedTest::new(),
            has_failed_since_start: false,
        }
    }

    /// Forgets everything, as at key-on and after a clear, and counts the pulse from `tick`.
    pub fn restart(&mut self, tick: Tick) {
        *self = Self { started: tick, ..Self::new(self.limits, self.codes) };
    }

    /// The three codes.
    #[must_use]
    pub const fn codes(&self) -> DriverCodes {
        self.codes
    }

    /// Takes what the driver shows at `tick`, in the 100 ms task, and says where the three codes
    /// stand, in the order open, low, high.
    pub fn judge(&mut self, sense: &DriverSense, tick: Tick) -> [Finding; 3] {
        let elapsed_ms = self.last.map_or(0, |last| tick.0.saturating_sub(last.0));
        self.last = Some(tick);
        let readings = read(sense, self.codes.side, &self.limits);
        self.idle.take(readings.idle, elapsed_ms, tick, &self.limits);
        let current = if readings.idle == Reading::NotRun && self.idle.sees_fault() {
            // The pin read wrong when it could last be read at rest.
            Reading::NotRun
        } else {
            readings.current
        };
        self.current.take(current, elapsed_ms, tick, &self.limits);
        self.has_failed_since_start |= self.fault().is_some();
        self.findings()
    }

    /// The fault that is failed at the moment.
    #[must_use]
    pub fn fault(&self) -> Option<CircuitFault> {
        self.idle.failed().or(self.current.failed())
    }

    /// Whether a fault has matured since the start, healed or not.
    #[must_use]
    pub const fn has_failed_since_start(&self) -> bool {
        self.has_failed_since_start
    }

    /// Where the three codes stand, in the order open, low, high.
    #[must_use]
    pub fn findings(&self) -> [Finding; 3] {
        [
            Finding { code: self.codes.open, verdict: self.verdict(CircuitFault::Open) },
            Finding { code: self.codes.low, verdict: self.verdict(CircuitFault::Low) },
            Finding { code: self.codes.high, verdict: self.verdict(CircuitFault::High) },
        ]
    }

    /// The figures behind the three codes, in the order open, low, high.
    #[must_use]
    pub fn results(&self) -> [TestResult; 3] {
        [
            (self.codes.open, CircuitFault::Open),
            (self.codes.low, CircuitFault::Low),
            (self.codes.high, CircuitFault::High),
        ]
        .map(|(code, fault)| TestResult {
            code,
            measure: Measure::TimeOfCircuitFault,
            value: Tick(self.idle.standing_ms(fault).max(self.current.standing_ms(fault)))
                .as_seconds(),
            least: 0.0,
            most: Tick(self.limits.mature_ms).as_seconds(),
        })
    }

    /// Where the code of one fault stands.
    #[must_use]
    pub fn verdict(&self, of: CircuitFault) -> Verdict {
        if self.fault() == Some(of) {
            return Verdict::Failed;
        }
        let idle = self.idle.verdict(&self.limits) == Verdict::Passed;
        let current = self.current.verdict(&self.limits) == Verdict::Passed;
        let has_passed = match of {
            CircuitFault::Open => idle && current,
            _ if of == held_away(self.codes.side) => current,
            CircuitFault::Low | CircuitFault::High => idle,
        };
        if has_passed { Verdict::Passed } else { Verdict::NotRun }
    }

    /// The duty that the key-on pulse asks for at `tick`, if any. It goes on until the current has
    /// led to a verdict, so that a start of the engine in between does not leave it undecided.
    #[must_use]
    pub fn pulse_duty(&self, tick: Tick) -> Option<f64> {
        let is_undecided =
            !self.has_failed_since_start && self.current.verdict(&self.limits) == Verdict::NotRun;
        let pulse = &self.limits.key_on_pulse;
        let is_on = pulse.is_on(tick.0.saturating_sub(self.started.0));
        (is_undecided && is_on).then_some(pulse.duty)
    }

    /// Adds the state to a fingerprint, field by field in declared order.
    pub fn digest(&self, digest: &mut DigestBuilder) {
        digest.whole(self.started.0);
        digest.whole(self.last.map_or(0, |last| last.0.saturating_add(1)));
        self.idle.digest(digest);
        self.current.digest(digest);
        digest.whole(self.has_failed_since_start.into());
    }
}

#[cfg(test)]
mod tests;
