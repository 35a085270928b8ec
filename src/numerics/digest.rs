//! Fingerprints of states and texts.

use core::fmt;
use serde::{Deserialize, Serialize};
use sha2::{Digest as _, Sha256};

/// A SHA-256 fingerprint.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Digest(pub [u8; 32]);

impl Digest {
    /// The fingerprint of some bytes.
    #[must_use]
    pub fn of(bytes: &[u8]) -> Self {
        let mut builder = DigestBuilder::new("bytes");
        builder.bytes(bytes);
        builder.finish()
    }

    /// The first eight bytes as hexadecimal digits, enough for people to compare.
    #[must_use]
    pub fn short(&self) -> String {
        self.to_string()[..16].to_owned()
    }

    /// Reads 64 hexadecimal digits.
    #[must_use]
    pub fn from_hex(text: &str) -> Option<Self> {
        let text = text.as_bytes();
        if text.len() != 64 {
            return None;
        }
        let mut bytes = [0; 32];
        for (byte, pair) in bytes.iter_mut().zip(text.chunks(2)) {
            let high = char::from(pair[0]).to_digit(16)?;
            let low = char::from(pair[1]).to_digit(16)?;
            *byte = u8::try_from(high * 16 + low).ok()?;
        }
        Some(Self(bytes))
    }
}

impl fmt::Display for Digest {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.iter().try_for_each(|byte| write!(f, "{byte:02x}"))
    }
}

impl fmt::Debug for Digest {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        fmt::Display::fmt(self, f)
    }
}

impl Serialize for Digest {
    fn serialize<S: serde::Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_str(self)
    }
}

impl<'de> Deserialize<'de> for Digest {
    fn deserialize<D: serde::Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        let text = String::deserialize(deserializer)?;
        Self::from_hex(&text)
            .ok_or_else(|| serde::de::Error::custom("expected 64 hexadecimal digits"))
    }
}

/// Collects values in a declared order into one [`Digest`].
///
/// Texts are preceded by their length, so that two different lists of texts cannot give the same
/// bytes.
#[derive(Clone)]
pub struct DigestBuilder {
    state: Sha256,
}

impl DigestBuilder {
    /// Starts a fingerprint of things of one kind, named by `purpose`.
    #[must_use]
    pub fn new(purpose: &str) -> Self {
        let mut builder = Self { state: Sha256::new() };
        builder.text(purpose);
        builder
    }

    /// Adds raw bytes, preceded by their number.
    pub fn bytes(&mut self, bytes: &[u8]) {
        self.state.update((bytes.len() as u64).to_le_bytes());
        self.state.update(bytes);
    }

    /// Adds a text.
    pub fn text(&mut self, text: &str) {
        self.bytes(text.as_bytes());
    }

    /// Adds the exact bits of a number.
    pub fn number(&mut self, number: f64) {
        self.state.update(number.to_bits().to_le_bytes());
    }

    /// Adds a whole number.
    pub fn whole(&mut self, number: u64) {
        self.state.update(number.to_le_bytes());
    }

    /// Adds another fingerprint.
    pub fn digest(&mut self, digest: &Digest) {
        self.state.update(digest.0);
    }

    /// The fingerprint of all that was added.
    #[must_use]
    pub fn finish(self) -> Digest {
        Digest(self.state.finalize().into())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn limit_lengths_keep_texts_apart() {
        let of = |parts: [&str; 2]| {
            let mut builder = DigestBuilder::new("test");
            for part in parts {
                builder.text(part);
            }
            builder.finish()
        };
        assert_ne!(of(["ab", "c"]), of(["a", "bc"]));
    }

    #[test]
    fn prop_hex_round_trips() {
        let digest = Digest::of(b"some state");
        assert_eq!(Digest::from_hex(&digest.to_string()), Some(digest));
        assert_eq!(Digest::from_hex("12"), None);
    }
}
