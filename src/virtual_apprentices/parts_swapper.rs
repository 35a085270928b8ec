//! The parts-swapper: reads the codes, fits the valve that they name, and if the code comes back the
//! next thing.
//!
//! No test is made. The next thing is what hangs on the valve that was named, as far as a part or a
//! mend is to be had for it: contacts, wires, fuse, then the other valves, at last an oil change. It
//! stands for work that looks busy and sometimes even succeeds, at the customer's cost.

use super::habits::{first_codes, key};
use super::job::{Decision, Finder};
use super::seen::Seen;
use crate::control_module::code::Code;
use crate::faults::{FaultKind, FaultName};
use crate::reasoning::remedy::Remedy;
use crate::session::step::{KeyPosition, Step};
use crate::vehicle::error::VehicleError;
use crate::vehicle::spec::{HarnessElement, Id, ValveSpec, VehicleSpec};
use std::collections::{BTreeSet, VecDeque};

/// How sure it says it is [%]: the code has named the part, has it not?
const SURE: u8 = 90;

#[derive(Default)]
pub(super) struct PartsSwapper {
    /// What it will fit, in its order; `None` before the codes are read.
    list: Option<VecDeque<(FaultName, Remedy)>>,
}

/// The valves that codes name, those with a circuit code first; every valve where none is named.
fn named<'a>(spec: &'a VehicleSpec, codes: &BTreeSet<Code>) -> Vec<&'a ValveSpec> {
    let circuit = |valve: &&ValveSpec| {
        let own = valve.codes;
        [own.open, own.low, own.high].iter().any(|code| codes.contains(code))
    };
    let any = |valve: &&ValveSpec| valve.codes.all().iter().any(|code| codes.contains(code));
    let (mut first, rest): (Vec<_>, Vec<_>) = spec.valves.iter().partition(circuit);
    first.extend(rest.into_iter().filter(any));
    if first.is_empty() { spec.valves.iter().collect() } else { first }
}

/// Everything that it would fit or mend, in its order.
fn shopping_list(spec: &VehicleSpec, codes: &BTreeSet<Code>) -> VecDeque<(FaultName, Remedy)> {
    let fault = |kind, place: &Id| FaultName { kind, place: place.clone() };
    let named = named(spec, codes);
    let renew = |valve: &ValveSpec| {
        let circuit = [valve.codes.open, valve.codes.low, valve.codes.high];
        let is_circuit = circuit.iter().any(|code| codes.contains(code));
        let kind = if is_circuit { FaultKind::OpenCoil } else { FaultKind::StickingSpool };
        (fault(kind, &valve.id), Remedy::Renew(valve.id.clone()))
    };
    let mut list: VecDeque<_> = named.iter().map(|valve| renew(valve)).collect();
    for valve in &named {
        let mut pins = Vec::new();
        for element in &spec.harness.elements {
            if let HarnessElement::Pin { id, connector, .. } = element
                && *connector == valve.connector
            {
                list.push_back((fault(FaultKind::CorrodedPin, id), Remedy::Mend(id.clone())));
                pins.push(id);
            }
        }
        for element in &spec.harness.elements {
            let is_wire =
                matches!(element, HarnessElement::Wire { .. } | HarnessElement::Cable { .. });
            if is_wire && pins.iter().any(|pin| spec.pins_at(element.id()).contains(pin)) {
                let id = element.id();
                list.push_back((fault(FaultKind::BrokenWire, id), Remedy::Mend(id.clone())));
            }
        }
    }
    for element in &spec.harness.elements {
        if let HarnessElement::Fuse { id, .. } = element
            && !spec.valves_fed_through(id).is_empty()
        {
            list.push_back((fault(FaultKind::BlownFuse, id), Remedy::Replace(id.clone())));
        }
    }
    let is_named = |valve: &&ValveSpec| named.iter().any(|it| it.id == valve.id);
    list.extend(spec.valves.iter().filter(|valve| !is_named(valve)).map(renew));
    list.push_back((fault(FaultKind::WornOutOil, &Id::from("sump")), Remedy::ChangeOil));
    list
}

impl Finder for PartsSwapper {
    fn intake(&self) -> Vec<Step> {
        vec![Step::ReadJobSheet, key(KeyPosition::On), Step::ReadCodes]
    }

    fn decide(&mut self, seen: Seen<'_>) -> Result<Decision, VehicleError> {
        let spec = &seen.briefing.vehicle;
        let list = self.list.get_or_insert_with(|| shopping_list(spec, &first_codes(seen.log)));
        Ok(list.pop_front().map_or(Decision::GiveUp, |(diagnosis, remedy)| Decision::Repair {
            confidences: vec![(diagnosis.clone(), SURE)],
            diagnosis,
            remedy,
        }))
    }
}
