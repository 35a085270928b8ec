//! What was done and what followed.

use super::Tools;
use super::frame::{BREACH_SIGN, CAUTION_SIGN, REFUSED_SIGN};
use super::heard::heard_ui;
use super::pieces::{heading_ui, note_ui, page_keys, signed_ui};
use crate::workshop::theme;
use crate::workshop::view::action::Action;
use crate::workshop::view::case::{CaseView, LogLine, LoggedStep, Tone};
use egui::{Align, Frame, Id, Label, Layout, Margin, RichText, ScrollArea, Ui};

/// Every step with what followed, the newest in view.
pub fn log_ui(ui: &mut Ui, case: &CaseView, tools: Tools<'_>, actions: &mut Vec<Action>) {
    heading_ui(ui, &tools.say("window-pane-log"));
    let seen = Id::new("steps seen");
    let last_seen = ui.data(|data| data.get_temp::<usize>(seen)).unwrap_or(0);
    ScrollArea::vertical().id_salt("log").auto_shrink(false).show(ui, |ui| {
        page_keys(ui);
        if case.log.is_empty() {
            ui.label(tools.say("window-log-empty"));
        }
        for (index, step) in case.log.iter().enumerate() {
            let top = ui.cursor().min;
            step_ui(ui, step, tools, actions);
            if index + 1 == case.log.len() && case.log.len() != last_seen {
                // From its beginning, where it is too long for the page.
                let place = egui::Rect::from_min_max(top, ui.min_rect().max);
                ui.scroll_to_rect(place, Some(Align::TOP));
            }
        }
    });
    ui.data_mut(|data| data.insert_temp(seen, case.log.len()));
}

/// A step with what followed.
pub fn step_ui(ui: &mut Ui, step: &LoggedStep, tools: Tools<'_>, actions: &mut Vec<Action>) {
    ui.with_layout(Layout::right_to_left(Align::Min), |ui| {
        ui.add(Label::new(RichText::new(&step.cost).small().color(theme::palette(ui).faint)));
        ui.with_layout(Layout::left_to_right(Align::Min), |ui| {
            let text = format!("{}. {}", step.number, step.step);
            ui.add(Label::new(RichText::new(text).monospace().strong()).wrap());
        });
    });
    Frame::new().inner_margin(Margin { left: 16, ..Margin::ZERO }).show(ui, |ui| {
        for line in &step.lines {
            line_ui(ui, line);
        }
        if let Some(heard) = &step.heard {
            heard_ui(ui, step.number, heard, tools, actions);
        }
    });
    ui.add_space(theme::WIDE_GAP);
}

fn line_ui(ui: &mut Ui, line: &LogLine) {
    let palette = theme::palette(ui);
    match line.tone {
        Tone::Plain => {
            ui.add(Label::new(&line.text).wrap());
        }
        Tone::Caution => {
            note_ui(ui, CAUTION_SIGN, &line.text, palette.caution, palette.caution_card);
        }
        Tone::Breach => {
            note_ui(ui, BREACH_SIGN, &line.text, palette.breach, palette.breach_card);
        }
        Tone::Refused => signed_ui(ui, REFUSED_SIGN, &line.text, palette.ink),
    }
}
