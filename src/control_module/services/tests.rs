//! Byte vectors of others, round trips, and bytes that nobody should send.

use super::code_list::{self, CodeState};
use super::monitor_status::MonitorStatus;
use super::own_data::{self, CamSense};
use super::parameter::{self, Parameter};
use super::reply::{self, NegativeReason, ReplyFault};
use super::request::Request;
use super::test_result::{self, Scaling, TestResult, VALVE_TIMING};
use super::vehicle_information::{self as information, Identity};
use super::{Service, support};
use crate::control_module::code::Code;
use crate::control_module::code_report::Readiness;
use crate::control_module::known_code::ReadinessGroup;
use proptest::prelude::*;
use std::collections::BTreeSet;

fn value(bytes: &[u8]) -> f64 {
    let data = reply::data(Service::CurrentData, bytes).unwrap();
    let values = parameter::values(Service::CurrentData, data).unwrap();
    *values.values().next().unwrap()
}

/// `41 0C 0E 70` is 924 rpm (public documentation of a J1979 message layer), `41 05 3C` is 20 °C
/// (documentation in a package registry).
#[test]
fn published_replies_of_current_data() {
    assert_eq!(value(&[0x41, 0x0C, 0x0E, 0x70]), 924.0);
    assert_eq!(value(&[0x41, 0x05, 0x3C]), 20.0);
}

/// Ends of the ranges as SAE J1979 / ISO 15031-5 print them, read in public tables of it.
#[test]
fn published_ranges_of_parameters() {
    for (parameter, least, most) in [
        (Parameter::Load, 0.0, 100.0),
        (Parameter::Coolant, -40.0, 215.0),
        (Parameter::EngineSpeed, 0.0, 16_383.75),
        (Parameter::VehicleSpeed, 0.0, 255.0),
        (Parameter::RunTime, 0.0, 65_535.0),
        (Parameter::WarmUps, 0.0, 255.0),
        (Parameter::DistanceSinceClear, 0.0, 65_535.0),
        (Parameter::ModuleVoltage, 0.0, 65.535),
        (Parameter::OilTemperature, -40.0, 215.0),
    ] {
        let width = parameter.width();
        assert_eq!(parameter.decode(&vec![0; width]), Some(least), "{parameter:?}");
        assert_eq!(parameter.decode(&vec![0xFF; width]), Some(most), "{parameter:?}");
        // What cannot be said is told as the nearest that can.
        assert_eq!(parameter.encode(1e9), vec![0xFF; width]);
        assert_eq!(parameter.encode(-1e9), vec![0; width]);
        assert_eq!(parameter.encode(f64::NAN), vec![0; width]);
    }
}

/// Follows from the formulas.
#[test]
fn closed_form_bytes_of_values() {
    for (parameter, told, bytes) in [
        (Parameter::EngineSpeed, 750.0, vec![0x0B, 0xB8]),
        (Parameter::Coolant, 90.0, vec![0x82]),
        (Parameter::ModuleVoltage, 12.6, vec![0x31, 0x38]),
        (Parameter::ModuleVoltage, 14.3, vec![0x37, 0xDC]),
        (Parameter::DistanceSinceClear, 5.0, vec![0x00, 0x05]),
    ] {
        assert_eq!(parameter.encode(told), bytes);
        assert_eq!(parameter.decode(&bytes), Some(told));
    }
}

/// An independent open-source decoder (python-OBD, `tests/test_decoders.py`): `83 07 FF 00` is lamp
/// on, three codes, every monitor of a spark ignition engine there and complete; `00 79 03 03` is
/// lamp off, no code, compression ignition, misfire there and not complete.
#[test]
fn reference_monitor_status() {
    let status = MonitorStatus::decode(&[0x83, 0x07, 0xFF, 0x00]).unwrap();
    assert!(status.commands_lamp && !status.is_compression);
    assert_eq!(status.codes, 3);
    assert_eq!(status.readiness.len(), 7, "every group that is known here");
    assert!(status.readiness.iter().all(|ready| ready.is_complete));
    let status = MonitorStatus::decode(&[0x00, 0x79, 0x03, 0x03]).unwrap();
    assert!(!status.commands_lamp && status.is_compression);
    assert_eq!(status.codes, 0);
    let misfire = status.readiness.iter().find(|it| it.group == ReadinessGroup::Misfire).unwrap();
    assert!(!misfire.is_complete);
    assert!(status.readiness.iter().all(|it| it.group != ReadinessGroup::FuelSystem));
}

/// Bits by SAE J1979 service $01 PID $01 (from memory): components in B2 and B6, exhaust gas
/// recirculation or valve timing in C7 and D7.
#[test]
fn closed_form_monitor_status_of_this_module() {
    let ready = |group, is_complete| Readiness { group, is_complete };
    let status = MonitorStatus::new(
        true,
        2,
        &[
            ready(ReadinessGroup::Components, false),
            ready(ReadinessGroup::ValveTiming, false),
            ready(ReadinessGroup::Catalyst, true),
        ],
    );
    assert_eq!(status.encode(), [0x82, 0b0100_0100, 0b1000_0001, 0b1000_0000]);
    assert_eq!(MonitorStatus::new(false, 1_000, &[]).encode()[0], 0x7F);
}

/// Support maps of the same decoder's tests: `F0 0A A0 0F` names 1, 2, 3, 4, 13, 15, 17, 19, 29, 30,
/// 31 and 32.
#[test]
fn reference_support_map() {
    let named = support::numbers(0, [0xF0, 0x0A, 0xA0, 0x0F]);
    let expected = BTreeSet::from([1, 2, 3, 4, 13, 15, 17, 19, 29, 30, 31, 32]);
    assert_eq!(named, expected);
    assert_eq!(support::map(0, &expected), [0xF0, 0x0A, 0xA0, 0x0F]);
    // Nothing between $21 and $40 is there, but something behind it is.
    let far = BTreeSet::from([0x42]);
    assert_eq!(support::map(0x00, &far), [0, 0, 0, 1]);
    assert_eq!(support::map(0x20, &far), [0, 0, 0, 1]);
    assert_eq!(support::map(0x40, &far), [0x40, 0, 0, 0]);
    assert_eq!(support::map(0xE0, &far), [0; 4]);
}

/// The same decoder's tests: `01 04`, `80 03` and `41 23` are P0104, B0003 and C0123, and zeros fill.
#[test]
fn reference_code_list() {
    let data = [0x03, 0x01, 0x04, 0x80, 0x03, 0x41, 0x23, 0x00, 0x00];
    let codes = code_list::decode(Service::StoredCodes, &data).unwrap();
    let texts: Vec<String> = codes.iter().map(ToString::to_string).collect();
    assert_eq!(texts, ["P0104", "B0003", "C0123"]);
    assert_eq!(code_list::encode(&codes), data[..7]);
}

/// The same decoder's tests: three results of monitor $01, in volts, milliseconds and a signed ratio.
#[test]
fn reference_test_results() {
    let data = [
        0x01, 0x01, 0x0A, 0x0B, 0xB0, 0x0B, 0xB0, 0x0B, 0xB0, //
        0x01, 0x05, 0x10, 0x00, 0x48, 0x00, 0x00, 0x00, 0x64, //
        0x01, 0x85, 0x24, 0x00, 0x96, 0x00, 0x4B, 0xFF, 0xFF,
    ];
    let results = test_result::decode(&data).unwrap();
    let scaled: Vec<_> = results.iter().map(|result| result.scaled().unwrap()).collect();
    assert!((scaled[0].value - 0.365).abs() < 0.000_1, "{}", scaled[0].value);
    assert_eq!((scaled[1].value, scaled[1].least, scaled[1].most), (0.072, 0.0, 0.1));
    assert_eq!((scaled[2].value, scaled[2].least, scaled[2].most), (150.0, 75.0, 65_535.0));
    assert!(scaled.iter().all(test_result::Scaled::passes));
    assert_eq!(test_result::encode(&results), data);
}

/// Vehicle makers' service text: value and both limits are zero until the monitor has run.
#[test]
fn published_results_of_a_monitor_that_has_not_run_are_zero() {
    let result = TestResult::new(VALVE_TIMING, 0x80, Scaling::Degrees, None);
    assert_eq!(test_result::encode(&[result]), [0x35, 0x80, 0x1C, 0, 0, 0, 0, 0, 0]);
    assert!(!result.has_run());
    assert_eq!(result.scaled(), None);
    let told = Some((4.25, 0.0, 10.0));
    let run = TestResult::new(VALVE_TIMING, 0x80, Scaling::Degrees, told);
    assert_eq!(run.scaled().map(|it| (it.value, it.least, it.most)), told);
}

/// Reply bytes are the request's with bit 6 set; a negative one is `7F`, service, reason (ISO
/// 14229-1, from memory).
#[test]
fn closed_form_replies_and_refusals() {
    for service in Service::ALL {
        assert_eq!(service.reply_byte(), service.byte() + 0x40);
        assert_eq!(Service::of_byte(service.byte()), Some(service));
    }
    let refused = reply::refusal(0x04, NegativeReason::ConditionsNotCorrect);
    assert_eq!(refused, [0x7F, 0x04, 0x22]);
    assert_eq!(
        reply::data(Service::Clear, &refused),
        Err(ReplyFault::Refused { service: 4, reason: NegativeReason::ConditionsNotCorrect })
    );
    assert!(matches!(
        reply::data(Service::StoredCodes, &refused),
        Err(ReplyFault::OtherService { got: Some(0x7F), expected: 0x43 })
    ));
    assert_eq!(reply::data(Service::Clear, &[0x44]), Ok(&[][..]));
}

#[test]
fn closed_form_requests() {
    for (request, bytes) in [
        (Request::CurrentData(vec![0x0C, 0x05]), vec![0x01, 0x0C, 0x05]),
        (Request::FreezeFrame(vec![0x02]), vec![0x02, 0x02, 0x00]),
        (Request::Clear, vec![0x04]),
        (Request::TestResults(0x35), vec![0x06, 0x35]),
        (Request::PermanentCodes, vec![0x0A]),
        (Request::CodeStates, vec![0x19, 0x0A]),
        (Request::OwnControl(0x3001, Some(true)), vec![0x2F, 0x30, 0x01, 0x03, 0x01]),
        (Request::OwnControl(0x3001, None), vec![0x2F, 0x30, 0x01, 0x00]),
    ] {
        assert_eq!(request.encode(), bytes);
        assert_eq!(Request::decode(&bytes), Ok(request));
    }
    let refused = |bytes: &[u8]| Request::decode(bytes).unwrap_err().reason;
    assert_eq!(refused(&[]), NegativeReason::WrongForm);
    assert_eq!(refused(&[0x3E]), NegativeReason::ServiceNotSupported);
    assert_eq!(refused(&[0x08, 0x01]), NegativeReason::FunctionNotSupported);
    assert_eq!(refused(&[0x01]), NegativeReason::WrongForm);
    assert_eq!(refused(&[0x01, 1, 2, 3, 4, 5, 6, 7]), NegativeReason::WrongForm);
    assert_eq!(refused(&[0x02, 0x05, 0x01]), NegativeReason::OutOfRange, "another frame");
}

/// ISO 3779 forbids the letters I, O and Q in an identification of 17 characters: ours holds an I.
#[test]
fn published_an_invented_identification_can_be_no_real_one() {
    for name in ["Harrowfen Dray", "", "é", "A very long name"] {
        let identity = Identity::invented(name, 2016);
        assert_eq!(identity.identification.len(), information::IDENTIFICATION_LENGTH);
        assert!(identity.identification.contains('I'));
        assert!(identity.calibration.len() <= information::CALIBRATION_LENGTH);
        let data = information::encode(
            information::IDENTIFICATION,
            &identity.identification,
            information::IDENTIFICATION_LENGTH,
        );
        let read = information::decode(information::IDENTIFICATION, &data).unwrap();
        assert_eq!(read, identity.identification);
    }
}

fn codes() -> impl Strategy<Value = Vec<Code>> {
    proptest::collection::vec((1..=u16::MAX).prop_map(Code), 0..20)
}

proptest! {
    #[test]
    fn prop_a_value_comes_back_within_half_a_step(place in 0..12_usize, share in 0.0..1.0_f64) {
        let parameter = Parameter::ALL[place];
        let width = parameter.width();
        let least = parameter.decode(&vec![0; width]).unwrap();
        let most = parameter.decode(&vec![0xFF; width]).unwrap();
        let told = least + share * (most - least);
        let back = parameter.decode(&parameter.encode(told)).unwrap();
        prop_assert!((back - told).abs() <= 0.5 * parameter.step() * (1.0 + 1e-9), "{} {}", told, back);
        // What was told once is told the same again.
        prop_assert_eq!(parameter.encode(back), parameter.encode(told));
    }

    #[test]
    fn prop_requests_come_back(numbers in proptest::collection::vec(any::<u8>(), 1..=3),
        number in any::<u8>(), word in any::<u16>(), state in any::<Option<bool>>()) {
        for request in [
            Request::CurrentData(numbers.clone()),
            Request::FreezeFrame(numbers),
            Request::TestResults(number),
            Request::VehicleInformation(number),
            Request::OwnData(word),
            Request::OwnControl(word, state),
        ] {
            prop_assert_eq!(Request::decode(&request.encode()), Ok(request));
        }
    }

    #[test]
    fn prop_lists_come_back(codes in codes(), flags in any::<[bool; 4]>()) {
        let data = code_list::encode(&codes);
        prop_assert_eq!(code_list::decode(Service::PendingCodes, &data), Ok(codes.clone()));
        let [fails, is_pending, is_confirmed, has_run] = flags;
        let states: Vec<_> = codes
            .into_iter()
            .map(|code| CodeState { code, fails, is_pending, is_confirmed, has_run })
            .collect();
        let data = code_list::encode_states(&states);
        prop_assert_eq!(code_list::decode_states(&data), Ok(states));
    }

    #[test]
    fn prop_results_come_back(place in 0..12_usize, numbers in any::<[u16; 3]>()) {
        let scaling = Scaling::ALL[place];
        let [value, least, most] = numbers.map(|word| scaling.decode(word));
        let result = TestResult::new(0x35, 0x80, scaling, Some((value, least, most)));
        prop_assert_eq!(result.words, numbers);
        let data = test_result::encode(&[result]);
        prop_assert_eq!(test_result::decode(&data), Ok(vec![result]));
    }

    #[test]
    fn prop_camshafts_come_back(place in 0..255_usize, wanted in -300.0..300.0_f64, duty in 0.0..100.0_f64) {
        let number = own_data::camshaft(place);
        prop_assert_eq!(own_data::camshaft_place(number), Some(place));
        prop_assert_eq!(own_data::valve_place(own_data::valve(place)), Some(place));
        let cam = CamSense { wanted_deg: wanted, actual_deg: -wanted, duty_percent: duty };
        let back = own_data::decode_cam(number, &own_data::encode_cam(number, &cam)).unwrap();
        prop_assert!((back.wanted_deg - wanted).abs() < 0.005 + 1e-9);
        prop_assert!((back.actual_deg + wanted).abs() < 0.005 + 1e-9);
        prop_assert!((back.duty_percent - duty).abs() < 0.005 + 1e-9);
    }

    #[test]
    fn prop_status_comes_back(lamp in any::<bool>(), count in 0..128_usize, known in 0_u8..128, done in 0_u8..128) {
        let groups = [
            ReadinessGroup::Misfire, ReadinessGroup::FuelSystem, ReadinessGroup::Components,
            ReadinessGroup::Catalyst, ReadinessGroup::FuelVapour, ReadinessGroup::OxygenSensors,
            ReadinessGroup::ValveTiming,
        ];
        let readiness: Vec<_> = groups
            .into_iter()
            .enumerate()
            .filter(|(place, _)| known >> place & 1 == 1)
            .map(|(place, group)| Readiness { group, is_complete: done >> place & 1 == 1 })
            .collect();
        let status = MonitorStatus::new(lamp, count, &readiness);
        prop_assert_eq!(MonitorStatus::decode(&status.encode()), Ok(status));
    }

    /// Whatever a wire may carry: an answer or a fault, never a panic.
    #[test]
    fn prop_hostile_bytes_are_told(bytes in proptest::collection::vec(any::<u8>(), 0..40), place in 0..12_usize) {
        let _ = Request::decode(&bytes);
        let service = Service::ALL[place];
        let mut framed = vec![service.reply_byte()];
        framed.extend(&bytes);
        for message in [&bytes, &framed] {
            let data = reply::data(service, message).unwrap_or(&bytes);
            let _ = parameter::parts(service, data);
            let _ = parameter::values(service, data);
            let _ = MonitorStatus::decode(data);
            let _ = code_list::decode(service, data);
            let _ = code_list::decode_states(data);
            let _ = own_data::decode_cam(0x2001, data);
            let _ = own_data::check_control(0x3001, Some(true), data);
            let _ = information::decode(information::IDENTIFICATION, data);
            if let Ok(results) = test_result::decode(data) {
                for result in results {
                    let _ = result.scaled();
                }
            }
        }
    }
}
