//! Paths that hoses and wires follow.

use bevy::math::Vec3;

/// Points of a smooth curve through all of `through`, `steps` for each stretch.
#[must_use]
pub fn smooth(through: &[Vec3], steps: usize) -> Vec<Vec3> {
    let (Some(first), Some(last)) = (through.first(), through.last()) else { return Vec::new() };
    let at =
        |k: isize| usize::try_from(k).map_or(*first, |k| through.get(k).copied().unwrap_or(*last));
    let mut points = Vec::new();
    for stretch in 0..through.len().saturating_sub(1) {
        let k = stretch.cast_signed();
        let [before, from, to, after] = [at(k - 1), at(k), at(k + 1), at(k + 2)];
        // The curve of Catmull and Rom, its tangents shortened where a stretch is shorter than its neighbours.
        let reach = from.distance(to);
        let tangent = |one: Vec3, other: Vec3| {
            let along = other - one;
            along.normalize_or_zero() * (along.length() / 2.0).min(reach)
        };
        let (leaving, arriving) = (tangent(before, to), tangent(from, after));
        for step in 0..steps {
            let t = step as f32 / steps as f32;
            let (t2, t3) = (t * t, t * t * t);
            points.push(
                from * (2.0 * t3 - 3.0 * t2 + 1.0)
                    + leaving * (t3 - 2.0 * t2 + t)
                    + to * (3.0 * t2 - 2.0 * t3)
                    + arriving * (t3 - t2),
            );
        }
    }
    points.push(*last);
    points
}
