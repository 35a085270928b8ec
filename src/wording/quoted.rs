//! What others wrote, made fit to be repeated in a sentence: words, lists of words, paths.

use super::catalogue::Words;
use std::path::Path;

/// Words that a sentence lists before it says how many more there are.
const LISTED: usize = 12;
/// Characters of a word that a sentence repeats: more than any name may have.
const REPEATED: usize = 60;

/// A word without control characters, which would reach the terminal, and not endless.
#[must_use]
pub fn word(found: &str) -> String {
    let mut text = harmless(&found.chars().take(REPEATED).collect::<String>());
    if found.chars().nth(REPEATED).is_some() {
        text.push('…');
    }
    text
}

/// A path in full, without control characters.
#[must_use]
pub fn path(path: &Path) -> String {
    harmless(&path.to_string_lossy())
}

/// A path as it can be typed on a command line.
#[must_use]
pub fn typed_path(place: &Path) -> String {
    let text = path(place);
    if text.contains(char::is_whitespace) { format!("\"{text}\"") } else { text }
}

/// Text of any length without control characters.
#[must_use]
pub fn harmless(text: &str) -> String {
    text.chars().map(|c| if c.is_control() { char::REPLACEMENT_CHARACTER } else { c }).collect()
}

/// Some words of a list, the last joined by "or".
#[must_use]
pub fn one_of(list: &[String], words: &Words) -> String {
    some_of(list, words, Words::one_of)
}

/// Some words of a list, the last joined by "and".
#[must_use]
pub fn all_of(list: &[String], words: &Words) -> String {
    some_of(list, words, Words::all_of)
}

fn some_of(list: &[String], words: &Words, whole: fn(&Words, &[String]) -> String) -> String {
    if list.len() <= LISTED {
        return whole(words, list);
    }
    let listed: Vec<String> = list.iter().take(LISTED).cloned().collect();
    let more = list.len() - LISTED;
    let listed = listed.join(&words.say("list-comma", &[]));
    words.say("list-more", &[("list", listed.into()), ("more", more.into())])
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn words_and_paths_carry_nothing_that_moves_a_cursor() {
        assert_eq!(word("a\u{1b}[2Jb"), "a\u{fffd}[2Jb");
        assert_eq!(word(&"ü".repeat(REPEATED)), "ü".repeat(REPEATED));
        assert_eq!(word(&"ü".repeat(REPEATED + 1)), format!("{}…", "ü".repeat(REPEATED)));
        assert_eq!(path(Path::new("two\nlines.session")), "two\u{fffd}lines.session");
    }

    #[test]
    fn a_path_with_a_blank_is_typed_in_quotation_marks() {
        assert_eq!(typed_path(Path::new("my job.session")), "\"my job.session\"");
        assert_eq!(typed_path(Path::new("my-job.session")), "my-job.session");
    }

    #[test]
    fn a_long_list_says_how_many_more_there_are() {
        let words = Words::for_language("en-GB");
        let list = |count: usize| vec!["x".to_owned(); count];
        assert_eq!(one_of(&list(2), &words), "x or x");
        assert_eq!(all_of(&list(2), &words), "x and x");
        assert!(all_of(&list(LISTED), &words).ends_with("x, x and x"));
        assert!(one_of(&list(LISTED + 3), &words).ends_with("x, x and 3 more"));
    }
}
