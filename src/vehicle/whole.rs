//! The whole vehicle: its state, and what happens when a key is turned, a part comes off or a
//! road is driven.

use super::assembly::Assembly;
use super::circuits::{Circuits, Felt};
use super::condition::{Condition, FittedValve};
use super::engine_link;
use super::error::VehicleError;
use super::harness::{DriverState, ElectricalState, Machines, Wiring, wire_up};
use super::loose::{LooseContacts, as_it_stands, open_contacts};
use super::module_link::setup_of;
use super::running::{EngineCondition, RunningEngine};
use super::spec::{Id, VehicleSpec};
use super::stroke_memo::StrokeMemo;
use crate::control_module::code::Code;
use crate::control_module::module::ControlModule;
use crate::numerics::digest::DigestBuilder;
use crate::numerics::streams::Streams;
use crate::physics::spool::DRAINED;
use crate::physics::stroke::{Drive, Stroke, Surroundings};
use crate::physics::thermal::Enamel;
use crate::physics::warm_up::EngineHeat;
use crate::units::{Amperes, Celsius, Millimetres, Minutes, Seconds, Tick};
use serde::{Deserialize, Serialize};
use std::borrow::Cow;
use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

mod key;

/// Longest time over which the head counts as one temperature while the engine cools [min].
const SOAK_MIN: u32 = 15;
/// A night [min].
const NIGHT_MIN: u32 = 14 * 60;

/// Where the key is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub(super) enum Key {
    Off,
    On,
    /// On, and the starter turns whenever a reading is taken.
    Cranking,
    Running,
}

/// A vehicle.
#[derive(Debug, Clone)]
pub struct Vehicle {
    pub(super) spec: Arc<VehicleSpec>,
    pub(super) condition: Condition,
    pub(super) assembly: Assembly,
    pub(super) key: Key,
    pub(super) module: ControlModule,
    pub(super) engine: RunningEngine,
    pub(super) ambient: Celsius,
    pub(super) coils: BTreeMap<Id, Celsius>,
    pub(super) enamel: BTreeMap<Id, Enamel>,
    pub(super) spools: BTreeMap<Id, Millimetres>,
    pub(super) commanded: BTreeSet<Id>,
    pub(super) felt: Felt,
    pub(super) oil_lamp: bool,
    /// When the engine was started, as long as it runs.
    pub(super) running_since: Option<Tick>,
    /// When the engine last stood still; `None` is long ago.
    pub(super) stopped_at: Option<Tick>,
    /// Charge that the battery has beyond the steps in which it is kept, which decides nothing yet.
    pub(super) charge_beside: f64,
    pub(super) now: Tick,
    pub(super) loose: LooseContacts,
    /// Strokes that were simulated before, by this vehicle or by those that share the memory.
    pub(super) strokes: Arc<StrokeMemo>,
}

impl Vehicle {
    /// A vehicle that has stood overnight, with codes from long ago in its memory.
    ///
    /// # Errors
    /// [`VehicleError`] when its data contradicts itself.
    pub fn new(
        spec: Arc<VehicleSpec>,
        condition: Condition,
        ambient: Celsius,
        old_codes: &[Code],
        seed: u64,
    ) -> Result<Self, VehicleError> {
        let module = ControlModule::new(&setup_of(&spec, old_codes, &condition.present_elsewhere))?;
        let heat = EngineHeat::cold(ambient);
        let air = Streams::new(seed).stream("air in the oil");
        let engine = RunningEngine::new(
            engine_link::engine_spec(&spec),
            EngineCondition { ambient, ..EngineCondition::SOUND },
            heat,
            air,
        )?;
        let mut vehicle = Self {
            coils: spec.valves.iter().map(|valve| (valve.id.clone(), ambient)).collect(),
            enamel: spec
                .valves
                .iter()
                .map(|valve| (valve.id.clone(), Enamel::new(Enamel::CLASS_180, ambient)))
                .collect(),
            spools: BTreeMap::new(),
            commanded: BTreeSet::new(),
            felt: Felt::default(),
            oil_lamp: false,
            running_since: None,
            stopped_at: None,
            charge_beside: 0.0,
            now: Tick(0),
            loose: LooseContacts::new(seed),
            strokes: Arc::default(),
            key: Key::Off,
            assembly: Assembly::default(),
            condition: Condition::sound(&spec),
            spec,
            module,
            engine,
            ambient,
        };
        // The module has learnt to hold these valves on earlier drives, before anything was wrong.
        vehicle.condition.valves.clone_from(&sound_valves(&condition));
        let circuits = vehicle.circuits_when(true)?;
        vehicle.set_engine(&circuits)?;
        vehicle.engine.assume_learnt();
        vehicle.condition = condition;
        Ok(vehicle)
    }

    /// What is off.
    #[must_use]
    pub const fn assembly(&self) -> &Assembly {
        &self.assembly
    }

    /// What is off, to change it.
    pub const fn assembly_mut(&mut self) -> &mut Assembly {
        &mut self.assembly
    }

    /// The state of its parts.
    #[must_use]
    pub const fn condition(&self) -> &Condition {
        &self.condition
    }

    /// The state of its parts, to change it.
    pub const fn condition_mut(&mut self) -> &mut Condition {
        &mut self.condition
    }

    /// Key on, engine running or not.
    #[must_use]
    pub const fn key_on(&self) -> bool {
        !matches!(self.key, Key::Off)
    }

    /// Engine running.
    #[must_use]
    pub const fn engine_runs(&self) -> bool {
        matches!(self.key, Key::Running)
    }

    /// Engine running, or turned by the starter.
    #[must_use]
    pub const fn engine_turns(&self) -> bool {
        matches!(self.key, Key::Running | Key::Cranking)
    }

    /// Temperature of the metal that hands touch.
    #[must_use]
    pub const fn engine_temperature(&self) -> Celsius {
        self.engine.heat().coolant
    }

    /// Engine lamp and oil lamp as the driver sees them; both dark with the key off.
    #[must_use]
    pub fn lamps(&self) -> (bool, bool) {
        if self.key_on() {
            let oil = match self.key {
                Key::Running => self.oil_lamp,
                _ => self.engine.pressure_switch_is_closed(),
            };
            (self.module.read_codes().commands_lamp, oil)
        } else {
            (false, false)
        }
    }

    /// The valve in a place has been changed for another.
    pub fn valve_changed(&mut self, place: &Id) {
        self.coils.insert(place.clone(), self.ambient);
        self.enamel.insert(place.clone(), Enamel::new(Enamel::CLASS_180, self.ambient));
        self.spools.remove(place);
    }

    /// Time passes with whatever is on staying on.
    ///
    /// # Errors
    /// [`VehicleError`] when the wiring cannot be solved.
    pub fn pass_minutes(&mut self, minutes: u32) -> Result<(), VehicleError> {
        self.now = self.now.plus_seconds(u64::from(minutes) * 60);
        if minutes == 0 {
            return Ok(());
        }
        self.keep_drawing(minutes)?;
        if !self.engine_runs() {
            // Coils feel the head as it soaks and cools: a quarter of an hour at a time.
            let mut left = minutes;
            while left > 0 {
                let part = left.min(SOAK_MIN);
                left -= part;
                self.engine.rest(Minutes(part));
                self.heat_coils_at_rest(Seconds(f64::from(part) * 60.0))?;
            }
        }
        Ok(())
    }

    /// The vehicle stands until the next morning.
    ///
    /// # Errors
    /// [`VehicleError`] when the wiring cannot be solved.
    pub fn stand_overnight(&mut self) -> Result<(), VehicleError> {
        self.pass_minutes(NIGHT_MIN)
    }

    /// Temperature of a valve's coil; of the air where there is no valve.
    #[must_use]
    pub fn coil_temperature(&self, place: &Id) -> Celsius {
        self.coils.get(place).copied().unwrap_or(self.ambient)
    }

    /// Whether the module was asked to switch a valve on.
    pub(super) fn is_commanded(&self, place: &Id) -> bool {
        self.commanded.contains(place)
    }

    /// Temperature of the generator's regulator: half way between the engine and the air.
    pub(super) fn regulator(&self) -> Celsius {
        Celsius(0.5 * (self.engine.heat().coolant.0 + self.ambient.0))
    }

    pub(super) fn electrical_state(&self, charging: bool) -> ElectricalState {
        ElectricalState {
            key_on: charging || self.key_on(),
            charging,
            machines: Machines { starter_rad_s: None, regulator: self.regulator() },
            battery_temperature: self.ambient,
            coil_temperature: self.coils.clone(),
            drivers: self.commanded.iter().map(|valve| (valve.clone(), DriverState::On)).collect(),
        }
    }

    /// The circuits as they stand, or as they would be with the engine running.
    pub(super) fn circuits_when(&self, charging: bool) -> Result<Circuits, VehicleError> {
        let standing = self.as_it_stands();
        let state = self.electrical_state(charging);
        Ok(self.felt.feel(&self.spec, &standing, &self.assembly, state)?)
    }

    /// The condition with those contacts open that are open at the moment.
    pub(super) fn as_it_stands(&self) -> Cow<'_, Condition> {
        as_it_stands(&self.condition, &self.open_contacts())
    }

    /// The loose contacts that are open at the moment, shaken or heated.
    pub(super) fn open_contacts(&self) -> BTreeSet<Id> {
        open_contacts(&self.condition, self.loose.shaken_open(), self.engine_temperature())
    }

    /// Tells the running engine the state of valves, circuits and oil.
    pub(super) fn set_engine(&mut self, circuits: &Circuits) -> Result<(), VehicleError> {
        let withheld = engine_link::Withheld::by(&self.module, &self.spec);
        let condition = engine_link::engine_condition(
            &self.spec,
            &self.condition,
            circuits,
            &withheld,
            self.ambient,
        );
        self.engine.set_condition(condition)?;
        Ok(())
    }

    /// The wiring in the states through which it passes, with the share of time of each.
    ///
    /// # Errors
    /// [`VehicleError`] when the wiring cannot be solved.
    pub fn wiring_phases(&self) -> Result<Vec<(f64, Wiring)>, VehicleError> {
        let standing = self.as_it_stands();
        let mut state = self.electrical_state(self.engine_runs());
        if self.key == Key::Cranking {
            let turns = self.cranking()?.map(|cranking| cranking.rad_s);
            state = self.cranking_state(turns);
        }
        if !self.engine_runs() {
            let wiring = wire_up(&self.spec, &standing, &self.assembly, &state)?;
            return Ok(vec![(1.0, wiring)]);
        }
        // Drivers switch independently of each other: the mean is over all their combinations.
        let circuits = self.circuits_when(true)?;
        let mut mixes = vec![(1.0, BTreeMap::new())];
        for (valve, circuit) in self.spec.valves.iter().zip(&circuits.valves) {
            let duty = self.engine.cam(valve.camshaft()).duty();
            let current = circuit.mean_current(duty).0.max(0.0);
            let off = if current > 0.0 {
                DriverState::Freewheel(Amperes(current))
            } else {
                DriverState::Off
            };
            mixes = mixes
                .into_iter()
                .flat_map(|(share, drivers)| {
                    [(duty, DriverState::On), (1.0 - duty, off)].map(|(part, driver)| {
                        let mut drivers = drivers.clone();
                        drivers.insert(valve.id.clone(), driver);
                        (share * part, drivers)
                    })
                })
                .filter(|(share, _)| *share > 0.0)
                .collect();
        }
        let mut phases = Vec::new();
        for (share, drivers) in mixes {
            state.drivers = drivers;
            phases.push((share, wire_up(&self.spec, &standing, &self.assembly, &state)?));
        }
        Ok(phases)
    }

    /// The stroke of a valve with a supply put on it for a time and taken off.
    pub(super) fn stroke(&self, fitted: &FittedValve, place: &Id, drive: Drive) -> Arc<Stroke> {
        let actuator = self.spec.actuator_of(&fitted.part_number);
        self.strokes.stroke(&actuator, fitted, drive, self.surroundings(place, fitted))
    }

    /// Remembers strokes together with other vehicles from now on, which changes nothing but the wait.
    pub fn share_strokes(&mut self, memo: &Arc<StrokeMemo>) {
        self.strokes = Arc::clone(memo);
    }

    /// Where a valve's spool rests.
    pub(super) fn spool_rest(&self, place: &Id) -> Millimetres {
        self.spools.get(place).copied().unwrap_or(Millimetres(0.0))
    }

    /// What a valve's spool finds itself in: on the bench a film of oil stays in the gap.
    pub(super) fn surroundings(&self, place: &Id, fitted: &FittedValve) -> Surroundings {
        let oil_viscosity_pa_s = if self.assembly.is_off(place) {
            let spool = self.spec.actuator_of(&fitted.part_number).spool;
            DRAINED * spool.reference_viscosity_pa_s
        } else {
            self.engine.viscosity_pa_s() * self.condition.oil.film_factor()
        };
        Surroundings {
            coil: self.coil_temperature(place),
            oil_viscosity_pa_s,
            start: self.spool_rest(place),
        }
    }

    /// Adds everything that decides later answers to a fingerprint.
    pub fn digest_into(&self, builder: &mut DigestBuilder) {
        builder.text(&serde_json::to_string(&self.condition).unwrap_or_default());
        builder.text(&serde_json::to_string(&self.assembly).unwrap_or_default());
        builder.whole(match self.key {
            Key::Off => 0,
            Key::On => 1,
            Key::Running => 2,
            Key::Cranking => 3,
        });
        self.module.state_digest(builder);
        let heat = self.engine.heat();
        builder.number(heat.coolant.0);
        builder.number(heat.oil.0);
        builder.number(self.engine.deck_excess_k());
        builder.number(self.engine.pressure().0);
        builder.whole(self.stopped_at.map_or(0, |stopped| self.now.0 - stopped.0 + 1));
        for valve in &self.spec.valves {
            let line = self.engine.cam(valve.camshaft());
            builder.number(line.seen().0);
            builder.number(line.duty());
            builder.number(self.coils.get(&valve.id).map_or(0.0, |coil| coil.0));
            builder.number(self.spools.get(&valve.id).map_or(0.0, |spool| spool.0));
        }
        builder.whole(self.commanded.len() as u64);
        builder.whole(self.now.0);
        builder.number(self.charge_beside);
        self.loose.digest_into(builder);
    }
}

/// The valves of a condition as they were before anything was wrong with them.
fn sound_valves(condition: &Condition) -> BTreeMap<Id, FittedValve> {
    condition.valves.iter().map(|(place, valve)| (place.clone(), valve.before_damage())).collect()
}
