//! Diagnostic services as bytes: what a reader asks and what the module answers.
//!
//! A message here is its service byte and data, without the header, length and checksum that the
//! link adds. Formulas and layouts are those of SAE J1979 / ISO 15031-5 in their CAN form, and of
//! ISO 14229-1 for the three services that the former lacks: the state of every code ($19), data of
//! the maker's own numbering ($22) and the maker's control of an output ($2F). Where a layout was
//! written from memory its file says so.
//!
//! - [`request`] for the request, both ways
//! - [`reply`] for the reply's envelope: which service answered, or why it was refused
//! - [`parameter`] for current data and the freeze frame ($01, $02)
//! - [`monitor_status`] for lamp, number of codes and readiness ($01 PID $01)
//! - [`code_list`] for stored, pending and permanent codes ($03, $07, $0A), the state of each ($19)
//! - [`test_result`] for test results with their limits ($06)
//! - [`vehicle_information`] for identification ($09)
//! - [`own_data`] for camshaft data and outputs under numbers of our own ($22, $2F)
//! - [`answering`] for the module's side
//!
//! No decoder panics, whatever bytes it is given.

pub mod answering;
pub mod code_list;
pub mod monitor_status;
pub mod own_data;
pub mod parameter;
pub mod reply;
pub mod request;
pub mod support;
pub mod test_result;
pub mod vehicle_information;

/// A diagnostic service.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Service {
    /// $01: current data.
    CurrentData,
    /// $02: the freeze frame.
    FreezeFrame,
    /// $03: stored codes.
    StoredCodes,
    /// $04: clear.
    Clear,
    /// $06: test results.
    TestResults,
    /// $07: pending codes.
    PendingCodes,
    /// $08: control of an on-board system. No test that the standard lists for it moves a camshaft
    /// valve, so the module has none and says so.
    Control,
    /// $09: vehicle information.
    VehicleInformation,
    /// $0A: permanent codes.
    PermanentCodes,
    /// $19 (ISO 14229-1): the state of every code.
    CodeStates,
    /// $22 (ISO 14229-1): data by a number of the maker's.
    OwnData,
    /// $2F (ISO 14229-1): control of an output by a number of the maker's.
    OwnControl,
}

impl Service {
    /// Every service that the module knows by name.
    pub const ALL: [Self; 12] = [
        Self::CurrentData,
        Self::FreezeFrame,
        Self::StoredCodes,
        Self::Clear,
        Self::TestResults,
        Self::PendingCodes,
        Self::Control,
        Self::VehicleInformation,
        Self::PermanentCodes,
        Self::CodeStates,
        Self::OwnData,
        Self::OwnControl,
    ];

    /// The byte with which a request begins.
    #[must_use]
    pub const fn byte(self) -> u8 {
        match self {
            Self::CurrentData => 0x01,
            Self::FreezeFrame => 0x02,
            Self::StoredCodes => 0x03,
            Self::Clear => 0x04,
            Self::TestResults => 0x06,
            Self::PendingCodes => 0x07,
            Self::Control => 0x08,
            Self::VehicleInformation => 0x09,
            Self::PermanentCodes => 0x0A,
            Self::CodeStates => 0x19,
            Self::OwnData => 0x22,
            Self::OwnControl => 0x2F,
        }
    }

    /// The service of a byte, if the module knows it by name.
    #[must_use]
    pub fn of_byte(byte: u8) -> Option<Self> {
        Self::ALL.into_iter().find(|service| service.byte() == byte)
    }

    /// The byte with which a positive reply begins: the request's with bit 6 set.
    #[must_use]
    pub const fn reply_byte(self) -> u8 {
        self.byte() | 0x40
    }
}

/// Two bytes, the higher first, as a number.
pub(crate) fn word(high: u8, low: u8) -> u16 {
    u16::from_be_bytes([high, low])
}

#[cfg(test)]
mod tests;
