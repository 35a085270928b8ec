//! What a cover is for, read from what it hides.

use crate::vehicle::spec::{HarnessElement, Id, PartKind, PartSpec, VehicleSpec};

/// What a cover covers.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum CoverRole<'a> {
    /// The engine: a valve is behind it, and nothing is in its own way.
    Engine,
    /// One valve, with something else in the way.
    HeatShield(&'a Id),
    /// Several valves, from the first to the last, with something else in the way.
    Manifold(&'a Id, &'a Id),
    /// The control module: a driver's pin is behind it.
    Module,
    /// Fuses.
    FuseBox,
    /// Nothing that the file tells of.
    Plain,
}

/// What a cover is for.
#[must_use]
pub fn role_of<'a>(cover: &PartSpec, spec: &'a VehicleSpec) -> CoverRole<'a> {
    let hides = |behind: &[Id]| behind.contains(&cover.id);
    let parts = spec.parts.iter().filter(|part| hides(&part.behind));
    if parts.clone().any(|part| part.kind == PartKind::Fuse) {
        return CoverRole::FuseBox;
    }
    let valves: Vec<&Id> =
        parts.filter(|part| part.kind == PartKind::Valve).map(|part| &part.id).collect();
    match valves[..] {
        [] => {}
        _ if cover.behind.is_empty() => return CoverRole::Engine,
        [valve] => return CoverRole::HeatShield(valve),
        [first, .., last] => return CoverRole::Manifold(first, last),
    }
    let is_driver_pin = |node: &Id| {
        spec.harness
            .elements
            .iter()
            .any(|element| matches!(element, HarnessElement::Driver { pin, .. } if pin == node))
    };
    let mut points = spec.test_points.iter().filter(|point| hides(&point.behind));
    if points.any(|point| is_driver_pin(&point.node)) {
        CoverRole::Module
    } else {
        CoverRole::Plain
    }
}
