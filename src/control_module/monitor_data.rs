//! What the module's monitors compare with and what follows, as one section of a vehicle's file.

use crate::control_module::circuit_limits::CircuitLimits;
use crate::control_module::known_code::{KnownCode, PermanentRule, Trips};
use crate::control_module::oil_pressure_monitor::OilPressureLimits;
use crate::control_module::performance_limits::PerformanceLimits;
use crate::control_module::supply_monitor::SupplyLimits;
use serde::{Deserialize, Serialize};

/// The monitors of a vehicle's module. What a file does not say is as shipped; each figure's source
/// stands at its field.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize)]
#[cfg_attr(test, derive(schemars::JsonSchema))]
#[serde(default, deny_unknown_fields)]
pub struct MonitorData {
    /// Circuits of the valves' drivers.
    pub circuit: CircuitLimits,
    /// Performance of the camshafts, the same for both.
    pub camshaft: PerformanceLimits,
    /// The supply; a module without this monitor says nothing of it.
    pub supply: Option<SupplyLimits>,
    /// Oil pressure; a module without this monitor says nothing of it.
    pub oil_pressure: Option<OilPressureLimits>,
    /// What follows when a monitor fails.
    pub consequences: Consequences,
}

/// What follows from a failure, for each family of codes.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(test, derive(schemars::JsonSchema))]
#[serde(default, deny_unknown_fields)]
pub struct Consequences {
    /// Circuit codes. Shipped: one trip, with the lamp (assumed: makers may confirm at the first
    /// detection; the general rule is two, 13 CCR 1968.2 (d)(2.2), from memory).
    pub circuit: Consequence,
    /// Performance codes of the camshafts. Shipped: two trips, with the lamp (the general rule).
    pub camshaft: Consequence,
    /// Codes of the supply. Shipped: two trips, without the lamp (assumed: not related to emissions).
    pub supply: Consequence,
    /// Codes of the oil pressure. Shipped: one trip, without the lamp, which is the oil lamp's task
    /// (assumed).
    pub oil_pressure: Consequence,
}

/// What follows from a failure.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(test, derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Consequence {
    /// In how many driving cycles it must be found.
    pub trips: Trips,
    /// Whether the warning lamp is lit then.
    pub lights_lamp: bool,
    /// What its permanent code asks for after a clear.
    #[serde(default)]
    pub permanent: PermanentRule,
}

impl Consequence {
    const fn new(trips: Trips, lights_lamp: bool) -> Self {
        Self { trips, lights_lamp, permanent: PermanentRule::OnePass }
    }

    /// A code's rule with this consequence.
    #[must_use]
    pub const fn on(self, known: KnownCode) -> KnownCode {
        KnownCode {
            trips: self.trips,
            lights_lamp: self.lights_lamp,
            permanent: self.permanent,
            ..known
        }
    }
}

impl Default for Consequences {
    fn default() -> Self {
        Self {
            circuit: Consequence::new(Trips::One, true),
            camshaft: Consequence::new(Trips::Two, true),
            supply: Consequence::new(Trips::Two, false),
            oil_pressure: Consequence::new(Trips::One, false),
        }
    }
}

/// A figure of the monitors' data that cannot be used.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
#[error("checking the monitors: {section}.{field} must be {expected}")]
pub struct DataFault {
    /// The part of the section.
    pub section: &'static str,
    /// The field.
    pub field: &'static str,
    /// What it must be.
    pub expected: &'static str,
}

impl MonitorData {
    /// Checks each figure against its range and its neighbours.
    ///
    /// # Errors
    /// The first figure that cannot be used.
    pub fn check(&self) -> Result<(), DataFault> {
        let circuit =
            self.circuit.check().err().map(|fault| ("circuit", (fault.field, fault.expected)));
        let camshaft = || self.camshaft.wrong().map(|fault| ("camshaft", fault));
        let supply =
            || self.supply.and_then(|limits| limits.wrong()).map(|fault| ("supply", fault));
        let oil = || {
            self.oil_pressure.and_then(|limits| limits.wrong()).map(|fault| ("oil_pressure", fault))
        };
        match circuit.or_else(camshaft).or_else(supply).or_else(oil) {
            Some((section, (field, expected))) => Err(DataFault { section, field, expected }),
            None => Ok(()),
        }
    }
}
