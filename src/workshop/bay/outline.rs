//! The line around a thing in the picture.

use super::camera::Orbit;
use super::model::Thing;
use super::pose::Pose;
use crate::workshop::view::bay::Known;
use bevy::math::Vec2;

/// What the panels draw to mark a thing, in shares of the picture.
#[derive(Debug, Clone, PartialEq)]
pub enum Outline {
    /// Around it.
    Around(Vec<Vec2>),
    /// Along it.
    Along(Vec<Vec2>),
}

/// The line that marks a thing; nothing where all of it is behind the camera.
#[must_use]
pub fn outline(
    thing: &Thing,
    pose: Pose,
    known: &Known,
    orbit: Orbit,
    ratio: f32,
) -> Option<Outline> {
    if !thing.line.is_empty() {
        let line: Vec<Vec2> =
            thing.line.iter().filter_map(|at| orbit.seen(pose.point(*at), ratio)).collect();
        return (line.len() > 1).then_some(Outline::Along(line));
    }
    let shown = thing.pieces.iter().filter(|piece| known.is_shown(&thing.id, piece.shown));
    let corners = shown.flat_map(|piece| &piece.solid.corners);
    let seen: Vec<Vec2> = corners.filter_map(|at| orbit.seen(pose.point(*at), ratio)).collect();
    let hull = hull(seen);
    (hull.len() > 2).then_some(Outline::Around(hull))
}

/// The convex hull of points, by walking them from left to right and back.
fn hull(mut points: Vec<Vec2>) -> Vec<Vec2> {
    points.sort_by(|one, other| one.x.total_cmp(&other.x).then(one.y.total_cmp(&other.y)));
    points.dedup();
    let walk = |points: &mut dyn Iterator<Item = Vec2>| {
        let mut side: Vec<Vec2> = Vec::new();
        for point in points {
            while let [.., before, last] = side.as_slice()
                && (*last - *before).perp_dot(point - *last) <= 0.0
            {
                side.pop();
            }
            side.push(point);
        }
        side.pop();
        side
    };
    let mut around = walk(&mut points.iter().copied());
    around.extend(walk(&mut points.iter().rev().copied()));
    around
}

#[cfg(test)]
mod tests {
    use super::hull;
    use bevy::math::vec2;

    #[test]
    fn closed_form_the_hull_of_a_square_with_a_point_inside_is_the_square() {
        let square = [vec2(0.0, 0.0), vec2(1.0, 0.0), vec2(1.0, 1.0), vec2(0.0, 1.0)];
        let mut points = square.to_vec();
        points.extend([vec2(0.4, 0.6), vec2(0.5, 0.0)]);
        let mut found = hull(points);
        found.sort_by(|one, other| one.x.total_cmp(&other.x).then(one.y.total_cmp(&other.y)));
        assert_eq!(found, [square[0], square[3], square[1], square[2]]);
    }
}
