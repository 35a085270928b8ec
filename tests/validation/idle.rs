//! Burnt gas in the cylinders, on which idle hangs.

use super::area::Area;
use super::row::{Evidence, Ours, Row, Wanted};
use super::sources::{self, Source};
use faultwright::physics::combustion::Breathing;

const BREATHING: Breathing = Breathing::TYPICAL;
/// Pressures in the exhaust [bar], and speeds [rev/s].
const IDLE_EXHAUST_BAR: f64 = 1.03;
const IDLE_REV_S: f64 = 700.0 / 60.0;
const FULL_EXHAUST_BAR: f64 = 1.1;
const FULL_REV_S: f64 = 3_000.0 / 60.0;

pub fn area() -> Area {
    let row =
        |item, source: &'static Source, published, allowed, ours, decimals, reason, evidence| Row {
            item,
            source,
            wanted: Wanted::Value(published, allowed),
            ours: Ours::Value(ours),
            unit: "",
            decimals,
            reason,
            evidence,
        };
    let half = BREATHING.residual(1.0, 12.5, 0.5, 1.0);
    let at_rest = BREATHING.overlap_factor(BREATHING.overlap_at_rest_deg);
    let idle = BREATHING.residual(at_rest, IDLE_REV_S, 0.35, IDLE_EXHAUST_BAR);
    let full = BREATHING.residual(at_rest, FULL_REV_S, 1.0, FULL_EXHAUST_BAR);
    Area {
        title: "Burnt gas and idle",
        calls: "`physics::combustion::Breathing::{residual, overlap_factor}`",
        note: "The speed at idle is compared with another program below.",
        rows: vec![
            // 2^0.74 = 1.670 176
            row(
                "left in the clearance of a cylinder of 10.5 to 1, half the exhaust's pressure",
                &sources::RESIDUAL_GAS,
                0.100_529,
                1e-6,
                half.kept,
                6,
                "the last digit by hand",
                Evidence::ClosedForm,
            ),
            // 2^0.87 = 1.827 663
            row(
                "drawn back at an overlap factor of 1 degree/m, 12.5 rev/s, half the exhaust's pressure",
                &sources::RESIDUAL_GAS,
                0.130_889,
                1e-6,
                half.back,
                6,
                "the last digit by hand",
                Evidence::ClosedForm,
            ),
            row(
                "residual gas at hot idle, camshafts at rest (700 rpm, 0.35 bar)",
                &sources::RESIDUAL_TEXTBOOK,
                0.20,
                0.07,
                idle.total(),
                2,
                "a round figure for light load",
                Evidence::Memory,
            ),
            row(
                "residual gas at full load, camshafts at rest (3000 rpm, 1 bar)",
                &sources::RESIDUAL_TEXTBOOK,
                0.07,
                0.02,
                full.total(),
                2,
                "a round figure for full load",
                Evidence::Memory,
            ),
        ],
    }
}
