//! Planting an error in a shipped file at a marked place.

use crate::scenario::load::{LoadError, Loaded, ScenarioText, read};
use crate::scenario::problem::{Problem, ProblemKind};

/// Stands in a planted text before the place at which the problem should be reported.
pub const MARK: char = '¦';

/// Which of the two files is changed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum In {
    Scenario,
    Vehicle,
}
use In::{Scenario, Vehicle};

/// Replaces what must be there exactly once.
pub fn replaced(text: &str, from: &str, to: &str) -> String {
    assert_eq!(text.matches(from).count(), 1, "{from:?} should be there once");
    text.replacen(from, to, 1)
}

/// Line, column and text of the mark, counted letter by letter, and the text without it.
pub fn unmarked(text: &str) -> (u32, u32, String) {
    let (mut line, mut column) = (1, 1);
    for letter in text.chars().take_while(|letter| *letter != MARK) {
        if letter == '\n' {
            line += 1;
            column = 1;
        } else {
            column += 1;
        }
    }
    assert_eq!(text.matches(MARK).count(), 1, "one mark");
    (line, column, text.replace(MARK, ""))
}

/// The problems of a load that must fail.
pub fn problems_of(result: Result<Loaded, LoadError>) -> Vec<Problem> {
    match result {
        Err(LoadError::Problems { problems, .. }) => problems,
        other => panic!("expected problems, got {other:?}"),
    }
}

/// Where a problem is: file, line, column.
pub type Place = (String, u32, u32);

/// Plants one error in the demo and returns all problems, with the place of the mark. The text of
/// each problem must be its line, or a part of a long one.
pub fn planted(file: In, from: &str, to: &str) -> (Vec<Problem>, Place) {
    let mut text = ScenarioText::demo();
    let (name, changed) = match file {
        Scenario => ("market-hill.ron", &mut text.scenario_text),
        Vehicle => ("vehicles/harrowfen-dray.ron", &mut text.vehicle_text),
    };
    let (line, column, without_mark) = unmarked(&replaced(changed, from, to));
    changed.clone_from(&without_mark);
    let problems = problems_of(read(text));
    for problem in problems.iter().filter(|problem| problem.file == name) {
        let whole = without_mark.lines().nth(problem.line as usize - 1).unwrap_or("");
        if whole.chars().count() <= 160 {
            assert_eq!((problem.text.as_str(), problem.text_from), (whole, 1));
        } else {
            let skipped = problem.text_from as usize - 1;
            let part: String = whole.chars().skip(skipped).take(160).collect();
            assert_eq!(problem.text, part);
            assert!(part.chars().count() >= 80 && skipped < problem.column as usize);
        }
    }
    (problems, (name.to_owned(), line, column))
}

fn places_and_kinds(problems: Vec<Problem>) -> Vec<(Place, ProblemKind)> {
    problems.into_iter().map(|p| ((p.file, p.line, p.column), p.kind)).collect()
}

/// Plants one error and expects it to be the only problem, at the mark.
pub fn alone(file: In, from: &str, to: &str, kind: ProblemKind) {
    let (problems, place) = planted(file, from, to);
    assert_eq!(places_and_kinds(problems), [(place, kind)], "planted {to:?}");
}

/// Plants one error and expects it among the problems, at the mark, and exactly `count` in all:
/// for errors that cannot come alone.
pub fn among(count: usize, file: In, from: &str, to: &str, kind: ProblemKind) {
    let (problems, place) = planted(file, from, to);
    let found = places_and_kinds(problems);
    let expected = (place, kind);
    assert!(found.contains(&expected), "{expected:?}, got {found:#?}");
    assert_eq!(found.len(), count, "{found:#?}");
}

/// Replaces texts wherever they stand in the vehicle, and returns line and kind of each problem.
pub fn everywhere(changes: &[(&str, &str)]) -> Vec<(String, ProblemKind)> {
    let mut text = ScenarioText::demo();
    for (from, to) in changes {
        assert!(text.vehicle_text.contains(from), "{from}");
        text.vehicle_text = text.vehicle_text.replace(from, to);
    }
    problems_of(read(text)).into_iter().map(|p| (p.text.trim().to_owned(), p.kind)).collect()
}
