//! Session files: which there are, and getting a case from one or for a new one.

use super::Surroundings;
use super::scenarios::{Dealt, Source};
use super::sounds;
use super::trouble::Trouble;
use crate::scenario::deal::deal_to_work;
use crate::scenario::draw::Case;
use crate::session::attempt::Session;
use crate::session::journal::{Journal, Mode, ReadMode, read};
use crate::session::kept::{self, KeptSession};
use crate::wording::catalogue::Words;
use crate::wording::file_words;
use crate::workshop::view::case::HeardView;
use crate::workshop::view::front::{Age, KeptFile, KeptState};
use std::fs;
use std::path::{Path, PathBuf};
use std::sync::Arc;

/// The newest files that are looked into: more than anybody reads through, few enough to be there
/// at once.
const MOST_FILES: usize = 24;

/// A case that is open.
pub struct Opened {
    /// The case.
    pub case: Case,
    /// The session about it.
    pub kept: KeptSession,
    /// What has to be known about its file.
    pub notice: Option<String>,
    /// It is under a seal: nothing that is hidden is told after the hand-over.
    pub is_sealed: bool,
    /// Somebody is shown round on it.
    pub is_guided: bool,
    /// What its steps so far let be heard.
    pub sounds: Vec<Option<HeardView>>,
}

/// The newest session files of a folder, the newest first.
pub fn newest(folder: &Path, words: &Words) -> Vec<KeptFile> {
    let Ok(entries) = fs::read_dir(folder) else { return Vec::new() };
    let mut files: Vec<_> = entries
        .filter_map(|entry| {
            let path = entry.ok()?.path();
            let is_session = path.extension().is_some_and(|ending| ending == kept::FILE_ENDING);
            let written = fs::metadata(&path).ok()?.modified().ok()?;
            is_session.then_some((written, path))
        })
        .collect();
    files.sort();
    let newest = files.into_iter().rev().take(MOST_FILES);
    newest
        .map(|(written, path)| {
            // The one place that asks what time it is, for people alone: no result hangs on it.
            let age = written.elapsed().ok().map(|age| Age::of_seconds(age.as_secs()));
            look_into(path, age, words)
        })
        .collect()
}

fn look_into(path: PathBuf, age: Option<Age>, words: &Words) -> KeptFile {
    let name = path.file_stem().map_or_else(String::new, |name| name.to_string_lossy().into());
    let state = match read(&path, ReadMode::AllowTorn) {
        Ok(recorded) => {
            let steps = recorded.entries.len();
            let is_assessed = recorded.case.mode == Mode::Assessed;
            match (kept::is_finished(&recorded.entries), recorded.case.sealed) {
                (false, _) => KeptState::Unfinished { steps, is_assessed },
                (true, None) => KeptState::Finished { steps, is_assessed },
                (true, Some(_)) => KeptState::Sealed { steps },
            }
        }
        Err(problem) => KeptState::Broken(file_words::journal_problem(&problem, words)),
    };
    KeptFile { path, name, state, age }
}

/// Deals a case of a scenario and begins to keep its session.
///
/// # Errors
/// [`Trouble`] when the scenario cannot be read, no case comes of the seed, or nothing can be kept.
pub fn begin(
    around: &Surroundings,
    source: &Source,
    seed: u64,
    is_assessed: bool,
) -> Result<Opened, Trouble> {
    let folder = (around.sessions)().map_err(Trouble::NoFolder)?;
    let Dealt { case, record, name, is_sealed } = source.deal(seed, is_assessed)?;
    let path = kept::unused_name(&folder, &name);
    let session = Session::begin(Arc::clone(&case.briefing), case.hidden.clone())?;
    let kept = KeptSession::create(&path, &record, session)
        .map_err(|error| Trouble::of_kept(error, &path))?;
    Ok(Opened { case, kept, notice: None, is_sealed, is_guided: false, sounds: Vec::new() })
}

/// Goes on with a kept session.
///
/// # Errors
/// [`Trouble`] when its file cannot be used; the file is then as it was.
pub fn open(path: &Path, words: &Words) -> Result<Opened, Trouble> {
    let (journal, recorded) = Journal::resume(path)?;
    let case = deal_to_work(&recorded.case).map_err(|error| Trouble::of_sealed(error, path))?;
    let session = Session::begin(Arc::clone(&case.briefing), case.hidden.clone())?;
    let kept = KeptSession::resume(journal, &recorded.entries, session)
        .map_err(|error| Trouble::of_kept(error, path))?;
    let notice = recorded.torn.as_ref().map(|torn| file_words::torn(torn, path, words));
    let sounds = sounds::views(kept.session(), words);
    let is_sealed = recorded.case.sealed.is_some();
    Ok(Opened { case, kept, notice, is_sealed, is_guided: false, sounds })
}
