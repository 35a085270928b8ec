//! The table of results.
#![expect(clippy::print_stdout, reason = "a bench is there to print")]

use std::time::Duration;

/// One line of the table.
pub struct Row {
    /// What was measured.
    pub what: String,
    /// How long it takes here.
    pub ours: Duration,
    /// What it is compared with.
    pub other: Duration,
    /// What the other is.
    pub against: String,
    /// How many times faster than the other it is meant to be.
    pub goal: f64,
}

impl Row {
    fn ratio(&self) -> f64 {
        self.other.as_secs_f64() / self.ours.as_secs_f64()
    }

    fn print(&self) {
        let ratio = self.ratio();
        println!(
            "{:<58} {:>10} {:>10}  {:<36} {:>9} {:>6} {}",
            self.what,
            show(self.ours),
            show(self.other),
            self.against,
            format!("{ratio:.*}", usize::from(ratio < 100.0)),
            self.goal,
            if ratio >= self.goal { "met" } else { "NOT MET" },
        );
    }
}

/// Prints the heading.
pub fn heading() {
    println!(
        "{:<58} {:>10} {:>10}  {:<36} {:>9} {:>6} goal",
        "what", "ours", "other", "the other is", "ratio", "goal"
    );
}

/// Prints a group's lines, or the sentence that says why there are none.
pub fn print(lines: &Result<Vec<Row>, String>) {
    match lines {
        Ok(rows) => rows.iter().for_each(Row::print),
        Err(why) => println!("skipped: {why}"),
    }
}

/// A time in the unit that suits it.
fn show(time: Duration) -> String {
    let seconds = time.as_secs_f64();
    if seconds < 1e-6 {
        format!("{:.0} ns", seconds * 1e9)
    } else if seconds < 1e-3 {
        format!("{:.2} us", seconds * 1e6)
    } else if seconds < 1.0 {
        format!("{:.2} ms", seconds * 1e3)
    } else {
        format!("{seconds:.2} s")
    }
}
