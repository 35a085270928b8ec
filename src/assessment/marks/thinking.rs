//! Marks for reasoning: choice of tests, calibration, repair.

use super::declined::is_all_settled;
use super::evidence::{events, repairs};
use crate::assessment::mark::{About, Mark, Remark};
use crate::assessment::rubric::MarkCategory;
use crate::faults::{Fault, FaultName};
use crate::reasoning::belief::{brought, shares};
use crate::reasoning::expert::Proposal;
use crate::reasoning::remedy::Remedy;
use crate::reasoning::review::{Redundant, Review, StepReview, chance};
use crate::session::aftermath::Aftermath;
use crate::session::attempt::Entry;
use crate::session::event::{Breach, Event};
use crate::session::setup::Briefing;
use crate::vehicle::spec::VehicleSpec;
use std::collections::BTreeMap;

/// Total regret that is shown (the lower ends), as a share of what the whole job should have cost, at which nothing is left of
/// the mark. Total rather than average, so that idle steps cannot dilute it.
const REGRET_FOR_NOTHING: f64 = 1.0;
/// A repair with at least this chance on the evidence is well founded.
const FOUNDED: f64 = 0.5;
/// What one repair without foundation takes from the mark.
const UNFOUNDED_COST: f64 = 0.5;
/// How many steps are remarked: the dearest.
const REMARKED: usize = 5;

/// The choice of tests by what it cost too much, and why it did. Only regrets that are shown take points; to
/// say of a step that it came too early or could tell nothing explains them, and takes none besides.
pub(in crate::assessment) fn test_choice(log: &[Entry], review: &Review) -> Mark {
    let share = 1.0 - review.total_regret() / (REGRET_FOR_NOTHING * review.value_at_start.upper);
    let shown = |step: &StepReview| step.regret.map_or(0.0, |regret| regret.lower);
    let premature = premature(log, review);
    let mut found: Vec<(&StepReview, About)> = review
        .steps
        .iter()
        .filter_map(|step| {
            let early = premature.get(&step.entry).cloned();
            Some((step, early.or_else(|| redundant(step)).or_else(|| regretted(step))?))
        })
        .collect();
    let weight = |(step, _): &(&StepReview, About)| (shown(step), step.cost, step.entry);
    found.sort_by(|a, b| {
        let ((a, cost_a, at_a), (b, cost_b, at_b)) = (weight(a), weight(b));
        b.total_cmp(&a).then(cost_b.total_cmp(&cost_a)).then(at_a.cmp(&at_b))
    });
    found.truncate(REMARKED);
    found.sort_by_key(|(step, _)| step.entry);
    let mut remarks: Vec<Remark> =
        found.into_iter().map(|(step, about)| Remark::bad(Some(step.entry), about)).collect();
    let wide = review.steps.iter().filter_map(|step| step.regret).filter(|it| it.is_wide);
    let (count, most) = wide.fold((0, 0.0_f64), |(n, most), it| (n + 1, most.max(it.upper)));
    if count > 0 {
        remarks.push(Remark::good(None, About::NotTold { count, most }));
    } else if remarks.is_empty() {
        remarks.push(Remark::good(None, About::NoRegret));
    }
    Mark::new(MarkCategory::TestChoice, share, remarks)
}

fn regretted(step: &StepReview) -> Option<About> {
    let regret = step.regret.filter(|regret| regret.lower > 0.0)?;
    let (least, most) = (regret.lower, regret.upper);
    Some(About::Regret { least, most, best: step.proposal.clone() })
}

/// Where the expert would already repair or close, one more check confirms; it is remarked only where it is
/// shown to have cost too much.
fn redundant(step: &StepReview) -> Option<About> {
    let is_repeated = step.redundant? == Redundant::Repeated;
    let confirms = !is_repeated && !matches!(step.proposal, Proposal::Test(_));
    if confirms && step.regret.is_none_or(|regret| regret.lower <= 0.0) {
        return None;
    }
    Some(About::Redundant { is_repeated, cost: step.cost })
}

/// Closed too early: a repair, or a diagnosis that no such repair follows, with worse than even odds on the
/// evidence, while the expert would still have tested. Of a repair it must be shown that it cost too much.
fn premature(log: &[Entry], review: &Review) -> BTreeMap<usize, About> {
    let mut found = BTreeMap::new();
    let best_test = |number: usize| {
        let best = &review.steps[number].proposal;
        matches!(best, Proposal::Test(_)).then(|| best.clone())
    };
    for (number, remedy) in repairs(log) {
        let step = &review.steps[number];
        let chance = chance(&step.left, &remedy);
        let regret = step.regret.filter(|regret| regret.lower > 0.0);
        if let (true, Some(regret), Some(best)) = (chance < FOUNDED, regret, best_test(number)) {
            let price = Some((regret.lower, regret.upper));
            found.insert(number, About::Premature { chance, price, best });
        }
    }
    let committed: Vec<(usize, &Option<FaultName>)> = events(log)
        .filter_map(|(number, event)| match event {
            Event::Committed { fault } => Some((number, fault)),
            _ => None,
        })
        .collect();
    for (place, (number, fault)) in committed.iter().enumerate() {
        let next = committed.get(place + 1).map_or(log.len(), |(next, _)| *next);
        let chance: f64 = review.steps[*number]
            .left
            .iter()
            .filter(|(faults, _)| match fault {
                Some(fault) => faults.contains(fault),
                None => faults.is_empty(),
            })
            .map(|(_, chance)| chance)
            .sum();
        let is_told_of_repair = found.range(*number..next).next().is_some();
        if let (true, false, Some(best)) = (chance < FOUNDED, is_told_of_repair, best_test(*number))
        {
            found.insert(*number, About::Premature { chance, price: None, best });
        }
    }
    found
}

/// Confidences at the first diagnosis against the posterior on the same evidence: half the sum of
/// squared differences (a proper score, 0 to 1), so that the luck of the hidden truth is left out.
/// Faults that come together share their probability, as confidences that sum to 100 % must.
pub(in crate::assessment) fn calibration(log: &[Entry], review: &Review) -> Mark {
    let mut stated: BTreeMap<&FaultName, f64> = BTreeMap::new();
    for (number, entry) in log.iter().enumerate() {
        for event in &entry.events {
            match event {
                Event::Suspected { fault, percent } => {
                    stated.insert(fault, f64::from(*percent) / 100.0);
                }
                Event::Committed { fault } if !stated.is_empty() || fault.is_none() => {
                    // What is left over after the suspects belongs to "nothing wrong" for whoever
                    // commits to that, and to nobody otherwise.
                    let rest = (1.0 - stated.values().sum::<f64>()).max(0.0);
                    let sound = if fault.is_none() { rest } else { 0.0 };
                    let posterior = shares(&review.steps[number].before);
                    let distance = distance(&stated, sound, &posterior);
                    let about = About::Confidence { distance };
                    let good = distance < 0.25;
                    let remark = Remark { entry: Some(number), about, good };
                    return Mark::new(MarkCategory::Calibration, 1.0 - distance, vec![remark]);
                }
                _ => {}
            }
        }
    }
    let remark = Remark::bad(None, About::NoConfidence);
    Mark::new(MarkCategory::Calibration, 0.0, vec![remark])
}

fn distance(
    stated: &BTreeMap<&FaultName, f64>,
    sound: f64,
    posterior: &BTreeMap<Option<FaultName>, f64>,
) -> f64 {
    let mut sum = 0.0;
    for (fault, chance) in posterior {
        let said = match fault {
            Some(fault) => stated.get(fault).copied().unwrap_or(0.0),
            None => sound,
        };
        sum += (said - chance) * (said - chance);
    }
    for (fault, said) in stated {
        if !posterior.contains_key(&Some((*fault).clone())) {
            sum += said * said;
        }
    }
    (0.5 * sum).min(1.0)
}

/// Whether each of the faults that were there was taken away by a repair that was done.
pub(in crate::assessment) fn mended(log: &[Entry], faults: &[Fault]) -> Vec<bool> {
    let done: Vec<Remedy> = repairs(log).map(|(_, remedy)| remedy).collect();
    faults.iter().map(|fault| done.iter().any(|remedy| remedy.fixes(&fault.name))).collect()
}

/// Whether a repair renews the fuse of a wire that an earlier one mended.
fn is_fuse_of(remedy: &Remedy, earlier: &Remedy, spec: &VehicleSpec) -> bool {
    match (remedy, earlier) {
        (Remedy::Replace(fuse), Remedy::Mend(wire)) => spec.fuse_before(wire) == Some(fuse),
        _ => false,
    }
}

/// Repairs by their chance on the evidence, and by what became of the vehicle. Of several faults
/// that were there together each has its share: whoever mends one of two has done half the job,
/// even if the customer is content for the moment. What the customer has declined is done as far as it can be.
pub(in crate::assessment) fn repair(
    log: &[Entry],
    review: &Review,
    after: Aftermath,
    faults: &[Fault],
    declined: &[Option<usize>],
    briefing: &Briefing,
) -> Mark {
    let spec = &briefing.vehicle;
    let mut share = 1.0;
    let mut remarks = Vec::new();
    let mut done: Vec<Remedy> = Vec::new();
    for (number, remedy) in repairs(log) {
        let StepReview { before, left, .. } = &review.steps[number];
        // The fuse that a wire blew is renewed once the wire is mended: one repair in two steps.
        let chance = done
            .iter()
            .filter(|earlier| is_fuse_of(&remedy, earlier, spec))
            .map(|earlier| chance(before, earlier))
            .fold(chance(left, &remedy), f64::max);
        done.push(remedy);
        let good = chance >= FOUNDED;
        if !good {
            share -= UNFOUNDED_COST;
        }
        remarks.push(Remark { entry: Some(number), about: About::Repair { chance }, good });
        // What comes of it shows on the road; here it is named, unless a later repair took it away.
        let is_mended = |fault: &FaultName| {
            repairs(log).any(|(later, remedy)| later > number && remedy.fixes(fault))
        };
        let worn = brought(&log[number].step, briefing).into_iter();
        let worn = worn.filter(|fault| !is_mended(fault));
        remarks.extend(worn.map(|fault| Remark::bad(Some(number), About::WornPart { fault })));
        // Work that the customer has refused is not paid for, however well founded it was.
        let beyond = Breach::RepairBeyondApproval;
        if log[number].events.contains(&Event::AgainstCare { breach: beyond.clone() }) {
            share -= UNFOUNDED_COST;
            remarks.push(Remark::bad(Some(number), About::Breach(beyond)));
        }
    }
    if faults.len() > 1 {
        let mut done = 0;
        for ((fault, is_mended), no) in faults.iter().zip(mended(log, faults)).zip(declined) {
            let fault = fault.name.clone();
            done += usize::from(is_mended || no.is_some());
            if no.is_none() {
                let about = About::Part { fault, is_mended };
                remarks.push(Remark { entry: None, about, good: is_mended });
            }
        }
        share *= done as f64 / faults.len() as f64;
    }
    for (fault, no) in faults.iter().zip(declined) {
        if let Some(entry) = no {
            let about = About::Declined { fault: fault.name.clone() };
            remarks.push(Remark::good(Some(*entry), about));
        }
    }
    // Nobody comes back for what they have declined.
    if is_all_settled(log, faults, declined) {
        return Mark::new(MarkCategory::Repair, share, remarks);
    }
    let came_back = after.comes_back();
    if came_back {
        share = 0.0;
    }
    remarks.push(Remark { entry: None, about: About::CameBack { came_back }, good: !came_back });
    Mark::new(MarkCategory::Repair, share, remarks)
}
