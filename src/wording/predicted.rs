//! Reads what is said of the next reading, and codes by their number.

use super::code_words::named_codes;
use super::parse_problem::ParseProblem;
use super::step_words::{self, OVER_LIMIT_ONLY};
use super::typed_number;
use super::word_reader::WordReader;
use crate::control_module::code::Code;
use crate::instruments::test_lamp::Glow;
use crate::physics::stroke::Click;
use crate::session::step::{Bound, Quantity, Sign, Step};

/// Sounds of a valve and lights of a test lamp.
const CLICKS: [Click; 3] = [Click::Clear, Click::Dull, Click::None];
const GLOWS: [Glow; 3] = [Glow::Bright, Glow::Dim, Glow::Dark];

/// What can be said of what comes next, besides a range.
#[derive(Debug, Clone, Copy)]
enum Predictable {
    Above,
    OverLimit,
    Click,
    Glow,
    Codes,
}

/// Quantities that a display can be beyond.
const QUANTITIES: [Quantity; 3] = [Quantity::Volts, Quantity::Ohms, Quantity::Amps];

pub(super) fn predict(reader: &mut WordReader<'_>) -> Result<Step, ParseProblem> {
    let begins_with_number = |text: &str| {
        text.trim_start_matches(['-', '+']).starts_with(|c: char| c.is_ascii_digit() || c == '.')
    };
    if reader.peek().is_some_and(begins_with_number) {
        let (least, most, of) = typed_number::range(reader)?;
        return Ok(Step::Predict { least, most: Bound::Value(most), of: Some(of) });
    }
    let predictable = reader.choose(&[
        ("above", Predictable::Above),
        ("over-limit", Predictable::OverLimit),
        ("click", Predictable::Click),
        ("glow", Predictable::Glow),
        ("codes", Predictable::Codes),
    ])?;
    let sign = match predictable {
        Predictable::Above => {
            let (least, of) = typed_number::reading(reader)?;
            return Ok(Step::Predict { least, most: Bound::OverLimit, of: Some(of) });
        }
        Predictable::OverLimit => {
            let of = reader.choose_if_any(&QUANTITIES.map(|of| (step_words::quantity(of), of)))?;
            let of = Some(of.unwrap_or(Quantity::Ohms));
            return Ok(Step::Predict { least: OVER_LIMIT_ONLY, most: Bound::OverLimit, of });
        }
        Predictable::Click => {
            Sign::Click(reader.choose(&CLICKS.map(|it| (step_words::click(it), it)))?)
        }
        Predictable::Glow => {
            Sign::Glow(reader.choose(&GLOWS.map(|it| (step_words::glow(it), it)))?)
        }
        Predictable::Codes => code_or(reader, &[("none", Sign::NoCodes)], Sign::Code)?,
    };
    Ok(Step::PredictSign { sign })
}

/// A code, or one of the words beside it. Any code can be typed; those are offered that the catalogue has
/// a meaning for, so that what is offered never hints at the fault.
pub(super) fn code_or<T: Copy>(
    reader: &mut WordReader<'_>,
    beside: &[(&str, T)],
    of: impl Fn(Code) -> T,
) -> Result<T, ParseProblem> {
    if let Some(code) = reader.peek().and_then(|text| text.parse().ok()) {
        reader.take();
        return Ok(of(code));
    }
    let named: Vec<(String, T)> = named_codes().map(|code| (code.to_string(), of(code))).collect();
    let named = named.iter().map(|(word, meant)| (word.as_str(), *meant));
    reader.choose(&beside.iter().copied().chain(named).collect::<Vec<_>>())
}
