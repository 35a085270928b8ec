//! A contact from a milliohm to a hundred ohms.

use super::super::case::{Case, extra};
use super::super::circumstances::{DRIVEN, KEY_OFF};
use super::super::comparison::Comparison;
use super::super::reading::{OHMS, Probe, Reading, VOLTS};
use super::super::wiring::Wiring::Mended;

pub const UNPLUGGED: Reading =
    Reading::new("ohms coil pins unplugged", KEY_OFF.unplugged(), OHMS, "a1v", "a2v");
pub const BACK_PROBED: Reading =
    Reading::new("ohms harness side plugged", KEY_OFF, OHMS, "a1h", "a2h");
pub const AMPS: Reading = Reading::new("coil amps", DRIVEN, Probe::CoilAmps, "0", "0");
pub const DROP: Reading = Reading::new("volts drop battery to coil", DRIVEN, VOLTS, "batp", "a1v");
pub const COIL: Reading = Reading::new("volts coil pins", DRIVEN, VOLTS, "a1v", "a2v");
const CONTACT: Reading = Reading::new("volts across contact", DRIVEN, VOLTS, "a1h", "a1v");
const READINGS: [Reading; 6] = [UNPLUGGED, BACK_PROBED, AMPS, DROP, COIL, CONTACT];

pub const CONTACTS_OHMS: [f64; 13] =
    [0.001, 0.005, 0.02, 0.1, 0.5, 1.0, 2.0, 5.0, 10.0, 15.0, 18.0, 50.0, 100.0];

/// A vehicle with the intake's feed contact at a resistance.
pub fn with_contact(ohms: f64) -> Case {
    let mut case = Case::sound(Mended);
    case.name = format!("{ohms} ohm");
    extra(&mut case.condition, "intake-feed-pin", ohms - 0.005);
    case.netlist = vec![("rca1", ohms)];
    case
}

/// All of them, in the intake's feed.
pub fn sweep() -> Comparison {
    Comparison {
        name: "contact sweep",
        wiring: Mended,
        file: "contact_stored.csv",
        cases: CONTACTS_OHMS.into_iter().map(with_contact).collect(),
        readings: READINGS.to_vec(),
        least: 78,
    }
}
