//! Small pieces that every page is made of.

use crate::workshop::theme;
use egui::text::LayoutJob;
use egui::{
    Atom, Button, Color32, FontSelection, Frame, Image, Key, Label, Margin, Rect, Response,
    RichText, Sense, Stroke, TextFormat, TextStyle, TextureId, Ui, Vec2, WidgetInfo, WidgetText,
    WidgetType, load, vec2,
};

/// A heading with a rule under it.
pub fn heading_ui(ui: &mut Ui, text: &str) {
    let color = theme::palette(ui).accent;
    let response = ui.heading(text);
    let rect = response.rect;
    let right = ui.max_rect().right();
    ui.painter().hline(rect.left()..=right, rect.bottom() + 2.0, Stroke::new(2.0, color));
    ui.add_space(theme::GAP);
}

/// A button of which one in a row is chosen; the chosen one is underlined as well as tinted.
pub fn pick_ui(ui: &mut Ui, chosen: bool, text: &str) -> Response {
    let response = ui.add(Button::selectable(chosen, text).frame_when_inactive(true));
    if chosen {
        let color = theme::palette(ui).accent;
        let rect = response.rect;
        ui.painter().hline(rect.x_range(), rect.bottom() - 1.5, Stroke::new(3.0, color));
    }
    response
}

/// A button as wide as its column: typed words, and under them what they mean.
pub fn words_ui(ui: &mut Ui, words: &str, meaning: Option<&str>) -> Response {
    let palette = theme::palette(ui);
    let mut job = LayoutJob::default();
    let format = |style: TextStyle, color: Color32| TextFormat {
        font_id: FontSelection::from(style).resolve(ui.style()),
        color,
        ..TextFormat::default()
    };
    job.append(words, 0.0, format(TextStyle::Monospace, palette.ink));
    if let Some(meaning) = meaning {
        job.append("\n", 0.0, format(TextStyle::Small, palette.ink));
        job.append(meaning, 0.0, format(TextStyle::Small, palette.ink));
    }
    ui.add(wide_button(ui, job))
}

/// A button as wide as its column, its text on the left.
pub fn wide_button(ui: &Ui, text: impl Into<WidgetText>) -> Button<'static> {
    let room = Atom::grow();
    Button::new((text.into(), room)).wrap().min_size(vec2(ui.available_width(), 0.0))
}

/// A button as wide as its column: a title, and under it a remark; one of several that can be chosen, where `chosen` says
/// whether it is.
pub fn titled_ui(ui: &mut Ui, chosen: Option<bool>, title: &str, remark: &str) -> Response {
    let ink = theme::palette(ui).ink;
    let mut job = LayoutJob::default();
    let format = |style: TextStyle| TextFormat {
        font_id: FontSelection::from(style).resolve(ui.style()),
        color: ink,
        ..TextFormat::default()
    };
    job.append(title, 0.0, format(TextStyle::Body));
    job.append("\n", 0.0, format(TextStyle::Small));
    job.append(remark, 0.0, format(TextStyle::Small));
    let is_chosen = chosen == Some(true);
    let button = wide_button(ui, job).selected(is_chosen).frame_when_inactive(true);
    let response = ui.add(button);
    if is_chosen {
        let rect = response.rect;
        let stroke = Stroke::new(3.0, theme::palette(ui).accent);
        ui.painter().hline(rect.x_range(), rect.bottom() - 1.5, stroke);
    }
    response
}

/// A bar that is filled to a share, and known by its name.
pub fn bar_ui(ui: &mut Ui, share: f32, width: f32, name: &str) -> Response {
    let palette = theme::palette(ui);
    let (rect, response) = ui.allocate_exact_size(vec2(width, theme::BAR_HEIGHT), Sense::hover());
    response.widget_info(|| {
        let mut info = WidgetInfo::labeled(WidgetType::ProgressIndicator, ui.is_enabled(), name);
        info.value = Some(f64::from((share * 100.0).round()));
        info
    });
    let painter = ui.painter();
    painter.rect_filled(rect, 0.0, palette.field);
    let filled =
        Rect::from_min_size(rect.min, vec2(rect.width() * share.clamp(0.0, 1.0), rect.height()));
    painter.rect_filled(filled, 0.0, palette.accent);
    painter.rect_stroke(rect, 0.0, Stroke::new(1.0, palette.faint), egui::StrokeKind::Inside);
    response
}

/// A sign and a text on a card of their own.
pub fn note_ui(ui: &mut Ui, sign: &str, text: &str, color: Color32, card: Color32) {
    theme::note(card).show(ui, |ui| {
        ui.take_available_width();
        signed_ui(ui, sign, text, color);
    });
}

/// A sign with a text beside it, which keeps its own margin when it wraps.
pub fn signed_ui(ui: &mut Ui, sign: &str, text: &str, color: Color32) {
    ui.horizontal_top(|ui| {
        ui.spacing_mut().item_spacing.x = 8.0;
        ui.add(Label::new(RichText::new(sign).color(color)).selectable(false));
        ui.add(Label::new(RichText::new(text).color(color)).wrap());
    });
}

/// The picture of the bay, filling a place.
pub fn picture_ui(ui: &mut Ui, picture: TextureId, size: Vec2, name: &str) {
    let texture = load::SizedTexture::new(picture, size);
    ui.add(Image::from_texture(texture).fit_to_exact_size(size).alt_text(name));
}

/// Lets the keys for whole pages turn what scrolls, wherever the focus is.
pub fn page_keys(ui: &Ui) {
    let page = ui.clip_rect().height() * 0.85;
    let pages = ui.input(|input| {
        f32::from(u8::from(input.key_pressed(Key::PageUp)))
            - f32::from(u8::from(input.key_pressed(Key::PageDown)))
    });
    if pages != 0.0 {
        ui.scroll_with_delta(vec2(0.0, pages * page));
    }
}

/// A column of a page in the middle of the window.
#[expect(clippy::cast_possible_truncation, reason = "it was just brought into range")]
pub fn column<T>(ui: &mut Ui, width: f32, inside: impl FnOnce(&mut Ui) -> T) -> T {
    let width = width.min(ui.available_width());
    let side = ((ui.available_width() - width) / 2.0).clamp(0.0, f32::from(i8::MAX)) as i8;
    Frame::new()
        .inner_margin(Margin::symmetric(side, 0))
        .show(ui, |ui| {
            ui.set_max_width(width);
            inside(ui)
        })
        .inner
}

/// Whether the window has so few lines that what is worked with needs all of them.
pub fn is_low(ui: &Ui) -> bool {
    ui.ctx().content_rect().height() < theme::LOW_BELOW
}
