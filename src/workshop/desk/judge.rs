//! The debrief of a finished session, worked out beside the window.

use super::Surroundings;
use super::look_back::{self, Ground, LookBack};
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
use crate::vehicle::error::VehicleError;
use crate::wording::{debrief_words, hint_words};

/// Judges a finished session and sets it out once more.
///
/// # Errors
/// [`Trouble`] when the session is not finished or the simulation fails.
pub fn judge(opened: Opened, around: &Surroundings, stage: &Stage) -> Result<LookBack, Trouble> {
    let words = &around.words;
    let Opened { case, kept, .. } = opened;
    let (session, path) = (kept.session().clone(), kept.path().to_owned());
    let tell = |key: &str, done: usize, of: usize| {
        stage.tell(words.say(key, &[("done", done.into()), ("of", of.into())]), done, of);
    };
    let worlds = worlds(&case, around, stage)?;
    let faults = case.hidden.faults.clone();
    let judged = debrief(&session, faults, worlds.clone(), &case.rubric, &|done, of| {
        tell("progress-review", done, of);
    })
    .map_err(|error| Trouble::of_debrief(error, &path))?;
    let parts = debrief_words::in_parts(&judged, &session, &case.rubric, words);
    let ground = Ground { case, session, worlds };
    Ok(look_back::set_out(&judged, parts, ground, words)?)
}

/// The worlds of a case, kept from earlier or begun now. That they cannot be kept harms nobody.
fn worlds(case: &Case, around: &Surroundings, stage: &Stage) -> Result<Worlds, VehicleError> {
    let (worlds, _) =
        around.worlds.begin(&case.briefing, &suppositions(&case.scenario), &|done, of| {
            let said = [("done", done.into()), ("of", of.into())];
            stage.tell(around.words.say("progress-worlds", &said), done, of);
        })?;
    Ok(worlds)
}

/// What the hint told that the last step asked for, from the log before it; nothing where it was refused or
/// a vehicle cannot be simulated.
pub fn hint(case: &Case, session: &Session, around: &Surroundings, stage: &Stage) -> Vec<String> {
    let Some((last, before)) = session.log().split_last() else { return Vec::new() };
    let asked = last.events.iter().find_map(|event| match event {
        Event::HintAsked { grade } => Some(*grade),
        _ => None,
    });
    let Some(grade) = asked else { return Vec::new() };
    let told = worlds(case, around, stage).and_then(|worlds| {
        stage.tell(around.words.say("progress-hint", &[]), 0, 0);
        hint_of(&mut Onlooker::new(&case.briefing, worlds), before, grade)
    });
    told.map_or_else(|_| Vec::new(), |hint| hint_words::hint(&hint, &case.briefing, &around.words))
}
