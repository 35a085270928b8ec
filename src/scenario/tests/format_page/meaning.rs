//! What stands in a description: its unit, its range, and the sentence without them.

/// The place of the first pair of square brackets, without what only looks like one.
fn brackets(text: &str) -> Option<(usize, usize)> {
    let mut from = 0;
    while let Some(open) = text.get(from..)?.find('[').map(|at| at + from) {
        let close = open + text.get(open..)?.find(']')?;
        if !text.get(open + 1..close)?.contains('`') {
            return Some((open, close));
        }
        from = close + 1;
    }
    None
}

/// A description on one line, its first paragraph alone, without the marks of rustdoc.
fn plain(description: &str) -> String {
    let first = description.split("\n\n").next().unwrap_or_default().replace('\n', " ");
    let mut text = first.replace("\\[", "[").replace("\\]", "]");
    // [`Self::duty`] is a link in the source and a word on the page.
    while let Some(open) = text.find("[`") {
        let Some(close) = text.get(open..).and_then(|rest| rest.find("`]")).map(|at| at + open)
        else {
            break;
        };
        let name = text.get(open + 2..close).unwrap_or_default();
        let word = format!("`{}`", name.rsplit("::").next().unwrap_or(name));
        text.replace_range(open..close + 2, &word);
    }
    text
}

/// The unit in square brackets.
pub fn unit(description: &str) -> Option<String> {
    let text = plain(description);
    let (open, close) = brackets(&text)?;
    text.get(open + 1..close).map(str::to_owned)
}

/// A range such as `, 0 to 1` in a text: where it begins and ends, and its ends.
fn range_in(text: &str) -> Option<(usize, usize, (f64, f64))> {
    let number = |text: &str| text.replace('−', "-").parse::<f64>().ok();
    let mut from = 0;
    while let Some(at) = text.get(from..)?.find(" to ").map(|at| at + from) {
        from = at + 4;
        let start = text.get(..at)?.rfind(' ').map_or(0, |blank| blank + 1);
        let rest = text.get(from..)?;
        let length = rest
            .char_indices()
            .find(|(at, c)| {
                let is_point =
                    *c == '.' && rest[at + 1..].starts_with(|c: char| c.is_ascii_digit());
                !(c.is_ascii_digit() || *c == '-' || is_point)
            })
            .map_or(rest.len(), |(at, _)| at);
        let before = text.get(..start)?.trim_end();
        if let (Some(least), Some(most)) =
            (number(text.get(start..at)?), number(rest.get(..length)?))
            && before.ends_with(',')
        {
            return Some((before.len() - 1, from + length, (least, most)));
        }
    }
    None
}

/// The range that a description gives.
pub fn range(description: &str) -> Option<(f64, f64)> {
    range_in(&plain(description)).map(|(_, _, range)| range)
}

/// The description without its unit and its range, which have columns of their own.
pub fn sentence(description: &str) -> String {
    let mut text = plain(description);
    if let Some((start, end, _)) = range_in(&text) {
        text.replace_range(start..end, "");
    }
    if let Some((open, close)) = brackets(&text) {
        let start = text[..open].trim_end().len();
        text.replace_range(start..=close, "");
    }
    text.replace('|', "\\|")
}

#[test]
fn closed_form_a_description_is_taken_apart() {
    let said = "Length of the\nconductor \\[m\\], 0.2 to 30. See [`Self::duty`].\n\nMore.";
    assert_eq!(unit(said).as_deref(), Some("m"));
    assert_eq!(range(said), Some((0.2, 30.0)));
    assert_eq!(sentence(said), "Length of the conductor. See `duty`.");
    assert_eq!(range("From one to two, 3 to nothing"), None);
    assert_eq!(range("Temperature [°C], -40 to 50."), Some((-40.0, 50.0)));
}
