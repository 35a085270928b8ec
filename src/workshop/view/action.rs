//! What a panel answers: what the user wants.

use super::bay::BayAction;
use super::case::Pane;
use super::debrief::DebriefAction;
use super::road::RoadAction;
use super::settings::{Contrast, Motion, Shade, TextSize, Volume};
use super::tray::TrayAction;
use super::writer::WriterAction;
use crate::wording::verbs::VerbGroup;
use std::path::PathBuf;

/// One thing that the user wants.
#[derive(Debug, Clone, PartialEq)]
pub enum Action {
    /// Open or close the page with the settings.
    OpenSettings(bool),
    /// Change the size of the text.
    SetText(TextSize),
    /// Change to dark on light or light on dark.
    SetShade(Shade),
    /// Change how far colours are from what they stand on.
    SetContrast(Contrast),
    /// Change whether things move there or are there at once.
    SetMotion(Motion),
    /// Change how loud the workshop is.
    SetVolume(Volume),
    /// The picture of the bay has room for this width and height [pixels].
    SizePicture([u32; 2]),
    /// Speak the language of this tag.
    SetLanguage(&'static str),
    /// The notice has been read.
    CloseNotice,

    /// Choose the scenario of this number, from 0.
    ChooseScenario(usize),
    /// The field for a scenario file holds this now.
    TypeScenarioFile(String),
    /// Read that file and choose its scenario.
    ReadScenarioFile,
    /// Begin an assessed case, or one to practise.
    SetAssessed(bool),
    /// The seed field holds this now.
    TypeSeed(String),
    /// Be shown round, on a case that is made for it.
    BeginGuide,
    /// Not be asked again whether to be shown round.
    DeclineGuide,
    /// Be shown no further; the case goes on.
    CloseGuide,
    /// Begin a case.
    Begin,
    /// Open a kept session: go on with it, or see its debrief.
    Open(PathBuf),
    /// Look again for kept sessions.
    LookAgain,
    /// End the program.
    Leave,

    /// The entry field holds this line now.
    TypeLine(String),
    /// Put a word to the line.
    AddWord(String),
    /// Put the digit, point or sign of a number to the line.
    AddDigit(char),
    /// Put a text to the end of the line.
    AddText(String),
    /// Begin the line anew with these words.
    StartLine(String),
    /// Take the last word of the line back.
    RemoveWord,
    /// Mark the next or the one before of the words that can stand here.
    Highlight {
        /// The next.
        forward: bool,
    },
    /// Put the only or the marked word to the line.
    Complete,
    /// Take the step that the line says.
    TakeStep,
    /// Play once more what the step of this number, from 1, let be heard.
    HearAgain(usize),
    /// Show the verbs of a group.
    ShowGroup(VerbGroup),
    /// Where there is room for only one: show this part of the page.
    ShowPane(Pane),

    /// Something is wanted of the bay.
    Bay(BayAction),
    /// Something is wanted of a drive under way.
    Road(RoadAction),
    /// Something is wanted of the tray of instruments.
    Tray(TrayAction),

    /// Something is wanted of the debrief.
    Debrief(DebriefAction),

    /// Something is wanted of the case writer.
    Writer(WriterAction),

    /// Back to the front page, or to the case writer that a case is tried from.
    ToFront,
}
