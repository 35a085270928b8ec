//! What is asked of the mended wiring: every fault of the table and three of the module's own branch.

use super::super::case::{Case, MODULE_FAULTS, TABLE_FAULTS, extra};
use super::super::circumstances::{Circumstances, DRIVEN, Driver, KEY_OFF, KEY_ON, RUNNING};
use super::super::comparison::Comparison;
use super::super::reading::{AMPS, OHMS, Probe, Reading, VOLTS};
use super::super::wiring::Wiring::Mended;
use Probe::{BareVolts, CoilAmps};
use faultwright::vehicle::harness::OPEN_OHMS;

const LOOSE: Circumstances = KEY_OFF.unplugged();
const LOOSE_ON: Circumstances = KEY_ON.unplugged();
const BOTH_DRIVEN: Circumstances = DRIVEN.exhaust_driven();
const FUSE_PULLED: Circumstances = DRIVEN.valve_fuse_pulled();

const READINGS: [Reading; 42] = [
    // Ohms with the key off, the valve unplugged as it should be.
    Reading::new("ohms coil pins unplugged", LOOSE, OHMS, "a1v", "a2v"),
    Reading::new("ohms control wire to ground unplugged", LOOSE, OHMS, "a2h", "engg"),
    Reading::new("ohms ground to control wire unplugged", LOOSE, OHMS, "engg", "a2h"),
    Reading::new("ohms control wire end to end", LOOSE, OHMS, "a2h", "ecma"),
    Reading::new("ohms feed wire end to end", LOOSE, OHMS, "r87", "a1h"),
    Reading::new("ohms feed wire to ground unplugged", LOOSE, OHMS, "a1h", "engg"),
    Reading::new("ohms across feed contact unplugged", LOOSE, OHMS, "a1h", "a1v"),
    Reading::new("ohms coil pin to ground unplugged", LOOSE, OHMS, "a1v", "engg"),
    Reading::new("ohms other valve unplugged", KEY_OFF.exhaust_unplugged(), OHMS, "b1v", "b2v"),
    // Ohms with the key off, left plugged in.
    Reading::new("ohms harness side plugged", KEY_OFF, OHMS, "a1h", "a2h"),
    Reading::new("ohms harness side plugged reversed", KEY_OFF, OHMS, "a2h", "a1h"),
    Reading::new("ohms feed contact plugged", KEY_OFF, OHMS, "a1h", "a1v"),
    Reading::new("ohms control contact plugged", KEY_OFF, OHMS, "a2h", "a2v"),
    Reading::new("ohms other valve plugged", KEY_OFF, OHMS, "b1h", "b2h"),
    Reading::new("ohms valve fuse in place", KEY_OFF, OHMS, "fbox", "r30"),
    Reading::new("ohms module fuse in place", KEY_OFF, OHMS, "fbox", "m30"),
    // Ohms on a live circuit, which is malpractice.
    Reading::new("ohms live coil", KEY_ON, OHMS, "a1v", "a2v"),
    Reading::new("ohms live coil reversed", KEY_ON, OHMS, "a2v", "a1v"),
    // Volts.
    Reading::new("volts battery key off", KEY_OFF, VOLTS, "batp", "0"),
    Reading::new("volts feed key off", KEY_OFF, VOLTS, "a1h", "0"),
    Reading::new("volts feed unplugged", LOOSE_ON, VOLTS, "a1h", "0"),
    Reading::new("volts control unplugged", LOOSE_ON, VOLTS, "a2h", "0"),
    Reading::new("volts feed against control unplugged", LOOSE_ON, VOLTS, "a1h", "a2h"),
    Reading::new("volts feed plugged", KEY_ON, VOLTS, "a1h", "0"),
    Reading::new("volts control plugged", KEY_ON, VOLTS, "a2h", "0"),
    Reading::new("volts module supply", KEY_ON, VOLTS, "ecmb", "ecmg"),
    Reading::new("volts module rail", KEY_ON, VOLTS, "v5", "ecmg"),
    Reading::new("volts feed driven", DRIVEN, VOLTS, "a1h", "0"),
    Reading::new("volts control driven", DRIVEN, VOLTS, "a2h", "0"),
    Reading::new("volts drop battery to coil driven", DRIVEN, VOLTS, "batp", "a1v"),
    Reading::new("volts coil pins driven", DRIVEN, VOLTS, "a1v", "a2v"),
    Reading::new("volts drop coil to battery driven", DRIVEN, VOLTS, "a2v", "0"),
    Reading::new("volts control against feed driven", DRIVEN, VOLTS, "a2h", "a1h"),
    Reading::new("volts drop of common feed both driven", BOTH_DRIVEN, VOLTS, "fbox", "spl"),
    Reading::new("volts battery running", RUNNING, VOLTS, "batp", "0"),
    Reading::new("volts coil pins running", RUNNING, VOLTS, "a1v", "a2v"),
    // Amperes in place of the valve fuse.
    Reading::new("amps in place of valve fuse", FUSE_PULLED, AMPS, "fbox", "r30"),
    // What the module itself senses, and the coil's current.
    Reading::new("pin volts", KEY_ON, BareVolts, "ecma", "0"),
    Reading::new("pin volts unplugged", LOOSE_ON, BareVolts, "ecma", "0"),
    Reading::new("coil amps not driven", KEY_ON, CoilAmps, "0", "0"),
    Reading::new("coil amps driven", DRIVEN, CoilAmps, "0", "0"),
    Reading::new("coil amps running", RUNNING, CoilAmps, "0", "0"),
];

/// Every reading in every case.
pub fn wiring() -> Comparison {
    let mut cases = Case::of(Mended, &TABLE_FAULTS);
    cases.extend(Case::of(Mended, &MODULE_FAULTS));
    Comparison {
        name: "mended wiring",
        wiring: Mended,
        file: "wiring_stored.csv",
        cases,
        readings: READINGS.to_vec(),
        least: 588,
    }
}

/// A switched driver, seen by a meter that shows the mean: on for a share of the time with the
/// coil as a resistance, freewheeling for the rest with the coil as a current. The currents are
/// round figures near those of a coil of 35 mH.
pub fn switched() -> Comparison {
    const AT_40: Circumstances = KEY_ON.driven(Driver::Switched(0.4, 0.46));
    const AT_60: Circumstances = KEY_ON.driven(Driver::Switched(0.6, 0.72));
    const FULL: Circumstances = KEY_ON.driven(Driver::Switched(1.0, 1.09));
    let readings = vec![
        Reading::new("control at duty 0.4", AT_40, VOLTS, "a2v", "0"),
        Reading::new("control at duty 0.6", AT_60, VOLTS, "a2v", "0"),
        Reading::new("control at duty 1", FULL, VOLTS, "a2v", "0"),
        Reading::new("feed at duty 0.4", AT_40, VOLTS, "a1v", "0"),
        Reading::new("coil pins at duty 0.4", AT_40, VOLTS, "a1v", "a2v"),
        Reading::new("coil pins at duty 0.6", AT_60, VOLTS, "a1v", "a2v"),
        Reading::new("module supply at duty 0.4", AT_40, VOLTS, "ecmb", "0"),
        Reading::new("pin at duty 0.4", AT_40, BareVolts, "ecma", "0"),
    ];
    let mut cases = vec![Case::sound(Mended)];
    for (name, element, parameter, healthy) in [
        ("feed pin 5R", "intake-feed-pin", "rca1", 0.005),
        ("control pin 5R", "intake-control-pin", "rca2", 0.005),
        ("module ground 5R", "module-ground-wire", "rground", 0.010),
    ] {
        let mut case = Case::sound(Mended);
        name.clone_into(&mut case.name);
        extra(&mut case.condition, element, 5.0 - healthy);
        case.netlist = vec![(parameter, 5.0)];
        cases.push(case);
    }
    Comparison {
        name: "switched driver",
        wiring: Mended,
        file: "switched_stored.csv",
        cases,
        readings,
        least: 32,
    }
}

/// The module's fuse blown; with both drivers closed the module is dead.
pub fn module_fuse_blown() -> Comparison {
    let readings = vec![
        Reading::new("module supply", KEY_ON, VOLTS, "ecmb", "ecmg"),
        Reading::new("module supply unplugged", LOOSE_ON, VOLTS, "ecmb", "ecmg"),
        Reading::new("module supply driven", DRIVEN, VOLTS, "ecmb", "ecmg"),
        Reading::new("module supply running", RUNNING, VOLTS, "ecmb", "ecmg"),
        Reading::new("module supply both driven", BOTH_DRIVEN, VOLTS, "ecmb", "ecmg"),
        Reading::new("fuse out", KEY_ON, VOLTS, "m30", "0"),
        Reading::new("control", KEY_ON, VOLTS, "a2h", "0"),
        Reading::new("control driven", DRIVEN, VOLTS, "a2h", "0"),
        Reading::new("coil amps", KEY_ON, CoilAmps, "0", "0"),
        Reading::new("coil amps driven", DRIVEN, CoilAmps, "0", "0"),
    ];
    Comparison {
        name: "module fuse blown",
        wiring: Mended,
        file: "module_fuse_stored.csv",
        cases: vec![blown(|at| at.intake == Driver::On && at.exhaust == Driver::On)],
        readings,
        least: 10,
    }
}

/// What the simulator would say of a module that stayed alive with both drivers closed.
pub fn module_fuse_blown_and_alive() -> Comparison {
    Comparison {
        name: "module fuse blown, module alive all the same",
        wiring: Mended,
        file: "module_fuse_alive_stored.csv",
        cases: vec![blown(|_| false)],
        readings: vec![Reading::new("module supply if alive", BOTH_DRIVEN, VOLTS, "ecmb", "ecmg")],
        least: 1,
    }
}

fn blown(dead: fn(Circumstances) -> bool) -> Case {
    let mut case = Case::sound(Mended);
    "module fuse blown".clone_into(&mut case.name);
    extra(&mut case.condition, "module-fuse", OPEN_OHMS);
    case.netlist = vec![("rmfuse", 1e12)];
    case.module_dead = dead;
    case
}
