//! Published values against the functions that a session calls, and the page that lists them.
//!
//! Every row of docs/validation.md is data here: what was published and where, what the program
//! says, and how far the two may lie apart. The first test compares the rows, the second the page:
//!
//! ```text
//! FAULTWRIGHT_WRITE_VALIDATION=1 cargo test --no-default-features --test validation
//! ```
#![expect(clippy::expect_used, reason = "a test fails by panicking")]

mod area;
mod battery;
mod bench;
mod chosen;
mod circuits;
mod codes;
mod copper;
mod hydraulics;
mod idle;
#[path = "../idle/mod.rs"]
mod idle_reference;
mod oil;
mod page;
mod planning;
mod programs;
mod row;
mod services;
mod solenoids;
mod sources;
mod stored;
mod wiring_reference;

use row::{Evidence, Ours, Row, Wanted};
use std::collections::BTreeSet;
use std::path::PathBuf;

#[test]
fn published_every_row_is_within_what_is_allowed() {
    let areas = area::all();
    let rows: Vec<&Row> = areas.iter().flat_map(|area| &area.rows).collect();
    let wrong: Vec<String> = rows
        .iter()
        .filter(|row| !row.holds())
        .map(|row| format!("{}: published {}, ours {:?}", row.item, row.published_text(), row.ours))
        .collect();
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
    assert!(rows.len() >= 40, "only {} rows are left", rows.len());
}

#[test]
fn reference_every_other_program_agrees() {
    for comparison in programs::all() {
        assert!(comparison.holds, "{}: {}", comparison.what, comparison.greatest);
        assert!(comparison.compared > 0, "{}: nothing compared", comparison.what);
    }
}

/// The page in the repository is what the rows say today.
#[test]
fn regress_the_page_is_what_the_rows_say() {
    let path = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("docs/validation.md");
    let wanted = page::text(&area::all(), &programs::all(), &chosen::all());
    if std::env::var_os("FAULTWRIGHT_WRITE_VALIDATION").is_some() {
        std::fs::write(&path, &wanted).expect("writing the page");
    }
    let stored = std::fs::read_to_string(&path).unwrap_or_default();
    let differs = wanted.lines().zip(stored.lines()).find(|(ours, page)| ours != page);
    assert!(
        wanted == stored,
        "docs/validation.md is stale: {differs:?}\nwrite it anew with \
         FAULTWRIGHT_WRITE_VALIDATION=1 cargo test --no-default-features --test validation"
    );
}

/// Every source is cited under a name of its own, and none is listed for nothing.
#[test]
fn limit_every_source_is_used_and_named_once() {
    let keys: BTreeSet<&str> = sources::ALL.iter().map(|source| source.key).collect();
    assert_eq!(keys.len(), sources::ALL.len());
    let areas = area::all();
    let mut cited: BTreeSet<String> =
        areas.iter().flat_map(|area| &area.rows).map(|row| row.source.key.to_owned()).collect();
    cited.extend(chosen::all().into_iter().map(|entry| entry.source));
    for key in keys {
        assert!(cited.contains(key), "nothing cites {key}");
    }
}

/// A comparison that cannot fail would prove nothing.
#[test]
fn limit_a_row_that_is_off_is_found() {
    let row = |wanted, ours| Row {
        item: "",
        source: &sources::ARITHMETIC,
        wanted,
        ours,
        unit: "A",
        decimals: 1,
        reason: "",
        evidence: Evidence::ClosedForm,
    };
    assert!(row(Wanted::Value(1.0, 0.1), Ours::Value(1.05)).holds());
    assert!(!row(Wanted::Value(1.0, 0.1), Ours::Value(1.15)).holds());
    assert!(!row(Wanted::Value(1.0, 0.1), Ours::Value(f64::NAN)).holds());
    assert!(!row(Wanted::Range(1.0, 2.0), Ours::Value(2.1)).holds());
    assert!(!row(Wanted::Words("P0010"), Ours::Words("P0011".to_owned())).holds());
    assert!(!row(Wanted::Words("1"), Ours::Value(1.0)).holds());
    let below = row(Wanted::Value(0.0, 1.0), Ours::Value(-0.001));
    assert_eq!((below.ours_text(), below.difference_text()), ("0.0 A".into(), "0.00".into()));
}
