//! The module's side: a request in, a reply out.
//!
//! One module is on the link and the reader asks it by itself, so it gives the reason for what it
//! does not do; to a request that goes out to every module, silence would be the answer.

use crate::control_module::code_report::CodeReport;
use crate::control_module::freeze_frame::FreezeFrame;
use crate::control_module::known_code::Driver;
use crate::control_module::module::ControlModule;
use crate::control_module::services::code_list::{self, CodeState};
use crate::control_module::services::monitor_status::MonitorStatus;
use crate::control_module::services::own_data::{self, CamSense};
use crate::control_module::services::parameter::{self, FRAME_CODE, MONITOR_STATUS, Parameter};
use crate::control_module::services::reply::{NegativeReason, positive, refusal};
use crate::control_module::services::request::Request;
use crate::control_module::services::support;
use crate::control_module::services::test_result::{self, TestResult};
use crate::control_module::services::vehicle_information::{
    self as information, CALIBRATION, CALIBRATION_LENGTH, IDENTIFICATION, IDENTIFICATION_LENGTH,
    Identity,
};
use crate::control_module::verdict::Verdict;
use crate::units::{Seconds, Tick};
use std::collections::BTreeSet;

/// What the module knows when it is asked, besides its memory.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Senses<'a> {
    /// Engine, vehicle and supply.
    pub frame: FreezeFrame,
    /// Time since the engine was started; zero while it stands.
    pub run_time: Seconds,
    /// Camshafts in the order of drivers.
    pub cams: &'a [CamSense],
    /// Results of monitors, in the order of monitor and test.
    pub results: &'a [TestResult],
    /// Who it is.
    pub identity: &'a Identity,
}

/// What a request makes the module do besides answering.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Effect {
    /// Codes were cleared.
    Cleared,
    /// An output is to be switched.
    Switched {
        /// Its driver.
        driver: Driver,
        /// On, or given back and off.
        on: bool,
    },
}

/// A reply with what goes with it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Answer {
    /// The reply.
    pub bytes: Vec<u8>,
    /// What the module does.
    pub effect: Option<Effect>,
}

/// Parameters of the freeze frame that the module keeps.
const FRAME_PARAMETERS: [Parameter; 6] = [
    Parameter::Load,
    Parameter::Coolant,
    Parameter::EngineSpeed,
    Parameter::VehicleSpeed,
    Parameter::ModuleVoltage,
    Parameter::OilTemperature,
];
/// Parameters of the moment that the module tells: those of the frame and its counters.
const CURRENT_PARAMETERS: [Parameter; 12] = [
    Parameter::Load,
    Parameter::Coolant,
    Parameter::EngineSpeed,
    Parameter::VehicleSpeed,
    Parameter::RunTime,
    Parameter::DistanceWithLamp,
    Parameter::WarmUps,
    Parameter::DistanceSinceClear,
    Parameter::ModuleVoltage,
    Parameter::TimeWithLamp,
    Parameter::TimeSinceClear,
    Parameter::OilTemperature,
];

/// Data of a positive reply, or why there is none.
type Data = Result<Vec<u8>, NegativeReason>;

impl ControlModule {
    /// Answers a request; `None` while the module sleeps. Only a clear changes its memory.
    pub fn answer(&mut self, request: &[u8], senses: &Senses<'_>, tick: Tick) -> Option<Answer> {
        if !self.is_awake() {
            return None;
        }
        let request = match Request::decode(request) {
            Ok(request) => request,
            Err(refused) => {
                let bytes = refusal(refused.service, refused.reason);
                return Some(Answer { bytes, effect: None });
            }
        };
        let service = request.service();
        let mut effect = None;
        let data = match request {
            Request::CurrentData(numbers) => self.current_data(&numbers, senses),
            Request::FreezeFrame(numbers) => self.frame_data(&numbers),
            Request::StoredCodes => {
                let stored = self.read_codes().stored;
                Ok(code_list::encode(&stored.iter().map(|it| it.code).collect::<Vec<_>>()))
            }
            Request::PendingCodes => {
                let pending = self.read_codes().pending;
                Ok(code_list::encode(&pending.iter().map(|it| it.code).collect::<Vec<_>>()))
            }
            Request::PermanentCodes => Ok(code_list::encode(&self.read_codes().permanent)),
            Request::CodeStates => Ok(code_list::encode_states(&states(&self.read_codes()))),
            Request::Clear => match self.clear_codes(tick) {
                Ok(_) => {
                    effect = Some(Effect::Cleared);
                    Ok(Vec::new())
                }
                Err(_) => Err(NegativeReason::ConditionsNotCorrect),
            },
            Request::TestResults(monitor) => test_results(monitor, senses.results),
            Request::VehicleInformation(item) => vehicle_information(item, senses.identity),
            Request::OwnData(number) => own_data::camshaft_place(number)
                .and_then(|place| senses.cams.get(place))
                .map(|cam| own_data::encode_cam(number, cam))
                .ok_or(NegativeReason::OutOfRange),
            Request::OwnControl(number, state) => match own_data::valve_place(number) {
                Some(place) if place < senses.cams.len() => {
                    if senses.frame.engine_speed.0 > 0.0 {
                        Err(NegativeReason::ConditionsNotCorrect)
                    } else {
                        let on = state == Some(true);
                        effect = Some(Effect::Switched { driver: Driver(place), on });
                        Ok(own_data::encode_control(number, state))
                    }
                }
                _ => Err(NegativeReason::OutOfRange),
            },
        };
        let bytes = match data {
            Ok(data) => positive(service, &data),
            Err(reason) => refusal(service.byte(), reason),
        };
        Some(Answer { bytes, effect })
    }

    fn current_data(&self, numbers: &[u8], senses: &Senses<'_>) -> Data {
        let report = self.read_codes();
        let counters = self.counters();
        let supported = parameter::supported(&CURRENT_PARAMETERS, &[MONITOR_STATUS]);
        collect(numbers, &supported, &[], |number| {
            if number == MONITOR_STATUS {
                let stored = report.stored.len();
                let status = MonitorStatus::new(report.commands_lamp, stored, &report.readiness);
                return Some(status.encode().to_vec());
            }
            let parameter = Parameter::of_number(number)?;
            let value = match parameter {
                Parameter::RunTime => senses.run_time.0.floor(),
                Parameter::WarmUps => counters.warm_ups_since_clear.into(),
                Parameter::DistanceSinceClear => counters.kilometres_since_clear.into(),
                Parameter::TimeSinceClear => counters.minutes_since_clear.into(),
                Parameter::DistanceWithLamp => counters.kilometres_with_lamp.into(),
                Parameter::TimeWithLamp => counters.minutes_with_lamp.into(),
                _ => of_frame(parameter, &senses.frame)?,
            };
            Some(parameter.encode(value))
        })
    }

    fn frame_data(&self, numbers: &[u8]) -> Data {
        let stored = self.freeze_frame();
        let supported = parameter::supported(&FRAME_PARAMETERS, &[FRAME_CODE]);
        collect(numbers, &supported, &[0], |number| {
            if number == FRAME_CODE {
                let owner = stored.map_or(0, |(code, _)| code.0);
                return Some(owner.to_be_bytes().to_vec());
            }
            let parameter = Parameter::of_number(number)?;
            let (_, frame) = stored?;
            of_frame(parameter, &frame).map(|value| parameter.encode(value))
        })
    }
}

/// One value of a frame \[the parameter's unit\].
fn of_frame(parameter: Parameter, frame: &FreezeFrame) -> Option<f64> {
    match parameter {
        Parameter::Load => Some(frame.load * 100.0),
        Parameter::Coolant => Some(frame.coolant.0),
        Parameter::EngineSpeed => Some(frame.engine_speed.0),
        Parameter::VehicleSpeed => Some(frame.vehicle_speed.0),
        Parameter::ModuleVoltage => Some(frame.supply.0),
        Parameter::OilTemperature => Some(frame.oil.0),
        _ => None,
    }
}

/// The parameters that are supported, each behind its number and `between`; those that are not are
/// left out of the reply, and a request for nothing else is refused.
fn collect(
    numbers: &[u8],
    supported: &BTreeSet<u8>,
    between: &[u8],
    value: impl Fn(u8) -> Option<Vec<u8>>,
) -> Data {
    let mut data = Vec::new();
    for number in numbers {
        let bytes = if support::asks_for_map(*number) {
            let map = support::map(*number, supported);
            (*number == 0 || map != [0; 4]).then(|| map.to_vec())
        } else {
            Some(*number).filter(|number| supported.contains(number)).and_then(&value)
        };
        if let Some(bytes) = bytes {
            data.push(*number);
            data.extend_from_slice(between);
            data.extend(bytes);
        }
    }
    if data.is_empty() { Err(NegativeReason::OutOfRange) } else { Ok(data) }
}

fn test_results(monitor: u8, results: &[TestResult]) -> Data {
    if support::asks_for_map(monitor) {
        let monitors = results.iter().map(|result| result.monitor).collect();
        return collect(&[monitor], &monitors, &[], |_| None);
    }
    let of_monitor: Vec<_> =
        results.iter().filter(|result| result.monitor == monitor).copied().collect();
    if of_monitor.is_empty() {
        return Err(NegativeReason::OutOfRange);
    }
    Ok(test_result::encode(&of_monitor))
}

fn vehicle_information(item: u8, identity: &Identity) -> Data {
    match item {
        IDENTIFICATION => {
            Ok(information::encode(item, &identity.identification, IDENTIFICATION_LENGTH))
        }
        CALIBRATION => Ok(information::encode(item, &identity.calibration, CALIBRATION_LENGTH)),
        0 => {
            let items = BTreeSet::from([IDENTIFICATION, CALIBRATION]);
            collect(&[item], &items, &[], |_| None)
        }
        _ => Err(NegativeReason::OutOfRange),
    }
}

/// The state of every code that has one.
fn states(report: &CodeReport) -> Vec<CodeState> {
    let decided = report.decisions.iter().map(|finding| finding.code);
    let stored = report.stored.iter().chain(&report.pending).map(|it| it.code);
    let codes: BTreeSet<_> = decided.chain(stored).collect();
    codes
        .into_iter()
        .map(|code| {
            let decision = report.decisions.iter().find(|finding| finding.code == code);
            CodeState {
                code,
                fails: decision.is_some_and(|finding| finding.verdict == Verdict::Failed),
                is_pending: report.pending.iter().any(|it| it.code == code),
                is_confirmed: report.stored.iter().any(|it| it.code == code),
                has_run: decision.is_some(),
            }
        })
        .collect()
}
