//! Events as text: mostly one line, a few where a reader or a document shows a list.

use super::amounts::{minutes, money, with_capital};
use super::catalogue::Words;
use super::place::{diagnosis, fault, place};
use super::{
    care_words, code_words, instrument_words, job_words, reader_words, refusal_words,
    running_words, sense_words,
};
use super::{oil_words, service_words};
use crate::session::event::Event;
use crate::session::setup::Briefing;
use crate::session::shelf::PartGrade;
use crate::session::step::{Ending, Section};
use crate::units::{Minutes, Money};
use crate::vehicle::spec::Id;

/// What an event tells the apprentice.
#[must_use]
#[expect(clippy::too_many_lines, reason = "one short arm for each kind of event")]
pub fn line(event: &Event, words: &Words, briefing: &Briefing) -> String {
    let plain = |key: &str| words.say(key, &[]);
    let with_place =
        |key: &str, id: &Id| with_capital(&words.say(key, &[("place", place(id, words).into())]));
    let of_money = |amount: Money| money(amount, &briefing.prices.currency, words);
    match event {
        Event::Spent { minutes, money } => {
            spent(*minutes, *money, &briefing.prices.currency, words)
        }
        Event::Refused { reason } => refusal_words::refused(reason, words),
        Event::NoAnswer { reason } => refusal_words::no_answer(*reason, words),
        Event::Caution { hazard } => care_words::caution(*hazard, words),
        Event::AgainstCare { breach } => care_words::against_care(breach, words),
        Event::JobSheetShown => job_words::job_sheet(briefing, words),
        Event::Answered { topic } => job_words::answer(*topic, briefing, words),
        Event::Consulted { topic } => service_words::information(*topic, briefing, words),
        Event::Seen { place, sight } => sense_words::seen(place, *sight, words),
        Event::Heard { valve, current_on, click } => {
            sense_words::heard(valve, *current_on, *click, words)
        }
        Event::Removed { part } => with_place("event-removed", part),
        Event::Refitted { part } => with_place("event-refitted", part),
        Event::SealTorn { valve } => with_place("event-seal-torn", valve),
        Event::SealLeaks { valve } => with_place("event-seal-leaks", valve),
        Event::Unplugged { connector } => with_place("event-unplugged", connector),
        Event::Plugged { connector } => with_place("event-plugged", connector),
        Event::KeyTurned { position, engine_lamp, oil_lamp } => {
            running_words::key_turned(*position, *engine_lamp, *oil_lamp, words)
        }
        Event::Idles { quality } => plain(running_words::idle_key(*quality)),
        Event::Reading { function, red, black, display, .. } => {
            instrument_words::reading(*function, red, black, *display, words)
        }
        Event::Watched { place, function, least, most, jumped, .. } => {
            let (function, least, most, jumped) = (*function, *least, *most, *jumped);
            let watched = instrument_words::Watched { place, function, least, most, jumped };
            instrument_words::watched(&watched, words)
        }
        Event::LampGlows { tip, clip, glow } => {
            instrument_words::lamp_glows(tip, clip, *glow, words)
        }
        Event::Clamped { wire, display, .. } => instrument_words::clamped(wire, *display, words),
        Event::ClampZeroed => plain("event-clamp-zeroed"),
        Event::Captured { valve, capture } => instrument_words::captured(valve, capture, words),
        Event::MeterFuseReplaced => plain("event-meter-fuse-replaced"),
        Event::MeterFuseBlew => plain("event-meter-fuse-blew"),
        Event::LeadsZeroed => plain("event-leads-zeroed"),
        Event::LeadFuseBlew => plain("event-lead-fuse-blew"),
        Event::Commanded { valve, on: true } => with_place("event-commanded-on", valve),
        Event::Commanded { valve, on: false } => with_place("event-commanded-off", valve),
        Event::Codes { stored, pending, permanent, lamp, complete } => code_words::codes(
            &code_words::CodeLists { stored, pending, permanent, lamp: *lamp, complete },
            briefing,
            words,
        ),
        Event::FreezeFrame { frame } => running_words::freeze_frame(frame.as_ref(), words),
        Event::LiveData { frame, cams } => running_words::live_data(frame, cams, words),
        Event::LiveItems { .. }
        | Event::Readiness { .. }
        | Event::TestResults { .. }
        | Event::VehicleInformation { .. } => reader_words::shown(event, words),
        Event::CodesCleared => plain("event-codes-cleared"),
        Event::Driven { route, engine_lamp, oil_lamp, quality, cams, decided, stopped_after } => {
            let drive = running_words::Drive {
                route,
                engine_lamp: *engine_lamp,
                oil_lamp: *oil_lamp,
                quality: *quality,
                cams,
                decided,
                stopped_after: *stopped_after,
            };
            running_words::driven(&drive, words)
        }
        Event::Suspected { fault: name, percent } => words.say(
            "event-suspected",
            &[("fault", fault(name, words).into()), ("percent", (*percent).into())],
        ),
        Event::Noted => plain("event-noted"),
        Event::Predicted => plain("event-predicted"),
        Event::PredictionChecked { other_quantity: true, .. } => plain("event-prediction-other"),
        Event::PredictionChecked { met: true, .. } => plain("event-prediction-met"),
        Event::PredictionChecked { met: false, .. } => plain("event-prediction-missed"),
        Event::SignChecked { met: true } => plain("event-sign-met"),
        Event::SignChecked { met: false } => plain("event-sign-missed"),
        Event::Committed { fault } => {
            words.say("event-committed", &[("fault", diagnosis(fault.as_ref(), words).into())])
        }
        Event::HintAsked { .. } => plain("event-hint-asked"),
        Event::Approved => plain("event-approved"),
        Event::ApprovedUpTo { money: limit } => {
            words.say("event-approved-up-to", &[("money", of_money(*limit).into())])
        }
        // What was done beyond the limit leaves nothing of it.
        Event::MoreDeclined { left } => {
            words.say("event-more-declined", &[("left", of_money(Money(left.0.max(0))).into())])
        }
        Event::Waited { minutes: time } => {
            words.say("event-waited", &[("time", minutes(*time, words).into())])
        }
        Event::Fitted { valve, part_number } => with_capital(&words.say(
            match briefing.offer(part_number).and_then(|offer| offer.grade) {
                Some(PartGrade::Pattern) => "event-fitted-pattern",
                Some(PartGrade::Used) => "event-fitted-used",
                None => "event-fitted",
            },
            &[("place", place(valve, words).into()), ("number", part_number.as_str().into())],
        )),
        Event::Cleaned { valve } => with_place("event-cleaned", valve),
        Event::Mended { element } => with_place("event-mended", element),
        Event::Replaced { element } => with_place("event-replaced", element),
        Event::Written { section } => plain(written_key(*section)),
        Event::CodeReported { code } => {
            words.say("event-code-reported", &[("code", code_words::code(*code, words).into())])
        }
        Event::HandedOver { ending } => plain(ending_key(*ending)),
        Event::OilSeen { .. }
        | Event::OilFilled { .. }
        | Event::OilChanged { .. }
        | Event::GaugeFitted
        | Event::GaugeRemoved
        | Event::GaugeRead { .. } => oil_words::told(event, words),
    }
}

fn spent(time: Minutes, amount: Money, currency: &str, words: &Words) -> String {
    let (time, amount) = (minutes(time, words), money(amount, currency, words));
    words.say("event-spent", &[("time", time.into()), ("money", amount.into())])
}

const fn written_key(section: Section) -> &'static str {
    match section {
        Section::Concern => "event-written-concern",
        Section::Cause => "event-written-cause",
        Section::Correction => "event-written-correction",
    }
}

const fn ending_key(ending: Ending) -> &'static str {
    match ending {
        Ending::Repaired => "event-handed-over-repaired",
        Ending::NoFaultFound => "event-handed-over-no-fault",
        Ending::Referred => "event-handed-over-referred",
        Ending::Unsafe => "event-handed-over-unsafe",
        Ending::Declined => "event-handed-over-declined",
    }
}
