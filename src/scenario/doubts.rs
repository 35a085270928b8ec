//! Looking for what is doubtful about a scenario that can be used.
//!
//! What a text can tell is looked for here. What only simulation tells, such as a fault that nobody ever notices, is
//! found elsewhere and handed in, so that every warning has its place in the text and they come in its order.

use super::findings::{Findings, shown};
use super::load::Loaded;
use super::outline::Outline;
use super::schema::{FaultPrior, ScenarioFile};
use super::warning::{Warning, WarningKind};
use crate::faults::FaultName;
use crate::units::{Minutes, Money};
use std::collections::BTreeSet;

/// Share of all draws above which one entry, or the sound vehicle, is drawn more often than everything else together.
const MORE_OFTEN_THAN_NOT: f64 = 0.5;

/// By which words a job sheet would name a fault, in any language.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Called {
    /// What is wrong.
    pub kind: Vec<String>,
    /// Where.
    pub place: Vec<String>,
}

/// What simulation found doubtful about entries of the list of faults, by their number from 0.
pub type Simulated = Vec<(usize, WarningKind)>;

/// Everything that is doubtful about a scenario, in the order of its text. `called` gives the words for a fault.
#[must_use]
pub fn doubts(
    loaded: &Loaded,
    called: &dyn Fn(&FaultName) -> Called,
    simulated: &Simulated,
) -> Vec<Warning> {
    let text = &loaded.text.scenario_text;
    let outline = Outline::of(text);
    let file = format!("{}.ron", shown(&loaded.text.scenario_name));
    let mut findings = Findings::new(&file, text, &outline);
    let scenario = &loaded.scenario;
    notes(&mut findings, scenario);
    draws(&mut findings, scenario);
    sheet(&mut findings, scenario, called);
    prices(&mut findings, scenario);
    match scenario.rubric.pass_percent {
        0 => findings.add("rubric.pass_percent", WarningKind::AlwaysPassed),
        100.. => findings.add("rubric.pass_percent", WarningKind::HardlyPassed),
        _ => {}
    }
    for (number, kind) in simulated {
        findings.add(&format!("faults[{number}].kind"), kind.clone());
    }
    findings.into_problems().0
}

/// What is there for whoever chooses or hands out the scenario.
fn notes(findings: &mut Findings<'_, WarningKind>, scenario: &ScenarioFile) {
    // The title stands for the file as a whole: a missing field has no place of its own.
    if scenario.about.trim().is_empty() {
        findings.add("title", WarningKind::NoAbout);
    }
    if scenario.teaching.is_empty() {
        findings.add("title", WarningKind::NoTeaching);
    }
}

/// What is drawn, and how often.
fn draws(findings: &mut Findings<'_, WarningKind>, scenario: &ScenarioFile) {
    let total: f64 =
        scenario.no_fault + scenario.faults.iter().map(|prior| prior.weight).sum::<f64>();
    let drawable = scenario.faults.iter().filter(|prior| prior.weight > 0.0).count();
    let alone = drawable + usize::from(scenario.no_fault > 0.0) == 1;
    for (number, prior) in scenario.faults.iter().enumerate() {
        let weight = format!("faults[{number}].weight");
        let share = prior.weight / total;
        if prior.weight <= 0.0 {
            findings.add(&weight, WarningKind::NeverDrawn);
        } else if alone {
            findings.add(&weight, WarningKind::OnlyFault);
        } else if share > MORE_OFTEN_THAN_NOT {
            findings.add(&weight, WarningKind::Dominates { share });
        }
    }
    let share = scenario.no_fault / total;
    if share > MORE_OFTEN_THAN_NOT {
        findings.add("no_fault", WarningKind::MostlySound { share });
    }
    if scenario.decoys.other_winding.as_ref().is_some_and(|other| other.chance <= 0.0) {
        findings.add("decoys.other_winding.chance", WarningKind::NeverThere);
    }
    for (number, old) in scenario.decoys.old_codes.iter().enumerate() {
        if old.chance <= 0.0 {
            let path = format!("decoys.old_codes[{number}].chance");
            findings.add(&path, WarningKind::NeverThere);
        }
    }
}

/// What the job sheet gives away: the name of a fault, or a place at which not every fault is.
fn sheet(
    findings: &mut Findings<'_, WarningKind>,
    scenario: &ScenarioFile,
    called: &dyn Fn(&FaultName) -> Called,
) {
    let drawable: Vec<&FaultPrior> =
        scenario.faults.iter().filter(|prior| prior.weight > 0.0).collect();
    let faults: BTreeSet<FaultName> = drawable.iter().flat_map(|prior| prior.names()).collect();
    // What every entry has in common tells none of them from the others.
    let shared = |of: &dyn Fn(&FaultName) -> bool| {
        scenario.no_fault <= 0.0 && drawable.iter().all(|prior| prior.names().iter().any(of))
    };
    let mut paths = vec!["job.title".to_owned(), "job.concern".to_owned()];
    paths.extend((0..scenario.job.history.len()).map(|line| format!("job.history[{line}]")));
    paths.extend(
        ["symptom", "when", "service", "repairs"].map(|topic| format!("job.answers.{topic}")),
    );
    for path in &paths {
        let (start, written) = findings.written(path);
        let mut told = BTreeSet::new();
        for fault in &faults {
            let Called { kind, place } = called(fault);
            if !shared(&|other| other.kind == fault.kind)
                && let Some(found) = kind.iter().find_map(|words| find(written, words))
                && told.insert((found.start, found.end))
            {
                let words = shown(&written[found.clone()]);
                let kind = WarningKind::NamesFault { words, fault: fault.clone() };
                findings.add_over(|| start + found.start..start + found.end, kind);
            }
            if !shared(&|other| other.place == fault.place)
                && let Some(found) = place.iter().find_map(|words| find(written, words))
                && told.insert((found.start, found.end))
            {
                let words = shown(&written[found.clone()]);
                let kind = WarningKind::NamesPlace { words, place: fault.place.clone() };
                findings.add_over(|| start + found.start..start + found.end, kind);
            }
        }
    }
}

/// Where words stand in a text as whole words, in small letters or capitals.
fn find(text: &str, words: &str) -> Option<core::ops::Range<usize>> {
    let wanted: Vec<char> = words.chars().flat_map(char::to_lowercase).collect();
    if wanted.is_empty() {
        return None;
    }
    let is_letter = |c: Option<char>| c.is_some_and(char::is_alphanumeric);
    text.char_indices().find_map(|(start, _)| {
        if is_letter(text[..start].chars().next_back()) {
            return None;
        }
        let mut rest = text[start..].char_indices();
        let mut left = wanted.as_slice();
        while let Some(next) = left.first() {
            let (_, found) = rest.next()?;
            // A hyphen joins what a blank parts.
            let found = if found == '-' { ' ' } else { found };
            let mut small = found.to_lowercase();
            if small.next() != Some(if *next == '-' { ' ' } else { *next })
                || small.next().is_some()
            {
                return None;
            }
            left = &left[1..];
        }
        let end = start + rest.offset();
        (!is_letter(rest.next().map(|(_, c)| c))).then_some(start..end)
    })
}

/// What costs nothing, and what costs too little.
fn prices(findings: &mut Findings<'_, WarningKind>, scenario: &ScenarioFile) {
    let prices = &scenario.prices;
    let mut all = vec![
        ("labour_per_hour".to_owned(), prices.labour_per_hour),
        ("seal".to_owned(), prices.seal),
        ("mending".to_owned(), prices.mending),
        ("oil_litre".to_owned(), prices.oil_litre),
        ("oil_filter".to_owned(), prices.oil_filter),
        ("cleaning".to_owned(), prices.cleaning),
        ("small_parts.meter_fuse".to_owned(), prices.small_parts.meter_fuse),
        ("small_parts.fuse".to_owned(), prices.small_parts.fuse),
        ("small_parts.relay".to_owned(), prices.small_parts.relay),
        ("fuel".to_owned(), prices.fuel),
        ("comeback".to_owned(), prices.comeback),
    ];
    all.extend(prices.valves.iter().map(|(number, price)| (format!("valves.{number}"), *price)));
    for (field, price) in all {
        if price <= Money(0) {
            findings.add(&format!("prices.{field}"), WarningKind::FreeOfCharge);
        }
    }
    let shelf = &scenario.shelf;
    for (number, part) in &shelf.others {
        if part.price <= Money(0) {
            findings.add(&format!("shelf.others.{number}.price"), WarningKind::FreeOfCharge);
        }
    }
    let mut waits = shelf.waits.values().chain(shelf.others.values().map(|part| &part.wait));
    if shelf.waiting_per_hour <= Money(0) && waits.any(|wait| *wait > Minutes(0)) {
        findings.add("shelf", WarningKind::FreeOfCharge);
    }
    let dearest = prices.valves.iter().max_by_key(|(_, price)| **price);
    if let Some((part_number, price)) = dearest.filter(|(_, price)| **price >= prices.comeback)
        && prices.comeback > Money(0)
    {
        let (part_number, price) = (part_number.clone(), *price);
        findings.add("prices.comeback", WarningKind::CheapComeback { part_number, price });
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn limit_words_are_found_as_whole_words_in_any_letters() {
        let found = |text: &str, words: &str| find(text, words).map(|at| text[at].to_owned());
        assert_eq!(found("The Broken-Wire there", "broken wire").as_deref(), Some("Broken-Wire"));
        assert_eq!(found("ÖLSTAND zu niedrig", "ölstand").as_deref(), Some("ÖLSTAND"));
        assert_eq!(found("at the end: sump", "sump").as_deref(), Some("sump"));
        for (text, words) in [("sumps", "sump"), ("a sum", "sump"), ("", "sump"), ("sump", "")] {
            assert_eq!(found(text, words), None, "{text}");
        }
    }
}
