//! The debrief in words: marks with their evidence, then every step as the expert saw it.

use super::amounts::{minutes, money, number};
use super::care_words::against_care;
use super::catalogue::Words;
use super::place::{diagnosis, place};
use super::step_words;
use crate::assessment::debrief::Debrief;
use crate::assessment::mark::{About, Critical, ProofPart, Remark};
use crate::assessment::rubric::{MarkCategory, Rubric};
use crate::faults::FaultName;
use crate::numerics::whole::to_i64;
use crate::reasoning::expert::Proposal;
use crate::reasoning::remedy::Remedy;
use crate::session::attempt::Session;
use crate::session::setup::Briefing;
use crate::session::step::{Ending, Section};
use crate::units::Money;
use std::collections::BTreeMap;

/// Suspects that are named for a step; the rest together are "others".
const NAMED_SUSPECTS: usize = 2;
/// Chance from which a suspect is worth naming.
const WORTH_NAMING: f64 = 0.05;

/// The whole debrief as lines of text.
#[must_use]
pub fn debrief(
    debrief: &Debrief,
    session: &Session,
    rubric: &Rubric,
    words: &Words,
) -> Vec<String> {
    let briefing = session.briefing();
    let mut lines = vec![words.say("debrief-title", &[])];
    lines.extend(outcome(debrief, briefing, words));
    lines.push(String::new());
    lines.push(total(debrief, rubric, words));
    for critical in &debrief.critical {
        lines.push(words.say(
            match critical {
                Critical::Unsafe => "debrief-critical-unsafe",
                Critical::Unproved => "debrief-critical-unproved",
            },
            &[],
        ));
    }
    for mark in &debrief.marks {
        let most = 100.0 * rubric.weights.share_of(mark.category);
        lines.push(words.say(
            "debrief-mark",
            &[
                ("category", category(mark.category, words).into()),
                ("points", number(mark.share * most, 1, words).into()),
                ("most", number(most, 1, words).into()),
            ],
        ));
        lines.extend(mark.remarks.iter().map(|about| remark(about, session, words)));
    }
    lines.push(String::new());
    lines.push(words.say("debrief-steps", &[]));
    lines.extend(steps(debrief, session, words));
    lines
}

fn outcome(debrief: &Debrief, briefing: &Briefing, words: &Words) -> Vec<String> {
    let currency = &briefing.prices.currency;
    let till = debrief.till;
    let all = till.total(briefing.prices.labour_per_hour);
    let faults = if debrief.faults.is_empty() {
        diagnosis(None, words)
    } else {
        let names: Vec<String> =
            debrief.faults.iter().map(|fault| diagnosis(Some(&fault.name), words)).collect();
        words.all_of(&names)
    };
    let after = match (debrief.aftermath.lamp, debrief.aftermath.runs_badly) {
        (false, false) => "debrief-after-well",
        (true, false) => "debrief-after-lamp",
        (false, true) => "debrief-after-badly",
        (true, true) => "debrief-after-both",
    };
    vec![
        words.say(
            "debrief-handed-over",
            &[
                ("ending", ending(debrief.ending, words).into()),
                ("minutes", minutes(till.minutes, words).into()),
                ("money", money(till.money, currency, words).into()),
                ("total", money(all, currency, words).into()),
            ],
        ),
        words.say("debrief-truth", &[("faults", faults.into())]),
        words.say(after, &[]),
    ]
}

fn ending(ending: Ending, words: &Words) -> String {
    let key = match ending {
        Ending::Repaired => "ending-as-repaired",
        Ending::NoFaultFound => "ending-as-no-fault",
        Ending::Referred => "ending-as-referred",
        Ending::Unsafe => "ending-as-unsafe",
        Ending::Declined => "ending-as-declined",
    };
    words.say(key, &[])
}

fn total(debrief: &Debrief, rubric: &Rubric, words: &Words) -> String {
    words.say(
        if debrief.passed { "debrief-total-passed" } else { "debrief-total-failed" },
        &[
            ("total", number(debrief.total, 1, words).into()),
            ("line", u32::from(rubric.pass_percent).into()),
        ],
    )
}

/// The name of a kind of mark.
#[must_use]
pub fn category(category: MarkCategory, words: &Words) -> String {
    let key = match category {
        MarkCategory::TestChoice => "mark-test-choice",
        MarkCategory::AccessOrder => "mark-access-order",
        MarkCategory::Reading => "mark-reading",
        MarkCategory::Calibration => "mark-calibration",
        MarkCategory::Repair => "mark-repair",
        MarkCategory::Proof => "mark-proof",
        MarkCategory::Care => "mark-care",
        MarkCategory::Record => "mark-record",
    };
    words.say(key, &[])
}

/// One remark, with the step that it is about.
fn remark(remark: &Remark, session: &Session, words: &Words) -> String {
    let sign = words.say(if remark.good { "remark-good" } else { "remark-bad" }, &[]);
    let text = about(&remark.about, session.briefing(), words);
    match remark.entry.and_then(|entry| Some((entry, session.log().get(entry)?))) {
        Some((entry, logged)) => words.say(
            "remark-at-step",
            &[
                ("sign", sign.into()),
                ("number", (entry + 1).into()),
                ("step", step_words::line(&logged.step).into()),
                ("text", text.into()),
            ],
        ),
        None => words.say("remark-alone", &[("sign", sign.into()), ("text", text.into())]),
    }
}

fn about(about: &About, briefing: &Briefing, words: &Words) -> String {
    let plain = |key: &str| words.say(key, &[]);
    let percent = |share: f64| number(100.0 * share, 0, words);
    match about {
        About::Regret { cost, best } => words.say(
            "about-regret",
            &[
                ("cost", whole_money(*cost, briefing, words).into()),
                ("best", proposal(best, words).into()),
            ],
        ),
        About::NoRegret => plain("about-no-regret"),
        About::RemovedAgain(part) => {
            words.say("about-removed-again", &[("place", place(part, words).into())])
        }
        About::NoDetour => plain("about-no-detour"),
        About::Prediction { met: true } => plain("about-prediction-met"),
        About::Prediction { met: false } => plain("about-prediction-missed"),
        About::FewPredictions(count) => {
            words.say("about-few-predictions", &[("count", (*count).into())])
        }
        About::Breach(breach) => against_care(breach, words),
        About::SoundReadings => plain("about-sound-readings"),
        About::Confidence { distance } => {
            words.say("about-confidence", &[("distance", number(*distance, 2, words).into())])
        }
        About::NoConfidence => plain("about-no-confidence"),
        About::Repair { chance } => {
            words.say("about-repair", &[("chance", percent(*chance).into())])
        }
        About::CameBack { came_back: true } => plain("about-came-back"),
        About::CameBack { came_back: false } => plain("about-stayed-away"),
        About::Proof(part) => plain(match part {
            ProofPart::Recorded => "proof-recorded",
            ProofPart::Cleared => "proof-cleared",
            ProofPart::KeyOnCheck => "proof-key-on",
            ProofPart::RoadTest => "proof-road",
            ProofPart::Rescan => "proof-rescan",
        }),
        About::NoBreach => plain("about-no-breach"),
        About::LeftOff(part) => {
            words.say("about-left-off", &[("place", place(part, words).into())])
        }
        About::Written(section) => plain(match section {
            Section::Concern => "record-concern",
            Section::Cause => "record-cause",
            Section::Correction => "record-correction",
        }),
    }
}

/// What the expert would have done.
#[must_use]
pub fn proposal(proposal: &Proposal, words: &Words) -> String {
    match proposal {
        Proposal::Test(probe) => {
            words.say("proposal-step", &[("step", step_words::line(probe.showing()).into())])
        }
        Proposal::Repair(Remedy::Renew(valve)) => {
            words.say("proposal-renew", &[("place", place(valve, words).into())])
        }
        Proposal::Repair(Remedy::Clean(valve)) => {
            words.say("proposal-clean", &[("place", place(valve, words).into())])
        }
        Proposal::Repair(Remedy::Mend(element)) => {
            words.say("proposal-mend", &[("place", place(element, words).into())])
        }
        Proposal::Repair(Remedy::TopUp) => words.say("proposal-top-up", &[]),
        Proposal::Close => words.say("proposal-close", &[]),
    }
}

fn whole_money(units: f64, briefing: &Briefing, words: &Words) -> String {
    // Expectations are shown to whole units: more digits would pretend to more than they hold.
    money(Money(to_i64(units.round()) * 100), &briefing.prices.currency, words)
}

fn steps(debrief: &Debrief, session: &Session, words: &Words) -> Vec<String> {
    let briefing = session.briefing();
    debrief
        .review
        .steps
        .iter()
        .zip(session.log())
        .map(|(step, logged)| {
            let regret = match step.regret {
                None => words.say("step-not-weighed", &[]),
                Some(regret) if regret > 0.0 => words.say(
                    "step-regret",
                    &[
                        ("cost", whole_money(regret, briefing, words).into()),
                        ("best", proposal(&step.proposal, words).into()),
                    ],
                ),
                Some(_) => words.say("step-no-regret", &[]),
            };
            words.say(
                "step-line",
                &[
                    ("number", (step.entry + 1).into()),
                    ("step", step_words::line(&logged.step).into()),
                    ("cost", whole_money(step.cost, briefing, words).into()),
                    ("value", whole_money(step.value, briefing, words).into()),
                    ("regret", regret.into()),
                    ("belief", belief(&step.after, words).into()),
                ],
            )
        })
        .collect()
}

/// The likeliest suspects with their chances.
fn belief(belief: &BTreeMap<Option<FaultName>, f64>, words: &Words) -> String {
    let mut order: Vec<(&Option<FaultName>, f64)> =
        belief.iter().map(|(fault, chance)| (fault, *chance)).collect();
    order.sort_by(|a, b| b.1.total_cmp(&a.1));
    let named: Vec<String> = order
        .into_iter()
        .take(NAMED_SUSPECTS)
        .filter(|(_, chance)| *chance >= WORTH_NAMING)
        .map(|(fault, chance)| {
            words.say(
                "belief-one",
                &[
                    ("fault", diagnosis(fault.as_ref(), words).into()),
                    ("chance", number(100.0 * chance, 0, words).into()),
                ],
            )
        })
        .collect();
    if named.is_empty() {
        words.say("belief-open", &[])
    } else {
        named.join(&words.say("list-comma", &[]))
    }
}
