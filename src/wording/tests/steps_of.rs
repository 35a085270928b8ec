//! Arbitrary steps of the sample vehicle.

use super::sample::briefing;
use crate::control_module::code::Code;
use crate::faults::FaultName;
use crate::instruments::code_reader::LiveItem;
use crate::instruments::multimeter::MeterFunction;
use crate::instruments::scope::Signal;
use crate::instruments::test_lamp::Glow;
use crate::physics::oil::Grade;
use crate::physics::stroke::Click;
use crate::session::step::{
    Bound, CustomerTopic, Ending, HintGrade, KeyPosition, Manner, Quantity, Section, ServiceTopic,
    Sign, Step,
};
use crate::vehicle::spec::Id;
use crate::wording::code_words::named_codes;
use crate::wording::place::PlaceKind;
use crate::wording::step_words::OVER_LIMIT_ONLY;
use proptest::prelude::*;
use proptest::sample::{select, subsequence};

fn place(kind: PlaceKind) -> impl Strategy<Value = Id> + Clone {
    select(kind.places(&briefing()))
}

fn fault() -> impl Strategy<Value = FaultName> + Clone {
    select(crate::faults::places(&briefing().vehicle))
}

fn value() -> impl Strategy<Value = f64> {
    prop_oneof![-1e7..1e8, -1.0..1.0, Just(0.0), Just(7.0)]
}

fn prediction() -> impl Strategy<Value = Step> {
    let quantities = vec![Quantity::Volts, Quantity::Ohms, Quantity::Amps, Quantity::Bar];
    (value(), value(), 0..3, select(quantities)).prop_map(|(one, other, form, of)| {
        let of = Some(of);
        match form {
            0 => Step::Predict { least: one.min(other), most: Bound::Value(one.max(other)), of },
            1 => Step::Predict { least: one, most: Bound::OverLimit, of },
            // The gauge's needle stands at its end; it says nothing like over limit.
            _ => Step::Predict {
                least: OVER_LIMIT_ONLY,
                most: Bound::OverLimit,
                of: of.filter(|of| *of != Quantity::Bar).or(Some(Quantity::Ohms)),
            },
        }
    })
}

/// Codes with a meaning, and some that have none.
fn any_code() -> impl Strategy<Value = Code> {
    prop_oneof![select(named_codes().collect::<Vec<_>>()), any::<u16>().prop_map(Code)]
}

fn sign() -> impl Strategy<Value = Step> {
    prop_oneof![
        select(vec![Click::Clear, Click::Dull, Click::None]).prop_map(Sign::Click),
        select(vec![Glow::Bright, Glow::Dim, Glow::Dark]).prop_map(Sign::Glow),
        any_code().prop_map(Sign::Code),
        Just(Sign::NoCodes),
    ]
    .prop_map(|sign| Step::PredictSign { sign })
}

fn text() -> impl Strategy<Value = String> {
    prop_oneof![
        "\\PC{0,30}",
        "[ a\"\\\\#n\n\r\t]{0,12}",
        Just("The winding is open.\nOL at the pins.".to_owned()),
    ]
}

fn without_details() -> impl Strategy<Value = Step> {
    select(vec![
        Step::ReadJobSheet,
        Step::Dipstick,
        Step::ZeroLeads,
        Step::ZeroClamp,
        Step::ReplaceMeterFuse,
        Step::ReadCodes,
        Step::ReadFreezeFrame,
        Step::ReadLiveData,
        Step::ReadReadiness,
        Step::ReadTestResults,
        Step::ReadVehicleInformation,
        Step::ClearCodes,
        Step::AskApproval,
        Step::TopUpOil,
        Step::FitGauge,
        Step::RemoveGauge,
        Step::ReadGauge { rpm: None, warm: false },
        Step::ReadGauge { rpm: Some(2_500), warm: true },
        Step::ChangeOil { grade: Grade::Sae20W50 },
    ])
}

fn chosen() -> impl Strategy<Value = Step> {
    let topics = vec![
        CustomerTopic::Symptom,
        CustomerTopic::When,
        CustomerTopic::Service,
        CustomerTopic::Repairs,
    ];
    let service = vec![
        ServiceTopic::Wiring,
        ServiceTopic::Limits,
        ServiceTopic::Procedure,
        ServiceTopic::Parts,
        ServiceTopic::Codes,
    ];
    let keys = vec![KeyPosition::Off, KeyPosition::On, KeyPosition::Start, KeyPosition::Crank];
    let endings = vec![
        Ending::Repaired,
        Ending::NoFaultFound,
        Ending::Referred,
        Ending::Unsafe,
        Ending::Declined,
    ];
    prop_oneof![
        select(topics).prop_map(|topic| Step::AskCustomer { topic }),
        select(service).prop_map(|topic| Step::Consult { topic }),
        select(keys).prop_map(|position| Step::Key { position }),
        subsequence(LiveItem::ALL.to_vec(), 1..=LiveItem::ALL.len())
            .prop_shuffle()
            .prop_map(|items| Step::ReadLiveItems { items }),
        select(endings).prop_map(|ending| Step::HandOver { ending }),
        select(HintGrade::ALL.to_vec()).prop_map(|grade| Step::AskHint { grade }),
    ]
}

fn with_places() -> impl Strategy<Value = Step> {
    let functions = vec![MeterFunction::Volts, MeterFunction::Ohms, MeterFunction::Amps];
    let points = (place(PlaceKind::TestPoint), place(PlaceKind::TestPoint));
    prop_oneof![
        place(PlaceKind::InView).prop_map(|place| Step::Look { place }),
        (place(PlaceKind::Part), select(vec![Manner::Careful, Manner::Pulled]))
            .prop_map(|(part, manner)| Step::Remove { part, manner }),
        (place(PlaceKind::Part), any::<bool>())
            .prop_map(|(part, new_seal)| Step::Refit { part, new_seal }),
        place(PlaceKind::Connector).prop_map(|connector| Step::Unplug { connector }),
        place(PlaceKind::Connector).prop_map(|connector| Step::Plug { connector }),
        (select(functions.clone()), points.clone(), any::<bool>()).prop_map(
            |(function, (red, black), from_front)| if from_front {
                Step::MeasureFromFront { function, red, black }
            } else {
                Step::Measure { function, red, black }
            }
        ),
        (place(PlaceKind::Wiggled), select(functions), points.clone()).prop_map(
            |(place, function, (red, black))| Step::Wiggle { place, function, red, black }
        ),
        points.prop_map(|(tip, clip)| Step::TestLamp { tip, clip }),
        place(PlaceKind::Wire).prop_map(|wire| Step::Clamp { wire }),
        (select(vec![Signal::CoilCurrent, Signal::DriverPin]), place(PlaceKind::Valve))
            .prop_map(|(signal, valve)| Step::Scope { signal, valve }),
        place(PlaceKind::Replaceable).prop_map(|element| Step::Replace { element }),
        (place(PlaceKind::Valve), 1..=u16::MAX, any::<bool>())
            .prop_map(|(valve, seconds, reversed)| Step::Power { valve, seconds, reversed }),
        (place(PlaceKind::Valve), any::<bool>())
            .prop_map(|(valve, on)| Step::Command { valve, on }),
        (place(PlaceKind::Route), proptest::option::of(1_u16..))
            .prop_map(|(route, stop_after)| Step::Drive { route, stop_after }),
        (place(PlaceKind::Valve), place(PlaceKind::PartNumber))
            .prop_map(|(valve, part_number)| Step::Fit { valve, part_number }),
        place(PlaceKind::Valve).prop_map(|valve| Step::Clean { valve }),
        place(PlaceKind::Mendable).prop_map(|element| Step::Mend { element }),
    ]
}

/// Any step that makes sense for the sample vehicle.
pub(super) fn any_step() -> impl Strategy<Value = Step> {
    let sections = vec![Section::Concern, Section::Cause, Section::Correction];
    prop_oneof![
        without_details(),
        chosen(),
        with_places(),
        prediction(),
        sign(),
        any_code().prop_map(|code| Step::ReportCode { code }),
        (fault(), 0u8..=100).prop_map(|(fault, percent)| Step::Suspect { fault, percent }),
        proptest::option::of(fault()).prop_map(|fault| Step::Commit { fault }),
        text().prop_map(|text| Step::Note { text }),
        (select(sections), text()).prop_map(|(section, text)| Step::Write { section, text }),
    ]
}
