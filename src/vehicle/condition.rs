//! What has become of a vehicle: the physical parameters that wear, dirt and damage change.

use super::diagnostic_link::LinkCondition;
use super::spec::{Id, ValvePart, VehicleSpec};
use crate::control_module::code::Code;
use crate::physics::coil::Winding;
use crate::physics::oil::{self, Grade, Oil, Service};
use crate::units::{Celsius, Ohms};
use serde::{Deserialize, Serialize};
use std::collections::{BTreeMap, BTreeSet};

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
    /// Codes of faults that are present in what is not simulated, such as a leak of fuel vapour.
    #[serde(default, skip_serializing_if = "BTreeSet::is_empty")]
    pub present_elsewhere: BTreeSet<Code>,
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
    /// Volume at 20 °C, fuel included [l].
    pub litres: f64,
    /// Grade that was filled in.
    pub grade: Grade,
    /// Another grade that is mixed in, with its share of the volume, 0 to 1.
    pub other: Option<(Grade, f64)>,
    /// Engine hours since it was changed, which the eye sees as darkness.
    pub hours: f64,
    /// Its mean temperature in those hours [°C].
    pub mean_c: f64,
    /// Share of those hours in which it did not get warm, 0 to 1.
    pub cold_share: f64,
    /// Share of fuel in the volume, 0 to 0.2.
    pub fuel_share: f64,
}

/// Mean temperature of the oil in ordinary use [°C], and share of the hours that are short trips
/// (engineering estimates).
const ORDINARY_MEAN_C: f64 = 95.0;
/// See [`ORDINARY_MEAN_C`].
const ORDINARY_COLD_SHARE: f64 = 0.3;
/// How much stiffer than clean oil the film around a spool is in the worst sludge, on top of one:
/// engineering estimate.
const FILM_WITH_SLUDGE: f64 = 2.0;
/// Share of the old oil that stays in galleries, filter housing and corners when it is drained:
/// engineering estimate.
const LEFT_AFTER_DRAINING: f64 = 0.06;

impl OilFill {
    /// Oil of a grade in ordinary use, some hours old.
    #[must_use]
    pub const fn in_use(litres: f64, grade: Grade, hours: f64) -> Self {
        Self {
            litres,
            grade,
            other: None,
            hours,
            mean_c: ORDINARY_MEAN_C,
            cold_share: ORDINARY_COLD_SHARE,
            fuel_share: 0.0,
        }
    }

    /// What it has been through.
    #[must_use]
    pub const fn service(&self) -> Service {
        Service {
            hours: self.hours,
            mean_c: self.mean_c,
            cold_share: self.cold_share,
            fuel_share: self.fuel_share,
        }
    }

    /// Its viscosities and density now.
    #[must_use]
    pub fn oil(&self) -> Oil {
        oil::in_service(self.grade, self.other, &self.service())
    }

    /// How much sludge it carries, from 0 (clean) to 1.
    #[must_use]
    pub fn sludge(&self) -> f64 {
        self.service().sludge(self.grade.base())
    }

    /// How many times as stiff as clean oil its film around a spool is, 1 to 3.
    #[must_use]
    pub fn film_factor(&self) -> f64 {
        1.0 + FILM_WITH_SLUDGE * self.sludge()
    }

    /// Fresh oil of a grade is poured on top: age and fuel thin out by volume.
    pub fn pour(&mut self, grade: Grade, litres: f64) {
        let after_l = self.litres + litres;
        if litres <= 0.0 || after_l <= 0.0 {
            return;
        }
        let old = self.litres / after_l;
        self.hours *= old;
        self.fuel_share *= old;
        // Of three oils in one sump the model keeps two: what is the same, and all the rest.
        let same_before = self.other.map_or(1.0, |(_, share)| 1.0 - share);
        let of_main = same_before * old + if grade == self.grade { 1.0 - old } else { 0.0 };
        let other = self.other.map_or(grade, |(other, _)| other);
        self.other = (of_main < 1.0).then_some((other, 1.0 - of_main));
        self.litres = after_l;
    }

    /// The oil is drained and fresh oil of a grade filled in; a little of the old stays behind.
    pub fn change(&mut self, grade: Grade, litres: f64) {
        let old = *self;
        let own_share = old.other.map_or(1.0, |(_, share)| 1.0 - share);
        *self = Self::in_use(litres, grade, old.hours * LEFT_AFTER_DRAINING);
        self.fuel_share = old.fuel_share * LEFT_AFTER_DRAINING;
        let strange = if old.grade == grade {
            old.other.map(|(other, share)| (other, share * LEFT_AFTER_DRAINING))
        } else {
            Some((old.grade, own_share * LEFT_AFTER_DRAINING))
        };
        self.other = strange.filter(|(other, _)| *other != grade);
    }
}

/// Hours since its oil was changed of a vehicle of which nothing else is known: engineering estimate.
const SOUND_OIL_HOURS: f64 = 60.0;
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
            oil: OilFill::in_use(spec.sump.full_litres, spec.oil.grade, SOUND_OIL_HOURS),
            battery_charge: 0.95,
            link: LinkCondition::SOUND,
            present_elsewhere: BTreeSet::new(),
        }
    }
}
