//! Why a step was not possible, and what to do instead.

use super::catalogue::Words;
use super::job_words;
use super::place::{place, places};
use crate::session::event::{NoAnswer, Refusal};
use crate::vehicle::assembly::Obstacle;

/// Why a step was refused, with what to do instead.
#[must_use]
pub fn refused(reason: &Refusal, words: &Words) -> String {
    let why = why(reason, words);
    words.say("event-refused", &[("why", why.into())])
}

fn why(reason: &Refusal, words: &Words) -> String {
    let plain = |key: &str| words.say(key, &[]);
    match reason {
        Refusal::Obstacle(found) => obstacle(found, words),
        Refusal::NoSuchPlace(id) => {
            words.say("refusal-no-such-place", &[("place", id.as_str().into())])
        }
        Refusal::StillFitted(valve) => {
            words.say("refusal-still-fitted", &[("place", place(valve, words).into())])
        }
        Refusal::DoesNotFit(number) => {
            words.say("refusal-does-not-fit", &[("number", number.as_str().into())])
        }
        Refusal::EngineRuns => plain("refusal-engine-runs"),
        Refusal::EngineStands => plain("refusal-engine-stands"),
        Refusal::NoGauge => plain("refusal-no-gauge"),
        Refusal::GaugeFitted => plain("refusal-gauge-fitted"),
        Refusal::CannotRun(off) if off.is_empty() => plain("refusal-cannot-run-at-all"),
        Refusal::CannotRun(off) => {
            words.say("refusal-cannot-run", &[("places", places(off, words).into())])
        }
        Refusal::KeyOff => plain("refusal-key-off"),
        Refusal::KeyMustBeOff => plain("refusal-key-must-be-off"),
        Refusal::PowerForbidden => plain("refusal-power-forbidden"),
        Refusal::TooMuchConfidence(sum) => {
            words.say("refusal-too-much-confidence", &[("sum", (*sum).into())])
        }
        Refusal::NoHints => plain("refusal-no-hints"),
        Refusal::CodeNotRead(code) => {
            words.say("refusal-code-not-read", &[("code", code.to_string().into())])
        }
        Refusal::NoSuchTool(tool) => {
            words.say("refusal-no-such-tool", &[("tool", job_words::tool(*tool, words).into())])
        }
        Refusal::TimeIsUp => plain("refusal-time-is-up"),
        Refusal::Finished => plain("refusal-finished"),
        Refusal::OutOfRange => plain("refusal-out-of-range"),
    }
}

/// What is in the way, with what to do about it.
#[must_use]
pub fn obstacle(obstacle: &Obstacle, words: &Words) -> String {
    match obstacle {
        Obstacle::Behind(parts) => {
            words.say("obstacle-behind", &[("places", places(parts, words).into())])
        }
        Obstacle::StillOff(parts) => {
            words.say("obstacle-still-off", &[("places", places(parts, words).into())])
        }
        Obstacle::AlreadyOff => words.say("obstacle-already-off", &[]),
        Obstacle::InPlace => words.say("obstacle-in-place", &[]),
        Obstacle::Plugged(connector) => {
            words.say("obstacle-plugged", &[("place", place(connector, words).into())])
        }
    }
}

/// Why the control module did not answer, with what to do about it.
#[must_use]
pub fn no_answer(reason: NoAnswer, words: &Words) -> String {
    let key = match reason {
        NoAnswer::KeyOff => "no-answer-key-off",
        NoAnswer::ReaderDark => "no-answer-reader-dark",
        NoAnswer::NoReply => "no-answer-no-reply",
        NoAnswer::NotOffered => "no-answer-not-offered",
        NoAnswer::EngineRuns => "no-answer-engine-runs",
    };
    words.say(key, &[])
}
