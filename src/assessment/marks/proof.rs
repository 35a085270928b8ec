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

/// A code from elsewhere that was erased.
pub(in crate::assessment) struct Erased {
    code: Code,
    /// The entry that erased it.
    cleared: usize,
    /// The entry in which the customer was told of it.
    reported: Option<usize>,
}

/// The codes from elsewhere that were shown and then cleared. What stays in the memory can still be read
/// by whoever comes next; what nobody has read is a breach of its own.
pub(in crate::assessment) fn erased<'c>(
    log: &[Entry],
    elsewhere: impl Iterator<Item = &'c Code>,
) -> Vec<Erased> {
    let first = |from: usize, wanted: &dyn Fn(&Event) -> bool| {
        events(log).find(|(number, event)| *number >= from && wanted(event)).map(|(n, _)| n)
    };
    let codes: BTreeSet<Code> = elsewhere.copied().collect();
    codes
        .into_iter()
        .filter_map(|code| {
            let shown = first(0, &|event| match event {
                Event::Codes { stored, pending, .. } => {
                    stored.contains(&code) || pending.contains(&code)
                }
                Event::FreezeFrame { frame } => frame.is_some_and(|it| it.code == Some(code)),
                _ => false,
            })?;
            let cleared = first(shown, &|event| matches!(event, Event::CodesCleared))?;
            let is_told = |event: &Event| *event == Event::CodeReported { code };
            Some(Erased { code, cleared, reported: first(0, &is_told) })
        })
        .collect()
}

/// The parts of the proof, each with the same share. Where codes from elsewhere were erased, to tell the
/// customer of them is one part more: a lamp that goes out over a fault that nobody mentions proves less.
/// `unproved` says that it was handed back as repaired without what nobody may leave out; that fails the
/// session, and is remarked here without taking points besides those of the parts.
pub(in crate::assessment) fn proof(
    log: &[Entry],
    parts: &[(ProofPart, Option<usize>)],
    erased: &[Erased],
    unproved: bool,
) -> Mark {
    let shown = parts.iter().filter(|(_, entry)| entry.is_some()).count();
    let mut remarks: Vec<Remark> = parts
        .iter()
        .map(|(part, entry)| Remark {
            entry: *entry,
            about: About::Proof(*part),
            good: entry.is_some(),
        })
        .collect();
    let reported = erased.iter().filter(|code| code.reported.is_some()).count();
    remarks.extend(erased.iter().map(|it| {
        let good = it.reported.is_some();
        let about = About::Unrelated { code: it.code, reported: good };
        Remark { entry: it.reported.or(Some(it.cleared)), about, good }
    }));
    if unproved {
        let closed = events(log).find(|(_, event)| matches!(event, Event::HandedOver { .. }));
        remarks.push(Remark::bad(closed.map(|(number, _)| number), About::ClosedUnproved));
    }
    let (mut earned, mut of) = (shown as f64, parts.len() as f64);
    if !erased.is_empty() {
        earned += reported as f64 / erased.len() as f64;
        of += 1.0;
    }
    Mark::new(MarkCategory::Proof, earned / of, remarks)
}
