//! What instruments that watch a while need from a vehicle: strokes of a commanded valve, the coil's
//! current after it is let go, and what a hand does that wiggles.

use super::circuits::ValveCircuit;
use super::error::VehicleError;
use super::harness::{DriverState, Wiring, wire_up};
use super::spec::{HarnessElement, Id};
use super::whole::Vehicle;
use crate::physics::release::{Release, released};
use crate::physics::stroke::{Drive, Stroke};
use crate::units::{Amperes, Millimetres, Ohms, Seconds, Volts};
use std::collections::BTreeSet;
use std::sync::Arc;

/// How long the module keeps a valve on for a capture [s]: its current has settled by then.
pub const CAPTURE_ON_S: f64 = 0.12;

/// A valve's circuit as a capture finds it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Driven {
    /// The circuit.
    pub circuit: ValveCircuit,
    /// Duty that the module gives the valve, 0 to 1; with the engine stopped 0.
    pub duty: f64,
}

impl Vehicle {
    /// A valve's circuit and its duty now.
    ///
    /// # Errors
    /// [`VehicleError`] when the wiring cannot be solved.
    pub fn driven(&self, valve: &Id) -> Result<Option<Driven>, VehicleError> {
        let circuits = self.circuits_when(self.engine_runs())?;
        let number = self.spec.valves.iter().position(|place| place.id == *valve);
        Ok(number.and_then(|number| {
            let circuit = *circuits.valves.get(number)?;
            let cam = self.spec.valves.get(number)?.camshaft();
            let duty = if self.engine_runs() { self.engine.cam(cam).duty() } else { 0.0 };
            Some(Driven { circuit, duty })
        }))
    }

    /// The stroke that a valve makes when the module switches it on for [`CAPTURE_ON_S`]; `None`
    /// when its coil is fed whatever the module does, or there is none.
    #[must_use]
    pub fn stroke_on_command(&self, valve: &Id, circuit: &ValveCircuit) -> Option<Arc<Stroke>> {
        let fitted = self.condition.valves.get(valve)?;
        if circuit.forced().is_some() {
            return None;
        }
        let (supply, source) = (circuit.offered, circuit.source);
        let drive = Drive { supply, source, on_for: Seconds(CAPTURE_ON_S) };
        Some(self.stroke(fitted, valve, drive))
    }

    /// The current of a valve's coil after its driver lets go of it against a freewheel path that
    /// holds `against` [V], from a current and with the spool where it is.
    #[must_use]
    pub fn release(
        &self,
        valve: &Id,
        circuit: &ValveCircuit,
        from: Amperes,
        spool: Millimetres,
        against: Volts,
        interval: Seconds,
    ) -> Release {
        let Some(fitted) = self.condition.valves.get(valve) else {
            return Release::NOTHING;
        };
        let path = Ohms(circuit.source.0);
        let coil = self.coil_temperature(valve);
        let solenoid = self.spec.actuator_of(&fitted.part_number).solenoid;
        released(&solenoid, &fitted.winding, coil, path, spool, from, against, interval)
    }

    /// Voltage at the module's pin of a valve against the battery's negative post, while the
    /// module's switch is in a state and all others are open.
    ///
    /// # Errors
    /// [`VehicleError`] when the wiring cannot be solved.
    pub fn pin_volts(&self, valve: &Id, driver: DriverState) -> Result<Volts, VehicleError> {
        let standing = self.as_it_stands();
        let mut state = self.electrical_state(self.engine_runs());
        state.drivers.clear();
        state.drivers.insert(valve.clone(), driver);
        let wiring = wire_up(&self.spec, &standing, self.assembly(), &state)?;
        let solution = wiring.network.solve()?;
        let pin = self.spec.harness.elements.iter().find_map(|element| match element {
            HarnessElement::Driver { valve: of, pin, .. } if of == valve => {
                wiring.node(pin.as_str())
            }
            _ => None,
        });
        Ok(Volts(pin.map_or(0.0, |pin| solution.volts_between(pin, 0))))
    }

    /// The wiring in the states through which it passes while a hand wiggles a place: one list of
    /// phases for each set of contacts that opened, that at rest first.
    ///
    /// # Errors
    /// [`VehicleError`] when the wiring cannot be solved.
    pub fn wiggle(&mut self, place: &Id) -> Result<Vec<Vec<(f64, Wiring)>>, VehicleError> {
        let spec = Arc::clone(&self.spec);
        let pins = spec.pins_at(place);
        let at = self.engine_temperature();
        let states: BTreeSet<BTreeSet<Id>> = self.loose.wiggle(&self.condition, &pins, at);
        let mut phases = Vec::with_capacity(states.len());
        for open in states {
            self.loose.hold_open(open);
            let found = self.wiring_phases();
            self.loose.settle();
            phases.push(found?);
        }
        Ok(phases)
    }
}
