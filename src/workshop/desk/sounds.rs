//! What steps let be heard: for the ear, and for the eye.

use super::{Desk, Open};
use crate::session::attempt::{Entry, Session};
use crate::session::setup::Briefing;
use crate::sound::caption::caption;
use crate::sound::heard::{goes_on, heard};
use crate::sound::passage::Passage;
use crate::sound::player::{Player, State};
use crate::sound::trace::Outline;
use crate::wording::catalogue::Words;
use crate::workshop::view::case::{HeardView, LoggedStep};

/// Columns in which a sound is drawn: one for every two points of its trace.
const COLUMNS: usize = 160;

/// Lets passages be heard. [`Player`] plays them to the sound server; a test writes down what it was given.
pub trait Speaker: Send + Sync {
    /// Begins a passage in the place of whatever sounds. It returns at once.
    fn play(&self, passage: Passage);
    /// Sets the volume, 0 (muted) to 1.
    fn set_gain(&self, gain: f32);
    /// How it stands with the sound.
    fn state(&self) -> State;
}

impl Speaker for Player {
    fn play(&self, passage: Passage) {
        Self::play(self, passage);
    }

    fn set_gain(&self, gain: f32) {
        Self::set_gain(self, gain);
    }

    fn state(&self) -> State {
        Self::state(self)
    }
}

/// A sound, for both.
pub struct Sounded {
    /// For the ear.
    pub passage: Passage,
    /// For the eye; nothing where no word says what there is to hear.
    pub view: Option<HeardView>,
}

impl Sounded {
    /// What the newest step of a log let be heard; nothing, when what sounded goes on.
    pub fn after(log: &[Entry], briefing: &Briefing, words: &Words) -> Option<Self> {
        let heard = heard(log, briefing)?;
        let caption = caption(&heard.names, words);
        let view = (!caption.is_empty())
            .then(|| HeardView { caption, outline: Outline::of(&heard.passage, COLUMNS) });
        Some(Self { passage: heard.passage, view })
    }
}

/// What each step of a session let be heard, for the eye. It takes a moment, so it is asked beside the window.
pub fn views(session: &Session, words: &Words) -> Vec<Option<HeardView>> {
    let (log, briefing) = (session.log(), session.briefing());
    (1..=log.len())
        .map(|steps| Sounded::after(&log[..steps], briefing, words).and_then(|it| it.view))
        .collect()
}

/// What each step let be heard, in the language of these words; drawn as it is drawn already.
pub fn said_anew(session: &Session, shown: &[LoggedStep], words: &Words) -> Vec<Option<HeardView>> {
    let (log, briefing) = (session.log(), session.briefing());
    let said = |(steps, step): (usize, &LoggedStep)| {
        let outline = step.heard.as_ref()?.outline.clone();
        let heard = heard(log.get(..=steps)?, briefing)?;
        Some(HeardView { caption: caption(&heard.names, words), outline })
    };
    shown.iter().enumerate().map(said).collect()
}

impl Desk {
    /// Lets be heard what goes on in a vehicle that somebody comes back to.
    pub(super) fn come_in(&self, session: &Session) {
        self.speaker.play(goes_on(session.log(), session.briefing()));
    }

    /// Nothing is heard any more.
    pub(super) fn fall_silent(&self) {
        self.speaker.play(Passage::SILENCE);
    }

    /// What a step let be heard, once more; nothing while the next one is being taken.
    pub(super) fn hear_again(&self, number: usize) {
        let known = match &self.open {
            Open::Debrief(debrief) => debrief.known(),
            _ => None,
        };
        let session = match (&self.open, &known) {
            (Open::Case(case), _) => case.session(),
            (_, Some(ground)) => Some(&ground.session),
            _ => None,
        };
        let Some(session) = session else { return };
        if let Some(log) = session.log().get(..number)
            && let Some(heard) = heard(log, session.briefing())
        {
            self.speaker.play(heard.passage);
        }
    }
}
