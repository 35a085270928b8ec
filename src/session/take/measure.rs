//! Measuring and powering.

use super::{Outcome, Refusal, book, minutes, spent};
use crate::instruments::multimeter::{Display, LEADS_OHMS, MeterFunction};
use crate::session::attempt::Session;
use crate::session::event::{Breach, Event, Hazard};
use crate::units::Minutes;
use crate::vehicle::assembly::Obstacle;
use crate::vehicle::spec::{HarnessElement, Id};

/// Standing voltage from which a resistance reading is spoilt [V]: a tenth of a volt is a hundred
/// ohms on the smallest range.
const LIVE_V: f64 = 0.02;
/// Fuse in the power lead [A]: common practice three to five, no source.
const LEAD_FUSE_A: f64 = 5.0;

pub(super) fn read(
    session: &mut Session,
    function: MeterFunction,
    red: &Id,
    black: &Id,
) -> Outcome {
    let (red_node, black_node) = match (reach(session, red), reach(session, black)) {
        (Ok(red_node), Ok(black_node)) => (red_node, black_node),
        (Err(reason), _) | (_, Err(reason)) => return Ok(Err(reason)),
    };
    let phases = session.vehicle.wiring_phases()?;
    let reading = session.meter.read(function, &phases, red_node.as_str(), black_node.as_str())?;
    session.vehicle.cranked_for_a_reading()?;
    let mut events = Vec::new();
    if session.vehicle.engine_turns() {
        events.push(Event::Caution { hazard: Hazard::MovingParts });
    }
    if function == MeterFunction::Ohms {
        if reading.standing_volts.abs() > LIVE_V {
            events.push(Event::AgainstCare { breach: Breach::OhmsOnLiveCircuit });
        }
        if let Some(connector) = plugged_between(session, &[&red_node, &black_node]) {
            events.push(Event::AgainstCare { breach: Breach::OhmsWhilePlugged(connector) });
        }
    }
    if reading.fuse_blew {
        events.push(Event::AgainstCare { breach: Breach::AmpsAcrossSource });
        events.push(Event::MeterFuseBlew);
    } else {
        events.push(Event::Reading {
            function,
            red: red.clone(),
            black: black.clone(),
            display: reading.display,
            tolerance: reading.tolerance,
        });
    }
    events.push(minutes(meter_time(session)));
    Ok(Ok(events))
}

/// Contact resistance that a probe leaves behind when it is pushed into a terminal from the front
/// [ohm]: engineering estimate. The spring of the terminal is bent open and does not come back.
const SPREAD_BY_A_PROBE_OHMS: f64 = 0.5;

/// A measurement with the leads pushed into unplugged connectors. A pin of the component is made to
/// be touched there; a terminal of the harness is not.
pub(super) fn read_from_front(
    session: &mut Session,
    function: MeterFunction,
    red: &Id,
    black: &Id,
) -> Outcome {
    let mut spread = Vec::new();
    for point in [red, black] {
        let node = match reach(session, point) {
            Ok(node) => node,
            Err(reason) => return Ok(Err(reason)),
        };
        if let Some((pin, connector)) = session.briefing.vehicle.terminal_at(&node) {
            if !session.vehicle.assembly().is_off(connector) {
                return Ok(Err(Refusal::Obstacle(Obstacle::Plugged(connector.clone()))));
            }
            spread.push((pin.clone(), connector.clone()));
        }
    }
    let mut events = match read(session, function, red, black)? {
        Ok(events) => events,
        Err(reason) => return Ok(Err(reason)),
    };
    for (pin, connector) in spread {
        let ohms = session.vehicle.condition_mut().spread_ohms.entry(pin).or_insert(0.0);
        *ohms += SPREAD_BY_A_PROBE_OHMS;
        events.insert(0, Event::AgainstCare { breach: Breach::FrontProbed(connector) });
    }
    Ok(Ok(events))
}

/// Watches a reading while a hand wiggles a place.
pub(super) fn wiggle(
    session: &mut Session,
    place: &Id,
    function: MeterFunction,
    red: &Id,
    black: &Id,
) -> Outcome {
    let spec = &session.briefing.vehicle;
    if spec.pins_at(place).is_empty() {
        return Ok(Err(Refusal::NoSuchPlace(place.clone())));
    }
    if let Err(reason) = reach_by_hand(session, place) {
        return Ok(Err(reason));
    }
    // What the meter shows before a hand touches anything, with all that speaks against it.
    let mut events = match read(session, function, red, black)? {
        Ok(events) => events,
        Err(reason) => return Ok(Err(reason)),
    };
    let Some(at_rest) = events.iter().position(|event| matches!(event, Event::Reading { .. }))
    else {
        // Its fuse blew: nothing is left to watch.
        return Ok(Ok(events));
    };
    let (Ok(red_node), Ok(black_node)) = (reach(session, red), reach(session, black)) else {
        return Ok(Ok(events));
    };
    let mut shown: Vec<(Display, f64)> = Vec::new();
    for phases in session.vehicle.wiggle(place)? {
        let reading =
            session.meter.read(function, &phases, red_node.as_str(), black_node.as_str())?;
        shown.push((reading.display, reading.tolerance));
    }
    let by_size = |a: &&(Display, f64), b: &&(Display, f64)| size(a.0).total_cmp(&size(b.0));
    if let (Some(least), Some(most)) = (shown.iter().min_by(by_size), shown.iter().max_by(by_size))
    {
        events.insert(
            at_rest + 1,
            Event::Watched {
                place: place.clone(),
                function,
                red: red.clone(),
                black: black.clone(),
                least: least.0,
                most: most.0,
                jumped: jumps(*least, *most),
                tolerance: least.1,
            },
        );
    }
    events.push(minutes(session.briefing.prices.minutes.electrical.wiggle));
    Ok(Ok(events))
}

/// What keeps a hand from a connector, a contact or a wire.
fn reach_by_hand(session: &Session, place: &Id) -> Result<(), Refusal> {
    let spec = &session.briefing.vehicle;
    let assembly = session.vehicle.assembly();
    let behind = |part: &Id| spec.part(part).map_or(&[][..], |part| &part.behind);
    let obstacle = match spec.element(place) {
        Some(HarnessElement::Pin { connector, .. }) => assembly.in_the_way(behind(connector)),
        Some(element) => {
            let ends = element.nodes();
            let mut covers = spec
                .test_points
                .iter()
                .filter(|point| ends.contains(&&point.node))
                .map(|point| assembly.in_the_way(&point.behind));
            let first = covers.next().flatten();
            if covers.any(|cover| cover.is_none()) { None } else { first }
        }
        None => assembly.in_the_way(behind(place)),
    };
    obstacle.map_or(Ok(()), |obstacle| Err(Refusal::Obstacle(obstacle)))
}

const fn size(display: Display) -> f64 {
    match display {
        Display::Value { value, .. } => value,
        Display::OverLimit => f64::INFINITY,
    }
}

/// Whether two displays differ by more than the meter's own uncertainty of both.
fn jumps(least: (Display, f64), most: (Display, f64)) -> bool {
    size(most.0) - size(least.0) > least.1 + most.1
}

/// A new fuse for the meter: the same rating, and the meter reads amperes again.
pub(super) fn replace_meter_fuse(session: &mut Session) -> Vec<Event> {
    session.meter.fuse_whole = true;
    let prices = &session.briefing.prices;
    vec![
        Event::MeterFuseReplaced,
        spent(prices.minutes.electrical.meter_fuse, prices.small_parts.meter_fuse),
    ]
}

fn meter_time(session: &mut Session) -> Minutes {
    let time = book::meter(session);
    session.progress.meter_fetched = true;
    time
}

/// The node behind a test point, if a probe can get there.
pub(super) fn reach(session: &Session, point: &Id) -> Result<Id, Refusal> {
    let spec = session
        .briefing
        .vehicle
        .test_point(point)
        .ok_or_else(|| Refusal::NoSuchPlace(point.clone()))?;
    match session.vehicle.assembly().obstacle_to_probing(spec) {
        Some(obstacle) => Err(Refusal::Obstacle(obstacle)),
        None => Ok(spec.node.clone()),
    }
}

/// A connector, still plugged, through which an ohmmeter at these nodes sees more than the part
/// that it is meant for.
fn plugged_between(session: &Session, nodes: &[&Id]) -> Option<Id> {
    session.briefing.vehicle.harness.elements.iter().find_map(|element| match element {
        HarnessElement::Pin { connector, from, .. }
            if nodes.contains(&from) && !session.vehicle.assembly().is_off(connector) =>
        {
            Some(connector.clone())
        }
        _ => None,
    })
}

pub(super) fn zero_leads(session: &mut Session) -> Vec<Event> {
    session.meter.zeroed_ohms = LEADS_OHMS;
    vec![Event::LeadsZeroed, minutes(meter_time(session))]
}

pub(super) fn power(session: &mut Session, valve: &Id, seconds: u16, reversed: bool) -> Outcome {
    let Some(place) = session.briefing.vehicle.valve(valve).cloned() else {
        return Ok(Err(Refusal::NoSuchPlace(valve.clone())));
    };
    if seconds == 0 || seconds > 3_600 {
        return Ok(Err(Refusal::OutOfRange));
    }
    let Some(longest) = session.briefing.vehicle.longest_power else {
        return Ok(Err(Refusal::PowerForbidden));
    };
    if session.vehicle.engine_runs() {
        return Ok(Err(Refusal::EngineRuns));
    }
    if !session.vehicle.assembly().is_off(&place.connector) {
        return Ok(Err(Refusal::Obstacle(Obstacle::Plugged(place.connector))));
    }
    let mut events = vec![Event::Caution { hazard: Hazard::BatteryCurrent }];
    if reversed {
        events.push(Event::AgainstCare { breach: Breach::ReversedPolarity(valve.clone()) });
    }
    if f64::from(seconds) > longest {
        events.push(Event::AgainstCare { breach: Breach::PoweredTooLong(valve.clone()) });
    }
    let pulse = session.vehicle.power_valve(valve, f64::from(seconds), LEAD_FUSE_A)?;
    if pulse.fuse_blew {
        events.push(Event::LeadFuseBlew);
    } else {
        for (current_on, click) in [(true, pulse.on), (false, pulse.off)] {
            events.push(Event::Heard { valve: valve.clone(), current_on, click });
        }
    }
    events.push(minutes(session.briefing.prices.minutes.power));
    Ok(Ok(events))
}
