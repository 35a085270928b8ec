//! Trays by hand, each end somewhere and each text as long as it comes.

use super::samples::LONG;
use crate::instruments::multimeter::{Display, MeterFunction, Prefix};
use crate::vehicle::spec::Id;
use crate::workshop::view::tray::{
    End, EndView, MeterSetting, Named, PredictionView, ReadingView, ReadyView, Tool, TrayView,
    WhichView,
};
use std::collections::BTreeMap;

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

/// A meter that has read, its black lead where something is in the way.
pub fn meter() -> TrayView {
    let end = |at| EndView { places: points(), at: Some(at), blocked: None };
    let black = EndView { blocked: Some(LONG.to_owned()), ..end(3) };
    TrayView {
        is_out: true,
        tool: Tool::Meter,
        ends: BTreeMap::from([(End::Red, end(1)), (End::Black, black)]),
        held: None,
        which: None,
        meter: MeterSetting { function: MeterFunction::Ohms, from_front: true },
        ready: ReadyView {
            line: Some("measure ohms battery-plus exhaust-harness-control from-front".to_owned()),
            cost: Some("Takes 3 min.".to_owned()),
            predicted: Some("Predict from 7 to 9 Ω".to_owned()),
        },
        reading: Some(ReadingView {
            number: 2,
            display: Some(Display::Value { value: -4_120.0, decimals: 3, prefix: Prefix::Kilo }),
            prediction: Some(PredictionView {
                said: "Predict from 7 to 9 Ω".to_owned(),
                outcome: LONG.to_owned(),
                met: false,
            }),
        }),
    }
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
