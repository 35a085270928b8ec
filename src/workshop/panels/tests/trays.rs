//! Trays by hand, each end somewhere and each text as long as it comes.

use super::samples::LONG;
use crate::instruments::multimeter::{Display, MeterFunction, Prefix};
use crate::instruments::scope::{Capture, Cursors, Signal};
use crate::instruments::test_lamp::Glow;
use crate::vehicle::spec::Id;
use crate::workshop::view::counter::{CounterView, JobView, Trade};
use crate::workshop::view::tray::{
    End, EndView, GaugeSetting, MeterSetting, Named, PowerSetting, PredictionView, ReadingView,
    ReadyView, Request, Shown, TableView, Tool, TrayView, WhichView,
};
use std::sync::Arc;

fn named(id: &str) -> Named {
    Named { id: Id::from(id), name: id.replace('-', " ") }
}

/// Points as a vehicle has them, the name of the last as long as one comes.
fn points() -> Vec<Named> {
    let mut points: Vec<Named> =
        ["battery-minus", "battery-plus", "intake-valve-control"].map(named).into();
    let name = "contact of the exhaust valve’s plug on the harness side, control wire".to_owned();
    points.push(Named { id: Id::from("exhaust-harness-control"), name });
    points
}

/// A tool in hand, every end somewhere, one where something is in the way; it showed something that was not predicted.
pub fn showing(tool: Tool, shown: Shown) -> TrayView {
    let end = |end| {
        let blocked = (end == End::Black || end == End::Jaws).then(|| LONG.to_owned());
        (
            end,
            EndView { places: points(), at: Some(if blocked.is_some() { 3 } else { 1 }), blocked },
        )
    };
    TrayView {
        tools: Tool::ALL.to_vec(),
        is_out: true,
        tool,
        ends: End::ALL.map(end).into(),
        held: None,
        which: None,
        meter: MeterSetting { function: MeterFunction::Ohms, from_front: true },
        power: PowerSetting { seconds: 5, reversed: true },
        signal: Signal::CoilCurrent,
        gauge: GaugeSetting { rpm: Some(2_000), warm: true },
        request: Request::Codes,
        roads: EndView { places: points(), at: Some(0), blocked: None },
        counter: counter(),
        ready: ReadyView {
            line: Some("measure ohms battery-plus exhaust-harness-control from-front".to_owned()),
            cost: Some("Takes 3 min.".to_owned()),
            predicted: Some("Predict from 7 to 9 Ω".to_owned()),
        },
        reading: Some(ReadingView {
            number: 2,
            shown,
            words: vec![LONG.to_owned()],
            prediction: Some(PredictionView {
                said: "Predict from 7 to 9 Ω".to_owned(),
                outcome: LONG.to_owned(),
                met: false,
            }),
        }),
    }
}

/// A meter that has read.
pub fn meter() -> TrayView {
    let display = Display::Value { value: -4_120.0, decimals: 3, prefix: Prefix::Kilo };
    showing(Tool::Meter, Shown::Display(display))
}

/// A meter with its red lead in hand and nothing read.
pub fn meter_in_hand() -> TrayView {
    TrayView {
        held: Some(End::Red),
        ready: ReadyView::default(),
        reading: None,
        ends: End::ALL.map(|end| (end, EndView { places: points(), ..EndView::default() })).into(),
        ..meter()
    }
}

/// A meter whose lead was put on a thing with several contacts.
pub fn meter_asking() -> TrayView {
    let which = WhichView { end: End::Red, thing: named("intake-connector"), places: points() };
    TrayView { which: Some(which), ..meter_in_hand() }
}

/// A scope that has captured a current with a dip.
pub fn scope() -> TrayView {
    let points = (0..200_u8).map(|point| {
        let rise = f64::from(point) / 200.0;
        if (60..70).contains(&point) { rise - 0.1 } else { rise }
    });
    let capture = Capture {
        signal: Signal::CoilCurrent,
        interval_s: 0.0005,
        points: points.collect(),
        cursors: Cursors::Current { dip: None, end_a: 0.995 },
    };
    showing(Tool::Scope, Shown::Course(Arc::new(capture)))
}

/// A reader that has shown codes, with the longest texts in its columns.
pub fn reader() -> TrayView {
    let row = |cells: &[&str]| cells.iter().map(|cell| (*cell).to_owned()).collect();
    let codes = TableView {
        columns: row(&["Code", "Status", "Meaning"]),
        rows: vec![row(&["P0011", "stored, pending, permanent", LONG]), row(&["none", "", ""])],
    };
    let cams = TableView {
        columns: row(&["Camshaft by its valve", "Wanted [°]", "Actual [°]", "Duty [%]"]),
        rows: vec![row(&["exhaust valve", "-12.5", "-10.5", "100"])],
    };
    let pairs = TableView { columns: Vec::new(), rows: vec![row(&["Monitors that wait", LONG])] };
    showing(Tool::Reader, Shown::Tables(vec![codes, cams, pairs]))
}

/// A counter with long names, one of them chosen, and one without a price.
fn counter() -> CounterView {
    let job = |line: &str, price: Option<&str>, is_start| JobView {
        line: line.to_owned(),
        name: LONG.to_owned(),
        price: price.map(str::to_owned),
        is_start,
    };
    CounterView {
        trade: Trade::Parts,
        jobs: vec![
            job("fit exhaust-valve hd-4470-1", Some("Takes 12 min and £48.20."), false),
            job("write cause ", None, true),
        ],
        chosen: Some("fit exhaust-valve hd-4470-1".to_owned()),
    }
}

/// Every tool with what it shows.
pub fn all() -> Vec<(&'static str, TrayView)> {
    vec![
        ("case, meter", meter()),
        ("case, meter in hand", meter_in_hand()),
        ("case, meter asking", meter_asking()),
        ("case, lamp", showing(Tool::Lamp, Shown::Glow(Glow::Dim))),
        ("case, probe", showing(Tool::Clamp, Shown::Display(Display::OverLimit))),
        ("case, power lead", showing(Tool::Power, Shown::Words)),
        ("case, scope", scope()),
        ("case, reader", reader()),
        ("case, gauge", showing(Tool::Gauge, Shown::Needle { bar: 3.4, swing: 0.6 })),
        ("case, dipstick", showing(Tool::Dipstick, Shown::Stick(Some(0.4)))),
        ("case, counter", showing(Tool::Counter, Shown::Words)),
        ("case, road", TrayView { tool: Tool::Drive, ..reader() }),
    ]
}
