//! Limits of the service information: windings, battery, voltage drops, oil.

use super::amounts::{number, short_number};
use super::catalogue::Words;
use super::place::places;
use crate::instruments::multimeter::LEADS_OHMS;
use crate::physics::coil::Winding;
use crate::physics::oil::viscosity_index;
use crate::physics::pressure_switch::PressureSwitch;
use crate::session::setup::Briefing;
use crate::units::{Celsius, Ohms};
use crate::vehicle::spec::HarnessElement;

/// Rest voltage of a well charged battery, and of one half empty [V]: published tables give 12.45
/// at three quarters of the charge and 12.3 to 12.2 at half.
const CHARGED_V: f64 = 12.4;
const HALF_EMPTY_V: f64 = 12.2;
/// Charging voltage of a warm engine [V]: typical, from memory.
const CHARGING_V: (f64, f64) = (13.5, 14.8);
/// Largest voltage drops of a contact, of a wire or switch, and of a whole side of a circuit [V]:
/// common practice, no source.
const DROP_V: (f64, f64, f64) = (0.1, 0.2, 0.5);
/// What the module puts on a control wire to sense it while the valve is unplugged [V]: half of
/// its regulated supply.
const SENSING_V: f64 = 2.5;
/// Least oil pressure of a warm engine at idle [bar], and for each 1000 rpm above: the trade's rule of
/// ten pounds per square inch, hot idle from the same.
const LEAST_IDLE_BAR: f64 = 0.7;
const BAR_PER_1000_RPM: f64 = 0.7;
/// Temperatures at which limits of windings are stated and at which a warm engine stands [°C].
const STATED_AT: Celsius = Celsius(20.0);
const WARM: Celsius = Celsius(90.0);
/// A degree above the temperature at which limits are stated [°C].
const ONE_WARMER: Celsius = Celsius(21.0);

/// The limits, a line each.
pub(super) fn limits(briefing: &Briefing, words: &Words) -> Vec<String> {
    let vehicle = &briefing.vehicle;
    let mut lines = vec![words.say("service-limits", &[])];
    for part in &vehicle.valve_parts {
        lines.push(words.say(
            "limit-winding",
            &[
                ("number", part.part_number.as_str().into()),
                ("places", places(&part.fits, words).into()),
                ("least", number(part.ohms_least, 1, words).into()),
                ("most", number(part.ohms_most, 1, words).into()),
            ],
        ));
    }
    let workshop = briefing.workshop_temperature;
    lines.push(words.say(
        "limit-copper",
        &[
            ("percent", number(100.0 * (copper_factor(ONE_WARMER) - 1.0), 2, words).into()),
            ("workshop", short_number(workshop.0, 1, words).into()),
            ("here", number(copper_factor(workshop), 2, words).into()),
            ("warm", number(WARM.0, 0, words).into()),
            ("then", number(copper_factor(WARM), 2, words).into()),
        ],
    ));
    lines.push(words.say("limit-leads", &[("ohms", number(LEADS_OHMS, 1, words).into())]));
    lines.push(words.say(
        "limit-battery",
        &[
            ("charged", number(CHARGED_V, 1, words).into()),
            ("half", number(HALF_EMPTY_V, 1, words).into()),
            ("least", number(CHARGING_V.0, 1, words).into()),
            ("most", number(CHARGING_V.1, 1, words).into()),
        ],
    ));
    lines.push(words.say(
        "limit-drops",
        &[
            ("contact", number(DROP_V.0, 1, words).into()),
            ("wire", number(DROP_V.1, 1, words).into()),
            ("side", number(DROP_V.2, 1, words).into()),
        ],
    ));
    let is_driver = |it: &HarnessElement| matches!(it, HarnessElement::Driver { .. });
    if vehicle.harness.elements.iter().any(is_driver) {
        let volts = number(SENSING_V, 1, words);
        lines.push(words.say("limit-control", &[("volts", volts.into())]));
    }
    lines.push(match vehicle.longest_power {
        Some(seconds) => {
            words.say("limit-power", &[("seconds", short_number(seconds, 1, words).into())])
        }
        None => words.say("limit-no-power", &[]),
    });
    let sump = vehicle.sump;
    lines.push(words.say(
        "limit-oil",
        &[
            ("full", number(sump.full_litres, 1, words).into()),
            ("between", number(sump.full_litres - sump.least_litres, 1, words).into()),
        ],
    ));
    let grade = vehicle.oil.grade;
    let (oil, limits) = (grade.typical(), grade.hot_limits());
    let index = viscosity_index(oil.kv40_mm2_s, oil.kv100_mm2_s);
    lines.push(words.say(
        "limit-oil-grade",
        &[
            ("grade", grade.word().into()),
            ("least", number(limits.least_mm2_s, 1, words).into()),
            ("below", number(limits.below_mm2_s, 1, words).into()),
            ("index", index.map_or_else(String::new, |index| number(index, 0, words)).into()),
        ],
    ));
    lines.push(words.say(
        "limit-oil-pressure",
        &[
            ("idle", number(LEAST_IDLE_BAR, 1, words).into()),
            ("thousand", number(BAR_PER_1000_RPM, 1, words).into()),
            ("lamp", number(PressureSwitch::TYPICAL.closes_bar, 1, words).into()),
        ],
    ));
    lines
}

/// How many times its resistance at the stated temperature a copper winding has.
fn copper_factor(at: Celsius) -> f64 {
    let winding =
        Winding { ohms_at_20: Ohms(1.0), turns: 1.0, shorted_share: 0.0, joint: Ohms(0.0) };
    winding.terminal_ohms(at).0 / winding.terminal_ohms(STATED_AT).0
}

#[cfg(test)]
mod tests {
    use super::*;

    /// IEC 60028: 0.00393 a degree, so 1.275 at 90 °C.
    #[test]
    fn published_copper_gains_a_quarter_in_a_warm_engine() {
        assert!((copper_factor(Celsius(90.0)) - 1.2751).abs() < 1e-9);
        assert!((copper_factor(Celsius(20.0)) - 1.0).abs() < 1e-12);
    }
}
