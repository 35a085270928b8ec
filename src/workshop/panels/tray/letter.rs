//! The letter that marks an end: in the tray, in the picture, and under the pointer on its way from one to the other.

use crate::workshop::theme;
use crate::workshop::view::tray::End;
use egui::{Align2, Painter, Pos2, Rect, Stroke, StrokeKind, TextStyle, Ui, Vec2};

/// Side of the square of a letter [points].
pub const SIDE: f32 = 24.0;

/// A letter in a square; its corners tell an end from a button, its letter tells it from the other ends.
pub fn letter(ui: &Ui, painter: &Painter, middle: Pos2, end: End, text: &str) {
    let [fill, ink] = theme::end_colors(end);
    let square = Rect::from_center_size(middle, Vec2::splat(SIDE));
    painter.rect_filled(square, 5.0, fill);
    painter.rect_stroke(square, 5.0, Stroke::new(2.0, ink), StrokeKind::Inside);
    let font = TextStyle::Button.resolve(ui.style());
    painter.text(middle, Align2::CENTER_CENTER, text, font, ink);
}
