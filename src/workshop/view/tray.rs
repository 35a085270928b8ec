//! The tray of instruments: which one is in hand, where its ends are, and what it showed last.

use super::counter::{CounterView, Trade};
use crate::instruments::multimeter::{Display, MeterFunction};
use crate::instruments::scope::{Capture, Signal};
use crate::instruments::test_lamp::Glow;
use crate::physics::stroke::Click;
use crate::vehicle::spec::Id;
use std::collections::BTreeMap;
use std::sync::Arc;

/// What the tray holds.
#[derive(Debug, Clone, PartialEq)]
pub struct TrayView {
    /// It stands beside the bay in the place of the words.
    pub is_out: bool,
    /// What the case has, in the order of the tray.
    pub tools: Vec<Tool>,
    /// The instrument in hand, one of them.
    pub tool: Tool,
    /// Where each end can go and where it is.
    pub ends: BTreeMap<End, EndView>,
    /// The end that is being put somewhere.
    pub held: Option<End>,
    /// The thing that has several places for the end in hand.
    pub which: Option<WhichView>,
    /// What the meter is set to.
    pub meter: MeterSetting,
    /// How the power lead is used.
    pub power: PowerSetting,
    /// What the scope watches.
    pub signal: Signal,
    /// How the gauge is read.
    pub gauge: GaugeSetting,
    /// What is asked of the code reader.
    pub request: Request,
    /// Roads for a drive, and the one that is chosen.
    pub roads: EndView,
    /// What lies on the counter.
    pub counter: CounterView,
    /// What the tool in hand will do.
    pub ready: ReadyView,
    /// What the tool in hand showed last, of what it is set to.
    pub reading: Option<ReadingView>,
}

/// Something that can be taken in hand.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Default)]
pub enum Tool {
    /// Multimeter.
    #[default]
    Meter,
    /// Test lamp.
    Lamp,
    /// Current probe.
    Clamp,
    /// Fused lead from the battery to a valve.
    Power,
    /// Scope.
    Scope,
    /// Code reader.
    Reader,
    /// Oil pressure gauge.
    Gauge,
    /// Dipstick.
    Dipstick,
    /// The vehicle on the road, the reader beside the driver.
    Drive,
    /// The counter with parts and work.
    Counter,
}

impl Tool {
    /// Every tool, in the order of the tray.
    pub const ALL: [Self; 10] = [
        Self::Meter,
        Self::Lamp,
        Self::Clamp,
        Self::Power,
        Self::Scope,
        Self::Reader,
        Self::Gauge,
        Self::Dipstick,
        Self::Drive,
        Self::Counter,
    ];

    /// The message that names it.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::Meter => "tray-meter",
            Self::Lamp => "tray-lamp",
            Self::Clamp => "tray-clamp",
            Self::Power => "tray-power",
            Self::Scope => "tray-scope",
            Self::Reader => "tray-reader",
            Self::Gauge => "tray-gauge",
            Self::Dipstick => "tray-dipstick",
            Self::Drive => "tray-drive",
            Self::Counter => "tray-counter",
        }
    }

    /// The ends that it has.
    #[must_use]
    pub const fn ends(self) -> &'static [End] {
        match self {
            Self::Meter => &[End::Red, End::Black, End::Hand],
            Self::Lamp => &[End::Tip, End::Clip],
            Self::Clamp => &[End::Jaws],
            Self::Power => &[End::PowerPlug],
            Self::Scope => &[End::ScopeProbe],
            Self::Reader | Self::Gauge | Self::Dipstick | Self::Drive | Self::Counter => &[],
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
    /// A hand that wiggles something while the meter is watched, or nowhere.
    Hand,
    /// The test lamp's tip.
    Tip,
    /// The test lamp's clip.
    Clip,
    /// The jaws of the current probe.
    Jaws,
    /// The plug of the power lead.
    PowerPlug,
    /// The scope's probe.
    ScopeProbe,
}

impl End {
    /// Every end.
    pub const ALL: [Self; 8] = [
        Self::Red,
        Self::Black,
        Self::Hand,
        Self::Tip,
        Self::Clip,
        Self::Jaws,
        Self::PowerPlug,
        Self::ScopeProbe,
    ];

    /// Whether the tool is used without it as well.
    #[must_use]
    pub const fn is_optional(self) -> bool {
        matches!(self, Self::Hand)
    }

    /// The message that names it.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::Red => "tray-red",
            Self::Black => "tray-black",
            Self::Hand => "tray-hand",
            Self::Tip => "tray-tip",
            Self::Clip => "tray-clip",
            Self::Jaws => "tray-jaws",
            Self::PowerPlug => "tray-power-plug",
            Self::ScopeProbe => "tray-scope-probe",
        }
    }

    /// The message with the letter that marks it in the picture.
    #[must_use]
    pub const fn letter_key(self) -> &'static str {
        match self {
            Self::Red => "tray-red-letter",
            Self::Black => "tray-black-letter",
            Self::Hand => "tray-hand-letter",
            Self::Tip => "tray-tip-letter",
            Self::Clip => "tray-clip-letter",
            Self::Jaws => "tray-jaws-letter",
            Self::PowerPlug => "tray-power-plug-letter",
            Self::ScopeProbe => "tray-scope-probe-letter",
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

/// How the power lead is used.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct PowerSetting {
    /// How long [s].
    pub seconds: u16,
    /// Red on the control pin.
    pub reversed: bool,
}

/// How the gauge is read.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct GaugeSetting {
    /// Engine speed held by hand [rpm]; `None` as it idles or stands.
    pub rpm: Option<u16>,
    /// The engine is warmed up first.
    pub warm: bool,
}

/// What can be asked of the code reader.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Default)]
pub enum Request {
    /// Codes.
    #[default]
    Codes,
    /// Freeze frame.
    FreezeFrame,
    /// Readiness.
    Readiness,
    /// Live data.
    LiveData,
    /// Results of the monitors' tests.
    TestResults,
    /// The vehicle and its module.
    Vehicle,
}

impl Request {
    /// Every request, in the order of the work.
    pub const ALL: [Self; 6] = [
        Self::Codes,
        Self::FreezeFrame,
        Self::Readiness,
        Self::LiveData,
        Self::TestResults,
        Self::Vehicle,
    ];

    /// The message that names it.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::Codes => "reader-codes",
            Self::FreezeFrame => "reader-freeze-frame",
            Self::Readiness => "reader-readiness",
            Self::LiveData => "reader-live-data",
            Self::TestResults => "reader-test-results",
            Self::Vehicle => "reader-vehicle",
        }
    }
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

/// What a tool showed.
#[derive(Debug, Clone, PartialEq)]
pub struct ReadingView {
    /// The step that brought it, from 1.
    pub number: usize,
    /// What it showed.
    pub shown: Shown,
    /// The same in words, as the log has it.
    pub words: Vec<String>,
    /// What had been said of it, and whether it came.
    pub prediction: Option<PredictionView>,
}

/// What there was to see or hear.
#[derive(Debug, Clone, PartialEq)]
pub enum Shown {
    /// A display.
    Display(Display),
    /// Words alone: a fuse that blew, a module that did not answer.
    Words,
    /// A lamp.
    Glow(Glow),
    /// Sounds as the current came on and as it went off.
    Clicks(Vec<(bool, Click)>),
    /// A course over time.
    Course(Arc<Capture>),
    /// Tables.
    Tables(Vec<TableView>),
    /// A needle [bar] and how far it swings [bar].
    Needle {
        /// The middle.
        bar: f64,
        /// From one side to the other.
        swing: f64,
    },
    /// The stick: its level between the marks, 0 at the lower and 1 at the upper, to a tenth; nothing on a dry one.
    Stick(Option<f64>),
}

/// A table.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct TableView {
    /// Names of its columns; none where the first column says it.
    pub columns: Vec<String>,
    /// Its rows, as long as there are columns.
    pub rows: Vec<Vec<String>>,
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
    /// Take an end away from where it is.
    Lift(End),
    /// Put an end on a thing of the bay.
    PutOn(End, Id),
    /// Turn the meter's dial.
    Turn(MeterFunction),
    /// Push the leads in from the front, or not.
    FromFront(bool),
    /// Use the power lead otherwise.
    SetPower(PowerSetting),
    /// Watch something else with the scope.
    Watch(Signal),
    /// Read the gauge otherwise.
    SetGauge(GaugeSetting),
    /// Ask something else of the code reader.
    Ask(Request),
    /// Choose a road.
    Road(Id),
    /// Lay another kind of work on the counter.
    SetTrade(Trade),
    /// Choose a job by its line.
    ChooseJob(String),
}
