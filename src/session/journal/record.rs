//! What a journal holds.

use super::line::digest_of_events;
use super::sealed::Sealed;
use crate::numerics::digest::Digest;
use crate::session::event::Event;
use crate::session::step::Step;
use serde::{Deserialize, Serialize};

/// The case that a session was about, whole, so that a journal needs no other file to be replayed.
///
/// The journal keeps it and looks into none of it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct CaseRecord {
    /// Name of the scenario.
    pub scenario_name: String,
    /// The scenario as its author wrote it.
    pub scenario_text: String,
    /// The vehicle as its author wrote it.
    pub vehicle_text: String,
    /// Seed of the draw.
    pub seed: u64,
    /// What the session is for.
    pub mode: Mode,
    /// The case under its seal. Where it is there, the texts and the name above are empty and the seed is nought.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub sealed: Option<Box<Sealed>>,
}

/// What a session is for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Mode {
    /// To learn; the apprentice marks it alone.
    Practice,
    /// To be marked by somebody else.
    Assessed,
}

/// One entry: a step that was taken, and the fingerprint of what followed.
#[derive(Debug, Clone, PartialEq)]
pub struct Entry {
    /// Number of the entry, from 1.
    pub number: u64,
    /// The step.
    pub step: Step,
    /// Fingerprint of the step's events, by [`digest_of_events`].
    pub events: Digest,
    /// Chain value: fingerprint of this entry and all before it.
    pub chain: Digest,
}

impl Entry {
    /// Whether these are the events that followed when the step was taken; a replay asks this.
    #[must_use]
    pub fn agrees_with(&self, events: &[Event]) -> bool {
        digest_of_events(events).is_ok_and(|digest| digest == self.events)
    }
}

/// A journal as read.
#[derive(Debug, Clone, PartialEq)]
pub struct Recorded {
    /// Version of the format in which the file was written.
    pub version: u32,
    /// Version of the program that wrote it.
    pub program: String,
    /// The case.
    pub case: CaseRecord,
    /// Chain value of the header.
    pub header_chain: Digest,
    /// The whole entries, in order.
    pub entries: Vec<Entry>,
    /// What stood behind the last whole entry.
    pub torn: Option<TornTail>,
}

impl Recorded {
    /// Chain value of the last whole entry, or of the header where there is none.
    ///
    /// Kept outside the file (on a printed receipt, by an assessor), it is what shows that the
    /// file was rewritten or shortened.
    #[must_use]
    pub fn last_chain(&self) -> Digest {
        self.entries.last().map_or(self.header_chain, |entry| entry.chain)
    }
}

/// The beginning of an entry whose writing was cut off. Its step was never acknowledged: the
/// apprentice has seen nothing that followed from it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct TornTail {
    /// Number that the entry would have had.
    pub entry: u64,
    /// Where in the file the tail begins, in bytes from the start.
    pub offset: u64,
    /// The tail.
    pub bytes: Vec<u8>,
}

/// How much a reader puts up with.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum ReadMode {
    /// For marking: the journal must end with a whole entry, and nobody may be writing it.
    Strict,
    /// For looking: a torn tail is told in [`Recorded::torn`], and a session may be going on.
    AllowTorn,
}
