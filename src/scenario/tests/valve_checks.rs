//! Errors of meaning in the valves of a vehicle.

use super::planted::In::Vehicle;
use super::planted::{alone, among, everywhere};
use crate::scenario::load::ScenarioText;
use crate::scenario::problem::{ProblemKind, Thing, ValveNeed};
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

fn lacks(valve: &str, what: ValveNeed) -> ProblemKind {
    ProblemKind::ValveLacks { valve: Id::from(valve), what }
}

#[test]
fn what_every_valve_needs() {
    let intake = |what| ("id: \"intake-valve\",".to_owned(), lacks("intake-valve", what));
    assert_eq!(
        everywhere(&[("id: \"intake-valve\", kind: Valve", "id: \"intake-valve\", kind: Cover")]),
        [intake(ValveNeed::Part)]
    );
    // Its coil left out, and the pins joined in its place so that no node hangs.
    let coil = "Coil(id: \"intake-coil\", valve: \"intake-valve\", from:";
    assert_eq!(
        everywhere(&[(coil, "Wire(id: \"intake-coil\", ohms: 9.3, from:")]),
        [intake(ValveNeed::Coil)]
    );
    // Its pins made part of the other connector.
    let pin = "connector: \"intake-connector\", from: \"intake-harness-control\"";
    assert_eq!(
        everywhere(&[(pin, &pin.replace("intake-conn", "exhaust-conn"))]),
        [intake(ValveNeed::Pins)]
    );
    // Its driver made that of the other valve.
    let driver = "id: \"intake-driver\", valve: \"intake-valve\"";
    assert_eq!(
        everywhere(&[(driver, &driver.replace("intake-valve", "exhaust-valve"))]),
        [intake(ValveNeed::Driver)]
    );
    // A connector that is none: the pins are then missing too.
    let found = everywhere(&[(
        "                connector: \"intake-connector\",",
        "                connector: \"air-duct\",",
    )]);
    let connector = lacks("intake-valve", ValveNeed::Connector);
    assert_eq!(
        found,
        [intake(ValveNeed::Pins), ("connector: \"air-duct\",".to_owned(), connector)]
    );
    let text = ScenarioText::demo().vehicle_text;
    let valves = &text[text.find("valves: [").unwrap()..text.find("// Both windings").unwrap()];
    let found = everywhere(&[(valves, "valves: [],\n")]);
    assert!(found.contains(&("valves: [],".to_owned(), ProblemKind::Empty)), "{found:#?}");
}

#[test]
fn parts_of_valves() {
    let ohms = "ohms_at_20: 9.3, ohms_least: 8.8, ohms_most: 9.7";
    let narrow = || ProblemKind::NarrowWindow { part_number: Id::from("hd-4470-1") };
    one(ohms, "ohms_at_20: ¦9.0, ohms_least: 8.8, ohms_most: 9.7", narrow());
    one(ohms, "ohms_at_20: ¦9.5, ohms_least: 8.8, ohms_most: 9.7", narrow());
    for (field, wrong) in [
        ("ohms_at_20: 9.3", "ohms_at_20: ¦-9.3"),
        ("ohms_least: 8.8", "ohms_least: ¦-8.8"),
        ("ohms_most: 9.7", "ohms_most: ¦900.0"),
    ] {
        let found = wrong.split('¦').nth(1).unwrap().parse().unwrap();
        let kind = ProblemKind::OutOfRange { found, least: 1.0, most: 100.0 };
        // A wrong nominal value lies outside its window as well.
        let count = if field.starts_with("ohms_at") { 2 } else { 1 };
        among(count, Vehicle, ohms, &ohms.replace(field, wrong), kind);
    }
    out("turns: 0.92", "turns: ¦0", 0.0, (0.05, 20.0));
    one(
        "turns: 0.92,\n                fits: [",
        "turns: 0.92,\n                fits: [¦\"inlet-valve\", ",
        unknown(Thing::Valve, "inlet-valve", "intake-valve"),
    );
    let fits = "turns: 1.08,\n                fits: [\"intake-valve\", \"exhaust-valve\"]";
    // The scenario's decoy is this part, and then fits nowhere.
    among(2, Vehicle, fits, "turns: 1.08,\n                fits: ¦[]", ProblemKind::Empty);
    let found = everywhere(&[("\"hd-4470-3\"", "\"hd-4470-1\"")]);
    assert!(found.contains(&(
        "part_number: \"hd-4470-1\",".to_owned(),
        repeated(Thing::PartNumber, "hd-4470-1")
    )));
}

#[test]
fn valves_and_their_codes() {
    let intake = "cam: Intake,\n                part_number: \"hd-4470-1\"";
    one(
        intake,
        &intake.replace("\"hd-4470-1\"", "¦\"hd-4470-2\""),
        unknown(Thing::PartNumber, "hd-4470-2", "hd-4470-1"),
    );
    let fits = "turns: 0.92,\n                fits: [\"intake-valve\"";
    let found = everywhere(&[(&format!("{fits}, \"exhaust-valve\"]"), &format!("{fits}]"))]);
    let (part_number, valve) = (Id::from("hd-4470-1"), Id::from("exhaust-valve"));
    let kind = ProblemKind::DoesNotFit { part_number, valve };
    assert_eq!(found, [("part_number: \"hd-4470-1\",".to_owned(), kind)]);
    one(
        "open: \"P0013\"",
        "open: ¦\"P0010\"",
        ProblemKind::RepeatedCode { code: "P0010".parse().unwrap() },
    );
    one(
        "slow: \"P000A\"",
        "slow: ¦\"P0011\"",
        ProblemKind::RepeatedCode { code: "P0011".parse().unwrap() },
    );
}

/// What a vehicle of the newest version says first.
const OLDER: (&str, &str) = ("version: 1,", "version: 2,");

/// The first vehicle's engine in line, made a V engine by mistake or on purpose.
#[test]
fn banks_of_valves() {
    let exhaust = "cam: Exhaust,\n                part_number: \"hd-4470-1\"";
    let camshaft = repeated(Thing::Camshaft, "exhaust-valve");
    one(exhaust, &exhaust.replace("Exhaust", "¦Intake"), camshaft);
    // On banks of their own, each lacks the valve that is its like.
    let alone = |valve: &str| {
        let cam = if valve.starts_with("intake") { "cam: Intake," } else { "cam: Exhaust," };
        (cam.to_owned(), ProblemKind::NoPartner { valve: Id::from(valve) })
    };
    for two in [vec!["exhaust-valve"], vec!["intake-valve"], vec!["intake-valve", "exhaust-valve"]]
    {
        let changes: Vec<(String, String)> = two
            .iter()
            .map(|valve| {
                let id = format!("                id: \"{valve}\",\n                cam");
                (id.clone(), id.replace("cam", "bank: Two,\n                cam"))
            })
            .collect();
        let mut changes: Vec<_> = changes.iter().map(|(from, to)| (&**from, &**to)).collect();
        changes.push(OLDER);
        let found = everywhere(&changes);
        assert_eq!(found, [alone("intake-valve"), alone("exhaust-valve")], "{two:?}");
    }
    // There is no third bank.
    let third = exhaust.replace("cam:", "bank: Three, cam:");
    let found = everywhere(&[(exhaust, &third), OLDER]);
    let [(line, kind)] = &found[..] else { panic!("{found:#?}") };
    assert!(line.starts_with("bank: Three"), "{line}");
    assert!(
        matches!(kind, ProblemKind::UnknownVariant { found, expected, .. }
            if found == "Three" && expected[..] == ["One", "Two"]),
        "{kind:?}"
    );
    // A file of the version before banks cannot have any.
    let newer = |field| ProblemKind::NewerField { field, since: 2 };
    one(exhaust, &exhaust.replace("cam:", "¦bank: One, cam:"), newer("bank"));
    one("year: 2016,", "year: 2016, ¦cylinders: 4,", newer("cylinders"));
}

#[test]
fn cylinders_of_an_engine() {
    let with = |cylinders: &str| format!("year: 2016,\n        cylinders: {cylinders},");
    let out = |cylinders: f64| ProblemKind::OutOfRange { found: cylinders, least: 3.0, most: 8.0 };
    for (cylinders, kind) in [("2", out(2.0)), ("12", out(12.0))] {
        let found = everywhere(&[("year: 2016,", &with(cylinders)), OLDER]);
        assert_eq!(found, [(format!("cylinders: {cylinders},"), kind)]);
    }
    let found = everywhere(&[
        ("year: 2016,", &with("5")),
        ("                cam: Exhaust", "                bank: Two, cam: Exhaust"),
        OLDER,
    ]);
    let uneven = ProblemKind::UnevenBanks { cylinders: 5 };
    assert!(found.contains(&("cylinders: 5,".to_owned(), uneven)), "{found:#?}");
}
