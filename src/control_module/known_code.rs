//! What the module is told about codes before it runs: the rules of each, and what earlier
//! driving has left.

use crate::control_module::code::Code;
use crate::control_module::freeze_frame::FreezeFrame;
use crate::control_module::test_result::TestResult;
use serde::{Deserialize, Serialize};

/// One driver of the module, by its place in the module's list of drivers.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Driver(pub usize);

/// In how many driving cycles a fault must be found until its code is confirmed.
///
/// The general rule is two (13 CCR 1968.2 (d)(2.2), from memory); makers may confirm at the first.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(test, derive(schemars::JsonSchema))]
pub enum Trips {
    /// At the first detection. Assumed for circuit codes here.
    One,
    /// At the detection in the next driving cycle in which the monitor ran.
    Two,
}

impl Trips {
    /// The number of driving cycles.
    #[must_use]
    pub const fn count(self) -> u8 {
        match self {
            Self::One => 1,
            Self::Two => 2,
        }
    }
}

/// A group of monitors that share one readiness bit (SAE J1979 service $01 PID $01, bit map from
/// memory).
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
pub enum ReadinessGroup {
    /// Misfire.
    Misfire,
    /// Fuel system.
    FuelSystem,
    /// Electrical parts that nothing else watches, circuits above all.
    Components,
    /// Catalyst.
    Catalyst,
    /// Fuel vapour system.
    FuelVapour,
    /// Oxygen sensors.
    OxygenSensors,
    /// Exhaust gas recirculation and variable valve timing.
    ValveTiming,
}

/// A code that the module can store.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct KnownCode {
    /// The code.
    pub code: Code,
    /// When it is confirmed.
    pub trips: Trips,
    /// Whether it asks for the warning lamp once confirmed; a code that does also becomes permanent.
    pub lights_lamp: bool,
    /// The readiness bit of its monitor; `None` for a monitor without one.
    pub readiness: Option<ReadinessGroup>,
    /// The driver whose circuit fault silences its monitor, for codes that judge what that driver
    /// moves.
    pub silenced_by: Option<Driver>,
    /// What a permanent code asks for after a clear.
    #[serde(default)]
    pub permanent: PermanentRule,
}

impl KnownCode {
    /// The general rule, for a finding about a code that is in no list: two trips, with the lamp.
    #[must_use]
    pub const fn general(code: Code) -> Self {
        Self {
            code,
            trips: Trips::Two,
            lights_lamp: true,
            readiness: None,
            silenced_by: None,
            permanent: PermanentRule::OnePass,
        }
    }

    /// Whether its freeze frame takes the place of another code's, and whether it is forgotten only
    /// under conditions like those in which it was set: misfire and fuel system.
    #[must_use]
    pub const fn is_misfire_or_fuel(&self) -> bool {
        matches!(self.readiness, Some(ReadinessGroup::Misfire | ReadinessGroup::FuelSystem))
    }
}

/// What a permanent code asks for after a clear before it goes.
///
/// Vehicle makers' service text has one driving cycle in which the monitor ran and passed. The
/// regulation (13 CCR 1968.2 (d)(2.5), from memory) asks more of monitors without a performance
/// ratio, circuits above all: the same cycle must also hold a drive of ordinary length.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[cfg_attr(test, derive(schemars::JsonSchema))]
pub enum PermanentRule {
    /// One driving cycle in which the monitor ran and passed.
    #[default]
    OnePass,
    /// That, in a driving cycle with 600 s of running, 300 s at 40 km/h or more, and 30 s of
    /// idling without a break.
    OnePassInADrive,
}

/// How far an old code had come when the vehicle arrived.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum PastState {
    /// Seen in the last cycle in which its monitor ran.
    Pending,
    /// Confirmed, the lamp out again.
    Confirmed {
        /// Warm-up cycles since without the fault, 0 to 39.
        clean_warm_ups: u8,
    },
    /// Confirmed with the lamp on, and therefore permanent.
    ConfirmedWithLamp,
    /// Cleared by a reader, but permanent until its monitor has run and passed.
    PermanentAfterClear,
}

/// A code that earlier driving has left.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct PastCode {
    /// The code.
    pub code: Code,
    /// How far it had come.
    pub state: PastState,
    /// The freeze frame, on the code that owns it; at most one code of a module does.
    pub freeze_frame: Option<FreezeFrame>,
}

/// What earlier driving has left in the memory.
#[derive(Debug, Clone, PartialEq, Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct History {
    /// Old codes.
    pub codes: Vec<PastCode>,
    /// Codes whose monitor has come to no decision since the last clear: none long after one, all
    /// just after one.
    pub undecided: Vec<Code>,
    /// The figures behind the decisions since the last clear; one about an undecided code is not taken.
    #[serde(default)]
    pub results: Vec<TestResult>,
    /// Warm-up cycles since the last clear, 0 to 255.
    pub warm_ups_since_clear: u8,
    /// Time with the engine running since the last clear \[s\], whole seconds, 0 or more.
    pub running_seconds_since_clear: u32,
    /// Distance since the last clear \[km\], whole kilometres, 0 or more.
    #[serde(default)]
    pub kilometres_since_clear: u16,
}
