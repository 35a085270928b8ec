//! The debrief of a finished session, worked out beside the window.

use super::shelf::Opened;
use super::trouble::Trouble;
use super::work::Stage;
use crate::assessment::debrief::debrief;
use crate::reasoning::hint::hint as hint_of;
use crate::reasoning::onlooker::Onlooker;
use crate::reasoning::world::Worlds;
use crate::scenario::draw::Case;
use crate::scenario::suppose::suppositions;
use crate::session::attempt::Session;
use crate::session::event::Event;
use crate::wording::catalogue::Words;
use crate::wording::debrief_words::{self, DebriefWords};
use crate::wording::hint_words;

/// Judges a finished session.
///
/// # Errors
/// [`Trouble`] when the session is not finished or the simulation fails.
pub fn judge(opened: &Opened, words: &Words, stage: &Stage) -> Result<DebriefWords, Trouble> {
    let (case, session) = (&opened.case, opened.kept.session());
    let tell = |key: &str, done: usize, of: usize| {
        stage.tell(words.say(key, &[("done", done.into()), ("of", of.into())]), done, of);
    };
    let supposed = suppositions(&case.scenario);
    let worlds = Worlds::begin(&case.briefing, &supposed, &|done, of| {
        tell("progress-worlds", done, of);
    })?;
    let judged = debrief(session, case.hidden.faults.clone(), worlds, &case.rubric, &|done, of| {
        tell("progress-review", done, of);
    })
    .map_err(|error| Trouble::of_debrief(error, opened.kept.path()))?;
    Ok(debrief_words::in_parts(&judged, session, &case.rubric, words))
}

/// What the hint told that the last step asked for, from the log before it; nothing where it was refused or
/// a vehicle cannot be simulated.
pub fn hint(case: &Case, session: &Session, words: &Words, stage: &Stage) -> Vec<String> {
    let Some((last, before)) = session.log().split_last() else { return Vec::new() };
    let asked = last.events.iter().find_map(|event| match event {
        Event::HintAsked { grade } => Some(*grade),
        _ => None,
    });
    let Some(grade) = asked else { return Vec::new() };
    let supposed = suppositions(&case.scenario);
    let worlds = Worlds::begin(&case.briefing, &supposed, &|done, of| {
        let text = words.say("progress-worlds", &[("done", done.into()), ("of", of.into())]);
        stage.tell(text, done, of);
    });
    let told = worlds.and_then(|worlds| {
        stage.tell(words.say("progress-hint", &[]), 0, 0);
        hint_of(&mut Onlooker::new(&case.briefing, worlds), before, grade)
    });
    told.map_or_else(|_| Vec::new(), |hint| hint_words::hint(&hint, &case.briefing, words))
}
