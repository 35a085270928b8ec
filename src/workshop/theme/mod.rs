//! Every distance and style of the window; its colours stand in [`palette`], so that contrast is checked in one place.
//!
//! The look is that of a job card on a bench: ink on a card, a ruled line under a heading. What a
//! colour says is always said by a word or a sign as well.

mod palette;

pub use palette::{Palette, end_colors, palette};

use super::bay::piece::Finish;
use super::view::settings::{Contrast, Settings, Shade};
use egui::{Color32, CornerRadius, FontFamily, FontId, Frame, Margin, Stroke, TextStyle, vec2};

/// Space between things that belong together [points].
pub const GAP: f32 = 6.0;
/// Space between groups of things [points].
pub const WIDE_GAP: f32 = 14.0;
/// Space between a card's edge and what is on it [points].
pub const MARGIN: i8 = 10;
/// Space inside a field that can be written into [points].
pub const FIELD_MARGIN: Margin = Margin::symmetric(6, 4);
/// Space around the text of the front page [points].
pub const PAGE_MARGIN: i8 = 24;
/// Width from which job sheet, log and steps stand beside each other [points].
pub const THREE_COLUMNS_FROM: f32 = 960.0;
/// Height below which what is worked with gets the lines of what can stand elsewhere: that of 720 pixels at 170 %.
pub const LOW_BELOW: f32 = 424.0;
/// Width of the job sheet beside the log [points].
pub const SHEET_WIDTH: f32 = 300.0;
/// Width of the step that is looked at, beside the bay [points].
pub const MOMENT_WIDTH: f32 = 380.0;
/// Height of the plot of belief [points].
pub const PLOT_HEIGHT: f32 = 170.0;
/// Width of the steps beside the log [points].
pub const STEPS_WIDTH: f32 = 330.0;
/// Height of the meter's display [points].
pub const DISPLAY_HEIGHT: f32 = 104.0;
/// Height of the test lamp, of the gauge's dial, of the dipstick and of a scope's course [points].
pub const LAMP_HEIGHT: f32 = 76.0;
pub const DIAL_HEIGHT: f32 = 190.0;
pub const STICK_HEIGHT: f32 = 76.0;
pub const COURSE_HEIGHT: f32 = 230.0;
/// Side of what the pointer can take hold of in the picture [points].
pub const LEAST_HANDLE: f32 = 28.0;
/// Width of a choice beside a thing in the picture [points].
pub const CHOICE_WIDTH: f32 = 280.0;
/// Width of a column of running text [points].
pub const TEXT_WIDTH: f32 = 560.0;
/// Width of a page that is read from top to bottom [points].
pub const PAGE_WIDTH: f32 = 900.0;
/// Width of a name beside a bar [points].
pub const NAME_WIDTH: f32 = 170.0;
/// Width of a bar [points].
pub const BAR_WIDTH: f32 = 220.0;
/// Height of a bar [points].
pub const BAR_HEIGHT: f32 = 12.0;
/// Most height of the list of scenarios [points]: four of them and the beginning of a fifth.
pub const SCENARIOS_HEIGHT: f32 = 200.0;
/// Width of the field for a scenario file [points].
pub const FILE_WIDTH: f32 = 220.0;
/// Width of the seed field [points].
pub const SEED_WIDTH: f32 = 150.0;
/// Height of what the last step brought, under the picture of the bay [points].
pub const LAST_STEP_HEIGHT: f32 = 84.0;
/// Least height of the picture of the bay [points].
pub const LEAST_PICTURE: f32 = 80.0;
/// Height of a page from which the picture stands above the list of places [points].
pub const PICTURE_FROM: f32 = 300.0;
/// Width that is left beside the places and the steps from which the log stands beside the bay [points].
pub const LOG_BESIDE_FROM: f32 = 1_000.0;
/// Width of the log there [points].
pub const LOG_WIDTH: f32 = 420.0;
/// Width of a digit's button [points].
pub const DIGIT_WIDTH: f32 = 40.0;

/// Width of the forms beside the text of a case [points].
pub const FORMS_WIDTH: f32 = 440.0;
/// Width from which fields stand beside each other [points].
pub const FIELDS_BESIDE_FROM: f32 = 330.0;
/// Height of the list of problems under both [points].
pub const PROBLEMS_HEIGHT: f32 = 118.0;
/// Least rows of the text [lines].
pub const TEXT_ROWS: usize = 16;

/// Width and height of a sound's trace [points].
pub const TRACE_WIDTH: f32 = 320.0;
/// See [`TRACE_WIDTH`].
pub const TRACE_HEIGHT: f32 = 44.0;

/// Size of a heading, a title, a text, a typed word and a small remark [points].
const SIZES: [f32; 5] = [17.0, 32.0, 15.0, 14.0, 13.0];
/// The style of the title on the front page.
pub const TITLE: &str = "title";

/// Back of the scene [share of red, green and blue].
pub const SCENE_BACK: [f32; 3] = [0.865, 0.855, 0.815];
/// The same when the hall is dimmed.
pub const SCENE_BACK_DARK: [f32; 3] = [0.15, 0.165, 0.155];
/// Sky, horizon and ground that bright parts of the scene reflect.
pub const SCENE_AROUND: [[f32; 3]; 3] =
    [[0.98, 0.98, 0.96], [0.72, 0.72, 0.70], [0.42, 0.41, 0.38]];
/// The lines of the drawing.
pub const SCENE_LINE: [f32; 3] = [0.07, 0.085, 0.08];

/// How a surface of the bay looks.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Surface {
    /// Colour [share of red, green and blue].
    pub color: [f32; 3],
    /// Share of metal, 0 to 1.
    pub metal: f32,
    /// How rough it is to the eye, 0 to 1.
    pub rough: f32,
}

/// The look of a finish.
#[must_use]
pub const fn surface(finish: Finish) -> Surface {
    let (color, metal, rough) = match finish {
        Finish::Casting => ([0.70, 0.71, 0.71], 0.55, 0.55),
        Finish::Steel => ([0.78, 0.79, 0.81], 0.75, 0.38),
        Finish::HeatSheet => ([0.80, 0.77, 0.69], 0.60, 0.45),
        Finish::Iron => ([0.35, 0.30, 0.27], 0.30, 0.75),
        Finish::BlackPlastic => ([0.135, 0.14, 0.145], 0.0, 0.55),
        Finish::GreyPlastic => ([0.36, 0.38, 0.39], 0.0, 0.60),
        Finish::MilkyPlastic => ([0.90, 0.89, 0.83], 0.0, 0.50),
        Finish::Rubber => ([0.095, 0.095, 0.10], 0.0, 0.80),
        Finish::Body => ([0.34, 0.49, 0.46], 0.10, 0.42),
        Finish::Underside => ([0.20, 0.215, 0.22], 0.0, 0.85),
        Finish::Yellow => ([0.93, 0.70, 0.10], 0.0, 0.50),
        Finish::Blue => ([0.15, 0.36, 0.68], 0.0, 0.50),
        Finish::Red => ([0.76, 0.14, 0.10], 0.0, 0.50),
        Finish::Green => ([0.10, 0.43, 0.29], 0.0, 0.45),
        Finish::Violet => ([0.47, 0.28, 0.58], 0.0, 0.50),
        Finish::White => ([0.94, 0.93, 0.89], 0.0, 0.60),
        Finish::Brown => ([0.43, 0.26, 0.14], 0.0, 0.55),
        Finish::Contact => ([0.84, 0.81, 0.72], 0.70, 0.35),
        Finish::Seal => ([0.09, 0.12, 0.11], 0.0, 0.45),
        Finish::FlatSeal => ([0.30, 0.12, 0.08], 0.0, 0.60),
        Finish::Screen => ([0.74, 0.67, 0.45], 0.50, 0.50),
        Finish::Sludge => ([0.085, 0.060, 0.035], 0.0, 0.30),
        Finish::Verdigris => ([0.18, 0.66, 0.49], 0.0, 0.90),
        Finish::Copper => ([0.80, 0.45, 0.24], 0.60, 0.40),
        Finish::Burnt => ([0.05, 0.04, 0.04], 0.0, 0.90),
        Finish::Wood => ([0.71, 0.56, 0.38], 0.0, 0.75),
        Finish::Cloth => ([0.68, 0.24, 0.20], 0.0, 0.95),
        Finish::Glow => ([1.0, 0.96, 0.82], 0.0, 0.60),
        Finish::Floor => ([0.83, 0.82, 0.78], 0.0, 0.90),
    };
    Surface { color, metal, rough }
}

/// A card on the bench.
pub fn card(ui: &egui::Ui) -> Frame {
    Frame::new().fill(palette(ui).card).inner_margin(Margin::same(MARGIN))
}

/// A card that stands on another.
pub fn note(fill: Color32) -> Frame {
    Frame::new()
        .fill(fill)
        .inner_margin(Margin::symmetric(8, 4))
        .corner_radius(CornerRadius::same(2))
}

/// Gives a context both shades of a contrast.
pub fn dress(ctx: &egui::Context, contrast: Contrast) {
    for (theme, shade) in [(egui::Theme::Light, Shade::Light), (egui::Theme::Dark, Shade::Dark)] {
        ctx.set_style_of(theme, style(theme, Palette::of(shade, contrast)));
    }
}

/// Shows a context as the settings say.
pub fn set(ctx: &egui::Context, settings: Settings) {
    let zoom = f32::from(settings.text.percent()) / 100.0;
    if (ctx.zoom_factor() - zoom).abs() > f32::EPSILON {
        ctx.set_zoom_factor(zoom);
    }
    let wanted = match settings.shade {
        Shade::Light => egui::Theme::Light,
        Shade::Dark => egui::Theme::Dark,
    };
    if ctx.options(|options| options.theme_preference) != wanted.into() {
        ctx.set_theme(wanted);
    }
}

fn style(theme: egui::Theme, palette: &Palette) -> egui::Style {
    let [heading, title, body, typed, small] = SIZES;
    let mut style = egui::Style { visuals: visuals(theme, palette), ..egui::Style::default() };
    style.text_styles = [
        (TextStyle::Heading, FontId::new(heading, FontFamily::Proportional)),
        (TextStyle::Name(TITLE.into()), FontId::new(title, FontFamily::Proportional)),
        (TextStyle::Body, FontId::new(body, FontFamily::Proportional)),
        (TextStyle::Button, FontId::new(body, FontFamily::Proportional)),
        (TextStyle::Monospace, FontId::new(typed, FontFamily::Monospace)),
        (TextStyle::Small, FontId::new(small, FontFamily::Proportional)),
    ]
    .into();
    style.spacing.item_spacing = vec2(GAP, GAP);
    style.spacing.button_padding = vec2(8.0, 4.0);
    // A target of a finger's or a shaking hand's size.
    style.spacing.interact_size.y = 26.0;
    // Nothing moves by itself, so that the window can rest, and nobody is distracted.
    style.animation_time = 0.0;
    style.scroll_animation = egui::style::ScrollAnimation::none();
    // A bar that is always there: what is below the edge is not overlooked.
    style.spacing.scroll = egui::style::ScrollStyle::solid();
    style.spacing.scroll.foreground_color = false;
    // The renderer blends in linear light, in which a fade to the paper goes over grey.
    style.spacing.scroll.fade.strength = 0.0;
    style
}

fn visuals(theme: egui::Theme, palette: &Palette) -> egui::Visuals {
    let mut visuals = theme.default_visuals();
    let corner = CornerRadius::same(2);
    let edge = |color| Stroke::new(1.0, color);
    visuals.override_text_color = None;
    // The font is a light one; drawn like this its strokes are as dark in both shades.
    visuals.text_options.color_transfer_function =
        egui::epaint::FontColorTransferFunction::TwoCoverageMinusCoverageSq;
    visuals.weak_text_color = Some(palette.faint);
    visuals.panel_fill = palette.bench;
    visuals.window_fill = palette.card;
    visuals.window_stroke = edge(palette.rule);
    visuals.window_corner_radius = corner;
    visuals.menu_corner_radius = corner;
    visuals.extreme_bg_color = palette.field;
    visuals.text_edit_bg_color = Some(palette.field);
    visuals.faint_bg_color = palette.button;
    visuals.code_bg_color = palette.button;
    visuals.hyperlink_color = palette.accent;
    visuals.warn_fg_color = palette.caution;
    visuals.error_fg_color = palette.breach;
    visuals.selection.bg_fill = palette.chosen;
    visuals.selection.stroke = Stroke::new(2.0, palette.ink);
    visuals.text_cursor.blink = false;
    visuals.text_cursor.stroke = Stroke::new(2.0, palette.accent);
    let widgets = &mut visuals.widgets;
    for (widget, fill, stroke) in [
        (&mut widgets.noninteractive, palette.card, edge(palette.rule)),
        (&mut widgets.inactive, palette.button, edge(palette.rule)),
        (&mut widgets.hovered, palette.button_lit, Stroke::new(2.0, palette.accent)),
        (&mut widgets.active, palette.button_lit, Stroke::new(2.0, palette.accent)),
        (&mut widgets.open, palette.button_lit, edge(palette.rule)),
    ] {
        widget.weak_bg_fill = fill;
        widget.bg_stroke = stroke;
        widget.fg_stroke = edge(palette.ink);
        widget.corner_radius = corner;
        widget.expansion = 0.0;
    }
    widgets.noninteractive.bg_fill = palette.card;
    // Bars that scroll.
    widgets.inactive.bg_fill = palette.faint;
    widgets.hovered.bg_fill = palette.accent;
    widgets.active.bg_fill = palette.accent;
    widgets.open.bg_fill = palette.button_lit;
    visuals.disabled_alpha = 0.7;
    let widgets = &mut visuals.widgets;
    // There is no bold font, so what is strong has a colour; and it stands alone on its line.
    widgets.active.fg_stroke = edge(palette.accent);
    visuals
}
