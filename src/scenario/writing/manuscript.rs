//! A text with its history.

use super::patch::Patch;

/// Changes that can be taken back; the oldest go first.
const MOST_KEPT: usize = 2_000;

/// Who makes a change. Changes of one field, and letters that are typed one after the other, are taken back together.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum By<'f> {
    /// Somebody who types in the text.
    Typing,
    /// The field of a form that shows the value at this path.
    Field(&'f str),
    /// Anything that is taken back by itself.
    Itself,
}

/// What makes changes belong together.
#[derive(Debug, Clone, PartialEq, Eq)]
enum Together {
    Typing,
    Field(String),
    Itself,
}

/// One replaced run of bytes.
#[derive(Debug, Clone, PartialEq, Eq)]
struct Change {
    at: usize,
    before: String,
    after: String,
}

/// A text that can be changed, and every change taken back and made again.
#[derive(Debug, Clone)]
pub struct Manuscript {
    text: String,
    saved: String,
    past: Vec<(Together, Vec<Change>)>,
    future: Vec<(Together, Vec<Change>)>,
    /// The next change begins a group of its own.
    is_parted: bool,
}

impl Manuscript {
    /// A text as it is on the disk.
    #[must_use]
    pub fn new(text: String) -> Self {
        let saved = text.clone();
        Self { text, saved, past: Vec::new(), future: Vec::new(), is_parted: true }
    }

    /// A text that differs from the one on the disk, which is `saved`.
    #[must_use]
    pub fn unsaved(text: String, saved: String) -> Self {
        Self { saved, ..Self::new(text) }
    }

    /// The text.
    #[must_use]
    pub fn text(&self) -> &str {
        &self.text
    }

    /// The text as it was saved last.
    #[must_use]
    pub fn saved(&self) -> &str {
        &self.saved
    }

    /// Whether it differs from what was saved.
    #[must_use]
    pub fn is_changed(&self) -> bool {
        self.text != self.saved
    }

    /// This text, which it was a moment ago, has been saved.
    pub fn is_saved(&mut self, text: String) {
        self.saved = text;
        self.is_parted = true;
    }

    /// Whether a change can be taken back, and whether one can be made again.
    #[must_use]
    pub const fn can(&self) -> (bool, bool) {
        (!self.past.is_empty(), !self.future.is_empty())
    }

    /// Makes a change.
    pub fn apply(&mut self, patch: &Patch, by: By<'_>) {
        let Some(before) = self.text.get(patch.span.clone()) else { return };
        let change =
            Change { at: patch.span.start, before: before.to_owned(), after: patch.with.clone() };
        self.make(change, by);
    }

    /// Takes over a text that somebody has typed in.
    pub fn rewrite(&mut self, text: &str, by: By<'_>) {
        let change = difference(&self.text, text);
        self.make(change, by);
    }

    fn make(&mut self, change: Change, by: By<'_>) {
        if change.before == change.after {
            return;
        }
        change.forth(&mut self.text);
        self.future.clear();
        let together = match by {
            By::Typing => Together::Typing,
            By::Field(path) => Together::Field(path.to_owned()),
            By::Itself => Together::Itself,
        };
        let is_parted = std::mem::take(&mut self.is_parted);
        match self.past.last_mut() {
            Some((before, group)) if !is_parted && belongs(before, group, &together, &change) => {
                group.push(change);
            }
            _ => self.past.push((together, vec![change])),
        }
        if self.past.len() > MOST_KEPT {
            self.past.remove(0);
        }
    }

    /// Takes the last change back; the byte offset at which it was.
    pub fn undo(&mut self) -> Option<usize> {
        let group = self.past.pop()?;
        for change in group.1.iter().rev() {
            change.back(&mut self.text);
        }
        let at = group.1.first().map(|change| change.at + change.before.len());
        self.future.push(group);
        self.is_parted = true;
        at
    }

    /// Makes the change again that was taken back last; the byte offset at which it is.
    pub fn redo(&mut self) -> Option<usize> {
        let group = self.future.pop()?;
        for change in &group.1 {
            change.forth(&mut self.text);
        }
        let at = group.1.last().map(|change| change.at + change.after.len());
        self.past.push(group);
        self.is_parted = true;
        at
    }
}

impl Change {
    fn forth(&self, text: &mut String) {
        text.replace_range(self.at..self.at + self.before.len(), &self.after);
    }

    fn back(&self, text: &mut String) {
        text.replace_range(self.at..self.at + self.after.len(), &self.before);
    }
}

/// Whether a change is taken back together with those before it.
fn belongs(before: &Together, group: &[Change], together: &Together, change: &Change) -> bool {
    let Some(last) = group.last() else { return false };
    match (before, together) {
        (Together::Field(one), Together::Field(other)) => one == other,
        (Together::Typing, Together::Typing) => {
            let goes_on = change.before.is_empty()
                && last.before.is_empty()
                && change.at == last.at + last.after.len()
                // A word or a line at a time.
                && (!last.after.ends_with(char::is_whitespace)
                    || change.after.starts_with(char::is_whitespace));
            let goes_back = change.after.is_empty()
                && last.after.is_empty()
                && change.at + change.before.len() == last.at;
            goes_on || goes_back
        }
        _ => false,
    }
}

/// The one run in which two texts differ.
fn difference(before: &str, after: &str) -> Change {
    let start: usize = before
        .chars()
        .zip(after.chars())
        .take_while(|(one, other)| one == other)
        .map(|(one, _)| one.len_utf8())
        .sum();
    let (old, new) = (before.get(start..).unwrap_or(""), after.get(start..).unwrap_or(""));
    let end: usize = old
        .chars()
        .rev()
        .zip(new.chars().rev())
        .take_while(|(one, other)| one == other)
        .map(|(one, _)| one.len_utf8())
        .sum();
    let cut = |text: &str| text.get(..text.len() - end).unwrap_or("").to_owned();
    Change { at: start, before: cut(old), after: cut(new) }
}
