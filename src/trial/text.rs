//! A trial in words and characters.

use super::file::RowsProblem;
use super::plot::{Point, plot};
use super::row::Rows;
use super::table::{Difficulty, Line, Mean, Table};
use crate::virtual_apprentices::policy::Policy;
use crate::wording::amounts::number;
use crate::wording::catalogue::Words;
use serde_json::{Value, json};

/// The letter of a policy in the plot.
const fn letter(policy: Policy) -> char {
    match policy {
        Policy::RandomTester => 'R',
        Policy::PartsSwapper => 'S',
        Policy::ByTheBook => 'B',
        Policy::NearFirst => 'N',
        Policy::InformationSeeker => 'I',
        Policy::Planner => 'P',
    }
}

/// The message that names a policy.
#[must_use]
pub const fn name(policy: Policy) -> &'static str {
    match policy {
        Policy::RandomTester => "apprentice-random",
        Policy::PartsSwapper => "apprentice-parts-swapper",
        Policy::ByTheBook => "apprentice-by-the-book",
        Policy::NearFirst => "apprentice-near-first",
        Policy::InformationSeeker => "apprentice-information-seeker",
        Policy::Planner => "apprentice-planner",
    }
}

/// The whole report: table, plot, difficulty; with `by_case` a line for each case.
#[must_use]
pub fn report(rows: &Rows, table: &Table, by_case: bool, words: &Words) -> Vec<String> {
    let currency = rows.of.currency.as_str();
    let mut lines = vec![
        words.say(
            "trial-title",
            &[
                ("scenario", rows.of.scenario.as_str().into()),
                ("sessions", rows.rows.len().into()),
                ("cases", table.by_case.len().into()),
                ("fingerprint", rows.of.fingerprint.as_str().into()),
            ],
        ),
        String::new(),
    ];
    lines.extend(columns(table, currency, words));
    let unfinished = table.lines.iter().any(|line| line.unfinished > 0.0);
    if unfinished {
        lines.push(words.say("trial-unfinished-note", &[]));
    }
    let points: Vec<Point> = table
        .lines
        .iter()
        .filter_map(|line| {
            let marks = line.marks?.value;
            Some(Point { letter: letter(line.policy), cost: line.cost.value, marks })
        })
        .collect();
    if points.is_empty() {
        lines.push(String::new());
        lines.push(words.say("trial-not-marked", &[]));
    } else {
        lines.push(String::new());
        lines.push(words.say("trial-plot", &[("currency", currency.into())]));
        lines.extend(plot(&points));
    }
    lines.push(String::new());
    lines.extend(scenario_difficulty(&table.difficulty, currency, words));
    if by_case {
        lines.push(String::new());
        lines.extend(cases(table, currency, words));
    }
    lines
}

/// A mean with its error behind a plus and minus.
pub(super) fn with_error(mean: Mean, decimals: usize, words: &Words) -> String {
    let value = number(mean.value, decimals, words);
    match mean.error {
        Some(error) => format!("{value} ± {}", number(error, decimals, words)),
        None => value,
    }
}

/// Rows of cells under a head: the first column to the left, the others to the right.
pub(super) fn aligned(rows: &[Vec<String>]) -> Vec<String> {
    let columns = rows.iter().map(Vec::len).max().unwrap_or(0);
    let wide = |column: usize| {
        rows.iter().filter_map(|row| row.get(column)).map(|c| c.chars().count()).max().unwrap_or(0)
    };
    let widths: Vec<usize> = (0..columns).map(wide).collect();
    rows.iter()
        .map(|row| {
            let cells: Vec<String> = row
                .iter()
                .zip(&widths)
                .enumerate()
                .map(|(column, (cell, width))| {
                    let pad = " ".repeat(width - cell.chars().count());
                    if column == 0 { format!("{cell}{pad}") } else { format!("{pad}{cell}") }
                })
                .collect();
            cells.join("  ").trim_end().to_owned()
        })
        .collect()
}

fn columns(table: &Table, currency: &str, words: &Words) -> Vec<String> {
    let percent = |share: f64| {
        words.say("trial-percent", &[("share", number(100.0 * share, 0, words).into())])
    };
    let nothing = || words.say("trial-nothing", &[]);
    let mean = |mean: Option<Mean>| mean.map_or_else(nothing, |mean| with_error(mean, 1, words));
    let head = [
        words.say("trial-head-policy", &[]),
        words.say("trial-head-sessions", &[]),
        words.say("trial-head-cost", &[("currency", currency.into())]),
        words.say("trial-head-marks", &[]),
        words.say("trial-head-regret", &[("currency", currency.into())]),
        words.say("trial-head-right", &[]),
        words.say("trial-head-unproved", &[]),
        words.say("trial-head-unfinished", &[]),
        words.say("trial-head-steps", &[]),
    ];
    let mut rows = vec![head.to_vec()];
    rows.extend(table.lines.iter().map(|line| {
        let named = format!("{} {}", letter(line.policy), words.say(name(line.policy), &[]));
        vec![
            named,
            line.sessions.to_string(),
            with_error(line.cost, 1, words),
            mean(line.marks),
            mean(line.regret),
            percent(line.right),
            line.unproved.map_or_else(nothing, percent),
            percent(line.unfinished),
            number(line.steps.value, 0, words),
        ]
    }));
    aligned(&rows)
}

fn scenario_difficulty(of: &Difficulty, currency: &str, words: &Words) -> Vec<String> {
    let money = |amount: Option<f64>| {
        amount.map_or_else(
            || words.say("trial-nothing", &[]),
            |amount| format!("{currency}{}", number(amount, 2, words)),
        )
    };
    let plain = |value: Option<f64>| {
        value.map_or_else(|| words.say("trial-nothing", &[]), |value| number(value, 1, words))
    };
    vec![
        words.say("trial-difficulty", &[]),
        words.say(
            "trial-difficulty-value",
            &[
                ("least", money(of.value.map(|value| value.lower)).into()),
                ("money", money(of.value.map(|value| value.upper)).into()),
            ],
        ),
        words.say(
            "trial-difficulty-planner",
            &[("steps", plain(of.planner_steps).into()), ("money", money(of.planner_cost).into())],
        ),
        words.say(
            "trial-difficulty-apart",
            &[
                ("marks", plain(of.marks_apart).into()),
                ("money", money(Some(of.cost_apart)).into()),
            ],
        ),
    ]
}

fn cases(table: &Table, currency: &str, words: &Words) -> Vec<String> {
    let nothing = || words.say("trial-nothing", &[]);
    let plain = |value: Option<f64>| value.map_or_else(nothing, |value| number(value, 1, words));
    let mut rows = vec![vec![
        words.say("trial-head-seed", &[]),
        words.say("trial-head-planner-steps", &[]),
        words.say("trial-head-planner-cost", &[("currency", currency.into())]),
        words.say("trial-head-marks-apart", &[]),
        words.say("trial-head-cost-apart", &[("currency", currency.into())]),
    ]];
    rows.extend(table.by_case.iter().map(|(seed, of)| {
        vec![
            seed.to_string(),
            plain(of.planner_steps),
            plain(of.planner_cost),
            plain(of.marks_apart),
            plain(Some(of.cost_apart)),
        ]
    }));
    aligned(&rows)
}

/// What is wrong with a file of rows, in a sentence.
#[must_use]
pub fn problem(problem: &RowsProblem, words: &Words) -> String {
    match problem {
        RowsProblem::OtherVersion { line, version } => words
            .say("rows-other-version", &[("line", (*line).into()), ("version", (*version).into())]),
        RowsProblem::Head { line } => words.say("rows-head", &[("line", (*line).into())]),
        RowsProblem::Fields { line, found, expected } => words.say(
            "rows-fields",
            &[
                ("line", (*line).into()),
                ("found", (*found).into()),
                ("expected", (*expected).into()),
            ],
        ),
        RowsProblem::Field { line, column, found } => words.say(
            "rows-field",
            &[
                ("line", (*line).into()),
                ("column", (*column).into()),
                ("found", found.as_str().into()),
            ],
        ),
        RowsProblem::Stranger { line } => words.say("rows-stranger", &[("line", (*line).into())]),
        RowsProblem::Contradiction { line, seed } => words.say(
            "rows-contradiction",
            &[("line", (*line).into()), ("seed", seed.to_string().into())],
        ),
        RowsProblem::Empty => words.say("rows-empty", &[]),
    }
}

/// The table for other programs, one object; described in `docs/json-output.md`.
#[must_use]
pub fn json(rows: &Rows, table: &Table, by_case: bool) -> Value {
    let mean = |mean: Mean| json!({ "mean": mean.value, "error": mean.error, "of": mean.of });
    let hard = |of: &Difficulty| {
        json!({
            "value": of.value.map(|value| value.upper),
            "value-at-least": of.value.map(|value| value.lower),
            "planner-steps": of.planner_steps,
            "planner-cost": of.planner_cost,
            "marks-apart": of.marks_apart,
            "cost-apart": of.cost_apart,
        })
    };
    let line = |line: &Line| {
        json!({
            "policy": line.policy.word(),
            "sessions": line.sessions,
            "cost": mean(line.cost),
            "marks": line.marks.map(mean),
            "regret": line.regret.map(mean),
            "regret-at-most": line.regret_at_most.map(mean),
            "steps": mean(line.steps),
            "right": line.right,
            "unproved": line.unproved,
            "unfinished": line.unfinished,
        })
    };
    let mut value = json!({
        "scenario": rows.of.scenario,
        "fingerprint": rows.of.fingerprint,
        "currency": rows.of.currency,
        "policies": table.lines.iter().map(line).collect::<Vec<_>>(),
        "difficulty": hard(&table.difficulty),
    });
    if by_case {
        let cases = table.by_case.iter().map(|(seed, of)| {
            let mut case = hard(of);
            case["seed"] = json!(seed);
            case
        });
        value["cases"] = cases.collect();
    }
    value
}
