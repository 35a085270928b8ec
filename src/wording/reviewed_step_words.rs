//! Every step of a session as the expert saw it, in words.

use super::amounts::number;
use super::belief_words;
use super::catalogue::Words;
use super::proposal_words::{proposal, span, whole_money};
use super::step_words;
use crate::assessment::debrief::Debrief;
use crate::reasoning::outcome::aspects;
use crate::session::attempt::{Entry, Session};

/// A step as the expert saw it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct StepWords {
    /// Number of the step, from 1.
    pub number: usize,
    /// The step as it is typed.
    pub step: String,
    /// What it cost.
    pub cost: String,
    /// What the rest of the job should have cost before it.
    pub value: String,
    /// How it compares with the best step.
    pub regret: String,
    /// What would have been best; empty for a step that is not weighed.
    pub best: String,
    /// What it was expected to tell; empty for what is no test.
    pub told: String,
    /// What was likely before it.
    pub before: String,
    /// What was likely after it.
    pub belief: String,
    /// Whether that differs.
    pub moved: bool,
}

/// A step in one line, and in two more where it was weighed or told something.
#[must_use]
pub fn lines(step: &StepWords, words: &Words) -> Vec<String> {
    let text = |text: &str| text.to_owned().into();
    let mut lines = vec![words.say(
        "step-line",
        &[
            ("number", step.number.into()),
            ("step", text(&step.step)),
            ("cost", text(&step.cost)),
            ("regret", text(&step.regret)),
        ],
    )];
    let is_weighed = !step.best.is_empty();
    if is_weighed || step.moved {
        let known = [("belief", text(&step.before)), ("value", text(&step.value))];
        lines.push(words.say("step-before", &known));
    }
    if is_weighed {
        let best = [("best", text(&step.best)), ("told", text(&step.told))];
        let key = if step.told.is_empty() { "step-best" } else { "step-best-told" };
        lines.push(words.say(key, &best));
    }
    if step.moved {
        lines.push(words.say("step-after", &[("belief", text(&step.belief))]));
    }
    lines
}

/// Every step of a session.
#[must_use]
pub fn steps(debrief: &Debrief, session: &Session, words: &Words) -> Vec<StepWords> {
    let briefing = session.briefing();
    debrief
        .review
        .steps
        .iter()
        .zip(session.log())
        .map(|(step, logged)| {
            let regret = match step.regret {
                None => words.say("step-not-weighed", &[]),
                Some(regret) if regret.lower > 0.0 => words.say(
                    "step-regret",
                    &[("cost", span(regret.lower, regret.upper, briefing, words).into())],
                ),
                Some(regret) if regret.is_wide => words.say(
                    "step-not-told",
                    &[("most", whole_money(regret.upper, briefing, words).into())],
                ),
                Some(_) => words.say("step-no-regret", &[]),
            };
            let before = belief_words::leading(&step.before, words);
            let after = belief_words::leading(&step.after, words);
            StepWords {
                number: step.entry + 1,
                step: step_words::line(&logged.step),
                cost: whole_money(step.cost, briefing, words),
                value: span(step.value.lower, step.value.upper, briefing, words),
                regret,
                best: step.regret.map_or_else(String::new, |_| proposal(&step.proposal, words)),
                told: step
                    .told
                    .filter(|_| shows_something(logged))
                    .map_or_else(String::new, |bits| {
                        words.say("step-told", &[("bits", number(bits, 2, words).into())])
                    }),
                moved: before != after,
                before,
                belief: after,
            }
        })
        .collect()
}

/// Whether an entry shows something of the vehicle that the expert weighs.
fn shows_something(entry: &Entry) -> bool {
    !aspects(&entry.events).is_empty()
}
