//! Values as RON writes them.

use crate::units::Money;

/// A text in quotes, on one line.
#[must_use]
pub fn text(text: &str) -> String {
    let mut written = String::with_capacity(text.len() + 2);
    written.push('"');
    for character in text.chars() {
        match character {
            '"' => written.push_str("\\\""),
            '\\' => written.push_str("\\\\"),
            '\n' => written.push_str("\\n"),
            '\t' => written.push_str("\\t"),
            c if c.is_control() => written.extend(c.escape_unicode()),
            c => written.push(c),
        }
    }
    written.push('"');
    written
}

/// An amount of money in hundredths, parted before the last two digits.
#[must_use]
pub fn money(Money(hundredths): Money) -> String {
    let (units, rest) = (hundredths / 100, (hundredths % 100).abs());
    if units == 0 { hundredths.to_string() } else { format!("{units}_{rest:02}") }
}

/// What somebody has typed as a number: finite, with a point or a comma before the fraction.
#[must_use]
pub fn typed_number(typed: &str) -> Option<f64> {
    let typed = typed.trim().replace(',', ".");
    let is_plain = typed.bytes().all(|b| b.is_ascii_digit() || b"+-.".contains(&b));
    typed.parse().ok().filter(|number: &f64| is_plain && number.is_finite())
}

/// What somebody has typed as a whole number, 0 or more.
#[must_use]
pub fn typed_whole(typed: &str) -> Option<u32> {
    typed.trim().parse().ok()
}

/// What somebody has typed as an amount of money: units, and up to two digits behind a point or a comma.
#[must_use]
pub fn typed_money(typed: &str) -> Option<Money> {
    let typed = typed.trim().replace(',', ".");
    let (units, rest) = typed.split_once('.').unwrap_or((&typed, ""));
    let all_digits = |part: &str| part.bytes().all(|b| b.is_ascii_digit());
    if rest.len() > 2 || units.is_empty() || !all_digits(units) || !all_digits(rest) {
        return None;
    }
    let hundredths: i64 = format!("{rest:0<2}").parse().ok()?;
    units.parse::<i64>().ok()?.checked_mul(100)?.checked_add(hundredths).map(Money)
}

/// An amount of money as it is typed.
#[must_use]
pub fn money_to_type(Money(hundredths): Money) -> String {
    let sign = if hundredths < 0 { "-" } else { "" };
    let hundredths = hundredths.unsigned_abs();
    format!("{sign}{}.{:02}", hundredths / 100, hundredths % 100)
}
