//! From a text to data, or to the problem that prevents it.
//!
//! `ron` stops at its first error and says where its reader stood. That is turned into the place of
//! the value that is wrong, and into a kind that does not depend on the wording of the reader.

use super::findings::{nearest, shown};
use super::outline::{DEEPEST, MOST_VALUES, Outline};
use super::problem::{Problem, ProblemKind, Shape, SyntaxFault};
use super::schema::{
    BROUGHT, BROUGHT_TO_VEHICLE, SCENARIO_FORMAT, SCENARIO_VERSION, ScenarioFile, VEHICLE_FORMAT,
    VEHICLE_VERSION, VehicleFile,
};
use ron::error::{Error, Position, SpannedError};
use ron::extensions::Extensions;
use serde::de::DeserializeOwned;

/// A kind of file that names its format and version.
pub(super) trait Dated: DeserializeOwned {
    /// Name of the format.
    const FORMAT: &'static str;
    /// Its newest version; every one from 1 on is read.
    const NEWEST: u32;
    /// Outermost fields that a later version than the first brought, with that version.
    const BROUGHT: &'static [(&'static str, u32)] = &[];
    /// Fields further in that a later version brought: what holds them, the field, one that has always stood beside it,
    /// and the version.
    const BROUGHT_WITHIN: &'static [(&'static str, &'static str, &'static str, u32)] = &[];
    /// Format and version that the file names.
    fn says(&self) -> (&str, u32);
}

impl Dated for ScenarioFile {
    const FORMAT: &'static str = SCENARIO_FORMAT;
    const NEWEST: u32 = SCENARIO_VERSION;
    const BROUGHT: &'static [(&'static str, u32)] = &BROUGHT;
    fn says(&self) -> (&str, u32) {
        (&self.format, self.version)
    }
}

impl Dated for VehicleFile {
    const FORMAT: &'static str = VEHICLE_FORMAT;
    const NEWEST: u32 = VEHICLE_VERSION;
    const BROUGHT_WITHIN: &'static [(&'static str, &'static str, &'static str, u32)] =
        &BROUGHT_TO_VEHICLE;
    fn says(&self) -> (&str, u32) {
        (&self.format, self.version)
    }
}

/// Reads a file's text as data. `text` is what the file says in the newest version's words, with everything at the place
/// where it is in `written`, which is what a problem shows; `outline` is that of either.
pub(super) fn parse<T: Dated>(
    file: &str,
    (written, text): (&str, &str),
    outline: &Outline<'_>,
) -> Result<T, Box<Problem>> {
    let problem = |offset, kind| Box::new(Problem::at(file, written, offset, kind));
    if let Some(offset) = outline.too_deep {
        return Err(problem(offset, ProblemKind::TooDeep { most: DEEPEST }));
    }
    if let Some(offset) = outline.too_many {
        return Err(problem(offset, ProblemKind::TooManyValues { most: MOST_VALUES }));
    }
    // An older or newer file fails on some field as well; that it is old is the better answer.
    if let Some((offset, found)) = outline.written("format")
        && found != T::FORMAT
    {
        return Err(problem(offset, wrong_format::<T>(found)));
    }
    if let Some((offset, found)) = outline.written("version")
        && let Ok(version) = found.parse::<u32>()
    {
        if !(1..=T::NEWEST).contains(&version) {
            return Err(problem(offset, wrong_version::<T>(found)));
        }
        for (field, since) in T::BROUGHT.iter().filter(|(_, since)| *since > version) {
            if let Some(offset) = outline.start_of_field(field) {
                return Err(problem(offset, ProblemKind::NewerField { field, since: *since }));
            }
        }
        for (_, field, beside, since) in T::BROUGHT_WITHIN.iter().filter(|it| it.3 > version) {
            if let Some((offset, _)) = outline.fields_beside(field, beside).first() {
                return Err(problem(*offset, ProblemKind::NewerField { field, since: *since }));
            }
        }
    }
    // The outline's depth is the tighter limit; this one holds should the two ever disagree.
    let options = ron::Options::default()
        .with_default_extension(Extensions::IMPLICIT_SOME)
        .with_recursion_limit(4 * DEEPEST);
    let data: T = options.from_str(text).map_err(|error| {
        let (offset, kind) = problem_of(&error, text, outline);
        problem(offset, kind)
    })?;
    let (format, version) = data.says();
    if format != T::FORMAT {
        return Err(problem(outline.start_of("format"), wrong_format::<T>(format)));
    }
    if !(1..=T::NEWEST).contains(&version) {
        let kind = wrong_version::<T>(&version.to_string());
        return Err(problem(outline.start_of("version"), kind));
    }
    Ok(data)
}

fn wrong_format<T: Dated>(found: &str) -> ProblemKind {
    ProblemKind::WrongFormat { found: shown(found), expected: T::FORMAT }
}

fn wrong_version<T: Dated>(found: &str) -> ProblemKind {
    ProblemKind::WrongVersion { found: shown(found), newest: T::NEWEST }
}

fn offset_of(text: &str, position: Position) -> usize {
    let mut start = 0;
    for line in text.split_inclusive('\n').take(position.line.saturating_sub(1)) {
        start += line.len();
    }
    let line = text.get(start..).unwrap_or("");
    let column = position.col.saturating_sub(1);
    start + line.char_indices().nth(column).map_or(line.len(), |(at, _)| at)
}

/// Place and kind of an error of the reader.
fn problem_of(error: &SpannedError, text: &str, outline: &Outline<'_>) -> (usize, ProblemKind) {
    let start = offset_of(text, error.span.start);
    let end = offset_of(text, error.span.end);
    let scalar = |offset: usize| outline.scalar_around(offset).unwrap_or(offset);
    let shape = |expected| (end, ProblemKind::WrongShape { expected });
    let syntax = |fault| (end, ProblemKind::Syntax { fault });
    match &error.code {
        Error::NoSuchStructField { expected, found, .. } => {
            let nearest = nearest(found, expected.iter().copied());
            let (found, expected) = (shown(found), expected.to_vec());
            (start, ProblemKind::UnknownField { found, expected, nearest })
        }
        Error::NoSuchEnumVariant { expected, found, .. } => {
            let nearest = nearest(found, expected.iter().copied());
            let (found, expected) = (shown(found), expected.to_vec());
            (start, ProblemKind::UnknownVariant { found, expected, nearest })
        }
        Error::MissingStructField { field, .. } => {
            (outline.struct_around(end).unwrap_or(end), ProblemKind::MissingField { field })
        }
        Error::DuplicateStructField { field, .. } => (start, ProblemKind::RepeatedField { field }),
        Error::IntegerOutOfBounds | Error::InvalidIntegerDigit { .. } => {
            (scalar(start), ProblemKind::NumberDoesNotFit)
        }
        // The only texts that the schema itself refuses are trouble codes.
        Error::Message(_) => {
            let start = scalar(start);
            let written = text.get(start..).unwrap_or("");
            let written = written.strip_prefix('"').unwrap_or(written);
            let found = written.split(['"', '\n']).next().unwrap_or("");
            (start, ProblemKind::NotACode { found: shown(found) })
        }
        Error::ExceededRecursionLimit => (end, ProblemKind::TooDeep { most: DEEPEST }),
        Error::ExpectedString => shape(Shape::Text),
        Error::ExpectedInteger => shape(Shape::WholeNumber),
        Error::ExpectedFloat => shape(Shape::Number),
        Error::ExpectedArray => shape(Shape::List),
        Error::ExpectedMap => shape(Shape::Map),
        Error::ExpectedOption | Error::ExpectedOptionEnd => shape(Shape::Optional),
        Error::ExpectedStructLike | Error::ExpectedNamedStructLike(_) => shape(Shape::Fields),
        Error::ExpectedDifferentStructName { .. } => {
            (start, ProblemKind::WrongShape { expected: Shape::Fields })
        }
        Error::ExpectedDifferentLength { .. } | Error::ExpectedStructLikeEnd => {
            let start = outline.struct_around(end).unwrap_or(end);
            (start, ProblemKind::WrongShape { expected: Shape::Pair })
        }
        Error::ExpectedIdentifier => match outline.scalar_around(end) {
            Some(start) => (start, ProblemKind::WrongShape { expected: Shape::Word }),
            None => syntax(SyntaxFault::NoName),
        },
        Error::ExpectedComma => comma_problem(text, outline, end),
        Error::UnderscoreAtBeginning | Error::FloatUnderscore => {
            (scalar(end), ProblemKind::Syntax { fault: SyntaxFault::BadNumber })
        }
        Error::NoSuchExtension(_) => {
            (start, ProblemKind::Syntax { fault: SyntaxFault::UnknownExtension })
        }
        Error::InvalidEscape(_) => {
            let start = text.get(..end).and_then(|before| before.rfind('\\')).unwrap_or(end);
            (start, ProblemKind::Syntax { fault: SyntaxFault::BadEscape })
        }
        _ => syntax_problem(&error.code, outline, end),
    }
}

/// A comma is due where the text has something else.
fn comma_problem(text: &str, outline: &Outline<'_>, at: usize) -> (usize, ProblemKind) {
    let syntax = |offset, fault| (offset, ProblemKind::Syntax { fault });
    // A number was read up to a part of it that no whole number has.
    if let Some(start) = outline.scalar_around(at)
        && start < at
    {
        return (start, ProblemKind::WrongShape { expected: Shape::WholeNumber });
    }
    // A text whose quote was forgotten runs on to the next quote, and there a word follows at once.
    if let Some(start) = outline.long_text_ending_at(at) {
        return syntax(start, SyntaxFault::OpenText);
    }
    match (text.get(at..).and_then(|rest| rest.chars().next()), outline.unclosed) {
        (None, Some((open, bracket))) => syntax(open, SyntaxFault::OpenBracket(bracket)),
        (Some(c), _) if [')', ']', '}'].contains(&c) => syntax(at, SyntaxFault::OtherBracket(c)),
        _ => syntax(at, SyntaxFault::NoComma),
    }
}

fn syntax_problem(error: &Error, outline: &Outline<'_>, at: usize) -> (usize, ProblemKind) {
    let fault = match error {
        Error::Eof => match outline.unclosed {
            Some((open, bracket)) => {
                return (open, ProblemKind::Syntax { fault: SyntaxFault::OpenBracket(bracket) });
            }
            None => SyntaxFault::Other,
        },
        Error::ExpectedMapColon => SyntaxFault::NoColon,
        Error::ExpectedStringEnd => {
            let start = outline.scalar_around(at).unwrap_or(at);
            return (start, ProblemKind::Syntax { fault: SyntaxFault::OpenText });
        }
        Error::UnclosedBlockComment => {
            let start = outline.open_comment.unwrap_or(at);
            return (start, ProblemKind::Syntax { fault: SyntaxFault::OpenComment });
        }
        Error::TrailingCharacters => SyntaxFault::TooLong,
        Error::InvalidIdentifier(_) | Error::SuggestRawIdentifier(_) => SyntaxFault::NoName,
        Error::ExpectedAttribute | Error::ExpectedAttributeEnd => SyntaxFault::UnknownExtension,
        _ => SyntaxFault::Other,
    };
    (at, ProblemKind::Syntax { fault })
}
