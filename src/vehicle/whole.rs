//! The whole vehicle: its state, and what happens when a key is turned, a part comes off or a
//! road is driven.

use super::assembly::Assembly;
use super::circuits::{Circuits, ValveCircuit, feel};
use super::condition::Condition;
use super::harness::{DriverState, ElectricalState, Wiring, wire_up};
use super::module_link::{module_of, snapshot_frame};
use super::pulse::{Pulse, pulse};
use super::running::{Drive, IdleQuality, RouteProfile, RunningEngine};
use super::spec::{Id, VehicleSpec};
use crate::control_module::circuit_monitor::DriverSense;
use crate::control_module::code::Code;
use crate::control_module::known_code::Driver;
use crate::control_module::module::ControlModule;
use crate::numerics::digest::DigestBuilder;
use crate::numerics::streams::Streams;
use crate::physics::circuit::CircuitError;
use crate::physics::stroke::Click;
use crate::physics::thermal::{Enamel, HeatPath, Supply};
use crate::physics::warm_up::{EngineHeat, WarmUp};
use crate::units::{Amperes, Celsius, Millimetres, Ohms, Seconds, Tick, Volts, Watts};
use std::collections::BTreeMap;
use std::sync::Arc;

/// How long the module watches its circuits after the key is turned on before anybody looks [s]:
/// time for its test pulses and for a fault to mature.
const KEY_ON_WATCH_S: u64 = 12;
/// The module's circuit task [ms].
const CIRCUIT_TASK_MS: u64 = 100;
/// How long a commanded valve is watched for its click [s].
const COMMAND_WATCH_S: f64 = 0.5;
/// A night [min].
const NIGHT_MIN: u32 = 14 * 60;
/// Fused power lead with its clips [ohm]: engineering estimate.
const LEAD_OHMS: f64 = 0.12;

/// Whether the module answers a reader.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum ModuleAnswer {
    /// It does.
    Yes,
    /// The key is off.
    KeyOff,
    /// It has no supply.
    NoSupply,
}
