//! The few lessons that are worth most to whoever sat a session.
//!
//! What a session lost is taken apart by what was done wrong: every mark's loss is shared among the remarks
//! that speak against the apprentice, that for the choice of tests among the steps that are shown to have
//! been dearer than the best, by how much each was. Losses of one kind are added up over the session, and the
//! largest sums are the lessons. In: review and marks. Out: data; what to do next time is for wording.

use super::mark::{About, Critical, Mark, Remark};
use super::marks::spoils_reading;
use super::rubric::{MarkCategory, MarkWeights};
use crate::reasoning::expert::Proposal;
use crate::reasoning::remedy::Remedy;
use crate::reasoning::review::{Redundant, Review, StepReview, chance};
use crate::session::attempt::Entry;
use crate::session::step::Step;
use std::collections::BTreeMap;

/// Lessons that a person takes home from one session.
pub const MOST_LESSONS: usize = 3;
/// What lost less than this of the hundred points is no lesson: a slip.
const LEAST_POINTS: f64 = 0.5;
/// A test that is expected to tell less than this tells nothing \[bit\].
const NOTHING_TOLD: f64 = 0.01;
/// A repair with less than this chance on the evidence came too early.
const FOUNDED: f64 = 0.5;

/// One lesson.
#[derive(Debug, Clone, PartialEq)]
pub struct Lesson {
    /// What it is about.
    pub kind: LessonKind,
    /// The entries that it is about, in the order of the session; none for something that never happened.
    pub entries: Vec<usize>,
    /// Points out of a hundred that it cost.
    pub points: f64,
    /// What it is shown to have cost in expectation [units of the currency]; zero where only marks were
    /// lost.
    pub money: f64,
    /// It failed the session, whatever the points.
    pub is_critical: bool,
}

/// What a lesson is about, the weightiest first: where two cost the same, the earlier is told.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum LessonKind {
    /// The engine was run without oil.
    RanDry,
    /// Handed back with the fault still there.
    StillThere,
    /// The repair was not proved.
    NotProved,
    /// A code from elsewhere was erased, and the customer was not told.
    NotReported,
    /// A part was fitted without evidence for it.
    PartWithoutEvidence,
    /// A repair was begun before the tests had settled it.
    RepairedTooEarly,
    /// A dearer repair than the evidence asked for.
    DearerRepair,
    /// A reading that had been taken already, on an unchanged vehicle.
    RepeatedReading,
    /// A test that could tell nothing about what was still open.
    ToldNothing,
    /// More tests when it was time to repair or to close.
    TestedOn,
    /// Something was opened up or taken apart before what is near and cheap was looked at.
    OpenedTooSoon,
    /// A dear test where a nearer, cheaper one was better.
    SkippedTheNear,
    /// Something came off twice.
    OpenedTwice,
    /// A reading was taken so that it means nothing.
    SpoiltReading,
    /// Readings were not said beforehand.
    NotForetold,
    /// The list of suspects did not follow the evidence.
    Confidence,
    /// A rule of care or safety was broken.
    Care,
    /// The record was not written.
    NotWritten,
}

impl LessonKind {
    /// The word by which files name it.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::RanDry => "ran-dry",
            Self::StillThere => "still-there",
            Self::NotProved => "not-proved",
            Self::NotReported => "not-reported",
            Self::PartWithoutEvidence => "part-without-evidence",
            Self::RepairedTooEarly => "repaired-too-early",
            Self::DearerRepair => "dearer-repair",
            Self::RepeatedReading => "repeated-reading",
            Self::ToldNothing => "told-nothing",
            Self::TestedOn => "tested-on",
            Self::OpenedTooSoon => "opened-too-soon",
            Self::SkippedTheNear => "skipped-the-near",
            Self::OpenedTwice => "opened-twice",
            Self::SpoiltReading => "spoilt-reading",
            Self::NotForetold => "not-foretold",
            Self::Confidence => "confidence",
            Self::Care => "care",
            Self::NotWritten => "not-written",
        }
    }
}

/// The lessons that are worth most, at most [`MOST_LESSONS`] of them and none for a job without a flaw.
#[must_use]
pub fn lessons(
    log: &[Entry],
    review: &Review,
    marks: &[Mark],
    critical: &[Critical],
    weights: &MarkWeights,
) -> Vec<Lesson> {
    let mut lost = Losses::default();
    for mark in marks {
        let points = 100.0 * weights.share_of(mark.category) * (1.0 - mark.share);
        if mark.category == MarkCategory::TestChoice {
            let total = review.total_regret();
            for step in &review.steps {
                let shown = step.regret.map_or(0.0, |regret| regret.lower);
                if shown > 0.0 && total > 0.0 {
                    let kind = kind_of_step(log, step);
                    lost.add(kind, Some(step.entry), points * shown / total, shown);
                }
            }
            continue;
        }
        let against: Vec<(&Remark, LessonKind)> = mark
            .remarks
            .iter()
            .filter(|remark| !remark.good)
            .filter_map(|remark| Some((remark, kind_of_remark(log, remark)?)))
            .collect();
        for (remark, kind) in &against {
            lost.add(*kind, remark.entry, points / against.len() as f64, 0.0);
        }
    }
    for critical in critical {
        let kind = match critical {
            Critical::Unsafe => LessonKind::RanDry,
            Critical::Unproved => LessonKind::NotProved,
            Critical::NotRepaired => LessonKind::StillThere,
        };
        lost.add(kind, None, 0.0, 0.0).is_critical = true;
    }
    let mut lessons: Vec<Lesson> = lost
        .of
        .into_values()
        .filter(|lesson| lesson.is_critical || lesson.points >= LEAST_POINTS)
        .collect();
    lessons.sort_by(|a, b| {
        b.is_critical
            .cmp(&a.is_critical)
            .then(b.points.total_cmp(&a.points))
            .then(a.kind.cmp(&b.kind))
    });
    lessons.truncate(MOST_LESSONS);
    for lesson in &mut lessons {
        lesson.entries.sort_unstable();
    }
    lessons
}

/// What was lost by each kind of mistake.
#[derive(Default)]
struct Losses {
    of: BTreeMap<LessonKind, Lesson>,
}

impl Losses {
    fn add(
        &mut self,
        kind: LessonKind,
        entry: Option<usize>,
        points: f64,
        money: f64,
    ) -> &mut Lesson {
        let lesson = self.of.entry(kind).or_insert_with(|| Lesson {
            kind,
            entries: Vec::new(),
            points: 0.0,
            money: 0.0,
            is_critical: false,
        });
        lesson.points += points;
        lesson.money += money;
        if let Some(entry) = entry.filter(|entry| !lesson.entries.contains(entry)) {
            lesson.entries.push(entry);
        }
        lesson
    }
}

/// What was wrong with a step that is shown to have been dearer than the best.
fn kind_of_step(log: &[Entry], step: &StepReview) -> LessonKind {
    let Some(entry) = log.get(step.entry) else { return LessonKind::SkippedTheNear };
    if let Some(remedy) = Remedy::in_step(&entry.step) {
        return kind_of_repair(step, &remedy);
    }
    if is_access(&entry.step) {
        return LessonKind::OpenedTooSoon;
    }
    match step.proposal {
        _ if step.redundant == Some(Redundant::Repeated) => LessonKind::RepeatedReading,
        _ if step.told.is_some_and(|bits| bits < NOTHING_TOLD) => LessonKind::ToldNothing,
        Proposal::Repair(_) | Proposal::Close => LessonKind::TestedOn,
        Proposal::Test(_) => LessonKind::SkippedTheNear,
    }
}

fn kind_of_repair(step: &StepReview, remedy: &Remedy) -> LessonKind {
    if chance(&step.left, remedy) >= FOUNDED {
        return match step.proposal {
            Proposal::Repair(_) => LessonKind::DearerRepair,
            Proposal::Test(_) | Proposal::Close => LessonKind::RepairedTooEarly,
        };
    }
    unfounded(remedy)
}

const fn unfounded(remedy: &Remedy) -> LessonKind {
    match remedy {
        Remedy::Renew(_) | Remedy::Replace(_) => LessonKind::PartWithoutEvidence,
        _ => LessonKind::RepairedTooEarly,
    }
}

const fn is_access(step: &Step) -> bool {
    matches!(
        step,
        Step::Remove { .. }
            | Step::Refit { .. }
            | Step::Unplug { .. }
            | Step::Plug { .. }
            | Step::FitGauge
            | Step::RemoveGauge
    )
}

/// What a remark against the apprentice teaches; nothing where it only states what became of the vehicle.
fn kind_of_remark(log: &[Entry], remark: &Remark) -> Option<LessonKind> {
    Some(match &remark.about {
        About::RemovedAgain(_) => LessonKind::OpenedTwice,
        About::FewPredictions(_) | About::OtherQuantity => LessonKind::NotForetold,
        About::Breach(breach) if spoils_reading(breach) => LessonKind::SpoiltReading,
        About::Breach(_) | About::LeftOff(_) => LessonKind::Care,
        About::Confidence { .. } | About::NoConfidence => LessonKind::Confidence,
        About::Repair { .. } => {
            let step = remark.entry.and_then(|entry| log.get(entry)).map(|entry| &entry.step);
            match step.and_then(Remedy::in_step) {
                Some(remedy) => unfounded(&remedy),
                None => LessonKind::RepairedTooEarly,
            }
        }
        About::WornPart { .. } | About::Part { .. } | About::CameBack { .. } => LessonKind::StillThere,
        About::Proof(_) => LessonKind::NotProved,
        About::Unrelated { .. } => LessonKind::NotReported,
        About::Written(_) => LessonKind::NotWritten,
        // To say what a sound part would show, and to see that it does not, is how a fault is found.
        About::Prediction { .. }
        | About::Sign { .. }
        | About::Regret { .. }
        // These explain what other remarks take points for.
        | About::Premature { .. }
        | About::Redundant { .. }
        | About::NotTold { .. }
        | About::ClosedUnproved
        | About::NoRegret
        | About::Declined { .. }
        | About::NoDetour
        | About::SoundReadings
        | About::NoBreach => return None,
    })
}
