//! A case that a file holds without telling it.

use crate::numerics::digest::Digest;
use serde::{Deserialize, Serialize};

/// A case of which a file tells neither seed nor fault. The journal keeps it and looks into none of it;
/// `scenario::seal` makes and opens it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Sealed {
    /// For whom it is, or which of a set.
    pub name: String,
    /// Title of the job.
    pub title: String,
    /// Fingerprint of the texts of scenario and vehicle.
    pub scenario: Digest,
    /// Salt of both keys, hexadecimal.
    pub salt: String,
    /// The case for the program that has to play it, hexadecimal.
    pub case: String,
    /// What only the passphrase opens: which case that is, hexadecimal.
    pub lock: String,
}
