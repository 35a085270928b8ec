//! Files that mean harm, or might as well.

use super::planted::{problems_of, replaced};
use crate::scenario::load::{LoadError, ScenarioText, load, read};
use crate::scenario::problem::{FileTrouble, MOST_PROBLEMS, ProblemKind, Thing};
use proptest::prelude::*;
use std::fs;
use std::path::Path;

fn scenario_of(text: String) -> ScenarioText {
    ScenarioText { scenario_text: text, ..ScenarioText::demo() }
}

fn only_kind(result: Result<crate::scenario::load::Loaded, LoadError>) -> ProblemKind {
    let problems = problems_of(result);
    assert_eq!(problems.len(), 1, "{problems:?}");
    problems.into_iter().next().unwrap().kind
}

/// Writes the demo into a folder, with another vehicle named in the scenario.
fn written(folder: &Path, vehicle: &str) -> std::path::PathBuf {
    let demo = ScenarioText::demo();
    let text = replaced(
        &demo.scenario_text,
        "vehicle: \"harrowfen-dray\"",
        &format!("vehicle: {vehicle:?}"),
    );
    let path = folder.join("story.ron");
    fs::write(&path, text).unwrap();
    fs::create_dir_all(folder.join("vehicles")).unwrap();
    fs::write(folder.join("vehicles/plain-van.ron"), demo.vehicle_text).unwrap();
    path
}

#[test]
fn deep_nesting_is_refused() {
    for open in ["(", "[", "{", "Some(", "faults:[", "/*", "{a:", "(a:"] {
        let text = open.repeat((1 << 20) / open.len());
        assert!(matches!(read(scenario_of(text)), Err(LoadError::Problems { .. })), "{open}");
    }
    let text = ScenarioText::demo();
    let deep = format!("faults: [{}", "[".repeat(1_000_000 - text.scenario_text.len()));
    let text = replaced(&text.scenario_text, "faults: [", &deep);
    assert_eq!(only_kind(read(scenario_of(text))), ProblemKind::TooDeep { most: 32 });
}

#[test]
fn long_numbers_words_and_lines_are_refused_and_shown_short() {
    for long in
        ["9".repeat(900_000), "x".repeat(900_000), format!("\"{}\"", "\u{1b}[2J".repeat(200_000))]
    {
        let demo = ScenarioText::demo().scenario_text;
        let text = replaced(&demo, "vehicle: \"harrowfen-dray\"", &format!("vehicle: {long}"));
        let problems = problems_of(read(scenario_of(text)));
        let [problem] = problems.as_slice() else { panic!("{problems:?}") };
        assert!(problem.text.chars().count() <= 160);
        assert!(!problem.text.contains('\u{1b}'));
        if let ProblemKind::BadName { found } = &problem.kind {
            assert!(found.chars().count() <= 60 && !found.contains('\u{1b}'));
        }
    }
}

#[test]
fn many_problems_are_counted_and_not_all_kept() {
    let demo = ScenarioText::demo().scenario_text;
    let entry = "(kind: LowOil, place: \"sumpf\", weight: -1, severity: (2, -2)),";
    let text = replaced(&demo, "faults: [", &format!("faults: [{}", entry.repeat(200)));
    let Err(LoadError::Problems { problems, left_off }) = read(scenario_of(text)) else {
        panic!("expected problems")
    };
    assert_eq!(problems.len(), MOST_PROBLEMS);
    // Place, weight, two severities and their order in each; all but the first repeat it.
    assert_eq!(left_off, 200 * 5 + 199 - MOST_PROBLEMS);
}

#[test]
fn file_of_two_mebibytes_is_refused() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("large.ron");
    fs::write(&path, vec![b' '; 2 << 20]).unwrap();
    let too_large = FileTrouble::TooLarge { most: 1 << 20 };
    let refused = LoadError::Unreadable { file: "large.ron".to_owned(), trouble: too_large };
    assert_eq!(load(&path), Err(refused));
    let text = scenario_of(" ".repeat(2 << 20));
    let file = "market-hill.ron".to_owned();
    assert_eq!(read(text), Err(LoadError::Unreadable { file, trouble: too_large }));
    // A file of the allowed size is read, and found to hold nothing.
    fs::write(&path, vec![b' '; 1 << 20]).unwrap();
    assert!(matches!(load(&path), Err(LoadError::Problems { .. })));
}

#[test]
fn file_that_is_none_or_not_text() {
    let folder = tempfile::tempdir().unwrap();
    let trouble_at = |path: &Path| match load(path) {
        Err(LoadError::Unreadable { trouble, .. }) => trouble,
        other => panic!("{other:?}"),
    };
    assert_eq!(trouble_at(&folder.path().join("none.ron")), FileTrouble::NotFound);
    assert_eq!(trouble_at(folder.path()), FileTrouble::NotAFile);
    assert_eq!(trouble_at(Path::new("")), FileTrouble::NotFound);
    let path = folder.path().join("latin.ron");
    fs::write(&path, b"(\n  // caf\xe9\n)").unwrap();
    assert_eq!(trouble_at(&path), FileTrouble::NotUtf8 { line: 2, column: 9 });
}

#[test]
fn byte_order_mark_and_lines_of_another_system_are_taken() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("marked.ron");
    let demo = ScenarioText::demo().scenario_text;
    fs::write(&path, format!("\u{feff}{}", demo.replace('\n', "\r\n"))).unwrap();
    assert_eq!(load(&path).unwrap().scenario, read(ScenarioText::demo()).unwrap().scenario);
}

#[test]
fn problems_can_be_written_for_other_programs() {
    let problems = problems_of(read(scenario_of("(titel: 1)".to_owned())));
    let json = serde_json::to_value(&problems).unwrap();
    assert_eq!(json[0]["kind"]["problem"], "unknown-field");
    assert_eq!(json[0]["kind"]["nearest"], "title");
    assert_eq!((&json[0]["line"], &json[0]["column"]), (&1.into(), &2.into()));
}

#[test]
fn vehicle_is_found_beside_the_scenario_then_among_those_carried() {
    let folder = tempfile::tempdir().unwrap();
    let loaded = load(&written(folder.path(), "plain-van")).unwrap();
    assert_eq!(loaded.text.scenario_name, "story");
    assert_eq!(loaded.text.vehicle_text, ScenarioText::demo().vehicle_text);
    assert!(load(&written(folder.path(), "harrowfen-dray")).is_ok());
    // One in the folder is taken before one that is carried.
    fs::write(folder.path().join("vehicles/harrowfen-dray.ron"), "(").unwrap();
    assert!(load(&written(folder.path(), "harrowfen-dray")).is_err());
}

#[test]
fn vehicle_that_does_not_exist_has_a_nearest_one() {
    let folder = tempfile::tempdir().unwrap();
    for (found, nearest) in [("plain-vann", "plain-van"), ("harowfen-dray", "harrowfen-dray")] {
        let problems = problems_of(load(&written(folder.path(), found)));
        let [problem] = problems.as_slice() else { panic!("{problems:?}") };
        assert_eq!((problem.line, problem.column), (9, 14));
        assert_eq!(
            problem.kind,
            ProblemKind::UnknownName {
                thing: Thing::Vehicle,
                found: found.to_owned(),
                nearest: Some(nearest.to_owned()),
            }
        );
    }
}

#[test]
fn vehicle_name_cannot_leave_its_folder() {
    let folder = tempfile::tempdir().unwrap();
    fs::write(folder.path().join("outside.ron"), ScenarioText::demo().vehicle_text).unwrap();
    let inside = folder.path().join("inside");
    fs::create_dir(&inside).unwrap();
    for name in
        ["../../outside", "..\\..\\outside", "/etc/passwd", "C:outside", ".", "..", ".hidden"]
    {
        let kind = only_kind(load(&written(&inside, name)));
        assert_eq!(kind, ProblemKind::LeavesFolder { found: name.to_owned() });
    }
    for name in ["", "plain-van.ron", "plain van", "Plain-Van", "plain-van\u{0}", "plain--van"] {
        let kind = only_kind(load(&written(&inside, name)));
        assert!(matches!(kind, ProblemKind::BadName { .. }), "{name:?} {kind:?}");
    }
}

#[cfg(unix)]
#[test]
fn vehicle_behind_a_link_cannot_leave_its_folder() {
    let folder = tempfile::tempdir().unwrap();
    let outside = folder.path().join("outside.ron");
    fs::write(&outside, ScenarioText::demo().vehicle_text).unwrap();
    let inside = folder.path().join("inside");
    fs::create_dir(&inside).unwrap();
    let scenario = written(&inside, "linked-van");
    let vehicles = inside.join("vehicles");
    fs::create_dir_all(&vehicles).unwrap();
    let link = vehicles.join("linked-van.ron");
    std::os::unix::fs::symlink(&outside, &link).unwrap();
    let found = "linked-van".to_owned();
    assert_eq!(only_kind(load(&scenario)), ProblemKind::LeavesFolder { found });
    // A link to another file of the folder stays in it, and so does a folder that is a link as a whole.
    fs::remove_file(&link).unwrap();
    fs::write(vehicles.join("other.ron"), ScenarioText::demo().vehicle_text).unwrap();
    std::os::unix::fs::symlink("other.ron", &link).unwrap();
    load(&scenario).unwrap();
    let elsewhere = folder.path().join("elsewhere");
    fs::rename(&vehicles, &elsewhere).unwrap();
    std::os::unix::fs::symlink(&elsewhere, &vehicles).unwrap();
    load(&scenario).unwrap();
}

#[test]
fn vehicle_that_is_a_folder_is_told() {
    let folder = tempfile::tempdir().unwrap();
    let path = written(folder.path(), "odd");
    fs::create_dir(folder.path().join("vehicles/odd.ron")).unwrap();
    let kind = only_kind(load(&path));
    let file = "vehicles/odd.ron".to_owned();
    assert_eq!(kind, ProblemKind::VehicleUnreadable { file, trouble: FileTrouble::NotAFile });
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::with_cases(300) })]

    /// Whatever is done to the text, the answer is problems and never a panic.
    #[test]
    fn prop_cut_and_stirred_files_are_read_or_refused(
        at in 0_usize..9_000, length in 0_usize..60, put in "[\\[\\](){}:,\"a-z0-9./*\\\\#! \n-]{0,12}", in_vehicle: bool,
    ) {
        let mut text = ScenarioText::demo();
        let stirred = if in_vehicle { &mut text.vehicle_text } else { &mut text.scenario_text };
        let letters: Vec<char> = stirred.chars().collect();
        let at = at.min(letters.len());
        let end = (at + length).min(letters.len());
        *stirred = letters[..at].iter().copied().chain(put.chars()).chain(letters[end..].iter().copied()).collect();
        let lines = text.scenario_text.lines().count().max(text.vehicle_text.lines().count());
        match read(text) {
            Ok(_) => {}
            Err(LoadError::Problems { problems, .. }) => {
                prop_assert!(!problems.is_empty());
                for problem in problems {
                    prop_assert!(problem.line >= 1 && problem.line as usize <= lines + 1);
                    prop_assert!(problem.column >= 1);
                }
            }
            Err(error) => prop_assert!(false, "{error:?}"),
        }
    }

    #[test]
    fn prop_any_text_is_refused(text in "\\PC{0,200}") {
        prop_assert!(read(scenario_of(text)).is_err());
    }
}
