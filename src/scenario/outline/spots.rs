//! Where a value begins and ends, and what a struct, map or list is made of: for changes of the text.

use super::{Body, Outline, Step, steps};
use std::ops::Range;

/// What stands between a pair of brackets.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(in crate::scenario) struct Members {
    /// Byte offset behind the opening bracket.
    pub open: usize,
    /// Byte offset of the closing bracket.
    pub close: usize,
    /// It is a map, whose keys may stand in quotes.
    pub is_map: bool,
    /// The fields, entries or items in the order of the text.
    pub each: Vec<Member>,
}

/// A field with its key, an entry or an item.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(in crate::scenario) struct Member {
    /// Its key without quotes; empty for an item.
    pub key: String,
    /// Bytes from the key to the end of the value.
    pub span: Range<usize>,
}

impl Outline<'_> {
    /// The number of the node at a path, if it is written out.
    fn node_at(&self, path: &str) -> Option<usize> {
        let mut number = self.root?;
        for step in steps(path) {
            number = match (&self.nodes.get(number)?.body, step) {
                (Body::Fields { entries, .. }, Step::Field(name)) => {
                    entries.iter().rev().find(|entry| entry.key == name)?.value
                }
                (Body::Items(items), Step::Item(index)) => *items.get(index)?,
                _ => return None,
            };
        }
        Some(number)
    }

    /// Bytes of the value at a path; nothing where the path leads to nothing that is written.
    pub(in crate::scenario) fn span(&self, path: &str) -> Option<Range<usize>> {
        let node = self.nodes.get(self.node_at(path)?)?;
        Some(node.start..node.end)
    }

    /// What the struct, map or list at a path is made of; nothing where there is none, or where it is not closed.
    pub(in crate::scenario) fn members(&self, path: &str) -> Option<Members> {
        let node = self.nodes.get(self.node_at(path)?)?;
        let written = self.text.get(node.start..node.end)?;
        let open = node.start + written.find(['(', '[', '{'])? + 1;
        let close = node.end - 1;
        if open > close || !written.ends_with([')', ']', '}']) {
            return None;
        }
        let (is_map, each) = match &node.body {
            Body::Fields { entries, is_map } => {
                let member = |entry: &super::Entry<'_>| Member {
                    key: entry.key.to_owned(),
                    span: entry.key_start..entry.end,
                };
                (*is_map, entries.iter().map(member).collect())
            }
            Body::Items(items) => {
                let member = |number: &usize| {
                    let item = self.nodes.get(*number)?;
                    Some(Member { key: String::new(), span: item.start..item.end })
                };
                (false, items.iter().filter_map(member).collect())
            }
            Body::Word | Body::Text => return None,
        };
        Some(Members { open, close, is_map, each })
    }
}
