//! The oil and its pressure: dipstick, filling, changing, gauge.

use super::amounts::number;
use super::catalogue::Words;
use super::sense_words;
use crate::session::event::Event;

/// What an event of the oil and its pressure tells; nothing for any other.
#[must_use]
pub fn told(event: &Event, words: &Words) -> String {
    let plain = |key: &str| words.say(key, &[]);
    match event {
        Event::OilSeen { level, dry, look, feel, smells_of_fuel } => {
            let senses = sense_words::OilSenses {
                look: *look,
                feel: *feel,
                smells_of_fuel: *smells_of_fuel,
            };
            sense_words::oil_seen(*level, *dry, senses, words)
        }
        Event::GaugeFitted => plain("event-gauge-fitted"),
        Event::GaugeRemoved => plain("event-gauge-removed"),
        Event::GaugeRead { rpm, bar, swing, .. } => pressure(*rpm, *bar, *swing, words),
        Event::OilFilled { tenths: 0 } => plain("event-oil-full-already"),
        Event::OilFilled { tenths } => {
            let litres = number(f64::from(*tenths) / 10.0, 1, words);
            words.say("event-oil-filled", &[("litres", litres.into())])
        }
        Event::OilChanged { grade, drained_tenths } => {
            let litres = number(f64::from(*drained_tenths) / 10.0, 1, words);
            words.say(
                "event-oil-changed",
                &[("litres", litres.into()), ("grade", grade.word().into())],
            )
        }
        _ => String::new(),
    }
}

/// What the oil pressure gauge shows.
fn pressure(rpm: Option<u16>, bar: f64, swing: f64, words: &Words) -> String {
    let speed = rpm.map_or_else(
        || words.say("gauge-idle", &[]),
        |rpm| words.say("gauge-held", &[("rpm", number(f64::from(rpm), 0, words).into())]),
    );
    let needle = if swing > 0.0 {
        words.say("gauge-swings", &[("swing", number(swing, 1, words).into())])
    } else {
        words.say("gauge-steady", &[])
    };
    words.say(
        "event-gauge-read",
        &[
            ("speed", speed.into()),
            ("bar", number(bar, 1, words).into()),
            ("needle", needle.into()),
        ],
    )
}
