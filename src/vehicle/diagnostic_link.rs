//! The diagnostic socket: power for a reader, and the pair of wires to the control module.
//!
//! Model: the reader takes its power from the socket's battery pin and works above a least voltage;
//! its transmitter drives the pair through the pair's series resistance into the bus termination,
//! and the module hears it as long as the differential voltage there counts as a message. The module
//! itself answers while the key is on and its supply is above its own least voltage.
//!
//! Limits: one module; noise, message timing and a pair that touches another wire are not modelled.

use super::engine_link;
use super::error::VehicleError;
use super::spec::Id;
use super::test_numbers::{NumberedTest, numbered_tests};
use super::whole::Vehicle;
use crate::control_module::module::ControlModule;
use crate::control_module::services::answering::{Answer, Effect, Senses};
use crate::control_module::services::own_data::CamSense;
use crate::control_module::services::test_result::TestResult;
use crate::control_module::services::vehicle_information::Identity;
use crate::physics::stroke::Click;
use crate::units::Seconds;
use serde::{Deserialize, Serialize};

/// Least voltage at which a reader works \[V\]: engineering estimate.
const READER_LEAST_V: f64 = 8.0;
/// What a reader draws \[A\]: engineering estimate.
const READER_A: f64 = 0.25;
/// Differential voltage with which a transmitter drives its bus \[V\]: ISO 11898-2 allows 1.5 to 3.0
/// V across 60 ohm (from memory); the usual figure is taken.
const DRIVE_V: f64 = 2.0;
/// Two terminations of 120 ohm side by side \[ohm\]: ISO 11898-2 (from memory).
const TERMINATION_OHMS: f64 = 60.0;
/// Differential voltage above which a receiver must hear a message \[V\]: ISO 11898-2 (from memory).
const HEARD_FROM_V: f64 = 0.9;

/// The state of the socket and its wires.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct LinkCondition {
    /// Extra resistance between the battery and the socket's power pin, its fuse and its ground
    /// included \[ohm\], 0 or more.
    pub power_ohms: f64,
    /// Extra resistance in the pair of link wires, both together \[ohm\], 0 or more.
    pub pair_ohms: f64,
    /// Leakage across the pair \[ohm\], above 0; `None` where nothing leaks.
    pub across_ohms: Option<f64>,
}

impl LinkCondition {
    /// Everything as built.
    pub const SOUND: Self = Self { power_ohms: 0.0, pair_ohms: 0.0, across_ohms: None };

    /// Whether a reader on this socket has power \[battery voltage in V\].
    #[must_use]
    pub fn powers_reader(&self, battery_v: f64) -> bool {
        battery_v - READER_A * self.power_ohms >= READER_LEAST_V
    }

    /// Differential voltage at the module's end of the pair while the reader sends \[V\].
    #[must_use]
    pub fn heard_v(&self) -> f64 {
        let load = self.across_ohms.map_or(TERMINATION_OHMS, |across| {
            TERMINATION_OHMS * across / (TERMINATION_OHMS + across)
        });
        // A transmitter into its nominal load has `DRIVE_V`; behind it stands about half of that
        // load as its own resistance (engineering estimate).
        let inner = 0.5 * TERMINATION_OHMS;
        let open_v = DRIVE_V * (TERMINATION_OHMS + inner) / TERMINATION_OHMS;
        open_v * load / (load + inner + self.pair_ohms)
    }

    /// Whether messages get through.
    #[must_use]
    pub fn carries(&self) -> bool {
        self.heard_v() >= HEARD_FROM_V
    }
}

impl Default for LinkCondition {
    fn default() -> Self {
        Self::SOUND
    }
}

/// What comes back to the reader's plug.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum LinkReply {
    /// The reader has no power: its display stays dark.
    Dark,
    /// The reader works and hears nothing. It cannot tell a module that sleeps or has no supply from
    /// a broken link.
    Silence,
    /// A message.
    Message(Vec<u8>),
}

/// A request with everything that followed.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Exchange {
    /// The reply.
    pub reply: LinkReply,
    /// What a valve that was switched let be heard.
    pub heard: Option<(Id, Click)>,
}

impl Exchange {
    const fn without_message(reply: LinkReply) -> Self {
        Self { reply, heard: None }
    }
}

impl Vehicle {
    /// The control module itself, for what looks behind the socket: tests and the debrief.
    #[must_use]
    pub const fn module(&self) -> &ControlModule {
        &self.module
    }

    /// Sends a request over the diagnostic socket and does what the module does on it.
    ///
    /// # Errors
    /// [`VehicleError`] when the wiring cannot be solved.
    pub fn exchange(&mut self, request: &[u8]) -> Result<Exchange, VehicleError> {
        let circuits = self.circuits_when(self.engine_runs())?;
        let link = self.condition.link;
        if !link.powers_reader(circuits.battery.0) {
            return Ok(Exchange::without_message(LinkReply::Dark));
        }
        if !self.key_on() || !circuits.module_alive || !link.carries() {
            return Ok(Exchange::without_message(LinkReply::Silence));
        }
        let snapshot =
            engine_link::snapshot(&self.spec, &self.engine, &circuits, self.engine_runs());
        let cams: Vec<CamSense> = snapshot
            .cams
            .iter()
            .map(|cam| CamSense {
                wanted_deg: cam.wanted,
                actual_deg: cam.actual,
                duty_percent: cam.duty * 100.0,
            })
            .collect();
        let identity = Identity::invented(&self.spec.name, self.spec.year);
        let results = self.told_results();
        let senses = Senses {
            frame: snapshot.as_frame(circuits.battery),
            run_time: self.run_time(),
            cams: &cams,
            results: &results,
            identity: &identity,
        };
        let Some(Answer { bytes, effect }) = self.module.answer(request, &senses, self.now) else {
            return Ok(Exchange::without_message(LinkReply::Silence));
        };
        let mut heard = None;
        match effect {
            Some(Effect::Cleared) => {
                // With the codes goes what the module has learnt (vehicle makers' service text:
                // adaptations may also reset).
                self.engine.forget();
                // A monitor that runs with the key on has its say at once.
                self.watch_with_key_on()?;
            }
            Some(Effect::Switched { driver, on }) => {
                let valve = self.spec.valves.get(driver.0).map(|valve| valve.id.clone());
                if let Some(valve) = valve {
                    let click = self.command(&valve, on)?;
                    heard = Some((valve, click));
                }
            }
            None => {}
        }
        Ok(Exchange { reply: LinkReply::Message(bytes), heard })
    }

    /// The module's test results under their numbers, zeros where a test has not run.
    fn told_results(&self) -> Vec<TestResult> {
        numbered_tests(&self.spec)
            .iter()
            .map(|numbered| {
                let result = self
                    .module
                    .test_results()
                    .find(|it| it.code == numbered.code && it.measure == numbered.measure);
                let told = result.map(|it| {
                    let [value, least, limit] =
                        [it.value, it.least, it.most].map(|figure| numbered.told(figure));
                    // On the wire a limit is the last value that passes.
                    let most = if it.measure.fails_at_its_limit() {
                        NumberedTest::below(limit)
                    } else {
                        limit
                    };
                    (value, least, most)
                });
                TestResult::new(numbered.monitor, numbered.test, numbered.scaling(), told)
            })
            .collect()
    }

    /// Time since the engine was started; zero while it stands.
    fn run_time(&self) -> Seconds {
        match self.running_since {
            Some(since) if self.engine_runs() => {
                Seconds(self.now.as_seconds() - since.as_seconds())
            }
            _ => Seconds(0.0),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A voltage divider: 3.0 V behind 30 ohm into 60 ohm is the 2.0 V of a sound bus; a message of
    /// 0.9 V is left with 3.0 · 60 / 0.9 - 90 = 110 ohm in the pair, and is not with more.
    #[test]
    fn closed_form_series_resistance_that_still_carries() {
        let with = |pair_ohms| LinkCondition { pair_ohms, ..LinkCondition::SOUND };
        assert!((LinkCondition::SOUND.heard_v() - 2.0).abs() < 1e-12);
        assert!((with(110.0).heard_v() - 0.9).abs() < 1e-12);
        assert!(with(109.0).carries() && !with(111.0).carries());
    }

    #[test]
    fn limit_a_pair_that_is_joined_carries_nothing() {
        let across = |ohms| LinkCondition { across_ohms: Some(ohms), ..LinkCondition::SOUND };
        assert!(across(1e6).carries());
        assert!(!across(0.5).carries());
    }

    /// 12.6 V less 0.25 A through 18.4 ohm is 8.0 V.
    #[test]
    fn closed_form_power_pin() {
        let with = |power_ohms| LinkCondition { power_ohms, ..LinkCondition::SOUND };
        assert!(with(18.3).powers_reader(12.6) && !with(18.5).powers_reader(12.6));
        assert!(!LinkCondition::SOUND.powers_reader(7.9));
    }
}
