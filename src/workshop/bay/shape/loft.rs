//! Rings joined to a skin.

use super::solid::Solid;
use bevy::math::Vec3;

/// How a loft ends.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum End {
    /// Closed by a fan from the middle of the last ring.
    Flat,
    /// Closed by a fan from a point.
    Tip(Vec3),
}

/// Joins rings with the same number of points. Seen against the direction in which the rings follow each other, each
/// runs counter-clockwise.
#[expect(clippy::cast_possible_truncation, reason = "a loft has some thousand corners")]
pub(super) fn loft(rings: &[Vec<Vec3>], start: End, end: End) -> Solid {
    let Some(count) = rings.first().map(Vec::len) else { return Solid::default() };
    let mut solid = Solid { corners: rings.iter().flatten().copied().collect(), faces: Vec::new() };
    let number = |ring: usize, point: usize| (ring * count + point % count) as u32;
    for ring in 0..rings.len().saturating_sub(1) {
        for point in 0..count {
            let [a, b] = [number(ring, point), number(ring, point + 1)];
            let [c, d] = [number(ring + 1, point + 1), number(ring + 1, point)];
            solid.faces.extend([[a, b, c], [a, c, d]]);
        }
    }
    let last = rings.len() - 1;
    for (ring, end, is_last) in [(0, start, false), (last, end, true)] {
        let middle = match end {
            End::Tip(tip) => tip,
            End::Flat => rings[ring].iter().sum::<Vec3>() / count as f32,
        };
        let hub = solid.corners.len() as u32;
        solid.corners.push(middle);
        for point in 0..count {
            let [a, b] = [number(ring, point), number(ring, point + 1)];
            solid.faces.push(if is_last { [hub, a, b] } else { [hub, b, a] });
        }
    }
    solid
}
