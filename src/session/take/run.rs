//! The key, the engine and the road.

use super::{Outcome, Refusal, minutes, spent};
use crate::session::attempt::Session;
use crate::session::event::{Breach, CamDrive, Event, Hazard};
use crate::session::step::KeyPosition;
use crate::vehicle::condition::Seal;
use crate::vehicle::run_record::Idling;
use crate::vehicle::spec::{Id, PartKind};

/// Parts without which the engine cannot run or must not be started.
fn missing_for_running(session: &Session) -> Vec<Id> {
    session
        .briefing
        .vehicle
        .parts
        .iter()
        .filter(|part| matches!(part.kind, PartKind::Valve | PartKind::Duct | PartKind::Clamp))
        .filter(|part| session.vehicle.assembly().is_off(&part.id))
        .map(|part| part.id.clone())
        .collect()
}

pub(super) fn turn_key(session: &mut Session, position: KeyPosition) -> Outcome {
    let times = session.briefing.prices.minutes;
    let mut events = Vec::new();
    let time = match position {
        KeyPosition::Off => {
            session.vehicle.key_off();
            times.key
        }
        KeyPosition::On => {
            session.vehicle.key_on_only()?;
            times.key
        }
        KeyPosition::Crank => {
            let missing = missing_for_running(session);
            if !missing.is_empty() {
                return Ok(Err(Refusal::CannotRun(missing)));
            }
            events.push(Event::Caution { hazard: Hazard::MovingParts });
            session.vehicle.key_crank()?;
            times.key
        }
        KeyPosition::Start => {
            let missing = missing_for_running(session);
            if !missing.is_empty() {
                return Ok(Err(Refusal::CannotRun(missing)));
            }
            events.push(Event::Caution { hazard: Hazard::MovingParts });
            events.push(Event::Caution { hazard: Hazard::Fumes });
            if session.vehicle.dipstick().1 && session.progress.oil_checked {
                events.push(Event::AgainstCare { breach: Breach::RunWithoutOil });
            }
            let quality = session.vehicle.start()?;
            events.push(Event::Idles { quality });
            events.extend(leaks(session));
            times.start
        }
    };
    let (engine_lamp, oil_lamp) = session.vehicle.lamps();
    events.push(Event::KeyTurned { position, engine_lamp, oil_lamp });
    events.push(minutes(time));
    Ok(Ok(events))
}

/// Seals that weep once there is pressure behind them.
fn leaks(session: &Session) -> Vec<Event> {
    session
        .vehicle
        .condition()
        .valves
        .iter()
        .filter(|(_, valve)| valve.seal == Seal::Torn)
        .map(|(place, _)| Event::SealLeaks { valve: place.clone() })
        .collect()
}

pub(super) fn drive(session: &mut Session, id: &Id) -> Outcome {
    let Some(route) = session.briefing.routes.get(id).cloned() else {
        return Ok(Err(Refusal::NoSuchPlace(id.clone())));
    };
    let missing = missing_for_running(session);
    if !missing.is_empty() {
        return Ok(Err(Refusal::CannotRun(missing)));
    }
    if session.progress.gauge_fitted {
        return Ok(Err(Refusal::GaugeFitted));
    }
    let mut events = vec![Event::Caution { hazard: Hazard::Road }];
    if !session.progress.oil_checked {
        events.push(Event::AgainstCare { breach: Breach::DrivenUnchecked });
    } else if session.vehicle.dipstick().1 {
        events.push(Event::AgainstCare { breach: Breach::RunWithoutOil });
    }
    if session.vehicle.assembly().off().next().is_some() {
        events.push(Event::AgainstCare { breach: Breach::DrivenIncomplete });
    }
    let mut quality =
        if session.vehicle.engine_runs() { Idling::Smooth } else { session.vehicle.start()? };
    let report = session.vehicle.drive(&route.profile)?;
    quality = quality.max(report.quality);
    let (engine_lamp, oil_lamp) = session.vehicle.lamps();
    session.vehicle.key_off();
    events.extend(leaks(session));
    // Without the code reader nobody in the vehicle sees a camshaft's position.
    let with_reader = session.progress.reader_connected;
    let cams = report
        .cams
        .iter()
        .filter(|_| with_reader)
        .map(|cam| CamDrive {
            valve: cam.valve.clone(),
            mean_error: (cam.mean_error * 10.0).round() / 10.0,
            furthest: cam.furthest.round(),
        })
        .collect();
    events.push(Event::Driven {
        route: id.clone(),
        engine_lamp,
        oil_lamp: oil_lamp || report.oil_lamp,
        quality,
        cams,
        decided: if with_reader { report.decided } else { Vec::new() },
    });
    events.push(spent(route.minutes, session.briefing.prices.fuel));
    Ok(Ok(events))
}
