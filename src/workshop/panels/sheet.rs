//! What is known without asking: the vehicle as it stands there, the suspects, the notes, the job sheet.

use super::pieces::{bar_ui, heading_ui, page_keys, wide_button};
use super::{Tools, entry};
use crate::workshop::theme;
use crate::workshop::view::action::Action;
use crate::workshop::view::case::{CaseView, SuspectView};
use egui::{Label, ScrollArea, Ui};

/// Vehicle, suspects and job sheet in one column; `is_alone` where nothing else takes the keys for whole pages.
pub fn sheet_ui(
    ui: &mut Ui,
    case: &CaseView,
    is_alone: bool,
    tools: Tools<'_>,
    actions: &mut Vec<Action>,
) {
    ScrollArea::vertical().id_salt("sheet").auto_shrink(false).show(ui, |ui| {
        if is_alone {
            page_keys(ui);
        }
        heading_ui(ui, &tools.say("window-vehicle-heading"));
        ui.label(&case.vehicle.key);
        ui.label(&case.vehicle.off);
        ui.add_space(theme::WIDE_GAP);
        heading_ui(ui, &tools.say("window-suspects-heading"));
        if case.suspects.is_empty() {
            ui.label(tools.say("window-no-suspects"));
        }
        for suspect in &case.suspects {
            suspect_ui(ui, suspect, tools, actions);
        }
        ui.add_space(theme::WIDE_GAP);
        heading_ui(ui, &tools.say("window-notes-heading"));
        for note in &case.notes {
            ui.add(Label::new(note).wrap());
        }
        if ui.add(wide_button(ui, tools.say("window-note-write"))).clicked() {
            actions.push(Action::StartLine("note".to_owned()));
            entry::come_here(ui);
        }
        ui.add_space(theme::WIDE_GAP);
        heading_ui(ui, &tools.say("window-pane-sheet"));
        if case.is_assessed {
            ui.label(tools.say("window-assessed-why"));
        }
        // The first line is the title of the job, which stands above the page.
        for line in case.sheet.iter().skip(1) {
            ui.label(line.trim_start());
        }
    });
}

fn suspect_ui(ui: &mut Ui, suspect: &SuspectView, tools: Tools<'_>, actions: &mut Vec<Action>) {
    let text = tools.words.say(
        "window-suspect",
        &[("fault", suspect.name.as_str().into()), ("percent", suspect.percent.into())],
    );
    let button = wide_button(ui, &text);
    let hint = tools.say("window-suspect-hint");
    if ui.add(button).on_hover_text(hint).clicked() {
        actions.push(Action::StartLine(suspect.start.clone()));
    }
    bar_ui(ui, f32::from(suspect.percent) / 100.0, ui.available_width(), &text);
}
