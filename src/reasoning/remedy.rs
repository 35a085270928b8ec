//! What takes a fault away, and the steps of doing it.

use super::probe::{Need, steps_to};
use crate::faults::{FaultKind, FaultName, worn_kinds};
use crate::session::attempt::Sighted;
use crate::session::setup::Briefing;
use crate::session::step::{KeyPosition, Step};
use crate::vehicle::spec::{Id, VehicleSpec};
use serde::Serialize;

/// A repair.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Remedy {
    /// Renew the valve in a place.
    Renew(Id),
    /// Clean the valve in a place.
    Clean(Id),
    /// Mend a wire or a contact.
    Mend(Id),
    /// Mend a feed wire that blew its fuse, and replace the fuse after it.
    MendAndFuse(Id),
    /// Replace a fuse or a relay.
    Replace(Id),
    /// Fill up the oil.
    TopUp,
    /// Change oil and filter.
    ChangeOil,
    /// Several of these, for faults that come together; never one within another.
    Together(Vec<Self>),
}

impl Remedy {
    /// The repairs that can take a fault away.
    #[must_use]
    pub fn of(fault: &FaultName) -> Vec<Self> {
        let place = fault.place.clone();
        match fault.kind {
            FaultKind::OpenCoil
            | FaultKind::PartlyBrokenCoil
            | FaultKind::PoorJoint
            | FaultKind::ShortedTurns => {
                vec![Self::Renew(place)]
            }
            FaultKind::StickingSpool | FaultKind::BlockedScreen => {
                vec![Self::Clean(place.clone()), Self::Renew(place)]
            }
            FaultKind::CorrodedPin
            | FaultKind::SpreadTerminal
            | FaultKind::LooseContact
            | FaultKind::HotContact
            | FaultKind::BrokenWire
            | FaultKind::WireToGround
            | FaultKind::WireToSupply => {
                vec![Self::Mend(place)]
            }
            FaultKind::ChafedFeed => vec![Self::MendAndFuse(place)],
            FaultKind::BlownFuse | FaultKind::ResistiveRelay => vec![Self::Replace(place)],
            FaultKind::LowOil => vec![Self::TopUp],
            FaultKind::WornOutOil | FaultKind::FuelInOil | FaultKind::WrongOil => {
                vec![Self::ChangeOil]
            }
        }
    }

    /// The repairs that can take all of several faults away; for one fault its own. None for none.
    #[must_use]
    pub fn of_all(faults: &[FaultName]) -> Vec<Self> {
        let mut ways: Vec<Vec<Self>> = vec![Vec::new()];
        for fault in faults {
            ways = ways
                .iter()
                .flat_map(|way| {
                    Self::of(fault).into_iter().map(move |remedy| {
                        let mut way = way.clone();
                        if !way.contains(&remedy) {
                            way.push(remedy);
                        }
                        way
                    })
                })
                .collect();
        }
        ways.into_iter()
            .filter_map(|mut way| {
                way.sort();
                match way.len() {
                    0 => None,
                    1 => way.pop(),
                    _ => Some(Self::Together(way)),
                }
            })
            .collect()
    }

    /// Whether it takes all of several faults away.
    #[must_use]
    pub fn fixes_all(&self, faults: &[FaultName]) -> bool {
        faults.iter().all(|fault| self.fixes(fault))
    }

    /// Whether it takes that fault away. Mending the wire that blew a fuse does: the fuse is what
    /// followed from it, and a new one holds then.
    #[must_use]
    pub fn fixes(&self, fault: &FaultName) -> bool {
        let of = Self::of(fault);
        match self {
            Self::Mend(place) => {
                of.contains(self) || of.contains(&Self::MendAndFuse(place.clone()))
            }
            // The sump is full again after it, and what was in the oil is gone.
            Self::ChangeOil => fault.kind.is_in_oil(),
            Self::Together(parts) => parts.iter().any(|part| part.fixes(fault)),
            _ => of.contains(self),
        }
    }

    /// The repair that a step carries out, if it is one.
    #[must_use]
    pub fn in_step(step: &Step) -> Option<Self> {
        match step {
            Step::Fit { valve, .. } => Some(Self::Renew(valve.clone())),
            Step::Clean { valve } => Some(Self::Clean(valve.clone())),
            Step::Mend { element } => Some(Self::Mend(element.clone())),
            Step::Replace { element } => Some(Self::Replace(element.clone())),
            Step::TopUpOil => Some(Self::TopUp),
            Step::ChangeOil { .. } => Some(Self::ChangeOil),
            _ => None,
        }
    }

    /// In what state the vehicle must be for it.
    #[must_use]
    pub fn need(&self, spec: &VehicleSpec) -> Need {
        let off = match self {
            Self::Renew(valve) | Self::Clean(valve) => vec![valve.clone()],
            Self::Mend(element) => at_hand(spec, element),
            Self::MendAndFuse(element) => {
                let mut off = at_hand(spec, element);
                off.extend(spec.fuse_before(element).into_iter().flat_map(|fuse| lid(spec, fuse)));
                off
            }
            Self::Replace(element) => lid(spec, element),
            Self::TopUp | Self::ChangeOil => return Need::default(),
            Self::Together(parts) => {
                let mut off: Vec<Id> = Vec::new();
                for part in parts.iter().flat_map(|part| part.need(spec).off) {
                    if !off.contains(&part) {
                        off.push(part);
                    }
                }
                off
            }
        };
        Need { off, plugged: Vec::new(), key: Some(KeyPosition::Off) }
    }

    /// The work itself, once everything is off that must be. Of the parts that the counter has, the cheapest that is not
    /// worn goes in, its wait counted; the maker's own where another is no cheaper.
    #[must_use]
    pub fn work(&self, briefing: &Briefing) -> Vec<Step> {
        let spec = &briefing.vehicle;
        match self {
            Self::Renew(valve) => {
                let part_number = best_part(valve, briefing);
                vec![Step::Fit { valve: valve.clone(), part_number }]
            }
            Self::Clean(valve) => vec![Step::Clean { valve: valve.clone() }],
            Self::Mend(element) => vec![Step::Mend { element: element.clone() }],
            Self::MendAndFuse(element) => {
                let mut steps = vec![Step::Mend { element: element.clone() }];
                let fuse = spec.fuse_before(element).cloned();
                steps.extend(fuse.map(|element| Step::Replace { element }));
                steps
            }
            Self::Replace(element) => vec![Step::Replace { element: element.clone() }],
            Self::TopUp => vec![Step::TopUpOil],
            Self::ChangeOil => vec![Step::ChangeOil { grade: spec.oil.grade }],
            Self::Together(parts) => parts.iter().flat_map(|part| part.work(briefing)).collect(),
        }
    }

    /// The steps from what is in sight to the repair done; a valve is back in its place then.
    #[must_use]
    pub fn steps(&self, briefing: &Briefing, sighted: Sighted<'_>) -> Vec<Step> {
        let spec = &briefing.vehicle;
        let mut steps = steps_to(&self.need(spec), spec, sighted);
        steps.extend(self.work(briefing));
        let parts =
            if let Self::Together(parts) = self { parts } else { core::slice::from_ref(self) };
        for part in parts {
            if let Self::Renew(valve) | Self::Clean(valve) = part {
                steps.push(Step::Refit { part: valve.clone(), new_seal: true });
            }
        }
        steps
    }
}

/// The number of the part to renew a valve with.
fn best_part(valve: &Id, briefing: &Briefing) -> Id {
    let Some(place) = briefing.vehicle.valve(valve) else { return valve.clone() };
    let own = &place.part_number;
    let others = briefing.shelf.others.iter();
    let others = others.filter(|(_, part)| part.stands_for == *own).map(|(number, _)| number);
    core::iter::once(own)
        .chain(others)
        .filter_map(|number| Some((number, briefing.offer(number)?)))
        .filter(|(_, offer)| worn_kinds(&offer.valve()).next().is_none())
        .min_by_key(|(_, offer)| offer.money(&briefing.shelf))
        .map_or_else(|| own.clone(), |(number, _)| number.clone())
}

/// What must be off for a hand to get to a wire or a contact.
fn at_hand(spec: &VehicleSpec, element: &Id) -> Vec<Id> {
    spec.element(element).map_or_else(Vec::new, |wire| {
        let nodes = wire.nodes();
        spec.test_points
            .iter()
            .find(|point| nodes.contains(&&point.node) && point.unplugged.is_none())
            .map_or_else(Vec::new, |point| point.behind.clone())
    })
}

/// What must be off for a fuse or a relay to be replaced.
fn lid(spec: &VehicleSpec, element: &Id) -> Vec<Id> {
    spec.part(element).map_or_else(Vec::new, |part| part.behind.clone())
}
