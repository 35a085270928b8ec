//! What a kind of file holds, field by field.

use super::Ending;
use super::screen::Screen;

/// The page of the formats; a test holds that it says what the program reads.
const PAGE: &str = include_str!("../../docs/file-formats.md");

/// The kinds of file that can be asked about, as the page's headings name them.
pub const KINDS: [&str; 3] = ["scenario", "vehicle", "route"];

/// Prints the page, or what it says of one kind of file.
pub fn run(given: &clap::ArgMatches, screen: &mut Screen<'_>) -> Ending {
    let kind = given.get_one::<String>("kind").map(String::as_str);
    for line in part_of(kind).trim_end().lines() {
        screen.data(line);
    }
    Ending::Done
}

/// The part of the page that has this heading, up to the next one of its size.
fn part_of(kind: Option<&str>) -> &'static str {
    let Some(kind) = kind else { return PAGE };
    let heading =
        |part: &&str| part.lines().next().is_some_and(|line| line.eq_ignore_ascii_case(kind));
    let mut starts = PAGE.match_indices("\n## ").map(|(at, _)| at + 4);
    let start = starts.find(|at| PAGE.get(*at..).as_ref().is_some_and(heading));
    let part = start.and_then(|at| PAGE.get(at - 3..)).unwrap_or(PAGE);
    part.get(4..)
        .and_then(|rest| rest.find("\n## "))
        .and_then(|end| part.get(..end + 4))
        .unwrap_or(part)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn limit_every_kind_has_its_part_and_no_other() {
        for kind in KINDS {
            let part = part_of(Some(kind));
            assert_eq!(part.matches("\n## ").count(), 0, "{kind}");
            assert_eq!(part.lines().next().map(str::to_lowercase), Some(format!("## {kind}")));
            assert!(part.contains("| `version` |"), "{kind}");
        }
        assert!(part_of(None).starts_with("# File formats"));
    }
}
