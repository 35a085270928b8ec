//! Measuring and powering.

use super::{Outcome, Refusal, minutes};
use crate::instruments::multimeter::{Display, LEADS_OHMS, MeterFunction};
use crate::session::attempt::Session;
use crate::session::event::{Breach, Event, Hazard};
use crate::session::step::Bound;
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
    if function == MeterFunction::Amps && !session.meter.fuse_whole {
        return Ok(Err(Refusal::MeterFuseBlown));
    }
    let phases = session.vehicle.wiring_phases()?;
    let reading = session.meter.read(function, &phases, red_node.as_str(), black_node.as_str())?;
    let mut events = Vec::new();
    if session.vehicle.engine_runs() {
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
        if let Some((least, most)) = session.progress.prediction.take() {
            events.push(Event::PredictionChecked { met: meets(reading.display, least, most) });
        }
    }
    events.push(minutes(meter_time(session)));
    Ok(Ok(events))
}

fn meter_time(session: &mut Session) -> Minutes {
    let times = session.briefing.prices.minutes;
    if session.progress.meter_fetched {
        times.measure
    } else {
        session.progress.meter_fetched = true;
        times.measure + times.fetch_meter
    }
}

/// The node behind a test point, if a probe can get there.
fn reach(session: &Session, point: &Id) -> Result<Id, Refusal> {
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

fn meets(display: Display, least: f64, most: Bound) -> bool {
    match (display, most) {
        (Display::OverLimit, Bound::OverLimit) => true,
        (Display::Value { value, .. }, Bound::OverLimit) => value >= least,
        (Display::Value { value, .. }, Bound::Value(most)) => least <= value && value <= most,
        (Display::OverLimit, Bound::Value(_)) => false,
    }
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
