//! From where the bay is seen.

use bevy::math::{Quat, Vec2, Vec3, vec2, vec3};

/// Angle between the upper and the lower edge of a picture that is wide enough [radians].
const FIELD_OF_VIEW: f32 = 0.62;
/// Width over height from which a picture is wide enough; a narrower one shows more above and below instead of less on
/// both sides.
const WIDE: f32 = 1.5;

/// Angle between the upper and the lower edge of a picture of a ratio of width to height [radians].
#[must_use]
pub fn field_of_view(ratio: f32) -> f32 {
    2.0 * half_height(ratio).atan()
}

/// Half of a picture's height at a distance of one.
fn half_height(ratio: f32) -> f32 {
    (FIELD_OF_VIEW / 2.0).tan() * (WIDE / ratio.max(0.1)).max(1.0)
}
/// Least and greatest angle above the horizon [radians].
const PITCH: [f32; 2] = [0.05, 1.45];
/// Least and greatest distance from what is looked at [m].
const DISTANCE: [f32; 2] = [0.28, 6.0];

/// A camera that looks at a point.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Orbit {
    /// What is looked at [m].
    pub target: Vec3,
    /// Direction from there to the camera, from the front towards the right [radians].
    pub yaw: f32,
    /// Angle above the horizon [radians].
    pub pitch: f32,
    /// Distance of the camera from there [m].
    pub distance: f32,
}

/// A place from which it is good to look.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Viewpoint {
    /// All of it.
    Whole,
    /// The intake side with its valve.
    Intake,
    /// The exhaust side.
    Exhaust,
    /// Battery and fuses.
    Battery,
    /// The control module and the air filter.
    Module,
    /// What lies on the bench.
    Bench,
}

impl Viewpoint {
    /// Every viewpoint, in the order of their keys.
    pub const ALL: [Self; 6] =
        [Self::Whole, Self::Intake, Self::Exhaust, Self::Battery, Self::Module, Self::Bench];

    /// The message that names it.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::Whole => "bay-view-whole",
            Self::Intake => "bay-view-intake",
            Self::Exhaust => "bay-view-exhaust",
            Self::Battery => "bay-view-battery",
            Self::Module => "bay-view-module",
            Self::Bench => "bay-view-bench",
        }
    }

    /// The camera there; `bench` is the middle of the bench's top and its size [m].
    #[must_use]
    pub fn orbit(self, bench: [Vec3; 2]) -> Orbit {
        let at = |target: Vec3, yaw: f32, pitch: f32, distance: f32| Orbit {
            target,
            yaw: yaw.to_radians(),
            pitch: pitch.to_radians(),
            distance,
        };
        let [middle, size] = bench;
        match self {
            Self::Whole => at(vec3(0.07, 0.44, 0.0), 9.0, 47.0, 2.35),
            Self::Intake => at(vec3(0.06, 0.57, 0.13), 20.0, 34.0, 1.25),
            Self::Exhaust => at(vec3(0.08, 0.60, -0.10), 148.0, 52.0, 1.30),
            Self::Battery => at(vec3(0.62, 0.52, 0.12), -14.0, 44.0, 1.20),
            Self::Module => at(vec3(-0.56, 0.50, 0.16), 24.0, 42.0, 1.30),
            Self::Bench => at(middle + Vec3::Y * 0.02, -6.0, 54.0, 0.35 + size.x * 1.15),
        }
    }
}

impl Orbit {
    /// Where the camera stands [m].
    #[must_use]
    pub fn eye(self) -> Vec3 {
        self.target + self.turn() * (Vec3::Z * self.distance)
    }

    /// How it is turned: it looks along its own negative z.
    #[must_use]
    pub fn turn(self) -> Quat {
        Quat::from_rotation_y(self.yaw) * Quat::from_rotation_x(-self.pitch)
    }

    /// Turned by a drag over the picture, in shares of its height; to the right turns the bay to the right.
    #[must_use]
    pub fn turned(self, drag: Vec2) -> Self {
        Self { yaw: self.yaw - 2.6 * drag.x, pitch: self.pitch + 2.6 * drag.y, ..self }.held()
    }

    /// Shifted by a drag over the picture, in shares of its height: what is looked at goes with the pointer.
    #[must_use]
    pub fn shifted(self, drag: Vec2) -> Self {
        let height = 2.0 * self.distance * half_height(WIDE);
        let turn = self.turn();
        let by = (turn * Vec3::X) * -drag.x + (turn * Vec3::Y) * drag.y;
        Self { target: self.target + by * height, ..self }.held()
    }

    /// Nearer by a factor.
    #[must_use]
    pub fn nearer(self, factor: f32) -> Self {
        Self { distance: self.distance / factor, ..self }.held()
    }

    /// Looking at a point from where it can be seen well, at a distance that shows a size around it [m].
    #[must_use]
    pub fn looking_at(self, point: Vec3, size: f32) -> Self {
        Self { target: point, distance: (size * 4.5).clamp(0.55, 2.2), ..self }.held()
    }

    /// Brought into its limits: not under the floor, not inside a part, the hall around it.
    fn held(self) -> Self {
        let [low, high] = [vec3(-1.2, 0.0, -0.8), vec3(3.2, 1.0, 0.9)];
        let turns = (self.yaw / core::f32::consts::TAU).round();
        Self {
            target: self.target.clamp(low, high),
            yaw: self.yaw - turns * core::f32::consts::TAU,
            pitch: self.pitch.clamp(PITCH[0], PITCH[1]),
            distance: self.distance.clamp(DISTANCE[0], DISTANCE[1]),
        }
    }

    /// A camera on the way to another, from 0 to 1; it turns the shorter way.
    #[must_use]
    pub fn towards(self, other: Self, share: f32) -> Self {
        if share >= 1.0 {
            return other;
        }
        let eased = share * share * (3.0 - 2.0 * share);
        let tau = core::f32::consts::TAU;
        let turn = other.yaw - self.yaw;
        let turn = turn - (turn / tau).round() * tau;
        let mix = |one: f32, other: f32| one + (other - one) * eased;
        Self {
            target: self.target.lerp(other.target, eased),
            yaw: self.yaw + turn * eased,
            pitch: mix(self.pitch, other.pitch),
            distance: mix(self.distance, other.distance),
        }
    }

    /// The ray through a point of a picture: where it begins and its direction. `at` runs from 0 to 1, from the left
    /// and from above; `ratio` is the picture's width over its height.
    #[must_use]
    pub fn ray(self, at: Vec2, ratio: f32) -> [Vec3; 2] {
        let half = half_height(ratio);
        let across = vec3((at.x * 2.0 - 1.0) * half * ratio, (1.0 - at.y * 2.0) * half, -1.0);
        [self.eye(), (self.turn() * across).normalize()]
    }

    /// Where a point of the bay is in the picture, as in [`Self::ray`]; nothing for one behind the camera.
    #[must_use]
    pub fn seen(self, point: Vec3, ratio: f32) -> Option<Vec2> {
        let half = half_height(ratio);
        let inner = self.turn().inverse() * (point - self.eye());
        (inner.z < -0.02).then(|| {
            let across = vec2(inner.x, inner.y) / (-inner.z * half);
            vec2(across.x / ratio * 0.5 + 0.5, 0.5 - across.y * 0.5)
        })
    }
}
