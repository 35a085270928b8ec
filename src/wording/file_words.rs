//! Troubles with files in words.

use super::catalogue::Words;
use crate::session::journal::{JournalProblem, TornTail};
use std::io;
use std::path::Path;

/// What is wrong with a session file, where, and what to do.
#[must_use]
pub fn journal_problem(problem: &JournalProblem, _words: &Words) -> String {
    format!("{problem}")
}

/// A torn tail that was set aside on resuming.
#[must_use]
pub fn torn(_torn: &TornTail, path: &Path, _words: &Words) -> String {
    format!("{}", path.display())
}

/// What the system said, in the catalogue's words where it has some.
#[must_use]
pub fn io_reason(error: &io::Error, _words: &Words) -> String {
    format!("{error}")
}
