//! Skins are whole, look outwards and are smooth where they should be.

use super::bays;
use crate::workshop::bay::piece::{Finish, Piece};
use crate::workshop::bay::shape::{Solid, ball, block, lathe, tube};
use bevy::math::{Vec3, vec3};
use core::f32::consts::PI;
use std::collections::BTreeMap;

/// The volume inside a closed skin, by its faces' cones to the origin [m³].
fn volume(solid: &Solid) -> f32 {
    let cone = |face: &[u32; 3]| {
        let [a, b, c] = solid.triangle(*face);
        a.dot(b.cross(c)) / 6.0
    };
    solid.faces.iter().map(cone).sum()
}

fn is_closed(solid: &Solid) -> bool {
    let mut ways: BTreeMap<[u32; 2], i32> = BTreeMap::new();
    for face in &solid.faces {
        for side in 0..3 {
            let (from, to) = (face[side], face[(side + 1) % 3]);
            *ways.entry([from.min(to), from.max(to)]).or_default() +=
                if from < to { 1 } else { -1 };
        }
    }
    ways.values().all(|there_and_back| *there_and_back == 0)
}

#[test]
fn closed_form_volumes_of_turned_parts_and_tubes() {
    let near = |found: f32, wanted: f32, within: f32| {
        assert!((found / wanted - 1.0).abs() < within, "{found} against {wanted}");
    };
    // A ball and a cylinder drawn with corners are smaller than round ones: by the polygon's share.
    near(volume(&ball(1.0)), 4.0 / 3.0 * PI, 0.06);
    near(volume(&lathe(&[(0.5, 0.0), (0.5, 2.0)])), PI * 0.25 * 2.0, 0.02);
    near(volume(&block(vec3(1.0, 2.0, 3.0), 0.001, 0.0)), 6.0, 0.001);
    let straight = [Vec3::ZERO, Vec3::X, Vec3::X * 2.0];
    near(volume(&tube(&straight, 0.1, 48)), PI * 0.01 * 2.0, 0.01);
}

#[test]
fn every_skin_of_every_bay_is_closed_and_looks_outwards() {
    let check = |piece: &Piece| {
        let size = piece.solid.bounds();
        assert!(!piece.solid.faces.is_empty(), "{:?} is empty", piece.finish);
        // The rag is a cloth, seen from above.
        if piece.finish != Finish::Cloth {
            assert!(is_closed(&piece.solid), "{:?} at {size:?} is open", piece.finish);
            assert!(volume(&piece.solid) > 0.0, "{:?} at {size:?} is inside out", piece.finish);
        }
        for normal in piece.solid.shaded().normals {
            assert!((Vec3::from(normal).length() - 1.0).abs() < 1e-3, "{:?}", piece.finish);
        }
    };
    for (_, model) in bays() {
        model.scenery.iter().for_each(check);
        model.things.iter().flat_map(|thing| &thing.pieces).for_each(check);
    }
}

#[test]
fn limit_a_sharp_block_has_its_twelve_creases_and_a_ball_has_none() {
    let corners = [0.0_f32, 1.0]
        .map(|y| [(0.0, 0.0), (1.0, 0.0), (1.0, 1.0), (0.0, 1.0)].map(|(x, z)| vec3(x, y, z)));
    let sharp = Solid {
        corners: corners.concat(),
        faces: vec![
            [0, 1, 2],
            [0, 2, 3],
            [4, 6, 5],
            [4, 7, 6],
            [0, 4, 5],
            [0, 5, 1],
            [1, 5, 6],
            [1, 6, 2],
            [2, 6, 7],
            [2, 7, 3],
            [3, 7, 4],
            [3, 4, 0],
        ],
    };
    assert_eq!(sharp.creases().len(), 12);
    assert!(ball(1.0).creases().is_empty());
}
