//! How brightly the hall is lit: as by day, or dimmed where the panels are dark, so that the picture does not glare
//! beside them.

use super::furnish::{AMBIENT, Lamp};
use super::picture::AROUND;
use super::{Stage, color};
use crate::workshop::theme;
use bevy::light::EnvironmentMapLight;
use bevy::prelude::*;

/// Share of the light that is left when the hall is dimmed. What has to be told apart by its brightness, sludge on a
/// screen and a green pin, still is: everything is dimmed alike.
const DIMMED: f32 = 0.55;

/// Lights the hall as the stage wants it.
pub(super) fn dim(
    stage: Res<Stage>,
    mut shown: Local<Option<bool>>,
    mut cameras: Query<(&mut Camera, &mut EnvironmentMapLight)>,
    mut lamps: Query<(&Lamp, &mut DirectionalLight)>,
    mut ambient: ResMut<GlobalAmbientLight>,
) {
    if shown.replace(stage.is_dark) == Some(stage.is_dark) {
        return;
    }
    let (share, back) =
        if stage.is_dark { (DIMMED, theme::SCENE_BACK_DARK) } else { (1.0, theme::SCENE_BACK) };
    for (mut camera, mut around) in &mut cameras {
        camera.clear_color = ClearColorConfig::Custom(color(back));
        around.intensity = AROUND * share;
    }
    for (lamp, mut light) in &mut lamps {
        light.illuminance = lamp.0 * share;
    }
    ambient.brightness = AMBIENT * share;
}
