//! The tray of instruments: which one is in hand, where its ends are, and what it showed last.

use crate::instruments::multimeter::{Display, MeterFunction};
use crate::vehicle::spec::Id;
use std::collections::BTreeMap;

/// What the tray holds.
#[derive(Debug, Clone, PartialEq)]
pub struct TrayView {
    /// It stands beside the bay in the place of the words.
    pub is_out: bool,
    /// The instrument in hand.
    pub tool: Tool,
    /// Where each end can go and where it is.
    pub ends: BTreeMap<End, EndView>,
    /// The end that is being put somewhere.
    pub held: Option<End>,
    /// The thing that has several places for the end in hand.
    pub which: Option<WhichView>,
    /// What the meter is set to.
    pub meter: MeterSetting,
    /// What the tool in hand will do.
    pub ready: ReadyView,
    /// What the meter showed last, of what it is set to.
    pub reading: Option<ReadingView>,
}

/// Something that can be taken in hand.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Default)]
pub enum Tool {
    /// Multimeter.
    #[default]
    Meter,
}

impl Tool {
    /// Every tool, in the order of the tray.
    pub const ALL: [Self; 1] = [Self::Meter];

    /// The message that names it.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::Meter => "tray-meter",
        }
    }

    /// The ends that it has.
    #[must_use]
    pub const fn ends(self) -> &'static [End] {
        match self {
            Self::Meter => &[End::Red, End::Black],
        }
    }
}

/// An end of an instrument that is put on something.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum End {
    /// The meter's red lead.
    Red,
    /// The meter's black lead.
    Black,
}

impl End {
    /// Every end.
    pub const ALL: [Self; 2] = [Self::Red, Self::Black];

    /// The message that names it.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::Red => "tray-red",
            Self::Black => "tray-black",
        }
    }

    /// The message with the letter that marks it in the picture.
    #[must_use]
    pub const fn letter_key(self) -> &'static str {
        match self {
            Self::Red => "tray-red-letter",
            Self::Black => "tray-black-letter",
        }
    }
}

/// An end and where it can go.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct EndView {
    /// Where it can go, in the order of the alphabet.
    pub places: Vec<Named>,
    /// Where it is, as a number in `places`.
    pub at: Option<usize>,
    /// What is in the way there.
    pub blocked: Option<String>,
}

impl EndView {
    /// Where it is.
    #[must_use]
    pub fn place(&self) -> Option<&Named> {
        self.at.and_then(|at| self.places.get(at))
    }
}

/// Something with its name for people.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Named {
    /// Its name in lines.
    pub id: Id,
    /// Its name for people.
    pub name: String,
}

/// A thing with several places for an end.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct WhichView {
    /// The end.
    pub end: End,
    /// The thing.
    pub thing: Named,
    /// The places.
    pub places: Vec<Named>,
}

/// What the meter is set to.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct MeterSetting {
    /// Function.
    pub function: MeterFunction,
    /// The leads are pushed into an unplugged connector from its face.
    pub from_front: bool,
}

/// What the tool in hand will do.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct ReadyView {
    /// The line of the step; nothing while an end is nowhere.
    pub line: Option<String>,
    /// What it takes by the book.
    pub cost: Option<String>,
    /// What was said of what comes next and is still open.
    pub predicted: Option<String>,
}

/// A reading of the meter.
#[derive(Debug, Clone, PartialEq)]
pub struct ReadingView {
    /// The step that brought it, from 1.
    pub number: usize,
    /// What the display shows; nothing where the meter's fuse blew.
    pub display: Option<Display>,
    /// What had been said of it, and whether it came.
    pub prediction: Option<PredictionView>,
}

/// What had been said of a reading.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PredictionView {
    /// What was said.
    pub said: String,
    /// What came of it, in words.
    pub outcome: String,
    /// It came.
    pub met: bool,
}

/// Something that is wanted of the tray.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum TrayAction {
    /// Put the tray beside the bay, or away.
    Show(bool),
    /// Take a tool in hand.
    Take(Tool),
    /// Take an end in hand, or let go of it.
    Hold(Option<End>),
    /// Put an end on one of its places.
    Put(End, Id),
    /// Put an end on a thing of the bay.
    PutOn(End, Id),
    /// Turn the meter's dial.
    Turn(MeterFunction),
    /// Push the leads in from the front, or not.
    FromFront(bool),
}
