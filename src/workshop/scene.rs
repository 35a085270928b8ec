//! The place the vehicle stands in: floor, lamp and camera, and the block that the parts will be put on.

use bevy::core_pipeline::tonemapping::Tonemapping;
use bevy::prelude::*;

pub(super) fn plugin(app: &mut App) {
    app.insert_resource(ClearColor(Color::srgb(0.10, 0.11, 0.13))).add_systems(Startup, furnish);
}

/// Puts up everything once.
fn furnish(
    mut commands: Commands,
    mut meshes: ResMut<Assets<Mesh>>,
    mut materials: ResMut<Assets<StandardMaterial>>,
) {
    commands.spawn((
        Name::new("camera"),
        Camera3d::default(),
        // The curves that need no table of colours on disk; the others would bring a texture format with them.
        Tonemapping::AcesFitted,
        Transform::from_xyz(-2.6, 2.2, 3.4).looking_at(Vec3::new(0.0, 0.3, 0.0), Vec3::Y),
    ));
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
        MeshMaterial3d(materials.add(Color::srgb(0.32, 0.34, 0.36))),
    ));
    commands.spawn((
        Name::new("engine block"),
        Mesh3d(meshes.add(Cuboid::new(1.4, 0.9, 0.8))),
        MeshMaterial3d(materials.add(StandardMaterial {
            base_color: Color::srgb(0.55, 0.57, 0.60),
            metallic: 0.4,
            perceptual_roughness: 0.5,
            ..default()
        })),
        Transform::from_xyz(0.0, 0.45, 0.0),
    ));
}
