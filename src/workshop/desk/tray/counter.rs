//! What lies on the counter. What can be done comes from the words that a line can go on with, like everything of the
//! tray; what it takes comes from the workshop's book.

use super::price_words;
use crate::session::attempt::Session;
use crate::session::setup::Briefing;
use crate::session::shelf::{Offer, PartGrade};
use crate::session::step::Step;
use crate::units::Minutes;
use crate::wording::amounts::minutes;
use crate::wording::caption::caption;
use crate::wording::catalogue::Words;
use crate::wording::step_parser::{complete, parse};
use crate::workshop::view::counter::{JobView, Trade};

/// Everything of a kind that can be done.
pub fn jobs(
    trade: Trade,
    briefing: &Briefing,
    session: Option<&Session>,
    words: &Words,
) -> Vec<JobView> {
    let after = |start: &str| {
        let start = start.to_owned();
        complete(&start, briefing).into_iter().map(move |word| format!("{start}{word}"))
    };
    let plain = |line: &str| vec![line.to_owned()];
    let lines: Vec<String> = match trade {
        Trade::Customer => plain("ask approval"),
        Trade::Parts => after("fit ").flat_map(|start| after(&format!("{start} "))).collect(),
        Trade::Cleaning => after("clean ").collect(),
        Trade::Wiring => after("mend ").collect(),
        Trade::Fuses => after("replace ").filter(|line| line != "replace meter-fuse").collect(),
        Trade::Oil => plain("top up").into_iter().chain(after("change oil ")).collect(),
        Trade::Proof => ["read codes", "read freeze-frame", "clear codes", "key on", "key off"]
            .map(str::to_owned)
            .into_iter()
            .chain(after("drive "))
            .collect(),
        Trade::Papers => {
            let record = after("write ").map(|start| format!("{start} "));
            let endings = plain("hand over").into_iter().chain(after("hand over "));
            record.chain(endings).collect()
        }
    };
    lines.into_iter().map(|line| job(line, briefing, session, words)).collect()
}

fn job(line: String, briefing: &Briefing, session: Option<&Session>, words: &Words) -> JobView {
    match parse(&line, briefing) {
        Ok(Some(step)) => {
            let offer = match &step {
                Step::Fit { part_number, .. } => briefing.offer(part_number),
                _ => None,
            };
            JobView {
                name: graded(caption(&step, words), offer, words),
                price: session
                    .and_then(|session| session.book_price(&step))
                    .map(|price| price_words(price, &briefing.prices.currency, words))
                    .map(|price| with_wait(price, offer, words)),
                is_start: false,
                line,
            }
        }
        // A part of the record waits for its text.
        _ => JobView {
            name: words.say(
                "counter-write",
                &[("section", line.trim().trim_start_matches("write ").to_owned().into())],
            ),
            price: None,
            is_start: true,
            line,
        },
    }
}

/// Work with the grade of its part, where that is not the maker's.
fn graded(what: String, offer: Option<Offer<'_>>, words: &Words) -> String {
    let key = match offer.and_then(|offer| offer.grade) {
        Some(PartGrade::Pattern) => "counter-pattern",
        Some(PartGrade::Used) => "counter-used",
        None => return what,
    };
    words.say(key, &[("what", what.into())])
}

/// A price with the wait that it includes.
fn with_wait(price: String, offer: Option<Offer<'_>>, words: &Words) -> String {
    match offer.map(|offer| offer.wait) {
        Some(wait) if wait > Minutes(0) => words
            .say("counter-wait", &[("price", price.into()), ("time", minutes(wait, words).into())]),
        _ => price,
    }
}
