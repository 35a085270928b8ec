//! The session on disk: append-only, one line an entry, each chained to the one before.
//!
//! *Purpose.* A step is on the disk before its events are shown, so that a session that is killed
//! at any moment goes on at its last step, and a finished one can be replayed and marked.
//!
//! *Limits.* The chain has no key: it shows damage and clumsy changes, and whoever holds the
//! program can write a whole new journal. What shows that is the last chain value, kept where the
//! apprentice cannot change it. `docs/session-format.md` has the format field by field.
//!
//! *In and out.* Steps with their events in, [`Recorded`] out; everything that can be wrong is a
//! [`JournalProblem`].
//!
//! ```
//! use faultwright::session::journal::{CaseRecord, Journal, Mode, ReadMode, read};
//! use faultwright::session::{event::Event, step::Step};
//! # let folder = tempfile::tempdir()?;
//! let path = folder.path().join("monday.session");
//! let case = CaseRecord {
//!     scenario_name: "rough-idle".to_owned(),
//!     scenario_text: "(...)".to_owned(),
//!     vehicle_text: "(...)".to_owned(),
//!     seed: 7,
//!     mode: Mode::Practice,
//!     sealed: None,
//! };
//! let mut journal = Journal::create(&path, &case)?;
//! journal.append(&Step::ReadJobSheet, &[Event::JobSheetShown])?;
//! drop(journal);
//! let recorded = read(&path, ReadMode::Strict)?;
//! assert_eq!(recorded.case, case);
//! assert!(recorded.entries[0].agrees_with(&[Event::JobSheetShown]));
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```

mod line;
mod problem;
mod record;
mod sealed;
#[cfg(test)]
mod tests;
mod writer;

pub use line::digest_of_events;
pub use problem::{Action, Flaw, JournalProblem, JsonFault, Part, Unwritable, WriteFailure};
pub use record::{CaseRecord, Entry, Mode, ReadMode, Recorded, TornTail};
pub use sealed::Sealed;

use crate::numerics::digest::Digest;
use crate::session::event::Event;
use crate::session::step::Step;
use line::Line;
use std::fs::{self, File, OpenOptions, TryLockError};
use std::io::{self, Read, Write};
use std::path::{Path, PathBuf};
use writer::{NotAdded, Writer};

/// The largest journal that is read or written, in bytes: engineering estimate; a long session with
/// its scenario and vehicle is under one mebibyte.
pub const LARGEST_BYTES: u64 = 64 * 1024 * 1024;

/// A journal that is being written. While it lives no other program can write it.
#[derive(Debug)]
pub struct Journal {
    path: PathBuf,
    writer: Writer<File>,
}

impl Journal {
    /// Begins the journal of a new session; it is on the disk on return.
    ///
    /// # Errors
    /// [`JournalProblem`]; where something stands at `path` already it is left alone.
    pub fn create(path: &Path, case: &CaseRecord) -> Result<Self, JournalProblem> {
        let not_created = |failure, removed| JournalProblem::NotCreated {
            path: path.to_owned(),
            failure,
            removed,
        };
        let header = line::header_line(env!("CARGO_PKG_VERSION"), case)
            .map_err(|unwritable| not_created(unwritable.into(), true))?;
        let file = OpenOptions::new().read(true).write(true).create_new(true).open(path).map_err(
            |source| match source.kind() {
                io::ErrorKind::AlreadyExists => {
                    JournalProblem::AlreadyExists { path: path.to_owned() }
                }
                _ => io_problem(path, Action::Create)(source),
            },
        )?;
        match begin(path, file, &header) {
            Ok(writer) => Ok(Self { path: path.to_owned(), writer }),
            // A beginning without a whole header is of no use, and would be in the way of the
            // next try.
            Err(failure) => Err(not_created(failure, fs::remove_file(path).is_ok())),
        }
    }

    /// Goes on with a session. A torn tail is first saved beside the journal, in a file of its
    /// name with `.torn` behind it, then cut off; [`Recorded::torn`] tells of it.
    ///
    /// # Errors
    /// [`JournalProblem`]; every whole entry is then as it was.
    pub fn resume(path: &Path) -> Result<(Self, Recorded), JournalProblem> {
        check_kind(path)?;
        let mut file = OpenOptions::new()
            .read(true)
            .write(true)
            .open(path)
            .map_err(io_problem(path, Action::Open))?;
        file.try_lock().map_err(|error| lock_problem(path, error))?;
        let bytes = read_bytes(path, &mut file)?;
        let recorded = decode(path, &bytes)?;
        if recorded.version < line::OLDEST_RESUMED {
            return Err(JournalProblem::OldVersion {
                path: path.to_owned(),
                version: recorded.version,
            });
        }
        let mut whole = bytes.len() as u64;
        if let Some(torn) = &recorded.torn {
            whole = torn.offset;
            save_torn(path, &torn.bytes)?;
            file.set_len(whole).map_err(io_problem(path, Action::CutBack))?;
        }
        // A kill between writing and syncing leaves a whole entry that may not be on the disk yet;
        // from here on it counts as acknowledged.
        file.sync_all().map_err(io_problem(path, Action::Sync))?;
        let entries = recorded.entries.len() as u64;
        let writer = Writer::go_on(file, whole, LARGEST_BYTES, entries, recorded.last_chain());
        Ok((Self { path: path.to_owned(), writer }, recorded))
    }

    /// Adds a step with what followed from it; it is on the disk on return, and only then may the
    /// events be shown.
    ///
    /// # Errors
    /// [`JournalProblem::NotAppended`]. What was appended before is whole, and the same step can
    /// be appended again once the reason is gone.
    pub fn append(&mut self, step: &Step, events: &[Event]) -> Result<(), JournalProblem> {
        self.writer.append(step, events).map_err(|NotAdded { failure, restored }| {
            JournalProblem::NotAppended {
                path: self.path.clone(),
                entry: self.writer.entries() + 1,
                failure,
                restored,
            }
        })
    }

    /// Where the journal is.
    #[must_use]
    pub fn path(&self) -> &Path {
        &self.path
    }

    /// Number of entries that are on the disk.
    #[must_use]
    pub const fn entries(&self) -> u64 {
        self.writer.entries()
    }

    /// Chain value of the last of them, or of the header where there is none; see
    /// [`Recorded::last_chain`].
    #[must_use]
    pub const fn last_chain(&self) -> Digest {
        self.writer.last_chain()
    }
}

/// Locks a new file and writes the header.
fn begin(path: &Path, file: File, header: &Line) -> Result<Writer<File>, WriteFailure> {
    file.try_lock()
        .map_err(|error| WriteFailure::Refused { action: Action::Lock, source: error.into() })?;
    let writer = Writer::begin(file, header, LARGEST_BYTES).map_err(|refused| refused.failure)?;
    sync_folder(path)
        .map_err(|source| WriteFailure::Refused { action: Action::SyncFolder, source })?;
    Ok(writer)
}

/// Reads a journal and changes nothing.
///
/// # Errors
/// [`JournalProblem`]; by [`ReadMode::Strict`] also [`JournalProblem::Torn`] and
/// [`JournalProblem::InUse`].
pub fn read(path: &Path, mode: ReadMode) -> Result<Recorded, JournalProblem> {
    check_kind(path)?;
    let mut file = File::open(path).map_err(io_problem(path, Action::Open))?;
    if mode == ReadMode::Strict {
        match file.try_lock_shared() {
            Ok(()) => {}
            // Where locks are unknown nobody can hold one.
            Err(TryLockError::Error(error)) if error.kind() == io::ErrorKind::Unsupported => {}
            Err(error) => return Err(lock_problem(path, error)),
        }
    }
    let bytes = read_bytes(path, &mut file)?;
    let recorded = decode(path, &bytes)?;
    match &recorded.torn {
        Some(torn) if mode == ReadMode::Strict => Err(JournalProblem::Torn {
            path: path.to_owned(),
            entry: torn.entry,
            bytes: torn.bytes.len() as u64,
        }),
        _ => Ok(recorded),
    }
}

/// Asked before opening, since opening a pipe waits for its other end.
fn check_kind(path: &Path) -> Result<(), JournalProblem> {
    let metadata = fs::metadata(path).map_err(io_problem(path, Action::Open))?;
    if metadata.is_file() {
        Ok(())
    } else {
        Err(JournalProblem::NotAFile { path: path.to_owned() })
    }
}

fn lock_problem(path: &Path, error: TryLockError) -> JournalProblem {
    match error {
        TryLockError::WouldBlock => JournalProblem::InUse { path: path.to_owned() },
        TryLockError::Error(source) => io_problem(path, Action::Lock)(source),
    }
}

fn read_bytes(path: &Path, file: &mut File) -> Result<Vec<u8>, JournalProblem> {
    let mut bytes = Vec::new();
    // The length that the system tells may be out of date, so the reading itself stops.
    file.take(LARGEST_BYTES + 1).read_to_end(&mut bytes).map_err(io_problem(path, Action::Read))?;
    if bytes.len() as u64 > LARGEST_BYTES {
        return Err(JournalProblem::TooLarge { path: path.to_owned(), limit: LARGEST_BYTES });
    }
    Ok(bytes)
}

fn decode(path: &Path, bytes: &[u8]) -> Result<Recorded, JournalProblem> {
    line::decode(bytes).map_err(|flaw| JournalProblem::Flawed { path: path.to_owned(), flaw })
}

/// Adds a torn tail to the file beside the journal, and a newline so that several can be told
/// apart.
fn save_torn(journal: &Path, tail: &[u8]) -> Result<(), JournalProblem> {
    let mut name = journal.as_os_str().to_owned();
    name.push(".torn");
    let path = PathBuf::from(name);
    let save = || {
        let mut file = OpenOptions::new().append(true).create(true).open(&path)?;
        file.write_all(tail)?;
        file.write_all(b"\n")?;
        file.sync_all()?;
        sync_folder(&path)
    };
    save().map_err(io_problem(&path, Action::SaveTorn))
}

/// On Unix a new file's name is on the disk only when its folder is. Elsewhere a folder cannot be
/// opened as a file, and the file's own sync sees to its name.
fn sync_folder(path: &Path) -> io::Result<()> {
    if cfg!(not(unix)) {
        return Ok(());
    }
    let folder = match path.parent() {
        Some(parent) if !parent.as_os_str().is_empty() => parent,
        _ => Path::new("."),
    };
    match File::open(folder)?.sync_all() {
        // Some network folders cannot do it and say so; they keep names by themselves.
        Err(error)
            if matches!(error.kind(), io::ErrorKind::InvalidInput | io::ErrorKind::Unsupported) =>
        {
            Ok(())
        }
        result => result,
    }
}

fn io_problem(path: &Path, action: Action) -> impl FnOnce(io::Error) -> JournalProblem {
    move |source| JournalProblem::Io { path: path.to_owned(), action, source }
}
