//! The change of parameters that a fault makes.

use super::kind::{Fault, FaultKind, FaultName};
use crate::numerics::elementary::pow;
use crate::physics::coil::Winding;
use crate::physics::oil::Service;
use crate::units::{Celsius, Ohms};
use crate::vehicle::condition::{Condition, FittedValve, LooseContact};
use crate::vehicle::harness::OPEN_OHMS;
use crate::vehicle::spec::{HarnessElement, Id, VehicleSpec};
use std::collections::BTreeMap;

/// Resistance of a poor joint in a partly broken coil [ohm], mildest to worst.
const PARTLY_BROKEN_OHMS: (f64, f64) = (1_500.0, 25_000.0);
/// Resistance of a failing joint [ohm]: 8.5 makes an 11 ohm coil read 19.5.
const POOR_JOINT_OHMS: (f64, f64) = (4.0, 30.0);
/// Share of the turns that is bridged.
const SHORTED_SHARE: (f64, f64) = (0.45, 0.85);
/// Static friction of a sticking spool [N].
const STICKING_N: (f64, f64) = (3.0, 12.0);
/// Blocked share of the screen's area.
const BLOCKED_SHARE: (f64, f64) = (0.970, 0.995);
/// Resistance of a corroded contact [ohm].
const CORRODED_OHMS: (f64, f64) = (25.0, 400.0);
/// Contact resistance of a spread terminal [ohm].
const SPREAD_OHMS: (f64, f64) = (6.0, 80.0);
/// How often a loose contact opens on the roughest road at 20 °C [1/s].
const OPENINGS_PER_S: (f64, f64) = (0.15, 1.2);
/// Temperature of the engine from which a contact that minds heat is open [°C].
const OPEN_FROM_C: (f64, f64) = (65.0, 40.0);
/// Resistance between a control wire and the feed beside it [ohm]: low enough at its mildest for the
/// driver to protect itself.
const TO_SUPPLY_OHMS: (f64, f64) = (0.5, 0.02);
/// Resistance of a burnt relay contact [ohm].
const BURNT_OHMS: (f64, f64) = (2.0, 30.0);
/// Resistance to ground of a rubbed-through wire [ohm].
const RUBBED_OHMS: (f64, f64) = (0.4, 0.02);
/// Oil left in the sump [l], as a share of what the lower mark asks for.
const OIL_SHARE_OF_LEAST: (f64, f64) = (0.68, 0.58);

/// Lives of its additives that worn-out oil has used.
const LIVES_USED: (f64, f64) = (1.6, 2.4);
/// Temperature at which it was worn out [°C]: loaded hills in summer.
const WORN_OUT_AT_C: f64 = 112.0;
/// Share of a screen that the worst sludge covers on its own.
const SCREEN_FOR_SLUDGE: f64 = 0.6;
/// Share of fuel in the oil; from 4 to 5 % trade literature on used oil asks for action at once.
const FUEL_SHARE: (f64, f64) = (0.06, 0.14);
/// Share of oil of the wrong grade: from a bold topping-up to the whole fill.
const WRONG_SHARE: (f64, f64) = (0.6, 1.0);

/// Every place of a vehicle where a kind of fault makes sense, in the order of its file.
#[must_use]
pub fn places(spec: &VehicleSpec) -> Vec<FaultName> {
    let mut names = Vec::new();
    for kind in FaultKind::ALL {
        if kind.is_in_valve() {
            names.extend(
                spec.valves.iter().map(|valve| FaultName { kind, place: valve.id.clone() }),
            );
        }
        for element in &spec.harness.elements {
            let fits = match (kind, element) {
                (
                    FaultKind::CorrodedPin
                    | FaultKind::SpreadTerminal
                    | FaultKind::LooseContact
                    | FaultKind::HotContact,
                    HarnessElement::Pin { .. },
                ) => true,
                (
                    FaultKind::BrokenWire,
                    HarnessElement::Wire { from, to, .. } | HarnessElement::Cable { from, to, .. },
                ) => belongs_to_a_valve(spec, from, to),
                (
                    FaultKind::WireToGround | FaultKind::WireToSupply,
                    HarnessElement::Wire { id, .. } | HarnessElement::Cable { id, .. },
                ) => spec.valve_controlled_by(id).is_some(),
                (
                    FaultKind::ChafedFeed,
                    HarnessElement::Wire { id, .. } | HarnessElement::Cable { id, .. },
                ) => !spec.valves_fed_through(id).is_empty() && spec.fuse_before(id).is_some(),
                (FaultKind::BlownFuse, HarnessElement::Fuse { id, .. })
                | (FaultKind::ResistiveRelay, HarnessElement::RelayContact { id, .. }) => {
                    !spec.valves_fed_through(id).is_empty()
                }
                _ => false,
            };
            if fits {
                names.push(FaultName { kind, place: element.id().clone() });
            }
        }
        if kind.is_in_oil() {
            names.push(FaultName { kind, place: Id::from("sump") });
        }
    }
    names
}

/// Whether a wire ends at a connector pin, so that it serves one valve alone.
fn belongs_to_a_valve(spec: &VehicleSpec, from: &Id, to: &Id) -> bool {
    spec.harness.elements.iter().any(|element| match element {
        HarnessElement::Pin { from: near, to: far, .. } => {
            [from, to].iter().any(|end| **end == *near || **end == *far)
        }
        _ => false,
    })
}

fn linear((mild, worst): (f64, f64), severity: f64) -> f64 {
    mild + (worst - mild) * severity
}

fn geometric((mild, worst): (f64, f64), severity: f64) -> f64 {
    mild * pow(worst / mild, severity)
}

/// Changes the oil. Every change leaves what the others changed, so that they can be combined in any
/// order.
fn apply_to_oil(kind: FaultKind, severity: f64, spec: &VehicleSpec, condition: &mut Condition) {
    let oil = &mut condition.oil;
    match kind {
        FaultKind::LowOil => {
            oil.litres = spec.sump.least_litres * linear(OIL_SHARE_OF_LEAST, severity);
        }
        FaultKind::FuelInOil => {
            // The fuel comes on top of the oil, so the level rises.
            let clean_l = oil.litres * (1.0 - oil.fuel_share);
            oil.fuel_share = linear(FUEL_SHARE, severity);
            oil.litres = clean_l / (1.0 - oil.fuel_share);
        }
        FaultKind::WrongOil => {
            let other = spec.oil.grade.worst_mistake();
            oil.other = Some((other, linear(WRONG_SHARE, severity)));
        }
        _ => {
            oil.mean_c = WORN_OUT_AT_C;
            let lives = linear(LIVES_USED, severity);
            oil.hours = Service::hours_for(lives, oil.grade.base(), oil.mean_c);
            // What the oil carried it has left on the screens too, never enough to starve a valve.
            let left = SCREEN_FOR_SLUDGE * oil.sludge();
            for valve in condition.valves.values_mut() {
                valve.screen_blocked = valve.screen_blocked.max(left);
            }
        }
    }
}

/// Kinds of fault that a valve's dirt and wear amount to, from the mildest of each kind on.
pub fn worn_kinds(valve: &FittedValve) -> impl Iterator<Item = FaultKind> {
    [
        (FaultKind::StickingSpool, valve.stiction_n >= STICKING_N.0),
        (FaultKind::BlockedScreen, valve.screen_blocked >= BLOCKED_SHARE.0),
    ]
    .into_iter()
    .filter_map(|(kind, is_there)| is_there.then_some(kind))
}

/// Applies a fault to a condition. A fault whose place the vehicle does not have changes nothing
/// and returns `false`.
#[must_use]
pub fn apply(fault: &Fault, spec: &VehicleSpec, condition: &mut Condition) -> bool {
    let severity = fault.severity.clamp(0.0, 1.0);
    let FaultName { kind, place } = &fault.name;
    if kind.is_in_oil() {
        apply_to_oil(*kind, severity, spec, condition);
        return true;
    }
    if !kind.is_in_valve() {
        return spec.element(place).is_some() && apply_to_wiring(fault, severity, spec, condition);
    }
    let Some(valve) = condition.valves.get_mut(place) else {
        return false;
    };
    let winding: &mut Winding = &mut valve.winding;
    match kind {
        FaultKind::OpenCoil => winding.joint = Ohms(OPEN_OHMS),
        FaultKind::PartlyBrokenCoil => {
            winding.joint = Ohms(geometric(PARTLY_BROKEN_OHMS, severity));
        }
        FaultKind::PoorJoint => winding.joint = Ohms(geometric(POOR_JOINT_OHMS, severity)),
        FaultKind::ShortedTurns => winding.shorted_share = linear(SHORTED_SHARE, severity),
        FaultKind::StickingSpool => valve.stiction_n = linear(STICKING_N, severity),
        _ => valve.screen_blocked = linear(BLOCKED_SHARE, severity),
    }
    true
}

/// A fault of the wiring. Where two faults raise the same resistance, they add up.
fn apply_to_wiring(
    fault: &Fault,
    severity: f64,
    spec: &VehicleSpec,
    condition: &mut Condition,
) -> bool {
    let place = &fault.name.place;
    let insert = |ohms: &mut BTreeMap<Id, f64>, value: f64| {
        ohms.insert(place.clone(), value);
    };
    match fault.name.kind {
        FaultKind::CorrodedPin => {
            insert(&mut condition.extra_ohms, geometric(CORRODED_OHMS, severity));
        }
        FaultKind::ResistiveRelay => {
            insert(&mut condition.extra_ohms, geometric(BURNT_OHMS, severity));
        }
        FaultKind::SpreadTerminal => {
            *condition.spread_ohms.entry(place.clone()).or_insert(0.0) +=
                geometric(SPREAD_OHMS, severity);
        }
        FaultKind::LooseContact | FaultKind::HotContact => {
            let nothing = LooseContact { openings_per_s: 0.0, open_from: None };
            let contact = condition.loose.entry(place.clone()).or_insert(nothing);
            if fault.name.kind == FaultKind::HotContact {
                contact.open_from = Some(Celsius(linear(OPEN_FROM_C, severity)));
            } else {
                contact.openings_per_s = geometric(OPENINGS_PER_S, severity);
            }
        }
        FaultKind::WireToGround => {
            insert(&mut condition.leak_to_ground_ohms, geometric(RUBBED_OHMS, severity));
        }
        FaultKind::WireToSupply => {
            insert(&mut condition.leak_to_supply_ohms, geometric(TO_SUPPLY_OHMS, severity));
        }
        FaultKind::ChafedFeed => {
            let Some(fuse) = spec.fuse_before(place) else {
                return false;
            };
            insert(&mut condition.leak_to_ground_ohms, geometric(RUBBED_OHMS, severity));
            // The fuse went the first time that current flowed.
            condition.extra_ohms.insert(fuse.clone(), OPEN_OHMS);
        }
        _ => insert(&mut condition.extra_ohms, OPEN_OHMS),
    }
    true
}
