//! The page on which a case is worked.

use super::Tools;
use super::bay_page::bay_ui;
use super::entry::entry_ui;
use super::frame::{head_panel_ui, tried_ui, way_key};
use super::guide_strip::guide_ui;
use super::log::log_ui;
use super::pieces::{is_low, pick_ui};
use super::places::places_ui;
use super::road_page::road_ui;
use super::sheet::sheet_ui;
use super::steps::steps_ui;
use super::tray::tray_ui;
use super::{leads, steps, tray};
use crate::workshop::theme;
use crate::workshop::view::WindowView;
use crate::workshop::view::action::Action;
use crate::workshop::view::case::{CaseView, Pane};
use crate::workshop::view::tray::TrayAction;
use egui::{CentralPanel, Key, Panel, Ui};

/// The bay with its places, or the log with the job sheet, beside the steps where there is room, else one of them at a
/// time; the entry field is always there.
pub fn case_ui(
    ui: &mut Ui,
    case: &CaseView,
    view: &WindowView<'_>,
    tools: Tools<'_>,
    actions: &mut Vec<Action>,
) {
    let is_wide = ui.available_width() >= theme::THREE_COLUMNS_FROM;
    keys(ui, case, is_wide, actions);
    leads::dragged_ui(ui, tools);
    let standing = standing(case, tools);
    let beside = if is_wide { standing.as_str() } else { "" };
    let way = (way_key(view), Action::ToFront);
    head_panel_ui(ui, &case.title, beside, way, view, tools, actions);
    tried_ui(ui, view);
    if !is_wide {
        panes_ui(ui, case, tools, actions);
    }
    if let Some(guide) = &case.guide {
        guide_ui(ui, *guide, is_wide, tools, actions);
    }
    Panel::bottom("entry").resizable(false).frame(theme::card(ui)).show(ui, |ui| {
        ui.take_available_width();
        entry_ui(ui, case, &standing, view, tools, actions);
    });
    if is_wide {
        let shows_bay = stands_in_the_middle(case.pane);
        Panel::left("sheet")
            .exact_size(theme::SHEET_WIDTH)
            .resizable(false)
            .frame(theme::card(ui))
            .show(ui, |ui| {
                if shows_bay {
                    places_ui(ui, &case.bay, view, tools, actions);
                } else {
                    sheet_ui(ui, case, false, tools, actions);
                }
            });
        Panel::right("steps")
            .exact_size(theme::STEPS_WIDTH)
            .resizable(false)
            .frame(theme::card(ui))
            .show(ui, |ui| {
                right_picks_ui(ui, case, tools, actions);
                if case.tray.is_out {
                    tray_ui(ui, case, [shows_bay, false], view, tools, actions);
                } else {
                    steps_ui(ui, case, view, tools, actions);
                }
            });
        // Where there is room for a fourth column the log stands beside the bay.
        let log_beside = shows_bay && ui.available_width() >= theme::LOG_BESIDE_FROM;
        if log_beside {
            Panel::right("log beside")
                .exact_size(theme::LOG_WIDTH)
                .resizable(false)
                .frame(theme::card(ui))
                .show(ui, |ui| log_ui(ui, case, tools, actions));
        }
        CentralPanel::default().frame(theme::card(ui)).show(ui, |ui| {
            if let Some(road) = &case.road {
                return road_ui(ui, road, tools, actions);
            }
            middle_picks_ui(ui, case, tools, actions);
            if shows_bay {
                bay_ui(ui, case, view, tools, !log_beside, actions);
            } else {
                log_ui(ui, case, tools, actions);
            }
        });
        return;
    }
    CentralPanel::default().frame(theme::card(ui)).show(ui, |ui| match case.pane {
        _ if case.road.is_some() => {
            if let Some(road) = &case.road {
                road_ui(ui, road, tools, actions);
            }
        }
        Pane::Sheet => sheet_ui(ui, case, true, tools, actions),
        Pane::Bay => bay_and_places_ui(ui, case, view, tools, actions),
        Pane::Log => log_ui(ui, case, tools, actions),
        Pane::Steps => steps_ui(ui, case, view, tools, actions),
        Pane::Tray => tray_ui(ui, case, [false, true], view, tools, actions),
    });
}

/// The keys that go to the words and to the instruments and let go of an end, wherever the focus is.
fn keys(ui: &Ui, case: &CaseView, is_wide: bool, actions: &mut Vec<Action>) {
    let pressed = |key| ui.input(|input| input.key_pressed(key));
    let show = |pane, is_out| {
        if is_wide { Action::Tray(TrayAction::Show(is_out)) } else { Action::ShowPane(pane) }
    };
    if case.tray.held.is_some() && pressed(Key::Escape) {
        actions.push(Action::Tray(TrayAction::Hold(None)));
    }
    if pressed(Key::F3) {
        actions.push(show(Pane::Steps, false));
        steps::come_here(ui.ctx());
    }
    if pressed(Key::F4) {
        actions.push(show(Pane::Tray, true));
        tray::come_here(ui.ctx());
    }
}

/// Whether the bay stands in the middle: with the words and the instruments too, which stand beside it.
const fn stands_in_the_middle(pane: Pane) -> bool {
    matches!(pane, Pane::Bay | Pane::Steps | Pane::Tray)
}

/// What stands on the right: the words of the next step, or the instruments.
fn right_picks_ui(ui: &mut Ui, case: &CaseView, tools: Tools<'_>, actions: &mut Vec<Action>) {
    ui.horizontal(|ui| {
        for (is_out, key) in [(false, "window-pane-steps"), (true, "window-pane-tray")] {
            if pick_ui(ui, case.tray.is_out == is_out, &tools.say(key)).clicked() {
                actions.push(Action::Tray(TrayAction::Show(is_out)));
            }
        }
    });
}

/// Time and money so far, and whether that is assessed.
fn standing(case: &CaseView, tools: Tools<'_>) -> String {
    if case.is_assessed {
        tools.words.say("window-till-assessed", &[("till", case.till.as_str().into())])
    } else {
        case.till.clone()
    }
}

/// What stands in the middle: the bay, or what was done so far with the job sheet beside it.
fn middle_picks_ui(ui: &mut Ui, case: &CaseView, tools: Tools<'_>, actions: &mut Vec<Action>) {
    let shows_bay = stands_in_the_middle(case.pane);
    ui.horizontal(|ui| {
        for (pane, key, is_shown) in [
            (Pane::Bay, "window-pane-bay", shows_bay),
            (Pane::Log, "window-pane-log-and-sheet", !shows_bay),
        ] {
            if pick_ui(ui, is_shown, &tools.say(key)).clicked() {
                actions.push(Action::ShowPane(pane));
            }
        }
    });
}

/// The bay where there is room for nothing else: the picture above its places, if it is high enough for both.
fn bay_and_places_ui(
    ui: &mut Ui,
    case: &CaseView,
    view: &WindowView<'_>,
    tools: Tools<'_>,
    actions: &mut Vec<Action>,
) {
    let height = ui.available_height();
    if height >= theme::PICTURE_FROM {
        let size = egui::vec2(ui.available_width(), height * 0.55);
        ui.allocate_ui(size, |ui| bay_ui(ui, case, view, tools, false, actions));
    }
    places_ui(ui, &case.bay, view, tools, actions);
}

fn panes_ui(ui: &mut Ui, case: &CaseView, tools: Tools<'_>, actions: &mut Vec<Action>) {
    Panel::top("panes").resizable(false).show_separator_line(false).frame(theme::card(ui)).show(
        ui,
        |ui| {
            ui.horizontal_wrapped(|ui| {
                for (pane, key) in [
                    (Pane::Bay, "window-pane-bay"),
                    (Pane::Sheet, "window-pane-sheet"),
                    (Pane::Log, "window-pane-log"),
                    (Pane::Steps, "window-pane-steps"),
                    (Pane::Tray, "window-pane-tray"),
                ] {
                    if pick_ui(ui, case.pane == pane, &tools.say(key)).clicked() {
                        actions.push(Action::ShowPane(pane));
                    }
                }
                if !is_low(ui) {
                    ui.add(egui::Label::new(standing(case, tools)).truncate());
                }
            });
        },
    );
}
