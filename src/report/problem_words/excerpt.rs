//! The line of a file at which a problem is, with carets below what is meant.

use crate::scenario::problem::Problem;

/// Sets the excerpt off from the sentence above it.
const INDENT: &str = "    ";
/// Characters of a line that are shown: with the indent they fit a terminal of 80 columns, in which
/// a longer line would be broken and leave the caret below something else.
const LONGEST: usize = 72;
/// Stands where a line was cut.
const CUT: &str = "…";

/// How wide a terminal shows a character.
enum Width {
    /// It stands on top of the one before.
    None,
    /// One column.
    Single,
    /// Two columns.
    Double,
}

/// The line and the carets, each with its indent; nothing where the file has nothing to show.
pub(super) fn lines<K>(problem: &Problem<K>) -> Vec<String> {
    if problem.text.trim().is_empty() {
        return Vec::new();
    }
    let text: Vec<char> = problem.text.chars().collect();
    // A caret can stand just behind the line; further off, the place is not that of this line.
    let place = problem
        .column
        .checked_sub(problem.text_from)
        .map(|before| before as usize)
        .filter(|before| *before <= text.len());
    let most_skipped = text.len().saturating_sub(LONGEST);
    let skipped = place.unwrap_or(0).saturating_sub(LONGEST / 2).min(most_skipped);
    let shown: String = text.iter().skip(skipped).take(LONGEST).collect();
    let front = if skipped > 0 || problem.text_from > 1 { CUT } else { "" };
    let end = if skipped < most_skipped { CUT } else { "" };
    let mut lines = vec![format!("{INDENT}{front}{}{end}", shown.trim_end())];
    if let Some(place) = place {
        let before = text.iter().take(place).skip(skipped);
        let blanks: String = front.chars().chain(before.copied()).filter_map(blank).collect();
        let meant = text.iter().take(skipped + LONGEST).skip(place).take(problem.length as usize);
        let carets: usize = meant.copied().map(columns).sum();
        lines.push(format!("{INDENT}{blanks}{}", "^".repeat(carets.max(1))));
    }
    lines
}

/// A blank as wide as a terminal shows a character; none for one that stands on top of another.
fn blank(c: char) -> Option<char> {
    match width(c) {
        Width::None => None,
        Width::Single => Some(' '),
        Width::Double => Some('\u{3000}'),
    }
}

/// Columns that a terminal gives a character.
const fn columns(c: char) -> usize {
    match width(c) {
        Width::None => 0,
        Width::Single => 1,
        Width::Double => 2,
    }
}

/// The width of a character by its block: coarse, and right for the letters that people write.
const fn width(c: char) -> Width {
    match c {
        '\u{300}'..='\u{36f}' | '\u{200b}'..='\u{200f}' | '\u{fe00}'..='\u{fe0f}' => Width::None,
        '\u{1100}'..='\u{115f}'
        | '\u{2e80}'..='\u{a4cf}'
        | '\u{ac00}'..='\u{d7a3}'
        | '\u{f900}'..='\u{faff}'
        | '\u{fe30}'..='\u{fe6f}'
        | '\u{ff00}'..='\u{ff60}'
        | '\u{ffe0}'..='\u{ffe6}'
        | '\u{1f300}'..='\u{1faff}'
        | '\u{20000}'..='\u{3fffd}' => Width::Double,
        _ => Width::Single,
    }
}
