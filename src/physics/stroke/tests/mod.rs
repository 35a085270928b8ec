mod balance;
mod printed_table;
mod reference;
mod sticking;

use super::*;

/// The reference valve's oil at 20 °C [Pa s].
const OIL_AT_20: f64 = Spool::REFERENCE.reference_viscosity_pa_s;

/// Bench supply: 12.6 V, 0.52 ohm, 120 ms.
const BENCH: Drive = Drive { supply: Volts(12.6), source: Ohms(0.52), on_for: Seconds(0.12) };

const AT_20: Surroundings =
    Surroundings { coil: Celsius(20.0), oil_viscosity_pa_s: OIL_AT_20, start: Millimetres(0.0) };

fn sticking(newtons: f64, thickening: f64) -> Spool {
    Spool {
        stiction: crate::units::Newtons(newtons),
        viscosity_multiplier: thickening,
        ..Spool::REFERENCE
    }
}
