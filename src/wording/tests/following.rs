//! What may come next in a line.

use super::sample::briefing;
use crate::wording::following::{following, with_word, without_last_word};
use crate::wording::parse_problem::NumberKind;
use crate::wording::step_parser::parse;
use crate::wording::verbs::USAGES;

#[test]
fn a_begun_word_is_completed_and_a_whole_one_followed() {
    let briefing = briefing();
    let words = |line: &str| following(line, &briefing).words;
    assert_eq!(words("ke"), ["key"]);
    assert_eq!(words("key"), ["off", "on", "start", "crank"]);
    assert_eq!(words("key o"), ["off", "on"]);
    assert_eq!(words("key on"), [""; 0]);
    assert_eq!(words("qqq"), [""; 0]);
}

#[test]
fn numbers_and_texts_are_told_from_words() {
    let briefing = briefing();
    let number = |line: &str| following(line, &briefing).number;
    for line in ["power intake-valve for ", "power intake-valve for 2"] {
        assert_eq!(number(line), Some(NumberKind::Seconds), "{line}");
    }
    for line in ["predict ", "predict 7", "predict 7 to ", "predict above 5"] {
        assert_eq!(number(line), Some(NumberKind::Reading), "{line}");
    }
    assert_eq!(number("key "), None);
    assert!(following("predict 7", &briefing).words.contains(&"to".to_owned()));
    assert!(following("write cause ", &briefing).text);
    assert!(following("write cause Open", &briefing).text);
    assert!(!following("write ", &briefing).text);
}

#[test]
fn words_are_added_and_taken_back_one_by_one() {
    assert_eq!(with_word("", "key"), "key ");
    assert_eq!(with_word("KE", "key"), "key ");
    assert_eq!(with_word("key ", "on"), "key on ");
    assert_eq!(with_word("key", "on"), "key on ");
    assert_eq!(with_word("predict 7", "to"), "predict 7 to ");
    assert_eq!(without_last_word("key on "), "key ");
    assert_eq!(without_last_word("key o"), "key ");
    assert_eq!(without_last_word("é\u{3000}"), "");
    assert_eq!(without_last_word(""), "");
}

#[test]
fn what_a_usage_starts_with_is_a_step_or_can_be_followed() {
    let briefing = briefing();
    for usage in USAGES {
        let start = usage.start();
        let is_step = matches!(parse(&start, &briefing), Ok(Some(_)));
        let ahead = following(&format!("{start} "), &briefing);
        let goes_on = !ahead.words.is_empty() || ahead.number.is_some() || ahead.text;
        assert!(is_step || goes_on, "{start}");
        assert!(usage.example.starts_with(&start), "{start}");
    }
}
