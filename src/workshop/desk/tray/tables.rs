//! What the code reader shows, as tables.

use crate::control_module::code::Code;
use crate::instruments::code_reader::LiveItem;
use crate::session::event::{CamData, CamDrive, Event, Frame, LiveValue};
use crate::session::setup::Briefing;
use crate::wording::amounts::number;
use crate::wording::catalogue::Words;
use crate::wording::code_words;
use crate::wording::place::place;
use crate::wording::reader_words::{Row, live_row, readiness_rows, test_row};
use crate::workshop::view::tray::TableView;
use std::collections::BTreeSet;

/// The tables of an event; none for one that no reader shows.
#[must_use]
pub fn tables(event: &Event, briefing: &Briefing, words: &Words) -> Vec<TableView> {
    match event {
        Event::Codes { stored, pending, permanent, lamp, complete } => {
            let lists = [
                ("reader-stored", stored.as_slice()),
                ("reader-pending", pending),
                ("reader-permanent", permanent),
            ];
            let codes = codes(&lists, words);
            let waiting = code_words::waiting(complete, briefing);
            let state = [
                ("reader-lamp", words.say(if *lamp { "reader-on" } else { "reader-off" }, &[])),
                ("reader-run", listed(complete, words)),
                ("reader-waiting", listed(&waiting, words)),
            ];
            let state = state.map(|(key, value)| (words.say(key, &[]), value));
            vec![codes, pairs(state.into())]
        }
        Event::FreezeFrame { frame: Some(frame) } => {
            let mut rows = frame_rows(frame, words);
            if let Some(code) = frame.code {
                rows.insert(0, (words.say("reader-stored-by", &[]), code_words::code(code, words)));
            }
            vec![pairs(rows)]
        }
        Event::LiveData { frame, cams } => {
            vec![pairs(frame_rows(frame, words)), live_cams(cams, words)]
        }
        Event::LiveItems { values } => {
            vec![pairs(values.iter().map(|value| live_row(*value, words)).collect())]
        }
        Event::Readiness { lamp, stored, groups, counters } => {
            let mut rows = vec![
                (words.say("reader-count", &[]), stored.to_string()),
                (
                    words.say("reader-lamp", &[]),
                    words.say(if *lamp { "reader-on" } else { "reader-off" }, &[]),
                ),
            ];
            rows.extend(readiness_rows(groups, counters, words));
            vec![pairs(rows)]
        }
        Event::TestResults { results } => {
            vec![pairs(results.iter().map(|result| test_row(result, words)).collect())]
        }
        Event::VehicleInformation { identification, calibration } => vec![pairs(vec![
            (words.say("reader-identification", &[]), identification.clone()),
            (words.say("reader-calibration", &[]), calibration.clone()),
        ])],
        Event::Driven { cams, decided, .. } if !cams.is_empty() => {
            let run = (words.say("reader-run", &[]), listed(decided, words));
            vec![driven_cams(cams, words), pairs(vec![run])]
        }
        _ => Vec::new(),
    }
}

fn pairs(rows: Vec<Row>) -> TableView {
    let rows = rows.into_iter().map(|(name, value)| vec![name, value]).collect();
    TableView { columns: Vec::new(), rows }
}

fn table<const N: usize>(keys: [&str; N], rows: Vec<Vec<String>>, words: &Words) -> TableView {
    TableView { columns: keys.map(|key| words.say(key, &[])).into(), rows }
}

fn listed(codes: &[Code], words: &Words) -> String {
    if codes.is_empty() {
        words.say("reader-none", &[])
    } else {
        code_words::bare_codes(codes, words)
    }
}

/// Each code once, with every list that it stands in.
fn codes(lists: &[(&str, &[Code])], words: &Words) -> TableView {
    let all: BTreeSet<Code> = lists.iter().flat_map(|(_, codes)| codes.iter().copied()).collect();
    let row = |code: Code| {
        let within = lists.iter().filter(|(_, codes)| codes.contains(&code));
        let status: Vec<String> = within.map(|(key, _)| words.say(key, &[])).collect();
        let meaning = words.find(&format!("code-{code}"), &[]).unwrap_or_default();
        vec![code.to_string(), status.join(&words.say("list-comma", &[])), meaning]
    };
    let mut rows: Vec<Vec<String>> = all.into_iter().map(row).collect();
    if rows.is_empty() {
        rows.push(vec![words.say("reader-no-code", &[]), String::new(), String::new()]);
    }
    table(["reader-code", "reader-status", "reader-meaning"], rows, words)
}

fn frame_rows(frame: &Frame, words: &Words) -> Vec<Row> {
    let values = [
        (LiveItem::EngineSpeed, frame.rpm),
        (LiveItem::Load, frame.load),
        (LiveItem::RoadSpeed, frame.speed),
        (LiveItem::Coolant, frame.coolant),
        (LiveItem::Oil, frame.oil),
        (LiveItem::Supply, frame.supply),
    ];
    let row = |(item, value)| live_row(LiveValue { item, value: Some(value) }, words);
    values.map(row).into()
}

fn live_cams(cams: &[CamData], words: &Words) -> TableView {
    let row = |cam: &CamData| {
        vec![
            place(&cam.valve, words),
            number(cam.wanted, 1, words),
            number(cam.actual, 1, words),
            number(cam.duty, 0, words),
        ]
    };
    let rows = cams.iter().map(row).collect();
    table(["reader-camshaft", "reader-wanted", "reader-actual", "reader-duty"], rows, words)
}

fn driven_cams(cams: &[CamDrive], words: &Words) -> TableView {
    let row = |cam: &CamDrive| {
        vec![
            place(&cam.valve, words),
            number(cam.mean_error, 1, words),
            number(cam.furthest, 0, words),
        ]
    };
    let rows = cams.iter().map(row).collect();
    table(["reader-camshaft", "reader-mean-error", "reader-furthest"], rows, words)
}
