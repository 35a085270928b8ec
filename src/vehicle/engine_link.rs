//! The plugs between the vehicle's parts and its running engine.

use super::cam_line::{CamCondition, CamSpec};
use super::circuits::{Circuits, FREEWHEEL_V, PULSES_PER_S, ValveCircuit};
use super::condition::{Condition, FittedValve};
use super::harness::GENERATOR;
use super::per_bank::{CamPlace, PerBank};
use super::running::{EngineCondition, EngineSpec, RunningEngine};
use super::snapshot::{CamSnapshot, Snapshot};
use super::spec::{ValveSpec, VehicleSpec};
use crate::control_module::cam_control::CamControlSpec;
use crate::control_module::known_code::Driver;
use crate::control_module::module::ControlModule;
use crate::control_module::performance_limits::CamCodes;
use crate::physics::actuator::Actuator;
use crate::physics::coil::Winding;
use crate::physics::pulsed_coil::CoilDrive;
use crate::physics::solenoid::{driven_turns, shorted_siemens};
use crate::units::{Celsius, Litres, Newtons, Ohms, Volts};

/// Resistance of wiring and driver in series with a coil, as the module's calibration takes it
/// [ohm]: engineering estimate.
const LOOP_OHMS: f64 = 0.45;

/// The engine of a vehicle: typical laws for its cylinders and banks, with the codes and the calibration of its own valves.
#[must_use]
pub fn engine_spec(spec: &VehicleSpec) -> EngineSpec {
    let mut engine = EngineSpec::TYPICAL;
    let has_two_banks = spec.has_two_banks();
    let on_a_camshaft = if has_two_banks { spec.cylinders / 2 } else { spec.cylinders };
    engine.idle.crank = engine.idle.crank.with_cylinders(spec.cylinders);
    let bank = engine.cams.one.map(|cam| cam.with_cylinders(on_a_camshaft));
    engine.cams = PerBank { one: bank, two: has_two_banks.then_some(bank) };
    for valve in &spec.valves {
        let cam = engine.cams.of_mut(valve.camshaft());
        cam.limits = spec.module.monitors.camshaft;
        cam.map = *spec.module.target_maps.of(valve.cam);
        cam.codes = CamCodes {
            early: valve.codes.advanced,
            late: valve.codes.retarded,
            slow: valve.codes.slow,
            correlation: valve.codes.correlation,
        };
        if let Some(part) = spec.valve_part(&valve.part_number) {
            cam.hold_current_a /= part.turns;
            let winding = Winding {
                ohms_at_20: Ohms(part.ohms_at_20),
                turns: part.turns,
                shorted_share: 0.0,
                joint: Ohms(0.0),
            };
            cam.control = calibrated(cam, &winding, &part.actuator);
        }
    }
    engine
}

/// The module's calibration for a factory valve: the duty that gives its holding current when hot.
fn calibrated(cam: &CamSpec, winding: &Winding, actuator: &Actuator) -> CamControlSpec {
    let control = cam.control;
    let hot = winding.terminal_ohms(Celsius(control.reference_oil_c)).0 + LOOP_OHMS;
    let coil = CoilDrive {
        v_on: Volts(control.reference_supply_v),
        v_freewheel: Volts(FREEWHEEL_V),
        r_total: Ohms(hot),
        inductance: actuator.solenoid.terminal_inductance(winding),
        pulses_per_s: PULSES_PER_S,
    };
    let hold = coil.duty_for(crate::units::Amperes(cam.hold_current_a));
    CamControlSpec { hold_duty: hold, ..control }
}

/// What the module keeps from one camshaft.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Withheld {
    /// Its valve gets no drive, because its circuit is at fault.
    pub drive: bool,
    /// It stays at rest, because a performance code is confirmed.
    pub movement: bool,
}

impl Withheld {
    const ALL: Self = Self { drive: true, movement: true };

    /// Whether a module still keeps just that from the camshafts.
    #[must_use]
    pub fn are(withheld: &[Self], module: &ControlModule) -> bool {
        withheld.iter().enumerate().all(|(number, one)| {
            let driver = Driver(number);
            one.drive == module.inhibited(driver) && one.movement == module.holds_at_rest(driver)
        })
    }

    /// What a module keeps from each camshaft, in the order of the vehicle's valves.
    #[must_use]
    pub fn by(module: &ControlModule, spec: &VehicleSpec) -> Vec<Self> {
        (0..spec.valves.len())
            .map(Driver)
            .map(|driver| Self {
                drive: module.inhibited(driver),
                movement: module.holds_at_rest(driver),
            })
            .collect()
    }
}

/// The state of the engine that follows from parts, circuits and the module's inhibitions.
#[must_use]
pub fn engine_condition(
    spec: &VehicleSpec,
    condition: &Condition,
    circuits: &Circuits,
    withheld: &[Withheld],
    ambient: Celsius,
) -> EngineCondition {
    let mut engine = EngineCondition {
        oil: condition.oil.oil(),
        fill: Litres(condition.oil.litres),
        supply: circuits.supply,
        ambient,
        generator: GENERATOR.takes(circuits.battery, circuits.generator),
        ..EngineCondition::SOUND
    };
    if spec.has_two_banks() {
        engine.cams.two = Some(engine.cams.one);
    }
    // A camshaft without a valve has no phaser: it stays where it was built in.
    for place in engine.cams.places() {
        if spec.valves.iter().all(|valve| valve.camshaft() != place) {
            *engine.cams.of_mut(place) = CamCondition {
                coil: CoilDrive::OPEN,
                is_inhibited: true,
                is_held_at_rest: true,
                ..CamCondition::SOUND
            };
        }
    }
    for (number, place) in spec.valves.iter().enumerate() {
        let withheld = withheld.get(number).copied().unwrap_or(Withheld::ALL);
        *engine.cams.of_mut(place.camshaft()) =
            match (condition.valves.get(&place.id), circuits.valves.get(number)) {
                (Some(fitted), Some(circuit)) => {
                    let mut actuator = spec.actuator_of(&fitted.part_number);
                    actuator.spool.oil_drag_n_s_per_m *= condition.oil.film_factor();
                    cam_condition(fitted, &actuator, circuit, withheld)
                }
                _ => CamCondition { coil: CoilDrive::OPEN, ..CamCondition::SOUND },
            };
    }
    engine
}

fn cam_condition(
    fitted: &FittedValve,
    actuator: &Actuator,
    circuit: &ValveCircuit,
    withheld: Withheld,
) -> CamCondition {
    let coil = circuit.drive();
    // A wire that touches ground drives the coil whatever the module does.
    let forced_duty =
        circuit.forced().map(|stray| coil.duty_for(crate::units::Amperes(stray)).clamp(0.0, 1.0));
    CamCondition {
        blockage: fitted.screen_blocked,
        stiction: Newtons(fitted.stiction_n),
        actuator: *actuator,
        turns: driven_turns(&fitted.winding),
        // Copper at 20 °C is near enough for what only delays the flux.
        shorted_s: shorted_siemens(&fitted.winding, Celsius(20.0)),
        coil,
        forced_duty,
        is_inhibited: withheld.drive,
        is_held_at_rest: withheld.movement,
    }
}

/// Live data of an engine that runs or stands.
#[must_use]
pub fn snapshot(
    spec: &VehicleSpec,
    engine: &RunningEngine,
    circuits: &Circuits,
    runs: bool,
) -> Snapshot {
    let heat = engine.heat();
    let demand = super::route::Demand::IDLE;
    let cams = spec
        .valves
        .iter()
        .map(|valve| {
            let line = engine.cam(valve.camshaft());
            CamSnapshot {
                valve: valve.id.clone(),
                wanted: if runs { line.target().0 } else { 0.0 },
                actual: if runs { line.seen().0 } else { 0.0 },
                duty: if runs { line.duty() } else { 0.0 },
            }
        })
        .collect();
    Snapshot {
        rpm: if runs { engine.speed().0 } else { 0.0 },
        load: if runs { demand.load } else { 0.0 },
        speed_kmh: 0.0,
        coolant_c: heat.coolant.0,
        oil_c: heat.oil.0,
        supply_v: circuits.supply.0,
        cams,
    }
}

/// The camshafts in the order of the vehicle's valves.
pub fn cams(spec: &VehicleSpec) -> impl Iterator<Item = CamPlace> + '_ {
    spec.valves.iter().map(ValveSpec::camshaft)
}
