//! The page on which a case is written: its text, the forms that show and change its values, and what comes of it.

pub mod form;

use super::bay::BayView;
use form::Row;

/// What a case can be begun with or gone on from.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct WriterDoorView {
    /// Texts to begin with.
    pub starters: Vec<StarterView>,
    /// What the field for a file holds.
    pub file: String,
    /// What was written here last.
    pub last: Option<LastView>,
}

/// A text to begin with.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct StarterView {
    /// What it is called.
    pub title: String,
    /// A sentence on it.
    pub about: String,
}

/// What was written last.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct LastView {
    /// Its title.
    pub title: String,
    /// Where it is kept, if it was ever saved.
    pub path: Option<String>,
    /// It has changes that were not saved.
    pub is_changed: bool,
}

/// What the page shows.
#[derive(Debug, Clone, PartialEq)]
pub struct WriterView {
    /// Name of the file, or what a case is called that has none yet.
    pub name: String,
    /// Where it is kept.
    pub path: Option<String>,
    /// It has changes that are not saved.
    pub is_changed: bool,
    /// Whether a change can be taken back, and whether one can be made again.
    pub can: (bool, bool),
    /// The text.
    pub text: String,
    /// Where the cursor was sent last.
    pub cursor: CursorView,
    /// The part of the form that is open.
    pub section: Section,
    /// Its fields; those of the last text that could be read.
    pub rows: Vec<Row>,
    /// The text can be read, so that the fields belong to it.
    pub is_live: bool,
    /// What is wrong with the text; nothing while it is looked for the first time.
    pub problems: Option<Vec<ProblemView>>,
    /// What is doubtful about a text without problems.
    pub doubts: Vec<ProblemView>,
    /// The problems are those of an earlier text.
    pub is_checking: bool,
    /// What stands beside the forms.
    pub side: Side,
    /// Where there is room for only one part of the page: which.
    pub pane: WriterPane,
    /// The job sheet and the customer's answers as the apprentice gets them, a line each.
    pub sheet: Vec<String>,
    /// The bay with the vehicle.
    pub bay: Option<BayView>,
    /// What can be tried.
    pub trial: TrialView,
    /// How hard it is.
    pub hardness: HardnessView,
    /// What has to be answered before anything else.
    pub asked: Option<Asked>,
}

/// Where the cursor was sent.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct CursorView {
    /// Characters before it.
    pub at: usize,
    /// How often it was sent anywhere, so that the field can follow.
    pub sent: u64,
    /// The field is to have the focus as well.
    pub with_focus: bool,
}

/// A part of the form.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, PartialOrd, Ord)]
pub enum Section {
    /// Title, level, vehicle, purpose.
    #[default]
    Story,
    /// Job sheet and customer.
    Job,
    /// What may be drawn.
    Faults,
    /// What is odd and harmless.
    Decoys,
    /// What time and things cost.
    Prices,
    /// Roads and the workshop's temperature.
    Roads,
    /// What the marks weigh.
    Marks,
    /// The note for instructors.
    Teaching,
}

impl Section {
    /// Every part in its order.
    pub const ALL: [Self; 8] = [
        Self::Story,
        Self::Job,
        Self::Faults,
        Self::Decoys,
        Self::Prices,
        Self::Roads,
        Self::Marks,
        Self::Teaching,
    ];
}

/// What stands beside the forms.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, PartialOrd, Ord)]
pub enum Side {
    /// The text.
    #[default]
    Text,
    /// The job sheet.
    Sheet,
    /// The bay.
    Bay,
    /// What can be tried.
    Trial,
    /// How hard it is.
    Hardness,
}

impl Side {
    /// Every side in its order.
    pub const ALL: [Self; 5] = [Self::Text, Self::Sheet, Self::Bay, Self::Trial, Self::Hardness];
}

/// A part of the page where there is room for only one.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum WriterPane {
    /// The forms.
    #[default]
    Forms,
    /// What stands beside them.
    Side,
    /// What is wrong.
    Problems,
}

/// Something wrong with the text.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ProblemView {
    /// Line and column, from 1; nothing where it is not in this text.
    pub place: Option<(u32, u32)>,
    /// What is wrong, with its place and what to do.
    pub said: String,
}

/// What can be tried.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct TrialView {
    /// The entries that may be drawn; the last one is a vehicle without a fault, where that may be drawn.
    pub entries: Vec<String>,
    /// What the field for a seed holds.
    pub seed: String,
    /// Why that is no seed.
    pub problem: Option<String>,
    /// The text is free of problems, so that a case can be dealt.
    pub can_deal: bool,
}

/// How hard the case is.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct HardnessView {
    /// Rows of a table: what, the value of the text as it was saved last and as it stands, where known.
    pub rows: Vec<[String; 3]>,
    /// What is being worked out, and the share that is done, in per cent.
    pub under_way: Option<(String, u8)>,
    /// The text has changed since.
    pub is_old: bool,
    /// Why nothing came of it.
    pub problem: Option<String>,
}

/// What has to be answered.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Asked {
    /// Whether to leave with changes that are not saved.
    Leave,
    /// Where to save; what the field holds.
    Path(String),
    /// Whether to save over a file that somebody else has changed or made.
    Over(String),
}

/// Something that is wanted of the writer.
#[derive(Debug, Clone, PartialEq)]
pub enum WriterAction {
    /// Show where a case is begun.
    Open,
    /// Begin with the text of this number, from 0.
    Begin(usize),
    /// The field for a file holds this now.
    TypeFile(String),
    /// Open that file.
    ReadFile,
    /// Go on with what was written last.
    GoOn,
    /// The text is this now.
    Type(String),
    /// Show a part of the form.
    Show(Section),
    /// Show something else beside the forms.
    Turn(Side),
    /// Where there is room for only one part of the page: show this one.
    Pane(WriterPane),
    /// The field of the value at a path holds this now.
    Fill {
        /// Path of the value.
        path: String,
        /// What the field holds.
        text: String,
    },
    /// Change the text as a choice or a button of the form says.
    Do(form::Deed),
    /// Put the cursor at a line and a column, from 1.
    GoTo(u32, u32),
    /// Take the last change back.
    Undo,
    /// Make the change again that was taken back.
    Redo,
    /// Save it where it is kept.
    Save,
    /// Ask where to save.
    AskPath,
    /// The field for that holds this now.
    TypePath(String),
    /// Save it there.
    SaveThere,
    /// Save it over what somebody else has written there.
    SaveOver,
    /// Go on writing.
    Stay,
    /// Save and leave.
    SaveAndLeave,
    /// Leave, and let the changes go.
    Discard,
    /// Try it with the entry of this number, from 0.
    TryEntry(usize),
    /// The field for a seed holds this now.
    TypeSeed(String),
    /// Try it with that seed.
    TrySeed,
    /// Work out how hard it is.
    Measure,
    /// Stop that.
    StopMeasuring,
}
