//! Steps and what followed from them, ready to be read.

use crate::session::attempt::{Entry, Session};
use crate::session::event::Event;
use crate::session::setup::Briefing;
use crate::session::step::Step;
use crate::wording::catalogue::Words;
use crate::wording::{caption, event_words, instrument_words, place, step_words};
use crate::workshop::view::case::{LogLine, LoggedStep, Tone};

/// An entry of the log in words.
pub fn logged(number: usize, entry: &Entry, briefing: &Briefing, words: &Words) -> LoggedStep {
    let is_cost = |event: &&Event| matches!(event, Event::Spent { .. });
    let say = |event: &Event| match event {
        // The panels' font has no bars for the plot of the terminal.
        Event::Captured { valve, capture } => {
            instrument_words::captured_figures(valve, capture, words)
        }
        _ => event_words::line(event, words, briefing),
    };
    LoggedStep {
        number,
        step: step_words::line(&entry.step),
        cost: entry.events.iter().find(is_cost).map(say).unwrap_or_default(),
        lines: entry
            .events
            .iter()
            .filter(|event| !is_cost(event))
            .map(|event| LogLine { text: say(event), tone: tone(event) })
            .collect(),
        heard: None,
    }
}

const fn tone(event: &Event) -> Tone {
    match event {
        Event::Caution { .. } => Tone::Caution,
        Event::AgainstCare { .. } => Tone::Breach,
        Event::Refused { .. } | Event::NoAnswer { .. } => Tone::Refused,
        _ => Tone::Plain,
    }
}

/// Texts that a record of this session can be written with: the concern as the customer has it,
/// the diagnoses committed to, and the repairs done.
pub fn texts_for_record(session: &Session, words: &Words) -> Vec<String> {
    let mut texts = vec![session.briefing().job.concern.clone()];
    for entry in session.log() {
        let refused = entry.events.iter().any(|event| matches!(event, Event::Refused { .. }));
        let text = match &entry.step {
            Step::Commit { fault } => place::diagnosis(fault.as_ref(), words),
            Step::Fit { .. }
            | Step::Clean { .. }
            | Step::Mend { .. }
            | Step::Replace { .. }
            | Step::TopUpOil
            | Step::ChangeOil { .. } => caption::caption(&entry.step, words),
            _ => continue,
        };
        if !refused && !texts.contains(&text) {
            texts.push(text);
        }
    }
    texts
}
