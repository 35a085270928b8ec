//! A scenario and a vehicle in which every field is written, so that each can be asked about.

use crate::control_module::oil_pressure_monitor::OilPressureLimits;
use crate::control_module::supply_monitor::SupplyLimits;
use crate::scenario::load;
use crate::scenario::schema::{
    CodeOrigin, FaultPart, OldCode, OtherWinding, SCENARIO_VERSION, ScenarioFile, Teaching,
    VEHICLE_FORMAT, VEHICLE_VERSION, VehicleFile,
};
use crate::session::setup::Approval;
use crate::session::shelf::{OtherPart, PartGrade, Shelf};
use crate::session::toolbox::{TimeLimit, Tool, Tools};
use crate::units::{Minutes, Money};
use crate::vehicle::spec::{HarnessElement, Id, LoadOhms};

/// Both files. What they say together need not make sense; the form is right, and nothing is left out.
pub fn files() -> (ScenarioFile, VehicleFile) {
    let load::Loaded { mut scenario, mut vehicle, .. } = load::demo().unwrap();
    let lines = || vec!["a line".to_owned()];
    scenario.about = "a sentence".to_owned();
    scenario.teaching = Teaching { teaches: "a lesson".to_owned(), traps: lines(), path: lines() };
    let sump = FaultPart {
        kind: crate::faults::FaultKind::LowOil,
        place: Id::from("sump"),
        severity: (0.0, 1.0),
    };
    scenario.faults[0].also = vec![sump];
    let code = "P0456".parse().unwrap();
    scenario.decoys.old_codes = vec![OldCode { code, origin: CodeOrigin::default(), chance: 0.5 }];
    scenario.decoys.other_winding = Some(OtherWinding {
        place: Id::from("exhaust-valve"),
        part_number: Id::from("hd-4470-3"),
        chance: 0.5,
    });
    vehicle.cylinders = 4;
    scenario.approval = Approval::UpTo { money: Money(1) };
    scenario.tools = Tools::Only([Tool::Scope].into());
    scenario.time_limit = TimeLimit::UpTo { minutes: Minutes(60) };
    let other = OtherPart {
        stands_for: Id::from("hd-4470-1"),
        grade: PartGrade::Used,
        price: Money(1),
        wait: Minutes(1),
        resistance: 1.0,
        screen_blocked: 0.1,
        stiction_n: 1.0,
    };
    scenario.shelf = Shelf {
        waiting_per_hour: Money(1),
        waits: [(Id::from("hd-4470-1"), Minutes(1))].into(),
        others: [(Id::from("other-part"), other)].into(),
    };
    scenario.version = SCENARIO_VERSION;
    vehicle.longest_power = Some(1.0);
    vehicle.parts[0].torque_nm = Some(10.0);
    vehicle.module.monitors.supply = Some(SupplyLimits::default());
    vehicle.module.monitors.oil_pressure = Some(OilPressureLimits::default());
    for element in &mut vehicle.harness.elements {
        if let HarnessElement::Load { load: LoadOhms { running, .. }, .. }
        | HarnessElement::ModuleSupply { load: LoadOhms { running, .. }, .. } = element
        {
            *running = Some(10.0);
        }
    }
    vehicle.harness.elements.push(HarnessElement::Cable {
        id: Id::from("sample-cable"),
        from: Id::from("battery-plus"),
        to: Id::from("engine-ground"),
        metres: 1.0,
        mm2: 1.0,
    });
    let format = VEHICLE_FORMAT.to_owned();
    (scenario, VehicleFile { format, version: VEHICLE_VERSION, vehicle })
}
