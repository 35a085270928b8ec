//! What the surroundings say: language, where sessions are kept, a seed from the system.

use super::trouble::Trouble;
use crate::reasoning::world_store::WorldStore;
use crate::session::kept;
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

/// The file in which the window keeps the user's settings; nothing where the surroundings name no folder.
#[cfg(feature = "workshop")]
#[must_use]
pub fn settings_file() -> Option<PathBuf> {
    let folder = |name: &str| env::var_os(name).map(PathBuf::from);
    // What is not absolute counts as not set (XDG Base Directory Specification, from memory).
    let base = folder("XDG_CONFIG_HOME")
        .filter(|path| path.is_absolute())
        .or_else(|| folder("APPDATA"))
        .or_else(|| folder("HOME").map(|home| home.join(".config")))?;
    Some(base.join("faultwright").join("settings.json"))
}

/// The folder in which worlds are kept when none is named.
#[must_use]
pub fn usual_world_folder() -> PathBuf {
    // What is not absolute counts as not set (XDG Base Directory Specification, from memory).
    let absolute = |path: PathBuf| path.is_absolute().then_some(path);
    env::var_os("XDG_CACHE_HOME")
        .and_then(|path| absolute(PathBuf::from(path)))
        .or_else(|| env::var_os("LOCALAPPDATA").map(PathBuf::from))
        .or_else(|| env::var_os("HOME").map(|home| PathBuf::from(home).join(".cache")))
        .unwrap_or_else(env::temp_dir)
        .join("faultwright")
        .join("worlds")
}

/// The store of worlds that the arguments ask for; `none` keeps nothing.
#[must_use]
pub fn world_store(given: &clap::ArgMatches) -> WorldStore {
    match given.get_one::<PathBuf>("keep-worlds") {
        Some(folder) if folder.as_os_str() == "none" => WorldStore::none(),
        Some(folder) => WorldStore::in_folder(folder.clone()),
        None => WorldStore::in_folder(usual_world_folder()),
    }
}

/// A name for a new session file that nothing has yet.
///
/// # Errors
/// [`Trouble::File`] when the folder cannot be made.
pub fn new_session_path(scenario: &str, seed: u64) -> Result<PathBuf, Trouble> {
    Ok(kept::unused_path(&session_folder()?, scenario, seed))
}
