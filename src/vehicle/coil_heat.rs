//! What warms the coils, whoever powers them, and what too much of it leaves behind.
//!
//! Every way to power a coil comes through here: the module under way, an actuator request, a wire that
//! touches ground, the power lead. Where the thermal model passes the class of the enamel, and only there,
//! turns short; fifty kelvins further the wire burns through. Both figures of damage are engineering
//! estimates. The damage stands in the [`Condition`](super::condition::Condition) and stays.

use super::circuits::{Circuits, ValveCircuit};
use super::error::VehicleError;
use super::harness::OPEN_OHMS;
use super::pulse::Pulse;
use super::spec::Id;
use super::whole::Vehicle;
use crate::physics::stroke::Drive;
use crate::physics::thermal::{Damage, Enamel, HeatPath, Supply};
use crate::units::{Amperes, Celsius, Ohms, Seconds, Volts, Watts};

/// Fused power lead with its clips [ohm]: engineering estimate.
const LEAD_OHMS: f64 = 0.12;
/// Internal resistance of the battery that the power lead is clipped to [ohm]: engineering
/// estimate.
const BATTERY_OHMS: f64 = 0.008;

/// Share of the sound turns that a burnt spot bridges.
const BRIDGED: f64 = 0.3;
/// Share of the deck's excess over the coolant that reaches the bores of the valves.
const REACHES_VALVES: f64 = 0.3;

/// What feeds one coil for a time.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Feed {
    /// Nothing.
    None,
    /// A steady voltage with everything in series.
    Steady(Supply),
    /// A current that is switched, by its root mean square.
    Effective(Amperes),
}

impl Feed {
    /// What a circuit feeds its coil with the driver on or off.
    pub(super) fn of(circuit: &ValveCircuit, on: bool) -> Self {
        if on {
            return Self::Steady(Supply { volts: circuit.offered, source: circuit.source });
        }
        circuit.forced().map_or(Self::None, |stray| {
            let volts = Volts(stray * (circuit.coil.0 + circuit.source.0));
            Self::Steady(Supply { volts, source: circuit.source })
        })
    }
}

impl Vehicle {
    /// Temperature around a valve that is fitted: coolant, and some of the hotter deck.
    fn around_fitted(&self) -> Celsius {
        Celsius(self.engine.heat().coolant.0 + REACHES_VALVES * self.engine.deck_excess_k())
    }

    /// Warms or cools one coil for a time; tells whether that damaged it further.
    pub(super) fn heat_coil(&mut self, place: &Id, feed: Feed, lasting: Seconds) -> bool {
        let Some(fitted) = self.condition.valves.get(place) else {
            return false;
        };
        let (path, around) = if self.assembly().is_off(place) {
            (HeatPath::IN_AIR, self.ambient)
        } else {
            (HeatPath::IN_HEAD, self.around_fitted())
        };
        let coil = self.coils.get(place).copied().unwrap_or(self.ambient);
        let hot = match feed {
            Feed::None => path.step(coil, around, Watts(0.0), lasting),
            Feed::Steady(supply) => path.heat(&fitted.winding, coil, around, supply, lasting),
            Feed::Effective(current) => {
                let watts = current.0 * current.0 * fitted.winding.carrying_ohms(coil).0;
                path.step(coil, around, Watts(watts), lasting)
            }
        };
        self.coils.insert(place.clone(), hot);
        let enamel =
            self.enamel.entry(place.clone()).or_insert(Enamel::new(Enamel::CLASS_180, coil));
        let before = enamel.damage();
        enamel.feel(hot);
        let after = enamel.damage();
        if after <= before {
            return false;
        }
        if let Some(fitted) = self.condition.valves.get_mut(place) {
            let winding = &mut fitted.winding;
            if before < Damage::TurnsShort {
                winding.shorted_share += BRIDGED * (1.0 - winding.shorted_share);
            }
            if after == Damage::BurntThrough {
                winding.joint = Ohms(OPEN_OHMS);
            }
        }
        true
    }

    /// Puts the battery across a valve's own pins through a fused lead, its connector being
    /// unplugged.
    ///
    /// # Errors
    /// [`VehicleError`] when the wiring cannot be solved.
    pub fn power_valve(
        &mut self,
        valve: &Id,
        seconds: f64,
        fuse_a: f64,
    ) -> Result<Pulse, VehicleError> {
        let battery = self.circuits_when(false)?.battery;
        let Some(fitted) = self.condition.valves.get(valve).cloned() else {
            return Ok(Pulse::NONE);
        };
        let coil = self.coils.get(valve).copied().unwrap_or(self.ambient);
        let source = Ohms(LEAD_OHMS + BATTERY_OHMS);
        let current = battery.0 / (fitted.winding.terminal_ohms(coil).0 + source.0);
        if current > fuse_a {
            return Ok(Pulse { fuse_blew: true, ..Pulse::NONE });
        }
        let drive = Drive { supply: battery, source, on_for: Seconds(seconds) };
        let heard = Pulse::of(&self.stroke(&fitted, valve, drive));
        self.spools.insert(valve.clone(), heard.rest);
        self.heat_coil(valve, Feed::Steady(Supply { volts: battery, source }), Seconds(seconds));
        self.draw(Amperes(current), Seconds(seconds));
        Ok(heard)
    }

    /// All coils for a time with key and drivers as they are and the engine stopped, a minute at a time,
    /// so that damage on the way changes what flows from then on.
    ///
    /// # Errors
    /// [`VehicleError`] when the wiring cannot be solved.
    pub(super) fn heat_coils_at_rest(&mut self, lasting: Seconds) -> Result<(), VehicleError> {
        let places: Vec<Id> = self.spec.valves.iter().map(|valve| valve.id.clone()).collect();
        if !self.key_on() {
            for place in &places {
                self.heat_coil(place, Feed::None, lasting);
            }
            return Ok(());
        }
        let mut circuits = self.circuits_when(false)?;
        let mut left_s = lasting.0;
        while left_s > 0.0 {
            let part = Seconds(left_s.min(60.0));
            left_s -= part.0;
            let mut damaged = false;
            for (number, place) in places.iter().enumerate() {
                let feed = circuits
                    .valves
                    .get(number)
                    .map_or(Feed::None, |circuit| Feed::of(circuit, self.is_commanded(place)));
                damaged |= self.heat_coil(place, feed, part);
            }
            if damaged {
                circuits = self.circuits_when(false)?;
            }
        }
        Ok(())
    }

    /// All coils after a stretch with the engine running, by the sums of their currents' squares over
    /// `samples`; tells whether one was damaged.
    pub(super) fn heat_coils_under_way(
        &mut self,
        squares: &mut [f64],
        samples: &mut u32,
        lasting: Seconds,
    ) -> bool {
        let places: Vec<Id> = self.spec.valves.iter().map(|valve| valve.id.clone()).collect();
        let mut damaged = false;
        for (place, square) in places.iter().zip(squares.iter_mut()) {
            let effective = (*square / f64::from((*samples).max(1))).sqrt();
            damaged |= self.heat_coil(place, Feed::Effective(Amperes(effective)), lasting);
            *square = 0.0;
        }
        *samples = 0;
        damaged
    }

    /// Adds the squares of the coils' currents now.
    pub(super) fn sample_currents(&self, circuits: &Circuits, squares: &mut [f64]) {
        for ((valve, circuit), square) in self.spec.valves.iter().zip(&circuits.valves).zip(squares)
        {
            // With a poor contact or an open wire less flows than through a sound circuit.
            let current = circuit.mean_current(self.engine.cam(valve.camshaft()).duty()).0;
            *square += current * current;
        }
    }
}
