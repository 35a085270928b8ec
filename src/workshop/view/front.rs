//! The front page.

use std::path::PathBuf;

/// What the front page shows.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct FrontView {
    /// What the seed field holds.
    pub seed: String,
    /// Why that is no seed.
    pub seed_problem: Option<String>,
    /// The sessions that are kept; nothing while they are looked for.
    pub kept: Option<Vec<KeptFile>>,
}

/// A session file.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct KeptFile {
    /// Where it is.
    pub path: PathBuf,
    /// Its name, without folder and ending.
    pub name: String,
    /// What is known of it.
    pub state: KeptState,
}

/// What is known of a session file.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum KeptState {
    /// Not handed over yet.
    Unfinished {
        /// Steps taken.
        steps: usize,
    },
    /// Handed over.
    Finished {
        /// Steps taken.
        steps: usize,
    },
    /// It cannot be used, and why.
    Broken(String),
}
