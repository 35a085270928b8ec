//! Lays a vehicle's bay out: every part that its file names gets a shape and a place by its kind and by what hides it.
//!
//! The file says nothing of places. An engine across the bay is drawn, the intake side or in a V one bank in
//! front, the control module on the left, battery and fuses on the right: common practice, no source, and the same for every vehicle. So another
//! vehicle needs no code.

use super::anchors::Anchors;
use super::model::{Model, Sort, Thing};
use super::parts;
use super::piece::Piece;
use super::pose::Pose;
use super::role::{CoverRole, role_of};
use super::{bench, scenery, wires};
use crate::control_module::code_family::Bank;
use crate::vehicle::per_cam::Cam;
use crate::vehicle::spec::{HarnessElement, Id, PartKind, PartSpec, ValveSpec, VehicleSpec};
use bevy::math::{Quat, Vec2, Vec3, vec2, vec3};

/// Height of the cam cover's ridges, on which the valves stand [m].
pub const RIDGE: f32 = 0.60;
/// Distance of each camshaft from the middle of the engine [m].
pub const CAM: f32 = 0.088;
/// Where the battery, the fuse box and the control module stand [m].
pub const BATTERY: Vec3 = vec3(0.63, 0.36, -0.04);
/// See [`BATTERY`].
pub const FUSE_BOX: Vec3 = vec3(0.63, 0.40, 0.25);
/// See [`BATTERY`].
pub const MODULE: Vec3 = vec3(-0.60, 0.40, 0.29);
/// Size of the fuse box [m].
pub const FUSE_BOX_SIZE: Vec3 = vec3(0.28, 0.13, 0.19);
/// Size of the module's casting [m].
pub const MODULE_SIZE: Vec3 = vec3(0.25, 0.060, 0.18);
/// Where the ground of the engine is bolted [m].
pub const GROUND: Vec3 = vec3(0.20, 0.40, 0.195);
/// Left edge of the bench [m].
const BENCH_FROM: f32 = 1.02;
/// How far behind the first a second duct lies [m].
const BEHIND: Vec3 = vec3(0.0, 0.05, -0.25);
/// Where the duct ends at the throttle [m].
const THROTTLE: Vec3 = vec3(0.315, 0.655, -0.115);

/// Puts the bay together.
pub(super) fn lay_out(spec: &VehicleSpec) -> Model {
    let mut laying = Laying { spec, things: Vec::new(), rows: Rows::default() };
    for part in &spec.parts {
        laying.part(part);
    }
    laying.machines();
    let mut things = laying.things;
    let bench = bench::lay(&mut things, BENCH_FROM);
    let mut anchors = Anchors::default();
    for element in &*spec.harness.elements {
        anchors.of_element(element, spec, &things);
    }
    things.extend(wires::pins(spec, &things));
    things.extend(wires::wires(spec, &anchors));
    things.extend(wires::test_points(spec, &things, &anchors));
    things.sort_by_key(|thing| thing.sort);
    let valves: Vec<Vec3> =
        spec.valves.iter().map(|valve| Laying::valve_home(spec, &valve.id).at).collect();
    let mut scenery = scenery::scenery(&valves);
    scenery.extend(bench::furniture(bench));
    Model { things, scenery, bench }
}

/// How many of a kind have a place already.
#[derive(Debug, Default)]
struct Rows {
    fuses: u8,
    relays: u8,
    ducts: u8,
    plain: u8,
    loose: u8,
}

/// Counts one more and gives how many there were.
fn next(count: &mut u8) -> f32 {
    let before = f32::from(*count);
    *count = count.saturating_add(1);
    before
}

struct Laying<'a> {
    spec: &'a VehicleSpec,
    things: Vec<Thing>,
    rows: Rows,
}

impl Laying<'_> {
    fn put(&mut self, id: &Id, sort: Sort, pieces: Vec<Piece>, home: Pose) {
        let thing = Thing {
            id: id.clone(),
            sort,
            pieces,
            line: Vec::new(),
            home,
            away: home,
            moves_with: id.clone(),
        };
        self.things.push(thing);
    }

    /// Where a valve stands, whether or not it has been put there yet.
    fn valve_home(spec: &VehicleSpec, valve: &Id) -> Pose {
        let mut along = [0.0_f32; 2];
        let at_back = row_at_back(spec);
        for other in &spec.valves {
            let (side, row, turn) = if at_back.holds(other) {
                (-CAM, &mut along[1], 40.0)
            } else {
                (CAM, &mut along[0], 0.0)
            };
            if other.id == *valve {
                return Pose::facing(vec3(0.20 - *row, RIDGE, side), turn);
            }
            *row += 0.15;
        }
        Pose::upright(vec3(0.20, RIDGE, 0.0))
    }

    fn part(&mut self, part: &PartSpec) {
        let spec = self.spec;
        match part.kind {
            PartKind::Valve => {
                self.put(&part.id, Sort::Part, parts::valve(), Self::valve_home(spec, &part.id));
            }
            PartKind::Connector => self.connector(part),
            PartKind::Cover => self.cover(part),
            PartKind::Duct => {
                let back = BEHIND * next(&mut self.rows.ducts);
                let pieces = parts::duct(&duct_path());
                self.put(&part.id, Sort::Part, pieces, Pose::upright(back));
            }
            PartKind::Clamp => {
                let duct = spec.parts.iter().filter(|other| other.kind == PartKind::Duct);
                let number = duct.into_iter().position(|duct| duct.behind.contains(&part.id));
                let back = BEHIND * number.map_or(0.0, |number| number as f32);
                let home = THROTTLE + Vec3::Y * 0.006 + back;
                self.put(&part.id, Sort::Part, parts::clamp(), Pose::facing(home, 25.0));
            }
            PartKind::Fuse => {
                let rating = spec.element(&part.id).map_or(10.0, |element| match element {
                    HarnessElement::Fuse { rating, .. } => *rating,
                    _ => 10.0,
                });
                let home = fuse_place(next(&mut self.rows.fuses));
                self.put(&part.id, Sort::Part, parts::fuse(rating), Pose::upright(home));
            }
        }
    }

    fn connector(&mut self, part: &PartSpec) {
        let of_valve = self.spec.valves.iter().find(|valve| valve.connector == part.id);
        let home = if let Some(valve) = of_valve {
            Self::valve_home(self.spec, &valve.id).and(Pose::upright(parts::SOCKET))
        } else {
            // One that no valve names sits in the loom.
            Pose::upright(vec3(-0.20 + 0.11 * next(&mut self.rows.loose), 0.52, 0.24))
        };
        self.put(&part.id, Sort::Connector, parts::connector(), home);
        // Unplugged it is bent up at its wires, so that its face can be seen.
        let wires = Pose::upright(vec3(0.0, 0.0, 0.064));
        let bent =
            Pose { at: vec3(0.0, 0.012, 0.020), turn: Quat::from_rotation_x(112_f32.to_radians()) };
        if let Some(thing) = self.things.last_mut() {
            thing.away = home.and(wires).and(bent).and(Pose::upright(vec3(0.0, 0.0, -0.064)));
        }
    }

    fn cover(&mut self, part: &PartSpec) {
        let (pieces, home) = match role_of(part, self.spec) {
            CoverRole::Engine => {
                (parts::engine_cover(vec3(0.70, 0.195, 0.37)), vec3(0.035, 0.605, -0.015))
            }
            CoverRole::HeatShield(valve) => {
                let foot = Self::valve_home(self.spec, valve).at;
                (parts::heat_shield(), foot + vec3(0.0, 0.068, 0.0))
            }
            CoverRole::Manifold(first, last) => {
                let [one, other] = [first, last].map(|valve| Self::valve_home(self.spec, valve).at);
                let over = parts::manifold(one.distance(other));
                (over, one.midpoint(other) + vec3(0.0, 0.094, 0.0))
            }
            CoverRole::Module => {
                let over = vec3(MODULE_SIZE.x + 0.05, 0.060, MODULE_SIZE.z + 0.05);
                (parts::module_cover(over), MODULE + vec3(0.0, MODULE_SIZE.y - 0.030, 0.0))
            }
            CoverRole::FuseBox => {
                let over = vec3(FUSE_BOX_SIZE.x + 0.016, 0.058, FUSE_BOX_SIZE.z + 0.016);
                (parts::lid(over), FUSE_BOX + vec3(0.0, FUSE_BOX_SIZE.y - 0.012, 0.0))
            }
            CoverRole::Plain => {
                let along = 0.17 * next(&mut self.rows.plain);
                (parts::plain_cover(vec3(0.14, 0.02, 0.10)), vec3(-0.24 + along, 0.60, 0.51))
            }
        };
        self.put(&part.id, Sort::Part, pieces, Pose::upright(home));
    }

    /// What the wiring names and nothing takes off: battery, machines, fuses and relays without a part.
    fn machines(&mut self) {
        let spec = self.spec;
        for element in &*spec.harness.elements {
            let id = element.id();
            if spec.part(id).is_some() {
                continue;
            }
            let (pieces, home) = match element {
                HarnessElement::Battery { .. } => {
                    (parts::battery(&posts()), Pose::upright(BATTERY))
                }
                HarnessElement::Alternator { .. } => {
                    (parts::alternator(), Pose::upright(vec3(0.295, 0.27, 0.245)))
                }
                HarnessElement::Starter { .. } => {
                    (parts::starter(), Pose::upright(vec3(-0.24, 0.26, 0.235)))
                }
                HarnessElement::Fuse { rating, .. } => {
                    let home = fuse_place(next(&mut self.rows.fuses));
                    (parts::fuse(*rating), Pose::upright(home))
                }
                HarnessElement::RelayContact { .. } => {
                    let along = 0.056 * next(&mut self.rows.relays);
                    let home = FUSE_BOX + vec3(-0.090 + along, FUSE_BOX_SIZE.y - 0.018, -0.045);
                    (parts::relay(), Pose::upright(home))
                }
                _ => continue,
            };
            self.put(id, Sort::Fixed, pieces, home);
        }
        let stick = Pose::facing(vec3(-0.13, 0.53, 0.225), 20.0);
        self.put(&Id::from(super::DIPSTICK), Sort::Fixed, parts::dipstick(), stick);
    }
}

/// A row of valves along the engine: a camshaft's, or in a V a bank's.
#[derive(Debug, Clone, Copy)]
enum Row {
    Camshaft(Cam),
    Bank(Bank),
}

impl Row {
    fn holds(self, valve: &ValveSpec) -> bool {
        match self {
            Self::Camshaft(cam) => valve.cam == cam,
            Self::Bank(bank) => valve.bank == bank,
        }
    }
}

/// The row at the back of the engine, over which the duct runs: the one whose plugs lie behind it and the other's do
/// not, else the exhaust camshaft's or bank two.
fn row_at_back(spec: &VehicleSpec) -> Row {
    let is_duct = |id: &Id| spec.part(id).is_some_and(|part| part.kind == PartKind::Duct);
    let is_behind = |row: Row| {
        let valves = spec.valves.iter().filter(|valve| row.holds(valve));
        let mut plugs = valves.filter_map(|valve| spec.part(&valve.connector));
        plugs.any(|plug| plug.behind.iter().any(is_duct))
    };
    let [first, else_at_back] =
        if spec.has_two_banks() { Bank::BOTH.map(Row::Bank) } else { Cam::BOTH.map(Row::Camshaft) };
    if is_behind(first) && !is_behind(else_at_back) { first } else { else_at_back }
}

/// The battery's posts in its own frame: the positive one, the other.
fn posts() -> [Vec3; 2] {
    super::anchors::post_places().map(|at| at - BATTERY)
}

/// Where a fuse sits in its box, counted from the left.
fn fuse_place(number: f32) -> Vec3 {
    FUSE_BOX + vec3(-0.095 + 0.046 * number, FUSE_BOX_SIZE.y - 0.020, 0.048)
}

/// From the air filter over the back of the engine down to the throttle.
fn duct_path() -> [Vec3; 6] {
    [
        vec3(-0.445, 0.60, 0.0),
        vec3(-0.355, 0.665, -0.035),
        vec3(-0.19, 0.748, -0.112),
        vec3(0.19, 0.752, -0.115),
        vec3(0.296, 0.722, -0.115),
        THROTTLE,
    ]
}

/// Puts what comes off onto the bench.
pub(super) fn footprint(thing: &Thing) -> Vec2 {
    let [low, high] = thing.bounds_in(Pose { at: Vec3::ZERO, turn: lying(thing) });
    vec2(high.x - low.x, high.z - low.z)
}

/// How a part lies on the bench: what stands in the engine is laid down, so that its inner end is seen.
pub(super) fn lying(thing: &Thing) -> Quat {
    let [low, _] = thing.bounds();
    if low.y < -0.10 && thing.home.at.y + low.y < RIDGE {
        Quat::from_rotation_y(0.5) * Quat::from_rotation_z(100_f32.to_radians())
    } else {
        thing.home.turn
    }
}
