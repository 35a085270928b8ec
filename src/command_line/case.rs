//! Getting a case: from a scenario file or the one that the program carries.

use super::trouble::Trouble;
use crate::scenario::load::{self, Loaded};
use std::path::PathBuf;
use std::sync::Arc;

/// The scenario that the arguments name, or the program's own.
///
/// # Errors
/// [`Trouble::Load`] when it cannot be read.
pub fn scenario(given: &clap::ArgMatches) -> Result<Arc<Loaded>, Trouble> {
    let loaded = match given.get_one::<PathBuf>("scenario") {
        Some(path) => load::load(path)?,
        None => load::demo()?,
    };
    Ok(Arc::new(loaded))
}
