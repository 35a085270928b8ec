//! A change alters the bytes that it names, and reading again gives the value that was set.

use crate::scenario::load::{ScenarioText, read_written};
use crate::scenario::schema::ScenarioFile;
use crate::scenario::writing::patch::{Patch, push, remove, set};
use crate::scenario::writing::starters::starters;
use crate::scenario::writing::{notation, offset_of, reading};
use crate::session::step::CustomerTopic;
use crate::units::Money;
use proptest::prelude::*;

fn read(text: &str) -> ScenarioFile {
    reading("t.ron", text).unwrap_or_else(|problem| panic!("{problem:?} in\n{text}"))
}

/// What is left of the text around a change, and where in the new text the change ends.
fn around(text: &str, patch: &Patch) {
    let new = patch.on(text);
    assert!(new.starts_with(&text[..patch.span.start]));
    assert!(new.ends_with(&text[patch.span.end..]));
    assert_eq!(new.len() - patch.with.len(), text.len() - patch.span.len());
}

/// The comments of a text, one after the other.
fn remarks(text: &str) -> Vec<&str> {
    text.lines().filter_map(|line| Some(line.split_once("//")?.1)).collect()
}

fn any_scenario() -> impl Strategy<Value = String> {
    let mut texts: Vec<String> =
        ScenarioText::carried().into_iter().map(|text| text.scenario_text).collect();
    texts.extend(starters().into_iter().map(|starter| starter.text.to_owned()));
    prop::sample::select(texts)
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(96))]

    #[test]
    fn prop_a_text_set_is_read_again_and_nothing_else_changes(
        text in any_scenario(),
        value in "\\PC{0,40}|[\\n\\t\"\\\\/*]{0,9}",
        which in 0_usize..5,
    ) {
        let path = ["title", "about", "job.concern", "job.answers.when", "prices.currency"][which];
        let patch = set(&text, path, &notation::text(&value)).unwrap();
        around(&text, &patch);
        let new = patch.on(&text);
        let (mut before, after) = (read(&text), read(&new));
        match which {
            0 => before.title = value,
            1 => before.about = value,
            2 => before.job.concern = value,
            3 => drop(before.job.answers.insert(CustomerTopic::When, value)),
            _ => before.prices.currency = value,
        }
        prop_assert_eq!(before, after);
    }

    #[test]
    fn prop_a_number_set_is_read_again_and_nothing_else_changes(
        text in any_scenario(),
        number in 0.0..1e6_f64,
        hundredths in 0..100_000_000_i64,
    ) {
        let patch = set(&text, "faults[0].weight", &number.to_string()).unwrap();
        around(&text, &patch);
        let new = patch.on(&text);
        prop_assert_eq!(remarks(&text), remarks(&new));
        let mut expected = read(&text);
        expected.faults[0].weight = number;
        prop_assert_eq!(&read(&new), &expected);
        let patch = set(&new, "prices.comeback", &notation::money(Money(hundredths))).unwrap();
        expected.prices.comeback = Money(hundredths);
        prop_assert_eq!(read(&patch.on(&new)), expected);
    }

    #[test]
    fn prop_an_item_added_is_the_last_and_taking_it_away_gives_the_same_bytes(
        text in any_scenario(),
        which in 0_usize..4,
    ) {
        let list = ["faults", "job.history", "decoys.old_codes", "shared_routes"][which];
        let item = [
            "(kind: LowOil, place: \"sump\", weight: 1.5, severity: (0.2, 1))",
            "\"One more line.\"",
            "(code: \"P0300\", chance: 0.25)",
            "\"cold-start-short-run\"",
        ][which];
        let lengths = |file: &ScenarioFile| [
            file.faults.len(),
            file.job.history.len(),
            file.decoys.old_codes.len(),
            file.shared_routes.len(),
        ];
        let patch = push(&text, list, item).unwrap();
        around(&text, &patch);
        let new = patch.on(&text);
        prop_assert_eq!(remarks(&text), remarks(&new));
        let (mut before, after) = (lengths(&read(&text)), lengths(&read(&new)));
        let last = before[which];
        before[which] += 1;
        prop_assert_eq!(before, after);
        let patch = remove(&new, &format!("{list}[{last}]")).unwrap();
        let back = patch.on(&new);
        prop_assert_eq!(read(&back), read(&text));
        prop_assert_eq!(remarks(&back), remarks(&text));
    }

    #[test]
    fn prop_taking_a_fault_away_leaves_the_others(text in any_scenario(), number in 0_usize..30) {
        let mut expected = read(&text);
        prop_assume!(number < expected.faults.len());
        expected.faults.remove(number);
        let patch = remove(&text, &format!("faults[{number}]")).unwrap();
        let new = patch.on(&text);
        prop_assert_eq!(remarks(&text), remarks(&new));
        prop_assert_eq!(read(&new), expected);
    }

    #[test]
    fn prop_no_text_and_no_path_breaks_a_change(
        text in "[(){}\\[\\]:,a-c\"/* \\n]{0,60}",
        path in "[a-c.\\[\\]0-2]{0,12}",
    ) {
        let patches = [set(&text, &path, "1"), push(&text, &path, "1"), remove(&text, &path)];
        for patch in patches.iter().flatten() {
            around(&text, patch);
        }
    }
}

#[test]
fn closed_form_what_is_added_is_laid_out_as_its_neighbours() {
    for (text, expected) in [
        ("(a: [])", "(a: [\n    9,\n])"),
        ("(a: [1])", "(a: [1, 9])"),
        ("(a: [1,])", "(a: [1, 9,])"),
        ("(\n  a: [\n    1\n  ])", "(\n  a: [\n    1,\n    9,\n  ])"),
        ("(\n  a: [\n    1, // one\n  ])", "(\n  a: [\n    1, // one\n    9,\n  ])"),
        ("(\n  a: [\n    1 // one\n  ])", "(\n  a: [\n    1, // one\n    9,\n  ])"),
        ("(\n  a: [\n    1 /* , */ ,\n  ])", "(\n  a: [\n    1 /* , */ ,\n    9,\n  ])"),
        ("(\n  a: [\n    // none\n  ])", "(\n  a: [\n    // none\n      9,\n  ])"),
        ("()", "(\n    a: [9],\n)"),
        ("(b: 1)", "(b: 1, a: [9])"),
    ] {
        assert_eq!(push(text, "a", "9").unwrap().on(text), expected, "{text}");
    }
}

#[test]
fn closed_form_what_is_taken_away_takes_its_comma_and_its_line() {
    for (text, path, expected) in [
        ("[1, 2, 3]", "[0]", "[2, 3]"),
        ("[1, 2, 3]", "[1]", "[1, 3]"),
        ("[1, 2, 3]", "[2]", "[1, 2]"),
        ("[1]", "[0]", "[]"),
        ("(a: Some(1), b: 2)", "a", "(b: 2)"),
        ("(\n  a: 1,\n  b: 2,\n)", "a", "(\n  b: 2,\n)"),
        ("(\n  a: 1, // why\n  b: 2,\n)", "a", "(\n  // why\n  b: 2,\n)"),
        ("(a: [(b: [1,\n 2]), 3])", "a[0]", "(a: [3])"),
        ("{\"x\": 1, \"y\": 2}", "y", "{\"x\": 1}"),
    ] {
        assert_eq!(remove(text, path).unwrap().on(text), expected, "{text}");
    }
    assert_eq!(remove("(a: 1)", "b"), None);
    assert_eq!(remove("[1]", "[1]"), None);
}

#[test]
fn closed_form_a_field_that_is_not_written_is_put_where_it_belongs() {
    for (text, path, expected) in [
        ("(b: 1)", "a", "(b: 1, a: 9)"),
        ("(\n  b: 1,\n)", "c.d", "(\n  b: 1,\n  c: (d: 9),\n)"),
        ("(c: (e: 1))", "c.d", "(c: (e: 1, d: 9))"),
        ("(c: {\"e\": 1})", "c.d-1", "(c: {\"e\": 1, \"d-1\": 9})"),
        ("(job: (answers: {when: 1}))", "job.answers.d", "(job: (answers: {when: 1, d: 9}))"),
    ] {
        assert_eq!(set(text, path, "9").unwrap().on(text), expected, "{text}");
    }
    assert_eq!(set("(a: [1])", "a[1]", "9"), None);
    assert_eq!(set("(a: [1])", "a[1].b", "9"), None);
    assert_eq!(set("(a: 1)", "a.b", "9"), None);
    assert_eq!(set("", "a", "9"), None);
}

#[test]
fn closed_form_what_is_typed_is_a_number_an_amount_or_nothing() {
    for (typed, number) in
        [("1.5", Some(1.5)), (" 2,25 ", Some(2.25)), ("inf", None), ("1e9", None), ("", None)]
    {
        assert_eq!(notation::typed_number(typed), number, "{typed}");
    }
    for (typed, hundredths) in [
        ("12", Some(1_200)),
        ("12,5", Some(1_250)),
        ("0.05", Some(5)),
        ("1.234", None),
        ("-1", None),
        (".5", None),
        ("99999999999999999999", None),
    ] {
        assert_eq!(notation::typed_money(typed), hundredths.map(Money), "{typed}");
    }
    for hundredths in [0, 5, 99, 100, 123_456, -250] {
        let written = notation::money(Money(hundredths));
        let text = starters()[0].text;
        let new = set(text, "prices.fuel", &written).unwrap().on(text);
        assert_eq!(read(&new).prices.fuel, Money(hundredths), "{written}");
    }
    assert_eq!(notation::money_to_type(Money(-250)), "-2.50");
}

#[test]
fn limit_everything_to_begin_with_checks_clean() {
    for starter in starters() {
        let loaded = read_written(starter.name, starter.text, None).unwrap();
        if !starter.is_scenario {
            assert_eq!(loaded.scenario.vehicle, starter.name);
        }
    }
}

#[test]
fn limit_a_place_beyond_the_text_is_its_end() {
    let text = "ab\ncd\n";
    for (line, column, offset) in
        [(1, 1, 0), (1, 2, 1), (1, 9, 2), (2, 2, 4), (3, 1, 6), (9, 9, 6), (0, 0, 0)]
    {
        assert_eq!(offset_of(text, line, column), offset, "{line}:{column}");
    }
}
