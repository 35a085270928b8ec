//! Texts that are no RON, and values of another shape.

use super::kinds::with_word;
use crate::scenario::problem::{Shape, SyntaxFault};
use crate::wording::catalogue::Words;
use crate::wording::quoted;

/// Why a text is no RON.
pub(super) fn syntax(fault: SyntaxFault, words: &Words) -> String {
    let key = match fault {
        SyntaxFault::OpenBracket(bracket) => {
            let closing = match bracket {
                '(' => ")",
                '[' => "]",
                _ => "}",
            };
            let found = quoted::word(&bracket.to_string());
            let arguments = [("found", found.into()), ("closing", closing.into())];
            return words.say("flaw-open-bracket", &arguments);
        }
        SyntaxFault::OtherBracket(found) => {
            return with_word("flaw-other-bracket", "found", &found.to_string(), words);
        }
        SyntaxFault::NoComma => "flaw-no-comma",
        SyntaxFault::NoColon => "flaw-no-colon",
        SyntaxFault::OpenText => "flaw-open-text",
        SyntaxFault::OpenComment => "flaw-open-comment",
        SyntaxFault::TooLong => "flaw-too-long",
        SyntaxFault::NoName => "flaw-no-name",
        SyntaxFault::BadEscape => "flaw-bad-escape",
        SyntaxFault::BadNumber => "flaw-bad-number",
        SyntaxFault::UnknownExtension => "flaw-unknown-extension",
        SyntaxFault::Other => "flaw-other-syntax",
    };
    words.say(key, &[])
}

/// What should stand there, and how it is written.
pub(super) fn shape(expected: Shape, words: &Words) -> String {
    let key = match expected {
        Shape::Text => "flaw-shape-text",
        Shape::WholeNumber => "flaw-shape-whole-number",
        Shape::Number => "flaw-shape-number",
        Shape::Word => "flaw-shape-word",
        Shape::Fields => "flaw-shape-fields",
        Shape::Pair => "flaw-shape-pair",
        Shape::List => "flaw-shape-list",
        Shape::Map => "flaw-shape-map",
        Shape::Optional => "flaw-shape-optional",
    };
    words.say(key, &[])
}

/// A version that is not read: newer ones and those that never were have other remedies.
pub(super) fn version(found: &str, newest: u32, words: &Words) -> String {
    let newer = found.parse::<u64>().is_ok_and(|version| version > u64::from(newest));
    let key = if newer { "flaw-newer-format" } else { "flaw-unknown-format" };
    words.say(key, &[("found", quoted::word(found).into()), ("newest", newest.into())])
}
