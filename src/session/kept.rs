//! A session that is kept on disk: every step is in the journal before its events are shown.

use super::attempt::Session;
use super::event::{Event, Refusal};
use super::journal::{CaseRecord, Entry, Journal, JournalProblem};
use super::step::Step;
use crate::numerics::digest::Digest;
use crate::vehicle::error::VehicleError;
use std::path::{Path, PathBuf};
use thiserror::Error;

/// A session with its journal.
#[derive(Debug)]
pub struct KeptSession {
    session: Session,
    journal: Journal,
}

/// Why a kept session cannot go on.
#[derive(Debug, Error)]
pub enum KeptError {
    /// The vehicle cannot be simulated.
    #[error("taking a step: the vehicle cannot be simulated")]
    Vehicle(#[from] VehicleError),
    /// The journal cannot be read or written. The step was not taken.
    #[error("keeping a session: the journal failed")]
    Journal(#[from] JournalProblem),
    /// The journal's steps lead to other events than it recorded.
    #[error("replaying a session: other events follow from entry {entry} than were recorded")]
    Diverged {
        /// Number of the entry, from 1.
        entry: u64,
    },
}

impl KeptSession {
    /// Begins to keep a session in a new file.
    ///
    /// # Errors
    /// [`KeptError::Journal`] when the file is there already or cannot be written.
    pub fn create(path: &Path, case: &CaseRecord, session: Session) -> Result<Self, KeptError> {
        Ok(Self { session, journal: Journal::create(path, case)? })
    }

    /// Goes on with a journal that was just resumed and a session that has just begun: the
    /// recorded steps are taken again.
    ///
    /// # Errors
    /// [`KeptError`] when a step leads to other events than it did.
    pub fn resume(
        journal: Journal,
        entries: &[Entry],
        mut session: Session,
    ) -> Result<Self, KeptError> {
        replay(&mut session, entries)?;
        Ok(Self { session, journal })
    }

    /// Takes a step, writes it down, and then returns what followed. When it cannot be written
    /// the step has not been taken.
    ///
    /// # Errors
    /// [`KeptError`] when the step cannot be simulated or written.
    pub fn take(&mut self, step: &Step) -> Result<Vec<Event>, KeptError> {
        let mut next = self.session.clone();
        let events = next.take(step)?;
        self.journal.append(step, &events)?;
        self.session = next;
        Ok(events)
    }

    /// The session.
    #[must_use]
    pub const fn session(&self) -> &Session {
        &self.session
    }

    /// Fingerprint of the file up to its last entry: kept by somebody else, it shows whether the file was written anew.
    #[must_use]
    pub const fn receipt(&self) -> Digest {
        self.journal.last_chain()
    }

    /// Where it is kept.
    #[must_use]
    pub fn path(&self) -> &Path {
        self.journal.path()
    }
}

/// Takes recorded steps again on a session that has just begun, and compares what follows.
///
/// # Errors
/// [`KeptError::Diverged`] at the first entry with other events.
pub fn replay(session: &mut Session, entries: &[Entry]) -> Result<(), KeptError> {
    for entry in entries {
        let events = session.take(&entry.step)?;
        if !entry.agrees_with(&events) {
            return Err(KeptError::Diverged { entry: entry.number });
        }
    }
    Ok(())
}

/// The ending of a session file's name, without the point.
pub const FILE_ENDING: &str = "session";

/// A name in a folder for a new session, which nothing has yet.
#[must_use]
pub fn unused_path(folder: &Path, scenario: &str, seed: u64) -> PathBuf {
    unused_name(folder, &name_of(scenario, seed))
}

/// What the session of a seed is called, before a number that tells it from others of the same case.
#[must_use]
pub fn name_of(scenario: &str, seed: u64) -> String {
    format!("{scenario}-{seed}")
}

/// The same for a session of which the name may not tell the seed.
#[must_use]
pub fn unused_name(folder: &Path, name: &str) -> PathBuf {
    let mut number = 1_u32;
    loop {
        let path = folder.join(format!("{name}-{number}.{FILE_ENDING}"));
        if !path.exists() {
            return path;
        }
        number += 1;
    }
}

/// Whether recorded steps end in handing the vehicle over, told without replaying them.
#[must_use]
pub fn is_finished(entries: &[Entry]) -> bool {
    // The one thing that stops a hand-over; what it says otherwise depends on the case.
    let refused = [Event::Refused { reason: Refusal::EngineRuns }];
    entries
        .iter()
        .any(|entry| matches!(entry.step, Step::HandOver { .. }) && !entry.agrees_with(&refused))
}
