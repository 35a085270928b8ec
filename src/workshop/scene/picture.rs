//! The cameras, and the picture that one of them makes.

use super::{Stage, color};
use crate::workshop::bay::camera::field_of_view;
use crate::workshop::theme;
use bevy::camera::RenderTarget;
use bevy::camera::visibility::RenderLayers;
use bevy::core_pipeline::tonemapping::Tonemapping;
use bevy::light::EnvironmentMapLight;
use bevy::prelude::*;
use bevy::render::render_resource::{Extent3d, TextureFormat};
use bevy::render::renderer::RenderAdapterInfo;
use bevy_egui::{EguiGlobalSettings, EguiTextureHandle, EguiUserTextures, PrimaryEguiContext};

/// Most pixels of the picture where the processor draws: a frame of it takes about as long as a glance.
const MOST_ON_PROCESSOR: u32 = 1_300_000;
/// Most pixels of the picture where a graphics card draws.
const MOST_ON_CARD: u32 = 8_300_000;

/// Light from all sides that metal has to reflect [cd/m²].
pub(super) const AROUND: f32 = 320.0;

/// The picture, as the panels know it.
#[derive(Resource)]
pub(in crate::workshop) struct Picture {
    /// For the panels.
    pub texture: egui::TextureId,
    /// For the engine.
    image: Handle<Image>,
}

/// Sets up the camera that makes the picture, and the one on which the panels are drawn.
pub(super) fn photograph(
    mut commands: Commands,
    mut images: ResMut<Assets<Image>>,
    mut textures: ResMut<EguiUserTextures>,
    mut settings: ResMut<EguiGlobalSettings>,
) {
    // Otherwise the panels would be drawn into the picture.
    settings.auto_create_primary_context = false;
    let image = Image::new_target_texture(720, 640, TextureFormat::Bgra8UnormSrgb, None);
    let image = images.add(image);
    let texture = textures.add_image(EguiTextureHandle::Strong(image.clone()));
    commands.insert_resource(Picture { texture, image: image.clone() });
    let [sky, horizon, ground] = theme::SCENE_AROUND.map(color);
    commands.spawn((
        Name::new("scene camera"),
        Camera3d::default(),
        Camera {
            order: -1,
            clear_color: ClearColorConfig::Custom(color(theme::SCENE_BACK)),
            ..default()
        },
        Projection::from(PerspectiveProjection {
            fov: field_of_view(1.6),
            near: 0.02,
            far: 40.0,
            ..default()
        }),
        RenderTarget::Image(image.into()),
        // The colours of the drawing come out as they stand in the theme.
        Tonemapping::None,
        // Bright metal is dark where it has nothing to reflect.
        EnvironmentMapLight {
            intensity: AROUND,
            ..EnvironmentMapLight::hemispherical_gradient(&mut images, sky, horizon, ground)
        },
    ));
    commands.spawn((
        Name::new("panel camera"),
        PrimaryEguiContext,
        Camera2d,
        // Panels have soft edges of their own; smoothing them again is what costs most where the
        // processor draws.
        Msaa::Off,
        // It sees nothing but the panels.
        RenderLayers::none(),
    ));
}

/// Gives the picture the size of its place, or less where that would take too long to draw.
pub(super) fn fit(
    stage: Res<Stage>,
    picture: Res<Picture>,
    adapter: Option<Res<RenderAdapterInfo>>,
    mut images: ResMut<Assets<Image>>,
    mut lenses: Query<&mut Projection, With<Camera3d>>,
) {
    let is_processor = adapter.is_some_and(|info| info.device_type == wgpu::DeviceType::Cpu);
    let most = if is_processor { MOST_ON_PROCESSOR } else { MOST_ON_CARD };
    let [width, height] = within(stage.size, most);
    let now = images.get(&picture.image).map(Image::size);
    if now.is_some_and(|now| now == UVec2::new(width, height)) || stage.size[0] == 0 {
        return;
    }
    for mut lens in &mut lenses {
        if let Projection::Perspective(lens) = &mut *lens {
            lens.fov = field_of_view(width as f32 / height as f32);
        }
    }
    if let Some(mut image) = images.get_mut(&picture.image) {
        image.resize(Extent3d { width, height, depth_or_array_layers: 1 });
    }
}

/// A size with at most so many pixels and the same shape.
#[expect(
    clippy::cast_sign_loss,
    clippy::cast_possible_truncation,
    reason = "a share of a size is one"
)]
fn within([width, height]: [u32; 2], most: u32) -> [u32; 2] {
    let share = (most as f32 / (width as f32 * height as f32).max(1.0)).sqrt().min(1.0);
    [width, height].map(|side| ((side as f32 * share) as u32).max(1))
}

#[cfg(test)]
mod tests {
    use super::within;

    #[test]
    fn limit_a_picture_keeps_its_shape_and_its_bound() {
        assert_eq!(within([640, 400], 1_000_000), [640, 400]);
        let [width, height] = within([3_000, 2_000], 1_300_000);
        assert!(width * height <= 1_300_000 && width * height > 1_250_000);
        assert!((width as f32 / height as f32 - 1.5).abs() < 0.01);
        assert_eq!(within([0, 0], 100), [1, 1]);
    }
}
