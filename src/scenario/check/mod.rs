//! What a file can say in the right form and still be wrong.
//!
//! Every check notes its problem and goes on, so that all are reported at once. Only lists that are
//! too long stop the rest, because some checks compare every entry with every other.

mod access;
mod maps;
mod monitors;
mod shop;
mod story;
mod valves;
mod wiring;

use super::findings::{Findings, shown};
use super::problem::{ProblemKind, Thing};
use super::schema::LONGEST_NAME;
use crate::vehicle::spec::{Id, VehicleSpec};
use std::collections::BTreeSet;

pub(super) use story::scenario;

/// Entries of the longest list of any kind in a vehicle or a scenario.
const MOST_ENTRIES: usize = 300;

/// Cylinders of an engine: what the models of crankshaft and camshaft know.
const CYLINDERS: (f64, f64) = (3.0, 8.0);

/// Checks a vehicle.
pub(super) fn vehicle(findings: &mut Findings<'_>, spec: &VehicleSpec) {
    findings.whole_text();
    if !is_small(findings, spec) {
        return;
    }
    text(findings, "vehicle.name", &spec.name);
    text(findings, "vehicle.engine", &spec.engine);
    findings.number("vehicle.year", f64::from(spec.year), (1950.0, 2100.0));
    findings.number("vehicle.cylinders", f64::from(spec.cylinders), CYLINDERS);
    if spec.has_two_banks() && !spec.cylinders.is_multiple_of(2) {
        let cylinders = spec.cylinders;
        findings.add("vehicle.cylinders", ProblemKind::UnevenBanks { cylinders });
    }
    let sump = spec.sump;
    findings.number("vehicle.sump.full_litres", sump.full_litres, (1.0, 20.0));
    findings.number("vehicle.sump.least_litres", sump.least_litres, (0.5, 20.0));
    if sump.least_litres >= sump.full_litres {
        findings.add(
            "vehicle.sump.least_litres",
            ProblemKind::WrongOrder { first: sump.least_litres, second: sump.full_litres },
        );
    }
    if let Some(seconds) = spec.longest_power {
        findings.number("vehicle.longest_power", seconds, (0.1, 600.0));
    }
    wiring::check(findings, spec);
    access::check(findings, spec);
    valves::check(findings, spec);
    maps::check(findings, spec);
    monitors::check(findings, spec);
}

/// Whether no list of the vehicle is too long to be compared with itself.
fn is_small(findings: &mut Findings<'_>, spec: &VehicleSpec) -> bool {
    let mut longest = 0;
    let mut few = |path: &str, found: usize| {
        few(findings, path, found);
        longest = longest.max(found);
    };
    few("vehicle.valves", spec.valves.len());
    few("vehicle.valve_parts", spec.valve_parts.len());
    few("vehicle.parts", spec.parts.len());
    few("vehicle.test_points", spec.test_points.len());
    few("vehicle.harness.elements", spec.harness.elements.len());
    for (number, part) in spec.parts.iter().enumerate() {
        few(&format!("vehicle.parts[{number}].behind"), part.behind.len());
    }
    for (number, point) in spec.test_points.iter().enumerate() {
        few(&format!("vehicle.test_points[{number}].behind"), point.behind.len());
    }
    for (number, part) in spec.valve_parts.iter().enumerate() {
        few(&format!("vehicle.valve_parts[{number}].fits"), part.fits.len());
    }
    longest <= MOST_ENTRIES
}

/// Notes a list that is too long.
fn few(findings: &mut Findings<'_>, path: &str, found: usize) {
    if found > MOST_ENTRIES {
        findings.add(path, ProblemKind::TooMany { found, most: MOST_ENTRIES });
    }
}

/// Notes a text without anything in it.
fn text(findings: &mut Findings<'_>, path: &str, text: &str) {
    if text.trim().is_empty() {
        findings.add(path, ProblemKind::Empty);
    }
}

/// Whether a name is made of lower-case words and digits joined by hyphens.
fn is_name(name: &str) -> bool {
    name.len() <= LONGEST_NAME
        && name.split('-').all(|word| {
            !word.is_empty() && word.bytes().all(|b| b.is_ascii_lowercase() || b.is_ascii_digit())
        })
}

/// Notes a name that steps, files and catalogues could not use.
fn well_named(findings: &mut Findings<'_>, path: &str, name: &Id) {
    if !is_name(name.as_str()) {
        findings.add(path, ProblemKind::BadName { found: shown(name.as_str()) });
    }
}

/// Checks the names of a list: well formed, and none of them there twice. `field` is the path of
/// the list and that of the name within an entry.
fn names<'n>(
    findings: &mut Findings<'_>,
    field: (&str, &str),
    thing: Thing,
    names: impl Iterator<Item = &'n Id>,
) {
    let mut seen = BTreeSet::new();
    for (number, name) in names.enumerate() {
        let path = format!("{}[{number}].{}", field.0, field.1);
        well_named(findings, &path, name);
        if !seen.insert(name) {
            let name = shown(name.as_str());
            findings.add(&path, ProblemKind::Repeated { thing, name });
        }
    }
}

/// Whether a vehicle's name stays in the folder of vehicles and is well formed.
pub(super) fn vehicle_name(name: &str) -> Result<(), ProblemKind> {
    if name.contains(['/', '\\', ':']) || name.contains("..") || name.starts_with('.') {
        return Err(ProblemKind::LeavesFolder { found: shown(name) });
    }
    if is_name(name) { Ok(()) } else { Err(ProblemKind::BadName { found: shown(name) }) }
}
