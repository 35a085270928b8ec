//! What everybody in the trade does alike: taking a job in, putting things back, proving, writing up.

use super::seen::Seen;
use crate::control_module::code::Code;
use crate::faults::FaultName;
use crate::reasoning::probe::{Need, steps_to};
use crate::reasoning::way::put_back;
use crate::session::attempt::{Entry, Sighted};
use crate::session::event::Event;
use crate::session::setup::Briefing;
use crate::session::step::{CustomerTopic, ENGINE_BAY, Ending, KeyPosition, Section, Step};
use crate::vehicle::assembly::Obstacle;
use crate::vehicle::run_record::Idling;
use crate::vehicle::spec::{Id, ValveSpec, VehicleSpec};
use std::collections::BTreeSet;

/// A key turned to a position.
pub(super) const fn key(position: KeyPosition) -> Step {
    Step::Key { position }
}

/// How a careful technician takes a job in: sheet and customer, oil and eyes, codes and their freeze
/// frame on paper before anything is touched. Common practice, no source.
#[must_use]
pub fn intake() -> Vec<Step> {
    vec![
        Step::ReadJobSheet,
        Step::AskCustomer { topic: CustomerTopic::Symptom },
        Step::AskCustomer { topic: CustomerTopic::When },
        Step::Dipstick,
        Step::Look { place: Id::from(ENGINE_BAY) },
        key(KeyPosition::On),
        Step::ReadCodes,
        Step::ReadFreezeFrame,
    ]
}

/// The steps from what is in sight to what a test needs. Where a plug has to go home and what belongs
/// behind it is still out, that goes back first, a valve with a new seal.
pub(super) fn way_to(need: &Need, spec: &VehicleSpec, sighted: Sighted<'_>) -> Vec<Step> {
    let mut assembly = sighted.assembly().clone();
    let mut back = Vec::new();
    for connector in &need.plugged {
        while let Some(Obstacle::StillOff(parts)) = assembly.obstacle_to_refitting(spec, connector)
        {
            let free = parts.iter().find(|it| assembly.obstacle_to_refitting(spec, it).is_none());
            let Some(part) = free else {
                break;
            };
            let new_seal = spec.valve(part).is_some();
            back.push(Step::Refit { part: part.clone(), new_seal });
            assembly.put_back(part);
        }
    }
    let onward = steps_to(need, spec, sighted);
    if back.is_empty() {
        return onward;
    }
    // The key goes off before anything is touched; what follows brings its own turn of it.
    let off = key(KeyPosition::Off);
    let is_off_first = onward.first() == Some(&off);
    let mut steps = if is_off_first { vec![off] } else { Vec::new() };
    steps.extend(back);
    steps.extend(onward.into_iter().skip(usize::from(is_off_first)));
    steps
}

/// Everything back in its place.
pub(super) fn close_up(seen: Seen<'_>) -> Vec<Step> {
    put_back(&seen.briefing.vehicle, seen.sighted)
}

/// The road of a proof: the longest, since it asks the most of the monitors.
pub(super) fn proving_road(briefing: &Briefing) -> Id {
    let longest = briefing.routes.iter().max_by_key(|(_, route)| route.minutes);
    longest.map_or_else(|| briefing.customers_route.clone(), |(road, _)| road.clone())
}

/// Codes cleared and read again with the key on: a circuit that is still bad says so at once.
pub(super) fn key_on_check() -> Vec<Step> {
    vec![key(KeyPosition::On), Step::ClearCodes, Step::ReadCodes]
}

/// The road, codes once more, and a look for oil where somebody has worked.
pub(super) fn road_test(briefing: &Briefing) -> Vec<Step> {
    vec![
        key(KeyPosition::Off),
        Step::Drive { route: proving_road(briefing), stop_after: None },
        key(KeyPosition::On),
        Step::ReadCodes,
        key(KeyPosition::Off),
        Step::Look { place: Id::from(ENGINE_BAY) },
    ]
}

/// Whether the last reading of codes shows one of the vehicle's own.
pub(super) fn codes_are_back(seen: Seen<'_>) -> bool {
    let own = seen.briefing.vehicle.own_codes();
    last_codes(seen.log).is_some_and(|codes| codes.iter().any(|code| own.contains(code)))
}

/// Whether the last drive went as it should.
pub(super) fn drove_well(log: &[Entry]) -> bool {
    log.iter()
        .flat_map(|entry| &entry.events)
        .rev()
        .find_map(|event| match event {
            Event::Driven { engine_lamp, oil_lamp, quality, .. } => {
                Some(!engine_lamp && !oil_lamp && *quality == Idling::Smooth)
            }
            _ => None,
        })
        .unwrap_or(false)
}

/// Stored and pending codes in a reading.
fn codes_in(event: &Event) -> Option<BTreeSet<Code>> {
    match event {
        Event::Codes { stored, pending, .. } => {
            Some(stored.iter().chain(pending).copied().collect())
        }
        _ => None,
    }
}

/// Stored and pending codes of the last reading.
fn last_codes(log: &[Entry]) -> Option<BTreeSet<Code>> {
    log.iter().flat_map(|entry| &entry.events).rev().find_map(codes_in)
}

/// Stored and pending codes of the first reading: those that the customer came with.
pub(super) fn first_codes(log: &[Entry]) -> BTreeSet<Code> {
    log.iter().flat_map(|entry| &entry.events).find_map(codes_in).unwrap_or_default()
}

/// Codes of the first reading that are not part of the job, as far as service information tells: those that
/// no monitor of these circuits sets, and those of a valve that no diagnosis has to do with. Common
/// practice, no source: the customer hears of them before they are gone.
fn codes_from_elsewhere(seen: Seen<'_>) -> BTreeSet<Code> {
    let spec = &seen.briefing.vehicle;
    let own = spec.own_codes();
    let diagnosed: Vec<&FaultName> = seen
        .log
        .iter()
        .flat_map(|entry| &entry.events)
        .filter_map(|event| match event {
            Event::Committed { fault } => fault.as_ref(),
            _ => None,
        })
        .collect();
    let has_to_do_with = |valve: &&ValveSpec| {
        diagnosed.iter().any(|fault| {
            let at = &fault.place;
            fault.kind.is_in_oil()
                || *at == valve.id
                || spec.valve_controlled_by(at) == Some(&valve.id)
                || spec.valves_fed_through(at).contains(&&valve.id)
                || spec.pins_at(&valve.connector).contains(&at)
        })
    };
    let (of_job, of_others): (Vec<&ValveSpec>, Vec<_>) =
        spec.valves.iter().partition(has_to_do_with);
    let names = |valves: &[&ValveSpec], code: &Code| {
        valves.iter().any(|valve| valve.codes.all().contains(code))
    };
    let mut codes = first_codes(seen.log);
    codes.retain(|code| !own.contains(code) || (names(&of_others, code) && !names(&of_job, code)));
    codes
}

/// The record and the key. Its words are for a person to judge, so plain names do.
pub(super) fn hand_over(
    seen: Seen<'_>,
    diagnosis: Option<&FaultName>,
    ending: Ending,
) -> Vec<Step> {
    let cause = diagnosis
        .map_or_else(String::new, |fault| format!("{} {}", fault.kind.word(), fault.place));
    let write = |section, text: String| Step::Write { section, text };
    let mut steps = vec![
        write(Section::Concern, seen.briefing.job.title.clone()),
        write(Section::Cause, cause.clone()),
        write(Section::Correction, cause),
    ];
    steps.extend(codes_from_elsewhere(seen).into_iter().map(|code| Step::ReportCode { code }));
    steps.push(Step::HandOver { ending });
    steps
}
