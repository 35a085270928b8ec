//! Dealing cases by seed.

use super::screen::{Format, Screen};
use super::trouble::Trouble;
use super::{Ending, Outcome, case, store};
use crate::reasoning::plan::budget::Bounds;
use crate::report::json;
use crate::scenario::deal::deal;
use crate::scenario::draw::Case;
use crate::scenario::load::Loaded;
use crate::trial::matched::{MatchError, Matched, Progress, Wanted, matched};
use crate::wording::catalogue::Words;
use crate::wording::{amounts, place};
use core::ops::RangeInclusive;
use core::sync::atomic::{AtomicUsize, Ordering};
use serde_json::json;
use std::sync::Arc;
use std::time::Duration;

/// How often the screen shows how far it is.
const SHOWN_EVERY: Duration = Duration::from_millis(50);

/// Deals cases and says what their seeds are; the fault only when asked to reveal it.
pub fn run(given: &clap::ArgMatches, screen: &mut Screen<'_>) -> Outcome {
    let loaded = case::scenario(given)?;
    let first = given.get_one::<u64>("seed").copied().unwrap_or_else(store::any_seed);
    let count = given.get_one::<u64>("count").copied().unwrap_or(1);
    let shown = Shown { reveal: given.get_flag("reveal"), format: Format::of(given) };
    if let Some(band) = given.get_one::<String>("matched") {
        let band = read_band(band).ok_or_else(|| Trouble::Band { given: band.clone() })?;
        let look_at = given.get_one::<u64>("look-at").copied().unwrap_or(count);
        let wanted = Wanted { count: whole(count), band, first, look_at };
        let found = watched(&loaded, &wanted, screen)?;
        shown.head(screen);
        for Matched { case, cost } in &found {
            shown.one(case, Some(*cost), screen);
        }
        return Ok(Ending::Done);
    }
    shown.head(screen);
    for number in 0..count {
        if count > 1 {
            screen.progress("progress-dealing", whole(number + 1), whole(count));
        }
        let case = deal(&loaded, first.wrapping_add(number))?;
        shown.one(&case, None, screen);
    }
    Ok(Ending::Done)
}

fn whole(count: u64) -> usize {
    usize::try_from(count).unwrap_or(usize::MAX)
}

/// The least and the most of a band [units of the currency].
fn read_band(text: &str) -> Option<RangeInclusive<f64>> {
    let (least, most) = text.split_once("..")?;
    let number = |text: &str| text.trim().parse::<f64>().ok().filter(|it| it.is_finite());
    let (least, most) = (number(least)?, number(most)?);
    (0.0 <= least && least <= most).then_some(least..=most)
}

/// Looks for matched cases and shows how far it is.
fn watched(
    loaded: &Arc<Loaded>,
    wanted: &Wanted,
    screen: &mut Screen<'_>,
) -> Result<Vec<Matched>, Trouble> {
    let (worlds, of_worlds) = (AtomicUsize::new(0), AtomicUsize::new(0));
    let found = AtomicUsize::new(0);
    let heard = |progress| match progress {
        Progress::Worlds(done, of) => {
            of_worlds.store(of, Ordering::Relaxed);
            worlds.fetch_max(done, Ordering::Relaxed);
        }
        Progress::Found(count, _) => found.store(count, Ordering::Relaxed),
    };
    let dealt = std::thread::scope(|scope| {
        let worker = scope.spawn(|| matched(loaded, wanted, &heard));
        while !worker.is_finished() {
            let (done, of) = (worlds.load(Ordering::Relaxed), of_worlds.load(Ordering::Relaxed));
            if done < of {
                screen.progress("progress-worlds", done, of);
            } else {
                let found = found.load(Ordering::Relaxed);
                screen.progress("progress-matching", found, wanted.count);
            }
            std::thread::sleep(SHOWN_EVERY);
        }
        worker.join().unwrap_or_else(|panic| std::panic::resume_unwind(panic))
    });
    dealt.map_err(|error| match error {
        MatchError::Draw(error) => Trouble::Draw(error),
        MatchError::Vehicle(source) => Trouble::Simulation { source },
        MatchError::TooFew { found, wanted, looked_at, seen } => {
            let seen = amounts_of(seen, &loaded.scenario.prices.currency, screen.words);
            Trouble::TooFew { found, wanted, looked_at, seen }
        }
    })
}

fn amounts_of(bounds: Bounds, currency: &str, words: &Words) -> (String, String) {
    let amount = |units| amounts::units(units, 2, currency, words);
    (amount(bounds.lower), amount(bounds.upper))
}

/// How cases are shown.
struct Shown {
    reveal: bool,
    format: Format,
}

impl Shown {
    fn head(&self, screen: &mut Screen<'_>) {
        if self.format == Format::Json {
            screen.data(&json::header_of("cases").to_string());
        }
    }

    fn one(&self, case: &Case, cost: Option<Bounds>, screen: &mut Screen<'_>) {
        if self.format == Format::Json {
            screen.data(&self.json(case, cost).to_string());
        } else {
            screen.data(&self.text(case, cost, screen.words));
        }
    }

    fn json(&self, case: &Case, cost: Option<Bounds>) -> serde_json::Value {
        let mut line = json!({
            "scenario": case.scenario.text.scenario_name,
            "seed": case.seed,
            "title": case.briefing.job.title,
        });
        if let Some(cost) = cost {
            line["expected-cost"] = json!(cost.upper);
            line["expected-cost-at-least"] = json!(cost.lower);
        }
        if self.reveal {
            line["faults"] = json!(case.hidden.faults);
            line["old-codes"] = json!(case.hidden.old_codes);
        }
        line
    }

    fn text(&self, case: &Case, cost: Option<Bounds>, words: &Words) -> String {
        let faults: Vec<_> = case.hidden.faults.iter().map(|fault| fault.name.clone()).collect();
        let key = match (cost, self.reveal) {
            (None, false) => "draw-dealt",
            (None, true) => "draw-revealed",
            (Some(_), false) => "draw-matched",
            (Some(_), true) => "draw-matched-revealed",
        };
        let cost = cost.unwrap_or(Bounds { lower: 0.0, upper: 0.0 });
        let (least, most) = amounts_of(cost, &case.briefing.prices.currency, words);
        words.say(
            key,
            &[
                ("seed", case.seed.to_string().into()),
                ("title", case.briefing.job.title.as_str().into()),
                ("faults", place::diagnoses(&faults, words).into()),
                ("least", least.into()),
                ("most", most.into()),
            ],
        )
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn limit_a_band_runs_from_the_least_to_the_most() {
        assert_eq!(read_band("90..120"), Some(90.0..=120.0));
        assert_eq!(read_band(" 0 .. 99.5 "), Some(0.0..=99.5));
        for wrong in ["", "90", "..", "120..90", "-1..5", "a..b", "1..inf", "1..NaN"] {
            assert_eq!(read_band(wrong), None, "{wrong}");
        }
    }
}
