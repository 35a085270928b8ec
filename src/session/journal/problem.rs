//! What can be wrong with a journal, as data; the sentences for people are made elsewhere.

use crate::numerics::digest::Digest;
use std::io;
use std::path::PathBuf;
use thiserror::Error;

/// Why a journal could not be created, read, resumed or written.
#[derive(Debug, Error)]
pub enum JournalProblem {
    /// The system refused something.
    #[error("{path}: {action:?} refused")]
    Io {
        /// File or folder.
        path: PathBuf,
        /// What was being done.
        action: Action,
        /// What the system said.
        source: io::Error,
    },
    /// A new journal would overwrite something.
    #[error("{path}: exists already")]
    AlreadyExists {
        /// File.
        path: PathBuf,
    },
    /// A folder, a device or a pipe stands there.
    #[error("{path}: not a regular file")]
    NotAFile {
        /// Place.
        path: PathBuf,
    },
    /// Another program, or another session of this one, holds the journal.
    #[error("{path}: in use")]
    InUse {
        /// File.
        path: PathBuf,
    },
    /// The file is larger than any session.
    #[error("{path}: more than {limit} bytes")]
    TooLarge {
        /// File.
        path: PathBuf,
        /// The most that is read, in bytes.
        limit: u64,
    },
    /// The content is not what the program wrote.
    #[error("{path}: line {}", .flaw.line())]
    Flawed {
        /// File.
        path: PathBuf,
        /// What is wrong, and where.
        #[source]
        flaw: Flaw,
    },
    /// An older program began the journal. It can be read, and nothing is added to it.
    #[error("{path}: begun in version {version} of the format")]
    OldVersion {
        /// File.
        path: PathBuf,
        /// Its version.
        version: u32,
    },
    /// The journal ends in the middle of an entry, and was to be read strictly.
    #[error("{path}: {bytes} bytes of entry {entry} were cut off")]
    Torn {
        /// File.
        path: PathBuf,
        /// Number that the entry would have had.
        entry: u64,
        /// Bytes that are there of it.
        bytes: u64,
    },
    /// The journal could not be begun.
    #[error("{path}: not created")]
    NotCreated {
        /// File.
        path: PathBuf,
        /// Why.
        #[source]
        failure: WriteFailure,
        /// Nothing of it is left behind.
        removed: bool,
    },
    /// An entry could not be written. The entries before it are whole, and the session can go on
    /// with the same step once the reason is gone.
    #[error("{path}: entry {entry} not written")]
    NotAppended {
        /// File.
        path: PathBuf,
        /// Number that the entry would have had.
        entry: u64,
        /// Why.
        #[source]
        failure: WriteFailure,
        /// The file ends with the last whole entry. Where it does not, the next append sees to
        /// it first.
        restored: bool,
    },
}

/// What was being done when the system refused.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Action {
    /// Creating a file.
    Create,
    /// Opening a file.
    Open,
    /// Taking the lock.
    Lock,
    /// Asking for size and kind.
    Measure,
    /// Reading.
    Read,
    /// Writing.
    Write,
    /// Waiting until the bytes are on the disk.
    Sync,
    /// Waiting until the name is in its folder on the disk.
    SyncFolder,
    /// Cutting a torn tail off.
    CutBack,
    /// Saving a torn tail beside the journal.
    SaveTorn,
}

/// Why a line did not get into the file.
#[derive(Debug, Error)]
pub enum WriteFailure {
    /// The system refused something.
    #[error("{action:?} refused")]
    Refused {
        /// What was being done.
        action: Action,
        /// What the system said.
        source: io::Error,
    },
    /// Only a part of the line went in; a disk that is nearly full does this.
    #[error("{written} of {expected} bytes written")]
    Short {
        /// Bytes that went in.
        written: usize,
        /// Length of the line, in bytes.
        expected: usize,
    },
    /// The journal would become larger than is read.
    #[error("would be {bytes} bytes, at most {limit} expected")]
    TooLarge {
        /// Size with the line, in bytes.
        bytes: u64,
        /// The most that is read, in bytes.
        limit: u64,
    },
    /// Somebody else changed the file's length; it was left alone.
    #[error("file has {got} bytes, {expected} expected")]
    ChangedOutside {
        /// Length after the last whole entry, in bytes.
        expected: u64,
        /// Length now, in bytes.
        got: u64,
    },
    /// Somebody deleted or replaced the file; what is written would be lost.
    #[error("file was deleted")]
    Deleted,
    /// A value would not come back from the file as it is, such as a number that is not finite.
    #[error("{part:?} cannot be written so that it reads back the same")]
    Unwritable {
        /// Which value.
        part: Part,
    },
}

/// A value that goes into a journal.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Part {
    /// The case.
    Case,
    /// A step.
    Step,
    /// The events of a step.
    Events,
}

/// A value that would not come back from JSON as it is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Error)]
#[error("{part:?} cannot be written so that it reads back the same")]
pub struct Unwritable {
    /// Which value.
    pub part: Part,
}

/// How the content of a journal differs from what the program wrote.
#[derive(Debug, Clone, PartialEq, Eq, Error)]
pub enum Flaw {
    /// The file does not begin as a journal does.
    #[error("not a journal")]
    NotAJournal,
    /// The file ends in its header: no step was ever acknowledged.
    #[error("header cut off after {bytes} bytes")]
    HeaderCut {
        /// Bytes that are there.
        bytes: usize,
    },
    /// The format's version is not one that this program reads.
    #[error("version {got}, {oldest} to {newest} expected")]
    UnknownVersion {
        /// Version of the file.
        got: u64,
        /// Oldest version that is read.
        oldest: u32,
        /// Newest version that is read.
        newest: u32,
    },
    /// The header does not have the form of one.
    #[error("header unreadable at column {column}: {fault:?}")]
    HeaderUnreadable {
        /// Column, in bytes from 1.
        column: usize,
        /// In what way.
        fault: JsonFault,
    },
    /// The case in the header does not have the form of one.
    #[error("case unreadable at its column {column}: {fault:?}")]
    CaseUnreadable {
        /// Column in the case, in bytes from 1.
        column: usize,
        /// In what way.
        fault: JsonFault,
    },
    /// The header says what it should but is not written as the program writes it.
    #[error("header written differently")]
    HeaderRewritten,
    /// The header's chain value does not belong to its content.
    #[error("header's chain value {got:?}, {expected:?} expected")]
    HeaderChain {
        /// By the content.
        expected: Digest,
        /// In the file.
        got: Digest,
    },
    /// A line is not UTF-8.
    #[error("line {line} is not UTF-8 after {valid} bytes")]
    NotUtf8 {
        /// Line, from 1.
        line: u64,
        /// Bytes of the line before the first wrong one.
        valid: usize,
    },
    /// A line does not have the form of an entry.
    #[error("entry {entry} unreadable at column {column}: {fault:?}")]
    EntryUnreadable {
        /// Number of the entry expected there.
        entry: u64,
        /// Column, in bytes from 1.
        column: usize,
        /// In what way.
        fault: JsonFault,
    },
    /// An entry is whole, but something else than a newline stands behind it.
    #[error("entry {entry} has no newline at column {column}")]
    RunsOn {
        /// Number of the entry.
        entry: u64,
        /// Where the newline was expected, in bytes from 1.
        column: usize,
    },
    /// An entry is missing, doubled or in another's place.
    #[error("entry {got}, {entry} expected")]
    OutOfOrder {
        /// Number of the entry expected there.
        entry: u64,
        /// Number of the entry that stands there.
        got: u64,
    },
    /// An entry says what it should but is not written as the program writes it.
    #[error("entry {entry} written differently")]
    EntryRewritten {
        /// Number of the entry.
        entry: u64,
    },
    /// The chain breaks: this entry or one before it was changed.
    #[error("entry {entry}'s chain value {got:?}, {expected:?} expected")]
    ChainBroken {
        /// Number of the entry.
        entry: u64,
        /// By the content and the entries before.
        expected: Digest,
        /// In the file.
        got: Digest,
    },
    /// The entry is as it was written, but this program does not know such a step.
    #[error("entry {entry}'s step unknown at its column {column}: {fault:?}")]
    StepUnknown {
        /// Number of the entry.
        entry: u64,
        /// Column in the step, in bytes from 1.
        column: usize,
        /// In what way.
        fault: JsonFault,
    },
}

/// In what way a text is not the JSON that was expected.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum JsonFault {
    /// It is no JSON.
    Syntax,
    /// It is JSON of another shape.
    Shape,
    /// It ends too early.
    Cut,
}

impl Flaw {
    /// The line of the file that is wrong, from 1.
    #[must_use]
    pub const fn line(&self) -> u64 {
        match *self {
            Self::NotAJournal
            | Self::HeaderCut { .. }
            | Self::UnknownVersion { .. }
            | Self::HeaderUnreadable { .. }
            | Self::CaseUnreadable { .. }
            | Self::HeaderRewritten
            | Self::HeaderChain { .. } => 1,
            Self::NotUtf8 { line, .. } => line,
            // One line an entry, behind the header.
            Self::EntryUnreadable { entry, .. }
            | Self::RunsOn { entry, .. }
            | Self::OutOfOrder { entry, .. }
            | Self::EntryRewritten { entry }
            | Self::ChainBroken { entry, .. }
            | Self::StepUnknown { entry, .. } => entry + 1,
        }
    }
}

impl From<&serde_json::Error> for JsonFault {
    fn from(error: &serde_json::Error) -> Self {
        match error.classify() {
            serde_json::error::Category::Data => Self::Shape,
            serde_json::error::Category::Eof => Self::Cut,
            serde_json::error::Category::Syntax | serde_json::error::Category::Io => Self::Syntax,
        }
    }
}

impl From<Unwritable> for WriteFailure {
    fn from(Unwritable { part }: Unwritable) -> Self {
        Self::Unwritable { part }
    }
}
