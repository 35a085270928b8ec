//! What is known of a scenario before it is handed out: what tests tell apart, what a guess costs, and its tables.

#![expect(clippy::unwrap_used, reason = "a test fails by panicking")]

use faultwright::faults::{FaultKind, FaultName};
use faultwright::reasoning::discernment::{Best, Discernment, Pair, TestWorth};
use faultwright::reasoning::plan::budget::Bounds;
use faultwright::reasoning::remedy::Remedy;
use faultwright::reasoning::world::{Hypothesis, Worlds};
use faultwright::scenario::load::{Loaded, ScenarioText, read};
use faultwright::scenario::suppose::suppositions;
use faultwright::scenario::warning::WarningKind;
use faultwright::session::step::Step;
use faultwright::trial::facts::text::{self, Page};
use faultwright::trial::facts::{Draws, Earned, Facts, Guess, Telling};
use faultwright::trial::table::{Difficulty, Line, Mean, Table};
use faultwright::units::Money;
use faultwright::virtual_apprentices::policy::Policy;
use faultwright::wording::catalogue::Words;
use std::sync::Arc;

/// A first lesson with other faults than its own.
fn with_faults(faults: &str) -> Arc<Loaded> {
    let carried = ScenarioText::carried();
    let mut text = carried.into_iter().find(|it| it.scenario_name == "coal-wharf").unwrap();
    let (head, rest) = text.scenario_text.split_once("    faults: [").unwrap();
    let (_, tail) = rest.split_once("    no_fault:").unwrap();
    text.scenario_text = format!("{head}    faults: [{faults}],\n    no_fault:{tail}");
    Arc::new(read(text).unwrap())
}

fn facts(loaded: &Arc<Loaded>) -> Facts {
    let briefing = Arc::new(loaded.briefing());
    let worlds = Worlds::begin(&briefing, &suppositions(loaded), &|_, _| {}).unwrap();
    Facts::of(loaded, &worlds, &|_, _| {}).unwrap()
}

fn named(kind: FaultKind, place: &str) -> Hypothesis {
    vec![FaultName { kind, place: place.into() }]
}

/// A half, a quarter and two eighths: one and three quarters of a bit.
#[test]
fn closed_form_entropy_of_the_weights() {
    let draws = Draws::of(&with_faults(
        r#"(kind: OpenCoil, place: "intake-valve", weight: 4, severity: (0, 1)),
        (kind: OpenCoil, place: "exhaust-valve", weight: 2, severity: (0, 1)),
        (kind: BrokenWire, place: "intake-control-wire", weight: 1, severity: (0, 1)),
        (kind: BrokenWire, place: "exhaust-control-wire", weight: 1, severity: (0, 1)),
        (kind: LowOil, place: "sump", weight: 0, severity: (0, 1))"#,
    ));
    assert!((draws.bits - 1.75).abs() < 1e-12, "{}", draws.bits);
    assert_eq!(draws.shares.len(), 4, "what has no weight is not drawn: {draws:?}");
    assert_eq!(draws.shares[0], (named(FaultKind::OpenCoil, "intake-valve"), 0.5));
}

/// Two open coils of three faults, each of another valve: the codes tell them apart, and the commoner is the guess.
#[test]
fn limit_faults_of_two_circuits_are_told_apart_and_the_commoner_is_the_guess() {
    let loaded = with_faults(
        r#"(kind: OpenCoil, place: "intake-valve", weight: 3, severity: (0, 1)),
        (kind: OpenCoil, place: "exhaust-valve", weight: 1, severity: (0, 1))"#,
    );
    let facts = facts(&loaded);
    let [pair] = facts.telling.discernment.pairs.as_slice() else { panic!("{facts:?}") };
    assert_eq!((pair.told, pair.shares_remedy), (1.0, false));
    let best = pair.best.as_ref().unwrap();
    assert_eq!((best.told, best.warm), (1.0, false));
    assert_eq!(facts.telling.discernment.clusters(), []);
    assert_eq!(facts.telling.doubts(&loaded), []);
    // Nothing tells more than there is to know.
    let bits = Draws::of(&loaded).bits;
    assert!(facts.telling.discernment.tests.iter().all(|test| test.bits <= bits + 1e-12));
    assert!((facts.telling.discernment.tests[0].bits - bits).abs() < 1e-12, "{facts:?}");
    let guess = facts.guess.unwrap();
    assert_eq!(guess.remedy, Remedy::Renew("intake-valve".into()));
    assert_eq!(guess.chance, 0.75);
    let comeback = loaded.scenario.prices.comeback.as_units();
    assert!(guess.cost > 0.25 * comeback, "a quarter of the vehicles come back: {}", guess.cost);
    assert!(facts.value.lower <= facts.value.upper && facts.value.upper < guess.cost);
}

/// Between two contacts of one connector that open when hot nothing decides, and each asks for its own repair.
#[test]
fn limit_hot_contacts_of_one_connector_stay_together() {
    let loaded = with_faults(
        r#"(kind: HotContact, place: "intake-feed-pin", weight: 1, severity: (1, 1)),
        (kind: HotContact, place: "intake-control-pin", weight: 1, severity: (1, 1)),
        (kind: OpenCoil, place: "exhaust-valve", weight: 1, severity: (0, 1))"#,
    );
    let facts = facts(&loaded);
    let clusters = facts.telling.discernment.clusters();
    let [cluster] = clusters.as_slice() else { panic!("{clusters:?}") };
    let members: Vec<&Hypothesis> = cluster
        .members
        .iter()
        .map(|number| &facts.telling.discernment.hypotheses[*number].0)
        .collect();
    assert_eq!(
        members,
        [
            &named(FaultKind::HotContact, "intake-control-pin"),
            &named(FaultKind::HotContact, "intake-feed-pin"),
        ]
    );
    assert!(!cluster.shares_remedy);
    let doubts = facts.telling.doubts(&loaded);
    assert_eq!(doubts.len(), 2, "{doubts:?}");
    assert!(doubts.iter().all(|(_, kind)| matches!(kind, WarningKind::NotTold { .. })));
}

/// Behind one connector the code is the same for an open winding and a broken wire: the meter parts them, and where the case
/// leaves it out, nothing does and `check` says so.
#[test]
fn limit_faults_that_no_allowed_tool_can_tell_are_told_to_the_author() {
    let faults = r#"(kind: OpenCoil, place: "intake-valve", weight: 1, severity: (0, 1)),
        (kind: BrokenWire, place: "intake-control-wire", weight: 1, severity: (0, 1))"#;
    let with_all = with_faults(faults);
    assert_eq!(facts(&with_all).telling.doubts(&with_all), []);
    let mut text = with_all.text.clone();
    text.scenario_text =
        text.scenario_text.replacen("version: 1,", "version: 3, tools: Only([PressureGauge]),", 1);
    let without = Arc::new(read(text).unwrap());
    assert_ne!(without.scenario.tools, with_all.scenario.tools);
    let doubts = facts(&without).telling.doubts(&without);
    assert_eq!(doubts.len(), 2, "{doubts:?}");
    assert!(doubts.iter().all(|(_, kind)| matches!(kind, WarningKind::NotTold { .. })));

    // The command says so without being asked, because tools are left out; with all of them it does not look.
    let folder = tempfile::tempdir().unwrap();
    for (loaded, count) in [(&with_all, 0), (&without, 2)] {
        let path = folder.path().join("mine.ron");
        std::fs::write(&path, &loaded.text.scenario_text).unwrap();
        let out = std::process::Command::new(env!("CARGO_BIN_EXE_faultwright"))
            .args(["check", path.to_str().unwrap()])
            .args(["--keep-worlds", "none"])
            .env("LANG", "en_GB.UTF-8")
            .env_remove("LC_ALL")
            .env_remove("LC_MESSAGES")
            .output()
            .unwrap();
        let said = String::from_utf8(out.stdout).unwrap();
        assert_eq!(said.matches("too few affordable tests").count(), count, "{said}");
    }
}

/// Oil that is only old lights no lamp and shakes no engine on that road.
#[test]
fn limit_what_nobody_notices_is_told_at_its_entry() {
    let loaded = with_faults(
        r#"(kind: OpenCoil, place: "exhaust-valve", weight: 1, severity: (0, 1)),
        (kind: OpenCoil, place: "intake-valve", weight: 1, severity: (0, 1)),
        (kind: WornOutOil, place: "sump", weight: 1, severity: (0, 0))"#,
    );
    let facts = facts(&loaded);
    assert_eq!(facts.telling.never_noticed, [2]);
    let faults = named(FaultKind::WornOutOil, "sump");
    assert_eq!(facts.telling.doubts(&loaded), [(2, WarningKind::NeverNoticed { faults })]);
}

/// Hypotheses, and shares of severities at which some pairs of them are told.
fn discerned(hypotheses: &[Hypothesis], told: &[(usize, usize, f64)]) -> Discernment {
    let best = |told| Best { step: Step::ReadCodes, cost: 9.9, told, warm: false };
    Discernment {
        hypotheses: hypotheses.iter().map(|it| (it.clone(), 0.25)).collect(),
        tests: vec![TestWorth { step: Step::ReadCodes, cost: 9.9, bits: 0.5 }],
        pairs: told
            .iter()
            .map(|(first, second, told)| Pair {
                first: *first,
                second: *second,
                told: *told,
                tests: usize::from(*told >= 1.0),
                best: (*told > 0.0).then(|| best(*told)),
                shares_remedy: false,
            })
            .collect(),
    }
}

#[test]
fn closed_form_clusters_are_what_untold_pairs_join() {
    let wire = |place: &str| named(FaultKind::BrokenWire, place);
    let screen = named(FaultKind::BlockedScreen, "a");
    let spool = named(FaultKind::StickingSpool, "a");
    let all = [wire("w"), screen, wire("x"), spool, Vec::new()];
    // 0 with 2 and 2 with 4 are one cluster of three; 1 and 3 another, which cleaning the valve mends.
    let found = discerned(
        &all,
        &[(0, 1, 1.0), (0, 2, 0.5), (0, 3, 1.0), (1, 3, 0.25), (2, 4, 0.0), (0, 4, 1.0)],
    )
    .clusters();
    let members: Vec<(&[usize], f64, bool)> =
        found.iter().map(|it| (&it.members[..], it.told, it.shares_remedy)).collect();
    assert_eq!(members, [(&[0, 2, 4][..], 0.0, false), (&[1, 3][..], 0.25, true)]);
}

/// Long names, large amounts, every table: nothing is wider than the terminal, in any language.
#[test]
fn limit_no_table_is_wider_than_the_terminal() {
    let place = "a-place-with-quite-a-long-name-behind-the-engine";
    let long = named(FaultKind::WireToSupply, place);
    let pair: Hypothesis =
        [long.clone(), named(FaultKind::ChafedFeed, "exhaust-feed-wire")].concat();
    let all = [long.clone(), pair, named(FaultKind::LooseContact, place), Vec::new()];
    let discernment = discerned(
        &all,
        &[(0, 1, 0.0), (0, 2, 1.0), (0, 3, 1.0), (1, 2, 0.5), (1, 3, 1.0), (2, 3, 1.0)],
    );
    let facts = Facts {
        telling: Telling { never_noticed: Vec::new(), discernment },
        value: Bounds { lower: 1_234_567.89, upper: 2_345_678.9 },
        guess: Some(Guess {
            diagnosis: long[0].clone(),
            remedy: Remedy::MendAndFuse(place.into()),
            chance: 1.0 / 3.0,
            cost: 1_234_567.89,
        }),
    };
    let mean = Mean { of: 1_000, value: 12_345.6, error: Some(1_234.5) };
    let line = |policy| Line {
        policy,
        sessions: 1_000,
        cost: mean,
        marks: Some(mean),
        regret: None,
        regret_at_most: None,
        steps: mean,
        right: 1.0,
        unproved: None,
        unfinished: 0.0,
    };
    let difficulty = Difficulty {
        value: None,
        planner_steps: None,
        planner_cost: None,
        marks_apart: None,
        cost_apart: 0.0,
    };
    let lines = Policy::ALL.map(line).to_vec();
    let table = Table { lines, difficulty, by_case: Vec::new() };
    let earned = Earned { table, guess: Some(mean) };
    let draws = Draws { shares: vec![(all[1].clone(), 0.5), (Vec::new(), 0.5)], bits: 1.0 };
    for choice in Words::languages() {
        let words = Words::for_language(choice.tag);
        for width in [80, 100] {
            let page = Page { words: &words, currency: "CHF", width };
            let mut shown = text::draws(&draws, page);
            shown.extend(text::facts(&facts, Money(123_456_789), page));
            shown.extend(text::earned(&earned, 1_000, page));
            assert!(shown.len() > 30, "{shown:#?}");
            for line in shown {
                assert!(line.chars().count() <= width, "{}, {width}: {line}", choice.tag);
                assert_eq!(line.trim_end(), line);
            }
        }
    }
}
