//! The full trial: every virtual apprentice on every scenario that the program carries.
//!
//! `cargo bench --no-default-features --bench trial`, with `-- 200` the number of cases of each scenario.
//! It measures no speed; it is here because more cases take hours and not the seconds that a test may take.
#![expect(clippy::print_stdout, reason = "a bench prints what it measured")]

use faultwright::reasoning::world_store::WorldStore;
use faultwright::scenario::load::{ScenarioText, read};
use faultwright::trial::row::Row;
use faultwright::trial::runner::{Listener, Plan, run};
use faultwright::trial::table::Table;
use faultwright::trial::text::report;
use faultwright::virtual_apprentices::policy::Policy;
use faultwright::wording::catalogue::Words;
use std::collections::BTreeSet;
use std::error::Error;
use std::sync::Arc;

/// Cases of each scenario where no number is given: some minutes on two cores.
const CASES: u64 = 2;

struct Nobody;

impl Listener for Nobody {
    fn prepared(&self, _: usize, _: usize) {}
    fn done(&self, _: &Row) {}
}

fn main() -> Result<(), Box<dyn Error>> {
    let cases = std::env::args().find_map(|word| word.parse().ok()).unwrap_or(CASES);
    let words = Words::for_language("en-GB");
    for text in ScenarioText::carried() {
        let loaded = Arc::new(read(text)?);
        let plan = Plan {
            seeds: 1..=cases,
            policies: Policy::ALL.to_vec(),
            is_marked: true,
            threads: None,
            store: WorldStore::none(),
        };
        let rows = run(&loaded, &plan, &BTreeSet::new(), &Nobody)?;
        if let Some(table) = Table::of(&rows) {
            for line in report(&rows, &table, false, &words) {
                println!("{line}");
            }
            println!();
        }
    }
    Ok(())
}
