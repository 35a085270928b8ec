//! The key, the engine and the road.

use super::{Outcome, Refusal, minutes, spent};
use crate::session::attempt::{Session, Till};
use crate::session::event::{Breach, CamDrive, Event, Hazard};
use crate::session::step::{KeyPosition, Step};
use crate::vehicle::condition::Seal;
use crate::vehicle::driving::DriveReport;
use crate::vehicle::error::VehicleError;
use crate::vehicle::route::RouteProfile;
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

/// A drive as it went, before anybody writes it down.
pub struct Driven {
    /// What the vehicle reports of it.
    pub report: DriveReport,
    /// What was driven.
    pub profile: RouteProfile,
    /// When the driver pulled in and turned back [s]; `None` for the whole road.
    stopped_after: Option<u16>,
}

/// Drives a road, all of it or until the driver pulls in and turns back.
pub fn on_the_road(
    session: &mut Session,
    id: &Id,
    stop_after: Option<u16>,
) -> Result<Result<Driven, Refusal>, VehicleError> {
    let Some(route) = session.briefing.routes.get(id) else {
        return Ok(Err(Refusal::NoSuchPlace(id.clone())));
    };
    let missing = missing_for_running(session);
    if !missing.is_empty() {
        return Ok(Err(Refusal::CannotRun(missing)));
    }
    if session.progress.gauge_fitted {
        return Ok(Err(Refusal::GaugeFitted));
    }
    let whole = &route.profile;
    let stopped_after = stop_after.filter(|seconds| f64::from(*seconds) < whole.duration().0);
    let profile = stopped_after.map_or_else(|| whole.clone(), |seconds| whole.until(seconds));
    let started =
        if session.vehicle.engine_runs() { Idling::Smooth } else { session.vehicle.start()? };
    let mut report = session.vehicle.drive(&profile)?;
    report.quality = report.quality.max(started);
    Ok(Ok(Driven { report, profile, stopped_after }))
}

pub(super) fn drive(session: &mut Session, id: &Id, stop_after: Option<u16>) -> Outcome {
    let mut events = vec![Event::Caution { hazard: Hazard::Road }];
    if !session.progress.oil_checked {
        events.push(Event::AgainstCare { breach: Breach::DrivenUnchecked });
    } else if session.vehicle.dipstick().1 {
        events.push(Event::AgainstCare { breach: Breach::RunWithoutOil });
    }
    if session.vehicle.assembly().off().next().is_some() {
        events.push(Event::AgainstCare { breach: Breach::DrivenIncomplete });
    }
    let Driven { report, stopped_after, .. } = match on_the_road(session, id, stop_after)? {
        Ok(driven) => driven,
        Err(refusal) => return Ok(Err(refusal)),
    };
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
        quality: report.quality,
        cams,
        decided: if with_reader { report.decided } else { Vec::new() },
        stopped_after,
    });
    if let Some(Till { minutes, money }) =
        session.book_price(&Step::Drive { route: id.clone(), stop_after })
    {
        events.push(spent(minutes, money));
    }
    Ok(Ok(events))
}
