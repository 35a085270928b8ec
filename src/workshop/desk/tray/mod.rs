//! The tray of instruments behind the panels. What can be chosen comes from the words that a typed line can go on
//! with, and what is taken is such a line: so the tray knows no rule of the job that the bench does not know.

mod contacts;
mod last;

use crate::instruments::multimeter::MeterFunction;
use crate::session::attempt::Session;
use crate::session::setup::Briefing;
use crate::vehicle::spec::Id;
use crate::wording::amounts::{minutes, money};
use crate::wording::catalogue::Words;
use crate::wording::step_parser::{complete, parse};
use crate::wording::{place, refusal_words, step_words};
use crate::workshop::view::tray::{
    End, EndView, MeterSetting, Named, ReadyView, Tool, TrayAction, TrayView, WhichView,
};

/// The tray as it stands at the beginning, or after the steps that a session has.
#[must_use]
pub fn tray(session: &Session, words: &Words) -> TrayView {
    let briefing = session.briefing();
    let mut tray = TrayView {
        is_out: false,
        tool: Tool::default(),
        ends: End::ALL.map(|end| (end, end_view(end, briefing, words))).into(),
        held: None,
        which: None,
        meter: MeterSetting { function: MeterFunction::Volts, from_front: false },
        ready: ReadyView::default(),
        reading: None,
    };
    follow(&mut tray, briefing, Some(session), words);
    tray
}

/// The words that a line can go on with where an end is named.
const fn line_before(end: End) -> &'static str {
    match end {
        End::Red | End::Black => "measure volts ",
    }
}

fn end_view(end: End, briefing: &Briefing, words: &Words) -> EndView {
    let named = |word: String| named(&Id::from(word.as_str()), words);
    let places = complete(line_before(end), briefing).into_iter().map(named).collect();
    EndView { places, ..EndView::default() }
}

fn named(id: &Id, words: &Words) -> Named {
    Named { id: id.clone(), name: place::place(id, words) }
}

/// Does what is wanted of the tray. While a step is being taken there is no session, and what hangs on it stays as it
/// was.
pub fn act(
    tray: &mut TrayView,
    wanted: TrayAction,
    briefing: &Briefing,
    session: Option<&Session>,
    words: &Words,
) {
    match wanted {
        TrayAction::Show(is_out) => tray.is_out = is_out,
        TrayAction::Take(tool) => {
            tray.tool = tool;
            (tray.held, tray.which) = (None, None);
        }
        TrayAction::Hold(end) => (tray.held, tray.which) = (end, None),
        TrayAction::Put(end, id) => put(tray, end, &id),
        TrayAction::PutOn(end, thing) => {
            let places = contacts::places_on(&thing, end, tray, &briefing.vehicle);
            match places.as_slice() {
                [] => return,
                [only] => put(tray, end, &only.id.clone()),
                _ => {
                    let thing = named(&thing, words);
                    (tray.held, tray.which) = (Some(end), Some(WhichView { end, thing, places }));
                }
            }
        }
        TrayAction::Turn(function) => tray.meter.function = function,
        TrayAction::FromFront(from_front) => tray.meter.from_front = from_front,
    }
    follow(tray, briefing, session, words);
}

/// Puts an end on one of its places and goes on to the next end that is nowhere.
fn put(tray: &mut TrayView, end: End, id: &Id) {
    if let Some(view) = tray.ends.get_mut(&end)
        && let Some(at) = view.places.iter().position(|place| place.id == *id)
    {
        view.at = Some(at);
    }
    let is_nowhere = |end: &&End| tray.ends.get(end).is_some_and(|view| view.at.is_none());
    let was_held = tray.held == Some(end);
    let next = tray.tool.ends().iter().find(is_nowhere).copied();
    tray.held = if was_held { next } else { None };
    tray.which = None;
}

/// Brings the tray to where the ends are and to what was taken.
pub fn follow(tray: &mut TrayView, briefing: &Briefing, session: Option<&Session>, words: &Words) {
    let step = line(tray).and_then(|line| parse(&line, briefing).ok().flatten());
    tray.ready.line = step.as_ref().map(step_words::line);
    let Some(session) = session else {
        tray.ready.cost = None;
        return;
    };
    let prices = &briefing.prices;
    tray.ready.cost = step.and_then(|step| session.book_price(&step)).map(|price| {
        let time = minutes(price.minutes, words);
        if price.money.0 == 0 {
            words.say("tray-takes", &[("time", time.into())])
        } else {
            let money = money(price.money, &prices.currency, words);
            words.say("tray-takes-and-costs", &[("time", time.into()), ("money", money.into())])
        }
    });
    tray.ready.predicted = last::open_prediction(session.log(), true, words);
    tray.reading = last::reading(session.log(), tray, briefing, words);
    let sighted = session.vehicle_in_sight();
    for end in tray.ends.values_mut() {
        let point = end.place().and_then(|place| briefing.vehicle.test_point(&place.id));
        let obstacle = point.and_then(|point| sighted.assembly().obstacle_to_probing(point));
        end.blocked = obstacle.map(|obstacle| refusal_words::obstacle(&obstacle, words));
    }
}

/// The line of the tool in hand; nothing while one of its ends is nowhere.
fn line(tray: &TrayView) -> Option<String> {
    let at = |end: End| Some(tray.ends.get(&end)?.place()?.id.as_str());
    match tray.tool {
        Tool::Meter => {
            let function = step_words::meter_function(tray.meter.function);
            let front = if tray.meter.from_front { " from-front" } else { "" };
            Some(format!("measure {function} {} {}{front}", at(End::Red)?, at(End::Black)?))
        }
    }
}
