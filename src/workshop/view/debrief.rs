//! The page that tells what came of a session.

use super::bay::BayView;
use super::case::{LoggedStep, VehicleView};
use crate::wording::debrief_words::DebriefWords;
use crate::wording::what_if_words::ChoiceWords;

/// What the debrief page shows.
#[derive(Debug, Clone, PartialEq)]
pub struct DebriefView {
    /// Title of the job.
    pub title: String,
    /// The debrief; nothing while it is worked out.
    pub parts: Option<DebriefWords>,
    /// Where the session is kept.
    pub kept_at: String,
    /// Which side of the page is up.
    pub side: Side,
    /// The session once more; nothing while it is worked out.
    pub look_back: Option<LookBackView>,
}

/// A side of the debrief page.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Side {
    /// Outcome, lessons and marks.
    #[default]
    Marks,
    /// The session once more, step by step.
    Steps,
}

/// The session once more, at one of its steps.
#[derive(Debug, Clone, PartialEq)]
pub struct LookBackView {
    /// Place of the step that is looked at, from 0.
    pub at: usize,
    /// Every step with what followed; never empty.
    pub log: Vec<LoggedStep>,
    /// What each step gave away, in their order.
    pub regrets: Vec<RegretView>,
    /// How belief moved.
    pub course: CourseView,
    /// The bay after the step.
    pub bay: BayView,
    /// The vehicle after the step.
    pub vehicle: VehicleView,
    /// Time and money after the step.
    pub till: String,
    /// Whether and how the session plays.
    pub replay: Replay,
    /// What else could have been done in place of the step.
    pub others: Others,
    /// The line of another step that is asked about.
    pub asked: String,
    /// Why that line could not be answered.
    pub asked_problem: Option<String>,
    /// What that step would have brought, a line each.
    pub answer: Vec<String>,
}

/// What a step is shown to have given away, in units of money.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct RegretView {
    /// What is shown.
    pub least: f32,
    /// What is not excluded.
    pub most: f32,
    /// Nothing can be told, so that it does not count.
    pub is_open: bool,
}

/// How belief moved.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct CourseView {
    /// Suspects with their chances (0 to 1) before the first step and after each; all others together come last.
    pub rows: Vec<(String, Vec<f32>)>,
}

/// Whether a session plays by itself.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Replay {
    /// Where it runs to; nothing while it stands.
    pub runs: Option<Direction>,
    /// How fast.
    pub pace: Pace,
}

/// Where a replay runs to.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Direction {
    /// To the last step.
    Forwards,
    /// To the first step.
    Back,
}

/// How fast a replay runs.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Default)]
pub enum Pace {
    /// A step in four seconds.
    Slow,
    /// A step in two seconds.
    #[default]
    Usual,
    /// A step a second.
    Quick,
    /// Four steps a second.
    Fast,
}

impl Pace {
    /// Every pace, the slowest first.
    pub const ALL: [Self; 4] = [Self::Slow, Self::Usual, Self::Quick, Self::Fast];

    /// Time for a step [s].
    #[must_use]
    pub const fn seconds(self) -> f32 {
        match self {
            Self::Slow => 4.0,
            Self::Usual => 2.0,
            Self::Quick => 1.0,
            Self::Fast => 0.25,
        }
    }
}

/// What else could have been done at a moment.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub enum Others {
    /// Nobody has asked yet.
    #[default]
    NotAsked,
    /// It is being worked out.
    UnderWay,
    /// Cheapest first, with what is left out.
    Known {
        /// The choices.
        rows: Vec<ChoiceWords>,
        /// What is left out, a line each.
        left_out: Vec<String>,
    },
}

/// Something that is wanted of the debrief.
#[derive(Debug, Clone, PartialEq)]
pub enum DebriefAction {
    /// Turn the page to a side.
    Show(Side),
    /// Look at the step in this place, from 0.
    GoTo(usize),
    /// Let the session play, or stand.
    Run(Option<Direction>),
    /// Change how fast it plays.
    SetPace(Pace),
    /// Work out what else could have been done in place of the step.
    AskOthers,
    /// The field for another step holds this now.
    TypeAsked(String),
    /// Work out what that step would have brought.
    Ask,
}
