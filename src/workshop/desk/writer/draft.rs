//! What is being written, kept beside the settings at every change, so that a window that ends badly takes nothing away.
//!
//! A JSON object with a format and a version. It stays when everything is saved and then says only where that is, so that
//! writing can be gone on with from the front page.

use crate::scenario::writing::keeping::write_whole;
use serde::{Deserialize, Serialize};
use std::fs;
use std::io;
use std::path::{Path, PathBuf};
use std::sync::atomic::{AtomicU64, Ordering};
use std::sync::{Arc, Mutex, PoisonError};

/// What the file says that it is.
const FORMAT: &str = "faultwright writing";
/// The version that is written, and the only one there has been.
const VERSION: u64 = 1;
/// Name of the file, beside the settings.
const NAME: &str = "case-being-written.json";
/// Bytes of the largest file that is read: two of the longest scenarios, every letter escaped.
const MOST_BYTES: u64 = 1 << 24;

/// What is kept.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Draft {
    format: String,
    version: u64,
    /// Where the text is saved, if it ever was.
    pub path: Option<PathBuf>,
    /// The text as it was saved last, and as it stands; nothing where they are the same.
    pub unsaved: Option<(String, String)>,
}

impl Draft {
    /// What is kept of a text.
    pub fn new(path: Option<PathBuf>, unsaved: Option<(String, String)>) -> Self {
        Self { format: FORMAT.to_owned(), version: VERSION, path, unsaved }
    }
}

/// The one place where it is kept, for every thread that may write there: an older text never comes after a newer one.
#[derive(Debug, Clone, Default)]
pub struct Drawer {
    /// Nowhere, where the surroundings name no folder.
    path: Option<PathBuf>,
    /// Number of the newest text that was written.
    newest: Arc<Mutex<u64>>,
    /// Number of the newest text that there is.
    given: Arc<AtomicU64>,
}

impl Drawer {
    /// The drawer beside a file of settings.
    pub fn beside(settings: Option<&Path>) -> Self {
        let path = settings.map(|path| path.with_file_name(NAME));
        Self { path, newest: Arc::default(), given: Arc::default() }
    }

    /// A number for a text, greater than that of any before.
    pub fn next_number(&self) -> u64 {
        self.given.fetch_add(1, Ordering::Relaxed) + 1
    }

    /// Keeps a text, unless one of a greater number is kept already.
    ///
    /// # Errors
    /// What the system says when it cannot be written.
    pub fn keep(&self, number: u64, draft: &Draft) -> io::Result<()> {
        let Some(path) = &self.path else { return Ok(()) };
        let mut newest = self.newest.lock().unwrap_or_else(PoisonError::into_inner);
        if number < *newest {
            return Ok(());
        }
        *newest = number;
        if let Some(folder) = path.parent() {
            fs::create_dir_all(folder)?;
        }
        write_whole(path, &serde_json::to_string(draft)?)
    }

    /// What is kept; nothing where nothing is, or nothing that this program can read.
    pub fn look(&self) -> Option<Draft> {
        let path = self.path.as_ref()?;
        let meta = fs::metadata(path).ok()?;
        if !meta.is_file() || meta.len() > MOST_BYTES {
            return None;
        }
        let draft: Draft = serde_json::from_slice(&fs::read(path).ok()?).ok()?;
        (draft.format == FORMAT && draft.version == VERSION).then_some(draft)
    }
}
