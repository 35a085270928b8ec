//! The tray of instruments: which one is in hand, where its ends go, what it shows. What it takes is the line that could
//! be typed as well.

mod ends;
mod focus;
mod letter;
mod meter;
mod segments;
mod settle;
mod take;

pub use ends::places_on_ui;
pub use focus::come_here;
pub use letter::letter;

use super::Tools;
use super::log::step_ui;
use super::pieces::{page_keys, pick_ui};
use crate::workshop::theme;
use crate::workshop::view::WindowView;
use crate::workshop::view::action::Action;
use crate::workshop::view::case::CaseView;
use crate::workshop::view::tray::{Tool, TrayAction};
use egui::{Key, ScrollArea, Ui};

/// The tools, the one in hand, and what followed from the last step where the tray is alone on the page.
pub fn tray_ui(
    ui: &mut Ui,
    case: &CaseView,
    is_alone: bool,
    view: &WindowView<'_>,
    tools: Tools<'_>,
    actions: &mut Vec<Action>,
) {
    let tray = &case.tray;
    if tray.held.is_some() && ui.input(|input| input.key_pressed(Key::Escape)) {
        actions.push(Action::Tray(TrayAction::Hold(None)));
    }
    ScrollArea::vertical().id_salt("tray").auto_shrink(false).show(ui, |ui| {
        page_keys(ui);
        ui.horizontal_wrapped(|ui| {
            for tool in Tool::ALL {
                let response = pick_ui(ui, tray.tool == tool, &tools.say(tool.key()));
                if tray.tool == tool {
                    focus::is_in_hand(ui, &response);
                }
                if response.clicked() {
                    actions.push(Action::Tray(TrayAction::Take(tool)));
                }
            }
        });
        ui.add_space(theme::GAP);
        match tray.tool {
            Tool::Meter => meter::meter_ui(ui, tray, is_alone, view, tools, actions),
        }
        if is_alone && let Some(last) = case.log.last() {
            ui.add_space(theme::WIDE_GAP);
            step_ui(ui, last, tools, actions);
        }
    });
}
