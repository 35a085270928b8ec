//! The mark for proving the repair.

use super::evidence::{events, repairs};
use crate::assessment::mark::{About, Mark, ProofPart, Remark};
use crate::assessment::rubric::MarkCategory;
use crate::control_module::code::Code;
use crate::session::attempt::Entry;
use crate::session::event::Event;
use std::collections::BTreeSet;

/// Each part of the proof with the entry that showed it.
pub(in crate::assessment) fn proof_parts(
    log: &[Entry],
    known: &BTreeSet<Code>,
) -> Vec<(ProofPart, Option<usize>)> {
    let at_issue = codes_at_issue(log, known);
    let last_repair = repairs(log).map(|(number, _)| number).last();
    let cleared_after = |after: Option<usize>| {
        events(log)
            .filter(|(number, _)| after.is_none_or(|after| *number > after))
            .find(|(_, event)| matches!(event, Event::CodesCleared))
            .map(|(number, _)| number)
    };
    let first_clearing = cleared_after(None).unwrap_or(log.len());
    let clearing = cleared_after(last_repair);
    let read = |from: usize, wanted: fn(&Event) -> bool| {
        events(log).find(|(number, event)| *number >= from && wanted(event)).map(|(n, _)| n)
    };
    let codes_read = read(0, |event| matches!(event, Event::Codes { .. }));
    let frame_read = read(0, |event| matches!(event, Event::FreezeFrame { .. }));
    let recorded = match (codes_read, frame_read) {
        (Some(codes), Some(frame)) if codes.max(frame) < first_clearing => Some(codes.max(frame)),
        _ => None,
    };
    // After a job without a repair the road and the rescan stand for themselves.
    let start = clearing.or(if last_repair.is_none() { Some(0) } else { None });
    let road = start.and_then(|start| {
        events(log).filter(|(number, _)| *number > start).find_map(|(number, event)| match event {
            Event::Driven { engine_lamp: false, decided, .. }
                if at_issue.iter().all(|code| decided.contains(code)) =>
            {
                Some(number)
            }
            _ => None,
        })
    });
    let clean = |number: usize, event: &Event, before: Option<usize>, after: Option<usize>| {
        let (Some(after), true) = (after, before.is_none_or(|before| number < before)) else {
            return false;
        };
        number > after
            && matches!(event, Event::Codes { stored, pending, .. }
                if !stored.iter().chain(pending).any(|code| known.contains(code)))
    };
    let key_on = events(log)
        .find(|(number, event)| clean(*number, event, road, clearing))
        .map(|(number, _)| number);
    let rescan = events(log)
        .find(|(number, event)| clean(*number, event, None, road))
        .map(|(number, _)| number);
    vec![
        (ProofPart::Recorded, recorded),
        (ProofPart::Cleared, clearing),
        (ProofPart::KeyOnCheck, key_on),
        (ProofPart::RoadTest, road),
        (ProofPart::Rescan, rescan),
    ]
}

/// The codes of this vehicle's own faults in the first reading of codes.
fn codes_at_issue(log: &[Entry], known: &BTreeSet<Code>) -> BTreeSet<Code> {
    events(log)
        .find_map(|(_, event)| match event {
            Event::Codes { stored, pending, .. } => Some(
                stored.iter().chain(pending).filter(|code| known.contains(code)).copied().collect(),
            ),
            _ => None,
        })
        .unwrap_or_default()
}

pub(in crate::assessment) fn proof(parts: &[(ProofPart, Option<usize>)]) -> Mark {
    let shown = parts.iter().filter(|(_, entry)| entry.is_some()).count();
    let remarks = parts
        .iter()
        .map(|(part, entry)| Remark {
            entry: *entry,
            about: About::Proof(*part),
            good: entry.is_some(),
        })
        .collect();
    Mark::new(MarkCategory::Proof, shown as f64 / parts.len() as f64, remarks)
}
