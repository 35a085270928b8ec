//! The picture of the bay: what is under the pointer says its name, a click chooses it, drag and wheel move the camera.

use super::Tools;
use super::leads;
use crate::vehicle::spec::Id;
use crate::workshop::bay::camera::Viewpoint;
use crate::workshop::bay::outline::{Outline, outline};
use crate::workshop::bay::pick::{first_met, pose_of};
use crate::workshop::theme;
use crate::workshop::view::action::Action;
use crate::workshop::view::bay::{BayAction, BayView};
use crate::workshop::view::tray::{End, TrayAction, TrayView};
use bevy::math::vec2;
use egui::{
    Align2, EventFilter, Image, Key, PointerButton, Pos2, Rect, Response, Sense, Shape, Stroke,
    TextStyle, Ui, Vec2, WidgetInfo, WidgetType, load,
};

/// How far a key turns the camera, in shares of the picture's height.
const KEY_TURN: f32 = 0.06;
/// How much nearer a key brings the camera.
const KEY_NEARER: f32 = 1.15;
/// How far the wheel turns for a factor of e [points].
const WHEEL: f32 = 400.0;

/// The picture in a place of a size, with the ends of the tool in hand where there is a tray; what is under the pointer.
pub fn bay_picture_ui(
    ui: &mut Ui,
    bay: &BayView,
    tray: Option<&TrayView>,
    size: Vec2,
    tools: Tools<'_>,
    actions: &mut Vec<Action>,
) -> Option<Id> {
    let (rect, response) = ui.allocate_exact_size(size, Sense::click_and_drag());
    let name = tools.say("bay-picture");
    response.widget_info(|| WidgetInfo::labeled(WidgetType::Image, ui.is_enabled(), &name));
    if let Some(picture) = tools.picture {
        let texture = load::SizedTexture::new(picture, size);
        Image::from_texture(texture).paint_at(ui, rect);
    }
    let ratio = rect.width() / rect.height().max(1.0);
    let carried = tray.and_then(|tray| leads::on_the_way(ui, tray, &response));
    // While an end is dragged the picture is not hovered, and yet it lies under the pointer.
    let pointer = if carried.is_some() {
        ui.input(|input| input.pointer.latest_pos())
    } else {
        response.hover_pos()
    };
    let under = pointer.filter(|_| !response.dragged()).and_then(|at| {
        let share = (at - rect.min) / rect.size();
        first_met(&bay.model, &bay.known, bay.orbit.ray(vec2(share.x, share.y), ratio)).cloned()
    });
    let is_dropped = tray.is_some() && leads::drop_ui(&response, under.as_ref(), actions);
    if !is_dropped {
        let held = tray.and_then(|tray| tray.held);
        hand(ui, &response, rect, under.as_ref(), held, actions);
    }
    keys(ui, &response, actions);
    let chosen = bay.card.as_ref().map(|card| &card.id);
    if let Some(id) = chosen {
        mark(ui, bay, id, rect, true);
    }
    if let Some(id) = under.as_ref().filter(|id| Some(*id) != chosen) {
        mark(ui, bay, id, rect, false);
    }
    if let Some(tray) = tray {
        leads::leads_ui(ui, bay, tray, rect, tools);
        if let Some(which) = &tray.which {
            leads::which_ui(ui, bay, which, rect, tools, actions);
        }
    }
    if response.has_focus() {
        let stroke = Stroke::new(3.0, theme::palette(ui).accent);
        ui.painter().rect_stroke(rect, 0.0, stroke, egui::StrokeKind::Inside);
    }
    under
}

/// Mouse and touch.
fn hand(
    ui: &Ui,
    response: &Response,
    rect: Rect,
    under: Option<&Id>,
    held: Option<End>,
    actions: &mut Vec<Action>,
) {
    let share = |drag: Vec2| vec2(drag.x, drag.y) / rect.height().max(1.0);
    let drag = response.drag_delta();
    if drag != Vec2::ZERO {
        let shift = response.dragged_by(PointerButton::Secondary)
            || response.dragged_by(PointerButton::Middle)
            || ui.input(|input| input.modifiers.shift);
        let drag = share(drag);
        let wanted = if shift { BayAction::Shift(drag) } else { BayAction::Turn(drag) };
        actions.push(Action::Bay(wanted));
    }
    if response.hovered() {
        let (wheel, pinch) = ui.input(|input| (input.smooth_scroll_delta.y, input.zoom_delta()));
        let factor = (wheel / WHEEL).exp() * pinch;
        if (factor - 1.0).abs() > 1e-3 {
            actions.push(Action::Bay(BayAction::Nearer(factor)));
        }
    }
    if response.clicked()
        && let Some(end) = held
    {
        if let Some(thing) = under {
            actions.push(Action::Tray(TrayAction::PutOn(end, thing.clone())));
        }
    } else if response.clicked() {
        response.request_focus();
        actions.push(Action::Bay(BayAction::Choose(under.cloned())));
    }
    if response.double_clicked()
        && held.is_none()
        && let Some(id) = under
    {
        actions.push(Action::Bay(BayAction::GoTo(id.clone())));
    }
}

/// Keys, while the picture has the focus: arrows turn, plus and minus come nearer and go back, digits are viewpoints.
fn keys(ui: &Ui, response: &Response, actions: &mut Vec<Action>) {
    if !response.has_focus() {
        return;
    }
    let filter =
        EventFilter { horizontal_arrows: true, vertical_arrows: true, ..EventFilter::default() };
    ui.memory_mut(|memory| memory.set_focus_lock_filter(response.id, filter));
    let pressed = |key| ui.input(|input| input.key_pressed(key));
    for (key, x, y) in [
        (Key::ArrowLeft, -KEY_TURN, 0.0),
        (Key::ArrowRight, KEY_TURN, 0.0),
        (Key::ArrowUp, 0.0, -KEY_TURN),
        (Key::ArrowDown, 0.0, KEY_TURN),
    ] {
        if pressed(key) {
            actions.push(Action::Bay(BayAction::Turn(vec2(x, y))));
        }
    }
    if pressed(Key::Plus) || pressed(Key::Equals) {
        actions.push(Action::Bay(BayAction::Nearer(KEY_NEARER)));
    }
    if pressed(Key::Minus) {
        actions.push(Action::Bay(BayAction::Nearer(1.0 / KEY_NEARER)));
    }
    if pressed(Key::Home) || pressed(Key::Num0) {
        actions.push(Action::Bay(BayAction::View(Viewpoint::Whole)));
    }
    let digits = [Key::Num1, Key::Num2, Key::Num3, Key::Num4, Key::Num5, Key::Num6];
    for (key, viewpoint) in digits.into_iter().zip(Viewpoint::ALL) {
        if pressed(key) {
            actions.push(Action::Bay(BayAction::View(viewpoint)));
        }
    }
}

/// A line around a thing and its name beside it; double for the chosen one, so that colour is not needed to tell.
fn mark(ui: &Ui, bay: &BayView, id: &Id, rect: Rect, is_chosen: bool) {
    let Some(thing) = bay.model.thing(id) else { return };
    let ratio = rect.width() / rect.height().max(1.0);
    let pose = pose_of(thing, &bay.known);
    let Some(found) = outline(thing, pose, &bay.known, bay.orbit, ratio) else { return };
    let palette = theme::palette(ui);
    let painter = ui.painter().with_clip_rect(rect);
    let place = |point: bevy::math::Vec2| rect.min + egui::vec2(point.x, point.y) * rect.size();
    let (points, is_closed) = match &found {
        Outline::Around(points) => (points, true),
        Outline::Along(points) => (points, false),
    };
    let points: Vec<Pos2> = points.iter().copied().map(place).collect();
    let line = |stroke: Stroke| {
        if is_closed {
            Shape::closed_line(points.clone(), stroke)
        } else {
            Shape::line(points.clone(), stroke)
        }
    };
    let (outer, inner) = if is_chosen { (6.0, 2.5) } else { (3.5, 1.5) };
    painter.add(line(Stroke::new(outer, palette.card)));
    painter.add(line(Stroke::new(inner, palette.accent)));
    let Some(top) = points.iter().copied().min_by(|one, other| one.y.total_cmp(&other.y)) else {
        return;
    };
    let name = bay.place(id).map_or("", |place| place.name.as_str());
    let font = TextStyle::Body.resolve(ui.style());
    let text = painter.layout_no_wrap(name.to_owned(), font, palette.ink);
    let margin = egui::vec2(8.0, 4.0);
    let room = rect.shrink(4.0);
    let whole = text.size() + margin * 2.0;
    let wanted = top - egui::vec2(whole.x / 2.0, whole.y + 8.0);
    let corner = Pos2::new(
        wanted.x.clamp(room.left(), (room.right() - whole.x).max(room.left())),
        wanted.y.clamp(room.top(), (room.bottom() - whole.y).max(room.top())),
    );
    let label = Rect::from_min_size(corner, whole);
    painter.line_segment([label.center_bottom(), top], Stroke::new(1.5, palette.accent));
    painter.rect_filled(label, 2.0, palette.card);
    let stroke = Stroke::new(if is_chosen { 2.0 } else { 1.0 }, palette.accent);
    painter.rect_stroke(label, 2.0, stroke, egui::StrokeKind::Inside);
    let at = Align2::LEFT_TOP.anchor_size(label.min + margin, text.size()).min;
    painter.galley(at, text, palette.ink);
}

/// Asks for a picture of the pixels that a place has.
pub fn ask_for_size(ui: &Ui, size: Vec2, now: [u32; 2], actions: &mut Vec<Action>) {
    let wanted = pixels(size, ui.ctx().pixels_per_point());
    if wanted != now {
        actions.push(Action::SizePicture(wanted));
    }
}

/// The pixels of a place, at least a few.
#[expect(
    clippy::cast_sign_loss,
    clippy::cast_possible_truncation,
    reason = "it was just brought into range"
)]
fn pixels(size: Vec2, per_point: f32) -> [u32; 2] {
    [size.x, size.y].map(|points| (points * per_point).round().clamp(16.0, 8_192.0) as u32)
}
