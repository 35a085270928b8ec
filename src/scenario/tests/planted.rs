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

/// Plants one error in the demo and returns all problems, with file, line, column and text of the
/// mark.
pub fn planted(file: In, from: &str, to: &str) -> (Vec<Problem>, (String, u32, u32, String)) {
    let mut text = ScenarioText::demo();
    let (name, changed) = match file {
        Scenario => ("market-hill.ron", &mut text.scenario_text),
        Vehicle => ("vehicles/harrowfen-dray.ron", &mut text.vehicle_text),
    };
    let (line, column, planted) = unmarked(&replaced(changed, from, to));
    *changed = planted;
    let line_text = changed.lines().nth(line as usize - 1).unwrap().to_owned();
    (problems_of(read(text)), (name.to_owned(), line, column, line_text))
}

/// Plants one error and expects it to be the only problem, at the mark.
pub fn alone(file: In, from: &str, to: &str, kind: ProblemKind) {
    let (problems, (name, line, column, text)) = planted(file, from, to);
    let expected = Problem { file: name, line, column, text, kind };
    assert_eq!(problems, [expected], "planted {to:?}");
}

/// Plants one error and expects it among the problems, at the mark, and exactly `count` in all:
/// for errors that cannot come alone.
pub fn among(count: usize, file: In, from: &str, to: &str, kind: ProblemKind) {
    let (problems, (name, line, column, text)) = planted(file, from, to);
    let expected = Problem { file: name, line, column, text, kind };
    assert!(problems.contains(&expected), "expected {expected:#?}, got {problems:#?}");
    assert_eq!(problems.len(), count, "{problems:#?}");
}
