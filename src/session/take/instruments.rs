//! Test lamp, current probe and scope.

use super::measure::reach;
use super::module::{reader_time, switch};
use super::{Outcome, Refusal, book, minutes};
use crate::instruments::scope::{self, Capture, PinLevels, Signal};
use crate::instruments::test_lamp;
use crate::session::attempt::Session;
use crate::session::event::{Breach, Event, Hazard, NoAnswer};
use crate::units::{Amperes, Millimetres, Minutes, Seconds, Volts};
use crate::vehicle::capture::{CAPTURE_ON_S, Driven};
use crate::vehicle::circuits::FREEWHEEL_V;
use crate::vehicle::error::VehicleError;
use crate::vehicle::harness::DriverState;
use crate::vehicle::spec::{HarnessElement, Id};

/// Pulses a second of a driver: engineering estimate, published figures are 100 to 300.
const PULSES_PER_S: f64 = 250.0;
/// Points of a capture to one period, and time between two points of a switch-off [s].
const POINTS_IN_PERIOD: usize = 50;
const SWITCH_OFF_INTERVAL_S: f64 = 0.2e-3;
/// Current below which nothing goes on after a switch-off [A].
const NOTHING_A: f64 = 1e-3;

pub(super) fn lamp(session: &mut Session, tip: &Id, clip: &Id) -> Outcome {
    let (tip_node, clip_node) = match (reach(session, tip), reach(session, clip)) {
        (Ok(tip_node), Ok(clip_node)) => (tip_node, clip_node),
        (Err(reason), _) | (_, Err(reason)) => return Ok(Err(reason)),
    };
    let phases = session.vehicle.wiring_phases()?;
    let lit = test_lamp::light(&phases, tip_node.as_str(), clip_node.as_str())?;
    let mut events = running_caution(session);
    for (point, node) in [(tip, &tip_node), (clip, &clip_node)] {
        if session.briefing.vehicle.is_on_control_side(node) {
            events.push(Event::AgainstCare { breach: Breach::TestLampOnModule(point.clone()) });
        }
    }
    events.push(Event::LampGlows { tip: tip.clone(), clip: clip.clone(), glow: lit.glow() });
    events.push(minutes(session.briefing.prices.minutes.electrical.lamp));
    Ok(Ok(events))
}

fn running_caution(session: &Session) -> Vec<Event> {
    if session.vehicle.engine_runs() {
        vec![Event::Caution { hazard: Hazard::MovingParts }]
    } else {
        Vec::new()
    }
}

/// What keeps a clamp from a wire: it fits where a probe can reach one of its ends.
fn reach_wire(session: &Session, wire: &Id) -> Result<(), Refusal> {
    let spec = &session.briefing.vehicle;
    let Some(element @ (HarnessElement::Wire { .. } | HarnessElement::Cable { .. })) =
        spec.element(wire)
    else {
        return Err(Refusal::NoSuchPlace(wire.clone()));
    };
    let ends = element.nodes();
    let mut covered = None;
    for point in spec.test_points.iter().filter(|point| ends.contains(&&point.node)) {
        match session.vehicle.assembly().in_the_way(&point.behind) {
            None => return Ok(()),
            Some(obstacle) => covered = covered.or(Some(obstacle)),
        }
    }
    Err(covered.map_or_else(|| Refusal::NoSuchPlace(wire.clone()), Refusal::Obstacle))
}

pub(super) fn clamp(session: &mut Session, wire: &Id) -> Outcome {
    if let Err(reason) = reach_wire(session, wire) {
        return Ok(Err(reason));
    }
    let phases = session.vehicle.wiring_phases()?;
    let reading = session.clamp.read(&phases, wire.as_str())?;
    let mut events = running_caution(session);
    events.push(Event::Clamped {
        wire: wire.clone(),
        display: reading.display,
        tolerance: reading.tolerance,
    });
    events.push(minutes(clamp_time(session)));
    Ok(Ok(events))
}

pub(super) fn zero_clamp(session: &mut Session) -> Vec<Event> {
    session.clamp.zero();
    vec![Event::ClampZeroed, minutes(clamp_time(session))]
}

fn clamp_time(session: &mut Session) -> Minutes {
    let time = book::clamp(session);
    session.progress.clamp_fetched = true;
    time
}

fn scope_time(session: &mut Session) -> Minutes {
    let time = book::scope(session);
    session.progress.scope_set_up = true;
    time
}

/// Where the scope's clamp or probe has to reach for a valve.
fn reach_signal(session: &Session, signal: Signal, valve: &Id) -> Result<(), Refusal> {
    let spec = &session.briefing.vehicle;
    if spec.valve(valve).is_none() {
        return Err(Refusal::NoSuchPlace(valve.clone()));
    }
    let at_valve = |element: &&HarnessElement| match element {
        HarnessElement::Wire { id, to, .. } | HarnessElement::Cable { id, to, .. } => {
            match signal {
                Signal::CoilCurrent => spec.steady_node(valve) == Some(to),
                Signal::DriverPin => spec.valve_controlled_by(id) == Some(valve),
            }
        }
        _ => false,
    };
    match spec.harness.elements.iter().find(at_valve) {
        Some(wire) => reach_wire(session, wire.id()),
        None => Err(Refusal::NoSuchPlace(valve.clone())),
    }
}

pub(super) fn scope(session: &mut Session, signal: Signal, valve: &Id) -> Outcome {
    if let Err(reason) = reach_signal(session, signal, valve) {
        return Ok(Err(reason));
    }
    let runs = session.vehicle.engine_runs();
    if runs && signal == Signal::CoilCurrent {
        // The dip belongs to a single stroke from rest.
        return Ok(Err(Refusal::EngineRuns));
    }
    let mut time = scope_time(session);
    if !runs {
        time += reader_time(session);
        if let Err(no_answer) = switch(session, valve, false)? {
            return Ok(Ok(vec![no_answer, minutes(time)]));
        }
    }
    let Some(driven) = session.vehicle.driven(valve)? else {
        return Ok(Ok(vec![Event::NoAnswer { reason: NoAnswer::NoReply }, minutes(time)]));
    };
    let mut events = running_caution(session);
    if runs {
        let capture = under_pulses(session, valve, &driven)?;
        events.push(Event::Captured { valve: valve.clone(), capture });
    } else {
        let capture = on_command(session, signal, valve, &driven)?;
        for on in [true, false] {
            let click = session.vehicle.command(valve, on)?;
            events.push(Event::Heard { valve: valve.clone(), current_on: on, click });
        }
        events.push(Event::Captured { valve: valve.clone(), capture });
    }
    events.push(minutes(time));
    Ok(Ok(events))
}

/// A capture of the valve being switched on and off once by the module.
fn on_command(
    session: &Session,
    signal: Signal,
    valve: &Id,
    driven: &Driven,
) -> Result<Capture, VehicleError> {
    let on_for = Seconds(CAPTURE_ON_S);
    let stroke = session.vehicle.stroke_on_command(valve, &driven.circuit);
    let forced = driven.circuit.forced().unwrap_or(0.0);
    if signal == Signal::CoilCurrent {
        return Ok(match &stroke {
            Some(stroke) => scope::coil_current(stroke, on_for),
            None => scope::steady_current(forced, on_for),
        });
    }
    let interval = Seconds(SWITCH_OFF_INTERVAL_S);
    let (from, spool) =
        stroke.map_or((Amperes(forced), Millimetres(0.0)), |s| (s.end_current, s.end_position));
    let levels = pin_levels(session, valve, driven, from, spool, interval)?;
    Ok(scope::switch_off(&levels, interval))
}

/// A capture of the pin while the module controls the valve by pulses.
fn under_pulses(session: &Session, valve: &Id, driven: &Driven) -> Result<Capture, VehicleError> {
    let interval = Seconds(1.0 / PULSES_PER_S / POINTS_IN_PERIOD as f64);
    let current = driven.circuit.mean_current(driven.duty);
    let levels = pin_levels(session, valve, driven, current, Millimetres(0.0), interval)?;
    Ok(scope::pulses(&levels, driven.duty, POINTS_IN_PERIOD, interval))
}

fn pin_levels(
    session: &Session,
    valve: &Id,
    driven: &Driven,
    from: Amperes,
    spool: Millimetres,
    interval: Seconds,
) -> Result<PinLevels, VehicleError> {
    let vehicle = &session.vehicle;
    let pin = |driver| vehicle.pin_volts(valve, driver).map(|volts| volts.0);
    // A coil that is fed whatever the driver does loses no current when the driver opens.
    let flows_on = from.0 > NOTHING_A && driven.circuit.forced().is_none();
    let mut flowing_v = Vec::new();
    if flows_on {
        let against = Volts(FREEWHEEL_V);
        let release = vehicle.release(valve, &driven.circuit, from, spool, against, interval);
        for sample in release.samples.iter().take(scope::POINTS) {
            flowing_v.push(pin(DriverState::Freewheel(*sample))?);
        }
    }
    Ok(PinLevels { closed_v: pin(DriverState::On)?, flowing_v, open_v: pin(DriverState::Off)? })
}
