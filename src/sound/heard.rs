//! Which sound belongs to which events: a function of the log and of what everybody may know, and of nothing else.
//!
//! Whoever listens learns no more than the events tell. So a clear click sounds as that of a sound valve of the vehicle,
//! a dull one as the same spool with the energy in the middle of what is called dull, and a starter that fires the engine as
//! one on a charged battery.

#[cfg(test)]
mod tests;

use super::caption::Name;
use super::engine::{EngineRun, Moment};
use super::passage::{Part, Passage};
use super::starter::StarterRun;
use crate::control_module::idle_control::IdleControlSpec;
use crate::numerics::elementary::sqrt;
use crate::physics::actuator::Actuator;
use crate::physics::battery::{Starter, internal, rest_voltage};
use crate::physics::coil::Winding;
use crate::physics::crank::CrankSpec;
use crate::physics::oil::Oil;
use crate::physics::stroke::{CLEAR, Click, DULL, Drive, Impact, Surroundings, energise};
use crate::session::attempt::Entry;
use crate::session::event::Event;
use crate::session::setup::Briefing;
use crate::session::step::KeyPosition;
use crate::units::{Celsius, Joules, Millimetres, Ohms, Rpm, Seconds, Volts};
use crate::vehicle::route::{Demand, RouteProfile};
use crate::vehicle::run_record::Idling;
use crate::vehicle::spec::Id;

/// Between the click as the current comes on and the one as it goes off [s]; the seconds between are left out.
const BETWEEN_CLICKS: Seconds = Seconds(0.7);
/// How long the starter is heard when it fires the engine, and when it does not or need not.
const FIRING: Seconds = Seconds(1.0);
const TURNING: Seconds = Seconds(2.5);
/// Speed of a starter that does not fire the engine [rpm], below that from which one fires (engineering estimate).
const TOO_SLOW: Rpm = Rpm(60.0);
/// Charge of a battery that nobody has reason to doubt, 0 to 1.
const CHARGED: f64 = 0.94;
/// Resistance of the starter's cables [ohm] (engineering estimate).
const CABLES_OHMS: f64 = 0.004;
/// Supply and resistance on which a valve of the vehicle is taken to click.
const SUPPLY: (Volts, Ohms) = (Volts(12.6), Ohms(0.5));
/// How long its current is on [s]; long enough for a cold one.
const ON_FOR: Seconds = Seconds(0.5);
/// Oil by which a cold spool is slowed where the typical one has no figure [Pa s].
const THICK_OIL_PA_S: f64 = 0.15;

/// Speed at which the engine fires up, the time it then takes to its idle, and to run down [rpm, s].
const FIRES_UP_RPM: f64 = 300.0;
const RUN_UP_S: f64 = 0.6;
const RUN_DOWN_S: f64 = 0.8;
/// Time in which a rough engine that stalls has come to rest [s].
const STALL_S: f64 = 1.8;
/// Time for a change of speed by hand, and how long it is held [s].
const BY_HAND_S: f64 = 0.7;
const HELD_S: f64 = 2.0;
/// Load of an engine that is held at speed without a road, 0 to 1 (engineering estimate).
const UNLOADED: f64 = 0.15;
/// Stretches of a road that are heard, and how long each [s].
const STRETCHES: usize = 5;
const STRETCH_S: f64 = 1.2;
/// Coolant of an engine that has been driven or warmed up.
const WARM: Celsius = Celsius(90.0);
/// Speed above which live data show a running engine [rpm].
const RUNS_RPM: f64 = 400.0;

/// What is heard, and what it is called.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Heard {
    /// What it sounds like.
    pub passage: Passage,
    /// Its names in their order.
    pub names: Vec<Name>,
}

impl Heard {
    const fn new(parts: Vec<Part>, names: Vec<Name>) -> Self {
        Self { passage: Passage::new(parts), names }
    }
}

/// What there is to hear after the newest step of a log; nothing, when what sounded goes on as it was.
#[must_use]
pub fn heard(log: &[Entry], briefing: &Briefing) -> Option<Heard> {
    let (newest, before) = log.split_last()?;
    let about = About { briefing, was: Running::after(before, briefing) };
    let quality = quality_in(&newest.events);
    for event in &newest.events {
        match event {
            Event::KeyTurned { position: KeyPosition::Start, .. } => {
                return Some(about.start(quality.unwrap_or(Idling::Smooth)));
            }
            Event::KeyTurned { position: KeyPosition::Crank, .. } => {
                return Some(about.cranks());
            }
            Event::KeyTurned { .. } => return about.runs_down(),
            Event::Driven { route, quality, .. } => return Some(about.road(route, *quality)),
            Event::GaugeRead { rpm, .. } => return about.held(*rpm),
            Event::Heard { .. } => return Some(about.clicks(&newest.events)),
            Event::HandedOver { .. } => return Some(Heard::default()),
            _ => {}
        }
    }
    // Somebody turns the engine for each reading while the key is held there.
    let is_read = |event: &Event| matches!(event, Event::Reading { .. } | Event::Clamped { .. });
    (is_cranked(before) && newest.events.iter().any(is_read)).then(|| about.cranks())
}

/// What goes on without anybody doing anything, for whoever comes in now.
#[must_use]
pub fn goes_on(log: &[Entry], briefing: &Briefing) -> Passage {
    Running::after(log, briefing).map_or(Passage::SILENCE, |was| {
        let moments = vec![Moment { at_s: 0.0, ..was.idle() }];
        Passage::new(vec![engine(briefing, moments, was.is_rough)])
    })
}

fn quality_in(events: &[Event]) -> Option<Idling> {
    events.iter().find_map(|event| match event {
        Event::Idles { quality } => Some(*quality),
        _ => None,
    })
}

fn is_cranked(log: &[Entry]) -> bool {
    let turned = log.iter().rev().flat_map(|entry| entry.events.iter().rev());
    let position = turned.filter_map(|event| match event {
        Event::KeyTurned { position, .. } => Some(*position == KeyPosition::Crank),
        Event::Driven { .. } => Some(false),
        _ => None,
    });
    position.take(1).any(|is_cranked| is_cranked)
}

/// An engine that runs, as far as one can tell from the log.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Running {
    rpm: f64,
    is_rough: bool,
}

impl Running {
    /// Whether and how the engine runs after a log.
    fn after(log: &[Entry], briefing: &Briefing) -> Option<Self> {
        let mut running = None;
        let mut coolant = briefing.workshop_temperature;
        for entry in log {
            for event in &entry.events {
                match event {
                    Event::KeyTurned { position: KeyPosition::Start, .. } => {
                        let quality = quality_in(&entry.events);
                        let runs = matches!(quality, Some(Idling::Smooth | Idling::Rough));
                        running = runs.then(|| Self {
                            rpm: idle_rpm(coolant),
                            is_rough: quality == Some(Idling::Rough),
                        });
                    }
                    Event::KeyTurned { .. } => running = None,
                    Event::Driven { .. } => {
                        running = None;
                        coolant = WARM;
                    }
                    Event::LiveData { frame, .. } if frame.rpm >= RUNS_RPM => {
                        if let Some(running) = &mut running {
                            running.rpm = frame.rpm;
                        }
                    }
                    _ => {}
                }
            }
        }
        running
    }

    const fn idle(&self) -> Moment {
        Moment { at_s: 0.0, rpm: self.rpm, load: Demand::IDLE.load }
    }
}

/// Speed at which an engine idles by its control's calibration [rpm].
fn idle_rpm(coolant: Celsius) -> f64 {
    IdleControlSpec::TYPICAL.wanted(Demand::IDLE.speed, coolant).0
}

/// What the sound of a step hangs on besides its events.
struct About<'a> {
    briefing: &'a Briefing,
    was: Option<Running>,
}

impl About<'_> {
    /// Speed at which the starter turns the engine on a charged battery, whose voltage droops by what the starter draws.
    fn charged_speed(&self) -> Rpm {
        let room = self.briefing.workshop_temperature;
        let crank = CrankSpec::TYPICAL.with_cylinders(self.briefing.vehicle.cylinders);
        let source = Ohms(internal(CHARGED, room).0 + CABLES_OHMS);
        let oil_pa_s = oil_pa_s(room);
        let against_nm = |rad_s: f64| {
            let friction = crank.friction_pa(rad_s / core::f64::consts::TAU, oil_pa_s);
            crank.torque_nm(friction + Starter::TYPICAL.compression_pa)
        };
        let cranking = Starter::TYPICAL.cranking(rest_voltage(CHARGED, room), source, against_nm);
        Rpm(cranking.rad_s * 60.0 / core::f64::consts::TAU)
    }

    const fn starter(&self, speed: Rpm, lasts: Seconds) -> Part {
        Part::Starter(StarterRun { speed, cylinders: self.briefing.vehicle.cylinders, lasts })
    }

    fn cranks(&self) -> Heard {
        Heard::new(vec![self.starter(self.charged_speed(), TURNING)], vec![Name::Starter])
    }

    fn start(&self, quality: Idling) -> Heard {
        let idle = Moment {
            at_s: RUN_UP_S,
            rpm: self.was.map_or_else(|| self.next_idle_rpm(), |was| was.rpm),
            load: Demand::IDLE.load,
        };
        let up = Moment { at_s: 0.0, rpm: FIRES_UP_RPM, load: Demand::IDLE.load };
        let stands = Moment { at_s: RUN_UP_S + STALL_S, rpm: 0.0, load: Demand::IDLE.load };
        match quality {
            Idling::DoesNotStart => {
                Heard::new(vec![self.starter(TOO_SLOW, TURNING)], vec![Name::StarterLabours])
            }
            Idling::Smooth | Idling::Rough => {
                let is_rough = quality == Idling::Rough;
                Heard::new(
                    vec![
                        self.starter(self.charged_speed(), FIRING),
                        engine(self.briefing, vec![up, idle], is_rough),
                    ],
                    vec![Name::Starter, Name::Idle { is_rough }],
                )
            }
            Idling::Stalls => Heard::new(
                vec![
                    self.starter(self.charged_speed(), FIRING),
                    engine(self.briefing, vec![up, idle, stands], true),
                ],
                vec![Name::Starter, Name::Stall],
            ),
        }
    }

    fn next_idle_rpm(&self) -> f64 {
        idle_rpm(self.briefing.workshop_temperature)
    }

    /// A running engine runs down without fire; one that stands stays as it is.
    fn runs_down(&self) -> Option<Heard> {
        let was = self.was?;
        let stands = Moment { at_s: RUN_DOWN_S, rpm: 0.0, load: 0.0 };
        let engine = Part::Engine(EngineRun {
            cylinders: self.briefing.vehicle.cylinders,
            moments: vec![was.idle(), stands],
            is_rough: false,
            is_fired: false,
        });
        Some(Heard::new(vec![engine], vec![Name::RunDown]))
    }

    /// The engine is brought to a speed by hand, held and let go.
    fn held(&self, rpm: Option<u16>) -> Option<Heard> {
        let (was, rpm) = (self.was?, rpm?);
        let held = Moment { at_s: BY_HAND_S, rpm: f64::from(rpm), load: UNLOADED };
        let moments = vec![
            was.idle(),
            held,
            Moment { at_s: BY_HAND_S + HELD_S, ..held },
            Moment { at_s: 2.0 * BY_HAND_S + HELD_S, ..was.idle() },
        ];
        Some(Heard::new(
            vec![engine(self.briefing, moments, was.is_rough)],
            vec![Name::Held { rpm }],
        ))
    }

    /// Some stretches of a road, shortened, and the engine is switched off.
    fn road(&self, route: &Id, quality: Idling) -> Heard {
        if quality == Idling::DoesNotStart {
            return self.start(quality);
        }
        let (mut parts, mut names) = (Vec::new(), Vec::new());
        if self.was.is_none() {
            parts.push(self.starter(self.charged_speed(), FIRING));
            names.push(Name::Starter);
        }
        if let Some(route) = self.briefing.routes.get(route) {
            let mut moments = shortened(&route.profile);
            let end_s = moments.last().map_or(0.0, |last| last.at_s);
            moments.push(Moment { at_s: end_s + RUN_DOWN_S, rpm: 0.0, load: 0.0 });
            let is_rough = quality != Idling::Smooth;
            parts.push(engine(self.briefing, moments, is_rough));
            names.push(Name::Road { is_rough });
        }
        Heard::new(parts, names)
    }

    fn clicks(&self, events: &[Event]) -> Heard {
        let (mut parts, mut names) = (Vec::new(), Vec::new());
        for event in events {
            let Event::Heard { valve, current_on, click } = event else { continue };
            if !names.is_empty() {
                parts.push(Part::Pause(BETWEEN_CLICKS));
            }
            names.push(Name::Click(*click));
            parts.extend(self.impact(valve, *current_on, *click).map(Part::Click));
        }
        // What is not heard leaves nothing to wait for.
        while matches!(parts.last(), Some(Part::Pause(_))) {
            parts.pop();
        }
        Heard::new(parts, names)
    }

    /// The impact that a click stands for.
    fn impact(&self, valve: &Id, current_on: bool, click: Click) -> Option<Impact> {
        let usual = self.usual_impact(valve, current_on)?;
        let energy = match click {
            Click::None => return None,
            Click::Dull => Joules(sqrt(CLEAR.0 * DULL.0)),
            Click::Clear => Joules(usual.energy.0.max(CLEAR.0)),
        };
        // The same spool with another energy has another speed.
        let speed_m_per_s = usual.speed_m_per_s * sqrt(energy.0 / usual.energy.0);
        Some(Impact { speed_m_per_s, energy, ..usual })
    }

    /// The impact of a sound valve as the vehicle was built with.
    fn usual_impact(&self, valve: &Id, current_on: bool) -> Option<Impact> {
        let vehicle = &self.briefing.vehicle;
        let part = vehicle.valve(valve).and_then(|place| vehicle.valve_part(&place.part_number));
        let (actuator, winding) = part.map_or((Actuator::REFERENCE, Winding::REFERENCE), |part| {
            let ohms_at_20 = Ohms(part.ohms_at_20);
            (part.actuator, Winding { ohms_at_20, turns: part.turns, ..Winding::REFERENCE })
        });
        let room = self.briefing.workshop_temperature;
        let (supply, source) = SUPPLY;
        let stroke = energise(
            &actuator.solenoid,
            &winding,
            &actuator.spool,
            Drive { supply, source, on_for: ON_FOR },
            Surroundings {
                coil: room,
                oil_viscosity_pa_s: oil_pa_s(room),
                start: Millimetres(0.0),
            },
        );
        if current_on { stroke.engaged } else { stroke.returned }
    }
}

fn engine(briefing: &Briefing, moments: Vec<Moment>, is_rough: bool) -> Part {
    let cylinders = briefing.vehicle.cylinders;
    Part::Engine(EngineRun { cylinders, moments, is_rough, is_fired: true })
}

/// Viscosity of typical oil at a temperature [Pa s].
fn oil_pa_s(at: Celsius) -> f64 {
    Oil::TYPICAL_5W_30.curve().map_or(THICK_OIL_PA_S, |curve| curve.fluid(at).viscosity_pa_s)
}

/// Speed and load at the ends of some of a road's stretches, evenly chosen, in a few seconds.
fn shortened(profile: &RouteProfile) -> Vec<Moment> {
    let mut moments =
        vec![Moment { at_s: 0.0, rpm: profile.start_rpm.max(RUNS_RPM), load: UNLOADED }];
    let count = profile.segments.len();
    let taken = count.min(STRETCHES);
    for number in 0..taken {
        let segment = &profile.segments[number * count / taken];
        moments.push(Moment {
            at_s: (number + 1) as f64 * STRETCH_S,
            rpm: segment.rpm.max(RUNS_RPM),
            load: segment.load,
        });
    }
    moments
}
