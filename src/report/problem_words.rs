//! Problems of scenario files in words: place, cause and remedy, and the line with a caret.
//!
//! This stands here and not with the other words because `scenario` and `wording` do not see each
//! other.

mod doubtful;
mod excerpt;
mod form;
mod kinds;
mod names;

#[cfg(test)]
mod tests;

use crate::scenario::draw::DrawError;
use crate::scenario::load::LoadError;
use crate::scenario::problem::{FileTrouble, Problem};
use crate::scenario::seal::{SHORTEST_PASSPHRASE, SealError};
use crate::scenario::warning::Warning;
use crate::wording::catalogue::Words;
use crate::wording::quoted;
use std::path::Path;

pub use doubtful::names_of_faults;

/// Every problem of a scenario that could not be loaded, one paragraph each, and last how many more
/// there are.
#[must_use]
pub fn load_error(error: &LoadError, words: &Words) -> Vec<String> {
    match error {
        LoadError::Unreadable { file, trouble } => vec![file_trouble(file, *trouble, words)],
        LoadError::Problems { problems, left_off } => {
            let mut paragraphs: Vec<String> =
                problems.iter().map(|problem| paragraph(problem, words)).collect();
            if *left_off > 0 {
                paragraphs.push(words.say("flaws-left-off", &[("count", (*left_off).into())]));
            }
            paragraphs
        }
    }
}

/// Why a file as a whole could not be read.
#[must_use]
pub fn file_trouble(file: &str, trouble: FileTrouble, words: &Words) -> String {
    let place = place_in(file, trouble);
    let said = trouble_words(trouble, words);
    words.say("flaw-in-file", &[("file", place.into()), ("said", said.into())])
}

/// Why no case could be dealt.
#[must_use]
pub fn draw_error(error: &DrawError, words: &Words) -> String {
    let DrawError::NoneAccepted { attempts, without_complaint, not_separable } = *error;
    let text = words.say("draw-none-accepted", &[("attempts", attempts.into())]);
    format!("{text} {}", refusals(without_complaint, not_separable, words)).trim_end().to_owned()
}

/// Why cases were refused: so many without a complaint, so many that cannot be told from others.
#[must_use]
pub fn refusals(without_complaint: u32, not_separable: u32, words: &Words) -> String {
    let mut sentences = Vec::new();
    for (key, count) in
        [("draw-without-complaint", without_complaint), ("draw-not-separable", not_separable)]
    {
        if count > 0 {
            sentences.push(words.say(key, &[("count", count.into())]));
        }
    }
    sentences.join(" ")
}

/// What is wrong and what to do, without its place, for whoever shows the text itself.
#[must_use]
pub fn said(problem: &Problem, words: &Words) -> String {
    kinds::said(&problem.kind, words)
}

/// That what was asked for would tell a sealed case.
#[must_use]
pub fn sealed(path: &Path, words: &Words) -> String {
    words.say("trouble-sealed", &[("path", quoted::path(path).into())])
}

/// Why a seal could not be made, read or opened.
#[must_use]
pub fn seal_error(error: SealError, path: &Path, words: &Words) -> String {
    let path = || ("path", quoted::path(path).into());
    match error {
        SealError::NotSealed => words.say("seal-none", &[path()]),
        SealError::OtherVersion { found } => {
            words.say("seal-other-version", &[path(), ("found", found.to_string().into())])
        }
        SealError::Damaged => words.say("seal-damaged", &[path()]),
        SealError::NotOpened => words.say("seal-not-opened", &[path()]),
        SealError::ShortPassphrase => {
            words.say("seal-short-passphrase", &[("least", SHORTEST_PASSPHRASE.into())])
        }
    }
}

/// One problem: a line with place, cause and remedy, and below it the line of the file.
fn paragraph(problem: &Problem, words: &Words) -> String {
    placed("flaw", problem, kinds::said(&problem.kind, words), words)
}

/// One warning in the same form. `currency` is that of the scenario.
#[must_use]
pub fn warning(warning: &Warning, currency: &str, words: &Words) -> String {
    placed("doubt", warning, doubtful::said(&warning.kind, currency, words), words)
}

/// A warning without its place.
#[must_use]
pub fn doubt(warning: &Warning, currency: &str, words: &Words) -> String {
    doubtful::said(&warning.kind, currency, words)
}

/// What is said of a place, and below it the line of the file.
fn placed<K>(key: &str, problem: &Problem<K>, said: String, words: &Words) -> String {
    let mut text = words.say(
        key,
        &[
            ("file", quoted::harmless(&problem.file).into()),
            ("line", problem.line.into()),
            ("column", problem.column.into()),
            ("said", said.into()),
        ],
    );
    for line in excerpt::lines(problem) {
        text.push('\n');
        text.push_str(&line);
    }
    text
}

/// The file, with the place in it where the trouble has one.
fn place_in(file: &str, trouble: FileTrouble) -> String {
    let file = quoted::harmless(file);
    match trouble {
        FileTrouble::NotUtf8 { line, column } => format!("{file}:{line}:{column}"),
        _ => file,
    }
}

fn trouble_words(trouble: FileTrouble, words: &Words) -> String {
    let plain = |key: &str| words.say(key, &[]);
    match trouble {
        FileTrouble::NotFound => plain("unreadable-not-found"),
        FileTrouble::NotAFile => plain("unreadable-not-a-file"),
        FileTrouble::NotAllowed => plain("unreadable-not-allowed"),
        FileTrouble::TooLarge { most } => {
            words.say("unreadable-too-large", &[("most", (most / 1024).into())])
        }
        FileTrouble::NotUtf8 { .. } => plain("unreadable-not-utf8"),
        FileTrouble::Failed { number: None } => plain("unreadable-failed"),
        FileTrouble::Failed { number: Some(number) } => {
            words.say("unreadable-failed-number", &[("number", number.into())])
        }
    }
}
