//! What the panels show and what they answer: plain values, so that both can be tested without an
//! engine, a display or a driver.

pub mod action;
pub mod bay;
pub mod case;
pub mod counter;
pub mod debrief;
pub mod front;
pub mod guide;
pub mod road;
pub mod settings;
pub mod tray;
pub mod writer;

use crate::sound::player::State;
use case::CaseView;
use debrief::DebriefView;
use front::FrontView;
use settings::Settings;
use writer::{WriterDoorView, WriterView};

/// A place, a length or a share as the screen takes it, with fewer digits.
#[expect(clippy::cast_possible_truncation, reason = "no screen has more digits")]
#[must_use]
pub const fn on_screen(value: f64) -> f32 {
    value as f32
}

/// Everything that is to be seen at one moment.
#[derive(Debug, Clone)]
pub struct WindowView<'a> {
    /// The page that is open.
    pub page: Page<'a>,
    /// How it is shown.
    pub settings: Settings,
    /// What is being worked on.
    pub busy: Option<Busy>,
    /// How it stands with the sound.
    pub sound: State,
    /// What went wrong, or what has to be known.
    pub notice: Option<&'a str>,
    /// What is tried, where the case comes from the case writer; it names the fault.
    pub tried: Option<&'a str>,
    /// Width and height of the picture of the bay [pixels].
    pub picture: [u32; 2],
}

/// The page that is open.
#[derive(Debug, Clone, Copy)]
pub enum Page<'a> {
    /// Where a case is chosen.
    Front(&'a FrontView),
    /// Where it is worked on.
    Case(&'a CaseView),
    /// What came of it.
    Debrief(&'a DebriefView),
    /// Where the writing of a case is begun.
    WriterDoor(&'a WriterDoorView),
    /// Where it is written.
    Writer(&'a WriterView),
}

#[cfg(test)]
impl Page<'_> {
    /// Which page it is, for the sentence of a test that fails; what is on one fills megabytes.
    pub const fn name(&self) -> &'static str {
        match self {
            Self::Front(_) => "the front page",
            Self::Case(_) => "a case",
            Self::Debrief(_) => "a debrief",
            Self::WriterDoor(_) => "where writing is begun",
            Self::Writer(_) => "the case writer",
        }
    }
}

/// Work that goes on beside the window.
#[derive(Debug, Clone, PartialEq)]
pub struct Busy {
    /// What is being done.
    pub text: String,
    /// How far it is, 0 to 1, where that is known.
    pub share: Option<f32>,
}
