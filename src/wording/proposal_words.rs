//! What the expert would have done, and what it would have cost, in words.

use super::amounts::money;
use super::catalogue::Words;
use super::place::place;
use super::step_words;
use crate::numerics::whole::to_i64;
use crate::reasoning::expert::Proposal;
use crate::reasoning::remedy::Remedy;
use crate::session::setup::Briefing;
use crate::units::Money;
use crate::vehicle::spec::Id;

/// What the expert would have done.
#[must_use]
pub fn proposal(proposal: &Proposal, words: &Words) -> String {
    match proposal {
        Proposal::Test(probe) => {
            words.say("proposal-step", &[("step", step_words::line(probe.showing()).into())])
        }
        Proposal::Repair(remedy) => repair(remedy, words),
        Proposal::Close => words.say("proposal-close", &[]),
    }
}

fn repair(remedy: &Remedy, words: &Words) -> String {
    let at = |key: &str, at: &Id| words.say(key, &[("place", place(at, words).into())]);
    match remedy {
        Remedy::Renew(valve) => at("proposal-renew", valve),
        Remedy::Clean(valve) => at("proposal-clean", valve),
        Remedy::Mend(element) => at("proposal-mend", element),
        Remedy::MendAndFuse(element) => at("proposal-mend-and-fuse", element),
        Remedy::Replace(element) => at("proposal-replace", element),
        Remedy::TopUp => words.say("proposal-top-up", &[]),
        Remedy::ChangeOil => words.say("proposal-change-oil", &[]),
        Remedy::Together(parts) => {
            let parts: Vec<String> = parts.iter().map(|part| repair(part, words)).collect();
            words.all_of(&parts)
        }
    }
}

/// Money in whole units.
#[must_use]
pub fn whole_money(units: f64, briefing: &Briefing, words: &Words) -> String {
    // Expectations are shown to whole units: more digits would pretend to more than they hold.
    money(Money(to_i64(units.round()) * 100), &briefing.prices.currency, words)
}

/// An amount that is known between two bounds.
#[must_use]
pub fn span(least: f64, most: f64, briefing: &Briefing, words: &Words) -> String {
    let (least, most) = (whole_money(least, briefing, words), whole_money(most, briefing, words));
    if least == most {
        return most;
    }
    words.say("money-span", &[("least", least.into()), ("most", most.into())])
}
