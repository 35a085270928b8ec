//! What a thing is made of: solids, each in one finish.

use super::shape::Solid;
use crate::workshop::view::bay::Mark;

/// How a surface looks. The theme says what that means.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Finish {
    /// Cast aluminium.
    Casting,
    /// Bright steel.
    Steel,
    /// Rolled sheet that keeps heat off.
    HeatSheet,
    /// Iron that has been hot for years.
    Iron,
    /// Black plastic, slightly rough.
    BlackPlastic,
    /// Grey plastic.
    GreyPlastic,
    /// Milky plastic that a liquid shows through.
    MilkyPlastic,
    /// Rubber.
    Rubber,
    /// Paint of the body.
    Body,
    /// Dark underside of the bay.
    Underside,
    /// Yellow of a grip that is meant to be found.
    Yellow,
    /// Blue of a cap or a fuse.
    Blue,
    /// Red of a cap, a fuse or a positive cable.
    Red,
    /// Green of a wire.
    Green,
    /// Violet of a wire.
    Violet,
    /// White of a wire or a label.
    White,
    /// Brown of a wire to ground.
    Brown,
    /// Tinned contact.
    Contact,
    /// Sound seal.
    Seal,
    /// Seal that was squeezed.
    FlatSeal,
    /// Wire cloth of a screen.
    Screen,
    /// Sludge and varnish.
    Sludge,
    /// Copper gone green.
    Verdigris,
    /// Bare copper.
    Copper,
    /// Strip burnt black.
    Burnt,
    /// Top of a bench.
    Wood,
    /// Cloth of a rag.
    Cloth,
    /// The lit inside of a lamp.
    Glow,
    /// Floor of the hall.
    Floor,
}

impl Finish {
    /// Every finish.
    pub const ALL: [Self; 29] = [
        Self::Casting,
        Self::Steel,
        Self::HeatSheet,
        Self::Iron,
        Self::BlackPlastic,
        Self::GreyPlastic,
        Self::MilkyPlastic,
        Self::Rubber,
        Self::Body,
        Self::Underside,
        Self::Yellow,
        Self::Blue,
        Self::Red,
        Self::Green,
        Self::Violet,
        Self::White,
        Self::Brown,
        Self::Contact,
        Self::Seal,
        Self::FlatSeal,
        Self::Screen,
        Self::Sludge,
        Self::Verdigris,
        Self::Copper,
        Self::Burnt,
        Self::Wood,
        Self::Cloth,
        Self::Glow,
        Self::Floor,
    ];
}

/// When a piece is there.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Shown {
    /// Always.
    #[default]
    Always,
    /// Only while this is known of the thing.
    With(Mark),
    /// Until this is known of the thing.
    Without(Mark),
}

/// A solid in one finish, in the frame of its thing.
#[derive(Debug, Clone, PartialEq)]
pub struct Piece {
    /// Skin.
    pub solid: Solid,
    /// Finish.
    pub finish: Finish,
    /// When it is there.
    pub shown: Shown,
}

/// A piece that is always there.
#[must_use]
pub fn piece(finish: Finish, solid: Solid) -> Piece {
    Piece { solid, finish, shown: Shown::Always }
}

impl Piece {
    /// The piece, there only while this is known.
    #[must_use]
    pub fn with(self, mark: Mark) -> Self {
        Self { shown: Shown::With(mark), ..self }
    }

    /// The piece, there until this is known.
    #[must_use]
    pub fn without(self, mark: Mark) -> Self {
        Self { shown: Shown::Without(mark), ..self }
    }
}
