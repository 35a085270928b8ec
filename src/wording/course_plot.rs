//! How belief moved, drawn with characters: a row a suspect, a column a step, the height of a block its chance.
//!
//! Nothing hangs on colour. Where a terminal is narrow, names stand above their rows and several steps share a
//! column, which shows the last of them.

use super::belief_words::percent;
use super::catalogue::Words;
use super::place::diagnoses;
use crate::assessment::course::Course;
use crate::numerics::whole::to_usize;

/// Blocks from nothing to everything.
const BLOCKS: [char; 9] = ['·', '▁', '▂', '▃', '▄', '▅', '▆', '▇', '█'];
/// Below this width names stand above their rows.
const WIDE: usize = 72;
/// Letters of the longest name beside a row, and columns for the chance behind it.
const LONGEST_NAME: usize = 34;
const BEHIND: usize = 7;
/// Fewest columns of a plot, however narrow the terminal.
const FEWEST: usize = 8;
/// Steps between two numbers under the plot.
const BETWEEN_NUMBERS: usize = 10;

/// The plot for a terminal of so many columns.
#[must_use]
pub fn plot(course: &Course, width: usize, words: &Words) -> Vec<String> {
    let points = course.others.len();
    if points < 2 {
        return Vec::new();
    }
    let rows = named(course, words);
    let beside = width >= WIDE;
    let longest = rows.iter().map(|(name, _)| name.chars().count()).max().unwrap_or(0);
    let margin = if beside { longest.min(LONGEST_NAME) + 2 } else { 2 };
    let room = width.saturating_sub(margin + BEHIND).max(FEWEST);
    let columns = Columns { points, count: points.min(room) };
    let mut lines = vec![words.say("course-title", &[])];
    for (name, chances) in rows {
        let blocks: String = columns.last_of_each().map(|point| block(chances[point])).collect();
        let last = percent(chances.last().copied().unwrap_or(0.0), words);
        let behind = words.say("course-percent", &[("chance", last.into())]);
        // A name that is too long for the margin stands above its row as well.
        if beside && name.chars().count() + 2 <= margin {
            let gap = " ".repeat(margin - name.chars().count());
            lines.push(format!("{name}{gap}{blocks} {behind}"));
        } else {
            lines.push(name);
            lines.push(format!("{}{blocks} {behind}", " ".repeat(margin)));
        }
    }
    let dearer: String = columns
        .all_of_each()
        .map(|points| {
            let is_dearer = points.filter(|point| *point > 0).any(|it| course.is_dearer[it - 1]);
            if is_dearer { '!' } else { ' ' }
        })
        .collect();
    lines.push(format!("{}{}", " ".repeat(margin), columns.numbers()));
    if dearer.contains('!') {
        lines.push(format!("{}{}", " ".repeat(margin), dearer.trim_end()));
        lines.push(words.say("course-dearer", &[]));
    }
    lines
}

/// The suspects by name with their chances at each point, and everything else together at the end.
#[must_use]
pub fn named<'a>(course: &'a Course, words: &Words) -> Vec<(String, &'a [f64])> {
    let mut rows: Vec<(String, &[f64])> = course
        .suspects
        .iter()
        .map(|it| {
            let name = diagnoses(&it.hypothesis, words);
            let key = if it.is_truth { "course-truth" } else { "course-other" };
            (words.say(key, &[("fault", name.into())]), &it.chances[..])
        })
        .collect();
    rows.push((words.say("course-others", &[]), &course.others));
    rows
}

/// Points of a course on columns of a terminal.
struct Columns {
    points: usize,
    count: usize,
}

impl Columns {
    /// The first point of a column, or one beyond the last column.
    const fn first_of(&self, column: usize) -> usize {
        column * self.points / self.count
    }

    fn all_of_each(&self) -> impl Iterator<Item = core::ops::Range<usize>> + '_ {
        (0..self.count).map(|column| self.first_of(column)..self.first_of(column + 1))
    }

    fn last_of_each(&self) -> impl Iterator<Item = usize> + '_ {
        self.all_of_each().map(|points| points.end - 1)
    }

    /// Numbers of steps under their columns; the first column is before the first step.
    fn numbers(&self) -> String {
        let mut line = vec![' '; self.count];
        for step in (BETWEEN_NUMBERS..self.points).step_by(BETWEEN_NUMBERS).chain([1]) {
            let Some(column) = self.all_of_each().position(|points| points.contains(&step)) else {
                continue;
            };
            let digits: Vec<char> = step.to_string().chars().collect();
            let place = column..column + digits.len();
            if line.get(place.clone()).is_some_and(|room| room.iter().all(|it| *it == ' ')) {
                line[place].copy_from_slice(&digits);
            }
        }
        line.into_iter().collect::<String>().trim_end().to_owned()
    }
}

/// The block for a chance; what is possible at all shows.
fn block(chance: f64) -> char {
    let most = BLOCKS.len() - 1;
    let height = to_usize((chance * most as f64).round()).min(most);
    if height == 0 && chance >= 0.005 { BLOCKS[1] } else { BLOCKS[height] }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::assessment::course::Followed;
    use proptest::prelude::*;

    fn course(points: usize) -> Course {
        let chances: Vec<f64> =
            (0..points).map(|point| point as f64 / (points - 1) as f64).collect();
        let others = chances.iter().map(|chance| 1.0 - chance).collect();
        let followed = Followed { hypothesis: Vec::new(), is_truth: true, chances };
        let mut is_dearer = vec![false; points - 1];
        is_dearer[points / 2] = true;
        Course { suspects: vec![followed], others, is_dearer }
    }

    #[test]
    fn closed_form_height_is_the_chance_in_eighths() {
        let eighths: String = (0..=8).map(|it| block(f64::from(it) / 8.0)).collect();
        assert_eq!(eighths, "·▁▂▃▄▅▆▇█");
        assert_eq!((block(0.001), block(0.01)), ('·', '▁'));
    }

    proptest! {
        #[test]
        fn prop_no_line_of_blocks_is_wider_than_the_terminal(points in 3..120_usize, width in 24..200_usize) {
            let words = Words::for_language("en-GB");
            let lines = plot(&course(points), width, &words);
            let marks = |it: &&String| !it.is_empty() && it.chars().all(|c| c == ' ' || c == '!');
            let drawn: Vec<&String> =
                lines.iter().filter(|it| it.contains('█') || marks(it)).collect();
            prop_assert!(drawn.len() >= 2);
            for line in drawn {
                prop_assert!(line.chars().count() <= width, "{line}");
            }
        }

        #[test]
        fn prop_every_step_has_a_column_and_only_one(points in 2..200_usize, count in 1..100_usize) {
            let columns = Columns { points, count: count.min(points) };
            let shown: Vec<usize> = columns.all_of_each().flatten().collect();
            prop_assert_eq!(shown, (0..points).collect::<Vec<_>>());
            prop_assert!(columns.last_of_each().last() == Some(points - 1));
        }
    }
}
