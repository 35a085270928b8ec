//! By the book: the trade's sequence of tests, one after the other, until one of them fails.
//!
//! For each valve that a code names, and for every valve where none is named: access, a look at the
//! contacts, winding, feed without and with load, ground, control wire, click, the sister's click, and
//! at last the valve out where a code speaks of its work and not of its circuit. The oil comes before
//! all of it. What fails is what is wrong; where nothing fails and the code is there, the book ends in
//! a new valve. It weighs no chances and no costs. Common practice, no source.

use super::book::{self, Page, Winding};
use super::habits::{self, first_codes};
use super::job::{Decision, Finder};
use super::seen::Seen;
use crate::control_module::driver_side::DriverSide;
use crate::faults::{FaultKind, FaultName};
use crate::instruments::multimeter::{Display, MeterFunction};
use crate::reasoning::probe::Need;
use crate::reasoning::remedy::Remedy;
use crate::session::attempt::Entry;
use crate::session::event::{Event, OilLook, Sight};
use crate::session::step::{Bound, KeyPosition, Quantity, ServiceTopic, Step};
use crate::vehicle::error::VehicleError;
use crate::vehicle::spec::{Id, VehicleSpec};
use std::collections::VecDeque;

/// How sure a failed test makes it [%], and a chain of passed ones [%].
const FOUND: u8 = 95;
const BY_ELIMINATION: u8 = 60;

/// A test of the sequence.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Check {
    Contacts,
    Winding,
    Feed,
    Ground,
    Loaded,
    ControlWire,
    Click,
    ValveOut,
    /// Which of a connector's contacts it is.
    Pin(usize),
    /// Whether there is voltage behind the fuse.
    BehindFuse,
    /// The fuse itself.
    FuseStrip,
    /// The feed wire, where a fuse has blown.
    FeedWire,
    /// A control wire without its voltage, against ground and then along its length.
    ControlToGround,
    ControlThrough,
}

/// A check of one valve.
type Task = (Check, usize);

/// What came of a check.
enum Verdict {
    Passed,
    Failed(FaultKind, Id),
    Ask(Vec<Check>),
}

#[derive(Default)]
pub(super) struct ByTheBook {
    pages: Vec<Page>,
    /// Checks still to come; `None` before the first decision.
    plan: Option<VecDeque<Task>>,
    /// The check that was just made, and where its entries begin.
    made: Option<(Task, usize)>,
    /// Valves that the book renews where every test has passed.
    last_resort: VecDeque<Id>,
    /// A code names one of the valves.
    any_named: bool,
    leads_zeroed: bool,
    fuse_blown: bool,
}

impl ByTheBook {
    /// The sequence for what the codes name.
    fn lay_out(&mut self, seen: Seen<'_>) {
        let spec = &seen.briefing.vehicle;
        let codes = first_codes(seen.log);
        self.pages = spec.valves.iter().map(|valve| Page::of(spec, valve)).collect();
        let mut plan = VecDeque::new();
        let is_named =
            |place: usize| spec.valves[place].codes.all().iter().any(|code| codes.contains(code));
        let any_named = (0..spec.valves.len()).any(is_named);
        for place in (0..spec.valves.len()).filter(|place| !any_named || is_named(*place)) {
            let own = spec.valves[place].codes;
            let checks = [
                Check::Contacts,
                Check::Winding,
                Check::Feed,
                Check::Ground,
                Check::ControlWire,
                Check::Loaded,
                Check::Click,
            ];
            plan.extend(checks.into_iter().map(|check| (check, place)));
            plan.extend(
                (0..spec.valves.len())
                    .filter(|other| *other != place)
                    .map(|sister| (Check::Click, sister)),
            );
            let is_circuit = [own.open, own.low, own.high].iter().any(|c| codes.contains(c));
            if !is_circuit {
                plan.push_back((Check::ValveOut, place));
            }
            if any_named {
                self.last_resort.push_back(spec.valves[place].id.clone());
            }
        }
        self.any_named = any_named;
        self.plan = Some(plan);
    }

    /// The steps of a check from here; none where the vehicle does not allow it.
    fn steps(&mut self, (check, place): Task, seen: Seen<'_>) -> Vec<Step> {
        let spec = &seen.briefing.vehicle;
        let page = &self.pages[place];
        let unplugged = vec![page.connector.clone()];
        let look = |place: &Id| vec![Step::Look { place: place.clone() }];
        let made = match check {
            Check::Contacts => Some((off(unplugged), look(&page.connector))),
            Check::Pin(number) => page.pins.get(number).map(|pin| (off(unplugged), look(pin))),
            Check::ValveOut => Some((off(vec![page.valve.clone()]), look(&page.valve))),
            Check::Winding => {
                page.valve_feed.as_ref().zip(page.valve_control.as_ref()).map(|(feed, control)| {
                    let mut steps = Vec::new();
                    if !self.leads_zeroed {
                        steps.push(Step::ZeroLeads);
                    }
                    steps.extend(
                        page.winding_limits(spec)
                            .map(|(least, most)| expect(Quantity::Ohms, least, most)),
                    );
                    steps.push(measure(MeterFunction::Ohms, feed, control));
                    (reaching(spec, unplugged, &[feed, control], KeyPosition::Off), steps)
                })
            }
            Check::Feed if page.side == DriverSide::High => {
                page.harness_feed.as_ref().map(|ground| {
                    let steps = vec![
                        expect(Quantity::Ohms, 0.0, book::WIRE_MOST_OHMS),
                        measure(MeterFunction::Ohms, ground, &Id::from(GROUND)),
                    ];
                    (reaching(spec, unplugged, &[ground], KeyPosition::Off), steps)
                })
            }
            Check::Feed => page.harness_feed.as_ref().map(|feed| {
                (
                    reaching(spec, unplugged, &[feed], KeyPosition::On),
                    volts(feed, book::FEED_EXPECTED_V),
                )
            }),
            Check::ControlWire => page.harness_control.as_ref().map(|control| {
                (
                    reaching(spec, unplugged, &[control], KeyPosition::On),
                    volts(control, book::CONTROL_V),
                )
            }),
            Check::Ground => spec.test_point(&Id::from("engine-ground")).map(|point| {
                let most = (0.0, book::GROUND_MOST_V);
                (reaching(spec, Vec::new(), &[&point.id], KeyPosition::On), volts(&point.id, most))
            }),
            Check::Loaded => page.loaded().map(|feed| {
                let mut need = reaching(spec, Vec::new(), &[feed], KeyPosition::On);
                need.plugged = unplugged;
                let mut steps = vec![command(&page.valve, true)];
                steps.extend(volts(feed, book::FEED_EXPECTED_V));
                steps.push(command(&page.valve, false));
                (need, steps)
            }),
            Check::Click => Some((
                Need { plugged: unplugged, key: Some(KeyPosition::On), ..Need::default() },
                vec![command(&page.valve, true), command(&page.valve, false)],
            )),
            Check::BehindFuse => page.fuse(spec).map(|(_, behind)| {
                let need = reaching(spec, Vec::new(), &[&behind], KeyPosition::On);
                (need, volts(&behind, book::FEED_EXPECTED_V))
            }),
            Check::FuseStrip => page.fuse(spec).map(|(fuse, _)| {
                let steps = look(&fuse);
                (off(vec![fuse]), steps)
            }),
            Check::FeedWire => {
                page.supply_wire.as_ref().zip(page.harness_feed.as_ref()).map(|(wire, feed)| {
                    (reaching(spec, Vec::new(), &[feed], KeyPosition::Off), look(wire))
                })
            }
            Check::ControlToGround => page.harness_control.as_ref().map(|control| {
                let ground = Id::from(GROUND);
                let steps = vec![over_limit(), measure(MeterFunction::Ohms, control, &ground)];
                (reaching(spec, unplugged, &[control], KeyPosition::Off), steps)
            }),
            Check::ControlThrough => {
                page.harness_control.as_ref().zip(page.module_control.as_ref()).map(
                    |(near, far)| {
                        let steps = vec![
                            expect(Quantity::Ohms, 0.0, book::WIRE_MOST_OHMS),
                            measure(MeterFunction::Ohms, near, far),
                        ];
                        (reaching(spec, unplugged, &[near, far], KeyPosition::Off), steps)
                    },
                )
            }
        };
        self.leads_zeroed |= check == Check::Winding;
        made.map_or_else(Vec::new, |(need, steps)| {
            let mut way = habits::way_to(&need, spec, seen.sighted);
            way.extend(steps);
            way
        })
    }

    /// What a check's entries say.
    fn judge(&mut self, (check, place): Task, entries: &[Entry], spec: &VehicleSpec) -> Verdict {
        let page = &self.pages[place];
        let at = |kind, id: &Option<Id>| {
            id.clone().map_or(Verdict::Passed, |id| Verdict::Failed(kind, id))
        };
        let sights: Vec<Sight> = sights(entries);
        let reading = reading(entries);
        match check {
            Check::Contacts
                if sights.iter().any(|s| matches!(s, Sight::Corrosion | Sight::SpreadTerminal)) =>
            {
                Verdict::Ask((0..page.pins.len()).map(Check::Pin).collect())
            }
            Check::Pin(number) if sights.contains(&Sight::Corrosion) => {
                at(FaultKind::CorrodedPin, &page.pins.get(number).cloned())
            }
            Check::Pin(number) if sights.contains(&Sight::SpreadTerminal) => {
                at(FaultKind::SpreadTerminal, &page.pins.get(number).cloned())
            }
            Check::Winding => {
                let valve = Some(page.valve.clone());
                match reading {
                    Some(ohms) if ohms.is_infinite() => at(FaultKind::OpenCoil, &valve),
                    Some(ohms) if ohms > book::THREAD_OHMS => {
                        at(FaultKind::PartlyBrokenCoil, &valve)
                    }
                    Some(ohms) => match page.winding(spec, ohms) {
                        Winding::Sound => Verdict::Passed,
                        Winding::TooLow => at(FaultKind::ShortedTurns, &valve),
                        Winding::TooHigh => at(FaultKind::PoorJoint, &valve),
                    },
                    None => Verdict::Passed,
                }
            }
            Check::Feed if page.side == DriverSide::High => match reading {
                Some(ohms) if ohms > book::WIRE_MOST_OHMS => {
                    at(FaultKind::BrokenWire, &page.feed_wire)
                }
                _ => Verdict::Passed,
            },
            Check::Feed if reading.is_some_and(|volts| volts < book::FEED_LEAST_V) => {
                Verdict::Ask(vec![Check::BehindFuse])
            }
            Check::BehindFuse if reading.is_some_and(|volts| volts < book::FEED_LEAST_V) => {
                Verdict::Ask(vec![Check::FuseStrip])
            }
            Check::BehindFuse if page.side == DriverSide::High => {
                at(FaultKind::ResistiveRelay, &page.relay(spec))
            }
            Check::BehindFuse => at(FaultKind::BrokenWire, &page.feed_wire),
            Check::FuseStrip if sights.contains(&Sight::BlownFuse) => {
                self.fuse_blown = true;
                Verdict::Ask(vec![Check::FeedWire])
            }
            Check::FeedWire if sights.contains(&Sight::RubbedThrough) => {
                at(FaultKind::ChafedFeed, &page.supply_wire)
            }
            Check::FeedWire if self.fuse_blown => {
                at(FaultKind::BlownFuse, &page.fuse(spec).map(|(fuse, _)| fuse))
            }
            Check::Loaded if reading.is_none_or(|volts| volts >= book::LOADED_LEAST_V) => {
                Verdict::Passed
            }
            Check::Loaded if page.side == DriverSide::High => Verdict::Ask(vec![Check::BehindFuse]),
            Check::Loaded => at(FaultKind::ResistiveRelay, &page.relay(spec)),
            Check::ControlWire => match reading {
                Some(volts) if volts > book::CONTROL_TOO_HIGH_V => {
                    at(FaultKind::WireToSupply, &page.control_wire)
                }
                Some(volts) if volts < book::CONTROL_V.0 => {
                    Verdict::Ask(vec![Check::ControlToGround, Check::ControlThrough])
                }
                _ => Verdict::Passed,
            },
            Check::ControlToGround if reading.is_some_and(|r| r < book::GROUNDED_BELOW_OHMS) => {
                at(FaultKind::WireToGround, &page.control_wire)
            }
            Check::ControlThrough if reading.is_some_and(|r| r > book::WIRE_MOST_OHMS) => {
                at(FaultKind::BrokenWire, &page.control_wire)
            }
            Check::ValveOut if sights.contains(&Sight::Sludge) => {
                at(FaultKind::BlockedScreen, &Some(page.valve.clone()))
            }
            Check::ValveOut
                if sights.iter().any(|s| matches!(s, Sight::SpoolSticks | Sight::SpoolSeized)) =>
            {
                at(FaultKind::StickingSpool, &Some(page.valve.clone()))
            }
            _ => Verdict::Passed,
        }
    }
}

const GROUND: &str = "battery-minus";

/// What has to be off, key off.
fn off(off: Vec<Id>) -> Need {
    Need { off, plugged: Vec::new(), key: Some(KeyPosition::Off) }
}

/// What has to be off for probes to reach these points.
fn reaching(spec: &VehicleSpec, mut off: Vec<Id>, points: &[&Id], key: KeyPosition) -> Need {
    let behind = |point: &&Id| spec.test_point(point).map(|point| point.behind.clone());
    off.splice(0..0, points.iter().filter_map(behind).flatten());
    Need { off, plugged: Vec::new(), key: Some(key) }
}

fn measure(function: MeterFunction, red: &Id, black: &Id) -> Step {
    Step::Measure { function, red: red.clone(), black: black.clone() }
}

const fn expect(of: Quantity, least: f64, most: f64) -> Step {
    Step::Predict { least, most: Bound::Value(most), of: Some(of) }
}

const fn over_limit() -> Step {
    Step::Predict { least: 1e6, most: Bound::OverLimit, of: Some(Quantity::Ohms) }
}

/// A voltage against the battery, with what a sound vehicle shows.
fn volts(point: &Id, (least, most): (f64, f64)) -> Vec<Step> {
    vec![
        expect(Quantity::Volts, least, most),
        measure(MeterFunction::Volts, point, &Id::from(GROUND)),
    ]
}

fn command(valve: &Id, on: bool) -> Step {
    Step::Command { valve: valve.clone(), on }
}

fn sights(entries: &[Entry]) -> Vec<Sight> {
    let events = entries.iter().flat_map(|entry| &entry.events);
    events
        .filter_map(|event| match event {
            Event::Seen { sight, .. } => Some(*sight),
            _ => None,
        })
        .collect()
}

/// The last reading [V or ohm]; over limit is infinite.
fn reading(entries: &[Entry]) -> Option<f64> {
    entries.iter().flat_map(|entry| &entry.events).rev().find_map(|event| match event {
        Event::Reading { display: Display::Value { value, .. }, .. } => Some(*value),
        Event::Reading { display: Display::OverLimit, .. } => Some(f64::INFINITY),
        _ => None,
    })
}

/// What the dipstick alone says is wrong.
fn oil_fault(log: &[Entry]) -> Option<FaultKind> {
    log.iter().flat_map(|entry| &entry.events).find_map(|event| match event {
        Event::OilSeen { level, dry, look, feel, smells_of_fuel } => {
            if *dry || *level < 0.0 {
                Some(FaultKind::LowOil)
            } else if *look == OilLook::Sludge {
                Some(FaultKind::WornOutOil)
            } else if *smells_of_fuel {
                Some(FaultKind::FuelInOil)
            } else {
                (!feel.is_usual()).then_some(FaultKind::WrongOil)
            }
        }
        _ => None,
    })
}

/// The repair that the book names for a fault: the first of those that take it away.
fn repair(kind: FaultKind, place: Id, percent: u8) -> Decision {
    let diagnosis = FaultName { kind, place };
    Remedy::of(&diagnosis).into_iter().next().map_or(Decision::GiveUp, |remedy| Decision::Repair {
        confidences: vec![(diagnosis.clone(), percent)],
        diagnosis,
        remedy,
    })
}

impl Finder for ByTheBook {
    fn intake(&self) -> Vec<Step> {
        let mut steps = habits::intake();
        steps.push(Step::Consult { topic: ServiceTopic::Codes });
        steps.push(Step::Consult { topic: ServiceTopic::Limits });
        steps
    }

    fn decide(&mut self, seen: Seen<'_>) -> Result<Decision, VehicleError> {
        if self.plan.is_none() {
            self.lay_out(seen);
            if let Some(kind) = oil_fault(seen.log) {
                return Ok(repair(kind, Id::from("sump"), FOUND));
            }
        }
        if let Some((task, from)) = self.made.take() {
            match self.judge(task, &seen.log[from..], &seen.briefing.vehicle) {
                Verdict::Passed => {}
                Verdict::Failed(kind, place) => return Ok(repair(kind, place, FOUND)),
                Verdict::Ask(checks) => {
                    let plan = self.plan.get_or_insert_default();
                    for check in checks.into_iter().rev() {
                        plan.push_front((check, task.1));
                    }
                }
            }
        }
        while let Some(task) = self.plan.get_or_insert_default().pop_front() {
            let steps = self.steps(task, seen);
            // What the case has no tool for is left out.
            let is_possible = steps.iter().all(|step| seen.briefing.tools.allow(step));
            if is_possible && !steps.is_empty() {
                self.made = Some((task, seen.log.len()));
                return Ok(Decision::Do(steps));
            }
        }
        Ok(match self.last_resort.pop_front() {
            Some(valve) => repair(FaultKind::OpenCoil, valve, BY_ELIMINATION),
            None if !self.any_named => Decision::NothingWrong,
            None => Decision::GiveUp,
        })
    }
}
