//! The source tree against the table, both ways, and every file against the rules.

use std::collections::{BTreeMap, BTreeSet};
use std::path::{Path, PathBuf};

use crate::findings::{Finding, fail_on_any};
use crate::house::{BINARY, DRAWERS, HOUSE, LONGEST_FILE, PLANNED};
use crate::rules;

/// A source file, with the path of its module.
struct Source {
    /// Path from the crate's folder, with `/`, for a message that an editor can follow.
    shown: String,
    at: Vec<String>,
    text: String,
}

fn crate_folder() -> &'static Path {
    Path::new(env!("CARGO_MANIFEST_DIR"))
}

fn sources() -> Vec<Source> {
    let mut paths = Vec::new();
    gather(&crate_folder().join("src"), &mut paths);
    paths.sort();
    let read = |path: PathBuf| {
        let inside = path.strip_prefix(crate_folder()).unwrap();
        let words: Vec<String> =
            inside.iter().map(|word| word.to_str().unwrap().to_owned()).collect();
        let shown = words.join("/");
        let text = std::fs::read_to_string(&path).unwrap();
        Source { at: module_path(&shown), shown, text }
    };
    paths.into_iter().map(read).collect()
}

fn gather(folder: &Path, into: &mut Vec<PathBuf>) {
    for entry in std::fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        if path.is_dir() {
            gather(&path, into);
        } else if path.extension().is_some_and(|extension| extension == "rs") {
            into.push(path);
        }
    }
}

/// The module that a file is, by the place of the file. The library's root has an empty path.
pub fn module_path(shown: &str) -> Vec<String> {
    let inside = shown.trim_start_matches("src/").trim_end_matches(".rs");
    let mut words: Vec<String> = inside.split('/').map(str::to_owned).collect();
    if words.last().is_some_and(|last| last == "mod" || (words.len() == 1 && last == "lib")) {
        words.pop();
    }
    words
}

fn is_test(at: &[String]) -> bool {
    at.iter().any(|word| word == "tests")
}

/// What is wrong between the table, the list of planned modules and the modules that are there.
pub fn table_against(there: &BTreeSet<String>, planned: &[&str]) -> Vec<String> {
    let mut wrong = Vec::new();
    for name in there {
        if !HOUSE.iter().any(|room| room.name == name) {
            wrong.push(format!("`src/{name}` has no row in the table"));
        }
    }
    for room in HOUSE {
        match (there.contains(room.name), planned.contains(&room.name)) {
            (true, true) => {
                wrong.push(format!("`{}` is there, so take it out of PLANNED", room.name));
            }
            (false, false) => {
                wrong.push(format!("`{}` is neither there nor in PLANNED", room.name));
            }
            (true, false) | (false, true) => {}
        }
    }
    for name in planned {
        if !HOUSE.iter().any(|room| room.name == *name) {
            wrong.push(format!("PLANNED has `{name}`, the table has not"));
        }
    }
    wrong
}

/// The lines of a file that count towards its length: all but its inline tests.
pub fn counted_lines(text: &str) -> usize {
    let all = text.lines().count();
    let Ok(file) = syn::parse_file(text) else { return all };
    let tests: usize = file
        .items
        .iter()
        .filter_map(|item| match item {
            syn::Item::Mod(item) if item.content.is_some() => Some(item),
            _ => None,
        })
        .filter(|item| item.attrs.iter().any(is_for_tests))
        .map(|item| {
            let from = item.attrs[0].pound_token.span.start().line;
            let brace = item.content.as_ref().map(|(brace, _)| brace.span.close().end().line);
            brace.map_or(0, |to| to + 1 - from)
        })
        .sum();
    all - tests
}

fn is_for_tests(attribute: &syn::Attribute) -> bool {
    attribute.path().is_ident("cfg")
        && attribute.parse_args::<syn::Ident>().is_ok_and(|word| word == "test")
}

/// What the library's root may hold: public modules in files of their own, and nothing else.
pub fn strangers_in_root(text: &str) -> Vec<String> {
    let file = syn::parse_file(text).unwrap();
    file.items
        .iter()
        .filter_map(|item| match item {
            syn::Item::Mod(item)
                if item.content.is_none() && matches!(item.vis, syn::Visibility::Public(_)) =>
            {
                None
            }
            syn::Item::Mod(item) => {
                Some(format!("`{}` is not a public module in a file", item.ident))
            }
            _ => Some("there is something other than `pub mod` lines".to_owned()),
        })
        .collect()
}

/// Whether a file or folder on this path has a name that says nothing.
pub fn drawer_in(shown: &str) -> Option<&str> {
    shown.split('/').map(|word| word.trim_end_matches(".rs")).find(|word| DRAWERS.contains(word))
}

#[test]
fn no_arrow_points_up_or_outside_its_leave() {
    let sources = sources();
    let findings = sources
        .iter()
        .flat_map(|source| rules::judge(&source.shown, &source.at, &source.text).findings)
        .collect();
    fail_on_any(findings, "these arrows are not in the table (tests/architecture/house.rs):");
}

#[test]
fn the_modules_name_each_other_in_no_ring() {
    let mut arrows: BTreeMap<String, BTreeSet<String>> = BTreeMap::new();
    for source in sources() {
        let verdict = rules::judge(&source.shown, &source.at, &source.text);
        if let Some(own) = source.at.first() {
            arrows.entry(own.clone()).or_default().extend(verdict.arrows);
        }
    }
    // The binary calls the command line, so a scan that saw nothing would be noticed here.
    assert!(arrows[BINARY].contains("command_line"), "the scan saw no arrow: {arrows:?}");
    assert_eq!(rules::ring(&arrows), None);
}

#[test]
fn the_table_is_the_tree() {
    assert_eq!(rules::doubled_row(), None, "a row is there twice");
    let there: BTreeSet<String> = sources()
        .iter()
        .filter_map(|source| source.at.first().cloned())
        .filter(|name| name != BINARY)
        .collect();
    let wrong = table_against(&there, PLANNED);
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
    let root = std::fs::read_to_string(crate_folder().join("src/lib.rs")).unwrap();
    for name in there {
        assert!(root.contains(&format!("pub mod {name};")), "src/lib.rs leaves out `{name}`");
    }
}

#[test]
fn the_root_of_the_library_is_only_a_list() {
    let root = std::fs::read_to_string(crate_folder().join("src/lib.rs")).unwrap();
    let strangers = strangers_in_root(&root);
    assert!(strangers.is_empty(), "src/lib.rs: {}", strangers.join("; "));
}

#[test]
fn no_file_is_a_drawer_and_none_is_too_long() {
    let mut findings = Vec::new();
    for source in sources() {
        if let Some(name) = drawer_in(&source.shown) {
            let said = format!("`{name}` says nothing about what is inside; name the thing itself");
            findings.push(Finding { file: source.shown.clone(), line: 1, said });
        }
        let lines = counted_lines(&source.text);
        if lines > LONGEST_FILE && !is_test(&source.at) {
            let said = format!("{lines} lines, tests not counted; {LONGEST_FILE} is the most");
            findings.push(Finding { file: source.shown, line: 1, said });
        }
    }
    fail_on_any(findings, "one idea a file, under a name that says it:");
}
