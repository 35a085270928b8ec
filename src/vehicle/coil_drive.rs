//! What the electrical side tells the engine about one valve: average current against duty.

use crate::units::{Amperes, Ohms, Volts};
use serde::{Deserialize, Serialize};

/// A coil driven by pulses, reduced to three figures.
///
/// The pulses are far faster than the coil, so only the mean voltage counts: supply while on, the
/// freewheel diode's drop against it while off.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct CoilDrive {
    /// Voltage across the circuit while the driver is on [V].
    pub v_on: Volts,
    /// Voltage against the current while it is off [V].
    pub v_freewheel: Volts,
    /// Resistance of the whole circuit [ohm], more than 0; infinite when it is open.
    pub r_total: Ohms,
}

impl CoilDrive {
    /// An open circuit.
    pub const OPEN: Self =
        Self { v_on: Volts(0.0), v_freewheel: Volts(0.0), r_total: Ohms(f64::INFINITY) };

    /// Average current at a duty of 0 to 1.
    #[must_use]
    #[inline]
    pub fn average(&self, duty: f64) -> Amperes {
        let mean_v = duty * self.v_on.0 - (1.0 - duty) * self.v_freewheel.0;
        Amperes((mean_v / self.r_total.0).max(0.0))
    }

    /// Duty that gives an average current; more than 1 when the circuit cannot give it.
    #[must_use]
    pub fn duty_for(&self, current: Amperes) -> f64 {
        (current.0 * self.r_total.0 + self.v_freewheel.0) / (self.v_on.0 + self.v_freewheel.0)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    /// The circuit simulator's averages at 300 pulses a second with 35 mH, 14.1 V: the reduction
    /// must agree within 3 %, which is what the ripple and the diode's curve are worth.
    #[test]
    fn reference_average_currents_of_the_pulsed_circuit() {
        for (coil, duty, wanted) in [(11.0, 0.4, 0.4638), (11.0, 0.6, 0.7217), (19.5, 0.4, 0.2654)]
        {
            let drive = CoilDrive {
                v_on: Volts(14.1),
                v_freewheel: Volts(0.8),
                r_total: Ohms(coil + 0.45),
            };
            let got = drive.average(duty).0;
            assert!((got / wanted - 1.0).abs() < 0.03, "{coil} {duty}: {got} {wanted}");
        }
    }

    #[test]
    fn limit_an_open_circuit_carries_nothing() {
        assert_eq!(CoilDrive::OPEN.average(1.0), Amperes(0.0));
    }

    proptest! {
        #[test]
        fn prop_duty_for_a_current_gives_that_current(current in 0.0_f64..2.0, ohms in 3.0_f64..60.0) {
            let drive =
                CoilDrive { v_on: Volts(14.1), v_freewheel: Volts(0.8), r_total: Ohms(ohms) };
            let back = drive.average(drive.duty_for(Amperes(current))).0;
            prop_assert!((back - current).abs() < 1e-12);
        }
    }
}
