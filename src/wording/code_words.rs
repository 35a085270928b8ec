//! Trouble codes with what they mean, and what the code reader shows.

use super::catalogue::Words;
use crate::control_module::code::Code;
use crate::session::setup::Briefing;
use std::collections::BTreeSet;

/// What the code reader got from the module.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct CodeLists<'a> {
    /// Confirmed codes.
    pub stored: &'a [Code],
    /// Pending codes.
    pub pending: &'a [Code],
    /// Permanent codes.
    pub permanent: &'a [Code],
    /// The module asks for the lamp.
    pub lamp: bool,
    /// Codes whose monitors have run since the last clearing.
    pub complete: &'a [Code],
}

/// A code with its meaning; a code without a known meaning stands alone.
#[must_use]
pub fn code(code: Code, words: &Words) -> String {
    match words.find(&format!("code-{code}"), &[]) {
        Some(meaning) => words.say(
            "code-with-meaning",
            &[("code", code.to_string().into()), ("meaning", meaning.into())],
        ),
        None => code.to_string(),
    }
}

/// Every code that the catalogue has a meaning for, in the order of the catalogue.
pub fn named_codes() -> impl Iterator<Item = Code> {
    include_str!("../../assets/locales/en-GB/codes.ftl")
        .lines()
        .filter_map(|line| line.strip_prefix("code-")?.split_once(" =")?.0.parse().ok())
}

/// Codes in a row without their meanings.
#[must_use]
pub fn bare_codes(codes: &[Code], words: &Words) -> String {
    let names: Vec<String> = codes.iter().map(ToString::to_string).collect();
    names.join(&words.say("list-comma", &[]))
}

/// What the code reader shows, with the monitors of this vehicle that have not run yet.
#[must_use]
pub fn codes(lists: &CodeLists<'_>, briefing: &Briefing, words: &Words) -> String {
    let mut lines = Vec::new();
    let headings = [
        ("codes-stored", "codes-none-stored", lists.stored),
        ("codes-pending", "codes-none-pending", lists.pending),
        ("codes-permanent", "codes-none-permanent", lists.permanent),
    ];
    for (heading, none, codes) in headings {
        if codes.is_empty() {
            lines.push(words.say(none, &[]));
        } else {
            lines.push(words.say(heading, &[]));
            lines.extend(codes.iter().map(|it| format!("  {}", code(*it, words))));
        }
    }
    lines.push(words.say(if lists.lamp { "lamp-asked" } else { "lamp-not-asked" }, &[]));
    let waiting = waiting(lists.complete, briefing);
    if !lists.complete.is_empty() {
        let complete = bare_codes(lists.complete, words);
        lines.push(words.say("monitors-complete", &[("codes", complete.into())]));
    }
    if waiting.is_empty() {
        lines.push(words.say("monitors-none-waiting", &[]));
    } else {
        let waiting = bare_codes(&waiting, words);
        lines.push(words.say("monitors-waiting", &[("codes", waiting.into())]));
    }
    lines.join("\n")
}

/// The codes of this vehicle's valves whose monitors have not run since the last clearing, in ascending order.
#[must_use]
pub fn waiting(complete: &[Code], briefing: &Briefing) -> Vec<Code> {
    valve_codes(briefing).into_iter().filter(|watched| !complete.contains(watched)).collect()
}

/// Every code that the module keeps for a valve of this vehicle, in ascending order.
fn valve_codes(briefing: &Briefing) -> BTreeSet<Code> {
    briefing
        .vehicle
        .valves
        .iter()
        .flat_map(|valve| {
            let codes = valve.codes;
            [
                codes.open,
                codes.low,
                codes.high,
                codes.advanced,
                codes.retarded,
                codes.slow,
                codes.correlation,
            ]
        })
        .collect()
}
