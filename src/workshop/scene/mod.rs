//! The bay as the engine draws it: into a picture, which the panels place.
//!
//! What is to be drawn comes as a [`Stage`]; nothing is decided here but how things get from place to place.

mod furnish;
mod motion;
mod picture;
mod shade;

pub(super) use motion::Whole;
pub(super) use picture::Picture;

use super::bay::camera::Orbit;
use super::bay::model::Model;
use super::view::bay::Known;
use bevy::prelude::*;
use std::sync::Arc;

/// What is to be drawn, as the panels know it.
#[derive(Resource, Default, Clone, PartialEq)]
pub(super) struct Stage {
    /// What stands where; nothing while no bay is shown.
    pub model: Option<Arc<Model>>,
    /// What is known of it.
    pub known: Known,
    /// From where it is seen.
    pub orbit: Option<Orbit>,
    /// Whether the camera glides there.
    pub glides: bool,
    /// Whether parts move there or are there at once.
    pub moves: bool,
    /// Whether the hall is lit for eyes that are used to the dark.
    pub is_dark: bool,
    /// Width and height of the picture [pixels].
    pub size: [u32; 2],
}

/// The scene waits for [`Stage`], which the shell keeps.
pub(super) fn plugin(app: &mut App) {
    app.init_resource::<Stage>()
        .init_resource::<motion::Unrest>()
        .init_resource::<Whole>()
        .add_systems(Startup, (picture::photograph, furnish::light).chain())
        .add_systems(
            Update,
            (
                furnish::furnish,
                picture::fit,
                shade::dim,
                motion::carry,
                motion::mark,
                motion::look,
                motion::rest,
            )
                .chain(),
        );
}

fn color([red, green, blue]: [f32; 3]) -> Color {
    Color::srgb(red, green, blue)
}
