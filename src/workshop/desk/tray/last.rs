//! What the tool in hand showed last, from the log.

use super::tables;
use crate::session::attempt::Entry;
use crate::session::event::Event;
use crate::session::setup::Briefing;
use crate::session::step::Step;
use crate::vehicle::spec::Id;
use crate::wording::caption::caption;
use crate::wording::catalogue::Words;
use crate::wording::{event_words, instrument_words};
use crate::workshop::view::tray::{
    End, PredictionView, ReadingView, Request, Shown, Tool, TrayView,
};
use std::sync::Arc;

/// What the tool in hand showed last, if it is still set and put as it was then: a reading of other points must not
/// stand beside these.
#[must_use]
pub fn reading(
    log: &[Entry],
    tray: &TrayView,
    briefing: &Briefing,
    words: &Words,
) -> Option<ReadingView> {
    let is_use = |entry: &Entry| is_use(&entry.step, tray.tool, tray.request);
    let was_possible =
        |entry: &Entry| !entry.events.iter().any(|event| matches!(event, Event::Refused { .. }));
    let (index, entry) =
        log.iter().enumerate().rev().find(|(_, entry)| is_use(entry) && was_possible(entry))?;
    if !is_as_set(&entry.step, tray) {
        return None;
    }
    let told = entry.events.iter().filter(|event| is_told(event));
    Some(ReadingView {
        number: index + 1,
        shown: shown(entry, briefing, words),
        words: told.map(|event| in_words(event, briefing, words)).collect(),
        prediction: prediction_of(log, index, briefing, words),
    })
}

/// Whether a step is a use of a tool.
pub const fn is_use(step: &Step, tool: Tool, request: Request) -> bool {
    match tool {
        Tool::Meter => matches!(
            step,
            Step::Measure { .. } | Step::MeasureFromFront { .. } | Step::Wiggle { .. }
        ),
        Tool::Lamp => matches!(step, Step::TestLamp { .. }),
        Tool::Clamp => matches!(step, Step::Clamp { .. }),
        Tool::Power => matches!(step, Step::Power { .. }),
        Tool::Scope => matches!(step, Step::Scope { .. }),
        Tool::Gauge => matches!(step, Step::ReadGauge { .. }),
        Tool::Dipstick => matches!(step, Step::Dipstick),
        Tool::Drive => matches!(step, Step::Drive { .. }),
        Tool::Counter => matches!(
            step,
            Step::AskApproval
                | Step::Fit { .. }
                | Step::Clean { .. }
                | Step::Mend { .. }
                | Step::Replace { .. }
                | Step::TopUpOil
                | Step::ChangeOil { .. }
                | Step::ClearCodes
                | Step::Write { .. }
        ),
        Tool::Reader => match request {
            Request::Codes => matches!(step, Step::ReadCodes),
            Request::FreezeFrame => matches!(step, Step::ReadFreezeFrame),
            Request::Readiness => matches!(step, Step::ReadReadiness),
            Request::LiveData => matches!(step, Step::ReadLiveData | Step::ReadLiveItems { .. }),
            Request::TestResults => matches!(step, Step::ReadTestResults),
            Request::Vehicle => matches!(step, Step::ReadVehicleInformation),
        },
    }
}

/// Whether the tool is set and put as it was for a step.
fn is_as_set(step: &Step, tray: &TrayView) -> bool {
    let is_at = |end: End, id: &Id| {
        tray.ends.get(&end).and_then(|view| view.place()).is_some_and(|place| place.id == *id)
    };
    let is_read = |function, red: &Id, black: &Id, hand: Option<&Id>| {
        let held = tray.ends.get(&End::Hand).and_then(|view| view.place()).map(|place| &place.id);
        tray.meter.function == function
            && is_at(End::Red, red)
            && is_at(End::Black, black)
            && held == hand
    };
    match step {
        Step::Measure { function, red, black }
        | Step::MeasureFromFront { function, red, black } => is_read(*function, red, black, None),
        Step::Wiggle { place, function, red, black } => is_read(*function, red, black, Some(place)),
        Step::TestLamp { tip, clip } => is_at(End::Tip, tip) && is_at(End::Clip, clip),
        Step::Clamp { wire } => is_at(End::Jaws, wire),
        Step::Power { valve, .. } => is_at(End::PowerPlug, valve),
        Step::Scope { signal, valve } => tray.signal == *signal && is_at(End::ScopeProbe, valve),
        _ => true,
    }
}

/// Whether an event tells of what was read, rather than of what it cost or was against.
const fn is_told(event: &Event) -> bool {
    !matches!(
        event,
        Event::Spent { .. }
            | Event::Caution { .. }
            | Event::AgainstCare { .. }
            | Event::PredictionChecked { .. }
            | Event::SignChecked { .. }
    )
}

fn in_words(event: &Event, briefing: &Briefing, words: &Words) -> String {
    match event {
        Event::Captured { valve, capture } => {
            instrument_words::captured_figures(valve, capture, words)
        }
        _ => event_words::line(event, words, briefing),
    }
}

fn shown(entry: &Entry, briefing: &Briefing, words: &Words) -> Shown {
    let heard = |event: &Event| match event {
        Event::Heard { current_on, click, .. } => Some((*current_on, *click)),
        _ => None,
    };
    for event in &entry.events {
        match event {
            Event::Reading { display, .. } | Event::Clamped { display, .. } => {
                return Shown::Display(*display);
            }
            Event::LampGlows { glow, .. } => return Shown::Glow(*glow),
            Event::Captured { capture, .. } => return Shown::Course(Arc::new(capture.clone())),
            Event::GaugeRead { bar, swing, .. } => {
                return Shown::Needle { bar: *bar, swing: *swing };
            }
            Event::OilSeen { level, dry, .. } => {
                // The eye tells no more than a tenth.
                let level = (level * 10.0).round() / 10.0;
                return Shown::Stick((!dry).then_some(level));
            }
            _ => {}
        }
    }
    let tables: Vec<_> =
        entry.events.iter().flat_map(|event| tables::tables(event, briefing, words)).collect();
    let clicks: Vec<_> = entry.events.iter().filter_map(heard).collect();
    if !tables.is_empty() {
        Shown::Tables(tables)
    } else if !clicks.is_empty() {
        Shown::Clicks(clicks)
    } else {
        Shown::Words
    }
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
