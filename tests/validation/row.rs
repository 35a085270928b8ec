//! One comparison: what was published, what the program says, and how far apart the two may lie.

use super::sources::Source;

/// What kind of thing a published value is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Evidence {
    /// A figure that stands in a standard, a data sheet, a table or service information, and was
    /// read there or in a public copy.
    Published,
    /// The answer of an example that somebody else worked out in print.
    WorkedExample,
    /// Another program's answer to the same question.
    Program,
    /// Arithmetic from the definition, done by hand.
    ClosedForm,
    /// A published figure quoted from memory; nobody looked it up.
    Memory,
}

impl Evidence {
    pub const ALL: [Self; 5] =
        [Self::Published, Self::WorkedExample, Self::Program, Self::ClosedForm, Self::Memory];

    pub const fn name(self) -> &'static str {
        match self {
            Self::Published => "published",
            Self::WorkedExample => "worked example",
            Self::Program => "reference program",
            Self::ClosedForm => "closed form",
            Self::Memory => "from memory",
        }
    }

    pub const fn meaning(self) -> &'static str {
        match self {
            Self::Published => {
                "a figure in a standard, a table or service information, read there or in a public \
                 copy"
            }
            Self::WorkedExample => {
                "the answer of an example that somebody else worked out in print"
            }
            Self::Program => "another program's answer to the same question",
            Self::ClosedForm => "arithmetic from the definition, done by hand",
            Self::Memory => "a published figure that was not looked up: weak evidence",
        }
    }
}

/// What was published.
#[derive(Debug, Clone, PartialEq)]
pub enum Wanted {
    /// A value, and by how much ours may differ from it.
    Value(f64, f64),
    /// A range, its ends included.
    Range(f64, f64),
    /// A word or a code.
    Words(&'static str),
}

/// What the program says.
#[derive(Debug, Clone, PartialEq)]
pub enum Ours {
    Value(f64),
    Words(String),
}

/// One line of a table.
#[derive(Debug, Clone)]
pub struct Row {
    pub item: &'static str,
    pub source: &'static Source,
    pub wanted: Wanted,
    pub ours: Ours,
    /// Unit of both, empty for words and pure numbers.
    pub unit: &'static str,
    /// Digits behind the point with which values are shown.
    pub decimals: usize,
    /// Why this much may be missing.
    pub reason: &'static str,
    pub evidence: Evidence,
}

impl Row {
    /// Whether ours lies where it must.
    pub fn holds(&self) -> bool {
        match (&self.wanted, &self.ours) {
            (Wanted::Value(published, allowed), Ours::Value(ours)) => {
                (ours - published).abs() <= *allowed
            }
            (Wanted::Range(least, most), Ours::Value(ours)) => (*least..=*most).contains(ours),
            (Wanted::Words(published), Ours::Words(ours)) => published == ours,
            _ => false,
        }
    }

    fn with_unit(&self, digits: String) -> String {
        if self.unit.is_empty() { digits } else { format!("{digits} {}", self.unit) }
    }

    pub fn published_text(&self) -> String {
        let shown = |value: f64| digits(value, self.decimals);
        match &self.wanted {
            Wanted::Value(value, _) => self.with_unit(shown(*value)),
            Wanted::Range(least, most) => {
                self.with_unit(format!("{} to {}", shown(*least), shown(*most)))
            }
            Wanted::Words(words) => (*words).to_owned(),
        }
    }

    pub fn ours_text(&self) -> String {
        match &self.ours {
            Ours::Value(value) => self.with_unit(digits(*value, self.decimals)),
            Ours::Words(words) => words.clone(),
        }
    }

    /// Ours less what was published.
    pub fn difference_text(&self) -> String {
        match (&self.wanted, &self.ours) {
            (Wanted::Value(published, _), Ours::Value(ours)) => {
                let off = ours - published;
                let text = digits(off, self.decimals + 1);
                let sign = if off > 0.0 && text.chars().any(|c| ('1'..='9').contains(&c)) {
                    "+"
                } else {
                    ""
                };
                format!("{sign}{text}")
            }
            (Wanted::Range(..), _) => (if self.holds() { "inside" } else { "outside" }).to_owned(),
            _ => (if self.holds() { "same" } else { "other" }).to_owned(),
        }
    }

    pub fn allowed_text(&self) -> String {
        match self.wanted {
            Wanted::Value(_, allowed) if allowed < 1e-6 => format!("{allowed:e}: {}", self.reason),
            Wanted::Value(_, allowed) => format!("{allowed}: {}", self.reason),
            _ => self.reason.to_owned(),
        }
    }
}

/// Digits of a number; a minus before nothing but zeros is dropped, so that the text does not hang
/// on the last bit.
pub fn digits(value: f64, decimals: usize) -> String {
    let text = format!("{value:.decimals$}");
    match text.strip_prefix('-') {
        Some(rest) if rest.chars().all(|c| c == '0' || c == '.') => rest.to_owned(),
        _ => text,
    }
}
