//! The panels: functions of what there is to see that answer what the user wants.
//!
//! They name no engine, so that a test walks them without one.

mod bay_page;
mod bay_picture;
mod begin_card;
mod case_page;
mod debrief;
mod entry;
mod frame;
mod front_page;
mod guide_strip;
mod heard;
mod kept_card;
mod leads;
mod log;
mod pieces;
mod places;
mod road_page;
mod settings_page;
mod sheet;
mod steps;
#[cfg(all(test, feature = "panel-tests"))]
mod tests;
mod tray;
mod writer;

use super::theme;
use super::view::action::Action;
use super::view::{Page, WindowView};
use crate::wording::catalogue::Words;
use egui::{TextureId, Ui};

/// What panels draw with.
#[derive(Debug, Clone, Copy)]
pub struct Tools<'a> {
    /// The sentences of the window itself.
    pub words: &'a Words,
    /// The picture of the bay.
    pub picture: Option<TextureId>,
}

impl Tools<'_> {
    fn say(&self, key: &str) -> String {
        self.words.say(key, &[])
    }
}

/// The whole window.
pub fn window_ui(ui: &mut Ui, view: &WindowView<'_>, tools: Tools<'_>) -> Vec<Action> {
    let mut actions = Vec::new();
    // Behind the panels nothing is drawn by anybody else.
    ui.painter().rect_filled(ui.max_rect(), 0.0, theme::palette(ui).bench);
    if view.settings.are_open {
        settings_page::settings_ui(ui, view, tools, &mut actions);
        return actions;
    }
    match view.page {
        Page::Front(front) => front_page::front_ui(ui, front, view, tools, &mut actions),
        Page::Case(case) => case_page::case_ui(ui, case, view, tools, &mut actions),
        Page::Debrief(debrief) => {
            debrief::debrief_ui(ui, debrief, view, tools, &mut actions);
        }
        Page::WriterDoor(door) => writer::door_ui(ui, door, view, tools, &mut actions),
        Page::Writer(written) => writer::writer_ui(ui, written, view, tools, &mut actions),
    }
    actions
}
