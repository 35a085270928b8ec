//! Files that mean harm, or might as well, kept in `tests/corpus/hostile` with what is said of each in `expected.txt`.

use crate::scenario::load::{LoadError, load};
use crate::scenario::problem::{FileTrouble, Problem};
use std::fmt::Write as _;
use std::path::{Path, PathBuf};

fn corpus() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("tests/corpus/hostile")
}

/// A problem's kind by the word that other programs read.
fn word(problem: &Problem) -> String {
    let kind = serde_json::to_value(&problem.kind).unwrap();
    let fault = kind["fault"].as_str().map(|fault| format!(" {fault}")).unwrap_or_default();
    format!("{}{fault}", kind["problem"].as_str().unwrap())
}

/// What is said of a file: each problem with its place, and what is shown of it.
fn said(path: &Path) -> String {
    match load(path) {
        Ok(_) => "nothing".to_owned(),
        Err(LoadError::Unreadable { trouble: FileTrouble::NotUtf8 { line, column }, .. }) => {
            format!("{line}:{column} not-utf8")
        }
        Err(LoadError::Unreadable { trouble, .. }) => format!("{trouble:?}"),
        Err(LoadError::Problems { problems, left_off }) => {
            assert_eq!(left_off, 0);
            for problem in &problems {
                assert!(problem.text.chars().count() <= 160, "{}", path.display());
                let said = format!("{} {:?}", problem.text, problem.kind);
                let turns = |c: char| c.is_control() || ('\u{202a}'..='\u{202e}').contains(&c);
                assert!(!said.chars().any(turns), "{}", path.display());
            }
            let of = |problem: &Problem| {
                let file = if problem.file.starts_with("vehicles/") { &*problem.file } else { "" };
                format!("{file} {}:{} {}", problem.line, problem.column, word(problem))
            };
            problems
                .iter()
                .map(of)
                .map(|said| said.trim().to_owned())
                .collect::<Vec<_>>()
                .join("; ")
        }
    }
}

/// Every file is refused, at once, with one clear error at its place.
#[test]
fn regress_every_hostile_file_is_refused_as_expected() {
    let mut names: Vec<String> = std::fs::read_dir(corpus())
        .unwrap()
        .map(|entry| entry.unwrap().file_name().to_string_lossy().into_owned())
        .filter_map(|name| name.strip_suffix(".ron").map(str::to_owned))
        .collect();
    names.sort();
    assert!(names.len() > 35, "only {} files", names.len());
    let mut found = String::new();
    for name in names {
        writeln!(found, "{name}: {}", said(&corpus().join(format!("{name}.ron")))).unwrap();
    }
    let expected = std::fs::read_to_string(corpus().join("expected.txt")).unwrap();
    assert!(!found.contains(": nothing\n"), "{found}");
    assert!(found == expected, "what is said has changed:\n{found}");
}
