//! The whole judgement of a finished session.

use super::course::{Course, course};
use super::hints::{self, HintTaken, hints_taken};
use super::lessons::{Lesson, lessons};
use super::mark::{Critical, Mark, ProofPart};
use super::marks;
use super::rubric::Rubric;
use crate::faults::Fault;
use crate::reasoning::review::{Review, review};
use crate::reasoning::world::Worlds;
use crate::session::aftermath::Aftermath;
use crate::session::attempt::{Session, Till};
use crate::session::event::{Breach, Event};
use crate::session::step::Ending;
use crate::vehicle::error::VehicleError;
use crate::vehicle::spec::Id;
use thiserror::Error;

/// Why there is no debrief.
#[derive(Debug, Clone, PartialEq, Error)]
pub enum NoDebrief {
    /// The vehicle has not been handed back.
    #[error("marking a session: it is not finished after {steps} steps")]
    Unfinished {
        /// Steps taken so far.
        steps: usize,
    },
    /// A world could not be simulated.
    #[error("marking a session: a vehicle could not be simulated")]
    Vehicle(#[from] VehicleError),
}

/// The judgement of a session.
#[derive(Debug, Clone)]
pub struct Debrief {
    /// Marks in the order of the report.
    pub marks: Vec<Mark>,
    /// Hints that were asked for, with their prices.
    pub hints: Vec<HintTaken>,
    /// Points out of a hundred, the price of hints taken off; never below nothing.
    pub total: f64,
    /// Whether the pass line is reached and nothing critical happened.
    pub passed: bool,
    /// What fails the session whatever the sum.
    pub critical: Vec<Critical>,
    /// What is worth taking home, weightiest first; none for a job without a flaw.
    pub lessons: Vec<Lesson>,
    /// The expert's view of every step.
    pub review: Review,
    /// What became of the vehicle.
    pub aftermath: Aftermath,
    /// Nothing is wrong with it but what the customer has declined, and something of that: nobody comes back for it.
    pub is_settled: bool,
    /// The faults that were there.
    pub faults: Vec<Fault>,
    /// Time and money spent.
    pub till: Till,
    /// As what it was handed back.
    pub ending: Ending,
}

impl Debrief {
    /// Whether the customer comes back: something is still wrong that nobody has declined.
    #[must_use]
    pub const fn comes_back(&self) -> bool {
        self.aftermath.comes_back() && !self.is_settled
    }

    /// How belief moved over the session, with what was really wrong.
    #[must_use]
    pub fn course(&self) -> Course {
        let truth = self.faults.iter().map(|fault| fault.name.clone()).collect();
        course(&self.review, &truth)
    }
}

/// Whether a finished session leaves nothing wrong but what the customer has declined, and something of that.
#[must_use]
pub fn is_settled_by_declining(session: &Session, faults: &[Fault]) -> bool {
    let log = session.log();
    let Some(ending) = session.ending() else { return false };
    let declined = marks::declined(log, faults, ending, session.briefing());
    marks::is_all_settled(log, faults, &declined)
}

/// Judges a finished session. `faults` is the truth, told to the apprentice here and nowhere
/// earlier; `progress` hears how many of how many steps are reviewed.
///
/// # Errors
/// [`NoDebrief`] when the session is not finished or a world cannot be simulated.
pub fn debrief(
    session: &Session,
    faults: Vec<Fault>,
    worlds: Worlds,
    rubric: &Rubric,
    progress: &dyn Fn(usize, usize),
) -> Result<Debrief, NoDebrief> {
    let log = session.log();
    let Some(ending) = session.ending() else {
        return Err(NoDebrief::Unfinished { steps: log.len() });
    };
    let aftermath = session.aftermath()?;
    let known = session.briefing().vehicle.own_codes();
    let review = review(session.briefing(), worlds, log, progress)?;
    let left_off: Vec<Id> = session.parts_off().cloned().collect();
    let declined = marks::declined(log, &faults, ending, session.briefing());
    let mut parts = marks::proof_parts(log, &known);
    let is_settled = marks::is_all_settled(log, &faults, &declined);
    if is_settled {
        parts = marks::proof_of_declined(log, &parts);
    }
    let needed = [ProofPart::Cleared, ProofPart::RoadTest];
    let lacks_proof = parts.iter().any(|(part, entry)| needed.contains(part) && entry.is_none());
    let unproved = ending == Ending::Repaired && lacks_proof;
    let marks = vec![
        marks::test_choice(log, &review),
        marks::access_order(log),
        marks::reading(log),
        marks::calibration(log, &review),
        marks::repair(log, &review, aftermath, &faults, &declined, session.briefing()),
        marks::proof(log, &parts, &marks::erased(log, session.codes_from_elsewhere()), unproved),
        marks::care(log, &left_off),
        marks::record(log),
    ];
    let hints = hints_taken(log, &rubric.hints);
    let earned = 100.0
        * marks.iter().map(|mark| mark.share * rubric.weights.share_of(mark.category)).sum::<f64>();
    let total = (earned - hints::price(&hints)).max(0.0);
    let mut critical = Vec::new();
    let ran_dry = log
        .iter()
        .flat_map(|entry| &entry.events)
        .any(|event| matches!(event, Event::AgainstCare { breach: Breach::RunWithoutOil }));
    if ran_dry {
        critical.push(Critical::Unsafe);
    }
    if unproved {
        critical.push(Critical::Unproved);
    }
    if ending == Ending::Repaired && aftermath.comes_back() {
        critical.push(Critical::NotRepaired);
    }
    let lessons = lessons(log, &review, &marks, &critical, &rubric.weights);
    let passed = critical.is_empty() && total >= f64::from(rubric.pass_percent);
    Ok(Debrief {
        marks,
        hints,
        total,
        passed,
        critical,
        lessons,
        review,
        aftermath,
        is_settled,
        faults,
        till: session.till(),
        ending,
    })
}
