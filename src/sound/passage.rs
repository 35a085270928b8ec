//! What is heard one after the other.

use super::click::ClickVoice;
use super::engine::{EngineRun, EngineVoice};
use super::starter::{StarterRun, StarterVoice};
use super::{DT_S, loudness};
use crate::physics::stroke::Impact;
use crate::units::Seconds;

/// One thing that is heard.
#[derive(Debug, Clone, PartialEq)]
pub enum Part {
    /// Nothing for a while.
    Pause(Seconds),
    /// A valve's click.
    Click(Impact),
    /// The starter.
    Starter(StarterRun),
    /// The engine.
    Engine(EngineRun),
}

/// Things that are heard one after the other. An engine that goes on for ever ends it.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Passage {
    parts: Vec<Part>,
}

impl Passage {
    /// Silence, which ends whatever sounds.
    pub const SILENCE: Self = Self { parts: Vec::new() };

    /// A passage of these parts.
    #[must_use]
    pub const fn new(parts: Vec<Part>) -> Self {
        Self { parts }
    }

    /// The parts in their order.
    #[must_use]
    pub fn parts(&self) -> &[Part] {
        &self.parts
    }

    /// Whether it goes on until something else is heard.
    #[must_use]
    pub fn is_endless(&self) -> bool {
        matches!(self.parts.last(), Some(Part::Engine(run)) if run.ends_s().is_none())
    }

    /// Its samples, each from -1 to 1.
    #[must_use]
    pub fn samples(&self) -> PassageVoice {
        PassageVoice { parts: self.parts.clone().into_iter(), now: None }
    }
}

/// A passage that sounds.
#[derive(Debug, Clone)]
pub struct PassageVoice {
    parts: std::vec::IntoIter<Part>,
    now: Option<Voice>,
}

#[derive(Debug, Clone)]
enum Voice {
    Pause { left: u64 },
    Click(ClickVoice),
    Starter(Box<StarterVoice>),
    Engine(Box<EngineVoice>),
}

impl Voice {
    #[expect(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "a pause of some seconds; a negative one is cut to none"
    )]
    fn of(part: &Part) -> Self {
        match part {
            Part::Pause(lasts) => Self::Pause { left: (lasts.0 / DT_S) as u64 },
            Part::Click(impact) => Self::Click(ClickVoice::new(impact)),
            Part::Starter(run) => Self::Starter(Box::new(StarterVoice::new(run))),
            Part::Engine(run) => Self::Engine(Box::new(EngineVoice::new(run))),
        }
    }

    fn next(&mut self) -> Option<f64> {
        match self {
            Self::Pause { left } => {
                *left = left.checked_sub(1)?;
                Some(0.0)
            }
            Self::Click(voice) => voice.next(),
            Self::Starter(voice) => voice.next(),
            Self::Engine(voice) => voice.next(),
        }
    }
}

impl PassageVoice {
    /// Leaves out everything before the last part.
    pub(super) fn pass_to_last(&mut self) {
        if let Some(last) = self.parts.next_back() {
            self.now = Some(Voice::of(&last));
            self.parts = Vec::new().into_iter();
        }
    }
}

impl Iterator for PassageVoice {
    type Item = f64;

    fn next(&mut self) -> Option<f64> {
        loop {
            if let Some(sample) = self.now.as_mut().and_then(Voice::next) {
                return Some(loudness::limited(sample));
            }
            self.now = Some(Voice::of(&self.parts.next()?));
        }
    }
}
