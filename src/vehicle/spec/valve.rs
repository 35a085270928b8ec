//! Valves and the parts that fit in their place.

use super::id::Id;
use crate::control_module::code::Code;
use crate::control_module::code_family::Bank;
use crate::physics::actuator::Actuator;
use crate::vehicle::per_bank::CamPlace;
use crate::vehicle::per_cam::Cam;
use serde::{Deserialize, Serialize};

/// The place of a valve on the engine.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(test, derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct ValveSpec {
    /// Name of the place and of the part in the access list.
    pub id: Id,
    /// Bank of cylinders; an engine in line has bank one alone and need not say so.
    #[serde(default)]
    pub bank: Bank,
    /// Camshaft of that bank.
    pub cam: Cam,
    /// Part number fitted at the factory.
    pub part_number: Id,
    /// Its connector.
    pub connector: Id,
    /// Codes that the module keeps for it.
    pub codes: ValveCodes,
}

impl ValveSpec {
    /// The camshaft that it moves.
    #[must_use]
    pub const fn camshaft(&self) -> CamPlace {
        self.cam.on(self.bank)
    }
}

/// Codes of one valve and its camshaft, by what they mean (SAE J2012).
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(test, derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct ValveCodes {
    /// Actuator circuit, open.
    pub open: Code,
    /// Control circuit low.
    pub low: Code,
    /// Control circuit high.
    pub high: Code,
    /// Timing over-advanced or system performance.
    pub advanced: Code,
    /// Timing over-retarded.
    pub retarded: Code,
    /// Slow response.
    pub slow: Code,
    /// Crankshaft and camshaft correlation.
    pub correlation: Code,
}

impl ValveCodes {
    /// All of them.
    #[must_use]
    pub const fn all(&self) -> [Code; 7] {
        [self.open, self.low, self.high, self.advanced, self.retarded, self.slow, self.correlation]
    }
}

/// A part that fits a valve's place, with its data-sheet window.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(test, derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct ValvePart {
    /// Part number.
    pub part_number: Id,
    /// Nominal winding resistance at 20 °C [ohm].
    pub ohms_at_20: f64,
    /// Lower limit of the data sheet at 20 °C [ohm].
    pub ohms_least: f64,
    /// Upper limit of the data sheet at 20 °C [ohm].
    pub ohms_most: f64,
    /// Turns of the winding relative to the reference winding of the solenoid model: force grows
    /// with turns times current, inductance with their square.
    pub turns: f64,
    /// Magnetic circuit, spool and spring; a file may leave out what is as in the reference valve.
    #[serde(default)]
    pub actuator: Actuator,
    /// Positions that it fits.
    pub fits: Vec<Id>,
}
