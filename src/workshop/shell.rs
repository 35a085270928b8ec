//! Joins the panels to the engine: what there is to see goes in, what the user wants comes out.

use super::desk::{Desk, Surroundings, Wake};
use super::panels::{Tools, window_ui};
use super::scene::{Picture, Stage};
use super::theme;
use super::view::settings::{Contrast, Motion, Shade};
use bevy::prelude::*;
use bevy::winit::{EventLoopProxyWrapper, WinitUserEvent};
use bevy_egui::{EguiContexts, EguiPrimaryContextPass};
use std::sync::Arc;
use std::time::Duration;

/// Must be added after the engine's own plugins: work beside the window wakes their event loop.
pub(super) fn plugin(app: &mut App, around: Surroundings) {
    let wake = wake_of(app);
    app.insert_resource(Behind(Desk::new(around, wake))).add_systems(EguiPrimaryContextPass, draw);
}

/// Frames drawn after the last change: the panels take their sizes from the frame before, and what
/// scrolls finds its place one later.
const FRAMES_AFTER_CHANGE: u8 = 3;

/// What goes on behind the panels.
#[derive(Resource)]
pub(super) struct Behind(pub(super) Desk);

fn wake_of(app: &App) -> Wake {
    match app.world().get_resource::<EventLoopProxyWrapper>() {
        Some(proxy) => {
            let proxy = (**proxy).clone();
            Arc::new(move || {
                // It fails only when the loop has ended, and then nobody looks any more.
                let _ended = proxy.send_event(WinitUserEvent::WakeUp);
            })
        }
        None => Arc::new(|| {}),
    }
}

/// Draws every panel once a pass and does what the user wants.
fn draw(
    mut contexts: EguiContexts,
    mut behind: ResMut<Behind>,
    picture: Option<Res<Picture>>,
    mut stage: ResMut<Stage>,
    time: Res<Time<Real>>,
    (mut worn, mut since_change): (Local<Option<Contrast>>, Local<u8>),
    mut exit: MessageWriter<AppExit>,
) -> Result {
    let ctx = contexts.ctx_mut()?;
    let desk = &mut behind.0;
    let heard = desk.listen();
    if let Some(wait) = desk.pass(time.delta_secs()) {
        ctx.request_repaint_after(Duration::from_secs_f32(wait));
    }
    let contrast = desk.view().settings.contrast;
    if worn.replace(contrast) != Some(contrast) {
        theme::dress(ctx, contrast);
    }
    theme::set(ctx, desk.view().settings);
    // The panels share what is left of the window between them, so they need one common parent.
    let mut root = egui::Ui::new(
        ctx.clone(),
        "workshop".into(),
        egui::UiBuilder::new().layer_id(egui::LayerId::background()).max_rect(ctx.viewport_rect()),
    );
    let tools = Tools { words: desk.words(), picture: picture.map(|picture| picture.texture) };
    let actions = window_ui(&mut root, &desk.view(), tools);
    if heard || !actions.is_empty() || ctx.input(|input| !input.events.is_empty()) {
        *since_change = 0;
    }
    if *since_change < FRAMES_AFTER_CHANGE {
        *since_change += 1;
        ctx.request_repaint();
    }
    for action in actions {
        desk.act(action);
    }
    let wanted = stage_of(desk);
    if *stage != wanted {
        *stage = wanted;
        // The picture is made before the panels; so it shows in the next frame.
        ctx.request_repaint();
    }
    if desk.is_leaving() {
        exit.write(AppExit::Success);
    }
    Ok(())
}

/// What the scene is to draw.
fn stage_of(desk: &Desk) -> Stage {
    let view = desk.view();
    let stage = Stage {
        moves: view.settings.motion == Motion::Short,
        is_dark: view.settings.shade == Shade::Dark,
        size: view.picture,
        ..Stage::default()
    };
    match desk.bay() {
        Some(bay) => Stage {
            model: Some(Arc::clone(&bay.model)),
            known: bay.known.clone(),
            orbit: Some(bay.orbit),
            glides: bay.glides,
            ..stage
        },
        None => stage,
    }
}
