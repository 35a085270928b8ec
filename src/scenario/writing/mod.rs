//! Writing a scenario: its text is the master, and a form changes the one value that it shows.
//!
//! Model: a [`patch`] replaces one run of bytes and leaves comments and layout around it as they are; a
//! [`manuscript`] is a text with its history; [`notation`] writes values as RON; [`starters`] are texts to begin
//! with; [`keeping`] puts them on the disk whole or not at all.
//!
//! ```
//! use faultwright::scenario::writing::{manuscript::{By, Manuscript}, notation, patch};
//!
//! let mut text = Manuscript::new("(title: \"Old\", // kept\n)".to_owned());
//! let change = patch::set(text.text(), "title", &notation::text("New")).ok_or("no such struct")?;
//! text.apply(&change, By::Field("title"));
//! assert_eq!(text.text(), "(title: \"New\", // kept\n)");
//! text.undo();
//! assert_eq!(text.text(), "(title: \"Old\", // kept\n)");
//! # Ok::<(), &str>(())
//! ```

pub mod keeping;
pub mod manuscript;
pub mod notation;
pub mod patch;
pub mod starters;

use super::outline::Outline;
use super::problem::Problem;
use super::schema::ScenarioFile;
use super::{migration, syntax};

/// What a text holds, as far as it is well formed: names and ranges are not looked at.
///
/// # Errors
/// The first [`Problem`] that keeps the text from being read.
pub fn reading(file: &str, text: &str) -> Result<ScenarioFile, Box<Problem>> {
    let mut outline = Outline::of(text);
    let renewed = migration::of_scenario(text, &outline);
    if let Some(renewed) = &renewed {
        outline = Outline::of(renewed);
    }
    syntax::parse(file, (text, renewed.as_deref().unwrap_or(text)), &outline)
}

/// Byte offset of a line and a column, both from 1 and in characters; that of the end of the line or of the text
/// where they lie beyond it.
#[must_use]
pub fn offset_of(text: &str, line: u32, column: u32) -> usize {
    let before = usize::try_from(line.saturating_sub(1)).unwrap_or(usize::MAX);
    let start: usize = text.split_inclusive('\n').take(before).map(str::len).sum();
    let line = text.get(start..).and_then(|rest| rest.lines().next()).unwrap_or("");
    let column = usize::try_from(column.saturating_sub(1)).unwrap_or(usize::MAX);
    start + line.char_indices().nth(column).map_or(line.len(), |(at, _)| at)
}

#[cfg(test)]
mod tests;
