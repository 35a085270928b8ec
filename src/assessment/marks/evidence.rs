//! Finding things in a log.

use crate::reasoning::remedy::Remedy;
use crate::session::attempt::Entry;
use crate::session::event::{Breach, Event};

/// Every event with the number of its entry.
pub(super) fn events(log: &[Entry]) -> impl Iterator<Item = (usize, &Event)> {
    log.iter()
        .enumerate()
        .flat_map(|(number, entry)| entry.events.iter().map(move |event| (number, event)))
}

/// Breaches with the number of their entry.
pub(super) fn breaches(log: &[Entry]) -> impl Iterator<Item = (usize, &Breach)> {
    events(log).filter_map(|(number, event)| match event {
        Event::AgainstCare { breach } => Some((number, breach)),
        _ => None,
    })
}

/// Repairs that were really done, with the number of their entry.
pub(super) fn repairs(log: &[Entry]) -> impl Iterator<Item = (usize, Remedy)> + '_ {
    log.iter().enumerate().filter_map(|(number, entry)| {
        let refused = entry.events.iter().any(|event| matches!(event, Event::Refused { .. }));
        Remedy::in_step(&entry.step).filter(|_| !refused).map(|remedy| (number, remedy))
    })
}

/// Whether a breach spoils a reading rather than a thing.
pub(in crate::assessment) const fn spoils_reading(breach: &Breach) -> bool {
    matches!(
        breach,
        Breach::OhmsOnLiveCircuit | Breach::OhmsWhilePlugged(_) | Breach::AmpsAcrossSource
    )
}
