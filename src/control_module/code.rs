//! Trouble codes as two bytes.

use core::fmt;
use core::str::FromStr;
use serde::{Deserialize, Deserializer, Serialize, Serializer};

/// A trouble code in the two-byte form of SAE J2012 / ISO 15031-6: two bits for the letter, two
/// for the first digit, then three hexadecimal digits.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[cfg_attr(test, derive(schemars::JsonSchema))]
#[cfg_attr(test, schemars(extend("type" = "string")))]
pub struct Code(pub u16);

const LETTERS: [char; 4] = ['P', 'C', 'B', 'U'];

impl fmt::Display for Code {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let letter = LETTERS[usize::from(self.0 >> 14)];
        write!(f, "{letter}{}{:03X}", (self.0 >> 12) & 0b11, self.0 & 0x0FFF)
    }
}

impl fmt::Debug for Code {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        fmt::Display::fmt(self, f)
    }
}

/// A text that is no trouble code.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error(
    "reading a trouble code: got {got:?}, expected a letter P, C, B or U, a digit 0 to 3 and three hexadecimal digits"
)]
pub struct NotACode {
    /// The text.
    pub got: String,
}

impl FromStr for Code {
    type Err = NotACode;

    fn from_str(text: &str) -> Result<Self, NotACode> {
        let refuse = || NotACode { got: text.to_owned() };
        let mut characters = text.chars();
        let letter = characters.next().ok_or_else(refuse)?;
        let letter = LETTERS
            .iter()
            .position(|known| *known == letter.to_ascii_uppercase())
            .ok_or_else(refuse)?;
        let rest = characters.as_str();
        if rest.len() != 4 || !rest.bytes().all(|byte| byte.is_ascii_hexdigit()) {
            return Err(refuse());
        }
        let digits = u16::from_str_radix(rest, 16).map_err(|_| refuse())?;
        if digits >> 12 > 3 {
            return Err(refuse());
        }
        Ok(Self(u16::try_from(letter).map_err(|_| refuse())? << 14 | digits))
    }
}

impl Serialize for Code {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_str(self)
    }
}

impl<'de> Deserialize<'de> for Code {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        String::deserialize(deserializer)?.parse().map_err(serde::de::Error::custom)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Layout of the two bytes from memory; the values follow from it.
    #[test]
    fn closed_form_two_byte_codes() {
        for (text, value) in [
            ("P0010", 0x0010),
            ("P2088", 0x2088),
            ("P000A", 0x000A),
            ("C0035", 0x4035),
            ("B0001", 0x8001),
            ("U0100", 0xC100),
        ] {
            assert_eq!(text.parse(), Ok(Code(value)));
            assert_eq!(Code(value).to_string(), text);
        }
        for wrong in ["", "P", "X0010", "P4010", "P00G0", "P00100", "P+010"] {
            assert!(wrong.parse::<Code>().is_err(), "{wrong}");
        }
    }
}
