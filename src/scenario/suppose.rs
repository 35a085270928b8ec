//! Everything that a scenario says might be the truth, for the expert to weigh.
//!
//! One supposition for each fault at each of a few severities, in each variant of harmless
//! oddities that readings would show; sound parts at their nominal values, instruments without
//! error. Weights follow the scenario's priors. Nothing of a drawn case goes in here.

use super::draw::{Drawn, DrawnDecoys};
use super::load::Loaded;
use crate::faults::{Fault, FaultKind, apply};
use crate::instruments::multimeter::Multimeter;
use crate::reasoning::world::Supposition;
use crate::session::setup::Hidden;
use crate::vehicle::condition::{Condition, FittedValve};

/// Shares of a prior's range of severity at which it is supposed: the middles of thirds.
const SEVERITY_SHARES: [f64; 3] = [1.0 / 6.0, 0.5, 5.0 / 6.0];
/// Seed of what happens by chance in a supposed world, such as air in the oil.
const SUPPOSED_SEED: u64 = 0;

/// Whether a fault looks the same at every severity.
const fn is_all_or_nothing(kind: FaultKind) -> bool {
    matches!(kind, FaultKind::OpenCoil | FaultKind::BrokenWire)
}

/// The suppositions of a scenario.
#[must_use]
pub fn suppositions(loaded: &Loaded) -> Vec<Supposition> {
    let scenario = &loaded.scenario;
    let mut drawn = vec![(Drawn::default(), scenario.no_fault)];
    for prior in &scenario.faults {
        let (least, most) = prior.severity;
        let shares: &[f64] = if is_all_or_nothing(prior.kind) { &[0.5] } else { &SEVERITY_SHARES };
        for share in shares {
            let severity = least + (most - least) * share;
            let fault = Fault { name: prior.name(), severity };
            let decoys = DrawnDecoys::default();
            drawn.push((Drawn { faults: vec![fault], decoys }, prior.weight / shares.len() as f64));
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
                fault: drawn.faults.first().map(|fault| fault.name.clone()),
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
