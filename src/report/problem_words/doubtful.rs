//! Each kind of warning: what is doubtful, and what to do.

use super::kinds::with_word;
use crate::faults::FaultName;
use crate::scenario::doubts::Called;
use crate::scenario::warning::WarningKind;
use crate::units::Money;
use crate::vehicle::spec::Id;
use crate::wording::amounts::{money, short_number};
use crate::wording::catalogue::Words;
use crate::wording::place::{diagnoses, fault_kind, place};
use crate::wording::quoted;

/// What is doubtful, and what to do.
pub(super) fn said(kind: &WarningKind, currency: &str, words: &Words) -> String {
    let plain = |key: &str| words.say(key, &[]);
    match kind {
        WarningKind::NeverDrawn => plain("doubt-never-drawn"),
        WarningKind::OnlyFault => plain("doubt-only-fault"),
        WarningKind::Dominates { share } => with_share("doubt-dominates", *share, words),
        WarningKind::MostlySound { share } => with_share("doubt-mostly-sound", *share, words),
        WarningKind::FreeOfCharge => plain("doubt-free"),
        WarningKind::CheapComeback { part_number, price } => {
            cheap_comeback(part_number, *price, currency, words)
        }
        WarningKind::NamesFault { words: found, fault: name } => words.say(
            "doubt-names-fault",
            &[
                ("found", quoted::word(found).into()),
                ("fault", fault_kind(name.kind, words).into()),
            ],
        ),
        WarningKind::NamesPlace { words: found, .. } => {
            with_word("doubt-names-place", "found", found, words)
        }
        WarningKind::NeverThere => plain("doubt-never-there"),
        WarningKind::AlwaysPassed => plain("doubt-always-passed"),
        WarningKind::HardlyPassed => plain("doubt-hardly-passed"),
        WarningKind::NoAbout => plain("doubt-no-about"),
        WarningKind::NoTeaching => plain("doubt-no-teaching"),
        WarningKind::NeverNoticed { faults } => {
            words.say("doubt-never-noticed", &[("faults", diagnoses(faults, words).into())])
        }
        WarningKind::NotTold { faults, rival } => words.say(
            "doubt-not-told",
            &[
                ("faults", diagnoses(faults, words).into()),
                ("rival", diagnoses(rival, words).into()),
            ],
        ),
    }
}

fn with_share(key: &str, share: f64, words: &Words) -> String {
    let share = short_number(100.0 * share, 0, words);
    words.say(key, &[("share", words.say("trial-percent", &[("share", share.into())]).into())])
}

fn cheap_comeback(part_number: &Id, price: Money, currency: &str, words: &Words) -> String {
    let price = money(price, currency, words);
    words.say(
        "doubt-cheap-comeback",
        &[("part", quoted::word(part_number.as_str()).into()), ("price", price.into())],
    )
}

/// The words for a fault in every language that the program speaks, and those by which files call it.
pub fn names_of_faults() -> impl Fn(&FaultName) -> Called {
    let languages: Vec<Words> =
        Words::languages().into_iter().map(|choice| Words::for_language(choice.tag)).collect();
    move |name: &FaultName| {
        let of = |own: &str, say: &dyn Fn(&Words) -> String| {
            core::iter::once(own.replace('-', " ")).chain(languages.iter().map(say)).collect()
        };
        Called {
            kind: of(name.kind.word(), &|words| fault_kind(name.kind, words)),
            place: of(name.place.as_str(), &|words| place(&name.place, words)),
        }
    }
}
