//! What becomes of an oil in service: heat thickens it, fuel thins it, both and water make sludge.
//!
//! Model, an engineering estimate in its figures throughout. Hours count by heat: an oxidation runs
//! twice as fast for every 10 K (the chemist's rule of thumb; Arrhenius). As long as the additives
//! hold, viscosity hardly moves; once they are spent it climbs ever more steeply, as the bench tests
//! of oils show. Fuel thins by the mixing rule of Arrhenius, `ln ν = Σ x ln ν`. Sludge comes from
//! spent oil and from hours in which the oil never got warm enough to drive water and fuel out.
//! Limits: no shear of the viscosity improver, which in a usual interval about balances the slow
//! early thickening; no soot; fuel does not boil off.

use super::Oil;
use super::grade::{Base, Grade};
use crate::numerics::elementary::{exp, ln, log10, pow};

/// Temperature at which an hour counts as one [°C].
const COUNTED_AT_C: f64 = 100.0;
/// Temperature rise that doubles the rate [K].
const DOUBLING_K: f64 = 10.0;
/// Slow thickening while the additives hold, over their whole life.
const SLOW_THICKENING: f64 = 0.05;
/// How steeply it climbs once they are spent: factor on the square of the life overrun.
const STEEP_THICKENING: f64 = 0.8;
/// What no pump here would still draw: the greatest thickening of the model.
const MOST_THICKENING: f64 = 3.0;
/// Lives overrun that make as much sludge as a whole cold life.
const LIVES_OF_HOT_SLUDGE: f64 = 2.0;
/// Kinematic viscosity of the heavy ends of petrol that stay in oil at 40 and 100 °C [mm²/s].
const FUEL_MM2_S: (f64, f64) = (0.7, 0.45);
/// Density of those [kg/m³].
const FUEL_KG_M3: f64 = 760.0;

impl Base {
    /// Hours at 100 °C that its additives hold.
    const fn life_h(self) -> f64 {
        match self {
            Self::Mineral => 700.0,
            Self::PartSynthetic => 1_000.0,
            Self::Synthetic => 1_400.0,
        }
    }

    /// Hours of cold running that it takes up before sludge settles.
    const fn cold_life_h(self) -> f64 {
        match self {
            Self::Mineral => 150.0,
            Self::PartSynthetic => 250.0,
            Self::Synthetic => 400.0,
        }
    }
}

/// What an oil has been through.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Service {
    /// Engine hours since it was fresh [h], 0 or more.
    pub hours: f64,
    /// Its mean temperature in those hours [°C].
    pub mean_c: f64,
    /// Share of them in which it did not get warm, 0 to 1.
    pub cold_share: f64,
    /// Share of fuel in its volume, 0 to 0.2.
    pub fuel_share: f64,
}

impl Service {
    /// How much of its additives' life an oil has used: 1 is spent, more is beyond.
    #[must_use]
    pub fn lives_used(&self, base: Base) -> f64 {
        self.hours * pow(2.0, (self.mean_c - COUNTED_AT_C) / DOUBLING_K) / base.life_h()
    }

    /// The hours at `mean_c` after which an oil has used `lives` of its additives' life.
    #[must_use]
    pub fn hours_for(lives: f64, base: Base, mean_c: f64) -> f64 {
        lives * base.life_h() / pow(2.0, (mean_c - COUNTED_AT_C) / DOUBLING_K)
    }

    /// Factor on the viscosity at 40 °C by oxidation, 1 to 3.
    #[must_use]
    pub fn thickening(&self, base: Base) -> f64 {
        let lives = self.lives_used(base).max(0.0);
        let overrun = (lives - 1.0).max(0.0);
        (1.0 + SLOW_THICKENING * lives + STEEP_THICKENING * overrun * overrun).min(MOST_THICKENING)
    }

    /// How much sludge it carries and has left behind, from 0 (clean) to 1 (thick deposits).
    #[must_use]
    pub fn sludge(&self, base: Base) -> f64 {
        let hot = self.lives_used(base) / LIVES_OF_HOT_SLUDGE;
        let cold = self.hours * self.cold_share / base.cold_life_h();
        1.0 - exp(-(hot * hot + cold * cold))
    }
}

/// Two oils mixed, `share` (0 to 1) of the volume being the `other`: blending of the double
/// logarithms at 40 and at 100 °C, as ASTM D7152 does (from memory).
#[must_use]
pub fn blend(one: &Oil, other: &Oil, share: f64) -> Oil {
    let double_log = |nu_mm2_s: f64| log10(log10(nu_mm2_s + super::WALTHER_SHIFT));
    let nu = |one: f64, other: f64| {
        let mixed = double_log(one) * (1.0 - share) + double_log(other) * share;
        pow(10.0, pow(10.0, mixed)) - super::WALTHER_SHIFT
    };
    let straight = |one: f64, other: f64| one * (1.0 - share) + other * share;
    // Without a share of the other the figures stay to the last bit.
    if share <= 0.0 {
        return *one;
    }
    Oil {
        kv40_mm2_s: nu(one.kv40_mm2_s, other.kv40_mm2_s),
        kv100_mm2_s: nu(one.kv100_mm2_s, other.kv100_mm2_s),
        density_15_kg_m3: straight(one.density_15_kg_m3, other.density_15_kg_m3),
        ..*one
    }
}

/// An oil of a grade, perhaps with a share of another in it, after its service.
#[must_use]
pub fn in_service(grade: Grade, other: Option<(Grade, f64)>, service: &Service) -> Oil {
    let fresh = match other {
        Some((other, share)) => blend(&grade.typical(), &other.typical(), share),
        None => grade.typical(),
    };
    let fuel = service.fuel_share;
    let thinned = |oil_mm2_s: f64, fuel_mm2_s: f64| {
        if fuel > 0.0 {
            exp((1.0 - fuel) * ln(oil_mm2_s) + fuel * ln(fuel_mm2_s))
        } else {
            oil_mm2_s
        }
    };
    Oil {
        kv40_mm2_s: thinned(fresh.kv40_mm2_s, FUEL_MM2_S.0),
        kv100_mm2_s: thinned(fresh.kv100_mm2_s, FUEL_MM2_S.1),
        density_15_kg_m3: fresh.density_15_kg_m3 * (1.0 - fuel) + FUEL_KG_M3 * fuel,
        thickening: service.thickening(grade.base()),
        dilution: 1.0,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::Celsius;
    use proptest::prelude::*;

    const FRESH: Service = Service { hours: 0.0, mean_c: 95.0, cold_share: 0.3, fuel_share: 0.0 };

    fn hot_mm2_s(grade: Grade, service: Service) -> f64 {
        in_service(grade, None, &service).curve().unwrap().kinematic_mm2_s(Celsius(100.0))
    }

    #[test]
    fn limit_a_fresh_oil_is_its_data_sheet() {
        for grade in Grade::ALL {
            assert_eq!(in_service(grade, None, &FRESH), grade.typical());
            assert_eq!(FRESH.sludge(grade.base()).to_bits(), 0.0_f64.to_bits());
        }
    }

    /// A fill of a usual age must behave as the fresh oil does: a laboratory condemns an oil at 20
    /// to 25 % of its hot viscosity (common practice, from memory).
    #[test]
    fn limit_a_usual_interval_changes_little() {
        for hours in [40.0, 60.0, 220.0] {
            let service = Service { hours, ..FRESH };
            let share = hot_mm2_s(Grade::Sae5W30, service) / 10.6;
            assert!((1.0..1.01).contains(&share), "{hours} {share}");
            assert!(service.sludge(Base::Synthetic) < 0.05);
        }
    }

    /// 210 viscosities of every grade in six states by an independent program
    /// (`tests/reference/oil_service.py`).
    #[test]
    fn reference_oils_in_service_against_another_program() {
        let table = include_str!("../../../tests/reference/oil_service.csv");
        let mut rows = 0;
        for line in table.lines().skip(1) {
            let field: Vec<&str> = line.split(',').collect();
            let number = |k: usize| field[k].parse::<f64>().unwrap();
            let grade = |k: usize| Grade::try_from(field[k].to_owned()).unwrap();
            let service = Service {
                hours: number(3),
                mean_c: number(4),
                cold_share: 0.3,
                fuel_share: number(5),
            };
            let oil = in_service(grade(0), Some((grade(1), number(2))), &service);
            let got = oil.curve().unwrap().kinematic_mm2_s(Celsius(number(6)));
            // Nine digits are printed.
            assert!((got / number(7) - 1.0).abs() < 1e-8, "{line}: {got}");
            rows += 1;
        }
        assert_eq!(rows, 210);
    }

    /// Trade literature on used-oil analysis: as little as 5 % of fuel makes an SAE 30 as thin as an
    /// SAE 20.
    #[test]
    fn published_five_per_cent_of_fuel_costs_a_grade() {
        let hot = hot_mm2_s(Grade::Sae5W30, Service { fuel_share: 0.05, ..FRESH });
        assert!(Grade::Sae0W20.hot_limits().hold(hot), "{hot}");
        assert!(!Grade::Sae5W30.hot_limits().hold(hot), "{hot}");
    }

    /// Ten kelvin more are as good as twice the hours.
    #[test]
    fn closed_form_ten_kelvin_double_the_hours() {
        let hot = Service { hours: 300.0, mean_c: 110.0, ..FRESH };
        let long = Service { hours: 600.0, mean_c: 100.0, ..FRESH };
        assert!((hot.lives_used(Base::Mineral) - long.lives_used(Base::Mineral)).abs() < 1e-12);
        let hours = Service::hours_for(2.0, Base::Synthetic, 110.0);
        let worn = Service { hours, mean_c: 110.0, ..FRESH };
        assert!((worn.lives_used(Base::Synthetic) - 2.0).abs() < 1e-12);
        assert!((worn.thickening(Base::Synthetic) - 1.9).abs() < 1e-12);
    }

    /// Halves of two like oils are that oil; halves of two others lie between them.
    #[test]
    fn closed_form_blends_lie_between_their_parts() {
        let (thin, thick) = (Grade::Sae5W30.typical(), Grade::Sae20W50.typical());
        let same = blend(&thin, &thin, 0.5);
        assert!((same.kv40_mm2_s - thin.kv40_mm2_s).abs() < 1e-9);
        let half = blend(&thin, &thick, 0.5);
        assert!(
            (61.7..165.0).contains(&half.kv40_mm2_s) && (10.6..18.5).contains(&half.kv100_mm2_s)
        );
        let all = blend(&thin, &thick, 1.0);
        assert!((all.kv100_mm2_s - 18.5).abs() < 1e-9);
    }

    proptest! {
        /// Viscosity falls with temperature for every grade in every state.
        #[test]
        fn prop_every_oil_thins_with_heat(
            number in 0_usize..7, hours in 0.0_f64..2_000.0, mean_c in 60.0_f64..130.0,
            fuel_share in 0.0_f64..0.15, share in 0.0_f64..1.0, at in -20.0_f64..140.0,
        ) {
            let service = Service { hours, mean_c, cold_share: 0.5, fuel_share };
            let other = Some((Grade::Sae20W50, share));
            let curve = in_service(Grade::ALL[number], other, &service).curve().unwrap();
            prop_assert!(curve.kinematic_mm2_s(Celsius(at + 1.0)) < curve.kinematic_mm2_s(Celsius(at)));
        }

        /// More hours, more heat or more cold running never clean an oil; more fuel never thickens it.
        #[test]
        fn prop_service_only_wears(
            hours in 0.0_f64..2_000.0, mean_c in 60.0_f64..130.0, cold_share in 0.0_f64..1.0,
            fuel_share in 0.0_f64..0.14, more in 0.0_f64..0.5,
        ) {
            let now = Service { hours, mean_c, cold_share, fuel_share };
            for base in [Base::Mineral, Base::PartSynthetic, Base::Synthetic] {
                for later in [
                    Service { hours: hours * (1.0 + more), ..now },
                    Service { mean_c: mean_c + 10.0 * more, ..now },
                    Service { cold_share: (cold_share + more).min(1.0), ..now },
                ] {
                    prop_assert!(later.thickening(base) >= now.thickening(base));
                    prop_assert!(later.sludge(base) >= now.sludge(base));
                    prop_assert!((0.0..=1.0).contains(&later.sludge(base)));
                }
            }
            let thinner = Service { fuel_share: fuel_share + 0.01, ..now };
            prop_assert!(hot_mm2_s(Grade::Sae5W30, thinner) < hot_mm2_s(Grade::Sae5W30, now));
        }
    }
}
