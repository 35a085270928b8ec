//! Changes to a journal, from one bit to a rewritten chain.

use super::super::line::decode;
use super::super::problem::{Flaw, JsonFault};
use super::super::record::Recorded;
use super::{PROGRAM, lines, sample, taken, written};
use crate::numerics::digest::{Digest, DigestBuilder};
use crate::session::step::Step;
use proptest::prelude::*;

/// What may come of a change: a refusal, or less of the same with a torn tail.
fn assert_nothing_new(changed: &[u8], whole: &Recorded) -> Option<Recorded> {
    let recorded = decode(changed).ok()?;
    assert_eq!(recorded.case, whole.case);
    assert_eq!(recorded.header_chain, whole.header_chain);
    assert_eq!(recorded.entries, whole.entries[..recorded.entries.len()]);
    Some(recorded)
}

/// Every byte of a journal set to every other value.
#[test]
fn limit_every_changed_byte_is_noticed() {
    let bytes = written(&taken()[1..3]);
    let whole = decode(&bytes).unwrap();
    let lines = lines(&bytes);
    let last_line = bytes.len() - lines.last().unwrap().len();
    for at in 0..bytes.len() {
        let mut changed = bytes.clone();
        for difference in 1..=u8::MAX {
            changed[at] = bytes[at] ^ difference;
            if let Some(recorded) = assert_nothing_new(&changed, &whole) {
                assert!(at >= last_line, "byte {at}, difference {difference}");
                assert_eq!(recorded.entries.len(), whole.entries.len() - 1);
                assert_eq!(recorded.torn.unwrap().bytes, changed[last_line..]);
            }
        }
    }
}

proptest! {
    /// A stretch of a journal replaced by other bytes, its own or strange ones.
    #[test]
    fn prop_a_replaced_stretch_brings_nothing_new(
        from in any::<prop::sample::Index>(),
        length in 0_usize..300,
        strange in prop::collection::vec(any::<u8>(), 0..20),
        own in prop::option::of((any::<prop::sample::Index>(), 0_usize..600)),
    ) {
        let (bytes, whole) = sample();
        let from = from.index(bytes.len());
        let to = (from + length).min(bytes.len());
        let replacement = own.map_or(strange, |(start, length)| {
            let start = start.index(bytes.len());
            bytes[start..(start + length).min(bytes.len())].to_vec()
        });
        let mut changed = bytes;
        changed.splice(from..to, replacement);
        assert_nothing_new(&changed, &whole);
    }
}

#[test]
fn limit_a_swapped_doubled_or_missing_entry_is_named() {
    let lines = lines(&sample().0);
    for (order, expected) in [
        ([0, 2, 1, 3, 4].as_slice(), Flaw::OutOfOrder { entry: 1, got: 2 }),
        (&[0, 1, 3, 2, 4], Flaw::OutOfOrder { entry: 2, got: 3 }),
        (&[0, 1, 2, 4, 3], Flaw::OutOfOrder { entry: 3, got: 4 }),
        (&[0, 1, 2, 2, 3, 4], Flaw::OutOfOrder { entry: 3, got: 2 }),
        (&[0, 1, 2, 3, 4, 4], Flaw::OutOfOrder { entry: 5, got: 4 }),
        (&[0, 2, 3, 4], Flaw::OutOfOrder { entry: 1, got: 2 }),
        (&[0, 1, 3, 4], Flaw::OutOfOrder { entry: 2, got: 3 }),
        (&[0, 1, 2, 4], Flaw::OutOfOrder { entry: 3, got: 4 }),
        (&[1, 2, 3, 4], Flaw::NotAJournal),
    ] {
        let changed: Vec<u8> = order.iter().flat_map(|line| lines[*line].clone()).collect();
        assert_eq!(decode(&changed), Err(expected), "{order:?}");
    }
    let doubled_header: Vec<u8> =
        [0, 0, 1, 2].iter().flat_map(|line| lines[*line].clone()).collect();
    let problem = decode(&doubled_header);
    assert!(
        matches!(problem, Err(Flaw::EntryUnreadable { entry: 1, fault: JsonFault::Shape, .. })),
        "{problem:?}"
    );
}

/// Cleverer: the numbers are put right after the change, so that only the chain can tell.
#[test]
fn limit_the_chain_tells_a_renumbered_entry() {
    let lines = lines(&sample().0);
    for (order, broken) in [([0, 1, 3, 2].as_slice(), 2), (&[0, 1, 2, 2], 3), (&[0, 2, 3], 1)] {
        let mut changed = lines[0].clone();
        for (number, index) in (1..).zip(&order[1..]) {
            let line = String::from_utf8(lines[*index].clone()).unwrap();
            let renumbered =
                line.replacen(&format!("\"entry\":{index}"), &format!("\"entry\":{number}"), 1);
            changed.extend_from_slice(renumbered.as_bytes());
        }
        match decode(&changed) {
            Err(flaw @ Flaw::ChainBroken { entry, .. }) => {
                assert_eq!((entry, flaw.line()), (broken, broken + 1));
            }
            other => panic!("{other:?}"),
        }
    }
}

/// Each field of each line changed to another value of its own form.
#[test]
fn limit_every_field_is_in_the_chain() {
    let text = String::from_utf8(sample().0).unwrap();
    let header = |from: &str, to: &str| {
        let changed = text.replacen(from, to, 1);
        assert_ne!(changed, text, "{from}");
        let problem = decode(changed.as_bytes());
        assert!(matches!(problem, Err(Flaw::HeaderChain { .. })), "{from}: {problem:?}");
    };
    header(PROGRAM, "0.0.1-test");
    header("\"seed\":1", "\"seed\":2");
    header("assessed", "practice");
    header("\"vehicle_text\":\"v\"", "\"vehicle_text\":\"w\"");
    header("\"scenario_name\":\"ö", "\"scenario_name\":\"ü");
    let entry = |entry: u64, from: &str, to: &str| {
        let changed = text.replacen(from, to, 1);
        assert_ne!(changed, text, "{from}");
        match decode(changed.as_bytes()) {
            Err(Flaw::ChainBroken { entry: got, .. }) => assert_eq!(got, entry),
            other => panic!("{from}: {other:?}"),
        }
    };
    entry(1, "\"least\":0.1", "\"least\":0.2");
    entry(2, "\"black\":\"b\"", "\"black\":\"c\"");
    entry(4, "Rost", "Rust");
    let (_, whole) = sample();
    let events = whole.entries[2].events.to_string();
    entry(3, &events, &Digest::of(b"other events").to_string());
    let chain = whole.entries[1].chain.to_string();
    entry(2, &chain, &Digest::of(b"other chain").to_string());
    assert_ne!(whole.entries[1].events, whole.entries[2].events);
}

/// The same content in other bytes was not written by the program.
#[test]
fn limit_another_way_of_writing_is_refused() {
    let (bytes, whole) = sample();
    let text = String::from_utf8(bytes).unwrap();
    let chain = whole.entries[1].chain.to_string();
    let decode = |text: String| decode(text.as_bytes());
    let rewritten = |entry| Err(Flaw::EntryRewritten { entry });
    assert_eq!(decode(text.replacen("\"entry\":2,", "\"entry\":2 ,", 1)), rewritten(2));
    assert_eq!(decode(text.replacen(&chain, &chain.to_uppercase(), 1)), rewritten(2));
    assert_eq!(decode(text.replace('\n', "\r\n")), Err(Flaw::HeaderRewritten));
    assert_eq!(
        decode(text.replacen("\"version\":2,", "\"version\":2 ,", 1)),
        Err(Flaw::HeaderRewritten)
    );
    assert_eq!(decode(text.replacen(PROGRAM, "\\u0030.0.0-test", 1)), Err(Flaw::HeaderRewritten));
    let blank_line = decode(text + "\n");
    assert!(matches!(
        blank_line,
        Err(Flaw::EntryUnreadable { entry: 5, fault: JsonFault::Cut, .. })
    ));
}

/// Chain values by the description of the format, not by the code under test.
fn chained(parts: impl FnOnce(&mut DigestBuilder), purpose: &str) -> Digest {
    let mut builder = DigestBuilder::new(purpose);
    parts(&mut builder);
    builder.finish()
}

#[test]
fn limit_a_whole_entry_of_an_unknown_kind_is_not_called_damaged() {
    let (bytes, whole) = sample();
    let events = whole.entries[0].events;
    for (step, expected) in [
        ("{\"do\":\"sing\"}", JsonFault::Shape),
        ("7", JsonFault::Shape),
        ("{\"do\":\"look\",\"place\":\"a\",\"twice\":true}", JsonFault::Shape),
    ] {
        let chain = chained(
            |builder| {
                builder.digest(&whole.last_chain());
                builder.whole(5);
                builder.text(step);
                builder.digest(&events);
            },
            "faultwright session entry",
        );
        let mut changed = bytes.clone();
        changed.extend_from_slice(
            format!(
                "{{\"entry\":5,\"step\":{step},\"events\":\"{events}\",\"chain\":\"{chain}\"}}\n"
            )
            .as_bytes(),
        );
        match decode(&changed) {
            Err(flaw @ Flaw::StepUnknown { entry: 5, fault, .. }) => {
                assert_eq!((fault, flaw.line()), (expected, 6));
            }
            other => panic!("{step}: {other:?}"),
        }
    }
}

#[test]
fn limit_a_case_of_an_unknown_shape_is_refused() {
    let case = "{\"scenario_name\":\"a\",\"extra\":1}";
    let chain = chained(
        |builder| {
            builder.whole(1);
            builder.text("9");
            builder.text(case);
        },
        "faultwright session header",
    );
    let header = format!(
        "{{\"format\":\"faultwright session\",\"version\":1,\"program\":\"9\",\"case\":{case},\"chain\":\"{chain}\"}}\n"
    );
    let problem = decode(header.as_bytes());
    assert!(
        matches!(problem, Err(Flaw::CaseUnreadable { fault: JsonFault::Shape, .. })),
        "{problem:?}"
    );
}

/// What the chain cannot show: a shorter journal is whole in itself. Only the last chain value,
/// kept elsewhere, tells.
#[test]
fn limit_a_shortened_journal_differs_in_its_last_chain_value_alone() {
    let (bytes, whole) = sample();
    let shorter: Vec<u8> = lines(&bytes)[..3].concat();
    let recorded = decode(&shorter).unwrap();
    assert_eq!(recorded.torn, None);
    assert_ne!(recorded.last_chain(), whole.last_chain());
    assert_eq!(recorded.entries.last().map(|entry| &entry.step), Some(&taken()[1].0));
    assert!(matches!(whole.entries[2].step, Step::Dipstick));
}
