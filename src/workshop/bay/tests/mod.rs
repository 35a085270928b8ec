//! The bay of every vehicle that the program carries, and of vehicles unlike it, without an engine or a driver.

mod laid_out;
mod looked_at;
mod solids;

use super::model::Model;
use crate::scenario::load::{ScenarioText, read};
use crate::vehicle::per_cam::Cam;
use crate::vehicle::spec::{HarnessElement, Id, PartKind, VehicleSpec};

/// The vehicles that the program carries, each once, in the order of the scenarios.
fn carried() -> Vec<VehicleSpec> {
    let mut vehicles: Vec<VehicleSpec> = Vec::new();
    for text in ScenarioText::carried() {
        let vehicle = read(text).unwrap().vehicle;
        if !vehicles.contains(&vehicle) {
            vehicles.push(vehicle);
        }
    }
    vehicles
}

/// Vehicles that nobody drew the bay for: other names, more of everything, less of everything.
fn unlike() -> Vec<VehicleSpec> {
    let plain = carried().swap_remove(0);
    let mut more = plain.clone();
    for (kind, id) in [
        (PartKind::Cover, "sill-plate"),
        (PartKind::Cover, "belt-guard"),
        (PartKind::Connector, "lamp-plug"),
        (PartKind::Connector, "second-plug"),
        (PartKind::Clamp, "hose-clamp"),
        (PartKind::Duct, "second-duct"),
        (PartKind::Fuse, "lamp-fuse"),
    ] {
        let mut part = more.parts[0].clone();
        (part.id, part.kind, part.behind) = (Id::from(id), kind, Vec::new());
        if kind == PartKind::Fuse {
            part.behind.push(Id::from("fuse-box-lid"));
        }
        if id == "second-plug" {
            part.behind.push(Id::from("engine-cover"));
        }
        if kind == PartKind::Duct {
            part.behind.push(Id::from("hose-clamp"));
        }
        more.parts.push(part);
    }
    let mut second = more.valves[0].clone();
    (second.id, second.connector) = (Id::from("second-valve"), Id::from("second-plug"));
    second.cam = Cam::Intake;
    let mut part = more.parts[0].clone();
    (part.id, part.kind) = (Id::from("second-valve"), PartKind::Valve);
    part.behind = vec![Id::from("engine-cover"), Id::from("second-plug")];
    more.parts.push(part);
    more.valves.push(second);
    let mut less = plain;
    less.parts.retain(|part| matches!(part.kind, PartKind::Valve | PartKind::Connector));
    for part in &mut less.parts {
        part.behind.clear();
    }
    vec![more, less]
}

/// Every vehicle with its bay.
fn bays() -> Vec<(VehicleSpec, Model)> {
    let vehicles = carried().into_iter().chain(unlike());
    vehicles
        .map(|spec| {
            let model = Model::of(&spec);
            (spec, model)
        })
        .collect()
}

/// Whether an element of the wiring lies open, so that it has a place in the bay.
const fn lies_open(element: &HarnessElement) -> bool {
    matches!(
        element,
        HarnessElement::Battery { .. }
            | HarnessElement::Alternator { .. }
            | HarnessElement::Starter { .. }
            | HarnessElement::Wire { .. }
            | HarnessElement::Cable { .. }
            | HarnessElement::Fuse { .. }
            | HarnessElement::RelayContact { .. }
            | HarnessElement::Pin { .. }
    )
}
