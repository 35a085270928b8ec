//! Files written by earlier programs, which every later one must read.

use super::super::line::header_line;
use super::super::{CaseRecord, Journal, JournalProblem, Mode, ReadMode, Sealed, read};
use super::samples::{every_step, steps_of_version_1, varied_events};
use super::{PROGRAM, written};
use crate::numerics::digest::Digest;
use std::fs;
use std::path::PathBuf;

/// Last chain values of the files, as `tests/reference/session_chain.py` computes them.
const LAST_CHAIN_1: &str = "7284555a5215b9134253d1f70283b40dce0614f96ef58a18278114f58690bb95";
const LAST_CHAIN_2: &str = "cdf7b10b964ae29dbb1cbfa1bfdd6add27a1ab8fd5e755b0735ae66a8f184757";

fn path(version: u32) -> PathBuf {
    let name = format!("tests/corpus/version-{version}.session");
    PathBuf::from(env!("CARGO_MANIFEST_DIR")).join(name)
}

#[test]
fn reference_every_version_is_read_with_its_chain() {
    for (version, chain, steps) in
        [(1, LAST_CHAIN_1, steps_of_version_1()), (2, LAST_CHAIN_2, every_step())]
    {
        let recorded = read(&path(version), ReadMode::Strict).unwrap();
        assert_eq!(recorded.version, version);
        assert_eq!(recorded.last_chain().to_string(), chain);
        let read: Vec<_> = recorded.entries.iter().map(|entry| entry.step.clone()).collect();
        assert_eq!(read, steps);
    }
}

/// What is read of an older version would be written otherwise today, so nothing is added to it.
#[test]
fn limit_a_session_of_an_older_version_is_not_gone_on_with() {
    let folder = tempfile::tempdir().unwrap();
    let copy = folder.path().join("old.session");
    fs::copy(path(1), &copy).unwrap();
    let before = fs::read(&copy).unwrap();
    let problem = Journal::resume(&copy).unwrap_err();
    assert!(matches!(problem, JournalProblem::OldVersion { version: 1, .. }), "{problem:?}");
    assert_eq!(fs::read(&copy).unwrap(), before);
}

/// Names of steps and events and the digits of numbers are part of the format. If this fails, the
/// version must be raised, the file stays, and the reader learns to migrate it.
#[test]
fn regress_the_same_bytes_are_written_as_version_2() {
    let taken: Vec<_> = every_step().into_iter().map(|step| (step, varied_events())).collect();
    let today = written(&taken);
    if fs::read(path(2)).ok().as_ref() != Some(&today) {
        let beside = path(2).with_extension("session.new");
        fs::write(&beside, today).unwrap();
        panic!(
            "written differently than before; {} has the difference, and may take the old file's \
             place only while no program with this version has been released",
            beside.display()
        );
    }
}

/// A case under a seal, as small as the format lets it be.
fn sealed() -> CaseRecord {
    let sealed = Sealed {
        name: "Çelik".to_owned(),
        title: "t".to_owned(),
        scenario: Digest::of(b"(x)"),
        salt: "00ff".to_owned(),
        case: "0a".to_owned(),
        lock: "1b".to_owned(),
    };
    CaseRecord {
        scenario_name: String::new(),
        scenario_text: String::new(),
        vehicle_text: String::new(),
        seed: 0,
        mode: Mode::Assessed,
        sealed: Some(Box::new(sealed)),
    }
}

/// Version 3 is that of sealed cases alone, and is gone on with like version 2.
#[test]
fn regress_a_sealed_case_is_written_and_resumed_as_version_3() {
    let today = header_line(PROGRAM, &sealed()).unwrap().text;
    let kept = fs::read_to_string(path(3)).unwrap();
    assert_eq!(kept, today, "the version must be raised, the file stays");
    let folder = tempfile::tempdir().unwrap();
    let copy = folder.path().join("sealed.session");
    fs::copy(path(3), &copy).unwrap();
    let (mut journal, recorded) = Journal::resume(&copy).unwrap();
    assert_eq!((recorded.version, &recorded.case), (3, &sealed()));
    journal.append(&every_step()[0], &[]).unwrap();
    drop(journal);
    assert_eq!(read(&copy, ReadMode::Strict).unwrap().entries.len(), 1);
}
