//! The winding of a solenoid as an ohmmeter finds it.
//!
//! Model: copper, whose resistance rises in a straight line with its temperature, in series with a
//! joint that does not; some of the turns may be shorted, and then carry no steady current.
//! Limits: the straight line holds from about -40 to 200 °C; a joint has no temperature of its own.
//!
//! ```
//! use faultwright::physics::coil::Winding;
//! use faultwright::units::{Celsius, Ohms};
//!
//! let winding = Winding { ohms_at_20: Ohms(7.4), ..Winding::REFERENCE };
//! assert!((winding.terminal_ohms(Celsius(90.0)).0 - 9.44).abs() < 0.005);
//! ```

use super::range::{OutOfRange, within};
use crate::units::{Celsius, Ohms};
use serde::{Deserialize, Serialize};

/// Temperature coefficient of the resistance of annealed copper at 20 °C [1/K]; IEC 60028.
pub const COPPER_PER_KELVIN: f64 = 0.003_93;

/// Resistance of a coil that is open [ohm]: large enough to carry nothing, and still a number.
pub const OPEN_COIL: Ohms = Ohms(1e12);

/// Largest share of turns that may be shorted: the last turns always carry the supply.
const MOST_SHORTED: f64 = 0.99;

/// A solenoid's winding and the joints inside the valve.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Winding {
    /// Resistance of all turns at 20 °C, without the joint [ohm], 0.1 to 1000.
    pub ohms_at_20: Ohms,
    /// Number of turns relative to the reference winding of 11 ohm, 0.05 to 20: inductance goes with
    /// its square, force with its product with the current.
    pub turns: f64,
    /// Share of the turns that are shorted on themselves, 0 (none) to 0.99.
    pub shorted_share: f64,
    /// Resistance of a failing joint in series with the turns [ohm], 0 (sound) to 1e12 (open).
    pub joint: Ohms,
}

impl Winding {
    /// The winding to which `turns` refers; 11 ohm is a check value of common practice, no source.
    pub const REFERENCE: Self =
        Self { ohms_at_20: Ohms(11.0), turns: 1.0, shorted_share: 0.0, joint: Ohms(0.0) };

    /// Refuses a winding that cannot be.
    ///
    /// # Errors
    /// [`OutOfRange`] with the first field outside the range of its description.
    pub fn check(&self) -> Result<(), OutOfRange> {
        within("ohms_at_20", self.ohms_at_20.0, 0.1, 1000.0)?;
        within("turns", self.turns, 0.05, 20.0)?;
        within("shorted_share", self.shorted_share, 0.0, MOST_SHORTED)?;
        within("joint", self.joint.0, 0.0, OPEN_COIL.0)
    }

    /// Resistance of all the copper at a temperature [ohm], shorted turns included.
    #[must_use]
    pub fn copper_ohms(&self, at: Celsius) -> Ohms {
        Ohms(self.ohms_at_20.0 * (1.0 + COPPER_PER_KELVIN * (at.0 - 20.0)))
    }

    /// Resistance of the turns that carry the terminal's steady current [ohm].
    #[must_use]
    pub fn carrying_ohms(&self, at: Celsius) -> Ohms {
        Ohms((1.0 - self.shorted_share) * self.copper_ohms(at).0)
    }

    /// Resistance between the valve's two pins to a steady current [ohm].
    #[must_use]
    pub fn terminal_ohms(&self, at: Celsius) -> Ohms {
        Ohms(self.carrying_ohms(at).0 + self.joint.0)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    /// IEC 60028 gives the coefficient; the rule of thumb "90 °C is about 28 % more" was read in a
    /// public copy of its text.
    #[test]
    fn published_copper_at_ninety_degrees_has_twenty_eight_percent_more() {
        let ratio = Winding::REFERENCE.terminal_ohms(Celsius(90.0)).0 / 11.0;
        assert!((ratio - 1.2751).abs() < 1e-9, "{ratio}");
        assert!((ratio - 1.28).abs() < 0.005);
    }

    /// Vehicle makers' service text prints 6.3-7.3, 6.9-7.9 and 7.4-8.6 ohm at 0, 20 and 40 °C,
    /// rounded to 0.1; the other makers' 5.3-6.3, 5.8-6.8, 6.2-7.4. Each limit is rounded by itself,
    /// which is worth 0.05 at both ends of a line.
    #[test]
    fn published_resistance_windows_of_three_temperatures() {
        for (cold, at_20, warm) in
            [(6.3, 6.9, 7.4), (7.3, 7.9, 8.6), (5.3, 5.8, 6.2), (6.3, 6.8, 7.4)]
        {
            let winding = Winding { ohms_at_20: Ohms(at_20), ..Winding::REFERENCE };
            assert!((winding.terminal_ohms(Celsius(0.0)).0 - cold).abs() < 0.11);
            assert!((winding.terminal_ohms(Celsius(40.0)).0 - warm).abs() < 0.11);
        }
    }

    /// Computed for this project by hand from the straight line; the table prints two decimals.
    #[test]
    fn reference_eleven_ohms_from_minus_twenty_to_one_hundred_and_fifty() {
        for (t_c, ohms) in [
            (-20.0, 9.27),
            (0.0, 10.14),
            (20.0, 11.0),
            (60.0, 12.73),
            (90.0, 14.03),
            (120.0, 15.32),
            (150.0, 16.62),
        ] {
            assert!((Winding::REFERENCE.terminal_ohms(Celsius(t_c)).0 - ohms).abs() < 0.0051);
        }
    }

    #[test]
    fn closed_form_shorted_turns_leave_their_ohms_out_and_the_joint_in() {
        let winding = Winding { shorted_share: 0.6, joint: Ohms(8.5), ..Winding::REFERENCE };
        assert!((winding.terminal_ohms(Celsius(20.0)).0 - (4.4 + 8.5)).abs() < 1e-12);
        // The joint does not warm with the copper.
        let hot = winding.terminal_ohms(Celsius(120.0)).0;
        assert!((hot - (4.4 * 1.393 + 8.5)).abs() < 1e-9, "{hot}");
    }

    #[test]
    fn limit_what_cannot_be_is_refused_by_name() {
        for (wrong, name) in [
            (Winding { joint: Ohms(f64::INFINITY), ..Winding::REFERENCE }, "joint"),
            (Winding { shorted_share: 1.0, ..Winding::REFERENCE }, "shorted_share"),
            (Winding { turns: f64::NAN, ..Winding::REFERENCE }, "turns"),
            (Winding { ohms_at_20: Ohms(0.0), ..Winding::REFERENCE }, "ohms_at_20"),
        ] {
            assert_eq!(wrong.check().map_err(|error| error.parameter), Err(name));
        }
        assert_eq!(Winding { joint: OPEN_COIL, ..Winding::REFERENCE }.check(), Ok(()));
    }

    proptest! {
        #[test]
        fn prop_hotter_reads_more_and_shorted_reads_less(
            ohms in 1.0..30.0_f64, share in 0.0..0.9_f64, t_c in -40.0..180.0_f64,
        ) {
            let winding = Winding { ohms_at_20: Ohms(ohms), shorted_share: share, ..Winding::REFERENCE };
            let more = Winding { shorted_share: share + 0.05, ..winding };
            let here = winding.terminal_ohms(Celsius(t_c)).0;
            prop_assert!(winding.terminal_ohms(Celsius(t_c + 1.0)).0 > here);
            prop_assert!(more.terminal_ohms(Celsius(t_c)).0 < here);
        }
    }
}
