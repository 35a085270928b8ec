//! Test lamp and power lead: a light, a sound.

use super::Hand;
use super::ends::ends_ui;
use super::take::{outcome_ui, take_ui};
use crate::instruments::test_lamp::Glow;
use crate::workshop::panels::pieces::pick_ui;
use crate::workshop::theme;
use crate::workshop::view::action::Action;
use crate::workshop::view::tray::{PowerSetting, Shown, TrayAction};
use egui::{Pos2, Sense, Stroke, Ui, vec2};

/// Radius of the lamp's glass and how far its rays go [points].
const GLASS: f32 = 17.0;
const RAYS: [f32; 2] = [23.0, 33.0];
/// For how long the power lead can be held on [s].
const SECONDS: [u16; 4] = [1, 2, 5, 10];

/// The test lamp in hand.
pub fn lamp_ui(ui: &mut Ui, hand: Hand<'_>, actions: &mut Vec<Action>) {
    let glow = hand.tray.reading.as_ref().and_then(|reading| match reading.shown {
        Shown::Glow(glow) => Some(glow),
        _ => None,
    });
    let size = vec2(ui.available_width(), theme::LAMP_HEIGHT);
    let (rect, _) = ui.allocate_exact_size(size, Sense::hover());
    bulb(ui, rect.center(), glow);
    outcome_ui(ui, hand, true);
    ends_ui(ui, hand, actions);
    take_ui(ui, hand, "lamp-take", Some("predict glow"), actions);
}

/// A bulb: filled with long rays, half filled with short ones, or empty; what it says stands under it in words.
fn bulb(ui: &Ui, middle: Pos2, glow: Option<Glow>) {
    let palette = theme::palette(ui);
    let painter = ui.painter();
    let line = Stroke::new(2.0, palette.ink);
    let [fill, reach] = match glow {
        Some(Glow::Bright) => [GLASS - 3.0, RAYS[1]],
        Some(Glow::Dim) => [GLASS * 0.45, RAYS[0] + 3.0],
        Some(Glow::Dark) | None => [0.0, 0.0],
    };
    painter.circle(middle, GLASS, palette.field, line);
    if fill > 0.0 {
        painter.circle_filled(middle, fill, palette.accent);
        for ray in 0..12_u8 {
            let angle = f32::from(ray) * core::f32::consts::TAU / 12.0;
            let out = egui::Vec2::angled(angle);
            painter.line_segment([middle + out * RAYS[0], middle + out * reach], line);
        }
    } else {
        // The wire of the bulb, cold.
        let points = [(-8.0, 6.0), (-4.0, -4.0), (0.0, 4.0), (4.0, -4.0), (8.0, 6.0)];
        painter
            .line(points.map(|(x, y)| middle + vec2(x, y)).into(), Stroke::new(1.5, palette.faint));
    }
}

/// The power lead in hand.
pub fn power_ui(ui: &mut Ui, hand: Hand<'_>, actions: &mut Vec<Action>) {
    let Hand { tray, tools, .. } = hand;
    outcome_ui(ui, hand, true);
    ends_ui(ui, hand, actions);
    let set = |power| Action::Tray(TrayAction::SetPower(power));
    ui.horizontal_wrapped(|ui| {
        ui.label(tools.say("power-for"));
        for seconds in SECONDS {
            let text = tools.words.say("power-seconds", &[("seconds", seconds.into())]);
            if pick_ui(ui, tray.power.seconds == seconds, &text).clicked() {
                actions.push(set(PowerSetting { seconds, ..tray.power }));
            }
        }
    });
    let reversed = tray.power.reversed;
    if pick_ui(ui, reversed, &tools.say("power-reversed")).clicked() {
        actions.push(set(PowerSetting { reversed: !reversed, ..tray.power }));
    }
    take_ui(ui, hand, "power-take", Some("predict click"), actions);
}
