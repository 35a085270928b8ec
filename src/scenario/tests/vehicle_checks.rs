//! Errors of meaning in a vehicle.

use super::planted::In::Vehicle;
use super::planted::{alone, among, everywhere, planted};
use crate::scenario::load::ScenarioText;
use crate::scenario::problem::{HarnessNeed, ProblemKind, Thing};
use crate::vehicle::spec::Id;

fn one(from: &str, to: &str, kind: ProblemKind) {
    alone(Vehicle, from, to, kind);
}

fn out(from: &str, to: &str, found: f64, (least, most): (f64, f64)) {
    one(from, to, ProblemKind::OutOfRange { found, least, most });
}

fn unknown(thing: Thing, found: &str, nearest: &str) -> ProblemKind {
    ProblemKind::UnknownName { thing, found: found.to_owned(), nearest: Some(nearest.to_owned()) }
}

fn repeated(thing: Thing, name: &str) -> ProblemKind {
    ProblemKind::Repeated { thing, name: name.to_owned() }
}

#[test]
fn vehicle_as_a_whole() {
    one("name: \"Harrowfen Dray\"", "name: ¦\"\"", ProblemKind::Empty);
    one("engine: \"1.4", "engine: ¦\"\", // \"1.4", ProblemKind::Empty);
    out("year: 2016", "year: ¦216", 216.0, (1950.0, 2100.0));
    out("full_litres: 4.2", "full_litres: ¦42", 42.0, (1.0, 20.0));
    out("least_litres: 3.3", "least_litres: ¦0.3", 0.3, (0.5, 20.0));
    one(
        "least_litres: 3.3",
        "least_litres: ¦4.2",
        ProblemKind::WrongOrder { first: 4.2, second: 4.2 },
    );
    out("longest_power: 2.0", "longest_power: ¦-2.0", -2.0, (0.1, 600.0));
}

#[test]
fn maps_and_monitors() {
    out(
        "(3, 4, 5,  8, 13, 20, 26, 31, 35, 39)",
        "(3, 4, 5,  8, 13, 20, 26, 31, 35, ¦390)",
        390.0,
        (0.0, 60.0),
    );
    one(
        "rpm: (700, 1000, 1300, 1600, 2000, 2500, 3200, 4500),\n                    load: (0.06, 0.15, 0.25, 0.32, 0.40, 0.55, 0.68, 0.80, 0.90, 1.00),\n                    degrees: (\n                        (0, 0, 0,  6,",
        "rpm: (700, ¦700, 1300, 1600, 2000, 2500, 3200, 4500),\n                    load: (0.06, 0.15, 0.25, 0.32, 0.40, 0.55, 0.68, 0.80, 0.90, 1.00),\n                    degrees: (\n                        (0, 0, 0,  6,",
        ProblemKind::WrongOrder { first: 700.0, second: 700.0 },
    );
    out("mature_ms: 3000", "mature_ms: ¦0", 0.0, (1.0, 3_600_000.0));
    out("off_target_deg: 6", "off_target_deg: ¦600", 600.0, (0.1, 60.0));
    out("apart_above: 2", "apart_above: ¦-2", -2.0, (0.1, 32.0));
    out("running_from: 1500", "running_from: ¦15000", 15_000.0, (1.0, 9_000.0));
    one(
        "slow_s: 0.45, step_limit_s: 3",
        "slow_s: 0.45, step_limit_s: ¦0.4",
        ProblemKind::WrongOrder { first: 0.45, second: 0.4 },
    );
    one(
        "pass_ms: 5000)),",
        "pass_ms: 5000, ¦switch: 1)),",
        ProblemKind::UnknownField {
            found: "switch".to_owned(),
            expected: vec!["rest_ms", "running_from", "fail_ms", "pass_ms", "sensor"],
            nearest: None,
        },
    );
}

#[test]
fn parts_that_come_off() {
    one(
        "id: \"module-cover\", kind: Cover",
        "id: \"module-cover\", behind: [¦\"fusebox-lid\"], kind: Cover",
        unknown(Thing::Part, "fusebox-lid", "fuse-box-lid"),
    );
    one(
        "(id: \"module-cover\", kind: Cover, remove: 9, ",
        "¦(id: \"module-cover\", kind: Cover, ",
        ProblemKind::MissingField { field: "remove" },
    );
    one(
        "id: \"module-cover\", kind: Cover, ",
        "id: \"module-cover\", kind: Cover, remove: 1, refit: 1), (id: ¦\"Module cover\", kind: Cover, ",
        ProblemKind::BadName { found: "Module cover".to_owned() },
    );
    one(
        "id: \"module-cover\", kind: Cover, ",
        "id: \"module-cover\", kind: Cover, remove: 1, refit: 1), (id: ¦\"module-cover\", kind: Cover, ",
        repeated(Thing::Part, "module-cover"),
    );
    out(
        "kind: Cover, remove: 9, refit: 8",
        "kind: Cover, remove: ¦9000, refit: 8",
        9000.0,
        (0.0, 480.0),
    );
    out(
        "kind: Cover, remove: 9, refit: 8",
        "kind: Cover, remove: 9, refit: ¦8000",
        8000.0,
        (0.0, 480.0),
    );
    out("torque_nm: 7.5", "torque_nm: ¦-7.5", -7.5, (0.5, 400.0));
    one(
        "care: [Hot, Torque], torque_nm: 7.5",
        "care: ¦[Hot, Torque]",
        ProblemKind::NoTorque { part: Id::from("heat-shield") },
    );
    one(
        "id: \"valve-fuse\", kind: Fuse",
        "id: ¦\"valve-fuze\", kind: Fuse",
        unknown(Thing::Fuse, "valve-fuze", "valve-fuse"),
    );
}

#[test]
fn blockers_that_form_a_circle() {
    let circle = |names: &[&str]| ProblemKind::BlockersInACircle {
        parts: names.iter().map(|name| Id::from(*name)).collect(),
    };
    one(
        "id: \"engine-cover\", kind: Cover, ",
        "id: \"engine-cover\", kind: Cover, behind: ¦[\"heat-shield\"], ",
        circle(&["engine-cover", "heat-shield", "air-duct"]),
    );
    one(
        "id: \"module-cover\", kind: Cover, ",
        "id: \"module-cover\", kind: Cover, behind: ¦[\"module-cover\"], ",
        circle(&["module-cover"]),
    );
}

#[test]
fn test_points() {
    one(
        "id: \"fuse-box\", node: \"fuse-box\"",
        "id: \"fuse-box\", node: ¦\"fusebox\"",
        unknown(Thing::Node, "fusebox", "fuse-box"),
    );
    one(
        "(id: \"fuse-box\", node",
        "(id: ¦\"engine-ground\", node",
        repeated(Thing::TestPoint, "engine-ground"),
    );
    one(
        "node: \"fuse-box\", behind: [\"fuse-box-lid\"]",
        "node: \"fuse-box\", behind: [¦\"fuse-box-lids\"]",
        unknown(Thing::Part, "fuse-box-lids", "fuse-box-lid"),
    );
    // A part that exists and is no connector.
    one(
        "node: \"intake-valve-feed\", behind: [\"engine-cover\"], unplugged: \"intake-connector\"",
        "node: \"intake-valve-feed\", behind: [\"engine-cover\"], unplugged: ¦\"intake-valve\"",
        ProblemKind::UnknownName {
            thing: Thing::Connector,
            found: "intake-valve".to_owned(),
            nearest: Some("intake-connector".to_owned()),
        },
    );
}

#[test]
fn elements_of_the_wiring() {
    one(
        "Wire(id: \"feed-wire\"",
        "Wire(id: ¦\"battery-cable\"",
        repeated(Thing::Element, "battery-cable"),
    );
    one(
        "Wire(id: \"feed-wire\"",
        "Wire(id: ¦\"Feed wire\"",
        ProblemKind::BadName { found: "Feed wire".to_owned() },
    );
    for (from, to, found) in [
        ("ohms: 0.003", "ohms: ¦-0.003", -0.003),
        ("ohms: 0.003", "ohms: ¦0", 0.0),
        ("to: \"valve-fuse-out\", ohms: 0.007", "to: \"valve-fuse-out\", ohms: ¦-7", -7.0),
        ("to: \"valve-relay-out\", ohms: 0.009", "to: \"valve-relay-out\", ohms: ¦-9", -9.0),
        ("key_on: 2.6", "key_on: ¦-2.6", -2.6),
        ("key_off: 850.0", "key_off: ¦0.0", 0.0),
        ("key_on: 17.0", "key_on: ¦0.0", 0.0),
    ] {
        out(from, to, found, (1e-4, 1e7));
    }
    let driver = "pin: \"intake-module-control\", supply: \"module-supply\", ground: \"module-ground\",\n                    on_ohms: 0.13, off_ohms: 4.0e6, sense_ohms: 0.09, bias_ohms: 43000.0";
    for field in ["on_ohms: 0.13", "off_ohms: 4.0e6", "sense_ohms: 0.09", "bias_ohms: 43000.0"] {
        let name = field.split(':').next().unwrap();
        out(driver, &driver.replace(field, &format!("{name}: ¦-1")), -1.0, (1e-4, 1e7));
    }
    out("rating: 15.0", "rating: ¦0", 0.0, (0.5, 120.0));
    out("metres: 1.34", "metres: ¦0", 0.0, (0.2, 30.0));
    out("mm2: 1.5", "mm2: ¦-1.5", -1.5, (0.2, 35.0));
}

#[test]
fn owners_of_elements() {
    among(
        2,
        Vehicle,
        "Pin(id: \"intake-feed-pin\", connector: \"intake-connector\"",
        "Pin(id: \"intake-feed-pin\", connector: ¦\"intake-conector\"",
        unknown(Thing::Connector, "intake-conector", "intake-connector"),
    );
    among(
        2,
        Vehicle,
        "Coil(id: \"intake-coil\", valve: \"intake-valve\"",
        "Coil(id: \"intake-coil\", valve: ¦\"intake-valvee\"",
        unknown(Thing::Valve, "intake-valvee", "intake-valve"),
    );
    among(
        2,
        Vehicle,
        "id: \"intake-driver\", valve: \"intake-valve\"",
        "id: \"intake-driver\", valve: ¦\"intake-valvee\"",
        unknown(Thing::Valve, "intake-valvee", "intake-valve"),
    );
}

#[test]
fn ways_of_the_current() {
    // A slip of the pen leaves two nodes hanging, each near the other.
    let hanging = |node: &str, nearest: &str| ProblemKind::HangingNode {
        node: Id::from(node),
        nearest: Some(nearest.to_owned()),
    };
    among(
        2,
        Vehicle,
        "from: \"module-relay-out\", to: \"module-supply\"",
        "from: ¦\"module-relai-out\", to: \"module-supply\"",
        hanging("module-relai-out", "module-relay-out"),
    );
    one(
        "Wire(id: \"ground-strap\"",
        "Wire(id: \"spare-wire\", from: \"feed-splice\", to: ¦\"spare-end\", ohms: 0.1),\n Wire(id: \"ground-strap\"",
        ProblemKind::HangingNode { node: Id::from("spare-end"), nearest: None },
    );
    let (problems, place) = planted(
        Vehicle,
        "Wire(id: \"ground-strap\"",
        "Wire(id: \"loop-1\", from: ¦\"north\", to: \"south\", ohms: 0.1), Wire(id: \"loop-2\", from: \"north\", to: \"south\", ohms: 0.1),\n Wire(id: \"ground-strap\"",
    );
    let kinds: Vec<_> = problems.iter().map(|problem| problem.kind.clone()).collect();
    let island = |node: &str| ProblemKind::IslandNode { node: Id::from(node) };
    assert_eq!(kinds, [island("north"), island("south")]);
    assert_eq!((problems[0].line, problems[0].column), (place.1, place.2));
    one(
        "Wire(id: \"ground-strap\"",
        "¦Wire(id: \"ring\", from: \"feed-splice\", to: \"feed-splice\", ohms: 0.1),\n Wire(id: \"ground-strap\"",
        ProblemKind::SameEnds { node: Id::from("feed-splice") },
    );
    among(
        2,
        Vehicle,
        "Load(id: \"body-consumers\", from: \"fuse-box\"",
        "Load(id: \"body-consumers\", from: ¦\"Fuse box\"",
        ProblemKind::BadName { found: "Fuse box".to_owned() },
    );
}

#[test]
fn what_every_wiring_needs() {
    let lack = |what| ProblemKind::HarnessLacks { what };
    let battery = "Battery(id: \"battery\", plus: \"battery-plus\", minus: \"battery-minus\")";
    // Without the battery, its negative post hangs on the ground strap.
    among(
        2,
        Vehicle,
        &format!("elements: [\n                {battery},"),
        "elements: ¦[",
        lack(HarnessNeed::Battery),
    );
    one(
        battery,
        &format!("{battery}, ¦{}", battery.replace("\"battery\"", "\"battery-2\"")),
        repeated(Thing::Element, "battery-2"),
    );
    let supply = "ModuleSupply(id: \"module\", supply: \"module-supply\", ground: \"module-ground\", rail: \"module-rail\", load: (key_off: 560.0, key_on: 17.0))";
    one(
        supply,
        &format!("{supply}, ¦{}", supply.replace("\"module\"", "\"module-2\"")),
        repeated(Thing::Element, "module-2"),
    );
    // Without the supply no driver has a module's ground either.
    let found = everywhere(&[(&format!("{supply},"), "")]);
    let kinds: Vec<_> = found.iter().map(|(_, kind)| kind.clone()).collect();
    let ground = || lack(HarnessNeed::DriverGround);
    assert_eq!(kinds, [lack(HarnessNeed::ModuleSupply), ground(), ground()]);
    assert_eq!(found[0].0, "elements: [");
    for (from, to, what) in [
        ("\"engine-ground\"", "\"engine-earth\"", HarnessNeed::EngineGround),
        ("\"battery-minus\"", "\"battery-negative\"", HarnessNeed::BatteryMinus),
    ] {
        assert_eq!(everywhere(&[(from, to)]), [("elements: [".to_owned(), lack(what))]);
    }
    one(
        "pin: \"intake-module-control\", supply: \"module-supply\", ground: \"module-ground\"",
        "pin: \"intake-module-control\", supply: \"module-supply\", ground: ¦\"engine-ground\"",
        ground(),
    );
}

#[test]
fn lists_that_are_too_long() {
    let behind = format!("behind: ¦[{}\"fuse-box-lid\"]", "\"fuse-box-lid\",".repeat(300));
    let too_many = || ProblemKind::TooMany { found: 301, most: 300 };
    one(
        "node: \"fuse-box\", behind: [\"fuse-box-lid\"]",
        &format!("node: \"fuse-box\", {behind}"),
        too_many(),
    );
    one("kind: Fuse, behind: [\"fuse-box-lid\"]", &format!("kind: Fuse, {behind}"), too_many());
    let valve = "\"intake-valve\", ".repeat(299);
    one(
        "turns: 0.92,\n                fits: [",
        &format!("turns: 0.92,\n                fits: ¦[{valve}"),
        too_many(),
    );
    for (list, length) in [("valves", 2), ("valve_parts", 2), ("parts", 11), ("test_points", 15)] {
        let from = format!("\n        {list}: [");
        let text = ScenarioText::demo().vehicle_text;
        let start = text.find(&from).unwrap() + from.len();
        let end = start + text[start..].find("\n        ],").unwrap();
        let entries = text[start..end].to_owned();
        let copies = 300 / length + 1;
        one(
            &format!("{from}{entries}"),
            &format!("\n        {list}: ¦[{}", entries.repeat(copies)),
            ProblemKind::TooMany { found: copies * length, most: 300 },
        );
    }
    let wire = "Wire(id: \"x\", from: \"y\", to: \"z\", ohms: 1),".repeat(300);
    let (problems, _) = planted(Vehicle, "elements: [", &format!("elements: ¦[{wire}"));
    assert!(
        matches!(problems[0].kind, ProblemKind::TooMany { found: 327, most: 300 }),
        "{problems:?}"
    );
}
