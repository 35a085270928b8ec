//! The stored table of readings of the original wiring: twelve conditions, eighteen readings.
//!
//! The table was computed with an independent circuit simulator for this project before the
//! program existed; `original.cir` computes it again. Rounding rule: a cell agrees when the value
//! before the meter's own rounding, written with the cell's number of decimals (thousands for a
//! `k`, thousandths for a row in mA), is the cell's text; a minus before nothing but zeros is
//! dropped. The display, which may be coarser, must then lie within half a count of that value.
//!
//! Every cell agrees. The description that came with the table left five things out, found by
//! trying them in the simulator until all digits agreed:
//!
//! 1. Consumers return to the engine, not to the battery's post, and the module's own to the
//!    module's ground. Returning them to the post moves control-side readings by up to 20 mV.
//! 2. Healthy fuse and relay contact together are 20 mohm, and a healthy joint is nothing: 1 mohm
//!    there already shows in the current's fourth decimal.
//! 3. The transistor's body diode is not the freewheel diode: 0.1 nA and ideality 1.1 instead of
//!    1 nA and 1.3. It decides the 3.44k and 4.26k of a damaged coil left plugged in (with one
//!    diode for both: 3.35k and 4.19k), and nothing else in the table.
//! 4. A running engine has 0.7 ohm of consumers at the fuse box (20 A) in place of 2.1 ohm. With
//!    2.1 ohm the healthy coil would carry 1.225 A instead of 1.208 A.
//! 5. The rows with the driver on, "I coil off" and "ECM pin …" are without a meter; its 10 Mohm
//!    turn the 2.51 V of an idle pin into 2.50 V. Taken with the meter, the driver-on voltages are
//!    the same to the last digit in all cells but the one in [`ONE_COUNT_WITH_METER`].
//!
//! The table's ohmmeter had 2 kohm inside; with ours of 1.5 kohm, which keeps the lowest range right
//! up to its full scale, no cell changes.
//!
//! In the column "fuse blown" the module lives although its feed is dead. That is wrong, and
//! mended in the other wiring; here it is kept because the table has it.

use super::agreement::shows;
use super::asked::original::{READINGS, WITH_METER, wiring};
use super::case::{Case, TABLE_FAULTS};
use super::reading::{Answer, Reading, VOLTS};
use super::simulator;
use super::table::cells;
use super::wiring::Wiring::Original;

const CELLS: usize = 18 * 12;

/// Cells that the meter shows one count off the table, with what it shows: the dead feed wire is
/// lifted by 7 uV through the meter, just enough to cross the middle between two digits.
const ONE_COUNT_WITH_METER: [(&str, &str, &str); 1] =
    [("drop batp-a1v on", "fuse blown", "12.589")];

/// A value as the table writes it, in the form of one of its cells.
fn written(value: f64, like: &str, row: &str) -> String {
    if value.is_infinite() {
        return "OL".to_owned();
    }
    let (digits, suffix) = like.strip_suffix('k').map_or((like, ""), |digits| (digits, "k"));
    let decimals = digits.split('.').nth(1).map_or(0, str::len);
    let scale = if suffix == "k" {
        1e-3
    } else if row.ends_with(" mA") {
        1e3
    } else {
        1.0
    };
    let text = format!("{:.decimals$}{suffix}", value * scale);
    match text.strip_prefix('-') {
        Some(rest) if rest.chars().all(|c| "0.k".contains(c)) => rest.to_owned(),
        _ => text,
    }
}

/// The table's cell of a reading in a case.
fn cell<'a>(table: &[Vec<&'a str>], reading: &Reading, case: &Case) -> &'a str {
    let column = table[0].iter().position(|name| *name == case.name).expect("a column");
    table.iter().find(|row| row[0] == reading.name).expect("a row")[column]
}

/// The cell that a reading must give: the table's, or what the meter makes of it.
fn wanted<'a>(table: &[Vec<&'a str>], reading: &Reading, case: &Case) -> &'a str {
    let listed = ONE_COUNT_WITH_METER
        .iter()
        .find(|(row, column, _)| reading.name == *row && case.name == *column);
    match listed {
        Some((_, _, shown)) if reading.probe == VOLTS => shown,
        _ => cell(table, reading, case),
    }
}

fn table_and_cases() -> (Vec<Vec<&'static str>>, Vec<Case>) {
    let table = cells(include_str!("original_readings.csv"));
    let cases = Case::of(Original, &TABLE_FAULTS);
    let columns: Vec<&str> = cases.iter().map(|case| case.name.as_str()).collect();
    let rows: Vec<&str> = table[1..].iter().map(|row| row[0]).collect();
    assert_eq!(table[0][1..], columns);
    assert_eq!(rows, READINGS.map(|reading| reading.name));
    (table, cases)
}

#[test]
fn reference_readings_agree_with_stored_simulator_values() {
    let (table, cases) = table_and_cases();
    let mut compared = 0;
    let mut wrong = Vec::new();
    for reading in READINGS.iter().chain(&WITH_METER) {
        for case in &cases {
            let Answer { value, display } = reading.taken(Original, case);
            let wanted = wanted(&table, reading, case);
            let ours = written(value, wanted, reading.name);
            if ours != wanted || display.is_some_and(|display| !shows(display, value)) {
                wrong.push(format!(
                    "{} / {}: {wanted} wanted, {ours} got ({value}, {display:?})",
                    reading.name, case.name
                ));
            }
            compared += 1;
        }
    }
    assert_eq!(compared, CELLS + WITH_METER.len() * cases.len());
    assert!(wrong.is_empty(), "{} of {compared} cells differ\n{}", wrong.len(), wrong.join("\n"));
    simulator::tell(&format!(
        "original wiring: all {CELLS} cells of the stored table agree; with the meter in place of \
         bare voltages {} is one count off",
        ONE_COUNT_WITH_METER.map(|(row, column, _)| format!("{row} / {column}")).join(", ")
    ));
}

/// The table is what its netlist says, and the program agrees with more digits than it shows.
#[test]
fn reference_original_wiring_agrees_with_simulator() {
    let (table, cases) = table_and_cases();
    let asked = wiring();
    let simulated = asked.check();
    for (reading, values) in asked.readings.iter().zip(&simulated) {
        for (case, value) in cases.iter().zip(values) {
            let wanted = wanted(&table, reading, case);
            let what = format!("{} / {}", reading.name, case.name);
            assert_eq!(written(*value, wanted, reading.name), wanted, "{what}: by its netlist");
        }
    }
}

#[test]
fn closed_form_a_cell_is_written_with_its_own_decimals() {
    assert_eq!(written(11.004_9, "11.00", "R"), "11.00");
    assert_eq!(written(11.005_1, "11.00", "R"), "11.01");
    assert_eq!(written(3_442.8, "3.44k", "R"), "3.44k");
    assert_eq!(written(1.122_09, "1122.090", "I coil off mA"), "1122.090");
    assert_eq!(written(-1e-9, "0.000", "V"), "0.000");
    assert_eq!(written(-0.000_106, "-0.106", "I coil off mA"), "-0.106");
    assert_eq!(written(f64::INFINITY, "11.00", "R"), "OL");
}
