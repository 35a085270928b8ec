//! What is said.

use super::samples::{every_kind, file_troubles};
use crate::faults::FaultKind;
use crate::report::problem_words::{draw_error, load_error};
use crate::scenario::draw::DrawError;
use crate::scenario::load::LoadError;
use crate::scenario::problem::{FileTrouble, Problem, ProblemKind, Shape, SyntaxFault, Thing};
use crate::vehicle::spec::Id;
use crate::wording::catalogue::Words;
use std::collections::BTreeSet;

/// What a remedy begins with.
const REMEDIES: [&str; 20] = [
    "Add ",
    "Ask ",
    "Check ",
    "Choose ",
    "Close ",
    "Compare ",
    "Correct ",
    "Did you mean ",
    "Give ",
    "Let ",
    "Look ",
    "Move ",
    "Name ",
    "Put ",
    "Raise ",
    "Save ",
    "Take ",
    "Update ",
    "Write ",
    "You can write ",
];

fn english() -> Words {
    Words::for_language("en-GB")
}

fn problem(kind: ProblemKind) -> Problem {
    let text = "    mode: Grün,".to_owned();
    Problem {
        file: "hügel.ron".to_owned(),
        line: 7,
        column: 11,
        text,
        text_from: 1,
        length: 1,
        kind,
    }
}

fn load_lines(problems: Vec<Problem>, left_off: usize) -> Vec<String> {
    load_error(&LoadError::Problems { problems, left_off }, &english())
}

fn said(kind: &ProblemKind) -> String {
    let paragraphs = load_lines(vec![problem(kind.clone())], 0);
    let [paragraph] = paragraphs.as_slice() else { panic!("{paragraphs:?}") };
    paragraph.clone()
}

/// The sentence has no message or argument missing, tells its place and ends with a remedy.
fn assert_whole(sentence: &str, place: &str) {
    for sign in ["<", ">", "\u{2068}", "\u{2069}", "  ", "{ $", "“”"] {
        assert!(!sentence.contains(sign), "{sign:?} in {sentence}");
    }
    let rest = sentence.strip_prefix(place).unwrap_or_else(|| panic!("{place:?} in {sentence}"));
    let is_remedy = |rest: &str| REMEDIES.iter().any(|remedy| rest.starts_with(remedy));
    let mut ends = rest.match_indices(". ").chain(rest.match_indices("? "));
    let is_told = ends.any(|(at, end)| is_remedy(&rest[at + end.len()..]));
    assert!(is_told, "no remedy in {sentence}");
    assert!(sentence.ends_with(['.', '?']), "{sentence}");
}

#[test]
fn every_problem_is_said_with_place_cause_and_remedy() {
    for kind in every_kind() {
        let text = said(&kind);
        let lines: Vec<&str> = text.lines().collect();
        let [sentence, excerpt, caret] = lines.as_slice() else { panic!("{text}") };
        assert_whole(sentence, "hügel.ron:7:11: ");
        assert_eq!((*excerpt, *caret), ("        mode: Grün,", "              ^"));
    }
}

#[test]
fn different_problems_are_said_differently() {
    let texts: Vec<String> = every_kind().iter().map(said).collect();
    let different: BTreeSet<&String> = texts.iter().collect();
    for text in different {
        assert_eq!(texts.iter().filter(|other| *other == text).count(), 1, "{text}");
    }
}

/// The remedy is looked for and not taken for granted.
#[test]
#[should_panic(expected = "no remedy")]
fn a_sentence_without_a_remedy_would_be_noticed() {
    assert_whole("a.ron:1:1: a comma is missing. So it is.", "a.ron:1:1: ");
}

#[test]
#[should_panic(expected = "\"<\" in")]
fn a_missing_message_would_be_noticed() {
    assert_whole(&format!("a.ron: {}", english().say("no-such-message", &[])), "a.ron: ");
}

#[test]
fn a_likely_right_name_is_offered() {
    let name = |text: &str| text.to_owned();
    for (kind, offer) in [
        (
            ProblemKind::UnknownField {
                found: name("titel"),
                expected: vec!["title", "mode"],
                nearest: Some(name("title")),
            },
            "there is no field “titel” here. Did you mean title? You can write title or mode here.",
        ),
        (
            ProblemKind::UnknownVariant {
                found: name("Practise"),
                expected: vec!["Practice", "Assessed"],
                nearest: Some(name("Practice")),
            },
            "“Practise” is not a word that can stand here. Did you mean Practice? You can write Practice or Assessed here.",
        ),
        (
            ProblemKind::UnknownName {
                thing: Thing::TestPoint,
                found: name("pin-twoo"),
                nearest: Some(name("pin-two")),
            },
            "there is no test point “pin-twoo”. Did you mean pin-two?",
        ),
        (
            ProblemKind::UnknownPlace {
                kind: FaultKind::CorrodedPin,
                found: name("feed-wire"),
                nearest: Some(name("feed-pin")),
            },
            "“feed-wire” cannot have the fault “corroded pin”. Did you mean feed-pin?",
        ),
        (
            ProblemKind::HangingNode { node: Id::from("fuse-ou"), nearest: Some(name("fuse-out")) },
            "nothing but this element ends at the node “fuse-ou”, so no current can flow there. Did you mean fuse-out?",
        ),
    ] {
        let text = said(&kind);
        assert!(text.contains(&format!(": {offer}\n")), "{offer:?} in {text}");
    }
}

#[test]
fn what_was_expected_is_told() {
    for (kind, expected) in [
        (
            ProblemKind::OutOfRange { found: 1.5, least: 0.0, most: 1.0 },
            "1.5 is out of range. Write a number from 0 to 1.",
        ),
        (
            ProblemKind::OutOfRange { found: 1e300, least: 1e-4, most: 1e8 },
            "1e300 is out of range. Write a number from 0.0001 to 100000000.",
        ),
        (
            ProblemKind::TooMany { found: 312, most: 300 },
            "312 entries, and 300 are allowed. Take 12 out.",
        ),
        (ProblemKind::TooDeep { most: 32 }, "more than 32 deep"),
        (
            ProblemKind::WrongFormat { found: "x".to_owned(), expected: "faultwright vehicle" },
            "“faultwright vehicle” is due here",
        ),
        (
            ProblemKind::WrongVersion { found: "3".to_owned(), newest: 2 },
            "newer than this program, which reads version 2. Update",
        ),
        (
            ProblemKind::WrongVersion { found: "0".to_owned(), newest: 2 },
            "there is no version 0 of the format. Write 2.",
        ),
        (ProblemKind::BadName { found: "A b".to_owned() }, "at most 48 small letters"),
        (ProblemKind::NarrowWindow { part_number: Id::from("ab-1") }, "by up to 2.5 %"),
        (ProblemKind::WrongShape { expected: Shape::Map }, r#"like {"first": 1, "second": 2}."#),
        (
            ProblemKind::Syntax { fault: SyntaxFault::OpenBracket('{') },
            "this { is never closed. Put } where",
        ),
        (ProblemKind::Syntax { fault: SyntaxFault::OtherBracket(']') }, "“]” does not fit"),
        (
            ProblemKind::Syntax { fault: SyntaxFault::BadEscape },
            r#"\\ for a backslash, \" for a quotation mark and \n for"#,
        ),
        (
            ProblemKind::BlockersInACircle { parts: vec![Id::from("lid")] },
            "“lid” is behind itself, so none",
        ),
        (
            ProblemKind::BlockersInACircle { parts: vec![Id::from("lid"), Id::from("duct")] },
            "lid and duct are behind each other, so none",
        ),
    ] {
        let text = said(&kind);
        assert!(text.contains(expected), "{expected:?} in {text}");
    }
}

#[test]
fn a_file_that_cannot_be_read_is_told_with_the_reason() {
    let mut texts = BTreeSet::new();
    let troubles = file_troubles();
    for trouble in &troubles {
        let error = LoadError::Unreadable { file: "hügel.ron".to_owned(), trouble: *trouble };
        let lines = load_error(&error, &english());
        let [line] = lines.as_slice() else { panic!("{lines:?}") };
        let place = match trouble {
            FileTrouble::NotUtf8 { .. } => "hügel.ron:31:17: ",
            _ => "hügel.ron: ",
        };
        assert_whole(line, place);
        texts.insert(line.clone());
    }
    assert_eq!(texts.len(), troubles.len());
    assert!(texts.iter().any(|text| text.contains("larger than 1024 KiB")), "{texts:?}");
    assert!(texts.iter().any(|text| text.contains("its error 5")), "{texts:?}");
}

#[test]
fn problems_that_are_not_shown_are_counted() {
    let lines = |left_off| load_lines(vec![problem(ProblemKind::Empty); 3], left_off);
    assert_eq!(lines(0).len(), 3);
    assert_eq!(lines(1).len(), 4);
    let last = |left_off| lines(left_off).pop().unwrap_or_default();
    assert!(last(1).starts_with("One more problem was found"), "{}", last(1));
    assert!(last(1199).starts_with("1199 more problems were found"), "{}", last(1199));
}

/// Names in a vehicle's file are bounded by the size of the file alone.
#[test]
fn names_of_any_length_and_content_are_shown_short_and_harmless() {
    let wild = format!("a\u{1b}[2Jb\n{}", "x".repeat(100_000));
    for kind in [
        ProblemKind::IslandNode { node: Id(wild.clone()) },
        ProblemKind::NoPrice { part_number: Id(wild.clone()) },
        ProblemKind::BlockersInACircle { parts: vec![Id(wild.clone()); 300] },
        ProblemKind::Repeated { thing: Thing::Node, name: wild.clone() },
        ProblemKind::Syntax { fault: SyntaxFault::OtherBracket('\u{1b}') },
    ] {
        let text = said(&kind);
        assert!(text.chars().count() < 1_500, "{kind:?}: {}", text.len());
        assert_eq!(text.matches('\n').count(), 2);
        assert!(!text.contains('\u{1b}'));
    }
    let file = "a\u{1b}[2J\n.ron".to_owned();
    let error = LoadError::Unreadable { file, trouble: FileTrouble::NotFound };
    let lines = load_error(&error, &english());
    assert!(lines.iter().all(|line| !line.contains(char::is_control)), "{lines:?}");
}

#[test]
fn why_no_case_was_dealt_is_told_with_what_to_change() {
    let text = |without_complaint, not_separable| {
        let error = DrawError::NoneAccepted {
            attempts: without_complaint + not_separable,
            without_complaint,
            not_separable,
        };
        draw_error(&error, &english())
    };
    for (without_complaint, not_separable) in [(200, 0), (0, 200), (60, 140)] {
        let text = text(without_complaint, not_separable);
        assert_whole(&text, "no case could be dealt: none of 200 draws ");
        for (count, remedy) in
            [(without_complaint, "Raise the severities"), (not_separable, "Add test points")]
        {
            assert_eq!(text.contains(remedy), count > 0, "{text}");
            assert_eq!(text.contains(&format!("In {count} the fault")), count > 0, "{text}");
        }
    }
}
