//! What may come next in a line that is being put together word by word.

use super::parse_problem::{Expected, NumberKind, ProblemKind};
use super::step_parser::{complete, parse};
use super::verbs::Verb;
use crate::session::setup::Briefing;

/// What may come next.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Following {
    /// Words, each of which completes the last one that was begun or follows it.
    pub words: Vec<String>,
    /// A number may stand here, or is being written.
    pub number: Option<NumberKind>,
    /// Free text may stand here, or is being written.
    pub text: bool,
}

/// What may come next in a line. A word that stands at the end without a space behind it counts
/// as begun; where it is whole already, or a number, what follows it is given.
#[must_use]
pub fn following(line: &str, briefing: &Briefing) -> Following {
    let before = without_begun(line);
    let begun = line.get(before.len()..).unwrap_or_default();
    let mut words = complete(line, briefing);
    let is_whole = words.iter().all(|word| word.eq_ignore_ascii_case(begun));
    if is_whole && !begun.is_empty() {
        words = complete(&format!("{line} "), briefing);
    }
    let expected = match parse(before, briefing) {
        Err(problem) => match problem.kind {
            ProblemKind::Missing { expected } => Some(expected),
            _ => None,
        },
        Ok(_) => None,
    };
    let number = match expected {
        Some(Expected::Number(kind)) => Some(kind),
        // Either one of two words or the number with which a range begins.
        _ if before.trim() == Verb::Predict.word() => Some(NumberKind::Reading),
        _ => None,
    };
    Following { words, number, text: expected == Some(Expected::Text) }
}

/// A line with a word behind it: in the place of the begun one that it completes, else after it.
#[must_use]
pub fn with_word(line: &str, word: &str) -> String {
    let before = without_begun(line);
    let begun = line.get(before.len()..).unwrap_or_default();
    if word.to_lowercase().starts_with(&begun.to_lowercase()) {
        format!("{before}{word} ")
    } else {
        format!("{line} {word} ")
    }
}

/// A line without its last word, begun or whole; what is left ends in a space or is empty.
#[must_use]
pub fn without_last_word(line: &str) -> &str {
    without_begun(line.trim_end())
}

/// A line up to its last space.
fn without_begun(line: &str) -> &str {
    let begun: usize =
        line.chars().rev().take_while(|c| !c.is_whitespace()).map(char::len_utf8).sum();
    line.get(..line.len() - begun).unwrap_or_default()
}
