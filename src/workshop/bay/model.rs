//! The bay of one vehicle: what stands where, made once from the vehicle's file.

use super::piece::Piece;
use super::pose::Pose;
use crate::vehicle::spec::{Id, VehicleSpec};
use bevy::math::Vec3;

/// Something in the bay that has a name.
#[derive(Debug, Clone, PartialEq)]
pub struct Thing {
    /// Its name in the vehicle's file, or the name of a step that is done there.
    pub id: Id,
    /// What it is, for the order of the list and for what is drawn.
    pub sort: Sort,
    /// What it is made of.
    pub pieces: Vec<Piece>,
    /// The line that it follows, where it is too long and thin for an outline around it [m].
    pub line: Vec<Vec3>,
    /// Where it is while it is in place.
    pub home: Pose,
    /// Where it is while `moves_with` is off.
    pub away: Pose,
    /// The part with which it comes off: itself, or the one that carries it.
    pub moves_with: Id,
}

/// What a named thing is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Sort {
    /// A part that comes off.
    Part,
    /// A connector.
    Connector,
    /// Something fixed, or a fuse or relay of the wiring.
    Fixed,
    /// A contact of a connector.
    Pin,
    /// A wire.
    Wire,
    /// A point that a probe can touch.
    TestPoint,
}

/// A bay.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Model {
    /// What has a name.
    pub things: Vec<Thing>,
    /// What has none: block, walls, pipes, the bench; in place as it is.
    pub scenery: Vec<Piece>,
    /// Middle of the top of the bench, and its width, height and depth [m].
    pub bench: [Vec3; 2],
}

impl Model {
    /// Lays the bay of a vehicle out.
    #[must_use]
    pub fn of(spec: &VehicleSpec) -> Self {
        super::layout::lay_out(spec)
    }

    /// The thing of a name.
    #[must_use]
    pub fn thing(&self, id: &Id) -> Option<&Thing> {
        self.things.iter().find(|thing| thing.id == *id)
    }
}

impl Thing {
    /// Where it is with `moves_with` on or off.
    #[must_use]
    pub const fn pose(&self, off: bool) -> Pose {
        if off { self.away } else { self.home }
    }

    /// Least and greatest corner in its own frame [m].
    #[must_use]
    pub fn bounds(&self) -> [Vec3; 2] {
        let mut pieces = self.pieces.iter().map(|piece| piece.solid.bounds());
        let Some(first) = pieces.next() else { return [Vec3::ZERO; 2] };
        pieces.fold(first, |[least, most], [low, high]| [least.min(low), most.max(high)])
    }

    /// Least and greatest corner in the bay, in a pose [m].
    #[must_use]
    pub fn bounds_in(&self, pose: Pose) -> [Vec3; 2] {
        let [low, high] = self.bounds();
        let corners = (0..8_u8).map(|k| {
            let pick = |bit: u8, low: f32, high: f32| if k & bit == 0 { low } else { high };
            pose.point(Vec3::new(
                pick(1, low.x, high.x),
                pick(2, low.y, high.y),
                pick(4, low.z, high.z),
            ))
        });
        corners.fold([Vec3::INFINITY, Vec3::NEG_INFINITY], |[least, most], corner| {
            [least.min(corner), most.max(corner)]
        })
    }

    /// The middle of it, in a pose [m].
    #[must_use]
    pub fn middle(&self, pose: Pose) -> Vec3 {
        let [low, high] = self.bounds();
        pose.point(low.midpoint(high))
    }
}
