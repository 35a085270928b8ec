//! Problems as they are collected: their place in the text, and the name that was likely meant.

use super::outline::Outline;
use super::problem::{MOST_PROBLEMS, Problem, ProblemKind, Thing};
use crate::vehicle::spec::Id;
use core::ops::Range;

/// Characters of the offending line and of a wrong word that are kept.
const LINE_CHARACTERS: usize = 160;
const WORD_CHARACTERS: usize = 60;
/// Least likeness (1 is equal) for a name to be offered as the one that was meant; below it, a
/// suggestion misleads more than it helps.
const LIKE_ENOUGH: f64 = 0.5;

/// Line and column, from 1, of a byte offset.
#[must_use]
pub(super) fn line_and_column(text: &str, offset: usize) -> (u32, u32) {
    let before = text.get(..offset).unwrap_or(text);
    let line = before.matches('\n').count() + 1;
    let column = before.rsplit('\n').next().unwrap_or("").chars().count() + 1;
    (u32::try_from(line).unwrap_or(u32::MAX), u32::try_from(column).unwrap_or(u32::MAX))
}

/// The line of an offset, or the part of it around the offset, with the column from 1 at which that
/// part begins.
fn line_text(text: &str, offset: usize) -> (String, u32) {
    let before = text.get(..offset).unwrap_or(text);
    let start = before.rfind('\n').map_or(0, |at| at + 1);
    let line = text.get(start..).and_then(|rest| rest.lines().next()).unwrap_or("");
    let column = text.get(start..offset).map_or(0, |part| part.chars().count());
    let skipped = if line.chars().count() > LINE_CHARACTERS {
        column.saturating_sub(LINE_CHARACTERS / 2)
    } else {
        0
    };
    let part = line
        .chars()
        .skip(skipped)
        .take(LINE_CHARACTERS)
        .map(|c| if is_unseen(c) { ' ' } else { c })
        .collect();
    (part, u32::try_from(skipped + 1).unwrap_or(u32::MAX))
}

impl<K> Problem<K> {
    /// A problem at a byte offset of a text.
    pub(super) fn at(file: &str, text: &str, offset: usize, kind: K) -> Self {
        Self::over(file, text, offset..offset, kind)
    }

    /// A problem with some bytes of a text. What goes on over the end of the line is meant by its beginning alone.
    pub(super) fn over(file: &str, text: &str, bytes: Range<usize>, kind: K) -> Self {
        let (line, column) = line_and_column(text, bytes.start);
        let meant = text.get(bytes.clone()).filter(|meant| !meant.contains('\n')).unwrap_or("");
        let length = u32::try_from(meant.chars().count()).unwrap_or(u32::MAX).max(1);
        let (text, text_from) = line_text(text, bytes.start);
        Self { file: file.to_owned(), line, column, text, text_from, length, kind }
    }
}

/// A wrong word as it is shown: not too long, without characters that cannot be seen.
#[must_use]
pub(super) fn shown(word: &str) -> String {
    word.chars().take(WORD_CHARACTERS).map(|c| if is_unseen(c) { ' ' } else { c }).collect()
}

/// Whether a character shows nothing of itself and changes what is shown around it: controls, and signs that turn the direction
/// of the text round, join or part.
fn is_unseen(c: char) -> bool {
    let turns = ['\u{61c}', '\u{feff}'].contains(&c)
        || ('\u{200b}'..='\u{200f}').contains(&c)
        || ('\u{202a}'..='\u{202e}').contains(&c)
        || ('\u{2060}'..='\u{2069}').contains(&c);
    c.is_control() || turns
}

/// The likeliest right name for a wrong one: fewest letters changed, swapped, added or left out.
#[must_use]
pub(super) fn nearest<'n>(found: &str, names: impl IntoIterator<Item = &'n str>) -> Option<String> {
    let found = shown(found);
    let mut best: Option<(f64, &str)> = None;
    for name in names {
        let likeness = strsim::normalized_damerau_levenshtein(&found, name);
        // The first of equals wins, so that the answer does not depend on anything but the order.
        if likeness >= LIKE_ENOUGH && name != found && best.is_none_or(|(most, _)| likeness > most)
        {
            best = Some((likeness, name));
        }
    }
    best.map(|(_, name)| name.to_owned())
}

/// Collects problems of one file.
pub(super) struct Findings<'t, K = ProblemKind> {
    file: &'t str,
    text: &'t str,
    outline: &'t Outline<'t>,
    found: Vec<Problem<K>>,
    left_off: usize,
}

impl<'t, K> Findings<'t, K> {
    pub(super) fn new(file: &'t str, text: &'t str, outline: &'t Outline<'t>) -> Self {
        Self { file, text, outline, found: Vec::new(), left_off: 0 }
    }

    /// Notes a problem with the value at a path.
    pub(super) fn add(&mut self, path: &str, kind: K) {
        let outline = self.outline;
        self.add_over(|| outline.bytes_of(path), kind);
    }

    /// Notes a problem with a key of a map.
    pub(super) fn add_key(&mut self, map: &str, key: &str, kind: K) {
        let outline = self.outline;
        self.add_over(
            || {
                let start = outline.start_of_key(map, key);
                start..start
            },
            kind,
        );
    }

    /// Notes a problem at a byte offset, which is asked for only if the problem is kept.
    pub(super) fn add_at(&mut self, offset: impl FnOnce() -> usize, kind: K) {
        self.add_over(
            || {
                let start = offset();
                start..start
            },
            kind,
        );
    }

    /// Notes a problem with some bytes, which are asked for only if the problem is kept.
    pub(super) fn add_over(&mut self, bytes: impl FnOnce() -> Range<usize>, kind: K) {
        if self.found.len() >= MOST_PROBLEMS {
            self.left_off += 1;
            return;
        }
        self.found.push(Problem::over(self.file, self.text, bytes(), kind));
    }

    /// What is written at a path, and where.
    pub(super) fn written(&self, path: &str) -> (usize, &'t str) {
        let bytes = self.outline.bytes_of(path);
        (bytes.start, self.text.get(bytes).unwrap_or(""))
    }

    /// The problems in the order of the text, and how many were left off.
    pub(super) fn into_problems(mut self) -> (Vec<Problem<K>>, usize) {
        self.found.sort_by_key(|problem| (problem.line, problem.column));
        (self.found, self.left_off)
    }
}

impl Findings<'_> {
    /// Notes a number outside its range. One that is not finite was noted when the text was read.
    pub(super) fn number(&mut self, path: &str, found: f64, (least, most): (f64, f64)) {
        if found.is_finite() && !(least..=most).contains(&found) {
            self.add(path, ProblemKind::OutOfRange { found, least, most });
        }
    }

    /// Notes a name that is not among those which exist.
    pub(super) fn name<'n>(
        &mut self,
        path: &str,
        thing: Thing,
        found: &Id,
        names: impl Iterator<Item = &'n Id> + Clone,
    ) {
        if names.clone().all(|name| name != found) {
            let nearest = nearest(found.as_str(), names.map(Id::as_str));
            let found = shown(found.as_str());
            self.add(path, ProblemKind::UnknownName { thing, found, nearest });
        }
    }

    /// Notes what the reader of the data lets pass: keys that a map has twice, of which it keeps the
    /// last, and numbers that are none.
    pub(super) fn whole_text(&mut self) {
        for (offset, key) in self.outline.repeated_keys() {
            let kind = ProblemKind::Repeated { thing: Thing::Entry, name: shown(key) };
            self.add_at(|| offset, kind);
        }
        for (offset, word) in self.outline.not_finite() {
            let kind = ProblemKind::NotFinite { found: shown(word) };
            self.add_over(|| offset..offset + word.len(), kind);
        }
    }
}
