//! What is wrong with the text, looked for beside the window while somebody writes.

use super::draft::{Draft, Drawer};
use crate::report::problem_words;
use crate::scenario::doubts::doubts as scenario_doubts;
use crate::scenario::load::{self, LoadError, Loaded};
use crate::wording::catalogue::Words;
use crate::workshop::desk::work::{Wake, Work};
use crate::workshop::view::writer::ProblemView;
use std::io;
use std::path::PathBuf;
use std::sync::Arc;

/// What was found.
pub struct Looked {
    /// Number of the text.
    pub number: u64,
    /// The scenario, or what is wrong with it.
    pub outcome: Result<Arc<Loaded>, LoadError>,
    /// Whether the text could be kept.
    pub kept: io::Result<()>,
}

/// A text that is looked at.
pub struct Subject {
    /// Its number.
    pub number: u64,
    /// What it is called.
    pub name: String,
    /// The text.
    pub text: String,
    /// Where it is saved.
    pub path: Option<PathBuf>,
    /// What is kept of it.
    pub draft: Draft,
}

/// Keeps a text and looks for what is wrong with it.
pub fn begin(wake: &Wake, drawer: &Drawer, subject: Subject) -> Work<Looked> {
    let drawer = drawer.clone();
    Work::begin(wake, String::new(), move |_| {
        let kept = drawer.keep(subject.number, &subject.draft);
        let folder = subject.path.as_deref().and_then(std::path::Path::parent);
        let outcome = load::read_written(&subject.name, &subject.text, folder).map(Arc::new);
        Looked { number: subject.number, outcome, kept }
    })
}

/// What is wrong, a line each.
pub fn views(error: &LoadError, words: &Words) -> Vec<ProblemView> {
    let LoadError::Problems { problems, .. } = error else {
        let said = problem_words::load_error(error, words).join("\n");
        return vec![ProblemView { place: None, said }];
    };
    problems
        .iter()
        .map(|problem| {
            let said = problem_words::said(problem, words);
            // What is wrong in a vehicle's file is not in this text.
            if problem.file.starts_with("vehicles/") {
                let named = [("file", problem.file.as_str().into()), ("said", said.into())];
                return ProblemView { place: None, said: words.say("flaw-in-file", &named) };
            }
            placed((problem.line, problem.column), said, words)
        })
        .collect()
}

/// What is doubtful, a line each: what a text can tell. What only simulation tells is left to `faultwright check --facts`.
pub fn doubts(loaded: &Loaded, words: &Words) -> Vec<ProblemView> {
    let currency = &loaded.scenario.prices.currency;
    scenario_doubts(loaded, &problem_words::names_of_faults(), &Vec::new())
        .iter()
        .map(|doubt| {
            let said = problem_words::doubt(doubt, currency, words);
            placed((doubt.line, doubt.column), said, words)
        })
        .collect()
}

fn placed(place: (u32, u32), said: String, words: &Words) -> ProblemView {
    let named = [("line", place.0.into()), ("column", place.1.into()), ("said", said.into())];
    ProblemView { place: Some(place), said: words.say("writer-problem", &named) }
}
