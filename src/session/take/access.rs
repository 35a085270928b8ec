//! Opening up and putting back.

use super::{Outcome, Refusal, minutes, spent};
use crate::session::attempt::Session;
use crate::session::event::{Breach, Event, Hazard};
use crate::session::step::{Manner, Step};
use crate::units::{Minutes, Money};
use crate::vehicle::condition::Seal;
use crate::vehicle::spec::{Care, Id, PartKind, PartSpec};

/// A part that is hot enough to burn after a run [°C]: common practice, no source.
pub(super) const HOT_C: f64 = 50.0;

pub(super) fn handle(session: &mut Session, step: &Step) -> Outcome {
    let outcome = match step {
        Step::Remove { part, manner } => remove(session, part, *manner),
        Step::Unplug { connector } => remove(session, connector, Manner::Careful),
        Step::Refit { part, new_seal } => refit(session, part, *new_seal),
        Step::Plug { connector } => refit(session, connector, false),
        _ => Ok(Vec::new()),
    };
    if outcome.is_ok() {
        session.vehicle.sense_after_change()?;
    }
    Ok(outcome)
}

fn part_of<'a>(session: &'a Session, id: &Id) -> Result<&'a PartSpec, Refusal> {
    session.briefing.vehicle.part(id).ok_or_else(|| Refusal::NoSuchPlace(id.clone()))
}

fn remove(session: &mut Session, id: &Id, manner: Manner) -> Result<Vec<Event>, Refusal> {
    let part = part_of(session, id)?.clone();
    let spec = &session.briefing.vehicle;
    if let Some(obstacle) = session.vehicle.assembly().obstacle_to_removing(spec, id) {
        return Err(Refusal::Obstacle(obstacle));
    }
    if session.vehicle.engine_runs() {
        return Err(Refusal::EngineRuns);
    }
    let mut events = Vec::new();
    if part.care.contains(&Care::Hot) && session.vehicle.engine_temperature().0 > HOT_C {
        events.push(Event::Caution { hazard: Hazard::Hot });
    }
    if part.kind == PartKind::Connector && session.vehicle.key_on() {
        events.push(Event::AgainstCare { breach: Breach::KeyOnWhileUnplugging(id.clone()) });
    }
    let mut time = part.remove;
    if part.kind == PartKind::Valve {
        events.push(Event::Caution { hazard: Hazard::UsedOil });
    }
    if manner == Manner::Pulled && part.care.contains(&Care::BreakSealLoose) {
        time = Minutes(time.0 - time.0 / 3);
        if let Some(valve) = session.vehicle.condition_mut().valves.get_mut(id) {
            valve.seal = Seal::Torn;
        }
        events.push(Event::AgainstCare { breach: Breach::Part(id.clone(), Care::BreakSealLoose) });
        events.push(Event::SealTorn { valve: id.clone() });
    } else if let Some(valve) = session.vehicle.condition_mut().valves.get_mut(id)
        && valve.seal == Seal::Good
    {
        valve.seal = Seal::Reused;
    }
    session.vehicle.assembly_mut().take_off(id);
    events.push(if part.kind == PartKind::Connector {
        Event::Unplugged { connector: id.clone() }
    } else {
        Event::Removed { part: id.clone() }
    });
    events.push(minutes(time));
    Ok(events)
}

fn refit(session: &mut Session, id: &Id, new_seal: bool) -> Result<Vec<Event>, Refusal> {
    let part = part_of(session, id)?.clone();
    let spec = &session.briefing.vehicle;
    if let Some(obstacle) = session.vehicle.assembly().obstacle_to_refitting(spec, id) {
        return Err(Refusal::Obstacle(obstacle));
    }
    if session.vehicle.engine_runs() {
        return Err(Refusal::EngineRuns);
    }
    let mut events = Vec::new();
    let mut money = Money(0);
    if let Some(valve) = session.vehicle.condition_mut().valves.get_mut(id) {
        if new_seal {
            valve.seal = Seal::Good;
            money = session.briefing.prices.seal;
        } else if valve.seal != Seal::Good && part.care.contains(&Care::NewSeal) {
            events.push(Event::AgainstCare { breach: Breach::Part(id.clone(), Care::NewSeal) });
        }
    }
    session.vehicle.assembly_mut().put_back(id);
    events.push(if part.kind == PartKind::Connector {
        Event::Plugged { connector: id.clone() }
    } else {
        Event::Refitted { part: id.clone() }
    });
    events.push(spent(part.refit, money));
    Ok(events)
}
