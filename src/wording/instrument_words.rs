//! Meter, test lamp, current probe, scope and a wiggled reading in words. A capture comes with the figures
//! that cursors give and a plot of bars.

use super::amounts::{display, number, with_capital};
use super::catalogue::Words;
use super::place::place;
use super::step_words;
use crate::instruments::multimeter::{Display, MeterFunction};
use crate::instruments::scope::{Capture, Cursors, Signal};
use crate::instruments::test_lamp::Glow;
use crate::numerics::whole::to_usize;
use crate::vehicle::spec::Id;

/// A reading that was watched while something was wiggled.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Watched<'a> {
    /// What was wiggled.
    pub place: &'a Id,
    /// Function of the meter.
    pub function: MeterFunction,
    /// Least display.
    pub least: Display,
    /// Greatest display.
    pub most: Display,
    /// The display jumped.
    pub jumped: bool,
}

/// What the meter shows.
#[must_use]
pub fn reading(
    function: MeterFunction,
    red: &Id,
    black: &Id,
    shown: Display,
    words: &Words,
) -> String {
    let key = match shown {
        Display::OverLimit => "event-over-limit",
        Display::Value { .. } => "event-reading",
    };
    with_capital(&words.say(
        key,
        &[
            ("function", step_words::meter_function(function).into()),
            ("red", place(red, words).into()),
            ("black", place(black, words).into()),
            ("display", display(shown, function).into()),
        ],
    ))
}

/// What the meter kept while something was wiggled.
#[must_use]
pub fn watched(watched: &Watched<'_>, words: &Words) -> String {
    let key = if watched.jumped { "event-watched-jumped" } else { "event-watched-steady" };
    with_capital(&words.say(
        key,
        &[
            ("place", place(watched.place, words).into()),
            ("function", step_words::meter_function(watched.function).into()),
            ("least", display(watched.least, watched.function).into()),
            ("most", display(watched.most, watched.function).into()),
        ],
    ))
}

/// How a test lamp looks.
#[must_use]
pub fn lamp_glows(tip: &Id, clip: &Id, glow: Glow, words: &Words) -> String {
    let key = match glow {
        Glow::Dark => "glow-dark",
        Glow::Dim => "glow-dim",
        Glow::Bright => "glow-bright",
    };
    words.say(
        "event-lamp-glows",
        &[
            ("tip", place(tip, words).into()),
            ("clip", place(clip, words).into()),
            ("glow", words.say(key, &[]).into()),
        ],
    )
}

/// What a current probe shows.
#[must_use]
pub fn clamped(wire: &Id, shown: Display, words: &Words) -> String {
    with_capital(&words.say(
        "event-clamped",
        &[
            ("place", place(wire, words).into()),
            ("display", display(shown, MeterFunction::Amps).into()),
        ],
    ))
}

/// A capture: what it is of, what the cursors say, and a plot.
#[must_use]
pub fn captured(valve: &Id, capture: &Capture, words: &Words) -> String {
    let mut lines = vec![captured_figures(valve, capture, words)];
    lines.extend(plot(capture, words).into_iter().map(|line| format!("  {line}")));
    lines.join("\n")
}

/// A capture without its plot, whose bars need letters of one width.
#[must_use]
pub fn captured_figures(valve: &Id, capture: &Capture, words: &Words) -> String {
    let key = match capture.signal {
        Signal::CoilCurrent => "event-captured-current",
        Signal::DriverPin => "event-captured-pin",
    };
    let heading = words.say(key, &[("place", place(valve, words).into())]);
    format!("{}\n  {}", with_capital(&heading), cursors(&capture.cursors, words))
}

/// What is taken from a capture by eye.
#[must_use]
pub fn cursors(cursors: &Cursors, words: &Words) -> String {
    let amperes = |value| number(value, 3, words);
    let volts = |value| number(value, 1, words);
    match *cursors {
        Cursors::Current { dip: Some(dip), end_a } => words.say(
            "cursors-dip",
            &[
                ("peak", amperes(dip.peak_a).into()),
                ("depth", amperes(dip.depth_a).into()),
                ("at", number(dip.at_ms, 1, words).into()),
                ("end", amperes(end_a).into()),
            ],
        ),
        Cursors::Current { dip: None, end_a } => {
            words.say("cursors-no-dip", &[("end", amperes(end_a).into())])
        }
        Cursors::Pin { closed_v, plateau: Some(plateau), open_v } => words.say(
            "cursors-plateau",
            &[
                ("closed", volts(closed_v).into()),
                ("plateau", volts(plateau.volts).into()),
                ("lasts", number(plateau.lasts_ms, 1, words).into()),
                ("open", volts(open_v).into()),
            ],
        ),
        Cursors::Pin { closed_v, plateau: None, open_v } => words.say(
            "cursors-no-plateau",
            &[("closed", volts(closed_v).into()), ("open", volts(open_v).into())],
        ),
    }
}

/// Columns and rows of a plot.
const COLUMNS: usize = 50;
const ROWS: usize = 8;
/// Eighths of a cell, from empty to full.
const BARS: [char; 9] = [' ', '▁', '▂', '▃', '▄', '▅', '▆', '▇', '█'];

/// A plot of bars from the least to the greatest value, the scale beside it and the time below. Each
/// column stands for the mean of its points.
fn plot(capture: &Capture, words: &Words) -> Vec<String> {
    let most = capture.points.iter().copied().fold(0.0, f64::max);
    let least = capture.points.iter().copied().fold(0.0, f64::min);
    let decimals = if capture.signal == Signal::CoilCurrent { 2 } else { 0 };
    let unit = if capture.signal == Signal::CoilCurrent { "A" } else { "V" };
    let span = if most > least { most - least } else { 1.0 };
    let per_column = capture.points.len().div_ceil(COLUMNS).max(1);
    let heights: Vec<usize> = capture
        .points
        .chunks(per_column)
        .map(|points| {
            let mean = points.iter().sum::<f64>() / points.len() as f64;
            to_usize(((mean - least) / span * (ROWS * 8) as f64).round())
        })
        .collect();
    let scale = |row: usize| match row {
        0 => format!("{} {unit}", number(most, decimals, words)),
        _ if row + 1 == ROWS => format!("{} {unit}", number(least, decimals, words)),
        _ => String::new(),
    };
    let mut lines = Vec::with_capacity(ROWS + 1);
    for row in 0..ROWS {
        let floor = (ROWS - 1 - row) * 8;
        let bars: String = heights
            .iter()
            .map(|height| BARS.get(height.saturating_sub(floor).min(8)).copied().unwrap_or(' '))
            .collect();
        lines.push(format!("{:>8} |{}", scale(row), bars.trim_end()));
    }
    let lasting_ms = capture.interval_s * capture.points.len() as f64 * 1e3;
    let axis = words.say("plot-time", &[("ms", number(lasting_ms, 0, words).into())]);
    lines.push(format!("{:>8} |{axis}", ""));
    lines
}
