//! Axes with their figures for a course over time.

use crate::instruments::scope::Capture;
use crate::wording::amounts::short_number;
use crate::wording::catalogue::Words;
use crate::workshop::theme;
use crate::workshop::view::on_screen;
use egui::{Align2, Pos2, Rect, Stroke, StrokeKind, TextStyle, Ui, pos2};

/// Room for figures on the left, above, on the right and below [points].
const LEFT: f32 = 46.0;
const ABOVE: f32 = 18.0;
const RIGHT: f32 = 10.0;
const BELOW: f32 = 36.0;
/// Most lines of a grid in one direction.
const MOST_LINES: f64 = 6.0;
/// Lines that are never passed: one more for either end.
const LINES_AT_MOST: u32 = 8;

/// Where a time [ms] and a value are in a place.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Axes {
    /// Where the course is drawn.
    pub inner: Rect,
    until_ms: f64,
    least: f64,
    most: f64,
}

impl Axes {
    /// The axes of a capture: from nothing, or from the least value where that is below, to a little above the greatest.
    #[must_use]
    pub fn of(capture: &Capture, rect: Rect) -> Self {
        let inner = Rect::from_min_max(
            rect.min + egui::vec2(LEFT, ABOVE),
            rect.max - egui::vec2(RIGHT, BELOW),
        );
        let least = capture.points.iter().copied().fold(0.0, f64::min);
        let most = capture.points.iter().copied().fold(0.0, f64::max);
        let most = if most > least { most + (most - least) * 0.08 } else { least + 1.0 };
        let last = capture.points.len().saturating_sub(1).max(1);
        Self { inner, until_ms: last as f64 * capture.interval_s * 1e3, least, most }
    }

    /// Where something is.
    #[must_use]
    pub fn place(&self, time_ms: f64, value: f64) -> Pos2 {
        let x = on_screen(time_ms / self.until_ms.max(f64::MIN_POSITIVE));
        let y = on_screen((value - self.least) / (self.most - self.least));
        pos2(
            self.inner.left() + x * self.inner.width(),
            self.inner.bottom() - y * self.inner.height(),
        )
    }
}

/// Draws frame, grid, figures and units.
pub fn axes_ui(ui: &Ui, axes: &Axes, [time, unit]: [&str; 2], words: &Words) {
    let palette = theme::palette(ui);
    let painter = ui.painter();
    let font = TextStyle::Small.resolve(ui.style());
    let inner = axes.inner;
    painter.rect_filled(inner, 0.0, palette.field);
    let grid = Stroke::new(1.0, palette.rule);
    let figure = |at: Pos2, align: Align2, text: String| {
        painter.text(at, align, text, font.clone(), palette.ink);
    };
    for value in lines(axes.least, axes.most) {
        let y = axes.place(0.0, value).y;
        painter.hline(inner.x_range(), y, grid);
        figure(pos2(inner.left() - 5.0, y), Align2::RIGHT_CENTER, short_number(value, 3, words));
    }
    for at in lines(0.0, axes.until_ms) {
        let x = axes.place(at, 0.0).x;
        painter.vline(x, inner.y_range(), grid);
        figure(pos2(x, inner.bottom() + 3.0), Align2::CENTER_TOP, short_number(at, 3, words));
    }
    painter.rect_stroke(inner, 0.0, Stroke::new(1.0, palette.faint), StrokeKind::Inside);
    figure(pos2(inner.left() - 5.0, inner.top() - 3.0), Align2::RIGHT_BOTTOM, unit.to_owned());
    figure(pos2(inner.right(), inner.bottom() + 18.0), Align2::RIGHT_TOP, time.to_owned());
}

/// Round values from one to another, a few.
#[must_use]
pub fn lines(from: f64, to: f64) -> Vec<f64> {
    let span = to - from;
    if span.partial_cmp(&0.0) != Some(core::cmp::Ordering::Greater) || !span.is_finite() {
        return Vec::new();
    }
    let mut step = 1.0;
    while span / step > MOST_LINES {
        step *= 10.0;
    }
    while span / step <= MOST_LINES / 10.0 {
        step /= 10.0;
    }
    for share in [0.2, 0.5] {
        if span / (step * share) <= MOST_LINES {
            step *= share;
            break;
        }
    }
    let first = (from / step).ceil();
    let count = (to / step - first + 1e-9).floor();
    (0..=LINES_AT_MOST)
        .map(f64::from)
        .take_while(|number: &f64| *number <= count)
        .map(|number: f64| (first + number) * step)
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::instruments::scope::{Cursors, Signal};
    use egui::vec2;

    #[test]
    fn closed_form_lines_are_round_and_few() {
        assert_eq!(lines(0.0, 100.0), [0.0, 20.0, 40.0, 60.0, 80.0, 100.0]);
        assert_eq!(lines(-0.5, 1.0).len(), 4);
        assert_eq!(lines(0.0, 13.9), [0.0, 5.0, 10.0]);
        for nothing in [[0.0, 0.0], [1.0, 0.0], [0.0, f64::NAN], [0.0, f64::INFINITY]] {
            assert_eq!(lines(nothing[0], nothing[1]), [0.0; 0]);
        }
    }

    #[test]
    fn closed_form_the_corners_of_a_course_are_those_of_its_place() {
        let capture = Capture {
            signal: Signal::DriverPin,
            interval_s: 0.001,
            points: vec![-2.0, 3.0, 10.0],
            cursors: Cursors::Current { dip: None, end_a: 0.0 },
        };
        let axes = Axes::of(&capture, Rect::from_min_size(Pos2::ZERO, vec2(300.0, 200.0)));
        assert_eq!(axes.place(0.0, -2.0), axes.inner.left_bottom());
        assert!((axes.place(2.0, 0.0).x - axes.inner.right()).abs() < 1e-3);
        assert!(axes.place(2.0, 10.0).y > axes.inner.top());
    }
}
