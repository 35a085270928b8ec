//! Sound pressure as samples.

use crate::numerics::elementary::{log10, pow, tanh};

/// Level of a sine that just fills the range of the samples [dB re 20 uPa]. Chosen so that an engine held at speed beside
/// an open bonnet still fits and a click beside it is not lost; how loud it is in the room is the user's own volume.
pub const FULL_SCALE_DB: f64 = 86.0;

/// From where samples are bent so that they never leave their range.
const BENT_FROM: f64 = 0.8;

/// Root mean square that a level [dB re 20 uPa] has as samples.
#[must_use]
pub fn rms_of(level_db: f64) -> f64 {
    core::f64::consts::FRAC_1_SQRT_2 * pow(10.0, (level_db - FULL_SCALE_DB) / 20.0)
}

/// Level [dB re 20 uPa] that samples of a root mean square stand for; the inverse of [`rms_of`].
#[must_use]
pub fn level_db_of(rms: f64) -> f64 {
    FULL_SCALE_DB + 20.0 * log10(rms / core::f64::consts::FRAC_1_SQRT_2)
}

/// A sample within -1 and 1: untouched up to four fifths, bent smoothly above.
#[must_use]
pub fn limited(sample: f64) -> f64 {
    let over = sample.abs() - BENT_FROM;
    if over <= 0.0 {
        return sample;
    }
    let room = 1.0 - BENT_FROM;
    (BENT_FROM + room * tanh(over / room)).copysign(sample)
}
