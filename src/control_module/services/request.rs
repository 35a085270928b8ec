//! Requests, both ways.

use crate::control_module::services::reply::NegativeReason;
use crate::control_module::services::{Service, word};

/// Parameters that one request for current data may ask for in the CAN form: six.
pub const MOST_PARAMETERS: usize = 6;
/// Parameters that one request for the freeze frame may ask for in the CAN form: three.
pub const MOST_FRAME_PARAMETERS: usize = 3;
/// The function of $19 that lists every code with its state (ISO 14229-1, from memory).
pub const ALL_CODES: u8 = 0x0A;
/// "Short term adjustment": the control parameter of $2F that sets an output (from memory).
const ADJUST: u8 = 0x03;
/// "Return control": the one that gives it back to the module (from memory).
const GIVE_BACK: u8 = 0x00;

/// What a reader asks.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Request {
    /// Parameters of the moment, one to [`MOST_PARAMETERS`].
    CurrentData(Vec<u8>),
    /// Parameters of freeze frame 0, one to [`MOST_FRAME_PARAMETERS`]; other frames are not kept.
    FreezeFrame(Vec<u8>),
    /// Stored codes.
    StoredCodes,
    /// Clear.
    Clear,
    /// The results of one monitor, or the map of monitors.
    TestResults(u8),
    /// Pending codes.
    PendingCodes,
    /// A piece of vehicle information, or the map of them.
    VehicleInformation(u8),
    /// Permanent codes.
    PermanentCodes,
    /// The state of every code.
    CodeStates,
    /// Data of a number of our own.
    OwnData(u16),
    /// An output of a number of our own: set on or off, or with `None` given back to the module.
    OwnControl(u16, Option<bool>),
}

/// A request that the module does not take.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct NotTaken {
    /// Its service byte; zero for a message without any.
    pub service: u8,
    /// Why.
    pub reason: NegativeReason,
}

impl Request {
    /// Its service.
    #[must_use]
    pub const fn service(&self) -> Service {
        match self {
            Self::CurrentData(_) => Service::CurrentData,
            Self::FreezeFrame(_) => Service::FreezeFrame,
            Self::StoredCodes => Service::StoredCodes,
            Self::Clear => Service::Clear,
            Self::TestResults(_) => Service::TestResults,
            Self::PendingCodes => Service::PendingCodes,
            Self::VehicleInformation(_) => Service::VehicleInformation,
            Self::PermanentCodes => Service::PermanentCodes,
            Self::CodeStates => Service::CodeStates,
            Self::OwnData(_) => Service::OwnData,
            Self::OwnControl(..) => Service::OwnControl,
        }
    }

    /// Its bytes.
    #[must_use]
    pub fn encode(&self) -> Vec<u8> {
        let mut bytes = vec![self.service().byte()];
        match self {
            Self::CurrentData(parameters) => bytes.extend(parameters),
            Self::FreezeFrame(parameters) => {
                bytes.extend(parameters.iter().flat_map(|parameter| [*parameter, 0]));
            }
            Self::TestResults(number) | Self::VehicleInformation(number) => bytes.push(*number),
            Self::CodeStates => bytes.push(ALL_CODES),
            Self::OwnData(number) => bytes.extend(number.to_be_bytes()),
            Self::OwnControl(number, state) => {
                bytes.extend(number.to_be_bytes());
                match state {
                    Some(on) => bytes.extend([ADJUST, u8::from(*on)]),
                    None => bytes.push(GIVE_BACK),
                }
            }
            Self::StoredCodes | Self::Clear | Self::PendingCodes | Self::PermanentCodes => {}
        }
        bytes
    }

    /// Reads a request's bytes.
    ///
    /// # Errors
    /// [`NotTaken`] with the reason that belongs into a negative reply.
    pub fn decode(bytes: &[u8]) -> Result<Self, NotTaken> {
        let Some((first, data)) = bytes.split_first() else {
            return Err(NotTaken { service: 0, reason: NegativeReason::WrongForm });
        };
        let not_taken = |reason| NotTaken { service: *first, reason };
        let service = Service::of_byte(*first)
            .ok_or_else(|| not_taken(NegativeReason::ServiceNotSupported))?;
        let request = match (service, data) {
            (Service::CurrentData, [_, ..]) if data.len() <= MOST_PARAMETERS => {
                Self::CurrentData(data.to_vec())
            }
            (Service::FreezeFrame, [_, ..])
                if data.len().is_multiple_of(2) && data.len() <= 2 * MOST_FRAME_PARAMETERS =>
            {
                if data.chunks_exact(2).any(|pair| pair[1] != 0) {
                    return Err(not_taken(NegativeReason::OutOfRange));
                }
                Self::FreezeFrame(data.chunks_exact(2).map(|pair| pair[0]).collect())
            }
            (Service::StoredCodes, []) => Self::StoredCodes,
            (Service::Clear, []) => Self::Clear,
            (Service::TestResults, [number]) => Self::TestResults(*number),
            (Service::PendingCodes, []) => Self::PendingCodes,
            (Service::VehicleInformation, [number]) => Self::VehicleInformation(*number),
            (Service::PermanentCodes, []) => Self::PermanentCodes,
            (Service::CodeStates, [ALL_CODES]) => Self::CodeStates,
            (Service::OwnData, [high, low]) => Self::OwnData(word(*high, *low)),
            (Service::OwnControl, [high, low, GIVE_BACK]) => {
                Self::OwnControl(word(*high, *low), None)
            }
            (Service::OwnControl, [high, low, ADJUST, state @ (0 | 1)]) => {
                Self::OwnControl(word(*high, *low), Some(*state == 1))
            }
            (Service::CodeStates, [_]) | (Service::Control, [_, ..]) => {
                return Err(not_taken(NegativeReason::FunctionNotSupported));
            }
            _ => return Err(not_taken(NegativeReason::WrongForm)),
        };
        Ok(request)
    }
}
