//! Writing to a disk that fails.

use super::super::LARGEST_BYTES;
use super::super::line::{decode, header_line};
use super::super::problem::{Action, Part, WriteFailure};
use super::super::writer::{NotAdded, Writer};
use super::samples::predicted;
use super::{PROGRAM, Shared, begun, case, taken, written};
use crate::session::event::Event;
use crate::session::step::{Bound, Step};
use std::io;
use std::rc::Rc;

/// An entry is one write and then one sync, nothing else.
#[test]
fn limit_an_entry_is_one_write_and_one_sync() {
    let (disk, mut writer) = begun(LARGEST_BYTES);
    disk.borrow_mut().calls.clear();
    for (count, (step, events)) in (1..).zip(taken()) {
        writer.append(&step, &events).unwrap();
        assert_eq!(disk.borrow().calls, "ws".repeat(count));
        assert_eq!(writer.entries(), count as u64);
        assert_eq!(decode(&disk.borrow().bytes).unwrap().last_chain(), writer.last_chain());
    }
}

/// A disk that fills up at any byte: nothing acknowledged is lost, and after space is made the
/// journal becomes the same as without the trouble.
#[test]
fn limit_a_full_disk_at_every_byte() {
    let header = written(&[]).len();
    let whole = written(&taken());
    for capacity in header..whole.len() {
        let (disk, mut writer) = begun(LARGEST_BYTES);
        disk.borrow_mut().capacity = capacity;
        let mut failures = 0;
        for (step, events) in taken() {
            let before = disk.borrow().bytes.clone();
            if let Err(NotAdded { failure, restored }) = writer.append(&step, &events) {
                failures += 1;
                assert!(restored);
                match failure {
                    WriteFailure::Short { written, expected } => {
                        assert_eq!(written, capacity - before.len());
                        assert!(written < expected);
                    }
                    WriteFailure::Refused { action: Action::Write, source } => {
                        assert_eq!(source.kind(), io::ErrorKind::StorageFull);
                        assert_eq!(capacity, before.len());
                    }
                    other => panic!("{other:?}"),
                }
                assert_eq!(disk.borrow().bytes, before);
                disk.borrow_mut().capacity = usize::MAX;
                writer.append(&step, &events).unwrap();
            }
        }
        assert_eq!(failures, 1);
        assert_eq!(disk.borrow().bytes, whole);
    }
}

#[test]
fn limit_a_failed_sync_takes_the_line_back() {
    let (disk, mut writer) = begun(LARGEST_BYTES);
    let before = disk.borrow().bytes.clone();
    disk.borrow_mut().refuses_sync = true;
    let problem = writer.append(&Step::Dipstick, &[]).unwrap_err();
    assert!(matches!(problem.failure, WriteFailure::Refused { action: Action::Sync, .. }));
    // The cut cannot be known to be on the disk either.
    assert!(!problem.restored);
    assert_eq!(disk.borrow().bytes, before);
    assert_eq!((writer.entries(), writer.last_chain()), (0, decode(&before).unwrap().last_chain()));
    disk.borrow_mut().refuses_sync = false;
    disk.borrow_mut().calls.clear();
    writer.append(&Step::Dipstick, &[]).unwrap();
    assert_eq!(disk.borrow().calls, "csws", "cut again before going on");
    assert_eq!(disk.borrow().bytes, written(&[(Step::Dipstick, vec![])]));
    disk.borrow_mut().calls.clear();
    writer.append(&Step::ReadCodes, &[]).unwrap();
    assert_eq!(disk.borrow().calls, "ws", "and not cut any more");
}

/// The worst: a part of a line is there and cannot be cut off. The next append sees to it first.
#[test]
fn limit_a_tail_that_cannot_be_cut_is_never_written_behind() {
    let (disk, mut writer) = begun(LARGEST_BYTES);
    writer.append(&Step::ReadCodes, &[]).unwrap();
    let whole = disk.borrow().bytes.clone();
    {
        let mut disk = disk.borrow_mut();
        disk.capacity = whole.len() + 9;
        disk.refuses_cut = true;
    }
    let problem = writer.append(&Step::Dipstick, &[]).unwrap_err();
    assert!(matches!(problem.failure, WriteFailure::Short { written: 9, .. }));
    assert!(!problem.restored);
    let left = decode(&disk.borrow().bytes).unwrap();
    assert_eq!((left.entries.len(), left.torn.unwrap().bytes.len()), (1, 9));

    disk.borrow_mut().capacity = usize::MAX;
    let problem = writer.append(&Step::Dipstick, &[]).unwrap_err();
    assert!(matches!(problem.failure, WriteFailure::Refused { action: Action::CutBack, .. }));
    assert!(!problem.restored);
    assert_eq!(disk.borrow().bytes.len(), whole.len() + 9);

    let nan = predicted(f64::NAN, Bound::OverLimit);
    assert!(!writer.append(&nan, &[]).unwrap_err().restored, "the tail is still there");

    disk.borrow_mut().refuses_cut = false;
    writer.append(&Step::Dipstick, &[]).unwrap();
    let expected = [(Step::ReadCodes, vec![]), (Step::Dipstick, vec![])];
    assert_eq!(disk.borrow().bytes, written(&expected));
}

#[test]
fn limit_a_file_that_somebody_else_changed_is_left_alone() {
    for change in [|bytes: &mut Vec<u8>| bytes.push(b'x'), |bytes: &mut Vec<u8>| bytes.truncate(5)]
    {
        let (disk, mut writer) = begun(LARGEST_BYTES);
        let expected_length = disk.borrow().bytes.len() as u64;
        change(&mut disk.borrow_mut().bytes);
        let before = disk.borrow().bytes.clone();
        for _ in 0..2 {
            match writer.append(&Step::Dipstick, &[]).unwrap_err().failure {
                WriteFailure::ChangedOutside { expected, got } => {
                    assert_eq!((expected, got), (expected_length, before.len() as u64));
                }
                other => panic!("{other:?}"),
            }
            assert_eq!(disk.borrow().bytes, before);
        }
    }
}

#[test]
fn limit_a_deleted_file_is_not_written() {
    let (disk, mut writer) = begun(LARGEST_BYTES);
    disk.borrow_mut().has_name = false;
    disk.borrow_mut().calls.clear();
    let problem = writer.append(&Step::Dipstick, &[]).unwrap_err();
    assert!(matches!(problem.failure, WriteFailure::Deleted));
    assert_eq!(disk.borrow().calls, "");
}

/// A journal never grows beyond what is read back.
#[test]
fn limit_the_largest_journal_is_kept_to() {
    let one = written(&[(Step::Dipstick, vec![])]).len() as u64;
    let (_, mut writer) = begun(one);
    writer.append(&Step::Dipstick, &[]).unwrap();
    let (disk, mut writer) = begun(one - 1);
    let before = disk.borrow().bytes.clone();
    let problem = writer.append(&Step::Dipstick, &[]).unwrap_err();
    assert!(problem.restored);
    match problem.failure {
        WriteFailure::TooLarge { bytes, limit } => assert_eq!((bytes, limit), (one, one - 1)),
        other => panic!("{other:?}"),
    }
    assert_eq!(disk.borrow().bytes, before);
}

#[test]
fn limit_a_header_that_does_not_fit_is_told() {
    let disk = Shared::default();
    disk.borrow_mut().capacity = 10;
    let header = header_line(PROGRAM, &case()).unwrap();
    let problem = Writer::begin(Rc::clone(&disk), &header, LARGEST_BYTES).map(|_| ()).unwrap_err();
    assert!(matches!(problem.failure, WriteFailure::Short { written: 10, .. }));
    assert_eq!(disk.borrow().bytes, b"");
    disk.borrow_mut().refuses_write = true;
    let problem = Writer::begin(Rc::clone(&disk), &header, LARGEST_BYTES).map(|_| ()).unwrap_err();
    assert!(matches!(problem.failure, WriteFailure::Refused { action: Action::Write, .. }));
}

/// Numbers that JSON cannot hold are refused before anything is written.
#[test]
fn limit_numbers_that_are_not_finite_are_refused() {
    let (disk, mut writer) = begun(LARGEST_BYTES);
    disk.borrow_mut().calls.clear();
    for number in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY] {
        let oil = Event::OilSeen {
            level: number,
            dry: false,
            look: crate::session::event::OilLook::Dark,
            feel: crate::session::event::OilFeel::Usual,
            smells_of_fuel: false,
        };
        for (step, events, expected) in [
            (predicted(number, Bound::OverLimit), vec![], Part::Step),
            (predicted(0.0, Bound::Value(number)), vec![], Part::Step),
            (Step::Dipstick, vec![oil], Part::Events),
        ] {
            let problem = writer.append(&step, &events).unwrap_err();
            assert!(problem.restored);
            match problem.failure {
                WriteFailure::Unwritable { part } => assert_eq!(part, expected),
                other => panic!("{other:?}"),
            }
        }
    }
    assert_eq!(disk.borrow().calls, "");
    writer.append(&Step::Dipstick, &[]).unwrap();
}
