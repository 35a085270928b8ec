//! The page with the settings, in the place of whatever page is open.

use super::Tools;
use super::frame::head_panel_ui;
use super::pieces::{column, heading_ui, page_keys, pick_ui};
use crate::sound::player::State;
use crate::wording::catalogue::Words;
use crate::workshop::theme;
use crate::workshop::view::WindowView;
use crate::workshop::view::action::Action;
use crate::workshop::view::settings::{Contrast, Motion, Shade, TextSize, Volume};
use egui::{CentralPanel, Key, Label, RichText, ScrollArea, Ui};

/// One thing that can be chosen: whether it is, its name, what it wants.
type Choice = (bool, String, Action);

/// Every setting with what it is for.
pub fn settings_ui(
    ui: &mut Ui,
    view: &WindowView<'_>,
    tools: Tools<'_>,
    actions: &mut Vec<Action>,
) {
    let way = ("settings-close", Action::OpenSettings(false));
    if ui.input(|input| input.key_pressed(Key::Escape)) {
        actions.push(way.1.clone());
    }
    head_panel_ui(ui, &tools.say("settings-title"), "", way, view, tools, actions);
    CentralPanel::default().frame(theme::card(ui)).show(ui, |ui| {
        ScrollArea::vertical().id_salt("settings").auto_shrink(false).show(ui, |ui| {
            page_keys(ui);
            column(ui, theme::PAGE_WIDTH, |ui| choices_ui(ui, view, tools, actions));
        });
    });
}

fn choices_ui(ui: &mut Ui, view: &WindowView<'_>, tools: Tools<'_>, actions: &mut Vec<Action>) {
    let settings = view.settings;
    let texts = TextSize::ALL.map(|size| {
        let text = tools.words.say("window-percent", &[("percent", size.percent().into())]);
        (settings.text == size, text, Action::SetText(size))
    });
    setting_ui(ui, "window-text-size", "settings-text-why", &texts, tools, actions);
    let shades = [(Shade::Light, "window-light"), (Shade::Dark, "window-dark")]
        .map(|(shade, key)| (settings.shade == shade, tools.say(key), Action::SetShade(shade)));
    setting_ui(ui, "settings-shade", "settings-shade-why", &shades, tools, actions);
    let contrasts = [
        (Contrast::Ordinary, "settings-contrast-ordinary"),
        (Contrast::High, "settings-contrast-high"),
    ]
    .map(|(contrast, key)| {
        (settings.contrast == contrast, tools.say(key), Action::SetContrast(contrast))
    });
    setting_ui(ui, "settings-contrast", "settings-contrast-why", &contrasts, tools, actions);
    let motions = [(Motion::Short, "window-motion"), (Motion::None, "window-no-motion")].map(
        |(motion, key)| (settings.motion == motion, tools.say(key), Action::SetMotion(motion)),
    );
    setting_ui(ui, "settings-motion", "settings-motion-why", &motions, tools, actions);
    let volumes = Volume::ALL.map(|volume| {
        (settings.volume == volume, tools.say(volume_key(volume)), Action::SetVolume(volume))
    });
    let languages: Vec<Choice> = Words::languages()
        .into_iter()
        .map(|it| (it.tag == tools.words.language(), it.name, Action::SetLanguage(it.tag)))
        .collect();
    setting_ui(ui, "settings-language", "settings-language-why", &languages, tools, actions);
    let why = silence_key(view.sound).unwrap_or("settings-sound-why");
    setting_ui(ui, "sound-volume", why, &volumes, tools, actions);
}

/// A setting: its name, what can be chosen, and what it is for.
fn setting_ui(
    ui: &mut Ui,
    name: &str,
    why: &str,
    choices: &[Choice],
    tools: Tools<'_>,
    actions: &mut Vec<Action>,
) {
    heading_ui(ui, &tools.say(name));
    ui.horizontal_wrapped(|ui| {
        for (is_chosen, text, action) in choices {
            if pick_ui(ui, *is_chosen, text).clicked() {
                actions.push(action.clone());
            }
        }
    });
    ui.add(Label::new(RichText::new(tools.say(why)).small()).wrap());
    ui.add_space(theme::WIDE_GAP);
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
