//! The line that says the next step, typed or clicked together.

use crate::session::setup::Briefing;
use crate::session::step::Step;
use crate::vehicle::spec::Id;
use crate::wording::catalogue::Words;
use crate::wording::following::{Following, following, with_word, without_last_word};
use crate::wording::place;
use crate::wording::step_parser::parse;
use crate::wording::verbs::{USAGES, Usage};
use crate::workshop::view::case::{LineView, Offer};

/// What a line is about: names come from the briefing, sentences from the words, texts from what
/// was done.
#[derive(Clone, Copy)]
pub struct About<'a> {
    /// What everybody may know.
    pub briefing: &'a Briefing,
    /// The sentences.
    pub words: &'a Words,
    /// Texts for the record.
    pub texts: &'a [String],
}

impl LineView {
    /// An empty line.
    pub(super) fn empty(about: About<'_>) -> Self {
        let mut line = Self::default();
        line.look(about);
        line
    }

    /// Takes over what was typed.
    pub(super) fn typed(&mut self, text: String, about: About<'_>) {
        self.text = text;
        self.look(about);
    }

    /// Writes something else into the line.
    pub(super) fn rewrite(&mut self, text: String, about: About<'_>) {
        self.changes += 1;
        self.typed(text, about);
    }

    /// Puts a word to it.
    pub(super) fn add_word(&mut self, word: &str, about: About<'_>) {
        self.rewrite(with_word(&self.text, word), about);
    }

    /// Takes the last word back.
    pub(super) fn remove_word(&mut self, about: About<'_>) {
        self.rewrite(without_last_word(&self.text).to_owned(), about);
    }

    /// Marks the next word or the one before; behind the last comes none, then the first.
    pub(super) fn mark(&mut self, forward: bool) {
        let (count, last) = (self.words.len(), self.words.len().checked_sub(1));
        self.marked = match (self.marked, forward) {
            (None, true) => last.map(|_| 0),
            (None, false) => last,
            (Some(marked), true) => Some(marked + 1).filter(|next| *next < count),
            (Some(marked), false) => marked.checked_sub(1),
        };
    }

    /// Puts the only or the marked word to it; where there are several and none is marked, marks
    /// the first.
    pub(super) fn complete(&mut self, about: About<'_>) {
        let only = (self.words.len() == 1).then_some(0);
        match self.marked.or(only).and_then(|index| self.words.get(index)) {
            Some(offer) => {
                let word = offer.word.clone();
                self.add_word(&word, about);
            }
            None => self.mark(true),
        }
    }

    /// The step that it says; where it says none, why is shown.
    pub(super) fn step(&mut self, about: About<'_>) -> Option<Step> {
        match parse(&self.text, about.briefing) {
            Ok(step) => step,
            Err(problem) => {
                self.problem = Some(problem.sentence(about.words));
                None
            }
        }
    }

    /// Works out everything that hangs on the text.
    fn look(&mut self, about: About<'_>) {
        let Following { words, number, text } = following(&self.text, about.briefing);
        self.words = words.into_iter().map(|word| offer(word, about.words)).collect();
        self.marked = None;
        self.digits = number.is_some();
        self.texts = if text { about.texts.to_vec() } else { Vec::new() };
        self.is_step = matches!(parse(&self.text, about.briefing), Ok(Some(_)));
        self.problem = None;
        self.hint = hint(&self.text, about.words);
    }
}

/// A word with the name of what it stands for, where that is more than the word without hyphens.
fn offer(word: String, words: &Words) -> Offer {
    let name = place::place(&Id::from(word.as_str()), words);
    let meaning = (name.replace(' ', "-") != word).then_some(name);
    Offer { word, meaning }
}

/// What the step that a line begins does, and its form.
fn hint(line: &str, words: &Words) -> String {
    match usage_of(line) {
        None => words.say("window-hint-empty", &[]),
        Some(usage) => words.say(
            "window-hint-form",
            &[("meaning", words.say(usage.meaning, &[]).into()), ("form", usage.form.into())],
        ),
    }
}

/// The way to use a verb that a line has begun.
fn usage_of(line: &str) -> Option<&'static Usage> {
    let line = line.trim().to_lowercase();
    let verb = line.split_whitespace().next()?;
    let fits = |usage: &&Usage| {
        let start = usage.start();
        line.starts_with(&start) || start.starts_with(&line)
    };
    let of_verb = || USAGES.iter().filter(|usage| usage.verb.word() == verb);
    // The longest beginning is the closest: `ask approval` is another step than `ask symptom`.
    of_verb().filter(fits).max_by_key(|usage| usage.start().len()).or_else(|| of_verb().next())
}
