//! A defect of the program in words.

use super::catalogue::Words;
use crate::vehicle::error::VehicleError;

/// That the simulation failed, with every cause.
#[must_use]
pub fn simulation_failed(error: &VehicleError, words: &Words) -> String {
    let mut why = error.to_string();
    let mut cause = std::error::Error::source(error);
    while let Some(inner) = cause {
        why.push_str(": ");
        why.push_str(&inner.to_string());
        cause = inner.source();
    }
    words.say("trouble-simulation", &[("why", why.into())])
}
