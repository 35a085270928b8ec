//! Networks and the meter in them.

use super::area::Area;
use super::bench;
use super::row::{Evidence, Ours, Row, Wanted};
use super::sources;
use faultwright::instruments::multimeter::{Display, MeterFunction, Prefix};
use faultwright::physics::circuit::{Element, Network, Solution};

/// Two sources, each with a resistance of its own, side by side on one resistor.
fn side_by_side(first: (f64, f64), second: (f64, f64), shared_ohms: f64) -> Solution {
    let mut network = Network::with_nodes(2);
    for (volts, ohms) in [first, second] {
        network.add(Element::Source { plus: 1, minus: 0, volts, ohms });
    }
    network.add(Element::Resistor { a: 1, b: 0, ohms: shared_ohms });
    network.solve().expect("a solution")
}

pub fn area() -> Area {
    let two = side_by_side((9.0, 26.0), (12.0, 37.0), 62.0);
    let jump = side_by_side((12.0, 0.01), (10.0, 1.0), 0.06);
    let example = |item, published, ours, allowed, decimals| Row {
        item,
        source: &sources::KIRCHHOFF_TWO,
        wanted: Wanted::Value(published, allowed),
        ours: Ours::Value(ours),
        unit: "A",
        decimals,
        reason: "half of the last printed digit",
        evidence: Evidence::WorkedExample,
    };
    let starter = |item, published, ours: f64, allowed, decimals| Row {
        item,
        source: &sources::JUMP_START,
        wanted: Wanted::Value(published, allowed),
        ours: Ours::Value(ours),
        unit: "A",
        decimals,
        reason: "half of the last printed digit",
        evidence: Evidence::Memory,
    };
    let mut rows = vec![
        example("two batteries, current of 26 ohm", 0.03, two.amperes(0), 0.005, 3),
        example("two batteries, current of 62 ohm", 0.13, two.amperes(2), 0.005, 3),
        example("two batteries, current of 37 ohm", 0.102, two.amperes(1), 0.000_5, 4),
        starter("jump start, current of the starter", 171.0, jump.amperes(2), 0.5, 1),
        starter("jump start, current into the flat battery", 0.283, -jump.amperes(1), 0.000_5, 4),
    ];
    rows.extend(meter());
    Area {
        title: "Networks and the meter",
        calls: "`physics::circuit::Network::solve`, `instruments::multimeter::Multimeter::read`, \
                `instruments::multimeter::Display::tolerance`",
        note: "The largest range on ohms ends at 6 Mohm, while service information asks for 40 Mohm \
               before a meter shows OL: a leak between the two reads OL here.",
        rows,
    }
}

fn meter() -> Vec<Row> {
    let loaded = bench::read(MeterFunction::Volts, &[("battery-plus", "tip", 1e5)], "tip");
    let whole = bench::read(MeterFunction::Volts, &[], "battery-plus");
    let halved = bench::read(MeterFunction::Volts, &[("battery-plus", "tip", 1e7)], "tip");
    // A coil of 7.40 ohm on the lowest range, one decimal there.
    let coil = Display::Value { value: 7.4, decimals: 1, prefix: Prefix::One };
    let volts = Display::Value { value: 12.6, decimals: 2, prefix: Prefix::One };
    vec![
        Row {
            item: "share left of a voltage behind 0.1 Mohm",
            source: &sources::LOADING,
            wanted: Wanted::Value(0.99, 0.001),
            ours: Ours::Value(loaded / whole),
            unit: "",
            decimals: 4,
            reason: "one count of the display is 0.0008 of the battery's voltage",
            evidence: Evidence::WorkedExample,
        },
        Row {
            item: "input resistance on volts, from what it takes of a voltage behind 10 Mohm",
            source: &sources::METER_SERVICE,
            wanted: Wanted::Range(9.9, 40.0),
            ours: Ours::Value(10.0 * halved / (whole - halved)),
            unit: "Mohm",
            decimals: 2,
            reason: "10 Mohm or more, to a hundredth for the display's rounding",
            evidence: Evidence::Published,
        },
        Row {
            item: "tolerance of 7.4 ohm at 0.9 % and 2 counts of 0.1",
            source: &sources::ARITHMETIC,
            wanted: Wanted::Value(0.009 * 7.4 + 0.2, 1e-12),
            ours: Ours::Value(coil.tolerance(MeterFunction::Ohms)),
            unit: "ohm",
            decimals: 4,
            reason: "rounding of the arithmetic",
            evidence: Evidence::ClosedForm,
        },
        Row {
            item: "tolerance of 12.60 V at 0.5 % and 3 counts of 0.01",
            source: &sources::ARITHMETIC,
            wanted: Wanted::Value(0.063 + 0.03, 1e-12),
            ours: Ours::Value(volts.tolerance(MeterFunction::Volts)),
            unit: "V",
            decimals: 4,
            reason: "rounding of the arithmetic",
            evidence: Evidence::ClosedForm,
        },
    ]
}
