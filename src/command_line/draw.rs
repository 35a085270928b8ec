//! Dealing cases by seed.

use super::screen::{Format, Screen};
use super::trouble::Trouble;
use super::{Ending, Outcome, case, class, seals, store};
use crate::reasoning::plan::budget::Bounds;
use crate::report::json;
use crate::scenario::deal::deal;
use crate::scenario::draw::Case;
use crate::scenario::load::Loaded;
use crate::scenario::seeds::Seeds;
use crate::trial::matched::{MatchError, Matched, Progress, Wanted, matched};
use crate::wording::catalogue::Words;
use crate::wording::{amounts, place};
use core::ops::RangeInclusive;
use core::sync::atomic::{AtomicUsize, Ordering};
use serde_json::json;
use std::path::PathBuf;
use std::sync::Arc;
use std::time::Duration;

/// The word for cases that lie closest together, instead of a band.
const CLOSEST: &str = "closest";
/// Seeds that are looked at for a band unless told otherwise, and, for each case, for the closest ones.
const USUALLY_LOOKED_AT: u64 = 200;
const CLOSEST_OF: u64 = 4;

/// How often the screen shows how far it is.
const SHOWN_EVERY: Duration = Duration::from_millis(50);

/// Deals cases and says what their seeds are; the fault only when asked to reveal it.
pub fn run(given: &clap::ArgMatches, screen: &mut Screen<'_>) -> Outcome {
    let loaded = case::scenario(given)?;
    let names = match given.get_one::<PathBuf>("class") {
        Some(path) => Some(class::names(path)?),
        None => None,
    };
    let asked = given.get_one::<u64>("count").copied().unwrap_or(1);
    let count = names.as_ref().map_or(asked, |names| names.len() as u64);
    let folder = given.get_one::<PathBuf>("seal");
    let phrase = seals::passphrase(given)?;
    let seeds = match (given.get_one::<u64>("seed"), folder) {
        (Some(seed), _) => Seeds::From(*seed),
        (None, Some(_)) => Seeds::Apart(seals::sealed_seed()?),
        (None, None) => Seeds::From(store::any_seed()),
    };
    let wanted = if given.get_flag("same") { 1 } else { count };
    let dealt = dealt(given, &loaded, (seeds, wanted), screen)?;
    let shown = Shown { reveal: given.get_flag("reveal"), format: Format::of(given) };
    shown.head(screen);
    for (place, number) in (0..whole(count)).zip(1..) {
        let Some((case, cost)) = dealt.get(place.min(dealt.len() - 1)) else { break };
        let name = names.as_ref().and_then(|names| names.get(place)).cloned();
        let path = match (folder, &phrase) {
            (Some(folder), Some(phrase)) => {
                let name = name.clone().unwrap_or_else(|| number.to_string());
                Some(seals::write(folder, (number, &name), case, phrase)?)
            }
            _ => None,
        };
        shown.one(case, *cost, &For { name, path }, screen);
    }
    Ok(Ending::Done)
}

/// Who gets a case, and in which file it is sealed.
struct For {
    name: Option<String>,
    path: Option<PathBuf>,
}

type Dealt = Vec<(Case, Option<Bounds>)>;

/// As many cases as are wanted, in the order of these seeds.
fn dealt(
    given: &clap::ArgMatches,
    loaded: &Arc<Loaded>,
    (seeds, count): (Seeds, u64),
    screen: &mut Screen<'_>,
) -> Result<Dealt, Trouble> {
    if let Some(text) = given.get_one::<String>("matched") {
        let band = if text == CLOSEST {
            None
        } else {
            Some(read_band(text).ok_or_else(|| Trouble::Band { given: text.clone() })?)
        };
        let usual = if band.is_some() { USUALLY_LOOKED_AT } else { CLOSEST_OF * count };
        let look_at = given.get_one::<u64>("look-at").copied().unwrap_or(usual);
        let wanted = Wanted { count: whole(count), band, seeds, look_at };
        let found = watched(loaded, &wanted, screen)?;
        return Ok(found.into_iter().map(|Matched { case, cost }| (case, Some(cost))).collect());
    }
    let mut dealt = Vec::new();
    for number in 0..count {
        if count > 1 {
            screen.progress("progress-dealing", whole(number + 1), whole(count));
        }
        dealt.push((deal(loaded, seeds.at(number))?, None));
    }
    Ok(dealt)
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
    let of_found = AtomicUsize::new(wanted.count);
    let heard = |progress| match progress {
        Progress::Worlds(done, of) => {
            of_worlds.store(of, Ordering::Relaxed);
            worlds.fetch_max(done, Ordering::Relaxed);
        }
        Progress::Found(count, _) => found.store(count, Ordering::Relaxed),
        Progress::Looked(count, of) => {
            of_found.store(whole(of), Ordering::Relaxed);
            found.store(whole(count), Ordering::Relaxed);
        }
    };
    let dealt = std::thread::scope(|scope| {
        let worker = scope.spawn(|| matched(loaded, wanted, &heard));
        while !worker.is_finished() {
            let (done, of) = (worlds.load(Ordering::Relaxed), of_worlds.load(Ordering::Relaxed));
            if done < of {
                screen.progress("progress-worlds", done, of);
            } else {
                let found = found.load(Ordering::Relaxed);
                let key =
                    if wanted.band.is_some() { "progress-matching" } else { "progress-closest" };
                screen.progress(key, found, of_found.load(Ordering::Relaxed));
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

    fn one(&self, case: &Case, cost: Option<Bounds>, to: &For, screen: &mut Screen<'_>) {
        if self.format == Format::Json {
            screen.data(&self.json(case, cost, to).to_string());
            return;
        }
        let words = screen.words;
        let mut line = String::new();
        if let Some(name) = &to.name {
            line = words.say("draw-for", &[("name", name.as_str().into())]) + " ";
        }
        if let Some(path) = &to.path {
            let said = [("path", path.display().to_string().into())];
            line += &words.say("draw-sealed", &said);
        }
        // Whoever seals cases shows this screen around without a thought.
        if to.path.is_none() || self.reveal {
            if to.path.is_some() {
                line.push(' ');
            }
            line += &self.text(case, cost, words);
        } else if let Some(cost) = cost {
            let (least, most) = amounts_of(cost, &case.briefing.prices.currency, words);
            let said = [("least", least.into()), ("most", most.into())];
            line = line + " " + &words.say("draw-sealed-cost", &said);
        }
        screen.data(&line);
    }

    fn json(&self, case: &Case, cost: Option<Bounds>, to: &For) -> serde_json::Value {
        let mut line = json!({
            "scenario": case.scenario.text.scenario_name,
            "title": case.briefing.job.title,
        });
        if to.path.is_none() || self.reveal {
            line["seed"] = json!(case.seed);
        }
        if let Some(name) = &to.name {
            line["name"] = json!(name);
        }
        if let Some(path) = &to.path {
            line["file"] = json!(path.display().to_string());
        }
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
