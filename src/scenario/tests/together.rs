//! Faults that come together: what a file may say of them, and what is drawn and supposed.

use super::planted::In::Scenario;
use super::planted::{alone, planted, replaced};
use crate::faults::{FaultKind, FaultName};
use crate::scenario::draw::{any_case, attempt_streams, draw, draw_fault};
use crate::scenario::load::{Loaded, ScenarioText, demo, load, read};
use crate::scenario::problem::{ProblemKind, Thing};
use crate::scenario::suppose::suppositions;
use crate::vehicle::spec::Id;
use std::collections::BTreeMap;
use std::path::Path;
use std::sync::Arc;

const SUMP: &str = "place: \"sump\", weight: 4, severity: (0, 1)";

/// The demo with something said of low oil besides.
fn with(also: &str) -> Arc<Loaded> {
    let mut text = ScenarioText::demo();
    let changed = format!("{SUMP}, also: [{also}]");
    text.scenario_text = replaced(&text.scenario_text, SUMP, &changed);
    Arc::new(read(text).unwrap_or_else(|error| panic!("{error:#?}")))
}

fn one(also: &str, kind: ProblemKind) {
    alone(Scenario, SUMP, &format!("{SUMP}, also: {also}"), kind);
}

fn same_place(place: &str) -> ProblemKind {
    ProblemKind::SamePlace { place: place.to_owned() }
}

#[test]
fn parts_are_checked_as_faults_of_their_own() {
    one(
        "[(kind: OpenCoil, place: ¦\"intake-valfe\", severity: (0, 1))]",
        ProblemKind::UnknownPlace {
            kind: FaultKind::OpenCoil,
            found: "intake-valfe".to_owned(),
            nearest: Some("intake-valve".to_owned()),
        },
    );
    one(
        "[(kind: OpenCoil, place: \"intake-valve\", severity: (0, ¦2))]",
        ProblemKind::OutOfRange { found: 2.0, least: 0.0, most: 1.0 },
    );
    one(
        "[(kind: OpenCoil, place: \"intake-valve\", severity: ¦(0.9, 0.1))]",
        ProblemKind::WrongOrder { first: 0.9, second: 0.1 },
    );
    let (problems, (file, line, column)) = planted(
        Scenario,
        SUMP,
        &format!("{SUMP}, also: [(kind: OpenCoil, place: \"intake-valve\", ¦weight: 1)]"),
    );
    assert!(
        matches!(&problems[..], [problem] if matches!(&problem.kind, ProblemKind::UnknownField { found, .. } if found == "weight")
            && (&problem.file, problem.line, problem.column) == (&file, line, column)),
        "{problems:#?}"
    );
}

#[test]
fn parts_in_one_place_are_refused() {
    one("[(kind: WornOutOil, place: ¦\"sump\", severity: (0, 1))]", same_place("sump"));
    let coil = "(kind: OpenCoil, place: \"intake-valve\", severity: (0, 1))";
    let spool = "(kind: StickingSpool, place: ¦\"intake-valve\", severity: (0, 1))";
    one(&format!("[{coil}, {spool}]"), same_place("intake-valve"));
    // The fuse that a chafed feed blew belongs to it.
    let feed = "(kind: ChafedFeed, place: \"intake-feed-wire\", severity: (0, 1))";
    let fuse = "(kind: BlownFuse, place: ¦\"valve-fuse\", severity: (0, 1))";
    one(&format!("[{feed}, {fuse}]"), same_place("valve-fuse"));
}

#[test]
fn more_than_three_together_are_refused() {
    let part =
        |kind: &str, place: &str| format!("(kind: {kind}, place: \"{place}\", severity: (0, 1))");
    let parts = [
        part("OpenCoil", "intake-valve"),
        part("OpenCoil", "exhaust-valve"),
        part("BlownFuse", "valve-fuse"),
    ];
    assert_eq!(with(&parts[..2].join(", ")).scenario.faults.last().unwrap().parts().len(), 3);
    one(&format!("¦[{}]", parts.join(", ")), ProblemKind::TooMany { found: 3, most: 2 });
}

#[test]
fn the_same_faults_in_another_order_are_the_same_entry() {
    let coil = "(kind: OpenCoil, place: \"intake-valve\", severity: (0, 1))";
    let oil = "(kind: LowOil, place: \"sump\", severity: (0, 1))";
    let other = "kind: OpenCoil, place: ¦\"intake-valve\", weight: 1, severity: (0, 1)";
    alone(
        Scenario,
        SUMP,
        &format!("{SUMP}, also: [{coil}]), ({other}, also: [{oil}]"),
        ProblemKind::Repeated { thing: Thing::Fault, name: "intake-valve".to_owned() },
    );
}

#[test]
fn what_is_drawn_without_others_stays_what_it_was() {
    let alone = Arc::new(demo().unwrap());
    let together = with("(kind: OpenCoil, place: \"intake-valve\", severity: (0.2, 0.4))");
    let mut pairs = 0;
    for seed in 0..200 {
        let streams = attempt_streams(seed, 0);
        let (before, now) =
            (draw_fault(&alone.scenario, streams), draw_fault(&together.scenario, streams));
        assert_eq!(before.decoys, now.decoys);
        assert_eq!(before.faults.first(), now.faults.first());
        if let [_, part] = &now.faults[..] {
            pairs += 1;
            assert_eq!(part.name.kind, FaultKind::OpenCoil);
            assert!((0.2..0.4).contains(&part.severity));
        } else {
            assert_eq!(before.faults, now.faults);
        }
    }
    assert!(pairs > 5, "{pairs}");
}

#[test]
fn each_part_has_a_severity_of_its_own() {
    let together = with(
        "(kind: OpenCoil, place: \"intake-valve\", severity: (0, 1)), \
         (kind: OpenCoil, place: \"exhaust-valve\", severity: (0, 1))",
    );
    for seed in 0..200 {
        let drawn = draw_fault(&together.scenario, attempt_streams(seed, 0)).faults;
        for (number, fault) in drawn.iter().enumerate() {
            assert!(drawn[..number].iter().all(|other| other.severity != fault.severity));
        }
    }
}

#[test]
fn conserves_the_weight_of_every_entry_over_its_suppositions() {
    for text in ScenarioText::carried() {
        let loaded = read(text).unwrap();
        let mut weights: BTreeMap<Vec<FaultName>, f64> = BTreeMap::new();
        for supposed in suppositions(&loaded) {
            let applied: Vec<_> =
                supposed.hidden.faults.iter().map(|fault| fault.name.clone()).collect();
            assert_eq!(supposed.faults, applied);
            *weights.entry(supposed.faults).or_insert(0.0) += supposed.weight;
        }
        assert!((weights.remove(&Vec::new()).unwrap() - loaded.scenario.no_fault).abs() < 1e-9);
        assert_eq!(weights.len(), loaded.scenario.faults.len());
        for prior in &loaded.scenario.faults {
            assert!((weights[&prior.names()] - prior.weight).abs() < 1e-9, "{prior:?}");
        }
    }
}

#[test]
fn carried_scenarios_are_found_by_name_where_there_is_no_file() {
    for text in ScenarioText::carried() {
        let loaded = load(Path::new(&text.scenario_name)).unwrap();
        assert_eq!(loaded.text, text);
    }
    assert!(load(Path::new("somewhere/glasshouse-lane")).is_err());
    assert!(load(Path::new("glasshouse-lane.ron")).is_err());
}

#[test]
fn the_harder_scenario_draws_every_kind_that_the_first_does_not() {
    let loaded = load(Path::new("glasshouse-lane")).unwrap();
    let kinds = |loaded: &Loaded| -> Vec<FaultKind> {
        let of = |prior: &crate::scenario::schema::FaultPrior| prior.names();
        loaded.scenario.faults.iter().flat_map(of).map(|name| name.kind).collect()
    };
    let (first, second) = (kinds(&demo().unwrap()), kinds(&loaded));
    for kind in FaultKind::ALL {
        assert!(first.contains(&kind) || second.contains(&kind), "{kind:?}");
    }
    let pairs = loaded.scenario.faults.iter().filter(|prior| !prior.also.is_empty());
    assert!(pairs.count() >= 4);
    let drawn = draw(&Arc::new(loaded), 2, &any_case).unwrap();
    assert_eq!(drawn.briefing.customers_route, Id::from("hill"));
}
