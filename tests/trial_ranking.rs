//! The rubric ranks habits as a master technician would: planning over the book, the book over swapping
//! parts, swapping over guessing, on every scenario that the program carries.
//!
//! The policies were fixed before their marks were looked at, and so was the number of cases here; the
//! full run, with errors of the means, is `cargo bench --bench trial`.
#![expect(clippy::unwrap_used, reason = "a test fails by panicking")]

use faultwright::reasoning::world_store::WorldStore;
use faultwright::scenario::load::{Loaded, ScenarioText, read};
use faultwright::trial::row::{Row, Rows};
use faultwright::trial::runner::{Listener, Plan, run};
use faultwright::trial::table::Table;
use faultwright::trial::text::report;
use faultwright::trial::{columns, file};
use faultwright::virtual_apprentices::policy::Policy;
use faultwright::wording::catalogue::Words;
use parquet::file::reader::{FileReader as _, SerializedFileReader};
use parquet::record::RowAccessor as _;
use std::collections::BTreeSet;
use std::io::Write as _;
use std::sync::Arc;

/// Cases of each scenario: the number was set when two of them were known, in which the random tester was
/// lucky once on Glasshouse Lane and led the parts-swapper. The other eight were worked after that.
const SEEDS: core::ops::RangeInclusive<u64> = 1..=10;
/// The same of each of the others. It was set before any of them was worked, by what a run may take.
const LIBRARY_SEEDS: core::ops::RangeInclusive<u64> = 1..=3;
/// The scenarios that are worked at length.
const AT_LENGTH: [&str; 2] = ["market-hill", "glasshouse-lane"];
/// From the best to the worst.
const RANKING: [Policy; 4] =
    [Policy::Planner, Policy::ByTheBook, Policy::PartsSwapper, Policy::RandomTester];

struct Nobody;

impl Listener for Nobody {
    fn prepared(&self, _: usize, _: usize) {}
    fn done(&self, _: &Row) {}
}

fn scenarios() -> Vec<Arc<Loaded>> {
    ScenarioText::carried().into_iter().map(|text| Arc::new(read(text).unwrap())).collect()
}

fn worked(loaded: &Arc<Loaded>, plan: &Plan) -> Rows {
    run(loaded, plan, &BTreeSet::new(), &Nobody).unwrap()
}

/// Ten cases of each scenario on 25 November 2026: planner 100.0 and 100.0, by the book 99.4 and 84.9, parts-swapper
/// 48.7 and 57.6, random 36.7 and 43.8 marks on Market Hill and Glasshouse Lane; standard errors up to 9.
/// Three cases of each of the others on 28 November 2026 stand in `docs/instructor.md`.
#[test]
#[ignore = "takes minutes; .ci/run asks for it in a step of its own"]
fn verif_the_rubric_ranks_habits_as_a_master_technician_would() {
    for loaded in scenarios() {
        let policies = RANKING.to_vec();
        let at_length = AT_LENGTH.contains(&loaded.text.scenario_name.as_str());
        let plan = Plan {
            seeds: if at_length { SEEDS } else { LIBRARY_SEEDS },
            policies,
            is_marked: true,
            threads: None,
            store: WorldStore::none(),
        };
        let table = Table::of(&worked(&loaded, &plan)).unwrap();
        let marks = RANKING.map(|policy| table.line(policy).unwrap().marks.unwrap().value);
        // Whoever keeps to the book may do as well as the expert: a first lesson has one good way.
        let falls = marks[0] >= marks[1] && marks[1] > marks[2] && marks[2] > marks[3];
        assert!(falls, "{}: {RANKING:?} earn {marks:?}", loaded.text.scenario_name);
    }
}

/// A quick trial: nothing is marked, and nobody weighs evidence.
fn quick(seeds: core::ops::RangeInclusive<u64>, threads: usize) -> Plan {
    let policies = vec![Policy::RandomTester, Policy::PartsSwapper, Policy::ByTheBook];
    Plan {
        seeds,
        policies,
        is_marked: false,
        threads: threads.try_into().ok(),
        store: WorldStore::none(),
    }
}

fn told(rows: &Rows) -> Vec<String> {
    report(rows, &Table::of(rows).unwrap(), true, &Words::for_language("en-GB"))
}

#[test]
fn replay_a_trial_is_the_same_on_one_thread_and_on_three_and_in_parts() {
    let loaded = scenarios().remove(0);
    let whole = worked(&loaded, &quick(1..=5, 1));
    assert_eq!(whole.rows.len(), 15);
    assert_eq!(worked(&loaded, &quick(1..=5, 3)), whole);
    let mut gathered = file::Gathered::default();
    for part in [4..=5, 1..=3] {
        gathered.add(&file::text(&worked(&loaded, &quick(part, 2)))).unwrap();
    }
    let joined = gathered.finish().unwrap();
    assert_eq!(joined, whole);
    assert_eq!(file::text(&joined), file::text(&whole));
    assert_eq!(told(&joined), told(&whole));
    let done: BTreeSet<_> = whole.rows.iter().take(7).map(Row::place).collect();
    let rest = run(&loaded, &quick(1..=5, 2), &done, &Nobody).unwrap();
    assert_eq!(rest.rows, whole.rows[7..]);
    read_back_as_parquet(&whole);
}

/// The columns as another reader of the format finds them.
fn read_back_as_parquet(rows: &Rows) {
    let mut bytes = Vec::new();
    columns::write(rows, &mut bytes).unwrap();
    let mut again = Vec::new();
    columns::write(rows, &mut again).unwrap();
    assert_eq!(bytes, again, "the same rows give the same bytes");
    let mut kept = tempfile::tempfile().unwrap();
    kept.write_all(&bytes).unwrap();
    let reader = SerializedFileReader::new(kept).unwrap();
    let names: Vec<String> = reader
        .metadata()
        .file_metadata()
        .schema_descr()
        .columns()
        .iter()
        .map(|column| column.name().to_owned())
        .collect();
    let place = |name: &str| names.iter().position(|it| it == name).unwrap();
    let found: Vec<_> = reader.get_row_iter(None).unwrap().map(Result::unwrap).collect();
    assert_eq!(found.len(), rows.rows.len());
    for (found, row) in found.iter().zip(&rows.rows) {
        assert_eq!(found.get_ulong(place("seed")).unwrap(), row.seed);
        assert_eq!(found.get_string(place("policy")).unwrap(), row.policy.word());
        assert_eq!(found.get_int(place("steps")).unwrap(), i32::try_from(row.steps).unwrap());
        assert_eq!(found.get_double(place("cost")).unwrap(), row.cost());
        assert!(found.get_double(place("marks")).is_err(), "nothing was marked");
    }
}
