//! Cautions, breaches of care with why they matter, and the rules of care of a part.

use super::catalogue::Words;
use super::place::place;
use crate::session::event::{Breach, Hazard};
use crate::vehicle::spec::{Care, Id};

/// A caution that stands beside a step. It never replaces the maker's procedure, and says so.
#[must_use]
pub fn caution(hazard: Hazard, words: &Words) -> String {
    let key = match hazard {
        Hazard::Hot => "hazard-hot",
        Hazard::MovingParts => "hazard-moving-parts",
        Hazard::BatteryCurrent => "hazard-battery-current",
        Hazard::Road => "hazard-road",
        Hazard::Fumes => "hazard-fumes",
        Hazard::UsedOil => "hazard-used-oil",
    };
    words.say("event-caution", &[("hazard", words.say(key, &[]).into())])
}

/// What was done against a rule of care or safety, and why the rule is there.
#[must_use]
pub fn against_care(breach: &Breach, words: &Words) -> String {
    let plain = |key: &str| words.say(key, &[]);
    let with_place = |key: &str, id: &Id| words.say(key, &[("place", place(id, words).into())]);
    let breach = match breach {
        Breach::KeyOnWhileUnplugging(connector) => with_place("breach-key-on", connector),
        Breach::OhmsOnLiveCircuit => plain("breach-ohms-live"),
        Breach::OhmsWhilePlugged(connector) => with_place("breach-ohms-plugged", connector),
        Breach::AmpsAcrossSource => plain("breach-amps-across-source"),
        Breach::FrontProbed(connector) => with_place("breach-front-probed", connector),
        Breach::TestLampOnModule(point) => with_place("breach-test-lamp-on-module", point),
        Breach::Part(part, care) => with_place(broken_care_key(*care), part),
        Breach::PoweredTooLong(valve) => with_place("breach-powered-too-long", valve),
        Breach::ReversedPolarity(valve) => with_place("breach-reversed-polarity", valve),
        Breach::RunWithoutOil => plain("breach-run-without-oil"),
        Breach::DrivenUnchecked => plain("breach-driven-unchecked"),
        Breach::DrivenIncomplete => plain("breach-driven-incomplete"),
        Breach::WrongOilGrade => plain("breach-wrong-oil-grade"),
        Breach::ClearedUnread => plain("breach-cleared-unread"),
        Breach::RepairBeforeDiagnosis => plain("breach-repair-before-diagnosis"),
        Breach::RepairBeyondApproval => plain("breach-repair-beyond-approval"),
        Breach::RepairWithoutApproval => plain("breach-repair-without-approval"),
    };
    words.say("event-against-care", &[("breach", breach.into())])
}

/// A rule of care as the procedure states it.
#[must_use]
pub fn rule(care: Care, words: &Words) -> String {
    let key = match care {
        Care::KeyOff => "care-key-off",
        Care::BreakSealLoose => "care-break-seal-loose",
        Care::NewSeal => "care-new-seal",
        Care::Torque => "care-torque",
        Care::Hot => "care-hot",
    };
    words.say(key, &[])
}

const fn broken_care_key(care: Care) -> &'static str {
    match care {
        Care::KeyOff => "breach-care-key-off",
        Care::BreakSealLoose => "breach-care-break-seal-loose",
        Care::NewSeal => "breach-care-new-seal",
        Care::Torque => "breach-care-torque",
        Care::Hot => "breach-care-hot",
    }
}
