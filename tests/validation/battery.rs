//! The starting battery, the generator's regulator and the starter.

use super::area::Area;
use super::row::{Evidence, Ours, Row, Wanted};
use super::sources::{self, Source};
use faultwright::instruments::multimeter::{Display, Multimeter};
use faultwright::physics::battery::{Generator, internal, rest_voltage};
use faultwright::scenario::load::demo;
use faultwright::session::attempt::Session;
use faultwright::session::event::Event;
use faultwright::session::setup::Hidden;
use faultwright::units::Celsius;
use faultwright::vehicle::condition::Condition;
use faultwright::wording::step_parser;
use std::sync::Arc;

const ROOM: Celsius = Celsius(20.0);
/// Temperature and voltage of the cold cranking test of EN 50342-1, from memory.
const COLD: Celsius = Celsius(-18.0);
const COLD_TEST_V: f64 = 7.5;

pub fn area() -> Area {
    let mut rows = at_rest();
    rows.extend(regulated());
    rows.push(Row {
        item: "internal resistance, full, 20 °C",
        source: &sources::BATTERY_RESISTANCE,
        wanted: Wanted::Range(0.0, 10.0),
        ours: Ours::Value(internal(1.0, ROOM).0 * 1e3),
        unit: "mohm",
        decimals: 1,
        reason: "less than 10 mohm for a good one",
        evidence: Evidence::Published,
    });
    rows.push(Row {
        item: "cold cranking current, full, -18 °C, down to 7.5 V",
        source: &sources::COLD_CRANKING,
        wanted: Wanted::Range(300.0, 600.0),
        ours: Ours::Value((rest_voltage(1.0, COLD).0 - COLD_TEST_V) / internal(1.0, COLD).0),
        unit: "A",
        decimals: 0,
        reason: "ratings of batteries of 50 A h",
        evidence: Evidence::Memory,
    });
    let posts = posts_while_cranking();
    for (source, least, most, reason) in [
        (&sources::CRANKING_SERVICE, 9.6, 12.5, "9.6 V or more, and less than 12.5 V"),
        (&sources::CRANKING_PAGE, 9.5, 10.5, "9.5 to 10.5 V"),
    ] {
        rows.push(Row {
            item: "battery's posts while the starter turns the engine",
            source,
            wanted: Wanted::Range(least, most),
            ours: Ours::Value(posts),
            unit: "V",
            decimals: 2,
            reason,
            evidence: Evidence::Published,
        });
    }
    Area {
        title: "Battery, generator and starter",
        calls: "`physics::battery::{rest_voltage, internal}`, `physics::battery::Generator::set_point`, \
                and for the starter a session's own meter on the battery while the key is held",
        note: "The straight line of the rest voltages was chosen with tables 1 and 2 in view: their rows \
               show how far a straight line lies from them, not that it was foretold. The starter's \
               current stands among the figures that were chosen.",
        rows,
    }
}

fn at_rest() -> Vec<Row> {
    let row = |item, charge, source: &'static Source, published, decimals| {
        // At a quarter the tables differ by 0.15 V, at nothing by 0.29 V.
        let is_empty = charge <= 0.0;
        Row {
            item,
            source,
            wanted: Wanted::Value(published, if is_empty { 0.3 } else { 0.15 }),
            ours: Ours::Value(rest_voltage(charge, ROOM).0),
            unit: "V",
            decimals,
            reason: if is_empty {
                "the tables differ by as much"
            } else {
                "as the tables among them"
            },
            evidence: if source.key == sources::BATTERY_HANDBOOK.key {
                Evidence::Memory
            } else {
                Evidence::Published
            },
        }
    };
    let mut rows = Vec::new();
    for (item, charge, first, second, third) in [
        ("battery at rest, full", 1.0, 12.66, 12.6, 12.65),
        ("battery at rest, three quarters", 0.75, 12.45, 12.4, 12.45),
        ("battery at rest, half", 0.5, 12.30, 12.2, 12.24),
        ("battery at rest, a quarter", 0.25, 12.15, 12.0, 12.06),
    ] {
        rows.push(row(item, charge, &sources::BATTERY_MOTORHOME, first, 2));
        rows.push(row(item, charge, &sources::BATTERY_LIST, second, 1));
        rows.push(row(item, charge, &sources::BATTERY_HANDBOOK, third, 2));
    }
    let empty = "battery at rest, empty";
    rows.push(row(empty, 0.0, &sources::BATTERY_LIST, 11.6, 1));
    rows.push(row(empty, 0.0, &sources::BATTERY_HANDBOOK, 11.89, 2));
    rows
}

fn regulated() -> impl Iterator<Item = Row> {
    [
        ("regulated voltage at -20 °C", -20.0, 14.0, 15.1),
        ("regulated voltage at 20 °C", 20.0, 13.7, 14.6),
        ("regulated voltage at 60 °C", 60.0, 13.2, 14.3),
        ("regulated voltage at 80 °C", 80.0, 12.9, 14.1),
    ]
    .into_iter()
    .map(|(item, celsius, least, most)| Row {
        item,
        source: &sources::REGULATOR,
        wanted: Wanted::Range(least, most),
        ours: Ours::Value(Generator::TYPICAL.set_point(Celsius(celsius)).0),
        unit: "V",
        decimals: 1,
        reason: "the range of the text",
        evidence: Evidence::Published,
    })
}

/// What a session's meter shows at the battery of the sound vehicle while the starter turns it.
fn posts_while_cranking() -> f64 {
    let briefing = Arc::new(demo().expect("the scenario that the program carries").briefing());
    let hidden = Hidden {
        condition: Condition::sound(&briefing.vehicle),
        faults: Vec::new(),
        old_codes: Vec::new(),
        meter: Multimeter::ideal(),
        seed: 0,
    };
    let mut session =
        Session::begin_without_history(Arc::clone(&briefing), hidden).expect("a session");
    let mut shown = f64::NAN;
    for line in ["key crank", "measure volts battery-plus battery-minus"] {
        let step = step_parser::parse(line, &briefing).expect("a step").expect("a step");
        for event in session.take(&step).expect("a step that can be taken") {
            if let Event::Reading { display: Display::Value { value, .. }, .. } = event {
                shown = value;
            }
        }
    }
    shown
}
