//! The strip with the settings.

use super::Tools;
use super::pieces::pick_ui;
use crate::workshop::view::action::Action;
use crate::workshop::view::settings::{Motion, Settings, Shade, TextSize};
use egui::Ui;

/// Text size, shade and motion.
pub fn settings_ui(ui: &mut Ui, settings: Settings, tools: Tools<'_>, actions: &mut Vec<Action>) {
    ui.horizontal_wrapped(|ui| {
        ui.label(tools.say("window-text-size"));
        for size in TextSize::ALL {
            let text = tools.words.say("window-percent", &[("percent", size.percent().into())]);
            if pick_ui(ui, settings.text == size, &text).clicked() {
                actions.push(Action::SetText(size));
            }
        }
        ui.separator();
        for (shade, key) in [(Shade::Light, "window-light"), (Shade::Dark, "window-dark")] {
            if pick_ui(ui, settings.shade == shade, &tools.say(key)).clicked() {
                actions.push(Action::SetShade(shade));
            }
        }
        ui.separator();
        for (motion, key) in [(Motion::Short, "window-motion"), (Motion::None, "window-no-motion")]
        {
            if pick_ui(ui, settings.motion == motion, &tools.say(key)).clicked() {
                actions.push(Action::SetMotion(motion));
            }
        }
    });
}
