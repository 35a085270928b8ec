//! Talking to the control module.

use super::{Outcome, Refusal, minutes};
use crate::control_module::code::Code;
use crate::control_module::code_report::ReportedCode;
use crate::control_module::freeze_frame::FreezeFrame;
use crate::session::attempt::Session;
use crate::session::event::{Breach, CamData, Event, Frame, NoAnswer};
use crate::session::step::Step;
use crate::units::Minutes;
use crate::vehicle::snapshot::Snapshot;
use crate::vehicle::spec::Id;
use crate::vehicle::whole::ModuleAnswer;

/// Why the module cannot answer now, if it cannot.
pub(super) fn silence(
    session: &Session,
) -> Result<Option<NoAnswer>, crate::vehicle::error::VehicleError> {
    Ok(match session.vehicle.module_answer()? {
        ModuleAnswer::Yes => None,
        ModuleAnswer::KeyOff => Some(NoAnswer::KeyOff),
        ModuleAnswer::NoSupply => Some(NoAnswer::NoSupply),
    })
}

pub(super) fn reader_time(session: &mut Session) -> Minutes {
    let times = session.briefing.prices.minutes;
    if session.progress.reader_connected {
        times.request
    } else {
        session.progress.reader_connected = true;
        times.request + times.connect_reader
    }
}

pub(super) fn request(session: &mut Session, step: &Step) -> Outcome {
    let time = minutes(reader_time(session));
    if let Some(reason) = silence(session)? {
        return Ok(Ok(vec![Event::NoAnswer { reason }, time]));
    }
    let mut events = Vec::new();
    match step {
        Step::ReadCodes => {
            session.progress.codes_read = true;
            events.push(codes(session));
        }
        Step::ReadFreezeFrame => {
            let frame = session.vehicle.freeze_frame().map(|(code, stored)| kept(code, &stored));
            events.push(Event::FreezeFrame { frame });
        }
        Step::ReadLiveData => {
            let snapshot = session.vehicle.snapshot()?;
            events.push(Event::LiveData { frame: frame(&snapshot), cams: cams(&snapshot) });
        }
        _ => {
            if session.vehicle.engine_runs() {
                events.push(Event::NoAnswer { reason: NoAnswer::EngineRuns });
            } else {
                if !session.progress.codes_read {
                    events.push(Event::AgainstCare { breach: Breach::ClearedUnread });
                }
                session.vehicle.clear_codes()?;
                events.push(Event::CodesCleared);
                // A monitor that runs with the key on has its say at once.
                session.vehicle.watch_with_key_on()?;
            }
        }
    }
    events.push(time);
    Ok(Ok(events))
}

fn codes(session: &Session) -> Event {
    let report = session.vehicle.code_report();
    let plain = |codes: &[ReportedCode]| codes.iter().map(|reported| reported.code).collect();
    Event::Codes {
        stored: plain(&report.stored),
        pending: plain(&report.pending),
        permanent: report.permanent,
        lamp: report.commands_lamp,
        complete: report.decisions.iter().map(|finding| finding.code).collect(),
    }
}

/// A freeze frame rounded as a reader shows it.
fn kept(code: Code, stored: &FreezeFrame) -> Frame {
    Frame {
        rpm: stored.engine_speed.0.round(),
        load: (stored.load * 100.0).round(),
        speed: stored.vehicle_speed.0.round(),
        coolant: stored.coolant.0.round(),
        oil: stored.oil.0.round(),
        supply: (stored.supply.0 * 10.0).round() / 10.0,
        code: Some(code),
    }
}

/// A snapshot rounded as a reader shows it.
fn frame(snapshot: &Snapshot) -> Frame {
    Frame {
        rpm: snapshot.rpm.round(),
        load: (snapshot.load * 100.0).round(),
        speed: snapshot.speed_kmh.round(),
        coolant: snapshot.coolant_c.round(),
        oil: snapshot.oil_c.round(),
        supply: (snapshot.supply_v * 10.0).round() / 10.0,
        code: None,
    }
}

fn cams(snapshot: &Snapshot) -> Vec<CamData> {
    snapshot
        .cams
        .iter()
        .map(|cam| CamData {
            valve: cam.valve.clone(),
            wanted: cam.wanted.round(),
            actual: cam.actual.round(),
            duty: (cam.duty * 100.0).round(),
        })
        .collect()
}

pub(super) fn command(session: &mut Session, valve: &Id, on: bool) -> Outcome {
    if session.briefing.vehicle.valve(valve).is_none() {
        return Ok(Err(Refusal::NoSuchPlace(valve.clone())));
    }
    let time = minutes(reader_time(session));
    if let Some(reason) = silence(session)? {
        return Ok(Ok(vec![Event::NoAnswer { reason }, time]));
    }
    if session.vehicle.engine_runs() {
        return Ok(Ok(vec![Event::NoAnswer { reason: NoAnswer::EngineRuns }, time]));
    }
    let click = session.vehicle.command(valve, on)?;
    Ok(Ok(vec![
        Event::Commanded { valve: valve.clone(), on },
        Event::Heard { valve: valve.clone(), current_on: on, click },
        time,
    ]))
}
