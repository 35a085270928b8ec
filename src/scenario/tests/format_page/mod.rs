//! The page that says what a scenario, a vehicle and a road's file hold, field by field.
//!
//! It is made of the types that read the files, of their descriptions, and of what the checks say
//! when they are asked; so it cannot say anything else than the program does:
//!
//! ```text
//! FAULTWRIGHT_WRITE_FORMATS=1 cargo test --no-default-features --lib format_page
//! ```

mod chapters;
mod meaning;
mod page;
mod ranges;
mod sample;

use chapters::Chapter;
use std::path::PathBuf;

/// The page in the repository is what the types and the checks say today.
#[test]
fn regress_the_page_is_what_the_types_and_the_checks_say() {
    let path = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("docs/file-formats.md");
    let wanted = page::text(&Chapter::all(), ranges::all());
    // Asked when the test is built, which the variable causes: the core asks nobody for it while it runs.
    if option_env!("FAULTWRIGHT_WRITE_FORMATS").is_some() {
        std::fs::write(&path, &wanted).unwrap();
    }
    let stored = std::fs::read_to_string(&path).unwrap_or_default();
    let differs = wanted.lines().zip(stored.lines()).find(|(ours, page)| ours != page);
    assert!(
        wanted == stored,
        "docs/file-formats.md is stale: {differs:?}\nwrite it anew with \
         FAULTWRIGHT_WRITE_FORMATS=1 cargo test --no-default-features --lib format_page"
    );
}

/// Every number has a range, and what a description says of it is that range.
#[test]
fn limit_every_number_has_a_range_and_its_description_says_no_other() {
    let ranges = ranges::all();
    let mut wrong = Vec::new();
    let mut numbers = 0;
    for chapter in Chapter::all() {
        for section in &chapter.sections {
            for field in section.fields() {
                let (known, said) = (ranges.get(&field.key), meaning::range(&field.description));
                numbers += usize::from(field.is_number);
                if field.is_number && known.is_none() && !ranges::WITHOUT.contains(&&*field.key) {
                    wrong.push(format!("{} has no range", field.key));
                }
                if let (Some(said), Some(known)) = (said, known)
                    && said != (known.least, known.most)
                {
                    wrong.push(format!("{} says {said:?} and has {known:?}", field.key));
                }
                if field.description.trim().is_empty() {
                    wrong.push(format!("{} has no description", field.key));
                }
            }
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
    assert!(numbers > 120, "only {numbers} numbers were found");
}

/// The ends of every range are taken, and the next number beyond each of them is refused.
#[test]
fn limit_every_range_ends_where_the_page_says() {
    let wrong = ranges::not_where_they_should_end();
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}
