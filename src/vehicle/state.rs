//! The state of a vehicle apart from what was built, so that it can be put aside and taken up again.

use super::assembly::Assembly;
use super::circuits::Felt;
use super::condition::Condition;
use super::loose::LooseContacts;
use super::running::RunningEngine;
use super::spec::{Id, VehicleSpec};
use super::whole::{Key, Vehicle};
use crate::control_module::module::ControlModule;
use crate::physics::thermal::Enamel;
use crate::units::{Celsius, Millimetres, Tick};
use serde::{Deserialize, Serialize};
use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

/// Everything of a vehicle that decides later answers, but for what was built. It is taken while the
/// engine stands: what a run records is not part of it.
#[derive(Debug, Clone, Serialize, Deserialize)]
pub struct VehicleState {
    condition: Condition,
    assembly: Assembly,
    key: Key,
    module: ControlModule,
    engine: RunningEngine,
    ambient: Celsius,
    coils: BTreeMap<Id, Celsius>,
    enamel: BTreeMap<Id, Enamel>,
    spools: BTreeMap<Id, Millimetres>,
    commanded: BTreeSet<Id>,
    oil_lamp: bool,
    running_since: Option<Tick>,
    stopped_at: Option<Tick>,
    charge_beside: f64,
    now: Tick,
    loose: LooseContacts,
}

impl Vehicle {
    /// The state now.
    #[must_use]
    pub fn state(&self) -> VehicleState {
        // Without a rest, so that a new field is either part of the state or left out on purpose.
        let Self {
            spec: _,
            condition,
            assembly,
            key,
            module,
            engine,
            ambient,
            coils,
            enamel,
            spools,
            commanded,
            felt: _,
            oil_lamp,
            running_since,
            stopped_at,
            charge_beside,
            now,
            loose,
            strokes: _,
        } = self;
        VehicleState {
            condition: condition.clone(),
            assembly: assembly.clone(),
            key: *key,
            module: module.clone(),
            engine: engine.clone(),
            ambient: *ambient,
            coils: coils.clone(),
            enamel: enamel.clone(),
            spools: spools.clone(),
            commanded: commanded.clone(),
            oil_lamp: *oil_lamp,
            running_since: *running_since,
            stopped_at: *stopped_at,
            charge_beside: *charge_beside,
            now: *now,
            loose: loose.clone(),
        }
    }

    /// A vehicle in a state that one of the same build was in.
    #[must_use]
    pub fn in_state(spec: Arc<VehicleSpec>, state: VehicleState) -> Self {
        let VehicleState {
            condition,
            assembly,
            key,
            module,
            engine,
            ambient,
            coils,
            enamel,
            spools,
            commanded,
            oil_lamp,
            running_since,
            stopped_at,
            charge_beside,
            now,
            loose,
        } = state;
        Self {
            spec,
            condition,
            assembly,
            key,
            module,
            engine,
            ambient,
            coils,
            enamel,
            spools,
            commanded,
            felt: Felt::default(),
            oil_lamp,
            running_since,
            stopped_at,
            charge_beside,
            now,
            loose,
            strokes: Arc::default(),
        }
    }
}
