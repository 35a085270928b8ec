//! Adds lines to a file so that a failure leaves whole lines alone and nothing else.

use super::line::{Line, entry_line};
use super::problem::{Action, WriteFailure};
use crate::numerics::digest::Digest;
use crate::session::event::Event;
use crate::session::step::Step;
use std::fs::{File, Metadata};
use std::io::{self, Seek, SeekFrom, Write};

/// What a writer needs of a file; the tests put one there that fails on demand.
pub(super) trait Store {
    /// Length, in bytes, and whether the file still has a name.
    fn standing(&self) -> io::Result<Standing>;
    /// Writes at an offset, once; returns how much went in.
    fn write_at(&mut self, offset: u64, bytes: &[u8]) -> io::Result<usize>;
    /// Returns when all that was written is on the disk.
    fn sync(&mut self) -> io::Result<()>;
    /// Shortens the file.
    fn cut(&mut self, length: u64) -> io::Result<()>;
}

/// How a file stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Standing {
    /// Length, in bytes.
    pub(super) length: u64,
    /// It was not deleted.
    pub(super) has_name: bool,
}

impl Store for File {
    fn standing(&self) -> io::Result<Standing> {
        let metadata = self.metadata()?;
        Ok(Standing { length: metadata.len(), has_name: has_name(&metadata) })
    }

    fn write_at(&mut self, offset: u64, bytes: &[u8]) -> io::Result<usize> {
        self.seek(SeekFrom::Start(offset))?;
        loop {
            match self.write(bytes) {
                // A signal came before the first byte; nothing was written.
                Err(error) if error.kind() == io::ErrorKind::Interrupted => {}
                result => return result,
            }
        }
    }

    fn sync(&mut self) -> io::Result<()> {
        self.sync_data()
    }

    fn cut(&mut self, length: u64) -> io::Result<()> {
        self.set_len(length)
    }
}

/// A deleted file can still be written through an open handle, and all of it is lost at the end.
#[cfg(unix)]
fn has_name(metadata: &Metadata) -> bool {
    use std::os::unix::fs::MetadataExt;
    metadata.nlink() > 0
}

/// Elsewhere the system does not tell how many names a file has.
#[cfg(not(unix))]
fn has_name(_: &Metadata) -> bool {
    true
}

/// The end of a journal.
#[derive(Debug)]
pub(super) struct Writer<S> {
    store: S,
    /// Length up to the last acknowledged line, in bytes.
    whole: u64,
    /// Length beyond which a journal is not read, in bytes.
    limit: u64,
    /// Something may stand behind the last acknowledged line.
    is_unclean: bool,
    entries: u64,
    last_chain: Digest,
}

/// A line that did not get in.
#[derive(Debug)]
pub(super) struct NotAdded {
    pub(super) failure: WriteFailure,
    /// The file ends with the last acknowledged line.
    pub(super) restored: bool,
}

impl<S: Store> Writer<S> {
    /// Begins an empty file.
    pub(super) fn begin(store: S, header: &Line, limit: u64) -> Result<Self, NotAdded> {
        let last_chain = header.chain;
        let mut writer = Self { store, whole: 0, limit, is_unclean: false, entries: 0, last_chain };
        writer.add(header.text.as_bytes())?;
        Ok(writer)
    }

    /// Goes on behind `entries` entries that end at `whole`.
    pub(super) fn go_on(store: S, whole: u64, limit: u64, entries: u64, last: Digest) -> Self {
        Self { store, whole, limit, is_unclean: false, entries, last_chain: last }
    }

    /// Adds an entry; it is on the disk on return.
    pub(super) fn append(&mut self, step: &Step, events: &[Event]) -> Result<(), NotAdded> {
        let number = self.entries + 1;
        let line = entry_line(&self.last_chain, number, step, events)
            .map_err(|unwritable| self.untouched(unwritable.into()))?;
        self.add(line.text.as_bytes())?;
        self.entries = number;
        self.last_chain = line.chain;
        Ok(())
    }

    /// Number of entries that are on the disk.
    pub(super) const fn entries(&self) -> u64 {
        self.entries
    }

    /// Chain value of the last of them, or of the header.
    pub(super) const fn last_chain(&self) -> Digest {
        self.last_chain
    }

    fn add(&mut self, line: &[u8]) -> Result<(), NotAdded> {
        if self.is_unclean {
            self.restore().map_err(|failure| NotAdded { failure, restored: false })?;
        }
        let end = self.whole.saturating_add(line.len() as u64);
        self.check_place(end).map_err(|failure| self.untouched(failure))?;
        if let Err(failure) = self.write(line) {
            // What the disk holds is unknown after a failed sync too, so the line goes in any
            // case: it was never acknowledged.
            self.is_unclean = true;
            let restored = self.restore().is_ok();
            return Err(NotAdded { failure, restored });
        }
        self.whole = end;
        Ok(())
    }

    fn untouched(&self, failure: WriteFailure) -> NotAdded {
        NotAdded { failure, restored: !self.is_unclean }
    }

    fn check_place(&self, end: u64) -> Result<(), WriteFailure> {
        let standing = self.store.standing().map_err(refused(Action::Measure))?;
        if !standing.has_name {
            return Err(WriteFailure::Deleted);
        }
        if standing.length != self.whole {
            return Err(WriteFailure::ChangedOutside {
                expected: self.whole,
                got: standing.length,
            });
        }
        if end > self.limit {
            return Err(WriteFailure::TooLarge { bytes: end, limit: self.limit });
        }
        Ok(())
    }

    fn write(&mut self, line: &[u8]) -> Result<(), WriteFailure> {
        let written = self.store.write_at(self.whole, line).map_err(refused(Action::Write))?;
        if written != line.len() {
            return Err(WriteFailure::Short { written, expected: line.len() });
        }
        self.store.sync().map_err(refused(Action::Sync))
    }

    fn restore(&mut self) -> Result<(), WriteFailure> {
        self.store.cut(self.whole).map_err(refused(Action::CutBack))?;
        self.store.sync().map_err(refused(Action::Sync))?;
        self.is_unclean = false;
        Ok(())
    }
}

fn refused(action: Action) -> impl FnOnce(io::Error) -> WriteFailure {
    move |source| WriteFailure::Refused { action, source }
}
