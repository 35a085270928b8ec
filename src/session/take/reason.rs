//! Suspects, predictions, notes and the diagnosis. Thinking costs no time.

use super::Refusal;
use crate::faults::{FaultName, places};
use crate::instruments::multimeter::{Display, Prefix};
use crate::session::attempt::{Prediction, Session};
use crate::session::event::Event;
use crate::session::journal::Mode;
use crate::session::step::{Bound, Quantity, Sign, Step};

pub(super) fn note(session: &mut Session, step: &Step) -> Result<Vec<Event>, Refusal> {
    match step {
        Step::Suspect { fault, percent } => suspect(session, fault, *percent),
        Step::Predict { least, most, of } => {
            predict(session, Prediction { least: *least, most: *most, of: *of })
        }
        Step::PredictSign { sign } => {
            session.progress.sign = Some(*sign);
            Ok(vec![Event::Predicted])
        }
        Step::Note { .. } => Ok(vec![Event::Noted]),
        Step::Commit { fault } => commit(session, fault.as_ref()),
        Step::AskHint { .. } if session.briefing.mode == Mode::Assessed => Err(Refusal::NoHints),
        Step::AskHint { grade } => Ok(vec![Event::HintAsked { grade: *grade }]),
        _ => Ok(Vec::new()),
    }
}

fn known(session: &Session, fault: &FaultName) -> Result<(), Refusal> {
    if places(&session.briefing.vehicle).contains(fault) {
        Ok(())
    } else {
        Err(Refusal::NoSuchPlace(fault.place.clone()))
    }
}

fn suspect(session: &mut Session, fault: &FaultName, percent: u8) -> Result<Vec<Event>, Refusal> {
    known(session, fault)?;
    if percent > 100 {
        return Err(Refusal::OutOfRange);
    }
    let others: u16 = session
        .progress
        .suspects
        .iter()
        .filter(|(name, _)| *name != fault)
        .map(|(_, percent)| u16::from(*percent))
        .sum();
    let total = others + u16::from(percent);
    if total > 100 {
        return Err(Refusal::TooMuchConfidence(total));
    }
    session.progress.suspects.insert(fault.clone(), percent);
    Ok(vec![Event::Suspected { fault: fault.clone(), percent }])
}

fn predict(session: &mut Session, prediction: Prediction) -> Result<Vec<Event>, Refusal> {
    let least = prediction.least;
    let sensible = least.is_finite()
        && match prediction.most {
            Bound::Value(most) => most.is_finite() && least <= most,
            Bound::OverLimit => true,
        };
    if !sensible {
        return Err(Refusal::OutOfRange);
    }
    session.progress.prediction = Some(prediction);
    Ok(vec![Event::Predicted])
}

/// Puts behind whatever was predicted and is shown now whether it is what was predicted. A number waits
/// for the next display, whatever that reads; a sign for the next test of its own kind.
pub(super) fn compare(session: &mut Session, events: &mut Vec<Event>) {
    let found: Vec<(usize, Event)> = events
        .iter()
        .enumerate()
        .filter_map(|(place, event)| compare_one(session, event).map(|it| (place + 1, it)))
        .collect();
    for (place, checked) in found.into_iter().rev() {
        events.insert(place, checked);
    }
}

fn compare_one(session: &mut Session, event: &Event) -> Option<Event> {
    match event {
        Event::Reading { function, display, .. } => {
            compare_reading(session, Quantity::from(*function), *display)
        }
        Event::GaugeRead { bar, .. } => {
            let display = Display::Value { value: *bar, decimals: 1, prefix: Prefix::One };
            compare_reading(session, Quantity::Bar, display)
        }
        // Before predictions had a unit they waited for the meter and the gauge alone.
        Event::Clamped { display, .. }
            if session.progress.prediction.is_some_and(|it| it.of.is_some()) =>
        {
            compare_reading(session, Quantity::Amps, *display)
        }
        _ => {
            let met = is_sign(session.progress.sign?, event)?;
            session.progress.sign = None;
            Some(Event::SignChecked { met })
        }
    }
}

fn compare_reading(session: &mut Session, read: Quantity, display: Display) -> Option<Event> {
    let Prediction { least, most, of } = session.progress.prediction.take()?;
    let other_quantity = of.is_some_and(|of| of != read);
    Some(Event::PredictionChecked {
        met: !other_quantity && meets(display, least, most),
        other_quantity,
    })
}

/// Whether what is shown is the sign; `None` for what is of another kind.
fn is_sign(sign: Sign, event: &Event) -> Option<bool> {
    match (sign, event) {
        (Sign::Click(predicted), Event::Heard { current_on: true, click, .. }) => {
            Some(predicted == *click)
        }
        (Sign::Glow(predicted), Event::LampGlows { glow, .. }) => Some(predicted == *glow),
        (Sign::Code(code), Event::Codes { stored, pending, .. }) => {
            Some(stored.contains(&code) || pending.contains(&code))
        }
        (Sign::NoCodes, Event::Codes { stored, pending, .. }) => {
            Some(stored.is_empty() && pending.is_empty())
        }
        _ => None,
    }
}

fn meets(display: Display, least: f64, most: Bound) -> bool {
    match (display, most) {
        (Display::OverLimit, Bound::OverLimit) => true,
        (Display::Value { value, .. }, Bound::OverLimit) => value >= least,
        (Display::Value { value, .. }, Bound::Value(most)) => least <= value && value <= most,
        (Display::OverLimit, Bound::Value(_)) => false,
    }
}

fn commit(session: &mut Session, fault: Option<&FaultName>) -> Result<Vec<Event>, Refusal> {
    if let Some(fault) = fault {
        known(session, fault)?;
    }
    session.progress.committed = true;
    Ok(vec![Event::Committed { fault: fault.cloned() }])
}
