//! What is read back, and what is refused as not being a journal.

use super::super::line::{decode, digest_of_events};
use super::super::problem::{Flaw, JsonFault};
use super::samples::{every_step, predicted, varied_events};
use super::{PROGRAM, case, lines, sample, taken, written};
use crate::session::event::Event;
use crate::session::step::{Bound, Section, Step};
use proptest::prelude::*;

/// A step with whatever text and numbers a person may enter.
fn any_step() -> impl Strategy<Value = Step> {
    use proptest::num::f64::{NORMAL, SUBNORMAL, ZERO};
    let number = || NORMAL | SUBNORMAL | ZERO;
    prop_oneof![
        any::<String>().prop_map(|text| Step::Write { section: Section::Cause, text }),
        any::<String>().prop_map(|place| Step::Look { place: place.as_str().into() }),
        (number(), number()).prop_map(|(least, most)| predicted(least, Bound::Value(most))),
        Just(Step::Commit { fault: None }),
    ]
}

proptest! {
    #[test]
    fn prop_round_trip(steps in prop::collection::vec(any_step(), 0..8)) {
        let taken: Vec<_> = steps.into_iter().map(|step| (step, vec![Event::Predicted])).collect();
        let recorded = decode(&written(&taken)).unwrap();
        prop_assert_eq!(recorded.case, case());
        prop_assert_eq!(recorded.torn, None);
        let back: Vec<_> = recorded.entries.into_iter().map(|entry| entry.step).collect();
        let steps: Vec<_> = taken.into_iter().map(|(step, _)| step).collect();
        prop_assert_eq!(back, steps);
    }

    #[test]
    fn prop_arbitrary_bytes_are_refused(bytes in prop::collection::vec(any::<u8>(), 0..400)) {
        prop_assert!(decode(&bytes).is_err());
    }

    #[test]
    fn prop_arbitrary_lines_behind_a_header_are_no_entries(tail in prop::collection::vec(
        prop_oneof![any::<u8>(), Just(b'\n'), Just(b'{'), Just(b'"'), Just(b'}')], 0..200,
    )) {
        let (bytes, _) = sample();
        let mut changed = lines(&bytes).swap_remove(0);
        changed.extend_from_slice(&tail);
        if let Ok(recorded) = decode(&changed) {
            prop_assert_eq!(recorded.entries, vec![]);
            prop_assert_eq!(recorded.torn.map(|torn| torn.bytes).unwrap_or_default(), tail);
        }
    }
}

#[test]
fn limit_every_kind_of_step_comes_back() {
    let taken: Vec<_> = every_step().into_iter().map(|step| (step, varied_events())).collect();
    let recorded = decode(&written(&taken)).unwrap();
    assert_eq!(recorded.entries.len(), taken.len());
    for (number, (entry, (step, events))) in (1..).zip(recorded.entries.iter().zip(&taken)) {
        assert_eq!((entry.number, &entry.step), (number, step));
        assert!(entry.agrees_with(events));
        assert!(!entry.agrees_with(&events[1..]));
    }
}

#[test]
fn limit_a_negative_zero_keeps_its_sign() {
    let taken = vec![(predicted(-0.0, Bound::Value(0.0)), vec![])];
    match decode(&written(&taken)).unwrap().entries[0].step {
        Step::Predict { least, most: Bound::Value(most), .. } => {
            assert!(least.is_sign_negative() && most.is_sign_positive());
        }
        ref other => panic!("{other:?}"),
    }
}

#[test]
fn limit_the_header_is_told() {
    let (_, recorded) = sample();
    assert_eq!((recorded.version, recorded.program.as_str()), (2, PROGRAM));
    assert_eq!(recorded.case, case());
    assert_eq!(recorded.last_chain(), recorded.entries[3].chain);
    let empty = decode(&written(&[])).unwrap();
    assert_eq!(empty.entries, []);
    assert_eq!(empty.last_chain(), empty.header_chain);
    assert_eq!(empty.header_chain, recorded.header_chain);
}

#[test]
fn limit_order_of_events_counts() {
    let (_, events) = taken().swap_remove(1);
    let mut turned = events.clone();
    turned.reverse();
    assert_ne!(digest_of_events(&events), digest_of_events(&turned));
    assert_ne!(digest_of_events(&[]), digest_of_events(&events));
}

/// Cut at every place: whole entries and a torn tail, or an error inside the header.
#[test]
fn limit_every_cut() {
    let (bytes, whole) = sample();
    let header = lines(&bytes)[0].len();
    for length in 0..=bytes.len() {
        let cut = &bytes[..length];
        if length < header {
            assert_eq!(decode(cut), Err(Flaw::HeaderCut { bytes: length }));
            continue;
        }
        let recorded = decode(cut).unwrap();
        #[expect(clippy::naive_bytecount, reason = "a handful of lines")]
        let count = cut.iter().filter(|byte| **byte == b'\n').count() - 1;
        assert_eq!(recorded.entries, whole.entries[..count]);
        assert_eq!(recorded.case, whole.case);
        match recorded.torn {
            None => assert_eq!(cut.last(), Some(&b'\n')),
            Some(torn) => {
                assert_ne!(cut.last(), Some(&b'\n'));
                assert_eq!(torn.entry, count as u64 + 1);
                let offset = usize::try_from(torn.offset).unwrap();
                assert_eq!(
                    (&cut[..offset].last(), torn.bytes.as_slice()),
                    (&Some(&b'\n'), &cut[offset..])
                );
            }
        }
    }
}

/// After a power cut a block of the last line may read as zeros, the newline behind it being there.
#[test]
fn limit_a_hole_in_the_last_line_is_a_torn_tail() {
    let (bytes, whole) = sample();
    let last = lines(&bytes).iter().take(4).map(Vec::len).sum::<usize>();
    let mut holed = bytes.clone();
    holed[last + 10..last + 20].fill(0);
    let recorded = decode(&holed).unwrap();
    assert_eq!(recorded.entries, whole.entries[..3]);
    assert_eq!(recorded.torn.unwrap().bytes, holed[last..]);

    let mut holed = bytes;
    holed[last - 20..last - 10].fill(0);
    assert!(matches!(decode(&holed), Err(Flaw::EntryUnreadable { entry: 3, .. })));
}

/// Where only the block with the newline is missing, the entry was not acknowledged either.
#[test]
fn limit_zeros_behind_the_last_entry_are_a_torn_tail() {
    let (bytes, whole) = sample();
    for zeros in [1, 512] {
        let mut holed = bytes[..bytes.len() - 1].to_vec();
        holed.extend(std::iter::repeat_n(0, zeros));
        let recorded = decode(&holed).unwrap();
        assert_eq!(recorded.entries, whole.entries[..3]);
        assert_eq!(recorded.torn.map(|torn| torn.entry), Some(4));
        let behind = decode(&[bytes.clone(), vec![0; zeros]].concat()).unwrap();
        assert_eq!(behind.entries, whole.entries);
        assert_eq!(behind.torn.map(|torn| torn.bytes), Some(vec![0; zeros]));
    }
}

/// A newline that was changed must not make an acknowledged entry look torn.
#[test]
fn limit_a_changed_newline_is_not_a_torn_tail() {
    let (bytes, _) = sample();
    let lines = lines(&bytes);
    let third = lines.iter().take(4).map(Vec::len).sum::<usize>();
    for newline in [0, b' ', b'}', b'x', b'{', 0xff] {
        // With the entry behind it whole but for its own newline.
        let mut changed = bytes[..bytes.len() - 1].to_vec();
        changed[third - 1] = newline;
        let expected = Err(Flaw::RunsOn { entry: 3, column: lines[3].len() });
        assert_eq!(decode(&changed), expected, "{newline}");
        // With the first byte alone of the entry behind it.
        assert_eq!(decode(&changed[..=third]), expected, "{newline}");
    }
    let mut changed = bytes.clone();
    changed[third - 1] = 0;
    assert_eq!(decode(&changed), Err(Flaw::RunsOn { entry: 3, column: lines[3].len() }));
    let mut changed = bytes;
    if let Some(last) = changed.last_mut() {
        *last = b'x';
    }
    assert_eq!(decode(&changed), Err(Flaw::RunsOn { entry: 4, column: lines[4].len() }));
}

#[test]
fn limit_other_files_are_not_journals() {
    for other in [
        "x",
        "\n",
        "\u{feff}{\"format\":\"faultwright session\",\"version\":1}\n",
        "{\"format\":\"faultwright scenario\",\"version\":1}\n",
        "{}\n",
        "(name: \"a\")\n{\"format\":\"faultwright session\"}\n",
        "{\"format\":\"faultwright sessions",
    ] {
        assert_eq!(decode(other.as_bytes()), Err(Flaw::NotAJournal), "{other}");
    }
    assert_eq!(decode(b"\xff\xfe\n"), Err(Flaw::NotAJournal));
}

#[test]
fn limit_other_versions_are_named() {
    for (version, rest) in [(0, ""), (4, ",\"new\":[1]"), (u64::MAX, "")] {
        let header =
            format!("{{\"format\":\"faultwright session\",\"version\":{version}{rest}}}\nnew\n");
        let expected = Flaw::UnknownVersion { got: version, oldest: 1, newest: 3 };
        assert_eq!(decode(header.as_bytes()), Err(expected));
    }
}

#[test]
fn limit_malformed_headers_are_told_apart() {
    let start = "{\"format\":\"faultwright session\",\"version\":";
    for (rest, expected) in [
        ("", JsonFault::Cut),
        ("x}", JsonFault::Syntax),
        ("\"1\"}", JsonFault::Shape),
        ("1}", JsonFault::Shape),
        ("1,\"version\":1}", JsonFault::Shape),
        ("1,\"format\":\"other\"}", JsonFault::Shape),
    ] {
        let header = format!("{start}{rest}\n");
        match decode(header.as_bytes()) {
            Err(Flaw::HeaderUnreadable { fault, column }) => {
                assert_eq!(fault, expected, "{header}");
                assert!((start.len()..=header.len()).contains(&column), "{header} {column}");
            }
            other => panic!("{header}: {other:?}"),
        }
    }
}

#[test]
fn limit_text_that_is_not_utf8_is_placed() {
    let (bytes, _) = sample();
    for (index, line) in lines(&bytes).iter().enumerate().take(4) {
        let before: usize = lines(&bytes).iter().take(index).map(Vec::len).sum();
        let mut changed = bytes.clone();
        changed[before + line.len() - 3] = 0xff;
        let expected = Flaw::NotUtf8 { line: index as u64 + 1, valid: line.len() - 3 };
        assert_eq!(decode(&changed), Err(expected.clone()));
        assert_eq!(expected.line(), index as u64 + 1);
    }
}
