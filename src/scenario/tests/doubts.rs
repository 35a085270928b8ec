//! What is doubtful is told, at its place, and nothing else is.

use crate::faults::FaultName;
use crate::scenario::doubts::{Called, doubts};
use crate::scenario::load::{ScenarioText, read};
use crate::scenario::warning::{Warning, WarningKind};

/// The words by which files call a fault.
fn own_words(name: &FaultName) -> Called {
    let of = |word: &str| vec![word.replace('-', " ")];
    Called { kind: of(name.kind.word()), place: of(name.place.as_str()) }
}

/// Warnings about the demo after some texts of it were replaced by others.
fn doubts_of(changes: &[(&str, &str)]) -> Vec<Warning> {
    let mut text = ScenarioText::demo();
    for (from, to) in changes {
        assert_eq!(text.scenario_text.matches(from).count(), 1, "{from}");
        text.scenario_text = text.scenario_text.replace(from, to);
    }
    doubts(&read(text).unwrap(), &own_words, &Vec::new())
}

/// What a warning underlines.
fn underlined(warning: &Warning) -> String {
    let before = (warning.column - warning.text_from) as usize;
    warning.text.chars().skip(before).take(warning.length as usize).collect()
}

/// The only warning, with what it underlines.
#[track_caller]
fn only(changes: &[(&str, &str)]) -> (WarningKind, String) {
    let found = doubts_of(changes);
    let [warning] = found.as_slice() else { panic!("{found:?}") };
    (warning.kind.clone(), underlined(warning))
}

#[test]
fn limit_no_carried_scenario_is_doubtful() {
    for text in ScenarioText::carried() {
        let name = text.scenario_name.clone();
        assert_eq!(doubts(&read(text).unwrap(), &own_words, &Vec::new()), [], "{name}");
    }
}

#[test]
fn limit_what_is_never_drawn_or_nearly_always_is_told_at_its_weight() {
    let oil = r#"(kind: LowOil, place: "sump", weight: 4, severity: (0, 1))"#;
    let weighing = |weight: &str| oil.replace("weight: 4", &format!("weight: {weight}"));
    assert_eq!(only(&[(oil, &weighing("0"))]), (WarningKind::NeverDrawn, "0".to_owned()));
    // The others and the sound vehicle weigh 59 together, so that 59 is half of all draws.
    assert_eq!(doubts_of(&[(oil, &weighing("59"))]), []);
    let (kind, place) = only(&[(oil, &weighing("60"))]);
    assert_eq!((kind, place.as_str()), (WarningKind::Dominates { share: 60.0 / 119.0 }, "60"));
    let (kind, place) = only(&[("no_fault: 1", "no_fault: 64")]);
    assert_eq!((kind, place.as_str()), (WarningKind::MostlySound { share: 64.0 / 126.0 }, "64"));
}

#[test]
fn limit_a_list_of_one_has_nothing_to_find_out() {
    let mut text = ScenarioText::demo();
    let (head, rest) = text.scenario_text.split_once("    faults: [").unwrap();
    let (_, tail) = rest.split_once("    no_fault: 1,").unwrap();
    let one = r#"(kind: LowOil, place: "sump", weight: 4, severity: (0, 1))"#;
    text.scenario_text = format!("{head}    faults: [{one}],{tail}");
    let found = doubts(&read(text).unwrap(), &own_words, &Vec::new());
    let [warning] = found.as_slice() else { panic!("{found:?}") };
    assert_eq!((&warning.kind, underlined(warning)), (&WarningKind::OnlyFault, "4".to_owned()));
}

#[test]
fn limit_what_costs_nothing_is_told_at_its_price() {
    for (from, to) in [
        ("labour_per_hour: 68_00", "labour_per_hour: 0"),
        ("\"hd-4470-1\": 71_40", "\"hd-4470-1\": 0"),
        ("fuel: 4_20", "fuel: 0"),
        ("comeback: 240_00", "comeback: 0"),
    ] {
        assert_eq!(only(&[(from, to)]), (WarningKind::FreeOfCharge, "0".to_owned()), "{to}");
    }
    // The dearest valve costs 92.60.
    assert_eq!(doubts_of(&[("comeback: 240_00", "comeback: 92_61")]), []);
    let (kind, place) = only(&[("comeback: 240_00", "comeback: 92_60")]);
    assert!(matches!(kind, WarningKind::CheapComeback { .. }), "{kind:?}");
    assert_eq!(place, "92_60");
}

#[test]
fn limit_a_sheet_that_names_a_fault_or_its_place_is_told_at_the_words() {
    let title = "Delivery van, lacks pull uphill";
    let (kind, place) = only(&[(title, "Delivery van, Low-Oil light")]);
    assert!(matches!(kind, WarningKind::NamesFault { .. }), "{kind:?}");
    assert_eq!(place, "Low-Oil");
    let (kind, place) = only(&[(title, "Delivery van, exhaust valve")]);
    assert!(matches!(kind, WarningKind::NamesPlace { .. }), "{kind:?}");
    assert_eq!(place, "exhaust valve");
    let (_, place) = only(&[("Four weeks now, maybe five.", "Since the Intake-Feed-Pin.")]);
    assert_eq!(place, "Intake-Feed-Pin");
    // A longer word is another word, and what cannot be drawn gives nothing away.
    assert_eq!(doubts_of(&[(title, "Delivery van, sumpy")]), []);
    assert_eq!(doubts_of(&[(title, "Delivery van, worn out oil")]), []);
}

/// Where every fault is in one place, its name tells nothing.
#[test]
fn limit_a_place_that_all_faults_share_gives_nothing_away() {
    let mut text = ScenarioText::demo();
    let (head, rest) = text.scenario_text.split_once("    faults: [").unwrap();
    let (_, tail) = rest.split_once("    no_fault: 1,").unwrap();
    let faults = r#"(kind: LowOil, place: "sump", weight: 4, severity: (0, 1)),
        (kind: WrongOil, place: "sump", weight: 4, severity: (0, 1)),"#;
    text.scenario_text = format!("{head}    faults: [{faults}],{tail}")
        .replace("Delivery van, lacks pull uphill", "Delivery van, sump");
    assert_eq!(doubts(&read(text).unwrap(), &own_words, &Vec::new()), []);
}

#[test]
fn limit_a_pass_line_that_says_nothing_is_told() {
    for (line, kind) in [("0", WarningKind::AlwaysPassed), ("100", WarningKind::HardlyPassed)] {
        let to = format!("pass_percent: {line}");
        assert_eq!(only(&[("pass_percent: 60", &to)]), (kind, line.to_owned()));
    }
    assert_eq!(doubts_of(&[("pass_percent: 60", "pass_percent: 99")]), []);
}

#[test]
fn limit_a_wait_or_another_part_that_costs_nothing_is_told() {
    let with = |shelf: &str| format!("version: 3, shelf: {shelf},");
    for (shelf, place) in [
        (r#"(waits: {"hd-4470-1": 30})"#, "("),
        (r#"(others: {"ow": (stands_for: "hd-4470-1", grade: Used, price: 0)})"#, "0"),
    ] {
        let found = only(&[("version: 1,", &with(shelf))]);
        assert_eq!(found, (WarningKind::FreeOfCharge, place.to_owned()));
    }
    let sound = r#"(waiting_per_hour: 1, waits: {"hd-4470-1": 30})"#;
    assert_eq!(doubts_of(&[("version: 1,", &with(sound))]), []);
}

#[test]
fn limit_a_decoy_that_is_never_there_is_told() {
    let from = r#"(code: "P0456", chance: 0.3)"#;
    let to = r#"(code: "P0456", chance: 0)"#;
    assert_eq!(only(&[(from, to)]), (WarningKind::NeverThere, "0".to_owned()));
    let (from, to) = (r#""hd-4470-3", chance: 0.3"#, r#""hd-4470-3", chance: 0.0"#);
    assert_eq!(only(&[(from, to)]), (WarningKind::NeverThere, "0.0".to_owned()));
}

#[test]
fn limit_a_file_without_a_word_for_its_readers_is_told() {
    let mut text = ScenarioText::demo();
    let cut = |text: &str, from: &str, to: &str| {
        let (head, rest) = text.split_once(from).unwrap();
        format!("{head}{}", rest.split_once(to).unwrap().1)
    };
    text.scenario_text = cut(&text.scenario_text, "    about: \"", "\",\n");
    text.scenario_text = cut(&text.scenario_text, "    teaching: (", "\n    ),\n");
    let found = doubts(&read(text).unwrap(), &own_words, &Vec::new());
    let kinds: Vec<&WarningKind> = found.iter().map(|warning| &warning.kind).collect();
    assert_eq!(kinds, [&WarningKind::NoAbout, &WarningKind::NoTeaching]);
    assert!(found.iter().all(|warning| underlined(warning) == "\"The van on Market Hill\""));
}

/// What simulation found stands among the rest in the order of the text.
#[test]
fn limit_what_was_simulated_has_its_place_in_the_text() {
    let loaded = read(ScenarioText::demo()).unwrap();
    let faults = loaded.scenario.faults[3].names();
    let kind = WarningKind::NeverNoticed { faults };
    let found = doubts(&loaded, &own_words, &vec![(3, kind.clone())]);
    let [warning] = found.as_slice() else { panic!("{found:?}") };
    assert_eq!((&warning.kind, underlined(warning).as_str()), (&kind, "PartlyBrokenCoil"));
    assert!(warning.text.contains("exhaust-valve"), "{}", warning.text);
}
