//! The window rests while nothing happens: a workshop that waits for a decision should cost nothing, above all where a
//! processor does the drawing. Three things of the engine stand in the way of that, each with its remedy here.

use std::sync::Arc;
use std::sync::atomic::{AtomicBool, Ordering};

use bevy::app::{TerminalCtrlCHandlerPlugin, ctrlc};
use bevy::prelude::*;
use bevy::render::render_resource::PipelineCache;
use bevy::render::{Render, RenderApp, RenderSystems};
use bevy::window::RequestRedraw;
use bevy::winit::{EventLoopProxyWrapper, WinitSettings, WinitUserEvent};
use bevy_egui::{EguiInput, EguiInputSet, EguiPreUpdateSet, egui};

/// Frames still drawn after the last shader is ready. The drawing runs a frame behind the rest and the panels settle
/// their sizes in two passes; the rest is slack.
const FRAMES_AFTER_READY: u8 = 6;

/// Must be added after the engine's own plugins: it builds on the event loop and the renderer.
pub(super) fn plugin(app: &mut App) {
    let building = Building(Arc::new(AtomicBool::new(true)));
    if let Some(render_app) = app.get_sub_app_mut(RenderApp) {
        render_app
            .insert_resource(building.clone())
            .add_systems(Render, note_building.in_set(RenderSystems::Cleanup));
    }
    app.insert_resource(WinitSettings::desktop_app())
        .insert_resource(building)
        .init_resource::<Settled>()
        .add_systems(
            PreUpdate,
            drop_old_news.after(EguiInputSet::WriteEguiEvents).before(EguiPreUpdateSet::BeginPass),
        )
        .add_systems(Last, draw_until_ready);
    wake_on_interrupt(app);
    app.add_plugins(TerminalCtrlCHandlerPlugin);
}

/// Whether the renderer still builds shaders, told from its world to ours.
#[derive(Resource, Clone)]
struct Building(Arc<AtomicBool>);

/// Whether everything that is drawn has been drawn whole.
#[derive(Resource, Default)]
pub(super) struct Settled(pub bool);

fn note_building(cache: Res<PipelineCache>, building: Res<Building>) {
    building.0.store(cache.waiting_pipelines().next().is_some(), Ordering::Relaxed);
}

/// Shaders are built beside the drawing, and what needs one is left out until it is there. A window that rested
/// meanwhile would stay black until somebody moved the mouse.
fn draw_until_ready(
    building: Res<Building>,
    mut since_ready: Local<u8>,
    mut settled: ResMut<Settled>,
    mut redraw: MessageWriter<RequestRedraw>,
) {
    if building.0.load(Ordering::Relaxed) {
        *since_ready = 0;
    }
    if *since_ready < FRAMES_AFTER_READY {
        *since_ready += 1;
        redraw.write(RequestRedraw);
    }
    let is_settled = *since_ready >= FRAMES_AFTER_READY;
    if settled.0 != is_settled {
        settled.0 = is_settled;
    }
}

/// Takes away the report of modifier keys when they are as before.
///
/// The panels' input layer (0.42) reports the modifier keys each frame, changed or not, and an event asks for another
/// frame, so that without this no frame would ever be the last. Remove it when the layer stops doing that.
fn drop_old_news(mut inputs: Query<&mut EguiInput>, mut last: Local<egui::Modifiers>) {
    for mut input in &mut inputs {
        input.events.retain(|event| match event {
            egui::Event::ModifiersChanged(now) => std::mem::replace(&mut *last, *now) != *now,
            _ => true,
        });
    }
}

/// The engine looks for Ctrl+C once a frame, and a resting window may have no frame for a minute; so the key wakes it.
fn wake_on_interrupt(app: &App) {
    let Some(proxy) = app.world().get_resource::<EventLoopProxyWrapper>() else { return };
    let proxy = (**proxy).clone();
    let set = ctrlc::try_set_handler(move || {
        TerminalCtrlCHandlerPlugin::gracefully_exit();
        // It fails only when the loop has ended, which is what was wanted.
        let _ended = proxy.send_event(WinitUserEvent::WakeUp);
    });
    if let Err(error) = set {
        warn!("Ctrl+C ends the window only when it is next drawn: {error}");
    }
}
