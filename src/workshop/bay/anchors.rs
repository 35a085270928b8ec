//! Where the nodes of the wiring are.

use super::layout::{BATTERY, FUSE_BOX, FUSE_BOX_SIZE, GROUND, MODULE, MODULE_SIZE};
use super::model::Thing;
use super::parts;
use super::pose::Pose;
use crate::vehicle::spec::{HarnessElement, Id, VehicleSpec};
use bevy::math::{Quat, Vec3, vec3};
use std::collections::BTreeMap;

/// Where a wire can end, and in which direction it leaves.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Anchor {
    /// Where [m].
    pub at: Vec3,
    /// Direction in which a wire leaves.
    pub leaves: Vec3,
    /// Where a probe touches it.
    pub probe: Pose,
}

/// Places of nodes by their names.
#[derive(Debug, Default)]
pub struct Anchors {
    places: BTreeMap<Id, Anchor>,
    in_box: u8,
    at_module: u8,
}

/// Where a wire meets a plug, in the plug's frame: one side and the other.
const BOOTS: [Vec3; 2] = [vec3(-0.011, 0.0, 0.062), vec3(0.011, 0.0, 0.062)];

impl Anchors {
    /// The place of a node; nothing for one that is only a splice in the loom.
    #[must_use]
    pub fn place(&self, node: &Id) -> Option<Anchor> {
        self.places.get(node).copied()
    }

    fn put(&mut self, node: &Id, at: Vec3, leaves: Vec3, probe: Pose) {
        self.places.entry(node.clone()).or_insert(Anchor { at, leaves, probe });
    }

    fn in_box(&mut self, node: &Id) {
        let along = f32::from(self.in_box % 6);
        if !self.places.contains_key(node) {
            self.in_box += 1;
        }
        let at = FUSE_BOX + vec3(0.10 - 0.034 * along, 0.02, FUSE_BOX_SIZE.z / 2.0);
        // On the deck, under the lid.
        let probe = at.with_y(FUSE_BOX.y + FUSE_BOX_SIZE.y - 0.012) - Vec3::Z * 0.022;
        self.put(node, at, Vec3::Z, Pose::upright(probe));
    }

    fn at_module(&mut self, node: &Id) {
        let along = f32::from(self.at_module % 6);
        if !self.places.contains_key(node) {
            self.at_module += 1;
        }
        let side = vec3(MODULE_SIZE.x / 2.0 + 0.030, MODULE_SIZE.y * 0.5, -0.05 + 0.025 * along);
        let probe = MODULE + side.with_y(MODULE_SIZE.y + 0.004) - Vec3::X * 0.016;
        self.put(node, MODULE + side, Vec3::X, Pose::upright(probe));
    }

    /// Takes the places that an element of the wiring gives its nodes.
    pub(super) fn of_element(
        &mut self,
        element: &HarnessElement,
        spec: &VehicleSpec,
        things: &[Thing],
    ) {
        match element {
            HarnessElement::Battery { plus, minus, .. } => {
                let [left, right] = post_places();
                for (node, at) in [(plus, left), (minus, right)] {
                    // The cable leaves from the clamp beside the post.
                    let clamp = at + vec3(0.034, 0.014, 0.0);
                    self.put(node, clamp, Vec3::Y, Pose::upright(at + Vec3::Y * 0.036));
                }
            }
            HarnessElement::Alternator { minus, .. } | HarnessElement::Starter { minus, .. } => {
                let turn = Quat::from_rotation_x(core::f32::consts::FRAC_PI_2);
                let probe = Pose { at: GROUND + Vec3::Z * 0.008, turn };
                self.put(minus, GROUND, Vec3::Z, probe);
            }
            HarnessElement::Fuse { from, to, .. }
            | HarnessElement::RelayContact { from, to, .. } => {
                self.in_box(from);
                self.in_box(to);
            }
            HarnessElement::Pin { connector, from, .. } => {
                if let Some(plug) = things.iter().find(|thing| thing.id == *connector) {
                    let place = pin_number(element.id(), connector, spec);
                    let foot = BOOTS[place % 2] + vec3(0.0, 0.010 * (place / 2) as f32, 0.0);
                    let at = plug.home.point(foot);
                    self.put(from, at, plug.home.turn * Vec3::Z, Pose::upright(at));
                }
            }
            HarnessElement::Driver { pin, .. } => self.at_module(pin),
            HarnessElement::ModuleSupply { supply, ground, .. } => {
                self.at_module(supply);
                self.at_module(ground);
            }
            _ => {}
        }
    }
}

/// Where the battery's posts are: the positive one on the left.
#[must_use]
pub fn post_places() -> [Vec3; 2] {
    [-0.088, 0.088].map(|x| BATTERY + vec3(x, parts::CASE.y, 0.050))
}

/// Which contact of its connector a pin is.
pub(super) fn pin_number(pin: &Id, connector: &Id, spec: &VehicleSpec) -> usize {
    let pins = spec.harness.elements.iter().filter(
        |element| matches!(element, HarnessElement::Pin { connector: of, .. } if of == connector),
    );
    pins.into_iter().position(|element| element.id() == pin).unwrap_or(0)
}
