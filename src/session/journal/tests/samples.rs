//! Every kind of step, and numbers whose digits are easily lost.

use crate::control_module::code::Code;
use crate::faults::{FaultKind, FaultName};
use crate::instruments::code_reader::LiveItem;
use crate::instruments::multimeter::{Display, MeterFunction, Prefix};
use crate::instruments::scope::Signal;
use crate::instruments::test_lamp::Glow;
use crate::physics::oil::Grade;
use crate::physics::stroke::Click;
use crate::session::event::{Event, Frame, Refusal};
use crate::session::step::{
    Bound, CustomerTopic, Ending, HintGrade, KeyPosition, Manner, Quantity, Section, ServiceTopic,
    Sign, Step,
};
use crate::vehicle::assembly::Obstacle;

/// A prediction as version 1 has it, without a unit.
pub(super) const fn predicted(least: f64, most: Bound) -> Step {
    Step::Predict { least, most, of: None }
}

/// One step of every kind in the pinned file of version 1.
pub(super) fn steps_of_version_1() -> Vec<Step> {
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
        Step::Drive { route: id(), stop_after: None },
        Step::Suspect { fault: fault.clone(), percent: 100 },
        predicted(-0.0, Bound::OverLimit),
        predicted(f64::MIN_POSITIVE, Bound::Value(f64::MAX)),
        predicted(5e-324, Bound::Value(0.1 + 0.2)),
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

/// One step of every kind in the pinned file of the version that is written.
pub(super) fn every_step() -> Vec<Step> {
    let id = || "intake-valve".into();
    let mut steps = steps_of_version_1();
    steps.extend([
        Step::MeasureFromFront { function: MeterFunction::Ohms, red: id(), black: id() },
        Step::Wiggle { place: id(), function: MeterFunction::Volts, red: id(), black: id() },
        Step::TestLamp { tip: id(), clip: id() },
        Step::Clamp { wire: id() },
        Step::ZeroClamp,
        Step::Scope { signal: Signal::DriverPin, valve: id() },
        Step::ReplaceMeterFuse,
        Step::Replace { element: id() },
        Step::FitGauge,
        Step::ReadGauge { rpm: Some(2_500), warm: true },
        Step::RemoveGauge,
        Step::ChangeOil { grade: Grade::Sae20W50 },
        Step::ReadLiveItems { items: LiveItem::ALL.to_vec() },
        Step::ReadReadiness,
        Step::ReadTestResults,
        Step::ReadVehicleInformation,
        Step::Predict { least: 0.25, most: Bound::Value(1.0), of: Some(Quantity::Volts) },
        Step::Predict { least: 1e9, most: Bound::OverLimit, of: Some(Quantity::Ohms) },
        Step::Predict { least: -0.5, most: Bound::Value(0.5), of: Some(Quantity::Amps) },
        Step::Predict { least: 1.2, most: Bound::Value(2.0), of: Some(Quantity::Bar) },
        Step::PredictSign { sign: Sign::Click(Click::Dull) },
        Step::PredictSign { sign: Sign::Glow(Glow::Dim) },
        Step::PredictSign { sign: Sign::Code(Code(0x0010)) },
        Step::PredictSign { sign: Sign::NoCodes },
        Step::ReportCode { code: Code(0x0456) },
        Step::AskHint { grade: HintGrade::Kind },
    ]);
    steps
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
        Event::PredictionChecked { met: false, other_quantity: false },
        Event::PredictionChecked { met: false, other_quantity: true },
        Event::SignChecked { met: true },
        Event::CodeReported { code: Code(0x0456) },
    ]
}
