//! The ends of the tool in hand in the picture of the bay: where they are, how they are dragged there and dropped.

use super::Tools;
use super::tray::letter;
use crate::vehicle::spec::Id;
use crate::workshop::bay::pick::pose_of;
use crate::workshop::theme;
use crate::workshop::view::action::Action;
use crate::workshop::view::bay::BayView;
use crate::workshop::view::tray::{End, TrayAction, TrayView, WhichView};
use egui::{
    Area, CursorIcon, DragAndDrop, Frame, LayerId, Order, Pos2, Rect, Response, Sense, Stroke, Ui,
    Vec2, vec2,
};

/// How far a letter stands off the point that its end touches [points].
const STEM: Vec2 = vec2(0.0, -30.0);
/// Sideways distance between letters whose ends touch the same point [points].
const BESIDE: f32 = 28.0;

/// The end that is on its way: dragged, or in hand.
pub fn on_the_way(ui: &Ui, tray: &TrayView, response: &Response) -> Option<End> {
    let dragged = DragAndDrop::payload::<End>(ui.ctx()).map(|end| *end);
    if response.contains_pointer() { dragged.or(tray.held) } else { None }
}

/// Drops a dragged end on what is under the pointer; whether one was dropped.
pub fn drop_ui(response: &Response, under: Option<&Id>, actions: &mut Vec<Action>) -> bool {
    let Some(end) = response.dnd_release_payload::<End>() else { return false };
    if let Some(thing) = under {
        actions.push(Action::Tray(TrayAction::PutOn(*end, thing.clone())));
    }
    true
}

/// Each end of the tool in hand that is somewhere: a point, a stem, and its letter, by which it can be dragged on.
pub fn leads_ui(ui: &Ui, bay: &BayView, tray: &TrayView, rect: Rect, tools: Tools<'_>) {
    let painter = ui.painter().with_clip_rect(rect);
    let mut taken: Vec<&Id> = Vec::new();
    for end in tray.tool.ends() {
        let Some(place) = tray.ends.get(end).and_then(|view| view.place()) else { continue };
        let Some(at) = seen_at(bay, &place.id, rect) else { continue };
        let beside = taken.iter().filter(|id| **id == &place.id).count() as f32;
        taken.push(&place.id);
        let middle = at + STEM + vec2(beside * BESIDE, 0.0);
        let square = Rect::from_center_size(middle, Vec2::splat(theme::LEAST_HANDLE));
        let id = ui.id().with(("lead", *end));
        let handle = ui.interact(square.intersect(rect), id, Sense::drag());
        handle.dnd_set_drag_payload(*end);
        let [fill, ink] = theme::end_colors(*end);
        painter.line_segment([middle, at], Stroke::new(6.0, ink));
        painter.line_segment([middle, at], Stroke::new(3.0, fill));
        painter.circle(at, 4.5, fill, Stroke::new(2.0, ink));
        letter(ui, &painter, middle, *end, &tools.say(end.letter_key()));
    }
}

/// Where a thing is in the picture; nothing where it lies outside.
fn seen_at(bay: &BayView, id: &Id, rect: Rect) -> Option<Pos2> {
    let thing = bay.model.thing(id)?;
    let ratio = rect.width() / rect.height().max(1.0);
    let pose = pose_of(thing, &bay.known);
    // The middle of what is long and thin lies beside it.
    let middle = thing.line.get(thing.line.len() / 2).copied();
    let middle = middle.map_or_else(|| thing.middle(pose), |point| pose.point(point));
    let share = bay.orbit.seen(middle, ratio)?;
    let at = rect.min + vec2(share.x, share.y) * rect.size();
    rect.contains(at).then_some(at)
}

/// The end under the pointer while it is dragged, with its lead back to where it was taken.
pub fn dragged_ui(ui: &Ui, tools: Tools<'_>) {
    let Some(end) = DragAndDrop::payload::<End>(ui.ctx()) else { return };
    let Some((at, from)) =
        ui.input(|input| Some((input.pointer.interact_pos()?, input.pointer.press_origin()?)))
    else {
        return;
    };
    let painter = ui.ctx().layer_painter(LayerId::new(Order::Tooltip, egui::Id::new("lead")));
    let [fill, ink] = theme::end_colors(*end);
    for (width, color) in [(7.0, ink), (4.0, fill)] {
        painter.line_segment([from, at], Stroke::new(width, color));
    }
    letter(ui, &painter, at, *end, &tools.say(end.letter_key()));
    ui.set_cursor_icon(CursorIcon::Grabbing);
}

/// Which of a thing's contacts, asked beside the thing.
pub fn which_ui(
    ui: &Ui,
    bay: &BayView,
    which: &WhichView,
    rect: Rect,
    tools: Tools<'_>,
    actions: &mut Vec<Action>,
) {
    let at = seen_at(bay, &which.thing.id, rect).unwrap_or_else(|| rect.center());
    let area = Area::new(egui::Id::new("which contact")).order(Order::Foreground);
    area.fixed_pos(at + vec2(16.0, 16.0)).constrain_to(rect).show(ui.ctx(), |ui| {
        Frame::popup(ui.style()).show(ui, |ui| {
            ui.set_max_width(theme::CHOICE_WIDTH.min(rect.width() - 24.0));
            super::tray::places_on_ui(ui, which, tools, actions);
        });
    });
}
