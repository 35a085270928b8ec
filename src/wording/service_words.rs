//! The maker's service information, built from the data of the vehicle at hand.
//!
//! Names that a step can use stand as they are typed, because they are the labels of the drawing.

use super::amounts::{minutes, money, short_number};
use super::catalogue::Words;
use super::place::places;
use super::{care_words, code_words, limit_words};
use crate::control_module::driver_side::DriverSide;
use crate::session::setup::Briefing;
use crate::session::shelf::PartGrade;
use crate::session::step::ServiceTopic;
use crate::units::Minutes;
use crate::vehicle::spec::{HarnessElement, Id, PartSpec, TestPointSpec, ValveCodes};

/// Digits behind the point of a torque or a fuse rating.
const DECIMALS: usize = 1;

/// The service information on a topic.
#[must_use]
pub fn information(topic: ServiceTopic, briefing: &Briefing, words: &Words) -> String {
    let mut lines = match topic {
        ServiceTopic::Wiring => wiring(briefing, words),
        ServiceTopic::Limits => limit_words::limits(briefing, words),
        ServiceTopic::Procedure => procedure(briefing, words),
        ServiceTopic::Parts => parts(briefing, words),
        ServiceTopic::Codes => codes(briefing, words),
    };
    lines.push(words.say("service-closing", &[]));
    lines.join("\n")
}

fn wiring(briefing: &Briefing, words: &Words) -> Vec<String> {
    let mut lines = vec![words.say("service-wiring", &[])];
    lines.extend(briefing.vehicle.harness.elements.iter().map(|it| element(it, words)));
    lines.push(words.say("service-test-points", &[]));
    lines.extend(briefing.vehicle.test_points.iter().map(|it| test_point(it, words)));
    lines
}

fn element(element: &HarnessElement, words: &Words) -> String {
    let say = |key: &str, ends: &[(&str, &Id)]| {
        let mut arguments = vec![("id", element.id().as_str().into())];
        arguments.extend(ends.iter().map(|(name, id)| (*name, id.as_str().into())));
        words.say(key, &arguments)
    };
    match element {
        HarnessElement::Battery { plus, minus, .. } => {
            say("wiring-battery", &[("from", plus), ("to", minus)])
        }
        HarnessElement::Alternator { plus, minus, .. } => {
            say("wiring-alternator", &[("from", plus), ("to", minus)])
        }
        HarnessElement::Starter { plus, minus, .. } => {
            say("wiring-starter", &[("from", plus), ("to", minus)])
        }
        HarnessElement::Wire { from, to, .. } => say("wiring-wire", &[("from", from), ("to", to)]),
        HarnessElement::Cable { id, from, to, metres, mm2 } => words.say(
            "wiring-cable",
            &[
                ("id", id.as_str().into()),
                ("from", from.as_str().into()),
                ("to", to.as_str().into()),
                ("metres", short_number(*metres, DECIMALS, words).into()),
                ("section", short_number(*mm2, DECIMALS, words).into()),
            ],
        ),
        HarnessElement::Fuse { id, from, to, rating, .. } => words.say(
            "wiring-fuse",
            &[
                ("id", id.as_str().into()),
                ("from", from.as_str().into()),
                ("to", to.as_str().into()),
                ("rating", short_number(*rating, DECIMALS, words).into()),
            ],
        ),
        HarnessElement::RelayContact { from, to, .. } => {
            say("wiring-relay", &[("from", from), ("to", to)])
        }
        HarnessElement::Pin { connector, from, to, .. } => {
            say("wiring-pin", &[("connector", connector), ("from", from), ("to", to)])
        }
        HarnessElement::Coil { valve, from, to, .. } => {
            say("wiring-coil", &[("valve", valve), ("from", from), ("to", to)])
        }
        HarnessElement::Driver { valve, side, pin, supply, ground, .. } => match side {
            DriverSide::Low => {
                say("wiring-driver", &[("valve", valve), ("from", pin), ("to", ground)])
            }
            DriverSide::High => {
                say("wiring-driver-high", &[("valve", valve), ("from", supply), ("to", pin)])
            }
        },
        HarnessElement::ModuleSupply { supply, ground, rail, .. } => {
            say("wiring-module", &[("from", supply), ("to", ground), ("rail", rail)])
        }
        HarnessElement::Load { from, to, .. } => say("wiring-load", &[("from", from), ("to", to)]),
    }
}

fn test_point(point: &TestPointSpec, words: &Words) -> String {
    let mut text = words.say(
        "test-point",
        &[("id", point.id.as_str().into()), ("node", point.node.as_str().into())],
    );
    if !point.behind.is_empty() {
        let parts = words.all_of(&labels(&point.behind));
        text.push_str(&words.say("test-point-behind", &[("parts", parts.into())]));
    }
    if let Some(connector) = &point.unplugged {
        let connector = connector.as_str().into();
        text.push_str(&words.say("test-point-unplugged", &[("connector", connector)]));
    }
    text
}

fn labels(ids: &[Id]) -> Vec<String> {
    ids.iter().map(|id| id.as_str().to_owned()).collect()
}

fn procedure(briefing: &Briefing, words: &Words) -> Vec<String> {
    let mut lines = vec![words.say("service-procedure", &[])];
    for part in in_order_of_removal(&briefing.vehicle.parts) {
        lines.push(words.say(
            "procedure-part",
            &[
                ("id", part.id.as_str().into()),
                ("remove", minutes(part.remove, words).into()),
                ("refit", minutes(part.refit, words).into()),
            ],
        ));
        if !part.behind.is_empty() {
            let parts = words.all_of(&labels(&part.behind));
            lines.push(words.say("procedure-behind", &[("parts", parts.into())]));
        }
        lines.extend(part.care.iter().map(|care| {
            words.say("procedure-care", &[("care", care_words::rule(*care, words).into())])
        }));
        if let Some(torque) = part.torque_nm {
            let torque = short_number(torque, DECIMALS, words);
            lines.push(words.say("procedure-torque", &[("torque", torque.into())]));
        }
    }
    lines.push(words.say("procedure-refitting", &[]));
    lines
}

/// The parts so that each stands behind those that are in its way. Parts that are in each other's
/// way, which no vehicle should have, come last.
fn in_order_of_removal(parts: &[PartSpec]) -> Vec<&PartSpec> {
    let mut waiting: Vec<&PartSpec> = parts.iter().collect();
    let mut ordered: Vec<&PartSpec> = Vec::with_capacity(parts.len());
    loop {
        let is_free = |part: &&PartSpec| {
            part.behind.iter().all(|first| ordered.iter().any(|done| done.id == *first))
        };
        let Some(next) = waiting.iter().position(is_free) else {
            ordered.append(&mut waiting);
            return ordered;
        };
        ordered.push(waiting.remove(next));
    }
}

fn parts(briefing: &Briefing, words: &Words) -> Vec<String> {
    let prices = &briefing.prices;
    let price = |amount| money(amount, &prices.currency, words);
    let mut lines = vec![words.say("service-parts", &[])];
    for part in &briefing.vehicle.valve_parts {
        let amount = prices.valves.get(&part.part_number);
        let amount = amount.map_or_else(|| words.say("price-unknown", &[]), |it| price(*it));
        let wait = briefing.shelf.waits.get(&part.part_number).copied().unwrap_or_default();
        lines.push(words.say(
            if wait == Minutes(0) { "part-valve" } else { "part-valve-waits" },
            &[
                ("number", part.part_number.as_str().into()),
                ("places", places(&part.fits, words).into()),
                ("price", amount.into()),
                ("time", minutes(wait, words).into()),
            ],
        ));
    }
    lines.extend(other_parts(briefing, words));
    for (key, amount) in [
        ("part-seal", prices.seal),
        ("part-oil", prices.oil_litre),
        ("part-oil-filter", prices.oil_filter),
        ("part-cleaning", prices.cleaning),
        ("part-mending", prices.mending),
        ("part-labour", prices.labour_per_hour),
    ] {
        lines.push(words.say(key, &[("price", price(amount).into())]));
    }
    lines
}

/// Parts of other grades, and what waiting costs.
fn other_parts(briefing: &Briefing, words: &Words) -> Vec<String> {
    let (shelf, currency) = (&briefing.shelf, &briefing.prices.currency);
    let mut lines = Vec::new();
    for (number, part) in &shelf.others {
        let time = minutes(part.wait, words);
        let wait = match part.wait {
            Minutes(0) => String::new(),
            _ => words.say("part-wait", &[("time", time.into())]),
        };
        lines.push(words.say(
            if part.grade == PartGrade::Used { "part-used" } else { "part-pattern" },
            &[
                ("number", number.as_str().into()),
                ("instead", part.stands_for.as_str().into()),
                ("price", money(part.price, currency, words).into()),
                ("wait", wait.into()),
            ],
        ));
    }
    if !shelf.is_plain() {
        let price = money(shelf.waiting_per_hour, currency, words);
        lines.push(words.say("part-waiting", &[("price", price.into())]));
    }
    lines
}

fn codes(briefing: &Briefing, words: &Words) -> Vec<String> {
    let mut lines = vec![words.say("service-codes-circuit", &[])];
    let all = |of: fn(&ValveCodes) -> Vec<crate::control_module::code::Code>| {
        let codes: std::collections::BTreeSet<_> =
            briefing.vehicle.valves.iter().flat_map(|valve| of(&valve.codes)).collect();
        codes.into_iter().map(|code| format!("  {}", code_words::code(code, words)))
    };
    lines.extend(all(|codes| vec![codes.open, codes.low, codes.high]));
    lines.push(words.say("service-codes-performance", &[]));
    lines.extend(all(|codes| vec![codes.advanced, codes.retarded, codes.slow, codes.correlation]));
    lines.push(words.say("service-codes-kinds", &[]));
    lines
}
