//! Duties of the trade beside finding the fault: record, approval, proof, putting back, writing up.

use super::area::{Area, Kind};
use crate::faults::FaultName;
use crate::reasoning::belief::{Belief, was_refused};
use crate::reasoning::onlooker::Onlooker;
use crate::reasoning::remedy::Remedy;
use crate::reasoning::way::{put_back, way_to};
use crate::session::attempt::Entry;
use crate::session::event::Event;
use crate::session::step::{Ending, KeyPosition, Section, Step};
use crate::vehicle::error::VehicleError;
use crate::vehicle::run_record::Idling;
use std::collections::BTreeSet;

/// What the trade asks for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Duty {
    /// Codes on paper before anything is changed.
    RecordCodes,
    /// The freeze frame with them.
    RecordFrame,
    /// A diagnosis before a repair.
    Commit,
    /// The customer's approval before a repair.
    Approval,
    /// Everything back in its place.
    PutBack,
    /// Codes cleared after the repair.
    Clear,
    /// Codes read again with the key on.
    KeyOnCheck,
    /// A road test.
    RoadTest,
    /// Codes read again after it.
    Rescan,
    /// The record written.
    Write(Section),
    /// The vehicle handed back.
    HandOver,
    /// The vehicle handed back with what the customer has declined.
    HandOverDeclined,
}

impl Duty {
    /// The word by which files name it.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::RecordCodes => "record-codes",
            Self::RecordFrame => "record-freeze-frame",
            Self::Commit => "commit",
            Self::Approval => "approval",
            Self::PutBack => "put-back",
            Self::Clear => "clear",
            Self::KeyOnCheck => "key-on-check",
            Self::RoadTest => "road-test",
            Self::Rescan => "rescan",
            Self::Write(Section::Concern) => "write-concern",
            Self::Write(Section::Cause) => "write-cause",
            Self::Write(Section::Correction) => "write-correction",
            Self::HandOver => "hand-over",
            Self::HandOverDeclined => "hand-over-declined",
        }
    }

    pub(super) const fn area(self) -> Area {
        match self {
            Self::RecordCodes
            | Self::RecordFrame
            | Self::Clear
            | Self::KeyOnCheck
            | Self::Rescan => Area::Memory,
            Self::RoadTest => Area::Road,
            Self::PutBack => Area::WhatIsOff,
            Self::Commit
            | Self::Approval
            | Self::Write(_)
            | Self::HandOver
            | Self::HandOverDeclined => Area::Paper,
        }
    }

    pub(super) const fn kind(self) -> Kind {
        match self {
            Self::RecordCodes
            | Self::RecordFrame
            | Self::Clear
            | Self::KeyOnCheck
            | Self::Rescan => Kind::Reading,
            Self::RoadTest => Kind::Road,
            Self::PutBack => Kind::PuttingBack,
            Self::Commit
            | Self::Approval
            | Self::Write(_)
            | Self::HandOver
            | Self::HandOverDeclined => Kind::Paper,
        }
    }

    /// The steps that do it; none for what only the apprentice can word.
    pub(super) fn steps(self, onlooker: &Onlooker) -> Result<Vec<Step>, VehicleError> {
        let Some(likeliest) = onlooker.likeliest() else { return Ok(Vec::new()) };
        let briefing = onlooker.briefing();
        let step = match self {
            Self::RecordCodes | Self::KeyOnCheck | Self::Rescan => Step::ReadCodes,
            Self::RecordFrame => Step::ReadFreezeFrame,
            Self::Commit => Step::Commit { fault: likeliest_fault(onlooker.belief()) },
            Self::Approval => Step::AskApproval,
            Self::PutBack => {
                return Ok(put_back(&briefing.vehicle, likeliest.vehicle_in_sight()));
            }
            Self::Clear => Step::ClearCodes,
            Self::RoadTest => {
                // The longest road asks the most of the monitors.
                let longest = briefing.routes.iter().max_by_key(|(_, route)| route.minutes);
                let route = longest.map_or(&briefing.customers_route, |(name, _)| name);
                Step::Drive { route: route.clone(), stop_after: None }
            }
            Self::Write(_) => return Ok(Vec::new()),
            Self::HandOver => Step::HandOver { ending: Ending::Repaired },
            Self::HandOverDeclined => Step::HandOver { ending: Ending::Declined },
        };
        let mut steps = way_to(likeliest, &step)?.unwrap_or_default();
        if matches!(self, Self::RoadTest) && likeliest.vehicle_in_sight().key_on() {
            steps.insert(0, Step::Key { position: KeyPosition::Off });
        }
        steps.push(step);
        Ok(steps)
    }
}

/// The likeliest fault, none where nothing is likelier.
fn likeliest_fault(belief: &Belief) -> Option<FaultName> {
    let by_fault = belief.by_fault();
    by_fault.into_iter().max_by(|a, b| a.1.total_cmp(&b.1)).and_then(|(fault, _)| fault)
}

/// What has to be done before a repair is begun.
pub(super) fn before_repair(log: &[Entry]) -> Option<Duty> {
    let has = |wanted: fn(&Event) -> bool| events(log).any(|(_, event)| wanted(event));
    if !has(|event| matches!(event, Event::Codes { .. })) {
        return Some(Duty::RecordCodes);
    }
    if !has(|event| matches!(event, Event::FreezeFrame { .. })) {
        return Some(Duty::RecordFrame);
    }
    if !has(|event| matches!(event, Event::Committed { .. })) {
        return Some(Duty::Commit);
    }
    let answered = |event: &Event| {
        matches!(event, Event::Approved | Event::ApprovedUpTo { .. } | Event::MoreDeclined { .. })
    };
    (!has(answered)).then_some(Duty::Approval)
}

/// What has to be done about a repair that lies beyond what the customer has approved: name what is wrong and ask, and once the
/// answer was no, put back, write that down, hand back.
pub(super) fn beyond_approval(onlooker: &Onlooker, log: &[Entry], is_final: bool) -> Duty {
    if !is_final {
        let after = last_repair(log).unwrap_or_default();
        let is_named = first_after(log, after, |event| matches!(event, Event::Committed { .. }));
        return if is_named.is_none() { Duty::Commit } else { Duty::Approval };
    }
    if onlooker.likeliest().is_some_and(|session| session.parts_off().next().is_some()) {
        return Duty::PutBack;
    }
    let no = events(log)
        .filter(|(_, event)| matches!(event, Event::MoreDeclined { .. }))
        .map(|(number, _)| number)
        .last();
    let is_written = |section: Section, after: Option<usize>| {
        events(log).any(|(number, event)| {
            after.is_none_or(|after| number > after) && *event == Event::Written { section }
        })
    };
    [(Section::Concern, None), (Section::Cause, None), (Section::Correction, no)]
        .into_iter()
        .find(|(section, after)| !is_written(*section, *after))
        .map_or(Duty::HandOverDeclined, |(section, _)| Duty::Write(section))
}

/// What is missing of the proof of a repair that was done, as long as nothing speaks against the repair.
pub(super) fn before_proving(onlooker: &Onlooker, log: &[Entry]) -> Option<Duty> {
    let repair = last_repair(log)?;
    let own = onlooker.briefing().vehicle.own_codes();
    let cleared = first_after(log, repair, |event| matches!(event, Event::CodesCleared));
    let failed =
        events(log).filter(|(number, _)| *number > cleared.unwrap_or(repair)).any(|(_, event)| {
            match event {
                Event::Codes { stored, pending, .. } => {
                    cleared.is_some() && stored.iter().chain(pending).any(|code| own.contains(code))
                }
                Event::Driven { engine_lamp, quality, .. } => {
                    *engine_lamp || *quality != Idling::Smooth
                }
                _ => false,
            }
        });
    if failed { None } else { Some(next_of_proof(onlooker, log, cleared, true)) }
}

/// What is left to do where nothing more is looked for.
pub(super) fn to_close(onlooker: &Onlooker, log: &[Entry]) -> Duty {
    let repair = last_repair(log);
    let cleared = repair
        .and_then(|repair| first_after(log, repair, |event| matches!(event, Event::CodesCleared)));
    if repair.is_none()
        && let Some(duty @ (Duty::RecordCodes | Duty::RecordFrame)) = before_repair(log)
    {
        return duty;
    }
    next_of_proof(onlooker, log, cleared, repair.is_some())
}

fn next_of_proof(
    onlooker: &Onlooker,
    log: &[Entry],
    cleared: Option<usize>,
    is_repaired: bool,
) -> Duty {
    let is_off = onlooker.likeliest().is_some_and(|session| session.parts_off().next().is_some());
    if is_off {
        return Duty::PutBack;
    }
    let read = |event: &Event| matches!(event, Event::Codes { .. });
    let start = match (cleared, is_repaired) {
        (None, true) => return Duty::Clear,
        (Some(cleared), _) => {
            if first_after(log, cleared, read).is_none() {
                return Duty::KeyOnCheck;
            }
            cleared
        }
        (None, false) => 0,
    };
    let driven = |event: &Event| matches!(event, Event::Driven { .. });
    let Some(road) = first_after(log, start, driven) else { return Duty::RoadTest };
    if first_after(log, road, read).is_none() {
        return Duty::Rescan;
    }
    let written: BTreeSet<Section> = events(log)
        .filter_map(|(_, event)| match event {
            Event::Written { section } => Some(*section),
            _ => None,
        })
        .collect();
    [Section::Concern, Section::Cause, Section::Correction]
        .into_iter()
        .find(|section| !written.contains(section))
        .map_or(Duty::HandOver, Duty::Write)
}

fn events(log: &[Entry]) -> impl Iterator<Item = (usize, &Event)> {
    log.iter()
        .enumerate()
        .flat_map(|(number, entry)| entry.events.iter().map(move |event| (number, event)))
}

/// The first entry after another one in which something followed.
fn first_after(log: &[Entry], after: usize, wanted: impl Fn(&Event) -> bool) -> Option<usize> {
    events(log).find(|(number, event)| *number > after && wanted(event)).map(|(number, _)| number)
}

fn last_repair(log: &[Entry]) -> Option<usize> {
    log.iter().rposition(|entry| Remedy::in_step(&entry.step).is_some() && !was_refused(entry))
}
