//! Marks for handling: access, readings, care, the record.

use super::evidence::{breaches, events, spoils_reading};
use crate::assessment::mark::{About, Mark, Remark};
use crate::assessment::rubric::MarkCategory;
use crate::session::attempt::Entry;
use crate::session::event::{Breach, Event};
use crate::session::step::Section;
use crate::vehicle::spec::Id;
use std::collections::{BTreeMap, BTreeSet};

/// What taking a part off a second time takes from the mark.
const DETOUR_COST: f64 = 0.25;
/// What one spoilt reading takes from its half of the mark.
const SPOILT_COST: f64 = 0.25;
/// Predictions for the full half of the mark; fewer where fewer readings were taken.
const ENOUGH_PREDICTIONS: usize = 3;
/// What a missed prediction is worth beside a met one: to say what a sound part would show, and
/// then to see that it does not, is how a fault is found.
const MISSED_WORTH: f64 = 0.75;
/// What a prediction of another quantity than was read is worth: whoever says volts and reads ohms has
/// not known what the instrument would show.
const OTHER_QUANTITY_WORTH: f64 = 0.0;
/// What one breach of care takes from the mark.
const BREACH_COST: f64 = 0.25;

pub(in crate::assessment) fn access_order(log: &[Entry]) -> Mark {
    let mut times_off: BTreeMap<&Id, usize> = BTreeMap::new();
    let mut remarks = Vec::new();
    for (number, event) in events(log) {
        let (Event::Removed { part } | Event::Unplugged { connector: part }) = event else {
            continue;
        };
        let times = times_off.entry(part).or_insert(0);
        *times += 1;
        // Connectors come off and on as tests need it; covers and valves need come off but once.
        if *times > 1 && matches!(event, Event::Removed { .. }) {
            remarks.push(Remark::bad(Some(number), About::RemovedAgain(part.clone())));
        }
    }
    let share = 1.0 - DETOUR_COST * remarks.len() as f64;
    if remarks.is_empty() {
        remarks.push(Remark::good(None, About::NoDetour));
    }
    Mark::new(MarkCategory::AccessOrder, share, remarks)
}

pub(in crate::assessment) fn reading(log: &[Entry]) -> Mark {
    let mut remarks = Vec::new();
    let mut spoilt = 0;
    let mut worth = 0.0;
    let mut predictions = 0;
    let mut readings = 0;
    for (number, event) in events(log) {
        match event {
            Event::AgainstCare { breach } if spoils_reading(breach) => {
                spoilt += 1;
                remarks.push(Remark::bad(Some(number), About::Breach(breach.clone())));
            }
            Event::Reading { .. } => readings += 1,
            Event::PredictionChecked { other_quantity: true, .. } => {
                predictions += 1;
                worth += OTHER_QUANTITY_WORTH;
                remarks.push(Remark::bad(Some(number), About::OtherQuantity));
            }
            Event::PredictionChecked { met, .. } => {
                predictions += 1;
                worth += if *met { 1.0 } else { MISSED_WORTH };
                let about = About::Prediction { met: *met };
                remarks.push(Remark { entry: Some(number), about, good: *met });
            }
            Event::SignChecked { met } => {
                predictions += 1;
                worth += if *met { 1.0 } else { MISSED_WORTH };
                let about = About::Sign { met: *met };
                remarks.push(Remark { entry: Some(number), about, good: *met });
            }
            _ => {}
        }
    }
    if spoilt == 0 {
        remarks.push(Remark::good(None, About::SoundReadings));
    }
    let enough = ENOUGH_PREDICTIONS.min(readings);
    if predictions < enough {
        remarks.push(Remark::bad(None, About::FewPredictions(predictions)));
    }
    let sound = (1.0 - SPOILT_COST * f64::from(spoilt)).max(0.0);
    let foretold = if enough == 0 { 1.0 } else { worth / predictions.max(enough) as f64 };
    Mark::new(MarkCategory::Reading, 0.5 * sound + 0.5 * foretold, remarks)
}

pub(in crate::assessment) fn care(log: &[Entry], left_off: &[Id]) -> Mark {
    // Each kind of breach is punished once: a habit is one fault of the apprentice, not many.
    let mut kinds: BTreeSet<&Breach> = BTreeSet::new();
    let mut remarks = Vec::new();
    for (number, breach) in breaches(log).filter(|(_, breach)| !spoils_reading(breach)) {
        if kinds.insert(breach) {
            remarks.push(Remark::bad(Some(number), About::Breach(breach.clone())));
        }
    }
    for part in left_off {
        remarks.push(Remark::bad(None, About::LeftOff(part.clone())));
    }
    let share = 1.0 - BREACH_COST * remarks.len() as f64;
    if remarks.is_empty() {
        remarks.push(Remark::good(None, About::NoBreach));
    }
    Mark::new(MarkCategory::Care, share, remarks)
}

/// Completeness alone: what the words are worth is for a person to judge.
pub(in crate::assessment) fn record(log: &[Entry]) -> Mark {
    let mut written = 0;
    let mut remarks = Vec::new();
    for wanted in [Section::Concern, Section::Cause, Section::Correction] {
        let entry = events(log).find_map(|(number, event)| match event {
            Event::Written { section } if *section == wanted => Some(number),
            _ => None,
        });
        written += usize::from(entry.is_some());
        remarks.push(Remark { entry, about: About::Written(wanted), good: entry.is_some() });
    }
    Mark::new(MarkCategory::Record, written as f64 / 3.0, remarks)
}
