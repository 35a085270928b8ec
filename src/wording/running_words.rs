//! The running engine: lamps, idle, what the module senses, and a road test.

use super::amounts::{number, with_capital};
use super::catalogue::Words;
use super::code_words::{bare_codes, code};
use super::place::place;
use crate::control_module::code::Code;
use crate::session::event::{CamData, CamDrive, Frame};
use crate::session::step::KeyPosition;
use crate::vehicle::run_record::Idling;
use crate::vehicle::spec::Id;

/// A road test as it went.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Drive<'a> {
    /// Road.
    pub route: &'a Id,
    /// The engine lamp was on at the end.
    pub engine_lamp: bool,
    /// The oil pressure lamp lit.
    pub oil_lamp: bool,
    /// How it drove.
    pub quality: Idling,
    /// Camshafts on the way.
    pub cams: &'a [CamDrive],
    /// Codes whose monitors ran to a decision.
    pub decided: &'a [Code],
    /// When the driver pulled in and turned back [s]; `None` for the whole road.
    pub stopped_after: Option<u16>,
}

/// The key was turned, with what the lamps show.
#[must_use]
pub fn key_turned(
    position: KeyPosition,
    engine_lamp: bool,
    oil_lamp: bool,
    words: &Words,
) -> String {
    let key = match position {
        KeyPosition::Off => return words.say("event-key-off", &[]),
        KeyPosition::On => "event-key-on",
        KeyPosition::Start => "event-key-start",
        KeyPosition::Crank => "event-key-crank",
    };
    words.say(key, &[("lamps", lamps(engine_lamp, oil_lamp, words).into())])
}

fn lamps(engine: bool, oil: bool, words: &Words) -> String {
    let key = match (engine, oil) {
        (false, false) => "lamps-none",
        (true, false) => "lamps-engine",
        (false, true) => "lamps-oil",
        (true, true) => "lamps-both",
    };
    words.say(key, &[])
}

/// The message for how an engine idles.
#[must_use]
pub const fn idle_key(quality: Idling) -> &'static str {
    match quality {
        Idling::Smooth => "idle-smooth",
        Idling::Rough => "idle-rough",
        Idling::Stalls => "idle-stalls",
        Idling::DoesNotStart => "idle-does-not-start",
    }
}

const fn drive_key(quality: Idling) -> &'static str {
    match quality {
        Idling::Smooth => "drive-smooth",
        Idling::Rough => "drive-rough",
        Idling::Stalls => "drive-stalls",
        Idling::DoesNotStart => "drive-does-not-start",
    }
}

/// The freeze frame, or that there is none.
#[must_use]
pub fn freeze_frame(frame: Option<&Frame>, words: &Words) -> String {
    let Some(frame) = frame else {
        return words.say("event-no-freeze-frame", &[]);
    };
    let heading = match frame.code {
        Some(stored_by) => {
            words.say("event-freeze-frame", &[("code", code(stored_by, words).into())])
        }
        None => words.say("event-freeze-frame-without-code", &[]),
    };
    format!("{heading}\n  {}", senses(frame, words))
}

/// Live data: what the module senses, and each camshaft.
#[must_use]
pub fn live_data(frame: &Frame, cams: &[CamData], words: &Words) -> String {
    let mut lines = vec![words.say("event-live-data", &[])];
    lines.push(format!("  {}", senses(frame, words)));
    for cam in cams {
        let text = words.say(
            "cam-live",
            &[
                ("place", place(&cam.valve, words).into()),
                ("wanted", number(cam.wanted, 1, words).into()),
                ("actual", number(cam.actual, 1, words).into()),
                ("duty", number(cam.duty, 0, words).into()),
            ],
        );
        lines.push(format!("  {}", with_capital(&text)));
    }
    lines.join("\n")
}

fn senses(frame: &Frame, words: &Words) -> String {
    words.say(
        "frame",
        &[
            ("rpm", number(frame.rpm, 0, words).into()),
            ("load", number(frame.load, 0, words).into()),
            ("speed", number(frame.speed, 0, words).into()),
            ("coolant", number(frame.coolant, 0, words).into()),
            ("oil", number(frame.oil, 0, words).into()),
            ("supply", number(frame.supply, 1, words).into()),
        ],
    )
}

/// A road test: how it drove, the lamps, the camshafts and the monitors that ran.
#[must_use]
pub fn driven(drive: &Drive<'_>, words: &Words) -> String {
    let mut lines = vec![words.say(
        "event-driven",
        &[
            ("route", place(drive.route, words).into()),
            ("quality", words.say(drive_key(drive.quality), &[]).into()),
            ("lamps", lamps(drive.engine_lamp, drive.oil_lamp, words).into()),
        ],
    )];
    if let Some(seconds) = drive.stopped_after {
        lines.push(words.say("drive-stopped", &[("seconds", seconds.into())]));
    }
    for cam in drive.cams {
        let text = words.say(
            "cam-drive",
            &[
                ("place", place(&cam.valve, words).into()),
                ("error", number(cam.mean_error, 1, words).into()),
                ("furthest", number(cam.furthest, 1, words).into()),
            ],
        );
        lines.push(format!("  {}", with_capital(&text)));
    }
    // A reader that is connected shows every camshaft; without one nobody sees what the module watched.
    lines.push(if drive.cams.is_empty() && drive.decided.is_empty() {
        words.say("drive-no-reader", &[])
    } else if drive.decided.is_empty() {
        words.say("drive-no-monitor", &[])
    } else {
        words.say("drive-monitors", &[("codes", bare_codes(drive.decided, words).into())])
    });
    lines.join("\n")
}
