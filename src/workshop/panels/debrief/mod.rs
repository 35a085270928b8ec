//! What came of a session: marks on one side of the page, the session once more on the other.

mod course;
mod marks;
mod moment;
mod others;
mod steps_side;
mod timeline;
mod transport;

use super::Tools;
use super::frame::{busy_ui, head_panel_ui, tried_ui, way_key};
use super::pieces::{column, page_keys, pick_ui};
use crate::workshop::theme;
use crate::workshop::view::WindowView;
use crate::workshop::view::action::Action;
use crate::workshop::view::debrief::{DebriefAction, DebriefView, Side};
use egui::{CentralPanel, Panel, RichText, ScrollArea, Ui};

/// The debrief, or how far it is.
pub fn debrief_ui(
    ui: &mut Ui,
    debrief: &DebriefView,
    view: &WindowView<'_>,
    tools: Tools<'_>,
    actions: &mut Vec<Action>,
) {
    let way = (way_key(view), Action::ToFront);
    head_panel_ui(ui, &debrief.title, &tools.say("debrief-title"), way, view, tools, actions);
    tried_ui(ui, view);
    if debrief.look_back.is_some() {
        sides_ui(ui, debrief.side, tools, actions);
    }
    if let (Side::Steps, Some(look_back), Some(parts)) =
        (debrief.side, &debrief.look_back, &debrief.parts)
    {
        steps_side::steps_side_ui(ui, look_back, &parts.steps, view, tools, actions);
        return;
    }
    CentralPanel::default().frame(theme::card(ui)).show(ui, |ui| {
        ScrollArea::vertical().auto_shrink(false).show(ui, |ui| {
            page_keys(ui);
            column(ui, theme::PAGE_WIDTH, |ui| {
                if let Some(busy) = &view.busy {
                    busy_ui(ui, busy);
                }
                if let Some(parts) = &debrief.parts {
                    marks::marks_ui(ui, parts, tools);
                }
                ui.add_space(theme::WIDE_GAP);
                let kept = [("path", debrief.kept_at.as_str().into())];
                ui.label(RichText::new(tools.words.say("window-kept-at", &kept)).small());
            });
        });
    });
}

/// Which side of the page is up.
fn sides_ui(ui: &mut Ui, side: Side, tools: Tools<'_>, actions: &mut Vec<Action>) {
    let frame = theme::card(ui);
    Panel::top("sides").resizable(false).show_separator_line(false).frame(frame).show(ui, |ui| {
        ui.horizontal_wrapped(|ui| {
            for (one, key) in
                [(Side::Marks, "window-side-marks"), (Side::Steps, "window-side-steps")]
            {
                if pick_ui(ui, side == one, &tools.say(key)).clicked() {
                    actions.push(Action::Debrief(DebriefAction::Show(one)));
                }
            }
        });
    });
}
