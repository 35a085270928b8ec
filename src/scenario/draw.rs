//! From a scenario and a seed to a case: a sound vehicle of its kind, with small differences that
//! every vehicle has, perhaps something odd and harmless, and the fault.
//!
//! Each quantity has a random stream of its own, named after what it is for, so that a new one
//! shifts no other. Same scenario and seed, same case, on every platform.

use super::load::Loaded;
use super::schema::{CodeOrigin, FaultPart, ScenarioFile};
use crate::assessment::rubric::Rubric;
use crate::control_module::code::Code;
use crate::faults::{self, Fault};
use crate::instruments::multimeter::{MeterFunction, Multimeter, accuracy};
use crate::numerics::streams::Streams;
use crate::session::journal::Mode;
use crate::session::setup::{Briefing, Hidden};
use crate::vehicle::condition::{Condition, FittedValve};
use crate::vehicle::spec::Id;
use std::collections::BTreeSet;
use std::sync::Arc;

/// Healthy windings differ from their nominal resistance by up to this share: assumed, well inside
/// the windows of 4 to 7 % that data sheets print.
pub const WINDING_SPREAD: f64 = 0.025;
/// State of charge of a battery that starts an engine without trouble: assumed.
const BATTERY_CHARGE: (f64, f64) = (0.88, 0.98);
/// Hours since the oil was changed: assumed, from a few weeks to most of a year of deliveries.
const OIL_HOURS: (f64, f64) = (40.0, 220.0);
/// Share of a meter's accuracy that its gain takes up; the rest is left to rounding: assumed.
const METER_GAIN_SHARE: f64 = 0.6;
/// Attempts before a scenario is said to have no acceptable case.
pub const MOST_ATTEMPTS: u32 = 200;

/// What was drawn from a scenario's weights and chances.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Drawn {
    /// The faults; none when the vehicle is sound.
    pub faults: Vec<Fault>,
    /// Things that are odd and harmless.
    pub decoys: DrawnDecoys,
}

/// Decoys that were drawn.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct DrawnDecoys {
    /// Place and part number of a healthy valve with another winding.
    pub other_winding: Option<(Id, Id)>,
    /// Codes from long ago and false ones, in the order of the scenario.
    pub old_codes: Vec<Code>,
    /// Codes of unrelated faults that are there.
    pub present_codes: BTreeSet<Code>,
}

/// One case.
#[derive(Debug, Clone, PartialEq)]
pub struct Case {
    /// What everybody may know.
    pub briefing: Arc<Briefing>,
    /// What nobody may know before the debrief.
    pub hidden: Hidden,
    /// How the session is weighed.
    pub rubric: Rubric,
    /// The scenario and its texts.
    pub scenario: Arc<Loaded>,
    /// The seed from which the case can be drawn again.
    pub seed: u64,
}

impl Case {
    /// The same case to be assessed, whatever its scenario is for.
    #[must_use]
    pub fn assessed(mut self) -> Self {
        Arc::make_mut(&mut self.briefing).mode = Mode::Assessed;
        self
    }
}

/// What a judge of drawn cases says.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Acceptance {
    /// The case can be given to an apprentice.
    Accepted,
    /// The fault would not have brought the customer in.
    WithoutComplaint,
    /// The steps at hand cannot tell the fault from every other.
    NotSeparable,
}

/// A judge of drawn cases.
pub type Judge<'j> = dyn Fn(&Briefing, &Hidden) -> Acceptance + 'j;

/// The judge that takes every case.
#[must_use]
pub fn any_case(_: &Briefing, _: &Hidden) -> Acceptance {
    Acceptance::Accepted
}

/// Why no case was drawn.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
pub enum DrawError {
    /// The judge refused every attempt.
    #[error(
        "drawing a case: none of {attempts} accepted; {without_complaint} without a complaint, {not_separable} not separable"
    )]
    NoneAccepted {
        /// Attempts made.
        attempts: u32,
        /// Refused because the fault would show nothing.
        without_complaint: u32,
        /// Refused because the fault could not be told from another.
        not_separable: u32,
    },
}

/// Draws a case. A refused attempt is drawn anew from streams of its own, so the faults of accepted
/// cases follow the scenario's weights among the cases that the judge accepts.
///
/// # Errors
/// [`DrawError::NoneAccepted`] after [`MOST_ATTEMPTS`] refusals.
pub fn draw(loaded: &Arc<Loaded>, seed: u64, judge: &Judge<'_>) -> Result<Case, DrawError> {
    let briefing = Arc::new(loaded.briefing());
    let (mut without_complaint, mut not_separable) = (0, 0);
    for attempt in 0..MOST_ATTEMPTS {
        let streams = attempt_streams(seed, attempt);
        let drawn = draw_fault(&loaded.scenario, streams);
        let hidden = Hidden { seed: session_seed(seed), ..hidden_of(&briefing, &drawn, streams) };
        match judge(&briefing, &hidden) {
            Acceptance::Accepted => {
                return Ok(Case {
                    briefing,
                    hidden,
                    rubric: loaded.scenario.rubric,
                    scenario: Arc::clone(loaded),
                    seed,
                });
            }
            Acceptance::WithoutComplaint => without_complaint += 1,
            Acceptance::NotSeparable => not_separable += 1,
        }
    }
    Err(DrawError::NoneAccepted { attempts: MOST_ATTEMPTS, without_complaint, not_separable })
}

/// The streams of one attempt at a case.
#[must_use]
pub fn attempt_streams(seed: u64, attempt: u32) -> Streams {
    Streams::new(Streams::new(seed).stream(&format!("case attempt {attempt}")).bits())
}

/// The seed of everything random during the session. It does not name the case's own seed, from
/// which the fault could be drawn again.
fn session_seed(seed: u64) -> u64 {
    Streams::new(seed).stream("session").bits()
}

/// Draws fault and decoys by the scenario's weights and chances.
#[must_use]
pub fn draw_fault(scenario: &ScenarioFile, streams: Streams) -> Drawn {
    let mut weights: Vec<f64> = scenario.faults.iter().map(|prior| prior.weight).collect();
    weights.push(scenario.no_fault);
    let chosen = streams.stream("fault").weighted(&weights);
    let faults = chosen
        .and_then(|number| scenario.faults.get(number))
        .map_or_else(Vec::new, |prior| draw_severities(&prior.parts(), streams));
    let happens = |what: &str, chance: f64| streams.stream(what).unit() < chance;
    let decoys = &scenario.decoys;
    let other_winding = decoys
        .other_winding
        .as_ref()
        .filter(|other| happens("other winding", other.chance))
        .map(|other| (other.place.clone(), other.part_number.clone()));
    let (mut old_codes, mut present_codes) = (Vec::new(), BTreeSet::new());
    for old in &decoys.old_codes {
        if happens(&format!("old code {}", old.code), old.chance) {
            match old.origin {
                CodeOrigin::Present => {
                    present_codes.insert(old.code);
                }
                CodeOrigin::Historical | CodeOrigin::False => old_codes.push(old.code),
            }
        }
    }
    Drawn { faults, decoys: DrawnDecoys { other_winding, old_codes, present_codes } }
}

/// Each fault that comes together with others has its severity from a stream of its own.
fn draw_severities(parts: &[FaultPart], streams: Streams) -> Vec<Fault> {
    (1..)
        .zip(parts)
        .map(|(number, part)| {
            let stream = match number {
                1 => "severity".to_owned(),
                _ => format!("severity {number}"),
            };
            let (least, most) = part.severity;
            Fault { name: part.name(), severity: streams.stream(&stream).between(least, most) }
        })
        .collect()
}

/// The hidden state of a vehicle with what was drawn. Its session seed is drawn from the same
/// streams; [`draw`] puts the case's own in its place.
#[must_use]
pub fn hidden_of(briefing: &Briefing, drawn: &Drawn, streams: Streams) -> Hidden {
    let vehicle = &briefing.vehicle;
    let mut condition = Condition::sound(vehicle);
    for place in &vehicle.valves {
        let part_number = match &drawn.decoys.other_winding {
            Some((at, part_number)) if *at == place.id => part_number,
            _ => &place.part_number,
        };
        let mut stream = streams.stream(&format!("winding spread {}", place.id));
        let spread = stream.between(1.0 - WINDING_SPREAD, 1.0 + WINDING_SPREAD);
        if let Some(part) = vehicle.valve_part(part_number) {
            condition.valves.insert(place.id.clone(), FittedValve::new(part, spread));
        }
    }
    condition.present_elsewhere.clone_from(&drawn.decoys.present_codes);
    condition.battery_charge = within(streams, "battery charge", BATTERY_CHARGE);
    condition.oil.hours = within(streams, "oil hours", OIL_HOURS);
    // A fault whose place the vehicle lacks changes nothing, and is not claimed in the debrief.
    let faults = drawn
        .faults
        .iter()
        .filter(|fault| faults::apply(fault, vehicle, &mut condition))
        .cloned()
        .collect();
    let gain = |name: &str, function: MeterFunction| {
        let most = METER_GAIN_SHARE * accuracy(function).0;
        within(streams, name, (1.0 - most, 1.0 + most))
    };
    let meter = Multimeter {
        volts_gain: gain("meter volts", MeterFunction::Volts),
        ohms_gain: gain("meter ohms", MeterFunction::Ohms),
        amps_gain: gain("meter amps", MeterFunction::Amps),
        ..Multimeter::ideal()
    };
    let old_codes = drawn.decoys.old_codes.clone();
    Hidden { condition, faults, old_codes, meter, seed: streams.stream("session").bits() }
}

fn within(streams: Streams, name: &str, (low, high): (f64, f64)) -> f64 {
    streams.stream(name).between(low, high)
}
