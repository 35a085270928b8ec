//! Pictures of every page, made by the program itself: it does what a user would, waits until everything is drawn, and
//! saves what the window shows.

pub mod file;
pub(super) mod script;

use super::rest::Settled;
use super::scene::Whole;
use super::shell::Behind;
use bevy::prelude::*;
use bevy::render::view::screenshot::{Screenshot, ScreenshotCaptured};
use bevy::window::RequestRedraw;
use script::{Shot, shots};
use std::collections::VecDeque;
use std::path::PathBuf;
use std::sync::{Arc, Mutex, PoisonError};

/// Frames without anything new before a picture is taken: the panels settle in three, and the drawing is one behind.
const STILL_FRAMES: u16 = 5;

/// What became of the pictures, for whoever started the window.
pub type Told = Arc<Mutex<Result<Vec<PathBuf>, String>>>;

/// Where pictures go and what has been done for them.
#[derive(Resource)]
struct Album {
    folder: PathBuf,
    left: VecDeque<Shot>,
    /// Frames since something was done or was still being worked out.
    still: u16,
    /// A picture is on its way from the renderer.
    is_waiting: bool,
    told: Told,
}

/// Takes every picture into a folder and then ends the program.
pub(super) fn plugin(app: &mut App, folder: PathBuf, told: Told) {
    app.insert_resource(Album { folder, left: shots(), still: 0, is_waiting: false, told })
        .add_systems(Last, turn_pages);
}

fn turn_pages(
    mut commands: Commands,
    mut album: ResMut<Album>,
    mut behind: ResMut<Behind>,
    (settled, whole): (Res<Settled>, Res<Whole>),
    mut redraw: MessageWriter<RequestRedraw>,
    mut exit: MessageWriter<AppExit>,
) {
    redraw.write(RequestRedraw);
    let desk = &mut behind.0;
    if desk.is_busy() || !settled.0 || !whole.0 || album.is_waiting {
        album.still = 0;
        return;
    }
    let Some(shot) = album.left.front_mut() else {
        exit.write(AppExit::Success);
        return;
    };
    let has_more = !shot.actions.is_empty();
    while !desk.is_busy()
        && let Some(action) = shot.actions.pop_front()
    {
        desk.act(action);
    }
    if has_more {
        album.still = 0;
        return;
    }
    album.still += 1;
    if album.still < STILL_FRAMES {
        return;
    }
    album.is_waiting = true;
    commands.spawn(Screenshot::primary_window()).observe(keep);
}

/// Saves what the renderer has captured.
fn keep(
    captured: On<ScreenshotCaptured>,
    mut album: ResMut<Album>,
    mut exit: MessageWriter<AppExit>,
) {
    let Some(shot) = album.left.pop_front() else { return };
    album.is_waiting = false;
    album.still = 0;
    let path = album.folder.join(format!("{}.png", shot.name));
    let saved = file::save(&captured.image, &path);
    let mut told = album.told.lock().unwrap_or_else(PoisonError::into_inner);
    match (saved, &mut *told) {
        (Ok(()), Ok(paths)) => paths.push(path),
        (Err(why), _) => {
            *told = Err(format!("{}: {why}", path.display()));
            exit.write(AppExit::Success);
        }
        (Ok(()), Err(_)) => {}
    }
}
