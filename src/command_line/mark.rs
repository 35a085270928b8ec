//! Replaying and marking finished sessions.

use super::judging::{Adviser, Replayed, judge, worlds};
use super::screen::{Format, Screen};
use super::trouble::Trouble;
use super::{Ending, Outcome, store};
use crate::assessment::debrief::Debrief;
use crate::report::{debrief_page, json};
use crate::scenario::draw::Case;
use crate::session::attempt::Session;
use crate::wording::{debrief_words, event_words, hint_words, job_words, step_words};
use std::fs;
use std::path::{Path, PathBuf};

/// Marks a session file.
pub fn run(given: &clap::ArgMatches, screen: &mut Screen<'_>) -> Outcome {
    let Replayed { case, session, path } = Replayed::of(given, screen)?;
    let format = Format::of(given);
    let html = given.get_one::<PathBuf>("html");
    if let Some(html) = html.filter(|html| is_same_file(html, &path)) {
        return Err(Trouble::OverSession { path: html.clone() });
    }
    if session.ending().is_none() {
        return Err(Trouble::Unfinished { path, steps: session.log().len() });
    }
    if format == Format::Json {
        let name = &case.scenario.text.scenario_name;
        screen.data(&json::header(name, Some(&path.display().to_string())).to_string());
    }
    let worlds = worlds(&case, &store::world_store(given), screen)?;
    let judged = judge(&case, &session, worlds, &path, screen)?;
    if let Some(path) = html {
        let page = debrief_page::page(&judged, &session, &case.rubric, screen.words);
        fs::write(path, page).map_err(|source| Trouble::File { path: path.clone(), source })?;
        let path = path.display().to_string();
        screen.talk(&screen.words.say("mark-written", &[("path", path.into())]));
    }
    show(&judged, &case, &session, format, screen);
    Ok(Ending::Done)
}

/// Whether two paths lead to one file that is there.
fn is_same_file(one: &Path, other: &Path) -> bool {
    matches!((fs::canonicalize(one), fs::canonicalize(other)), (Ok(one), Ok(other)) if one == other)
}

/// Replays a session file and prints what followed from each step.
pub fn replay(given: &clap::ArgMatches, screen: &mut Screen<'_>) -> Outcome {
    let Replayed { case, session, path } = Replayed::as_seen(given, screen)?;
    let briefing = &case.briefing;
    let store = store::world_store(given);
    let mut adviser = Adviser::new(&case, &store);
    if Format::of(given) == Format::Json {
        let name = &case.scenario.text.scenario_name;
        screen.data(&json::header(name, Some(&path.display().to_string())).to_string());
        for (number, entry) in session.log().iter().enumerate() {
            for event in &entry.events {
                screen.data(&json::event(number + 1, &entry.step, event).to_string());
            }
            if let Some(hint) = adviser.hint(&session.log()[..number], &entry.events, screen)? {
                screen.data(&json::hint(number + 1, &hint).to_string());
            }
        }
    } else {
        screen.data(&job_words::job_sheet(briefing, screen.words));
        for (number, entry) in session.log().iter().enumerate() {
            screen.data(&format!("\n> {}", step_words::line(&entry.step)));
            for event in &entry.events {
                screen.data(&event_words::line(event, screen.words, briefing));
            }
            if let Some(hint) = adviser.hint(&session.log()[..number], &entry.events, screen)? {
                for line in hint_words::hint(&hint, briefing, screen.words) {
                    screen.data(&line);
                }
            }
        }
    }
    let text = screen.words.say(
        "replay-agrees",
        &[("steps", session.log().len().into()), ("digest", session.digest().short().into())],
    );
    screen.talk(&text);
    Ok(Ending::Done)
}

/// Prints a debrief.
pub fn show(
    judged: &Debrief,
    case: &Case,
    session: &Session,
    format: Format,
    screen: &mut Screen<'_>,
) {
    if format == Format::Json {
        screen.data(&json::debrief(judged, &case.rubric).to_string());
    } else {
        screen.data("");
        let width = screen.width();
        for line in debrief_words::debrief(judged, session, &case.rubric, width, screen.words) {
            screen.data(&line);
        }
    }
}
