//! Everything that a scenario says might be the truth, for the expert to weigh.
//!
//! One supposition for each fault, or for faults that come together, at each of a few severities, in each variant of harmless
//! oddities that readings would show; sound parts at their nominal values, instruments without
//! error. Weights follow the scenario's priors. Nothing of a drawn case goes in here.

use super::draw::{Drawn, DrawnDecoys};
use super::load::Loaded;
use super::schema::FaultPart;
use crate::faults::{Fault, FaultKind, apply};
use crate::instruments::multimeter::Multimeter;
use crate::reasoning::world::Supposition;
use crate::session::setup::Hidden;
use crate::vehicle::condition::{Condition, FittedValve};

/// Shares of a prior's range of severity at which it is supposed: the middles of thirds.
const SEVERITY_SHARES: [f64; 3] = [1.0 / 6.0, 0.5, 5.0 / 6.0];
/// The same for each of several faults that come together, of which every combination is supposed:
/// the middles of halves.
const SHARES_TOGETHER: [f64; 2] = [0.25, 0.75];
/// Seed of what happens by chance in a supposed world, such as air in the oil.
const SUPPOSED_SEED: u64 = 0;

/// Whether a fault looks the same at every severity.
const fn is_all_or_nothing(kind: FaultKind) -> bool {
    matches!(kind, FaultKind::OpenCoil | FaultKind::BrokenWire | FaultKind::BlownFuse)
}

/// An entry at every combination of the severities at which its faults are supposed.
fn severities(parts: &[FaultPart]) -> Vec<Vec<Fault>> {
    let usual: &[f64] = match parts {
        [_] => &SEVERITY_SHARES,
        _ => &SHARES_TOGETHER,
    };
    let mut supposed = vec![Vec::new()];
    for part in parts {
        let shares = if is_all_or_nothing(part.kind) { &[0.5] } else { usual };
        let (least, most) = part.severity;
        supposed = supposed
            .iter()
            .flat_map(|before: &Vec<Fault>| {
                shares.iter().map(move |share| {
                    let severity = least + (most - least) * share;
                    let fault = Fault { name: part.name(), severity };
                    before.iter().cloned().chain([fault]).collect()
                })
            })
            .collect();
    }
    supposed
}

/// The suppositions of a scenario.
#[must_use]
pub fn suppositions(loaded: &Loaded) -> Vec<Supposition> {
    let scenario = &loaded.scenario;
    let mut drawn = vec![(Drawn::default(), scenario.no_fault)];
    for prior in &scenario.faults {
        let supposed = severities(&prior.parts());
        let weight = prior.weight / supposed.len() as f64;
        for faults in supposed {
            drawn.push((Drawn { faults, decoys: DrawnDecoys::default() }, weight));
        }
    }
    let mut variants = vec![(None, 1.0)];
    if let Some(other) = &scenario.decoys.other_winding {
        variants = vec![
            (None, 1.0 - other.chance),
            (Some((other.place.clone(), other.part_number.clone())), other.chance),
        ];
    }
    let mut suppositions = Vec::new();
    for (variant, (other_winding, chance)) in (0..).zip(&variants) {
        for (drawn, weight) in &drawn {
            let decoys =
                DrawnDecoys { other_winding: other_winding.clone(), ..DrawnDecoys::default() };
            let drawn = Drawn { faults: drawn.faults.clone(), decoys };
            suppositions.push(Supposition {
                faults: drawn.faults.iter().map(|fault| fault.name.clone()).collect(),
                variant,
                weight: weight * chance,
                hidden: nominal(loaded, &drawn),
            });
        }
    }
    suppositions
}

/// The hidden state with everything that was not drawn at its nominal value.
fn nominal(loaded: &Loaded, drawn: &Drawn) -> Hidden {
    let vehicle = &loaded.vehicle;
    let mut condition = Condition::sound(vehicle);
    if let Some((place, part_number)) = &drawn.decoys.other_winding
        && let Some(part) = vehicle.valve_part(part_number)
    {
        condition.valves.insert(place.clone(), FittedValve::new(part, 1.0));
    }
    let faults = drawn
        .faults
        .iter()
        .filter(|fault| apply(fault, vehicle, &mut condition))
        .cloned()
        .collect();
    Hidden {
        condition,
        faults,
        old_codes: Vec::new(),
        meter: Multimeter::ideal(),
        seed: SUPPOSED_SEED,
    }
}
