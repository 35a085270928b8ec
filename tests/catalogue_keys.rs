//! The catalogues and the code agree: each message that the code asks for is there, and each
//! message that is there is asked for.
#![expect(clippy::unwrap_used, reason = "a test fails by panicking")]

use std::collections::BTreeSet;
use std::fs;
use std::path::{Path, PathBuf};

fn below(folder: &Path, ending: &str, found: &mut Vec<PathBuf>) {
    for entry in fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        // The code's own tests ask for messages that nobody else may need.
        if path.ends_with("tests") || path.ends_with("tests.rs") {
            continue;
        }
        if path.is_dir() {
            below(&path, ending, found);
        } else if path.extension().is_some_and(|name| name == ending) {
            found.push(path);
        }
    }
}

fn texts(folder: &str, ending: &str) -> Vec<String> {
    let mut paths = Vec::new();
    below(&Path::new(env!("CARGO_MANIFEST_DIR")).join(folder), ending, &mut paths);
    assert!(!paths.is_empty(), "no {ending} file in {folder}");
    paths.iter().map(|path| fs::read_to_string(path).unwrap()).collect()
}

/// The source without its tests, whose keys may be wrong on purpose, and without its comments.
fn source() -> String {
    let mut text = String::new();
    for file in texts("src", "rs") {
        let code = file.split("#[cfg(test)]\nmod tests {").next().unwrap_or_default();
        for line in code.lines().filter(|line| !line.trim_start().starts_with("//")) {
            text.push_str(line);
            text.push('\n');
        }
    }
    text
}

fn messages() -> BTreeSet<String> {
    texts("assets/locales/en-GB", "ftl")
        .iter()
        .flat_map(|text| text.lines())
        .filter(|line| line.starts_with(|c: char| c.is_ascii_alphabetic()))
        .filter_map(|line| Some(line.split_once(" =")?.0.to_owned()))
        .collect()
}

/// Keys that stand as they are behind a call that looks a message up.
fn asked_for(source: &str) -> BTreeSet<String> {
    ["say(", "find(", "plain(", "with_place("]
        .iter()
        .flat_map(|call| source.split(call).skip(1))
        .filter_map(|rest| rest.trim_start().strip_prefix('"')?.split('"').next())
        .filter(|key| key.contains('-') && key.chars().all(|c| c.is_ascii_lowercase() || c == '-'))
        .map(str::to_owned)
        .collect()
}

#[test]
fn every_message_that_the_code_asks_for_is_there() {
    let (asked, messages) = (asked_for(&source()), messages());
    assert!(asked.len() > 50, "the search found only {}", asked.len());
    let missing: Vec<&String> = asked.difference(&messages).collect();
    assert!(missing.is_empty(), "{missing:?}");
}

#[test]
fn every_message_that_is_there_is_asked_for() {
    let source = source();
    // Names of places and codes are looked up by what the vehicle calls them.
    let open = ["place-", "code-P", "code-C", "code-B", "code-U"];
    let unused: Vec<String> = messages()
        .into_iter()
        .filter(|name| !open.iter().any(|prefix| name.starts_with(prefix)))
        .filter(|name| !source.contains(&format!("\"{name}\"")))
        .collect();
    assert!(unused.is_empty(), "{unused:?}");
}

#[test]
fn the_search_finds_keys_and_nothing_else() {
    let planted =
        "words.say(\"a-b\", &[]); plain( \"c-d\"); find(\"{x}\"); say(key); x.find(\"ab\")";
    let found: Vec<String> = asked_for(planted).into_iter().collect();
    assert_eq!(found, ["a-b", "c-d"]);
}
