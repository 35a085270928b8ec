//! What has become of a vehicle: the physical parameters that wear, dirt and damage change.

use super::diagnostic_link::LinkCondition;
use super::spec::{Id, ValvePart, VehicleSpec};
use crate::physics::coil::Winding;
use crate::units::{Celsius, Ohms};
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

/// The state of everything that can go wrong, as physical parameters.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Condition {
    /// Extra series resistance of a wiring element [ohm]; absent means none.
    pub extra_ohms: BTreeMap<Id, f64>,
    /// Resistance from an element's supply-side end to engine ground where its insulation has
    /// rubbed through [ohm]; absent means none.
    pub leak_to_ground_ohms: BTreeMap<Id, f64>,
    /// Resistance between a control wire and the feed of its own valve beside it in the loom, where
    /// the insulation of both has rubbed through [ohm]; absent means none.
    #[serde(default, skip_serializing_if = "BTreeMap::is_empty")]
    pub leak_to_supply_ohms: BTreeMap<Id, f64>,
    /// Extra contact resistance of a pin whose terminal was spread [ohm]; absent means none.
    #[serde(default, skip_serializing_if = "BTreeMap::is_empty")]
    pub spread_ohms: BTreeMap<Id, f64>,
    /// Pins whose contact comes and goes.
    #[serde(default, skip_serializing_if = "BTreeMap::is_empty")]
    pub loose: BTreeMap<Id, LooseContact>,
    /// The valve in each place.
    pub valves: BTreeMap<Id, FittedValve>,
    /// The oil.
    pub oil: OilFill,
    /// State of charge of the battery, 0 to 1.
    pub battery_charge: f64,
    /// The diagnostic socket and its wires.
    pub link: LinkCondition,
}

/// A contact that opens by itself: when it is shaken, when it is hot, or both.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct LooseContact {
    /// How often it opens under full vibration at 20 °C [1/s], 0 or more.
    pub openings_per_s: f64,
    /// Temperature of the engine from which it stays open; `None` for one that heat leaves alone.
    pub open_from: Option<Celsius>,
}

/// A valve with its seal, as fitted in a place or lying on the bench.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct FittedValve {
    /// Part number.
    pub part_number: Id,
    /// Winding with its damage.
    pub winding: Winding,
    /// Share of the screen's area that is blocked, 0 to below 1.
    pub screen_blocked: f64,
    /// Static friction of the spool [N].
    pub stiction_n: f64,
    /// The seal.
    pub seal: Seal,
}

/// A valve's seal.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum Seal {
    /// New, or in place since the factory.
    Good,
    /// Was squeezed once and put back again: may weep.
    Reused,
    /// Torn.
    Torn,
}

/// The oil in the engine.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct OilFill {
    /// Volume [l].
    pub litres: f64,
    /// Hours since it was changed, which the eye sees as darkness.
    pub hours: f64,
}

/// Friction of a clean spool [N]: engineering estimate.
pub const CLEAN_STICTION_N: f64 = 0.1;

impl FittedValve {
    /// A new valve of a part number, with a winding at `spread` times its nominal resistance.
    #[must_use]
    pub fn new(part: &ValvePart, spread: f64) -> Self {
        Self {
            part_number: part.part_number.clone(),
            winding: Winding {
                ohms_at_20: Ohms(part.ohms_at_20 * spread),
                turns: part.turns,
                shorted_share: 0.0,
                joint: Ohms(0.0),
            },
            screen_blocked: 0.0,
            stiction_n: CLEAN_STICTION_N,
            seal: Seal::Good,
        }
    }
}

impl FittedValve {
    /// The same valve before anything was wrong with it.
    #[must_use]
    pub fn before_damage(&self) -> Self {
        Self {
            part_number: self.part_number.clone(),
            winding: Winding { shorted_share: 0.0, joint: Ohms(0.0), ..self.winding },
            screen_blocked: 0.0,
            stiction_n: CLEAN_STICTION_N,
            seal: Seal::Good,
        }
    }
}

impl Condition {
    /// A sound vehicle with factory parts at their nominal values and oil at the upper mark.
    #[must_use]
    pub fn sound(spec: &VehicleSpec) -> Self {
        let valves = spec
            .valves
            .iter()
            .filter_map(|place| {
                let part = spec.valve_part(&place.part_number)?;
                Some((place.id.clone(), FittedValve::new(part, 1.0)))
            })
            .collect();
        Self {
            extra_ohms: BTreeMap::new(),
            leak_to_ground_ohms: BTreeMap::new(),
            leak_to_supply_ohms: BTreeMap::new(),
            spread_ohms: BTreeMap::new(),
            loose: BTreeMap::new(),
            valves,
            oil: OilFill { litres: spec.sump.full_litres, hours: 60.0 },
            battery_charge: 0.95,
            link: LinkCondition::SOUND,
        }
    }
}
