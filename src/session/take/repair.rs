//! Repairs, the record and handing back.

use super::{Outcome, Refusal, book, minutes, spent};
use crate::numerics::whole::{to_i64, to_u32};
use crate::physics::oil::Grade;
use crate::session::attempt::Session;
use crate::session::event::{Breach, Event, Hazard};
use crate::session::setup::Approval;
use crate::session::step::Step;
use crate::units::{Minutes, Money};
use crate::vehicle::condition::CLEAN_STICTION_N;
use crate::vehicle::spec::Id;
use std::sync::Arc;

/// What flushing leaves of blockage and stiction, as a share: engineering estimate.
const LEFT_AFTER_CLEANING: f64 = 0.05;

pub(super) fn work(session: &mut Session, step: &Step) -> Result<Vec<Event>, Refusal> {
    match step {
        Step::AskApproval => {
            Ok(vec![ask_approval(session), minutes(session.briefing.prices.minutes.approval)])
        }
        Step::Fit { valve, part_number } => fit(session, valve, part_number),
        Step::Clean { valve } => clean(session, valve),
        Step::Mend { element } => mend(session, element),
        Step::ChangeOil { grade } => change_oil(session, *grade),
        _ => top_up(session),
    }
}

/// The customer's answer. Whoever has approved up to a limit and is asked once more stands by it.
fn ask_approval(session: &mut Session) -> Event {
    let is_asked_again = core::mem::replace(&mut session.progress.approved, true);
    match left_of_approval(session) {
        None => Event::Approved,
        Some(left) if is_asked_again => Event::MoreDeclined { left },
        Some(money) => Event::ApprovedUpTo { money },
    }
}

/// What is left of the limit that the customer has set, if there is one.
fn left_of_approval(session: &Session) -> Option<Money> {
    match session.briefing.approval {
        Approval::Everything => None,
        Approval::UpTo { money: Money(limit) } => {
            Some(Money(limit - session.progress.spent_on_repair.0))
        }
    }
}

/// Breaches that a repair commits which comes too early or costs more than was approved. What it costs is counted against
/// the limit, approved or not: a workshop cannot bill it twice.
fn begin_repair(session: &mut Session, (time, price): (Minutes, Money)) -> Vec<Event> {
    let cost = time.at_rate(session.briefing.prices.labour_per_hour) + price;
    let left = left_of_approval(session);
    session.progress.spent_on_repair += cost;
    let mut events = Vec::new();
    if !session.progress.committed {
        events.push(Event::AgainstCare { breach: Breach::RepairBeforeDiagnosis });
    }
    if !session.progress.approved {
        events.push(Event::AgainstCare { breach: Breach::RepairWithoutApproval });
    } else if left.is_some_and(|left| cost > left) {
        events.push(Event::AgainstCare { breach: Breach::RepairBeyondApproval });
    }
    events
}

fn valve_on_the_bench(session: &Session, valve: &Id) -> Result<(), Refusal> {
    if session.briefing.vehicle.valve(valve).is_none() {
        return Err(Refusal::NoSuchPlace(valve.clone()));
    }
    if session.vehicle.assembly().is_off(valve) {
        Ok(())
    } else {
        Err(Refusal::StillFitted(valve.clone()))
    }
}

fn fit(session: &mut Session, valve: &Id, part_number: &Id) -> Result<Vec<Event>, Refusal> {
    valve_on_the_bench(session, valve)?;
    let briefing = Arc::clone(&session.briefing);
    let offer = briefing
        .offer(part_number)
        .filter(|offer| offer.part.fits.contains(valve))
        .ok_or_else(|| Refusal::DoesNotFit(part_number.clone()))?;
    let (time, price) = book::valve(&briefing, &offer);
    let mut events = begin_repair(session, (time, price));
    if offer.wait > Minutes(0) {
        events.push(Event::Waited { minutes: offer.wait });
    }
    session.vehicle.condition_mut().valves.insert(valve.clone(), offer.valve());
    session.vehicle.valve_changed(valve);
    events.push(Event::Fitted { valve: valve.clone(), part_number: part_number.clone() });
    events.push(spent(time, price));
    Ok(events)
}

fn clean(session: &mut Session, valve: &Id) -> Result<Vec<Event>, Refusal> {
    valve_on_the_bench(session, valve)?;
    let (time, price) = book::cleaning(&session.briefing.prices);
    let mut events = begin_repair(session, (time, price));
    if let Some(fitted) = session.vehicle.condition_mut().valves.get_mut(valve) {
        fitted.screen_blocked *= LEFT_AFTER_CLEANING;
        let excess = (fitted.stiction_n - CLEAN_STICTION_N).max(0.0);
        fitted.stiction_n = CLEAN_STICTION_N + LEFT_AFTER_CLEANING * excess;
    }
    session.vehicle.valve_changed(valve);
    session.progress.cleaned.insert(valve.clone());
    events.push(Event::Cleaned { valve: valve.clone() });
    events.push(spent(time, price));
    Ok(events)
}

fn mend(session: &mut Session, element: &Id) -> Result<Vec<Event>, Refusal> {
    let wanted = session.briefing.vehicle.element(element);
    let (time, price) = book::mending(&session.briefing.prices, wanted)
        .ok_or_else(|| Refusal::NoSuchPlace(element.clone()))?;
    if session.vehicle.key_on() {
        return Err(Refusal::KeyMustBeOff);
    }
    let mut events = begin_repair(session, (time, price));
    let condition = session.vehicle.condition_mut();
    condition.extra_ohms.remove(element);
    condition.leak_to_ground_ohms.remove(element);
    condition.leak_to_supply_ohms.remove(element);
    condition.spread_ohms.remove(element);
    condition.loose.remove(element);
    events.push(Event::Mended { element: element.clone() });
    events.push(spent(time, price));
    Ok(events)
}

/// A new fuse of the same rating, or a new relay. A fuse whose cause is still there blows again when
/// current flows.
pub(super) fn replace(session: &mut Session, element: &Id) -> Outcome {
    let spec = &session.briefing.vehicle;
    let priced = book::small_part(&session.briefing.prices, spec.element(element));
    let Some((time, price)) = priced else {
        return Ok(Err(Refusal::NoSuchPlace(element.clone())));
    };
    if let Some(part) = spec.part(element)
        && let Some(obstacle) = session.vehicle.assembly().in_the_way(&part.behind)
    {
        return Ok(Err(Refusal::Obstacle(obstacle)));
    }
    if session.vehicle.key_on() {
        return Ok(Err(Refusal::KeyMustBeOff));
    }
    let mut events = begin_repair(session, (time, price));
    session.vehicle.condition_mut().extra_ohms.remove(element);
    session.vehicle.assembly_mut().put_back(element);
    session.vehicle.sense_after_change()?;
    events.push(Event::Replaced { element: element.clone() });
    events.push(spent(time, price));
    Ok(Ok(events))
}

fn top_up(session: &mut Session) -> Result<Vec<Event>, Refusal> {
    if session.vehicle.engine_runs() {
        return Err(Refusal::EngineRuns);
    }
    let grade = session.briefing.vehicle.oil.grade;
    let missing = session.vehicle.missing_oil().0;
    session.vehicle.condition_mut().oil.pour(grade, missing);
    // Oil is sold by the litre; what is left in the can stays in the workshop.
    let litres = to_i64(missing.ceil());
    let price = session.briefing.prices.oil_litre;
    Ok(vec![
        Event::Caution { hazard: Hazard::Hot },
        Event::OilFilled { tenths: to_u32((missing * 10.0).round()) },
        spent(session.briefing.prices.minutes.top_up, Money(price.0 * litres)),
    ])
}

fn change_oil(session: &mut Session, grade: Grade) -> Result<Vec<Event>, Refusal> {
    if session.vehicle.engine_runs() {
        return Err(Refusal::EngineRuns);
    }
    let vehicle = &session.briefing.vehicle;
    let (full, asked_for) = (vehicle.sump.full_litres, vehicle.oil.grade);
    let (time, price) = book::oil_change(&session.briefing.prices, full);
    let mut events = begin_repair(session, (time, price));
    events.push(Event::Caution { hazard: Hazard::Hot });
    events.push(Event::Caution { hazard: Hazard::UsedOil });
    if grade != asked_for {
        events.push(Event::AgainstCare { breach: Breach::WrongOilGrade });
    }
    let drained = session.vehicle.condition().oil.litres;
    session.vehicle.condition_mut().oil.change(grade, full);
    events.push(Event::OilChanged { grade, drained_tenths: to_u32((drained * 10.0).round()) });
    events.push(spent(time, price));
    Ok(events)
}

pub(super) fn finish(session: &mut Session, step: &Step) -> Result<Vec<Event>, Refusal> {
    let times = session.briefing.prices.minutes;
    match step {
        Step::Write { section, .. } => {
            Ok(vec![Event::Written { section: *section }, minutes(times.write)])
        }
        // A line of the record, whose time is that of the writing.
        Step::ReportCode { code } if session.progress.codes_seen.contains(code) => {
            Ok(vec![Event::CodeReported { code: *code }])
        }
        Step::ReportCode { code } => Err(Refusal::CodeNotRead(*code)),
        Step::HandOver { ending } => {
            if session.vehicle.engine_runs() {
                return Err(Refusal::EngineRuns);
            }
            if session.progress.gauge_fitted {
                return Err(Refusal::GaugeFitted);
            }
            session.progress.ending = Some(*ending);
            Ok(vec![Event::HandedOver { ending: *ending }, minutes(times.hand_over)])
        }
        _ => Ok(Vec::new()),
    }
}
