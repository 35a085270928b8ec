//! Where a case is written: forms on one side, and the text, or what comes of it, on the other.

mod asked;
mod door;
mod forms;
mod hardness;
mod problems;
mod sides;
mod text;

pub use door::door_ui;

use super::Tools;
use super::frame::{busy_ui, head_panel_ui};
use super::pieces::pick_ui;
use crate::workshop::theme;
use crate::workshop::view::WindowView;
use crate::workshop::view::action::Action;
use crate::workshop::view::writer::{Section, Side, WriterAction, WriterPane, WriterView};
use egui::{Button, CentralPanel, Key, Modifiers, Panel, Ui};

/// The page.
pub fn writer_ui(
    ui: &mut Ui,
    written: &WriterView,
    view: &WindowView<'_>,
    tools: Tools<'_>,
    actions: &mut Vec<Action>,
) {
    keys(ui, written, actions);
    let is_wide = ui.available_width() >= theme::THREE_COLUMNS_FROM;
    let state = if written.is_changed { "writer-changed" } else { "writer-unchanged" };
    let beside = if is_wide { tools.say(state) } else { String::new() };
    let way = ("window-to-front", Action::ToFront);
    head_panel_ui(ui, &written.name, &beside, way, view, tools, actions);
    if let Some(asked) = &written.asked {
        asked::asked_ui(ui, asked, tools, actions);
    }
    bar_ui(ui, written, is_wide, view, tools, actions);
    if is_wide {
        Panel::bottom("problems")
            .exact_size(theme::PROBLEMS_HEIGHT)
            .resizable(false)
            .frame(theme::card(ui))
            .show(ui, |ui| problems::problems_ui(ui, written, tools, actions));
        Panel::left("forms")
            .exact_size(theme::FORMS_WIDTH)
            .resizable(false)
            .frame(theme::card(ui))
            .show(ui, |ui| forms_ui(ui, written, tools, actions));
        CentralPanel::default().frame(theme::card(ui)).show(ui, |ui| {
            side_picks_ui(ui, written, tools, actions);
            side_ui(ui, written, view, tools, actions);
        });
        return;
    }
    CentralPanel::default().frame(theme::card(ui)).show(ui, |ui| match written.pane {
        WriterPane::Forms => forms_ui(ui, written, tools, actions),
        WriterPane::Problems => problems::problems_ui(ui, written, tools, actions),
        WriterPane::Side => {
            side_picks_ui(ui, written, tools, actions);
            side_ui(ui, written, view, tools, actions);
        }
    });
}

/// The keys for the whole page, taken before any field can see them.
fn keys(ui: &Ui, written: &WriterView, actions: &mut Vec<Action>) {
    let pressed = |modifiers, key| ui.input_mut(|input| input.consume_key(modifiers, key));
    let again = Modifiers::COMMAND | Modifiers::SHIFT;
    if pressed(again, Key::S) {
        actions.push(Action::Writer(WriterAction::AskPath));
    }
    if pressed(Modifiers::COMMAND, Key::S) {
        actions.push(Action::Writer(WriterAction::Save));
    }
    if pressed(again, Key::Z) || pressed(Modifiers::COMMAND, Key::Y) {
        actions.push(Action::Writer(WriterAction::Redo));
    }
    if pressed(Modifiers::COMMAND, Key::Z) {
        actions.push(Action::Writer(WriterAction::Undo));
    }
    if written.asked.is_some() && pressed(Modifiers::NONE, Key::Escape) {
        actions.push(Action::Writer(WriterAction::Stay));
    }
    if pressed(Modifiers::NONE, Key::F2) {
        actions.push(Action::Writer(WriterAction::Turn(Side::Text)));
        text::come_here(ui.ctx());
    }
    if pressed(Modifiers::NONE, Key::F3) {
        actions.push(Action::Writer(WriterAction::Pane(WriterPane::Forms)));
        forms::come_here(ui.ctx());
    }
    if pressed(Modifiers::NONE, Key::F4) {
        actions.push(Action::Writer(WriterAction::Pane(WriterPane::Problems)));
        problems::come_here(ui.ctx());
    }
}

/// Saving, going back and, where there is room for only one part of the page, which.
fn bar_ui(
    ui: &mut Ui,
    written: &WriterView,
    is_wide: bool,
    view: &WindowView<'_>,
    tools: Tools<'_>,
    actions: &mut Vec<Action>,
) {
    let frame = theme::card(ui);
    Panel::top("bar").resizable(false).show_separator_line(false).frame(frame).show(ui, |ui| {
        ui.horizontal_wrapped(|ui| {
            for (can, key, wanted) in [
                (written.is_changed || written.path.is_none(), "writer-save", WriterAction::Save),
                (true, "writer-save-as", WriterAction::AskPath),
                (written.can.0, "writer-undo", WriterAction::Undo),
                (written.can.1, "writer-redo", WriterAction::Redo),
            ] {
                if ui.add_enabled(can, Button::new(tools.say(key))).clicked() {
                    actions.push(Action::Writer(wanted));
                }
            }
            if !is_wide {
                for (pane, name) in [
                    (WriterPane::Forms, tools.say("writer-pane-forms")),
                    (WriterPane::Side, tools.say("writer-pane-side")),
                    (WriterPane::Problems, problems::title(written, tools)),
                ] {
                    if pick_ui(ui, written.pane == pane, &name).clicked() {
                        actions.push(Action::Writer(WriterAction::Pane(pane)));
                    }
                }
            }
            if let Some(busy) = &view.busy {
                busy_ui(ui, busy);
            }
        });
    });
}

fn forms_ui(ui: &mut Ui, written: &WriterView, tools: Tools<'_>, actions: &mut Vec<Action>) {
    ui.horizontal_wrapped(|ui| {
        for section in Section::ALL {
            let name = tools.say(section_key(section));
            if pick_ui(ui, written.section == section, &name).clicked() {
                actions.push(Action::Writer(WriterAction::Show(section)));
            }
        }
    });
    ui.add_space(theme::GAP);
    forms::rows_ui(ui, written, tools, actions);
}

fn side_picks_ui(ui: &mut Ui, written: &WriterView, tools: Tools<'_>, actions: &mut Vec<Action>) {
    ui.horizontal_wrapped(|ui| {
        for side in Side::ALL {
            let name = tools.say(side_key(side));
            if pick_ui(ui, written.side == side, &name).clicked() {
                actions.push(Action::Writer(WriterAction::Turn(side)));
            }
        }
    });
    ui.add_space(theme::GAP);
}

fn side_ui(
    ui: &mut Ui,
    written: &WriterView,
    view: &WindowView<'_>,
    tools: Tools<'_>,
    actions: &mut Vec<Action>,
) {
    match written.side {
        Side::Text => text::text_ui(ui, written, tools, actions),
        Side::Sheet => sides::sheet_ui(ui, written, tools),
        Side::Bay => sides::bay_ui(ui, written, view, tools, actions),
        Side::Trial => sides::trial_ui(ui, written, view, tools, actions),
        Side::Hardness => hardness::hardness_ui(ui, written, tools, actions),
    }
}

const fn section_key(section: Section) -> &'static str {
    match section {
        Section::Story => "writer-section-story",
        Section::Job => "writer-section-job",
        Section::Faults => "writer-section-faults",
        Section::Decoys => "writer-section-decoys",
        Section::Prices => "writer-section-prices",
        Section::Roads => "writer-section-roads",
        Section::Marks => "writer-section-marks",
        Section::Teaching => "writer-section-teaching",
    }
}

const fn side_key(side: Side) -> &'static str {
    match side {
        Side::Text => "writer-side-text",
        Side::Sheet => "writer-side-sheet",
        Side::Bay => "writer-side-bay",
        Side::Trial => "writer-side-trial",
        Side::Hardness => "writer-side-hardness",
    }
}
