//! The window: a lit scene of the vehicle with panels around it.
//!
//! Purpose: draw what a session tells and send back what the apprentice chooses. Nothing is worked out here.
//! `view` is what there is to see and what can be wanted, `panels` draws the one and answers the other, `desk` keeps the
//! case behind them; these three know no engine. `shell` joins them to it.
//! The display and the graphics driver are asked for before the engine starts, because the engine answers a missing one
//! by a panic; see [`run`].

#![expect(
    clippy::needless_pass_by_value,
    reason = "the engine hands a system its arguments by value"
)]

mod bay;
mod desk;
mod frame_times;
mod graphics;
mod headless;
mod opening;
mod panels;
mod pictures;
mod rest;
mod scene;
mod shell;
mod theme;
mod view;

pub use desk::{Speaker, Surroundings, Wake};
pub use frame_times::FrameTimes;
pub use headless::Headless;
pub use opening::OpeningError;

use bevy::app::TerminalCtrlCHandlerPlugin;
use bevy::prelude::*;
use bevy::window::WindowResolution;
use bevy_egui::EguiPlugin;
use std::path::PathBuf;
use std::sync::{Arc, Mutex, PoisonError};

/// The title of the window, by which a script or a screen reader finds it.
pub const WINDOW_TITLE: &str = "Faultwright";

/// Width and height of the window at the start, in logical pixels: the smallest screen of a school laptop, less its bar.
const WINDOW_SIZE: (u32, u32) = (1_280, 680);

/// The exit code for a program that its user interrupted from the keyboard.
const INTERRUPTED: u8 = 130;

/// What is wanted of the window beside being there.
#[derive(Debug, Clone, Default)]
pub struct Wanted {
    /// Width and height at the start [logical pixels]; nothing for the usual ones.
    pub size: Option<(u32, u32)>,
    /// Take a picture of every page into this folder, then close.
    pub pictures: Option<PathBuf>,
    /// Measure how long frames take, from this start of the program.
    #[expect(
        clippy::disallowed_types,
        reason = "the clock measures frames and reaches no session"
    )]
    pub times_from: Option<std::time::Instant>,
}

/// What a window that was closed leaves behind.
#[derive(Debug, Clone)]
pub struct Left {
    /// The pictures, or why they were given up.
    pub pictures: Result<Vec<PathBuf>, String>,
    /// How long frames took.
    pub times: FrameTimes,
}

/// Opens the window and returns when it is closed.
///
/// # Errors
///
/// [`OpeningError`] when there is no display to open a window on, a library of the display is missing, no graphics
/// driver answers, or the engine ended with an error.
pub fn run(around: Surroundings, wanted: Wanted) -> Result<Left, OpeningError> {
    opening::check_display()?;
    opening::check_graphics()?;
    let mut app = app(around, wanted.size.unwrap_or(WINDOW_SIZE));
    let told = Arc::new(Mutex::new(Ok(Vec::new())));
    if let Some(folder) = wanted.pictures {
        pictures::plugin(&mut app, folder, Arc::clone(&told));
    }
    let times = frame_times::Shared::default();
    if let Some(started) = wanted.times_from {
        frame_times::plugin(&mut app, started, Arc::clone(&times));
    }
    let lost = graphics::Given::default();
    graphics::plugin(&mut app, Arc::clone(&lost));
    let exit = app.run();
    if let Some(error) = lost.lock().unwrap_or_else(PoisonError::into_inner).take() {
        return Err(error);
    }
    match exit {
        // The engine turns Ctrl+C into this code; whoever pressed it needs no explanation.
        AppExit::Error(code) if code.get() != INTERRUPTED => {
            Err(OpeningError::EndedBadly { code: code.get() })
        }
        _ => Ok(Left {
            pictures: told.lock().unwrap_or_else(PoisonError::into_inner).clone(),
            times: times.lock().unwrap_or_else(PoisonError::into_inner).clone(),
        }),
    }
}

/// The whole window as a value, not yet running.
fn app(around: Surroundings, size: (u32, u32)) -> App {
    let window = Window {
        title: WINDOW_TITLE.to_owned(),
        name: Some("faultwright".to_owned()),
        resolution: WindowResolution::from(size),
        ..default()
    };
    let mut app = App::new();
    let engine = DefaultPlugins
        .set(WindowPlugin { primary_window: Some(window), ..default() })
        // `rest` puts it back with a handler that wakes the window.
        .disable::<TerminalCtrlCHandlerPlugin>();
    app.add_plugins((engine, EguiPlugin::default())).add_plugins((rest::plugin, scene::plugin));
    shell::plugin(&mut app, around);
    app
}
