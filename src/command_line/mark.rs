//! Replaying and marking finished sessions.

use super::screen::{Format, Screen};
use super::trouble::Trouble;
use super::{Ending, Outcome, store};
use crate::assessment::debrief::debrief;
use crate::reasoning::world_store::WorldStore;
use crate::report::json;
use crate::scenario::deal::deal_again;
use crate::scenario::draw::Case;
use crate::scenario::suppose::suppositions;
use crate::session::attempt::Session;
use crate::session::journal::{ReadMode, read};
use crate::session::kept;
use crate::wording::{debrief_words, event_words, job_words, step_words};
use std::path::{Path, PathBuf};
use std::sync::Arc;
use std::sync::atomic::{AtomicUsize, Ordering};

/// Marks a session file.
pub fn run(given: &clap::ArgMatches, screen: &mut Screen<'_>) -> Outcome {
    let (case, session, path) = replayed(given, screen)?;
    let format = Format::of(given);
    if format == Format::Json && session.ending().is_some() {
        let name = &case.scenario.text.scenario_name;
        screen.data(&json::header(name, Some(&path.display().to_string())).to_string());
    }
    let store = store::world_store(given);
    show(&case, &session, &path, (format, &store), screen)
}

/// Replays a session file and prints what followed from each step.
pub fn replay(given: &clap::ArgMatches, screen: &mut Screen<'_>) -> Outcome {
    let (case, session, path) = replayed(given, screen)?;
    let briefing = &case.briefing;
    if Format::of(given) == Format::Json {
        let name = &case.scenario.text.scenario_name;
        screen.data(&json::header(name, Some(&path.display().to_string())).to_string());
        for (number, entry) in session.log().iter().enumerate() {
            for event in &entry.events {
                screen.data(&json::event(number + 1, &entry.step, event).to_string());
            }
        }
    } else {
        screen.data(&job_words::job_sheet(briefing, screen.words));
        for entry in session.log() {
            screen.data(&format!("\n> {}", step_words::line(&entry.step)));
            for event in &entry.events {
                screen.data(&event_words::line(event, screen.words, briefing));
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

/// Reads a session file and takes its steps again; what follows must be what was recorded.
fn replayed(
    given: &clap::ArgMatches,
    screen: &mut Screen<'_>,
) -> Result<(Case, Session, PathBuf), Trouble> {
    let path = given.get_one::<PathBuf>("file").cloned().unwrap_or_default();
    let recorded = read(&path, ReadMode::Strict)?;
    screen.progress("progress-dealing", 0, 1);
    let case = deal_again(&recorded.case)?;
    let mut session = Session::begin(Arc::clone(&case.briefing), case.hidden.clone())?;
    kept::replay(&mut session, &recorded.entries)
        .map_err(|error| Trouble::of_kept(error, &path))?;
    Ok((case, session, path))
}

/// Prints the debrief of a finished session.
pub fn show(
    case: &Case,
    session: &Session,
    path: &Path,
    (format, store): (Format, &WorldStore),
    screen: &mut Screen<'_>,
) -> Outcome {
    if session.ending().is_none() {
        let steps = session.log().len();
        return Err(Trouble::Unfinished { path: path.to_owned(), steps });
    }
    let suppositions = suppositions(&case.scenario);
    let begun = AtomicUsize::new(0);
    let (worlds, not_kept) = std::thread::scope(|scope| {
        let worker = scope.spawn(|| {
            store.begin(&case.briefing, &suppositions, &|done, _| {
                begun.store(done, Ordering::Relaxed);
            })
        });
        while !worker.is_finished() {
            screen.progress("progress-worlds", begun.load(Ordering::Relaxed), suppositions.len());
            std::thread::sleep(std::time::Duration::from_millis(50));
        }
        worker.join().unwrap_or_else(|panic| std::panic::resume_unwind(panic))
    })?;
    if let Some(not_kept) = not_kept {
        let path = not_kept.path.display().to_string();
        let said = [("path", path.into()), ("why", not_kept.source.to_string().into())];
        let line = screen.words.say("worlds-not-kept", &said);
        screen.talk(&line);
    }
    let shown = std::cell::RefCell::new(&mut *screen);
    let judged = debrief(session, case.hidden.faults.clone(), worlds, &case.rubric, &|done, of| {
        shown.borrow_mut().progress("progress-review", done, of);
    })
    .map_err(|error| Trouble::of_debrief(error, path))?;
    if format == Format::Json {
        screen.data(&json::debrief(&judged, &case.rubric).to_string());
    } else {
        screen.data("");
        for line in debrief_words::debrief(&judged, session, &case.rubric, screen.words) {
            screen.data(&line);
        }
    }
    Ok(Ending::Done)
}
