//! What the wiring lets each valve and the control module feel: a few numbers for each valve that
//! hold until a parameter, a switch or a temperature changes.

use super::assembly::Assembly;
use super::condition::Condition;
use super::harness::{DriverState, ElectricalState, OPEN_OHMS, Wiring, wire_up};
use super::spec::{HarnessElement, Id, VehicleSpec};
use crate::physics::circuit::{CircuitError, Solution};
use crate::physics::pulsed_coil::CoilDrive;
use crate::units::{Amperes, Celsius, Henries, Ohms, Volts};
use std::sync::{Arc, Mutex, MutexGuard, PoisonError};

/// Forward drop of the freewheel path at some tenths of an ampere [V]: engineering estimate that
/// agrees with the driver's diode.
pub const FREEWHEEL_V: f64 = 0.9;
/// Pulses a second of a driver [1/s]: common practice 100 to 300, no source.
pub const PULSES_PER_S: f64 = 300.0;
/// A coil that carries more than this with its driver off is fed from elsewhere [A].
const FORCED_A: f64 = 0.05;

/// What one valve's circuit does.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ValveCircuit {
    /// Voltage at the module's pin with the switch open, against the module's ground.
    pub pin_off: Volts,
    /// The same with the switch closed.
    pub pin_on: Volts,
    /// Current through the module's sense resistor with the switch closed.
    pub sensed_on: Amperes,
    /// Voltage that the closed circuit offers to the valve's pins when they draw nothing.
    pub offered: Volts,
    /// Everything in series with the valve's pins.
    pub source: Ohms,
    /// Resistance of the coil itself.
    pub coil: Ohms,
    /// Inductance at the valve's pins with the spool at rest; above 0.
    pub inductance: Henries,
    /// Current through the coil with the switch open: more than a trace where a wire touches
    /// ground.
    pub stray: Amperes,
}

impl ValveCircuit {
    /// The coil as its driver's pulses find it.
    #[must_use]
    pub fn drive(&self) -> CoilDrive {
        CoilDrive {
            v_on: self.offered,
            v_freewheel: Volts(FREEWHEEL_V),
            r_total: Ohms(self.coil.0 + self.source.0),
            inductance: self.inductance,
            pulses_per_s: PULSES_PER_S,
        }
    }

    /// Mean current in the coil at a duty of 0 to 1 with a freewheel path [A].
    #[must_use]
    pub fn mean_current(&self, duty: f64) -> Amperes {
        Amperes(self.drive().average(duty).0.max(self.forced().unwrap_or(0.0)))
    }

    /// Current that flows whatever the driver does [A], if any.
    #[must_use]
    pub fn forced(&self) -> Option<f64> {
        (self.stray.0 > FORCED_A).then_some(self.stray.0)
    }
}

/// The state of the wiring as the module and the valves feel it.
#[derive(Debug, Clone, PartialEq)]
pub struct Circuits {
    /// One for each valve, in the order of the vehicle's list.
    pub valves: Vec<ValveCircuit>,
    /// Supply at the module.
    pub supply: Volts,
    /// Voltage at the battery's posts.
    pub battery: Volts,
    /// Current out of the battery; less than 0 while it is charged.
    pub battery_out: Amperes,
    /// Current that the generator gives.
    pub generator: Amperes,
    /// Whether the module has the supply to work.
    pub module_alive: bool,
}

/// Least inductance of a coil that is looked at [H]: of one with all but its last turns shorted.
const LEAST_INDUCTANCE: Henries = Henries(1e-6);

/// What was felt last of the wiring, with and without a running engine, so that it is solved again
/// only when a part, a switch or a temperature has changed.
#[derive(Debug, Default)]
pub struct Felt {
    kept: Mutex<[Option<Arc<Kept>>; 2]>,
}

/// Circuits with everything that decides them.
#[derive(Debug)]
struct Kept {
    condition: Condition,
    assembly: Assembly,
    state: ElectricalState,
    circuits: Circuits,
}

impl Clone for Felt {
    fn clone(&self) -> Self {
        Self { kept: Mutex::new(self.slots().clone()) }
    }
}

impl Felt {
    /// What is kept. Whoever panicked over it left it whole: each slot is set in one go.
    fn slots(&self) -> MutexGuard<'_, [Option<Arc<Kept>>; 2]> {
        self.kept.lock().unwrap_or_else(PoisonError::into_inner)
    }

    /// The same as [`feel`], whose result does not depend on what the drivers do; kept for one
    /// vehicle.
    ///
    /// # Errors
    /// [`CircuitError`] when the wiring cannot be solved.
    pub fn feel(
        &self,
        spec: &VehicleSpec,
        condition: &Condition,
        assembly: &Assembly,
        mut state: ElectricalState,
    ) -> Result<Circuits, CircuitError> {
        state.drivers.clear();
        let slot = usize::from(state.charging);
        let known = self.slots()[slot].clone();
        if let Some(known) = known
            && known.state == state
            && known.assembly == *assembly
            && known.condition == *condition
        {
            return Ok(known.circuits.clone());
        }
        let circuits = feel(spec, condition, assembly, &state)?;
        let (condition, assembly) = (condition.clone(), assembly.clone());
        self.slots()[slot] =
            Some(Arc::new(Kept { condition, assembly, state, circuits: circuits.clone() }));
        Ok(circuits)
    }
}

struct Places<'a> {
    pin: &'a Id,
    ground: &'a Id,
    driver: &'a Id,
    from: &'a Id,
    to: &'a Id,
    coil: &'a Id,
}

fn places<'a>(spec: &'a VehicleSpec, wanted: &Id) -> Option<Places<'a>> {
    let (id, pin, ground) = spec.harness.elements.iter().find_map(|element| match element {
        HarnessElement::Driver { id, valve, pin, ground, .. } if valve == wanted => {
            Some((id, pin, ground))
        }
        _ => None,
    })?;
    let (coil, from, to) = spec.harness.elements.iter().find_map(|element| match element {
        HarnessElement::Coil { id, valve, from, to } if valve == wanted => Some((id, from, to)),
        _ => None,
    })?;
    Some(Places { pin, ground, driver: id, from, to, coil })
}

/// Voltage between two named nodes; zero for nodes that are not there, which the scenario's check
/// rules out.
fn between(wiring: &Wiring, solution: &Solution, plus: &Id, minus: &Id) -> Volts {
    match (wiring.node(plus.as_str()), wiring.node(minus.as_str())) {
        (Some(plus), Some(minus)) => Volts(solution.volts_between(plus, minus)),
        _ => Volts(0.0),
    }
}

fn through(wiring: &Wiring, solution: &Solution, element: &Id) -> Amperes {
    Amperes(wiring.element(element.as_str()).map_or(0.0, |number| solution.amperes(number)))
}

/// Feels the wiring: once with all drivers off, then for each valve with its driver on, with its
/// coil in place and without.
///
/// # Errors
/// [`CircuitError`] when the wiring cannot be solved.
pub fn feel(
    spec: &VehicleSpec,
    condition: &Condition,
    assembly: &Assembly,
    state: &ElectricalState,
) -> Result<Circuits, CircuitError> {
    let quiet = ElectricalState { drivers: std::collections::BTreeMap::new(), ..state.clone() };
    let off = wire_up(spec, condition, assembly, &quiet)?;
    let off_solution = off.solve()?;
    let mut valves = Vec::with_capacity(spec.valves.len());
    for valve in &spec.valves {
        let Some(at) = places(spec, &valve.id) else {
            continue;
        };
        let mut driven = quiet.clone();
        driven.drivers.insert(valve.id.clone(), DriverState::On);
        let on = wire_up(spec, condition, assembly, &driven)?;
        let on_solution = on.solve()?;
        let mut without = condition.clone();
        without.valves.remove(&valve.id);
        let bare = wire_up(spec, &without, assembly, &driven)?;
        let bare_solution = bare.solve()?;
        let offered = between(&bare, &bare_solution, at.from, at.to);
        let current = through(&on, &on_solution, at.coil);
        let across = between(&on, &on_solution, at.from, at.to);
        let source = if current.0.abs() > 1e-9 {
            ((offered.0 - across.0) / current.0).max(0.0)
        } else {
            OPEN_OHMS
        };
        let temperature = state.coil_temperature.get(&valve.id).copied().unwrap_or(Celsius(20.0));
        let coil = condition
            .valves
            .get(&valve.id)
            .map_or(Ohms(OPEN_OHMS), |fitted| fitted.winding.terminal_ohms(temperature));
        let inductance = condition.valves.get(&valve.id).map_or(LEAST_INDUCTANCE, |fitted| {
            let own =
                spec.actuator_of(&fitted.part_number).solenoid.terminal_inductance(&fitted.winding);
            Henries(own.0.max(LEAST_INDUCTANCE.0))
        });
        valves.push(ValveCircuit {
            inductance,
            pin_off: between(&off, &off_solution, at.pin, at.ground),
            pin_on: between(&on, &on_solution, at.pin, at.ground),
            sensed_on: through(&on, &on_solution, at.driver),
            offered,
            source: Ohms(source),
            coil,
            stray: through(&off, &off_solution, at.coil),
        });
    }
    let (mut supply, mut battery) = (Volts(0.0), Volts(0.0));
    let (mut battery_out, mut generator) = (Amperes(0.0), Amperes(0.0));
    for element in &spec.harness.elements {
        match element {
            HarnessElement::ModuleSupply { supply: plus, ground, .. } => {
                supply = between(&off, &off_solution, plus, ground);
            }
            HarnessElement::Battery { id, plus, minus } => {
                battery = between(&off, &off_solution, plus, minus);
                battery_out = through(&off, &off_solution, id);
            }
            HarnessElement::Alternator { id, .. } if state.charging => {
                generator = through(&off, &off_solution, id);
            }
            _ => {}
        }
    }
    let module_alive = off.module_alive;
    Ok(Circuits { valves, supply, battery, battery_out, generator, module_alive })
}
