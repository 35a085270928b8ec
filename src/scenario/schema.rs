//! What a scenario file and a vehicle file hold.
//!
//! Both are RON. Every field is named, unknown ones are refused, and each file begins with its
//! format and version, so that a reader can tell which file is old. Numbers carry the units that
//! their descriptions name; money is in hundredths of the currency.

use crate::assessment::rubric::Rubric;
use crate::control_module::code::Code;
use crate::faults::{FaultKind, FaultName};
use crate::session::setup::{Approval, JobSheet, Prices, Route};
use crate::session::shelf::Shelf;
use crate::session::toolbox::{TimeLimit, Tools};
use crate::units::Celsius;
use crate::vehicle::spec::{Id, VehicleSpec};
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

/// First line of a scenario file.
pub const SCENARIO_FORMAT: &str = "faultwright scenario";
/// First line of a vehicle file.
pub const VEHICLE_FORMAT: &str = "faultwright vehicle";
/// First line of a road's file.
pub const ROUTE_FORMAT: &str = "faultwright route";
/// Newest version of the scenario's format.
pub const SCENARIO_VERSION: u32 = 3;
/// Newest version of the vehicle's format.
pub const VEHICLE_VERSION: u32 = 2;
/// Newest version of the road's format.
pub const ROUTE_VERSION: u32 = 1;
/// Letters of the longest name.
pub const LONGEST_NAME: usize = 48;

/// Fields of a scenario that a later version of its format brought, with that version; every other field of any file
/// came with the first, but for those of a vehicle below.
pub const BROUGHT: [(&str, u32); 4] =
    [("approval", 2), ("shelf", 3), ("time_limit", 3), ("tools", 3)];
/// The same of a vehicle: what holds the field, the field, one that has always stood beside it, and the version.
pub const BROUGHT_TO_VEHICLE: [(&str, &str, &str, u32); 2] =
    [("VehicleSpec", "cylinders", "engine", 2), ("ValveSpec", "bank", "cam", 2)];

/// The version that brought a field, given as `Type.field`.
#[must_use]
pub fn since(field: &str) -> u32 {
    let in_vehicle = BROUGHT_TO_VEHICLE.iter().find(|(holder, name, ..)| {
        field.strip_prefix(holder).and_then(|rest| rest.strip_prefix('.')) == Some(name)
    });
    if let Some((.., version)) = in_vehicle {
        return *version;
    }
    let field = field.strip_prefix("ScenarioFile.").unwrap_or_default();
    BROUGHT.iter().find(|(name, _)| *name == field).map_or(1, |(_, version)| *version)
}

/// A scenario as an instructor writes it.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(test, derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct ScenarioFile {
    /// Always `"faultwright scenario"`.
    pub format: String,
    /// Version of the format: 3, or 1 or 2 for an older file.
    pub version: u32,
    /// Title that it is chosen by; not empty.
    pub title: String,
    /// One sentence for whoever chooses by it, apprentices too; empty where the file has none.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub about: String,
    /// How much it asks of an apprentice.
    #[serde(default)]
    pub level: Level,
    /// What an instructor may know before handing it out. No apprentice is shown it.
    #[serde(default, skip_serializing_if = "Teaching::is_empty")]
    pub teaching: Teaching,
    /// Name of a vehicle file without folder and ending, such as `harrowfen-dray`.
    pub vehicle: String,
    /// Practice or assessed.
    pub mode: Mode,
    /// The job sheet.
    pub job: JobSheet,
    /// What the customer says when asked to approve a repair.
    #[serde(default, skip_serializing_if = "is_usual")]
    #[cfg_attr(test, schemars(extend("default" = "Everything")))]
    pub approval: Approval,
    /// The tools of the case. Eyes, hands, the dipstick and the code reader are always there.
    #[serde(default, skip_serializing_if = "is_all")]
    #[cfg_attr(test, schemars(extend("default" = "All")))]
    pub tools: Tools,
    /// How long an apprentice may work.
    #[serde(default, skip_serializing_if = "is_free")]
    #[cfg_attr(test, schemars(extend("default" = "None")))]
    pub time_limit: TimeLimit,
    /// Faults that may be drawn, each entry at most once with the same kinds and places.
    pub faults: Vec<FaultPrior>,
    /// How often a vehicle without any fault is drawn, on the scale of the faults' weights.
    #[serde(default)]
    pub no_fault: f64,
    /// Things that are odd and harmless.
    #[serde(default)]
    pub decoys: Decoys,
    /// Prices and times.
    pub prices: Prices,
    /// What the counter has besides the maker's own parts at once.
    #[serde(default, skip_serializing_if = "Shelf::is_plain")]
    pub shelf: Shelf,
    /// Roads for a test drive, by name.
    pub routes: BTreeMap<Id, Route>,
    /// Names of further roads, out of those that the program carries under `scenarios/routes`.
    #[serde(default)]
    pub shared_routes: Vec<Id>,
    /// The road on which the customer met the concern: one of `routes` or `shared_routes`.
    pub customers_route: Id,
    /// Temperature in the workshop, and of the vehicle that has stood there overnight [°C], -40 to 50.
    pub workshop_temperature: Celsius,
    /// How a session is weighed.
    pub rubric: Rubric,
}

/// A file that says nothing of it need be of no newer version for it.
fn is_usual(approval: &Approval) -> bool {
    *approval == Approval::default()
}

/// See [`is_usual`].
fn is_all(tools: &Tools) -> bool {
    *tools == Tools::All
}

/// See [`is_usual`].
#[expect(clippy::trivially_copy_pass_by_ref, reason = "the writer of data hands a reference")]
fn is_free(limit: &TimeLimit) -> bool {
    *limit == TimeLimit::None
}

/// How much a scenario asks of an apprentice.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Default, Serialize, Deserialize)]
#[cfg_attr(test, derive(schemars::JsonSchema))]
pub enum Level {
    /// A first lesson: few faults, each found with one tool.
    First,
    /// The usual: several circuits, decoys, more than one tool.
    #[default]
    Middle,
    /// Faults that come and go, come together, or hide behind something harmless.
    Hard,
}

impl Level {
    /// Every level, from the easiest on.
    pub const ALL: [Self; 3] = [Self::First, Self::Middle, Self::Hard];

    /// The word that catalogues and tables call it by.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::First => "first",
            Self::Middle => "middle",
            Self::Hard => "hard",
        }
    }
}

/// A note for instructors: it names what a session has to find out.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize)]
#[cfg_attr(test, derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Teaching {
    /// What the scenario teaches.
    pub teaches: String,
    /// What leads apprentices astray in it.
    pub traps: Vec<String>,
    /// How an expert goes, in order.
    pub path: Vec<String>,
}

impl Teaching {
    /// Whether the file has no note.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        *self == Self::default()
    }
}

/// What a session of this scenario is for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(test, derive(schemars::JsonSchema))]
pub enum Mode {
    /// To learn: the debrief follows at once.
    Practice,
    /// To be assessed: seed and fault stay sealed until the sign-off.
    Assessed,
}

/// A fault that may be drawn, or several that come together, and how likely.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(test, derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct FaultPrior {
    /// What is wrong.
    pub kind: FaultKind,
    /// Where: a valve's place, a wire, a pin, a fuse, a relay, or `sump`; the kind says which.
    pub place: Id,
    /// How often it is drawn, against the weights of the other entries and `no_fault`; at least one weight is above zero.
    pub weight: f64,
    /// Least and greatest severity between which it is drawn: 0 is the mildest of its kind, 1 the worst; the first is not
    /// above the second.
    pub severity: (f64, f64),
    /// Up to two faults that are there together with the first, drawn or not drawn with it.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub also: Vec<FaultPart>,
}

/// One of several faults that are drawn together.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(test, derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct FaultPart {
    /// What is wrong.
    pub kind: FaultKind,
    /// Where, in another place than the others of its entry.
    pub place: Id,
    /// Least and greatest severity between which it is drawn: 0 is the mildest of its kind, 1 the worst; the first is not
    /// above the second.
    pub severity: (f64, f64),
}

/// Most faults that are drawn together: with more, nobody could say what each of them shows.
pub const MOST_TOGETHER: usize = 3;

impl FaultPart {
    /// The fault's name.
    #[must_use]
    pub fn name(&self) -> FaultName {
        FaultName { kind: self.kind, place: self.place.clone() }
    }
}

impl FaultPrior {
    /// All the faults that it draws, the first first.
    #[must_use]
    pub fn parts(&self) -> Vec<FaultPart> {
        let first =
            FaultPart { kind: self.kind, place: self.place.clone(), severity: self.severity };
        core::iter::once(first).chain(self.also.iter().cloned()).collect()
    }

    /// The names of all the faults that it draws, in the same order.
    #[must_use]
    pub fn names(&self) -> Vec<FaultName> {
        self.parts().iter().map(FaultPart::name).collect()
    }
}

/// Things that are odd about a vehicle and have nothing to do with its fault.
#[derive(Debug, Clone, PartialEq, Default, Serialize, Deserialize)]
#[cfg_attr(test, derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Decoys {
    /// A healthy valve with another winding than the factory's.
    #[serde(default)]
    pub other_winding: Option<OtherWinding>,
    /// Codes that the fault has not set.
    #[serde(default)]
    pub old_codes: Vec<OldCode>,
}

/// A healthy valve of another part number that may be fitted.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(test, derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct OtherWinding {
    /// Place of the valve.
    pub place: Id,
    /// Part number that is fitted there.
    pub part_number: Id,
    /// Probability that it is there, 0 to 1.
    pub chance: f64,
}

/// Where a code comes from that the fault has not set.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[cfg_attr(test, derive(schemars::JsonSchema))]
pub enum CodeOrigin {
    /// An unrelated fault that was mended long ago: stays away once it is cleared.
    #[default]
    Historical,
    /// An unrelated fault that is there: comes back after a clear.
    Present,
    /// One of a valve's own codes, left by somebody who unplugged something with the key on: it
    /// accuses a sound circuit, is not pending and stays away once it is cleared.
    False,
}

/// A code that is in the module's memory beside the fault.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(test, derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct OldCode {
    /// The code.
    pub code: Code,
    /// Where it comes from.
    #[serde(default)]
    pub origin: CodeOrigin,
    /// Probability that it is there, 0 to 1.
    pub chance: f64,
}

/// A vehicle as a file.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(test, derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct VehicleFile {
    /// Always `"faultwright vehicle"`.
    pub format: String,
    /// Version of the format: 2, or 1 for an older file.
    pub version: u32,
    /// The vehicle.
    pub vehicle: VehicleSpec,
}

/// A road as a file.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(test, derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct RouteFile {
    /// Always `"faultwright route"`.
    pub format: String,
    /// Version of the format: 1.
    pub version: u32,
    /// The road.
    pub route: Route,
}
