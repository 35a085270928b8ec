//! One event of every kind, so that every sentence is said once.

use super::sample::code;
use crate::control_module::code_report::Readiness;
use crate::control_module::known_code::ReadinessGroup;
use crate::control_module::test_result::Measure;
use crate::faults::{FaultKind, FaultName};
use crate::instruments::code_reader::LiveItem;
use crate::instruments::multimeter::{Display, MeterFunction, Prefix};
use crate::instruments::scope::{Capture, Cursors, DipSeen, Plateau, Signal};
use crate::instruments::test_lamp::Glow;
use crate::physics::oil::Grade;
use crate::physics::stroke::Click;
use crate::session::event::{
    Breach, CamData, CamDrive, CounterReading, Event, Frame, Hazard, LiveValue, NoAnswer, OilFeel,
    OilLook, Refusal, Sight, TestFigures, TestReading,
};
use crate::session::step::{CustomerTopic, Ending, HintGrade, KeyPosition, Section, ServiceTopic};
use crate::session::toolbox::Tool;
use crate::units::{Minutes, Money};
use crate::vehicle::assembly::Obstacle;
use crate::vehicle::run_record::Idling;
use crate::vehicle::spec::{Care, Id};

/// Lists one value of every variant of an enum, and refuses to compile when one is left out.
macro_rules! every {
    ($name:ident: $type:ty { $($pattern:pat => $value:expr),* $(,)? }) => {
        pub(super) fn $name() -> Vec<$type> {
            // The match has no arm for the rest, so a new variant has to be added here.
            let _ = |value: &$type| match value { $($pattern => {}),* };
            vec![$({
                let value = $value;
                assert!(matches!(value, $pattern), "{value:?}");
                value
            }),*]
        }
    };
}

fn valve() -> Id {
    Id::from("intake-valve")
}

fn connector() -> Id {
    Id::from("intake-connector")
}

fn fault() -> FaultName {
    FaultName { kind: FaultKind::OpenCoil, place: valve() }
}

fn frame() -> Frame {
    Frame {
        rpm: 2_412.0,
        load: 35.0,
        speed: 62.0,
        coolant: 91.0,
        oil: 96.0,
        supply: 14.1,
        code: Some(code("P0011")),
    }
}

every! { obstacles: Obstacle {
    Obstacle::Behind(_) => Obstacle::Behind(vec![Id::from("engine-cover"), Id::from("air-duct")]),
    Obstacle::StillOff(_) => Obstacle::StillOff(vec![valve()]),
    Obstacle::AlreadyOff => Obstacle::AlreadyOff,
    Obstacle::InPlace => Obstacle::InPlace,
    Obstacle::Plugged(_) => Obstacle::Plugged(connector()),
} }

every! { plain_refusals: Refusal {
    Refusal::Obstacle(_) => Refusal::Obstacle(Obstacle::InPlace),
    Refusal::NoSuchPlace(_) => Refusal::NoSuchPlace(Id::from("rocker-gasket")),
    Refusal::StillFitted(_) => Refusal::StillFitted(valve()),
    Refusal::CodeNotRead(_) => Refusal::CodeNotRead(code("P0456")),
    Refusal::DoesNotFit(_) => Refusal::DoesNotFit(Id::from("hd-4470-1")),
    Refusal::EngineRuns => Refusal::EngineRuns,
    Refusal::EngineStands => Refusal::EngineStands,
    Refusal::NoGauge => Refusal::NoGauge,
    Refusal::GaugeFitted => Refusal::GaugeFitted,
    Refusal::CannotRun(_) => Refusal::CannotRun(vec![valve()]),
    Refusal::KeyOff => Refusal::KeyOff,
    Refusal::KeyMustBeOff => Refusal::KeyMustBeOff,
    Refusal::PowerForbidden => Refusal::PowerForbidden,
    Refusal::TooMuchConfidence(_) => Refusal::TooMuchConfidence(120),
    Refusal::Finished => Refusal::Finished,
    Refusal::OutOfRange => Refusal::OutOfRange,
    Refusal::NoHints => Refusal::NoHints,
    Refusal::NoSuchTool(_) => Refusal::NoSuchTool(Tool::Scope),
    Refusal::TimeIsUp => Refusal::TimeIsUp,
} }

every! { cares: Care {
    Care::KeyOff => Care::KeyOff,
    Care::BreakSealLoose => Care::BreakSealLoose,
    Care::NewSeal => Care::NewSeal,
    Care::Torque => Care::Torque,
    Care::Hot => Care::Hot,
} }

every! { plain_breaches: Breach {
    Breach::KeyOnWhileUnplugging(_) => Breach::KeyOnWhileUnplugging(connector()),
    Breach::OhmsOnLiveCircuit => Breach::OhmsOnLiveCircuit,
    Breach::OhmsWhilePlugged(_) => Breach::OhmsWhilePlugged(connector()),
    Breach::AmpsAcrossSource => Breach::AmpsAcrossSource,
    Breach::FrontProbed(_) => Breach::FrontProbed(connector()),
    Breach::TestLampOnModule(_) => Breach::TestLampOnModule(valve()),
    Breach::Part(_, _) => Breach::Part(valve(), Care::Hot),
    Breach::PoweredTooLong(_) => Breach::PoweredTooLong(valve()),
    Breach::ReversedPolarity(_) => Breach::ReversedPolarity(valve()),
    Breach::RunWithoutOil => Breach::RunWithoutOil,
    Breach::DrivenUnchecked => Breach::DrivenUnchecked,
    Breach::DrivenIncomplete => Breach::DrivenIncomplete,
    Breach::ClearedUnread => Breach::ClearedUnread,
    Breach::WrongOilGrade => Breach::WrongOilGrade,
    Breach::RepairBeforeDiagnosis => Breach::RepairBeforeDiagnosis,
    Breach::RepairWithoutApproval => Breach::RepairWithoutApproval,
    Breach::RepairBeyondApproval => Breach::RepairBeyondApproval,
} }

every! { hazards: Hazard {
    Hazard::Hot => Hazard::Hot,
    Hazard::MovingParts => Hazard::MovingParts,
    Hazard::BatteryCurrent => Hazard::BatteryCurrent,
    Hazard::Road => Hazard::Road,
    Hazard::Fumes => Hazard::Fumes,
    Hazard::UsedOil => Hazard::UsedOil,
} }

every! { sights: Sight {
    Sight::Sound => Sight::Sound,
    Sight::Corrosion => Sight::Corrosion,
    Sight::SpreadTerminal => Sight::SpreadTerminal,
    Sight::BlownFuse => Sight::BlownFuse,
    Sight::RubbedThrough => Sight::RubbedThrough,
    Sight::Sludge => Sight::Sludge,
    Sight::TornSeal => Sight::TornSeal,
    Sight::UsedSeal => Sight::UsedSeal,
    Sight::SpoolSticks => Sight::SpoolSticks,
    Sight::SpoolSeized => Sight::SpoolSeized,
    Sight::Hidden => Sight::Hidden,
} }

every! { clicks: Click {
    Click::Clear => Click::Clear,
    Click::Dull => Click::Dull,
    Click::None => Click::None,
} }

every! { no_answers: NoAnswer {
    NoAnswer::KeyOff => NoAnswer::KeyOff,
    NoAnswer::ReaderDark => NoAnswer::ReaderDark,
    NoAnswer::NoReply => NoAnswer::NoReply,
    NoAnswer::NotOffered => NoAnswer::NotOffered,
    NoAnswer::EngineRuns => NoAnswer::EngineRuns,
} }

every! { readiness_groups: ReadinessGroup {
    ReadinessGroup::Misfire => ReadinessGroup::Misfire,
    ReadinessGroup::FuelSystem => ReadinessGroup::FuelSystem,
    ReadinessGroup::Components => ReadinessGroup::Components,
    ReadinessGroup::Catalyst => ReadinessGroup::Catalyst,
    ReadinessGroup::FuelVapour => ReadinessGroup::FuelVapour,
    ReadinessGroup::OxygenSensors => ReadinessGroup::OxygenSensors,
    ReadinessGroup::ValveTiming => ReadinessGroup::ValveTiming,
} }

every! { measures: Measure {
    Measure::TimeOffTarget => Measure::TimeOffTarget,
    Measure::HuntingShare => Measure::HuntingShare,
    Measure::ResponseTime => Measure::ResponseTime,
    Measure::TimeWrongAtRest => Measure::TimeWrongAtRest,
    Measure::TimeOfCircuitFault => Measure::TimeOfCircuitFault,
    Measure::TimeOfSupplyFault => Measure::TimeOfSupplyFault,
    Measure::TimeOfOilPressureFault => Measure::TimeOfOilPressureFault,
} }

every! { qualities: Idling {
    Idling::Smooth => Idling::Smooth,
    Idling::Rough => Idling::Rough,
    Idling::Stalls => Idling::Stalls,
    Idling::DoesNotStart => Idling::DoesNotStart,
} }

every! { looks: OilLook {
    OilLook::Fresh => OilLook::Fresh,
    OilLook::Dark => OilLook::Dark,
    OilLook::Sludge => OilLook::Sludge,
} }

every! { feels: OilFeel {
    OilFeel::Usual => OilFeel::Usual,
    OilFeel::Thin => OilFeel::Thin,
    OilFeel::Thick => OilFeel::Thick,
} }

every! { customer_topics: CustomerTopic {
    CustomerTopic::Symptom => CustomerTopic::Symptom,
    CustomerTopic::When => CustomerTopic::When,
    CustomerTopic::Service => CustomerTopic::Service,
    CustomerTopic::Repairs => CustomerTopic::Repairs,
} }

every! { service_topics: ServiceTopic {
    ServiceTopic::Wiring => ServiceTopic::Wiring,
    ServiceTopic::Limits => ServiceTopic::Limits,
    ServiceTopic::Procedure => ServiceTopic::Procedure,
    ServiceTopic::Parts => ServiceTopic::Parts,
    ServiceTopic::Codes => ServiceTopic::Codes,
} }

every! { key_positions: KeyPosition {
    KeyPosition::Off => KeyPosition::Off,
    KeyPosition::On => KeyPosition::On,
    KeyPosition::Start => KeyPosition::Start,
    KeyPosition::Crank => KeyPosition::Crank,
} }

every! { sections: Section {
    Section::Concern => Section::Concern,
    Section::Cause => Section::Cause,
    Section::Correction => Section::Correction,
} }

every! { endings: Ending {
    Ending::Repaired => Ending::Repaired,
    Ending::NoFaultFound => Ending::NoFaultFound,
    Ending::Referred => Ending::Referred,
    Ending::Unsafe => Ending::Unsafe,
    Ending::Declined => Ending::Declined,
} }

every! { plain_events: Event {
    Event::Spent { .. } => Event::Spent { minutes: Minutes(12), money: Money(0) },
    Event::Waited { .. } => Event::Waited { minutes: Minutes(45) },
    Event::Refused { .. } => Event::Refused { reason: Refusal::KeyOff },
    Event::Caution { .. } => Event::Caution { hazard: Hazard::Hot },
    Event::AgainstCare { .. } => Event::AgainstCare { breach: Breach::ClearedUnread },
    Event::JobSheetShown => Event::JobSheetShown,
    Event::Answered { .. } => Event::Answered { topic: CustomerTopic::When },
    Event::Consulted { .. } => Event::Consulted { topic: ServiceTopic::Wiring },
    Event::Seen { .. } => Event::Seen { place: connector(), sight: Sight::Corrosion },
    Event::OilSeen { .. } => oil_seen(0.5, false, OilLook::Dark),
    Event::Removed { .. } => Event::Removed { part: valve() },
    Event::Refitted { .. } => Event::Refitted { part: valve() },
    Event::SealTorn { .. } => Event::SealTorn { valve: valve() },
    Event::SealLeaks { .. } => Event::SealLeaks { valve: valve() },
    Event::Unplugged { .. } => Event::Unplugged { connector: connector() },
    Event::Plugged { .. } => Event::Plugged { connector: connector() },
    Event::KeyTurned { .. } => Event::KeyTurned {
        position: KeyPosition::On,
        engine_lamp: true,
        oil_lamp: true,
    },
    Event::Idles { .. } => Event::Idles { quality: Idling::Smooth },
    Event::Reading { .. } => reading(
        Display::Value { value: 8.6, decimals: 1, prefix: Prefix::One },
        MeterFunction::Ohms,
    ),
    Event::Watched { .. } => Event::Watched {
        place: connector(),
        function: MeterFunction::Volts,
        red: Id::from("intake-valve-feed"),
        black: Id::from("battery-minus"),
        least: Display::Value { value: 0.0, decimals: 3, prefix: Prefix::One },
        most: Display::Value { value: 12.48, decimals: 2, prefix: Prefix::One },
        jumped: true,
        tolerance: 0.003,
    },
    Event::LampGlows { .. } => Event::LampGlows {
        tip: Id::from("intake-valve-feed"),
        clip: Id::from("battery-minus"),
        glow: Glow::Dim,
    },
    Event::Clamped { .. } => Event::Clamped {
        wire: Id::from("intake-feed-wire"),
        display: Display::Value { value: 1.24, decimals: 2, prefix: Prefix::One },
        tolerance: 0.05,
    },
    Event::ClampZeroed => Event::ClampZeroed,
    Event::Captured { .. } => captured(Cursors::Current {
        dip: Some(DipSeen { peak_a: 0.89, depth_a: 0.24, at_ms: 7.4 }),
        end_a: 1.095,
    }),
    Event::MeterFuseReplaced => Event::MeterFuseReplaced,
    Event::Replaced { .. } => Event::Replaced { element: Id::from("fuse-3") },
    Event::GaugeFitted => Event::GaugeFitted,
    Event::GaugeRemoved => Event::GaugeRemoved,
    Event::GaugeRead { .. } => gauge_read(None, 1.1, 0.0),
    Event::MeterFuseBlew => Event::MeterFuseBlew,
    Event::LeadsZeroed => Event::LeadsZeroed,
    Event::LeadFuseBlew => Event::LeadFuseBlew,
    Event::Heard { .. } => Event::Heard { valve: valve(), current_on: true, click: Click::Dull },
    Event::NoAnswer { .. } => Event::NoAnswer { reason: NoAnswer::NoReply },
    Event::Commanded { .. } => Event::Commanded { valve: valve(), on: true },
    Event::Codes { .. } => Event::Codes {
        stored: vec![code("P0010"), code("P1234")],
        pending: Vec::new(),
        permanent: vec![code("P0010")],
        lamp: true,
        complete: vec![code("P0010")],
    },
    Event::FreezeFrame { .. } => Event::FreezeFrame { frame: Some(frame()) },
    Event::LiveData { .. } => Event::LiveData {
        frame: Frame { code: None, ..frame() },
        cams: vec![CamData { valve: valve(), wanted: 20.0, actual: 3.25, duty: 71.0 }],
    },
    Event::LiveItems { .. } => Event::LiveItems {
        values: LiveItem::ALL.map(|item| LiveValue { item, value: Some(14.1) }).to_vec(),
    },
    Event::Readiness { .. } => Event::Readiness {
        lamp: true,
        stored: 2,
        groups: readiness_groups()
            .into_iter()
            .map(|group| Readiness { group, is_complete: group == ReadinessGroup::Misfire })
            .collect(),
        counters: CounterReading {
            warm_ups: Some(3.0),
            distance: Some(61.0),
            time: Some(75.0),
            lamp_distance: Some(40.0),
            lamp_time: Some(52.0),
        },
    },
    Event::TestResults { .. } => Event::TestResults {
        results: measures()
            .into_iter()
            .flat_map(|measure| {
                let figures = |value, passes| TestFigures { value, least: 0.0, most: 0.5, passes };
                [None, Some(figures(0.25, true)), Some(figures(1.5, false))]
                    .map(|figures| TestReading { code: code("P0011"), measure, figures })
            })
            .collect(),
    },
    Event::VehicleInformation { .. } => Event::VehicleInformation {
        identification: "INVENTEDHARRO2016".to_owned(),
        calibration: "FW-HARRO-2016".to_owned(),
    },
    Event::CodesCleared => Event::CodesCleared,
    Event::Driven { .. } => Event::Driven {
        route: Id::from("hill-road"),
        engine_lamp: false,
        oil_lamp: true,
        quality: Idling::Rough,
        cams: vec![CamDrive { valve: valve(), mean_error: 0.44, furthest: 38.0 }],
        decided: vec![code("P0011"), code("P0012")],
        stopped_after: None,
    },
    Event::Suspected { .. } => Event::Suspected { fault: fault(), percent: 60 },
    Event::Noted => Event::Noted,
    Event::Predicted => Event::Predicted,
    Event::PredictionChecked { .. } => {
        Event::PredictionChecked { met: false, other_quantity: false }
    },
    Event::SignChecked { .. } => Event::SignChecked { met: false },
    Event::Committed { .. } => Event::Committed { fault: Some(fault()) },
    Event::HintAsked { .. } => Event::HintAsked { grade: HintGrade::Area },
    Event::Approved => Event::Approved,
    Event::ApprovedUpTo { .. } => Event::ApprovedUpTo { money: Money(15_000) },
    Event::MoreDeclined { .. } => Event::MoreDeclined { left: Money(3_250) },
    Event::Fitted { .. } => Event::Fitted { valve: valve(), part_number: Id::from("hd-4470-1") },
    Event::Cleaned { .. } => Event::Cleaned { valve: valve() },
    Event::Mended { .. } => Event::Mended { element: Id::from("intake-control-wire") },
    Event::OilFilled { .. } => Event::OilFilled { tenths: 13 },
    Event::OilChanged { .. } => Event::OilChanged { grade: Grade::Sae5W30, drained_tenths: 41 },
    Event::Written { .. } => Event::Written { section: Section::Cause },
    Event::CodeReported { .. } => Event::CodeReported { code: code("P0456") },
    Event::HandedOver { .. } => Event::HandedOver { ending: Ending::Repaired },
} }

fn gauge_read(rpm: Option<u16>, bar: f64, swing: f64) -> Event {
    Event::GaugeRead { rpm, bar, swing, tolerance: 0.16 }
}

fn oil_seen(level: f64, dry: bool, look: OilLook) -> Event {
    Event::OilSeen { level, dry, look, feel: OilFeel::Usual, smells_of_fuel: false }
}

pub(super) fn reading(display: Display, function: MeterFunction) -> Event {
    Event::Reading {
        function,
        red: Id::from("intake-valve-feed"),
        black: Id::from("intake-valve-control"),
        display,
        tolerance: 0.1,
    }
}

fn captured(cursors: Cursors) -> Event {
    let signal = match cursors {
        Cursors::Current { .. } => Signal::CoilCurrent,
        Cursors::Pin { .. } => Signal::DriverPin,
    };
    let points = (0..200).map(|number| f64::from(number) * 0.01).collect();
    let capture = Capture { signal, interval_s: 0.000_6, points, cursors };
    Event::Captured { valve: valve(), capture }
}

/// Every look, feel and smell of oil at every level.
fn every_oil() -> Vec<Event> {
    let mut events = Vec::new();
    for look in looks() {
        for (level, dry) in [(-0.8, true), (-0.8, false), (0.0, false), (0.2, false), (0.75, false)]
        {
            events.push(oil_seen(level, dry, look));
        }
        events.push(oil_seen(1.0, false, look));
        events.push(oil_seen(1.4, false, look));
        for (feel, smells_of_fuel) in feels().into_iter().flat_map(|it| [(it, false), (it, true)]) {
            let (level, dry) = (1.0, false);
            events.push(Event::OilSeen { level, dry, look, feel, smells_of_fuel });
        }
    }
    events
}

/// Every event with every variant of what it carries.
pub(super) fn every_event() -> Vec<Event> {
    let mut events = plain_events();
    let reasons =
        plain_refusals().into_iter().chain(obstacles().into_iter().map(Refusal::Obstacle));
    events.extend(reasons.map(|reason| Event::Refused { reason }));
    events.push(Event::Refused { reason: Refusal::CannotRun(Vec::new()) });
    events.extend(hazards().into_iter().map(|hazard| Event::Caution { hazard }));
    let broken = cares().into_iter().map(|care| Breach::Part(valve(), care));
    let breaches = plain_breaches().into_iter().chain(broken);
    events.extend(breaches.map(|breach| Event::AgainstCare { breach }));
    events.extend(customer_topics().into_iter().map(|topic| Event::Answered { topic }));
    events.extend(service_topics().into_iter().map(|topic| Event::Consulted { topic }));
    events.extend(sights().into_iter().map(|sight| Event::Seen { place: connector(), sight }));
    events.extend(every_oil());
    for current_on in [true, false] {
        let heard = |click| Event::Heard { valve: valve(), current_on, click };
        events.extend(clicks().into_iter().map(heard));
    }
    events.extend(no_answers().into_iter().map(|reason| Event::NoAnswer { reason }));
    for quality in qualities() {
        events.push(Event::Idles { quality });
        events.push(Event::Driven {
            route: Id::from("town"),
            engine_lamp: true,
            oil_lamp: false,
            quality,
            cams: Vec::new(),
            decided: Vec::new(),
            stopped_after: Some(40),
        });
    }
    for position in key_positions() {
        for (engine_lamp, oil_lamp) in [(false, false), (false, true), (true, false), (true, true)]
        {
            events.push(Event::KeyTurned { position, engine_lamp, oil_lamp });
        }
    }
    let plateau = Plateau { volts: 13.2, lasts_ms: 9.4 };
    events.extend([
        captured(Cursors::Current { dip: None, end_a: 0.0 }),
        captured(Cursors::Pin { closed_v: 0.4, plateau: Some(plateau), open_v: 12.4 }),
        captured(Cursors::Pin { closed_v: 0.0, plateau: None, open_v: 2.5 }),
    ]);
    for glow in [Glow::Dark, Glow::Dim, Glow::Bright] {
        let (tip, clip) = (Id::from("battery-plus"), Id::from("battery-minus"));
        events.push(Event::LampGlows { tip, clip, glow });
    }
    events.push(Event::Watched {
        place: connector(),
        function: MeterFunction::Ohms,
        red: Id::from("intake-valve-feed"),
        black: Id::from("battery-minus"),
        least: Display::OverLimit,
        most: Display::OverLimit,
        jumped: false,
        tolerance: 0.0,
    });
    for function in [MeterFunction::Volts, MeterFunction::Ohms, MeterFunction::Amps] {
        events.push(reading(Display::OverLimit, function));
        for prefix in [Prefix::Milli, Prefix::One, Prefix::Kilo, Prefix::Mega] {
            events.push(reading(Display::Value { value: 1.0, decimals: 3, prefix }, function));
        }
    }
    events.push(Event::Codes {
        stored: Vec::new(),
        pending: vec![code("P0440")],
        permanent: Vec::new(),
        lamp: false,
        complete: Vec::new(),
    });
    events.extend([
        gauge_read(Some(2_500), 3.9, 0.6),
        Event::Commanded { valve: valve(), on: false },
        Event::FreezeFrame { frame: None },
        Event::LiveItems { values: vec![LiveValue { item: LiveItem::Oil, value: None }] },
        Event::Readiness {
            lamp: false,
            stored: 0,
            groups: Vec::new(),
            counters: CounterReading::default(),
        },
        Event::FreezeFrame { frame: Some(Frame { code: None, ..frame() }) },
        Event::PredictionChecked { met: true, other_quantity: false },
        Event::PredictionChecked { met: false, other_quantity: true },
        Event::SignChecked { met: true },
        Event::Committed { fault: None },
        Event::OilFilled { tenths: 0 },
    ]);
    for kind in FaultKind::ALL {
        let fault = FaultName { kind, place: valve() };
        events.push(Event::Suspected { fault, percent: 10 });
    }
    events.extend(sections().into_iter().map(|section| Event::Written { section }));
    events.extend(endings().into_iter().map(|ending| Event::HandedOver { ending }));
    events
}
