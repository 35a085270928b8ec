//! The scenario: faults and their weights, decoys, job sheet, prices, roads, rubric.

use super::shop::shop;
use super::{few, text, valves, well_named};
use crate::assessment::rubric::MarkCategory;
use crate::faults::{FaultKind, FaultName, places};
use crate::scenario::findings::{Findings, nearest, shown};
use crate::scenario::problem::{ProblemKind, Thing};
use crate::scenario::schema::{CodeOrigin, FaultPart, MOST_TOGETHER, ScenarioFile, Teaching};
use crate::scenario::shared_routes;
use crate::session::setup::{Approval, Route, StepMinutes};
use crate::session::step::{CustomerTopic, HintGrade};
use crate::units::{Minutes, Money};
use crate::vehicle::route::{MOST_ACROSS_G, STEEPEST};
use crate::vehicle::spec::{Id, VehicleSpec};
use std::collections::BTreeSet;

/// Greatest price, in hundredths: a million of the currency, so that no sum can overflow.
const MOST_MONEY: f64 = 1e8;
/// Longest time of one step [min]: a working day.
pub(super) const LONGEST_MINUTES: f64 = 480.0;
/// Greatest weight of a fault and of a mark; larger ones would say nothing that ratios do not.
const MOST_WEIGHT: f64 = 1e6;
const MOST_MARK: f64 = 1e3;
/// Longest way that a vehicle has run [km]; more than any is known to have.
const MOST_KILOMETRES: f64 = 5e6;
/// Longest test drive [s].
const LONGEST_DRIVE_S: f64 = 3_600.0;
/// Time for a change of speed [s].
const RAMP_S: (f64, f64) = (0.0, 60.0);
/// Engine speed [rpm], load and road speed [km/h] of a drive.
const RPM: (f64, f64) = (400.0, 7_000.0);
const LOAD: (f64, f64) = (0.0, 1.0);
const SPEED: (f64, f64) = (0.0, 200.0);
/// What every customer is asked about.
const TOPICS: [CustomerTopic; 4] =
    [CustomerTopic::Symptom, CustomerTopic::When, CustomerTopic::Service, CustomerTopic::Repairs];

/// Checks a scenario against its vehicle, as far as that could be read.
pub(crate) fn scenario(
    findings: &mut Findings<'_>,
    scenario: &ScenarioFile,
    vehicle: Option<&VehicleSpec>,
) {
    findings.whole_text();
    if !is_small(findings, scenario) {
        return;
    }
    text(findings, "title", &scenario.title);
    teaching(findings, &scenario.teaching);
    job(findings, scenario);
    faults(findings, scenario, vehicle);
    decoys(findings, scenario, vehicle);
    prices(findings, scenario, vehicle);
    minutes(findings, &scenario.prices.minutes);
    shop(findings, scenario, vehicle);
    for (name, route) in &scenario.routes {
        well_named(findings, &format!("routes.{name}"), name);
        drive(findings, &format!("routes.{name}"), route);
    }
    shared_roads(findings, scenario);
    let roads = scenario.routes.keys().chain(&scenario.shared_routes);
    findings.name("customers_route", Thing::Route, &scenario.customers_route, roads);
    findings.number("workshop_temperature", scenario.workshop_temperature.0, (-40.0, 50.0));
    rubric(findings, scenario);
}

/// Whether no list of the scenario is too long to be compared with itself.
fn is_small(findings: &mut Findings<'_>, scenario: &ScenarioFile) -> bool {
    let mut longest = 0;
    let mut few = |path: &str, found: usize| {
        few(findings, path, found);
        longest = longest.max(found);
    };
    few("faults", scenario.faults.len());
    few("decoys.old_codes", scenario.decoys.old_codes.len());
    few("job.history", scenario.job.history.len());
    few("teaching.traps", scenario.teaching.traps.len());
    few("teaching.path", scenario.teaching.path.len());
    few("prices.valves", scenario.prices.valves.len());
    few("shelf.waits", scenario.shelf.waits.len());
    few("shelf.others", scenario.shelf.others.len());
    few("routes", scenario.routes.len());
    few("shared_routes", scenario.shared_routes.len());
    for (name, route) in &scenario.routes {
        few(&format!("routes.{name}.profile.segments"), route.profile.segments.len());
    }
    longest <= super::MOST_ENTRIES
}

/// Roads that are named must be carried, and be there once.
fn shared_roads(findings: &mut Findings<'_>, scenario: &ScenarioFile) {
    let carried = shared_routes::names();
    let mut seen: BTreeSet<&Id> = scenario.routes.keys().collect();
    for (number, name) in scenario.shared_routes.iter().enumerate() {
        let path = format!("shared_routes[{number}]");
        findings.name(&path, Thing::Route, name, carried.iter());
        if !seen.insert(name) {
            let name = shown(name.as_str());
            findings.add(&path, ProblemKind::Repeated { thing: Thing::Route, name });
        }
    }
}

/// A note that is there must say something in each of its parts.
fn teaching(findings: &mut Findings<'_>, teaching: &Teaching) {
    if teaching.is_empty() {
        return;
    }
    text(findings, "teaching.teaches", &teaching.teaches);
    for (field, lines) in [("traps", &teaching.traps), ("path", &teaching.path)] {
        if lines.is_empty() {
            findings.add(&format!("teaching.{field}"), ProblemKind::Empty);
        }
        for (number, line) in lines.iter().enumerate() {
            text(findings, &format!("teaching.{field}[{number}]"), line);
        }
    }
}

fn job(findings: &mut Findings<'_>, scenario: &ScenarioFile) {
    text(findings, "job.title", &scenario.job.title);
    text(findings, "job.concern", &scenario.job.concern);
    findings.number("job.kilometres", f64::from(scenario.job.kilometres), (0.0, MOST_KILOMETRES));
    for topic in TOPICS {
        match scenario.job.answers.get(&topic) {
            Some(answer) if !answer.trim().is_empty() => {}
            _ => findings.add("job.answers", ProblemKind::NoAnswer { topic }),
        }
    }
}

fn faults(findings: &mut Findings<'_>, scenario: &ScenarioFile, vehicle: Option<&VehicleSpec>) {
    let possible = vehicle.map(places);
    let mut seen = BTreeSet::new();
    for (number, prior) in scenario.faults.iter().enumerate() {
        let entry = format!("faults[{number}]");
        findings.number(&format!("{entry}.weight"), prior.weight, (0.0, MOST_WEIGHT));
        let parts = prior.parts();
        if parts.len() > MOST_TOGETHER {
            let kind = ProblemKind::TooMany { found: prior.also.len(), most: MOST_TOGETHER - 1 };
            findings.add(&format!("{entry}.also"), kind);
            continue;
        }
        for (number, part) in parts.iter().enumerate() {
            let path =
                if number == 0 { entry.clone() } else { format!("{entry}.also[{}]", number - 1) };
            fault(findings, &path, part, possible.as_deref());
            // One repair would take both away, and nobody could say which of them it was.
            let mut before = parts.iter().take(number);
            if before.any(|other| in_one_place(vehicle, other, part)) {
                let kind = ProblemKind::SamePlace { place: shown(part.place.as_str()) };
                findings.add(&format!("{path}.place"), kind);
            }
        }
        let mut names = prior.names();
        names.sort();
        if !seen.insert(names) {
            let name = shown(prior.place.as_str());
            let kind = ProblemKind::Repeated { thing: Thing::Fault, name };
            findings.add(&format!("{entry}.place"), kind);
        }
    }
    findings.number("no_fault", scenario.no_fault, (0.0, MOST_WEIGHT));
    let mut weights = scenario.faults.iter().map(|prior| prior.weight);
    if scenario.no_fault <= 0.0 && !weights.any(|weight| weight > 0.0) {
        findings.add("faults", ProblemKind::AllWeightsZero);
    }
}

fn fault(
    findings: &mut Findings<'_>,
    path: &str,
    part: &FaultPart,
    possible: Option<&[FaultName]>,
) {
    let path = |field: &str| format!("{path}.{field}");
    let name = part.name();
    if let Some(possible) = possible.filter(|possible| !possible.contains(&name)) {
        findings.add(&path("place"), unknown_place(&name, possible));
    }
    let (least, most) = part.severity;
    findings.number(&path("severity[0]"), least, (0.0, 1.0));
    findings.number(&path("severity[1]"), most, (0.0, 1.0));
    if least > most {
        let kind = ProblemKind::WrongOrder { first: least, second: most };
        findings.add(&path("severity"), kind);
    }
}

/// Whether two faults are in the same place; a chafed feed is also where the fuse is that it blew.
fn in_one_place(vehicle: Option<&VehicleSpec>, one: &FaultPart, other: &FaultPart) -> bool {
    let blown = |part: &FaultPart| {
        let spec = vehicle.filter(|_| part.kind == FaultKind::ChafedFeed)?;
        spec.fuse_before(&part.place).cloned()
    };
    one.place == other.place
        || blown(one).is_some_and(|fuse| fuse == other.place)
        || blown(other).is_some_and(|fuse| fuse == one.place)
}

/// A place is offered only if this kind of fault can be there.
fn unknown_place(name: &FaultName, possible: &[FaultName]) -> ProblemKind {
    let of_kind = possible.iter().filter(|other| other.kind == name.kind);
    ProblemKind::UnknownPlace {
        kind: name.kind,
        found: shown(name.place.as_str()),
        nearest: nearest(name.place.as_str(), of_kind.map(|other| other.place.as_str())),
    }
}

fn decoys(findings: &mut Findings<'_>, scenario: &ScenarioFile, vehicle: Option<&VehicleSpec>) {
    let mut seen = BTreeSet::new();
    for (number, old) in scenario.decoys.old_codes.iter().enumerate() {
        let path = |field: &str| format!("decoys.old_codes[{number}].{field}");
        findings.number(&path("chance"), old.chance, (0.0, 1.0));
        if !seen.insert(old.code) {
            findings.add(&path("code"), ProblemKind::RepeatedCode { code: old.code });
        }
        let owner = vehicle.into_iter().flat_map(|vehicle| &vehicle.valves).find(|valve| {
            valves::own_codes(&valve.codes).iter().any(|(_, code)| *code == old.code)
        });
        match (old.origin, owner) {
            (CodeOrigin::Historical | CodeOrigin::Present, Some(valve)) => {
                let kind = ProblemKind::OwnCode { code: old.code, valve: valve.id.clone() };
                findings.add(&path("code"), kind);
            }
            (CodeOrigin::False, None) if vehicle.is_some() => {
                findings.add(&path("code"), ProblemKind::NobodysCode { code: old.code });
            }
            _ => {}
        }
    }
    let Some(other) = &scenario.decoys.other_winding else {
        return;
    };
    findings.number("decoys.other_winding.chance", other.chance, (0.0, 1.0));
    let Some(vehicle) = vehicle else {
        return;
    };
    let places = vehicle.valves.iter().map(|valve| &valve.id);
    findings.name("decoys.other_winding.place", Thing::Valve, &other.place, places);
    let path = "decoys.other_winding.part_number";
    let numbers = vehicle.valve_parts.iter().map(|part| &part.part_number);
    findings.name(path, Thing::PartNumber, &other.part_number, numbers);
    let part_number = other.part_number.clone();
    // Of a place or a part that does not exist, nothing more can be said.
    let (Some(valve), Some(part)) = (vehicle.valve(&other.place), vehicle.valve_part(&part_number))
    else {
        return;
    };
    if !part.fits.contains(&valve.id) {
        let valve = valve.id.clone();
        findings.add(path, ProblemKind::DoesNotFit { part_number, valve });
    } else if valve.part_number == part_number {
        findings.add(path, ProblemKind::SameWinding { part_number });
    }
}

fn prices(findings: &mut Findings<'_>, scenario: &ScenarioFile, vehicle: Option<&VehicleSpec>) {
    let prices = &scenario.prices;
    text(findings, "prices.currency", &prices.currency);
    for (field, money) in [
        ("labour_per_hour", prices.labour_per_hour),
        ("seal", prices.seal),
        ("mending", prices.mending),
        ("oil_litre", prices.oil_litre),
        ("oil_filter", prices.oil_filter),
        ("cleaning", prices.cleaning),
        ("fuel", prices.fuel),
        ("comeback", prices.comeback),
    ] {
        price(findings, &format!("prices.{field}"), money);
    }
    if let Approval::UpTo { money } = scenario.approval {
        price(findings, "approval.money", money);
    }
    let small = &prices.small_parts;
    for (field, money) in
        [("meter_fuse", small.meter_fuse), ("fuse", small.fuse), ("relay", small.relay)]
    {
        price(findings, &format!("prices.small_parts.{field}"), money);
    }
    for (part_number, money) in &prices.valves {
        price(findings, &format!("prices.valves.{part_number}"), *money);
    }
    let Some(vehicle) = vehicle else {
        return;
    };
    let numbers: Vec<&Id> = vehicle.valve_parts.iter().map(|part| &part.part_number).collect();
    for found in prices.valves.keys().filter(|found| !numbers.contains(found)) {
        let nearest = nearest(found.as_str(), numbers.iter().map(|number| number.as_str()));
        let thing = Thing::PartNumber;
        let kind = ProblemKind::UnknownName { thing, found: shown(found.as_str()), nearest };
        findings.add_key("prices.valves", found.as_str(), kind);
    }
    for part_number in numbers.into_iter().filter(|number| !prices.valves.contains_key(*number)) {
        let part_number = part_number.clone();
        findings.add("prices.valves", ProblemKind::NoPrice { part_number });
    }
}

pub(super) fn price(findings: &mut Findings<'_>, path: &str, Money(hundredths): Money) {
    findings.number(path, hundredths as f64, (0.0, MOST_MONEY));
}

fn minutes(findings: &mut Findings<'_>, minutes: &StepMinutes) {
    for (field, time) in [
        ("ask", minutes.ask),
        ("consult", minutes.consult),
        ("look", minutes.look),
        ("dipstick", minutes.dipstick),
        ("key", minutes.key),
        ("start", minutes.start),
        ("measure", minutes.measure),
        ("fetch_meter", minutes.fetch_meter),
        ("power", minutes.power),
        ("read_gauge", minutes.read_gauge),
        ("connect_reader", minutes.connect_reader),
        ("request", minutes.request),
        ("clean", minutes.clean),
        ("mend_pin", minutes.mend_pin),
        ("mend_wire", minutes.mend_wire),
        ("top_up", minutes.top_up),
        ("change_oil", minutes.change_oil),
        ("approval", minutes.approval),
        ("write", minutes.write),
        ("hand_over", minutes.hand_over),
        ("fetch_part", minutes.fetch_part),
    ] {
        time_of(findings, &format!("prices.minutes.{field}"), time);
    }
    let electrical = &minutes.electrical;
    for (field, time) in [
        ("lamp", electrical.lamp),
        ("clamp", electrical.clamp),
        ("fetch_clamp", electrical.fetch_clamp),
        ("capture", electrical.capture),
        ("set_up_scope", electrical.set_up_scope),
        ("wiggle", electrical.wiggle),
        ("meter_fuse", electrical.meter_fuse),
        ("fuse", electrical.fuse),
        ("relay", electrical.relay),
    ] {
        time_of(findings, &format!("prices.minutes.electrical.{field}"), time);
    }
}

fn time_of(findings: &mut Findings<'_>, path: &str, Minutes(minutes): Minutes) {
    findings.number(path, f64::from(minutes), (0.0, LONGEST_MINUTES));
}

fn drive(findings: &mut Findings<'_>, path: &str, route: &Route) {
    time_of(findings, &format!("{path}.minutes"), route.minutes);
    findings.number(&format!("{path}.profile.ramp_s"), route.profile.ramp_s, RAMP_S);
    findings.number(&format!("{path}.profile.start_rpm"), route.profile.start_rpm, RPM);
    let segments = &route.profile.segments;
    if segments.is_empty() {
        findings.add(&format!("{path}.profile.segments"), ProblemKind::Empty);
    }
    let mut before_s = 0.0;
    for (number, segment) in segments.iter().enumerate() {
        let path = |field: &str| format!("{path}.profile.segments[{number}].{field}");
        findings.number(&path("until_s"), segment.until_s, (0.0, LONGEST_DRIVE_S));
        if segment.until_s <= before_s {
            let kind = ProblemKind::WrongOrder { first: before_s, second: segment.until_s };
            findings.add(&path("until_s"), kind);
        }
        before_s = segment.until_s;
        findings.number(&path("rpm"), segment.rpm, RPM);
        findings.number(&path("load"), segment.load, LOAD);
        findings.number(&path("km_h"), segment.km_h, SPEED);
        findings.number(&path("tilt.uphill"), segment.tilt.uphill, (-STEEPEST, STEEPEST));
        let across = (-MOST_ACROSS_G, MOST_ACROSS_G);
        findings.number(&path("tilt.across_g"), segment.tilt.across_g, across);
    }
}

fn rubric(findings: &mut Findings<'_>, scenario: &ScenarioFile) {
    let rubric = &scenario.rubric;
    for category in MarkCategory::ALL {
        let path = format!("rubric.weights.{}", category.word());
        findings.number(&path, f64::from(rubric.weights.of(category)), (0.0, MOST_MARK));
    }
    if rubric.weights.total() == 0 {
        findings.add("rubric.weights", ProblemKind::AllWeightsZero);
    }
    findings.number("rubric.pass_percent", f64::from(rubric.pass_percent), (0.0, 100.0));
    let mut cheaper = 0;
    for grade in HintGrade::ALL {
        let price = rubric.hints.of(grade);
        let path = format!("rubric.hints.{}", grade.word());
        findings.number(&path, f64::from(price), (0.0, 100.0));
        if price < cheaper {
            let (first, second) = (f64::from(cheaper), f64::from(price));
            findings.add("rubric.hints", ProblemKind::WrongOrder { first, second });
        }
        cheaper = price;
    }
}
