//! What can stop a command, with the exit code and the words for it.

use super::ending::Ending;
use crate::assessment::debrief::NoDebrief;
use crate::report::problem_words;
use crate::scenario::deal::DealError;
use crate::scenario::draw::DrawError;
use crate::scenario::load::LoadError;
use crate::scenario::seal::SealError;
use crate::session::counterfactual::NoMoment;
use crate::session::event::Refusal;
use crate::session::journal::JournalProblem;
use crate::session::kept::KeptError;
use crate::session::step::Step;
use crate::trial::file::RowsProblem;
use crate::trial::runner::TrialError;
use crate::trial::text;
use crate::vehicle::error::VehicleError;
use crate::wording::catalogue::Words;
use crate::wording::parse_problem::ParseProblem;
use crate::wording::{defect_words, file_words, what_if_words};
use std::io;
use std::path::PathBuf;
use thiserror::Error;

/// What stopped a command.
#[derive(Debug, Error)]
pub enum Trouble {
    /// A scenario or vehicle cannot be read.
    #[error(transparent)]
    Load(#[from] LoadError),
    /// A scenario yields no case.
    #[error(transparent)]
    Draw(#[from] DrawError),
    /// A session file cannot be read or written.
    #[error(transparent)]
    Journal(#[from] JournalProblem),
    /// A session's steps lead to other events than were recorded.
    #[error("other events follow from entry {entry}")]
    Diverged {
        /// The file.
        path: PathBuf,
        /// Number of the entry, from 1.
        entry: u64,
    },
    /// A step in a script is not right.
    #[error("line {line} of the steps")]
    Step {
        /// Line of the script, from 1.
        line: usize,
        /// What is wrong with it.
        problem: ParseProblem,
    },
    /// A step that was asked about is none.
    #[error("the step that was asked about")]
    WantedStep {
        /// What is wrong with it.
        problem: ParseProblem,
    },
    /// A step was asked about and none was named.
    #[error("no step was named")]
    NoStep,
    /// A step that was asked about was not possible.
    #[error("the step that was asked about was not possible, {refusal:?}")]
    NotPossible {
        /// The step.
        step: Box<Step>,
        /// Why.
        refusal: Refusal,
    },
    /// The session has no step of that number.
    #[error("{path} has {steps} steps and no step {asked}")]
    NoMoment {
        /// The file.
        path: PathBuf,
        /// Which was asked for, from 1.
        asked: usize,
        /// How many there are.
        steps: usize,
    },
    /// The steps or a folder cannot be read or made.
    #[error("{path}")]
    File {
        /// The file or folder.
        path: PathBuf,
        /// What the system said.
        source: io::Error,
    },
    /// A range of seeds cannot be read.
    #[error("seeds {given:?}")]
    Seeds {
        /// What was given.
        given: String,
    },
    /// A band of costs cannot be read.
    #[error("band {given:?}")]
    Band {
        /// What was given.
        given: String,
    },
    /// The seeds that were looked at hold too few cases that are as hard as asked.
    #[error("{found} of {wanted} cases among {looked_at} seeds")]
    TooFew {
        /// Found.
        found: usize,
        /// Wanted.
        wanted: usize,
        /// Seeds looked at.
        looked_at: u64,
        /// Between what those lie, in the scenario's currency.
        seen: (String, String),
    },
    /// A table of a trial is not right.
    #[error("{path}: {problem}")]
    Rows {
        /// The file.
        path: PathBuf,
        /// What is wrong with it.
        problem: RowsProblem,
    },
    /// A table that is there already belongs to another trial.
    #[error("{path} belongs to another trial")]
    OtherTrial {
        /// The file.
        path: PathBuf,
    },
    /// A session that is there already is one of another seed.
    #[error("{path} is a session of seed {kept}, not {given}")]
    OtherSeed {
        /// The file.
        path: PathBuf,
        /// Its seed.
        kept: u64,
        /// The seed that was asked for.
        given: u64,
    },
    /// A page would be written over the session that it is about.
    #[error("{path} is the session itself")]
    OverSession {
        /// The file.
        path: PathBuf,
    },
    /// A session that is there already was begun as practice.
    #[error("{path} was begun as practice")]
    Practised {
        /// The file.
        path: PathBuf,
    },
    /// The session is not finished.
    #[error("not finished after {steps} steps")]
    Unfinished {
        /// The file.
        path: PathBuf,
        /// Steps so far.
        steps: usize,
    },
    /// The case of a session is sealed, and what was asked for would tell it.
    #[error("{path} is sealed")]
    Sealed {
        /// The file.
        path: PathBuf,
    },
    /// A seal cannot be made, read or opened.
    #[error("{path}: {error}")]
    Seal {
        /// The file.
        path: PathBuf,
        /// Why.
        error: SealError,
    },
    /// A session was to be written, and the file is a hand-out.
    #[error("{path} holds no session")]
    NoSessionInside {
        /// The file.
        path: PathBuf,
    },
    /// A list of names has none, or too many.
    #[error("{path} has {found} names, of {most}")]
    Class {
        /// The file.
        path: PathBuf,
        /// Names in it.
        found: usize,
        /// Most names.
        most: usize,
    },
    /// The window could not open.
    #[error("{reason}")]
    Window {
        /// Why.
        reason: String,
    },
    /// The simulation failed.
    #[error("{source}")]
    Simulation {
        /// Why.
        #[from]
        source: VehicleError,
    },
}

impl Trouble {
    /// The exit code.
    #[must_use]
    pub const fn ending(&self) -> Ending {
        match self {
            Self::Load(LoadError::Unreadable { .. }) | Self::File { .. } => Ending::FileTrouble,
            Self::Journal(problem) => match problem {
                JournalProblem::Flawed { .. }
                | JournalProblem::Torn { .. }
                | JournalProblem::OldVersion { .. } => Ending::BadInput,
                _ => Ending::FileTrouble,
            },
            Self::Load(_)
            | Self::Draw(_)
            | Self::Diverged { .. }
            | Self::Step { .. }
            | Self::Rows { .. }
            | Self::TooFew { .. }
            | Self::OtherTrial { .. }
            | Self::OtherSeed { .. }
            | Self::NotPossible { .. }
            | Self::Practised { .. }
            | Self::Sealed { .. }
            | Self::Seal { .. }
            | Self::Class { .. }
            | Self::NoMoment { .. }
            | Self::Unfinished { .. } => Ending::BadInput,
            Self::Seeds { .. }
            | Self::Band { .. }
            | Self::OverSession { .. }
            | Self::NoSessionInside { .. }
            | Self::WantedStep { .. }
            | Self::NoStep => Ending::WrongArguments,
            Self::Window { .. } => Ending::NoWindow,
            Self::Simulation { .. } => Ending::Defect,
        }
    }

    /// One clear line for each thing that is wrong.
    #[must_use]
    pub fn lines(&self, words: &Words) -> Vec<String> {
        let one = |line: String| vec![line];
        match self {
            Self::Load(error) => problem_words::load_error(error, words),
            Self::Draw(error) => one(problem_words::draw_error(error, words)),
            Self::Journal(problem) => one(file_words::journal_problem(problem, words)),
            Self::Diverged { path, entry } => one(words.say(
                "trouble-diverged",
                &[("path", path.display().to_string().into()), ("entry", (*entry).into())],
            )),
            Self::Step { line, problem } => one(words.say(
                "trouble-step",
                &[("line", (*line).into()), ("problem", problem.sentence(words).into())],
            )),
            Self::WantedStep { problem } => {
                one(words
                    .say("trouble-wanted-step", &[("problem", problem.sentence(words).into())]))
            }
            Self::NoStep => one(words.say("trouble-no-step", &[])),
            Self::NotPossible { step, refusal } => {
                one(what_if_words::not_possible(step, refusal, words))
            }
            Self::NoMoment { path, asked, steps } => one(words.say(
                "trouble-no-moment",
                &[
                    ("path", path.display().to_string().into()),
                    ("asked", (*asked).into()),
                    ("steps", (*steps).into()),
                ],
            )),
            Self::File { path, source } => one(words.say(
                "trouble-file",
                &[
                    ("path", path.display().to_string().into()),
                    ("why", file_words::io_reason(source, words).into()),
                ],
            )),
            Self::Seeds { given } => {
                one(words.say("trouble-seeds", &[("given", given.as_str().into())]))
            }
            Self::Band { given } => {
                one(words.say("trouble-band", &[("given", given.as_str().into())]))
            }
            Self::TooFew { found, wanted, looked_at, seen } => one(words.say(
                "trouble-too-few",
                &[
                    ("found", (*found).into()),
                    ("wanted", (*wanted).into()),
                    ("seeds", looked_at.to_string().into()),
                    ("least", seen.0.as_str().into()),
                    ("most", seen.1.as_str().into()),
                ],
            )),
            Self::Rows { path, problem } => one(words.say(
                "trouble-rows",
                &[
                    ("path", path.display().to_string().into()),
                    ("problem", text::problem(problem, words).into()),
                ],
            )),
            Self::OtherTrial { path } => {
                one(words
                    .say("trouble-other-trial", &[("path", path.display().to_string().into())]))
            }
            Self::OtherSeed { path, kept, given } => one(words.say(
                "trouble-other-seed",
                &[
                    ("path", path.display().to_string().into()),
                    ("kept", kept.to_string().into()),
                    ("given", given.to_string().into()),
                ],
            )),
            Self::OverSession { path } => {
                one(words
                    .say("trouble-over-session", &[("path", path.display().to_string().into())]))
            }
            Self::Practised { path } => {
                one(words.say("trouble-practised", &[("path", path.display().to_string().into())]))
            }
            Self::Sealed { path } => one(problem_words::sealed(path, words)),
            Self::Seal { path, error } => one(problem_words::seal_error(*error, path, words)),
            Self::NoSessionInside { path } => one(words
                .say("trouble-no-session-inside", &[("path", path.display().to_string().into())])),
            Self::Class { path, found, most } => one(words.say(
                "trouble-class",
                &[
                    ("path", path.display().to_string().into()),
                    ("found", (*found).into()),
                    ("most", (*most).into()),
                ],
            )),
            Self::Unfinished { path, steps } => one(words.say(
                "trouble-unfinished",
                &[("path", path.display().to_string().into()), ("steps", (*steps).into())],
            )),
            Self::Window { reason } => {
                one(words.say("trouble-window", &[("why", reason.as_str().into())]))
            }
            Self::Simulation { source } => one(defect_words::simulation_failed(source, words)),
        }
    }

    /// Why a sealed case is not dealt, with the file that it is in.
    #[must_use]
    pub fn of_sealed(error: DealError, path: &std::path::Path) -> Self {
        match error {
            DealError::Seal(error) => Self::Seal { path: path.to_owned(), error },
            other => Self::from(other),
        }
    }

    /// A kept session's trouble, with the file that it is about.
    #[must_use]
    pub fn of_kept(error: KeptError, path: &std::path::Path) -> Self {
        match error {
            KeptError::Vehicle(source) => Self::Simulation { source },
            KeptError::Journal(problem) => Self::Journal(problem),
            KeptError::Diverged { entry } => Self::Diverged { path: path.to_owned(), entry },
        }
    }

    /// Why a moment cannot be gone back to, with the file that it is about.
    #[must_use]
    pub fn of_moment(error: NoMoment, path: &std::path::Path) -> Self {
        let path = path.to_owned();
        match error {
            NoMoment::Unfinished { steps } => Self::Unfinished { path, steps },
            NoMoment::NoSuchStep { asked, steps } => Self::NoMoment { path, asked, steps },
            NoMoment::Vehicle(source) => Self::Simulation { source },
        }
    }

    /// Why there is no debrief, with the file that it is about.
    #[must_use]
    pub fn of_debrief(error: NoDebrief, path: &std::path::Path) -> Self {
        match error {
            NoDebrief::Unfinished { steps } => Self::Unfinished { path: path.to_owned(), steps },
            NoDebrief::Vehicle(source) => Self::Simulation { source },
        }
    }
}

impl From<DealError> for Trouble {
    fn from(error: DealError) -> Self {
        match error {
            DealError::Load(error) => Self::Load(error),
            DealError::Draw(error) => Self::Draw(error),
            DealError::Sealed => Self::Sealed { path: PathBuf::new() },
            DealError::Seal(error) => Self::Seal { path: PathBuf::new(), error },
        }
    }
}

impl From<TrialError> for Trouble {
    fn from(error: TrialError) -> Self {
        match error {
            TrialError::Draw(error) => Self::Draw(error),
            TrialError::Vehicle(source) => Self::Simulation { source },
        }
    }
}
