//! A file written by an earlier program, which every later one must read.

use super::super::{ReadMode, read};
use super::samples::{every_kind_of_step, varied_events};
use super::written;
use std::fs;
use std::path::PathBuf;

/// Last chain value of the file, as `tests/reference/session_chain.py` computes it.
const LAST_CHAIN: &str = "7284555a5215b9134253d1f70283b40dce0614f96ef58a18278114f58690bb95";

fn path() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("tests/corpus/version-1.session")
}

#[test]
fn reference_version_1_is_read_with_its_chain() {
    let recorded = read(&path(), ReadMode::Strict).unwrap();
    assert_eq!(recorded.version, 1);
    assert_eq!(recorded.last_chain().to_string(), LAST_CHAIN);
    let steps: Vec<_> = recorded.entries.iter().map(|entry| entry.step.clone()).collect();
    assert_eq!(steps, every_kind_of_step());
}

/// Names of steps and events and the digits of numbers are part of the format. If this fails, the
/// version must be raised, the file stays, and the reader learns to migrate it.
#[test]
fn regress_the_same_bytes_are_written_as_version_1() {
    let taken: Vec<_> =
        every_kind_of_step().into_iter().map(|step| (step, varied_events())).collect();
    let today = written(&taken);
    if fs::read(path()).ok().as_ref() != Some(&today) {
        let beside = path().with_extension("session.new");
        fs::write(&beside, today).unwrap();
        panic!(
            "written differently than before; {} has the difference, and may take the old file's \
             place only while no program with this version has been released",
            beside.display()
        );
    }
}
