//! The debrief in words: marks with their evidence, then every step as the expert saw it.

use super::amounts::{minutes, money, number};
use super::care_words::against_care;
use super::catalogue::Words;
use super::code_words;
use super::course_plot;
use super::lesson_words::{self, LessonWords};
use super::place::{diagnoses, fault as fault_words, place};
use super::proposal_words::{proposal, span, whole_money};
use super::reviewed_step_words::{self, StepWords, steps};
use super::step_words;
use crate::assessment::debrief::Debrief;
use crate::assessment::hints;
use crate::assessment::mark::{About, Critical, ProofPart, Remark};
use crate::assessment::rubric::{MarkCategory, Rubric};
use crate::reasoning::world::Hypothesis;
use crate::session::attempt::Session;
use crate::session::setup::Briefing;
use crate::session::step::{Ending, Section};

/// A debrief in words, in its parts.
#[derive(Debug, Clone, PartialEq)]
pub struct DebriefWords {
    /// How it was handed back, what was wrong, what became of it.
    pub outcome: Vec<String>,
    /// The sum of the marks and what it means.
    pub total: String,
    /// Whether the session passed.
    pub passed: bool,
    /// What fails the session whatever the sum.
    pub critical: Vec<String>,
    /// Hints that were taken, with their price; empty without any.
    pub hints: Vec<String>,
    /// What is worth most next time; empty for a job without a flaw.
    pub lessons: Vec<LessonWords>,
    /// The marks in the order of the report.
    pub marks: Vec<MarkWords>,
    /// Every step as the expert saw it.
    pub steps: Vec<StepWords>,
}

/// A mark in words.
#[derive(Debug, Clone, PartialEq)]
pub struct MarkWords {
    /// What for.
    pub category: String,
    /// Points earned.
    pub points: String,
    /// Points that could be earned.
    pub most: String,
    /// Share of them earned, 0 to 1.
    pub share: f64,
    /// What earned or lost it.
    pub remarks: Vec<RemarkWords>,
}

/// A remark in words.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct RemarkWords {
    /// Whether it speaks for the apprentice.
    pub good: bool,
    /// The same as a sign.
    pub sign: String,
    /// What it says, with the step that it is about.
    pub text: String,
}

/// The whole debrief as lines of text for a terminal of so many columns.
#[must_use]
pub fn debrief(
    debrief: &Debrief,
    session: &Session,
    rubric: &Rubric,
    width: usize,
    words: &Words,
) -> Vec<String> {
    let parts = in_parts(debrief, session, rubric, words);
    let mut lines = vec![words.say("debrief-title", &[])];
    lines.extend(parts.outcome);
    lines.push(String::new());
    lines.push(parts.total);
    lines.extend(parts.critical);
    lines.push(String::new());
    lines.extend(parts.hints);
    lines.extend(lesson_lines(&parts.lessons, words));
    lines.push(String::new());
    for mark in parts.marks {
        lines.push(words.say(
            "debrief-mark",
            &[
                ("category", mark.category.into()),
                ("points", mark.points.into()),
                ("most", mark.most.into()),
            ],
        ));
        lines.extend(mark.remarks.into_iter().map(|remark| {
            words.say("remark-line", &[("sign", remark.sign.into()), ("text", remark.text.into())])
        }));
    }
    lines.push(String::new());
    lines.extend(course_plot::plot(&debrief.course(), width, words));
    lines.push(String::new());
    lines.push(words.say("debrief-steps", &[]));
    lines.extend(parts.steps.iter().flat_map(|step| reviewed_step_words::lines(step, words)));
    lines
}

fn lesson_lines(lessons: &[LessonWords], words: &Words) -> Vec<String> {
    if lessons.is_empty() {
        return vec![words.say("debrief-no-lessons", &[])];
    }
    let mut lines = vec![words.say("debrief-lessons", &[])];
    for (place, lesson) in lessons.iter().enumerate() {
        lines.push(words.say(
            "lesson-line",
            &[
                ("number", (place + 1).into()),
                ("title", lesson.title.as_str().into()),
                ("cost", lesson.cost.as_str().into()),
            ],
        ));
        let advice = [("advice", lesson.next_time.as_str().into())];
        lines.push(words.say("lesson-next", &advice));
    }
    lines
}

/// The whole debrief in its parts, for a page that lays them out.
#[must_use]
pub fn in_parts(
    debrief: &Debrief,
    session: &Session,
    rubric: &Rubric,
    words: &Words,
) -> DebriefWords {
    let marks = debrief.marks.iter().map(|mark| {
        let most = 100.0 * rubric.weights.share_of(mark.category);
        MarkWords {
            category: category(mark.category, words),
            points: number(mark.share * most, 1, words),
            most: number(most, 1, words),
            share: mark.share,
            remarks: mark.remarks.iter().map(|it| remark(it, session, words)).collect(),
        }
    });
    DebriefWords {
        outcome: outcome(debrief, session.briefing(), words),
        total: total(debrief, rubric, words),
        passed: debrief.passed,
        critical: debrief.critical.iter().map(|it| critical(*it, words)).collect(),
        hints: hints(debrief, session, words),
        lessons: debrief
            .lessons
            .iter()
            .map(|lesson| lesson_words::lesson(lesson, session.briefing(), words))
            .collect(),
        marks: marks.collect(),
        steps: steps(debrief, session, words),
    }
}

/// Hints and what each took from the marks.
fn hints(debrief: &Debrief, session: &Session, words: &Words) -> Vec<String> {
    if debrief.hints.is_empty() {
        return Vec::new();
    }
    let points = number(hints::price(&debrief.hints), 0, words);
    let mut lines =
        vec![words.say(
            "debrief-hints",
            &[("count", debrief.hints.len().into()), ("points", points.into())],
        )];
    lines.extend(debrief.hints.iter().filter_map(|hint| {
        let logged = session.log().get(hint.entry)?;
        Some(words.say(
            "debrief-hint",
            &[
                ("number", (hint.entry + 1).into()),
                ("step", step_words::line(&logged.step).into()),
                ("points", hint.points.into()),
            ],
        ))
    }));
    lines
}

fn critical(critical: Critical, words: &Words) -> String {
    let key = match critical {
        Critical::Unsafe => "debrief-critical-unsafe",
        Critical::Unproved => "debrief-critical-unproved",
        Critical::NotRepaired => "debrief-critical-not-repaired",
    };
    words.say(key, &[])
}

fn outcome(debrief: &Debrief, briefing: &Briefing, words: &Words) -> Vec<String> {
    let currency = &briefing.prices.currency;
    let till = debrief.till;
    let all = till.total(briefing.prices.labour_per_hour);
    let names: Hypothesis = debrief.faults.iter().map(|fault| fault.name.clone()).collect();
    let faults = diagnoses(&names, words);
    let after = match (debrief.aftermath.lamp, debrief.aftermath.runs_badly) {
        (false, false) => "debrief-after-well",
        _ if debrief.is_settled => "debrief-after-declined",
        (true, false) => "debrief-after-lamp",
        (false, true) => "debrief-after-badly",
        (true, true) => "debrief-after-both",
    };
    vec![
        words.say(
            "debrief-handed-over",
            &[
                ("ending", ending(debrief.ending, words).into()),
                ("minutes", minutes(till.minutes, words).into()),
                ("money", money(till.money, currency, words).into()),
                ("total", money(all, currency, words).into()),
            ],
        ),
        words.say("debrief-truth", &[("faults", faults.into())]),
        words.say(after, &[]),
    ]
}

fn ending(ending: Ending, words: &Words) -> String {
    let key = match ending {
        Ending::Repaired => "ending-as-repaired",
        Ending::NoFaultFound => "ending-as-no-fault",
        Ending::Referred => "ending-as-referred",
        Ending::Unsafe => "ending-as-unsafe",
        Ending::Declined => "ending-as-declined",
    };
    words.say(key, &[])
}

fn total(debrief: &Debrief, rubric: &Rubric, words: &Words) -> String {
    words.say(
        if debrief.passed { "debrief-total-passed" } else { "debrief-total-failed" },
        &[
            ("total", number(debrief.total, 1, words).into()),
            ("line", u32::from(rubric.pass_percent).into()),
        ],
    )
}

/// The name of a kind of mark.
#[must_use]
pub fn category(category: MarkCategory, words: &Words) -> String {
    let key = match category {
        MarkCategory::TestChoice => "mark-test-choice",
        MarkCategory::AccessOrder => "mark-access-order",
        MarkCategory::Reading => "mark-reading",
        MarkCategory::Calibration => "mark-calibration",
        MarkCategory::Repair => "mark-repair",
        MarkCategory::Proof => "mark-proof",
        MarkCategory::Care => "mark-care",
        MarkCategory::Record => "mark-record",
    };
    words.say(key, &[])
}

/// One remark, with the step that it is about.
fn remark(remark: &Remark, session: &Session, words: &Words) -> RemarkWords {
    let sign = words.say(if remark.good { "remark-good" } else { "remark-bad" }, &[]);
    let text = about(&remark.about, session.briefing(), words);
    let text = match remark.entry.and_then(|entry| Some((entry, session.log().get(entry)?))) {
        Some((entry, logged)) => words.say(
            "remark-at-step",
            &[
                ("number", (entry + 1).into()),
                ("step", step_words::line(&logged.step).into()),
                ("text", text.into()),
            ],
        ),
        None => text,
    };
    RemarkWords { good: remark.good, sign, text }
}

fn about(about: &About, briefing: &Briefing, words: &Words) -> String {
    let plain = |key: &str| words.say(key, &[]);
    let percent = |share: f64| number(100.0 * share, 0, words);
    match about {
        About::Regret { least, most, best } => words.say(
            "about-regret",
            &[
                ("cost", span(*least, *most, briefing, words).into()),
                ("best", proposal(best, words).into()),
            ],
        ),
        About::Premature { chance, price, best } => {
            let mut said =
                vec![("chance", percent(*chance).into()), ("best", proposal(best, words).into())];
            let key = if let Some((least, most)) = price {
                said.push(("cost", span(*least, *most, briefing, words).into()));
                "about-premature-repair"
            } else {
                "about-premature-diagnosis"
            };
            words.say(key, &said)
        }
        About::Redundant { is_repeated, cost } => words.say(
            if *is_repeated { "about-repeated" } else { "about-redundant" },
            &[("cost", whole_money(*cost, briefing, words).into())],
        ),
        About::NotTold { count, most } => words.say(
            "about-not-told",
            &[("count", (*count).into()), ("most", whole_money(*most, briefing, words).into())],
        ),
        About::NoRegret => plain("about-no-regret"),
        About::RemovedAgain(part) => {
            words.say("about-removed-again", &[("place", place(part, words).into())])
        }
        About::NoDetour => plain("about-no-detour"),
        About::Prediction { met: true } => plain("about-prediction-met"),
        About::Prediction { met: false } => plain("about-prediction-missed"),
        About::OtherQuantity => plain("about-other-quantity"),
        About::Sign { met: true } => plain("about-sign-met"),
        About::Sign { met: false } => plain("about-sign-missed"),
        About::FewPredictions(count) => {
            words.say("about-few-predictions", &[("count", (*count).into())])
        }
        About::Breach(breach) => against_care(breach, words),
        About::SoundReadings => plain("about-sound-readings"),
        About::Confidence { distance } => {
            words.say("about-confidence", &[("distance", number(*distance, 2, words).into())])
        }
        About::NoConfidence => plain("about-no-confidence"),
        About::Repair { chance } => {
            words.say("about-repair", &[("chance", percent(*chance).into())])
        }
        About::WornPart { fault } => {
            words.say("about-worn-part", &[("fault", fault_words(fault, words).into())])
        }
        About::Part { fault, is_mended } => words.say(
            if *is_mended { "about-part-mended" } else { "about-part-left" },
            &[("fault", fault_words(fault, words).into())],
        ),
        About::Declined { fault } => {
            words.say("about-declined", &[("fault", fault_words(fault, words).into())])
        }
        About::CameBack { came_back: true } => plain("about-came-back"),
        About::CameBack { came_back: false } => plain("about-stayed-away"),
        About::Proof(part) => plain(match part {
            ProofPart::Recorded => "proof-recorded",
            ProofPart::Cleared => "proof-cleared",
            ProofPart::KeyOnCheck => "proof-key-on",
            ProofPart::RoadTest => "proof-road",
            ProofPart::Rescan => "proof-rescan",
            ProofPart::Declined => "proof-declined",
        }),
        About::ClosedUnproved => plain("about-closed-unproved"),
        About::Unrelated { code, reported } => words.say(
            if *reported { "about-unrelated-told" } else { "about-unrelated-erased" },
            &[("code", code_words::code(*code, words).into())],
        ),
        About::NoBreach => plain("about-no-breach"),
        About::LeftOff(part) => {
            words.say("about-left-off", &[("place", place(part, words).into())])
        }
        About::Written(section) => plain(match section {
            Section::Concern => "record-concern",
            Section::Cause => "record-cause",
            Section::Correction => "record-correction",
        }),
    }
}
