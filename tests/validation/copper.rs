//! Copper: windings against temperature.

use super::area::Area;
use super::row::{Evidence, Ours, Row, Wanted};
use super::sources::{self, Source};
use faultwright::physics::coil::Winding;
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
    Area {
        title: "Copper",
        calls: "`physics::coil::Winding::terminal_ohms`",
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
