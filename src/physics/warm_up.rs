//! How an engine warms up and cools down: coolant and oil as two bodies of heat.
//!
//! Model: combustion heats the coolant and, by a share, the oil; they exchange heat with each other
//! and with the air; a thermostat opens the radiator over a span. Limits: no fan, no road-speed
//! dependence, no gradient in the block.

use crate::numerics::elementary::exp;
use crate::units::{Celsius, Rpm, Watts};
use serde::{Deserialize, Serialize};

/// Heat capacities and conductances of an engine (engineering estimates throughout).
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct WarmUp {
    /// Heat capacity of coolant and block [J/K].
    pub coolant_j_k: f64,
    /// Heat capacity of the oil and what it washes [J/K].
    pub oil_j_k: f64,
    /// Conductance between the two [W/K].
    pub coolant_oil_w_k: f64,
    /// Conductance from oil to air [W/K].
    pub oil_air_w_k: f64,
    /// Conductance from coolant to air with the thermostat shut [W/K].
    pub coolant_air_w_k: f64,
    /// Further conductance with the thermostat open [W/K].
    pub radiator_w_k: f64,
    /// Temperature at which the thermostat begins to open [°C].
    pub thermostat_c: f64,
    /// Further temperature until it is open [K], more than 0.
    pub thermostat_span_k: f64,
    /// Further share of the coolant's heat that goes into the oil, 0 to 1.
    pub oil_share: f64,
    /// Heat into the coolant for each 1000 rpm without load [W].
    pub idle_w_per_krpm: f64,
    /// Further heat for each 1000 rpm at full load [W].
    pub load_w_per_krpm: f64,
}

impl WarmUp {
    /// A four-cylinder engine of about two litres: 3.5 kW at idle, 13 kW on a main road.
    pub const TYPICAL: Self = Self {
        coolant_j_k: 45e3,
        oil_j_k: 16e3,
        coolant_oil_w_k: 160.0,
        oil_air_w_k: 25.0,
        coolant_air_w_k: 12.0,
        radiator_w_k: 1_500.0,
        thermostat_c: 88.0,
        thermostat_span_k: 10.0,
        oil_share: 0.12,
        idle_w_per_krpm: 4_000.0,
        load_w_per_krpm: 5_000.0,
    };

    /// Heat that combustion gives the coolant at a speed and a load of 0 to 1.
    #[must_use]
    pub fn heat(&self, speed: Rpm, load: f64) -> Watts {
        Watts(speed.0 / 1_000.0 * (self.idle_w_per_krpm + self.load_w_per_krpm * load))
    }
}

impl Default for WarmUp {
    fn default() -> Self {
        Self::TYPICAL
    }
}

/// The two temperatures of an engine.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct EngineHeat {
    /// Coolant.
    pub coolant: Celsius,
    /// Oil.
    pub oil: Celsius,
}

impl EngineHeat {
    /// An engine that has stood for a night.
    #[must_use]
    pub const fn cold(ambient: Celsius) -> Self {
        Self { coolant: ambient, oil: ambient }
    }

    /// Moves on by `dt_s` seconds, at most 1, with a heat from combustion.
    #[inline]
    pub fn step(&mut self, engine: &WarmUp, heat: Watts, ambient: Celsius, dt_s: f64) {
        let (coolant_c, oil_c) = (self.coolant.0, self.oil.0);
        let opened = (coolant_c - engine.thermostat_c) / engine.thermostat_span_k;
        let to_air_w_k = engine.coolant_air_w_k + engine.radiator_w_k * opened.clamp(0.0, 1.0);
        let across_w = engine.coolant_oil_w_k * (coolant_c - oil_c);
        let coolant_w = heat.0 - across_w - to_air_w_k * (coolant_c - ambient.0);
        let oil_w = engine.oil_share * heat.0 + across_w - engine.oil_air_w_k * (oil_c - ambient.0);
        self.coolant.0 += coolant_w / engine.coolant_j_k * dt_s;
        self.oil.0 += oil_w / engine.oil_j_k * dt_s;
    }
}

/// The deck above the cylinders: it is hotter than the coolant while the engine works, and soaks the
/// coolant and what sits in the head once the engine stands (engineering estimates).
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct DeckSpec {
    /// Heat capacity of what gets hotter than the coolant [J/K].
    pub deck_j_k: f64,
    /// Conductance to the coolant with the water pump turning [W/K].
    pub pumped_w_k: f64,
    /// The same with the engine standing [W/K].
    pub standing_w_k: f64,
    /// Share of the radiator that works without pump and fan, 0 to 1.
    pub standing_radiator: f64,
}

impl DeckSpec {
    /// A four-cylinder engine's.
    pub const TYPICAL: Self =
        Self { deck_j_k: 15e3, pumped_w_k: 350.0, standing_w_k: 150.0, standing_radiator: 0.03 };
}

/// How much hotter than the coolant the deck is.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize)]
pub struct Deck {
    /// Excess over the coolant [K].
    pub excess_k: f64,
}

impl Deck {
    /// Takes combustion's heat for `dt_s` seconds and returns what it passes on to the coolant: the exact
    /// mean of the relaxation, so that no heat is lost at any step.
    pub fn step(&mut self, spec: &DeckSpec, heat: Watts, pumped: bool, dt_s: f64) -> Watts {
        let w_k = if pumped { spec.pumped_w_k } else { spec.standing_w_k };
        let goal_k = heat.0 / w_k;
        let before_k = self.excess_k;
        self.excess_k = goal_k + (before_k - goal_k) * exp(-dt_s * w_k / spec.deck_j_k);
        Watts(heat.0 - spec.deck_j_k * (self.excess_k - before_k) / dt_s)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[expect(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "a small whole number of periods"
    )]
    fn after(heat_w: f64, seconds: f64, dt_s: f64) -> EngineHeat {
        let mut engine = EngineHeat::cold(Celsius(20.0));
        for _ in 0..(seconds / dt_s).round() as u32 {
            engine.step(&WarmUp::TYPICAL, Watts(heat_w), Celsius(20.0), dt_s);
        }
        engine
    }

    /// The preparatory study's four warm-ups by an adaptive solver, printed to whole degrees.
    #[test]
    fn reference_warm_up_table() {
        let times = [0.0, 60.0, 120.0, 300.0, 600.0, 900.0, 1200.0, 1800.0];
        for (heat_w, coolant, oil) in [
            (3.5e3, [20, 24, 28, 39, 54, 67, 78, 88], [20, 22, 25, 34, 48, 60, 70, 81]),
            (7e3, [20, 29, 37, 58, 88, 89, 89, 89], [20, 24, 30, 49, 77, 84, 84, 84]),
            (13e3, [20, 36, 51, 89, 89, 89, 89, 89], [20, 28, 39, 73, 88, 88, 88, 88]),
            (25e3, [20, 51, 80, 90, 90, 90, 90, 90], [20, 36, 56, 92, 97, 97, 97, 97]),
        ] {
            for (k, seconds) in times.into_iter().enumerate() {
                let got = after(heat_w, seconds, 0.1);
                // Half a printed degree, and 0.05 K for a step of 0.1 s.
                assert!((got.coolant.0 - f64::from(coolant[k])).abs() < 0.55, "{heat_w} {seconds}");
                assert!((got.oil.0 - f64::from(oil[k])).abs() < 0.55, "{heat_w} {seconds}");
            }
        }
    }

    /// Steady state by hand: oil = (share·P + Gco·Tc + Goa·Ta) / (Gco + Goa), and the sums of heat
    /// in and out agree.
    #[test]
    fn conserves_heat_at_the_steady_state() {
        let spec = WarmUp::TYPICAL;
        let engine = after(13e3, 7_200.0, 0.5);
        let (c, o) = (engine.coolant.0, engine.oil.0);
        let oil_by_hand =
            (spec.oil_share * 13e3 + spec.coolant_oil_w_k * c + spec.oil_air_w_k * 20.0)
                / (spec.coolant_oil_w_k + spec.oil_air_w_k);
        assert!((o - oil_by_hand).abs() < 1e-9);
        let open = (c - spec.thermostat_c) / spec.thermostat_span_k;
        let out_w = spec.oil_air_w_k * (o - 20.0)
            + (spec.coolant_air_w_k + spec.radiator_w_k * open) * (c - 20.0);
        assert!((out_w / (13e3 * (1.0 + spec.oil_share)) - 1.0).abs() < 1e-9);
    }

    #[test]
    fn closed_form_step_is_of_first_order() {
        let truth = after(7e3, 60.0, 1e-3).oil.0;
        let (coarse, fine) = (after(7e3, 60.0, 1.0).oil.0, after(7e3, 60.0, 0.5).oil.0);
        let ratio = (coarse - truth) / (fine - truth);
        assert!((1.9..2.1).contains(&ratio), "{ratio}");
    }

    /// Constant heat: the excess goes to P / G with the time constant C / G.
    #[test]
    fn closed_form_deck_relaxes_exponentially() {
        let spec = DeckSpec::TYPICAL;
        let mut deck = Deck::default();
        for _ in 0..300 {
            deck.step(&spec, Watts(10e3), true, 0.1);
        }
        // 30 s are 0.7 time constants of 15 kJ/K over 350 W/K.
        assert!((deck.excess_k - 10e3 / 350.0 * (1.0 - exp(-0.7))).abs() < 1e-9, "{deck:?}");
    }

    /// Two bodies with the thermostat shut decay along the eigenvectors of their matrix; the slower eigenvalue
    /// by the quadratic formula.
    #[test]
    fn closed_form_cooling_has_the_matrix_s_eigenvalue() {
        let spec = WarmUp::TYPICAL;
        let (a, b) = (spec.coolant_j_k, spec.oil_j_k);
        let (g, ga, gb) = (spec.coolant_oil_w_k, spec.coolant_air_w_k, spec.oil_air_w_k);
        let trace = -((g + ga) / a + (g + gb) / b);
        let determinant = ((g + ga) * (g + gb) - g * g) / (a * b);
        let slow_per_s = 0.5 * (trace + (trace * trace - 4.0 * determinant).sqrt());
        let mut engine = EngineHeat { coolant: Celsius(80.0), oil: Celsius(80.0) };
        let mut at = |seconds: u32| {
            for _ in 0..seconds * 10 {
                engine.step(&spec, Watts(0.0), Celsius(20.0), 0.1);
            }
            engine.coolant.0 - 20.0
        };
        // The faster part dies within minutes.
        let first = at(1_200);
        let second = at(1_200);
        let got = crate::numerics::elementary::ln(second / first) / 1_200.0;
        assert!((got / slow_per_s - 1.0).abs() < 1e-3, "{got} {slow_per_s}");
    }

    #[test]
    fn reference_heat_of_idle_and_main_road() {
        let heat = |rpm, load| WarmUp::TYPICAL.heat(Rpm(rpm), load).0;
        assert!((heat(700.0, 0.2) - 3.5e3).abs() < 1.0);
        assert!((heat(2_250.0, 0.35) - 13e3).abs() < 100.0);
    }

    proptest! {
        /// Heat in is heat stored and heat lost, whatever the engine does, at every step.
        #[test]
        fn conserves_heat_through_deck_coolant_and_oil(
            heats in proptest::collection::vec(0.0..30e3_f64, 1..60), start in -20.0..100.0_f64, air in -20.0..35.0_f64,
        ) {
            let (spec, deck_spec) = (WarmUp::TYPICAL, DeckSpec::TYPICAL);
            let mut engine = EngineHeat { coolant: Celsius(start), oil: Celsius(start) };
            let mut deck = Deck::default();
            let stored = |engine: &EngineHeat, deck: &Deck| {
                spec.coolant_j_k * engine.coolant.0
                    + spec.oil_j_k * engine.oil.0
                    + deck_spec.deck_j_k * deck.excess_k
            };
            let before = stored(&engine, &deck);
            let (mut came, mut went) = (0.0, 0.0);
            for (k, heat_w) in heats.iter().enumerate() {
                let passed = deck.step(&deck_spec, Watts(*heat_w), k % 3 > 0, 0.1);
                let (c, o) = (engine.coolant.0, engine.oil.0);
                let open = ((c - spec.thermostat_c) / spec.thermostat_span_k).clamp(0.0, 1.0);
                went += 0.1 * (spec.oil_air_w_k * (o - air)
                    + (spec.coolant_air_w_k + spec.radiator_w_k * open) * (c - air));
                // The oil's further share comes from combustion beside what the deck passes on.
                came += 0.1 * (heat_w + spec.oil_share * passed.0);
                engine.step(&spec, passed, Celsius(air), 0.1);
            }
            let gained = stored(&engine, &deck) - before;
            prop_assert!((came - went - gained).abs() < 1e-6 * (1.0 + came.abs() + went.abs()), "{came} {went} {gained}");
        }

        /// An engine that is off falls to the temperature of the air and no further.
        #[test]
        fn limit_an_engine_that_is_off_cools_to_the_air(start in 30.0_f64..120.0, air in -20.0_f64..30.0) {
            let mut engine = EngineHeat { coolant: Celsius(start), oil: Celsius(start) };
            for _ in 0..36_000 {
                engine.step(&WarmUp::TYPICAL, Watts(0.0), Celsius(air), 1.0);
                prop_assert!(engine.coolant.0 >= air && engine.oil.0 >= air);
            }
            prop_assert!(engine.coolant.0 - air < 1.0 + 0.02 * (start - air));
        }
    }
}
