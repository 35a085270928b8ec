//! A parameter outside what its model was made for, told by name.

use thiserror::Error;

/// A parameter that no part can have, or for which the model says nothing.
#[derive(Debug, Clone, PartialEq, Error)]
#[error("{parameter}: got {got}, expected {lowest} to {highest}")]
pub struct OutOfRange {
    /// Name of the field, with its unit where the type does not carry one.
    pub parameter: &'static str,
    /// The value that was given.
    pub got: f64,
    /// Lowest value allowed.
    pub lowest: f64,
    /// Highest value allowed.
    pub highest: f64,
}

/// Refuses `got` outside `lowest..=highest`; what is not a number is outside every range.
pub(super) fn within(
    parameter: &'static str,
    got: f64,
    lowest: f64,
    highest: f64,
) -> Result<(), OutOfRange> {
    if (lowest..=highest).contains(&got) {
        Ok(())
    } else {
        Err(OutOfRange { parameter, got, lowest, highest })
    }
}
