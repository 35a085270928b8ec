//! Codes of the standard by what they are about (SAE J2012 / ISO 15031-6).
//!
//! "A" is the intake camshaft and "B" the exhaust one; bank 1 holds cylinder 1 (from memory). The
//! numbers were read in a public copy of the standard's list, but for the control circuits of bank 2
//! from P2093 on and the two sensor families, which are from memory. Their meanings stand in
//! `assets/locales`.

use crate::control_module::code::Code;
use crate::control_module::known_code::{KnownCode, ReadinessGroup, Trips};
use serde::{Deserialize, Serialize};

/// A bank of cylinders.
#[derive(
    Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Default, Serialize, Deserialize,
)]
#[cfg_attr(test, derive(schemars::JsonSchema))]
pub enum Bank {
    /// With cylinder 1.
    #[default]
    One,
    /// The other.
    Two,
}

impl Bank {
    /// Both, in the order in which everything is done.
    pub const BOTH: [Self; 2] = [Self::One, Self::Two];
}

/// A camshaft of a bank.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Camshaft {
    /// Intake.
    A,
    /// Exhaust.
    B,
}

/// The codes of one camshaft's phasing.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct CamshaftFamily {
    /// Actuator circuit.
    pub open: Code,
    /// Actuator control circuit low.
    pub low: Code,
    /// Actuator control circuit high.
    pub high: Code,
    /// Timing over-advanced or system performance.
    pub early: Code,
    /// Timing over-retarded.
    pub late: Code,
    /// Slow response.
    pub slow: Code,
    /// Correlation of crankshaft and camshaft.
    pub correlation: Code,
}

impl CamshaftFamily {
    /// The family of a camshaft.
    #[must_use]
    pub const fn of(camshaft: Camshaft, bank: Bank) -> Self {
        let (actuator, control, slow, correlation) = match (camshaft, bank) {
            (Camshaft::A, Bank::One) => (0x0010, 0x2088, 0x000A, 0x0016),
            (Camshaft::B, Bank::One) => (0x0013, 0x2090, 0x000B, 0x0017),
            (Camshaft::A, Bank::Two) => (0x0020, 0x2092, 0x000C, 0x0018),
            (Camshaft::B, Bank::Two) => (0x0023, 0x2094, 0x000D, 0x0019),
        };
        Self {
            open: Code(actuator),
            low: Code(control),
            high: Code(control + 1),
            early: Code(actuator + 1),
            late: Code(actuator + 2),
            slow: Code(slow),
            correlation: Code(correlation),
        }
    }

    /// All of them.
    #[must_use]
    pub const fn all(&self) -> [Code; 7] {
        [self.open, self.low, self.high, self.early, self.late, self.slow, self.correlation]
    }
}

/// Codes that have nothing to do with camshaft phasing, to be found beside it: of each the readiness
/// group and whether it lights the lamp. Trips by the general rule, but circuits at once (assumed).
const UNRELATED: [(u16, Option<ReadinessGroup>, Trips, bool); 26] = [
    // Ambient air temperature.
    (0x0071, None, Trips::Two, true),
    (0x0072, None, Trips::One, true),
    (0x0073, None, Trips::One, true),
    (0x0074, None, Trips::Two, true),
    // Coolant thermostat, mixture, misfire.
    (0x0128, None, Trips::Two, true),
    (0x0171, Some(ReadinessGroup::FuelSystem), Trips::Two, true),
    (0x0174, Some(ReadinessGroup::FuelSystem), Trips::Two, true),
    (0x0300, Some(ReadinessGroup::Misfire), Trips::Two, true),
    (0x0301, Some(ReadinessGroup::Misfire), Trips::Two, true),
    (0x0302, Some(ReadinessGroup::Misfire), Trips::Two, true),
    (0x0303, Some(ReadinessGroup::Misfire), Trips::Two, true),
    (0x0304, Some(ReadinessGroup::Misfire), Trips::Two, true),
    // Catalyst, fuel vapour.
    (0x0420, Some(ReadinessGroup::Catalyst), Trips::Two, true),
    (0x0441, Some(ReadinessGroup::FuelVapour), Trips::Two, true),
    (0x0442, Some(ReadinessGroup::FuelVapour), Trips::Two, true),
    (0x0443, Some(ReadinessGroup::Components), Trips::One, true),
    (0x0455, Some(ReadinessGroup::FuelVapour), Trips::Two, true),
    (0x0456, Some(ReadinessGroup::FuelVapour), Trips::Two, true),
    (0x0457, Some(ReadinessGroup::FuelVapour), Trips::Two, true),
    // Vehicle speed, idle, air conditioning.
    (0x0500, Some(ReadinessGroup::Components), Trips::One, true),
    (0x0506, None, Trips::Two, true),
    (0x0507, None, Trips::Two, true),
    (0x0530, None, Trips::One, false),
    // Chassis, body, network: other modules' own, kept here as lost messages tell of them.
    (0x4035, None, Trips::One, false),
    (0xC121, None, Trips::One, false),
    (0xC100, None, Trips::One, false),
];

/// The stock of unrelated codes with their rules, for decoys.
pub fn unrelated() -> impl Iterator<Item = KnownCode> {
    UNRELATED.into_iter().map(|(code, readiness, trips, lights_lamp)| KnownCode {
        trips,
        lights_lamp,
        readiness,
        ..KnownCode::general(Code(code))
    })
}

/// The rule of a code that another part of the vehicle sets: from the stock, or the general one.
#[must_use]
pub fn rule_of_unrelated(code: Code) -> KnownCode {
    unrelated().find(|known| known.code == code).unwrap_or(KnownCode::general(code))
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::collections::BTreeSet;

    fn family(camshaft: Camshaft, bank: Bank) -> [String; 7] {
        CamshaftFamily::of(camshaft, bank).all().map(|code| code.to_string())
    }

    /// SAE J2012, a public copy of its list; P2093 to P2095 from memory.
    #[test]
    fn published_families_of_four_camshafts() {
        assert_eq!(
            family(Camshaft::A, Bank::One),
            ["P0010", "P2088", "P2089", "P0011", "P0012", "P000A", "P0016"]
        );
        assert_eq!(
            family(Camshaft::B, Bank::One),
            ["P0013", "P2090", "P2091", "P0014", "P0015", "P000B", "P0017"]
        );
        assert_eq!(
            family(Camshaft::A, Bank::Two),
            ["P0020", "P2092", "P2093", "P0021", "P0022", "P000C", "P0018"]
        );
        assert_eq!(
            family(Camshaft::B, Bank::Two),
            ["P0023", "P2094", "P2095", "P0024", "P0025", "P000D", "P0019"]
        );
    }

    #[test]
    fn limit_the_stock_is_unrelated_and_each_code_is_there_once() {
        let stock: BTreeSet<Code> = unrelated().map(|known| known.code).collect();
        assert_eq!(stock.len(), UNRELATED.len());
        for camshaft in [Camshaft::A, Camshaft::B] {
            for bank in [Bank::One, Bank::Two] {
                let own = CamshaftFamily::of(camshaft, bank).all();
                assert!(own.iter().all(|code| !stock.contains(code)));
            }
        }
    }
}
