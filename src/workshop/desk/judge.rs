//! The debrief of a finished session, worked out beside the window.

use super::shelf::Opened;
use super::trouble::Trouble;
use super::work::Stage;
use crate::assessment::debrief::debrief;
use crate::reasoning::world::Worlds;
use crate::scenario::suppose::suppositions;
use crate::wording::catalogue::Words;
use crate::wording::debrief_words::{self, DebriefWords};

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
