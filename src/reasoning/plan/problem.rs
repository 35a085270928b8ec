//! A plain problem of finding and mending, as it is written down.

use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

/// States, covers, steps, endings.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Problem {
    /// What the problem is, for people.
    pub title: String,
    /// Where it comes from.
    #[serde(default)]
    pub source: String,
    /// What may be true. Priors are weights: zero or more, not all zero; their sum is free. A
    /// state that is only reached, such as "mended", has prior zero.
    pub states: Vec<State>,
    /// What can be opened and shut. All are shut at the start.
    #[serde(default)]
    pub covers: Vec<Cover>,
    /// What can be done.
    pub steps: Vec<Step>,
    /// How the job can end. At least one must be possible in every state.
    pub endings: Vec<Ending>,
}

/// Something that may be true.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct State {
    /// Name.
    pub name: String,
    /// Weight before any evidence, zero or more.
    #[serde(default)]
    pub prior: f64,
}

/// Something that is in the way.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Cover {
    /// Name.
    pub name: String,
    /// Cost of opening, zero or more.
    pub open: f64,
    /// Cost of shutting, zero or more.
    #[serde(default)]
    pub shut: f64,
    /// Covers that must be open before this one can be opened, and stay so while it is open.
    #[serde(default)]
    pub behind: Vec<String>,
}

/// What comes of doing a step again.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum Repeat {
    /// The same error again: a second time shows what the first did, so it is not offered until a
    /// step that [`Step::renews`] it.
    Same,
    /// An independent outcome each time.
    Independent,
}

/// Something to do.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Step {
    /// Name.
    pub name: String,
    /// Cost, more than zero, opening and shutting not counted.
    pub cost: f64,
    /// What comes of doing it again.
    pub repeat: Repeat,
    /// Covers that must be open.
    #[serde(default)]
    pub open: Vec<String>,
    /// Covers that must be shut.
    #[serde(default)]
    pub shut: Vec<String>,
    /// What it can show, by name; at least one.
    pub outcomes: Vec<String>,
    /// Probability of each outcome in the states named here, in the order of `outcomes`.
    #[serde(default)]
    pub chances: BTreeMap<String, Vec<f64>>,
    /// The same in every state not named in `chances`; may be left out if all are named.
    #[serde(default)]
    pub otherwise: Vec<f64>,
    /// Changes: in this state, when this outcome is seen, it becomes that state.
    #[serde(default)]
    pub becomes: Vec<Change>,
    /// Steps that show something new after this one.
    #[serde(default)]
    pub renews: Vec<String>,
}

/// One change that a step makes.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Change {
    /// State before.
    pub from: String,
    /// Outcome that is seen.
    pub on: String,
    /// State after.
    pub to: String,
}

/// A way to end.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Ending {
    /// Name.
    pub name: String,
    /// Final cost in the states named here; a gain is negative.
    #[serde(default)]
    pub costs: BTreeMap<String, f64>,
    /// Final cost in every state not named; left out, the ending is not possible there.
    #[serde(default)]
    pub otherwise: Option<f64>,
    /// Covers that must be open.
    #[serde(default)]
    pub open: Vec<String>,
    /// Covers that must be shut.
    #[serde(default)]
    pub shut: Vec<String>,
}
