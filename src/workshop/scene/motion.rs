//! Parts that are carried, the camera that goes round, and rest when both are there.

use super::Stage;
use super::furnish::{Carried, Told, transform, visible};
use crate::workshop::bay::camera::Orbit;
use crate::workshop::bay::pose::Pose;
use crate::workshop::rest::Settled;
use bevy::prelude::*;
use bevy::window::RequestRedraw;

/// Time that a part takes to the bench and the camera to a viewpoint [s].
const WAY: f32 = 0.45;
/// Longest part of a way that one frame takes [s]: where frames are slow, something is seen of it all the same.
const LONGEST_FRAME: f32 = 0.12;
/// Frames for which the picture is still drawn after nothing has been missing for the first time: parts of it are made
/// ready beside the drawing, and some of them show only by being asked for.
const FRAMES_AT_FIRST: u16 = 60;
/// Frames for which it is still drawn after a change: the drawing runs a frame behind the rest.
const FRAMES_AFTER_CHANGE: u16 = 4;

/// Whether something in the picture is not where it will be.
#[derive(Resource, Default)]
pub(super) struct Unrest(bool);

/// Whether the picture shows everything that is to be seen.
#[derive(Resource, Default)]
pub(in crate::workshop) struct Whole(pub bool);

/// A part on its way.
#[derive(Component)]
pub(super) struct Way {
    from: Pose,
    to: Pose,
    /// Time since it began [s].
    since: f32,
}

fn step(time: &Time) -> f32 {
    time.delta_secs().min(LONGEST_FRAME)
}

/// Carries every part to where it belongs.
pub(super) fn carry(
    mut commands: Commands,
    stage: Res<Stage>,
    time: Res<Time>,
    mut unrest: ResMut<Unrest>,
    mut parts: Query<(Entity, &Carried, &mut Transform, Option<&mut Way>)>,
) {
    unrest.0 = false;
    for (entity, carried, mut at, way) in &mut parts {
        let wanted =
            if stage.known.is_off(&carried.moves_with) { carried.away } else { carried.home };
        match way {
            Some(mut way) if way.to == wanted => {
                way.since += step(&time);
                let share = way.since / WAY;
                *at = transform(way.from.towards(way.to, share));
                if share >= 1.0 {
                    commands.entity(entity).remove::<Way>();
                }
                unrest.0 = true;
            }
            other => {
                let now = Pose { at: at.translation, turn: at.rotation };
                let is_there = now == wanted;
                if is_there && other.is_none() {
                    continue;
                }
                unrest.0 = true;
                if stage.moves && !is_there {
                    commands.entity(entity).insert(Way { from: now, to: wanted, since: 0.0 });
                } else {
                    *at = transform(wanted);
                    commands.entity(entity).remove::<Way>();
                }
            }
        }
    }
}

/// Shows what has become known.
pub(super) fn mark(stage: Res<Stage>, mut told: Query<(&Told, &mut Visibility)>) {
    for (piece, mut seen) in &mut told {
        let wanted = visible(stage.known.is_shown(&piece.id, piece.shown));
        if *seen != wanted {
            *seen = wanted;
        }
    }
}

/// Where the camera came from, where it goes, and how long ago it set out [s].
type Glide = (Orbit, Orbit, f32);

/// Brings the camera to where it is wanted.
pub(super) fn look(
    stage: Res<Stage>,
    time: Res<Time>,
    mut glide: Local<Option<Glide>>,
    mut unrest: ResMut<Unrest>,
    mut cameras: Query<&mut Transform, With<Camera3d>>,
) {
    let Some(wanted) = stage.orbit else { return };
    let (from, to, since) = glide.get_or_insert((wanted, wanted, WAY));
    if *to != wanted {
        let now = from.towards(*to, (*since / WAY).min(1.0));
        let glides = stage.glides && stage.moves;
        (*from, *to, *since) = (now, wanted, if glides { 0.0 } else { WAY });
        unrest.0 = true;
    }
    if *since < WAY {
        *since += step(&time);
        unrest.0 = true;
    }
    let now = from.towards(*to, (*since / WAY).min(1.0));
    let wanted = Transform { translation: now.eye(), rotation: now.turn(), ..default() };
    for mut camera in &mut cameras {
        if *camera != wanted {
            *camera = wanted;
        }
    }
}

/// The picture is drawn while something in it changes and for some frames after; where the processor draws, typing would
/// wait for more.
pub(super) fn rest(
    stage: Res<Stage>,
    unrest: Res<Unrest>,
    settled: Res<Settled>,
    (mut has_been_whole, mut still): (Local<bool>, Local<u16>),
    mut whole: ResMut<Whole>,
    mut cameras: Query<&mut Camera, With<Camera3d>>,
    mut redraw: MessageWriter<RequestRedraw>,
) {
    let changes = stage.is_changed() || unrest.0;
    *still = if settled.0 && !changes { still.saturating_add(1) } else { 0 };
    let enough = if *has_been_whole { FRAMES_AFTER_CHANGE } else { FRAMES_AT_FIRST };
    *has_been_whole |= *still >= FRAMES_AT_FIRST;
    let is_needed = stage.model.is_some() && *still < enough;
    whole.0 = !is_needed;
    if is_needed && (*has_been_whole || *still < FRAMES_AFTER_CHANGE) {
        redraw.write(RequestRedraw);
    }
    for mut camera in &mut cameras {
        if camera.is_active != is_needed {
            camera.is_active = is_needed;
        }
    }
}
