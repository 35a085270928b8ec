//! The rows of the table that was stored before the program existed.

use super::super::case::{Case, TABLE_FAULTS};
use super::super::circumstances::{DRIVEN, KEY_OFF, KEY_ON, RUNNING};
use super::super::comparison::Comparison;
use super::super::reading::{OHMS, Probe, Reading, VOLTS};
use super::super::wiring::Wiring::{Mended, Original};

/// The rows of the table.
pub const READINGS: [Reading; 18] = [
    Reading::new("R a1v-a2v unpl key-off", KEY_OFF.unplugged(), OHMS, "a1v", "a2v"),
    Reading::new("R a1h-a2h PLUGGED key-off", KEY_OFF, OHMS, "a1h", "a2h"),
    Reading::new("R a2h-engg unpl key-off", KEY_OFF.unplugged(), OHMS, "a2h", "engg"),
    Reading::new("R a2h-ecma unpl key-off", KEY_OFF.unplugged(), OHMS, "a2h", "ecma"),
    Reading::new("V a1h unpl KOEO", KEY_ON.unplugged(), VOLTS, "a1h", "0"),
    Reading::new("V a2h unpl KOEO", KEY_ON.unplugged(), VOLTS, "a2h", "0"),
    Reading::new("V a1h plug drv-off", KEY_ON, VOLTS, "a1h", "0"),
    Reading::new("V a2h plug drv-off", KEY_ON, VOLTS, "a2h", "0"),
    Reading::new("I on 100%", DRIVEN, Probe::CoilAmps, "0", "0"),
    Reading::new("V a1h on", DRIVEN, Probe::BareVolts, "a1h", "0"),
    Reading::new("V a2h on", DRIVEN, Probe::BareVolts, "a2h", "0"),
    Reading::new("drop batp-a1v on", DRIVEN, Probe::BareVolts, "batp", "a1v"),
    Reading::new("V coil pins on", DRIVEN, Probe::BareVolts, "a1v", "a2v"),
    Reading::new("drop a2v-0 on", DRIVEN, Probe::BareVolts, "a2v", "0"),
    Reading::new("ECM pin off", KEY_ON, Probe::BareVolts, "ecma", "0"),
    Reading::new("I coil off mA", KEY_ON, Probe::CoilAmps, "0", "0"),
    Reading::new("ECM pin off unpl", KEY_ON.unplugged(), Probe::BareVolts, "ecma", "0"),
    Reading::new("I run 14.3V 100%", RUNNING, Probe::CoilAmps, "0", "0"),
];

/// Rows of voltages that the table has without a meter, and a technician with one.
pub const WITH_METER: [Reading; 5] = [
    READINGS[9].metered(),
    READINGS[10].metered(),
    READINGS[11].metered(),
    READINGS[12].metered(),
    READINGS[13].metered(),
];

/// Every row, those of voltages also with the meter, in every case.
pub fn wiring() -> Comparison {
    Comparison {
        name: "original wiring",
        wiring: Original,
        file: "original_stored.csv",
        cases: Case::of(Original, &TABLE_FAULTS),
        readings: READINGS.iter().chain(&WITH_METER).copied().collect(),
        least: 216,
    }
}

/// The same rows in the mended wiring.
pub fn in_mended_wiring() -> Comparison {
    Comparison {
        name: "mended wiring, table",
        wiring: Mended,
        file: "mended_table_stored.csv",
        cases: Case::of(Mended, &TABLE_FAULTS),
        readings: READINGS.to_vec(),
        least: 216,
    }
}
