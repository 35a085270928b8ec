//! What the instruments showed last, from the log.

use crate::session::attempt::Entry;
use crate::session::event::Event;
use crate::session::setup::Briefing;
use crate::session::step::Step;
use crate::vehicle::spec::Id;
use crate::wording::caption::caption;
use crate::wording::catalogue::Words;
use crate::wording::event_words;
use crate::workshop::view::tray::{End, PredictionView, ReadingView, TrayView};

/// What the meter showed last, if it is still set and put as it was then: a reading of other points must not stand
/// beside these.
#[must_use]
pub fn reading(
    log: &[Entry],
    tray: &TrayView,
    briefing: &Briefing,
    words: &Words,
) -> Option<ReadingView> {
    let (index, entry) = log.iter().enumerate().rev().find(|(_, entry)| {
        let is_read = |event: &Event| {
            matches!(event, Event::Reading { .. } | Event::Watched { .. } | Event::MeterFuseBlew)
        };
        entry.events.iter().any(is_read)
    })?;
    let (function, red, black) = match &entry.step {
        Step::Measure { function, red, black }
        | Step::MeasureFromFront { function, red, black }
        | Step::Wiggle { function, red, black, .. } => (function, red, black),
        _ => return None,
    };
    let is_at = |end: End, id: &Id| tray.ends.get(&end)?.place().map(|place| place.id == *id);
    let is_same = tray.meter.function == *function
        && is_at(End::Red, red) == Some(true)
        && is_at(End::Black, black) == Some(true);
    let display = entry.events.iter().find_map(|event| match event {
        Event::Reading { display, .. } => Some(*display),
        _ => None,
    });
    is_same.then(|| ReadingView {
        number: index + 1,
        display,
        prediction: prediction_of(log, index, briefing, words),
    })
}

/// What had been said of what an entry showed.
#[must_use]
pub fn prediction_of(
    log: &[Entry],
    index: usize,
    briefing: &Briefing,
    words: &Words,
) -> Option<PredictionView> {
    let is_check = |event: &&Event| {
        matches!(event, Event::PredictionChecked { .. } | Event::SignChecked { .. })
    };
    let checked = log.get(index)?.events.iter().find(is_check)?;
    let (met, of_number) = match checked {
        Event::PredictionChecked { met, .. } => (*met, true),
        Event::SignChecked { met } => (*met, false),
        _ => return None,
    };
    let said = log.get(..index)?.iter().rev().find(|entry| {
        is_prediction(&entry.step, of_number) && entry.events.contains(&Event::Predicted)
    })?;
    Some(PredictionView {
        said: caption(&said.step, words),
        outcome: event_words::line(checked, words, briefing),
        met,
    })
}

/// What was said last and waits for what comes: of a display, or of what shows no number.
#[must_use]
pub fn open_prediction(log: &[Entry], of_number: bool, words: &Words) -> Option<String> {
    let is_said = |entry: &&Entry| {
        is_prediction(&entry.step, of_number) && entry.events.contains(&Event::Predicted)
    };
    let is_checked = |event: &Event| match event {
        Event::PredictionChecked { .. } => of_number,
        Event::SignChecked { .. } => !of_number,
        _ => false,
    };
    let newest =
        log.iter().rev().find(|entry| is_said(entry) || entry.events.iter().any(is_checked))?;
    is_said(&newest).then(|| caption(&newest.step, words))
}

const fn is_prediction(step: &Step, of_number: bool) -> bool {
    match step {
        Step::Predict { .. } => of_number,
        Step::PredictSign { .. } => !of_number,
        _ => false,
    }
}
