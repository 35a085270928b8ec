//! The page on which a case is worked.

use super::Tools;
use super::entry::entry_ui;
use super::frame::head_panel_ui;
use super::log::log_ui;
use super::pieces::pick_ui;
use super::sheet::sheet_ui;
use super::steps::steps_ui;
use crate::workshop::theme;
use crate::workshop::view::WindowView;
use crate::workshop::view::action::Action;
use crate::workshop::view::case::{CaseView, Pane};
use egui::{CentralPanel, Panel, Ui};

/// Job sheet, log and steps beside each other where there is room, else one of them at a time; the
/// entry field is always there.
pub fn case_ui(
    ui: &mut Ui,
    case: &CaseView,
    view: &WindowView<'_>,
    tools: Tools<'_>,
    actions: &mut Vec<Action>,
) {
    let is_wide = ui.available_width() >= theme::THREE_COLUMNS_FROM;
    let beside = if is_wide { case.till.as_str() } else { "" };
    head_panel_ui(
        ui,
        &case.title,
        beside,
        ("window-to-front", Action::ToFront),
        view,
        tools,
        actions,
    );
    if !is_wide {
        panes_ui(ui, case, tools, actions);
    }
    Panel::bottom("entry").resizable(false).frame(theme::card(ui)).show(ui, |ui| {
        ui.take_available_width();
        entry_ui(ui, case, view, tools, actions);
    });
    if is_wide {
        Panel::left("sheet")
            .exact_size(theme::SHEET_WIDTH)
            .resizable(false)
            .frame(theme::card(ui))
            .show(ui, |ui| sheet_ui(ui, case, tools, actions));
        Panel::right("steps")
            .exact_size(theme::STEPS_WIDTH)
            .resizable(false)
            .frame(theme::card(ui))
            .show(ui, |ui| steps_ui(ui, case, view, tools, actions));
    }
    let pane = if is_wide { Pane::Log } else { case.pane };
    CentralPanel::default().frame(theme::card(ui)).show(ui, |ui| match pane {
        Pane::Sheet => sheet_ui(ui, case, tools, actions),
        Pane::Log => log_ui(ui, case, tools),
        Pane::Steps => steps_ui(ui, case, view, tools, actions),
    });
}

fn panes_ui(ui: &mut Ui, case: &CaseView, tools: Tools<'_>, actions: &mut Vec<Action>) {
    Panel::top("panes").resizable(false).show_separator_line(false).frame(theme::card(ui)).show(
        ui,
        |ui| {
            ui.horizontal(|ui| {
                for (pane, key) in [
                    (Pane::Sheet, "window-pane-sheet"),
                    (Pane::Log, "window-pane-log"),
                    (Pane::Steps, "window-pane-steps"),
                ] {
                    if pick_ui(ui, case.pane == pane, &tools.say(key)).clicked() {
                        actions.push(Action::ShowPane(pane));
                    }
                }
                ui.add(egui::Label::new(&case.till).truncate());
            });
        },
    );
}
