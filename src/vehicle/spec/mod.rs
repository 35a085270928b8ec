//! What a vehicle is made of: plain data, read from a file by the scenario reader.

mod access;
mod elements;
mod harness;
mod id;
mod module;
mod oil;
mod topology;
mod valve;

use crate::control_module::code::Code;
use crate::control_module::code_family::Bank;
use crate::control_module::oil_pressure_monitor::OilPressureMonitor;
use crate::control_module::supply_monitor::SupplyMonitor;
use crate::physics::actuator::Actuator;
use serde::{Deserialize, Serialize};
use std::collections::BTreeSet;

pub use access::{Care, PartKind, PartSpec, TestPointSpec};
pub use elements::{Elements, Numbering};
pub use harness::{HarnessElement, HarnessSpec, LoadOhms};
pub use id::Id;
pub use module::ModuleSpec;
pub use oil::{GaugeTap, OilSpec};
pub use valve::{ValveCodes, ValvePart, ValveSpec};

/// A vehicle as built.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(test, derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct VehicleSpec {
    /// Name of the vehicle; invented.
    pub name: String,
    /// Model year, for the job sheet.
    pub year: u16,
    /// Engine in a few words, for the job sheet.
    pub engine: String,
    /// Cylinders, 3 to 8, of a V engine an even number; one that does not say has four.
    #[serde(default = "in_line_four")]
    pub cylinders: u8,
    /// Oil sump and dipstick.
    pub sump: SumpSpec,
    /// Its grade of oil, and where oil pressure is measured.
    #[serde(default)]
    pub oil: OilSpec,
    /// Places of valves.
    pub valves: Vec<ValveSpec>,
    /// Parts that fit those places.
    pub valve_parts: Vec<ValvePart>,
    /// Parts that come off.
    pub parts: Vec<PartSpec>,
    /// Where probes can touch.
    pub test_points: Vec<TestPointSpec>,
    /// The wiring.
    pub harness: HarnessSpec,
    /// The control module's data.
    #[serde(default)]
    pub module: ModuleSpec,
    /// Longest pulse from an outside source that the data sheet allows on a valve [s]; `None`
    /// where it forbids any.
    pub longest_power: Option<f64>,
}

const fn in_line_four() -> u8 {
    4
}

/// The sump as the dipstick shows it.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(test, derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct SumpSpec {
    /// Oil at the upper mark [l].
    pub full_litres: f64,
    /// Oil at the lower mark [l].
    pub least_litres: f64,
}

impl VehicleSpec {
    /// Every code whose monitor the module has; others come from elsewhere.
    #[must_use]
    pub fn own_codes(&self) -> BTreeSet<Code> {
        let monitors = &self.module.monitors;
        let supply = monitors.supply.map(|_| SupplyMonitor::CODES);
        let oil_pressure = monitors.oil_pressure.map(|_| OilPressureMonitor::CODES);
        let others = supply.into_iter().flatten().chain(oil_pressure.into_iter().flatten());
        self.valves.iter().flat_map(|valve| valve.codes.all()).chain(others).collect()
    }

    /// Whether it is a V engine: some valve stands on the second bank.
    #[must_use]
    pub fn has_two_banks(&self) -> bool {
        self.valves.iter().any(|valve| valve.bank == Bank::Two)
    }

    /// The valve place of that name.
    #[must_use]
    pub fn valve(&self, id: &Id) -> Option<&ValveSpec> {
        self.valves.iter().find(|valve| valve.id == *id)
    }

    /// The part of that name.
    #[must_use]
    pub fn part(&self, id: &Id) -> Option<&PartSpec> {
        self.parts.iter().find(|part| part.id == *id)
    }

    /// The test point of that name.
    #[must_use]
    pub fn test_point(&self, id: &Id) -> Option<&TestPointSpec> {
        self.test_points.iter().find(|point| point.id == *id)
    }

    /// The valve part of that number.
    #[must_use]
    pub fn valve_part(&self, number: &Id) -> Option<&ValvePart> {
        self.valve_parts.iter().find(|part| part.part_number == *number)
    }

    /// Magnetics and mechanics of a valve of a part number; the reference valve for a part that is not listed.
    #[must_use]
    pub fn actuator_of(&self, number: &Id) -> Actuator {
        self.valve_part(number).map_or(Actuator::REFERENCE, |part| part.actuator)
    }

    /// The wiring element of that name.
    #[must_use]
    pub fn element(&self, id: &Id) -> Option<&HarnessElement> {
        self.harness.elements.iter().find(|element| element.id() == id)
    }
}
