//! What the customer has declined: faults that were found and offered, and that stay.

use super::evidence::{events, repairs};
use super::thinking::mended;
use crate::assessment::mark::ProofPart;
use crate::faults::Fault;
use crate::reasoning::consent::Consent;
use crate::reasoning::remedy::Remedy;
use crate::session::attempt::Entry;
use crate::session::event::Event;
use crate::session::setup::Briefing;
use crate::session::step::{Ending, Section};

/// For each fault the entry in which the customer declined its repair. It counts where the vehicle is handed back as such, the
/// diagnosis came before, no repair of it would have lain within what was left, and none was done.
pub(in crate::assessment) fn declined(
    log: &[Entry],
    faults: &[Fault],
    ending: Ending,
    briefing: &Briefing,
) -> Vec<Option<usize>> {
    if ending != Ending::Declined {
        return vec![None; faults.len()];
    }
    let said_no = |fault: &Fault| {
        events(log)
            .filter(|(_, event)| matches!(event, Event::MoreDeclined { .. }))
            .map(|(number, _)| number)
            .find(|number| {
                let before = log.get(..=*number).unwrap_or(log);
                let consent = Consent::of(before, briefing);
                let is_named = events(before).any(|(_, event)| match event {
                    Event::Committed { fault: Some(named) } => {
                        Remedy::of(named).iter().any(|remedy| remedy.fixes(&fault.name))
                    }
                    _ => false,
                });
                let ways = Remedy::of(&fault.name);
                is_named && ways.iter().all(|remedy| consent.declines(remedy, briefing))
            })
    };
    let mended = mended(log, faults);
    faults
        .iter()
        .zip(mended)
        .map(|(fault, is_mended)| if is_mended { None } else { said_no(fault) })
        .collect()
}

/// Whether something was declined, and nothing is wrong besides.
pub(in crate::assessment) fn is_all_settled(
    log: &[Entry],
    faults: &[Fault],
    declined: &[Option<usize>],
) -> bool {
    declined.iter().any(Option::is_some)
        && mended(log, faults)
            .iter()
            .zip(declined)
            .all(|(is_mended, no)| *is_mended || no.is_some())
}

/// What stands for the proof where the customer has declined what is still wrong: a vehicle with its fault passes no road
/// test. Codes and freeze frame were kept, what was repaired left no codes behind, and the record says that more was declined.
pub(in crate::assessment) fn proof_of_declined(
    log: &[Entry],
    parts: &[(ProofPart, Option<usize>)],
) -> Vec<(ProofPart, Option<usize>)> {
    let is_repaired = repairs(log).next().is_some();
    let mut shown: Vec<(ProofPart, Option<usize>)> = parts
        .iter()
        .filter(|(part, _)| {
            *part == ProofPart::Recorded || (*part == ProofPart::Cleared && is_repaired)
        })
        .copied()
        .collect();
    let no = events(log)
        .filter(|(_, event)| matches!(event, Event::MoreDeclined { .. }))
        .map(|(number, _)| number)
        .last();
    let written = events(log)
        .filter(|(number, _)| no.is_some_and(|no| *number > no))
        .find(|(_, event)| matches!(event, Event::Written { section: Section::Correction }))
        .map(|(number, _)| number);
    shown.push((ProofPart::Declined, written));
    shown
}
