//! Text that goes into a page.

/// Text with the signs that mean something in a page written out.
#[must_use]
pub fn escaped(text: &str) -> String {
    let mut written = String::with_capacity(text.len());
    for character in text.chars() {
        match character {
            '&' => written.push_str("&amp;"),
            '<' => written.push_str("&lt;"),
            '>' => written.push_str("&gt;"),
            '"' => written.push_str("&quot;"),
            '\'' => written.push_str("&#39;"),
            other => written.push(other),
        }
    }
    written
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn prop_nothing_that_was_written_can_open_a_tag_or_end_an_attribute(text in ".*") {
            let written = escaped(&text);
            prop_assert!(!written.contains(['<', '>', '"', '\'']));
            let back = written
                .replace("&lt;", "<")
                .replace("&gt;", ">")
                .replace("&quot;", "\"")
                .replace("&#39;", "'")
                .replace("&amp;", "&");
            prop_assert_eq!(back, text);
        }
    }
}
