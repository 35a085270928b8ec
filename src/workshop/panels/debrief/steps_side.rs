//! The session once more: its steps, the bay as it was, how belief moved, and the step that is looked at.

use super::super::Tools;
use super::super::bay_picture::{ask_for_size, bay_picture_ui};
use super::super::frame::busy_ui;
use super::super::pieces::page_keys;
use super::course::course_ui;
use super::moment::moment_ui;
use super::others::others_ui;
use super::timeline::timeline_ui;
use super::transport::transport_ui;
use crate::wording::reviewed_step_words::StepWords;
use crate::workshop::theme;
use crate::workshop::view::WindowView;
use crate::workshop::view::action::Action;
use crate::workshop::view::debrief::LookBackView;
use egui::{CentralPanel, Panel, ScrollArea, Ui, vec2};

/// Share of the height that the picture of the bay has beside the plot.
const PICTURE_SHARE: f32 = 0.42;

/// The steps, with everything beside each other where there is room, else below each other.
pub fn steps_side_ui(
    ui: &mut Ui,
    look_back: &LookBackView,
    steps: &[StepWords],
    view: &WindowView<'_>,
    tools: Tools<'_>,
    actions: &mut Vec<Action>,
) {
    if ui.available_width() < theme::THREE_COLUMNS_FROM {
        CentralPanel::default().frame(theme::card(ui)).show(ui, |ui| {
            ScrollArea::vertical().id_salt("look back").auto_shrink(false).show(ui, |ui| {
                page_keys(ui);
                transport_ui(ui, look_back, tools, actions);
                course_ui(ui, look_back, theme::PLOT_HEIGHT, tools, actions);
                card_ui(ui, look_back, steps, view, tools, actions);
                timeline_ui(ui, look_back, tools, actions);
            });
        });
        return;
    }
    Panel::left("timeline")
        .exact_size(theme::SHEET_WIDTH)
        .resizable(false)
        .frame(theme::card(ui))
        .show(ui, |ui| {
            ScrollArea::vertical().id_salt("timeline").auto_shrink(false).show(ui, |ui| {
                timeline_ui(ui, look_back, tools, actions);
            });
        });
    Panel::right("step looked at")
        .exact_size(theme::MOMENT_WIDTH)
        .resizable(false)
        .frame(theme::card(ui))
        .show(ui, |ui| {
            ScrollArea::vertical().id_salt("step looked at").auto_shrink(false).show(ui, |ui| {
                page_keys(ui);
                card_ui(ui, look_back, steps, view, tools, actions);
            });
        });
    CentralPanel::default().frame(theme::card(ui)).show(ui, |ui| {
        let height = (ui.available_height() * PICTURE_SHARE).max(theme::LEAST_PICTURE);
        let size = vec2(ui.available_width(), height);
        ask_for_size(ui, size, view.picture, actions);
        bay_picture_ui(ui, &look_back.bay, None, size, tools, actions);
        transport_ui(ui, look_back, tools, actions);
        ScrollArea::vertical().id_salt("course").auto_shrink(false).show(ui, |ui| {
            course_ui(ui, look_back, theme::PLOT_HEIGHT, tools, actions);
        });
    });
}

/// Everything about the step that is looked at.
fn card_ui(
    ui: &mut Ui,
    look_back: &LookBackView,
    steps: &[StepWords],
    view: &WindowView<'_>,
    tools: Tools<'_>,
    actions: &mut Vec<Action>,
) {
    moment_ui(ui, look_back, steps.get(look_back.at), tools, actions);
    if let Some(busy) = &view.busy {
        busy_ui(ui, busy);
    }
    others_ui(ui, look_back, view.busy.is_none(), tools, actions);
}
