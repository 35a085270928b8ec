//! The ends of the tool in hand: where each is, and where it can go.

use super::letter::{SIDE, letter};
use super::{Hand, focus};
use crate::vehicle::spec::Id;
use crate::workshop::panels::Tools;
use crate::workshop::panels::frame::REFUSED_SIGN;
use crate::workshop::panels::pieces::{signed_ui, wide_button};
use crate::workshop::theme;
use crate::workshop::view::action::Action;
use crate::workshop::view::tray::{End, Named, TrayAction, WhichView};
use egui::{CursorIcon, RichText, Sense, Ui, Vec2};

/// A row for each end, and the places for the one in hand.
pub fn ends_ui(ui: &mut Ui, hand: Hand<'_>, actions: &mut Vec<Action>) {
    for end in hand.tray.tool.ends() {
        end_ui(ui, hand, *end, actions);
    }
    match (hand.tray.held, &hand.tray.which) {
        (_, Some(which)) if !hand.with_bay => places_on_ui(ui, which, hand.tools, actions),
        (Some(end), None) => places_ui(ui, hand, end, actions),
        // Where a picture is on the page it asks beside the thing which of its contacts is meant.
        _ => {
            ui.label(RichText::new(hand.tools.say("tray-end-hint")).small());
        }
    }
}

fn end_ui(ui: &mut Ui, hand: Hand<'_>, end: End, actions: &mut Vec<Action>) {
    let Hand { tray, tools, .. } = hand;
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
fn places_ui(ui: &mut Ui, hand: Hand<'_>, end: End, actions: &mut Vec<Action>) {
    let Some(view) = hand.tray.ends.get(&end) else { return };
    let name = hand.tools.say(end.key());
    ui.label(hand.tools.words.say("tray-choose", &[("end", name.into())]));
    put_ui(ui, end, &view.places, view.place(), hand.tools, actions);
}

/// The places on one thing.
pub fn places_on_ui(ui: &mut Ui, which: &WhichView, tools: Tools<'_>, actions: &mut Vec<Action>) {
    let (end, thing) = (tools.say(which.end.key()), which.thing.name.as_str());
    let arguments = [("end", end.into()), ("thing", thing.into())];
    ui.label(tools.words.say("tray-choose-on", &arguments));
    put_ui(ui, which.end, &which.places, None, tools, actions);
}

/// Places for an end, and the way to leave it where it is.
fn put_ui(
    ui: &mut Ui,
    end: End,
    places: &[Named],
    at: Option<&Named>,
    tools: Tools<'_>,
    actions: &mut Vec<Action>,
) {
    let letter = tools.say(end.letter_key());
    let text = |place: &Named| {
        let arguments = [("letter", letter.as_str().into()), ("place", place.name.as_str().into())];
        tools.words.say("tray-put", &arguments)
    };
    let put = |id: Id| Action::Tray(TrayAction::Put(end, id));
    list_ui(ui, (places, at), true, &text, &put, actions);
    if end.is_optional() && ui.button(tools.say("tray-lift")).clicked() {
        actions.push(Action::Tray(TrayAction::Lift(end)));
    }
    let leave = ui.button(tools.say("tray-choose-none"));
    if leave.clicked() {
        focus::go_on_from(ui, &leave);
        actions.push(Action::Tray(TrayAction::Hold(None)));
    }
}

/// Things with names as a list of which one is chosen; `is_next` where the focus comes to the first of them rather than
/// to what follows.
pub fn list_ui(
    ui: &mut Ui,
    (places, at): (&[Named], Option<&Named>),
    is_next: bool,
    text: &dyn Fn(&Named) -> String,
    choose: &dyn Fn(Id) -> Action,
    actions: &mut Vec<Action>,
) {
    for place in places {
        let response = ui.add(wide_button(ui, text(place)).selected(at == Some(place)));
        if is_next {
            focus::is_next(ui, &response);
        }
        if response.clicked() {
            focus::go_on_from(ui, &response);
            actions.push(choose(place.id.clone()));
        }
    }
}
