//! Cost against marks in plain characters.

use crate::numerics::whole::to_usize;

/// Width and height of the field in characters.
const WIDE: usize = 60;
const HIGH: usize = 15;
/// Marks for a session in which everything is right.
const MOST_MARKS: f64 = 100.0;

/// One point: a letter, its cost and its marks.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Point {
    pub letter: char,
    pub cost: f64,
    pub marks: f64,
}

/// The ends of an axis: the points with a tenth to spare, or one to each side of a single value.
fn ends(values: impl Iterator<Item = f64> + Clone) -> (f64, f64) {
    let least = values.clone().fold(f64::INFINITY, f64::min);
    let most = values.fold(f64::NEG_INFINITY, f64::max);
    let spare = if most > least { 0.1 * (most - least) } else { 1.0 };
    (least - spare, most + spare)
}

/// The plot, line by line from the top: marks grow upwards, cost to the right. Where two letters would
/// stand in one place, the later stands beside the earlier.
pub(super) fn plot(points: &[Point]) -> Vec<String> {
    if points.is_empty() {
        return Vec::new();
    }
    let (left, right) = ends(points.iter().map(|point| point.cost));
    let (bottom, top) = ends(points.iter().map(|point| point.marks));
    let (bottom, top) = (bottom.max(0.0), top.min(MOST_MARKS));
    let mut field = vec![vec![' '; WIDE]; HIGH];
    for point in points {
        let across = to_usize((point.cost - left) / (right - left) * (WIDE - 1) as f64 + 0.5);
        let down = to_usize((top - point.marks) / (top - bottom) * (HIGH - 1) as f64 + 0.5);
        let row = &mut field[down.min(HIGH - 1)];
        let free = (across..WIDE).chain((0..across).rev()).find(|place| row[*place] == ' ');
        if let Some(place) = free {
            row[place] = point.letter;
        }
    }
    let label = |value: f64| format!("{value:>8.1}");
    let mut lines = Vec::with_capacity(HIGH + 2);
    for (number, row) in field.iter().enumerate() {
        let beside = match number {
            0 => label(top),
            _ if number == HIGH - 1 => label(bottom),
            _ => " ".repeat(8),
        };
        let text: String = row.iter().collect();
        lines.push(format!("{beside} |{text}").trim_end().to_owned());
    }
    lines.push(format!("{} +{}", " ".repeat(8), "-".repeat(WIDE)));
    let (from, to) = (format!("{left:.0}"), format!("{right:.0}"));
    let between = (WIDE + 1).saturating_sub(from.len() + to.len());
    lines.push(format!("{} {from}{}{to}", " ".repeat(8), " ".repeat(between)));
    lines
}

#[cfg(test)]
mod tests {
    use super::*;

    fn place_of(lines: &[String], letter: char) -> (usize, usize) {
        lines
            .iter()
            .enumerate()
            .find_map(|(down, line)| line.find(letter).map(|across| (across, down)))
            .unwrap()
    }

    #[test]
    fn limit_dearer_is_further_right_and_better_is_higher() {
        let point = |letter, cost, marks| Point { letter, cost, marks };
        let lines =
            plot(&[point('a', 100.0, 90.0), point('b', 300.0, 20.0), point('c', 200.0, 55.0)]);
        let [a, b, c] = ['a', 'b', 'c'].map(|letter| place_of(&lines, letter));
        assert!(a.0 < c.0 && c.0 < b.0 && a.1 < c.1 && c.1 < b.1, "{lines:#?}");
        assert!(lines.iter().all(|line| line.chars().count() <= 80));
    }

    #[test]
    fn limit_points_in_one_place_are_all_there() {
        let same = |letter| Point { letter, cost: 5.0, marks: 5.0 };
        let lines = plot(&[same('a'), same('b'), same('c')]);
        let [a, b, c] = ['a', 'b', 'c'].map(|letter| place_of(&lines, letter));
        assert!(a.1 == b.1 && b.1 == c.1 && a != b && b != c);
        assert!(plot(&[]).is_empty());
    }
}
