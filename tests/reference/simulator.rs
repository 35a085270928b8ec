//! Runs ngspice once for any number of netlists, and keeps what it said.

use std::fmt::Write as _;
use std::io::{ErrorKind, Write as _};
use std::process::Command;

/// A netlist with a meter in it.
pub struct Deck {
    /// With its parameters set, open at its end.
    pub netlist: String,
    /// The lines that connect the meter.
    pub meter: String,
    /// Test currents of an ohmmeter [A]; empty for any other instrument.
    pub ranges_a: Vec<f64>,
}

const METER_MODELS: &str = include_str!("meter.cir");

impl Deck {
    /// Sets parameters in a netlist; the last value given to a name counts.
    pub fn with_parameters(netlist: &str, set: &[(&str, f64)]) -> String {
        for (name, _) in set {
            let line = format!(".param {name}=");
            assert!(netlist.lines().any(|l| l.starts_with(&line)), "the netlist has no {name}");
        }
        let mut text = String::new();
        for line in netlist.lines() {
            let name = line.strip_prefix(".param ").and_then(|rest| rest.split('=').next());
            match set.iter().rev().find(|(wanted, _)| Some(*wanted) == name) {
                Some((name, value)) => writeln!(text, ".param {name}={value:e}"),
                None => writeln!(text, "{line}"),
            }
            .expect("text grows");
        }
        text
    }

    fn text(&self) -> String {
        format!("{}{METER_MODELS}{}\n.end\n", self.netlist, self.meter)
    }

    fn readings(&self) -> usize {
        self.ranges_a.len().max(1)
    }
}

/// Solves every deck in one process; `None` when ngspice is not installed.
pub fn run(decks: &[Deck]) -> Option<Vec<Vec<f64>>> {
    let folder = tempfile::tempdir().expect("a temporary folder");
    let mut driver = "decks\n.control\nset numdgt=15\n".to_owned();
    for (number, deck) in decks.iter().enumerate() {
        let path = folder.path().join(format!("{number}.cir"));
        std::fs::write(&path, deck.text()).expect("writing a netlist");
        writeln!(driver, "source {}\necho deck {number}", path.display()).expect("text grows");
        if deck.ranges_a.is_empty() {
            driver.push_str("op\nprint v(reading)\n");
        }
        for range_a in &deck.ranges_a {
            writeln!(driver, "alter vrange = {range_a:e}\nop\nprint v(reading)")
                .expect("text grows");
        }
        driver.push_str("destroy all\nremcirc\n");
    }
    driver.push_str("quit\n.endc\n.end\n");
    // "-n": no start-up file of the person who runs the tests.
    let path = folder.path().join("driver.cir");
    std::fs::write(&path, driver).expect("writing the driver");

    let output = match Command::new("ngspice").args(["-n", "-b"]).arg(&path).output() {
        Err(error) if error.kind() == ErrorKind::NotFound => return None,
        output => output.expect("ngspice starts"),
    };
    let said = String::from_utf8_lossy(&output.stdout);
    let printed = parse(&said, decks.len());
    for (number, (deck, values)) in decks.iter().zip(&printed).enumerate() {
        assert_eq!(
            values.len(),
            deck.readings(),
            "ngspice did not solve deck {number}: {}\n{}",
            deck.meter,
            parameters(&deck.netlist)
        );
    }
    Some(printed)
}

fn parameters(netlist: &str) -> String {
    netlist.lines().filter(|line| line.starts_with(".param")).collect::<Vec<_>>().join("\n")
}

fn parse(said: &str, decks: usize) -> Vec<Vec<f64>> {
    let mut printed = vec![Vec::new(); decks];
    let mut current = None;
    for line in said.lines() {
        if let Some(number) = line.strip_prefix("deck ") {
            current = number.trim().parse::<usize>().ok();
        } else if let Some(value) = line.strip_prefix("v(reading) = ")
            && let Some(values) = current.and_then(|number| printed.get_mut(number))
        {
            values.push(value.trim().parse().expect("a number"));
        }
    }
    printed
}

/// Tells something past the test runner's capture, which hides what a passing test prints.
pub fn tell(text: &str) {
    // A closed stream is no reason to fail.
    let _ = writeln!(std::io::stderr(), "reference: {text}");
}

/// Whether the person asked for the stored values to be written anew.
pub fn storing() -> bool {
    std::env::var_os("FAULTWRIGHT_STORE_REFERENCE").is_some()
}
