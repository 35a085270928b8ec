//! How far apart the planner's bounds are after a tenth of a second and after two, on two hundred states and
//! forty steps: see `benches/README.md`.
//!
//! `cargo bench --no-default-features --bench planning`
#![expect(clippy::expect_used, reason = "a bench that cannot be run ends by panicking")]
#![expect(clippy::print_stdout, reason = "a bench is there to print")]
#![expect(clippy::cast_possible_truncation, reason = "a share of a count is a small whole number")]
#![expect(clippy::cast_sign_loss, reason = "a share of a count is not negative")]

mod decision;
mod made;
#[path = "../speed/stopwatch.rs"]
#[expect(dead_code, reason = "only one of the ways to measure is wanted here")]
mod stopwatch;

use faultwright::reasoning::plan::budget::{Bounds, Enough};
use faultwright::reasoning::plan::problem::Problem;
use faultwright::reasoning::plan::search::Search;
use std::time::Duration;

const EARLY: Duration = Duration::from_millis(100);
const LATE: Duration = Duration::from_secs(2);
/// The clock is asked after so many walks, because asking takes time too.
const WALKS: u32 = 8;
/// What is wanted of the gap after two seconds, as a share of the cost.
const GOAL: f64 = 0.01;

fn main() {
    decision::show();
    println!();
    println!(
        "{:<44} {:>26} {:>34}  {:>9}  goal: 1 % in 2 s",
        "200 states, 40 steps", "after 0.1 s", "after 2 s", "work"
    );
    for seed in 1..=3 {
        show(&format!("machine {seed}, every outcome certain"), &made::machine(seed, 0.0));
    }
    for seed in 1..=3 {
        show(&format!("machine {seed}, 5 % borderline"), &made::machine(seed, 0.05));
    }
    for seed in 1..=3 {
        show(&format!("machine {seed}, 15 % borderline"), &made::machine(seed, 0.15));
    }
    for seed in 1..=2 {
        show(&format!("unstructured {seed}, every outcome noisy"), &made::unstructured(seed));
    }
}

fn show(what: &str, problem: &Problem) {
    let mut search = Search::new(problem).expect("a sound problem");
    let root = search.root();
    let mut run = |time: Duration| stopwatch::once(|| until(&mut search, root, time));
    let (first, early) = run(EARLY);
    let (second, late) = run(LATE.saturating_sub(first));
    let met = late.gap() <= GOAL * late.upper;
    println!(
        "{what:<44} {:>26} {:>34}  {:>9}  {}",
        said(early),
        format!("{} in {:.2} s", said(late), (first + second).as_secs_f64()),
        search.work(),
        if met { "met" } else { "NOT MET" },
    );
}

fn said(bounds: Bounds) -> String {
    let share = 100.0 * bounds.gap() / bounds.upper;
    format!("{:.1} to {:.1} ({share:.1} %)", bounds.lower, bounds.upper)
}

/// Searches for so long of this thread's own time.
fn until(search: &mut Search, from: usize, time: Duration) -> Bounds {
    let mut walks = 0;
    let began = stopwatch::of_this_thread();
    search.run(from, &Enough::EXACT, &mut |_| {
        walks += 1;
        walks % WALKS != 0 || stopwatch::of_this_thread().saturating_sub(began) < time
    })
}
