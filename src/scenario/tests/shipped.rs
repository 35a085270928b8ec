//! The files that the program carries.

use crate::faults::places;
use crate::scenario::load::{ScenarioText, demo, read};
use crate::scenario::schema::{FaultPrior, ScenarioFile, VEHICLE_VERSION, VehicleFile};
use crate::units::Rpm;
use crate::vehicle::per_cam::Cam;
use crate::vehicle::route::Segment;
use crate::vehicle::spec::{Id, VehicleSpec};
use std::collections::BTreeSet;

#[test]
fn demo_has_no_problem() {
    let loaded = demo().unwrap_or_else(|error| panic!("{error:#?}"));
    assert_eq!(loaded.text, ScenarioText::demo());
    assert_eq!(loaded.vehicle.name, "Harrowfen Dray");
}

#[test]
fn demo_draws_a_kind_of_fault_at_every_place_or_at_none() {
    let loaded = demo().unwrap();
    let drawn: BTreeSet<_> = loaded.scenario.faults.iter().flat_map(FaultPrior::names).collect();
    let kinds: BTreeSet<_> = drawn.iter().map(|name| name.kind).collect();
    let possible: BTreeSet<_> =
        places(&loaded.vehicle).into_iter().filter(|name| kinds.contains(&name.kind)).collect();
    assert_eq!(drawn, possible);
    assert!(kinds.len() >= 9, "{kinds:?}");
    assert!(loaded.scenario.faults.iter().all(|prior| prior.weight > 0.0));
}

#[test]
fn prop_round_trip_of_both_files() {
    let loaded = demo().unwrap();
    let scenario = ron::to_string(&loaded.scenario).unwrap();
    assert_eq!(ron::from_str::<ScenarioFile>(&scenario).unwrap(), loaded.scenario);
    let file: VehicleFile = VehicleFile {
        format: "faultwright vehicle".to_owned(),
        version: VEHICLE_VERSION,
        vehicle: loaded.vehicle.clone(),
    };
    let vehicle = ron::ser::to_string_pretty(&file, ron::ser::PrettyConfig::default()).unwrap();
    // What the program writes it can also read, through the same door as any file.
    let again = read(ScenarioText {
        scenario_name: "again".to_owned(),
        scenario_text: scenario,
        vehicle_text: vehicle,
    })
    .unwrap();
    assert_eq!(again.vehicle, loaded.vehicle);
    assert_eq!(again.scenario, loaded.scenario);
    let json = serde_json::to_string(&again.text).unwrap();
    assert_eq!(serde_json::from_str::<ScenarioText>(&json).unwrap(), again.text);
}

/// Minutes to reach a part: everything in its way, off and on again.
fn minutes_to_reach(spec: &VehicleSpec, part: &str) -> u32 {
    let mut off = BTreeSet::new();
    let mut next = vec![Id::from(part)];
    while let Some(part) = next.pop() {
        for blocker in &spec.part(&part).unwrap().behind {
            if off.insert(blocker.clone()) {
                next.push(blocker.clone());
            }
        }
    }
    off.iter().map(|id| spec.part(id).unwrap()).map(|part| part.remove.0 + part.refit.0).sum()
}

#[test]
fn exhaust_valve_is_harder_to_reach_than_the_intake_valve() {
    let spec = demo().unwrap().vehicle;
    assert!(minutes_to_reach(&spec, "exhaust-valve") > 3 * minutes_to_reach(&spec, "intake-valve"));
}

/// Steps of the wanted position that a slow-response monitor would time: more than 8 degrees.
/// Load changes at once, speed takes its time.
fn large_steps(route: &str, cam: Cam) -> usize {
    let loaded = demo().unwrap();
    let segments = &loaded.scenario.routes.get(route).unwrap().profile.segments;
    let map = loaded.vehicle.module.target_maps.of(cam);
    let is_large = |pair: &&[Segment]| {
        let at = |load| map.at(Rpm(pair[0].rpm), load).0;
        (at(pair[1].load) - at(pair[0].load)).abs() > 8.0
    };
    segments.windows(2).filter(is_large).count()
}

#[test]
fn routes_do_what_they_are_there_for() {
    for (route, least, most) in
        [("customers-road", 6, 20), ("test-hill", 10, 20), ("town-loop", 0, 0)]
    {
        for cam in Cam::BOTH {
            let steps = large_steps(route, cam);
            assert!((least..=most).contains(&steps), "{route} {cam:?}: {steps}");
        }
    }
}
