//! What else could have been done at a moment, in words: what it would have read, told and cost.

use super::amounts::number;
use super::belief_words;
use super::catalogue::Words;
use super::proposal_words::{proposal, span, whole_money};
use super::{event_words, refusal_words, step_words};
use crate::reasoning::expert::Proposal;
use crate::reasoning::foresight::{Foresight, Outcome};
use crate::reasoning::plan::budget::Bounds;
use crate::reasoning::review::Regret;
use crate::reasoning::what_if::{Alternative, Choices, Ranked};
use crate::reasoning::world::Hypothesis;
use crate::session::attempt::{Entry, Session};
use crate::session::event::{Event, Refusal};
use crate::session::setup::Briefing;
use crate::session::step::Step;
use std::collections::BTreeMap;

/// Outcomes that are told one by one; the rest are told together.
const TOLD_OUTCOMES: usize = 6;
/// The same in a row of a list.
const ROW_OUTCOMES: usize = 3;
/// Characters of one outcome's reading.
const LONGEST_READING: usize = 90;
/// What a test tells from here on is worth a line \[bit\].
const WORTH_TELLING: f64 = 0.005;
/// Columns of amounts in front of what could have come next.
const AMOUNT_WIDTH: usize = 18;

/// A moment of a session with what was believed and best there.
pub struct Moment<'a> {
    /// Number of the step that was taken there, from 1.
    pub number: usize,
    /// What was believed.
    pub belief: &'a BTreeMap<Hypothesis, f64>,
    /// Expected cost of the rest of the job.
    pub value: Bounds,
    /// What the expert would have done.
    pub best: &'a Proposal,
}

/// Where things stood: what was done then, what was known and what was best.
#[must_use]
pub fn moment(moment: &Moment<'_>, session: &Session, words: &Words) -> Vec<String> {
    let briefing = session.briefing();
    let step = session.log().get(moment.number - 1).map(|entry| step_words::line(&entry.step));
    vec![
        words.say(
            "what-if-moment",
            &[("number", moment.number.into()), ("step", step.unwrap_or_default().into())],
        ),
        words.say(
            "what-if-known",
            &[("belief", belief_words::leading(moment.belief, words).into())],
        ),
        words.say(
            "what-if-value",
            &[
                ("value", span(moment.value.lower, moment.value.upper, briefing, words).into()),
                ("best", proposal(moment.best, words).into()),
            ],
        ),
    ]
}

/// One alternative: the steps, what they would have read in truth, and what could be expected of them.
#[must_use]
pub fn alternative(
    alternative: &Alternative,
    truth: &[Entry],
    briefing: &Briefing,
    words: &Words,
) -> Vec<String> {
    let mut lines = vec![
        words.say("what-if-instead", &[("steps", all_steps(&alternative.steps, words).into())]),
    ];
    lines.extend(in_truth(truth, briefing, words));
    let foresight = &alternative.foresight;
    lines.push(told(foresight, alternative.is_repeat, briefing, words));
    if foresight.outcomes.len() > 1 && !alternative.is_repeat {
        lines.push(words.say("what-if-outcomes", &[]));
        lines.extend(outcomes(&foresight.outcomes, briefing, words));
    }
    if let (Some(total), Some(regret)) = (alternative.total, alternative.regret) {
        lines.push(words.say(
            "what-if-total",
            &[
                ("total", span(total.lower, total.upper, briefing, words).into()),
                ("regret", against_best(regret, briefing, words).into()),
            ],
        ));
    }
    lines
}

/// Something that could have come next, in words.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ChoiceWords {
    /// The steps that lead there and the step itself, or the repair.
    pub what: String,
    /// Expected cost of the whole rest of the job when this comes first.
    pub total: String,
    /// What a test was expected to tell.
    pub bits: String,
    /// How it compares with the best.
    pub against: String,
    /// What it would have shown in truth; nothing for a repair.
    pub read: Option<String>,
    /// The likeliest of what it could have shown, each with what would have been believed then; empty where it
    /// could tell next to nothing.
    pub means: Vec<String>,
}

/// Everything that could have come next, cheapest first; `most` of them. `truth` says what would have followed.
#[must_use]
pub fn ranked(
    choices: &Choices,
    truth: &dyn Fn(&[Step]) -> Option<Vec<Entry>>,
    most: usize,
    briefing: &Briefing,
    words: &Words,
) -> Vec<ChoiceWords> {
    choices.ranked.iter().take(most).map(|ranked| choice(ranked, truth, briefing, words)).collect()
}

fn choice(
    ranked: &Ranked,
    truth: &dyn Fn(&[Step]) -> Option<Vec<Entry>>,
    briefing: &Briefing,
    words: &Words,
) -> ChoiceWords {
    let bits = ranked.foresight.as_ref().map_or_else(
        || words.say("what-if-no-bits", &[]),
        |foresight| words.say("what-if-bits", &[("bits", number(foresight.bits, 2, words).into())]),
    );
    let what = match &ranked.proposal {
        Proposal::Test(_) => all_steps(&ranked.steps, words),
        other => proposal(other, words),
    };
    let foresight = ranked.foresight.as_ref();
    let read = foresight
        .and_then(|_| truth(&ranked.steps))
        .and_then(|truth| read(&truth.last()?.events, briefing, words));
    let means = foresight.filter(|it| it.bits >= WORTH_TELLING).map_or_else(Vec::new, |it| {
        let outcome = |outcome: &Outcome| {
            words.say(
                "what-if-row-outcome",
                &[
                    ("chance", belief_words::percent(outcome.chance, words).into()),
                    ("belief", belief_words::leading(&outcome.after, words).into()),
                ],
            )
        };
        it.outcomes.iter().take(ROW_OUTCOMES).map(outcome).collect()
    });
    ChoiceWords {
        what,
        total: span(ranked.total.lower, ranked.total.upper, briefing, words),
        bits,
        against: against_best(ranked.regret, briefing, words),
        read,
        means,
    }
}

/// What [`ranked`] leaves out, a line each; empty where that is nothing.
#[must_use]
pub fn left_out(choices: &Choices, most: usize, words: &Words) -> Vec<String> {
    let rest = choices.ranked.len().saturating_sub(most);
    [("what-if-more", rest), ("what-if-made", choices.made)]
        .into_iter()
        .filter(|(_, count)| *count > 0)
        .map(|(key, count)| words.say(key, &[("count", count.into())]))
        .collect()
}

/// Everything that could have come next as lines, cheapest first; `most` rows of it.
#[must_use]
pub fn choices(
    choices: &Choices,
    truth: &dyn Fn(&[Step]) -> Option<Vec<Entry>>,
    most: usize,
    briefing: &Briefing,
    words: &Words,
) -> Vec<String> {
    let mut lines = vec![words.say("what-if-choices", &[])];
    for row in ranked(choices, truth, most, briefing, words) {
        let ChoiceWords { what, total, bits, against, read, means } = row;
        lines.push(format!("{total:<AMOUNT_WIDTH$}  {bits:>9}  {what}; {against}"));
        if let Some(read) = read {
            lines.push(words.say("what-if-row-read", &[("read", read.into())]));
        }
        lines.extend(means);
    }
    lines.extend(left_out(choices, most, words));
    lines
}

fn all_steps(steps: &[Step], words: &Words) -> String {
    let lines: Vec<String> = steps.iter().map(step_words::line).collect();
    lines.join(&words.say("what-if-then", &[]))
}

/// What would have followed in truth: of the last step all, of those before it what went wrong.
fn in_truth(truth: &[Entry], briefing: &Briefing, words: &Words) -> Vec<String> {
    let mut lines = Vec::new();
    for (place, entry) in truth.iter().enumerate() {
        for event in &entry.events {
            let is_bad = matches!(event, Event::AgainstCare { .. } | Event::Refused { .. });
            let is_last = place + 1 == truth.len();
            if is_bad || (is_last && !matches!(event, Event::Spent { .. })) {
                let text = event_words::line(event, words, briefing);
                lines.extend(text.lines().map(|line| {
                    words.say("what-if-truth-line", &[("line", line.trim_end().into())])
                }));
            }
        }
    }
    if lines.is_empty() {
        lines.push(words.say("what-if-truth-nothing", &[]));
    }
    lines.insert(0, words.say("what-if-truth", &[]));
    lines
}

/// What events show in one short line; nothing where it shows nothing.
fn read(events: &[Event], briefing: &Briefing, words: &Words) -> Option<String> {
    let shown = events.iter().filter(|event| {
        !matches!(event, Event::Spent { .. } | Event::Caution { .. } | Event::AgainstCare { .. })
    });
    let lines: Vec<String> = shown
        .flat_map(|event| {
            let text = event_words::line(event, words, briefing);
            text.lines().map(|line| line.trim().to_owned()).collect::<Vec<_>>()
        })
        .collect();
    (!lines.is_empty()).then(|| shortened(&lines.join(" ")))
}

fn shortened(text: &str) -> String {
    if text.chars().count() <= LONGEST_READING {
        return text.to_owned();
    }
    let kept: String = text.chars().take(LONGEST_READING - 1).collect();
    format!("{}…", kept.trim_end())
}

fn told(foresight: &Foresight, is_repeat: bool, briefing: &Briefing, words: &Words) -> String {
    let cost = whole_money(foresight.cost, briefing, words);
    if is_repeat {
        return words.say("what-if-repeat", &[("cost", cost.into())]);
    }
    words.say(
        "what-if-told",
        &[
            ("cost", cost.into()),
            ("bits", number(foresight.bits, 2, words).into()),
            ("open", number(foresight.uncertain, 2, words).into()),
        ],
    )
}

fn outcomes(outcomes: &[Outcome], briefing: &Briefing, words: &Words) -> Vec<String> {
    let mut lines: Vec<String> = outcomes
        .iter()
        .take(TOLD_OUTCOMES)
        .map(|outcome| {
            // Of what a step shows the likeliest world stands for all that look alike.
            let read = read(&outcome.events, briefing, words)
                .unwrap_or_else(|| words.say("what-if-nothing-shown", &[]));
            words.say(
                "what-if-outcome",
                &[
                    ("chance", belief_words::percent(outcome.chance, words).into()),
                    ("read", read.into()),
                    ("belief", belief_words::leading(&outcome.after, words).into()),
                ],
            )
        })
        .collect();
    let rest: f64 = outcomes.iter().skip(TOLD_OUTCOMES).map(|outcome| outcome.chance).sum();
    if outcomes.len() > TOLD_OUTCOMES {
        lines.push(words.say(
            "what-if-other-outcomes",
            &[
                ("chance", belief_words::percent(rest, words).into()),
                ("count", (outcomes.len() - TOLD_OUTCOMES).into()),
            ],
        ));
    }
    lines
}

/// How something compares with the best.
fn against_best(regret: Regret, briefing: &Briefing, words: &Words) -> String {
    if regret.lower > 0.0 {
        let cost = span(regret.lower, regret.upper, briefing, words);
        return words.say("what-if-worse", &[("cost", cost.into())]);
    }
    if regret.is_wide {
        let most = whole_money(regret.upper, briefing, words);
        return words.say("step-not-told", &[("most", most.into())]);
    }
    words.say("step-no-regret", &[])
}

/// Why a step could not have been taken at that moment.
#[must_use]
pub fn not_possible(step: &Step, refusal: &Refusal, words: &Words) -> String {
    words.say(
        "what-if-refused",
        &[
            ("step", step_words::line(step).into()),
            ("why", refusal_words::refused(refusal, words).into()),
        ],
    )
}
