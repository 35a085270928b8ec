//! Dealing cases by seed.

use super::screen::{Format, Screen};
use super::{Ending, Outcome, case, store};
use crate::report::json;
use crate::scenario::deal::deal;
use crate::wording::place;
use serde_json::json;

/// Deals cases and says what their seeds are; the fault only when asked to reveal it.
pub fn run(given: &clap::ArgMatches, screen: &mut Screen<'_>) -> Outcome {
    let loaded = case::scenario(given)?;
    let first = given.get_one::<u64>("seed").copied().unwrap_or_else(store::any_seed);
    let count = given.get_one::<u64>("count").copied().unwrap_or(1);
    let reveal = given.get_flag("reveal");
    let format = Format::of(given);
    if format == Format::Json {
        screen.data(&json::header_of("cases").to_string());
    }
    for number in 0..count {
        if count > 1 {
            let shown = |count| usize::try_from(count).unwrap_or(usize::MAX);
            screen.progress("progress-dealing", shown(number + 1), shown(count));
        }
        let case = deal(&loaded, first.wrapping_add(number))?;
        let faults: Vec<_> = case.hidden.faults.iter().map(|fault| fault.name.clone()).collect();
        if format == Format::Json {
            let mut line = json!({
                "scenario": case.scenario.text.scenario_name,
                "seed": case.seed,
                "title": case.briefing.job.title,
            });
            if reveal {
                line["faults"] = json!(case.hidden.faults);
                line["old-codes"] = json!(case.hidden.old_codes);
            }
            screen.data(&line.to_string());
        } else {
            let key = if reveal { "draw-revealed" } else { "draw-dealt" };
            let text = screen.words.say(
                key,
                &[
                    ("seed", case.seed.to_string().into()),
                    ("title", case.briefing.job.title.as_str().into()),
                    ("faults", place::diagnoses(&faults, screen.words).into()),
                ],
            );
            screen.data(&text);
        }
    }
    Ok(Ending::Done)
}
