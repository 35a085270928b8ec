//! Camshaft data and outputs under numbers of our own ($22 and $2F of ISO 14229-1).
//!
//! No parameter of SAE J1979 that we have read tells a camshaft's position, so a module offers it as
//! makers do, under numbers of its own. These numbers are invented: $2001 is the first camshaft, $3001
//! the first valve, in the order of the module's drivers. Nobody else's module has them.

use crate::control_module::services::reply::{ReplyFault, malformed};
use crate::control_module::services::test_result::Scaling;
use crate::control_module::services::{Service, word};
use serde::{Deserialize, Serialize};

/// Number before that of the first camshaft.
const CAMSHAFTS: u16 = 0x2000;
/// Number before that of the first valve.
const VALVES: u16 = 0x3000;
/// Numbers in each block.
const BLOCK: u16 = 0xFF;

/// What the module knows of one camshaft.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize)]
pub struct CamSense {
    /// Wanted angle away from rest \[crank degrees\], -327.68 to 327.67 in steps of 0.01.
    pub wanted_deg: f64,
    /// Measured angle away from rest \[crank degrees\], the same.
    pub actual_deg: f64,
    /// Duty \[%\], 0 to 100 in steps of 0.01.
    pub duty_percent: f64,
}

fn number(block: u16, index: usize) -> u16 {
    block + u16::try_from(index).map_or(BLOCK, |index| (index + 1).min(BLOCK))
}

fn index(block: u16, number: u16) -> Option<usize> {
    let place = number.checked_sub(block)?;
    (1..=BLOCK).contains(&place).then(|| usize::from(place - 1))
}

/// The number of a camshaft by its place among the module's drivers.
#[must_use]
pub fn camshaft(place: usize) -> u16 {
    number(CAMSHAFTS, place)
}

/// The number of a valve by its place among the module's drivers.
#[must_use]
pub fn valve(place: usize) -> u16 {
    number(VALVES, place)
}

/// The place of a camshaft by its number.
#[must_use]
pub fn camshaft_place(number: u16) -> Option<usize> {
    index(CAMSHAFTS, number)
}

/// The place of a valve by its number.
#[must_use]
pub fn valve_place(number: u16) -> Option<usize> {
    index(VALVES, number)
}

/// The data of a reply with one camshaft.
#[must_use]
pub fn encode_cam(number: u16, cam: &CamSense) -> Vec<u8> {
    let mut data = number.to_be_bytes().to_vec();
    for word in [
        Scaling::SignedDegrees.encode(cam.wanted_deg),
        Scaling::SignedDegrees.encode(cam.actual_deg),
        Scaling::Percent.encode(cam.duty_percent),
    ] {
        data.extend(word.to_be_bytes());
    }
    data
}

/// The camshaft of a reply to a request for `number`.
///
/// # Errors
/// [`ReplyFault`] when it is another number or of another length.
pub fn decode_cam(number: u16, data: &[u8]) -> Result<CamSense, ReplyFault> {
    let service = Service::OwnData;
    let [high, low, w1, w0, a1, a0, d1, d0] = *data else {
        return Err(malformed(service, data.len()));
    };
    if word(high, low) != number {
        return Err(malformed(service, 0));
    }
    Ok(CamSense {
        wanted_deg: Scaling::SignedDegrees.decode(word(w1, w0)),
        actual_deg: Scaling::SignedDegrees.decode(word(a1, a0)),
        duty_percent: Scaling::Percent.decode(word(d1, d0)),
    })
}

/// The data of a reply to a control of an output: what was asked, said again.
#[must_use]
pub fn encode_control(number: u16, state: Option<bool>) -> Vec<u8> {
    use crate::control_module::services::request::Request;
    Request::OwnControl(number, state).encode().split_off(1)
}

/// Checks a reply to a control of an output.
///
/// # Errors
/// [`ReplyFault`] when it says anything else than was asked.
pub fn check_control(number: u16, state: Option<bool>, data: &[u8]) -> Result<(), ReplyFault> {
    let expected = encode_control(number, state);
    if data == expected {
        return Ok(());
    }
    let at = expected.iter().zip(data).position(|(one, other)| one != other);
    Err(malformed(Service::OwnControl, at.unwrap_or(data.len().min(expected.len()))))
}
