//! What a step let be heard, for the eye.

use super::Tools;
use crate::numerics::elementary::sqrt;
use crate::workshop::theme;
use crate::workshop::view::action::Action;
use crate::workshop::view::case::HeardView;
use egui::{Label, Rangef, Rect, Sense, Stroke, Ui, WidgetInfo, WidgetType, vec2};

/// Caption and trace of a sound, and a way to hear it again where there is anything to hear.
pub fn heard_ui(
    ui: &mut Ui,
    number: usize,
    heard: &HeardView,
    tools: Tools<'_>,
    actions: &mut Vec<Action>,
) {
    let caption = tools.words.say("sound-heard", &[("sounds", heard.caption.as_str().into())]);
    ui.add(Label::new(&caption).wrap());
    trace_ui(ui, heard, &caption);
    let again = tools.words.say("sound-again", &[("number", number.into())]);
    if !heard.outline.columns.is_empty() && ui.button(again).clicked() {
        actions.push(Action::HearAgain(number));
    }
}

/// The trace; silence is a line that is nothing but flat.
fn trace_ui(ui: &mut Ui, heard: &HeardView, caption: &str) {
    let palette = theme::palette(ui);
    let size = vec2(theme::TRACE_WIDTH.min(ui.available_width()), theme::TRACE_HEIGHT);
    let (rect, response) = ui.allocate_exact_size(size, Sense::hover());
    response.widget_info(|| WidgetInfo::labeled(WidgetType::Image, ui.is_enabled(), caption));
    let painter = ui.painter().with_clip_rect(rect.intersect(ui.clip_rect()));
    painter.rect_filled(rect, 0.0, palette.field);
    let silence = [(0.0, 0.0)];
    let columns = match heard.outline.columns.as_slice() {
        [] => silence.as_slice(),
        columns => columns,
    };
    let width = rect.width() / columns.len() as f32;
    // A line that is nothing but flat would not be seen.
    let thin = 0.5;
    for (number, (least, most)) in columns.iter().enumerate() {
        let x = rect.left() + (number as f32 + 0.5) * width;
        let range = Rangef::new(height(*most, rect) - thin, height(*least, rect) + thin);
        painter.vline(x, range, Stroke::new(width.max(1.0), palette.accent));
    }
    let edge = Stroke::new(1.0, palette.faint);
    painter.rect_stroke(rect, 0.0, edge, egui::StrokeKind::Inside);
}

/// Where a sample is drawn. Its height goes with its root, so that a dull click is still seen beside an engine.
#[expect(clippy::cast_possible_truncation, reason = "a place on the screen needs no more digits")]
fn height(sample: f32, rect: Rect) -> f32 {
    let root = sqrt(f64::from(sample.abs())) as f32;
    rect.center().y - root.copysign(sample) * rect.height() / 2.0
}
