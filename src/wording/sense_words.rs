//! What is seen, felt and heard.

use super::amounts::with_capital;
use super::catalogue::Words;
use super::place::place;
use crate::physics::stroke::Click;
use crate::session::event::{OilFeel, OilLook, Sight};
use crate::vehicle::spec::Id;

/// What the eye sees, without the place.
#[must_use]
pub fn sight(sight: Sight, words: &Words) -> String {
    let key = match sight {
        Sight::Sound => "sight-sound",
        Sight::Corrosion => "sight-corrosion",
        Sight::SpreadTerminal => "sight-spread-terminal",
        Sight::BlownFuse => "sight-blown-fuse",
        Sight::RubbedThrough => "sight-rubbed-through",
        Sight::Sludge => "sight-sludge",
        Sight::TornSeal => "sight-torn-seal",
        Sight::UsedSeal => "sight-used-seal",
        Sight::SpoolSticks => "sight-spool-sticks",
        Sight::SpoolSeized => "sight-spool-seized",
        Sight::Hidden => "sight-hidden",
    };
    words.say(key, &[])
}

/// What the eye sees at a place.
#[must_use]
pub fn seen(at: &Id, seen: Sight, words: &Words) -> String {
    let sight = sight(seen, words);
    let arguments = [("place", place(at, words).into()), ("sight", sight.into())];
    with_capital(&words.say("event-seen", &arguments))
}

/// What eye, finger and nose make of the oil on the stick.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct OilSenses {
    /// Eye.
    pub look: OilLook,
    /// Finger.
    pub feel: OilFeel,
    /// Nose.
    pub smells_of_fuel: bool,
}

/// What the dipstick shows. The level is told as an eye reads it, in bands and not in digits.
#[must_use]
pub fn oil_seen(level: f64, dry: bool, senses: OilSenses, words: &Words) -> String {
    if dry {
        return words.say("oil-dry", &[]);
    }
    let band = words.say(level_key(level), &[]);
    let key = match senses.look {
        OilLook::Fresh => "oil-fresh",
        OilLook::Dark => "oil-dark",
        OilLook::Sludge => "oil-sludge",
    };
    let look = words.say(key, &[]);
    let mut looks = vec![look];
    match senses.feel {
        OilFeel::Usual => {}
        OilFeel::Thin => looks.push(words.say("oil-thin", &[])),
        OilFeel::Thick => looks.push(words.say("oil-thick", &[])),
    }
    if senses.smells_of_fuel {
        looks.push(words.say("oil-smells-of-fuel", &[]));
    }
    let look = words.all_of(&looks);
    words.say("event-oil-seen", &[("level", band.into()), ("look", look.into())])
}

/// Bands of the level between the lower mark (0) and the upper (1): the eye tells a mark within
/// about a tenth of their distance, and thirds between them.
fn level_key(level: f64) -> &'static str {
    if level > 1.1 {
        "oil-above-upper"
    } else if level >= 0.9 {
        "oil-at-upper"
    } else if level >= 0.65 {
        "oil-nearer-upper"
    } else if level >= 0.35 {
        "oil-half-way"
    } else if level > 0.1 {
        "oil-nearer-lower"
    } else if level >= -0.1 {
        "oil-at-lower"
    } else {
        "oil-below-lower"
    }
}

/// What the ear makes of a valve as its current comes on or goes off.
#[must_use]
pub fn heard(valve: &Id, current_on: bool, click: Click, words: &Words) -> String {
    let sound = words.say(
        match click {
            Click::Clear => "click-clear",
            Click::Dull => "click-dull",
            Click::None => "click-none",
        },
        &[],
    );
    let key = if current_on { "event-heard-on" } else { "event-heard-off" };
    let place = place(valve, words);
    with_capital(&words.say(key, &[("place", place.into()), ("sound", sound.into())]))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn limit_the_marks_of_the_dipstick_name_themselves() {
        for (level, key) in [
            (1.3, "oil-above-upper"),
            (1.0, "oil-at-upper"),
            (0.75, "oil-nearer-upper"),
            (0.5, "oil-half-way"),
            (0.2, "oil-nearer-lower"),
            (0.0, "oil-at-lower"),
            (-0.5, "oil-below-lower"),
        ] {
            assert_eq!(level_key(level), key);
        }
    }
}
