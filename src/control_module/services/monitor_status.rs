//! Monitor status (service $01 PID $01): lamp, number of codes, readiness.
//!
//! Byte A: bit 7 the lamp is commanded on, bits 0 to 6 the number of stored codes. Byte B: bits 0 to
//! 2 the continuous monitors that exist, bits 4 to 6 those not complete, bit 3 clear for spark
//! ignition. Byte C: the other monitors that exist; byte D: those not complete. Bit map from memory,
//! in agreement with an independent open-source decoder (python-OBD, `tests/test_decoders.py`).

use crate::control_module::code_report::Readiness;
use crate::control_module::known_code::ReadinessGroup;
use crate::control_module::services::Service;
use crate::control_module::services::reply::{ReplyFault, malformed};

/// Codes that the seven bits can count.
const MOST_CODES: u8 = 0x7F;

/// Where the bits of a group stand.
#[derive(Debug, Clone, Copy)]
enum Bits {
    /// In byte B: support in this bit, "not complete" four bits higher.
    Continuous(u8),
    /// In bytes C and D at this bit.
    Other(u8),
}

const PLACES: [(ReadinessGroup, Bits); 7] = [
    (ReadinessGroup::Misfire, Bits::Continuous(0)),
    (ReadinessGroup::FuelSystem, Bits::Continuous(1)),
    (ReadinessGroup::Components, Bits::Continuous(2)),
    (ReadinessGroup::Catalyst, Bits::Other(0)),
    (ReadinessGroup::FuelVapour, Bits::Other(2)),
    (ReadinessGroup::OxygenSensors, Bits::Other(5)),
    (ReadinessGroup::ValveTiming, Bits::Other(7)),
];

/// What the four bytes say. Groups that no module here has (heated catalyst, secondary air, heaters
/// and the like) are passed over.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct MonitorStatus {
    /// The module commands the lamp on.
    pub commands_lamp: bool,
    /// Stored codes, 0 to 127.
    pub codes: u8,
    /// Compression ignition.
    pub is_compression: bool,
    /// The groups that exist, in their order.
    pub readiness: Vec<Readiness>,
}

impl MonitorStatus {
    /// The status of a module with spark ignition.
    #[must_use]
    pub fn new(commands_lamp: bool, codes: usize, readiness: &[Readiness]) -> Self {
        let codes = u8::try_from(codes).unwrap_or(MOST_CODES).min(MOST_CODES);
        Self { commands_lamp, codes, is_compression: false, readiness: readiness.to_vec() }
    }

    /// Its four bytes.
    #[must_use]
    pub fn encode(&self) -> [u8; 4] {
        let mut bytes = [self.codes.min(MOST_CODES) | u8::from(self.commands_lamp) << 7, 0, 0, 0];
        bytes[1] |= u8::from(self.is_compression) << 3;
        for ready in &self.readiness {
            let Some((_, bits)) = PLACES.iter().find(|(group, _)| *group == ready.group) else {
                continue;
            };
            let waits = u8::from(!ready.is_complete);
            match bits {
                Bits::Continuous(bit) => bytes[1] |= 1 << bit | waits << (bit + 4),
                Bits::Other(bit) => {
                    bytes[2] |= 1 << bit;
                    bytes[3] |= waits << bit;
                }
            }
        }
        bytes
    }

    /// Reads the bytes of its value.
    ///
    /// # Errors
    /// [`ReplyFault`] unless there are four.
    pub fn decode(bytes: &[u8]) -> Result<Self, ReplyFault> {
        let [a, b, c, d] = *bytes else {
            return Err(malformed(Service::CurrentData, bytes.len() + 1));
        };
        let readiness = PLACES
            .iter()
            .filter_map(|(group, bits)| {
                let (exists, waits) = match bits {
                    Bits::Continuous(bit) => (b >> bit & 1, b >> (bit + 4) & 1),
                    Bits::Other(bit) => (c >> bit & 1, d >> bit & 1),
                };
                (exists == 1).then_some(Readiness { group: *group, is_complete: waits == 0 })
            })
            .collect();
        Ok(Self {
            commands_lamp: a >> 7 == 1,
            codes: a & MOST_CODES,
            is_compression: b >> 3 & 1 == 1,
            readiness,
        })
    }
}
