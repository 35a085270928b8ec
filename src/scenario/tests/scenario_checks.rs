//! Errors of meaning in a scenario.

use super::planted::In::Scenario;
use super::planted::{alone, among, problems_of, replaced};
use crate::faults::FaultKind;
use crate::scenario::load::{ScenarioText, read};
use crate::scenario::problem::{FileTrouble, ProblemKind, Thing};
use crate::session::step::CustomerTopic;
use crate::vehicle::spec::Id;

fn one(from: &str, to: &str, kind: ProblemKind) {
    alone(Scenario, from, to, kind);
}

fn out(from: &str, to: &str, found: f64, (least, most): (f64, f64)) {
    one(from, to, ProblemKind::OutOfRange { found, least, most });
}

const SUMP: &str = "place: \"sump\", weight: 4, severity: (0, 1)";

#[test]
fn several_problems_are_reported_at_once_in_the_order_of_the_text() {
    use ProblemKind::{OutOfRange, OwnCode, UnknownName, UnknownPlace, WrongOrder};
    let mut text = ScenarioText::demo();
    for (from, to) in [
        ("place: \"sump\"", "place: \"sumpf\""),
        ("no_fault: 1", "no_fault: -1"),
        ("code: \"P0073\"", "code: \"P0017\""),
        ("customers_route: \"customers-road\"", "customers_route: \"customer-road\""),
        ("labour_per_hour: 68_00", "labour_per_hour: -68_00"),
    ] {
        text.scenario_text = replaced(&text.scenario_text, from, to);
    }
    text.vehicle_text = replaced(&text.vehicle_text, "least_litres: 3.3", "least_litres: 4.3");
    let problems = problems_of(read(text));
    let kinds: Vec<&ProblemKind> = problems.iter().map(|problem| &problem.kind).collect();
    assert!(
        matches!(
            kinds.as_slice(),
            [
                UnknownPlace { .. },
                OutOfRange { .. },
                OwnCode { .. },
                OutOfRange { .. },
                UnknownName { .. },
                WrongOrder { .. }
            ]
        ),
        "{problems:#?}"
    );
    let files: Vec<&str> = problems.iter().map(|problem| problem.file.as_str()).collect();
    assert_eq!(files[..5], ["market-hill.ron"; 5]);
    assert_eq!(files[5], "vehicles/harrowfen-dray.ron");
    let lines: Vec<u32> = problems[..5].iter().map(|problem| problem.line).collect();
    assert!(lines.is_sorted());
}

#[test]
fn problems_of_a_scenario_are_told_although_its_vehicle_cannot_be_read() {
    let mut text = ScenarioText::demo();
    text.scenario_text = replaced(&text.scenario_text, "no_fault: 1", "no_fault: -1");
    text.vehicle_text = "(".to_owned();
    let problems = problems_of(read(text));
    let files: Vec<&str> = problems.iter().map(|problem| problem.file.as_str()).collect();
    assert_eq!(files, ["market-hill.ron", "vehicles/harrowfen-dray.ron"]);
}

#[test]
fn fault_at_a_place_where_it_cannot_be() {
    let unknown = |kind, found: &str, nearest: &str| ProblemKind::UnknownPlace {
        kind,
        found: found.to_owned(),
        nearest: Some(nearest.to_owned()),
    };
    one("place: \"sump\"", "place: ¦\"sumpf\"", unknown(FaultKind::LowOil, "sumpf", "sump"));
    one(
        "kind: CorrodedPin, place: \"intake-feed-pin\"",
        "kind: CorrodedPin, place: ¦\"intake-feed-pins\"",
        unknown(FaultKind::CorrodedPin, "intake-feed-pins", "intake-feed-pin"),
    );
    // A place that exists and cannot have this fault: the nearest is one that can.
    one(
        "kind: WireToGround, place: \"intake-control-wire\"",
        "kind: WireToGround, place: ¦\"intake-feed-wire\"",
        unknown(FaultKind::WireToGround, "intake-feed-wire", "intake-control-wire"),
    );
    one(
        "place: \"sump\"",
        "place: ¦\"qqqqqqqq\"",
        ProblemKind::UnknownPlace {
            kind: FaultKind::LowOil,
            found: "qqqqqqqq".to_owned(),
            nearest: None,
        },
    );
}

#[test]
fn weights_severities_and_chances() {
    out(SUMP, "place: \"sump\", weight: ¦-4, severity: (0, 1)", -4.0, (0.0, 1e6));
    out(SUMP, "place: \"sump\", weight: 4, severity: (¦-0.5, 1)", -0.5, (0.0, 1.0));
    out(SUMP, "place: \"sump\", weight: 4, severity: (0, ¦1.5)", 1.5, (0.0, 1.0));
    one(
        SUMP,
        "place: \"sump\", weight: 4, severity: ¦(0.8, 0.2)",
        ProblemKind::WrongOrder { first: 0.8, second: 0.2 },
    );
    out("no_fault: 1", "no_fault: ¦-1", -1.0, (0.0, 1e6));
    out("code: \"P0073\", chance: 0.2", "code: \"P0073\", chance: ¦2", 2.0, (0.0, 1.0));
    out(
        "part_number: \"hd-4470-3\", chance: 0.3",
        "part_number: \"hd-4470-3\", chance: ¦-0.1",
        -0.1,
        (0.0, 1.0),
    );
    one(
        SUMP,
        &format!("{SUMP}), (kind: LowOil, place: ¦\"sump\", weight: 1, severity: (0, 1)"),
        ProblemKind::Repeated { thing: Thing::Fault, name: "sump".to_owned() },
    );
}

#[test]
fn weights_that_are_all_zero() {
    let mut text = ScenarioText::demo();
    text.scenario_text = replaced(&text.scenario_text, "no_fault: 1", "no_fault: 0");
    assert!(read(text.clone()).is_ok(), "a scenario in which something is always wrong");
    for weight in 2..=5 {
        text.scenario_text =
            text.scenario_text.replace(&format!("weight: {weight},"), "weight: 0,");
    }
    let problems = problems_of(read(text));
    let [problem] = problems.as_slice() else { panic!("{problems:?}") };
    assert_eq!(problem.kind, ProblemKind::AllWeightsZero);
    assert_eq!(problem.text.trim(), "faults: [");
    assert_eq!(problem.column, 13);
}

#[test]
fn decoys_that_would_not_be_decoys() {
    one(
        "code: \"P0073\"",
        "code: ¦\"P2091\"",
        ProblemKind::OwnCode { code: "P2091".parse().unwrap(), valve: Id::from("exhaust-valve") },
    );
    one(
        "code: \"P0073\"",
        "origin: False, code: ¦\"P0073\"",
        ProblemKind::NobodysCode { code: "P0073".parse().unwrap() },
    );
    one(
        "code: \"P0073\"",
        "origin: Present, code: ¦\"P2091\"",
        ProblemKind::OwnCode { code: "P2091".parse().unwrap(), valve: Id::from("exhaust-valve") },
    );
    one(
        "code: \"P0073\"",
        "code: ¦\"P0456\"",
        ProblemKind::RepeatedCode { code: "P0456".parse().unwrap() },
    );
    one(
        "part_number: \"hd-4470-3\"",
        "part_number: ¦\"hd-4470-1\"",
        ProblemKind::SameWinding { part_number: Id::from("hd-4470-1") },
    );
    one(
        "part_number: \"hd-4470-3\"",
        "part_number: ¦\"hd-447-3\"",
        ProblemKind::UnknownName {
            thing: Thing::PartNumber,
            found: "hd-447-3".to_owned(),
            nearest: Some("hd-4470-3".to_owned()),
        },
    );
    one(
        "place: \"exhaust-valve\", part_number: \"hd-4470-3\"",
        "place: ¦\"exhaust-valfe\", part_number: \"hd-4470-1\"",
        ProblemKind::UnknownName {
            thing: Thing::Valve,
            found: "exhaust-valfe".to_owned(),
            nearest: Some("exhaust-valve".to_owned()),
        },
    );
    let mut text = ScenarioText::demo();
    let fits = "ohms_most: 13.5,\n                turns: 1.08,\n                fits: [\"intake-valve\", \"exhaust-valve\"]";
    text.vehicle_text =
        replaced(&text.vehicle_text, fits, &fits.replace(", \"exhaust-valve\"", ""));
    let problems = problems_of(read(text));
    let kinds: Vec<_> = problems.into_iter().map(|problem| problem.kind).collect();
    let (part_number, valve) = (Id::from("hd-4470-3"), Id::from("exhaust-valve"));
    assert_eq!(kinds, [ProblemKind::DoesNotFit { part_number, valve }]);
}

#[test]
fn job_sheet_without_words() {
    one("title: \"The van on Market Hill\"", "title: ¦\" \"", ProblemKind::Empty);
    one("title: \"Delivery van, lacks pull uphill\"", "title: ¦\"\"", ProblemKind::Empty);
    one("concern: \"Goes flat", "concern: ¦\"\", // Goes flat", ProblemKind::Empty);
    for (topic, key) in [
        (CustomerTopic::Symptom, "symptom"),
        (CustomerTopic::When, "when"),
        (CustomerTopic::Service, "service"),
        (CustomerTopic::Repairs, "repairs"),
    ] {
        let from = format!("            {key}: \"");
        let mut text = ScenarioText::demo();
        text.scenario_text =
            replaced(&text.scenario_text, &from, &format!("            {key}: \"\", //"));
        let problems = problems_of(read(text));
        let [problem] = problems.as_slice() else { panic!("{problems:?}") };
        assert_eq!(problem.kind, ProblemKind::NoAnswer { topic });
        assert_eq!(problem.text.trim(), "answers: {");
    }
}

#[test]
fn prices_and_minutes() {
    for field in [
        "labour_per_hour: 68_00",
        "seal: 2_80",
        "mending: 13_50",
        "oil_litre: 10_40",
        "cleaning: 8_90",
        "fuel: 4_20",
        "comeback: 240_00",
    ] {
        let name = field.split(':').next().unwrap();
        out(&format!("        {field}"), &format!("        {name}: ¦-5"), -5.0, (0.0, 1e8));
    }
    out("fuel: 4_20", "fuel: ¦9223372036854775807", 9_223_372_036_854_775_807.0, (0.0, 1e8));
    out("\"hd-4470-1\": 71_40", "\"hd-4470-1\": ¦-71_40", -7140.0, (0.0, 1e8));
    one(
        "\"hd-4470-1\": 71_40",
        "\"hd-4470-1\": 71_40, ¦\"hd-4471-1\": 71_40",
        ProblemKind::UnknownName {
            thing: Thing::PartNumber,
            found: "hd-4471-1".to_owned(),
            nearest: Some("hd-4470-1".to_owned()),
        },
    );
    one(
        "valves: {\n            \"hd-4470-1\": 71_40,",
        "valves: ¦{",
        ProblemKind::NoPrice { part_number: Id::from("hd-4470-1") },
    );
    one("currency: \"£\"", "currency: ¦\"\"", ProblemKind::Empty);
    for (field, value) in [
        ("ask", 3),
        ("consult", 4),
        ("look", 2),
        ("dipstick", 3),
        ("key", 1),
        ("start", 3),
        ("measure", 2),
        ("fetch_meter", 5),
        ("power", 5),
        ("connect_reader", 6),
        ("request", 2),
        ("clean", 24),
        ("mend_pin", 38),
        ("mend_wire", 55),
        ("top_up", 5),
        ("approval", 7),
        ("write", 4),
        ("hand_over", 6),
        ("fetch_part", 10),
    ] {
        out(
            &format!("            {field}: {value},"),
            &format!("            {field}: ¦4000000000,"),
            4e9,
            (0.0, 480.0),
        );
    }
}

#[test]
fn parts_of_other_grades_tools_and_time() {
    // What a third version of the format brought is written where the first one ends.
    let old = "version: 1,";
    let with = |rest: &str| format!("version: 3, {rest},");
    let other = |rest: &str| {
        with(&format!(
            r#"shelf: (others: {{"ow": (stands_for: "hd-4470-1", grade: Used, price: 1, {rest})}})"#
        ))
    };
    for (field, wrong, range) in [
        ("resistance", 0.4, (0.5, 2.0)),
        ("resistance", 2.1, (0.5, 2.0)),
        ("screen_blocked", 1.0, (0.0, 0.999)),
        ("stiction_n", -1.0, (0.0, 20.0)),
        ("wait", 481.0, (0.0, 480.0)),
    ] {
        out(old, &other(&format!("{field}: ¦{wrong}")), wrong, range);
    }
    for minutes in [0, 1441] {
        let limit = with(&format!("time_limit: UpTo(minutes: ¦{minutes})"));
        out(old, &limit, f64::from(minutes), (1.0, 1_440.0));
    }
    let unknown = |found: &str| ProblemKind::UnknownName {
        thing: Thing::PartNumber,
        found: found.to_owned(),
        nearest: Some("hd-4470-1".to_owned()),
    };
    one(old, &with(r#"shelf: (waits: {¦"hd-4470-2": 30})"#), unknown("hd-4470-2"));
    one(
        old,
        &with(r#"shelf: (others: {"ow": (stands_for: ¦"hd-4471-1", grade: Used, price: 1)})"#),
        unknown("hd-4471-1"),
    );
    one(
        old,
        &with(
            r#"shelf: (others: {¦"hd-4470-3": (stands_for: "hd-4470-1", grade: Used, price: 1)})"#,
        ),
        ProblemKind::Repeated { thing: Thing::PartNumber, name: "hd-4470-3".to_owned() },
    );
    for field in ["tools: Only([])", "time_limit: None", "shelf: ()"] {
        let name = field.split(':').next().unwrap();
        let kind = match name {
            "tools" => "tools",
            "shelf" => "shelf",
            _ => "time_limit",
        };
        one(
            old,
            &format!("version: 2, ¦{field},"),
            ProblemKind::NewerField { field: kind, since: 3 },
        );
    }
}

#[test]
fn roads() {
    one(
        "customers_route: \"customers-road\"",
        "customers_route: ¦\"customer-road\"",
        ProblemKind::UnknownName {
            thing: Thing::Route,
            found: "customer-road".to_owned(),
            nearest: Some("customers-road".to_owned()),
        },
    );
    one(
        "\"test-hill\": (",
        "¦\"town-loop\": (",
        ProblemKind::Repeated { thing: Thing::Entry, name: "town-loop".to_owned() },
    );
    one(
        "\"town-loop\": (",
        "\"Town Loop\": ¦(",
        ProblemKind::BadName { found: "Town Loop".to_owned() },
    );
    let own = "customers_route: \"customers-road\",";
    one(
        own,
        &format!("{own} shared_routes: [\"hill\", ¦\"motorwy\"],"),
        ProblemKind::UnknownName {
            thing: Thing::Route,
            found: "motorwy".to_owned(),
            nearest: Some("motorway".to_owned()),
        },
    );
    one(
        own,
        &format!("{own} shared_routes: [\"hill\", ¦\"hill\"],"),
        ProblemKind::Repeated { thing: Thing::Route, name: "hill".to_owned() },
    );
    out("minutes: 22,", "minutes: ¦2200,", 2200.0, (0.0, 480.0));
    let begin = "minutes: 22,\n            profile: (\n                ramp_s: 3,\n                start_rpm: 760,";
    out(begin, &begin.replace("ramp_s: 3", "ramp_s: ¦-3"), -3.0, (0.0, 60.0));
    out(begin, &begin.replace("start_rpm: 760", "start_rpm: ¦7"), 7.0, (400.0, 7_000.0));
    let segment = "(until_s: 46, rpm: 1700, load: 0.32, km_h: 31)";
    for (field, wrong, range) in [
        ("rpm: 1700", -1.0, (400.0, 7_000.0)),
        ("load: 0.32", 1.5, (0.0, 1.0)),
        ("km_h: 31", 1e6, (0.0, 200.0)),
    ] {
        let name = field.split(':').next().unwrap();
        out(segment, &segment.replace(field, &format!("{name}: ¦{wrong}")), wrong, range);
    }
    one(
        segment,
        &segment.replace("until_s: 46", "until_s: ¦30"),
        ProblemKind::WrongOrder { first: 30.0, second: 30.0 },
    );
    among(
        2,
        Scenario,
        segment,
        &segment.replace("until_s: 46", "until_s: ¦4600"),
        ProblemKind::OutOfRange { found: 4600.0, least: 0.0, most: 3600.0 },
    );
}

#[test]
fn road_without_segments() {
    one(
        "        \"town-loop\": (",
        "        \"nowhere\": (minutes: 1, profile: (ramp_s: 3, start_rpm: 760, segments: ¦[])),\n        \"town-loop\": (",
        ProblemKind::Empty,
    );
}

#[test]
fn workshop_and_rubric() {
    out("workshop_temperature: 19", "workshop_temperature: ¦190", 190.0, (-40.0, 50.0));
    out("pass_percent: 60", "pass_percent: ¦160", 160.0, (0.0, 100.0));
    out("proof: 14", "proof: ¦1400", 1400.0, (0.0, 1000.0));
    let hints = "pass_percent: 60, hints: (question: 0, area: 0, kind: 0, step: ¦101)";
    out("pass_percent: 60", hints, 101.0, (0.0, 100.0));
    one(
        "pass_percent: 60",
        "pass_percent: 60, hints: ¦(question: 3, area: 2)",
        ProblemKind::WrongOrder { first: 3.0, second: 2.0 },
    );
}

#[test]
fn rubric_that_weighs_nothing() {
    let mut text = ScenarioText::demo();
    for weight in [
        "test_choice: 28",
        "access_order: 10",
        "reading: 10",
        "calibration: 10",
        "repair: 16",
        "proof: 14",
        "care: 7",
        "record: 5",
    ] {
        let (field, _) = weight.split_once(':').unwrap();
        text.scenario_text = replaced(&text.scenario_text, weight, &format!("{field}: 0"));
    }
    let problems = problems_of(read(text));
    let [problem] = problems.as_slice() else { panic!("{problems:?}") };
    assert_eq!(problem.kind, ProblemKind::AllWeightsZero);
    assert_eq!((problem.column, problem.text.as_str()), (18, "        weights: ("));
}

#[test]
fn numbers_that_are_none() {
    for wrong in ["NaN", "-NaN", "inf", "-inf", "1e999", "-1e999"] {
        let planted = format!("workshop_temperature: ¦{wrong}");
        let kind = ProblemKind::NotFinite { found: wrong.to_owned() };
        one("workshop_temperature: 19", &planted, kind);
    }
    one(
        SUMP,
        "place: \"sump\", weight: ¦NaN, severity: (0, 1)",
        ProblemKind::NotFinite { found: "NaN".to_owned() },
    );
}

#[test]
fn vehicle_whose_text_is_too_long() {
    let mut text = ScenarioText::demo();
    text.vehicle_text.push_str(&" ".repeat(1 << 20));
    let problems = problems_of(read(text));
    let [problem] = problems.as_slice() else { panic!("{problems:?}") };
    assert_eq!((problem.line, problem.column), (9, 14));
    assert_eq!(
        problem.kind,
        ProblemKind::VehicleUnreadable {
            file: "vehicles/harrowfen-dray.ron".to_owned(),
            trouble: FileTrouble::TooLarge { most: 1 << 20 },
        }
    );
}

#[test]
fn lists_that_are_too_long() {
    let entry = "(code: \"P0457\", chance: 0.1),";
    one(
        "        old_codes: [",
        &format!("        old_codes: ¦[{}", entry.repeat(299)),
        ProblemKind::TooMany { found: 301, most: 300 },
    );
}
