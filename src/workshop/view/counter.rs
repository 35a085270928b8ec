//! The counter: what a repair and its proof are made of, with what each takes.

/// A kind of work.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Default)]
pub enum Trade {
    /// The customer's approval.
    #[default]
    Customer,
    /// Valves from the shelf.
    Parts,
    /// Cleaning what is on the bench.
    Cleaning,
    /// Wires and contacts.
    Wiring,
    /// Fuses and relays.
    Fuses,
    /// Oil and filter.
    Oil,
    /// Proof that it worked.
    Proof,
    /// The record, and handing back.
    Papers,
}

impl Trade {
    /// Every kind, in the order of the work.
    pub const ALL: [Self; 8] = [
        Self::Customer,
        Self::Parts,
        Self::Cleaning,
        Self::Wiring,
        Self::Fuses,
        Self::Oil,
        Self::Proof,
        Self::Papers,
    ];

    /// The message that names it.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::Customer => "counter-customer",
            Self::Parts => "counter-parts",
            Self::Cleaning => "counter-cleaning",
            Self::Wiring => "counter-wiring",
            Self::Fuses => "counter-fuses",
            Self::Oil => "counter-oil",
            Self::Proof => "counter-proof",
            Self::Papers => "counter-papers",
        }
    }
}

/// The counter with one kind of work on it.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct CounterView {
    /// The kind.
    pub trade: Trade,
    /// What can be done of that kind, in the order of the alphabet or of the work.
    pub jobs: Vec<JobView>,
    /// The line of the one that is chosen.
    pub chosen: Option<String>,
}

/// Something that can be done.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct JobView {
    /// Its line, or the beginning of one.
    pub line: String,
    /// What it is, for people.
    pub name: String,
    /// What it takes by the book; nothing where that shows only in the doing.
    pub price: Option<String>,
    /// Something has to be written behind it.
    pub is_start: bool,
}
