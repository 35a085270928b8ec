//! The ends of the tool in hand: where each is, and where it can go.

use super::focus;
use super::letter::{SIDE, letter};
use crate::workshop::panels::Tools;
use crate::workshop::panels::frame::REFUSED_SIGN;
use crate::workshop::panels::pieces::{signed_ui, wide_button};
use crate::workshop::theme;
use crate::workshop::view::action::Action;
use crate::workshop::view::tray::{End, Named, TrayAction, TrayView, WhichView};
use egui::{CursorIcon, RichText, Sense, Ui, Vec2};

/// A row for each end, and the places for the one in hand; `is_alone` where no picture asks beside a thing which of its
/// contacts is meant.
pub fn ends_ui(
    ui: &mut Ui,
    tray: &TrayView,
    is_alone: bool,
    tools: Tools<'_>,
    actions: &mut Vec<Action>,
) {
    for end in tray.tool.ends() {
        end_ui(ui, tray, *end, tools, actions);
    }
    match (tray.held, &tray.which) {
        (_, Some(which)) if is_alone => places_on_ui(ui, which, tools, actions),
        (Some(end), None) => places_ui(ui, tray, end, tools, actions),
        _ => {
            ui.label(RichText::new(tools.say("tray-end-hint")).small());
        }
    }
}

fn end_ui(ui: &mut Ui, tray: &TrayView, end: End, tools: Tools<'_>, actions: &mut Vec<Action>) {
    let Some(view) = tray.ends.get(&end) else { return };
    let name = tools.say(end.key());
    let text = match view.place() {
        Some(place) => tools.words.say(
            "tray-end-at",
            &[("end", name.as_str().into()), ("place", place.name.as_str().into())],
        ),
        None => tools.words.say("tray-end-nowhere", &[("end", name.as_str().into())]),
    };
    let is_held = tray.held == Some(end);
    ui.horizontal(|ui| {
        let (rect, handle) = ui.allocate_exact_size(Vec2::splat(SIDE), Sense::drag());
        letter(ui, ui.painter(), rect.center(), end, &tools.say(end.letter_key()));
        let button = wide_button(ui, &text).selected(is_held).sense(Sense::click_and_drag());
        let row = ui.add(button);
        for response in [&handle, &row] {
            response.dnd_set_drag_payload(end);
        }
        if handle.hovered() {
            ui.set_cursor_icon(CursorIcon::Grab);
        }
        if row.clicked() {
            focus::go_on_from(ui, &row);
            actions.push(Action::Tray(TrayAction::Hold((!is_held).then_some(end))));
        }
    });
    if let Some(blocked) = &view.blocked {
        signed_ui(ui, REFUSED_SIGN, blocked, theme::palette(ui).ink);
    }
}

/// The places for the end in hand.
fn places_ui(ui: &mut Ui, tray: &TrayView, end: End, tools: Tools<'_>, actions: &mut Vec<Action>) {
    let Some(view) = tray.ends.get(&end) else { return };
    let name = tools.say(end.key());
    ui.label(tools.words.say("tray-choose", &[("end", name.into())]));
    list_ui(ui, end, &view.places, view.place(), tools, actions);
}

/// The places on one thing.
pub fn places_on_ui(ui: &mut Ui, which: &WhichView, tools: Tools<'_>, actions: &mut Vec<Action>) {
    let (end, thing) = (tools.say(which.end.key()), which.thing.name.as_str());
    let arguments = [("end", end.into()), ("thing", thing.into())];
    ui.label(tools.words.say("tray-choose-on", &arguments));
    list_ui(ui, which.end, &which.places, None, tools, actions);
}

fn list_ui(
    ui: &mut Ui,
    end: End,
    places: &[Named],
    at: Option<&Named>,
    tools: Tools<'_>,
    actions: &mut Vec<Action>,
) {
    let letter = tools.say(end.letter_key());
    for place in places {
        let arguments = [("letter", letter.as_str().into()), ("place", place.name.as_str().into())];
        let text = tools.words.say("tray-put", &arguments);
        let response = ui.add(wide_button(ui, &text).selected(at == Some(place)));
        focus::is_next(ui, &response);
        if response.clicked() {
            focus::go_on_from(ui, &response);
            actions.push(Action::Tray(TrayAction::Put(end, place.id.clone())));
        }
    }
    let leave = ui.button(tools.say("tray-choose-none"));
    if leave.clicked() {
        focus::go_on_from(ui, &leave);
        actions.push(Action::Tray(TrayAction::Hold(None)));
    }
}
