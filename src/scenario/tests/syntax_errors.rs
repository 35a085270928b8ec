//! Errors of form: the text is no RON, or not what the schema asks for.

use super::planted::In::{Scenario, Vehicle};
use super::planted::{alone, problems_of};
use crate::scenario::load::{ScenarioText, read};
use crate::scenario::problem::{ProblemKind, Shape, SyntaxFault};

fn syntax(from: &str, to: &str, fault: SyntaxFault) {
    alone(Scenario, from, to, ProblemKind::Syntax { fault });
}

fn shape(from: &str, to: &str, expected: Shape) {
    alone(Scenario, from, to, ProblemKind::WrongShape { expected });
}

const RUBRIC: [&str; 3] = ["weights", "pass_percent", "hints"];

#[test]
fn line_and_column_are_those_that_an_editor_shows() {
    let scenario_text = "(\n    format: \"faultwright scenario\",\n\ttitel: \"Größe\", vers: 2,\n)";
    let problems = problems_of(read(ScenarioText {
        scenario_name: "small".to_owned(),
        scenario_text: scenario_text.to_owned(),
        vehicle_text: String::new(),
    }));
    let [problem] = problems.as_slice() else { panic!("{problems:?}") };
    assert_eq!((problem.file.as_str(), problem.line, problem.column), ("small.ron", 3, 2));
    // The tab is a control character and shown as one blank.
    assert_eq!(problem.text, " titel: \"Größe\", vers: 2,");
    let ProblemKind::UnknownField { found, nearest, expected } = &problem.kind else {
        panic!("{problem:?}")
    };
    assert_eq!((found.as_str(), nearest.as_deref()), ("titel", Some("title")));
    assert!(expected.contains(&"vehicle"));
}

#[test]
fn columns_count_letters_and_not_bytes() {
    alone(
        Scenario,
        "symptom: \"It",
        "symptom: /* ÄÖÜ */ ¦44, // \"It",
        ProblemKind::WrongShape { expected: Shape::Text },
    );
}

#[test]
fn unknown_field_with_the_nearest_right_one() {
    alone(
        Scenario,
        "    pass_percent: 60",
        "    ¦pass_procent: 60",
        ProblemKind::UnknownField {
            found: "pass_procent".to_owned(),
            expected: RUBRIC.to_vec(),
            nearest: Some("pass_percent".to_owned()),
        },
    );
    alone(
        Scenario,
        "    pass_percent: 60",
        "    ¦zzz: 60",
        ProblemKind::UnknownField {
            found: "zzz".to_owned(),
            expected: RUBRIC.to_vec(),
            nearest: None,
        },
    );
    // Inside an element of the wiring, whose fields depend on its kind.
    alone(
        Vehicle,
        "to: \"fuse-box\", ohms: 0.003",
        "to: \"fuse-box\", ¦ohm: 0.003",
        ProblemKind::UnknownField {
            found: "ohm".to_owned(),
            expected: vec!["id", "from", "to", "ohms"],
            nearest: Some("ohms".to_owned()),
        },
    );
}

#[test]
fn missing_field_points_at_the_struct_that_lacks_it() {
    alone(
        Scenario,
        "    rubric: (",
        "    rubric: ¦(pass_percent: 60), // (",
        ProblemKind::MissingField { field: "weights" },
    );
    alone(
        Vehicle,
        "Wire(id: \"battery-cable\", from: \"battery-plus\", to: \"fuse-box\", ohms: 0.003)",
        "¦Wire(id: \"battery-cable\", from: \"battery-plus\", to: \"fuse-box\")",
        ProblemKind::MissingField { field: "ohms" },
    );
}

#[test]
fn repeated_field() {
    alone(
        Scenario,
        "    mode: Practice,",
        "    mode: Practice, ¦mode: Assessed,",
        ProblemKind::RepeatedField { field: "mode" },
    );
}

#[test]
fn unknown_variant_with_the_nearest_right_one() {
    alone(
        Scenario,
        "mode: Practice",
        "mode: ¦Practise",
        ProblemKind::UnknownVariant {
            found: "Practise".to_owned(),
            expected: vec!["Practice", "Assessed"],
            nearest: Some("Practice".to_owned()),
        },
    );
    alone(
        Vehicle,
        "kind: Clamp",
        "kind: ¦Clmap",
        ProblemKind::UnknownVariant {
            found: "Clmap".to_owned(),
            expected: vec!["Cover", "Duct", "Clamp", "Connector", "Valve", "Fuse"],
            nearest: Some("Clamp".to_owned()),
        },
    );
}

#[test]
fn values_of_another_shape() {
    shape("title: \"The van on Market Hill\"", "title: ¦7", Shape::Text);
    shape("kilometres: 118400", "kilometres: ¦\"many\"", Shape::WholeNumber);
    shape("kilometres: 118400", "kilometres: ¦118400.5", Shape::WholeNumber);
    shape("no_fault: 1,", "no_fault: ¦(1),", Shape::Number);
    shape("mode: Practice", "mode: ¦\"Practice\"", Shape::Word);
    shape("    rubric: (", "    rubric: ¦60, // (", Shape::Fields);
    shape(
        "place: \"sump\", weight: 4, severity: (0, 1)",
        "place: \"sump\", weight: 4, severity: ¦(0, 1, 2)",
        Shape::Pair,
    );
    shape(
        "place: \"sump\", weight: 4, severity: (0, 1)",
        "place: \"sump\", weight: 4, severity: ¦(1)",
        Shape::Pair,
    );
    shape("        history: [", "        history: ¦(), // [", Shape::List);
    shape("        answers: {", "        answers: ¦[], // {", Shape::Map);
    alone(
        Vehicle,
        "longest_power: 2.0",
        "longest_power: Some(2.0 ¦2.0)",
        ProblemKind::WrongShape { expected: Shape::Optional },
    );
}

#[test]
fn numbers_that_their_field_cannot_hold() {
    for number in ["-1", "4294967296", "99999999999999999999999999"] {
        alone(
            Scenario,
            "kilometres: 118400",
            &format!("kilometres: ¦{number}"),
            ProblemKind::NumberDoesNotFit,
        );
    }
    // Negative minutes cannot be, so they are refused when they are read.
    alone(Scenario, "dipstick: 3", "dipstick: ¦-3", ProblemKind::NumberDoesNotFit);
    alone(Scenario, "pass_percent: 60", "pass_percent: ¦256", ProblemKind::NumberDoesNotFit);
}

#[test]
fn text_that_is_no_trouble_code() {
    for wrong in ["P4456", "X0456", "P04", ""] {
        alone(
            Scenario,
            "code: \"P0456\"",
            &format!("code: ¦\"{wrong}\""),
            ProblemKind::NotACode { found: wrong.to_owned() },
        );
    }
}

#[test]
fn another_format_or_version_is_told_before_anything_else() {
    alone(
        Scenario,
        "format: \"faultwright scenario\"",
        "nonsense: 3, format: ¦\"faultwright vehicle\"",
        ProblemKind::WrongFormat {
            found: "faultwright vehicle".to_owned(),
            expected: "faultwright scenario",
        },
    );
    alone(
        Vehicle,
        "format: \"faultwright vehicle\"",
        // Written with an escape, which only the reader of the data resolves.
        "format: ¦\"faultwright \\u{73}cenario\"",
        ProblemKind::WrongFormat {
            found: "faultwright \\u{73}cenario".to_owned(),
            expected: "faultwright vehicle",
        },
    );
    for version in ["4", "0"] {
        alone(
            Scenario,
            "version: 1",
            &format!("nonsense: 3, version: ¦{version}"),
            ProblemKind::WrongVersion { found: version.to_owned(), newest: 3 },
        );
    }
    alone(
        Scenario,
        "version: 1",
        "version: ¦0x4",
        ProblemKind::WrongVersion { found: "4".to_owned(), newest: 3 },
    );
}

#[test]
fn faults_of_syntax_at_their_place() {
    use SyntaxFault::{
        BadEscape, BadNumber, NoColon, NoComma, NoName, OpenComment, OpenText, OtherBracket,
        TooLong, UnknownExtension,
    };
    const END: &str = "        pass_percent: 60,\n    ),\n)";
    const SUMP: &str = "place: \"sump\", weight: 4, severity: (0, 1)),";
    syntax("mode: Practice,\n\n    job", "mode: Practice\n\n    ¦job", NoComma);
    syntax("mode: Practice", "mode ¦Practice", NoColon);
    syntax("mode: Practice,", "mode: Practice, ¦%", NoName);
    syntax("mode: Practice,", "mode: Practice,¦,", NoName);
    syntax(END, "        pass_percent: 60,\n    ¦],\n)", NoName);
    syntax(SUMP, "place: \"sump\", weight: 4, severity: (0, 1)¦],", OtherBracket(']'));
    syntax("currency: \"£\"", "currency: ¦\"£", OpenText);
    let last = "customers_route: \"customers-road\"";
    syntax(last, "customers_route: ¦\"customers-road", OpenText);
    syntax(END, "        pass_percent: 60,\n    ),\n ¦/* )", OpenComment);
    syntax(END, "        pass_percent: 60,\n    ),\n) ¦and more", TooLong);
    syntax("currency: \"£\"", "currency: \"ab¦\\qc\"", BadEscape);
    syntax("no_fault: 1", "no_fault: ¦_1", BadNumber);
    syntax("no_fault: 1", "no_fault: ¦1._5", BadNumber);
    syntax("(\n    format", "#![enable(¦magic)]\n(\n    format", UnknownExtension);
    syntax("(\n    format", "#![¦allow(magic)]\n(\n    format", UnknownExtension);
}

#[test]
fn bracket_that_is_never_closed_is_pointed_at() {
    let mut text = ScenarioText::demo();
    let end = text.scenario_text.rfind(')').unwrap();
    text.scenario_text.truncate(end);
    let problems = problems_of(read(text.clone()));
    let [problem] = problems.as_slice() else { panic!("{problems:?}") };
    assert_eq!(problem.kind, ProblemKind::Syntax { fault: SyntaxFault::OpenBracket('(') });
    assert_eq!((problem.line, problem.column, problem.text.as_str()), (5, 1, "("));
    // The file ends amid an escape.
    text.scenario_text.push_str("extra: \"\\");
    let problems = problems_of(read(text.clone()));
    assert_eq!(problems.len(), 1);
    assert!(matches!(problems[0].kind, ProblemKind::UnknownField { .. }), "{problems:?}");
    let end = text.scenario_text.find("The van").unwrap();
    text.scenario_text.replace_range(end.., "\\");
    let problems = problems_of(read(text));
    let [problem] = problems.as_slice() else { panic!("{problems:?}") };
    assert_eq!(problem.kind, ProblemKind::Syntax { fault: SyntaxFault::OpenText });
    assert_eq!((problem.column, problem.text.as_str()), (12, "    title: \"\\"));
    let mut text = ScenarioText::demo();
    let end = text.scenario_text.find("        answers: {").unwrap();
    text.scenario_text.truncate(end + "        answers: {".len());
    let problems = problems_of(read(text));
    let [problem] = problems.as_slice() else { panic!("{problems:?}") };
    assert_eq!(problem.kind, ProblemKind::Syntax { fault: SyntaxFault::OpenBracket('{') });
    assert_eq!((problem.column, problem.text.trim()), (18, "answers: {"));
}

#[test]
fn nesting_that_no_right_file_has() {
    let deep = format!("faults: {}¦[", "[".repeat(31));
    alone(Scenario, "faults: [", &deep, ProblemKind::TooDeep { most: 32 });
}
