//! The fields of a form, each under its name.

use crate::workshop::panels::Tools;
use crate::workshop::panels::frame::{BREACH_SIGN, CAUTION_SIGN};
use crate::workshop::panels::pieces::{heading_ui, note_ui, page_keys, signed_ui};
use crate::workshop::theme;
use crate::workshop::view::action::Action;
use crate::workshop::view::writer::form::{Choice, Deed, Field, Row, Sort};
use crate::workshop::view::writer::{WriterAction, WriterView};
use egui::{
    Align, Button, ComboBox, Context, Id, Label, Response, RichText, ScrollArea, TextEdit, Ui, vec2,
};

/// Puts the focus on the first field.
pub fn come_here(ctx: &Context) {
    ctx.data_mut(|data| data.insert_temp(first(), true));
}

fn first() -> Id {
    Id::new("first field of the form")
}

/// Every row of the open part; they rest while the text cannot be read.
pub fn rows_ui(ui: &mut Ui, written: &WriterView, tools: Tools<'_>, actions: &mut Vec<Action>) {
    if !written.is_live {
        let palette = theme::palette(ui);
        let said = tools.say("writer-forms-rest");
        note_ui(ui, CAUTION_SIGN, &said, palette.caution, palette.caution_card);
        ui.add_space(theme::GAP);
    }
    let salt = ("forms", written.section as usize);
    ScrollArea::vertical().id_salt(salt).auto_shrink(false).show(ui, |ui| {
        if ui.memory(|memory| memory.focused().is_none()) {
            page_keys(ui);
        }
        ui.add_enabled_ui(written.is_live, |ui| {
            for row in &written.rows {
                row_ui(ui, row, actions);
            }
        });
        // Nothing that can be written into took it.
        ui.data_mut(|data| data.remove_temp::<bool>(first()));
        // Who has scrolled to the end sees that it is the end.
        ui.add_space(theme::WIDE_GAP);
    });
}

fn row_ui(ui: &mut Ui, row: &Row, actions: &mut Vec<Action>) {
    match row {
        Row::Heading(text) => {
            ui.add_space(theme::GAP);
            heading_ui(ui, text);
        }
        Row::Remark(text) => {
            ui.add(Label::new(RichText::new(text).small()).wrap());
        }
        Row::Field(field) => field_ui(ui, field, actions),
        Row::Choice(choice) => choice_ui(ui, choice, actions),
        Row::Beside(rows) if ui.available_width() < theme::FIELDS_BESIDE_FROM => {
            for row in rows {
                row_ui(ui, row, actions);
            }
        }
        Row::Beside(rows) => ui.columns(rows.len().max(1), |columns| {
            for (ui, row) in columns.iter_mut().zip(rows) {
                row_ui(ui, row, actions);
            }
        }),
        Row::Deeds(deeds) => deeds_ui(ui, deeds, actions),
    }
}

fn deeds_ui(ui: &mut Ui, deeds: &[(String, Deed)], actions: &mut Vec<Action>) {
    ui.horizontal_wrapped(|ui| {
        for (name, deed) in deeds {
            if ui.add(Button::new(name).wrap()).clicked() {
                actions.push(Action::Writer(WriterAction::Do(deed.clone())));
            }
        }
    });
}

fn field_ui(ui: &mut Ui, field: &Field, actions: &mut Vec<Action>) {
    let label = ui.add(Label::new(RichText::new(&field.label).small()).wrap());
    let mut text = field.text.clone();
    let edit = match field.sort {
        Sort::Lines => TextEdit::multiline(&mut text).desired_rows(1),
        _ => TextEdit::singleline(&mut text).vertical_align(Align::Center),
    };
    let edit = edit
        .id_salt(&field.path)
        .margin(theme::FIELD_MARGIN)
        .min_size(vec2(0.0, ui.spacing().interact_size.y))
        .desired_width(f32::INFINITY);
    let response = ui.add(edit).labelled_by(label.id);
    name(ui, &response, &field.name);
    take_focus(ui, &response);
    if response.changed() {
        let path = field.path.clone();
        actions.push(Action::Writer(WriterAction::Fill { path, text }));
    }
    if let Some(problem) = &field.problem {
        signed_ui(ui, BREACH_SIGN, problem, theme::palette(ui).breach);
    }
}

fn choice_ui(ui: &mut Ui, choice: &Choice, actions: &mut Vec<Action>) {
    ui.add(Label::new(RichText::new(&choice.label).small()).wrap());
    let width = ui.available_width();
    let shown = ComboBox::from_id_salt(&choice.path)
        .width(width)
        .truncate()
        .selected_text(&choice.chosen)
        .show_ui(ui, |ui| {
            for (value, option) in &choice.options {
                let is_chosen = *option == choice.chosen;
                if ui.selectable_label(is_chosen, option).clicked() && !is_chosen {
                    let (path, value) = (choice.path.clone(), value.clone());
                    actions.push(Action::Writer(WriterAction::Do(Deed::Set { path, value })));
                }
            }
        });
    name(ui, &shown.response, &choice.name);
    take_focus(ui, &shown.response);
}

/// Calls a control by its whole name, of which only a part stands above it.
fn name(ui: &Ui, response: &Response, name: &str) {
    ui.ctx().accesskit_node_builder(response.id, |node| node.set_label(name));
}

fn take_focus(ui: &Ui, response: &Response) {
    if ui.is_enabled() && ui.data_mut(|data| data.remove_temp::<bool>(first())).unwrap_or(false) {
        response.request_focus();
    }
}
