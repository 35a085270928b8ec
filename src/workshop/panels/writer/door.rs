//! What a case is begun with, or gone on from.

use crate::workshop::panels::Tools;
use crate::workshop::panels::frame::head_panel_ui;
use crate::workshop::panels::pieces::{column, heading_ui, page_keys, titled_ui};
use crate::workshop::theme;
use crate::workshop::view::WindowView;
use crate::workshop::view::action::Action;
use crate::workshop::view::writer::{WriterAction, WriterDoorView};
use egui::{Align, CentralPanel, Key, ScrollArea, TextEdit, Ui, vec2};

/// What was written last, a file, and everything to begin with.
pub fn door_ui(
    ui: &mut Ui,
    door: &WriterDoorView,
    view: &WindowView<'_>,
    tools: Tools<'_>,
    actions: &mut Vec<Action>,
) {
    if ui.input(|input| input.key_pressed(Key::Escape)) {
        actions.push(Action::ToFront);
    }
    let way = ("window-to-front", Action::ToFront);
    head_panel_ui(ui, &tools.say("writer-heading"), "", way, view, tools, actions);
    CentralPanel::default().frame(theme::card(ui)).show(ui, |ui| {
        ScrollArea::vertical().id_salt("door").auto_shrink(false).show(ui, |ui| {
            page_keys(ui);
            column(ui, theme::PAGE_WIDTH, |ui| {
                ui.label(tools.say("writer-about-writing"));
                ui.add_space(theme::WIDE_GAP);
                last_ui(ui, door, tools, actions);
                file_ui(ui, door, tools, actions);
                heading_ui(ui, &tools.say("writer-begin-with"));
                for (number, starter) in door.starters.iter().enumerate() {
                    if titled_ui(ui, None, &starter.title, &starter.about).clicked() {
                        actions.push(Action::Writer(WriterAction::Begin(number)));
                    }
                }
            });
        });
    });
}

fn last_ui(ui: &mut Ui, door: &WriterDoorView, tools: Tools<'_>, actions: &mut Vec<Action>) {
    let Some(last) = &door.last else { return };
    heading_ui(ui, &tools.say("writer-last"));
    let key = if last.is_changed { "writer-last-unsaved" } else { "writer-last-saved" };
    let nowhere = tools.say("writer-kept-nowhere");
    let path = last.path.as_deref().unwrap_or(&nowhere);
    let remark = tools.words.say(key, &[("path", path.into())]);
    if titled_ui(ui, None, &last.title, &remark).clicked() {
        actions.push(Action::Writer(WriterAction::GoOn));
    }
    ui.add_space(theme::WIDE_GAP);
}

fn file_ui(ui: &mut Ui, door: &WriterDoorView, tools: Tools<'_>, actions: &mut Vec<Action>) {
    heading_ui(ui, &tools.say("writer-a-file"));
    ui.horizontal_wrapped(|ui| {
        let label = ui.label(tools.say("front-file"));
        let mut file = door.file.clone();
        let field = TextEdit::singleline(&mut file)
            .hint_text(tools.say("front-file-empty"))
            .margin(theme::FIELD_MARGIN)
            .vertical_align(Align::Center)
            .min_size(vec2(0.0, ui.spacing().interact_size.y))
            .desired_width(theme::FILE_WIDTH);
        let response = ui.add(field).labelled_by(label.id);
        if response.changed() {
            actions.push(Action::Writer(WriterAction::TypeFile(file)));
        }
        let entered = response.lost_focus() && ui.input(|input| input.key_pressed(Key::Enter));
        if ui.button(tools.say("writer-open-file")).clicked() || entered {
            actions.push(Action::Writer(WriterAction::ReadFile));
        }
    });
    ui.add_space(theme::WIDE_GAP);
}
