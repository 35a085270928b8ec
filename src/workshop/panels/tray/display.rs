//! A display with digits: what it shows of, the digits and their unit, what the last digit is worth.

use super::{segments, settle};
use crate::instruments::multimeter::{Display, MeterFunction};
use crate::wording::amounts;
use crate::workshop::panels::Tools;
use crate::workshop::theme;
use crate::workshop::view::tray::{ReadingView, Shown};
use egui::{
    Align2, Id, Painter, Pos2, Rect, Sense, Stroke, StrokeKind, TextStyle, Ui, WidgetInfo,
    WidgetType, pos2, vec2,
};

/// Time in which the display settles [s], and what it shows meanwhile, in shares of the value.
const SETTLES: f64 = 0.6;
const ON_THE_WAY: [f64; 5] = [0.0, 0.62, 1.06, 0.97, 1.01];
/// Heights above and below the digits [points], and the width behind them for the unit.
const ABOVE: f32 = 20.0;
const BELOW: f32 = 20.0;
const UNIT_WIDTH: f32 = 58.0;

/// The display of an instrument that is set to a function with a name.
pub fn display_ui(
    ui: &mut Ui,
    name: &str,
    function: MeterFunction,
    reading: Option<&ReadingView>,
    moves: bool,
    tools: Tools<'_>,
) {
    let shown = reading.map(|reading| match &reading.shown {
        Shown::Display(display) => Some(*display),
        _ => None,
    });
    let said = reading.map(|reading| reading.words.join(" ")).unwrap_or_default();
    let label = match shown {
        Some(Some(display)) => tools.words.say(
            "meter-shows",
            &[("function", name.into()), ("display", amounts::display(display, function).into())],
        ),
        Some(None) => said.clone(),
        None => tools.words.say("meter-blank", &[("function", name.into())]),
    };
    let size = vec2(ui.available_width(), theme::DISPLAY_HEIGHT);
    let (rect, response) = ui.allocate_exact_size(size, Sense::hover());
    response.widget_info(|| WidgetInfo::labeled(WidgetType::Label, ui.is_enabled(), &label));
    let number = reading.map_or(0, |reading| reading.number);
    let share = settle::share(ui, Id::new(("display settles", name)), number, SETTLES, moves);

    let palette = theme::palette(ui);
    let painter = ui.painter().with_clip_rect(rect);
    painter.rect_filled(rect, 6.0, palette.field);
    painter.rect_stroke(rect, 6.0, Stroke::new(2.0, palette.faint), StrokeKind::Inside);
    let inner = rect.shrink2(vec2(12.0, 8.0));
    let note = |at: Align2, text: &str| note(ui, &painter, inner, at, text);
    note(Align2::LEFT_TOP, name);
    if reading.is_some() {
        let step = tools.words.say("tray-step", &[("number", number.into())]);
        note(Align2::RIGHT_TOP, &step);
    }
    let Some(Some(display)) = shown else {
        let nothing = tools.say("tray-nothing-read");
        note(Align2::LEFT_BOTTOM, if shown.is_some() { &said } else { &nothing });
        digits_ui(ui, &painter, inner, "----", "");
        return;
    };
    let text = amounts::display(on_the_way(display, share), function);
    let (digits, unit) = text.split_once(' ').unwrap_or((&text, ""));
    digits_ui(ui, &painter, inner, digits, unit);
    let below = match display {
        _ if share < 1.0 => tools.say("meter-settling"),
        Display::OverLimit => tools.say("meter-over-limit"),
        Display::Value { decimals, prefix, .. } => {
            let value = prefix.factor() * power_of_tenth(decimals);
            let last = Display::Value { value, decimals, prefix };
            let step = amounts::display(last, function);
            tools.words.say("meter-digit", &[("step", step.into())])
        }
    };
    note(Align2::LEFT_BOTTOM, &below);
}

/// A small text in a corner, as wide as there is room.
fn note(ui: &Ui, painter: &Painter, inner: Rect, at: Align2, text: &str) {
    let font = TextStyle::Small.resolve(ui.style());
    let color = theme::palette(ui).faint;
    let text = painter.layout(text.to_owned(), font, color, inner.width());
    let place = at.align_size_within_rect(text.size(), inner).min;
    painter.galley(place, text, color);
}

/// Digits to the right of the middle, their unit behind them.
fn digits_ui(ui: &Ui, painter: &Painter, inner: Rect, digits: &str, unit: &str) {
    let color = theme::palette(ui).ink;
    let room = Rect::from_min_max(
        pos2(inner.left(), inner.top() + ABOVE),
        pos2(inner.right(), inner.bottom() - BELOW),
    );
    let right = room.right() - UNIT_WIDTH.min(room.width() * 0.25);
    let left = right - segments::width(digits, room.height());
    segments::draw(painter, pos2(left, room.bottom()), room.height(), digits, color);
    let font = TextStyle::Name(theme::TITLE.into()).resolve(ui.style());
    let at = Pos2::new(right + 8.0, room.bottom() + 7.0);
    painter.text(at, Align2::LEFT_BOTTOM, unit, font, color);
}

/// What the display shows on its way to the value.
fn on_the_way(display: Display, share: f32) -> Display {
    let passed = |number: &usize| share >= *number as f32 / ON_THE_WAY.len() as f32;
    let place = (0..ON_THE_WAY.len()).rev().find(passed);
    match (display, place) {
        (Display::Value { value, decimals, prefix }, Some(place)) if share < 1.0 => {
            let factor = ON_THE_WAY.get(place).copied().unwrap_or(1.0);
            Display::Value { value: value * factor, decimals, prefix }
        }
        _ => display,
    }
}

fn power_of_tenth(decimals: u8) -> f64 {
    (0..decimals).fold(1.0, |value, _| value / 10.0)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::instruments::multimeter::Prefix;

    #[test]
    fn limit_a_display_ends_at_its_value() {
        let value = Display::Value { value: 12.56, decimals: 2, prefix: Prefix::One };
        assert_eq!(on_the_way(value, 1.0), value);
        let begun = on_the_way(value, 0.0);
        assert_eq!(begun, Display::Value { value: 0.0, decimals: 2, prefix: Prefix::One });
        assert_eq!(on_the_way(Display::OverLimit, 0.3), Display::OverLimit);
    }
}
