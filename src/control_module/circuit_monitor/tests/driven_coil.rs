//! Readings of a driven coil over the whole range of duty, supply and temperature.

use super::*;
use crate::numerics::elementary::{exp, ln};

/// A coil on a switched supply in its periodic steady state, written for these tests: inductance
/// 35 mH, 300 Hz, constant drop of the freewheeling diode.
#[expect(clippy::struct_field_names, reason = "the unit belongs to each name")]
struct Loop {
    coil_ohms: f64,
    wiring_ohms: f64,
    driver_ohms: f64,
}

const INDUCTANCE_H: f64 = 0.035;
const PERIOD_S: f64 = 1.0 / 300.0;
const DIODE_V: f64 = 0.75;

impl Loop {
    /// A coil of this resistance at 20 °C and `celsius`, with `extra_ohms` in its contacts.
    fn of(ohms_at_20: f64, celsius: f64, extra_ohms: f64) -> Self {
        Self {
            coil_ohms: ohms_at_20 * (1.0 + 0.003_93 * (celsius - 20.0)),
            wiring_ohms: 0.2 + extra_ohms,
            driver_ohms: 0.26,
        }
    }

    /// Mean current \[A\] and mean pin voltage \[V\].
    ///
    /// The current rises towards V/R while the switch is closed and falls towards minus the diode's
    /// drop over R while it is open, until it is nought. Both parts are exponentials, so that the
    /// steady state has a closed form; means follow from the volt-seconds over the inductance,
    /// which are nought over one period.
    fn mean(&self, supply_v: f64, duty: f64) -> (f64, f64) {
        let ohms = self.coil_ohms + self.wiring_ohms + self.driver_ohms;
        let (on_s, off_s) = (duty * PERIOD_S, (1.0 - duty) * PERIOD_S);
        let tau_s = INDUCTANCE_H / ohms;
        let (up_a, down_a) = (supply_v / ohms, DIODE_V / ohms);
        let (up, down) = (exp(-on_s / tau_s), exp(-off_s / tau_s));
        // i_high = up_a + (i_low - up_a) up, i_low = -down_a + (i_high + down_a) down
        let low_a = (up_a * (1.0 - up) * down - down_a * (1.0 - down)) / (1.0 - up * down);
        let falling_s = if low_a > 0.0 {
            off_s
        } else {
            let high_a = up_a * (1.0 - up);
            tau_s * ln((high_a + down_a) / down_a)
        };
        let falling = falling_s.min(off_s) / PERIOD_S;
        let mean_a = (supply_v * duty - DIODE_V * falling) / ohms;
        let open_v = (supply_v + DIODE_V) * falling + supply_v * (1.0 - duty - falling);
        (mean_a, open_v + duty * mean_a * self.driver_ohms)
    }

    fn sense(&self, supply_v: f64, duty: f64, celsius: f64) -> DriverSense {
        let (mean_a, mean_v) = self.mean(supply_v, duty);
        DriverSense {
            coil_temperature_estimate: Celsius(celsius),
            ..sense(duty, supply_v, mean_v, mean_a)
        }
    }
}

#[test]
fn reference_the_loop_of_these_tests_agrees_with_the_transient_runs() {
    for (ohms, duty, mean_a, pin_v) in
        [(11.0, 0.4, 0.463_8, 8.96), (11.0, 0.6, 0.721_7, 6.10), (19.5, 0.4, 0.265_4, 8.90)]
    {
        let (ours_a, ours_v) = Loop::of(ohms, 20.0, 0.0).mean(14.1, duty);
        assert!((ours_a / mean_a - 1.0).abs() < 0.03, "{ohms} ohm, {duty}: {ours_a} A");
        assert!((ours_v - pin_v).abs() < 0.15, "{ohms} ohm, {duty}: {ours_v} V");
    }
}

const TEMPERATURES_C: [f64; 5] = [-20.0, 20.0, 60.0, 90.0, 120.0];
const SUPPLIES_V: [f64; 6] = [11.0, 12.0, 12.6, 14.1, 15.0, 16.0];

fn duties_of_the_controller() -> impl Iterator<Item = f64> {
    (5..=95).map(|percent| f64::from(percent) / 100.0)
}

#[test]
fn limit_sound_circuits_pass_at_every_duty_supply_and_temperature() {
    for (what, ohms, extra_ohms) in [
        ("healthy 11 ohm", 11.0, 0.0),
        ("winding of 7 ohm", 7.0, 0.0),
        ("other winding 19.5 ohm", 19.5, 0.0),
        ("5 ohm in a contact", 11.0, 5.0),
        ("other winding and 5 ohm in a contact", 19.5, 5.0),
    ] {
        for celsius in TEMPERATURES_C {
            for supply_v in SUPPLIES_V {
                for duty in duties_of_the_controller() {
                    let (idle, current) = readings(
                        &Loop::of(ohms, celsius, extra_ohms).sense(supply_v, duty, celsius),
                    );
                    assert!(
                        matches!(idle, PASS | NOT_RUN) && matches!(current, PASS | NOT_RUN),
                        "{what}, {celsius} °C, {supply_v} V, duty {duty}: {idle:?} {current:?}"
                    );
                    assert_eq!(idle == NOT_RUN, duty > 0.90);
                    assert_eq!(current == NOT_RUN, duty < 0.15);
                }
            }
        }
    }
}

/// The module takes the coil to be as warm as the oil; a coil that works is warmer by tens of
/// kelvins.
#[test]
fn limit_a_healthy_coil_passes_although_its_temperature_is_misjudged_by_40_k() {
    for thought_c in TEMPERATURES_C {
        for true_c in [thought_c - 40.0, thought_c + 40.0] {
            for duty in duties_of_the_controller() {
                let sense = DriverSense {
                    coil_temperature_estimate: Celsius(thought_c),
                    ..Loop::of(11.0, true_c, 0.0).sense(12.6, duty, true_c)
                };
                assert!(!matches!(readings(&sense).1, Reading::Fault(_)), "{thought_c} {true_c}");
            }
        }
    }
}

/// With a fixed window of 5.5 ohm this coil passes when hot; compensated it does not. Where the
/// valve works hard, it does not even when it is 60 K hotter than the module thinks.
#[test]
fn limit_shorted_turns_read_high_cold_and_hot() {
    let pulse = CircuitLimits::default().key_on_pulse.duty;
    for (duty, misjudged_k) in
        [(pulse, 0.0), (0.4, 20.0), (0.6, 40.0), (0.8, 60.0), (0.95, 60.0), (1.0, 60.0)]
    {
        for thought_c in TEMPERATURES_C {
            for supply_v in SUPPLIES_V {
                let true_c = thought_c + misjudged_k;
                let sense = DriverSense {
                    coil_temperature_estimate: Celsius(thought_c),
                    ..Loop::of(4.4, true_c, 0.0).sense(supply_v, duty, true_c)
                };
                assert_eq!(readings(&sense).1, HIGH, "{thought_c} °C, {supply_v} V, {duty}");
            }
        }
    }
    let hot = Loop::of(4.4, 90.0, 0.0).sense(14.1, 1.0, 90.0);
    assert!(14.1 / hot.current.0 > 5.5, "the fixed window would have let it pass");
}
