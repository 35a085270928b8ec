//! What is known of a scenario, as tables for a terminal.

use super::{Draws, Earned, Facts, Guess};
use crate::reasoning::discernment::{Best, Cluster, Discernment, Pair};
use crate::reasoning::expert::Proposal;
use crate::trial::table::Mean;
use crate::trial::text::{aligned, name, with_error};
use crate::units::Money;
use crate::wording::amounts::{number, units};
use crate::wording::catalogue::Words;
use crate::wording::place::diagnoses;
use crate::wording::{proposal_words, step_words};

/// What is listed of what there is more of.
const LIKELIEST: usize = 3;
const TELLING: usize = 6;
const HARDEST: usize = 4;
/// Columns in front of what belongs to a line above it.
const INDENT: usize = 2;
/// Least columns for what stands behind a label.
const LEAST: usize = 24;

/// Words for one terminal.
#[derive(Clone, Copy)]
pub struct Page<'w> {
    /// The sentences.
    pub words: &'w Words,
    /// Sign of the currency.
    pub currency: &'w str,
    /// Columns.
    pub width: usize,
}

impl Page<'_> {
    fn say(&self, key: &str) -> String {
        self.words.say(key, &[])
    }

    fn percent(&self, share: f64) -> String {
        let share = number(100.0 * share, 0, self.words);
        self.words.say("trial-percent", &[("share", share.into())])
    }

    fn money(&self, amount: f64) -> String {
        units(amount, 2, self.currency, self.words)
    }

    /// An amount between bounds, once where both look alike.
    fn between(&self, least: f64, most: f64) -> String {
        let (least, most) = (self.money(least), self.money(most));
        if least == most {
            return most;
        }
        self.words.say("money-span", &[("least", least.into()), ("most", most.into())])
    }

    /// Labels on the left, what they are about on the right, broken where it is too long.
    fn labelled(&self, rows: &[(String, String)]) -> Vec<String> {
        let widest = rows.iter().map(|(label, _)| label.chars().count()).max().unwrap_or(0);
        let label_width = widest.min(self.width.saturating_sub(INDENT + 2 + LEAST));
        let room = self.width.saturating_sub(INDENT + label_width + 2).max(LEAST);
        let mut lines = Vec::new();
        for (label, text) in rows {
            let (left, right) = (broken(label, label_width.max(1)), broken(text, room));
            for line in 0..left.len().max(right.len()) {
                let cell = |side: &[String]| side.get(line).cloned().unwrap_or_default();
                let (left, right) = (cell(&left), cell(&right));
                let pad = " ".repeat(label_width.saturating_sub(left.chars().count()) + 2);
                lines.push(format!("{:INDENT$}{left}{pad}{right}", "").trim_end().to_owned());
            }
        }
        lines
    }

    /// A heading after an empty line.
    fn headed(&self, heading: &str, rows: Vec<String>) -> Vec<String> {
        let heading = broken(heading, self.width);
        core::iter::once(String::new()).chain(heading).chain(rows).collect()
    }
}

/// A text in lines of some width, broken between words; a longer word is broken within.
fn broken(text: &str, width: usize) -> Vec<String> {
    if text.chars().count() <= width {
        return vec![text.to_owned()];
    }
    let mut lines = Vec::new();
    let mut line = String::new();
    for word in text.split_whitespace() {
        let letters: Vec<char> = word.chars().collect();
        for (place, piece) in letters.chunks(width.max(1)).enumerate() {
            let gap = usize::from(!line.is_empty() && place == 0);
            if !line.is_empty() && line.chars().count() + gap + piece.len() > width {
                lines.push(core::mem::take(&mut line));
            } else if gap > 0 {
                line.push(' ');
            }
            line.extend(piece);
        }
    }
    lines.push(line);
    lines
}

/// What the weights say.
#[must_use]
pub fn draws(draws: &Draws, page: Page<'_>) -> Vec<String> {
    let words = page.words;
    let faults = draws.shares.iter().filter(|(faults, _)| !faults.is_empty()).count();
    let key = if faults < draws.shares.len() { "facts-with-sound" } else { "facts-entries" };
    let likeliest: Vec<String> = draws
        .shares
        .iter()
        .take(LIKELIEST)
        .map(|(faults, share)| format!("{} {}", page.percent(*share), diagnoses(faults, words)))
        .collect();
    let bits = [
        ("bits", number(draws.bits, 2, words).into()),
        ("equal", number(draws.as_many_equal(), 1, words).into()),
    ];
    let mut rows = vec![
        (page.say("facts-drawn"), words.say(key, &[("count", faults.into())])),
        (page.say("facts-uncertain"), words.say("facts-bits-as-many", &bits)),
    ];
    let label = |place: usize| if place == 0 { page.say("facts-likeliest") } else { String::new() };
    rows.extend(likeliest.into_iter().enumerate().map(|(place, text)| (label(place), text)));
    page.headed(&page.say("facts-draws"), page.labelled(&rows))
}

/// What the worlds tell.
#[must_use]
pub fn facts(facts: &Facts, comeback: Money, page: Page<'_>) -> Vec<String> {
    let mut lines = telling(&facts.telling.discernment, page);
    lines.extend(apart(&facts.telling.discernment, page));
    let mut rows =
        vec![(page.say("facts-plan"), page.between(facts.value.lower, facts.value.upper))];
    if let Some(guess) = &facts.guess {
        rows.push((page.say("facts-guess"), guessed(guess, page)));
    }
    rows.push((page.say("facts-comeback"), page.money(comeback.as_units())));
    lines.extend(page.headed(&page.say("facts-costs"), page.labelled(&rows)));
    lines
}

fn guessed(guess: &Guess, page: Page<'_>) -> String {
    let repair = proposal_words::proposal(&Proposal::Repair(guess.remedy.clone()), page.words);
    page.words.say(
        "facts-guessed",
        &[
            ("cost", page.money(guess.cost).into()),
            ("chance", page.percent(guess.chance).into()),
            ("repair", repair.into()),
        ],
    )
}

/// The tests that tell most.
fn telling(of: &Discernment, page: Page<'_>) -> Vec<String> {
    let rows: Vec<(String, String)> = of
        .tests
        .iter()
        .take(TELLING)
        .map(|test| {
            let bits = [("bits", number(test.bits, 2, page.words).into())];
            let bits = page.words.say("facts-bits", &bits);
            let cost = page.money(test.cost);
            (format!("{bits}  {cost:>8}"), step_words::line(&test.step))
        })
        .collect();
    page.headed(&page.say("facts-telling"), page.labelled(&rows))
}

/// What is told apart, what least, and what is not.
fn apart(of: &Discernment, page: Page<'_>) -> Vec<String> {
    let words = page.words;
    let whole = of.pairs.iter().filter(|pair| pair.told >= 1.0).count();
    let said = [("whole", whole.into()), ("pairs", of.pairs.len().into())];
    let key = if whole == of.pairs.len() { "facts-all-apart" } else { "facts-some-apart" };
    let mut lines = page.headed(&words.say(key, &said), Vec::new());
    for cluster in of.clusters() {
        lines.extend(clustered(of, &cluster, page));
    }
    let mut hardest: Vec<&Pair> =
        of.pairs.iter().filter(|pair| pair.told >= 1.0 && pair.best.is_some()).collect();
    hardest.sort_by_key(|pair| pair.tests);
    if hardest.is_empty() {
        return lines;
    }
    let mut rows = Vec::new();
    for pair in hardest.into_iter().take(HARDEST) {
        let tests = words.say("facts-tests", &[("count", pair.tests.into())]);
        rows.push((tests, named(of, pair.first, words)));
        rows.push((String::new(), named(of, pair.second, words)));
        if let Some(best) = &pair.best {
            rows.push((String::new(), best_words(best, page)));
        }
    }
    lines.extend(page.headed(&page.say("facts-hardest"), page.labelled(&rows)));
    lines
}

fn best_words(best: &Best, page: Page<'_>) -> String {
    let key = match (best.warm, best.told >= 1.0) {
        (false, true) => "facts-best",
        (false, false) => "facts-best-partly",
        (true, true) => "facts-best-warm",
        (true, false) => "facts-best-warm-partly",
    };
    let said = [
        ("step", step_words::line(&best.step).into()),
        ("cost", page.money(best.cost).into()),
        ("told", page.percent(best.told).into()),
    ];
    page.words.say(key, &said)
}

fn named(of: &Discernment, number: usize, words: &Words) -> String {
    of.hypotheses.get(number).map_or_else(String::new, |(faults, _)| diagnoses(faults, words))
}

/// Hypotheses that tests leave together, and the best test within them.
fn clustered(of: &Discernment, cluster: &Cluster, page: Page<'_>) -> Vec<String> {
    let words = page.words;
    let key = if cluster.shares_remedy { "facts-one-remedy" } else { "facts-own-remedies" };
    let label = words.say("facts-told", &[("told", page.percent(cluster.told).into())]);
    let mut rows: Vec<(String, String)> =
        cluster.members.iter().map(|number| (String::new(), named(of, *number, words))).collect();
    if let Some((first, _)) = rows.first_mut() {
        *first = label;
    }
    rows.push((String::new(), words.say(key, &[])));
    let within = of.pairs.iter().filter(|pair| {
        cluster.members.contains(&pair.first) && cluster.members.contains(&pair.second)
    });
    let best = within.filter_map(|pair| pair.best.as_ref());
    if let Some(best) = best.max_by(|a, b| a.told.total_cmp(&b.told)) {
        rows.push((String::new(), best_words(best, page)));
    }
    page.labelled(&rows)
}

/// What apprentices and the guess earn.
#[must_use]
pub fn earned(earned: &Earned, cases: u64, page: Page<'_>) -> Vec<String> {
    let words = page.words;
    let nothing = || words.say("trial-nothing", &[]);
    let mean = |mean: Option<Mean>| mean.map_or_else(nothing, |mean| with_error(mean, 1, words));
    let mut rows = vec![vec![
        words.say("trial-head-policy", &[]),
        words.say("trial-head-marks", &[]),
        words.say("trial-head-cost", &[("currency", page.currency.into())]),
        words.say("trial-head-right", &[]),
        words.say("trial-head-steps", &[]),
    ]];
    rows.extend(earned.table.lines.iter().map(|line| {
        vec![
            words.say(name(line.policy), &[]),
            mean(line.marks),
            with_error(line.cost, 1, words),
            page.percent(line.right),
            number(line.steps.value, 0, words),
        ]
    }));
    if earned.guess.is_some() {
        let mut row = vec![page.say("facts-guesser"), mean(earned.guess)];
        row.extend([nothing(), nothing(), nothing()]);
        rows.push(row);
    }
    let rows = aligned(&rows).into_iter().map(|row| format!("{:INDENT$}{row}", "")).collect();
    page.headed(&words.say("facts-apprentices", &[("cases", cases.into())]), rows)
}
