//! Parameters of current data and of the freeze frame (services $01 and $02).
//!
//! Each is a whole number in one or two bytes, the higher byte first, times a step plus an offset.
//! Steps and offsets: SAE J1979 / ISO 15031-5 as printed in public tables of it; those of run time,
//! distances, times and module voltage were first written from memory and agree with such tables.

use crate::control_module::services::reply::{ReplyFault, malformed};
use crate::control_module::services::{Service, support};
use crate::numerics::whole::to_u32;
use std::collections::{BTreeMap, BTreeSet};

/// Number of the monitor status, which is no plain value: see
/// [`crate::control_module::services::monitor_status`].
pub const MONITOR_STATUS: u8 = 0x01;
/// Number of the code that owns the freeze frame (service $02): two bytes, zero for none.
pub const FRAME_CODE: u8 = 0x02;

/// A parameter with a value.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Parameter {
    /// $04: calculated load \[%\], 0 to 100.
    Load,
    /// $05: coolant temperature \[°C\], -40 to 215.
    Coolant,
    /// $0C: engine speed \[rpm\], 0 to 16383.75.
    EngineSpeed,
    /// $0D: vehicle speed \[km/h\], 0 to 255.
    VehicleSpeed,
    /// $1F: time since the engine was started \[s\], 0 to 65535.
    RunTime,
    /// $21: distance with the warning lamp on \[km\], 0 to 65535.
    DistanceWithLamp,
    /// $30: warm-ups since the codes were cleared, 0 to 255.
    WarmUps,
    /// $31: distance since the codes were cleared \[km\], 0 to 65535.
    DistanceSinceClear,
    /// $42: voltage of the control module \[V\], 0 to 65.535.
    ModuleVoltage,
    /// $4D: time with the engine running and the warning lamp on \[min\], 0 to 65535.
    TimeWithLamp,
    /// $4E: time with the engine running since the codes were cleared \[min\], 0 to 65535.
    TimeSinceClear,
    /// $5C: oil temperature \[°C\], -40 to 215.
    OilTemperature,
}

/// Bytes, step and offset of a parameter.
struct Form {
    bytes: usize,
    step: f64,
    offset: f64,
}

impl Parameter {
    /// Every parameter with a value, in the order of numbers.
    pub const ALL: [Self; 12] = [
        Self::Load,
        Self::Coolant,
        Self::EngineSpeed,
        Self::VehicleSpeed,
        Self::RunTime,
        Self::DistanceWithLamp,
        Self::WarmUps,
        Self::DistanceSinceClear,
        Self::ModuleVoltage,
        Self::TimeWithLamp,
        Self::TimeSinceClear,
        Self::OilTemperature,
    ];

    /// Its number.
    #[must_use]
    pub const fn number(self) -> u8 {
        match self {
            Self::Load => 0x04,
            Self::Coolant => 0x05,
            Self::EngineSpeed => 0x0C,
            Self::VehicleSpeed => 0x0D,
            Self::RunTime => 0x1F,
            Self::DistanceWithLamp => 0x21,
            Self::WarmUps => 0x30,
            Self::DistanceSinceClear => 0x31,
            Self::ModuleVoltage => 0x42,
            Self::TimeWithLamp => 0x4D,
            Self::TimeSinceClear => 0x4E,
            Self::OilTemperature => 0x5C,
        }
    }

    /// The parameter of a number.
    #[must_use]
    pub fn of_number(number: u8) -> Option<Self> {
        Self::ALL.into_iter().find(|parameter| parameter.number() == number)
    }

    const fn form(self) -> Form {
        match self {
            Self::Load => Form { bytes: 1, step: 100.0 / 255.0, offset: 0.0 },
            Self::Coolant | Self::OilTemperature => Form { bytes: 1, step: 1.0, offset: -40.0 },
            Self::EngineSpeed => Form { bytes: 2, step: 0.25, offset: 0.0 },
            Self::VehicleSpeed | Self::WarmUps => Form { bytes: 1, step: 1.0, offset: 0.0 },
            Self::RunTime
            | Self::DistanceWithLamp
            | Self::DistanceSinceClear
            | Self::TimeWithLamp
            | Self::TimeSinceClear => Form { bytes: 2, step: 1.0, offset: 0.0 },
            Self::ModuleVoltage => Form { bytes: 2, step: 0.001, offset: 0.0 },
        }
    }

    /// Bytes of its value.
    #[must_use]
    pub const fn width(self) -> usize {
        self.form().bytes
    }

    /// Difference between two neighbouring values \[the parameter's unit\].
    #[must_use]
    pub const fn step(self) -> f64 {
        self.form().step
    }

    /// The bytes of a value: the nearest that the form can say. Counters stop at their greatest
    /// value; what is no number becomes the least.
    #[must_use]
    pub fn encode(self, value: f64) -> Vec<u8> {
        let form = self.form();
        let most = if form.bytes == 1 { 0xFF } else { 0xFFFF };
        let whole = to_u32(((value - form.offset) / form.step).round()).min(most);
        whole.to_be_bytes()[4 - form.bytes..].to_vec()
    }

    /// The value of bytes, `None` unless there are as many as the form has.
    #[must_use]
    pub fn decode(self, bytes: &[u8]) -> Option<f64> {
        let form = self.form();
        if bytes.len() != form.bytes {
            return None;
        }
        let whole = bytes.iter().fold(0_u32, |sum, byte| sum << 8 | u32::from(*byte));
        Some(match self {
            // 2055 times 0.001 is not the number that 2.055 reads as; a quotient is.
            Self::ModuleVoltage => f64::from(whole) / 1000.0,
            Self::Load => f64::from(whole) * 100.0 / 255.0,
            _ => f64::from(whole) * form.step + form.offset,
        })
    }
}

/// One parameter in a reply.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Answered {
    /// Its number.
    pub number: u8,
    /// The bytes of its value.
    pub bytes: Vec<u8>,
}

/// How many bytes the value of a number has: one or two for a value, four for a map and the
/// monitor status, two for the code of the freeze frame; `None` for what this reader does not know.
#[must_use]
pub fn width(number: u8) -> Option<usize> {
    if support::asks_for_map(number) || number == MONITOR_STATUS {
        return Some(4);
    }
    if number == FRAME_CODE {
        return Some(2);
    }
    Parameter::of_number(number).map(Parameter::width)
}

/// Parts a reply of service $01 or $02 into its parameters. Behind each number of service $02
/// stands that of the frame, which must be 0.
///
/// # Errors
/// [`ReplyFault`] where a byte is missing, a number unknown or the frame another.
pub fn parts(service: Service, data: &[u8]) -> Result<Vec<Answered>, ReplyFault> {
    let mut found = Vec::new();
    let mut at = 0;
    while let Some(number) = data.get(at).copied() {
        let width = width(number).ok_or_else(|| malformed(service, at))?;
        at += 1;
        if service == Service::FreezeFrame {
            if data.get(at) != Some(&0) {
                return Err(malformed(service, at));
            }
            at += 1;
        }
        let bytes = data.get(at..at + width).ok_or_else(|| malformed(service, data.len()))?;
        found.push(Answered { number, bytes: bytes.to_vec() });
        at += width;
    }
    Ok(found)
}

/// The values in a reply of service $01 or $02, by parameter; maps and states are passed over.
///
/// # Errors
/// As [`parts`].
pub fn values(service: Service, data: &[u8]) -> Result<BTreeMap<Parameter, f64>, ReplyFault> {
    let mut found = BTreeMap::new();
    for part in parts(service, data)? {
        if let Some(parameter) = Parameter::of_number(part.number)
            && let Some(value) = parameter.decode(&part.bytes)
        {
            found.insert(parameter, value);
        }
    }
    Ok(found)
}

/// The numbers of a service that answers for these parameters, `others` among them.
#[must_use]
pub fn supported(parameters: &[Parameter], others: &[u8]) -> BTreeSet<u8> {
    parameters.iter().map(|parameter| parameter.number()).chain(others.iter().copied()).collect()
}
