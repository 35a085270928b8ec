//! The switch that lights the oil lamp: a diaphragm against a spring.
//!
//! Model: it closes when pressure falls to one value and opens when it has risen to a somewhat
//! higher one; in between it stays as it was. Limits: no ageing, no chatter.

use crate::units::Bars;
use serde::{Deserialize, Serialize};

/// An oil pressure switch.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct PressureSwitch {
    /// Pressure at which it closes, falling [bar], more than 0.
    pub closes_bar: f64,
    /// Pressure at which it opens, rising [bar], not below `closes_bar`.
    pub opens_bar: f64,
}

impl PressureSwitch {
    /// A usual one: common practice is 0.3 to 0.5 bar, no source; the gap between both is an
    /// engineering estimate.
    pub const TYPICAL: Self = Self { closes_bar: 0.4, opens_bar: 0.5 };

    /// Whether it is closed at a pressure, having been closed or not before.
    #[inline]
    #[must_use]
    pub fn is_closed(&self, was_closed: bool, pressure: Bars) -> bool {
        if was_closed { pressure.0 < self.opens_bar } else { pressure.0 < self.closes_bar }
    }
}

impl Default for PressureSwitch {
    fn default() -> Self {
        Self::TYPICAL
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    /// Up and down once: it opens at the upper pressure and closes at the lower.
    #[test]
    fn closed_form_switch_has_two_thresholds() {
        let switch = PressureSwitch::TYPICAL;
        let mut closed = true;
        let mut changes = Vec::new();
        for tenth in (0..=10).chain((0..10).rev()) {
            let pressure = Bars(f64::from(tenth) * 0.1);
            let now = switch.is_closed(closed, pressure);
            if now != closed {
                changes.push((tenth, now));
            }
            closed = now;
        }
        assert_eq!(changes, [(5, false), (3, true)]);
    }

    proptest! {
        /// A pressure that swings by less than the gap never makes the lamp flicker.
        #[test]
        fn prop_small_swings_do_not_flicker(middle in 0.0_f64..2.0, swings in 1_usize..20) {
            let switch = PressureSwitch::TYPICAL;
            let mut closed = switch.is_closed(true, Bars(middle));
            let mut changes = 0;
            for swing in 0..swings {
                let by = if swing % 2 == 0 { 0.045 } else { -0.045 };
                let now = switch.is_closed(closed, Bars(middle + by));
                changes += u32::from(now != closed);
                closed = now;
            }
            prop_assert!(changes <= 1, "{changes}");
        }
    }
}
