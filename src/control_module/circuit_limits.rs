//! What the circuit diagnosis of a low-side driver compares with: thresholds, times and the
//! key-on pulse, as data of the vehicle.
//!
//! The voltage windows belong to a driver whose pin is biased to half of a 5 V rail while it is
//! off: an intact coil pulls the pin to the supply, a short to ground pulls it down, and with
//! neither it rests at 2.5 V.

use crate::units::{Ohms, Volts};
use core::num::NonZeroU8;
use serde::{Deserialize, Serialize};

/// Thresholds and times of one driver's circuit diagnosis.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(test, derive(schemars::JsonSchema))]
#[serde(default, deny_unknown_fields)]
pub struct CircuitLimits {
    /// Pin voltage with the driver off below which the control wire counts as shorted to ground
    /// \[V\], above 0. Shipped: 2.0 V, 0.4 of the 5 V rail (TLE8102SG data sheet, p. 18, typical).
    pub low_below: Volts,
    /// Pin voltage with the driver off below which, down to [`Self::low_below`], the circuit counts
    /// as open \[V\]. Shipped: 3.0 V, 0.6 of the 5 V rail (same page, typical).
    pub open_below: Volts,
    /// Largest duty at which the off part of a period is long enough to be read, 0 to below 1.
    /// Shipped: 0.90, which leaves 330 us at 300 Hz; the driver's filter takes up to 200 us (same
    /// page).
    pub off_read_up_to_duty: f64,
    /// Smallest duty at which the current is judged, above 0. Shipped: 0.15, assumed: below it the
    /// freewheeling diode keeps the mean current far under supply times duty over resistance.
    pub current_read_from_duty: f64,
    /// Resistance of the loop besides the coil \[ohm\], 0 or more. Shipped: 0.5 ohm, assumed from
    /// the modelled wires, switch and shunt.
    pub rest_of_loop: Ohms,
    /// Multiple of the expected loop resistance from which on the circuit counts as open, above 1.
    /// Shipped: 5, assumed: clear of another winding of 19.5 ohm with a 5-ohm contact (2.2 times),
    /// and near the 170 mA that driver data sheets call an open load (TLE8102SG, p. 18, typical).
    pub open_from_ratio: f64,
    /// Share of the expected loop resistance below which current counts as too high,
    /// 0.01 to 0.99.
    /// Shipped: 0.55, assumed: over 0.42 of a coil with 60 % of its turns shorted, even when that
    /// coil runs 60 K hotter than thought; under 0.65 of a 7-ohm winding in an 11-ohm place.
    pub high_below_ratio: f64,
    /// Share of the expected pull-down of the pin's mean voltage below which a driver without
    /// current counts as shorted to the battery, 0.01 to 0.99. Shipped: 0.5, assumed: halfway.
    pub pulled_down_ratio: f64,
    /// Lowest supply at which anything is judged \[V\]. Shipped: 11 V, assumed.
    pub supply_from: Volts,
    /// Highest supply at which anything is judged \[V\]. Shipped: 16 V, the upper limit of
    /// ISO 16750-2 table 1 for 12 V equipment.
    pub supply_to: Volts,
    /// Time for which a reading must stay the same to be believed \[ms\]. Shipped: 200, assumed.
    pub debounce_ms: u64,
    /// Time for which a believed reading must stand, counted up and down, until it is a verdict
    /// \[ms\]. Shipped: 3,000, assumed.
    pub mature_ms: u64,
    /// Separate believed interruptions since key-on that are a verdict without standing for
    /// [`Self::mature_ms`]; `None` switches this off. Shipped: 2, assumed: a loose contact drops out
    /// for fractions of a second and would never stand for three.
    pub interruptions_to_mature: Option<NonZeroU8>,
    /// The pulse after key-on.
    pub key_on_pulse: KeyOnPulse,
}

/// A weak drive of each valve after key-on, by which a coil is found that lets enough current
/// through to pull the idle pin up and too little to work.
///
/// The pulse comes again after a rest for as long as the current has led to no verdict. All
/// figures are assumed; the duty is chosen so that the current stays below what moves the spool.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(test, derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct KeyOnPulse {
    /// Time from key-on or from a clear to the pulse \[ms\]. Shipped: 300.
    pub delay_ms: u64,
    /// Length of the pulse \[ms\], above 0. Shipped: 3,600: debounce, maturing and margin.
    pub duration_ms: u64,
    /// Time from one pulse to the next \[ms\]. Shipped: 6,400.
    pub rest_ms: u64,
    /// Duty of the pulse, [`CircuitLimits::current_read_from_duty`] to
    /// [`CircuitLimits::off_read_up_to_duty`]. Shipped: 0.28, some 0.26 A in 11 ohm at 12.6 V: less
    /// than the 0.28 A that move the modelled spool, so that nobody hears it, and enough for the
    /// freewheeling diode not to hide shorted turns.
    pub duty: f64,
}

/// A figure of [`CircuitLimits`] that contradicts another or lies outside its range.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
#[error("checking the limits of a circuit diagnosis: {field} must be {expected}")]
pub struct LimitFault {
    /// The field.
    pub field: &'static str,
    /// What it must be.
    pub expected: &'static str,
}

impl Default for CircuitLimits {
    /// The shipped figures, each with its source at its field.
    fn default() -> Self {
        Self {
            low_below: Volts(2.0),
            open_below: Volts(3.0),
            off_read_up_to_duty: 0.90,
            current_read_from_duty: 0.15,
            rest_of_loop: Ohms(0.5),
            open_from_ratio: 5.0,
            high_below_ratio: 0.55,
            pulled_down_ratio: 0.5,
            supply_from: Volts(11.0),
            supply_to: Volts(16.0),
            debounce_ms: 200,
            mature_ms: 3_000,
            interruptions_to_mature: NonZeroU8::new(2),
            key_on_pulse: KeyOnPulse {
                delay_ms: 300,
                duration_ms: 3_600,
                rest_ms: 6_400,
                duty: 0.28,
            },
        }
    }
}

impl CircuitLimits {
    /// Checks each figure against its range and its neighbours.
    ///
    /// # Errors
    /// The first figure that cannot be used, in the order of the fields.
    pub fn check(&self) -> Result<(), LimitFault> {
        let pulse = &self.key_on_pulse;
        // Every comparison is written so that it is false for a figure that is not a number.
        let rules = [
            ("low_below", "above 0 V", self.low_below.0 > 0.0),
            ("open_below", "above low_below", self.open_below.0 > self.low_below.0),
            (
                "off_read_up_to_duty",
                "0 or more and below 1",
                (0.0..1.0).contains(&self.off_read_up_to_duty),
            ),
            (
                "current_read_from_duty",
                "above 0 and at most off_read_up_to_duty",
                self.current_read_from_duty > 0.0
                    && self.current_read_from_duty <= self.off_read_up_to_duty,
            ),
            ("rest_of_loop", "0 ohm or more", self.rest_of_loop.0 >= 0.0),
            ("open_from_ratio", "above 1", self.open_from_ratio > 1.0),
            ("high_below_ratio", "between 0 and 1", is_share(self.high_below_ratio)),
            ("pulled_down_ratio", "between 0 and 1", is_share(self.pulled_down_ratio)),
            ("supply_from", "above open_below", self.supply_from.0 > self.open_below.0),
            ("supply_to", "above supply_from", self.supply_to.0 > self.supply_from.0),
            ("key_on_pulse.duration_ms", "above 0", pulse.duration_ms > 0),
            (
                "key_on_pulse.duty",
                "current_read_from_duty to off_read_up_to_duty",
                (self.current_read_from_duty..=self.off_read_up_to_duty).contains(&pulse.duty),
            ),
        ];
        match rules.into_iter().find(|(_, _, holds)| !holds) {
            Some((field, expected, _)) => Err(LimitFault { field, expected }),
            None => Ok(()),
        }
    }
}

/// Whether a ratio lies strictly between nothing and all.
fn is_share(ratio: f64) -> bool {
    ratio > 0.0 && ratio < 1.0
}

impl KeyOnPulse {
    /// Whether the pulse is on, `since_ms` after key-on or after a clear \[ms\].
    #[must_use]
    pub fn is_on(&self, since_ms: u64) -> bool {
        since_ms
            .checked_sub(self.delay_ms)
            .and_then(|into| into.checked_rem(self.duration_ms.saturating_add(self.rest_ms)))
            .is_some_and(|into| into < self.duration_ms)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn limit_shipped_figures_are_usable_and_survive_a_file() {
        let limits = CircuitLimits::default();
        assert_eq!(limits.check(), Ok(()));
        let text = serde_json::to_string(&limits).unwrap();
        assert_eq!(serde_json::from_str::<CircuitLimits>(&text).unwrap(), limits);
        let extra = text.replacen('{', "{\"surplus\":1,", 1);
        assert!(serde_json::from_str::<CircuitLimits>(&extra).is_err());
    }

    #[test]
    fn limit_each_unusable_figure_is_named() {
        let shipped = CircuitLimits::default();
        let pulse = shipped.key_on_pulse;
        let nan = f64::NAN;
        let cases = [
            ("low_below", CircuitLimits { low_below: Volts(0.0), ..shipped }),
            ("low_below", CircuitLimits { low_below: Volts(nan), ..shipped }),
            ("open_below", CircuitLimits { open_below: Volts(2.0), ..shipped }),
            ("off_read_up_to_duty", CircuitLimits { off_read_up_to_duty: 1.0, ..shipped }),
            ("current_read_from_duty", CircuitLimits { current_read_from_duty: 0.0, ..shipped }),
            ("current_read_from_duty", CircuitLimits { current_read_from_duty: 0.95, ..shipped }),
            ("rest_of_loop", CircuitLimits { rest_of_loop: Ohms(-0.1), ..shipped }),
            ("open_from_ratio", CircuitLimits { open_from_ratio: 1.0, ..shipped }),
            ("high_below_ratio", CircuitLimits { high_below_ratio: 1.0, ..shipped }),
            ("pulled_down_ratio", CircuitLimits { pulled_down_ratio: 0.0, ..shipped }),
            ("supply_from", CircuitLimits { supply_from: Volts(2.5), ..shipped }),
            ("supply_to", CircuitLimits { supply_to: Volts(11.0), ..shipped }),
            (
                "key_on_pulse.duration_ms",
                CircuitLimits { key_on_pulse: KeyOnPulse { duration_ms: 0, ..pulse }, ..shipped },
            ),
            (
                "key_on_pulse.duty",
                CircuitLimits { key_on_pulse: KeyOnPulse { duty: 0.1, ..pulse }, ..shipped },
            ),
        ];
        for (field, limits) in cases {
            assert_eq!(limits.check().map_err(|fault| fault.field), Err(field));
        }
    }

    #[test]
    fn closed_form_pulse_starts_lasts_rests_and_comes_again() {
        let pulse = KeyOnPulse { delay_ms: 300, duration_ms: 3_600, rest_ms: 6_400, duty: 0.2 };
        for (since_ms, on) in [(0, false), (299, false), (300, true), (3_899, true), (3_900, false)]
            .into_iter()
            .chain([(10_299, false), (10_300, true), (13_899, true), (13_900, false)])
        {
            assert_eq!(pulse.is_on(since_ms), on, "{since_ms} ms");
        }
    }
}
