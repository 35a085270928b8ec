//! What the counter sells besides the maker's own valves, and how long a part takes to come.
//!
//! A part of another grade is a valve like any other: how it was made and worn are physical figures, and what comes of
//! it shows on the bench and on the road.

use crate::session::setup::Prices;
use crate::units::{Minutes, Money, Ohms};
use crate::vehicle::condition::{CLEAN_STICTION_N, FittedValve};
use crate::vehicle::spec::{Id, ValvePart, VehicleSpec};
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

/// Where a part comes from that is not the maker's own. The words are the trade's (common practice, no source).
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(test, derive(schemars::JsonSchema))]
pub enum PartGrade {
    /// New, made by somebody else to the same pattern.
    Pattern,
    /// Out of another vehicle.
    Used,
}

/// What the counter has besides the maker's own parts at once.
#[derive(Debug, Clone, PartialEq, Default, Serialize, Deserialize)]
#[cfg_attr(test, derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields, default)]
pub struct Shelf {
    /// What an hour costs in which the vehicle waits for a part and blocks the bay.
    pub waiting_per_hour: Money,
    /// How long the maker's own part takes to come, by its part number [min]; none where it lies there.
    pub waits: BTreeMap<Id, Minutes>,
    /// Further parts, by the number under which the counter has them; none is a part number of the vehicle.
    pub others: BTreeMap<Id, OtherPart>,
}

impl Shelf {
    /// Whether there is nothing but the maker's own parts, at once.
    #[must_use]
    pub fn is_plain(&self) -> bool {
        *self == Self::default()
    }
}

/// A part that takes the place of one of the maker's.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(test, derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct OtherPart {
    /// Part number of the vehicle that it stands for: it fits where that one fits.
    pub stands_for: Id,
    /// Where it comes from.
    pub grade: PartGrade,
    /// Price.
    pub price: Money,
    /// How long it takes to come [min].
    #[serde(default)]
    pub wait: Minutes,
    /// Resistance of its winding against the nominal of the part that it stands for.
    #[serde(default = "as_nominal")]
    pub resistance: f64,
    /// Share of its screen's area that is blocked.
    #[serde(default)]
    pub screen_blocked: f64,
    /// Static friction of its spool; a clean one has 0.1 [N].
    #[serde(default = "as_clean")]
    pub stiction_n: f64,
}

const fn as_nominal() -> f64 {
    1.0
}

const fn as_clean() -> f64 {
    CLEAN_STICTION_N
}

/// A part that can be had, with everything the counter says of it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Offer<'a> {
    /// The maker's part that it is or stands for.
    pub part: &'a ValvePart,
    /// Where it comes from; `None` for the maker's own.
    pub grade: Option<PartGrade>,
    /// Price.
    pub price: Money,
    /// How long it takes to come.
    pub wait: Minutes,
    other: Option<&'a OtherPart>,
}

impl<'a> Offer<'a> {
    /// The part of that number, if the vehicle has it or the counter sells one.
    #[must_use]
    pub fn of(
        number: &Id,
        spec: &'a VehicleSpec,
        prices: &Prices,
        shelf: &'a Shelf,
    ) -> Option<Self> {
        if let Some(other) = shelf.others.get(number) {
            let OtherPart { grade, price, wait, .. } = *other;
            let part = spec.valve_part(&other.stands_for)?;
            return Some(Self { part, grade: Some(grade), price, wait, other: Some(other) });
        }
        Some(Self {
            part: spec.valve_part(number)?,
            grade: None,
            price: prices.valves.get(number).copied().unwrap_or_default(),
            wait: shelf.waits.get(number).copied().unwrap_or_default(),
            other: None,
        })
    }

    /// The valve as it lies on the counter.
    #[must_use]
    pub fn valve(&self) -> FittedValve {
        let mut valve = FittedValve::new(self.part, 1.0);
        if let Some(other) = self.other {
            valve.winding.ohms_at_20 = Ohms(valve.winding.ohms_at_20.0 * other.resistance);
            valve.screen_blocked = other.screen_blocked;
            valve.stiction_n = other.stiction_n;
        }
        valve
    }

    /// What it costs, with the bay for as long as it takes to come.
    #[must_use]
    pub fn money(&self, shelf: &Shelf) -> Money {
        self.price + self.wait.at_rate(shelf.waiting_per_hour)
    }
}
