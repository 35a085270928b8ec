//! A valve with a supply put on it: what is heard.

use crate::physics::stroke::{Click, Stroke};
use crate::units::Millimetres;

/// What came of a pulse.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Pulse {
    /// Sound when the current came on.
    pub on: Click,
    /// Sound when it went off.
    pub off: Click,
    /// Where the spool is at last [mm].
    pub rest: Millimetres,
    /// The fuse of the lead blew and nothing else happened.
    pub fuse_blew: bool,
}

impl Pulse {
    /// Nothing moved and nothing was heard.
    pub const NONE: Self =
        Self { on: Click::None, off: Click::None, rest: Millimetres(0.0), fuse_blew: false };

    /// What is heard of a stroke.
    #[must_use]
    pub fn of(stroke: &Stroke) -> Self {
        Self {
            on: Click::of(stroke.engaged.as_ref()),
            off: Click::of(stroke.returned.as_ref()),
            rest: stroke.rest_position,
            fuse_blew: false,
        }
    }
}
