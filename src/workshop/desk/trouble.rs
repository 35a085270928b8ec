//! What can go wrong behind the window, in a sentence with its remedy.

use crate::assessment::debrief::NoDebrief;
use crate::report::problem_words;
use crate::scenario::deal::DealError;
use crate::scenario::load::LoadError;
use crate::scenario::seal::SealError;
use crate::session::journal::JournalProblem;
use crate::session::kept::KeptError;
use crate::vehicle::error::VehicleError;
use crate::wording::catalogue::Words;
use crate::wording::{defect_words, file_words};
use std::path::{Path, PathBuf};

/// What went wrong.
#[derive(Debug)]
pub enum Trouble {
    /// There is no folder for sessions; already in words.
    NoFolder(String),
    /// No case could be dealt.
    Deal(DealError),
    /// A sealed case cannot be read.
    Seal {
        /// The file.
        path: PathBuf,
        /// Why.
        error: SealError,
    },
    /// A session file cannot be read or written.
    Journal(JournalProblem),
    /// A session's steps lead to other events than were recorded.
    Diverged {
        /// The file.
        path: PathBuf,
        /// Number of the entry, from 1.
        entry: u64,
    },
    /// The session is not finished, so that there is no debrief.
    Unfinished {
        /// The file.
        path: PathBuf,
        /// Steps so far.
        steps: usize,
    },
    /// The simulation failed.
    Vehicle(VehicleError),
}

impl Trouble {
    /// What is wrong with a kept session, with the file that it is about.
    pub fn of_kept(error: KeptError, path: &Path) -> Self {
        match error {
            KeptError::Vehicle(error) => Self::Vehicle(error),
            KeptError::Journal(problem) => Self::Journal(problem),
            KeptError::Diverged { entry } => Self::Diverged { path: path.to_owned(), entry },
        }
    }

    /// Why a sealed case is not dealt, with the file that it is in.
    pub fn of_sealed(error: DealError, path: &Path) -> Self {
        match error {
            DealError::Seal(error) => Self::Seal { path: path.to_owned(), error },
            other => Self::Deal(other),
        }
    }

    /// Why there is no debrief, with the file that it is about.
    pub fn of_debrief(error: NoDebrief, path: &Path) -> Self {
        match error {
            NoDebrief::Vehicle(error) => Self::Vehicle(error),
            NoDebrief::Unfinished { steps } => Self::Unfinished { path: path.to_owned(), steps },
        }
    }

    /// In a sentence.
    pub fn sentence(&self, words: &Words) -> String {
        match self {
            Self::NoFolder(why) => words.say("window-no-folder", &[("why", why.as_str().into())]),
            Self::Deal(DealError::Load(error)) => {
                problem_words::load_error(error, words).join("\n")
            }
            Self::Deal(DealError::Draw(error)) => problem_words::draw_error(error, words),
            // Both carry their file by [`Self::of_sealed`], and the window deals sealed cases by nothing else.
            Self::Deal(DealError::Seal(error)) => {
                problem_words::seal_error(*error, Path::new(""), words)
            }
            Self::Deal(DealError::Sealed) => problem_words::sealed(Path::new(""), words),
            Self::Seal { path, error } => problem_words::seal_error(*error, path, words),
            Self::Journal(problem) => file_words::journal_problem(problem, words),
            Self::Diverged { path, entry } => words.say(
                "trouble-diverged",
                &[("path", path.display().to_string().into()), ("entry", (*entry).into())],
            ),
            Self::Unfinished { path, steps } => words.say(
                "trouble-unfinished",
                &[("path", path.display().to_string().into()), ("steps", (*steps).into())],
            ),
            Self::Vehicle(error) => defect_words::simulation_failed(error, words),
        }
    }
}

impl From<DealError> for Trouble {
    fn from(error: DealError) -> Self {
        Self::Deal(error)
    }
}

impl From<LoadError> for Trouble {
    fn from(error: LoadError) -> Self {
        Self::Deal(error.into())
    }
}

impl From<JournalProblem> for Trouble {
    fn from(problem: JournalProblem) -> Self {
        Self::Journal(problem)
    }
}

impl From<VehicleError> for Trouble {
    fn from(error: VehicleError) -> Self {
        Self::Vehicle(error)
    }
}
