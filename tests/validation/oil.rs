//! Oil: viscosity against temperature.

use super::area::Area;
use super::row::{Evidence, Ours, Row, Wanted, digits};
use super::sources;
use faultwright::physics::oil::{Grade, Oil, ViscosityCurve, viscosity_index};
use faultwright::units::Celsius;

fn curve(kv40_mm2_s: f64, kv100_mm2_s: f64) -> ViscosityCurve {
    Oil { kv40_mm2_s, kv100_mm2_s, ..Oil::TYPICAL_5W_30 }.curve().expect("an oil")
}

pub fn area() -> Area {
    let sheet = curve(32.0, 5.4);
    let gear = curve(404.0, 28.0);
    let hydraulic = curve(68.0, 8.8);
    let example = |item, source, published, allowed, ours, unit, decimals, reason| Row {
        item,
        source,
        wanted: Wanted::Value(published, allowed),
        ours: Ours::Value(ours),
        unit,
        decimals,
        reason,
        evidence: Evidence::WorkedExample,
    };
    Area {
        title: "Oil",
        calls: "`physics::oil::Oil::curve`, `physics::oil::ViscosityCurve::kinematic_mm2_s`, \
                `physics::oil::viscosity_index`, `physics::oil::Grade::hot_limits`",
        note: "The limits of the grades were copied from the table that the rows quote: they show that \
               no digit was mistyped. The typical oil of a grade was chosen within them and is listed \
               below.",
        rows: [
            vec![
                example(
                    "A of the curve through 32 and 5.4 mm²/s",
                    &sources::ASTM_D341_SHEET,
                    9.5259,
                    0.006,
                    sheet.intercept,
                    "",
                    4,
                    "the sheet takes 0 °C as 273 K; with that the same formula gives 9.5259",
                ),
                example(
                    "B of the same curve",
                    &sources::ASTM_D341_SHEET,
                    3.7449,
                    0.002,
                    sheet.slope,
                    "",
                    4,
                    "as above",
                ),
                example(
                    "the same oil at 80 °C",
                    &sources::ASTM_D341_SHEET,
                    8.5,
                    0.05,
                    sheet.kinematic_mm2_s(Celsius(80.0)),
                    "mm²/s",
                    2,
                    "half of the last printed digit",
                ),
                example(
                    "gear oil of 404 and 28 mm²/s at 60 °C",
                    &sources::ASTM_D341_PAGE,
                    132.126,
                    0.004,
                    gear.kinematic_mm2_s(Celsius(60.0)),
                    "mm²/s",
                    3,
                    "where 0 °C is put, 273 or 273.15 K, moves it by 0.0034",
                ),
                example(
                    "oil of 68 and 8.8 mm²/s at 80 °C",
                    &sources::ASTM_D341_PAGE,
                    14.85,
                    0.08,
                    hydraulic.kinematic_mm2_s(Celsius(80.0)),
                    "mm²/s",
                    3,
                    "the 8.8 is printed to 0.1, which is worth 0.07 here",
                ),
            ],
            indices(),
            limits(),
        ]
        .concat(),
    }
}

/// Viscosity indices, from the examples of the standard and of a page about it.
fn indices() -> Vec<Row> {
    [
        (
            "viscosity index of 73.30 and 8.86 mm²/s (procedure A)",
            &sources::ASTM_D2270,
            92.43,
            0.05,
            (73.30, 8.86),
            2,
            "the reference oils come from parabolas that meet the standard's table to a few hundredths",
            Evidence::WorkedExample,
        ),
        (
            "viscosity index of 22.83 and 5.05 mm²/s (procedure B)",
            &sources::ASTM_D2270,
            156.37,
            0.15,
            (22.83, 5.05),
            2,
            "as above",
            Evidence::WorkedExample,
        ),
        (
            "viscosity index of 53.47 and 7.80 mm²/s (procedure B)",
            &sources::ASTM_D2270,
            111.0,
            0.5,
            (53.47, 7.80),
            1,
            "half of the last printed digit; only the 53.47 was read, the rest is from memory",
            Evidence::Memory,
        ),
        (
            "viscosity index of 68 and 8.8 mm²/s",
            &sources::ASTM_D341_PAGE,
            102.0,
            1.6,
            (68.0, 8.8),
            1,
            "the 8.8 is printed to 0.1, which is worth 1.3, and the index to 1",
            Evidence::WorkedExample,
        ),
    ]
    .into_iter()
    .map(|(item, source, published, allowed, (cool, hot), decimals, reason, evidence)| Row {
        item,
        source,
        wanted: Wanted::Value(published, allowed),
        ours: Ours::Value(viscosity_index(cool, hot).expect("an index")),
        unit: "",
        decimals,
        reason,
        evidence,
    })
    .collect()
}

/// Limits of the grades at 100 °C, as they stand in the table.
fn limits() -> Vec<Row> {
    [
        ("0W-20 at 100 °C", Grade::Sae0W20, "at least 6.9, below 9.3 mm²/s"),
        ("0W-30 at 100 °C", Grade::Sae0W30, "at least 9.3, below 12.5 mm²/s"),
        ("5W-30 at 100 °C", Grade::Sae5W30, "at least 9.3, below 12.5 mm²/s"),
        ("5W-40 at 100 °C", Grade::Sae5W40, "at least 12.5, below 16.3 mm²/s"),
        ("10W-40 at 100 °C", Grade::Sae10W40, "at least 12.5, below 16.3 mm²/s"),
        ("15W-40 at 100 °C", Grade::Sae15W40, "at least 12.5, below 16.3 mm²/s"),
        ("20W-50 at 100 °C", Grade::Sae20W50, "at least 16.3, below 21.9 mm²/s"),
    ]
    .into_iter()
    .map(|(item, grade, published)| {
        let limits = grade.hot_limits();
        let least = digits(limits.least_mm2_s, 1);
        let below = digits(limits.below_mm2_s, 1);
        Row {
            item,
            source: &sources::SAE_J300,
            wanted: Wanted::Words(published),
            ours: Ours::Words(format!("at least {least}, below {below} mm²/s")),
            unit: "",
            decimals: 0,
            reason: "exact",
            evidence: Evidence::Published,
        }
    })
    .collect()
}
