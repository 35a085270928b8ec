//! The lines of a drawing: where a skin has a crease.

use super::solid::{CREASE_COSINE, Solid};
use bevy::math::Vec3;
use std::collections::BTreeMap;

/// How far outside the skin a line is drawn [m].
const OUTSIDE: f32 = 0.0006;

impl Solid {
    /// Both ends of each crease [m], a hair outside the skin so that a drawn line is not half inside.
    #[must_use]
    pub fn creases(&self) -> Vec<[Vec3; 2]> {
        let normals = self.face_normals();
        let mut at_edge: BTreeMap<[u32; 2], Vec<usize>> = BTreeMap::new();
        for (number, face) in self.faces.iter().enumerate() {
            // A face without area has no direction and hides none.
            if normals[number].length_squared() < f32::MIN_POSITIVE {
                continue;
            }
            for side in 0..3 {
                let ends = [face[side], face[(side + 1) % 3]];
                at_edge
                    .entry([ends[0].min(ends[1]), ends[0].max(ends[1])])
                    .or_default()
                    .push(number);
            }
        }
        let is_crease = |faces: &[usize]| match faces {
            [one, other] => {
                let (one, other) = (normals[*one].normalize(), normals[*other].normalize());
                one.dot(other) < CREASE_COSINE
            }
            _ => true,
        };
        at_edge
            .iter()
            .filter(|(_, faces)| is_crease(faces))
            .map(|(ends, faces)| {
                let out: Vec3 = faces.iter().map(|face| normals[*face].normalize_or_zero()).sum();
                let out = out.normalize_or_zero() * OUTSIDE;
                ends.map(|corner| self.corners[corner as usize] + out)
            })
            .collect()
    }
}
