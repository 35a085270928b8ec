//! Lists of codes: stored, pending and permanent ($03, $07, $0A) in the CAN form, with the number of
//! codes before them, and the state of every code ($19 function $0A).
//!
//! The state is one byte of flags by ISO 14229-1 (from memory). It is the one place in the open
//! standards where a module says of each code whether its monitor has run since the codes were
//! cleared.

use crate::control_module::code::Code;
use crate::control_module::services::reply::{ReplyFault, malformed};
use crate::control_module::services::request::ALL_CODES;
use crate::control_module::services::{Service, word};

/// Codes that one byte can count.
const MOST_CODES: usize = 0xFF;

/// The data of a reply that lists codes.
#[must_use]
pub fn encode(codes: &[Code]) -> Vec<u8> {
    let codes = &codes[..codes.len().min(MOST_CODES)];
    let mut data = vec![u8::try_from(codes.len()).unwrap_or(u8::MAX)];
    data.extend(codes.iter().flat_map(|code| code.0.to_be_bytes()));
    data
}

/// The codes of a reply; pairs of zeros, which fill up a message, are passed over.
///
/// # Errors
/// [`ReplyFault`] when there are not as many codes as the reply says.
pub fn decode(service: Service, data: &[u8]) -> Result<Vec<Code>, ReplyFault> {
    let Some((count, rest)) = data.split_first() else {
        return Err(malformed(service, 0));
    };
    let wanted = 2 * usize::from(*count);
    let listed = rest.get(..wanted).ok_or_else(|| malformed(service, data.len()))?;
    if let Some(filling) = rest[wanted..].iter().position(|byte| *byte != 0) {
        return Err(malformed(service, 1 + wanted + filling));
    }
    Ok(listed
        .chunks_exact(2)
        .map(|pair| Code(word(pair[0], pair[1])))
        .filter(|code| code.0 != 0)
        .collect())
}

/// What the module knows about one code.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct CodeState {
    /// The code.
    pub code: Code,
    /// Bit 0: its monitor's last decision was a failure.
    pub fails: bool,
    /// Bit 2: it is pending.
    pub is_pending: bool,
    /// Bit 3: it is confirmed.
    pub is_confirmed: bool,
    /// Bit 4 clear: its monitor has come to a decision since the codes were cleared.
    pub has_run: bool,
}

/// The flags that this module keeps: bits 0, 2, 3 and 4.
const KEPT: u8 = 0b0001_1101;
/// Bytes of one code in the list: two of the code, one of the kind of failure (always zero here:
/// the code itself says it), one of flags.
const STATE_BYTES: usize = 4;

/// The data of a reply that lists states.
#[must_use]
pub fn encode_states(states: &[CodeState]) -> Vec<u8> {
    let mut data = vec![ALL_CODES, KEPT];
    for state in states {
        let flags = u8::from(state.fails)
            | u8::from(state.is_pending) << 2
            | u8::from(state.is_confirmed) << 3
            | u8::from(!state.has_run) << 4;
        data.extend(state.code.0.to_be_bytes());
        data.extend([0, flags]);
    }
    data
}

/// The states of a reply.
///
/// # Errors
/// [`ReplyFault`] when it is the reply to another function or ends within a code.
pub fn decode_states(data: &[u8]) -> Result<Vec<CodeState>, ReplyFault> {
    let [ALL_CODES, kept, rest @ ..] = data else {
        return Err(malformed(Service::CodeStates, 0));
    };
    let codes = rest.chunks_exact(STATE_BYTES);
    if !codes.remainder().is_empty() {
        return Err(malformed(Service::CodeStates, data.len()));
    }
    Ok(codes
        .map(|bytes| {
            let flags = bytes[3] & kept;
            CodeState {
                code: Code(word(bytes[0], bytes[1])),
                fails: flags & 1 != 0,
                is_pending: flags >> 2 & 1 != 0,
                is_confirmed: flags >> 3 & 1 != 0,
                has_run: kept >> 4 & 1 != 0 && flags >> 4 & 1 == 0,
            }
        })
        .collect())
}
