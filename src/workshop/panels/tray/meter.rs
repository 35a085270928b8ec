//! The multimeter: its display, its dial, its leads.

use super::ends::ends_ui;
use super::take::{prediction_ui, step, take_ui};
use super::{segments, settle};
use crate::instruments::multimeter::{Display, MeterFunction};
use crate::wording::amounts;
use crate::workshop::panels::Tools;
use crate::workshop::panels::pieces::pick_ui;
use crate::workshop::theme;
use crate::workshop::view::WindowView;
use crate::workshop::view::action::Action;
use crate::workshop::view::settings::Motion;
use crate::workshop::view::tray::{TrayAction, TrayView};
use egui::{
    Align2, Checkbox, Id, Rect, Sense, Stroke, StrokeKind, TextStyle, Ui, WidgetInfo, WidgetType,
    vec2,
};

/// Time in which the display settles [s], and what it shows meanwhile, in shares of the value.
const SETTLES: f64 = 0.6;
const ON_THE_WAY: [f64; 5] = [0.0, 0.62, 1.06, 0.97, 1.01];

/// The meter in hand.
pub fn meter_ui(
    ui: &mut Ui,
    tray: &TrayView,
    is_alone: bool,
    view: &WindowView<'_>,
    tools: Tools<'_>,
    actions: &mut Vec<Action>,
) {
    display_ui(ui, tray, view.settings.motion == Motion::Short, tools);
    if let Some(prediction) = tray.reading.as_ref().and_then(|it| it.prediction.as_ref()) {
        prediction_ui(ui, prediction);
    }
    ui.horizontal_wrapped(|ui| {
        for function in [MeterFunction::Volts, MeterFunction::Ohms, MeterFunction::Amps] {
            let chosen = tray.meter.function == function;
            if pick_ui(ui, chosen, &tools.say(function_key(function))).clicked() {
                actions.push(Action::Tray(TrayAction::Turn(function)));
            }
        }
    });
    ends_ui(ui, tray, is_alone, tools, actions);
    let mut from_front = tray.meter.from_front;
    if ui.add(Checkbox::new(&mut from_front, tools.say("meter-from-front"))).changed() {
        actions.push(Action::Tray(TrayAction::FromFront(from_front)));
    }
    take_ui(ui, &tray.ready, "predict", view, tools, actions);
    ui.add_enabled_ui(view.busy.is_none(), |ui| {
        ui.horizontal_wrapped(|ui| {
            for (key, line) in [("meter-zero", "zero leads"), ("meter-fuse", "replace meter-fuse")]
            {
                if ui.button(tools.say(key)).clicked() {
                    step(line, actions);
                }
            }
        });
    });
}

/// The message that names a function.
const fn function_key(function: MeterFunction) -> &'static str {
    match function {
        MeterFunction::Volts => "meter-volts",
        MeterFunction::Ohms => "meter-ohms",
        MeterFunction::Amps => "meter-amps",
    }
}

/// The display: function above, digits and unit, what the last digit is worth below.
fn display_ui(ui: &mut Ui, tray: &TrayView, moves: bool, tools: Tools<'_>) {
    let function = tray.meter.function;
    let name = tools.say(function_key(function));
    let shown = tray.reading.as_ref().map(|reading| reading.display);
    let label = match shown {
        Some(Some(display)) => tools.words.say(
            "meter-shows",
            &[
                ("function", name.as_str().into()),
                ("display", amounts::display(display, function).into()),
            ],
        ),
        Some(None) => tools.words.say("meter-blew", &[("function", name.as_str().into())]),
        None => tools.words.say("meter-blank", &[("function", name.as_str().into())]),
    };
    let size = vec2(ui.available_width(), theme::DISPLAY_HEIGHT);
    let (rect, response) = ui.allocate_exact_size(size, Sense::hover());
    response.widget_info(|| WidgetInfo::labeled(WidgetType::Label, ui.is_enabled(), &label));
    let number = tray.reading.as_ref().map_or(0, |reading| reading.number);
    let share = settle::share(ui, Id::new("meter settles"), number, SETTLES, moves);

    let palette = theme::palette(ui);
    let painter = ui.painter().with_clip_rect(rect);
    painter.rect_filled(rect, 6.0, palette.field);
    painter.rect_stroke(rect, 6.0, Stroke::new(2.0, palette.faint), StrokeKind::Inside);
    let inner = rect.shrink2(vec2(12.0, 8.0));
    let small = TextStyle::Small.resolve(ui.style());
    let note = |at: Align2, text: &str| {
        painter.text(at.pos_in_rect(&inner), at, text, small.clone(), palette.faint);
    };
    note(Align2::LEFT_TOP, &name);
    let Some(Some(display)) = shown else {
        if shown.is_some() {
            note(Align2::LEFT_BOTTOM, &label);
        } else {
            note(Align2::LEFT_BOTTOM, &tools.say("tray-nothing-read"));
        }
        digits_ui(&painter, inner, "----", "", ui);
        return;
    };
    let number = tools.words.say("tray-step", &[("number", number.into())]);
    note(Align2::RIGHT_TOP, &number);
    let text = amounts::display(on_the_way(display, share), function);
    let (digits, unit) = text.split_once(' ').unwrap_or((&text, ""));
    digits_ui(&painter, inner, digits, unit, ui);
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

/// Digits to the right of the middle, their unit behind them.
fn digits_ui(painter: &egui::Painter, inner: Rect, digits: &str, unit: &str, ui: &Ui) {
    let color = theme::palette(ui).ink;
    let room = inner.shrink2(vec2(0.0, 20.0));
    let height = room.height();
    let font = TextStyle::Name(theme::TITLE.into()).resolve(ui.style());
    let unit_width = 58.0_f32.min(room.width() * 0.25);
    let right = room.right() - unit_width;
    let left = right - segments::width(digits, height);
    segments::draw(painter, egui::pos2(left, room.bottom()), height, digits, color);
    let at = egui::pos2(right + 6.0, room.bottom() + 5.0);
    painter.text(at, Align2::LEFT_BOTTOM, unit, font, color);
}

/// What the display shows on its way to the value: digits that come near it, and nothing of an over limit before the
/// meter has tried its ranges.
fn on_the_way(display: Display, share: f32) -> Display {
    if share >= 1.0 {
        return display;
    }
    let place = ON_THE_WAY
        .iter()
        .enumerate()
        .rev()
        .find(|(number, _)| share >= *number as f32 / ON_THE_WAY.len() as f32);
    let factor = place.map_or(0.0, |(_, factor)| *factor);
    match display {
        Display::Value { value, decimals, prefix } => {
            Display::Value { value: value * factor, decimals, prefix }
        }
        Display::OverLimit => Display::OverLimit,
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
