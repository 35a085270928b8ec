//! A sound in words, for whoever does not hear it.

use crate::physics::stroke::Click;
use crate::wording::catalogue::Words;

/// What a sound is called.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Name {
    /// A valve's click, or none.
    Click(Click),
    /// The starter turns the engine.
    Starter,
    /// It turns it too slowly or not at all.
    StarterLabours,
    /// The engine idles.
    Idle {
        /// Unevenly.
        is_rough: bool,
    },
    /// It stalls.
    Stall,
    /// It is held at a speed by hand.
    Held {
        /// Speed [rpm].
        rpm: u16,
    },
    /// It pulls on a road.
    Road {
        /// Unevenly.
        is_rough: bool,
    },
    /// It runs down after the key was turned off.
    RunDown,
}

/// Sounds in their order, in words; nothing for none.
#[must_use]
pub fn caption(names: &[Name], words: &Words) -> String {
    let mut said = names.iter().map(|name| one(*name, words));
    let Some(first) = said.next() else { return String::new() };
    said.fold(first, |before, after| {
        words.say("sound-then", &[("before", before.into()), ("after", after.into())])
    })
}

fn one(name: Name, words: &Words) -> String {
    let key = match name {
        Name::Click(Click::Clear) => "click-clear",
        Name::Click(Click::Dull) => "click-dull",
        Name::Click(Click::None) => "click-none",
        Name::Starter => "sound-starter",
        Name::StarterLabours => "sound-starter-labours",
        Name::Idle { is_rough: false } => "sound-idle-even",
        Name::Idle { is_rough: true } => "sound-idle-rough",
        Name::Stall => "sound-stall",
        Name::Held { rpm } => return words.say("sound-held", &[("rpm", rpm.into())]),
        Name::Road { is_rough: false } => "sound-road",
        Name::Road { is_rough: true } => "sound-road-rough",
        Name::RunDown => "sound-run-down",
    };
    words.say(key, &[])
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn sounds_are_said_in_their_order() {
        let words = Words::for_language("en-GB");
        let clicks = [Name::Click(Click::Clear), Name::Click(Click::None)];
        assert_eq!(caption(&clicks, &words), "a sharp click, then no click");
        let start = [Name::Starter, Name::Idle { is_rough: true }];
        assert_eq!(caption(&start, &words), "starter, then the engine idling roughly");
        assert_eq!(caption(&[], &words), "");
    }
}
