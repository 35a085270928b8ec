//! What happens when the key is turned and while it is on with the engine stopped.

use super::{Key, Vehicle};
use crate::control_module::known_code::Driver;
use crate::control_module::oil_pressure_monitor::OilPressureSignal;
use crate::physics::stroke::{Click, Drive};
use crate::units::Seconds;
use crate::vehicle::circuits::ValveCircuit;
use crate::vehicle::error::VehicleError;
use crate::vehicle::module_link::{frame, senses};
use crate::vehicle::pulse::Pulse;
use crate::vehicle::spec::Id;

/// How long the module watches its circuits after the key is turned on before anybody looks
/// [ms]: time for its test pulses and for a fault to mature.
const KEY_ON_WATCH_MS: u64 = 12_000;
/// How long it watches after something was changed with the key on [ms].
const CHANGE_WATCH_MS: u64 = 8_000;
/// The module's circuit task [ms].
const CIRCUIT_TASK_MS: u64 = 100;
/// How long a commanded valve is watched for its click [s].
const COMMAND_WATCH_S: f64 = 0.5;
impl Vehicle {
    /// Turns the key off; a running engine stops.
    pub fn key_off(&mut self) {
        if self.engine_runs() {
            self.engine.stop();
            self.stopped_at = Some(self.now);
        }
        self.module.key_off(self.now);
        self.key = Key::Off;
        self.running_since = None;
        self.commanded.clear();
        self.oil_lamp = false;
    }

    /// Turns the key on without starting; a running engine is stopped first.
    ///
    /// # Errors
    /// [`VehicleError`] when the wiring cannot be solved.
    pub fn key_on_only(&mut self) -> Result<(), VehicleError> {
        if self.engine_runs() {
            self.key_off();
        }
        if self.key == Key::Off {
            self.key = Key::On;
            self.blow_fuses()?;
            if self.circuits_when(false)?.module_alive {
                self.module.key_on(self.now);
            }
            self.watch(KEY_ON_WATCH_MS)?;
        }
        self.key = Key::On;
        Ok(())
    }

    /// Turns the key on and lets a helper turn the engine by the starter, without fuel, for each reading;
    /// a running engine is stopped first.
    ///
    /// # Errors
    /// [`VehicleError`] when the wiring cannot be solved.
    pub fn key_crank(&mut self) -> Result<(), VehicleError> {
        self.key_on_only()?;
        self.key = Key::Cranking;
        Ok(())
    }

    /// The module watches its circuits for a while with the key on and the engine stopped.
    ///
    /// # Errors
    /// [`VehicleError`] when the wiring cannot be solved.
    pub fn watch_with_key_on(&mut self) -> Result<(), VehicleError> {
        self.watch(KEY_ON_WATCH_MS)
    }

    /// Something was plugged or unplugged: with the key on the module notices.
    ///
    /// # Errors
    /// [`VehicleError`] when the wiring cannot be solved.
    pub fn sense_after_change(&mut self) -> Result<(), VehicleError> {
        self.blow_fuses()?;
        if self.key == Key::On { self.watch(CHANGE_WATCH_MS) } else { Ok(()) }
    }

    fn watch(&mut self, lasting_ms: u64) -> Result<(), VehicleError> {
        let circuits = self.circuits_when(false)?;
        if self.key != Key::On || !circuits.module_alive {
            return Ok(());
        }
        // A supply that has come back wakes the module; one that is awake stays as it is.
        self.module.key_on(self.now);
        let heat = self.engine.heat();
        let now_frame = frame(0.0, 0.0, 0.0, heat.coolant, heat.oil, &circuits);
        for _ in 0..lasting_ms / CIRCUIT_TASK_MS {
            self.now.0 += CIRCUIT_TASK_MS;
            let duties: Vec<f64> = self
                .spec
                .valves
                .iter()
                .enumerate()
                .map(|(number, valve)| {
                    if self.commanded.contains(&valve.id) {
                        1.0
                    } else {
                        self.module.pulse_duty(Driver(number), self.now).unwrap_or(0.0)
                    }
                })
                .collect();
            let sensed = senses(&self.spec, &circuits, &duties, heat.oil);
            self.module.circuit_task(&sensed, &now_frame, self.now);
            let is_closed = self.engine.pressure_switch_is_closed();
            let oil = Some(OilPressureSignal::Switch { is_closed });
            self.module.supply_and_oil_task(oil, &now_frame, self.now);
        }
        Ok(())
    }

    /// Switches a valve by the module with the engine stopped, and returns what is heard.
    ///
    /// # Errors
    /// [`VehicleError`] when the wiring cannot be solved.
    pub fn command(&mut self, valve: &Id, on: bool) -> Result<Click, VehicleError> {
        let was_on = self.commanded.contains(valve);
        if was_on == on {
            return Ok(Click::None);
        }
        let circuit = self.circuit_of(valve)?;
        let forced = circuit.is_none_or(|circuit| circuit.forced().is_some());
        let heard = match (circuit, self.condition.valves.get(valve)) {
            // A coil that is fed whatever the driver does moved long ago.
            (Some(circuit), Some(fitted)) if !forced => {
                let drive = Drive {
                    supply: circuit.offered,
                    source: circuit.source,
                    on_for: Seconds(COMMAND_WATCH_S),
                };
                Pulse::of(&self.stroke(fitted, valve, drive))
            }
            _ => Pulse::NONE,
        };
        if on {
            self.commanded.insert(valve.clone());
            self.sense_after_change()?;
            Ok(heard.on)
        } else {
            self.commanded.remove(valve);
            self.spools.insert(valve.clone(), heard.rest);
            self.sense_after_change()?;
            Ok(heard.off)
        }
    }

    fn circuit_of(&self, valve: &Id) -> Result<Option<ValveCircuit>, VehicleError> {
        let number = self.spec.valves.iter().position(|place| place.id == *valve);
        let circuits = self.circuits_when(false)?;
        Ok(number.and_then(|number| circuits.valves.get(number).copied()))
    }
}
