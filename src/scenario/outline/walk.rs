//! The one pass over a text that fills an outline.

use super::{Body, DEEPEST, Entry, MOST_VALUES, Node, Outline};

/// Fills an empty outline from its text.
pub(super) fn outline(outline: Outline<'_>) -> Outline<'_> {
    let mut walk = Walk { outline, at: 0 };
    walk.skip_attributes();
    walk.outline.root = walk.value(0).map(|(number, _)| number);
    walk.outline
}

struct Walk<'t> {
    outline: Outline<'t>,
    at: usize,
}

/// Whether the text went on as RON after a value.
type Whole = bool;

impl<'t> Walk<'t> {
    fn rest(&self) -> &'t str {
        self.outline.text.get(self.at..).unwrap_or("")
    }

    fn skip_blank(&mut self) {
        loop {
            let rest = self.rest();
            let trimmed = rest.trim_start();
            self.at += rest.len() - trimmed.len();
            if trimmed.starts_with("//") {
                self.at += trimmed.find('\n').unwrap_or(trimmed.len());
            } else if trimmed.starts_with("/*") {
                self.skip_block_comment();
            } else {
                return;
            }
        }
    }

    /// Block comments nest.
    fn skip_block_comment(&mut self) {
        let (bytes, start) = (self.outline.text.as_bytes(), self.at);
        let mut level = 0_usize;
        while let Some(pair) = bytes.get(self.at..self.at + 2) {
            match pair {
                b"/*" => level += 1,
                b"*/" => level -= 1,
                _ => {
                    self.at += 1;
                    continue;
                }
            }
            self.at += 2;
            if level == 0 {
                return;
            }
        }
        self.outline.open_comment.get_or_insert(start);
        self.at = bytes.len();
    }

    fn skip_attributes(&mut self) {
        self.skip_blank();
        while self.rest().starts_with("#!") {
            self.at += self.rest().find(']').map_or(self.rest().len(), |end| end + 1);
            self.skip_blank();
        }
    }

    fn note(&mut self, start: usize, body: Body<'t>) -> usize {
        self.outline.nodes.push(Node { start, end: self.at, body });
        self.outline.nodes.len() - 1
    }

    fn value(&mut self, depth: usize) -> Option<(usize, Whole)> {
        self.skip_blank();
        let start = self.at;
        if self.outline.nodes.len() >= MOST_VALUES {
            self.outline.too_many.get_or_insert(start);
            return None;
        }
        if self.skip_quoted() {
            return Some((self.note(start, Body::Text), true));
        }
        let word = self.take_word();
        let after_word = self.at;
        self.skip_blank();
        let open = self.rest().chars().next().filter(|c| ['(', '[', '{'].contains(c));
        match open {
            Some('(') => self.bracket(start, '(', depth, word),
            Some(open) if word.is_empty() => self.bracket(start, open, depth, word),
            _ if word.is_empty() => None,
            _ => {
                self.at = after_word;
                Some((self.note(start, Body::Word), true))
            }
        }
    }

    /// A text in quotes, raw or plain, or a character; false where none begins here.
    fn skip_quoted(&mut self) -> bool {
        let rest = self.rest();
        let raw = rest.strip_prefix('b').unwrap_or(rest);
        if let Some(hashed) = raw.strip_prefix('r') {
            let hashes = hashed.len() - hashed.trim_start_matches('#').len();
            if let Some(inside) = hashed.get(hashes..).and_then(|text| text.strip_prefix('"')) {
                let end = format!("\"{}", "#".repeat(hashes));
                let length = inside.find(&end).map_or(inside.len(), |at| at + end.len());
                self.at += rest.len() - inside.len() + length;
                return true;
            }
        }
        let Some(quote) = raw.chars().next().filter(|c| ['"', '\''].contains(c)) else {
            return false;
        };
        self.at += rest.len() - raw.len() + 1;
        let mut escaped = false;
        for character in self.rest().chars() {
            self.at += character.len_utf8();
            match character {
                '\\' if !escaped => escaped = true,
                c if c == quote && !escaped => break,
                _ => escaped = false,
            }
        }
        true
    }

    fn take_word(&mut self) -> &'t str {
        let rest = self.rest();
        let is_part = |c: char| c.is_alphanumeric() || ['_', '+', '-', '.', '#'].contains(&c);
        let length = rest.find(|c| !is_part(c)).unwrap_or(rest.len());
        self.at += length;
        rest.get(..length).unwrap_or("")
    }

    fn bracket(
        &mut self,
        start: usize,
        open: char,
        depth: usize,
        word: &str,
    ) -> Option<(usize, Whole)> {
        let open_at = self.at;
        if depth >= DEEPEST {
            self.outline.too_deep.get_or_insert(open_at);
            return None;
        }
        self.at += 1;
        let close = match open {
            '(' => ')',
            '[' => ']',
            _ => '}',
        };
        let is_map = open == '{';
        let is_named = is_map || (open == '(' && self.key_follows());
        let (mut entries, mut items) = (Vec::new(), Vec::new());
        let mut whole = true;
        loop {
            self.skip_blank();
            if self.rest().starts_with(close) {
                self.at += 1;
                break;
            }
            if self.rest().is_empty() {
                self.outline.unclosed.get_or_insert((open_at, open));
            }
            let key = if is_named { self.key() } else { Some((self.at, "")) };
            let value = key.and_then(|key| Some((key, self.value(depth + 1)?)));
            let Some(((key_start, key), (value, went_on))) = value else {
                whole = false;
                break;
            };
            if is_named {
                entries.push(Entry { key, key_start, end: self.at, value });
            } else {
                items.push(value);
            }
            self.skip_blank();
            let comma = self.rest().starts_with(',');
            self.at += usize::from(comma);
            if !went_on || !(comma || self.rest().starts_with(close) || self.rest().is_empty()) {
                whole = false;
                break;
            }
        }
        // `Some(x)` stands for `x` itself, so that a path need not know of it.
        if let ("Some", [only], false) = (word, items.as_slice(), is_named) {
            return Some((*only, whole));
        }
        let body = if is_named { Body::Fields { entries, is_map } } else { Body::Items(items) };
        Some((self.note(start, body), whole))
    }

    /// Whether a name and a colon come next, which tells a struct from a tuple.
    fn key_follows(&mut self) -> bool {
        let before = self.at;
        self.skip_blank();
        let named = !self.take_word().is_empty();
        self.skip_blank();
        let follows = named && self.rest().starts_with(':');
        self.at = before;
        follows
    }

    fn key(&mut self) -> Option<(usize, &'t str)> {
        self.skip_blank();
        let start = self.at;
        let quoted = self.skip_quoted();
        if !quoted {
            self.take_word();
        }
        let key = self.outline.text.get(start..self.at)?;
        self.skip_blank();
        self.rest().starts_with(':').then(|| self.at += 1)?;
        Some((start, if quoted { key.trim_matches('"') } else { key }))
    }
}
