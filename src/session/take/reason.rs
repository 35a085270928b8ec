//! Suspects, predictions and the diagnosis. Thinking costs no time.

use super::Refusal;
use crate::faults::{FaultName, places};
use crate::session::attempt::Session;
use crate::session::event::Event;
use crate::session::journal::Mode;
use crate::session::step::{Bound, Step};

pub(super) fn note(session: &mut Session, step: &Step) -> Result<Vec<Event>, Refusal> {
    match step {
        Step::Suspect { fault, percent } => suspect(session, fault, *percent),
        Step::Predict { least, most } => predict(session, *least, *most),
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

fn predict(session: &mut Session, least: f64, most: Bound) -> Result<Vec<Event>, Refusal> {
    let sensible = least.is_finite()
        && match most {
            Bound::Value(most) => most.is_finite() && least <= most,
            Bound::OverLimit => true,
        };
    if !sensible {
        return Err(Refusal::OutOfRange);
    }
    session.progress.prediction = Some((least, most));
    Ok(vec![Event::Predicted])
}

fn commit(session: &mut Session, fault: Option<&FaultName>) -> Result<Vec<Event>, Refusal> {
    if let Some(fault) = fault {
        known(session, fault)?;
    }
    session.progress.committed = true;
    Ok(vec![Event::Committed { fault: fault.cloned() }])
}
