//! The scenarios that a case can be begun of: those that the program carries, and files of the user's.

use super::trouble::Trouble;
use crate::scenario::load::{self, Loaded, ScenarioText};
use crate::scenario::schema::Mode;
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
}

impl Source {
    /// The scenario.
    ///
    /// # Errors
    /// [`Trouble`] when its file cannot be used.
    pub fn load(&self) -> Result<Arc<Loaded>, Trouble> {
        match self {
            Self::Carried(loaded) => Ok(Arc::clone(loaded)),
            Self::File(path) => Ok(Arc::new(load::load(path)?)),
        }
    }
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
    pub fn add(&mut self, path: &Path, loaded: &Arc<Loaded>) {
        let there = self.list.iter().position(|(source, _)| match source {
            Source::Carried(carried) => carried.text == loaded.text,
            Source::File(known) => known == path,
        });
        let view = view(loaded, Some(path));
        self.chosen = if let Some(number) = there {
            if matches!(self.list[number].0, Source::File(_)) {
                self.list[number].1 = view;
            }
            number
        } else {
            self.list.push((Source::File(path.to_owned()), view));
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
        level: loaded.scenario.level,
        file: file.map(|path| path.display().to_string()),
        is_always_assessed: loaded.scenario.mode == Mode::Assessed,
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
