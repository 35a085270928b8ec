//! Oil: viscosity against temperature.

use super::area::Area;
use super::row::{Evidence, Ours, Row, Wanted};
use super::sources;
use faultwright::physics::oil::{Oil, ViscosityCurve};
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
        calls: "`physics::oil::Oil::curve`, `physics::oil::ViscosityCurve::kinematic_mm2_s`",
        note: "",
        rows: vec![
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
    }
}
