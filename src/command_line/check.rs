//! Checking scenario files.

use super::facts::{Simulated, simulated};
use super::screen::{Format, Screen};
use super::trouble::Trouble;
use super::{Ending, Outcome};
use crate::report::{json, problem_words};
use crate::scenario::doubts::doubts;
use crate::scenario::load::{self, LoadError, Loaded};
use crate::scenario::warning::Warning;
use crate::trial::facts::text::Page;
use crate::trial::facts::{Draws, Facts, json as facts_json, text};
use serde_json::{Value, json};
use std::path::PathBuf;
use std::sync::Arc;

/// Columns of the widest table: wider ones are harder to read, not easier.
const MOST_COLUMNS: usize = 100;

/// Checks every file that is named, or the scenario that the program carries.
///
/// # Errors
/// [`Trouble`] when a vehicle cannot be simulated or a scenario yields no case.
pub fn run(given: &clap::ArgMatches, screen: &mut Screen<'_>) -> Outcome {
    let is_strict = given.get_flag("strict");
    let asked = Asked { given, is_strict, format: Format::of(given) };
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
        let this = asked.file(&name, load::load(&path), screen)?;
        if this != Ending::Done {
            ending = this;
        }
    }
    Ok(ending)
}

/// How files are checked.
struct Asked<'g> {
    given: &'g clap::ArgMatches,
    /// Warnings fail the check too.
    is_strict: bool,
    format: Format,
}

impl Asked<'_> {
    fn file(
        &self,
        name: &str,
        outcome: Result<Loaded, LoadError>,
        screen: &mut Screen<'_>,
    ) -> Outcome {
        match outcome {
            Ok(loaded) => self.usable(name, &Arc::new(loaded), screen),
            Err(error) => Ok(self.unusable(name, &error, screen)),
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

    fn usable(
        &self,
        name: &str,
        loaded: &Arc<Loaded>,
        screen: &mut Screen<'_>,
    ) -> Result<Ending, Trouble> {
        let simulated = simulated(self.given, loaded, screen)?;
        let called = problem_words::names_of_faults();
        let warnings = doubts(loaded, &called, &simulated.doubts);
        let draws = Draws::of(loaded);
        if self.format == Format::Json {
            let mut line = line(name, true, &json!([]), &warnings);
            line["draws"] = facts_json::draws(&draws);
            line["facts"] = simulated.facts.as_ref().map_or(Value::Null, facts_json::facts);
            line["apprentices"] = simulated
                .earned
                .as_ref()
                .map_or(Value::Null, |(earned, cases)| facts_json::earned(earned, *cases));
            screen.data(&line.to_string());
        } else {
            told(name, loaded, (&warnings, &draws, &simulated), screen);
        }
        let fails = self.is_strict && !warnings.is_empty();
        Ok(if fails { Ending::BadInput } else { Ending::Done })
    }
}

/// Warnings and tables on the screen.
fn told(
    name: &str,
    loaded: &Loaded,
    (warnings, draws, simulated): (&[Warning], &Draws, &Simulated),
    screen: &mut Screen<'_>,
) {
    let prices = &loaded.scenario.prices;
    let words = screen.words;
    for warning in warnings {
        screen.data(&problem_words::warning(warning, &prices.currency, words));
    }
    let said = [("file", name.into()), ("warnings", warnings.len().into())];
    let key = if warnings.is_empty() { "check-fine" } else { "check-doubtful" };
    screen.data(&words.say(key, &said));
    let width = screen.width().min(MOST_COLUMNS);
    let page = Page { words, currency: &prices.currency, width };
    let mut lines = text::draws(draws, page);
    let facts = |facts: &Facts| text::facts(facts, prices.comeback, page);
    lines.extend(simulated.facts.as_ref().map(facts).unwrap_or_default());
    if let Some((earned, cases)) = &simulated.earned {
        lines.extend(text::earned(earned, *cases, page));
    }
    for line in lines {
        screen.data(&line);
    }
}

/// A file's line for other programs.
fn line(name: &str, is_fine: bool, problems: &Value, warnings: &[Warning]) -> Value {
    json!({ "file": name, "fine": is_fine, "problems": problems, "warnings": warnings })
}
