//! Lessons in words: what it was, at which steps, what it cost, and what to do next time.

use super::amounts::number;
use super::catalogue::Words;
use super::proposal_words::whole_money;
use crate::assessment::lessons::{Lesson, LessonKind};
use crate::session::setup::Briefing;

/// A lesson in words.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct LessonWords {
    /// What it is about.
    pub title: String,
    /// At which steps, and what it cost.
    pub cost: String,
    /// What to do next time.
    pub next_time: String,
}

/// A lesson in words.
#[must_use]
pub fn lesson(lesson: &Lesson, briefing: &Briefing, words: &Words) -> LessonWords {
    let (title, next_time) = keys(lesson.kind);
    LessonWords {
        title: words.say(title, &[]),
        cost: cost(lesson, briefing, words),
        next_time: words.say(next_time, &[]),
    }
}

fn cost(lesson: &Lesson, briefing: &Briefing, words: &Words) -> String {
    let mut parts = Vec::new();
    if !lesson.entries.is_empty() {
        let numbers: Vec<String> =
            lesson.entries.iter().map(|entry| (entry + 1).to_string()).collect();
        parts.push(words.say(
            "lesson-steps",
            &[("count", numbers.len().into()), ("steps", words.all_of(&numbers).into())],
        ));
    }
    if lesson.money > 0.0 {
        let money = whole_money(lesson.money, briefing, words);
        parts.push(words.say("lesson-money", &[("money", money.into())]));
    }
    if lesson.points > 0.0 {
        let points = number(lesson.points, 1, words);
        parts.push(words.say("lesson-points", &[("points", points.into())]));
    }
    if lesson.is_critical {
        parts.push(words.say("lesson-critical", &[]));
    }
    parts.join(&words.say("list-comma", &[]))
}

/// The messages for what it was and what to do next time.
const fn keys(kind: LessonKind) -> (&'static str, &'static str) {
    match kind {
        LessonKind::RanDry => ("lesson-ran-dry", "next-ran-dry"),
        LessonKind::StillThere => ("lesson-still-there", "next-still-there"),
        LessonKind::NotProved => ("lesson-not-proved", "next-not-proved"),
        LessonKind::NotReported => ("lesson-not-reported", "next-not-reported"),
        LessonKind::PartWithoutEvidence => ("lesson-part-unfounded", "next-part-unfounded"),
        LessonKind::RepairedTooEarly => ("lesson-repaired-early", "next-repaired-early"),
        LessonKind::DearerRepair => ("lesson-dearer-repair", "next-dearer-repair"),
        LessonKind::RepeatedReading => ("lesson-repeated", "next-repeated"),
        LessonKind::ToldNothing => ("lesson-told-nothing", "next-told-nothing"),
        LessonKind::TestedOn => ("lesson-tested-on", "next-tested-on"),
        LessonKind::OpenedTooSoon => ("lesson-opened-soon", "next-opened-soon"),
        LessonKind::SkippedTheNear => ("lesson-skipped-near", "next-skipped-near"),
        LessonKind::OpenedTwice => ("lesson-opened-twice", "next-opened-twice"),
        LessonKind::SpoiltReading => ("lesson-spoilt", "next-spoilt"),
        LessonKind::NotForetold => ("lesson-not-foretold", "next-not-foretold"),
        LessonKind::Confidence => ("lesson-confidence", "next-confidence"),
        LessonKind::Care => ("lesson-care", "next-care"),
        LessonKind::NotWritten => ("lesson-not-written", "next-not-written"),
    }
}
