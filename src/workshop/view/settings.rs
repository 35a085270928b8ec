//! How the window is shown.

use serde::{Deserialize, Serialize};

/// The settings that a user can change.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Settings {
    /// Size of everything.
    pub text: TextSize,
    /// Dark on light or light on dark.
    pub shade: Shade,
    /// How far colours are from what they stand on.
    pub contrast: Contrast,
    /// Whether things move there or are there at once.
    pub motion: Motion,
    /// How loud the workshop is.
    pub volume: Volume,
    /// The language of the window by its tag; nothing for that of the surroundings.
    pub language: Option<&'static str>,
    /// Whether the page with the settings is open; it is not kept.
    pub are_open: bool,
}

/// How things in the bay get from place to place.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Motion {
    /// By a short way.
    #[default]
    Short,
    /// At once.
    None,
}

/// How loud the workshop is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Default, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Volume {
    /// Nothing is heard; captions and traces stay.
    Mute,
    /// A quarter of full scale.
    Quiet,
    /// Half of it.
    #[default]
    Medium,
    /// All of it.
    Loud,
}

impl Volume {
    /// Every volume, the least first.
    pub const ALL: [Self; 4] = [Self::Mute, Self::Quiet, Self::Medium, Self::Loud];

    /// The share of full scale, 0 to 1.
    #[must_use]
    pub const fn gain(self) -> f32 {
        match self {
            Self::Mute => 0.0,
            Self::Quiet => 0.25,
            Self::Medium => 0.5,
            Self::Loud => 1.0,
        }
    }
}

/// Size of the text, and of everything with it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Default, Serialize, Deserialize)]
#[serde(into = "u8", try_from = "u8")]
pub enum TextSize {
    /// As the display has it.
    #[default]
    Normal,
    /// A quarter larger.
    Large,
    /// Half as large again.
    Larger,
    /// Twice as large.
    Double,
}

impl TextSize {
    /// Every size, the smallest first.
    pub const ALL: [Self; 4] = [Self::Normal, Self::Large, Self::Larger, Self::Double];

    /// The size [%].
    #[must_use]
    pub const fn percent(self) -> u8 {
        match self {
            Self::Normal => 100,
            Self::Large => 125,
            Self::Larger => 150,
            Self::Double => 200,
        }
    }
}

impl From<TextSize> for u8 {
    fn from(size: TextSize) -> Self {
        size.percent()
    }
}

impl TryFrom<u8> for TextSize {
    type Error = String;

    fn try_from(percent: u8) -> Result<Self, String> {
        let size = Self::ALL.into_iter().find(|size| size.percent() == percent);
        size.ok_or_else(|| format!("no text size of {percent} %"))
    }
}

/// How far colours are from what they stand on.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Contrast {
    /// Ink on a card.
    #[default]
    Ordinary,
    /// Black on white or white on black, with edges that are seen.
    High,
}

/// Dark on light or light on dark.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Shade {
    /// Dark on light.
    #[default]
    Light,
    /// Light on dark.
    Dark,
}
