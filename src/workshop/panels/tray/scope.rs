//! The scope: a captured course with two cursors.

use super::ends::ends_ui;
use super::take::{outcome_ui, take_ui};
use super::trace::{Axes, axes_ui};
use super::{Hand, settle};
use crate::instruments::scope::{Capture, Signal};
use crate::wording::amounts::number;
use crate::wording::catalogue::Words;
use crate::workshop::panels::pieces::pick_ui;
use crate::workshop::theme;
use crate::workshop::view::action::Action;
use crate::workshop::view::tray::{Shown, TrayAction};
use egui::{
    Align2, EventFilter, Id, Key, Modifiers, Rect, Sense, Stroke, TextStyle, Ui, WidgetInfo,
    WidgetType, vec2,
};

/// Time in which a course is drawn [s].
const DRAWN_IN: f64 = 0.6;
/// Width in which the pointer can take hold of a cursor [points].
const GRIP: f32 = 24.0;
/// Points that an arrow key moves a cursor, and with Shift.
const STEPS: [usize; 2] = [1, 10];

/// The scope in hand.
pub fn scope_ui(ui: &mut Ui, hand: Hand<'_>, actions: &mut Vec<Action>) {
    let Hand { tray, tools, .. } = hand;
    let course = tray.reading.as_ref().and_then(|reading| match &reading.shown {
        Shown::Course(capture) => Some((reading.number, capture)),
        _ => None,
    });
    if let Some((number, capture)) = course {
        capture_ui(ui, number, capture, hand);
    }
    outcome_ui(ui, hand, true);
    ui.horizontal_wrapped(|ui| {
        for (signal, key) in
            [(Signal::CoilCurrent, "scope-current"), (Signal::DriverPin, "scope-pin")]
        {
            if pick_ui(ui, tray.signal == signal, &tools.say(key)).clicked() {
                actions.push(Action::Tray(TrayAction::Watch(signal)));
            }
        }
    });
    ends_ui(ui, hand, actions);
    take_ui(ui, hand, "scope-take", None, actions);
}

/// Where the cursors of a capture are: the numbers of two points.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
struct Cursors {
    capture: usize,
    at: [usize; 2],
}

/// The course, its cursors, and what they read.
fn capture_ui(ui: &mut Ui, capture_number: usize, capture: &Capture, hand: Hand<'_>) {
    let words = hand.tools.words;
    let last = capture.points.len().saturating_sub(1);
    let id = Id::new("scope cursors");
    let kept: Option<Cursors> = ui.data(|data| data.get_temp(id));
    let mut cursors = kept
        .filter(|cursors| cursors.capture == capture_number)
        .unwrap_or(Cursors { capture: capture_number, at: [last / 4, last * 3 / 4] });

    let size = vec2(ui.available_width(), theme::COURSE_HEIGHT);
    let (rect, response) = ui.allocate_exact_size(size, Sense::click());
    let name = hand.tools.say("scope-trace");
    response.widget_info(|| WidgetInfo::labeled(WidgetType::Image, ui.is_enabled(), &name));
    let axes = Axes::of(capture, rect);
    let unit = unit_of(capture.signal);
    axes_ui(ui, &axes, [&words.say("scope-ms", &[]), unit], words);
    let share = settle::share(ui, id.with("drawn"), capture_number, DRAWN_IN, hand.moves());
    let shown = (last as f32 * share).ceil();
    let drawn: Vec<_> = capture
        .points
        .iter()
        .enumerate()
        .take_while(|(number, _)| *number as f32 <= shown)
        .map(|(number, value)| axes.place(time_ms(capture, number), *value))
        .collect();
    let painter = ui.painter().with_clip_rect(axes.inner);
    painter.line(drawn, Stroke::new(2.0, theme::palette(ui).ink));

    if response.clicked()
        && let Some(at) = response.interact_pointer_pos()
    {
        // The nearer cursor comes.
        let to = point_at(capture, &axes, at.x);
        let distance = |cursor: usize| cursors.at.get(cursor).map_or(0, |at| at.abs_diff(to));
        let nearer = usize::from(distance(1) < distance(0));
        if let Some(cursor) = cursors.at.get_mut(nearer) {
            *cursor = to;
        }
    }
    for cursor in 0..2 {
        cursor_ui(ui, cursor, &mut cursors, capture, &axes, hand);
    }
    ui.data_mut(|data| data.insert_temp(id, cursors));
    for line in figures(capture, cursors.at, words) {
        ui.label(line);
    }
}

/// A cursor: a line with its number, moved by drag and by the arrow keys.
fn cursor_ui(
    ui: &Ui,
    which: usize,
    cursors: &mut Cursors,
    capture: &Capture,
    axes: &Axes,
    hand: Hand<'_>,
) {
    let Some(at) = cursors.at.get_mut(which) else { return };
    let last = capture.points.len().saturating_sub(1);
    let x = axes.place(time_ms(capture, *at), 0.0).x;
    let grip = Rect::from_center_size(
        egui::pos2(x, axes.inner.center().y),
        vec2(GRIP, axes.inner.height()),
    );
    let response = ui.interact(grip, Id::new(("scope cursor", which)), Sense::click_and_drag());
    if response.dragged()
        && let Some(pointer) = response.interact_pointer_pos()
    {
        *at = point_at(capture, axes, pointer.x);
    }
    if response.clicked() || response.drag_started() {
        response.request_focus();
    }
    if response.has_focus() {
        let filter = EventFilter { horizontal_arrows: true, ..EventFilter::default() };
        ui.memory_mut(|memory| memory.set_focus_lock_filter(response.id, filter));
        *at = by_key(ui, *at, last);
    }
    let number_shown = which + 1;
    let label = hand.tools.words.say(
        "scope-cursor",
        &[
            ("number", number_shown.into()),
            ("reading", point_in_words(capture, *at, hand.tools.words).into()),
        ],
    );
    let value = time_ms(capture, *at);
    response.widget_info(|| WidgetInfo::slider(ui.is_enabled(), value, &label));

    let palette = theme::palette(ui);
    let x = axes.place(time_ms(capture, *at), 0.0).x;
    let width = if response.has_focus() || response.hovered() { 3.0 } else { 1.5 };
    let stroke = Stroke::new(width, palette.accent);
    ui.painter().vline(x, axes.inner.y_range(), stroke);
    let point = axes.place(value, capture.points.get(*at).copied().unwrap_or(0.0));
    ui.painter().circle(point, 4.0, palette.card, Stroke::new(2.0, palette.accent));
    let font = TextStyle::Small.resolve(ui.style());
    let flag = Rect::from_center_size(egui::pos2(x, axes.inner.top() - 8.0), vec2(16.0, 16.0));
    ui.painter().rect_filled(flag, 2.0, palette.accent);
    let text = number_shown.to_string();
    ui.painter().text(flag.center(), Align2::CENTER_CENTER, text, font, palette.card);
}

/// Where the arrow keys bring a cursor.
fn by_key(ui: &Ui, at: usize, last: usize) -> usize {
    ui.input_mut(|input| {
        let mut at = at;
        // A key without Shift is asked for last, because it is found with Shift as well.
        for (modifiers, step) in [(Modifiers::SHIFT, STEPS[1]), (Modifiers::NONE, STEPS[0])] {
            let back = input.count_and_consume_key(modifiers, Key::ArrowLeft) * step;
            let on = input.count_and_consume_key(modifiers, Key::ArrowRight) * step;
            at = (at + on).min(last).saturating_sub(back);
        }
        if input.consume_key(Modifiers::NONE, Key::Home) {
            at = 0;
        }
        if input.consume_key(Modifiers::NONE, Key::End) {
            at = last;
        }
        at
    })
}

/// The point of a capture that is nearest to a place.
#[expect(
    clippy::cast_sign_loss,
    clippy::cast_possible_truncation,
    reason = "it was just brought into range"
)]
fn point_at(capture: &Capture, axes: &Axes, x: f32) -> usize {
    let last = capture.points.len().saturating_sub(1) as f32;
    let share = (x - axes.inner.left()) / axes.inner.width().max(1.0);
    (share * last).round().clamp(0.0, last) as usize
}

/// When a point was taken [ms].
fn time_ms(capture: &Capture, number: usize) -> f64 {
    number as f64 * capture.interval_s * 1e3
}

const fn unit_of(signal: Signal) -> &'static str {
    match signal {
        Signal::CoilCurrent => "A",
        Signal::DriverPin => "V",
    }
}

const fn decimals_of(signal: Signal) -> usize {
    match signal {
        Signal::CoilCurrent => 3,
        Signal::DriverPin => 1,
    }
}

fn value_in_words(capture: &Capture, value: f64, words: &Words) -> String {
    format!("{} {}", number(value, decimals_of(capture.signal), words), unit_of(capture.signal))
}

fn point_in_words(capture: &Capture, at: usize, words: &Words) -> String {
    let value = capture.points.get(at).copied().unwrap_or(0.0);
    let time = number(time_ms(capture, at), 1, words);
    words.say(
        "scope-point",
        &[("time", time.into()), ("value", value_in_words(capture, value, words).into())],
    )
}

/// What the cursors read, and the way from the first to the second.
fn figures(capture: &Capture, at: [usize; 2], words: &Words) -> Vec<String> {
    let value = |at: usize| capture.points.get(at).copied().unwrap_or(0.0);
    let [first, second] = at;
    let mut lines: Vec<String> = (1..)
        .zip(at)
        .map(|(number, at): (usize, usize)| {
            let reading = point_in_words(capture, at, words);
            words.say("scope-cursor", &[("number", number.into()), ("reading", reading.into())])
        })
        .collect();
    let time = number(time_ms(capture, second) - time_ms(capture, first), 1, words);
    let change = value_in_words(capture, value(second) - value(first), words);
    lines.push(words.say("scope-between", &[("time", time.into()), ("value", change.into())]));
    lines
}
