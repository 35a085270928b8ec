//! The table of the outside against the manifest, both ways.

use std::collections::BTreeSet;
use std::path::Path;

use crate::house::OUTSIDE;

/// Dependencies that the manifest names, as a path in the source writes them.
fn dependencies_in(manifest: &str) -> BTreeSet<String> {
    let mut found = BTreeSet::new();
    let mut inside = false;
    for line in manifest.lines() {
        if let Some(header) = line.strip_prefix('[') {
            let header = header.split(']').next().unwrap_or_default();
            inside = header.ends_with("dependencies");
            if let Some((_, name)) = header.rsplit_once("dependencies.") {
                found.insert(name.replace('-', "_"));
            }
        } else if inside && line.starts_with(|first: char| first.is_ascii_alphabetic()) {
            let name = line.split(['=', '.', ' ']).next().unwrap_or_default();
            found.insert(name.replace('-', "_"));
        }
    }
    found
}

/// Whether a row's first segment stands for this crate.
pub fn stands_for(pattern: &str, name: &str) -> bool {
    match pattern.strip_suffix('*') {
        Some(start) => name.starts_with(start),
        None => pattern == name,
    }
}

fn mismatches(manifest: &str) -> Vec<String> {
    let dependencies = dependencies_in(manifest);
    let crates: Vec<&str> =
        OUTSIDE.iter().map(|row| row.path).filter(|path| !path.starts_with("std")).collect();
    let mut wrong = Vec::new();
    for name in &dependencies {
        if !crates.iter().any(|pattern| stands_for(pattern, name)) {
            wrong.push(format!("dependency `{name}` has no row in the table of the outside"));
        }
    }
    for pattern in crates {
        // A crate of the engine reaches us through the engine, so `egui` needs no line of its own.
        let through = if pattern == "egui*" { "bevy_egui" } else { pattern };
        if !dependencies.iter().any(|name| stands_for(through, name)) {
            wrong.push(format!("the table of the outside has `{pattern}`, the manifest has not"));
        }
    }
    wrong
}

#[test]
fn every_dependency_has_a_row_and_every_row_its_dependency() {
    let manifest = Path::new(env!("CARGO_MANIFEST_DIR")).join("Cargo.toml");
    let wrong = mismatches(&std::fs::read_to_string(manifest).unwrap());
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

#[test]
fn a_manifest_with_a_stranger_is_refused_in_every_form() {
    for form in [
        "[dependencies]\nstranger-danger = \"1\"",
        "[dependencies.stranger-danger]\nversion = \"1\"",
        "[target.'cfg(unix)'.dependencies]\nstranger-danger.version = \"1\"",
        "[dev-dependencies]\nstranger-danger = { version = \"1\" }",
    ] {
        let wrong = mismatches(form);
        assert!(wrong[0].contains("`stranger_danger` has no row"), "{form}: {wrong:?}");
    }
}

#[test]
fn a_row_without_its_dependency_is_refused() {
    assert!(mismatches("[dependencies]\n").iter().any(|said| said.contains("has `clap`")));
}
