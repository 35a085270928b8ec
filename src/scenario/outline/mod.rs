//! Where each value of a RON text stands.
//!
//! Model: one pass over the text notes the start and end of every value as a tree of fields and
//! items, without knowing what they mean. The reader of the data itself is `ron`; this outline only
//! gives problems their line and column. Limits: it stops, with what it has, at the first thing
//! that is no RON, at [`DEEPEST`] levels and at
//! [`MOST_VALUES`] values.

mod spots;
mod walk;

pub(super) use spots::{Member, Members};

use core::ops::Range;
use std::collections::BTreeSet;

/// Levels of brackets that a file may have; the deepest right file has seven.
pub(super) const DEEPEST: usize = 32;

/// Values that a file may have; the largest that the program carries has some 1,500.
pub(super) const MOST_VALUES: usize = 20_000;

/// Values of a text with their positions.
#[derive(Debug)]
pub(super) struct Outline<'t> {
    text: &'t str,
    nodes: Vec<Node<'t>>,
    /// Number of the outermost value.
    root: Option<usize>,
    /// Where brackets nest deeper than [`DEEPEST`].
    pub(super) too_deep: Option<usize>,
    /// Where the first value stands that is one too many.
    pub(super) too_many: Option<usize>,
    /// The innermost bracket that is still open when the text ends.
    pub(super) unclosed: Option<(usize, char)>,
    /// Where a comment begins that is never closed.
    pub(super) open_comment: Option<usize>,
}

#[derive(Debug)]
struct Node<'t> {
    start: usize,
    end: usize,
    body: Body<'t>,
}

#[derive(Debug)]
enum Body<'t> {
    /// A number or a name.
    Word,
    /// A text in quotes.
    Text,
    /// Fields of a struct or entries of a map.
    Fields { entries: Vec<Entry<'t>>, is_map: bool },
    /// Items of a list or of a tuple.
    Items(Vec<usize>),
}

#[derive(Debug)]
struct Entry<'t> {
    key: &'t str,
    key_start: usize,
    /// Where the value ends, with the bracket of a `Some(...)` around it.
    end: usize,
    value: usize,
}

impl<'t> Outline<'t> {
    /// Outlines a text.
    pub(super) fn of(text: &'t str) -> Self {
        walk::outline(Self {
            text,
            nodes: Vec::new(),
            root: None,
            too_deep: None,
            too_many: None,
            unclosed: None,
            open_comment: None,
        })
    }

    /// Byte offset of the value at a path such as `faults[3].place`; of the nearest value around it
    /// where the path leads to nothing that is written, such as a field with a default.
    pub(super) fn start_of(&self, path: &str) -> usize {
        self.bytes_of(path).start
    }

    /// The bytes of a number, name or text at a path; where something else is there, or the path leads to nothing
    /// that is written, an empty range at the start of the nearest value around it.
    pub(super) fn bytes_of(&self, path: &str) -> Range<usize> {
        let Some(mut node) = self.root.and_then(|root| self.nodes.get(root)) else {
            return 0..0;
        };
        for step in steps(path) {
            let next = match (&node.body, step) {
                (Body::Fields { entries, .. }, Step::Field(name)) => {
                    // The last of equal keys is the one that counts.
                    entries.iter().rev().find(|entry| entry.key == name).map(|entry| entry.value)
                }
                (Body::Items(items), Step::Item(index)) => items.get(index).copied(),
                _ => None,
            };
            match next.and_then(|number| self.nodes.get(number)) {
                Some(found) => node = found,
                None => return node.start..node.start,
            }
        }
        match node.body {
            Body::Word | Body::Text => node.start..node.end,
            _ => node.start..node.start,
        }
    }

    /// Byte offset of the key at a path whose last step is a key of a map.
    pub(super) fn start_of_key(&self, map: &str, key: &str) -> usize {
        let around = self.start_of(map);
        self.nodes
            .iter()
            .filter(|node| node.start == around)
            .find_map(|node| match &node.body {
                Body::Fields { entries, .. } => {
                    entries.iter().find(|entry| entry.key == key).map(|entry| entry.key_start)
                }
                _ => None,
            })
            .unwrap_or(around)
    }

    /// Byte offset of a field's name in the outermost struct, where it is there.
    pub(super) fn start_of_field(&self, field: &str) -> Option<usize> {
        let Body::Fields { entries, .. } = &self.nodes.get(self.root?)?.body else {
            return None;
        };
        entries.iter().find(|entry| entry.key == field).map(|entry| entry.key_start)
    }

    /// Every field of one name in a struct that has a field of another name too: where it begins, and where its value ends.
    pub(super) fn fields_beside(&self, field: &str, beside: &str) -> Vec<(usize, usize)> {
        let mut found = Vec::new();
        for node in &self.nodes {
            let Body::Fields { entries, is_map: false } = &node.body else {
                continue;
            };
            if entries.iter().any(|entry| entry.key == beside) {
                let of_name = entries.iter().filter(|entry| entry.key == field);
                found.extend(
                    of_name.filter_map(|entry| {
                        Some((entry.key_start, self.nodes.get(entry.value)?.end))
                    }),
                );
            }
        }
        found
    }

    /// What is written as the value of a field of the outermost struct, without quotes.
    pub(super) fn written(&self, field: &str) -> Option<(usize, &'t str)> {
        let root = self.root.and_then(|root| self.nodes.get(root))?;
        let Body::Fields { entries, .. } = &root.body else {
            return None;
        };
        let entry = entries.iter().find(|entry| entry.key == field)?;
        let node = self.nodes.get(entry.value)?;
        let text = self.text.get(node.start..node.end)?;
        match node.body {
            Body::Word | Body::Text => Some((node.start, text.trim_matches('"'))),
            _ => None,
        }
    }

    /// Start of the number, name or quoted text of which `offset` is a part.
    pub(super) fn scalar_around(&self, offset: usize) -> Option<usize> {
        self.nodes
            .iter()
            .filter(|node| matches!(node.body, Body::Word | Body::Text))
            .find(|node| node.start <= offset && offset < node.end)
            .map(|node| node.start)
    }

    /// Start of the quoted text that ends exactly at `offset`, if it runs over more than one line.
    pub(super) fn long_text_ending_at(&self, offset: usize) -> Option<usize> {
        self.nodes
            .iter()
            .find(|node| node.end == offset && matches!(node.body, Body::Text))
            .filter(|node| self.text.get(node.start..node.end).is_some_and(|t| t.contains('\n')))
            .map(|node| node.start)
    }

    /// Start of the innermost struct or map of which `offset` is a part.
    pub(super) fn struct_around(&self, offset: usize) -> Option<usize> {
        self.nodes
            .iter()
            .filter(|node| matches!(node.body, Body::Fields { .. } | Body::Items(_)))
            .filter(|node| node.start <= offset && offset < node.end)
            .max_by_key(|node| node.start)
            .map(|node| node.start)
    }

    /// Keys that a map has a second time, with the offset of the second.
    pub(super) fn repeated_keys(&self) -> Vec<(usize, &'t str)> {
        let mut repeated = Vec::new();
        for node in &self.nodes {
            let Body::Fields { entries, is_map: true } = &node.body else {
                continue;
            };
            let mut seen = BTreeSet::new();
            for entry in entries {
                if !seen.insert(entry.key) {
                    repeated.push((entry.key_start, entry.key));
                }
            }
        }
        repeated
    }

    /// Numbers that are not finite: written so, or too large for a number.
    pub(super) fn not_finite(&self) -> Vec<(usize, &'t str)> {
        self.nodes
            .iter()
            .filter(|node| matches!(node.body, Body::Word))
            .filter_map(|node| Some((node.start, self.text.get(node.start..node.end)?)))
            .filter(|(_, word)| is_not_finite(word))
            .collect()
    }
}

fn is_not_finite(word: &str) -> bool {
    let bare = word.trim_start_matches(['+', '-']);
    if ["inf", "inff32", "inff64", "NaN", "NaNf32", "NaNf64"].contains(&bare) {
        return true;
    }
    let digits: String = bare.chars().filter(|c| *c != '_').collect();
    digits.starts_with(|c: char| c.is_ascii_digit() || c == '.')
        && digits.parse::<f64>().is_ok_and(|value| !value.is_finite())
}

enum Step<'p> {
    Field(&'p str),
    Item(usize),
}

/// Steps of a path: fields parted by full stops, items in square brackets.
fn steps(path: &str) -> impl Iterator<Item = Step<'_>> {
    path.split(['.', '[']).filter(|part| !part.is_empty()).map(|part| {
        part.strip_suffix(']')
            .and_then(|index| index.parse().ok())
            .map_or(Step::Field(part), Step::Item)
    })
}
