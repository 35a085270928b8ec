//! The debrief in words: marks with their evidence, then every step as the expert saw it.

use super::amounts::{minutes, money, number};
use super::care_words::against_care;
use super::catalogue::Words;
use super::code_words;
use super::place::{diagnoses, fault as fault_words, place};
use super::step_words;
use crate::assessment::debrief::Debrief;
use crate::assessment::mark::{About, Critical, ProofPart, Remark};
use crate::assessment::rubric::{MarkCategory, Rubric};
use crate::numerics::whole::to_i64;
use crate::reasoning::expert::Proposal;
use crate::reasoning::remedy::Remedy;
use crate::reasoning::world::Hypothesis;
use crate::session::attempt::Session;
use crate::session::setup::Briefing;
use crate::session::step::{Ending, Section};
use crate::units::Money;
use crate::vehicle::spec::Id;
use std::collections::BTreeMap;

/// Suspects that are named for a step; the rest together are "others".
const NAMED_SUSPECTS: usize = 2;
/// Chance from which a suspect is worth naming.
const WORTH_NAMING: f64 = 0.05;

/// A debrief in words, in its parts.
#[derive(Debug, Clone, PartialEq)]
pub struct DebriefWords {
    /// How it was handed back, what was wrong, what became of it.
    pub outcome: Vec<String>,
    /// The sum of the marks and what it means.
    pub total: String,
    /// Whether the session passed.
    pub passed: bool,
    /// What fails the session whatever the sum.
    pub critical: Vec<String>,
    /// The marks in the order of the report.
    pub marks: Vec<MarkWords>,
    /// Every step as the expert saw it.
    pub steps: Vec<StepWords>,
}

/// A mark in words.
#[derive(Debug, Clone, PartialEq)]
pub struct MarkWords {
    /// What for.
    pub category: String,
    /// Points earned.
    pub points: String,
    /// Points that could be earned.
    pub most: String,
    /// Share of them earned, 0 to 1.
    pub share: f64,
    /// What earned or lost it.
    pub remarks: Vec<RemarkWords>,
}

/// A remark in words.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct RemarkWords {
    /// Whether it speaks for the apprentice.
    pub good: bool,
    /// The same as a sign.
    pub sign: String,
    /// What it says, with the step that it is about.
    pub text: String,
}

/// A step as the expert saw it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct StepWords {
    /// Number of the step, from 1.
    pub number: usize,
    /// The step as it is typed.
    pub step: String,
    /// What it cost.
    pub cost: String,
    /// What the rest of the job should have cost before it.
    pub value: String,
    /// How it compares with the best step.
    pub regret: String,
    /// What was likely after it.
    pub belief: String,
}

/// The whole debrief as lines of text.
#[must_use]
pub fn debrief(
    debrief: &Debrief,
    session: &Session,
    rubric: &Rubric,
    words: &Words,
) -> Vec<String> {
    let parts = in_parts(debrief, session, rubric, words);
    let mut lines = vec![words.say("debrief-title", &[])];
    lines.extend(parts.outcome);
    lines.push(String::new());
    lines.push(parts.total);
    lines.extend(parts.critical);
    for mark in parts.marks {
        lines.push(words.say(
            "debrief-mark",
            &[
                ("category", mark.category.into()),
                ("points", mark.points.into()),
                ("most", mark.most.into()),
            ],
        ));
        lines.extend(mark.remarks.into_iter().map(|remark| {
            words.say("remark-line", &[("sign", remark.sign.into()), ("text", remark.text.into())])
        }));
    }
    lines.push(String::new());
    lines.push(words.say("debrief-steps", &[]));
    lines.extend(parts.steps.into_iter().map(|step| {
        words.say(
            "step-line",
            &[
                ("number", step.number.into()),
                ("step", step.step.into()),
                ("cost", step.cost.into()),
                ("value", step.value.into()),
                ("regret", step.regret.into()),
                ("belief", step.belief.into()),
            ],
        )
    }));
    lines
}

/// The whole debrief in its parts, for a page that lays them out.
#[must_use]
pub fn in_parts(
    debrief: &Debrief,
    session: &Session,
    rubric: &Rubric,
    words: &Words,
) -> DebriefWords {
    let marks = debrief.marks.iter().map(|mark| {
        let most = 100.0 * rubric.weights.share_of(mark.category);
        MarkWords {
            category: category(mark.category, words),
            points: number(mark.share * most, 1, words),
            most: number(most, 1, words),
            share: mark.share,
            remarks: mark.remarks.iter().map(|it| remark(it, session, words)).collect(),
        }
    });
    DebriefWords {
        outcome: outcome(debrief, session.briefing(), words),
        total: total(debrief, rubric, words),
        passed: debrief.passed,
        critical: debrief.critical.iter().map(|it| critical(*it, words)).collect(),
        marks: marks.collect(),
        steps: steps(debrief, session, words),
    }
}

fn critical(critical: Critical, words: &Words) -> String {
    let key = match critical {
        Critical::Unsafe => "debrief-critical-unsafe",
        Critical::Unproved => "debrief-critical-unproved",
        Critical::NotRepaired => "debrief-critical-not-repaired",
    };
    words.say(key, &[])
}

fn outcome(debrief: &Debrief, briefing: &Briefing, words: &Words) -> Vec<String> {
    let currency = &briefing.prices.currency;
    let till = debrief.till;
    let all = till.total(briefing.prices.labour_per_hour);
    let names: Hypothesis = debrief.faults.iter().map(|fault| fault.name.clone()).collect();
    let faults = diagnoses(&names, words);
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
fn remark(remark: &Remark, session: &Session, words: &Words) -> RemarkWords {
    let sign = words.say(if remark.good { "remark-good" } else { "remark-bad" }, &[]);
    let text = about(&remark.about, session.briefing(), words);
    let text = match remark.entry.and_then(|entry| Some((entry, session.log().get(entry)?))) {
        Some((entry, logged)) => words.say(
            "remark-at-step",
            &[
                ("number", (entry + 1).into()),
                ("step", step_words::line(&logged.step).into()),
                ("text", text.into()),
            ],
        ),
        None => text,
    };
    RemarkWords { good: remark.good, sign, text }
}

fn about(about: &About, briefing: &Briefing, words: &Words) -> String {
    let plain = |key: &str| words.say(key, &[]);
    let percent = |share: f64| number(100.0 * share, 0, words);
    match about {
        About::Regret { least, most, best } => words.say(
            "about-regret",
            &[
                ("cost", span(*least, *most, briefing, words).into()),
                ("best", proposal(best, words).into()),
            ],
        ),
        About::Premature { chance, price, best } => {
            let mut said =
                vec![("chance", percent(*chance).into()), ("best", proposal(best, words).into())];
            let key = if let Some((least, most)) = price {
                said.push(("cost", span(*least, *most, briefing, words).into()));
                "about-premature-repair"
            } else {
                "about-premature-diagnosis"
            };
            words.say(key, &said)
        }
        About::Redundant { is_repeated, cost } => words.say(
            if *is_repeated { "about-repeated" } else { "about-redundant" },
            &[("cost", whole_money(*cost, briefing, words).into())],
        ),
        About::NotTold { count, most } => words.say(
            "about-not-told",
            &[("count", (*count).into()), ("most", whole_money(*most, briefing, words).into())],
        ),
        About::NoRegret => plain("about-no-regret"),
        About::RemovedAgain(part) => {
            words.say("about-removed-again", &[("place", place(part, words).into())])
        }
        About::NoDetour => plain("about-no-detour"),
        About::Prediction { met: true } => plain("about-prediction-met"),
        About::Prediction { met: false } => plain("about-prediction-missed"),
        About::OtherQuantity => plain("about-other-quantity"),
        About::Sign { met: true } => plain("about-sign-met"),
        About::Sign { met: false } => plain("about-sign-missed"),
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
        About::Part { fault, is_mended } => words.say(
            if *is_mended { "about-part-mended" } else { "about-part-left" },
            &[("fault", fault_words(fault, words).into())],
        ),
        About::CameBack { came_back: true } => plain("about-came-back"),
        About::CameBack { came_back: false } => plain("about-stayed-away"),
        About::Proof(part) => plain(match part {
            ProofPart::Recorded => "proof-recorded",
            ProofPart::Cleared => "proof-cleared",
            ProofPart::KeyOnCheck => "proof-key-on",
            ProofPart::RoadTest => "proof-road",
            ProofPart::Rescan => "proof-rescan",
        }),
        About::ClosedUnproved => plain("about-closed-unproved"),
        About::Unrelated { code, reported } => words.say(
            if *reported { "about-unrelated-told" } else { "about-unrelated-erased" },
            &[("code", code_words::code(*code, words).into())],
        ),
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

fn whole_money(units: f64, briefing: &Briefing, words: &Words) -> String {
    // Expectations are shown to whole units: more digits would pretend to more than they hold.
    money(Money(to_i64(units.round()) * 100), &briefing.prices.currency, words)
}

/// An amount that is known between two bounds.
fn span(least: f64, most: f64, briefing: &Briefing, words: &Words) -> String {
    let (least, most) = (whole_money(least, briefing, words), whole_money(most, briefing, words));
    if least == most {
        return most;
    }
    words.say("money-span", &[("least", least.into()), ("most", most.into())])
}

fn steps(debrief: &Debrief, session: &Session, words: &Words) -> Vec<StepWords> {
    let briefing = session.briefing();
    debrief
        .review
        .steps
        .iter()
        .zip(session.log())
        .map(|(step, logged)| {
            let regret = match step.regret {
                None => words.say("step-not-weighed", &[]),
                Some(regret) if regret.lower > 0.0 => words.say(
                    "step-regret",
                    &[
                        ("cost", span(regret.lower, regret.upper, briefing, words).into()),
                        ("best", proposal(&step.proposal, words).into()),
                    ],
                ),
                Some(regret) if regret.is_wide => words.say(
                    "step-not-told",
                    &[("most", whole_money(regret.upper, briefing, words).into())],
                ),
                Some(_) => words.say("step-no-regret", &[]),
            };
            StepWords {
                number: step.entry + 1,
                step: step_words::line(&logged.step),
                cost: whole_money(step.cost, briefing, words),
                value: span(step.value.lower, step.value.upper, briefing, words),
                regret,
                belief: belief(&step.after, words),
            }
        })
        .collect()
}

/// The likeliest suspects with their chances.
fn belief(belief: &BTreeMap<Hypothesis, f64>, words: &Words) -> String {
    let mut order: Vec<(&Hypothesis, f64)> =
        belief.iter().map(|(faults, chance)| (faults, *chance)).collect();
    order.sort_by(|a, b| b.1.total_cmp(&a.1));
    let named: Vec<String> = order
        .into_iter()
        .take(NAMED_SUSPECTS)
        .filter(|(_, chance)| *chance >= WORTH_NAMING)
        .map(|(faults, chance)| {
            words.say(
                "belief-one",
                &[
                    ("fault", diagnoses(faults, words).into()),
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
