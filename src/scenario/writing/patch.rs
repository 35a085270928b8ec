//! One change of a text: the bytes that go and what stands there then. Everything else stays as it is.

use crate::scenario::outline::{Member, Members, Outline};
use crate::scenario::schema::BROUGHT;
use std::ops::Range;

/// How far what stands inside a bracket is moved in.
const INDENT: &str = "    ";
/// The map whose keys are words of the format; in any other they are names in quotes.
const KEYED_BY_WORDS: &str = "job.answers";
/// The maps that a file may leave out; whatever else is missing around a value is a struct.
const LEFT_OUT_MAPS: [&str; 2] = ["shelf.waits", "shelf.others"];

/// A change of a text.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Patch {
    /// The bytes that go.
    pub span: Range<usize>,
    /// What stands there then.
    pub with: String,
}

impl Patch {
    /// The text with the change made; as it was where the bytes are none of it.
    #[must_use]
    pub fn on(&self, text: &str) -> String {
        match (text.get(..self.span.start), text.get(self.span.end..)) {
            (Some(before), Some(after)) => format!("{before}{}{after}", self.with),
            _ => text.to_owned(),
        }
    }
}

/// Gives the value at a path such as `faults[3].weight` another text. Where it is not written, as a field with a usual
/// value need not be, it is put at the end of the struct or map around it, with the structs between if need be.
/// Nothing where the path leads into something else, such as an item beyond the end of a list.
#[must_use]
pub fn set(text: &str, path: &str, value: &str) -> Option<Patch> {
    let outline = Outline::of(text);
    if let Some(span) = outline.span(path) {
        return Some(Patch { span, with: value.to_owned() });
    }
    let (mut path, mut value) = (path, value.to_owned());
    loop {
        let (around, field) = path.rsplit_once('.').unwrap_or(("", path));
        if field.ends_with(']') {
            return None;
        }
        if let Some(members) = outline.members(around) {
            let key = if members.is_map && around != KEYED_BY_WORDS {
                super::notation::text(field)
            } else {
                field.to_owned()
            };
            return Some(add(text, &members, &format!("{key}: {value}")));
        }
        if around.is_empty() || outline.span(around).is_some() {
            return None;
        }
        value = if LEFT_OUT_MAPS.contains(&around) {
            format!("{{{}: {value}}}", super::notation::text(field))
        } else {
            format!("({field}: {value})")
        };
        path = around;
    }
}

/// A text whose version is raised to the one that brought the youngest of its fields, where it says an older one.
#[must_use]
pub fn of_its_version(text: String) -> String {
    let outline = Outline::of(&text);
    let Some((span, written)) = outline.span("version").zip(outline.written("version")) else {
        return text;
    };
    let is_there = |field: &str| outline.span(field).is_some();
    let needed = BROUGHT.iter().filter(|(field, _)| is_there(field)).map(|(_, since)| *since).max();
    match (written.1.parse::<u32>(), needed) {
        (Ok(version), Some(needed)) if version < needed => {
            Patch { span, with: needed.to_string() }.on(&text)
        }
        _ => text,
    }
}

/// Puts an item to the end of the list at a path; a list that is not written is begun.
#[must_use]
pub fn push(text: &str, list: &str, item: &str) -> Option<Patch> {
    match Outline::of(text).members(list) {
        Some(members) => Some(add(text, &members, item)),
        None => set(text, list, &format!("[{item}]")),
    }
}

/// Takes the field, entry or item at a path away, with its comma, and with its line where nothing else stands there.
#[must_use]
pub fn remove(text: &str, path: &str) -> Option<Patch> {
    let outline = Outline::of(text);
    let (around, number) = match path.rsplit_once('[') {
        Some((list, index)) if path.ends_with(']') => {
            (list, index.trim_end_matches(']').parse().ok()?)
        }
        _ => {
            let (around, field) = path.rsplit_once('.').unwrap_or(("", path));
            let members = outline.members(around)?;
            (around, members.each.iter().rposition(|member| member.key == field)?)
        }
    };
    let members = outline.members(around)?;
    let Member { span, .. } = members.each.get(number)?;
    let (mut start, mut end) = (span.start, span.end);
    let comma = comma_after(text, end, members.close);
    if let Some(comma) = comma.filter(|comma| is_blank(text, end..*comma)) {
        end = comma + 1;
    }
    let line = line_start(text, start);
    let line_end = text.get(end..)?.find('\n').map_or(text.len(), |at| end + at);
    if is_blank(text, line..start) && is_blank(text, end..line_end) {
        return Some(Patch { span: line..(line_end + 1).min(text.len()), with: String::new() });
    }
    let before = number.checked_sub(1).and_then(|before| members.each.get(before));
    if comma.is_some() {
        let rest = text.get(end..)?;
        end += rest.len() - rest.trim_start_matches(' ').len();
    } else if let Some(before) = before
        && text.get(before.span.end..start)?.trim() == ","
    {
        start = before.span.end;
    }
    Some(Patch { span: start..end, with: String::new() })
}

/// Puts a member behind the others: on a line of its own where the last one has one.
fn add(text: &str, members: &Members, member: &str) -> Patch {
    let Some(last) = members.each.last() else {
        return add_first(text, members, member);
    };
    let end = last.span.end;
    let line = line_start(text, last.span.start);
    let indent = text.get(line..last.span.start).unwrap_or("");
    if !indent.trim().is_empty() {
        return Patch { span: end..end, with: format!(", {member}") };
    }
    let comma = comma_after(text, end, members.close);
    let mut at = comma.map_or(end, |comma| comma + 1);
    // A remark behind the last member is about that one.
    let rest = text.get(at..members.close).unwrap_or("");
    let line_rest = rest.split('\n').next().unwrap_or("");
    if line_rest.len() < rest.len() && is_remark(line_rest) {
        at += line_rest.len();
    }
    let between = text.get(end..at).unwrap_or("");
    let missing = if comma.is_some() { "" } else { "," };
    Patch { span: end..at, with: format!("{missing}{between}\n{indent}{member},") }
}

fn add_first(text: &str, members: &Members, member: &str) -> Patch {
    let line = text.get(line_start(text, members.open)..).unwrap_or("");
    let indent = line.get(..line.len() - line.trim_start_matches([' ', '\t']).len()).unwrap_or("");
    let inside = members.open..members.close;
    if is_blank(text, inside.clone()) {
        return Patch { span: inside, with: format!("\n{indent}{INDENT}{member},\n{indent}") };
    }
    // Behind the remarks that are there.
    let at = members.close;
    Patch { span: at..at, with: format!("{INDENT}{member},\n{indent}") }
}

/// Whether the rest of a line is blank or one remark.
fn is_remark(rest: &str) -> bool {
    let rest = rest.trim();
    let is_block = rest.starts_with("/*") && rest.find("*/").is_some_and(|at| at + 2 == rest.len());
    rest.is_empty() || rest.starts_with("//") || is_block
}

fn is_blank(text: &str, span: Range<usize>) -> bool {
    text.get(span).is_some_and(|part| part.trim().is_empty())
}

fn line_start(text: &str, offset: usize) -> usize {
    text.get(..offset).and_then(|before| before.rfind('\n')).map_or(0, |at| at + 1)
}

/// Where the comma behind a member stands; nothing where the bracket closes without one.
fn comma_after(text: &str, end: usize, close: usize) -> Option<usize> {
    let mut at = end;
    loop {
        let rest = text.get(at..close)?;
        let trimmed = rest.trim_start();
        at += rest.len() - trimmed.len();
        if trimmed.starts_with(',') {
            return Some(at);
        }
        if trimmed.starts_with("//") {
            at += trimmed.find('\n')?;
        } else if trimmed.starts_with("/*") {
            at += block_comment(trimmed)?;
        } else {
            return None;
        }
    }
}

/// Length of the block comment that a text begins with; they nest.
fn block_comment(text: &str) -> Option<usize> {
    let (mut level, mut at) = (0_usize, 0);
    while let Some(pair) = text.as_bytes().get(at..at + 2) {
        at += match pair {
            b"/*" => {
                level += 1;
                2
            }
            b"*/" => {
                level -= 1;
                2
            }
            _ => 1,
        };
        if level == 0 {
            return Some(at);
        }
    }
    None
}
