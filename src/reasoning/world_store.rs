//! Worlds that were begun before, kept on disk.
//!
//! What a world holds after the customer's drives, and what every test shows in it then, hangs on the
//! scenario and the program alone: it is worked out once for each and kept in a file. The name of the
//! file is a fingerprint of everything that goes in: the briefing with vehicle, prices and routes, every
//! supposition with its hidden state, the program's own sources, and the version of the notation. A file that
//! is damaged, cut off, of another program or of another scenario is not believed and written anew; one that
//! cannot be written is done without. With and without the store a debrief is the same to the last bit.
//!
//! A file begins with a line of its own, `faultwright worlds 1`, the key and the fingerprint of the rest; the rest
//! is CBOR (RFC 8949), which knows infinite numbers and keeps every bit of the others.

use super::expert::Expert;
use super::outcome::Aspect;
use super::showings::Showings;
use super::world::{Supposition, Worlds};
use crate::numerics::digest::{Digest, DigestBuilder};
use crate::session::attempt::{Begun, Session};
use crate::session::setup::Briefing;
use crate::vehicle::error::VehicleError;
use core::num::NonZeroUsize;
use serde::{Deserialize, Serialize};
use std::fs;
use std::io;
use std::path::{Path, PathBuf};
use std::sync::Arc;

/// Version of the notation: raised whenever what is written changes.
const FORMAT: &str = "faultwright worlds 1";
/// Fingerprint of the program's sources, from its build.
const SOURCES: &str = env!("FAULTWRIGHT_SOURCES");
/// Ending of the files' names.
const ENDING: &str = "worlds";
/// Files that are kept; of more the oldest go. One is some megabytes.
const MOST_FILES: usize = 24;

/// Where worlds are kept, if anywhere.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct WorldStore {
    folder: Option<PathBuf>,
}

/// Worlds that could not be kept, which harms nobody: they will be worked out again.
#[derive(Debug, thiserror::Error)]
#[error("keeping worlds in {}", path.display())]
pub struct NotKept {
    /// The file that could not be written.
    pub path: PathBuf,
    /// Why.
    #[source]
    pub source: io::Error,
}

/// What stands in a file.
#[derive(Serialize, Deserialize)]
struct Content {
    /// One for each supposition, in their order.
    begun: Vec<Begun>,
    /// What tests show in each world: numbers of world and test.
    shown: Vec<(usize, usize, Vec<Aspect>)>,
}

impl WorldStore {
    /// A store that keeps nothing.
    #[must_use]
    pub const fn none() -> Self {
        Self { folder: None }
    }

    /// A store in a folder, which is made when the first file is written.
    #[must_use]
    pub const fn in_folder(folder: PathBuf) -> Self {
        Self { folder: Some(folder) }
    }

    /// The same worlds as [`Worlds::begin`]'s, read where they are kept, otherwise begun and kept. What
    /// comes beside them is why they could not be kept.
    ///
    /// # Errors
    /// As [`Worlds::begin`].
    pub fn begin(
        &self,
        briefing: &Arc<Briefing>,
        suppositions: &[Supposition],
        progress: &(dyn Fn(usize, usize) + Sync),
    ) -> Result<(Worlds, Option<NotKept>), VehicleError> {
        let threads = std::thread::available_parallelism().map_or(1, NonZeroUsize::get);
        self.begin_on(threads, briefing, suppositions, progress)
    }

    /// The same on a number of threads.
    ///
    /// # Errors
    /// As [`Worlds::begin`].
    pub fn begin_on(
        &self,
        threads: usize,
        briefing: &Arc<Briefing>,
        suppositions: &[Supposition],
        progress: &(dyn Fn(usize, usize) + Sync),
    ) -> Result<(Worlds, Option<NotKept>), VehicleError> {
        let Some(folder) = &self.folder else {
            return Ok((Worlds::begin_on(threads, briefing, suppositions, progress)?, None));
        };
        let key = key(briefing, suppositions);
        let path = folder.join(format!("{key}.{ENDING}"));
        if let Some(worlds) = read(&path, &key, briefing, suppositions) {
            progress(suppositions.len(), suppositions.len());
            return Ok((worlds, None));
        }
        let sessions = Worlds::sessions(threads, briefing, suppositions, progress)?;
        let begun = sessions.iter().map(Session::begun).collect();
        let mut worlds = Worlds::joined(suppositions, sessions);
        foresee(briefing, &mut worlds)?;
        let content = Content { begun, shown: worlds.foreseen.listed() };
        let kept = write(folder, &path, &key, &content);
        Ok((worlds, kept.err().map(|source| NotKept { path, source })))
    }
}

/// Works out what every test shows in every world.
fn foresee(briefing: &Arc<Briefing>, worlds: &mut Worlds) -> Result<(), VehicleError> {
    let expert = Expert::new(Arc::clone(briefing)).with_tests_for(worlds);
    let mut foreseen = Showings::default();
    let all = &worlds.worlds;
    foreseen.complete(&|world| &all[world].session, 0..all.len(), expert.probes())?;
    worlds.foreseen = foreseen;
    Ok(())
}

/// A fingerprint of everything that decides what worlds come to. The debug text of plain data names every
/// field, and writes a number so that every bit can be read back.
fn key(briefing: &Briefing, suppositions: &[Supposition]) -> Digest {
    let mut builder = DigestBuilder::new(FORMAT);
    builder.text(env!("CARGO_PKG_VERSION"));
    builder.text(SOURCES);
    builder.text(&format!("{briefing:?}"));
    builder.text(&format!("{suppositions:?}"));
    builder.finish()
}

fn read(
    path: &Path,
    key: &Digest,
    briefing: &Arc<Briefing>,
    suppositions: &[Supposition],
) -> Option<Worlds> {
    let bytes = fs::read(path).ok()?;
    let end = bytes.iter().position(|byte| *byte == b'\n')?;
    let (line, rest) = (&bytes[..end], &bytes[end + 1..]);
    if line != first_line(key, rest).as_bytes() {
        return None;
    }
    let content: Content = ciborium::from_reader(rest).ok()?;
    if content.begun.len() != suppositions.len() {
        return None;
    }
    let sessions = suppositions
        .iter()
        .zip(content.begun)
        .map(|(it, begun)| Session::begin_again(Arc::clone(briefing), &it.hidden, begun))
        .collect();
    let mut worlds = Worlds::joined(suppositions, sessions);
    worlds.foreseen = Showings::of_list(content.shown);
    Some(worlds)
}

fn first_line(key: &Digest, rest: &[u8]) -> String {
    format!("{FORMAT} {key} {}", Digest::of(rest))
}

/// Writes a file beside its place and moves it there, so that whoever reads finds the whole of it or
/// nothing. Two who write the same write the same bytes.
fn write(folder: &Path, path: &Path, key: &Digest, content: &Content) -> io::Result<()> {
    let mut rest = Vec::new();
    ciborium::into_writer(content, &mut rest).map_err(io::Error::other)?;
    let mut bytes = first_line(key, &rest).into_bytes();
    bytes.push(b'\n');
    bytes.append(&mut rest);
    fs::create_dir_all(folder)?;
    let beside = path.with_extension("part");
    let written = fs::write(&beside, &bytes).and_then(|()| fs::rename(&beside, path));
    if written.is_err() {
        // What was half written on a full disk is in the way of others.
        let _ = fs::remove_file(&beside);
        return written;
    }
    clear_out(folder, path);
    Ok(())
}

/// Removes the oldest files beyond those that are kept. Whatever goes wrong with it can wait.
fn clear_out(folder: &Path, just_written: &Path) {
    let Ok(entries) = fs::read_dir(folder) else { return };
    let mut files: Vec<_> = entries
        .filter_map(Result::ok)
        .map(|entry| entry.path())
        .filter(|path| path.extension().is_some_and(|ending| ending == ENDING))
        .filter(|path| path != just_written)
        .filter_map(|path| Some((fs::metadata(&path).ok()?.modified().ok()?, path)))
        .collect();
    files.sort();
    let beyond = (files.len() + 1).saturating_sub(MOST_FILES);
    for (_, path) in files.into_iter().take(beyond) {
        let _ = fs::remove_file(path);
    }
}
