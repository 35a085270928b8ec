//! The starting battery, the generator that charges it and the starter that empties it.
//!
//! Models: the battery is a voltage behind a resistance, both by charge and temperature, with a
//! polarisation on top while it is charged; the generator holds its set-point, which falls with
//! temperature, up to a current that depends on its speed; the starter is a motor of constant field.
//! Limits: no surface charge, no ageing, no heating by the current, no inductance.
//!
//! Figures are engineering estimates; published rest voltages and makers' regulator voltages stand in
//! the tests. Normal cranking leaves 9.6 to 10.5 V at the posts (common practice, many workshop pages).

use crate::numerics::elementary::exp;
use crate::units::{Amperes, Celsius, Ohms, Rpm, Volts, Watts};
use serde::{Deserialize, Serialize};

/// Capacity [A s]: 50 A h.
pub const CAPACITY_A_S: f64 = 50.0 * 3_600.0;
/// Share of the charging current that stays in the battery.
pub const CHARGES: f64 = 0.9;
/// Charge at which the figures of the charged battery were taken: that of 12.65 V at rest.
const FULL: f64 = 0.85 / 0.9;
/// Voltage of a nearly full battery while it is charged [V], and its resistance then [ohm].
const CHARGING_V: f64 = 13.9;
const CHARGING_OHMS: f64 = 0.040;

/// Open-circuit voltage at rest at a charge of 0 to 1: 11.8 V empty to 12.7 V full at 20 °C, with 1.2 mV/K.
#[must_use]
pub fn rest_voltage(charge: f64, temperature: Celsius) -> Volts {
    Volts(11.8 + 0.9 * charge + 0.001_2 * (temperature.0 - 20.0))
}

/// Internal resistance: it rises in the cold, and steeply in a battery that is nearly empty, where acid
/// runs short at the plates.
#[must_use]
pub fn internal(charge: f64, temperature: Celsius) -> Ohms {
    let empty = (1.0 - charge).clamp(0.0, 1.0);
    let squared = empty * empty;
    let starved = squared * squared * squared;
    let by_charge = 1.0 + 1.5 * squared + 12.0 * starved * starved;
    Ohms(0.008 * exp(-0.018 * (temperature.0 - 20.0)) * by_charge)
}

/// Voltage against which a battery is charged, with its resistance then: what is missing in charge is
/// missing in voltage, so that an emptier battery takes more current.
#[must_use]
pub fn while_charged(charge: f64) -> (Volts, Ohms) {
    (Volts(CHARGING_V - 0.9 * (FULL - charge)), Ohms(CHARGING_OHMS))
}

/// Charge after a current out of the battery (negative: into it) for some seconds, within 0 and 1.
#[must_use]
pub fn charge_after(charge: f64, out: Amperes, seconds: f64) -> f64 {
    let stays = if out.0 < 0.0 { CHARGES } else { 1.0 };
    (charge - out.0 * stays * seconds / CAPACITY_A_S).clamp(0.0, 1.0)
}

/// A generator with its regulator.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Generator {
    /// Set-point at 20 °C [V].
    pub volts_at_20: f64,
    /// Fall of the set-point with temperature [V/K].
    pub fall_v_per_k: f64,
    /// Resistance of the regulation [ohm].
    pub ohms: f64,
    /// Current that it approaches at high speed [A].
    pub most_a: f64,
    /// Crankshaft speed at which it begins to give current [rpm].
    pub from_rpm: f64,
    /// Further speed in which it reaches 63 % of its most current [rpm].
    pub rise_rpm: f64,
    /// Efficiency, belt included.
    pub efficiency: f64,
    /// Power that belt, fan and field take without any current [W].
    pub idle_w: f64,
}

impl Generator {
    /// A small vehicle's: 90 A, about 40 A at idle.
    pub const TYPICAL: Self = Self {
        volts_at_20: 14.3,
        fall_v_per_k: 0.006,
        ohms: 0.015,
        most_a: 90.0,
        from_rpm: 450.0,
        rise_rpm: 500.0,
        efficiency: 0.55,
        idle_w: 150.0,
    };

    /// Set-point at a temperature of the regulator.
    #[must_use]
    pub fn set_point(&self, temperature: Celsius) -> Volts {
        Volts(self.volts_at_20 - self.fall_v_per_k * (temperature.0 - 20.0))
    }

    /// Most current at a crankshaft speed.
    #[must_use]
    pub fn limit(&self, speed: Rpm) -> Amperes {
        let above = (speed.0 - self.from_rpm).max(0.0);
        Amperes(self.most_a * (1.0 - exp(-above / self.rise_rpm)))
    }

    /// Mechanical power that it takes for a current at a voltage.
    #[must_use]
    pub fn takes(&self, volts: Volts, current: Amperes) -> Watts {
        Watts(self.idle_w + volts.0 * current.0.max(0.0) / self.efficiency)
    }
}

/// A starter as seen from the crankshaft, its gear included.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Starter {
    /// Voltage that it makes itself for each radian a second of the crankshaft [V s/rad].
    pub volts_per_rad_s: f64,
    /// Winding, brushes, solenoid contact and cable [ohm].
    pub ohms: f64,
    /// Share of the electrical torque that reaches the crankshaft.
    pub gear: f64,
    /// Mean effective pressure of compression and what else an engine without fire resists with [Pa].
    pub compression_pa: f64,
}

/// How a starter turns an engine.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Cranking {
    /// Crankshaft speed [rad/s]; 0 when it does not turn.
    pub rad_s: f64,
    /// Current through the starter.
    pub current: Amperes,
}

/// Crankshaft speed from which an engine fires [rad/s]: 80 rpm, common practice 60 to 100, no source.
const FIRES_FROM_RAD_S: f64 = 80.0 / 60.0 * core::f64::consts::TAU;
/// Halvings of the speed's bracket: to a hundred millionth of it.
const HALVINGS: u32 = 40;

impl Starter {
    /// A small petrol engine's.
    pub const TYPICAL: Self =
        Self { volts_per_rad_s: 0.24, ohms: 0.012, gear: 0.75, compression_pa: 3.4e5 };

    /// Steady cranking on a supply of `open` volts behind `source`, against the engine's torque at a
    /// speed [rad/s], which rises with it.
    #[must_use]
    pub fn cranking(&self, open: Volts, source: Ohms, against_nm: impl Fn(f64) -> f64) -> Cranking {
        let current = |rad_s: f64| (open.0 - self.volts_per_rad_s * rad_s) / (source.0 + self.ohms);
        let spare_nm =
            |rad_s: f64| self.gear * self.volts_per_rad_s * current(rad_s) - against_nm(rad_s);
        let (mut low, mut high) = (0.0, (open.0 / self.volts_per_rad_s).max(0.0));
        if spare_nm(0.0) <= 0.0 {
            return Cranking { rad_s: 0.0, current: Amperes(current(0.0).max(0.0)) };
        }
        for _ in 0..HALVINGS {
            let middle = 0.5 * (low + high);
            if spare_nm(middle) > 0.0 {
                low = middle;
            } else {
                high = middle;
            }
        }
        Cranking { rad_s: low, current: Amperes(current(low)) }
    }
}

impl Cranking {
    /// Whether the engine fires at that speed.
    #[must_use]
    pub fn fires(&self) -> bool {
        self.rad_s >= FIRES_FROM_RAD_S
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    const ROOM: Celsius = Celsius(20.0);

    /// Rest voltages at 100, 75, 50, 25 % from a published workshop table (12.66 to 12.15 V) and from
    /// another (12.6 to 12.0 V): the straight line lies within 0.13 V of both, which differ by 0.15 V.
    #[test]
    fn published_rest_voltages_by_charge() {
        for (charge, one, other) in
            [(1.0, 12.66, 12.6), (0.75, 12.45, 12.4), (0.5, 12.30, 12.2), (0.25, 12.15, 12.0)]
        {
            let ours = rest_voltage(charge, ROOM).0;
            assert!((ours - one).abs() < 0.13 && (ours - other).abs() < 0.13, "{charge}: {ours}");
        }
    }

    /// Two makers' service texts: 13.7 to 14.6 V at a regulator of 20 °C, 14.0 to 15.1 V at -20 °C, 13.2 to
    /// 14.3 V at 60 °C, 12.9 to 14.1 V at 80 °C.
    #[test]
    fn published_regulated_voltage_by_temperature() {
        for (celsius, least, most) in
            [(-20.0, 14.0, 15.1), (20.0, 13.7, 14.6), (60.0, 13.2, 14.3), (80.0, 12.9, 14.1)]
        {
            let ours = Generator::TYPICAL.set_point(Celsius(celsius)).0;
            assert!((least..most).contains(&ours), "{celsius}: {ours}");
        }
    }

    /// A generator against a battery by hand: I = (E1 - E2) / (R1 + R2).
    #[test]
    fn closed_form_charging_current() {
        let (volts, ohms) = while_charged(FULL);
        let by_hand = (14.3 - 13.9) / (0.015 + 0.040);
        let set = Generator::TYPICAL.set_point(ROOM);
        let got = (set.0 - volts.0) / (Generator::TYPICAL.ohms + ohms.0);
        assert!((got - by_hand).abs() < 1e-12);
        // An empty one takes more.
        assert!(while_charged(0.2).0.0 < volts.0 - 0.6);
    }

    /// A current of a twentieth of the capacity empties a full battery in twenty hours.
    #[test]
    fn closed_form_charge_is_current_times_time() {
        let after = charge_after(1.0, Amperes(2.5), 10.0 * 3_600.0);
        assert!((after - 0.5).abs() < 1e-12, "{after}");
        let back = charge_after(after, Amperes(-2.5 / CHARGES), 10.0 * 3_600.0);
        assert!((back - 1.0).abs() < 1e-12, "{back}");
    }

    /// Against a constant torque the motor's own equations give the speed: i = T / (k g), w = (V - i R) / k.
    #[test]
    fn closed_form_cranking_against_a_constant_torque() {
        let starter = Starter::TYPICAL;
        let got = starter.cranking(Volts(12.6), Ohms(0.011), |_| 40.0);
        let current = 40.0 / (0.24 * 0.75);
        assert!((got.current.0 - current).abs() < 1e-6, "{got:?}");
        assert!((got.rad_s - (12.6 - current * 0.023) / 0.24).abs() < 1e-6, "{got:?}");
        // More torque than it has at rest: it stands and takes all the current there is.
        let stands = starter.cranking(Volts(12.6), Ohms(0.011), |_| 200.0);
        assert!(stands.rad_s.abs() < 1e-12 && (stands.current.0 - 12.6 / 0.023).abs() < 1e-9);
        assert!(!stands.fires() && got.fires());
    }

    /// Power in equals heat in the circuit, loss in the gear, and work at the crankshaft.
    #[test]
    fn conserves_energy_of_the_starter() {
        let starter = Starter::TYPICAL;
        let got = starter.cranking(Volts(12.4), Ohms(0.012), |rad_s| 30.0 + 0.4 * rad_s);
        let electrical = 12.4 * got.current.0;
        let heat = got.current.0.powi(2) * (0.012 + starter.ohms);
        let turned = starter.volts_per_rad_s * got.rad_s * got.current.0;
        let work = (30.0 + 0.4 * got.rad_s) * got.rad_s;
        assert!((electrical - heat - turned).abs() < 1e-6);
        assert!((work - starter.gear * turned).abs() < 1e-4, "{work} {turned}");
    }

    proptest! {
        #[test]
        fn prop_a_colder_or_emptier_battery_is_no_stronger(
            charge in 0.0..1.0_f64, celsius in -30.0..40.0_f64, less in 0.0..1.0_f64,
        ) {
            let here = internal(charge, Celsius(celsius)).0;
            prop_assert!(internal(charge * less, Celsius(celsius)).0 >= here - 1e-15);
            prop_assert!(internal(charge, Celsius(celsius - 5.0)).0 > here);
            prop_assert!(rest_voltage(charge * less, Celsius(celsius)).0 <= rest_voltage(charge, Celsius(celsius)).0);
        }

        #[test]
        fn prop_charge_stays_within_its_bounds(charge in 0.0..1.0_f64, amperes in -90.0..600.0_f64, s in 0.0..1e6_f64) {
            prop_assert!((0.0..=1.0).contains(&charge_after(charge, Amperes(amperes), s)));
        }
    }
}
