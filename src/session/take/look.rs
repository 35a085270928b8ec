//! Asking and looking.

use super::{Refusal, minutes};
use crate::physics::oil::Grade;
use crate::session::attempt::Session;
use crate::session::event::{Event, Hazard, OilFeel, OilLook, Sight};
use crate::session::step::{ENGINE_BAY, Step};
use crate::vehicle::condition::{FittedValve, OilFill, Seal};
use crate::vehicle::spec::{HarnessElement, Id, PartKind};
use std::collections::BTreeMap;

/// Oil older than this looks dark [h]: common practice, no source.
const DARK_AFTER_HOURS: f64 = 40.0;
/// Sludge that the eye sees on the stick, on a scale to 1: engineering estimate.
const VISIBLE_SLUDGE: f64 = 0.5;
/// Viscosity at 40 °C against fresh oil of the right grade below and above which two fingers notice:
/// engineering estimate.
const NOTICED_THIN: f64 = 0.8;
/// See [`NOTICED_THIN`].
const NOTICED_THICK: f64 = 1.3;
/// Share of fuel that the nose notices: engineering estimate.
const SMELT_FUEL_SHARE: f64 = 0.03;
/// A contact with more resistance than this is visibly green [ohm]: engineering estimate.
const VISIBLE_CORROSION_OHMS: f64 = 1.0;
/// A terminal with more resistance than this stands visibly open, and a fuse with more than this has
/// no strip left [ohm]: engineering estimate.
const VISIBLY_SPREAD_OHMS: f64 = 1.0;
const BURNT_THROUGH_OHMS: f64 = 1e3;
/// Blocked share of a screen from which sludge is seen: engineering estimate.
const VISIBLE_SLUDGE_SHARE: f64 = 0.3;
/// Friction that a finger on the spool notices, and friction that it cannot overcome [N]:
/// engineering estimate.
const NOTICED_STICTION_N: f64 = 1.5;
const SEIZED_STICTION_N: f64 = 8.0;

pub(super) fn ask(session: &Session, step: &Step) -> Vec<Event> {
    let times = session.briefing.prices.minutes;
    match step {
        Step::AskCustomer { topic } => {
            vec![Event::Answered { topic: *topic }, minutes(times.ask)]
        }
        Step::Consult { topic } => {
            vec![Event::Consulted { topic: *topic }, minutes(times.consult)]
        }
        _ => vec![Event::JobSheetShown],
    }
}

pub(super) fn look(session: &mut Session, place: &Id) -> Result<Vec<Event>, Refusal> {
    let mut events: Vec<Event> = sights(session, place)?
        .into_iter()
        .map(|sight| Event::Seen { place: place.clone(), sight })
        .collect();
    events.push(minutes(session.briefing.prices.minutes.look));
    Ok(events)
}

fn sights(session: &Session, place: &Id) -> Result<Vec<Sight>, Refusal> {
    let spec = &session.briefing.vehicle;
    let assembly = session.vehicle.assembly();
    let condition = session.vehicle.condition();
    if place.as_str() == ENGINE_BAY {
        // A torn seal weeps where a walk round the engine shows it.
        let leaks = condition.valves.values().any(|valve| valve.seal == Seal::Torn);
        return Ok(vec![if leaks { Sight::TornSeal } else { Sight::Sound }]);
    }
    if let Some(part) = spec.part(place) {
        if assembly.in_the_way(&part.behind).is_some() && !assembly.is_off(place) {
            return Ok(vec![Sight::Hidden]);
        }
        return Ok(match part.kind {
            PartKind::Connector | PartKind::Valve | PartKind::Fuse if !assembly.is_off(place) => {
                vec![Sight::Hidden]
            }
            PartKind::Connector => vec![pins_of(session, place)],
            PartKind::Fuse => vec![strip_of(session, place)],
            PartKind::Valve => condition.valves.get(place).map_or_else(Vec::new, sights_of_valve),
            _ => vec![Sight::Sound],
        });
    }
    match spec.element(place) {
        Some(HarnessElement::Pin { connector, .. }) => Ok(vec![if assembly.is_off(connector) {
            corrosion(session, place)
        } else {
            Sight::Hidden
        }]),
        Some(HarnessElement::Wire { .. } | HarnessElement::Cable { .. }) => {
            let reached = spec
                .test_points
                .iter()
                .filter(|point| {
                    spec.element(place).is_some_and(|e| e.nodes().contains(&&point.node))
                })
                .any(|point| assembly.in_the_way(&point.behind).is_none());
            Ok(vec![if !reached {
                Sight::Hidden
            } else if condition.leak_to_ground_ohms.contains_key(place)
                || condition.leak_to_supply_ohms.contains_key(place)
            {
                Sight::RubbedThrough
            } else {
                Sight::Sound
            }])
        }
        Some(_) => Ok(vec![Sight::Sound]),
        None => Err(Refusal::NoSuchPlace(place.clone())),
    }
}

fn corrosion(session: &Session, pin: &Id) -> Sight {
    let condition = session.vehicle.condition();
    let ohms = |of: &BTreeMap<Id, f64>| of.get(pin).copied().unwrap_or(0.0);
    if ohms(&condition.extra_ohms) > VISIBLE_CORROSION_OHMS {
        Sight::Corrosion
    } else if ohms(&condition.spread_ohms) > VISIBLY_SPREAD_OHMS {
        Sight::SpreadTerminal
    } else {
        Sight::Sound
    }
}

/// What a connector shows: the worst of its contacts.
fn pins_of(session: &Session, wanted: &Id) -> Sight {
    let pins = session.briefing.vehicle.pins_at(wanted).into_iter();
    pins.map(|pin| corrosion(session, pin)).max().unwrap_or(Sight::Sound)
}

/// The strip of a fuse that is out.
fn strip_of(session: &Session, fuse: &Id) -> Sight {
    let extra = session.vehicle.condition().extra_ohms.get(fuse).copied().unwrap_or(0.0);
    if extra > BURNT_THROUGH_OHMS { Sight::BlownFuse } else { Sight::Sound }
}

fn sights_of_valve(valve: &FittedValve) -> Vec<Sight> {
    let mut seen = Vec::new();
    if valve.screen_blocked > VISIBLE_SLUDGE_SHARE {
        seen.push(Sight::Sludge);
    }
    if valve.stiction_n > SEIZED_STICTION_N {
        seen.push(Sight::SpoolSeized);
    } else if valve.stiction_n > NOTICED_STICTION_N {
        seen.push(Sight::SpoolSticks);
    }
    match valve.seal {
        Seal::Torn => seen.push(Sight::TornSeal),
        Seal::Reused => seen.push(Sight::UsedSeal),
        Seal::Good => {}
    }
    if seen.is_empty() {
        seen.push(Sight::Sound);
    }
    seen
}

/// Healthy used oil is dark too: darkness alone says nothing.
fn look_of(oil: &OilFill) -> OilLook {
    if oil.sludge() > VISIBLE_SLUDGE {
        OilLook::Sludge
    } else if oil.hours > DARK_AFTER_HOURS {
        OilLook::Dark
    } else {
        OilLook::Fresh
    }
}

fn feel_of(oil: &OilFill, right: Grade) -> OilFeel {
    let now = oil.oil();
    let against_fresh = now.kv40_mm2_s * now.thickening / right.typical().kv40_mm2_s;
    if against_fresh < NOTICED_THIN {
        OilFeel::Thin
    } else if against_fresh > NOTICED_THICK {
        OilFeel::Thick
    } else {
        OilFeel::Usual
    }
}

pub(super) fn dipstick(session: &mut Session) -> Result<Vec<Event>, Refusal> {
    if session.vehicle.engine_runs() {
        return Err(Refusal::EngineRuns);
    }
    session.progress.oil_checked = true;
    let oil = session.vehicle.condition().oil;
    let (level, dry) = session.vehicle.dipstick();
    // A person reads a stick to about a twentieth of the span between its marks.
    let level = (level * 20.0).round() / 20.0 + 0.0;
    let look = look_of(&oil);
    let feel = feel_of(&oil, session.briefing.vehicle.oil.grade);
    let smells_of_fuel = oil.fuel_share > SMELT_FUEL_SHARE;
    Ok(vec![
        Event::Caution { hazard: Hazard::UsedOil },
        Event::OilSeen { level, dry, look, feel, smells_of_fuel },
        minutes(session.briefing.prices.minutes.dipstick),
    ])
}
