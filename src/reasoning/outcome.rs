//! What a step showed, reduced to what can tell hypotheses apart.

use crate::control_module::code::Code;
use crate::instruments::multimeter::{Display, MeterFunction};
use crate::instruments::scope::Cursors;
use crate::session::event::{Event, OilLook, TestReading};
use serde::{Deserialize, Serialize};
use std::collections::BTreeSet;

/// One informative thing in the events of a step.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub enum Aspect {
    /// A quantity: a display, a level, an error.
    Quantity {
        /// The value.
        value: f64,
        /// Standard deviation with which a world's own prediction may miss it: the instrument's
        /// tolerance, the spread of sound parts, the reading of a pointer by eye.
        sigma: f64,
    },
    /// One of several things that either is or is not so.
    Kind {
        /// The thing, as its own text.
        text: String,
    },
    /// The codes that are stored.
    StoredCodes {
        /// The codes.
        codes: BTreeSet<Code>,
    },
    /// Another set of codes, such as the pending ones.
    Codes {
        /// The codes.
        codes: BTreeSet<Code>,
    },
}

/// Relative spread of sound windings, contacts and batteries that no world models [share], and
/// the same for voltages: engineering estimate.
const PART_SPREAD: f64 = 0.035;
const VOLTAGE_SPREAD: f64 = 0.01;
/// Smallest spreads [V, ohm, A].
const LEAST_SPREAD_V: f64 = 0.06;
const LEAST_SPREAD_OHM: f64 = 0.15;
const LEAST_SPREAD_A: f64 = 0.03;
/// Spread of the moment of a dip between valves that are alike [ms].
const DIP_SPREAD_MS: f64 = 1.5;
/// Relative spread of the oil pressures of sound engines, and its least [bar]; spread of a needle's
/// swing [bar]: engineering estimates.
const PRESSURE_SPREAD: f64 = 0.06;
const LEAST_SPREAD_BAR: f64 = 0.05;
const SWING_SPREAD_BAR: f64 = 0.15;
/// Spread of a level on the dipstick in shares of the span between its marks.
const LEVEL_SPREAD: f64 = 0.08;
/// Spread of a camshaft's mean error and furthest position over a drive [crank degrees].
const CAM_SPREAD_DEG: f64 = 2.0;
/// Spread of a test's figure from drive to drive [share of itself or of its limit].
const TEST_SPREAD: f64 = 0.1;

impl Aspect {
    fn kind(text: impl Into<String>) -> Self {
        Self::Kind { text: text.into() }
    }
}

/// The informative aspects of a step's events, in their order. Costs, cautions, refusals and what
/// the apprentice says carry no information about the vehicle.
#[must_use]
pub fn aspects(events: &[Event]) -> Vec<Aspect> {
    let mut found = Vec::new();
    for event in events {
        match event {
            Event::Reading { function, display, tolerance, .. } => {
                found.push(reading(*function, *display, *tolerance));
            }
            // How far a display jumps while it is watched is luck; that it jumps is not.
            Event::Watched { jumped, .. } => {
                found.push(Aspect::kind(format!("jumped {jumped}")));
            }
            Event::LampGlows { glow, .. } => found.push(Aspect::kind(format!("{glow:?}"))),
            Event::Clamped { display, tolerance, .. } => {
                found.push(reading(MeterFunction::Amps, *display, *tolerance));
            }
            Event::Captured { capture, .. } => captured(&capture.cursors, &mut found),
            Event::GaugeRead { bar, swing, tolerance, .. } => {
                let sigma = (PRESSURE_SPREAD * bar).max(LEAST_SPREAD_BAR) + 0.577 * tolerance;
                found.push(Aspect::Quantity { value: *bar, sigma });
                found.push(Aspect::Quantity { value: *swing, sigma: SWING_SPREAD_BAR });
            }
            Event::MeterFuseBlew => found.push(Aspect::kind("meter fuse")),
            Event::LeadFuseBlew => found.push(Aspect::kind("lead fuse")),
            Event::Seen { sight, .. } => found.push(Aspect::kind(format!("{sight:?}"))),
            Event::OilSeen { level, dry, look, feel, smells_of_fuel } => {
                found.push(Aspect::kind(if *dry { "dry" } else { "wet" }));
                found.push(Aspect::Quantity { value: *level, sigma: LEVEL_SPREAD });
                // Healthy used oil is dark too, so fresh or dark tells nothing.
                let sludge = *look == OilLook::Sludge;
                found.push(Aspect::kind(format!("{sludge} {feel:?} {smells_of_fuel}")));
            }
            Event::KeyTurned { engine_lamp, oil_lamp, .. } => {
                found.push(Aspect::kind(format!("{engine_lamp} {oil_lamp}")));
            }
            Event::Idles { quality } => found.push(Aspect::kind(format!("{quality:?}"))),
            Event::Heard { click, .. } => found.push(Aspect::kind(format!("{click:?}"))),
            Event::NoAnswer { reason } => found.push(Aspect::kind(format!("{reason:?}"))),
            Event::Codes { stored, pending, lamp, .. } => {
                found.push(Aspect::kind(format!("{lamp}")));
                found.push(Aspect::StoredCodes { codes: stored.iter().copied().collect() });
                found.push(Aspect::Codes { codes: pending.iter().copied().collect() });
            }
            Event::FreezeFrame { frame } => {
                let code = frame.and_then(|frame| frame.code);
                found.push(Aspect::Codes { codes: code.into_iter().collect() });
            }
            Event::Readiness { lamp, groups, .. } => {
                found.push(Aspect::kind(format!("{lamp}")));
                let waiting = groups.iter().filter(|group| !group.is_complete);
                let waiting: Vec<_> = waiting.map(|group| group.group).collect();
                found.push(Aspect::kind(format!("{waiting:?}")));
            }
            Event::TestResults { results } => found.extend(results.iter().map(test_result)),
            Event::LiveData { cams, .. } => {
                for cam in cams {
                    found.push(Aspect::Quantity { value: cam.actual, sigma: CAM_SPREAD_DEG });
                }
            }
            Event::Driven { engine_lamp, oil_lamp, quality, cams, .. } => {
                found.push(Aspect::kind(format!("{engine_lamp} {oil_lamp} {quality:?}")));
                for cam in cams {
                    for value in [cam.mean_error, cam.furthest] {
                        found.push(Aspect::Quantity { value, sigma: CAM_SPREAD_DEG });
                    }
                }
            }
            _ => {}
        }
    }
    found
}

/// A test that has not run is one kind of thing, a figure another. Figures differ from drive to
/// drive by a good part of themselves: no two drivers ask the same of an engine.
fn test_result(reading: &TestReading) -> Aspect {
    match reading.figures {
        None => Aspect::kind("has not run"),
        Some(figures) => Aspect::Quantity {
            value: figures.value,
            sigma: (TEST_SPREAD * figures.value.abs()).max(TEST_SPREAD * figures.most.abs()),
        },
    }
}

fn reading(function: MeterFunction, display: Display, tolerance: f64) -> Aspect {
    match display {
        Display::OverLimit => Aspect::kind("over limit"),
        Display::Value { value, .. } => {
            let (share, least) = match function {
                MeterFunction::Volts => (VOLTAGE_SPREAD, LEAST_SPREAD_V),
                MeterFunction::Ohms => (PART_SPREAD, LEAST_SPREAD_OHM),
                MeterFunction::Amps => (PART_SPREAD, LEAST_SPREAD_A),
            };
            // Tolerance is a half-width; as a standard deviation of a uniform error it is a
            // factor of the root of three smaller.
            let sigma = (share * value.abs()).max(least) + 0.577 * tolerance;
            Aspect::Quantity { value, sigma }
        }
    }
}

/// What a capture tells: whether there is a dip or a plateau, and how high it stands.
fn captured(cursors: &Cursors, found: &mut Vec<Aspect>) {
    match *cursors {
        Cursors::Current { dip, end_a } => {
            found.push(Aspect::kind(if dip.is_some() { "dip" } else { "no dip" }));
            found.push(Aspect::Quantity {
                value: end_a,
                sigma: LEAST_SPREAD_A + PART_SPREAD * end_a.abs(),
            });
            if let Some(dip) = dip {
                found.push(Aspect::Quantity { value: dip.at_ms, sigma: DIP_SPREAD_MS });
            }
        }
        Cursors::Pin { closed_v, plateau, open_v } => {
            found.push(Aspect::kind(if plateau.is_some() { "plateau" } else { "no plateau" }));
            for value in [closed_v, open_v].into_iter().chain(plateau.map(|plateau| plateau.volts))
            {
                let sigma = LEAST_SPREAD_V + VOLTAGE_SPREAD * value.abs();
                found.push(Aspect::Quantity { value, sigma });
            }
        }
    }
}
