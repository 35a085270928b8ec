//! What eye, finger and nose tell: sights at places, and the oil on the stick.

use serde::{Deserialize, Serialize};

/// What the eye sees at a place.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Sight {
    /// Nothing out of the ordinary.
    Sound,
    /// Green corrosion on a contact.
    Corrosion,
    /// A terminal spread apart.
    SpreadTerminal,
    /// The strip of a fuse burnt through.
    BlownFuse,
    /// Insulation rubbed through.
    RubbedThrough,
    /// Sludge on the screen.
    Sludge,
    /// A torn seal.
    TornSeal,
    /// A seal that was squeezed before.
    UsedSeal,
    /// Spool moves, sticks when pushed by hand.
    SpoolSticks,
    /// Heavy varnish on the spool, which hardly moves.
    SpoolSeized,
    /// Nothing can be seen from here.
    Hidden,
}

/// The look of the oil on the stick.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum OilLook {
    /// Amber.
    Fresh,
    /// Dark, as used oil is.
    Dark,
    /// Black, with lumps and a sticky film of sludge.
    Sludge,
}

/// How oil feels between two fingers, against fresh oil of the right grade.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Default, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum OilFeel {
    /// As it should.
    #[default]
    Usual,
    /// Thinner.
    Thin,
    /// Thicker.
    Thick,
}

impl OilFeel {
    /// Whether it is as it should be.
    #[must_use]
    pub const fn is_usual(&self) -> bool {
        matches!(self, Self::Usual)
    }
}
