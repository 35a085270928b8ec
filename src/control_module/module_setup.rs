//! What a module is made of, as data of the vehicle, and the check of that data.

use crate::control_module::circuit_limits::{CircuitLimits, LimitFault};
use crate::control_module::circuit_monitor::DriverCodes;
use crate::control_module::code::Code;
use crate::control_module::known_code::{Driver, History, KnownCode};
use crate::control_module::oil_pressure_monitor::OilPressureLimits;
use crate::control_module::supply_monitor::SupplyLimits;
use serde::{Deserialize, Serialize};
use std::collections::BTreeSet;

/// Everything that makes one vehicle's module differ from another's.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ModuleSetup {
    /// Every code that the module can store, each once; also those whose monitor is not simulated.
    pub known: Vec<KnownCode>,
    /// The circuit codes of each driver; a [`Driver`] is a place in this list.
    pub drivers: Vec<DriverCodes>,
    /// Figures of the circuit diagnosis, the same for each driver.
    pub limits: CircuitLimits,
    /// The supply's diagnosis, if the module has it.
    #[serde(default)]
    pub supply: Option<SupplyLimits>,
    /// The oil pressure's diagnosis, if the module has it.
    #[serde(default)]
    pub oil_pressure: Option<OilPressureLimits>,
    /// Codes of faults that are present in what is not simulated.
    #[serde(default)]
    pub present_elsewhere: Vec<Code>,
    /// What earlier driving has left.
    pub history: History,
}

/// Setup data that contradicts itself.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum SetupFault {
    /// A threshold is unusable.
    #[error(transparent)]
    Limits(#[from] LimitFault),
    /// A figure of the supply's or the oil pressure's diagnosis is unusable.
    #[error("checking a control module: {field} of the {monitor} monitor must be {expected}")]
    Monitor {
        /// The monitor.
        monitor: &'static str,
        /// The field.
        field: &'static str,
        /// What it must be.
        expected: &'static str,
    },
    /// A code has two rules.
    #[error("checking a control module: code {code} is listed twice, expected once")]
    ListedTwice {
        /// The code.
        code: Code,
    },
    /// A code is used without a rule.
    #[error("checking a control module: code {code} is used by {user}, expected it in `known`")]
    NotListed {
        /// The code.
        code: Code,
        /// The part of the setup that names it.
        user: &'static str,
    },
    /// Two circuits share a code.
    #[error("checking a control module: code {code} belongs to two circuits, expected one")]
    SharedCircuitCode {
        /// The code.
        code: Code,
    },
    /// A code names a driver that is not there.
    #[error(
        "checking a control module: code {code} names driver {}, expected below {drivers}",
        driver.0
    )]
    NoSuchDriver {
        /// The code.
        code: Code,
        /// The driver that it names.
        driver: Driver,
        /// The number of drivers.
        drivers: usize,
    },
    /// More than one old code owns a freeze frame.
    #[error(
        "checking a control module: {first} and {second} both own a freeze frame, expected one owner"
    )]
    TwoFreezeFrames {
        /// The first owner.
        first: Code,
        /// Another owner.
        second: Code,
    },
}

impl ModuleSetup {
    /// Checks the data against itself.
    ///
    /// # Errors
    /// The first contradiction.
    pub fn check(&self) -> Result<(), SetupFault> {
        self.limits.check()?;
        let supply = self.supply.and_then(|limits| limits.wrong()).map(|wrong| ("supply", wrong));
        let oil = self.oil_pressure.and_then(|limits| limits.wrong());
        if let Some((monitor, (field, expected))) =
            supply.or(oil.map(|wrong| ("oil pressure", wrong)))
        {
            return Err(SetupFault::Monitor { monitor, field, expected });
        }
        let mut listed = BTreeSet::new();
        for known in &self.known {
            if !listed.insert(known.code) {
                return Err(SetupFault::ListedTwice { code: known.code });
            }
            let drivers = self.drivers.len();
            if let Some(driver) = known.silenced_by.filter(|driver| driver.0 >= drivers) {
                return Err(SetupFault::NoSuchDriver { code: known.code, driver, drivers });
            }
        }
        let circuit = self.drivers.iter().flat_map(DriverCodes::all).map(|code| (code, "drivers"));
        let past = self.history.codes.iter().map(|past| (past.code, "history.codes"));
        let open = self.history.undecided.iter().map(|code| (*code, "history.undecided"));
        let present = self.present_elsewhere.iter().map(|code| (*code, "present_elsewhere"));
        for (code, user) in circuit.chain(past).chain(open).chain(present) {
            if !listed.contains(&code) {
                return Err(SetupFault::NotListed { code, user });
            }
        }
        let mut of_circuits = BTreeSet::new();
        for code in self.drivers.iter().flat_map(DriverCodes::all) {
            if !of_circuits.insert(code) {
                return Err(SetupFault::SharedCircuitCode { code });
            }
        }
        let mut past = BTreeSet::new();
        for code in self.history.codes.iter().map(|past| past.code) {
            if !past.insert(code) {
                return Err(SetupFault::ListedTwice { code });
            }
        }
        let mut owners = self.history.codes.iter().filter(|past| past.freeze_frame.is_some());
        match (owners.next(), owners.next()) {
            (Some(first), Some(second)) => {
                Err(SetupFault::TwoFreezeFrames { first: first.code, second: second.code })
            }
            _ => Ok(()),
        }
    }
}

#[cfg(test)]
mod tests;
