//! What is wrong with a typed step, as data and in one sentence with place and remedy.

use super::catalogue::Words;
use super::place::PlaceKind;
use super::quoted;

/// Why a typed line is no step.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ParseProblem {
    /// Where it is, in characters from 1.
    pub column: usize,
    /// The word that stands there; empty at the end of the line.
    pub found: String,
    /// What is wrong.
    pub kind: ProblemKind,
    /// Words that could stand there, where they are words of a list.
    pub allowed: Vec<String>,
}

/// What is wrong with a word.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum ProblemKind {
    /// A word that cannot stand there.
    UnknownWord {
        /// The nearest words that can.
        nearest: Vec<String>,
    },
    /// An abbreviation of several words.
    Ambiguous {
        /// Those words.
        options: Vec<String>,
    },
    /// The line ends too early.
    Missing {
        /// What has to follow.
        expected: Expected,
    },
    /// The step was complete before this word.
    Extra,
    /// A number that cannot stand there.
    BadNumber {
        /// What is asked for.
        wanted: NumberKind,
    },
    /// A name that the vehicle does not have.
    NoSuchPlace {
        /// What kind of name is asked for.
        what: PlaceKind,
        /// The nearest names.
        nearest: Vec<String>,
        /// What the name stands for elsewhere, if it is one.
        known_as: Option<PlaceKind>,
    },
}

/// What has to follow.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Expected {
    /// One of the words that are allowed.
    Word,
    /// A name.
    Place(PlaceKind),
    /// A number.
    Number(NumberKind),
    /// Free text.
    Text,
}

/// What a number means.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum NumberKind {
    /// Whole per cent, 0 to 100.
    Percent,
    /// Whole seconds, at least 1.
    Seconds,
    /// A reading in volts, ohms or amps.
    Reading,
    /// A reading not below the one before it.
    NotBelowLeast,
}

impl ParseProblem {
    /// The problem in one sentence with its place and remedy.
    #[must_use]
    pub fn sentence(&self, words: &Words) -> String {
        let found = quoted::word(&self.found);
        let wrong = match &self.kind {
            ProblemKind::UnknownWord { .. } => {
                words.say("problem-unknown-word", &[("found", found.into())])
            }
            ProblemKind::Ambiguous { .. } => {
                words.say("problem-ambiguous", &[("found", found.into())])
            }
            ProblemKind::Missing { expected } => missing(*expected, words),
            ProblemKind::Extra => words.say("problem-extra", &[("found", found.into())]),
            ProblemKind::BadNumber { wanted } => {
                let wanted = number_kind(*wanted, words);
                let arguments = [("found", found.into()), ("wanted", wanted.into())];
                words.say("problem-bad-number", &arguments)
            }
            ProblemKind::NoSuchPlace { what, known_as: Some(kind), .. } => words.say(
                "problem-other-kind",
                &[
                    ("found", found.into()),
                    ("is", kind.name(words).into()),
                    ("what", what.name(words).into()),
                ],
            ),
            ProblemKind::NoSuchPlace { what, known_as: None, .. } => words.say(
                "problem-no-such-place",
                &[("found", found.into()), ("what", what.name(words).into())],
            ),
        };
        let remedy = self.remedy(words);
        words.say(
            "problem",
            &[("column", self.column.into()), ("wrong", wrong.into()), ("remedy", remedy.into())],
        )
    }

    fn remedy(&self, words: &Words) -> String {
        let (key, list) = match &self.kind {
            ProblemKind::UnknownWord { nearest } | ProblemKind::NoSuchPlace { nearest, .. }
                if !nearest.is_empty() =>
            {
                ("remedy-nearest", nearest)
            }
            ProblemKind::Ambiguous { options } => ("remedy-options", options),
            ProblemKind::Extra => return words.say("remedy-end", &[]),
            ProblemKind::BadNumber { wanted }
            | ProblemKind::Missing { expected: Expected::Number(wanted) } => {
                return words.say(number_remedy_key(*wanted), &[]);
            }
            ProblemKind::Missing { expected: Expected::Text } => {
                return words.say("remedy-text", &[]);
            }
            _ if self.allowed.is_empty() => return words.say("remedy-none", &[]),
            _ => ("remedy-allowed", &self.allowed),
        };
        let mut remedy = words.say(key, &[("list", quoted::one_of(list, words).into())]);
        if key == "remedy-nearest" && self.allowed.len() > list.len() {
            remedy.push(' ');
            let allowed = quoted::one_of(&self.allowed, words);
            remedy.push_str(&words.say("remedy-allowed", &[("list", allowed.into())]));
        }
        remedy
    }
}

fn missing(expected: Expected, words: &Words) -> String {
    let what = match expected {
        Expected::Word => return words.say("problem-missing-word", &[]),
        Expected::Text => words.say("expected-text", &[]),
        Expected::Place(kind) => kind.name(words),
        Expected::Number(kind) => number_kind(kind, words),
    };
    words.say("problem-missing", &[("what", what.into())])
}

fn number_kind(kind: NumberKind, words: &Words) -> String {
    let key = match kind {
        NumberKind::Percent => "number-percent",
        NumberKind::Seconds => "number-seconds",
        NumberKind::Reading => "number-reading",
        NumberKind::NotBelowLeast => "number-not-below-least",
    };
    words.say(key, &[])
}

const fn number_remedy_key(kind: NumberKind) -> &'static str {
    match kind {
        NumberKind::Percent => "remedy-percent",
        NumberKind::Seconds => "remedy-seconds",
        NumberKind::Reading => "remedy-reading",
        NumberKind::NotBelowLeast => "remedy-not-below-least",
    }
}
