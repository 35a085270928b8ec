//! What is taken off and unplugged, and what is in the way.

use super::spec::{Id, PartKind, TestPointSpec, VehicleSpec};
use serde::{Deserialize, Serialize};
use std::collections::BTreeSet;

/// The parts that are off at the moment; an unplugged connector counts as off.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize)]
pub struct Assembly {
    off: BTreeSet<Id>,
}

/// Why a part or a probe cannot be handled as things stand.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub enum Obstacle {
    /// These parts must come off first.
    Behind(Vec<Id>),
    /// These parts are still off and must go back first.
    StillOff(Vec<Id>),
    /// It is off already.
    AlreadyOff,
    /// It is in place already.
    InPlace,
    /// The connector hides this point while it is plugged.
    Plugged(Id),
}

impl Assembly {
    /// Whether a part is off.
    #[must_use]
    pub fn is_off(&self, part: &Id) -> bool {
        self.off.contains(part)
    }

    /// The parts that are off, in the order of their names.
    pub fn off(&self) -> impl Iterator<Item = &Id> {
        self.off.iter()
    }

    /// What prevents `part` from coming off.
    #[must_use]
    pub fn obstacle_to_removing(&self, spec: &VehicleSpec, part: &Id) -> Option<Obstacle> {
        if self.is_off(part) {
            return Some(Obstacle::AlreadyOff);
        }
        let behind = spec.part(part).map_or(&[][..], |part| &part.behind);
        self.in_the_way(behind)
    }

    /// What prevents `part` from going back: it is in place, or something that it would cover is
    /// still off. An unplugged connector does not stop a cover from closing over it.
    #[must_use]
    pub fn obstacle_to_refitting(&self, spec: &VehicleSpec, part: &Id) -> Option<Obstacle> {
        if !self.is_off(part) {
            return Some(Obstacle::InPlace);
        }
        let is_connector = spec.part(part).is_some_and(|part| part.kind == PartKind::Connector);
        let covered: Vec<Id> = spec
            .parts
            .iter()
            .filter(|other| other.behind.contains(part) && self.is_off(&other.id))
            .filter(|other| other.kind != PartKind::Connector)
            .map(|other| other.id.clone())
            .collect();
        if !covered.is_empty() {
            return Some(Obstacle::StillOff(covered));
        }
        if is_connector {
            // A plug can only be pushed home where hands reach it.
            return self.in_the_way(spec.part(part).map_or(&[][..], |part| &part.behind));
        }
        None
    }

    /// What prevents a probe from touching `point`.
    #[must_use]
    pub fn obstacle_to_probing(&self, point: &TestPointSpec) -> Option<Obstacle> {
        self.in_the_way(&point.behind).or_else(|| {
            point
                .unplugged
                .as_ref()
                .filter(|connector| !self.is_off(connector))
                .map(|connector| Obstacle::Plugged(connector.clone()))
        })
    }

    /// Parts among `behind` that are still in place, as an obstacle.
    #[must_use]
    pub fn in_the_way(&self, behind: &[Id]) -> Option<Obstacle> {
        let left: Vec<Id> = behind.iter().filter(|part| !self.is_off(part)).cloned().collect();
        (!left.is_empty()).then_some(Obstacle::Behind(left))
    }

    /// Takes a part off.
    pub fn take_off(&mut self, part: &Id) {
        self.off.insert(part.clone());
    }

    /// Puts a part back.
    pub fn put_back(&mut self, part: &Id) {
        self.off.remove(part);
    }
}
