//! Reads a typed line word by word and keeps what could follow at its end.

use super::parse_problem::{Expected, ParseProblem, ProblemKind};
use super::place::PlaceKind;
use crate::session::setup::Briefing;
use crate::vehicle::spec::Id;

/// A mistyped word is compared up to this length; a longer one is no slip of the finger.
const LONGEST_COMPARED: usize = 48;
/// Suggestions for a mistyped word.
const SUGGESTIONS: usize = 3;

/// A word of a line.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct TypedWord<'a> {
    pub(super) text: &'a str,
    /// In characters from 1.
    pub(super) column: usize,
    /// In bytes.
    start: usize,
}

/// A line that is being read.
#[derive(Debug)]
pub(super) struct WordReader<'a> {
    line: &'a str,
    words: Vec<TypedWord<'a>>,
    next: usize,
    followers: Vec<String>,
}

impl<'a> WordReader<'a> {
    /// Splits a line at white space; a word that begins with `#` begins a comment.
    pub(super) fn new(line: &'a str) -> Self {
        let mut words = Vec::new();
        let mut rest = line;
        let mut start = 0;
        let mut column = 1;
        loop {
            let word_start = rest.len() - rest.trim_start().len();
            let (space, after) = rest.split_at(word_start);
            let text = after.split(char::is_whitespace).next().unwrap_or_default();
            column += space.chars().count();
            start += word_start;
            if text.is_empty() || text.starts_with('#') {
                break;
            }
            words.push(TypedWord { text, column, start });
            column += text.chars().count();
            start += text.len();
            rest = line.get(start..).unwrap_or_default();
        }
        Self { line, words, next: 0, followers: Vec::new() }
    }

    /// Whether nothing is left.
    pub(super) fn is_at_end(&self) -> bool {
        self.next >= self.words.len()
    }

    /// What could have followed at the end of the line.
    pub(super) fn into_followers(self) -> Vec<String> {
        self.followers
    }

    /// The text of the next word, which stays there.
    pub(super) fn peek(&self) -> Option<&'a str> {
        self.words.get(self.next).map(|word| word.text)
    }

    /// Takes the next word.
    pub(super) fn take(&mut self) -> Option<TypedWord<'a>> {
        let word = self.words.get(self.next).copied();
        self.next += usize::from(word.is_some());
        word
    }

    /// One of a list of words, which has to stand here.
    pub(super) fn choose<T: Copy>(&mut self, options: &[(&str, T)]) -> Result<T, ParseProblem> {
        match self.choose_if_any(options)? {
            Some(chosen) => Ok(chosen),
            None => Err(self.missing(Expected::Word)),
        }
    }

    /// One of a list of words, or the end of the line.
    pub(super) fn choose_if_any<T: Copy>(
        &mut self,
        options: &[(&str, T)],
    ) -> Result<Option<T>, ParseProblem> {
        let names: Vec<&str> = options.iter().map(|(name, _)| *name).collect();
        let Some(word) = self.take() else {
            self.followers.extend(names.iter().map(ToString::to_string));
            return Ok(None);
        };
        match find(word.text, &names) {
            Found::One(index) => Ok(options.get(index).map(|(_, meaning)| *meaning)),
            found => {
                Err(problem(word, found, &names, |nearest| ProblemKind::UnknownWord { nearest }))
            }
        }
    }

    /// A fixed word that has to stand here.
    pub(super) fn expect(&mut self, word: &str) -> Result<(), ParseProblem> {
        self.choose(&[(word, ())])
    }

    /// A place of a kind.
    pub(super) fn place(
        &mut self,
        kind: PlaceKind,
        briefing: &Briefing,
    ) -> Result<Id, ParseProblem> {
        self.place_among(kind, &kind.places(briefing), briefing)
    }

    /// One of a list of places of a kind.
    pub(super) fn place_among(
        &mut self,
        kind: PlaceKind,
        places: &[Id],
        briefing: &Briefing,
    ) -> Result<Id, ParseProblem> {
        let names: Vec<&str> = places.iter().map(Id::as_str).collect();
        let Some(word) = self.take() else {
            self.followers.extend(names.iter().map(ToString::to_string));
            return Err(self.missing(Expected::Place(kind)));
        };
        match find(word.text, &names) {
            Found::One(index) => {
                Ok(places.get(index).cloned().unwrap_or_else(|| Id::from(word.text)))
            }
            found => Err(problem(word, found, &names, |nearest| ProblemKind::NoSuchPlace {
                what: kind,
                nearest,
                known_as: known_as(word.text, kind, briefing),
            })),
        }
    }

    /// Everything from here to the end of the line as it stands, comment signs included.
    pub(super) fn rest(&mut self) -> &'a str {
        let taken = self.words.get(..self.next).and_then(<[_]>::last);
        self.next = self.words.len();
        let start = taken.map_or(0, |word| word.start + word.text.len());
        self.line.get(start..).unwrap_or_default().trim()
    }

    /// The problem that the line ends here.
    pub(super) fn missing(&self, expected: Expected) -> ParseProblem {
        let column =
            self.words.last().map_or(1, |word| word.column + word.text.chars().count() + 1);
        ParseProblem {
            column,
            found: String::new(),
            kind: ProblemKind::Missing { expected },
            allowed: self.followers.clone(),
        }
    }

    /// Refuses words behind the end of a step.
    pub(super) fn finish(&mut self) -> Result<(), ParseProblem> {
        match self.take() {
            None => Ok(()),
            Some(word) => Err(ParseProblem {
                column: word.column,
                found: word.text.to_owned(),
                kind: ProblemKind::Extra,
                allowed: Vec::new(),
            }),
        }
    }
}

/// What a typed word stands for in a list.
#[derive(Debug, Clone, PartialEq, Eq)]
enum Found {
    None,
    One(usize),
    Several(Vec<usize>),
}

/// Looks a word up: as it stands, then in any case, then as an abbreviation. A whole word wins
/// over the longer ones that begin with it.
fn find(typed: &str, names: &[&str]) -> Found {
    if let Some(index) = names.iter().position(|name| *name == typed) {
        return Found::One(index);
    }
    // Both signs for ohm, the letter and the unit, stand for the word.
    let typed = typed.replace(['\u{03A9}', '\u{2126}'], "ohms").to_lowercase();
    let those = |fits: &dyn Fn(&str) -> bool| -> Vec<usize> {
        let fitting = names.iter().enumerate().filter(|(_, name)| fits(&name.to_lowercase()));
        fitting.map(|(index, _)| index).collect()
    };
    let same = those(&|name| name == typed);
    let fitting = if same.is_empty() { those(&|name| name.starts_with(&typed)) } else { same };
    match fitting.as_slice() {
        [] => Found::None,
        [only] => Found::One(*only),
        _ => Found::Several(fitting),
    }
}

fn problem(
    word: TypedWord<'_>,
    found: Found,
    names: &[&str],
    unknown: impl Fn(Vec<String>) -> ProblemKind,
) -> ParseProblem {
    let kind = match found {
        Found::Several(indices) => ProblemKind::Ambiguous {
            options: indices
                .into_iter()
                .filter_map(|index| names.get(index))
                .map(ToString::to_string)
                .collect(),
        },
        Found::None | Found::One(_) => unknown(nearest(word.text, names)),
    };
    ParseProblem {
        column: word.column,
        found: word.text.to_owned(),
        kind,
        allowed: names.iter().map(ToString::to_string).collect(),
    }
}

/// The words that a slip of the finger may have meant: at most one letter in three is wrong, and
/// not every one.
fn nearest(typed: &str, names: &[&str]) -> Vec<String> {
    let typed = typed.to_lowercase();
    let length = typed.chars().count();
    if length > LONGEST_COMPARED {
        return Vec::new();
    }
    let mut near: Vec<(usize, &str)> = names
        .iter()
        .map(|name| (strsim::damerau_levenshtein(&typed, &name.to_lowercase()), *name))
        .filter(|(distance, _)| *distance <= (length / 3).max(1) && *distance < length)
        .collect();
    near.sort_unstable();
    // A word that is clearly nearest stands alone.
    let limit = near.first().map_or(0, |(distance, _)| distance + 1);
    near.retain(|(distance, _)| *distance <= limit);
    near.into_iter().take(SUGGESTIONS).map(|(_, name)| name.to_owned()).collect()
}

/// The kind of place that a name belongs to when it is not of the kind asked for.
fn known_as(typed: &str, asked: PlaceKind, briefing: &Briefing) -> Option<PlaceKind> {
    PlaceKind::ALL
        .into_iter()
        .filter(|kind| *kind != asked)
        .find(|kind| kind.places(briefing).iter().any(|id| id.as_str().eq_ignore_ascii_case(typed)))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn texts(line: &str) -> Vec<(&str, usize)> {
        WordReader::new(line).words.iter().map(|word| (word.text, word.column)).collect()
    }

    #[test]
    fn words_have_columns_in_characters_and_comments_end_a_line() {
        assert_eq!(texts("  key   on # later"), [("key", 3), ("on", 9)]);
        assert_eq!(texts("é\u{3000}on"), [("é", 1), ("on", 3)]);
        assert_eq!(texts("a#b"), [("a#b", 1)]);
        assert_eq!(texts("# all"), []);
        assert_eq!(texts(" \t "), []);
    }

    #[test]
    fn a_whole_word_wins_then_any_case_then_an_abbreviation() {
        let names = ["valve", "valve-feed", "Valve", "seal"];
        assert_eq!(find("valve", &names), Found::One(0));
        assert_eq!(find("Valve", &names), Found::One(2));
        assert_eq!(find("VALVE", &names), Found::Several(vec![0, 2]));
        assert_eq!(find("valve-", &names), Found::One(1));
        assert_eq!(find("S", &names), Found::One(3));
        assert_eq!(find("x", &names), Found::None);
    }

    #[test]
    fn the_nearest_words_are_those_of_a_slip() {
        let names = ["measure", "mend", "remove"];
        assert_eq!(nearest("mesaure", &names), ["measure"]);
        assert_eq!(nearest("mnd", &names), ["mend"]);
        assert_eq!(nearest("qqq", &names), [""; 0]);
        assert_eq!(nearest(&"m".repeat(500), &names), [""; 0]);
    }
}
