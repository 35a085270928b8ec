//! Checking scenario files.

use super::Ending;
use super::screen::{Format, Screen};
use crate::report::{json, problem_words};
use crate::scenario::load::{self, LoadError};
use serde_json::json;
use std::path::PathBuf;

/// Checks every file that is named, or the scenario that the program carries.
pub fn run(given: &clap::ArgMatches, screen: &mut Screen<'_>) -> Ending {
    let format = Format::of(given);
    if format == Format::Json {
        screen.data(&json::header_of("checks").to_string());
    }
    let mut ending = Ending::Done;
    let files: Vec<PathBuf> = given
        .get_many::<PathBuf>("files")
        .map(|files| files.cloned().collect())
        .unwrap_or_default();
    if files.is_empty() {
        let outcome = load::demo();
        ending = report("market-hill.ron", &outcome.map(|_| ()), format, screen);
    }
    for path in files {
        let name = path.display().to_string();
        let outcome = load::load(&path).map(|_| ());
        let this = report(&name, &outcome, format, screen);
        if this != Ending::Done {
            ending = this;
        }
    }
    ending
}

fn report(
    name: &str,
    outcome: &Result<(), LoadError>,
    format: Format,
    screen: &mut Screen<'_>,
) -> Ending {
    let (lines, problems, ending) = match outcome {
        Ok(()) => {
            let fine = screen.words.say("check-fine", &[("file", name.into())]);
            (vec![fine], json!([]), Ending::Done)
        }
        Err(error) => {
            let (problems, ending) = match error {
                LoadError::Problems { problems, .. } => (json!(problems), Ending::BadInput),
                LoadError::Unreadable { .. } => (json!([format!("{error}")]), Ending::FileTrouble),
            };
            (problem_words::load_error(error, screen.words), problems, ending)
        }
    };
    if format == Format::Json {
        let line = json!({ "file": name, "fine": outcome.is_ok(), "problems": problems });
        screen.data(&line.to_string());
    } else {
        for line in lines {
            screen.data(&line);
        }
    }
    ending
}
