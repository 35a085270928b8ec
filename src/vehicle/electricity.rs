//! The battery over time: what cranking, standing with the key on and driving do to its charge, and
//! whether the starter can turn the engine.

use super::error::VehicleError;
use super::harness::{ElectricalState, Machines, OPEN_OHMS, STARTER, wire_up};
use super::spec::HarnessElement;
use super::whole::{Key, Vehicle};
use crate::physics::battery::{Cranking, charge_after};
use crate::units::{Amperes, Ohms, Seconds, Volts};

/// Charge is kept in steps of this: a hundredth, or some nine millivolts at rest.
const STEP: f64 = 0.01;
/// How long a starter turns an engine that fires [s].
const STARTS_IN_S: f64 = 1.0;
/// How long somebody tries when it does not [s]: common practice, no source.
const TRIES_FOR_S: f64 = 10.0;
/// How long it turns for one reading [s].
const READS_IN_S: f64 = 5.0;
/// Time with the key off from which what sleeps is counted [min].
const NIGHT_MIN_FROM: u32 = 30;

/// How a start went.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Started {
    /// The engine fired.
    Fires,
    /// It did not turn fast enough.
    TooSlow,
    /// The control module had no supply meanwhile.
    ModuleReset,
}

impl Vehicle {
    /// How the starter turns the engine now; `None` for a vehicle whose wiring has no starter.
    ///
    /// # Errors
    /// [`VehicleError`] when the wiring cannot be solved.
    pub fn cranking(&self) -> Result<Option<Cranking>, VehicleError> {
        let Some((plus, minus)) =
            self.spec.harness.elements.iter().find_map(|element| match element {
                HarnessElement::Starter { plus, minus, .. } => Some((plus, minus)),
                _ => None,
            })
        else {
            return Ok(None);
        };
        // Two states of the rest of the wiring give the voltage and the resistance behind the starter.
        let across = |starter_rad_s| -> Result<(Volts, Amperes), VehicleError> {
            let state = self.cranking_state(starter_rad_s);
            let wiring = wire_up(&self.spec, &self.as_it_stands(), self.assembly(), &state)?;
            let solution = wiring.network.solve()?;
            let nodes = (wiring.node(plus.as_str()), wiring.node(minus.as_str()));
            let volts = match nodes {
                (Some(plus), Some(minus)) => solution.volts_between(plus, minus),
                _ => 0.0,
            };
            Ok((Volts(volts), Amperes(volts / STARTER.ohms)))
        };
        let (open, _) = across(None)?;
        let (locked, current) = across(Some(0.0))?;
        let source = if current.0 > 1e-9 { (open.0 - locked.0) / current.0 } else { OPEN_OHMS };
        let crank = self.engine.spec().idle.crank;
        let oil = self.engine.viscosity_pa_s();
        let against_nm = |rad_s: f64| {
            let friction = crank.friction_pa(rad_s / core::f64::consts::TAU, oil);
            crank.torque_nm(friction + STARTER.compression_pa)
        };
        Ok(Some(STARTER.cranking(open, Ohms(source.max(0.0)), against_nm)))
    }

    pub(super) fn cranking_state(&self, starter_rad_s: Option<f64>) -> ElectricalState {
        ElectricalState {
            key_on: true,
            charging: false,
            machines: Machines { starter_rad_s, regulator: self.regulator() },
            ..self.electrical_state(false)
        }
    }

    /// Lets the starter turn the engine until it fires or somebody gives up.
    ///
    /// # Errors
    /// [`VehicleError`] when the wiring cannot be solved.
    pub(super) fn turn_by_starter(&mut self) -> Result<Started, VehicleError> {
        let Some(cranking) = self.cranking()? else {
            return Ok(Started::Fires);
        };
        let state = self.cranking_state(Some(cranking.rad_s));
        let wiring = wire_up(&self.spec, &self.as_it_stands(), self.assembly(), &state)?;
        let started = if !wiring.module_alive {
            Started::ModuleReset
        } else if cranking.fires() {
            Started::Fires
        } else {
            Started::TooSlow
        };
        let lasts_s = if started == Started::Fires { STARTS_IN_S } else { TRIES_FOR_S };
        self.draw(cranking.current, Seconds(lasts_s));
        Ok(started)
    }

    /// Takes a current out of the battery for a time, or puts it in where it is less than 0.
    pub(super) fn draw(&mut self, current: Amperes, lasting: Seconds) {
        let exact = self.condition.battery_charge + self.charge_beside;
        let after = charge_after(exact, current, lasting.0);
        let steps = ((after - self.condition.battery_charge) / STEP).trunc();
        let moved = self.condition.battery_charge + steps * STEP;
        self.charge_beside = after - moved;
        self.condition.battery_charge = moved.clamp(0.0, 1.0);
    }

    /// What flows out of the battery with things as they are, for a time.
    ///
    /// # Errors
    /// [`VehicleError`] when the wiring cannot be solved.
    pub(super) fn keep_drawing(&mut self, minutes: u32) -> Result<(), VehicleError> {
        // With the key off what sleeps draws too little to show within half an hour.
        if self.key == Key::Off && minutes < NIGHT_MIN_FROM {
            return Ok(());
        }
        let state = self.electrical_state(self.engine_runs());
        let wiring = wire_up(&self.spec, &self.as_it_stands(), self.assembly(), &state)?;
        let solution = wiring.network.solve()?;
        let battery = self.spec.harness.elements.iter().find_map(|element| match element {
            HarnessElement::Battery { id, .. } => wiring.element(id.as_str()),
            _ => None,
        });
        let out = battery.map_or(0.0, |number| solution.amperes(number));
        self.draw(Amperes(out), Seconds(f64::from(minutes) * 60.0));
        Ok(())
    }

    /// The starter turned the engine for one reading.
    ///
    /// # Errors
    /// [`VehicleError`] when the wiring cannot be solved.
    pub fn cranked_for_a_reading(&mut self) -> Result<(), VehicleError> {
        if self.key == Key::Cranking
            && let Some(cranking) = self.cranking()?
        {
            self.draw(cranking.current, Seconds(READS_IN_S));
        }
        Ok(())
    }
}
