//! Journals as real files.

use super::super::{
    Action, Flaw, Journal, JournalProblem, LARGEST_BYTES, ReadMode, WriteFailure, read,
};
use super::{case, lines, taken};
use crate::session::step::Step;
use std::fs::{self, File};
use std::io;
use std::path::{Path, PathBuf};
use tempfile::{TempDir, tempdir};

fn place() -> (TempDir, PathBuf) {
    let folder = tempdir().unwrap();
    let path = folder.path().join("case.session");
    (folder, path)
}

/// Writes the sample journal as the program does.
fn write_sample(path: &Path) -> Vec<u8> {
    let mut journal = Journal::create(path, &case()).unwrap();
    for (step, events) in taken() {
        journal.append(&step, &events).unwrap();
    }
    drop(journal);
    fs::read(path).unwrap()
}

fn torn_path(path: &Path) -> PathBuf {
    let mut name = path.as_os_str().to_owned();
    name.push(".torn");
    name.into()
}

#[test]
fn limit_created_written_and_read() {
    let (_folder, path) = place();
    let mut journal = Journal::create(&path, &case()).unwrap();
    assert_eq!((journal.entries(), journal.path()), (0, path.as_path()));
    for (count, (step, events)) in (1..).zip(taken()) {
        journal.append(&step, &events).unwrap();
        assert_eq!(journal.entries(), count);
        let looked_at = read(&path, ReadMode::AllowTorn).unwrap();
        assert_eq!(looked_at.last_chain(), journal.last_chain(), "on the disk on return");
    }
    drop(journal);
    let recorded = read(&path, ReadMode::Strict).unwrap();
    assert_eq!((recorded.program.as_str(), recorded.case), (env!("CARGO_PKG_VERSION"), case()));
    for (entry, (step, events)) in recorded.entries.iter().zip(taken()) {
        assert_eq!(entry.step, step);
        assert!(entry.agrees_with(&events));
    }
}

#[test]
fn limit_an_existing_file_is_not_overwritten() {
    let (folder, path) = place();
    fs::write(&path, "notes").unwrap();
    let problem = Journal::create(&path, &case()).unwrap_err();
    assert!(matches!(&problem, JournalProblem::AlreadyExists { path: at } if *at == path));
    assert_eq!(fs::read(&path).unwrap(), b"notes");
    let problem = Journal::create(folder.path(), &case()).unwrap_err();
    assert!(matches!(problem, JournalProblem::AlreadyExists { .. }));
}

#[test]
fn limit_a_place_that_takes_no_file_is_told() {
    let (folder, path) = place();
    fs::write(&path, "notes").unwrap();
    let mut places = vec![
        (folder.path().join("missing/case.session"), Some(io::ErrorKind::NotFound)),
        (folder.path().join("x".repeat(5_000)), None),
    ];
    if cfg!(unix) {
        places.push((path.join("case.session"), Some(io::ErrorKind::NotADirectory)));
    }
    if cfg!(target_os = "linux") {
        places.push((PathBuf::from("/proc/case.session"), None));
    }
    for (place, kind) in places {
        match Journal::create(&place, &case()).unwrap_err() {
            JournalProblem::Io { path, action: Action::Create, source } => {
                assert_eq!(path, place);
                assert!(kind.is_none_or(|kind| kind == source.kind()), "{source:?}");
            }
            other => panic!("{other:?}"),
        }
    }
}

#[test]
fn limit_a_file_that_is_not_there_is_told() {
    let (folder, path) = place();
    for problem in [
        read(&path, ReadMode::Strict).unwrap_err(),
        read(&path, ReadMode::AllowTorn).unwrap_err(),
        Journal::resume(&path).map(|_| ()).unwrap_err(),
    ] {
        match problem {
            JournalProblem::Io { action: Action::Open, source, .. } => {
                assert_eq!(source.kind(), io::ErrorKind::NotFound);
            }
            other => panic!("{other:?}"),
        }
    }
    assert!(!path.exists());
    let mut places = vec![folder.path().to_owned()];
    if cfg!(unix) {
        places.push("/dev/zero".into());
    }
    for place in places {
        let problem = read(&place, ReadMode::AllowTorn).unwrap_err();
        assert!(matches!(problem, JournalProblem::NotAFile { .. }), "{problem:?}");
        let problem = Journal::resume(&place).map(|_| ()).unwrap_err();
        assert!(matches!(problem, JournalProblem::NotAFile { .. }), "{problem:?}");
    }
}

#[test]
fn limit_one_writer_at_a_time() {
    let (_folder, path) = place();
    let mut first = Journal::create(&path, &case()).unwrap();
    first.append(&Step::Dipstick, &[]).unwrap();
    for problem in [
        Journal::resume(&path).map(|_| ()).unwrap_err(),
        read(&path, ReadMode::Strict).unwrap_err(),
    ] {
        assert!(matches!(&problem, JournalProblem::InUse { path: at } if *at == path));
    }
    drop(first);
    let (mut second, recorded) = Journal::resume(&path).unwrap();
    assert_eq!(recorded.entries.len(), 1);
    assert!(matches!(Journal::resume(&path), Err(JournalProblem::InUse { .. })));
    second.append(&Step::ReadCodes, &[]).unwrap();
    drop(second);
    assert_eq!(read(&path, ReadMode::Strict).unwrap().entries.len(), 2);
}

/// Many may mark at once, and nobody writes meanwhile.
#[test]
fn limit_readers_do_not_shut_each_other_out() {
    let (_folder, path) = place();
    let bytes = write_sample(&path);
    let other_reader = File::open(&path).unwrap();
    other_reader.lock_shared().unwrap();
    read(&path, ReadMode::Strict).unwrap();
    assert!(matches!(Journal::resume(&path), Err(JournalProblem::InUse { .. })));
    assert_eq!(fs::read(&path).unwrap(), bytes);
}

/// A kill at every byte of the last entry: all others are there, and the session goes on to the
/// same journal as without the kill.
#[test]
fn limit_a_torn_tail_at_every_byte_is_resumed() {
    let (folder, path) = place();
    let whole = write_sample(&path);
    let lines = lines(&whole);
    let last = lines.last().unwrap();
    let start = whole.len() - last.len();
    let (step, events) = taken().pop().unwrap();
    let entries = read(&path, ReadMode::Strict).unwrap().entries;
    for length in 0..last.len() {
        let path = folder.path().join(format!("{length}.session"));
        let torn = &last[..length];
        fs::write(&path, &whole[..start + length]).unwrap();
        if length > 0 {
            match read(&path, ReadMode::Strict).unwrap_err() {
                JournalProblem::Torn { entry, bytes, .. } => {
                    assert_eq!((entry, bytes), (4, length as u64));
                }
                other => panic!("{other:?}"),
            }
        }
        let looked_at = read(&path, ReadMode::AllowTorn).unwrap();
        assert_eq!(fs::read(&path).unwrap().len(), start + length, "reading changes nothing");
        let (mut journal, recorded) = Journal::resume(&path).unwrap();
        assert_eq!(recorded, looked_at);
        assert_eq!(recorded.entries, entries[..3]);
        assert_eq!(recorded.torn.map(|torn| torn.bytes).unwrap_or_default(), torn);
        assert_eq!(fs::read(&path).unwrap(), whole[..start]);
        if length > 0 {
            assert_eq!(fs::read(torn_path(&path)).unwrap(), [torn, b"\n"].concat());
        } else {
            assert!(!torn_path(&path).exists());
        }
        journal.append(&step, &events).unwrap();
        drop(journal);
        assert_eq!(fs::read(&path).unwrap(), whole);
    }
}

#[test]
fn limit_a_second_torn_tail_is_kept_beside_the_first() {
    let (_folder, path) = place();
    let whole = write_sample(&path);
    for cut in [1, 20] {
        fs::write(&path, &whole[..whole.len() - cut]).unwrap();
        drop(Journal::resume(&path).unwrap());
    }
    let last = lines(&whole).pop().unwrap();
    let expected = [&last[..last.len() - 1], b"\n", &last[..last.len() - 20], b"\n"].concat();
    assert_eq!(fs::read(torn_path(&path)).unwrap(), expected);
}

/// What cannot be saved is not cut off.
#[test]
fn limit_a_torn_tail_that_cannot_be_saved_stays() {
    let (_folder, path) = place();
    let whole = write_sample(&path);
    let torn = &whole[..whole.len() - 9];
    fs::write(&path, torn).unwrap();
    fs::create_dir(torn_path(&path)).unwrap();
    match Journal::resume(&path).map(|_| ()).unwrap_err() {
        JournalProblem::Io { path: at, action: Action::SaveTorn, .. } => {
            assert_eq!(at, torn_path(&path));
        }
        other => panic!("{other:?}"),
    }
    assert_eq!(fs::read(&path).unwrap(), torn);
}

#[test]
fn limit_a_flawed_journal_is_neither_resumed_nor_changed() {
    let (_folder, path) = place();
    let mut bytes = write_sample(&path);
    let header = lines(&bytes)[0].len();
    bytes[header + 25] ^= 1;
    bytes.truncate(bytes.len() - 4);
    fs::write(&path, &bytes).unwrap();
    for problem in [
        read(&path, ReadMode::Strict).unwrap_err(),
        read(&path, ReadMode::AllowTorn).unwrap_err(),
        Journal::resume(&path).map(|_| ()).unwrap_err(),
    ] {
        match problem {
            JournalProblem::Flawed { path: at, flaw: Flaw::ChainBroken { entry: 1, .. } } => {
                assert_eq!(at, path);
            }
            other => panic!("{other:?}"),
        }
    }
    assert_eq!(fs::read(&path).unwrap(), bytes);
    assert!(!torn_path(&path).exists());
}

#[test]
fn limit_a_file_larger_than_any_session_is_not_read() {
    let (_folder, path) = place();
    let file = File::create(&path).unwrap();
    file.set_len(LARGEST_BYTES + 1).unwrap();
    for problem in [
        read(&path, ReadMode::AllowTorn).unwrap_err(),
        Journal::resume(&path).map(|_| ()).unwrap_err(),
    ] {
        assert!(matches!(problem, JournalProblem::TooLarge { limit: LARGEST_BYTES, .. }));
    }
    file.set_len(LARGEST_BYTES).unwrap();
    let problem = read(&path, ReadMode::AllowTorn).unwrap_err();
    assert!(matches!(problem, JournalProblem::Flawed { flaw: Flaw::NotAJournal, .. }));
}

/// A failed beginning leaves nothing that would be in the way of the next.
#[test]
fn limit_a_case_that_is_too_large_leaves_no_file() {
    let (_folder, path) = place();
    let mut large = case();
    large.scenario_text = "x".repeat(usize::try_from(LARGEST_BYTES).unwrap());
    match Journal::create(&path, &large).unwrap_err() {
        JournalProblem::NotCreated { failure, removed, .. } => {
            assert!(removed);
            assert!(matches!(failure, WriteFailure::TooLarge { limit: LARGEST_BYTES, .. }));
        }
        other => panic!("{other:?}"),
    }
    assert!(!path.exists());
    Journal::create(&path, &case()).unwrap();
}

#[cfg(unix)]
#[test]
fn limit_a_journal_deleted_under_the_session_is_told() {
    let (_folder, path) = place();
    let mut journal = Journal::create(&path, &case()).unwrap();
    fs::remove_file(&path).unwrap();
    match journal.append(&Step::Dipstick, &[]).unwrap_err() {
        JournalProblem::NotAppended { entry, failure, .. } => {
            assert_eq!(entry, 1);
            assert!(matches!(failure, WriteFailure::Deleted));
        }
        other => panic!("{other:?}"),
    }
}
