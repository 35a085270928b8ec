//! What each step does. One file a group of steps.

mod access;
mod book;
mod gauge;
mod instruments;
mod look;
mod measure;
mod module;
mod reason;
mod repair;
mod run;

pub(super) use run::{Driven, on_the_road};

use super::attempt::Session;
use super::event::{Event, Refusal};
use super::step::Step;
use crate::units::{Minutes, Money};
use crate::vehicle::error::VehicleError;

/// Events of a step, or the reason why it is not possible.
pub(super) type Outcome = Result<Result<Vec<Event>, Refusal>, VehicleError>;

/// Takes a step on a session.
///
/// # Errors
/// [`VehicleError`] when the wiring cannot be solved.
pub(super) fn take(session: &mut Session, step: &Step) -> Result<Vec<Event>, VehicleError> {
    let outcome = match step {
        Step::ReadJobSheet | Step::AskCustomer { .. } | Step::Consult { .. } => {
            Ok(Ok(look::ask(session, step)))
        }
        Step::Look { place } => Ok(look::look(session, place)),
        Step::Dipstick => Ok(look::dipstick(session)),
        Step::Remove { .. } | Step::Refit { .. } | Step::Unplug { .. } | Step::Plug { .. } => {
            access::handle(session, step)
        }
        Step::Key { position } => run::turn_key(session, *position),
        Step::Drive { route, stop_after } => run::drive(session, route, *stop_after),
        Step::Measure { function, red, black } => measure::read(session, *function, red, black),
        Step::MeasureFromFront { function, red, black } => {
            measure::read_from_front(session, *function, red, black)
        }
        Step::Wiggle { place, function, red, black } => {
            measure::wiggle(session, place, *function, red, black)
        }
        Step::TestLamp { tip, clip } => instruments::lamp(session, tip, clip),
        Step::Clamp { wire } => instruments::clamp(session, wire),
        Step::ZeroClamp => Ok(Ok(instruments::zero_clamp(session))),
        Step::Scope { signal, valve } => instruments::scope(session, *signal, valve),
        Step::ReplaceMeterFuse => Ok(Ok(measure::replace_meter_fuse(session))),
        Step::ZeroLeads => Ok(Ok(measure::zero_leads(session))),
        Step::Power { valve, seconds, reversed } => {
            measure::power(session, valve, *seconds, *reversed)
        }
        Step::Command { valve, on } => module::command(session, valve, *on),
        Step::FitGauge => Ok(gauge::screw(session, true)),
        Step::RemoveGauge => Ok(gauge::screw(session, false)),
        Step::ReadGauge { rpm, warm } => gauge::read(session, *rpm, *warm),
        Step::ReadCodes
        | Step::ReadFreezeFrame
        | Step::ReadLiveData
        | Step::ReadLiveItems { .. }
        | Step::ReadReadiness
        | Step::ReadTestResults
        | Step::ReadVehicleInformation
        | Step::ClearCodes => module::request(session, step),
        Step::Suspect { .. }
        | Step::Predict { .. }
        | Step::PredictSign { .. }
        | Step::Note { .. }
        | Step::Commit { .. }
        | Step::AskHint { .. } => Ok(reason::note(session, step)),
        Step::Replace { element } => repair::replace(session, element),
        Step::AskApproval
        | Step::Fit { .. }
        | Step::Clean { .. }
        | Step::Mend { .. }
        | Step::TopUpOil
        | Step::ChangeOil { .. } => Ok(repair::work(session, step)),
        Step::Write { .. } | Step::ReportCode { .. } | Step::HandOver { .. } => {
            Ok(repair::finish(session, step))
        }
    };
    let mut events = outcome?.unwrap_or_else(|reason| vec![Event::Refused { reason }]);
    reason::compare(session, &mut events);
    Ok(events)
}

/// Time alone.
fn minutes(minutes: Minutes) -> Event {
    Event::Spent { minutes, money: Money(0) }
}

/// Time and things.
fn spent(minutes: Minutes, money: Money) -> Event {
    Event::Spent { minutes, money }
}
