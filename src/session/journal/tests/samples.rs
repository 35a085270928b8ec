//! Every kind of step, and numbers whose digits are easily lost.

use crate::control_module::code::Code;
use crate::faults::{FaultKind, FaultName};
use crate::instruments::code_reader::LiveItem;
use crate::instruments::multimeter::{Display, MeterFunction, Prefix};
use crate::instruments::scope::Signal;
use crate::session::event::{Event, Frame, Refusal};
use crate::session::step::{
    Bound, CustomerTopic, Ending, HintGrade, KeyPosition, Manner, Section, ServiceTopic, Step,
};
use crate::vehicle::assembly::Obstacle;

/// One step of every kind in the pinned file of version 1.
pub(super) fn every_kind_of_step() -> Vec<Step> {
    let id = || "intake-valve".into();
    let fault = FaultName { kind: FaultKind::CorrodedPin, place: id() };
    vec![
        Step::ReadJobSheet,
        Step::AskCustomer { topic: CustomerTopic::When },
        Step::Consult { topic: ServiceTopic::Limits },
        Step::Look { place: id() },
        Step::Dipstick,
        Step::Remove { part: id(), manner: Manner::Pulled },
        Step::Refit { part: id(), new_seal: true },
        Step::Unplug { connector: id() },
        Step::Plug { connector: id() },
        Step::Key { position: KeyPosition::Start },
        Step::Measure { function: MeterFunction::Amps, red: id(), black: id() },
        Step::ZeroLeads,
        Step::Power { valve: id(), seconds: u16::MAX, reversed: true },
        Step::Command { valve: id(), on: false },
        Step::ReadCodes,
        Step::ReadFreezeFrame,
        Step::ReadLiveData,
        Step::ClearCodes,
        Step::Drive { route: id() },
        Step::Suspect { fault: fault.clone(), percent: 100 },
        Step::Predict { least: -0.0, most: Bound::OverLimit },
        Step::Predict { least: f64::MIN_POSITIVE, most: Bound::Value(f64::MAX) },
        Step::Predict { least: 5e-324, most: Bound::Value(0.1 + 0.2) },
        Step::Commit { fault: Some(fault) },
        Step::Commit { fault: None },
        Step::AskApproval,
        Step::Fit { valve: id(), part_number: id() },
        Step::Clean { valve: id() },
        Step::Mend { element: id() },
        Step::TopUpOil,
        Step::Write { section: Section::Concern, text: "\u{2028}\0\"\\\r\n\u{1F527}".to_owned() },
        Step::HandOver { ending: Ending::Repaired },
    ]
}

/// One step of every electrical kind that the pinned file of version 1 was written without.
pub(super) fn electrical_steps() -> Vec<Step> {
    let id = || "intake-valve".into();
    vec![
        Step::MeasureFromFront { function: MeterFunction::Ohms, red: id(), black: id() },
        Step::Wiggle { place: id(), function: MeterFunction::Volts, red: id(), black: id() },
        Step::TestLamp { tip: id(), clip: id() },
        Step::Clamp { wire: id() },
        Step::ZeroClamp,
        Step::Scope { signal: Signal::DriverPin, valve: id() },
        Step::ReplaceMeterFuse,
        Step::Replace { element: id() },
    ]
}

/// Kinds of steps that came after the corpus of version 1 was written.
pub(super) fn steps_since_the_corpus() -> Vec<Step> {
    vec![
        Step::ReadLiveItems { items: LiveItem::ALL.to_vec() },
        Step::ReadReadiness,
        Step::ReadTestResults,
        Step::ReadVehicleInformation,
        Step::AskHint { grade: HintGrade::Kind },
    ]
}

/// Events with nested kinds, absent values and numbers.
pub(super) fn varied_events() -> Vec<Event> {
    let frame = Frame {
        rpm: 750.0,
        load: 1e21,
        speed: 0.0,
        coolant: -7.5,
        oil: 0.1 + 0.2,
        supply: 14.2,
        code: Some(Code(0x0010)),
    };
    vec![
        Event::Refused { reason: Refusal::Obstacle(Obstacle::Behind(vec!["cover".into()])) },
        Event::Refused { reason: Refusal::TooMuchConfidence(300) },
        Event::FreezeFrame { frame: None },
        Event::FreezeFrame { frame: Some(frame) },
        Event::Reading {
            function: MeterFunction::Volts,
            red: "a".into(),
            black: "b".into(),
            display: Display::OverLimit,
            tolerance: 0.0,
        },
        Event::Reading {
            function: MeterFunction::Amps,
            red: "a".into(),
            black: "b".into(),
            display: Display::Value { value: -0.0021, decimals: 3, prefix: Prefix::One },
            tolerance: 2.5e-7,
        },
        Event::Codes {
            stored: vec![Code(0x0010)],
            pending: vec![],
            permanent: vec![Code(0xC100)],
            lamp: true,
            complete: vec![],
        },
        Event::Committed { fault: None },
    ]
}
