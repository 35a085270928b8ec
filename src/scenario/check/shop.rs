//! What a case has: parts of other grades and their waits, tools, time.

use super::story::{LONGEST_MINUTES, price};
use super::well_named;
use crate::scenario::findings::{Findings, nearest, shown};
use crate::scenario::problem::{ProblemKind, Thing};
use crate::scenario::schema::ScenarioFile;
use crate::session::toolbox::TimeLimit;
use crate::units::Minutes;
use crate::vehicle::spec::{Id, VehicleSpec};

/// Resistance of another part's winding against the nominal.
const RESISTANCE: (f64, f64) = (0.5, 2.0);
/// Blocked share of a screen; the model of a screen has no end for one that lets nothing through.
const BLOCKED: (f64, f64) = (0.0, 0.999);
/// Static friction of a spool [N]: beyond, nothing moves any valve that can be described.
const STICTION_N: (f64, f64) = (0.0, 20.0);
/// A time limit [min]: a day.
const LIMIT: (f64, f64) = (1.0, 1_440.0);

/// Checks what a case has.
pub(super) fn shop(
    findings: &mut Findings<'_>,
    scenario: &ScenarioFile,
    vehicle: Option<&VehicleSpec>,
) {
    if let TimeLimit::UpTo { minutes: Minutes(minutes) } = scenario.time_limit {
        findings.number("time_limit.minutes", f64::from(minutes), LIMIT);
    }
    let shelf = &scenario.shelf;
    price(findings, "shelf.waiting_per_hour", shelf.waiting_per_hour);
    for (number, Minutes(wait)) in &shelf.waits {
        findings.number(&format!("shelf.waits.{number}"), f64::from(*wait), (0.0, LONGEST_MINUTES));
    }
    for (number, part) in &shelf.others {
        let at = |field: &str| format!("shelf.others.{number}.{field}");
        well_named(findings, &format!("shelf.others.{number}"), number);
        price(findings, &at("price"), part.price);
        findings.number(&at("wait"), f64::from(part.wait.0), (0.0, LONGEST_MINUTES));
        findings.number(&at("resistance"), part.resistance, RESISTANCE);
        findings.number(&at("screen_blocked"), part.screen_blocked, BLOCKED);
        findings.number(&at("stiction_n"), part.stiction_n, STICTION_N);
    }
    if let Some(vehicle) = vehicle {
        numbers(findings, scenario, vehicle);
    }
}

/// Waits are of the vehicle's part numbers; other parts stand for one of them and are none.
fn numbers(findings: &mut Findings<'_>, scenario: &ScenarioFile, vehicle: &VehicleSpec) {
    let makers = || vehicle.valve_parts.iter().map(|part| &part.part_number);
    let is_makers = |number: &Id| makers().any(|it| it == number);
    let thing = Thing::PartNumber;
    for number in scenario.shelf.waits.keys().filter(|number| !is_makers(number)) {
        let nearest = nearest(number.as_str(), makers().map(Id::as_str));
        let kind = ProblemKind::UnknownName { thing, found: shown(number.as_str()), nearest };
        findings.add_key("shelf.waits", number.as_str(), kind);
    }
    for (number, part) in &scenario.shelf.others {
        if is_makers(number) {
            let kind = ProblemKind::Repeated { thing, name: shown(number.as_str()) };
            findings.add_key("shelf.others", number.as_str(), kind);
        }
        let path = format!("shelf.others.{number}.stands_for");
        findings.name(&path, thing, &part.stands_for, makers());
    }
}
