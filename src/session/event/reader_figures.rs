//! What a code reader shows in figures.

use crate::control_module::code::Code;
use crate::control_module::test_result::Measure;
use crate::instruments::code_reader::LiveItem;
use crate::vehicle::spec::Id;
use serde::{Deserialize, Serialize};

/// A snapshot of what the module senses, in people's units, rounded as the reader shows them.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Frame {
    /// Engine speed [rpm].
    pub rpm: f64,
    /// Load [%].
    pub load: f64,
    /// Road speed [km/h].
    pub speed: f64,
    /// Coolant [°C].
    pub coolant: f64,
    /// Oil [°C].
    pub oil: f64,
    /// Supply [V].
    pub supply: f64,
    /// The code that stored the frame; `None` for live data.
    pub code: Option<Code>,
}

/// One chosen value.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct LiveValue {
    /// What was chosen.
    pub item: LiveItem,
    /// Its value in people's units, rounded as the reader shows it; `None` where the module has none.
    pub value: Option<f64>,
}

/// One test of a monitor.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct TestReading {
    /// The code that the test can set.
    pub code: Code,
    /// What is measured.
    pub measure: Measure,
    /// The last result; `None` where the test has not run since the clear.
    pub figures: Option<TestFigures>,
}

/// A result between its limits [s, or a share from 0 to 1].
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct TestFigures {
    /// Value.
    pub value: f64,
    /// Least value that passes.
    pub least: f64,
    /// Most value that passes.
    pub most: f64,
    /// Whether it passes.
    pub passes: bool,
}

/// Counters beside readiness; `None` where the module does not have one.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct CounterReading {
    /// Warm-ups since the clear.
    pub warm_ups: Option<f64>,
    /// Distance since the clear [km].
    pub distance: Option<f64>,
    /// Time with the engine running since the clear [min].
    pub time: Option<f64>,
    /// Distance with the lamp on [km].
    pub lamp_distance: Option<f64>,
    /// Time with the engine running and the lamp on [min].
    pub lamp_time: Option<f64>,
}

/// One camshaft in live data.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct CamData {
    /// Valve's place.
    pub valve: Id,
    /// Wanted position [crank degrees from rest].
    pub wanted: f64,
    /// Actual position [crank degrees from rest].
    pub actual: f64,
    /// Duty [%].
    pub duty: f64,
}

/// One camshaft over a drive, as a passenger reads it from live data.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct CamDrive {
    /// Valve's place.
    pub valve: Id,
    /// Mean distance between wanted and actual [crank degrees].
    pub mean_error: f64,
    /// Greatest position reached [crank degrees from rest].
    pub furthest: f64,
}
