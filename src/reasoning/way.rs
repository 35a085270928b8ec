//! The way to any step: what has to come before it, found by what it is refused for.
//!
//! For a test of the expert the way is known ([`super::probe::steps_to`]). Any other step is tried on a copy;
//! what refuses it names what is in the way, which anyone beside the vehicle can see too.

use super::probe::{Need, steps_to};
use crate::session::attempt::{Session, Sighted};
use crate::session::event::{Event, NoAnswer, Refusal};
use crate::session::step::{KeyPosition, Step};
use crate::vehicle::assembly::Obstacle;
use crate::vehicle::error::VehicleError;
use crate::vehicle::spec::{Id, PartKind, VehicleSpec};

/// Obstacles after which nobody goes on looking for a way.
const MOST_OBSTACLES: usize = 12;

/// The steps that make a step possible in a session as it stands, none where it is possible at once, or why
/// no way leads to it.
///
/// # Errors
/// [`VehicleError`] when the wiring cannot be solved.
pub fn way_to(session: &Session, step: &Step) -> Result<Result<Vec<Step>, Refusal>, VehicleError> {
    let mut there = session.fork();
    let mut way = Vec::new();
    for _ in 0..MOST_OBSTACLES {
        let Some(reason) = hindrance(&there.fork().take_unlogged(step)?) else {
            return Ok(Ok(way));
        };
        let onward = past(&reason, &there);
        if onward.is_empty() {
            return Ok(Err(reason));
        }
        for step in onward {
            if let Some(Event::Refused { reason }) = there
                .take_unlogged(&step)?
                .into_iter()
                .find(|event| matches!(event, Event::Refused { .. }))
            {
                return Ok(Err(reason));
            }
            way.push(step);
        }
    }
    Ok(Err(Refusal::OutOfRange))
}

fn hindrance(events: &[Event]) -> Option<Refusal> {
    events.iter().find_map(|event| match event {
        Event::Refused { reason } => Some(reason.clone()),
        Event::NoAnswer { reason: NoAnswer::KeyOff } => Some(Refusal::KeyOff),
        Event::NoAnswer { reason: NoAnswer::EngineRuns } => Some(Refusal::EngineRuns),
        _ => None,
    })
}

/// The steps past one obstacle; none where there is no way.
fn past(reason: &Refusal, there: &Session) -> Vec<Step> {
    let spec = &there.briefing().vehicle;
    let key = |position| vec![Step::Key { position }];
    let off = |parts: &[Id]| {
        let need = Need { off: parts.to_vec(), ..Need::default() };
        steps_to(&need, spec, there.vehicle_in_sight())
    };
    match reason {
        Refusal::Obstacle(Obstacle::Behind(parts)) => off(parts),
        Refusal::Obstacle(Obstacle::Plugged(part)) | Refusal::StillFitted(part) => {
            off(core::slice::from_ref(part))
        }
        Refusal::Obstacle(Obstacle::StillOff(parts)) | Refusal::CannotRun(parts) => {
            back(parts, spec, there)
        }
        Refusal::EngineRuns | Refusal::KeyMustBeOff => key(KeyPosition::Off),
        Refusal::EngineStands => key(KeyPosition::Start),
        Refusal::KeyOff => key(KeyPosition::On),
        Refusal::NoGauge => vec![Step::FitGauge],
        Refusal::GaugeFitted => vec![Step::RemoveGauge],
        _ => Vec::new(),
    }
}

/// Everything back in its place, valves with new seals, key off first. Plugs go home before the covers that
/// would close over them.
#[must_use]
pub fn put_back(spec: &VehicleSpec, sighted: Sighted<'_>) -> Vec<Step> {
    let mut assembly = sighted.assembly().clone();
    let mut steps = Vec::new();
    if sighted.key_on() || sighted.engine_runs() {
        steps.push(Step::Key { position: KeyPosition::Off });
    }
    loop {
        let kind = |id: &Id| spec.part(id).map(|part| part.kind);
        let free: Vec<&Id> = assembly
            .off()
            .filter(|part| assembly.obstacle_to_refitting(spec, part).is_none())
            .collect();
        let plug = free.iter().find(|part| kind(part) == Some(PartKind::Connector));
        let Some(part) = plug.or(free.first()).map(|part| Id::clone(part)) else {
            return steps;
        };
        steps.push(back_in_place(&part, spec));
        assembly.put_back(&part);
    }
}

fn back_in_place(part: &Id, spec: &VehicleSpec) -> Step {
    match spec.part(part).map(|part| part.kind) {
        Some(PartKind::Connector) => Step::Plug { connector: part.clone() },
        kind => Step::Refit { part: part.clone(), new_seal: kind == Some(PartKind::Valve) },
    }
}

/// One part that can go back, key off first; the next obstacle asks for the rest.
fn back(parts: &[Id], spec: &VehicleSpec, there: &Session) -> Vec<Step> {
    let sighted = there.vehicle_in_sight();
    let assembly = sighted.assembly();
    let free = parts
        .iter()
        .chain(assembly.off())
        .find(|part| assembly.is_off(part) && assembly.obstacle_to_refitting(spec, part).is_none());
    let Some(part) = free else { return Vec::new() };
    let mut steps = Vec::new();
    if sighted.key_on() || sighted.engine_runs() {
        steps.push(Step::Key { position: KeyPosition::Off });
    }
    steps.push(back_in_place(part, spec));
    steps
}
