//! Drawings of a debrief as SVG: how belief moved, and what each step gave away.
//!
//! Lines differ in dash and mark, bars in filling, so that nothing hangs on colour.

use super::markup::escaped;
use crate::assessment::course::Course;
use crate::reasoning::review::StepReview;
use crate::wording::amounts::{number, units};
use crate::wording::catalogue::Words;
use crate::wording::course_plot::named;
use core::fmt::Write as _;

/// Width of a drawing in its own units.
const WIDE: f64 = 900.0;
/// Room to the left of, to the right of and above a field.
const LEFT: f64 = 52.0;
const RIGHT: f64 = 16.0;
const TOP: f64 = 12.0;
/// Height of the field of belief, of a line of its key, and of a bar.
const FIELD: f64 = 240.0;
const KEY_LINE: f64 = 22.0;
const BAR: f64 = 22.0;
/// Room for the numbers under a field.
const NUMBERS: f64 = 34.0;
/// Room for the number of a step beside its bar.
const BESIDE: f64 = 64.0;
/// Most numbers along an axis.
const MOST_NUMBERS: usize = 20;

/// Dash of each line in turn, and the class that gives its colour.
const DASHES: [&str; 5] = ["", "9 4", "2 4", "12 4 2 4", "1 6"];

/// The course of belief.
#[must_use]
pub fn course(course: &Course, words: &Words) -> String {
    let points = course.others.len();
    if points < 2 {
        return String::new();
    }
    let series = named(course, words);
    let x = |point: usize| LEFT + (WIDE - LEFT - RIGHT) * point as f64 / (points - 1) as f64;
    let y = |chance: f64| TOP + FIELD * (1.0 - chance);
    let height = TOP + FIELD + NUMBERS + KEY_LINE * series.len() as f64;
    let mut svg = opened(height, &words.say("course-title", &[]));
    for quarter in 0..=4_u8 {
        let chance = f64::from(quarter) / 4.0;
        let label =
            words.say("course-percent", &[("chance", number(100.0 * chance, 0, words).into())]);
        line(&mut svg, "grid", (LEFT, y(chance)), (WIDE - RIGHT, y(chance)));
        text(&mut svg, "end", (LEFT - 6.0, y(chance) + 4.0), &label);
    }
    let every = points.div_ceil(MOST_NUMBERS).max(1);
    for point in (0..points).filter(|point| point % every == 0) {
        text(&mut svg, "middle", (x(point), TOP + FIELD + 16.0), &point.to_string());
    }
    for (point, _) in course.is_dearer.iter().enumerate().filter(|(_, is_dearer)| **is_dearer) {
        let (x, y) = (x(point + 1), TOP + FIELD + 20.0);
        let _ = write!(svg, "<path class=\"dearer\" d=\"M{x:.1} {y:.1}l5 9h-10z\"/>");
    }
    for (place, (_, chances)) in series.iter().enumerate() {
        let path: Vec<String> = chances
            .iter()
            .enumerate()
            .map(|(point, chance)| format!("{:.1},{:.1}", x(point), y(*chance)))
            .collect();
        stroke(&mut svg, place, &path.join(" "));
        for (point, chance) in chances.iter().enumerate().step_by(every) {
            mark(&mut svg, place, (x(point), y(*chance)));
        }
    }
    for (place, (name, _)) in series.iter().enumerate() {
        let y = TOP + FIELD + NUMBERS + KEY_LINE * (place as f64 + 0.5);
        stroke(&mut svg, place, &format!("{LEFT:.1},{y:.1} {:.1},{y:.1}", LEFT + 46.0));
        mark(&mut svg, place, (LEFT + 23.0, y));
        text(&mut svg, "start", (LEFT + 56.0, y + 4.0), name);
    }
    svg.push_str("</svg>");
    svg
}

/// What each weighed step gave away: a full bar for what is shown, an open one for what is not excluded.
/// Nothing where no step may have given anything away.
#[must_use]
pub fn regrets(steps: &[StepReview], currency: &str, words: &Words) -> String {
    let weighed: Vec<_> = steps
        .iter()
        .filter_map(|step| Some((step.entry, step.regret?)))
        .filter(|(_, regret)| regret.upper >= 0.5)
        .collect();
    let most = weighed.iter().map(|(_, regret)| regret.upper).fold(0.0, f64::max);
    if most <= 0.0 {
        return String::new();
    }
    let x = |money: f64| LEFT + BESIDE + (WIDE - LEFT - BESIDE - 150.0) * money / most;
    let height = TOP + BAR * weighed.len() as f64 + 8.0;
    let mut svg = opened(height, &words.say("report-regrets", &[]));
    for (place, (entry, regret)) in weighed.iter().enumerate() {
        let y = TOP + BAR * place as f64;
        let step = words.say("report-step", &[("number", (entry + 1).into())]);
        text(&mut svg, "end", (LEFT + BESIDE - 8.0, y + 14.0), &step);
        let _ = write!(
            svg,
            "<rect class=\"open{}\" x=\"{:.1}\" y=\"{:.1}\" width=\"{:.1}\" height=\"12\"/>",
            if regret.is_wide { " wide" } else { "" },
            x(0.0),
            y + 4.0,
            x(regret.upper) - x(0.0)
        );
        if regret.lower > 0.0 {
            let _ = write!(
                svg,
                "<rect class=\"full\" x=\"{:.1}\" y=\"{:.1}\" width=\"{:.1}\" height=\"12\"/>",
                x(0.0),
                y + 4.0,
                x(regret.lower) - x(0.0)
            );
        }
        let whole = |money: f64| units(money, 0, currency, words);
        let (least, upper) = (whole(regret.lower), whole(regret.upper));
        let label = if regret.is_wide {
            words.say("report-not-told", &[])
        } else if least == upper {
            upper
        } else {
            words.say("money-span", &[("least", least.into()), ("most", upper.into())])
        };
        text(&mut svg, "start", (x(regret.upper) + 6.0, y + 14.0), &label);
    }
    svg.push_str("</svg>");
    svg
}

/// The beginning of a drawing, with its name for whoever hears it.
fn opened(height: f64, name: &str) -> String {
    let name = escaped(name);
    format!(
        "<svg viewBox=\"0 0 {WIDE:.0} {height:.0}\" role=\"img\" aria-label=\"{name}\"><title>{name}</title>"
    )
}

fn line(svg: &mut String, class: &str, from: (f64, f64), to: (f64, f64)) {
    let _ = write!(
        svg,
        "<line class=\"{class}\" x1=\"{:.1}\" y1=\"{:.1}\" x2=\"{:.1}\" y2=\"{:.1}\"/>",
        from.0, from.1, to.0, to.1
    );
}

fn text(svg: &mut String, anchor: &str, at: (f64, f64), text: &str) {
    let text = escaped(text);
    let _ = write!(
        svg,
        "<text text-anchor=\"{anchor}\" x=\"{:.1}\" y=\"{:.1}\">{text}</text>",
        at.0, at.1
    );
}

fn stroke(svg: &mut String, place: usize, points: &str) {
    let dash = DASHES[place % DASHES.len()];
    let _ = write!(
        svg,
        "<polyline class=\"series s{place}\" stroke-dasharray=\"{dash}\" points=\"{points}\"/>"
    );
}

/// A mark of another shape for each line: disc, square, triangle, diamond, cross.
fn mark(svg: &mut String, place: usize, (x, y): (f64, f64)) {
    let _ = match place % DASHES.len() {
        0 => write!(svg, "<circle class=\"mark s{place}\" cx=\"{x:.1}\" cy=\"{y:.1}\" r=\"4\"/>"),
        1 => write!(
            svg,
            "<rect class=\"mark s{place}\" x=\"{:.1}\" y=\"{:.1}\" width=\"7\" height=\"7\"/>",
            x - 3.5,
            y - 3.5
        ),
        2 => write!(svg, "<path class=\"mark s{place}\" d=\"M{x:.1} {:.1}l4.5 8h-9z\"/>", y - 4.5),
        3 => write!(
            svg,
            "<path class=\"mark s{place}\" d=\"M{x:.1} {:.1}l4.5 4.5l-4.5 4.5l-4.5 -4.5z\"/>",
            y - 4.5
        ),
        _ => write!(
            svg,
            "<path class=\"series s{place}\" d=\"M{:.1} {:.1}l7 7m0 -7l-7 7\"/>",
            x - 3.5,
            y - 3.5
        ),
    };
}
