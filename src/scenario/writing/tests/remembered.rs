//! The history of a text: what is taken back gives the same bytes.

use crate::scenario::writing::manuscript::{By, Manuscript};
use crate::scenario::writing::patch::Patch;
use proptest::prelude::*;

#[derive(Debug, Clone)]
enum Done {
    Typed(String),
    Field(usize, String),
    Undone,
    Redone,
    Saved,
}

fn anything() -> impl Strategy<Value = Done> {
    prop_oneof![
        "[ab é\\n]{0,12}".prop_map(Done::Typed),
        (0_usize..12, "[xyü]{0,4}").prop_map(|(at, with)| Done::Field(at, with)),
        Just(Done::Undone),
        Just(Done::Redone),
        Just(Done::Saved),
    ]
}

proptest! {
    #[test]
    fn prop_everything_can_be_taken_back_and_made_again(
        first in "[ab é\\n]{0,12}",
        deeds in prop::collection::vec(anything(), 0..40),
    ) {
        let mut text = Manuscript::new(first.clone());
        let mut saved = first.clone();
        for done in deeds {
            let before = text.text().to_owned();
            match done {
                Done::Typed(new) => {
                    text.rewrite(&new, By::Typing);
                    prop_assert_eq!(text.text(), &new);
                }
                Done::Field(at, with) => {
                    let at = before.char_indices().nth(at).map_or(before.len(), |(at, _)| at);
                    let patch = Patch { span: at..before.len(), with };
                    text.apply(&patch, By::Field("a"));
                    prop_assert_eq!(text.text(), patch.on(&before));
                }
                Done::Undone => {
                    if text.undo().is_some() {
                        let undone = text.text().to_owned();
                        text.redo();
                        prop_assert_eq!(text.text(), &before);
                        text.undo();
                        prop_assert_eq!(text.text(), &undone);
                    }
                }
                Done::Redone => {
                    if text.redo().is_some() {
                        text.undo();
                        prop_assert_eq!(text.text(), &before);
                        text.redo();
                    }
                }
                Done::Saved => {
                    text.is_saved(before.clone());
                    saved = before;
                }
            }
            prop_assert_eq!(text.is_changed(), text.text() != saved);
            prop_assert_eq!(text.saved(), &saved);
        }
        while text.redo().is_some() {}
        let last = text.text().to_owned();
        while text.undo().is_some() {}
        prop_assert_eq!(text.text(), &first);
        while text.redo().is_some() {}
        prop_assert_eq!(text.text(), &last);
    }
}

#[test]
fn closed_form_words_and_fields_are_taken_back_as_a_whole() {
    let mut text = Manuscript::new(String::new());
    let mut typed = String::new();
    for letter in "two words".chars() {
        typed.push(letter);
        text.rewrite(&typed, By::Typing);
    }
    for (with, end) in [("1", 9), ("12", 10), ("123", 11)] {
        text.apply(&Patch { span: 9..end, with: with.to_owned() }, By::Field("weight"));
    }
    text.apply(&Patch { span: 0..3, with: "six".to_owned() }, By::Field("title"));
    let mut seen = vec![text.text().to_owned()];
    while text.undo().is_some() {
        seen.push(text.text().to_owned());
    }
    assert_eq!(seen, ["six words123", "two words123", "two words", "two ", ""]);
    assert_eq!(text.can(), (false, true));
    // Going back letter by letter is one change as well.
    let mut text = Manuscript::new("abc".to_owned());
    for shorter in ["ab", "a", ""] {
        text.rewrite(shorter, By::Typing);
    }
    assert_eq!((text.undo(), text.text()), (Some(3), "abc"));
    assert_eq!(text.undo(), None);
}
