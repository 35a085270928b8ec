//! Copper: windings against temperature.

use super::area::Area;
use super::row::{Evidence, Ours, Row, Wanted};
use super::sources::{self, Source};
use faultwright::physics::coil::Winding;
use faultwright::physics::wire::{Cable, copper_ohms};
use faultwright::units::{Celsius, Ohms};

fn winding(ohms_at_20: f64, at_c: f64) -> f64 {
    let winding = Winding { ohms_at_20: Ohms(ohms_at_20), ..Winding::REFERENCE };
    winding.terminal_ohms(Celsius(at_c)).0
}

pub fn area() -> Area {
    let mut rows = vec![
        Row {
            item: "copper at 90 °C over copper at 20 °C",
            source: &sources::COPPER_IACS,
            wanted: Wanted::Value(1.28, 0.005),
            ours: Ours::Value(winding(1.0, 90.0)),
            unit: "",
            decimals: 4,
            reason: "printed as 28 %",
            evidence: Evidence::Published,
        },
        ratio("copper at 0 °C over copper at 20 °C", 0.0),
        ratio("copper at 120 °C over copper at 20 °C", 120.0),
    ];
    // Each limit at 20 °C with what the same table gives for 0 and 40 °C.
    for (item_cold, item_warm, at_20, cold, warm) in [
        ("coil of 6.9 ohm at 0 °C", "coil of 6.9 ohm at 40 °C", 6.9, 6.3, 7.4),
        ("coil of 7.9 ohm at 0 °C", "coil of 7.9 ohm at 40 °C", 7.9, 7.3, 8.6),
        ("coil of 5.8 ohm at 0 °C", "coil of 5.8 ohm at 40 °C", 5.8, 5.3, 6.2),
        ("coil of 6.8 ohm at 0 °C", "coil of 6.8 ohm at 40 °C", 6.8, 6.3, 7.4),
    ] {
        rows.push(window(item_cold, cold, winding(at_20, 0.0)));
        rows.push(window(item_warm, warm, winding(at_20, 40.0)));
    }
    rows.extend(gauges());
    rows.extend(cables());
    Area {
        title: "Copper",
        calls: "`physics::coil::Winding::terminal_ohms`, `physics::wire::copper_ohms`, \
                `physics::wire::Cable::ohms`",
        note: "The coefficient 0.00393/K is itself a published figure (IEC 60028) and is not compared \
               with itself; these are values that others derived or measured.",
        rows,
    }
}

fn ratio(item: &'static str, at_c: f64) -> Row {
    Row {
        item,
        source: &sources::COPPER_STANDARD_TEST,
        wanted: Wanted::Value((234.5 + at_c) / 254.5, 1e-3),
        ours: Ours::Value(winding(1.0, at_c)),
        unit: "",
        decimals: 4,
        reason: "234.5 is 1/0.00393 less 20, rounded to a half",
        evidence: Evidence::Published,
    }
}

/// Solid wire by American wire gauge: diameter from the gauge's own definition, 0.127 mm · 92^((36 - n)/39).
fn gauges() -> impl Iterator<Item = Row> {
    // Per 1000 ft.
    [
        ("1000 ft of gauge 22", 0.643_8, 16.14, 0.05),
        ("1000 ft of gauge 24", 0.510_6, 25.67, 0.05),
        ("1000 ft of gauge 26", 0.404_9, 40.81, 0.05),
        ("1000 ft of gauge 28", 0.321_1, 64.90, 0.1),
        ("1000 ft of gauge 29", 0.285_9, 81.83, 0.1),
        ("1000 ft of gauge 30", 0.254_6, 103.2, 0.2),
    ]
    .into_iter()
    .map(|(item, diameter_mm, published, allowed)| {
        let mm2 = core::f64::consts::FRAC_PI_4 * diameter_mm * diameter_mm;
        Row {
            item,
            source: &sources::WIRE_TABLE,
            wanted: Wanted::Value(published, allowed),
            ours: Ours::Value(copper_ohms(304.8, mm2, Celsius(20.0)).0),
            unit: "ohm",
            decimals: 2,
            reason: "the table's digits and resistivity agree among themselves to 0.1 %",
            evidence: Evidence::Published,
        }
    })
}

/// Cables lie between solid copper and the largest resistance that the standard allows them.
fn cables() -> impl Iterator<Item = Row> {
    [
        ("1 m of cable of 0.5 mm²", 0.5, 39.0),
        ("1 m of cable of 0.75 mm²", 0.75, 26.0),
        ("1 m of cable of 1 mm²", 1.0, 19.5),
        ("1 m of cable of 1.5 mm²", 1.5, 13.3),
        ("1 m of cable of 2.5 mm²", 2.5, 7.98),
        ("1 m of cable of 4 mm²", 4.0, 4.95),
        ("1 m of cable of 6 mm²", 6.0, 3.30),
        ("1 m of cable of 10 mm²", 10.0, 1.91),
        ("1 m of cable of 16 mm²", 16.0, 1.21),
        ("1 m of cable of 25 mm²", 25.0, 0.780),
    ]
    .into_iter()
    .map(|(item, mm2, most)| Row {
        item,
        source: &sources::IEC_60228,
        wanted: Wanted::Range(1e3 / (58.0 * mm2), most),
        ours: Ours::Value(1e3 * Cable { metres: 1.0, mm2 }.ohms(Celsius(20.0)).0),
        unit: "mohm",
        decimals: 3,
        reason: "solid copper of 1/58 ohm mm²/m to the largest of class 5",
        evidence: Evidence::Published,
    })
}

const COILS: &Source = &sources::SERVICE_COILS;

fn window(item: &'static str, printed: f64, ours: f64) -> Row {
    Row {
        item,
        source: COILS,
        wanted: Wanted::Value(printed, 0.11),
        ours: Ours::Value(ours),
        unit: "ohm",
        decimals: 2,
        reason: "both ends of the line are rounded to 0.1",
        evidence: Evidence::Published,
    }
}
