//! Vehicle information (service $09): identification and calibration.
//!
//! Item $02 is the identification, 17 characters; item $04 the calibration, 16 characters filled up
//! with zeros. Before the characters stands the number of data items, always 1 here (SAE J1979 in its
//! CAN form, from memory).

use crate::control_module::services::Service;
use crate::control_module::services::reply::{ReplyFault, malformed};

/// Number of the identification.
pub const IDENTIFICATION: u8 = 0x02;
/// Number of the calibration.
pub const CALIBRATION: u8 = 0x04;
/// Characters of an identification.
pub const IDENTIFICATION_LENGTH: usize = 17;
/// Characters of a calibration.
pub const CALIBRATION_LENGTH: usize = 16;

/// Who a module says that it is.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Identity {
    /// 17 capital letters and digits. It begins with INVENTED: a real one never holds the letter I
    /// (ISO 3779), so that no vehicle on a road can have it.
    pub identification: String,
    /// Up to 16 capital letters, digits and hyphens.
    pub calibration: String,
}

/// Characters of an identification that come from the vehicle's name, and what fills up a shorter one.
const WORD_LENGTH: usize = 5;
const FILLER: char = 'X';

impl Identity {
    /// The identity of an invented vehicle by its name and model year.
    #[must_use]
    pub fn invented(name: &str, year: u16) -> Self {
        let letters = name.chars().filter(char::is_ascii_alphanumeric);
        // A vehicle with a short name still gets an identification of full length.
        let filled = letters.chain(core::iter::repeat(FILLER));
        let word: String = filled.take(WORD_LENGTH).map(|c| c.to_ascii_uppercase()).collect();
        let year = year % 10_000;
        Self {
            identification: format!("INVENTED{word}{year:04}"),
            calibration: format!("FW-{word}-{year:04}"),
        }
    }
}

/// The data of a reply with one text of a fixed length.
#[must_use]
pub fn encode(item: u8, text: &str, length: usize) -> Vec<u8> {
    let mut data = vec![item, 1];
    let characters = text.bytes().filter(u8::is_ascii_graphic).chain(core::iter::repeat(0));
    data.extend(characters.take(length));
    data
}

/// The text of a reply to a request for `item`.
///
/// # Errors
/// [`ReplyFault`] when it is another item or holds what is no printable character.
pub fn decode(item: u8, data: &[u8]) -> Result<String, ReplyFault> {
    let service = Service::VehicleInformation;
    let [got, 1, characters @ ..] = data else {
        return Err(malformed(service, 1));
    };
    if *got != item {
        return Err(malformed(service, 0));
    }
    let length = characters.iter().position(|byte| *byte == 0).unwrap_or(characters.len());
    let (text, filling) = characters.split_at(length);
    if let Some(at) = text.iter().position(|byte| !byte.is_ascii_graphic()) {
        return Err(malformed(service, 2 + at));
    }
    if let Some(at) = filling.iter().position(|byte| *byte != 0) {
        return Err(malformed(service, 2 + length + at));
    }
    Ok(text.iter().map(|byte| char::from(*byte)).collect())
}
