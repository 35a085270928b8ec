//! Flow through a sharp-edged hole.

use super::area::Area;
use super::row::{Evidence, Ours, Row, Wanted};
use super::sources;
use faultwright::physics::oil::Fluid;
use faultwright::physics::port::Port;

/// Flow [m³/s] through one sharp edge of `area_m2` at a drop. The port is passed twice, once into a
/// chamber and once out of the other, so one edge is a port of √2 of its area.
fn orifice_m3_s(area_m2: f64, drop_pa: f64, density_kg_m3: f64, discharge: f64) -> f64 {
    let port = Port {
        area_mm2: area_m2 * 1e6 * core::f64::consts::SQRT_2,
        screen_mm2: 1e12,
        passage_per_m3: 0.0,
        screen_per_m3: 0.0,
        discharge,
        ..Port::TYPICAL
    };
    let fluid = Fluid { viscosity_pa_s: 0.03, density_kg_m3 };
    port.passage(0.0, &fluid).flow_m3_s(1.0, drop_pa)
}

pub fn area() -> Area {
    let bore_m2 = |diameter_m: f64| core::f64::consts::FRAC_PI_4 * diameter_m * diameter_m;
    let head = orifice_m3_s(0.001, 1_000.0 * 9.81 * 2.0, 1_000.0, 0.62);
    // The drop that drives 30 l/min; flow goes with its root.
    let at_one_bar = orifice_m3_s(bore_m2(2e-3), 1e5, 875.0, 0.62) * 60_000.0;
    let oil_bar = (30.0 / at_one_bar) * (30.0 / at_one_bar);
    let psi_pa = 6_894.757;
    let gpm = orifice_m3_s(bore_m2(0.078_7 * 0.025_4), 100.0 * psi_pa, 1_000.0, 0.63) * 60_000.0
        / 3.785_412;
    let example = |item, source, published, allowed, ours, unit, decimals, reason, evidence| Row {
        item,
        source,
        wanted: Wanted::Value(published, allowed),
        ours: Ours::Value(ours),
        unit,
        decimals,
        reason,
        evidence,
    };
    Area {
        title: "Hydraulics",
        calls: "`physics::port::Port::passage`, `physics::port::Passage::flow_m3_s`",
        note: "Pump, relief valve and phaser have no published worked example; they are compared with \
               other programs below.",
        rows: vec![
            example(
                "water under a head of 2 m through 10 cm², Cd 0.62",
                &sources::ORIFICE_HEAD,
                3.88,
                0.005,
                head * 1e3,
                "l/s",
                3,
                "half of the last printed digit",
                Evidence::WorkedExample,
            ),
            example(
                "drop of 30 l/min of mineral oil over a bore of 2 mm, Cd 0.62",
                &sources::ORIFICE_HYDRAULIC,
                288.0,
                2.0,
                oil_bar,
                "bar",
                1,
                "the example names no density; 875 kg/m³ is taken, 870 to 880 are worth 1.6",
                Evidence::WorkedExample,
            ),
            example(
                "water at 100 psi through a bore of 0.0787 in, Cd 0.63",
                &sources::ORIFICE_US,
                (0.078_7_f64 / 0.23) * (0.078_7 / 0.23) * 10.0,
                0.012,
                gpm,
                "gpm",
                4,
                "the constant 0.23 is rounded, which is worth 1 %",
                Evidence::Published,
            ),
        ],
    }
}
