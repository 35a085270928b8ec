//! Where a thing is and how it is turned.

use bevy::math::{Quat, Vec3};

/// A place with a direction.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Pose {
    /// Where the foot of the thing is [m].
    pub at: Vec3,
    /// How the thing is turned.
    pub turn: Quat,
}

impl Pose {
    /// Upright, looking to the front.
    #[must_use]
    pub const fn upright(at: Vec3) -> Self {
        Self { at, turn: Quat::IDENTITY }
    }

    /// Upright, turned from the front to the right-hand side [degrees].
    #[must_use]
    pub fn facing(at: Vec3, degrees: f32) -> Self {
        Self { at, turn: Quat::from_rotation_y(degrees.to_radians()) }
    }

    /// A pose that is given in the frame of this one.
    #[must_use]
    pub fn and(self, inner: Self) -> Self {
        Self { at: self.point(inner.at), turn: self.turn * inner.turn }
    }

    /// A point that is given in the frame of this pose [m].
    #[must_use]
    pub fn point(self, inner: Vec3) -> Vec3 {
        self.at + self.turn * inner
    }

    /// A point of the bay in the frame of this pose [m].
    #[must_use]
    pub fn inside(self, point: Vec3) -> Vec3 {
        self.turn.inverse() * (point - self.at)
    }

    /// The way to another pose, from 0 to 1: over an arc, so that a part is lifted out before it is carried off.
    #[must_use]
    pub fn towards(self, other: Self, share: f32) -> Self {
        // There it is exactly there, so that nobody sets out again for what rounding left.
        if share >= 1.0 {
            return other;
        }
        let share = share.max(0.0);
        let eased = share * share * (3.0 - 2.0 * share);
        let lift = 0.25 * self.at.distance(other.at).min(1.2) * 4.0 * eased * (1.0 - eased);
        Self {
            at: self.at.lerp(other.at, eased) + Vec3::Y * lift,
            turn: self.turn.slerp(other.turn, eased),
        }
    }
}
