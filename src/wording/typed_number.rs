//! Numbers as people type them, with or without a space before the unit.

use super::parse_problem::{Expected, NumberKind, ParseProblem, ProblemKind};
use super::word_reader::{TypedWord, WordReader};
use crate::session::step::Quantity;

/// A unit of a reading: what it measures and what one of it is worth [V, ohm, A or bar].
type Unit = (Quantity, f64);

/// Units that are offered. Milliohms and megavolts are not among them, so that case does not
/// matter.
const UNITS: [(&str, Unit); 10] = [
    ("V", (Quantity::Volts, 1.0)),
    ("mV", (Quantity::Volts, 1e-3)),
    ("volts", (Quantity::Volts, 1.0)),
    ("ohms", (Quantity::Ohms, 1.0)),
    ("kohms", (Quantity::Ohms, 1e3)),
    ("Mohms", (Quantity::Ohms, 1e6)),
    ("A", (Quantity::Amps, 1.0)),
    ("mA", (Quantity::Amps, 1e-3)),
    ("amps", (Quantity::Amps, 1.0)),
    ("bar", (Quantity::Bar, 1.0)),
];

/// The word between two ends of a range, beside the units that may stand before it.
#[derive(Debug, Clone, Copy, PartialEq)]
enum AfterLeast {
    To,
    Unit(Unit),
}

/// Reads `LEAST to MOST` with a unit at one end or both, into volts, ohms, amps or bar. An end without a
/// unit takes that of the other; a reading without any is no reading.
pub(super) fn range(reader: &mut WordReader<'_>) -> Result<(f64, f64, Quantity), ParseProblem> {
    let (least, joined, _) = value_and_unit(reader)?;
    let first = match joined {
        Some(unit) => {
            reader.expect("to")?;
            Some(unit)
        }
        None => match reader.choose(&units_and_to())? {
            AfterLeast::To => None,
            AfterLeast::Unit(unit) => {
                reader.expect("to")?;
                Some(unit)
            }
        },
    };
    let (most, second, word) = value_and_unit(reader)?;
    let second = match second {
        Some(unit) => unit,
        None => match first {
            Some(first) => reader.choose_if_any(&UNITS)?.unwrap_or(first),
            None => reader.choose(&UNITS)?,
        },
    };
    let first = first.unwrap_or(second);
    if first.0 != second.0 {
        return Err(bad_number(word, NumberKind::Reading));
    }
    let least = finite(word, least * first.1)?;
    let most = finite(word, most * second.1)?;
    if least > most {
        return Err(bad_number(word, NumberKind::NotBelowLeast));
    }
    Ok((least, most, second.0))
}

/// Reads one value with its unit, into volts, ohms, amps or bar.
pub(super) fn reading(reader: &mut WordReader<'_>) -> Result<(f64, Quantity), ParseProblem> {
    let (value, unit, word) = value_and_unit(reader)?;
    let (quantity, worth) = match unit {
        Some(unit) => unit,
        None => reader.choose(&UNITS)?,
    };
    Ok((finite(word, value * worth)?, quantity))
}

/// Reads a confidence [%], 0 to 100.
pub(super) fn percent(reader: &mut WordReader<'_>) -> Result<u8, ParseProblem> {
    let wanted = NumberKind::Percent;
    let (word, digits, rest) = split(reader, wanted)?;
    match rest {
        "%" => {}
        "" => {
            let _ = reader.choose_if_any(&[("%", ())])?;
        }
        _ => return Err(bad_number(word, wanted)),
    }
    let value: u8 = digits.parse().map_err(|_| bad_number(word, wanted))?;
    if value > 100 { Err(bad_number(word, wanted)) } else { Ok(value) }
}

/// Reads a duration in whole seconds; the caller reads what may follow, the unit included, when
/// it is not joined to the number.
pub(super) fn seconds(reader: &mut WordReader<'_>) -> Result<(u16, bool), ParseProblem> {
    let wanted = NumberKind::Seconds;
    let (word, digits, rest) = split(reader, wanted)?;
    if !rest.is_empty() && !rest.eq_ignore_ascii_case("s") {
        return Err(bad_number(word, wanted));
    }
    let value: u16 = digits.parse().map_err(|_| bad_number(word, wanted))?;
    if value == 0 { Err(bad_number(word, wanted)) } else { Ok((value, !rest.is_empty())) }
}

/// A number with the unit that is joined to it, if any.
fn value_and_unit<'a>(
    reader: &mut WordReader<'a>,
) -> Result<(f64, Option<Unit>, TypedWord<'a>), ParseProblem> {
    let (word, digits, rest) = split(reader, NumberKind::Reading)?;
    let value: f64 = digits.parse().map_err(|_| bad_number(word, NumberKind::Reading))?;
    let value = finite(word, value)?;
    if rest.is_empty() {
        return Ok((value, None, word));
    }
    let mut unit = WordReader::new(rest);
    let unit = unit.choose(&UNITS).map_err(|_| bad_number(word, NumberKind::Reading))?;
    Ok((value, Some(unit), word))
}

/// Splits the next word into the digits at its start and what is joined to them.
fn split<'a>(
    reader: &mut WordReader<'a>,
    wanted: NumberKind,
) -> Result<(TypedWord<'a>, &'a str, &'a str), ParseProblem> {
    let Some(word) = reader.take() else {
        return Err(reader.missing(Expected::Number(wanted)));
    };
    let unsigned = word.text.strip_prefix(['-', '+']).unwrap_or(word.text);
    let sign = word.text.len() - unsigned.len();
    let digits = unsigned.find(|c: char| !c.is_ascii_digit() && c != '.').unwrap_or(unsigned.len());
    let (number, rest) = word.text.split_at(sign + digits);
    if digits == 0 { Err(bad_number(word, wanted)) } else { Ok((word, number, rest)) }
}

fn finite(word: TypedWord<'_>, value: f64) -> Result<f64, ParseProblem> {
    if value.is_finite() { Ok(value) } else { Err(bad_number(word, NumberKind::Reading)) }
}

fn bad_number(word: TypedWord<'_>, wanted: NumberKind) -> ParseProblem {
    ParseProblem {
        column: word.column,
        found: word.text.to_owned(),
        kind: ProblemKind::BadNumber { wanted },
        allowed: Vec::new(),
    }
}

fn units_and_to() -> Vec<(&'static str, AfterLeast)> {
    let units = UNITS.iter().map(|(name, unit)| (*name, AfterLeast::Unit(*unit)));
    [("to", AfterLeast::To)].into_iter().chain(units).collect()
}
