//! The change of parameters that a fault makes.

use super::kind::{Fault, FaultKind, FaultName};
use crate::numerics::elementary::pow;
use crate::physics::coil::Winding;
use crate::units::Ohms;
use crate::vehicle::condition::Condition;
use crate::vehicle::harness::OPEN_OHMS;
use crate::vehicle::spec::{HarnessElement, Id, VehicleSpec};

/// Resistance of a poor joint in a partly broken coil [ohm], mildest to worst.
const PARTLY_BROKEN_OHMS: (f64, f64) = (1_500.0, 25_000.0);
/// Share of the turns that is bridged.
const SHORTED_SHARE: (f64, f64) = (0.45, 0.85);
/// Static friction of a sticking spool [N].
const STICKING_N: (f64, f64) = (3.0, 12.0);
/// Blocked share of the screen's area.
const BLOCKED_SHARE: (f64, f64) = (0.970, 0.995);
/// Resistance of a corroded contact [ohm].
const CORRODED_OHMS: (f64, f64) = (25.0, 400.0);
/// Resistance to ground of a rubbed-through wire [ohm].
const RUBBED_OHMS: (f64, f64) = (0.4, 0.02);
/// Oil left in the sump [l], as a share of what the lower mark asks for.
const OIL_SHARE_OF_LEAST: (f64, f64) = (0.68, 0.58);

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
                (FaultKind::CorrodedPin, HarnessElement::Pin { .. }) => true,
                (FaultKind::BrokenWire, HarnessElement::Wire { from, to, .. }) => {
                    belongs_to_a_valve(spec, from, to)
                }
                (FaultKind::WireToGround, HarnessElement::Wire { from, to, .. }) => {
                    is_control_wire(spec, from, to)
                }
                _ => false,
            };
            if fits {
                names.push(FaultName { kind, place: element.id().clone() });
            }
        }
        if kind == FaultKind::LowOil {
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

/// Whether a wire runs to a driver's pin.
fn is_control_wire(spec: &VehicleSpec, from: &Id, to: &Id) -> bool {
    spec.harness.elements.iter().any(|element| match element {
        HarnessElement::LowSideDriver { pin, .. } => pin == from || pin == to,
        _ => false,
    })
}

fn linear((mild, worst): (f64, f64), severity: f64) -> f64 {
    mild + (worst - mild) * severity
}

fn geometric((mild, worst): (f64, f64), severity: f64) -> f64 {
    mild * pow(worst / mild, severity)
}

/// Applies a fault to a condition. A fault whose place the vehicle does not have changes nothing
/// and returns `false`.
#[must_use]
pub fn apply(fault: &Fault, spec: &VehicleSpec, condition: &mut Condition) -> bool {
    let severity = fault.severity.clamp(0.0, 1.0);
    let FaultName { kind, place } = &fault.name;
    if *kind == FaultKind::LowOil {
        condition.oil.litres = spec.sump.least_litres * linear(OIL_SHARE_OF_LEAST, severity);
        return true;
    }
    if !kind.is_in_valve() {
        if spec.element(place).is_none() {
            return false;
        }
        let (parameters, ohms) = match kind {
            FaultKind::CorrodedPin => {
                (&mut condition.extra_ohms, geometric(CORRODED_OHMS, severity))
            }
            FaultKind::WireToGround => {
                (&mut condition.leak_to_ground_ohms, geometric(RUBBED_OHMS, severity))
            }
            _ => (&mut condition.extra_ohms, OPEN_OHMS),
        };
        parameters.insert(place.clone(), ohms);
        return true;
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
        FaultKind::ShortedTurns => winding.shorted_share = linear(SHORTED_SHARE, severity),
        FaultKind::StickingSpool => valve.stiction_n = linear(STICKING_N, severity),
        _ => valve.screen_blocked = linear(BLOCKED_SHARE, severity),
    }
    true
}
