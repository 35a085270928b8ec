//! The text of docs/file-formats.md.

use super::chapters::{Body, Chapter, Field, Section};
use super::meaning;
use super::ranges::Range;
use std::collections::BTreeMap;
use std::fmt::Write as _;

const HEAD: &str = include_str!("head.md");

/// The whole page.
pub fn text(chapters: &[Chapter], ranges: &BTreeMap<String, Range>) -> String {
    let mut page = HEAD.to_owned();
    for chapter in chapters {
        let mut sections: Vec<&Section> = chapter.sections.iter().collect();
        put(&mut page, &format!("\n## {}\n", chapter.title));
        // What another chapter has told already is linked from here and not told again.
        sections.retain(|section| is_first(chapters, chapter, section));
        for section in sections {
            tell(&mut page, section, ranges);
        }
    }
    page
}

fn is_first(chapters: &[Chapter], here: &Chapter, section: &Section) -> bool {
    let first = chapters
        .iter()
        .find(|chapter| chapter.sections.iter().any(|other| other.name == section.name));
    first.is_some_and(|chapter| chapter.title == here.title)
}

fn put(page: &mut String, line: &str) {
    writeln!(page, "{line}").unwrap();
}

fn tell(page: &mut String, section: &Section, ranges: &BTreeMap<String, Range>) {
    put(page, &format!("### `{}`\n", section.name));
    put(page, &format!("{}\n", meaning::sentence(&section.description)));
    match &section.body {
        Body::Fields(fields) => table(page, fields, ranges),
        Body::Words(words) if words.iter().all(|(_, description)| description.is_empty()) => {
            let words: Vec<String> = words.iter().map(|(word, _)| format!("`{word}`")).collect();
            put(page, &format!("One of {}.\n", words.join(", ")));
        }
        Body::Words(words) => {
            put(page, "| word | meaning |\n| --- | --- |");
            for (word, description) in words {
                put(page, &format!("| `{word}` | {} |", meaning::sentence(description)));
            }
            put(page, "");
        }
        Body::Kinds(kinds) => {
            for (word, description, fields) in kinds {
                let form = if fields.is_empty() { "" } else { "(…)" };
                put(page, &format!("**`{word}{form}`**: {}\n", meaning::sentence(description)));
                if !fields.is_empty() {
                    table(page, fields, ranges);
                }
            }
        }
    }
}

fn table(page: &mut String, fields: &[Field], ranges: &BTreeMap<String, Range>) {
    put(page, "| field | what is written | unit | range | if left out | since | meaning |");
    put(page, "| --- | --- | --- | --- | --- | --- | --- |");
    for field in fields {
        let range = ranges
            .get(&field.key)
            .map(|range| format!("{} to {}", shown(range.least), shown(range.most)));
        put(
            page,
            &format!(
                "| `{}` | {} | {} | {} | {} | {} | {} |",
                field.name,
                field.kind,
                field.unit.as_deref().unwrap_or(""),
                range.unwrap_or_default(),
                field.default.as_deref().unwrap_or("**must be there**"),
                field.since,
                meaning::sentence(&field.description)
            ),
        );
    }
    put(page, "");
}

/// A number as it may be written in a file.
fn shown(number: f64) -> String {
    let plain = format!("{number}");
    if plain.len() > 9 { format!("{number:e}") } else { plain }
}
