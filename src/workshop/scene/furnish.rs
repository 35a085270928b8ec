//! Puts a bay up: light, scenery and things.

use super::{Stage, color};
use crate::vehicle::spec::Id;
use crate::workshop::bay::model::Model;
use crate::workshop::bay::piece::{Finish, Piece, Shown};
use crate::workshop::bay::pose::Pose;
use crate::workshop::bay::shape::Solid;
use crate::workshop::theme;
use bevy::asset::RenderAssetUsages;
use bevy::light::{CascadeShadowConfigBuilder, DirectionalLightShadowMap};
use bevy::mesh::PrimitiveTopology;
use bevy::prelude::*;
use std::collections::BTreeMap;
use std::sync::Arc;

/// Something of the bay that goes when another comes.
#[derive(Component)]
pub(super) struct OfBay;

/// A thing that can be elsewhere.
#[derive(Component)]
pub(super) struct Carried {
    pub moves_with: Id,
    pub home: Pose,
    pub away: Pose,
}

/// A piece that is there only while something is known of its thing.
#[derive(Component)]
pub(super) struct Told {
    pub id: Id,
    pub shown: Shown,
}

/// Light that a hall has from all sides, so that no side of a part is black [cd/m²].
pub(super) const AMBIENT: f32 = 160.0;
/// Light of the lamp over the bay and of the weak one from the other side [lux].
const LAMP: f32 = 2_300.0;
/// See [`LAMP`].
const FILL: f32 = 600.0;

/// A lamp, with what it gives when nothing is dimmed [lux].
#[derive(Component)]
pub(super) struct Lamp(pub f32);

/// A lamp over the bay that throws soft shadows, and a weak one from the other side.
pub(super) fn light(mut commands: Commands, mut map: ResMut<DirectionalLightShadowMap>) {
    map.size = 2_048;
    commands.spawn((
        Name::new("lamp"),
        Lamp(LAMP),
        DirectionalLight { illuminance: LAMP, shadow_maps_enabled: true, ..default() },
        CascadeShadowConfigBuilder {
            num_cascades: 1,
            minimum_distance: 0.05,
            maximum_distance: 6.5,
            ..default()
        }
        .build(),
        Transform::from_xyz(-1.4, 3.0, 1.7).looking_at(Vec3::ZERO, Vec3::Y),
    ));
    commands.spawn((
        Name::new("fill"),
        Lamp(FILL),
        DirectionalLight { illuminance: FILL, ..default() },
        Transform::from_xyz(2.0, 1.6, 1.2).looking_at(Vec3::ZERO, Vec3::Y),
    ));
    commands.insert_resource(GlobalAmbientLight { brightness: AMBIENT, ..default() });
}

/// Puts the bay of the stage up when it is another than before.
pub(super) fn furnish(
    mut commands: Commands,
    stage: Res<Stage>,
    mut shown: Local<Option<Arc<Model>>>,
    old: Query<Entity, With<OfBay>>,
    mut meshes: ResMut<Assets<Mesh>>,
    mut materials: ResMut<Assets<StandardMaterial>>,
) {
    let Some(model) = &stage.model else { return };
    if shown.as_ref().is_some_and(|shown| Arc::ptr_eq(shown, model)) {
        return;
    }
    for entity in &old {
        commands.entity(entity).despawn();
    }
    let looks: BTreeMap<Finish, Handle<StandardMaterial>> =
        Finish::ALL.into_iter().map(|finish| (finish, materials.add(material(finish)))).collect();
    let ink = materials.add(StandardMaterial {
        base_color: color(theme::SCENE_LINE),
        unlit: true,
        ..default()
    });
    let skin = |solid: &Solid, finish: Finish, meshes: &mut Assets<Mesh>| {
        (Mesh3d(meshes.add(skin_of(solid))), MeshMaterial3d(looks[&finish].clone()))
    };
    // What never moves is drawn finish by finish.
    let mut by_finish: BTreeMap<Finish, Solid> = BTreeMap::new();
    for piece in &model.scenery {
        by_finish.entry(piece.finish).or_default().add(piece.solid.clone());
    }
    for (finish, solid) in &by_finish {
        commands.spawn((OfBay, skin(solid, *finish, &mut meshes)));
    }
    if let Some(lines) = lines_of(model.scenery.iter()) {
        commands.spawn((OfBay, Mesh3d(meshes.add(lines)), MeshMaterial3d(ink.clone())));
    }
    for thing in &model.things {
        let carried =
            Carried { moves_with: thing.moves_with.clone(), home: thing.home, away: thing.away };
        let pose = thing.pose(stage.known.is_off(&thing.moves_with));
        commands.spawn((OfBay, carried, transform(pose), Visibility::default())).with_children(
            |parts| {
                for piece in &thing.pieces {
                    let is_shown = stage.known.is_shown(&thing.id, piece.shown);
                    let mut part = parts
                        .spawn((skin(&piece.solid, piece.finish, &mut meshes), visible(is_shown)));
                    if piece.shown != Shown::Always {
                        part.insert(Told { id: thing.id.clone(), shown: piece.shown });
                    }
                }
                let always = thing.pieces.iter().filter(|piece| piece.shown == Shown::Always);
                if let Some(lines) = lines_of(always) {
                    parts.spawn((Mesh3d(meshes.add(lines)), MeshMaterial3d(ink.clone())));
                }
            },
        );
    }
    *shown = Some(Arc::clone(model));
}

/// A pose as the engine has it.
pub(super) fn transform(pose: Pose) -> Transform {
    Transform { translation: pose.at, rotation: pose.turn, ..default() }
}

/// Seen or not.
pub(super) const fn visible(is_shown: bool) -> Visibility {
    if is_shown { Visibility::Inherited } else { Visibility::Hidden }
}

fn material(finish: Finish) -> StandardMaterial {
    let surface = theme::surface(finish);
    StandardMaterial {
        base_color: color(surface.color),
        metallic: surface.metal,
        perceptual_roughness: surface.rough,
        unlit: finish == Finish::Glow,
        ..default()
    }
}

fn skin_of(solid: &Solid) -> Mesh {
    let shaded = solid.shaded();
    Mesh::new(PrimitiveTopology::TriangleList, RenderAssetUsages::RENDER_WORLD)
        .with_inserted_attribute(Mesh::ATTRIBUTE_POSITION, shaded.corners)
        .with_inserted_attribute(Mesh::ATTRIBUTE_NORMAL, shaded.normals)
}

/// The lines of pieces; nothing where all is round, since the renderer cannot keep a mesh without a point.
fn lines_of<'a>(pieces: impl Iterator<Item = &'a Piece>) -> Option<Mesh> {
    let ends: Vec<[f32; 3]> = pieces
        .flat_map(|piece| piece.solid.creases())
        .flatten()
        .map(|end| end.to_array())
        .collect();
    (!ends.is_empty()).then(|| {
        Mesh::new(PrimitiveTopology::LineList, RenderAssetUsages::RENDER_WORLD)
            .with_inserted_attribute(Mesh::ATTRIBUTE_POSITION, ends)
    })
}
