//! The page on which a case is worked.

use super::bay::BayView;
use super::guide::GuideView;
use super::road::RoadView;
use super::tray::TrayView;
use crate::sound::trace::Outline;
use crate::wording::verbs::VerbGroup;

/// What the page of a case shows.
#[derive(Debug, Clone, PartialEq)]
pub struct CaseView {
    /// Title of the job.
    pub title: String,
    /// It is an assessed session, in which hints are refused.
    pub is_assessed: bool,
    /// The job sheet, a line each.
    pub sheet: Vec<String>,
    /// What stands beside the vehicle.
    pub vehicle: VehicleView,
    /// The bay.
    pub bay: BayView,
    /// The drive under way.
    pub road: Option<RoadView>,
    /// The tray of instruments.
    pub tray: TrayView,
    /// Time and money so far.
    pub till: String,
    /// The list of suspects.
    pub suspects: Vec<SuspectView>,
    /// What was written down, first to last.
    pub notes: Vec<String>,
    /// Every step so far.
    pub log: Vec<LoggedStep>,
    /// The line that is being written or clicked together.
    pub line: LineView,
    /// The verbs in the groups of the work.
    pub groups: Vec<GroupView>,
    /// The group whose verbs are shown.
    pub open_group: VerbGroup,
    /// Where there is room for only one part of the page: which.
    pub pane: Pane,
    /// How far somebody has come who is shown round.
    pub guide: Option<GuideView>,
    /// Where the session is kept.
    pub kept_at: String,
}

/// A part of the page: where there is room for only one the one that is shown, else what stands in the middle.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Pane {
    /// Job sheet, vehicle and suspects.
    Sheet,
    /// The bay.
    #[default]
    Bay,
    /// What was done.
    Log,
    /// What can be done.
    Steps,
    /// The tray of instruments.
    Tray,
}

/// What anybody sees who stands beside the vehicle.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct VehicleView {
    /// Key and engine.
    pub key: String,
    /// What is off.
    pub off: String,
}

/// A suspect on the list.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SuspectView {
    /// The fault in words.
    pub name: String,
    /// Confidence in it [%].
    pub percent: u8,
    /// The beginning of a line that gives it another confidence.
    pub start: String,
}

/// A step of the log with what followed.
#[derive(Debug, Clone, PartialEq)]
pub struct LoggedStep {
    /// Number, from 1.
    pub number: usize,
    /// The step as it is typed.
    pub step: String,
    /// What it cost.
    pub cost: String,
    /// What followed.
    pub lines: Vec<LogLine>,
    /// What it let be heard.
    pub heard: Option<HeardView>,
}

/// One thing that followed from a step.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct LogLine {
    /// What it says.
    pub text: String,
    /// How it is meant.
    pub tone: Tone,
}

/// How a line of the log is meant.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Tone {
    /// Something seen, read or done.
    Plain,
    /// A caution.
    Caution,
    /// Something done against a rule.
    Breach,
    /// A step that was not possible.
    Refused,
}

/// A sound for the eye.
#[derive(Debug, Clone, PartialEq)]
pub struct HeardView {
    /// What is heard, in words.
    pub caption: String,
    /// What it looks like; without columns where there is silence.
    pub outline: Outline,
}

/// A line that is being written or clicked together.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct LineView {
    /// The line as it stands.
    pub text: String,
    /// How often it was changed by anything but typing, so that the field can follow.
    pub changes: u64,
    /// Words that can complete it or follow.
    pub words: Vec<Offer>,
    /// Which of them is marked.
    pub marked: Option<usize>,
    /// Digits can follow.
    pub digits: bool,
    /// Texts that can follow.
    pub texts: Vec<String>,
    /// It is a whole step.
    pub is_step: bool,
    /// What is wrong with it.
    pub problem: Option<String>,
    /// What it is for, as far as it goes.
    pub hint: String,
}

/// A word that can stand in a line.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Offer {
    /// The word as it is typed.
    pub word: String,
    /// What it stands for, where the word itself does not say it.
    pub meaning: Option<String>,
}

/// A group of verbs.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct GroupView {
    /// Which.
    pub group: VerbGroup,
    /// Its name.
    pub name: String,
    /// Its verbs.
    pub starts: Vec<StartView>,
}

/// Words with which a step begins, or a whole step.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct StartView {
    /// The words.
    pub words: String,
    /// What the step does.
    pub meaning: String,
}
