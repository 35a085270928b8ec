//! Where an end can touch a thing of the bay.

use crate::vehicle::spec::{HarnessElement, Id, VehicleSpec};
use crate::workshop::view::tray::{End, Named, TrayView};
use std::collections::BTreeSet;

/// The places of an end that lie on a thing: the thing itself where it is one, else the points on the wiring that the
/// thing touches, be it a plug, a contact, a wire, a fuse, the battery or a valve.
#[must_use]
pub fn places_on(thing: &Id, end: End, tray: &TrayView, spec: &VehicleSpec) -> Vec<Named> {
    let Some(view) = tray.ends.get(&end) else { return Vec::new() };
    let itself = view.places.iter().filter(|place| place.id == *thing);
    let found: Vec<Named> = itself.cloned().collect();
    if !found.is_empty() {
        return found;
    }
    // A valve has a plug, and either stands for the other.
    if matches!(end, End::PowerPlug | End::ScopeProbe) {
        let is_its =
            |place: &&Named| spec.valve(&place.id).is_some_and(|valve| valve.connector == *thing);
        return view.places.iter().filter(is_its).cloned().collect();
    }
    let nodes = nodes_of(thing, spec);
    let is_there = |place: &&Named| {
        spec.test_point(&place.id).is_some_and(|point| nodes.contains(&point.node))
    };
    view.places.iter().filter(is_there).cloned().collect()
}

/// The nodes of the wiring that a thing touches.
fn nodes_of<'a>(thing: &Id, spec: &'a VehicleSpec) -> BTreeSet<&'a Id> {
    let touches = |element: &&HarnessElement| {
        element.id() == thing
            || match element {
                HarnessElement::Pin { connector, .. } => connector == thing,
                HarnessElement::Coil { valve, .. } => valve == thing,
                _ => false,
            }
    };
    spec.harness.elements.iter().filter(touches).flat_map(HarnessElement::nodes).collect()
}
