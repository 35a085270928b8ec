//! How hard the case is, before and after a change.

use crate::workshop::panels::Tools;
use crate::workshop::panels::frame::{BREACH_SIGN, CAUTION_SIGN};
use crate::workshop::panels::pieces::{bar_ui, page_keys, signed_ui};
use crate::workshop::theme;
use crate::workshop::view::action::Action;
use crate::workshop::view::writer::{WriterAction, WriterView};
use egui::{Button, Grid, Label, RichText, ScrollArea, Ui};

/// The table, and what is being worked out for it.
pub fn hardness_ui(ui: &mut Ui, written: &WriterView, tools: Tools<'_>, actions: &mut Vec<Action>) {
    let hardness = &written.hardness;
    ScrollArea::vertical().id_salt("hardness").auto_shrink(false).show(ui, |ui| {
        page_keys(ui);
        ui.add(Label::new(tools.say("writer-hardness-why")).wrap());
        ui.add_space(theme::GAP);
        if let Some((text, percent)) = &hardness.under_way {
            ui.add(Label::new(text).wrap());
            bar_ui(ui, f32::from(*percent) / 100.0, theme::BAR_WIDTH, text);
            if ui.button(tools.say("writer-stop")).clicked() {
                actions.push(Action::Writer(WriterAction::StopMeasuring));
            }
        } else {
            let can = written.trial.can_deal;
            let button = Button::new(tools.say("writer-measure"));
            if ui.add_enabled(can, button).clicked() {
                actions.push(Action::Writer(WriterAction::Measure));
            }
            if !can {
                ui.add(Label::new(tools.say("writer-trial-not-yet")).wrap());
            }
        }
        if let Some(problem) = &hardness.problem {
            signed_ui(ui, BREACH_SIGN, problem, theme::palette(ui).breach);
        }
        ui.add_space(theme::WIDE_GAP);
        if hardness.is_old {
            let color = theme::palette(ui).caution;
            signed_ui(ui, CAUTION_SIGN, &tools.say("writer-hardness-old"), color);
        }
        if !hardness.rows.is_empty() {
            table_ui(ui, &hardness.rows, tools);
        }
    });
}

fn table_ui(ui: &mut Ui, rows: &[[String; 3]], tools: Tools<'_>) {
    let width = ui.available_width();
    Grid::new("hardness table")
        .num_columns(3)
        .striped(true)
        .spacing([theme::WIDE_GAP, theme::GAP])
        .max_col_width(width / 3.0 - theme::WIDE_GAP)
        .show(ui, |ui| {
            for key in ["writer-column-what", "writer-column-saved", "writer-column-now"] {
                ui.add(Label::new(RichText::new(tools.say(key)).small()).wrap());
            }
            ui.end_row();
            for [what, saved, now] in rows {
                ui.add(Label::new(what).wrap());
                ui.add(Label::new(saved).wrap());
                ui.add(Label::new(now).wrap());
                ui.end_row();
            }
        });
}
