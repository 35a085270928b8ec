//! Talking to the control module through the code reader.

use super::{Outcome, Refusal, book, minutes};
use crate::control_module::code::Code;
use crate::control_module::services::own_data::CamSense;
use crate::control_module::services::parameter::Parameter;
use crate::control_module::services::reply::NegativeReason;
use crate::control_module::services::test_result::TestResult;
use crate::instruments::code_reader::{
    CodeReader, CodesShown, LiveItem, NoReading, NotRead, StatusShown, Values,
};
use crate::physics::stroke::Click;
use crate::session::attempt::Session;
use crate::session::event::{
    Breach, CamData, CounterReading, Event, Frame, LiveValue, NoAnswer, TestFigures, TestReading,
};
use crate::session::step::Step;
use crate::units::Minutes;
use crate::vehicle::error::VehicleError;
use crate::vehicle::spec::{Id, VehicleSpec};
use crate::vehicle::test_numbers::{NumberedTest, numbered_tests};

/// What stands in a frame.
const FRAME: [LiveItem; 6] = [
    LiveItem::EngineSpeed,
    LiveItem::Load,
    LiveItem::RoadSpeed,
    LiveItem::Coolant,
    LiveItem::Oil,
    LiveItem::Supply,
];

pub(super) fn reader_time(session: &mut Session) -> Minutes {
    let time = book::reader(session);
    session.progress.reader_connected = true;
    time
}

/// What the reader shows in the place of an answer. Whoever holds the key knows where it is, and
/// sees whether the engine runs; the reader itself cannot tell.
fn unanswered(session: &Session, not_read: NotRead) -> Result<Event, VehicleError> {
    let shown = match not_read {
        NotRead::Vehicle(error) => return Err(error),
        NotRead::Shown(shown) => shown,
    };
    let reason = match shown {
        NoReading::Dark => NoAnswer::ReaderDark,
        NoReading::Silence if !session.vehicle.key_on() => NoAnswer::KeyOff,
        NoReading::Silence => NoAnswer::NoReply,
        NoReading::Refused(NegativeReason::ConditionsNotCorrect)
            if session.vehicle.engine_runs() =>
        {
            NoAnswer::EngineRuns
        }
        NoReading::Refused(_) | NoReading::Garbled => NoAnswer::NotOffered,
    };
    Ok(Event::NoAnswer { reason })
}

pub(super) fn request(session: &mut Session, step: &Step) -> Outcome {
    let time = minutes(reader_time(session));
    let mut events = match read(session, step) {
        Ok(events) => events,
        Err(not_read) => vec![unanswered(session, not_read)?],
    };
    events.push(time);
    Ok(Ok(events))
}

fn read(session: &mut Session, step: &Step) -> Result<Vec<Event>, NotRead> {
    let mut reader = CodeReader::on(&mut session.vehicle);
    Ok(vec![match step {
        Step::ReadCodes => {
            let CodesShown { stored, pending, permanent, lamp, ran } = reader.codes()?;
            session.progress.codes_read = true;
            session.progress.codes_seen.extend(stored.iter().chain(&pending).chain(&permanent));
            Event::Codes { stored, pending, permanent, lamp, complete: ran }
        }
        Step::ReadFreezeFrame => {
            let read = reader.freeze_frame()?;
            session.progress.codes_seen.extend(read.iter().map(|(code, _)| *code));
            Event::FreezeFrame { frame: read.map(|(code, values)| frame(&values, Some(code))) }
        }
        Step::ReadLiveData => {
            let values = reader.current(&FRAME.map(LiveItem::parameter))?;
            let cams = cams(&session.briefing.vehicle, &reader.camshafts()?);
            Event::LiveData { frame: frame(&values, None), cams }
        }
        Step::ReadLiveItems { items } => {
            let asked: Vec<Parameter> = items.iter().map(|item| item.parameter()).collect();
            let values = reader.current(&asked)?;
            let value = |item: &LiveItem| LiveValue {
                item: *item,
                value: values.get(&item.parameter()).map(|value| item.shown(*value)),
            };
            Event::LiveItems { values: items.iter().map(value).collect() }
        }
        Step::ReadReadiness => readiness(reader.readiness()?),
        Step::ReadTestResults => test_results(&session.briefing.vehicle, &reader.test_results()?),
        Step::ReadVehicleInformation => {
            let (identification, calibration) = reader.vehicle_information()?;
            Event::VehicleInformation { identification, calibration }
        }
        _ => {
            reader.clear()?;
            let mut events = Vec::new();
            if !session.progress.codes_read {
                events.push(Event::AgainstCare { breach: Breach::ClearedUnread });
            }
            events.push(Event::CodesCleared);
            return Ok(events);
        }
    }])
}

/// Values as a reader shows them; what the module does not tell stays at zero.
fn frame(values: &Values, code: Option<Code>) -> Frame {
    let shown =
        |item: LiveItem| values.get(&item.parameter()).map_or(0.0, |value| item.shown(*value));
    Frame {
        rpm: shown(LiveItem::EngineSpeed),
        load: shown(LiveItem::Load),
        speed: shown(LiveItem::RoadSpeed),
        coolant: shown(LiveItem::Coolant),
        oil: shown(LiveItem::Oil),
        supply: shown(LiveItem::Supply),
        code,
    }
}

fn cams(spec: &VehicleSpec, senses: &[CamSense]) -> Vec<CamData> {
    spec.valves
        .iter()
        .zip(senses)
        .map(|(valve, cam)| CamData {
            valve: valve.id.clone(),
            wanted: cam.wanted_deg.round(),
            actual: cam.actual_deg.round(),
            duty: cam.duty_percent.round(),
        })
        .collect()
}

fn readiness(shown: StatusShown) -> Event {
    let StatusShown { status, counters } = shown;
    let counter = |parameter| counters.get(&parameter).copied();
    Event::Readiness {
        lamp: status.commands_lamp,
        stored: status.codes,
        groups: status.readiness,
        counters: CounterReading {
            warm_ups: counter(Parameter::WarmUps),
            distance: counter(Parameter::DistanceSinceClear),
            time: counter(Parameter::TimeSinceClear),
            lamp_distance: counter(Parameter::DistanceWithLamp),
            lamp_time: counter(Parameter::TimeWithLamp),
        },
    }
}

/// Results by what this vehicle's list says of their numbers; one that is not in the list tells
/// nothing.
fn test_results(spec: &VehicleSpec, results: &[TestResult]) -> Event {
    let reading = |numbered: &NumberedTest| {
        let is_it = |it: &&TestResult| it.monitor == numbered.monitor && it.test == numbered.test;
        let result = results.iter().find(is_it)?;
        let figures = result.scaled().map(|scaled| TestFigures {
            value: numbered.figure(scaled.value),
            least: numbered.figure(scaled.least),
            most: numbered.figure(scaled.most),
            passes: scaled.passes(),
        });
        Some(TestReading { code: numbered.code, measure: numbered.measure, figures })
    };
    Event::TestResults { results: numbered_tests(spec).iter().filter_map(reading).collect() }
}

/// Has the module switch a valve: what is heard, or what the reader shows in the place of an answer.
pub(super) fn switch(
    session: &mut Session,
    valve: &Id,
    on: bool,
) -> Result<Result<Option<Click>, Event>, VehicleError> {
    let place = session.briefing.vehicle.valves.iter().position(|place| place.id == *valve);
    // A number that no module has stands for a valve that no vehicle has.
    let place = place.unwrap_or(usize::MAX);
    match CodeReader::on(&mut session.vehicle).switch(place, on) {
        Ok(click) => Ok(Ok(click)),
        Err(not_read) => unanswered(session, not_read).map(Err),
    }
}

pub(super) fn command(session: &mut Session, valve: &Id, on: bool) -> Outcome {
    if session.briefing.vehicle.valve(valve).is_none() {
        return Ok(Err(Refusal::NoSuchPlace(valve.clone())));
    }
    let time = minutes(reader_time(session));
    let mut events = Vec::new();
    match switch(session, valve, on)? {
        Ok(click) => {
            events.push(Event::Commanded { valve: valve.clone(), on });
            events.extend(click.map(|click| Event::Heard {
                valve: valve.clone(),
                current_on: on,
                click,
            }));
        }
        Err(no_answer) => events.push(no_answer),
    }
    events.push(time);
    Ok(Ok(events))
}
