//! The sentences of one language, from Fluent catalogues that are built into the program.
//!
//! A language is a folder `assets/locales/TAG` with the files that `language!` names, and its tag
//! in `LANGUAGES`. A message that a language lacks is taken from the first one, so that a
//! catalogue can grow step by step.
//!
//! ```
//! use faultwright::wording::catalogue::Words;
//!
//! let words = Words::for_language("en-GB");
//! assert_eq!(words.say("amount-minutes", &[("count", 12.into())]), "12 min");
//! assert_eq!(words.say("no-such-message", &[]), "<no-such-message>");
//! ```

use core::fmt;
use fluent_bundle::concurrent::FluentBundle;
use fluent_bundle::{FluentArgs, FluentResource, FluentValue};

/// A language with the text of its catalogues.
struct Language {
    tag: &'static str,
    files: &'static [&'static str],
}

macro_rules! language {
    ($tag:literal) => {
        Language {
            tag: $tag,
            files: &[
                include_str!(concat!("../../assets/locales/", $tag, "/steps.ftl")),
                include_str!(concat!("../../assets/locales/", $tag, "/events.ftl")),
                include_str!(concat!("../../assets/locales/", $tag, "/service.ftl")),
                include_str!(concat!("../../assets/locales/", $tag, "/codes.ftl")),
                include_str!(concat!("../../assets/locales/", $tag, "/places.ftl")),
                include_str!(concat!("../../assets/locales/", $tag, "/command_line.ftl")),
                include_str!(concat!("../../assets/locales/", $tag, "/debrief.ftl")),
                include_str!(concat!("../../assets/locales/", $tag, "/errors.ftl")),
                include_str!(concat!("../../assets/locales/", $tag, "/hints.ftl")),
                include_str!(concat!("../../assets/locales/", $tag, "/window.ftl")),
                include_str!(concat!("../../assets/locales/", $tag, "/instruments_window.ftl")),
                include_str!(concat!("../../assets/locales/", $tag, "/sounds.ftl")),
                include_str!(concat!("../../assets/locales/", $tag, "/writer.ftl")),
            ],
        }
    };
}

/// Every language; the first is the one whose messages fill the gaps of the others.
const LANGUAGES: &[Language] = &[language!("en-GB"), language!("de")];

/// A language that can be chosen.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Choice {
    /// What [`Words::for_language`] knows it by.
    pub tag: &'static str,
    /// What those who speak it call it.
    pub name: String,
}

/// The sentences of one language.
pub struct Words {
    tag: &'static str,
    /// The language asked for, then the one that fills its gaps.
    bundles: Vec<FluentBundle<FluentResource>>,
}

impl Words {
    /// The words of the language that fits a tag such as `en-GB` best: the same tag, else the
    /// same language elsewhere, else British English. An underscore counts as a hyphen, and what
    /// follows a point is ignored, because operating systems name languages like that.
    #[must_use]
    pub fn for_language(tag: &str) -> Self {
        let known: Vec<&str> = LANGUAGES.iter().map(|language| language.tag).collect();
        let chosen = best_fit(&known, tag);
        let mut bundles = Vec::new();
        let mut name = "";
        for (number, language) in LANGUAGES.iter().enumerate() {
            if number == chosen {
                name = language.tag;
                bundles.insert(0, bundle_of(language));
            } else if number == 0 {
                bundles.push(bundle_of(language));
            }
        }
        Self { tag: name, bundles }
    }

    /// The tag of the language that was found.
    #[must_use]
    pub const fn language(&self) -> &'static str {
        self.tag
    }

    /// All languages that the program knows, for somebody to choose from. Every catalogue is read
    /// for it, so a page that is drawn often keeps the list.
    #[must_use]
    pub fn languages() -> Vec<Choice> {
        LANGUAGES
            .iter()
            .map(|language| Choice {
                tag: language.tag,
                name: Self::for_language(language.tag).say("language-name", &[]),
            })
            .collect()
    }

    /// A message with its arguments filled in. A message or an argument that is missing shows as
    /// the key in angle brackets.
    #[must_use]
    pub fn say(&self, key: &str, arguments: &[(&str, FluentValue<'_>)]) -> String {
        self.find(key, arguments).unwrap_or_else(|| format!("<{key}>"))
    }

    /// A message that need not exist, such as the name of a place.
    #[must_use]
    pub fn find(&self, key: &str, arguments: &[(&str, FluentValue<'_>)]) -> Option<String> {
        let (bundle, pattern) = self.bundles.iter().find_map(|bundle| {
            Some((bundle, bundle.get_message(key).and_then(|message| message.value())?))
        })?;
        let mut filled = FluentArgs::with_capacity(arguments.len());
        for (name, value) in arguments {
            filled.set(*name, value.clone());
        }
        let mut faults = Vec::new();
        let text = bundle.format_pattern(pattern, Some(&filled), &mut faults);
        Some(if faults.is_empty() { text.into_owned() } else { format!("<{key}>") })
    }

    /// Things in a row, the last joined by "and".
    #[must_use]
    pub fn all_of(&self, things: &[String]) -> String {
        self.in_a_row(things, "list-and")
    }

    /// Things in a row, the last joined by "or".
    #[must_use]
    pub fn one_of(&self, things: &[String]) -> String {
        self.in_a_row(things, "list-or")
    }

    fn in_a_row(&self, things: &[String], last_joint: &str) -> String {
        match things {
            [] => String::new(),
            [only] => only.clone(),
            [most @ .., last] => {
                let most = most.join(&self.say("list-comma", &[]));
                self.say(last_joint, &[("most", most.into()), ("last", last.as_str().into())])
            }
        }
    }
}

impl fmt::Debug for Words {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.debug_struct("Words").field("tag", &self.tag).finish_non_exhaustive()
    }
}

/// Which of the known tags fits best; the first where none does.
fn best_fit(known: &[&str], wanted: &str) -> usize {
    let wanted: String = wanted.chars().take_while(|c| *c != '.').collect();
    let wanted = wanted.replace('_', "-");
    let language_of = |tag: &str| tag.split('-').next().unwrap_or_default().to_lowercase();
    known
        .iter()
        .position(|tag| tag.eq_ignore_ascii_case(&wanted))
        .or_else(|| known.iter().position(|tag| language_of(tag) == language_of(&wanted)))
        .unwrap_or(0)
}

fn bundle_of(language: &Language) -> FluentBundle<FluentResource> {
    let mut bundle = FluentBundle::new_concurrent(vec![language.tag.parse().unwrap_or_default()]);
    // The marks that isolate the direction of a filled-in word would end up in files and terminals.
    bundle.set_use_isolating(false);
    for text in language.files {
        // What cannot be read is left out here and shows as its key; the tests refuse it.
        let resource =
            FluentResource::try_new((*text).to_owned()).unwrap_or_else(|(readable, _)| readable);
        bundle.add_resource_overriding(resource);
    }
    bundle
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::collections::BTreeSet;

    fn message_names(text: &str) -> Vec<&str> {
        text.lines()
            .filter(|line| line.starts_with(|c: char| c.is_ascii_alphabetic()))
            .filter_map(|line| line.split_once(" ="))
            .map(|(name, _)| name)
            .collect()
    }

    #[test]
    fn every_catalogue_reads_without_a_flaw_and_names_no_message_twice() {
        for language in LANGUAGES {
            let mut names = BTreeSet::new();
            for text in language.files {
                if let Err((_, flaws)) = FluentResource::try_new((*text).to_owned()) {
                    panic!("{}: {flaws:?}", language.tag);
                }
                for name in message_names(text) {
                    assert!(names.insert(name), "{}: {name} stands twice", language.tag);
                }
            }
            assert!(names.contains("amount-minutes"));
        }
    }

    #[test]
    fn languages_are_offered_by_the_names_that_their_speakers_use() {
        let names: Vec<String> = Words::languages().into_iter().map(|it| it.name).collect();
        assert_eq!(names, ["English", "Deutsch"]);
        for choice in Words::languages() {
            assert_eq!(Words::for_language(choice.tag).language(), choice.tag);
        }
        assert_eq!(Words::for_language("de_AT.UTF-8").language(), "de");
    }

    #[test]
    fn every_language_has_the_messages_of_the_first() {
        let names = |language: &Language| -> BTreeSet<&str> {
            language.files.iter().flat_map(|text| message_names(text)).collect()
        };
        for language in LANGUAGES {
            assert_eq!(LANGUAGES.first().map(names), Some(names(language)), "{}", language.tag);
        }
    }

    #[test]
    fn a_tag_finds_its_language_its_sister_or_the_first() {
        let known = ["en-GB", "de-DE", "de-AT"];
        let found = |tag| known.get(best_fit(&known, tag)).copied().unwrap_or_default();
        assert_eq!(found("de-AT"), "de-AT");
        assert_eq!(found("DE-at"), "de-AT");
        assert_eq!(found("de_AT.UTF-8"), "de-AT");
        assert_eq!(found("de-CH"), "de-DE");
        assert_eq!(found("fr-FR"), "en-GB");
        assert_eq!(found(""), "en-GB");
        assert_eq!(Words::for_language("tlh").language(), "en-GB");
    }

    #[test]
    fn a_missing_message_or_argument_shows_as_its_key() {
        let words = Words::for_language("en-GB");
        assert_eq!(words.say("no-such-message", &[]), "<no-such-message>");
        assert_eq!(words.say("amount-minutes", &[]), "<amount-minutes>");
        assert_eq!(words.say("", &[]), "<>");
        assert_eq!(words.find("no-such-message", &[]), None);
    }

    #[test]
    fn filled_in_words_carry_no_invisible_marks() {
        let words = Words::for_language("en-GB");
        let text = words.say("list-and", &[("most", "a".into()), ("last", "b".into())]);
        assert_eq!(text, "a and b");
    }

    #[test]
    fn things_in_a_row_read_as_people_say_them() {
        let words = Words::for_language("en-GB");
        let things = |count: usize| -> Vec<String> {
            ["red", "amber", "green"].iter().take(count).map(ToString::to_string).collect()
        };
        assert_eq!(words.all_of(&things(0)), "");
        assert_eq!(words.all_of(&things(1)), "red");
        assert_eq!(words.all_of(&things(2)), "red and amber");
        assert_eq!(words.one_of(&things(3)), "red, amber or green");
    }
}
