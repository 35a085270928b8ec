//! The tray of instruments: which one is in hand, where its ends go, what it shows. What it takes is the line that could
//! be typed as well.

mod counter;
mod display;
mod electric;
mod ends;
mod focus;
mod letter;
mod meter;
mod oil;
mod reader;
mod scope;
mod segments;
mod settle;
mod take;
mod trace;

pub use ends::places_on_ui;
pub use focus::come_here;
pub use letter::letter;
#[cfg(all(test, feature = "panel-tests"))]
pub use take::{MET_SIGN, MISSED_SIGN};

use super::Tools;
use super::log::step_ui;
use super::pieces::{page_keys, pick_ui};
use crate::workshop::theme;
use crate::workshop::view::WindowView;
use crate::workshop::view::action::Action;
use crate::workshop::view::case::CaseView;
use crate::workshop::view::settings::Motion;
use crate::workshop::view::tray::{Tool, TrayAction, TrayView};
use egui::{ScrollArea, Ui};

/// The tool in hand with what is around it.
#[derive(Clone, Copy)]
struct Hand<'a> {
    tray: &'a TrayView,
    /// The picture of the bay is on the page too.
    with_bay: bool,
    view: &'a WindowView<'a>,
    tools: Tools<'a>,
}

impl Hand<'_> {
    /// Whether things come bit by bit.
    fn moves(&self) -> bool {
        self.view.settings.motion == Motion::Short
    }
}

/// The tools, the one in hand, and what followed from the last step where nothing else on the page shows it: `with_bay`
/// where the picture of the bay is on the page too, `with_last` where the tray is alone.
pub fn tray_ui(
    ui: &mut Ui,
    case: &CaseView,
    [with_bay, with_last]: [bool; 2],
    view: &WindowView<'_>,
    tools: Tools<'_>,
    actions: &mut Vec<Action>,
) {
    let tray = &case.tray;
    let hand = Hand { tray, with_bay, view, tools };
    ScrollArea::vertical().id_salt("tray").auto_shrink(false).show(ui, |ui| {
        page_keys(ui);
        ui.horizontal_wrapped(|ui| {
            for tool in tray.tools.iter().copied() {
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
            Tool::Meter => meter::meter_ui(ui, hand, actions),
            Tool::Lamp => electric::lamp_ui(ui, hand, actions),
            Tool::Clamp => meter::clamp_ui(ui, hand, actions),
            Tool::Power => electric::power_ui(ui, hand, actions),
            Tool::Scope => scope::scope_ui(ui, hand, actions),
            Tool::Reader => reader::reader_ui(ui, hand, actions),
            Tool::Gauge => oil::gauge_ui(ui, hand, actions),
            Tool::Dipstick => oil::dipstick_ui(ui, hand, actions),
            Tool::Drive => reader::drive_ui(ui, hand, actions),
            Tool::Counter => counter::counter_ui(ui, hand, actions),
        }
        if with_last && let Some(last) = case.log.last() {
            ui.add_space(theme::WIDE_GAP);
            step_ui(ui, last, tools, actions);
        }
    });
}
