//! Rows as CSV (RFC 4180), written as they come and read again.
//!
//! A file holds the rows of one scenario by one version of the program; every row says which. Numbers
//! are written so that they read back to the same bits, so that parts joined give the table of the
//! whole to the byte. A last line without its end, such as a killed run leaves, is not a row.

use super::row::{Judged, Origin, Outcome, Row, Rows};
use crate::assessment::rubric::MarkCategory;
use crate::reasoning::plan::budget::Bounds;
use crate::units::Money;
use crate::virtual_apprentices::policy::Policy;
use core::fmt::Write as _;
use std::collections::BTreeMap;
use thiserror::Error;

/// Version of the format, part of the first column's name.
const FIRST: &str = "trial 2 scenario";
/// Columns before those of the marks, and after them.
const BEFORE: [&str; 17] = [
    FIRST,
    "fingerprint",
    "currency",
    "program",
    "seed",
    "policy",
    "fault",
    "outcome",
    "steps",
    "repairs",
    "minutes",
    "things",
    "spent",
    "comeback",
    "cost",
    "marks",
    "passed",
];
const AFTER: [&str; 6] =
    ["proved", "unproved", "regret_least", "regret_most", "value_least", "value_most"];

/// What is wrong with a file of rows.
#[derive(Debug, Clone, PartialEq, Eq, Error)]
pub enum RowsProblem {
    /// The first line is not that of such a file.
    #[error("line {line} is not the head of a trial's table")]
    Head {
        /// Line, from 1.
        line: usize,
    },
    /// The head of such a file in another version of its format.
    #[error("line {line} begins a trial's table in another version of the format")]
    OtherVersion {
        /// Line, from 1.
        line: usize,
        /// That version.
        version: u32,
    },
    /// A line has not the right number of fields.
    #[error("line {line} has {found} fields, not {expected}")]
    Fields {
        /// Line, from 1.
        line: usize,
        /// Fields found.
        found: usize,
        /// Fields expected.
        expected: usize,
    },
    /// A field cannot be read.
    #[error("line {line}: {column} cannot be {found:?}")]
    Field {
        /// Line, from 1.
        line: usize,
        /// Name of the column.
        column: &'static str,
        /// What stands there.
        found: String,
    },
    /// A row belongs to another scenario or another version than the first.
    #[error("line {line} belongs to another trial")]
    Stranger {
        /// Line, from 1.
        line: usize,
    },
    /// The same session stands twice with different figures.
    #[error("line {line} contradicts an earlier row of seed {seed}")]
    Contradiction {
        /// Line, from 1.
        line: usize,
        /// Seed of the case.
        seed: u64,
    },
    /// There is no row.
    #[error("there is no row")]
    Empty,
}

/// Rows as they are gathered from one or several files.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Gathered {
    of: Option<Origin>,
    rows: BTreeMap<(u64, Policy), Row>,
}

impl Gathered {
    /// Adds the rows of a file. `true` when its last line was cut off and left out.
    ///
    /// # Errors
    /// [`RowsProblem`] of the first line that has one.
    pub fn add(&mut self, text: &str) -> Result<bool, RowsProblem> {
        let head = head();
        let mut begun = false;
        let (records, is_torn) = records(text);
        for (line, fields) in records {
            // A head stands again where files were put one behind the other.
            if fields.first().is_some_and(|first| first == FIRST) && fields == head {
                begun = true;
                continue;
            }
            if let Some(version) = other_version(&fields) {
                return Err(RowsProblem::OtherVersion { line, version });
            }
            if !begun {
                return Err(RowsProblem::Head { line });
            }
            let (of, row) = read(line, &fields)?;
            if self.of.get_or_insert_with(|| of.clone()) != &of {
                return Err(RowsProblem::Stranger { line });
            }
            let seed = row.seed;
            if self.rows.get(&row.place()).is_some_and(|known| *known != row) {
                return Err(RowsProblem::Contradiction { line, seed });
            }
            self.rows.insert(row.place(), row);
        }
        Ok(is_torn)
    }

    /// The trial that they belong to; `None` while there is no row.
    #[must_use]
    pub const fn of(&self) -> Option<&Origin> {
        self.of.as_ref()
    }

    /// The rows in their order.
    ///
    /// # Errors
    /// [`RowsProblem::Empty`] when there is none.
    pub fn finish(self) -> Result<Rows, RowsProblem> {
        let of = self.of.ok_or(RowsProblem::Empty)?;
        Ok(Rows { of, rows: self.rows.into_values().collect() })
    }
}

/// Names of the columns.
fn head() -> Vec<String> {
    let marks = MarkCategory::ALL.iter().map(|category| category.word());
    BEFORE.into_iter().chain(marks).chain(AFTER).map(str::to_owned).collect()
}

/// The version of a head that is not of the version that is read and written.
fn other_version(fields: &[String]) -> Option<u32> {
    let first = fields.first().filter(|first| *first != FIRST)?;
    first.strip_prefix("trial ")?.strip_suffix(" scenario")?.parse().ok()
}

/// The first line of a file, with its end.
#[must_use]
pub fn head_line() -> String {
    line_of(&head())
}

/// A row's line, with its end.
#[must_use]
pub fn line(of: &Origin, row: &Row) -> String {
    let judged = row.judged.as_ref();
    let number = |of: fn(&Judged) -> f64| judged.map_or_else(String::new, |j| of(j).to_string());
    let maybe = |of: fn(&Judged) -> Option<f64>| {
        judged.and_then(of).map_or_else(String::new, |number| number.to_string())
    };
    let whether = |of: fn(&Judged) -> bool| judged.map_or_else(String::new, |j| of(j).to_string());
    let mut fields = vec![
        of.scenario.clone(),
        of.fingerprint.clone(),
        of.currency.clone(),
        of.program.clone(),
        row.seed.to_string(),
        row.policy.word().to_owned(),
        row.fault.clone(),
        row.outcome.word().to_owned(),
        row.steps.to_string(),
        row.repairs.to_string(),
        row.minutes.to_string(),
        amount(row.things),
        amount(row.spent),
        amount(row.comeback),
        amount(row.spent + row.comeback),
        number(|judged| judged.total),
        whether(|judged| judged.passed),
    ];
    for place in 0..MarkCategory::ALL.len() {
        fields.push(judged.map_or_else(String::new, |judged| judged.shares[place].to_string()));
    }
    fields.push(whether(|judged| judged.proved));
    fields.push(whether(|judged| judged.unproved));
    fields.push(maybe(|judged| Some(judged.regret?.lower)));
    fields.push(maybe(|judged| Some(judged.regret?.upper)));
    fields.push(maybe(|judged| Some(judged.value?.lower)));
    fields.push(maybe(|judged| Some(judged.value?.upper)));
    line_of(&fields)
}

/// A whole table as a file.
#[must_use]
pub fn text(rows: &Rows) -> String {
    rows.rows.iter().fold(head_line(), |mut text, row| {
        text.push_str(&line(&rows.of, row));
        text
    })
}

/// Fields as a line. Those with a comma, a quote or an end of line are quoted, quotes doubled.
fn line_of(fields: &[String]) -> String {
    let mut line = String::new();
    for (number, field) in fields.iter().enumerate() {
        if number > 0 {
            line.push(',');
        }
        if field.contains([',', '"', '\n', '\r']) {
            // Writing to a string cannot fail.
            let _ = write!(line, "\"{}\"", field.replace('"', "\"\""));
        } else {
            line.push_str(field);
        }
    }
    line.push('\n');
    line
}

/// Money as units and hundredths.
fn amount(money: Money) -> String {
    let sign = if money.0 < 0 { "-" } else { "" };
    let hundredths = money.0.unsigned_abs();
    format!("{sign}{}.{:02}", hundredths / 100, hundredths % 100)
}

fn read_amount(text: &str) -> Option<Money> {
    let (sign, digits) = text.strip_prefix('-').map_or((1, text), |rest| (-1, rest));
    let (units, hundredths) = digits.split_once('.')?;
    let both_whole = [units, hundredths]
        .iter()
        .all(|part| !part.is_empty() && part.bytes().all(|byte| byte.is_ascii_digit()));
    if !both_whole || hundredths.len() != 2 {
        return None;
    }
    let whole: i64 = units.parse().ok()?;
    let rest: i64 = hundredths.parse().ok()?;
    Some(Money(sign * whole.checked_mul(100)?.checked_add(rest)?))
}

/// Whole records of a text with the line on which each begins, quoted fields taken apart; and whether
/// something is left behind the last of them.
fn records(text: &str) -> (Vec<(usize, Vec<String>)>, bool) {
    let mut records = Vec::new();
    let mut fields = Vec::new();
    let mut field = String::new();
    let (mut line, mut begins, mut quoted) = (1, 1, false);
    let mut rest = text.chars().peekable();
    while let Some(c) = rest.next() {
        match c {
            '"' if quoted && rest.peek() == Some(&'"') => {
                rest.next();
                field.push('"');
            }
            '"' => quoted = !quoted,
            ',' if !quoted => fields.push(core::mem::take(&mut field)),
            '\r' if !quoted && rest.peek() == Some(&'\n') => {}
            '\n' if !quoted => {
                fields.push(core::mem::take(&mut field));
                records.push((begins, core::mem::take(&mut fields)));
                line += 1;
                begins = line;
            }
            _ => {
                line += usize::from(c == '\n');
                field.push(c);
            }
        }
    }
    let is_torn = quoted || !field.is_empty() || !fields.is_empty();
    (records, is_torn)
}

/// Fields of a record, taken one after the other.
struct Fields<'a> {
    line: usize,
    next: core::slice::Iter<'a, String>,
}

impl<'a> Fields<'a> {
    fn text(&mut self) -> &'a str {
        self.next.next().map_or("", String::as_str)
    }

    fn parsed<T>(
        &mut self,
        column: &'static str,
        parse: impl Fn(&str) -> Option<T>,
    ) -> Result<T, RowsProblem> {
        let found = self.text();
        let problem = || RowsProblem::Field { line: self.line, column, found: found.to_owned() };
        parse(found).ok_or_else(problem)
    }

    fn whole<T: core::str::FromStr>(&mut self, column: &'static str) -> Result<T, RowsProblem> {
        self.parsed(column, |text| text.parse().ok())
    }

    /// A field that is empty where nothing was marked.
    fn if_any<T: core::str::FromStr>(
        &mut self,
        column: &'static str,
    ) -> Result<Option<T>, RowsProblem> {
        self.parsed(
            column,
            |text| if text.is_empty() { Some(None) } else { text.parse().ok().map(Some) },
        )
    }
}

impl Fields<'_> {
    /// Two fields of what is known between bounds, both empty or in their order.
    fn bounds(
        &mut self,
        least: &'static str,
        most: &'static str,
    ) -> Result<Option<Bounds>, RowsProblem> {
        let lower: Option<f64> = self.if_any(least)?;
        self.parsed(most, |text| match lower {
            None => text.is_empty().then_some(None),
            Some(lower) => {
                let upper = text.parse().ok().filter(|upper| lower <= *upper)?;
                Some(Some(Bounds { lower, upper }))
            }
        })
    }
}

fn read(line: usize, fields: &[String]) -> Result<(Origin, Row), RowsProblem> {
    let expected = BEFORE.len() + MarkCategory::ALL.len() + AFTER.len();
    if fields.len() != expected {
        return Err(RowsProblem::Fields { line, found: fields.len(), expected });
    }
    let mut of = Fields { line, next: fields.iter() };
    let origin = Origin {
        scenario: of.text().to_owned(),
        fingerprint: of.text().to_owned(),
        currency: of.text().to_owned(),
        program: of.text().to_owned(),
    };
    let mut row = Row {
        seed: of.whole("seed")?,
        policy: of.parsed("policy", Policy::of_word)?,
        fault: of.text().to_owned(),
        outcome: of.parsed("outcome", Outcome::of_word)?,
        steps: of.whole("steps")?,
        repairs: of.whole("repairs")?,
        minutes: of.whole("minutes")?,
        things: of.parsed("things", read_amount)?,
        spent: of.parsed("spent", read_amount)?,
        comeback: of.parsed("comeback", read_amount)?,
        judged: None,
    };
    let sum = row.spent + row.comeback;
    of.parsed("cost", |text| read_amount(text).filter(|cost| *cost == sum))?;
    let total: Option<f64> = of.if_any("marks")?;
    let passed = of.if_any("passed")?;
    let mut shares = [0.0; MarkCategory::ALL.len()];
    for (share, category) in shares.iter_mut().zip(MarkCategory::ALL) {
        *share = of.if_any(category.word())?.unwrap_or_default();
    }
    let proved = of.if_any("proved")?;
    let unproved = of.if_any("unproved")?;
    let regret = of.bounds("regret_least", "regret_most")?;
    let value = of.bounds("value_least", "value_most")?;
    row.judged = total.map(|total| Judged {
        total,
        shares,
        proved: proved.unwrap_or_default(),
        unproved: unproved.unwrap_or_default(),
        passed: passed.unwrap_or_default(),
        regret,
        value,
    });
    Ok((origin, row))
}

#[cfg(test)]
mod tests;
