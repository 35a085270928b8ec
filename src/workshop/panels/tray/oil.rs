//! Pressure gauge and dipstick, drawn.

use super::Hand;
use super::take::{also_ui, outcome_ui, take_ui};
use crate::instruments::pressure_gauge::{DIVISION_BAR, SPAN_BAR};
use crate::numerics::whole::to_usize;
use crate::workshop::panels::pieces::pick_ui;
use crate::workshop::theme;
use crate::workshop::view::action::Action;
use crate::workshop::view::on_screen;
use crate::workshop::view::tray::{GaugeSetting, Shown, TrayAction};
use egui::{
    Align2, Painter, Pos2, Rect, Sense, Stroke, StrokeKind, TextStyle, Ui, Vec2, pos2, vec2,
};

/// Engine speeds that are offered [rpm]; nothing is idle, or an engine that stands.
const SPEEDS: [Option<u16>; 6] =
    [None, Some(1_000), Some(1_500), Some(2_000), Some(3_000), Some(4_000)];
/// Direction of the needle at nothing and how far it turns to full scale [degrees, from the right, downwards].
const ZERO: f32 = 140.0;
const SWEEP: f32 = 260.0;

/// The gauge in hand.
pub fn gauge_ui(ui: &mut Ui, hand: Hand<'_>, actions: &mut Vec<Action>) {
    let Hand { tray, tools, .. } = hand;
    let needle = tray.reading.as_ref().and_then(|reading| match reading.shown {
        Shown::Needle { bar, swing } => Some((bar, swing)),
        _ => None,
    });
    let size = vec2(ui.available_width(), theme::DIAL_HEIGHT);
    let (rect, _) = ui.allocate_exact_size(size, Sense::hover());
    dial(ui, rect, needle);
    outcome_ui(ui, hand, true);
    let set = |gauge| Action::Tray(TrayAction::SetGauge(gauge));
    ui.horizontal_wrapped(|ui| {
        for rpm in SPEEDS {
            let text = match rpm {
                Some(rpm) => tools.words.say("amount-rpm", &[("value", rpm.to_string().into())]),
                None => tools.say("gauge-as-it-is"),
            };
            if pick_ui(ui, tray.gauge.rpm == rpm, &text).clicked() {
                actions.push(set(GaugeSetting { rpm, ..tray.gauge }));
            }
        }
    });
    let warm = tray.gauge.warm;
    if pick_ui(ui, warm, &tools.say("gauge-warm")).clicked() {
        actions.push(set(GaugeSetting { warm: !warm, ..tray.gauge }));
    }
    take_ui(ui, hand, "gauge-take", Some("predict"), actions);
    also_ui(ui, hand, &[("gauge-fit", "gauge fit"), ("gauge-out", "gauge remove")], actions);
}

/// A dial with its needle and, where that swings, the sector that it swings over.
fn dial(ui: &Ui, rect: Rect, needle: Option<(f64, f64)>) {
    let palette = theme::palette(ui);
    let painter = ui.painter();
    let middle = rect.center() + vec2(0.0, rect.height() * 0.06);
    // Its rim stays above what follows.
    let radius = (rect.height() * 0.44 - 2.0).min(rect.width() * 0.5);
    let at = |bar: f64, out: f32| -> Pos2 {
        let share = on_screen(bar / SPAN_BAR);
        middle + Vec2::angled((ZERO + SWEEP * share).to_radians()) * radius * out
    };
    painter.circle(middle, radius, palette.field, Stroke::new(3.0, palette.faint));
    let divisions = to_usize((SPAN_BAR / DIVISION_BAR).round());
    for division in 0..=divisions {
        let bar = division as f64 * DIVISION_BAR;
        let is_whole = division % 5 == 0;
        let [inner, width] = if is_whole { [0.80, 2.0] } else { [0.87, 1.0] };
        painter.line_segment([at(bar, 0.94), at(bar, inner)], Stroke::new(width, palette.ink));
        if division % 10 == 0 {
            let font = TextStyle::Small.resolve(ui.style());
            painter.text(
                at(bar, 0.66),
                Align2::CENTER_CENTER,
                format!("{bar:.0}"),
                font,
                palette.ink,
            );
        }
    }
    let font = TextStyle::Small.resolve(ui.style());
    let below = middle + vec2(0.0, radius * 0.72);
    painter.text(below, Align2::CENTER_CENTER, "bar", font, palette.ink);
    let Some((bar, swing)) = needle else { return };
    if swing > 0.0 {
        let edges = [bar - swing / 2.0, bar + swing / 2.0].map(|bar| bar.clamp(0.0, SPAN_BAR));
        let sector = vec![middle, at(edges[0], 0.78), at(bar, 0.80), at(edges[1], 0.78)];
        let fill = palette.chosen;
        let edge = Stroke::new(1.0, palette.accent);
        painter.add(egui::Shape::convex_polygon(sector, fill, edge));
    }
    let tail = middle - (at(bar, 0.16) - middle);
    painter.line_segment([tail, at(bar, 0.84)], Stroke::new(3.0, palette.ink));
    painter.circle_filled(middle, 5.0, palette.ink);
}

/// The dipstick in hand.
pub fn dipstick_ui(ui: &mut Ui, hand: Hand<'_>, actions: &mut Vec<Action>) {
    let level = hand.tray.reading.as_ref().and_then(|reading| match reading.shown {
        Shown::Stick(level) => level,
        _ => None,
    });
    let size = vec2(ui.available_width(), theme::STICK_HEIGHT);
    let (rect, _) = ui.allocate_exact_size(size, Sense::hover());
    stick(ui, rect, level, &["stick-lower", "stick-upper"].map(|key| hand.tools.say(key)));
    outcome_ui(ui, hand, true);
    take_ui(ui, hand, "stick-take", None, actions);
}

/// The end of the stick with its two marks, wet up to the level; dry where there is none, which the words below tell from one that was not pulled.
fn stick(ui: &Ui, rect: Rect, level: Option<f64>, names: &[String; 2]) {
    let palette = theme::palette(ui);
    let painter = ui.painter();
    let rod = Rect::from_center_size(rect.center(), vec2(rect.width() - 8.0, 18.0));
    let marks = [rod.left() + rod.width() * 0.30, rod.left() + rod.width() * 0.70];
    painter.rect_filled(rod, 4.0, palette.field);
    if let Some(level) = level {
        let wet = marks[0] + (marks[1] - marks[0]) * on_screen(level);
        let wet = wet.clamp(rod.left() + 4.0, rod.right());
        let oil = Rect::from_min_max(rod.min, pos2(wet, rod.bottom()));
        painter.rect_filled(oil, 4.0, palette.accent);
        hatch(painter, oil, Stroke::new(1.0, palette.card));
    }
    painter.rect_stroke(rod, 4.0, Stroke::new(2.0, palette.ink), StrokeKind::Outside);
    let font = TextStyle::Small.resolve(ui.style());
    for (x, name) in marks.into_iter().zip(names) {
        painter.vline(x, rod.top() - 8.0..=rod.bottom() + 8.0, Stroke::new(3.0, palette.ink));
        let at = pos2(x, rod.bottom() + 10.0);
        painter.text(at, Align2::CENTER_TOP, name, font.clone(), palette.ink);
    }
}

/// Slanted lines, so that oil differs from metal by more than its colour.
fn hatch(painter: &Painter, rect: Rect, stroke: Stroke) {
    let painter = painter.with_clip_rect(rect.intersect(painter.clip_rect()));
    let mut x = rect.left() - rect.height();
    while x < rect.right() {
        painter.line_segment([pos2(x, rect.bottom()), pos2(x + rect.height(), rect.top())], stroke);
        x += 9.0;
    }
}
