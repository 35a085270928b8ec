//! The panels around the scene.

use bevy::prelude::*;
use bevy_egui::{EguiContexts, EguiPrimaryContextPass, egui};

pub(super) fn plugin(app: &mut App) {
    app.add_systems(EguiPrimaryContextPass, draw);
}

/// Draws every panel once a pass.
fn draw(mut contexts: EguiContexts) -> Result {
    let ctx = contexts.ctx_mut()?;
    // The panels share what is left of the window between them, so they need one common parent.
    let mut root = egui::Ui::new(
        ctx.clone(),
        "workshop".into(),
        egui::UiBuilder::new().layer_id(egui::LayerId::background()).max_rect(ctx.viewport_rect()),
    );
    egui::Panel::left("bench").default_size(280.0).show(&mut root, |ui| {
        // A panel is as wide as what is in it unless something asks for the rest.
        ui.take_available_width();
        ui.heading(super::WINDOW_TITLE);
        ui.label("No case is open.");
    });
    Ok(())
}
