//! A finished session once more: how each moment stood, and what other steps would have brought.

use super::at_place;
use super::logged::logged;
use super::open_case::{till, vehicle};
use super::sounds;
use crate::assessment::debrief::Debrief;
use crate::reasoning::onlooker::Onlooker;
use crate::reasoning::what_if::NoWay;
use crate::reasoning::world::Worlds;
use crate::scenario::draw::Case;
use crate::session::attempt::{Entry, Session};
use crate::session::step::Step;
use crate::vehicle::error::VehicleError;
use crate::wording::catalogue::Words;
use crate::wording::course_plot::named;
use crate::wording::debrief_words::DebriefWords;
use crate::wording::what_if_words::{self, ChoiceWords};
use crate::workshop::view::bay::{BayView, Known};
use crate::workshop::view::case::{LoggedStep, VehicleView};
use crate::workshop::view::debrief::{CourseView, RegretView};
use std::sync::Arc;

/// Choices that are shown.
const MOST_CHOICES: usize = 12;

/// What is known of a finished session.
pub struct LookBack {
    /// The debrief in words.
    pub parts: DebriefWords,
    /// Every step with what followed.
    pub log: Vec<LoggedStep>,
    /// What each step gave away.
    pub regrets: Vec<RegretView>,
    /// How belief moved.
    pub course: CourseView,
    /// How things stood after each step.
    pub moments: Vec<Moment>,
    /// The bay, in the state after the last step.
    pub bay: BayView,
    /// What other steps are tried on.
    pub ground: Arc<Ground>,
}

/// How things stood after a step.
#[derive(Debug, Clone, PartialEq)]
pub struct Moment {
    /// What was known of the bay.
    pub known: Known,
    /// The vehicle.
    pub vehicle: VehicleView,
    /// Time and money.
    pub till: String,
}

/// What other steps are tried on.
pub struct Ground {
    /// The case with its truth.
    pub case: Case,
    /// The finished session.
    pub session: Session,
    /// The expert's worlds at their beginning.
    pub worlds: Worlds,
}

/// What became of a question about a step in this place.
pub enum Answered {
    /// What else could have been done.
    Others {
        /// Place of the step, from 0.
        at: usize,
        /// Cheapest first.
        rows: Vec<ChoiceWords>,
        /// What is left out.
        left_out: Vec<String>,
    },
    /// What one step would have brought, or why it was not possible, a line each.
    Another {
        /// Place of the step, from 0.
        at: usize,
        /// The lines.
        lines: Vec<String>,
    },
}

/// Sets a judged session out.
///
/// # Errors
/// [`VehicleError`] when the simulation fails.
pub fn set_out(
    judged: &Debrief,
    parts: DebriefWords,
    ground: Ground,
    words: &Words,
) -> Result<LookBack, VehicleError> {
    let Ground { case, session, .. } = &ground;
    let mut again = Session::begin(Arc::clone(&case.briefing), case.hidden.clone())?;
    let mut bay = at_place::bay(&again, words);
    let mut moments = Vec::new();
    for entry in session.log() {
        again.take(&entry.step)?;
        at_place::follow(&mut bay, &again);
        moments.push(Moment {
            known: bay.known.clone(),
            vehicle: vehicle(&again, words),
            till: till(&again, words),
        });
    }
    let entries = session.log().iter().enumerate().zip(sounds::views(session, words));
    let course = judged.course();
    Ok(LookBack {
        parts,
        log: entries
            .map(|((at, entry), heard)| LoggedStep {
                heard,
                ..logged(at + 1, entry, &case.briefing, words)
            })
            .collect(),
        regrets: judged.review.steps.iter().map(|step| regret(step.regret)).collect(),
        course: CourseView {
            rows: named(&course, words)
                .into_iter()
                .map(|(name, chances)| (name, chances.iter().copied().map(drawn).collect()))
                .collect(),
        },
        moments,
        bay,
        ground: Arc::new(ground),
    })
}

fn regret(regret: Option<crate::reasoning::review::Regret>) -> RegretView {
    regret.map_or_else(RegretView::default, |regret| RegretView {
        least: drawn(regret.lower.max(0.0)),
        most: drawn(regret.upper.max(0.0)),
        is_open: regret.is_wide,
    })
}

#[expect(clippy::cast_possible_truncation, reason = "it is drawn some hundred pixels long")]
const fn drawn(value: f64) -> f32 {
    value as f32
}

/// What else could have been done in place of a step.
///
/// # Errors
/// [`VehicleError`] when the simulation fails.
pub fn others(ground: &Ground, at: usize, words: &Words) -> Result<Answered, VehicleError> {
    let briefing = &ground.case.briefing;
    let (then, mut onlooker) = moment_of(ground, at)?;
    let choices = onlooker.choices()?;
    let truth = |steps: &[Step]| -> Option<Vec<Entry>> { then.would_follow(steps).ok() };
    Ok(Answered::Others {
        at,
        rows: what_if_words::ranked(&choices, &truth, MOST_CHOICES, briefing, words),
        left_out: what_if_words::left_out(&choices, MOST_CHOICES, words),
    })
}

/// What another step would have brought in place of a step.
///
/// # Errors
/// [`VehicleError`] when the simulation fails.
pub fn another(
    ground: &Ground,
    at: usize,
    step: Step,
    words: &Words,
) -> Result<Answered, VehicleError> {
    let (then, mut onlooker) = moment_of(ground, at)?;
    let lines = match onlooker.what_if(&[step]) {
        Ok(alternative) => {
            let truth = then.would_follow(&alternative.steps)?;
            what_if_words::alternative(&alternative, &truth, &ground.case.briefing, words)
        }
        Err(NoWay::Refused { step, refusal }) => {
            vec![what_if_words::not_possible(&step, &refusal, words)]
        }
        Err(NoWay::Vehicle(error)) => return Err(error),
    };
    Ok(Answered::Another { at, lines })
}

/// The session before a step, and the expert who has seen as much.
fn moment_of(ground: &Ground, at: usize) -> Result<(Session, Onlooker), VehicleError> {
    let Ground { case, session, worlds } = ground;
    let mut then = Session::begin(Arc::clone(&case.briefing), case.hidden.clone())?;
    for entry in session.log().iter().take(at) {
        then.take(&entry.step)?;
    }
    let mut onlooker = Onlooker::new(&case.briefing, worlds.clone());
    onlooker.follow(session.log(), at)?;
    Ok((then, onlooker))
}
