//! Files as earlier programs wrote them, kept in `tests/corpus/scenarios`: each loads, checks clean, and deals the case
//! that it is pinned to deal.

use crate::numerics::digest::DigestBuilder;
use crate::scenario::draw::{any_case, draw};
use crate::scenario::load::{Loaded, ScenarioText, load, read};
use crate::scenario::problem::ProblemKind;
use crate::scenario::tests::planted::{problems_of, replaced};
use std::path::PathBuf;
use std::sync::Arc;

fn corpus() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("tests/corpus/scenarios")
}

fn old(folder: &str) -> Loaded {
    let path = corpus().join(folder).join("market-hill.ron");
    load(&path).unwrap_or_else(|error| panic!("{folder}: {error:#?}"))
}

/// What is hidden in the first case, and the roads, as a short number.
fn pinned(loaded: Loaded) -> String {
    let case = draw(&Arc::new(loaded), 1, &any_case).unwrap();
    let mut builder = DigestBuilder::new("case of an old file");
    builder.text(&format!("{:?}", case.hidden.faults));
    builder.text(&format!("{:?}", case.hidden.old_codes));
    builder.text(&format!("{:?}", case.hidden.meter));
    builder.text(&format!("{:?}", case.briefing.routes));
    builder.finish().to_string()[..16].to_owned()
}

/// Every folder has its line here, and every line its folder.
const CASES: [(&str, &str); 5] = [
    ("cam-angles-from-the-module", "2dc3e3fa702a3c57"),
    ("cam-angles-in-the-road", "2dc3e3fa702a3c57"),
    ("cam-targets-in-the-road", "e698f26c0fe59485"),
    ("with-a-limit", "6ba4fff35419b83f"),
    ("with-a-starter", "2dc3e3fa702a3c57"),
];

#[test]
fn regress_every_old_file_loads_and_deals_its_case() {
    let mut folders: Vec<String> = std::fs::read_dir(corpus())
        .unwrap()
        .map(|entry| entry.unwrap().file_name().to_string_lossy().into_owned())
        .collect();
    folders.sort();
    assert_eq!(folders, CASES.map(|(folder, _)| folder));
    let found = CASES.map(|(folder, _)| (folder, pinned(old(folder))));
    let wanted = CASES.map(|(folder, digest)| (folder, digest.to_owned()));
    assert_eq!(found, wanted, "an old file deals another case than it did");
}

/// Wanted angles are gone from the road, a renamed speed is the same speed, and what was not said is as it was.
#[test]
fn regress_an_old_road_is_the_same_road() {
    let (first, second) = (old("cam-targets-in-the-road"), old("cam-angles-in-the-road"));
    let third = old("cam-angles-from-the-module");
    let road = &third.scenario.customers_route;
    assert_eq!(first.scenario.routes[road], second.scenario.routes[road]);
    assert_eq!(second.scenario.routes, third.scenario.routes);
}

/// A problem in an old file is shown where and as it is written there.
#[test]
fn limit_a_problem_of_an_old_file_keeps_its_place() {
    let Loaded { text, .. } = old("cam-angles-in-the-road");
    let from = "(until_s: 18, rpm: 1900, load: 0.45, intake_deg: 16, exhaust_deg: 10, km_h: 34)";
    let to = from.replace("km_h: 34", "km_h: 340");
    let scenario_text = replaced(&text.scenario_text, from, &to);
    let line = scenario_text.lines().position(|line| line.contains("km_h: 340")).unwrap();
    let column = scenario_text.lines().nth(line).unwrap().find("340").unwrap();
    let problems = problems_of(read(ScenarioText { scenario_text, ..text }));
    let [problem] = problems.as_slice() else { panic!("{problems:?}") };
    assert_eq!(problem.kind, ProblemKind::OutOfRange { found: 340.0, least: 0.0, most: 200.0 });
    assert_eq!((problem.line as usize, problem.column as usize), (line + 1, column + 1));
    assert!(problem.text.contains("intake_deg: 16"), "{}", problem.text);
}

/// What is gone is gone in a file of the newest version.
#[test]
fn limit_the_newest_version_does_not_take_old_words() {
    let Loaded { text, .. } = old("cam-angles-in-the-road");
    let scenario_text = replaced(&text.scenario_text, "version: 1", "version: 2");
    let problems = problems_of(read(ScenarioText { scenario_text, ..text }));
    assert!(
        matches!(&problems[..], [problem] if matches!(
            &problem.kind,
            ProblemKind::UnknownField { found, .. } if found == "intake_deg"
        )),
        "{problems:?}"
    );
}
