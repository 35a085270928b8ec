//! The caret stands under the place.

use crate::report::problem_words::load_error;
use crate::scenario::load::{LoadError, ScenarioText, read};
use crate::scenario::problem::{Problem, ProblemKind};
use crate::wording::catalogue::Words;

fn words() -> Words {
    Words::for_language("en-GB")
}

/// The demo with one text replaced by another.
fn demo_with(from: &str, to: &str) -> ScenarioText {
    let mut text = ScenarioText::demo();
    assert_eq!(text.scenario_text.matches(from).count(), 1, "{from}");
    text.scenario_text = text.scenario_text.replace(from, to);
    text
}

/// Excerpt and caret of the only problem.
fn excerpt_of(text: ScenarioText) -> (Problem, String, String) {
    let error = read(text).unwrap_err();
    let LoadError::Problems { problems, .. } = &error else { panic!("{error:?}") };
    let [problem] = problems.as_slice() else { panic!("{problems:?}") };
    let paragraphs = load_error(&error, &words());
    let lines: Vec<&str> = paragraphs.iter().flat_map(|text| text.lines()).collect();
    let [_, excerpt, caret] = lines.as_slice() else { panic!("{lines:?}") };
    (problem.clone(), (*excerpt).to_owned(), (*caret).to_owned())
}

/// What stands above the caret, where every letter is one column wide.
fn above(excerpt: &str, caret: &str) -> String {
    let column = caret.chars().count() - 1;
    assert_eq!(caret.trim_start(), "^");
    excerpt.chars().skip(column).collect()
}

#[test]
fn the_caret_stands_under_the_place_behind_umlauts() {
    for before in ["", "/* a */ ", "/* ÄÖÜ */ ", "/* größer, é, ñ, Ж */ "] {
        let to = format!("mode: {before}Practise,");
        let (problem, excerpt, caret) = excerpt_of(demo_with("mode: Practice,", &to));
        assert!(matches!(problem.kind, ProblemKind::UnknownVariant { .. }), "{problem:?}");
        assert_eq!(above(&excerpt, &caret), "Practise,");
    }
}

#[test]
fn the_caret_stands_under_the_place_in_lines_of_any_length() {
    // Around the lengths at which an excerpt is cut in front, behind, or both.
    for before in (0..200).step_by(7).chain([70, 71, 72, 73, 74, 75, 76, 1_000]) {
        for behind in [0, 60, 79, 80, 81, 300] {
            let (left, right) = ("ü".repeat(before), "ö".repeat(behind));
            let to = format!("mode: /*{left}*/Practise,//{right}ß");
            let (_, excerpt, caret) = excerpt_of(demo_with("mode: Practice,", &to));
            assert!(above(&excerpt, &caret).starts_with("Practise,"), "{excerpt}\n{caret}");
            assert!(excerpt.chars().count() <= 78 && caret.chars().count() <= 78, "{excerpt}");
            // Each end of the line is there, or a sign that it is not.
            assert_ne!(excerpt.starts_with("        mode: "), excerpt.starts_with("    …"));
            assert_ne!(excerpt.ends_with('ß'), excerpt.ends_with('…'), "{excerpt}");
            let all = 8 + to.chars().count() <= 4 + 72;
            assert_eq!(excerpt.contains('…'), !all, "{excerpt}");
        }
    }
}

#[test]
fn a_caret_stands_in_the_line_or_just_behind_it_or_not_at_all() {
    let shown = |column, text_from| {
        let kind = ProblemKind::Empty;
        let (file, text) = ("a.ron".to_owned(), "(äb".to_owned());
        let problem = Problem { file, line: 1, column, text, text_from, length: 1, kind };
        load_error(&LoadError::Problems { problems: vec![problem], left_off: 0 }, &words()).join("")
    };
    let caret = |text: String| text.lines().nth(2).map(str::to_owned);
    assert_eq!(caret(shown(4, 1)).as_deref(), Some("       ^"));
    // Neither is a place in the excerpt, so the line stands alone.
    assert_eq!(caret(shown(5, 1)), None);
    assert_eq!(caret(shown(u32::MAX, 1)), None);
    assert_eq!(caret(shown(4, 5)), None);
    // One that was cut in front says so, and the caret moves on by the sign.
    assert_eq!(shown(12, 11).lines().nth(1), Some("    …(äb"));
    assert_eq!(caret(shown(12, 11)).as_deref(), Some("      ^"));
}

#[test]
fn letters_that_are_wide_or_have_no_width_move_the_caret_as_they_move_the_line() {
    let caret = |before: &str| {
        let to = format!("mode: /*{before}*/Practise,");
        excerpt_of(demo_with("mode: Practice,", &to)).2
    };
    let plain = caret("");
    // A letter with its dots as a character of their own is one column wide.
    assert_eq!(caret("u\u{308}"), caret("u"));
    assert_eq!(caret("u").len(), plain.len() + 1);
    // Two columns each, by blanks that are as wide.
    assert_eq!(caret("油圧").replace('\u{3000}', "  "), caret("abcd"));
}

#[test]
fn an_empty_line_is_not_shown() {
    let text = ScenarioText {
        scenario_name: "empty".to_owned(),
        scenario_text: String::new(),
        vehicle_text: String::new(),
    };
    let lines = load_error(&read(text).unwrap_err(), &words());
    let [line] = lines.as_slice() else { panic!("{lines:?}") };
    assert!(line.starts_with("empty.ron:1:1: ") && !line.contains('\n'), "{line}");
}

#[test]
fn several_problems_are_told_one_paragraph_each() {
    let mut text = demo_with("no_fault: 1", "no_fault: -1");
    text.vehicle_text = text.vehicle_text.replace("least_litres: 3.3", "least_litres: 4.3");
    let error = read(text).unwrap_err();
    let paragraphs = load_error(&error, &words());
    let starts: Vec<&str> = paragraphs.iter().filter_map(|text| text.split(':').next()).collect();
    assert_eq!(starts, ["market-hill.ron", "vehicles/harrowfen-dray.ron"]);
    assert!(paragraphs.iter().all(|text| text.lines().count() == 3), "{paragraphs:?}");
}
