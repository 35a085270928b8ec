//! The code reader: it sends requests over the diagnostic socket and decodes what comes back.
//!
//! It knows no more than the bytes say. Without power it is dark; with power and no answer it says
//! that there is no answer, and cannot know whether the module sleeps, lacks its supply or sits
//! behind a broken wire.

use crate::control_module::code::Code;
use crate::control_module::services::monitor_status::MonitorStatus;
use crate::control_module::services::own_data::{self, CamSense};
use crate::control_module::services::parameter::{self, FRAME_CODE, MONITOR_STATUS, Parameter};
use crate::control_module::services::reply::{self, NegativeReason, ReplyFault};
use crate::control_module::services::request::{MOST_FRAME_PARAMETERS, MOST_PARAMETERS, Request};
use crate::control_module::services::support;
use crate::control_module::services::test_result::{self, TestResult};
use crate::control_module::services::vehicle_information::{
    self as information, CALIBRATION, IDENTIFICATION,
};
use crate::control_module::services::{Service, code_list};
use crate::physics::stroke::Click;
use crate::vehicle::diagnostic_link::LinkReply;
use crate::vehicle::error::VehicleError;
use crate::vehicle::spec::Id;
use crate::vehicle::whole::Vehicle;
use serde::{Deserialize, Serialize};
use std::collections::{BTreeMap, BTreeSet};

/// Why the reader shows nothing.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum NoReading {
    /// Its display is dark: no power at the socket.
    Dark,
    /// It has power, and nothing answers.
    Silence,
    /// The module refused, with its reason.
    Refused(NegativeReason),
    /// What came back is no answer to what was asked.
    Garbled,
}

impl From<ReplyFault> for NoReading {
    fn from(fault: ReplyFault) -> Self {
        match fault {
            ReplyFault::Refused { reason, .. } => Self::Refused(reason),
            ReplyFault::OtherService { .. } | ReplyFault::Malformed { .. } => Self::Garbled,
        }
    }
}

/// A reading that was not got: the reader's own reason, or a vehicle that cannot be simulated.
#[derive(Debug, Clone, PartialEq)]
pub enum NotRead {
    /// The reader shows why.
    Shown(NoReading),
    /// The vehicle cannot be simulated.
    Vehicle(VehicleError),
}

impl From<VehicleError> for NotRead {
    fn from(error: VehicleError) -> Self {
        Self::Vehicle(error)
    }
}

impl From<ReplyFault> for NotRead {
    fn from(fault: ReplyFault) -> Self {
        Self::Shown(fault.into())
    }
}

/// Something that can be chosen from live data.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum LiveItem {
    /// Engine speed [rpm].
    EngineSpeed,
    /// Load [%].
    Load,
    /// Road speed [km/h].
    RoadSpeed,
    /// Coolant [°C].
    Coolant,
    /// Oil [°C].
    Oil,
    /// Supply of the module [V].
    Supply,
    /// Time since the engine was started [s].
    RunTime,
}

impl LiveItem {
    /// Every item, in the order in which a reader lists them.
    pub const ALL: [Self; 7] = [
        Self::EngineSpeed,
        Self::Load,
        Self::RoadSpeed,
        Self::Coolant,
        Self::Oil,
        Self::Supply,
        Self::RunTime,
    ];

    /// The parameter that is asked for.
    #[must_use]
    pub const fn parameter(self) -> Parameter {
        match self {
            Self::EngineSpeed => Parameter::EngineSpeed,
            Self::Load => Parameter::Load,
            Self::RoadSpeed => Parameter::VehicleSpeed,
            Self::Coolant => Parameter::Coolant,
            Self::Oil => Parameter::OilTemperature,
            Self::Supply => Parameter::ModuleVoltage,
            Self::RunTime => Parameter::RunTime,
        }
    }

    /// A value as the reader's display rounds it: volts to a tenth, everything else whole.
    #[must_use]
    pub fn shown(self, value: f64) -> f64 {
        match self {
            Self::Supply => (value * 10.0).round() / 10.0,
            _ => value.round(),
        }
    }
}

/// All codes of one reading.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct CodesShown {
    /// Confirmed codes.
    pub stored: Vec<Code>,
    /// Pending codes.
    pub pending: Vec<Code>,
    /// Permanent codes.
    pub permanent: Vec<Code>,
    /// The module asks for the lamp.
    pub lamp: bool,
    /// Codes whose monitors have come to a decision since the clear.
    pub ran: Vec<Code>,
}

/// Readiness with the counters that belong to it.
#[derive(Debug, Clone, PartialEq)]
pub struct StatusShown {
    /// Lamp, number of stored codes, readiness by group.
    pub status: MonitorStatus,
    /// Counters that the module has.
    pub counters: BTreeMap<Parameter, f64>,
}

/// Values by parameter.
pub type Values = BTreeMap<Parameter, f64>;

/// Counters that stand beside readiness.
const COUNTERS: [Parameter; 5] = [
    Parameter::WarmUps,
    Parameter::DistanceSinceClear,
    Parameter::TimeSinceClear,
    Parameter::DistanceWithLamp,
    Parameter::TimeWithLamp,
];
/// Values of a freeze frame.
const FRAME: [Parameter; 6] = [
    Parameter::EngineSpeed,
    Parameter::Load,
    Parameter::VehicleSpeed,
    Parameter::Coolant,
    Parameter::OilTemperature,
    Parameter::ModuleVoltage,
];

/// A code reader that is plugged into a vehicle.
#[derive(Debug)]
pub struct CodeReader<'a> {
    vehicle: &'a mut Vehicle,
    /// What the valve that was switched last let be heard.
    heard: Option<(Id, Click)>,
}

impl<'a> CodeReader<'a> {
    /// A reader on a vehicle's socket.
    #[must_use]
    pub const fn on(vehicle: &'a mut Vehicle) -> Self {
        Self { vehicle, heard: None }
    }

    /// Asks, and returns the data of a positive reply.
    fn ask(&mut self, request: &Request) -> Result<Vec<u8>, NotRead> {
        let exchange = self.vehicle.exchange(&request.encode())?;
        self.heard = exchange.heard;
        match exchange.reply {
            LinkReply::Dark => Err(NotRead::Shown(NoReading::Dark)),
            LinkReply::Silence => Err(NotRead::Shown(NoReading::Silence)),
            LinkReply::Message(bytes) => Ok(reply::data(request.service(), &bytes)?.to_vec()),
        }
    }

    fn listed(&mut self, request: &Request) -> Result<Vec<Code>, NotRead> {
        let data = self.ask(request)?;
        Ok(code_list::decode(request.service(), &data)?)
    }

    fn status(&mut self) -> Result<MonitorStatus, NotRead> {
        let data = self.ask(&Request::CurrentData(vec![MONITOR_STATUS]))?;
        let parts = parameter::parts(Service::CurrentData, &data)?;
        let part = parts.iter().find(|part| part.number == MONITOR_STATUS);
        Ok(MonitorStatus::decode(part.map_or(&[], |part| &part.bytes))?)
    }

    /// Stored, pending and permanent codes, the lamp, and which monitors have run.
    ///
    /// # Errors
    /// [`NotRead`] when the reader shows nothing.
    pub fn codes(&mut self) -> Result<CodesShown, NotRead> {
        let status = self.status()?;
        let stored = self.listed(&Request::StoredCodes)?;
        let pending = self.listed(&Request::PendingCodes)?;
        let permanent = self.listed(&Request::PermanentCodes)?;
        let states = self.ask(&Request::CodeStates)?;
        let ran = code_list::decode_states(&states)?
            .into_iter()
            .filter(|state| state.has_run)
            .map(|state| state.code)
            .collect();
        Ok(CodesShown { stored, pending, permanent, lamp: status.commands_lamp, ran })
    }

    /// The freeze frame with the code that owns it; `None` where none is stored.
    ///
    /// # Errors
    /// [`NotRead`] when the reader shows nothing.
    pub fn freeze_frame(&mut self) -> Result<Option<(Code, Values)>, NotRead> {
        let data = self.ask(&Request::FreezeFrame(vec![FRAME_CODE]))?;
        let parts = parameter::parts(Service::FreezeFrame, &data)?;
        let owner = parts.first().map_or(&[][..], |part| &part.bytes);
        let &[high, low] = owner else {
            return Err(NotRead::Shown(NoReading::Garbled));
        };
        let code = Code(u16::from_be_bytes([high, low]));
        if code.0 == 0 {
            return Ok(None);
        }
        let mut values = Values::new();
        for few in FRAME.chunks(MOST_FRAME_PARAMETERS) {
            let numbers = few.iter().map(|parameter| parameter.number()).collect();
            let data = self.ask(&Request::FreezeFrame(numbers))?;
            values.extend(parameter::values(Service::FreezeFrame, &data)?);
        }
        Ok(Some((code, values)))
    }

    /// Values of the moment; those that the module does not have are left out.
    ///
    /// # Errors
    /// [`NotRead`] when the reader shows nothing.
    pub fn current(&mut self, parameters: &[Parameter]) -> Result<Values, NotRead> {
        let mut values = Values::new();
        for few in parameters.chunks(MOST_PARAMETERS) {
            let numbers = few.iter().map(|parameter| parameter.number()).collect();
            match self.ask(&Request::CurrentData(numbers)) {
                Ok(data) => values.extend(parameter::values(Service::CurrentData, &data)?),
                Err(NotRead::Shown(NoReading::Refused(NegativeReason::OutOfRange))) => {}
                Err(other) => return Err(other),
            }
        }
        Ok(values)
    }

    /// The camshafts, as many as the module has.
    ///
    /// # Errors
    /// [`NotRead`] when the reader shows nothing.
    pub fn camshafts(&mut self) -> Result<Vec<CamSense>, NotRead> {
        let mut cams = Vec::new();
        loop {
            let number = own_data::camshaft(cams.len());
            match self.ask(&Request::OwnData(number)) {
                Ok(data) => cams.push(own_data::decode_cam(number, &data)?),
                Err(NotRead::Shown(NoReading::Refused(NegativeReason::OutOfRange))) => {
                    return Ok(cams);
                }
                Err(other) => return Err(other),
            }
        }
    }

    /// Lamp, number of codes, readiness, and the counters since the clear.
    ///
    /// # Errors
    /// [`NotRead`] when the reader shows nothing.
    pub fn readiness(&mut self) -> Result<StatusShown, NotRead> {
        let status = self.status()?;
        let counters = self.current(&COUNTERS)?;
        Ok(StatusShown { status, counters })
    }

    /// The results of every monitor that the module lists, those that have not run among them.
    ///
    /// # Errors
    /// [`NotRead`] when the reader shows nothing.
    pub fn test_results(&mut self) -> Result<Vec<TestResult>, NotRead> {
        let mut results = Vec::new();
        for monitor in self.monitors()? {
            let data = self.ask(&Request::TestResults(monitor))?;
            results.extend(test_result::decode(&data)?);
        }
        Ok(results)
    }

    /// The monitors that the module lists, map by map.
    fn monitors(&mut self) -> Result<BTreeSet<u8>, NotRead> {
        let mut monitors = BTreeSet::new();
        let mut base = 0;
        loop {
            let data = self.ask(&Request::TestResults(base))?;
            let &[number, a, b, c, d] = &data[..] else {
                return Err(NotRead::Shown(NoReading::Garbled));
            };
            if number != base {
                return Err(NotRead::Shown(NoReading::Garbled));
            }
            let mut named = support::numbers(base, [a, b, c, d]);
            let next = base.checked_add(support::SPAN).filter(|next| named.remove(next));
            monitors.extend(named);
            match next {
                Some(next) => base = next,
                None => return Ok(monitors),
            }
        }
    }

    /// Identification and calibration.
    ///
    /// # Errors
    /// [`NotRead`] when the reader shows nothing.
    pub fn vehicle_information(&mut self) -> Result<(String, String), NotRead> {
        let identification = self.ask(&Request::VehicleInformation(IDENTIFICATION))?;
        let identification = information::decode(IDENTIFICATION, &identification)?;
        let calibration = self.ask(&Request::VehicleInformation(CALIBRATION))?;
        Ok((identification, information::decode(CALIBRATION, &calibration)?))
    }

    /// Clears codes.
    ///
    /// # Errors
    /// [`NotRead`] when the module refuses or the reader shows nothing.
    pub fn clear(&mut self) -> Result<(), NotRead> {
        self.ask(&Request::Clear).map(|_| ())
    }

    /// Has the module switch a valve, by its place among the module's drivers, and returns what is
    /// heard.
    ///
    /// # Errors
    /// [`NotRead`] when the module refuses or the reader shows nothing.
    pub fn switch(&mut self, place: usize, on: bool) -> Result<Option<Click>, NotRead> {
        let number = own_data::valve(place);
        // Off gives the output back, so that nothing stays under a reader's control.
        let state = on.then_some(true);
        let data = self.ask(&Request::OwnControl(number, state))?;
        own_data::check_control(number, state, &data)?;
        Ok(self.heard.take().map(|(_, click)| click))
    }
}
