//! What is wrong with a file, and where.
//!
//! A problem is data: a place in a text and a typed kind. Sentences come from elsewhere. The place
//! is that of the wrong value, or of the struct or list that lacks something.

use crate::control_module::code::Code;
use crate::faults::FaultKind;
use crate::session::step::CustomerTopic;
use crate::vehicle::spec::Id;
use serde::Serialize;

/// Problems that are reported at once; of a file with more, the rest is counted.
pub const MOST_PROBLEMS: usize = 100;

/// One thing that is wrong with a file, or, with another kind, doubtful about it.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Problem<K = ProblemKind> {
    /// Name of the file as it was given; a vehicle's begins with `vehicles/`.
    pub file: String,
    /// Line, from 1.
    pub line: u32,
    /// Column in characters, from 1.
    pub column: u32,
    /// The offending line, a long one only around the column; characters that cannot be seen are blanks.
    pub text: String,
    /// Column at which `text` begins, from 1.
    pub text_from: u32,
    /// Characters of the line from the column on that are meant, 1 or more.
    pub length: u32,
    /// What is wrong.
    pub kind: K,
}

/// What is wrong.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case", tag = "problem")]
pub enum ProblemKind {
    /// The text is no RON.
    Syntax {
        /// In which way.
        fault: SyntaxFault,
    },
    /// Brackets nest deeper than any right file.
    TooDeep {
        /// Levels that are allowed.
        most: usize,
    },
    /// More values than any right file.
    TooManyValues {
        /// Values that are allowed.
        most: usize,
    },
    /// Another kind of file.
    WrongFormat {
        /// Format that the file names.
        found: String,
        /// Format that is expected.
        expected: &'static str,
    },
    /// A version that this program does not know.
    WrongVersion {
        /// Version that the file names.
        found: String,
        /// Newest version that is known.
        newest: u32,
    },
    /// A field that a later version of the format brought than the file says it is of.
    NewerField {
        /// The field.
        field: &'static str,
        /// The version that brought it.
        since: u32,
    },
    /// A field that does not exist.
    UnknownField {
        /// As written.
        found: String,
        /// Fields that exist there.
        expected: Vec<&'static str>,
        /// The likeliest of them.
        nearest: Option<String>,
    },
    /// A field is left out.
    MissingField {
        /// The field.
        field: &'static str,
    },
    /// A field is there twice.
    RepeatedField {
        /// The field.
        field: &'static str,
    },
    /// A word that is none of those which may stand there.
    UnknownVariant {
        /// As written.
        found: String,
        /// Words that may stand there.
        expected: Vec<&'static str>,
        /// The likeliest of them.
        nearest: Option<String>,
    },
    /// A value of another shape.
    WrongShape {
        /// What should stand there.
        expected: Shape,
    },
    /// A whole number that is negative or larger than its field holds.
    NumberDoesNotFit,
    /// A text that is no trouble code.
    NotACode {
        /// As written.
        found: String,
    },
    /// A number that is infinite or none at all.
    NotFinite {
        /// As written.
        found: String,
    },
    /// A number outside its range.
    OutOfRange {
        /// The number.
        found: f64,
        /// Least value allowed.
        least: f64,
        /// Greatest value allowed.
        most: f64,
    },
    /// Two numbers of which the first must not be greater.
    WrongOrder {
        /// The first.
        first: f64,
        /// The second.
        second: f64,
    },
    /// More entries than a list may have.
    TooMany {
        /// How many there are.
        found: usize,
        /// How many are allowed.
        most: usize,
    },
    /// A text or a list without anything in it.
    Empty,
    /// No weight is above zero.
    AllWeightsZero,
    /// A name that is not made of lower-case words, digits and hyphens.
    BadName {
        /// As written.
        found: String,
    },
    /// A vehicle's name that would lead out of the folder of vehicles.
    LeavesFolder {
        /// As written.
        found: String,
    },
    /// A name that nothing has.
    UnknownName {
        /// What it should be the name of.
        thing: Thing,
        /// As written.
        found: String,
        /// The likeliest right name.
        nearest: Option<String>,
    },
    /// A fault cannot be at that place.
    UnknownPlace {
        /// The fault.
        kind: FaultKind,
        /// As written.
        found: String,
        /// The likeliest place where it can be.
        nearest: Option<String>,
    },
    /// A name that is there twice.
    Repeated {
        /// What it is the name of.
        thing: Thing,
        /// The name.
        name: String,
    },
    /// Two faults that come together and are in the same place.
    SamePlace {
        /// The place.
        place: String,
    },
    /// The vehicle's file could not be read.
    VehicleUnreadable {
        /// The file.
        file: String,
        /// Why.
        trouble: FileTrouble,
    },
    /// A topic that the customer must have an answer to.
    NoAnswer {
        /// The topic.
        topic: CustomerTopic,
    },
    /// A part number without a price.
    NoPrice {
        /// The part number.
        part_number: Id,
    },
    /// A code of another circuit was asked for, and this is one of a valve's own.
    OwnCode {
        /// The code.
        code: Code,
        /// The valve.
        valve: Id,
    },
    /// A false code accuses a valve, and this one is no valve's.
    NobodysCode {
        /// The code.
        code: Code,
    },
    /// A code that stands for two things.
    RepeatedCode {
        /// The code.
        code: Code,
    },
    /// The other winding is the factory's own.
    SameWinding {
        /// The part number.
        part_number: Id,
    },
    /// A part that does not fit the place.
    DoesNotFit {
        /// The part number.
        part_number: Id,
        /// The place.
        valve: Id,
    },
    /// A valve of a V engine whose camshaft has no phaser on the other bank.
    NoPartner {
        /// The valve.
        valve: Id,
    },
    /// A V engine with an odd number of cylinders.
    UnevenBanks {
        /// The cylinders.
        cylinders: u8,
    },
    /// A data-sheet window too narrow for [`super::draw::WINDING_SPREAD`] of healthy parts.
    NarrowWindow {
        /// The part number.
        part_number: Id,
    },
    /// A valve without something that it needs.
    ValveLacks {
        /// The valve.
        valve: Id,
        /// What is missing.
        what: ValveNeed,
    },
    /// The wiring lacks something that it needs.
    HarnessLacks {
        /// What is missing.
        what: HarnessNeed,
    },
    /// A node at which only one element ends.
    HangingNode {
        /// The node.
        node: Id,
        /// A node with a name much like it, which may have been meant.
        nearest: Option<String>,
    },
    /// A node from which no way leads to `battery-minus`.
    IslandNode {
        /// The node.
        node: Id,
    },
    /// An element with both ends at one node.
    SameEnds {
        /// The node.
        node: Id,
    },
    /// Parts each of which must come off before the others.
    BlockersInACircle {
        /// The parts, in the order of the circle.
        parts: Vec<Id>,
    },
    /// A part that asks for a torque and names none.
    NoTorque {
        /// The part.
        part: Id,
    },
}

/// In which way a text is no RON.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum SyntaxFault {
    /// A comma is missing before this.
    NoComma,
    /// A colon is missing before this.
    NoColon,
    /// A bracket is never closed.
    OpenBracket(char),
    /// Another closing bracket is due here.
    OtherBracket(char),
    /// A text in quotes is never closed.
    OpenText,
    /// A comment is never closed.
    OpenComment,
    /// Something stands behind the end.
    TooLong,
    /// A name is due here.
    NoName,
    /// A backslash with a letter that has no meaning.
    BadEscape,
    /// A number that is not well written.
    BadNumber,
    /// An extension of RON that does not exist.
    UnknownExtension,
    /// Anything else.
    Other,
}

/// What a value should look like.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Shape {
    /// A text in quotes.
    Text,
    /// A whole number.
    WholeNumber,
    /// A number.
    Number,
    /// A word without quotes.
    Word,
    /// Fields in round brackets.
    Fields,
    /// Two values in round brackets.
    Pair,
    /// A list in square brackets.
    List,
    /// A map in curly brackets.
    Map,
    /// `None` or `Some(...)`.
    Optional,
}

/// What a name is the name of.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Thing {
    /// A vehicle file.
    Vehicle,
    /// A road.
    Route,
    /// A valve's place.
    Valve,
    /// A part number of a valve.
    PartNumber,
    /// A part that comes off.
    Part,
    /// A connector.
    Connector,
    /// A camshaft.
    Camshaft,
    /// A fuse.
    Fuse,
    /// A test point.
    TestPoint,
    /// A node of the wiring.
    Node,
    /// An element of the wiring.
    Element,
    /// A fault with its place.
    Fault,
    /// An entry of a map.
    Entry,
}

/// What every valve needs.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum ValveNeed {
    /// A part of kind `Valve` with its name, to be taken out.
    Part,
    /// A part of kind `Connector` with the name that it gives.
    Connector,
    /// A pin of that connector at each end of its coil.
    Pins,
    /// A coil.
    Coil,
    /// A driver.
    Driver,
}

/// What every wiring needs.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum HarnessNeed {
    /// A battery.
    Battery,
    /// The node `battery-minus`, the reference of all voltages.
    BatteryMinus,
    /// The node `engine-ground`, which a rubbed-through wire touches.
    EngineGround,
    /// The supply of the control module.
    ModuleSupply,
    /// A module supply with the ground of each driver.
    DriverGround,
}

/// Why a file as a whole could not be read.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum FileTrouble {
    /// There is no such file.
    NotFound,
    /// A folder or something else that is no plain file.
    NotAFile,
    /// The system does not allow it.
    NotAllowed,
    /// Larger than any right file.
    TooLarge {
        /// Bytes that are allowed.
        most: u64,
    },
    /// Not written in UTF-8.
    NotUtf8 {
        /// Line of the first wrong byte, from 1.
        line: u32,
        /// Its column in characters, from 1.
        column: u32,
    },
    /// The system failed to read it.
    Failed {
        /// The system's own number of the failure, where it has one.
        number: Option<i32>,
    },
}
