//! What the surroundings say: language, where sessions are kept, a seed from the system.

use super::trouble::Trouble;
use std::env;
use std::fs;
use std::hash::{BuildHasher as _, RandomState};
use std::path::PathBuf;

/// The language that the surroundings ask for.
#[must_use]
pub fn language() -> String {
    ["LC_ALL", "LC_MESSAGES", "LANG"]
        .into_iter()
        .filter_map(|name| env::var(name).ok())
        .find(|value| !value.is_empty())
        .unwrap_or_default()
}

/// A seed that nobody chose.
#[must_use]
pub fn any_seed() -> u64 {
    // The standard library's hasher is keyed from the system's random source. Six digits are
    // enough to be different and short enough to be told to somebody.
    RandomState::new().hash_one(0_u8) % 1_000_000
}

/// The folder in which sessions are kept when no file is named.
///
/// # Errors
/// [`Trouble::File`] when it is not there and cannot be made.
pub fn session_folder() -> Result<PathBuf, Trouble> {
    let base = env::var_os("XDG_DATA_HOME")
        .map(PathBuf::from)
        .or_else(|| env::var_os("LOCALAPPDATA").map(PathBuf::from))
        .or_else(|| env::var_os("HOME").map(|home| PathBuf::from(home).join(".local/share")))
        .unwrap_or_else(env::temp_dir);
    let folder = base.join("faultwright").join("sessions");
    fs::create_dir_all(&folder).map_err(|source| Trouble::File { path: folder.clone(), source })?;
    Ok(folder)
}

/// A name for a new session file that nothing has yet.
///
/// # Errors
/// [`Trouble::File`] when the folder cannot be made.
pub fn new_session_path(scenario: &str, seed: u64) -> Result<PathBuf, Trouble> {
    let folder = session_folder()?;
    let mut number = 1_u32;
    loop {
        let path = folder.join(format!("{scenario}-{seed}-{number}.session"));
        if !path.exists() {
            return Ok(path);
        }
        number += 1;
    }
}
