//! What the module senses with the valve fuse blown.

use super::super::case::{Case, TABLE_FAULTS};
use super::super::circumstances::{DRIVEN, KEY_ON};
use super::super::comparison::Comparison;
use super::super::reading::{Probe, Reading, VOLTS};
use super::super::wiring::Wiring::Mended;
use Probe::{BareVolts, CoilAmps};

pub fn blown() -> Comparison {
    let readings = vec![
        Reading::new("supply", KEY_ON, VOLTS, "ecmb", "ecmg"),
        Reading::new("intake pin", KEY_ON, BareVolts, "ecma", "0"),
        Reading::new("exhaust pin", KEY_ON, BareVolts, "ecmbp", "0"),
        Reading::new("coil amps driven", DRIVEN, CoilAmps, "0", "0"),
        Reading::new("intake pin unplugged", KEY_ON.unplugged(), BareVolts, "ecma", "0"),
        Reading::new("exhaust pin unplugged", KEY_ON.exhaust_unplugged(), BareVolts, "ecmbp", "0"),
    ];
    let mut cases = Case::of(Mended, &TABLE_FAULTS);
    cases.retain(|case| ["healthy 11R", "ctrl short gnd", "fuse blown"].contains(&&*case.name));
    Comparison {
        name: "valve fuse blown",
        wiring: Mended,
        file: "valve_fuse_stored.csv",
        cases,
        readings,
        least: 18,
    }
}
