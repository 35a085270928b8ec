//! Reads a step from a line of text.
//!
//! A step is a verb, mostly a place, and details. Case does not matter, any word may be shortened
//! as long as it stays clear, and what follows `#` is a comment. Names of places come from the
//! vehicle at hand, so a mistyped one is found before a step is taken.

use super::parse_problem::{Expected, ParseProblem};
use super::place::PlaceKind;
use super::predicted::{code_or, predict};
use super::step_words::{self, METER_FUSE};
use super::typed_number;
use super::verbs::Verb;
use super::word_reader::WordReader;
use crate::faults::{FaultKind, FaultName};
use crate::instruments::code_reader::LiveItem;
use crate::instruments::multimeter::MeterFunction;
use crate::instruments::scope::Signal;
use crate::physics::oil::Grade;
use crate::session::setup::Briefing;
use crate::session::step::{
    CustomerTopic, Ending, HintGrade, KeyPosition, Manner, Section, ServiceTopic, Step,
};
use crate::vehicle::spec::Id;
use std::collections::BTreeSet;

/// Reads one line; `None` when it is empty or only a comment.
///
/// # Errors
/// [`ParseProblem`] with the first word that cannot stand where it stands.
pub fn parse(line: &str, briefing: &Briefing) -> Result<Option<Step>, ParseProblem> {
    let mut reader = WordReader::new(line);
    if reader.is_at_end() {
        return Ok(None);
    }
    let step = read_step(&mut reader, briefing)?;
    reader.finish()?;
    Ok(Some(step))
}

/// The words that can complete the last word of a line, or follow it when the line ends in a
/// space. Names come in the order of the alphabet, other words in that of the work.
#[must_use]
pub fn complete(line: &str, briefing: &Briefing) -> Vec<String> {
    let begun = line.chars().rev().take_while(|c| !c.is_whitespace()).map(char::len_utf8).sum();
    let (before, begun) = line.split_at(line.len() - usize::min(begun, line.len()));
    let begun = begun.to_lowercase();
    if before.split_whitespace().any(|word| word.starts_with('#')) {
        return Vec::new();
    }
    let mut reader = WordReader::new(before);
    // Whether the line is right so far shows in what could follow: nothing, where it is not.
    let _ = read_step(&mut reader, briefing);
    if !reader.is_at_end() {
        return Vec::new();
    }
    let mut seen = BTreeSet::new();
    reader
        .into_followers()
        .into_iter()
        .filter(|word| word.to_lowercase().starts_with(&begun) && seen.insert(word.clone()))
        .collect()
}

/// Subjects that the customer can be asked about.
const CUSTOMER_TOPICS: [CustomerTopic; 4] =
    [CustomerTopic::Symptom, CustomerTopic::When, CustomerTopic::Service, CustomerTopic::Repairs];
/// Subjects of service information.
const SERVICE_TOPICS: [ServiceTopic; 5] = [
    ServiceTopic::Wiring,
    ServiceTopic::Limits,
    ServiceTopic::Procedure,
    ServiceTopic::Parts,
    ServiceTopic::Codes,
];
/// Positions of the key.
const KEY_POSITIONS: [KeyPosition; 4] =
    [KeyPosition::Off, KeyPosition::On, KeyPosition::Start, KeyPosition::Crank];
/// Functions of the meter.
const METER_FUNCTIONS: [MeterFunction; 3] =
    [MeterFunction::Volts, MeterFunction::Ohms, MeterFunction::Amps];
/// Signals that a scope watches.
const SIGNALS: [Signal; 2] = [Signal::CoilCurrent, Signal::DriverPin];
/// Parts of the record.
const SECTIONS: [Section; 3] = [Section::Concern, Section::Cause, Section::Correction];
/// Endings.
const ENDINGS: [Ending; 5] =
    [Ending::Repaired, Ending::NoFaultFound, Ending::Referred, Ending::Unsafe, Ending::Declined];

type Parsed<T> = Result<T, ParseProblem>;

fn read_step(reader: &mut WordReader<'_>, briefing: &Briefing) -> Parsed<Step> {
    let verb = reader.choose(&Verb::ALL.map(|verb| (verb.word(), verb)))?;
    let mut place = |kind: PlaceKind| reader.place(kind, briefing);
    Ok(match verb {
        Verb::Dipstick => Step::Dipstick,
        Verb::Look => Step::Look { place: place(PlaceKind::InView)? },
        Verb::Remove => Step::Remove { part: place(PlaceKind::Part)?, manner: Manner::Careful },
        Verb::Pull => Step::Remove { part: place(PlaceKind::Part)?, manner: Manner::Pulled },
        Verb::Unplug => Step::Unplug { connector: place(PlaceKind::Connector)? },
        Verb::Plug => Step::Plug { connector: place(PlaceKind::Connector)? },
        Verb::Drive => drive(reader, briefing)?,
        Verb::Clean => Step::Clean { valve: place(PlaceKind::Valve)? },
        Verb::Mend => Step::Mend { element: place(PlaceKind::Mendable)? },
        Verb::Fit => {
            let valve = place(PlaceKind::Valve)?;
            Step::Fit { valve, part_number: place(PlaceKind::PartNumber)? }
        }
        Verb::Refit => refit(reader, briefing)?,
        Verb::Measure => measure(reader, briefing)?,
        Verb::Power => power(reader, briefing)?,
        Verb::Command => {
            let valve = place(PlaceKind::Valve)?;
            Step::Command { valve, on: reader.choose(&[("on", true), ("off", false)])? }
        }
        Verb::Read => read(reader)?,
        Verb::Ask => ask(reader)?,
        Verb::Consult => {
            let topics = SERVICE_TOPICS.map(|topic| (step_words::service_topic(topic), topic));
            Step::Consult { topic: reader.choose(&topics)? }
        }
        Verb::Key => {
            let positions = KEY_POSITIONS.map(|at| (step_words::key_position(at), at));
            Step::Key { position: reader.choose(&positions)? }
        }
        Verb::Zero => reader
            .choose(&[("leads", true), ("clamp", false)])
            .map(|leads| if leads { Step::ZeroLeads } else { Step::ZeroClamp })?,
        Verb::Wiggle => wiggle(reader, briefing)?,
        Verb::Lamp => {
            let tip = place(PlaceKind::TestPoint)?;
            Step::TestLamp { tip, clip: place(PlaceKind::TestPoint)? }
        }
        Verb::Clamp => Step::Clamp { wire: place(PlaceKind::Wire)? },
        Verb::Scope => {
            let signals = SIGNALS.map(|it| (step_words::signal(it), it));
            let signal = reader.choose(&signals)?;
            Step::Scope { signal, valve: reader.place(PlaceKind::Valve, briefing)? }
        }
        Verb::Replace => replace(reader, briefing)?,
        Verb::Clear => reader.expect("codes").map(|()| Step::ClearCodes)?,
        Verb::Change => {
            reader.expect("oil")?;
            let grades = Grade::ALL.map(|grade| (grade.word(), grade));
            Step::ChangeOil { grade: reader.choose(&grades)? }
        }
        Verb::Gauge => gauge(reader)?,
        Verb::Top => reader.expect("up").map(|()| Step::TopUpOil)?,
        Verb::Suspect => suspect(reader, briefing)?,
        Verb::Predict => predict(reader)?,
        Verb::Commit => commit(reader, briefing)?,
        Verb::Note => Step::Note { text: text(reader)? },
        Verb::Hint => {
            let grades = HintGrade::ALL.map(|grade| (grade.word(), grade));
            Step::AskHint { grade: reader.choose(&grades)? }
        }
        Verb::Write => write(reader)?,
        Verb::Report => Step::ReportCode { code: code_or(reader, &[], |code| code)? },
        Verb::Hand => hand_over(reader)?,
    })
}

/// What the verb `read` can read.
#[derive(Debug, Clone, Copy)]
enum Readable {
    JobSheet,
    Codes,
    FreezeFrame,
    LiveData,
    Readiness,
    TestResults,
    VehicleInformation,
}

fn read(reader: &mut WordReader<'_>) -> Parsed<Step> {
    let what = reader.choose(&[
        ("job-sheet", Readable::JobSheet),
        ("codes", Readable::Codes),
        ("freeze-frame", Readable::FreezeFrame),
        ("live-data", Readable::LiveData),
        ("readiness", Readable::Readiness),
        ("test-results", Readable::TestResults),
        ("vehicle-information", Readable::VehicleInformation),
    ])?;
    Ok(match what {
        Readable::JobSheet => Step::ReadJobSheet,
        Readable::Codes => Step::ReadCodes,
        Readable::FreezeFrame => Step::ReadFreezeFrame,
        Readable::LiveData => live_data(reader)?,
        Readable::Readiness => Step::ReadReadiness,
        Readable::TestResults => Step::ReadTestResults,
        Readable::VehicleInformation => Step::ReadVehicleInformation,
    })
}

/// Everything, or what is chosen, each thing once.
fn live_data(reader: &mut WordReader<'_>) -> Parsed<Step> {
    let mut left: Vec<_> =
        LiveItem::ALL.into_iter().map(|item| (step_words::live_item(item), item)).collect();
    let mut items = Vec::new();
    while let Some(item) = reader.choose_if_any(&left)? {
        left.retain(|(_, other)| *other != item);
        items.push(item);
    }
    Ok(if items.is_empty() { Step::ReadLiveData } else { Step::ReadLiveItems { items } })
}

fn ask(reader: &mut WordReader<'_>) -> Parsed<Step> {
    let topics = CUSTOMER_TOPICS.map(|topic| (step_words::customer_topic(topic), Some(topic)));
    let asked: Vec<_> = topics.into_iter().chain([("approval", None)]).collect();
    let topic = reader.choose(&asked)?;
    Ok(topic.map_or(Step::AskApproval, |topic| Step::AskCustomer { topic }))
}

fn refit(reader: &mut WordReader<'_>, briefing: &Briefing) -> Parsed<Step> {
    let part = reader.place(PlaceKind::Part, briefing)?;
    let new_seal = reader.choose_if_any(&[("with", ())])?.is_some();
    if new_seal {
        reader.expect("new-seal")?;
    }
    Ok(Step::Refit { part, new_seal })
}

fn measure(reader: &mut WordReader<'_>, briefing: &Briefing) -> Parsed<Step> {
    let functions = METER_FUNCTIONS.map(|it| (step_words::meter_function(it), it));
    let function = reader.choose(&functions)?;
    let red = reader.place(PlaceKind::TestPoint, briefing)?;
    let black = reader.place(PlaceKind::TestPoint, briefing)?;
    let from_front = reader.choose_if_any(&[("from-front", ())])?.is_some();
    Ok(if from_front {
        Step::MeasureFromFront { function, red, black }
    } else {
        Step::Measure { function, red, black }
    })
}

fn wiggle(reader: &mut WordReader<'_>, briefing: &Briefing) -> Parsed<Step> {
    let place = reader.place(PlaceKind::Wiggled, briefing)?;
    let functions = METER_FUNCTIONS.map(|it| (step_words::meter_function(it), it));
    let function = reader.choose(&functions)?;
    let red = reader.place(PlaceKind::TestPoint, briefing)?;
    let black = reader.place(PlaceKind::TestPoint, briefing)?;
    Ok(Step::Wiggle { place, function, red, black })
}

fn replace(reader: &mut WordReader<'_>, briefing: &Briefing) -> Parsed<Step> {
    // The meter's own fuse is no place of the vehicle, so it stands beside them by name.
    let mut places = PlaceKind::Replaceable.places(briefing);
    places.push(Id::from(METER_FUSE));
    let element = reader.place_among(PlaceKind::Replaceable, &places, briefing)?;
    Ok(if element.as_str() == METER_FUSE {
        Step::ReplaceMeterFuse
    } else {
        Step::Replace { element }
    })
}

/// What the verb `gauge` can do.
#[derive(Debug, Clone, Copy)]
enum GaugeWork {
    Fit,
    Remove,
    Read(Option<u16>),
}

fn gauge(reader: &mut WordReader<'_>) -> Parsed<Step> {
    let speeds: Vec<(String, u16)> =
        step_words::HELD_RPM.iter().map(|rpm| (rpm.to_string(), *rpm)).collect();
    let mut choices = vec![
        ("fit", GaugeWork::Fit),
        ("remove", GaugeWork::Remove),
        ("idle", GaugeWork::Read(None)),
    ];
    choices.extend(speeds.iter().map(|(word, rpm)| (word.as_str(), GaugeWork::Read(Some(*rpm)))));
    Ok(match reader.choose(&choices)? {
        GaugeWork::Fit => Step::FitGauge,
        GaugeWork::Remove => Step::RemoveGauge,
        GaugeWork::Read(rpm) => {
            let warm = reader.choose_if_any(&[("warm", ())])?.is_some();
            Step::ReadGauge { rpm, warm }
        }
    })
}

fn power(reader: &mut WordReader<'_>, briefing: &Briefing) -> Parsed<Step> {
    let valve = reader.place(PlaceKind::Valve, briefing)?;
    reader.expect("for")?;
    let (seconds, has_unit) = typed_number::seconds(reader)?;
    let follows = if has_unit {
        reader.choose_if_any(&[("reversed", true)])?
    } else {
        reader.choose_if_any(&[("s", false), ("seconds", false), ("reversed", true)])?
    };
    let reversed = match follows {
        // The unit stood apart; only now can the polarity follow.
        Some(false) => reader.choose_if_any(&[("reversed", ())])?.is_some(),
        Some(true) => true,
        None => false,
    };
    Ok(Step::Power { valve, seconds, reversed })
}

fn drive(reader: &mut WordReader<'_>, briefing: &Briefing) -> Parsed<Step> {
    let route = reader.place(PlaceKind::Route, briefing)?;
    if reader.choose_if_any(&[("for", ())])?.is_none() {
        return Ok(Step::Drive { route, stop_after: None });
    }
    let (seconds, has_unit) = typed_number::seconds(reader)?;
    if !has_unit {
        reader.choose_if_any(&[("s", ()), ("seconds", ())])?;
    }
    Ok(Step::Drive { route, stop_after: Some(seconds) })
}

/// The kinds of fault that this vehicle has places for.
fn kinds(faults: &[FaultName]) -> Vec<(&'static str, FaultKind)> {
    let has_place = |kind: &FaultKind| faults.iter().any(|fault| fault.kind == *kind);
    FaultKind::ALL.into_iter().filter(has_place).map(|kind| (kind.word(), kind)).collect()
}

/// The place of a fault whose kind has been read.
fn fault(
    reader: &mut WordReader<'_>,
    kind: FaultKind,
    faults: &[FaultName],
    briefing: &Briefing,
) -> Parsed<FaultName> {
    let places: Vec<_> =
        faults.iter().filter(|fault| fault.kind == kind).map(|fault| fault.place.clone()).collect();
    let place = reader.place_among(PlaceKind::FaultPlace, &places, briefing)?;
    Ok(FaultName { kind, place })
}

fn suspect(reader: &mut WordReader<'_>, briefing: &Briefing) -> Parsed<Step> {
    let faults = crate::faults::places(&briefing.vehicle);
    let kind = reader.choose(&kinds(&faults))?;
    let fault = fault(reader, kind, &faults, briefing)?;
    Ok(Step::Suspect { fault, percent: typed_number::percent(reader)? })
}

fn commit(reader: &mut WordReader<'_>, briefing: &Briefing) -> Parsed<Step> {
    let faults = crate::faults::places(&briefing.vehicle);
    let kinds = kinds(&faults).into_iter().map(|(word, kind)| (word, Some(kind)));
    let choices: Vec<_> = kinds.chain([("no-fault", None)]).collect();
    let fault = match reader.choose(&choices)? {
        Some(kind) => Some(fault(reader, kind, &faults, briefing)?),
        None => None,
    };
    Ok(Step::Commit { fault })
}

fn write(reader: &mut WordReader<'_>) -> Parsed<Step> {
    let section = reader.choose(&SECTIONS.map(|part| (step_words::section(part), part)))?;
    Ok(Step::Write { section, text: text(reader)? })
}

/// What runs to the line's end.
fn text(reader: &mut WordReader<'_>) -> Parsed<String> {
    let text = reader.rest();
    if text.is_empty() {
        return Err(reader.missing(Expected::Text));
    }
    Ok(step_words::unwritten(text))
}

fn hand_over(reader: &mut WordReader<'_>) -> Parsed<Step> {
    reader.expect("over")?;
    let endings = ENDINGS.map(|ending| (step_words::ending(ending), ending));
    let ending = reader.choose_if_any(&endings)?.unwrap_or(Ending::Repaired);
    Ok(Step::HandOver { ending })
}
