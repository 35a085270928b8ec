//! The shipped vehicle's wiring, solved.

use crate::instruments::multimeter::{Display, MeterFunction, Multimeter};
use crate::scenario::load::demo;
use crate::units::Celsius;
use crate::vehicle::assembly::Assembly;
use crate::vehicle::condition::Condition;
use crate::vehicle::harness::{DriverState, ElectricalState, Machines, Wiring, wire_up};
use crate::vehicle::spec::{Id, VehicleSpec};
use std::collections::BTreeMap;

struct Bench {
    spec: VehicleSpec,
    assembly: Assembly,
    state: ElectricalState,
}

impl Bench {
    fn new() -> Self {
        Self {
            spec: demo().unwrap().vehicle,
            assembly: Assembly::default(),
            state: ElectricalState {
                key_on: true,
                charging: false,
                machines: Machines::RESTING,
                battery_temperature: Celsius(20.0),
                coil_temperature: BTreeMap::new(),
                drivers: BTreeMap::new(),
            },
        }
    }

    fn wiring(&self) -> Wiring {
        let condition = Condition::sound(&self.spec);
        wire_up(&self.spec, &condition, &self.assembly, &self.state).unwrap()
    }

    fn reads(&self, function: MeterFunction, red: &str, black: &str) -> f64 {
        for probe in [red, black] {
            let point = self.spec.test_point(&Id::from(probe)).unwrap();
            assert_eq!(point.node.as_str(), probe, "points are named after their nodes");
        }
        let phases = [(1.0, self.wiring())];
        match Multimeter::ideal().read(function, &phases, red, black).unwrap().display {
            Display::Value { value, .. } => value,
            Display::OverLimit => f64::INFINITY,
        }
    }

    fn volts(&self, red: &str, black: &str) -> f64 {
        self.reads(MeterFunction::Volts, red, black)
    }
}

const CAMS: [&str; 2] = ["intake", "exhaust"];

#[test]
fn pulled_fuse_kills_both_valves_and_leaves_the_module_alive() {
    let mut bench = Bench::new();
    for cam in CAMS {
        assert!(bench.volts(&format!("{cam}-harness-feed"), "battery-minus") > 12.0);
    }
    bench.assembly.take_off(&Id::from("valve-fuse"));
    assert!(bench.wiring().module_alive);
    for cam in CAMS {
        assert!(bench.volts(&format!("{cam}-harness-feed"), "battery-minus") < 0.5);
    }
    bench.assembly.put_back(&Id::from("valve-fuse"));
    assert!(bench.volts("intake-harness-feed", "battery-minus") > 12.0);
    // A part that is off and is no fuse changes nothing in the wiring.
    bench.assembly.take_off(&Id::from("fuse-box-lid"));
    assert!(bench.volts("intake-harness-feed", "battery-minus") > 12.0);
}

#[test]
fn unplugged_sound_circuit_shows_feed_bias_and_winding() {
    let mut bench = Bench::new();
    for cam in CAMS {
        bench.assembly.take_off(&Id(format!("{cam}-connector")));
    }
    for cam in CAMS {
        assert!(bench.volts(&format!("{cam}-harness-feed"), "battery-minus") > 12.0);
        let bias = bench.volts(&format!("{cam}-harness-control"), "battery-minus");
        assert!((2.3..2.7).contains(&bias), "{cam} {bias}");
        let pins = [format!("{cam}-valve-feed"), format!("{cam}-valve-control")];
        let ohms = bench.reads(MeterFunction::Ohms, &pins[0], &pins[1]);
        // The leads of 0.2 ohm are part of what is shown.
        assert!((ohms - 9.5).abs() < 0.051, "{ohms}");
    }
}

#[test]
fn driver_on_pulls_the_pin_down_and_the_losses_are_those_of_sound_wires() {
    let mut bench = Bench::new();
    for cam in CAMS {
        bench.state.drivers.insert(Id(format!("{cam}-valve")), DriverState::On);
    }
    for cam in CAMS {
        let feed_drop = bench.volts("battery-plus", &format!("{cam}-harness-feed"));
        assert!((0.02..0.5).contains(&feed_drop), "{cam} {feed_drop}");
        let pin = bench.volts(&format!("{cam}-module-control"), "battery-minus");
        assert!((0.1..0.6).contains(&pin), "{cam} {pin}");
        let wire = bench.volts(&format!("{cam}-harness-control"), &format!("{cam}-module-control"));
        assert!((0.03..0.2).contains(&wire), "{cam} {wire}");
    }
}

#[test]
fn running_engine_charges_the_battery() {
    let mut bench = Bench::new();
    let resting = bench.volts("battery-plus", "battery-minus");
    assert!((12.2..12.8).contains(&resting), "{resting}");
    bench.state.charging = true;
    let charging = bench.volts("battery-plus", "battery-minus");
    assert!((13.5..14.8).contains(&charging), "{charging}");
    bench.state.charging = false;
    bench.state.key_on = false;
    assert!(bench.volts("intake-harness-feed", "battery-minus").abs() < 0.1);
}

#[test]
fn every_test_point_and_part_that_the_project_speaks_of_is_there() {
    let spec = Bench::new().spec;
    for point in ["battery-plus", "battery-minus", "engine-ground", "fuse-box", "valve-fuse-out"] {
        assert!(spec.test_point(&Id::from(point)).is_some(), "{point}");
    }
    for cam in CAMS {
        for point in
            ["harness-feed", "harness-control", "valve-feed", "valve-control", "module-control"]
        {
            assert!(spec.test_point(&Id(format!("{cam}-{point}"))).is_some(), "{cam} {point}");
        }
        for element in ["feed-wire", "control-wire", "feed-pin", "control-pin", "coil", "driver"] {
            assert!(spec.element(&Id(format!("{cam}-{element}"))).is_some(), "{cam} {element}");
        }
    }
    for element in [
        "battery",
        "alternator",
        "battery-cable",
        "valve-fuse",
        "module-fuse",
        "valve-relay",
        "module-relay",
        "feed-wire",
        "ground-strap",
        "module-ground-wire",
    ] {
        assert!(spec.element(&Id::from(element)).is_some(), "{element}");
    }
}
