//! Speed as ratios measured in one run: see `benches/README.md`.
//!
//! `cargo bench --no-default-features --bench speed -- road` runs the groups whose name has `road` in it.
#![expect(clippy::expect_used, reason = "a bench that cannot be run ends by panicking")]
#![expect(clippy::unnecessary_wraps, reason = "every group may be skipped; some never are")]

mod running;
mod scripts;
mod sessions;
mod simulator;
mod stopwatch;
mod table;
#[path = "../../tests/reference/vehicle.rs"]
#[expect(dead_code, reason = "the tests have two wirings, the bench compares one")]
mod vehicle;
mod wiring;

use table::Row;

/// Measures something; `Err` is the sentence that says why it cannot be measured here.
type Group = fn() -> Result<Vec<Row>, String>;

const GROUPS: [(&str, Group); 5] = [
    ("wiring", wiring::rows),
    ("simulator", simulator::rows),
    ("road", running::rows),
    ("transients", scripts::rows),
    ("sessions", sessions::rows),
];

fn main() {
    // The runner hands on its own flags, such as `--bench`.
    let wanted: Vec<String> =
        std::env::args().skip(1).filter(|word| !word.starts_with("--")).collect();
    table::heading();
    for (name, rows) in GROUPS {
        if wanted.is_empty() || wanted.iter().any(|word| name.contains(word.as_str())) {
            table::print(&rows());
        }
    }
}
