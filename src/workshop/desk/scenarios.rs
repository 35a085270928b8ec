//! What a case can be begun of: the scenarios that the program carries, files of the user's, and sealed cases that were handed
//! out to them.

use super::trouble::Trouble;
use crate::scenario::deal::{deal, deal_sealed, record_of};
use crate::scenario::draw::Case;
use crate::scenario::load::{self, Loaded, ScenarioText};
use crate::scenario::schema::Mode;
use crate::scenario::seal::{self, record_of_sealed};
use crate::session::journal::{CaseRecord, Sealed};
use crate::session::kept;
use crate::workshop::view::front::{FrontView, ScenarioView};
use std::path::{Path, PathBuf};
use std::sync::Arc;

/// Where a scenario comes from.
#[derive(Debug, Clone)]
pub enum Source {
    /// The program carries it.
    Carried(Arc<Loaded>),
    /// A file, read anew for each case, so that what its author has just changed counts.
    File(PathBuf),
    /// A sealed case that was handed out, and its file.
    HandOut(Arc<Sealed>, PathBuf),
}

/// A case that was dealt, with what its session is kept as.
pub struct Dealt {
    /// The case.
    pub case: Case,
    /// What is kept of it.
    pub record: CaseRecord,
    /// What its session is called. A sealed case does not tell its seed.
    pub name: String,
    /// It is under a seal.
    pub is_sealed: bool,
}

impl Source {
    /// Deals a case. Of a sealed one nobody chooses the seed, and it is always assessed.
    ///
    /// # Errors
    /// [`Trouble`] when its file cannot be used, or no case comes of the seed.
    pub fn deal(&self, seed: u64, is_assessed: bool) -> Result<Dealt, Trouble> {
        let loaded = match self {
            Self::Carried(loaded) => Arc::clone(loaded),
            Self::File(path) => Arc::new(load::load(path)?),
            Self::HandOut(sealed, path) => {
                let case = deal_sealed(sealed).map_err(|error| Trouble::of_sealed(error, path))?;
                let name = path.file_stem().unwrap_or_default().to_string_lossy().into();
                return Ok(Dealt { case, record: record_of_sealed(sealed), name, is_sealed: true });
            }
        };
        let case = deal(&loaded, seed)?;
        let case = if is_assessed { case.assessed() } else { case };
        let name = kept::name_of(&case.scenario.text.scenario_name, seed);
        Ok(Dealt { record: record_of(&case), case, name, is_sealed: false })
    }
}

/// What a file of the user's turned out to be.
pub enum ReadFile {
    /// A scenario.
    Scenario(Arc<Loaded>),
    /// A sealed case.
    HandOut(Arc<Sealed>),
}

/// Reads a file of the user's, to be chosen.
///
/// # Errors
/// [`Trouble`] when it is neither a scenario nor a sealed case.
pub fn read_file(path: &Path) -> Result<ReadFile, Trouble> {
    if !seal::may_be_one(path) {
        return Ok(ReadFile::Scenario(Arc::new(load::load(path)?)));
    }
    let trouble = |error| Trouble::Seal { path: path.to_owned(), error };
    // It was there a moment ago; one that is gone meanwhile is no sealed case either.
    let read = seal::load(path).unwrap_or(Err(seal::SealError::NotSealed));
    Ok(ReadFile::HandOut(Arc::new(read.map_err(trouble)?)))
}

/// What can be chosen, and what is.
#[derive(Debug)]
pub struct Scenarios {
    list: Vec<(Source, ScenarioView)>,
    chosen: usize,
    is_assessed: bool,
}

impl Scenarios {
    /// Those that the program carries; the first is chosen, to practise.
    pub fn carried() -> Self {
        let list = ScenarioText::carried().into_iter().filter_map(|text| {
            let loaded = Arc::new(load::read(text).ok()?);
            let view = view(&loaded, None);
            Some((Source::Carried(loaded), view))
        });
        Self { list: list.collect(), chosen: 0, is_assessed: false }
    }

    /// Adds a file that was read and chooses it. One that is there already, carried or from the same file, is chosen.
    pub fn add(&mut self, path: &Path, read: &ReadFile) {
        let there = self.list.iter().position(|(source, _)| match (source, read) {
            (Source::Carried(carried), ReadFile::Scenario(loaded)) => carried.text == loaded.text,
            (Source::Carried(_), ReadFile::HandOut(_)) => false,
            (Source::File(known) | Source::HandOut(_, known), _) => known == path,
        });
        let entry = match read {
            ReadFile::Scenario(loaded) => (Source::File(path.to_owned()), view(loaded, Some(path))),
            ReadFile::HandOut(sealed) => (
                Source::HandOut(Arc::clone(sealed), path.to_owned()),
                ScenarioView {
                    title: sealed.title.clone(),
                    about: String::new(),
                    level: None,
                    file: Some(path.display().to_string()),
                    is_always_assessed: true,
                    sealed_for: Some(sealed.name.clone()),
                },
            ),
        };
        self.chosen = if let Some(number) = there {
            if !matches!(self.list[number].0, Source::Carried(_)) {
                self.list[number] = entry;
            }
            number
        } else {
            self.list.push(entry);
            self.list.len() - 1
        };
    }

    /// Chooses one by its number, from 0.
    pub fn choose(&mut self, number: usize) {
        if number < self.list.len() {
            self.chosen = number;
        }
    }

    /// Whether the next case is to be an assessed one.
    pub const fn assess(&mut self, is_assessed: bool) {
        self.is_assessed = is_assessed;
    }

    /// The chosen one, and whether its case is to be assessed.
    pub fn chosen(&self) -> Option<(Source, bool)> {
        let (source, view) = self.list.get(self.chosen)?;
        Some((source.clone(), self.is_assessed || view.is_always_assessed))
    }

    /// The one on whose case somebody is shown round.
    pub fn of_guide(&self) -> Option<Source> {
        Some(self.list.first()?.0.clone())
    }

    /// Shows what can be chosen on the front page.
    pub fn show_on(&self, front: &mut FrontView) {
        front.scenarios = self.list.iter().map(|(_, view)| view.clone()).collect();
        front.chosen = self.chosen;
        front.is_assessed = self.chosen().is_some_and(|(_, is_assessed)| is_assessed);
    }
}

fn view(loaded: &Loaded, file: Option<&Path>) -> ScenarioView {
    ScenarioView {
        title: loaded.scenario.title.clone(),
        about: match loaded.scenario.about.as_str() {
            "" => first_sentence(&loaded.scenario.job.concern).to_owned(),
            about => about.to_owned(),
        },
        level: Some(loaded.scenario.level),
        file: file.map(|path| path.display().to_string()),
        is_always_assessed: loaded.scenario.mode == Mode::Assessed,
        sealed_for: None,
    }
}

/// A text up to the end of its first sentence.
fn first_sentence(text: &str) -> &str {
    let text = text.trim();
    let end = [". ", "! ", "? "].into_iter().filter_map(|end| text.find(end)).min();
    end.map_or(text, |end| &text[..=end])
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn closed_form_a_sentence_ends_at_its_first_full_stop() {
        for (text, first) in [
            ("Goes flat on the climb. The lamp has been seen.", "Goes flat on the climb."),
            ("Why? Nobody knows. ", "Why?"),
            ("No stop at all", "No stop at all"),
            ("Uses 0.5 litres.", "Uses 0.5 litres."),
            ("", ""),
        ] {
            assert_eq!(first_sentence(text), first);
        }
    }

    #[test]
    fn limit_what_is_carried_can_be_chosen_and_nothing_beyond_it() {
        let mut scenarios = Scenarios::carried();
        let mut front = FrontView::default();
        scenarios.show_on(&mut front);
        assert_eq!(front.scenarios.len(), ScenarioText::carried().len());
        assert_eq!((front.chosen, front.is_assessed), (0, false));
        for scenario in &front.scenarios {
            assert!(!scenario.title.is_empty() && !scenario.about.is_empty(), "{scenario:?}");
        }
        scenarios.choose(1);
        scenarios.choose(99);
        scenarios.assess(true);
        scenarios.show_on(&mut front);
        assert_eq!((front.chosen, front.is_assessed), (1, true));
    }
}
