//! The wiring as data: elements between named nodes.

use super::elements::Elements;
use super::id::Id;
use crate::control_module::driver_side::DriverSide;
use serde::{Deserialize, Serialize};

/// The wiring of a vehicle. Nodes are known by their names; the node `battery-minus` is the
/// reference of all voltages.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(test, derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct HarnessSpec {
    /// Every element; order is free.
    pub elements: Elements,
}

/// Resistance of a consumer by the state of the vehicle [ohm].
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(test, derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct LoadOhms {
    /// Key off [ohm].
    pub key_off: f64,
    /// Key on, engine stopped [ohm].
    pub key_on: f64,
    /// Engine running [ohm], where that differs from key on: ignition, fuel pump, fans and lamps
    /// load the alternator more than they load the battery at key on.
    #[serde(default)]
    pub running: Option<f64>,
}

/// One element of the wiring.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(test, derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub enum HarnessElement {
    /// The battery: open-circuit voltage by charge, internal resistance by temperature.
    Battery {
        /// Name.
        id: Id,
        /// Positive post.
        plus: Id,
        /// Negative post.
        minus: Id,
    },
    /// The alternator with its regulator; gives current only while the engine runs.
    Alternator {
        /// Name.
        id: Id,
        /// Output.
        plus: Id,
        /// Housing.
        minus: Id,
    },
    /// The starter; takes current only while it turns the engine.
    Starter {
        /// Name.
        id: Id,
        /// Supply.
        plus: Id,
        /// Housing.
        minus: Id,
    },
    /// A wire or a cable.
    Wire {
        /// Name; faults are placed by it.
        id: Id,
        /// End nearer the battery.
        from: Id,
        /// Other end.
        to: Id,
        /// Resistance [ohm].
        ohms: f64,
    },
    /// A wire that is known by its length and cross section; its resistance follows from them.
    Cable {
        /// Name; faults are placed by it.
        id: Id,
        /// End nearer the battery.
        from: Id,
        /// Other end.
        to: Id,
        /// Length of the conductor [m], 0.2 to 30.
        metres: f64,
        /// Nominal cross section [mm²], 0.2 to 35.
        mm2: f64,
    },
    /// A blade fuse.
    Fuse {
        /// Name.
        id: Id,
        /// Supply side.
        from: Id,
        /// Protected side.
        to: Id,
        /// Cold resistance [ohm].
        ohms: f64,
        /// Rating [A].
        rating: f64,
    },
    /// A relay contact that closes with the key.
    RelayContact {
        /// Name.
        id: Id,
        /// Supply side.
        from: Id,
        /// Switched side.
        to: Id,
        /// Resistance when closed [ohm].
        ohms: f64,
    },
    /// One pair of contacts of a connector.
    Pin {
        /// Name.
        id: Id,
        /// Connector that it is part of.
        connector: Id,
        /// Harness side.
        from: Id,
        /// Component side.
        to: Id,
        /// Contact resistance when healthy and plugged [ohm].
        ohms: f64,
    },
    /// The coil of a valve.
    Coil {
        /// Name.
        id: Id,
        /// Position of the valve whose coil it is.
        valve: Id,
        /// Feed side.
        from: Id,
        /// Control side.
        to: Id,
    },
    /// A driver inside the control module, with its current sense resistor, freewheel diode and the
    /// bias network by which the module senses the pin. Files that know the low side alone call it by
    /// its old name.
    #[serde(alias = "LowSideDriver")]
    Driver {
        /// Name.
        id: Id,
        /// Position of the valve that it drives.
        valve: Id,
        /// On which side of the valve its switch sits.
        #[serde(default)]
        side: DriverSide,
        /// The module's pin.
        pin: Id,
        /// Supply node: the module's own for a low-side driver (cathode of its freewheel diode), what the
        /// switch hands on for a high-side driver, which may have a feed of its own.
        supply: Id,
        /// Ground node of the module.
        ground: Id,
        /// Resistance of the closed switch [ohm].
        on_ohms: f64,
        /// Resistance of the open switch [ohm].
        off_ohms: f64,
        /// Current sense resistor [ohm].
        sense_ohms: f64,
        /// Each of the two bias resistors [ohm].
        bias_ohms: f64,
    },
    /// The module's own consumption and its regulated 5 V supply.
    ModuleSupply {
        /// Name.
        id: Id,
        /// Supply node of the module.
        supply: Id,
        /// Ground node of the module.
        ground: Id,
        /// The regulated rail.
        rail: Id,
        /// Consumption as a resistance.
        load: LoadOhms,
    },
    /// Another consumer.
    Load {
        /// Name.
        id: Id,
        /// Supply side.
        from: Id,
        /// Return.
        to: Id,
        /// Consumption as a resistance.
        load: LoadOhms,
    },
}

impl HarnessElement {
    /// The element's name.
    #[must_use]
    pub const fn id(&self) -> &Id {
        match self {
            Self::Battery { id, .. }
            | Self::Alternator { id, .. }
            | Self::Starter { id, .. }
            | Self::Wire { id, .. }
            | Self::Cable { id, .. }
            | Self::Fuse { id, .. }
            | Self::RelayContact { id, .. }
            | Self::Pin { id, .. }
            | Self::Coil { id, .. }
            | Self::Driver { id, .. }
            | Self::ModuleSupply { id, .. }
            | Self::Load { id, .. } => id,
        }
    }

    /// The nodes that the element touches.
    #[must_use]
    pub fn nodes(&self) -> Vec<&Id> {
        match self {
            Self::Battery { plus, minus, .. }
            | Self::Alternator { plus, minus, .. }
            | Self::Starter { plus, minus, .. } => {
                vec![plus, minus]
            }
            Self::Wire { from, to, .. }
            | Self::Cable { from, to, .. }
            | Self::Fuse { from, to, .. }
            | Self::RelayContact { from, to, .. }
            | Self::Pin { from, to, .. }
            | Self::Coil { from, to, .. }
            | Self::Load { from, to, .. } => vec![from, to],
            Self::Driver { pin, supply, ground, .. } => vec![pin, supply, ground],
            Self::ModuleSupply { supply, ground, rail, .. } => vec![supply, ground, rail],
        }
    }
}
