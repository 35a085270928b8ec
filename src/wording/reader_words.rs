//! What the code reader shows besides codes: chosen live data, readiness, counters, test results.

use super::amounts::number;
use super::catalogue::Words;
use crate::control_module::code_report::Readiness;
use crate::control_module::known_code::ReadinessGroup;
use crate::control_module::test_result::Measure;
use crate::instruments::code_reader::LiveItem;
use crate::session::event::{CounterReading, Event, LiveValue, TestFigures, TestReading};

/// What the reader shows in one of the events that are its own; nothing for any other.
#[must_use]
pub fn shown(event: &Event, words: &Words) -> String {
    match event {
        Event::LiveItems { values } => live_items(values, words),
        Event::Readiness { lamp, stored, groups, counters } => {
            readiness(*lamp, *stored, groups, counters, words)
        }
        Event::TestResults { results } => test_results(results, words),
        Event::VehicleInformation { identification, calibration } => words.say(
            "event-vehicle-information",
            &[
                ("identification", identification.as_str().into()),
                ("calibration", calibration.as_str().into()),
            ],
        ),
        _ => String::new(),
    }
}

/// The message that names something chosen from live data.
#[must_use]
pub const fn live_item_key(item: LiveItem) -> &'static str {
    match item {
        LiveItem::EngineSpeed => "live-engine-speed",
        LiveItem::Load => "live-load",
        LiveItem::RoadSpeed => "live-road-speed",
        LiveItem::Coolant => "live-coolant",
        LiveItem::Oil => "live-oil",
        LiveItem::Supply => "live-supply",
        LiveItem::RunTime => "live-run-time",
    }
}

const fn live_value_key(item: LiveItem) -> &'static str {
    match item {
        LiveItem::EngineSpeed => "amount-rpm",
        LiveItem::Load => "amount-percent",
        LiveItem::RoadSpeed => "amount-km-h",
        LiveItem::Coolant | LiveItem::Oil => "amount-celsius",
        LiveItem::Supply => "amount-volts",
        LiveItem::RunTime => "amount-seconds",
    }
}

/// A name and what the reader shows for it.
pub type Row = (String, String);

/// Chosen live data, a line each.
fn live_items(values: &[LiveValue], words: &Words) -> String {
    let rows: Vec<Row> = values.iter().map(|value| live_row(*value, words)).collect();
    under(vec![words.say("event-live-data", &[])], &rows, words)
}

/// A chosen value of live data.
#[must_use]
pub fn live_row(LiveValue { item, value }: LiveValue, words: &Words) -> Row {
    let decimals = usize::from(item == LiveItem::Supply);
    let shown = value.map_or_else(
        || words.say("reader-not-offered", &[]),
        |value| {
            let value = number(value, decimals, words);
            words.say(live_value_key(item), &[("value", value.into())])
        },
    );
    (words.say(live_item_key(item), &[]), shown)
}

/// Lines with rows below them.
fn under(mut lines: Vec<String>, rows: &[Row], words: &Words) -> String {
    for (name, value) in rows {
        let arguments = [("name", name.as_str().into()), ("value", value.as_str().into())];
        lines.push(format!("  {}", words.say("reader-line", &arguments)));
    }
    lines.join("\n")
}

const fn group_key(group: ReadinessGroup) -> &'static str {
    match group {
        ReadinessGroup::Misfire => "ready-misfire",
        ReadinessGroup::FuelSystem => "ready-fuel-system",
        ReadinessGroup::Components => "ready-components",
        ReadinessGroup::Catalyst => "ready-catalyst",
        ReadinessGroup::FuelVapour => "ready-fuel-vapour",
        ReadinessGroup::OxygenSensors => "ready-oxygen-sensors",
        ReadinessGroup::ValveTiming => "ready-valve-timing",
    }
}

/// Lamp, number of codes, each group of monitors, and the counters that the module has.
fn readiness(
    lamp: bool,
    stored: u8,
    groups: &[Readiness],
    counters: &CounterReading,
    words: &Words,
) -> String {
    let lines = vec![
        words.say("event-readiness", &[("stored", stored.into())]),
        words.say(if lamp { "lamp-asked" } else { "lamp-not-asked" }, &[]),
    ];
    under(lines, &readiness_rows(groups, counters, words), words)
}

/// Each group of monitors and each counter that the module has.
#[must_use]
pub fn readiness_rows(groups: &[Readiness], counters: &CounterReading, words: &Words) -> Vec<Row> {
    let group = |ready: &Readiness| {
        let key = if ready.is_complete { "ready-complete" } else { "ready-waiting" };
        (words.say(group_key(ready.group), &[]), words.say(key, &[]))
    };
    let mut rows: Vec<Row> = groups.iter().map(group).collect();
    for (key, unit, value) in [
        ("counter-warm-ups", None, counters.warm_ups),
        ("counter-distance", Some("amount-km"), counters.distance),
        ("counter-time", Some("amount-running-minutes"), counters.time),
        ("counter-lamp-distance", Some("amount-km"), counters.lamp_distance),
        ("counter-lamp-time", Some("amount-running-minutes"), counters.lamp_time),
    ] {
        let Some(value) = value else {
            continue;
        };
        let figure = number(value, 0, words);
        let value = match unit {
            Some(unit) => words.say(unit, &[("value", figure.into())]),
            None => figure,
        };
        rows.push((words.say(key, &[]), value));
    }
    rows
}

/// From a share to per cent.
const PERCENT: f64 = 100.0;

const fn measure_key(measure: Measure) -> &'static str {
    match measure {
        Measure::TimeOffTarget => "measure-time-off-target",
        Measure::HuntingShare => "measure-hunting-share",
        Measure::ResponseTime => "measure-response-time",
        Measure::TimeWrongAtRest => "measure-time-wrong-at-rest",
        Measure::TimeOfCircuitFault => "measure-time-of-circuit-fault",
        Measure::TimeOfSupplyFault => "measure-time-of-supply-fault",
        Measure::TimeOfOilPressureFault => "measure-time-of-oil-pressure-fault",
    }
}

/// Each test with its last value and limits, or that it has not run.
fn test_results(results: &[TestReading], words: &Words) -> String {
    let rows: Vec<Row> = results.iter().map(|result| test_row(result, words)).collect();
    under(vec![words.say("event-test-results", &[])], &rows, words)
}

/// A test with its last value and limits, or that it has not run.
#[must_use]
pub fn test_row(result: &TestReading, words: &Words) -> Row {
    let what = words.say(measure_key(result.measure), &[]);
    let value = match result.figures {
        None => words.say("test-waiting", &[]),
        Some(figures) => figures_in_words(result.measure, &figures, words),
    };
    let code = result.code.to_string();
    (words.say("test-name", &[("code", code.into()), ("measure", what.into())]), value)
}

fn figures_in_words(measure: Measure, figures: &TestFigures, words: &Words) -> String {
    let (unit, scale, decimals) = match measure {
        Measure::HuntingShare => ("amount-percent", PERCENT, 0),
        _ => ("amount-seconds", 1.0, 2),
    };
    let figure = |value: f64| number(value * scale, decimals, words);
    let most = words.say(unit, &[("value", figure(figures.most).into())]);
    let key = if figures.passes { "test-passed" } else { "test-failed" };
    words.say(
        key,
        &[
            ("value", figure(figures.value).into()),
            ("least", figure(figures.least).into()),
            ("most", most.into()),
        ],
    )
}
