//! Stored tables: a header with cases, one line for each reading.

use super::agreement::close;
use super::case::Case;
use super::reading::Reading;
use super::simulator::{self, Deck};
use super::wiring::Wiring;
use std::fmt::Write as _;
use std::path::PathBuf;

/// Two runs of the simulator, or two of its releases, may differ by this share.
const SAME_SHARE: f64 = 1e-6;
/// And by this much in volts, amperes or ohms, where a value is nothing but rounding.
const SAME_LEAST: f64 = 1e-9;

/// Values of the simulator by reading and case: run where it is installed, from the stored file
/// elsewhere.
pub fn simulated(
    wiring: Wiring,
    file: &str,
    cases: &[Case],
    readings: &[Reading],
) -> Vec<Vec<f64>> {
    let Some(fresh) = run(wiring, cases, readings) else {
        simulator::tell(&format!("ngspice is not installed; compared with {file}"));
        return stored(file, cases, readings);
    };
    if simulator::storing() {
        store(file, cases, readings, &fresh);
    }
    let stored = stored(file, cases, readings);
    for ((reading, fresh), stored) in readings.iter().zip(&fresh).zip(&stored) {
        for ((case, fresh), stored) in cases.iter().zip(fresh).zip(stored) {
            assert!(
                close(*fresh, *stored, SAME_SHARE, SAME_LEAST),
                "{file} is stale: {} / {}: stored {stored}, ngspice says {fresh}",
                reading.name,
                case.name
            );
        }
    }
    simulator::tell(&format!(
        "ran ngspice for {} readings; {file} agrees with it",
        cases.len() * readings.len()
    ));
    fresh
}

fn run(wiring: Wiring, cases: &[Case], readings: &[Reading]) -> Option<Vec<Vec<f64>>> {
    let mut shares = Vec::new();
    let mut decks: Vec<Deck> = Vec::new();
    for reading in readings {
        for case in cases {
            let phases = reading.decks(wiring, case);
            shares.push(phases.iter().map(|(share, _)| *share).collect::<Vec<f64>>());
            decks.extend(phases.into_iter().map(|(_, deck)| deck));
        }
    }
    let mut printed = simulator::run(&decks)?.into_iter();
    let mut shares = shares.into_iter();
    let table = readings
        .iter()
        .map(|reading| {
            shares
                .by_ref()
                .take(cases.len())
                .map(|shares| {
                    let phases: Vec<(f64, Vec<f64>)> =
                        shares.into_iter().zip(printed.by_ref()).collect();
                    reading.simulated(&phases)
                })
                .collect()
        })
        .collect();
    Some(table)
}

fn path(file: &str) -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("tests/reference").join(file)
}

fn store(file: &str, cases: &[Case], readings: &[Reading], values: &[Vec<f64>]) {
    let mut text = "reading".to_owned();
    for case in cases {
        write!(text, ",{}", case.name).expect("text grows");
    }
    for (reading, values) in readings.iter().zip(values) {
        write!(text, "\n{}", reading.name).expect("text grows");
        for value in values {
            if value.is_finite() {
                write!(text, ",{value:.9e}").expect("text grows");
            } else {
                text.push_str(",OL");
            }
        }
    }
    text.push('\n');
    std::fs::write(path(file), text).expect("storing reference values");
}

/// The stored values, without asking the simulator.
pub fn stored(file: &str, cases: &[Case], readings: &[Reading]) -> Vec<Vec<f64>> {
    let text = std::fs::read_to_string(path(file)).expect("stored reference values");
    let table = cells(&text);
    let names: Vec<&str> = cases.iter().map(|case| case.name.as_str()).collect();
    assert_eq!(table[0][1..], names, "cases of {file}");
    assert_eq!(table.len() - 1, readings.len(), "readings of {file}");
    table[1..]
        .iter()
        .zip(readings)
        .map(|(line, reading)| {
            assert_eq!(line[0], reading.name, "readings of {file}");
            line[1..].iter().map(|cell| number(cell)).collect()
        })
        .collect()
}

fn number(cell: &str) -> f64 {
    match cell {
        "OL" => f64::INFINITY,
        digits => digits.parse().expect("a number"),
    }
}

/// A table's cells, the header first.
pub fn cells(text: &str) -> Vec<Vec<&str>> {
    text.lines().map(|line| line.split(',').collect()).collect()
}
