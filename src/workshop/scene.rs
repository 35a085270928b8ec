//! The place the vehicle stands in: floor, lamp and camera, and the block that the parts will be
//! put on. It is drawn into a picture, which the panels place where it costs no legibility.

use super::rest::Settled;
use super::theme;
use bevy::camera::RenderTarget;
use bevy::camera::visibility::RenderLayers;
use bevy::core_pipeline::tonemapping::Tonemapping;
use bevy::prelude::*;
use bevy::render::render_resource::TextureFormat;
use bevy_egui::{EguiGlobalSettings, EguiTextureHandle, EguiUserTextures, PrimaryEguiContext};

/// Size of the picture [pixels]: enough for the largest place on the smallest screen.
const PICTURE_SIZE: (u32, u32) = (960, 540);

/// Frames for which the picture is still drawn after nothing has been missing: parts of it are made
/// ready beside the drawing, and some of them show only by being asked for.
const FRAMES_WHOLE: u16 = 60;

pub(super) fn plugin(app: &mut App) {
    app.add_systems(Startup, (photograph, furnish).chain()).add_systems(Update, hold_still);
}

/// The picture, as the panels know it.
#[derive(Resource)]
pub(super) struct Picture(pub egui::TextureId);

/// Sets up the camera that makes the picture, and the one on which the panels are drawn.
fn photograph(
    mut commands: Commands,
    mut images: ResMut<Assets<Image>>,
    mut textures: ResMut<EguiUserTextures>,
    mut settings: ResMut<EguiGlobalSettings>,
) {
    // Otherwise the panels would be drawn into the picture.
    settings.auto_create_primary_context = false;
    let (width, height) = PICTURE_SIZE;
    let image = Image::new_target_texture(width, height, TextureFormat::Bgra8UnormSrgb, None);
    let image = images.add(image);
    let picture = textures.add_image(EguiTextureHandle::Strong(image.clone()));
    commands.insert_resource(Picture(picture));
    commands.spawn((
        Name::new("scene camera"),
        Camera3d::default(),
        Camera {
            order: -1,
            clear_color: ClearColorConfig::Custom(color(theme::SCENE_BACK)),
            ..default()
        },
        RenderTarget::Image(image.into()),
        // The curves that need no table of colours on disk; the others would bring a texture
        // format with them.
        Tonemapping::AcesFitted,
        Transform::from_xyz(-2.3, 1.9, 3.0).looking_at(Vec3::new(0.0, 0.35, 0.0), Vec3::Y),
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

/// Puts up everything once.
fn furnish(
    mut commands: Commands,
    mut meshes: ResMut<Assets<Mesh>>,
    mut materials: ResMut<Assets<StandardMaterial>>,
) {
    commands.spawn((
        Name::new("lamp"),
        PointLight { shadow_maps_enabled: true, intensity: 1_600_000.0, ..default() },
        Transform::from_xyz(2.5, 4.5, 2.0),
    ));
    // A hall is lit from all sides a little, so that no side of a part is black.
    commands.insert_resource(GlobalAmbientLight { brightness: 400.0, ..default() });
    commands.spawn((
        Name::new("floor"),
        Mesh3d(meshes.add(Plane3d::default().mesh().size(12.0, 12.0))),
        MeshMaterial3d(materials.add(color(theme::SCENE_FLOOR))),
    ));
    commands.spawn((
        Name::new("engine block"),
        Mesh3d(meshes.add(Cuboid::new(1.4, 0.9, 0.8))),
        MeshMaterial3d(materials.add(StandardMaterial {
            base_color: color(theme::SCENE_METAL),
            metallic: 0.4,
            perceptual_roughness: 0.5,
            ..default()
        })),
        Transform::from_xyz(0.0, 0.45, 0.0),
    ));
}

/// Nothing in the scene moves, so that it is not drawn again once the picture has been whole for a
/// while; where the processor draws, typing would wait for it.
fn hold_still(
    settled: Res<Settled>,
    mut frames: Local<u16>,
    mut cameras: Query<&mut Camera, With<Camera3d>>,
) {
    *frames = if settled.0 { frames.saturating_add(1) } else { 0 };
    let is_needed = *frames < FRAMES_WHOLE;
    for mut camera in &mut cameras {
        if camera.is_active != is_needed {
            camera.is_active = is_needed;
        }
    }
}

fn color([red, green, blue]: [f32; 3]) -> Color {
    Color::srgb(red, green, blue)
}
