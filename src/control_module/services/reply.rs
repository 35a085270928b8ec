//! The envelope of a reply: a positive one with its data, or a refusal with its reason.

use crate::control_module::services::Service;

/// First byte of a negative reply.
pub const NEGATIVE: u8 = 0x7F;

/// Why the module refuses a request (ISO 14229-1, annex A; numbers from memory, $22 among them seen
/// in public protocol descriptions).
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum NegativeReason {
    /// $11: it has no such service.
    ServiceNotSupported,
    /// $12: it has the service, but not this function of it.
    FunctionNotSupported,
    /// $13: the request has a wrong length or form.
    WrongForm,
    /// $22: conditions not correct, for instance the engine runs.
    ConditionsNotCorrect,
    /// $31: there is nothing of that number.
    OutOfRange,
    /// Any other byte.
    Other(u8),
}

impl NegativeReason {
    /// Its byte.
    #[must_use]
    pub const fn byte(self) -> u8 {
        match self {
            Self::ServiceNotSupported => 0x11,
            Self::FunctionNotSupported => 0x12,
            Self::WrongForm => 0x13,
            Self::ConditionsNotCorrect => 0x22,
            Self::OutOfRange => 0x31,
            Self::Other(byte) => byte,
        }
    }

    /// The reason of a byte.
    #[must_use]
    pub const fn of_byte(byte: u8) -> Self {
        match byte {
            0x11 => Self::ServiceNotSupported,
            0x12 => Self::FunctionNotSupported,
            0x13 => Self::WrongForm,
            0x22 => Self::ConditionsNotCorrect,
            0x31 => Self::OutOfRange,
            other => Self::Other(other),
        }
    }
}

/// What a reader cannot take for an answer.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
pub enum ReplyFault {
    /// The module refused.
    #[error("reading a reply: the module refused service ${service:02X}: {reason:?}")]
    Refused {
        /// The service that was asked.
        service: u8,
        /// Why.
        reason: NegativeReason,
    },
    /// It begins with another byte than the reply to the request does.
    #[error("reading a reply: got first byte {got:02X?}, expected {expected:02X}")]
    OtherService {
        /// First byte, if there was one.
        got: Option<u8>,
        /// Byte expected.
        expected: u8,
    },
    /// Its data are too short, too long or of another number than was asked.
    #[error("reading a reply to service ${service:02X}: byte {at} is not what belongs there")]
    Malformed {
        /// The service that was asked.
        service: u8,
        /// Place of the byte in the reply, from 0.
        at: usize,
    },
}

/// The negative reply to a service byte.
#[must_use]
pub fn refusal(service: u8, reason: NegativeReason) -> Vec<u8> {
    vec![NEGATIVE, service, reason.byte()]
}

/// The positive reply of a service.
#[must_use]
pub fn positive(service: Service, data: &[u8]) -> Vec<u8> {
    let mut bytes = Vec::with_capacity(data.len() + 1);
    bytes.push(service.reply_byte());
    bytes.extend_from_slice(data);
    bytes
}

/// The data of a positive reply to a service.
///
/// # Errors
/// [`ReplyFault`] when it is a refusal or the answer to something else.
pub fn data(service: Service, bytes: &[u8]) -> Result<&[u8], ReplyFault> {
    match bytes {
        [first, rest @ ..] if *first == service.reply_byte() => Ok(rest),
        [NEGATIVE, refused, reason] if *refused == service.byte() => {
            Err(ReplyFault::Refused { service: *refused, reason: NegativeReason::of_byte(*reason) })
        }
        _ => Err(ReplyFault::OtherService {
            got: bytes.first().copied(),
            expected: service.reply_byte(),
        }),
    }
}

/// The fault of a byte in a reply's data, counted from 0 behind the service byte.
#[must_use]
pub const fn malformed(service: Service, at: usize) -> ReplyFault {
    ReplyFault::Malformed { service: service.byte(), at: at.saturating_add(1) }
}
