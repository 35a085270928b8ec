//! What can be done at a place: the steps that begin with its name.

use super::parse_problem::ProblemKind;
use super::step_parser::parse;
use super::verbs::{USAGES, VerbGroup};
use crate::session::setup::Briefing;
use crate::session::step::Step;
use crate::vehicle::spec::Id;

/// A line that names a place.
#[derive(Debug, Clone, PartialEq)]
pub struct LineAt {
    /// The line.
    pub line: String,
    /// What it does, as a key of the catalogue.
    pub meaning: &'static str,
    /// The step that it is; nothing where more has to follow.
    pub step: Option<Step>,
}

/// The lines in which this place is the first name, in the order of the work. They depend on the vehicle alone, so
/// that what is offered never hints at the fault. Suspicions and records are left out: they name places too, and are
/// no work there.
#[must_use]
pub fn lines_at(place: &Id, briefing: &Briefing) -> Vec<LineAt> {
    let mut found = Vec::new();
    for usage in USAGES {
        if matches!(usage.group, VerbGroup::Reason | VerbGroup::Finish) {
            continue;
        }
        if usage.form == place.as_str() {
            found.extend(line(place.to_string(), usage.meaning, briefing));
        }
        for start in starts(usage.form) {
            found.extend(line(format!("{start} {place}"), usage.meaning, briefing));
        }
    }
    found
}

/// What a form begins with before the first name: one beginning for each of the words that can stand there.
fn starts(form: &str) -> Vec<String> {
    let is_small =
        |word: &str| word.chars().all(|c| c.is_ascii_lowercase() || c == '-' || c == '|');
    let mut starts = vec![String::new()];
    for word in form.split(' ') {
        if !is_small(word) {
            let is_name = word.chars().all(|c| c.is_ascii_uppercase() || c == '-');
            return if is_name { starts } else { Vec::new() };
        }
        let choices = word.split('|');
        starts = choices
            .flat_map(|choice| starts.iter().map(move |start| format!("{start} {choice}")))
            .map(|start| start.trim_start().to_owned())
            .collect();
    }
    Vec::new()
}

fn line(line: String, meaning: &'static str, briefing: &Briefing) -> Option<LineAt> {
    match parse(&line, briefing) {
        Ok(Some(step)) => Some(LineAt { line, meaning, step: Some(step) }),
        Err(problem) if matches!(problem.kind, ProblemKind::Missing { .. }) => {
            Some(LineAt { line, meaning, step: None })
        }
        _ => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn closed_form_a_form_begins_with_each_of_its_choices() {
        assert_eq!(starts("look PLACE"), ["look"]);
        assert_eq!(
            starts("measure volts|ohms|amps RED BLACK [from-front]"),
            ["measure volts", "measure ohms", "measure amps"]
        );
        assert_eq!(starts("dipstick"), [""; 0]);
        assert_eq!(starts("read live-data [ITEM ...]"), [""; 0]);
    }
}
