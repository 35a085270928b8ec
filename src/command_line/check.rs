//! Checking scenario files.

use super::Ending;
use super::screen::{Format, Screen};
use crate::report::{json, problem_words};
use crate::scenario::doubts::doubts;
use crate::scenario::load::{self, LoadError, Loaded};
use crate::scenario::warning::Warning;
use serde_json::{Value, json};
use std::path::PathBuf;

/// Checks every file that is named, or the scenario that the program carries.
pub fn run(given: &clap::ArgMatches, screen: &mut Screen<'_>) -> Ending {
    let asked = Asked { is_strict: given.get_flag("strict"), format: Format::of(given) };
    if asked.format == Format::Json {
        screen.data(&json::header_of("checks").to_string());
    }
    let files: Vec<PathBuf> = given
        .get_many::<PathBuf>("files")
        .map(|files| files.cloned().collect())
        .unwrap_or_default();
    if files.is_empty() {
        return asked.file("market-hill.ron", load::demo(), screen);
    }
    let mut ending = Ending::Done;
    for path in files {
        let name = path.display().to_string();
        let this = asked.file(&name, load::load(&path), screen);
        if this != Ending::Done {
            ending = this;
        }
    }
    ending
}

/// How files are checked.
struct Asked {
    /// Warnings fail the check too.
    is_strict: bool,
    format: Format,
}

impl Asked {
    fn file(
        &self,
        name: &str,
        outcome: Result<Loaded, LoadError>,
        screen: &mut Screen<'_>,
    ) -> Ending {
        match outcome {
            Ok(loaded) => self.usable(name, &loaded, screen),
            Err(error) => self.unusable(name, &error, screen),
        }
    }

    fn unusable(&self, name: &str, error: &LoadError, screen: &mut Screen<'_>) -> Ending {
        let (problems, ending) = match error {
            LoadError::Problems { problems, .. } => (json!(problems), Ending::BadInput),
            LoadError::Unreadable { .. } => (json!([format!("{error}")]), Ending::FileTrouble),
        };
        if self.format == Format::Json {
            screen.data(&line(name, false, &problems, &[]).to_string());
        } else {
            for line in problem_words::load_error(error, screen.words) {
                screen.data(&line);
            }
        }
        ending
    }

    fn usable(&self, name: &str, loaded: &Loaded, screen: &mut Screen<'_>) -> Ending {
        let warnings = doubts(loaded, &problem_words::names_of_faults(), &Vec::new());
        if self.format == Format::Json {
            screen.data(&line(name, true, &json!([]), &warnings).to_string());
        } else {
            let currency = &loaded.scenario.prices.currency;
            for warning in &warnings {
                screen.data(&problem_words::warning(warning, currency, screen.words));
            }
            let said = [("file", name.into()), ("warnings", warnings.len().into())];
            let key = if warnings.is_empty() { "check-fine" } else { "check-doubtful" };
            screen.data(&screen.words.say(key, &said));
        }
        if self.is_strict && !warnings.is_empty() { Ending::BadInput } else { Ending::Done }
    }
}

/// A file's line for other programs.
fn line(name: &str, is_fine: bool, problems: &Value, warnings: &[Warning]) -> Value {
    json!({ "file": name, "fine": is_fine, "problems": problems, "warnings": warnings })
}
