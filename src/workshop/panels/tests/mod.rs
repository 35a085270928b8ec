//! The panels walked, clicked and typed through without an engine, found by role and label as a
//! screen reader finds them.

mod bay_worked;
mod case_worked;
mod raster;
mod samples;
mod tray_worked;
mod trays;
mod walk;
mod writer_worked;
mod writings;

use super::{Tools, window_ui};
use crate::wording::catalogue::Words;
use crate::workshop::theme;
use crate::workshop::view::WindowView;
use crate::workshop::view::action::Action;
use crate::workshop::view::settings::Contrast;
use egui::{TextureId, Vec2, vec2};
use egui_kittest::Harness;

/// A window of the smallest size, at the plain text size and at twice that: then half as many
/// points have room.
const SIZES: [Vec2; 2] = [vec2(1_280.0, 680.0), vec2(640.0, 340.0)];
const SHADES: [egui::Theme; 2] = [egui::Theme::Light, egui::Theme::Dark];

/// A window that shows what `view` gives and collects what is wanted.
fn window<'a, S: 'a>(
    size: Vec2,
    shade: egui::Theme,
    state: S,
    mut each_frame: impl FnMut(&mut S, &mut dyn FnMut(&WindowView<'_>, &Words) -> Vec<Action>) + 'a,
) -> Harness<'a, S> {
    let mut is_dressed = false;
    // Scroll bars that come and go ask for a frame each, and what ends beside the window for another: more than the
    // harness allows of itself, never as many as a flicker would need.
    Harness::builder().with_size(size).with_theme(shade).with_max_steps(40).build_ui_state(
        move |ui, state| {
            if !std::mem::replace(&mut is_dressed, true) {
                theme::dress(ui.ctx(), Contrast::Ordinary);
                // The frame that has begun keeps the look it has begun with.
                ui.ctx().request_repaint();
                return;
            }
            let mut draw = |view: &WindowView<'_>, words: &Words| {
                let tools = Tools { words, picture: Some(TextureId::User(0)) };
                // The harness keeps a margin of its own; the window has none.
                let whole = ui.ctx().content_rect();
                let builder = egui::UiBuilder::new().max_rect(whole);
                ui.scope_builder(builder, |ui| window_ui(ui, view, tools)).inner
            };
            each_frame(state, &mut draw);
        },
        state,
    )
}
