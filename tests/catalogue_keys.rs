//! The catalogues and the code agree: each message that the code asks for is there, and each
//! message that is there is asked for. Every language says the same things: it has the messages of
//! the first language, gives each the same figures and names, and leaves none untranslated.
#![expect(clippy::unwrap_used, reason = "a test fails by panicking")]

use faultwright::scenario::load;
use faultwright::wording::catalogue::Words;
use faultwright::wording::place::{self, PlaceKind};
use fluent_bundle::FluentValue;
use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::{Path, PathBuf};

fn below(folder: &Path, ending: &str, found: &mut Vec<PathBuf>) {
    for entry in fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        // The code's own tests ask for messages that nobody else may need.
        if path.ends_with("tests") || path.ends_with("tests.rs") {
            continue;
        }
        if path.is_dir() {
            below(&path, ending, found);
        } else if path.extension().is_some_and(|name| name == ending) {
            found.push(path);
        }
    }
}

fn texts(folder: &str, ending: &str) -> Vec<String> {
    let mut paths = Vec::new();
    below(&Path::new(env!("CARGO_MANIFEST_DIR")).join(folder), ending, &mut paths);
    assert!(!paths.is_empty(), "no {ending} file in {folder}");
    paths.iter().map(|path| fs::read_to_string(path).unwrap()).collect()
}

/// The source without its tests, whose keys may be wrong on purpose, and without its comments.
fn source() -> String {
    let mut text = String::new();
    for file in texts("src", "rs") {
        let code = file.split("#[cfg(test)]\nmod tests {").next().unwrap_or_default();
        for line in code.lines().filter(|line| !line.trim_start().starts_with("//")) {
            text.push_str(line);
            text.push('\n');
        }
    }
    text
}

/// Messages of a language by their keys, each as it stands in its catalogue.
fn catalogue(language: &str) -> BTreeMap<String, String> {
    let mut messages: BTreeMap<String, String> = BTreeMap::new();
    for text in texts(&format!("assets/locales/{language}"), "ftl") {
        let mut key = None;
        for line in text.lines() {
            if line.starts_with(|c: char| c.is_ascii_alphabetic()) {
                let (name, said) = line.split_once(" =").unwrap();
                assert!(messages.insert(name.to_owned(), said.trim().to_owned()).is_none());
                key = Some(name.to_owned());
            } else if line.starts_with([' ', '}']) {
                // The rest of a message with several forms. What is behind a term belongs to nothing here.
                if let Some(message) = key.as_ref().and_then(|key| messages.get_mut(key)) {
                    message.push('\n');
                    message.push_str(line.trim());
                }
            } else {
                key = None;
            }
        }
    }
    messages
}

fn messages() -> BTreeSet<String> {
    catalogue("en-GB").into_keys().collect()
}

/// Names that a message fills in.
fn variables(message: &str) -> BTreeSet<&str> {
    message
        .split('$')
        .skip(1)
        .filter_map(|rest| rest.split(|c: char| !c.is_ascii_alphanumeric() && c != '-').next())
        .filter(|name| !name.is_empty())
        .collect()
}

fn other_languages() -> Vec<&'static str> {
    let tags = Words::languages().into_iter().map(|choice| choice.tag);
    tags.filter(|tag| *tag != "en-GB").collect()
}

/// Keys that stand as they are behind a call that looks a message up.
fn asked_for(source: &str) -> BTreeSet<String> {
    ["say(", "find(", "plain(", "with_place("]
        .iter()
        .flat_map(|call| source.split(call).skip(1))
        .filter_map(|rest| rest.trim_start().strip_prefix('"')?.split('"').next())
        .filter(|key| key.contains('-') && key.chars().all(|c| c.is_ascii_lowercase() || c == '-'))
        .map(str::to_owned)
        .collect()
}

#[test]
fn every_message_that_the_code_asks_for_is_there() {
    let (asked, messages) = (asked_for(&source()), messages());
    assert!(asked.len() > 50, "the search found only {}", asked.len());
    let missing: Vec<&String> = asked.difference(&messages).collect();
    assert!(missing.is_empty(), "{missing:?}");
}

#[test]
fn every_message_that_is_there_is_asked_for() {
    let source = source();
    // Names of places and codes are looked up by what the vehicle calls them.
    let open = ["place-", "code-P", "code-C", "code-B", "code-U"];
    let unused: Vec<String> = messages()
        .into_iter()
        .filter(|name| !open.iter().any(|prefix| name.starts_with(prefix)))
        .filter(|name| !source.contains(&format!("\"{name}\"")))
        .collect();
    assert!(unused.is_empty(), "{unused:?}");
}

#[test]
fn the_search_finds_keys_and_nothing_else() {
    let planted =
        "words.say(\"a-b\", &[]); plain( \"c-d\"); find(\"{x}\"); say(key); x.find(\"ab\")";
    let found: Vec<String> = asked_for(planted).into_iter().collect();
    assert_eq!(found, ["a-b", "c-d"]);
}

#[test]
fn every_language_has_the_messages_of_the_first_with_the_same_variables() {
    let english = catalogue("en-GB");
    for tag in other_languages() {
        let other = catalogue(tag);
        let missing: Vec<&String> =
            english.keys().filter(|key| !other.contains_key(*key)).collect();
        assert!(missing.is_empty(), "{tag} lacks {missing:?}");
        let surplus: Vec<&String> =
            other.keys().filter(|key| !english.contains_key(*key)).collect();
        assert!(surplus.is_empty(), "{tag} alone has {surplus:?}");
        for (key, message) in &english {
            let said = other.get(key).unwrap();
            assert_eq!(variables(said), variables(message), "{tag}: {key}");
        }
    }
}

#[test]
fn every_message_can_be_said_in_every_language() {
    let english = catalogue("en-GB");
    for choice in Words::languages() {
        let words = Words::for_language(choice.tag);
        assert_eq!(words.language(), choice.tag);
        for (key, message) in &english {
            // Numbers of each form that a language may have, and a text.
            for value in [0.into(), 1.into(), 2.into(), 21.into(), FluentValue::from("text")] {
                let arguments: Vec<(&str, FluentValue<'_>)> =
                    variables(message).into_iter().map(|name| (name, value.clone())).collect();
                let said = words.say(key, &arguments);
                assert_ne!(said, format!("<{key}>"), "{}: {arguments:?}", choice.tag);
            }
        }
    }
}

/// A message of which nothing but figures, signs and names is left without what is filled in.
fn has_no_words(message: &str) -> bool {
    let bare: String =
        message.split('{').map(|part| part.split_once('}').map_or(part, |it| it.1)).collect();
    let units = ["min", "km", "km/h", "°C", "V", "s", "bit"];
    bare.split_whitespace()
        .all(|word| units.contains(&word) || !word.contains(|c: char| c.is_alphabetic()))
}

#[test]
fn no_message_is_left_in_english() {
    // Words that are the same there, and nothing else.
    let shared = BTreeMap::from([(
        "de",
        &[
            "window-title",
            "cli-trouble",
            "help-form",
            "window-hint-form",
            "tray-meter",
            "tray-red-letter",
            "reader-code",
            "reader-permanent",
            "scope-ms",
            "scope-point",
            // A line as it is typed.
            "window-another-hint",
        ][..],
    )]);
    let english = catalogue("en-GB");
    for tag in other_languages() {
        let other = catalogue(tag);
        let shared: BTreeSet<&str> = shared.get(tag).unwrap().iter().copied().collect();
        let same: BTreeSet<&str> = english
            .iter()
            .filter(|(key, message)| other.get(*key) == Some(message) && !has_no_words(message))
            .map(|(key, _)| key.as_str())
            .collect();
        assert_eq!(same, shared, "{tag}");
    }
}

#[test]
fn every_place_of_the_carried_vehicles_has_a_name_in_every_language() {
    for choice in Words::languages() {
        let words = Words::for_language(choice.tag);
        for scenario in load::ScenarioText::carried() {
            let briefing = load::read(scenario).unwrap().briefing();
            let kinds = PlaceKind::ALL.into_iter().filter(|kind| *kind != PlaceKind::PartNumber);
            for id in kinds.flat_map(|kind| kind.places(&briefing)) {
                assert_ne!(words.find(&format!("place-{id}"), &[]), None, "{}: {id}", choice.tag);
                assert!(!place::place(&id, &words).is_empty());
            }
        }
    }
}

#[test]
fn the_search_for_variables_finds_those_of_every_form() {
    let planted = "{ $a-b } x\n{ $count ->\n[one] {$c}\n*[other] { $count }\n} costs $ 5";
    let found: Vec<&str> = variables(planted).into_iter().collect();
    assert_eq!(found, ["a-b", "c", "count"]);
    assert!(has_no_words("{ $sign }{ $number } { $currency }"));
    assert!(!has_no_words("{ $sign } hours"));
}
