//! The two kinds of line, as bytes: what is written, and what the chain covers.
//!
//! The chain covers the bytes of case and step as they stand in the file, not what they parse to,
//! so a later program that writes numbers or fields otherwise still verifies an old file.

use super::problem::{Flaw, JsonFault, Part, Unwritable};
use super::record::{CaseRecord, Entry, Recorded, TornTail};
use crate::numerics::digest::{Digest, DigestBuilder};
use crate::session::event::Event;
use crate::session::step::Step;
use serde::de::DeserializeOwned;
use serde::{Deserialize, Serialize};
use serde_json::value::{RawValue, to_raw_value};
use std::borrow::Cow;

/// What the first line calls itself.
const FORMAT: &str = "faultwright session";
/// Version that is written, and that of a sealed case, which no earlier program knows.
pub(super) const VERSION: u32 = 2;
const VERSION_SEALED: u32 = 3;
/// Oldest version that is gone on with.
pub(super) const OLDEST_RESUMED: u32 = 2;
/// Oldest version that is read.
const OLDEST_VERSION: u32 = 1;
/// How the first line of every version begins, so that a newer journal and one that was cut off
/// are told from another kind of file.
const OPENING: &[u8] = br#"{"format":"faultwright session","version":"#;

/// The first line.
#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct HeaderLine<'a> {
    #[serde(borrow)]
    format: Cow<'a, str>,
    version: u32,
    #[serde(borrow)]
    program: Cow<'a, str>,
    #[serde(borrow)]
    case: &'a RawValue,
    chain: Digest,
}

/// The version alone, so that a newer one is named and not called malformed.
#[derive(Deserialize)]
struct Preface {
    version: u64,
}

/// Every other line.
#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct EntryLine<'a> {
    entry: u64,
    #[serde(borrow)]
    step: &'a RawValue,
    events: Digest,
    chain: Digest,
}

/// A line to be written, newline included, and its chain value.
pub(super) struct Line {
    pub(super) text: String,
    pub(super) chain: Digest,
}

/// The fingerprint of a step's events: of their JSON, as one array, fields in declared order.
///
/// # Errors
/// [`Unwritable`] when an event holds a number that is not finite: JSON writes all such numbers
/// alike, and one fingerprint would stand for different events.
pub fn digest_of_events(events: &[Event]) -> Result<Digest, Unwritable> {
    let json = to_json::<Vec<Event>>(events, Unwritable { part: Part::Events })?;
    let mut builder = DigestBuilder::new("faultwright session events");
    builder.text(json.get());
    Ok(builder.finish())
}

/// The first line of a journal that `program` writes.
pub(super) fn header_line(program: &str, case: &CaseRecord) -> Result<Line, Unwritable> {
    let unwritable = Unwritable { part: Part::Case };
    let version = if case.sealed.is_some() { VERSION_SEALED } else { VERSION };
    let case = to_json::<CaseRecord>(case, unwritable)?;
    let chain = header_chain(version, program, &case);
    let line =
        HeaderLine { format: FORMAT.into(), version, program: program.into(), case: &case, chain };
    Ok(Line { text: rendered(&line).ok_or(unwritable)?, chain })
}

/// The line of entry `number`, behind one whose chain value is `before`.
pub(super) fn entry_line(
    before: &Digest,
    number: u64,
    step: &Step,
    events: &[Event],
) -> Result<Line, Unwritable> {
    let unwritable = Unwritable { part: Part::Step };
    let step = to_json::<Step>(step, unwritable)?;
    let events = digest_of_events(events)?;
    let chain = entry_chain(before, number, &step, &events);
    let line = EntryLine { entry: number, step: &step, events, chain };
    Ok(Line { text: rendered(&line).ok_or(unwritable)?, chain })
}

/// Reads a whole file.
pub(super) fn decode(bytes: &[u8]) -> Result<Recorded, Flaw> {
    let Some((header, mut rest)) = split_line(bytes) else {
        return Err(if bytes.starts_with(OPENING) || OPENING.starts_with(bytes) {
            Flaw::HeaderCut { bytes: bytes.len() }
        } else {
            Flaw::NotAJournal
        });
    };
    let mut recorded = decode_header(header)?;
    let mut number = 1;
    while !rest.is_empty() {
        match split_line(rest) {
            Some((line, after)) if !(after.is_empty() && has_hole(line)) => {
                let entry = decode_entry(line, number, &recorded.last_chain())?;
                recorded.entries.push(entry);
                rest = after;
                number += 1;
            }
            _ => {
                if let Some(column) = end_of_whole_entry(rest, number, &recorded.last_chain()) {
                    return Err(Flaw::RunsOn { entry: number, column });
                }
                let offset = (bytes.len() - rest.len()) as u64;
                recorded.torn = Some(TornTail { entry: number, offset, bytes: rest.to_vec() });
                break;
            }
        }
    }
    Ok(recorded)
}

/// Whether a file system lost part of the line. After a power cut the length may be on the disk
/// and a block not yet: it then reads as zeros, which no line that was written holds.
fn has_hole(line: &[u8]) -> bool {
    line.contains(&0)
}

/// Where a whole entry ends at the beginning of a tail, when more than zeros stand behind it.
///
/// Such a tail was not cut off: the newline behind the entry was changed, and to call it torn
/// would drop an entry that was acknowledged.
fn end_of_whole_entry(tail: &[u8], number: u64, before: &Digest) -> Option<usize> {
    let mut values = serde_json::Deserializer::from_slice(tail).into_iter::<EntryLine<'_>>();
    values.next()?.ok()?;
    let (entry, behind) = tail.split_at_checked(values.byte_offset())?;
    verified(entry, number, before).ok()?;
    behind.iter().any(|byte| *byte != 0).then_some(entry.len() + 1)
}

fn decode_header(line: &[u8]) -> Result<Recorded, Flaw> {
    if !line.starts_with(OPENING) {
        return Err(Flaw::NotAJournal);
    }
    let text = utf8(line, 1)?;
    let unreadable = |error: serde_json::Error| Flaw::HeaderUnreadable {
        column: error.column(),
        fault: JsonFault::from(&error),
    };
    let preface: Preface = serde_json::from_str(text).map_err(unreadable)?;
    if !(u64::from(OLDEST_VERSION)..=u64::from(VERSION_SEALED)).contains(&preface.version) {
        return Err(Flaw::UnknownVersion {
            got: preface.version,
            oldest: OLDEST_VERSION,
            newest: VERSION_SEALED,
        });
    }
    let header: HeaderLine<'_> = serde_json::from_str(text).map_err(unreadable)?;
    if !is_as_written(&header, line) {
        return Err(Flaw::HeaderRewritten);
    }
    let expected = header_chain(header.version, &header.program, header.case);
    if header.chain != expected {
        return Err(Flaw::HeaderChain { expected, got: header.chain });
    }
    let case = serde_json::from_str(header.case.get()).map_err(|error| Flaw::CaseUnreadable {
        column: error.column(),
        fault: JsonFault::from(&error),
    })?;
    Ok(Recorded {
        version: header.version,
        program: header.program.into_owned(),
        case,
        header_chain: header.chain,
        entries: Vec::new(),
        torn: None,
    })
}

fn decode_entry(line: &[u8], number: u64, before: &Digest) -> Result<Entry, Flaw> {
    let EntryLine { entry: number, step, events, chain } = verified(line, number, before)?;
    // Last, so that a step which is whole but of a newer kind is not called damaged.
    let step = serde_json::from_str(step.get()).map_err(|error| Flaw::StepUnknown {
        entry: number,
        column: error.column(),
        fault: JsonFault::from(&error),
    })?;
    Ok(Entry { number, step, events, chain })
}

/// An entry that is as it was written, whatever its step is.
fn verified<'a>(line: &'a [u8], number: u64, before: &Digest) -> Result<EntryLine<'a>, Flaw> {
    let text = utf8(line, number + 1)?;
    let parsed: EntryLine<'a> =
        serde_json::from_str(text).map_err(|error| Flaw::EntryUnreadable {
            entry: number,
            column: error.column(),
            fault: JsonFault::from(&error),
        })?;
    if parsed.entry != number {
        return Err(Flaw::OutOfOrder { entry: number, got: parsed.entry });
    }
    if !is_as_written(&parsed, line) {
        return Err(Flaw::EntryRewritten { entry: number });
    }
    let expected = entry_chain(before, number, parsed.step, &parsed.events);
    if parsed.chain != expected {
        return Err(Flaw::ChainBroken { entry: number, expected, got: parsed.chain });
    }
    Ok(parsed)
}

fn header_chain(version: u32, program: &str, case: &RawValue) -> Digest {
    let mut builder = DigestBuilder::new("faultwright session header");
    builder.whole(u64::from(version));
    builder.text(program);
    builder.text(case.get());
    builder.finish()
}

fn entry_chain(before: &Digest, number: u64, step: &RawValue, events: &Digest) -> Digest {
    let mut builder = DigestBuilder::new("faultwright session entry");
    builder.digest(before);
    builder.whole(number);
    builder.text(step.get());
    builder.digest(events);
    builder.finish()
}

/// The bytes before the first newline, and those behind it.
fn split_line(bytes: &[u8]) -> Option<(&[u8], &[u8])> {
    let newline = bytes.iter().position(|byte| *byte == b'\n')?;
    let (line, rest) = bytes.split_at(newline);
    Some((line, rest.get(1..)?))
}

fn utf8(line: &[u8], number: u64) -> Result<&str, Flaw> {
    core::str::from_utf8(line)
        .map_err(|error| Flaw::NotUtf8 { line: number, valid: error.valid_up_to() })
}

/// Whether the program would write the same bytes again. Blanks, capital digits and a carriage
/// return change no value, so the chain does not see them; a file with them was written by
/// something else.
fn is_as_written(line: &impl Serialize, bytes: &[u8]) -> bool {
    rendered(line).is_some_and(|text| text.as_bytes().strip_suffix(b"\n") == Some(bytes))
}

fn rendered(line: &impl Serialize) -> Option<String> {
    let mut text = serde_json::to_string(line).ok()?;
    text.push('\n');
    Some(text)
}

/// Writes a value, and makes sure that it would be read back the same.
fn to_json<Back: DeserializeOwned>(
    value: &(impl Serialize + PartialEq<Back> + ?Sized),
    unwritable: Unwritable,
) -> Result<Box<RawValue>, Unwritable> {
    let json = to_raw_value(value).map_err(|_| unwritable)?;
    let back: Back = serde_json::from_str(json.get()).map_err(|_| unwritable)?;
    if *value == back { Ok(json) } else { Err(unwritable) }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// `null` is a lawful way back for an optional number, so parsing alone would not tell.
    #[test]
    fn limit_a_value_that_comes_back_as_another_is_refused() {
        let unwritable = Unwritable { part: Part::Step };
        let write = |value| to_json::<Option<f64>>(&value, unwritable).map(|json| json.to_string());
        assert_eq!(write(Some(0.5)), Ok("0.5".to_owned()));
        assert_eq!(write(None), Ok("null".to_owned()));
        assert_eq!(write(Some(f64::INFINITY)), Err(unwritable));
    }
}
