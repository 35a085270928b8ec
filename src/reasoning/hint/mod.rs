//! What an expert would say to an apprentice who asks, in four grades: from the question that is open to the very
//! step.
//!
//! It is worked out from the log alone, as the debrief works out what would have been best: belief and plan on
//! the evidence so far ([`super::onlooker`]). The hidden state cannot be reached from here. The same log gives
//! the same hint, so that a session file need only keep that one was asked for.

mod area;
mod duty;

pub use area::{Area, Family, Kind};
pub use duty::Duty;

use super::belief::Belief;
use super::consent::Consent;
use super::expert::Proposal;
use super::foresight::{Foresight, foresee};
use super::onlooker::Onlooker;
use super::remedy::Remedy;
use super::review::chance;
use super::world::Hypothesis;
use crate::session::attempt::Entry;
use crate::session::step::{HintGrade, Step};
use crate::vehicle::error::VehicleError;
use std::collections::BTreeMap;

/// Share of the belief from which a family of causes is still open.
const OPEN: f64 = 0.1;
/// Chance from which one cause is as good as known.
const SETTLED: f64 = 0.9;

/// A hint, as much of it as its grade tells.
#[derive(Debug, Clone, PartialEq)]
pub struct Hint {
    /// Its grade.
    pub grade: HintGrade,
    /// What kind of question is open.
    pub question: Question,
    /// Where to go; from [`HintGrade::Area`].
    pub area: Option<Area>,
    /// What class of test or work; from [`HintGrade::Kind`].
    pub kind: Option<Kind>,
    /// The very steps and why; with [`HintGrade::Step`].
    pub advice: Option<Advice>,
}

/// What kind of question is open.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Question {
    /// Of which family the cause is, the likeliest first.
    Family(Vec<Family>),
    /// Which of several causes of one family it is.
    Which(Family),
    /// One cause is as good as known, and one test more is worth its cost.
    Confirm(Family),
    /// Enough is known: how to mend it.
    Mend,
    /// What the trade asks for beside finding the fault.
    Duty(Duty),
}

/// The very steps and why.
#[derive(Debug, Clone, PartialEq)]
pub struct Advice {
    /// Everything to be done, in order; the last is what matters.
    pub steps: Vec<Step>,
    /// Why.
    pub why: Why,
}

/// Why a step is the best.
#[derive(Debug, Clone, PartialEq)]
pub enum Why {
    /// What a test would tell and cost.
    Test(Foresight),
    /// The chance that a repair takes something away that is wrong.
    Repair {
        /// The repair.
        remedy: Remedy,
        /// Chance, 0 to 1.
        chance: f64,
    },
    /// A duty of the trade.
    Duty(Duty),
}

/// The hint of a grade for whoever has done what is in the log. The onlooker has seen no more than the log
/// and follows it to its end.
///
/// # Errors
/// [`VehicleError`] when a world's wiring cannot be solved.
pub fn hint(
    onlooker: &mut Onlooker,
    log: &[Entry],
    grade: HintGrade,
) -> Result<Hint, VehicleError> {
    onlooker.follow(log, log.len())?;
    let proposal = match duty::before_proving(onlooker, log) {
        Some(duty) => Err(duty),
        None => match onlooker.value()?.proposal {
            Proposal::Test(probe) => Ok(Proposal::Test(probe)),
            Proposal::Repair(remedy) => {
                let briefing = onlooker.briefing();
                let consent = Consent::of(log, briefing);
                match duty::before_repair(log) {
                    Some(duty) => Err(duty),
                    None if consent.covers(&remedy, briefing) => Ok(Proposal::Repair(remedy)),
                    None => {
                        let is_final = consent.declines(&remedy, briefing);
                        Err(duty::beyond_approval(onlooker, log, is_final))
                    }
                }
            }
            Proposal::Close => Err(duty::to_close(onlooker, log)),
        },
    };
    let whole = match proposal {
        Ok(proposal) => of_proposal(onlooker, &proposal)?,
        Err(duty) => of_duty(onlooker, duty)?,
    };
    Ok(cut(whole, grade))
}

/// A hint with everything that it could tell.
struct Whole {
    question: Question,
    area: Area,
    kind: Kind,
    advice: Advice,
}

fn cut(whole: Whole, grade: HintGrade) -> Hint {
    Hint {
        grade,
        question: whole.question,
        area: (grade >= HintGrade::Area).then_some(whole.area),
        kind: (grade >= HintGrade::Kind).then_some(whole.kind),
        advice: (grade >= HintGrade::Step).then_some(whole.advice),
    }
}

fn of_proposal(onlooker: &Onlooker, proposal: &Proposal) -> Result<Whole, VehicleError> {
    let briefing = onlooker.briefing();
    let spec = &briefing.vehicle;
    let (question, steps, why) = match proposal {
        Proposal::Test(probe) => {
            let steps = onlooker.steps_of(probe);
            let foresight = foresee(onlooker.belief(), &steps)?;
            (question(onlooker.belief()), steps, Why::Test(foresight))
        }
        Proposal::Repair(remedy) => {
            let steps = onlooker.likeliest().map_or_else(Vec::new, |session| {
                remedy.steps(briefing, session.vehicle_in_sight())
            });
            let chance = chance(&onlooker.belief().by_hypothesis(), remedy);
            (Question::Mend, steps, Why::Repair { remedy: remedy.clone(), chance })
        }
        Proposal::Close => {
            let duty = Duty::HandOver;
            (Question::Duty(duty), Vec::new(), Why::Duty(duty))
        }
    };
    // The work of a repair, not the seal that goes back after it.
    let matters = match proposal {
        Proposal::Test(probe) => Some(probe.showing().clone()),
        Proposal::Repair(remedy) => remedy.work(briefing).into_iter().next(),
        Proposal::Close => None,
    };
    let (area, kind) = matters.map_or((Area::Paper, Kind::Paper), |step| {
        (Area::of(&step, spec), Kind::of(&step, &steps))
    });
    Ok(Whole { question, area, kind, advice: Advice { steps, why } })
}

fn of_duty(onlooker: &Onlooker, duty: Duty) -> Result<Whole, VehicleError> {
    let steps = duty.steps(onlooker)?;
    Ok(Whole {
        question: Question::Duty(duty),
        area: duty.area(),
        kind: duty.kind(),
        advice: Advice { steps, why: Why::Duty(duty) },
    })
}

/// What is open among the causes that are believed in.
fn question(belief: &Belief) -> Question {
    let by_hypothesis = belief.by_hypothesis();
    let mut families: BTreeMap<Family, f64> = BTreeMap::new();
    for (faults, chance) in &by_hypothesis {
        *families.entry(family_of(faults)).or_insert(0.0) += chance;
    }
    let mut open: Vec<(Family, f64)> =
        families.into_iter().filter(|(_, chance)| *chance >= OPEN).collect();
    open.sort_by(|a, b| b.1.total_cmp(&a.1));
    let first = open.first().map_or(Family::Nothing, |(family, _)| *family);
    if open.len() > 1 {
        return Question::Family(open.into_iter().map(|(family, _)| family).collect());
    }
    let most = by_hypothesis.values().copied().fold(0.0, f64::max);
    if most >= SETTLED { Question::Confirm(first) } else { Question::Which(first) }
}

/// The family of what is wrong; of several faults that of the first.
fn family_of(faults: &Hypothesis) -> Family {
    faults.first().map_or(Family::Nothing, |fault| Family::of(fault.kind))
}
