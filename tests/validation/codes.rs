//! Trouble codes: their two bytes and the rules by which they come and go.

use super::area::Area;
use super::row::{Evidence, Ours, Row, Wanted};
use super::sources;
use faultwright::control_module::code::Code;
use faultwright::control_module::code_record::{ClosedCycle, CodeRecord};
use faultwright::control_module::known_code::KnownCode;
use faultwright::control_module::warm_up::WarmUp;
use faultwright::units::Celsius;

/// State of a code's record after driving cycles: F fails, P passes, N does not run, C is a clear;
/// each cycle warms up.
fn after(cycles: &str) -> String {
    let known = KnownCode::general(Code(0x0011));
    let mut record = CodeRecord::default();
    for cycle in cycles.chars() {
        match cycle {
            'F' => record.fail(&known),
            'P' => record.pass(),
            'C' => {
                record.clear();
                continue;
            }
            _ => {}
        }
        let is_warm_up = true;
        record.key_off(ClosedCycle { is_driving_cycle: true, is_warm_up, is_long_drive: false });
    }
    let facts = [
        (record.is_pending(), "pending"),
        (record.is_confirmed(), "confirmed"),
        (record.is_permanent(), "permanent"),
        (record.lights_lamp(), "lamp"),
    ];
    let held: Vec<&str> = facts.into_iter().filter(|(is, _)| *is).map(|(_, name)| name).collect();
    if held.is_empty() { "nothing".to_owned() } else { held.join(", ") }
}

fn warm_up(start_c: f64, end_c: f64) -> String {
    let mut warm_up = WarmUp::default();
    warm_up.engine_started(Celsius(start_c));
    (if warm_up.take(Celsius(end_c)) { "counts" } else { "does not count" }).to_owned()
}

pub fn area() -> Area {
    let row = |item, source, published, ours, reason, evidence| Row {
        item,
        source,
        wanted: Wanted::Words(published),
        ours: Ours::Words(ours),
        unit: "",
        decimals: 0,
        reason,
        evidence,
    };
    let mut rows: Vec<Row> = [
        ("bytes 01 43", 0x0143, "P0143"),
        ("bytes 01 35", 0x0135, "P0135"),
        ("bytes 01 27", 0x0127, "P0127"),
        ("bytes C0 73", 0xC073, "U0073"),
        ("bytes 90 00", 0x9000, "B1000"),
        ("bytes 80 39", 0x8039, "B0039"),
        ("bytes 40 31", 0x4031, "C0031"),
        ("bytes 96 A1", 0x96A1, "B16A1"),
    ]
    .into_iter()
    .map(|(item, bytes, published)| {
        let code = Code(bytes);
        // There and back: what is read from the text is the same two bytes.
        let ours = match published.parse::<Code>() {
            Ok(read) if read == code => code.to_string(),
            other => format!("{code}, read back as {other:?}"),
        };
        row(item, &sources::CODE_EXAMPLES, published, ours, "exact", Evidence::WorkedExample)
    })
    .collect();
    let forty = format!("FFPPP{}", "N".repeat(40));
    let thirty_nine = format!("FFPPP{}", "N".repeat(39));
    for (item, cycles, published) in [
        ("after one failing cycle", "F", "pending"),
        ("after a failing and a passing one", "FP", "nothing"),
        ("after two failing ones", "FF", "pending, confirmed, permanent, lamp"),
        ("after two more that pass", "FFPP", "confirmed, permanent, lamp"),
        ("after three that pass", "FFPPP", "confirmed"),
        ("39 warm-ups with the lamp out", &thirty_nine, "confirmed"),
        ("40 warm-ups with the lamp out", &forty, "nothing"),
        ("after a clear", "FFC", "permanent"),
        ("after a clear and one passing cycle", "FFCP", "nothing"),
    ] {
        rows.push(row(
            item,
            &sources::SERVICE_CODES,
            published,
            after(cycles),
            "exact",
            Evidence::Published,
        ));
    }
    for (item, start_c, end_c, published) in [
        ("warm-up from 20 to 71 °C", 20.0, 71.0, "counts"),
        ("warm-up from 49 to 71 °C", 49.0, 71.0, "counts"),
        ("warm-up from 55 to 75 °C", 55.0, 75.0, "does not count"),
        ("warm-up from 20 to 70 °C", 20.0, 70.0, "does not count"),
    ] {
        rows.push(row(
            item,
            &sources::SERVICE_WARM_UP,
            published,
            warm_up(start_c, end_c),
            "exact",
            Evidence::Published,
        ));
    }
    Area {
        title: "Trouble codes",
        calls: "`control_module::code::Code`, `control_module::code_record::CodeRecord`, \
                `control_module::warm_up::WarmUp`",
        note: "The rules were built from the same service text that the rows quote, so the rows show \
               that they were built as written, not that a vehicle does it so. Some service text \
               counts the lamp as out from the fourth start; the end of the third passing cycle is \
               taken here.",
        rows,
    }
}
