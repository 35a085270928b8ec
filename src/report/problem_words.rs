//! Problems of scenario files in words: place, cause and remedy, and the line with a caret.
//!
//! This stands here and not with the other words because `scenario` and `wording` do not see each
//! other.

mod excerpt;
mod form;
mod kinds;
mod names;

#[cfg(test)]
mod tests;

use crate::scenario::draw::DrawError;
use crate::scenario::load::LoadError;
use crate::scenario::problem::{FileTrouble, Problem};
use crate::wording::catalogue::Words;
use crate::wording::quoted;

/// Every problem of a scenario that could not be loaded, one paragraph each, and last how many more
/// there are.
#[must_use]
pub fn load_error(error: &LoadError, words: &Words) -> Vec<String> {
    match error {
        LoadError::Unreadable { file, trouble } => {
            let place = place_in(file, *trouble);
            let said = trouble_words(*trouble, words);
            vec![words.say("flaw-in-file", &[("file", place.into()), ("said", said.into())])]
        }
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

/// Why no case could be dealt.
#[must_use]
pub fn draw_error(error: &DrawError, words: &Words) -> String {
    let DrawError::NoneAccepted { attempts, without_complaint, not_separable } = *error;
    let mut text = words.say("draw-none-accepted", &[("attempts", attempts.into())]);
    let mut add = |count: u32, sentence: String| {
        if count > 0 {
            text.push(' ');
            text.push_str(&sentence);
        }
    };
    let count = [("count", without_complaint.into())];
    add(without_complaint, words.say("draw-without-complaint", &count));
    let count = [("count", not_separable.into())];
    add(not_separable, words.say("draw-not-separable", &count));
    text
}

/// One problem: a line with place, cause and remedy, and below it the line of the file.
fn paragraph(problem: &Problem, words: &Words) -> String {
    let mut text = words.say(
        "flaw",
        &[
            ("file", quoted::harmless(&problem.file).into()),
            ("line", problem.line.into()),
            ("column", problem.column.into()),
            ("said", kinds::said(&problem.kind, words).into()),
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
