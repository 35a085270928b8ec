//! The strip with the settings.

use super::Tools;
use super::pieces::pick_ui;
use crate::sound::player::State;
use crate::workshop::view::WindowView;
use crate::workshop::view::action::Action;
use crate::workshop::view::settings::{Motion, Shade, TextSize, Volume};
use egui::{Label, Ui};

/// Text size, shade, motion and sound.
pub fn settings_ui(
    ui: &mut Ui,
    view: &WindowView<'_>,
    tools: Tools<'_>,
    actions: &mut Vec<Action>,
) {
    let settings = view.settings;
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
        ui.separator();
        ui.label(tools.say("sound-volume"));
        for volume in Volume::ALL {
            if pick_ui(ui, settings.volume == volume, &tools.say(volume_key(volume))).clicked() {
                actions.push(Action::SetVolume(volume));
            }
        }
    });
    if let Some(key) = silence_key(view.sound) {
        ui.add(Label::new(tools.say(key)).wrap());
    }
}

const fn volume_key(volume: Volume) -> &'static str {
    match volume {
        Volume::Mute => "sound-mute",
        Volume::Quiet => "sound-quiet",
        Volume::Medium => "sound-medium",
        Volume::Loud => "sound-loud",
    }
}

/// The message for why nothing is heard.
const fn silence_key(state: State) -> Option<&'static str> {
    match state {
        State::Rests | State::Plays => None,
        State::NoServer => Some("sound-no-server"),
        State::Refused => Some("sound-refused"),
        State::Lost => Some("sound-lost"),
        State::NotBuilt => Some("sound-not-built"),
    }
}
