//! Seals: the passphrase, hand-outs as files, and opening them.

use super::judging::replayed;
use super::screen::{Format, Screen};
use super::trouble::Trouble;
use super::{Ending, Outcome};
use crate::numerics::digest::Digest;
use crate::report::json;
use crate::scenario::deal::{deal_again, record_of};
use crate::scenario::draw::Case;
use crate::scenario::seal::{self, CHANCE, SealError};
use crate::session::attempt::Session;
use crate::session::journal::{ReadMode, Recorded, Sealed, read};
use crate::session::kept::{self, KeptSession};
use crate::wording::place;
use serde_json::json;
use std::fs::{self, File, OpenOptions};
use std::io::{self, BufRead as _, BufReader, Read as _, Write as _};
use std::path::{Path, PathBuf};
use std::sync::Arc;

/// The ending of a hand-out's name.
const ENDING: &str = "case";
/// Letters of a name that a file's name takes up.
const LETTERS: usize = 40;

/// The passphrase in the first line of the file that the arguments name, or of standard input where that is `-`.
///
/// # Errors
/// [`Trouble::File`] when it cannot be read.
pub fn passphrase(given: &clap::ArgMatches) -> Result<Option<String>, Trouble> {
    let Some(path) = given.get_one::<PathBuf>("passphrase") else { return Ok(None) };
    let trouble = |source| Trouble::File { path: path.clone(), source };
    let mut line = String::new();
    if path.as_os_str() == "-" {
        io::stdin().lock().read_line(&mut line).map_err(trouble)?;
    } else {
        let file = File::open(path).map_err(trouble)?;
        BufReader::new(file.take(1 << 12)).read_line(&mut line).map_err(trouble)?;
    }
    Ok(Some(line.trim_end_matches(['\r', '\n']).to_owned()))
}

/// The hand-out in a file.
///
/// # Errors
/// [`Trouble`] when it cannot be read or is none.
pub fn hand_out(path: &Path) -> Result<Sealed, Trouble> {
    seal::load(path)
        .map_err(|source| Trouble::File { path: path.to_owned(), source })?
        .map_err(|error| Trouble::Seal { path: path.to_owned(), error })
}

/// Writes the hand-out of a case for somebody into a folder, where nothing of its name is yet.
///
/// # Errors
/// [`Trouble`] when the passphrase is too short or the file cannot be written.
pub fn write(
    folder: &Path,
    (number, name): (usize, &str),
    case: &Case,
    passphrase: &str,
) -> Result<PathBuf, Trouble> {
    let plain = |c: char| if c.is_alphanumeric() { c.to_ascii_lowercase() } else { '-' };
    let short: String = name.chars().take(LETTERS).map(plain).collect();
    let path = folder.join(format!("{number:02}-{}.{ENDING}", short.trim_matches('-')));
    let trouble = |source| Trouble::File { path: path.clone(), source };
    let mut chance = [0; CHANCE];
    getrandom::fill(&mut chance).map_err(|error| trouble(io::Error::other(error.to_string())))?;
    let sealed = seal::seal(case, name, passphrase, &chance)
        .map_err(|error| Trouble::Seal { path: path.clone(), error })?;
    fs::create_dir_all(folder)
        .map_err(|source| Trouble::File { path: folder.to_owned(), source })?;
    let mut file = OpenOptions::new().write(true).create_new(true).open(&path).map_err(trouble)?;
    file.write_all(seal::text(&sealed).as_bytes())
        .and_then(|()| file.sync_all())
        .map_err(trouble)?;
    Ok(path)
}

/// A seed that nobody chose and nobody tries out.
///
/// # Errors
/// [`Trouble::File`] when the system has no chance to give.
pub fn sealed_seed() -> Result<u64, Trouble> {
    getrandom::u64().map_err(|error| Trouble::File {
        path: PathBuf::from("getrandom"),
        source: io::Error::other(error.to_string()),
    })
}

/// Opens a hand-out or the session of one: says which case it is, and writes a session that nothing is hidden in.
pub fn run(given: &clap::ArgMatches, screen: &mut Screen<'_>) -> Outcome {
    let path = given.get_one::<PathBuf>("file").cloned().unwrap_or_default();
    let phrase = passphrase(given)?.unwrap_or_default();
    let into = given.get_one::<PathBuf>("into");
    let found = Found::at(&path)?;
    let record = seal::open(&found.sealed, &phrase)
        .map_err(|error| Trouble::Seal { path: path.clone(), error })?;
    screen.progress("progress-dealing", 0, 1);
    let case = deal_again(&record)?;
    let receipt = match &found.recorded {
        Some(recorded) => {
            // The steps have to lead where the file says, whether or not they are written anew.
            replayed(&case, recorded, &path)?;
            Some(recorded.last_chain())
        }
        None => None,
    };
    told(&found.sealed, &case, receipt, Format::of(given), screen);
    if let Some(into) = into {
        let Some(recorded) = &found.recorded else {
            return Err(Trouble::NoSessionInside { path });
        };
        rewritten(&case, recorded, into)?;
        let said = [("path", into.display().to_string().into())];
        screen.talk(&screen.words.say("open-written", &said));
    }
    Ok(Ending::Done)
}

/// What a file holds that is to be opened.
struct Found {
    sealed: Sealed,
    recorded: Option<Recorded>,
}

impl Found {
    fn at(path: &Path) -> Result<Self, Trouble> {
        match hand_out(path) {
            Ok(sealed) => Ok(Self { sealed, recorded: None }),
            Err(Trouble::Seal { error: SealError::NotSealed, path }) => {
                let recorded = read(&path, ReadMode::Strict)?;
                match &recorded.case.sealed {
                    Some(sealed) => {
                        Ok(Self { sealed: Sealed::clone(sealed), recorded: Some(recorded) })
                    }
                    None => Err(Trouble::Seal { path, error: SealError::NotSealed }),
                }
            }
            Err(trouble) => Err(trouble),
        }
    }
}

fn told(
    sealed: &Sealed,
    case: &Case,
    receipt: Option<Digest>,
    format: Format,
    screen: &mut Screen<'_>,
) {
    let faults: Vec<_> = case.hidden.faults.iter().map(|fault| fault.name.clone()).collect();
    if format == Format::Json {
        screen.data(&json::header_of("opened").to_string());
        let line = json!({
            "name": sealed.name,
            "title": sealed.title,
            "scenario": case.scenario.text.scenario_name,
            "seed": case.seed,
            "faults": case.hidden.faults,
            "receipt": receipt,
        });
        screen.data(&line.to_string());
        return;
    }
    let words = screen.words;
    let said = [
        ("name", sealed.name.as_str().into()),
        ("title", sealed.title.as_str().into()),
        ("scenario", case.scenario.text.scenario_name.as_str().into()),
        ("seed", case.seed.to_string().into()),
        ("faults", place::diagnoses(&faults, words).into()),
    ];
    screen.data(&words.say("open-told", &said));
    if let Some(receipt) = receipt {
        screen.data(&words.say("open-receipt", &[("receipt", receipt.short().into())]));
    }
}

/// The same session in a file of its own, with its case in the open.
fn rewritten(case: &Case, recorded: &Recorded, into: &Path) -> Result<(), Trouble> {
    let of_kept = |error| Trouble::of_kept(error, into);
    let begun = Session::begin(Arc::clone(&case.briefing), case.hidden.clone())?;
    let mut kept = KeptSession::create(into, &record_of(case), begun).map_err(of_kept)?;
    for entry in &recorded.entries {
        let events = kept.take(&entry.step).map_err(of_kept)?;
        if !entry.agrees_with(&events) {
            return Err(of_kept(kept::KeptError::Diverged { entry: entry.number }));
        }
    }
    Ok(())
}
