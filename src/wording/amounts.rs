//! Time, money, numbers and what a meter displays, as people write them.

use super::catalogue::Words;
use crate::instruments::multimeter::{Display, MeterFunction, Prefix};
use crate::session::attempt::Till;
use crate::session::setup::Briefing;
use crate::units::{Minutes, Money};

/// Working time, such as `12 min`.
#[must_use]
pub fn minutes(time: Minutes, words: &Words) -> String {
    words.say("amount-minutes", &[("count", time.0.into())])
}

/// Money with the sign of its currency, such as `€48.50`.
#[must_use]
pub fn money(amount: Money, currency: &str, words: &Words) -> String {
    let hundredths = amount.0.unsigned_abs();
    let sign = if amount.0 < 0 { "-" } else { "" };
    let point = words.say("decimal-point", &[]);
    let number = format!("{}{point}{:02}", hundredths / 100, hundredths % 100);
    let arguments =
        [("sign", sign.into()), ("number", number.into()), ("currency", currency.into())];
    words.say("amount-money", &arguments)
}

/// Time and money of a session so far, with what is left of a limit.
#[must_use]
pub fn till(till: Till, briefing: &Briefing, words: &Words) -> String {
    let Briefing { prices, time_limit, .. } = briefing;
    let amount = |value| money(value, &prices.currency, words);
    let so_far = words.say(
        "till",
        &[
            ("minutes", minutes(till.minutes, words).into()),
            ("money", amount(till.money).into()),
            ("total", amount(till.total(prices.labour_per_hour)).into()),
        ],
    );
    match time_limit.left(till.minutes) {
        None => so_far,
        Some(left) => words.say(
            "till-with-limit",
            &[("till", so_far.into()), ("left", minutes(left, words).into())],
        ),
    }
}

/// Units of a currency with its sign and a fixed count of digits behind the point.
#[must_use]
pub fn units(amount: f64, decimals: usize, currency: &str, words: &Words) -> String {
    let number = number(amount, decimals, words);
    let (sign, number) = number.strip_prefix('-').map_or(("", &*number), |number| ("-", number));
    let arguments =
        [("sign", sign.into()), ("number", number.into()), ("currency", currency.into())];
    words.say("amount-money", &arguments)
}

/// A number with a fixed count of digits behind the point.
#[must_use]
pub fn number(value: f64, decimals: usize, words: &Words) -> String {
    // Adding zero turns a negative zero into a plain one.
    let text = format!("{:.decimals$}", value + 0.0);
    let shown = if text.bytes().any(|byte| matches!(byte, b'1'..=b'9')) {
        text
    } else {
        text.replace('-', "")
    };
    shown.replace('.', &words.say("decimal-point", &[]))
}

/// A number with as many digits behind the point as it needs, up to a count.
#[must_use]
pub fn short_number(value: f64, most_decimals: usize, words: &Words) -> String {
    let text = number(value, most_decimals, words);
    let point = words.say("decimal-point", &[]);
    if !text.contains(&point) {
        return text;
    }
    let text = text.trim_end_matches('0');
    text.strip_suffix(point.as_str()).unwrap_or(text).to_owned()
}

/// What the meter shows, with the symbol of its unit. The digits are those of the display in
/// every language, because a display does not translate its point.
#[must_use]
pub fn display(display: Display, function: MeterFunction) -> String {
    match display {
        Display::OverLimit => display.digits(),
        Display::Value { prefix, .. } => {
            format!("{} {}{}", display.digits(), prefix_symbol(prefix), unit_symbol(function))
        }
    }
}

/// The symbol of what a function of the meter measures.
#[must_use]
pub const fn unit_symbol(function: MeterFunction) -> &'static str {
    match function {
        MeterFunction::Volts => "V",
        MeterFunction::Ohms => "Ω",
        MeterFunction::Amps => "A",
    }
}

const fn prefix_symbol(prefix: Prefix) -> &'static str {
    match prefix {
        Prefix::Milli => "m",
        Prefix::One => "",
        Prefix::Kilo => "k",
        Prefix::Mega => "M",
    }
}

/// A text whose first letter is a capital, for a line that begins with a name.
#[must_use]
pub fn with_capital(text: &str) -> String {
    let start = text.len() - text.trim_start().len();
    let (space, rest) = text.split_at(start);
    let mut characters = rest.chars();
    match characters.next() {
        Some(first) => format!("{space}{}{}", first.to_uppercase(), characters.as_str()),
        None => text.to_owned(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn english() -> Words {
        Words::for_language("en-GB")
    }

    #[test]
    fn closed_form_time_and_money() {
        assert_eq!(minutes(Minutes(12), &english()), "12 min");
        for (hundredths, text) in [(0, "€0.00"), (5, "€0.05"), (48_50, "€48.50"), (-3_05, "-€3.05")]
        {
            assert_eq!(money(Money(hundredths), "€", &english()), text);
        }
        assert_eq!(money(Money(i64::MIN), "€", &english()), "-€92233720368547758.08");
    }

    #[test]
    fn closed_form_units_of_a_currency_stand_where_the_language_has_them() {
        assert_eq!(units(7.25, 2, "£", &english()), "£7.25");
        assert_eq!(units(-12.0, 0, "£", &english()), "-£12");
        let german = Words::for_language("de");
        assert_eq!(units(-7.25, 2, "£", &german), "-7,25 £");
        assert_eq!(money(Money(48_50), "€", &german), "48,50 €");
        assert_eq!(short_number(7.50, 2, &german), "7,5");
    }

    #[test]
    fn closed_form_numbers_round_and_lose_a_meaningless_minus() {
        assert_eq!(number(12.345, 1, &english()), "12.3");
        assert_eq!(number(-0.04, 1, &english()), "0.0");
        assert_eq!(number(-0.06, 1, &english()), "-0.1");
        assert_eq!(number(95.0, 0, &english()), "95");
        for (value, text) in
            [(10.0, "10"), (7.5, "7.5"), (0.0, "0"), (-0.25, "-0.2"), (100.0, "100")]
        {
            assert_eq!(short_number(value, 1, &english()), text);
        }
        assert_eq!(short_number(100.0, 0, &english()), "100");
    }

    #[test]
    fn closed_form_displays_carry_the_unit_they_show() {
        let value = |value, decimals, prefix| Display::Value { value, decimals, prefix };
        for (shown, function, text) in [
            (value(8.6, 1, Prefix::One), MeterFunction::Ohms, "8.6 Ω"),
            (value(4_120.0, 3, Prefix::Kilo), MeterFunction::Ohms, "4.120 kΩ"),
            (value(1.5e6, 3, Prefix::Mega), MeterFunction::Ohms, "1.500 MΩ"),
            (value(0.1605, 1, Prefix::Milli), MeterFunction::Volts, "160.5 mV"),
            (value(-12.56, 2, Prefix::One), MeterFunction::Volts, "-12.56 V"),
            (value(1.094, 3, Prefix::One), MeterFunction::Amps, "1.094 A"),
            (Display::OverLimit, MeterFunction::Ohms, "OL"),
        ] {
            assert_eq!(display(shown, function), text);
        }
    }

    #[test]
    fn a_capital_goes_to_the_first_letter_behind_the_indent() {
        assert_eq!(with_capital("  intake valve: wet"), "  Intake valve: wet");
        assert_eq!(with_capital("ölstand"), "Ölstand");
        assert_eq!(with_capital("   "), "   ");
        assert_eq!(with_capital(""), "");
    }
}
