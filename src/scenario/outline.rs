//! Where each value of a RON text stands.
//!
//! Model: one pass over the text notes the start and end of every value as a tree of fields and
//! items, without knowing what they mean. The reader of the data itself is `ron`; this outline only
//! gives problems their line and column. Limits: it stops, with what it has, at the first thing
//! that is no RON, and at [`DEEPEST`] levels.

/// Levels of brackets that a file may have; the deepest right file has seven.
pub(super) const DEEPEST: usize = 32;

/// Values of a text with their positions.
#[derive(Debug)]
pub(super) struct Outline<'t> {
    text: &'t str,
    nodes: Vec<Node<'t>>,
    /// Number of the outermost value.
    root: Option<usize>,
    /// Where brackets nest deeper than [`DEEPEST`].
    pub(super) too_deep: Option<usize>,
    /// The innermost bracket that is still open when the text ends.
    pub(super) unclosed: Option<(usize, char)>,
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
    value: usize,
}

impl<'t> Outline<'t> {
    /// Outlines a text.
    pub(super) fn of(text: &'t str) -> Self {
        let outline = Self { text, nodes: Vec::new(), root: None, too_deep: None, unclosed: None };
        let mut walk = Walk { outline, at: 0 };
        walk.skip_attributes();
        let root = walk.value(0).map(|(number, _)| number);
        walk.outline.root = root;
        walk.outline
    }

    /// Byte offset of the value at a path such as `faults[3].place`; of the nearest value around it
    /// where the path leads to nothing that is written, such as a field with a default.
    pub(super) fn start_of(&self, path: &str) -> usize {
        let Some(mut node) = self.root.and_then(|root| self.nodes.get(root)) else {
            return 0;
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
                None => return node.start,
            }
        }
        node.start
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
            let mut seen = std::collections::BTreeSet::new();
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
        let bytes = self.outline.text.as_bytes();
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
                entries.push(Entry { key, key_start, value });
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
