//! What can be taken off, what is in its way, and what care it wants.

use super::id::Id;
use crate::units::Minutes;
use serde::{Deserialize, Serialize};

/// What kind of thing a part is, which decides the words and the care for it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(test, derive(schemars::JsonSchema))]
pub enum PartKind {
    /// A cover held by studs or clips.
    Cover,
    /// An air duct.
    Duct,
    /// A clamp that holds a duct.
    Clamp,
    /// An electrical connector: unplugged rather than removed.
    Connector,
    /// An oil-control valve with its seal.
    Valve,
    /// A blade fuse that can be pulled; its name is that of the fuse in the wiring.
    Fuse,
}

/// A rule of care that belongs to a part.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(test, derive(schemars::JsonSchema))]
pub enum Care {
    /// The key must be off before it is touched.
    KeyOff,
    /// The seal must be broken loose by turning before the part is drawn out.
    BreakSealLoose,
    /// A new, oiled seal at every refit.
    NewSeal,
    /// Tightened to the maker's torque.
    Torque,
    /// Hot after a run: let it cool or protect the hands.
    Hot,
}

/// A part that can be taken off and put back.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(test, derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct PartSpec {
    /// Name.
    pub id: Id,
    /// What it is.
    pub kind: PartKind,
    /// Parts that must be off before this one can be reached.
    #[serde(default)]
    pub behind: Vec<Id>,
    /// Time to remove [min].
    pub remove: Minutes,
    /// Time to refit [min].
    pub refit: Minutes,
    /// Rules of care.
    #[serde(default)]
    pub care: Vec<Care>,
    /// Tightening torque [N m], where the part has fasteners that need one.
    #[serde(default)]
    pub torque_nm: Option<f64>,
}

/// A place where a probe can touch the wiring.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(test, derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct TestPointSpec {
    /// Name.
    pub id: Id,
    /// Node of the wiring.
    pub node: Id,
    /// Parts that must be off before it can be reached.
    #[serde(default)]
    pub behind: Vec<Id>,
    /// Connector that must be unplugged: the component's own pins are hidden while it is plugged.
    #[serde(default)]
    pub unplugged: Option<Id>,
}
