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

#[test]
fn regress_a_file_without_the_new_fields_reads_as_before() {
    let mut text = ScenarioText::demo();
    let whole = read(text.clone()).unwrap().scenario;
    let cut = text.scenario_text.find("    about:").unwrap();
    text.scenario_text.truncate(cut);
    text.scenario_text.push(')');
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
    let cut = text.scenario_text.find("    about:").unwrap();
    text.scenario_text.truncate(cut);
    text.scenario_text.push_str("teaching: (teaches: \"\", traps: [], path: [\" \"]))");
    let Err(LoadError::Problems { problems, .. }) = read(text) else {
        panic!("half a note was taken");
    };
    let kinds: Vec<_> = problems.iter().map(|problem| problem.kind.clone()).collect();
    assert_eq!(kinds, vec![ProblemKind::Empty; 3]);
}
