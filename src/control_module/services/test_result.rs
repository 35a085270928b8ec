//! Test results with their limits (service $06) in the CAN form.
//!
//! Nine bytes a result: monitor, test, unit and scaling, then value, least and most in two bytes
//! each. All three are zero until the monitor has run since the codes were cleared (SAE J1979, as
//! vehicle makers' service text repeats it). Monitor $35 is variable valve timing of bank 1 and
//! tests $80 to $FE are the maker's own; both are printed in vehicle makers' service text. Monitor $36,
//! the same of bank 2, and units and scalings: those that an independent open-source decoder lists
//! (python-OBD, `obd/commands.py` and `obd/UnitsAndScaling.py`).

use crate::control_module::code_family::Bank;
use crate::control_module::services::reply::{ReplyFault, malformed};
use crate::control_module::services::{Service, word};
use crate::numerics::whole::{to_i64, to_u32};

/// Variable valve timing, bank 1.
pub const VALVE_TIMING: u8 = 0x35;
/// Variable valve timing, bank 2.
const VALVE_TIMING_TWO: u8 = 0x36;
/// First test of the maker's own numbering.
pub const FIRST_OWN_TEST: u8 = 0x80;

/// The monitor of variable valve timing of a bank.
#[must_use]
pub const fn valve_timing(bank: Bank) -> u8 {
    match bank {
        Bank::One => VALVE_TIMING,
        Bank::Two => VALVE_TIMING_TWO,
    }
}

/// Unit and step of a result.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Scaling {
    /// $01: a count, step 1.
    Count,
    /// $0A: volts, step 0.122 mV.
    FineVolts,
    /// $0C: volts, step 0.01 V.
    Volts,
    /// $0E: amperes, step 0.001 A.
    Amperes,
    /// $10: seconds, step 0.001 s.
    Milliseconds,
    /// $12: seconds, step 1 s.
    Seconds,
    /// $1C: degrees, step 0.01°, not below 0.
    Degrees,
    /// $20: a ratio, step 1/256.
    Ratio,
    /// $24: a count, step 1.
    Counts,
    /// $2F: per cent, step 0.01 %.
    Percent,
    /// $85: a signed ratio, step 0.0000305.
    SignedRatio,
    /// $9C: signed degrees, step 0.01°.
    SignedDegrees,
}

impl Scaling {
    /// Every scaling that is known here.
    pub const ALL: [Self; 12] = [
        Self::Count,
        Self::FineVolts,
        Self::Volts,
        Self::Amperes,
        Self::Milliseconds,
        Self::Seconds,
        Self::Degrees,
        Self::Ratio,
        Self::Counts,
        Self::Percent,
        Self::SignedRatio,
        Self::SignedDegrees,
    ];

    /// Its number.
    #[must_use]
    pub const fn number(self) -> u8 {
        match self {
            Self::Count => 0x01,
            Self::FineVolts => 0x0A,
            Self::Volts => 0x0C,
            Self::Amperes => 0x0E,
            Self::Milliseconds => 0x10,
            Self::Seconds => 0x12,
            Self::Degrees => 0x1C,
            Self::Ratio => 0x20,
            Self::Counts => 0x24,
            Self::Percent => 0x2F,
            Self::SignedRatio => 0x85,
            Self::SignedDegrees => 0x9C,
        }
    }

    /// The scaling of a number.
    #[must_use]
    pub fn of_number(number: u8) -> Option<Self> {
        Self::ALL.into_iter().find(|scaling| scaling.number() == number)
    }

    /// Difference between two neighbouring values \[V, A, s, degrees, % or 1\].
    #[must_use]
    pub const fn step(self) -> f64 {
        match self {
            Self::Count | Self::Seconds | Self::Counts => 1.0,
            Self::FineVolts => 0.000_122,
            Self::Volts | Self::Degrees | Self::Percent | Self::SignedDegrees => 0.01,
            Self::Amperes | Self::Milliseconds => 0.001,
            Self::Ratio => 1.0 / 256.0,
            Self::SignedRatio => 0.000_030_5,
        }
    }

    /// Whether values below zero can be told: numbers from $80 up.
    #[must_use]
    pub const fn is_signed(self) -> bool {
        self.number() >= 0x80
    }

    /// The two bytes of a value as a number: the nearest that can be told.
    #[must_use]
    pub fn encode(self, value: f64) -> u16 {
        let steps = (value / self.step()).round();
        if self.is_signed() {
            let bounded = to_i64(steps).clamp(i64::from(i16::MIN), i64::from(i16::MAX));
            i16::try_from(bounded).unwrap_or(0).cast_unsigned()
        } else {
            u16::try_from(to_u32(steps)).unwrap_or(u16::MAX)
        }
    }

    /// The value of two bytes.
    #[must_use]
    pub fn decode(self, word: u16) -> f64 {
        let steps = if self.is_signed() { f64::from(word.cast_signed()) } else { f64::from(word) };
        match self {
            // A quotient gives the number that the decimal reads as.
            Self::Volts | Self::Degrees | Self::Percent | Self::SignedDegrees => steps / 100.0,
            Self::Amperes | Self::Milliseconds => steps / 1000.0,
            _ => steps * self.step(),
        }
    }
}

/// One result as it stands in a message.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct TestResult {
    /// Monitor.
    pub monitor: u8,
    /// Test.
    pub test: u8,
    /// Number of the unit and scaling.
    pub scaling: u8,
    /// Value, least and most, scaled.
    pub words: [u16; 3],
}

/// A result's value between its limits, in the unit of its scaling.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Scaled {
    /// Unit and step.
    pub scaling: Scaling,
    /// Value.
    pub value: f64,
    /// Least value that passes.
    pub least: f64,
    /// Most value that passes.
    pub most: f64,
}

impl Scaled {
    /// Whether the value lies within its limits.
    #[must_use]
    pub fn passes(&self) -> bool {
        (self.least..=self.most).contains(&self.value)
    }
}

/// Bytes of one result.
const BYTES: usize = 9;

impl TestResult {
    /// A result of a monitor that has run, or the zeros of one that has not.
    #[must_use]
    pub fn new(monitor: u8, test: u8, scaling: Scaling, told: Option<(f64, f64, f64)>) -> Self {
        let words = told.map_or([0; 3], |(value, least, most)| {
            [value, least, most].map(|number| scaling.encode(number))
        });
        Self { monitor, test, scaling: scaling.number(), words }
    }

    /// Whether the monitor has run since the codes were cleared: not all three are zero.
    #[must_use]
    pub fn has_run(&self) -> bool {
        self.words != [0; 3]
    }

    /// Its numbers in their unit; `None` for a monitor that has not run or an unknown scaling.
    #[must_use]
    pub fn scaled(&self) -> Option<Scaled> {
        let scaling = Scaling::of_number(self.scaling).filter(|_| self.has_run())?;
        let [value, least, most] = self.words.map(|word| scaling.decode(word));
        Some(Scaled { scaling, value, least, most })
    }
}

/// The data of a reply with results.
#[must_use]
pub fn encode(results: &[TestResult]) -> Vec<u8> {
    results
        .iter()
        .flat_map(|result| {
            let head = [result.monitor, result.test, result.scaling];
            head.into_iter().chain(result.words.into_iter().flat_map(u16::to_be_bytes))
        })
        .collect()
}

/// The results of a reply.
///
/// # Errors
/// [`ReplyFault`] when it ends within a result or has none.
pub fn decode(data: &[u8]) -> Result<Vec<TestResult>, ReplyFault> {
    let results = data.chunks_exact(BYTES);
    if data.is_empty() || !results.remainder().is_empty() {
        return Err(malformed(Service::TestResults, data.len()));
    }
    Ok(results
        .map(|bytes| TestResult {
            monitor: bytes[0],
            test: bytes[1],
            scaling: bytes[2],
            words: [3, 5, 7].map(|at| word(bytes[at], bytes[at + 1])),
        })
        .collect())
}
