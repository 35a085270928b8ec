//! What an instructor and a front page ask of every scenario that the program carries.

use crate::scenario::load::{LoadError, ScenarioText, read};
use crate::scenario::problem::ProblemKind;
use crate::scenario::schema::{Level, Teaching};
use std::collections::BTreeSet;

/// Letters of the longest sentence that a list has room for.
const LONGEST_ABOUT: usize = 130;

#[test]
fn limit_every_carried_scenario_says_what_it_is_about_and_what_it_teaches() {
    let mut levels = BTreeSet::new();
    let mut titles = BTreeSet::new();
    for text in ScenarioText::carried() {
        let name = text.scenario_name.clone();
        let scenario = read(text).unwrap_or_else(|error| panic!("{name}: {error:#?}")).scenario;
        levels.insert(scenario.level);
        assert!(titles.insert(scenario.title), "{name}: the title is another's");
        assert!((20..=LONGEST_ABOUT).contains(&scenario.about.chars().count()), "{name}");
        assert!(!scenario.teaching.is_empty(), "{name}");
        // Of what an instructor knows, nothing may be read in what an apprentice is told.
        let told = format!("{:?} {}", scenario.job, scenario.about);
        for line in scenario.teaching.traps.iter().chain(&scenario.teaching.path) {
            assert!(!told.contains(line.as_str()), "{name}: {line}");
        }
    }
    assert_eq!(levels, BTreeSet::from(Level::ALL));
}

/// The table that an instructor chooses from is written by hand.
#[test]
fn regress_the_instructors_table_has_every_carried_scenario_with_its_level() {
    let page = include_str!("../../../docs/instructor.md");
    for text in ScenarioText::carried() {
        let name = text.scenario_name.clone();
        let scenario = read(text).unwrap().scenario;
        let row = format!("| [`{name}`](../scenarios/{name}.ron) | {} |", scenario.level.word());
        let row = page.lines().find(|line| line.starts_with(&row));
        assert!(row.is_some_and(|row| row.contains(&scenario.about)), "{name} in the table");
    }
    let rows =
        page.lines().filter(|line| line.contains("](../scenarios/") && line.starts_with("| ["));
    assert_eq!(rows.count(), ScenarioText::carried().len());
}

/// Puts something else in the place of what the carried file says of itself.
fn cut(text: &mut ScenarioText, instead: &str) {
    let [from, to] =
        ["    about:", "    rubric:"].map(|field| text.scenario_text.find(field).unwrap());
    text.scenario_text.replace_range(from..to, instead);
}

#[test]
fn regress_a_file_without_the_new_fields_reads_as_before() {
    let mut text = ScenarioText::demo();
    let whole = read(text.clone()).unwrap().scenario;
    cut(&mut text, "");
    let plain = read(text).unwrap().scenario;
    assert_eq!(plain.about, "");
    assert_eq!(plain.level, Level::Middle);
    assert_eq!(plain.teaching, Teaching::default());
    let told = crate::scenario::schema::ScenarioFile {
        about: whole.about.clone(),
        level: whole.level,
        teaching: whole.teaching.clone(),
        ..plain
    };
    assert_eq!(told, whole);
}

#[test]
fn limit_half_a_teaching_note_is_a_problem() {
    let mut text = ScenarioText::demo();
    cut(&mut text, "    teaching: (teaches: \"\", traps: [], path: [\" \"]),\n");
    let Err(LoadError::Problems { problems, .. }) = read(text) else {
        panic!("half a note was taken");
    };
    let kinds: Vec<_> = problems.iter().map(|problem| problem.kind.clone()).collect();
    assert_eq!(kinds, vec![ProblemKind::Empty; 3]);
}
