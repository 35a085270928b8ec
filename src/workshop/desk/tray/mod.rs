//! The tray of instruments behind the panels. What can be chosen comes from the words that a typed line can go on
//! with, and what is taken is such a line: so the tray knows no rule of the job that the bench does not know.

mod contacts;
mod counter;
mod last;
mod tables;

use crate::instruments::multimeter::MeterFunction;
use crate::instruments::scope::Signal;
use crate::session::attempt::{Session, Till};
use crate::session::setup::Briefing;
use crate::session::step::Step;
use crate::session::toolbox::Tool as Kept;
use crate::vehicle::spec::Id;
use crate::wording::amounts::{minutes, money};
use crate::wording::catalogue::Words;
use crate::wording::step_parser::{complete, parse};
use crate::wording::{place, refusal_words, step_words};
use crate::workshop::view::counter::CounterView;
use crate::workshop::view::tray::{
    End, EndView, GaugeSetting, MeterSetting, Named, PowerSetting, ReadyView, Request, Tool,
    TrayAction, TrayView, WhichView,
};

/// The tray as it stands at the beginning, or after the steps that a session has.
#[must_use]
pub fn tray(session: &Session, words: &Words) -> TrayView {
    let briefing = session.briefing();
    let tools = Tool::ALL.into_iter().filter(|tool| is_there(*tool, briefing)).collect::<Vec<_>>();
    let mut tray = TrayView {
        is_out: false,
        tool: tools.first().copied().unwrap_or_default(),
        tools,
        ends: End::ALL.map(|end| (end, places_after(line_before(end), briefing, words))).into(),
        held: None,
        which: None,
        meter: MeterSetting { function: MeterFunction::Volts, from_front: false },
        power: PowerSetting { seconds: 2, reversed: false },
        signal: Signal::CoilCurrent,
        gauge: GaugeSetting { rpm: None, warm: false },
        request: Request::default(),
        roads: places_after("drive ", briefing, words),
        counter: CounterView::default(),
        ready: ReadyView::default(),
        reading: None,
    };
    follow(&mut tray, briefing, Some(session), words);
    tray
}

/// Whether the case has a tool.
fn is_there(tool: Tool, briefing: &Briefing) -> bool {
    let kept = match tool {
        Tool::Meter => Kept::Multimeter,
        Tool::Lamp => Kept::TestLamp,
        Tool::Clamp => Kept::CurrentProbe,
        Tool::Power => Kept::PowerLead,
        Tool::Scope => Kept::Scope,
        Tool::Gauge => Kept::PressureGauge,
        Tool::Reader | Tool::Dipstick | Tool::Drive | Tool::Counter => return true,
    };
    briefing.tools.has(kept)
}

/// The words that a line can go on with where an end is named.
const fn line_before(end: End) -> &'static str {
    match end {
        End::Red | End::Black => "measure volts ",
        End::Hand => "wiggle ",
        End::Tip | End::Clip => "lamp ",
        End::Jaws => "clamp ",
        End::PowerPlug => "power ",
        End::ScopeProbe => "scope current ",
    }
}

/// The names that a line can go on with, none chosen.
fn places_after(line: &str, briefing: &Briefing, words: &Words) -> EndView {
    let named = |word: String| named(&Id::from(word.as_str()), words);
    let places = complete(line, briefing).into_iter().map(named).collect();
    EndView { places, ..EndView::default() }
}

fn named(id: &Id, words: &Words) -> Named {
    Named { id: id.clone(), name: place::place(id, words) }
}

/// Puts a tray that was laid out anew, in another language, to where the one before it was.
pub fn carry_over(tray: &mut TrayView, before: TrayView) {
    let find = |fresh: &EndView, old: &EndView| {
        let id = &old.place()?.id;
        fresh.places.iter().position(|place| place.id == *id)
    };
    for (end, old) in &before.ends {
        if let Some(fresh) = tray.ends.get_mut(end) {
            fresh.at = find(fresh, old);
        }
    }
    tray.roads.at = find(&tray.roads, &before.roads);
    tray.counter = CounterView { jobs: Vec::new(), ..before.counter };
    (tray.is_out, tray.tool, tray.held) = (before.is_out, before.tool, before.held);
    (tray.meter, tray.power, tray.signal) = (before.meter, before.power, before.signal);
    (tray.gauge, tray.request) = (before.gauge, before.request);
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
        TrayAction::Lift(end) => {
            if let Some(view) = tray.ends.get_mut(&end) {
                view.at = None;
            }
            (tray.held, tray.which) = (None, None);
        }
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
        TrayAction::SetPower(power) => tray.power = power,
        TrayAction::Watch(signal) => tray.signal = signal,
        TrayAction::SetGauge(gauge) => tray.gauge = gauge,
        TrayAction::Ask(request) => tray.request = request,
        TrayAction::Road(road) => {
            tray.roads.at = tray.roads.places.iter().position(|place| place.id == road);
        }
        TrayAction::SetTrade(trade) => {
            tray.counter = CounterView { trade, ..CounterView::default() };
        }
        TrayAction::ChooseJob(line) => tray.counter.chosen = Some(line),
    }
    follow(tray, briefing, session, words);
}

/// Brings the tray to where it was for a step that was typed, so that it shows what that step showed.
pub fn adopt(tray: &mut TrayView, step: &Step) {
    let ends: Vec<(End, &Id)> = match step {
        Step::Measure { function, red, black }
        | Step::MeasureFromFront { function, red, black } => {
            let from_front = matches!(step, Step::MeasureFromFront { .. });
            tray.meter = MeterSetting { function: *function, from_front };
            if let Some(hand) = tray.ends.get_mut(&End::Hand) {
                hand.at = None;
            }
            vec![(End::Red, red), (End::Black, black)]
        }
        Step::Wiggle { place, function, red, black } => {
            tray.meter = MeterSetting { function: *function, from_front: false };
            vec![(End::Red, red), (End::Black, black), (End::Hand, place)]
        }
        Step::TestLamp { tip, clip } => vec![(End::Tip, tip), (End::Clip, clip)],
        Step::Clamp { wire } => vec![(End::Jaws, wire)],
        Step::Power { valve, seconds, reversed } => {
            tray.power = PowerSetting { seconds: *seconds, reversed: *reversed };
            vec![(End::PowerPlug, valve)]
        }
        Step::Scope { signal, valve } => {
            tray.signal = *signal;
            vec![(End::ScopeProbe, valve)]
        }
        Step::ReadGauge { rpm, warm } => {
            tray.gauge = GaugeSetting { rpm: *rpm, warm: *warm };
            Vec::new()
        }
        Step::Drive { route, .. } => {
            tray.roads.at = tray.roads.places.iter().position(|place| place.id == *route);
            Vec::new()
        }
        _ => {
            let asks = Request::ALL.into_iter().find(|it| last::is_use(step, Tool::Reader, *it));
            tray.request = asks.unwrap_or(tray.request);
            Vec::new()
        }
    };
    for (end, id) in ends {
        if let Some(view) = tray.ends.get_mut(&end) {
            view.at = view.places.iter().position(|place| place.id == *id);
        }
    }
}

/// Puts an end on one of its places and goes on to the next end that is nowhere.
fn put(tray: &mut TrayView, end: End, id: &Id) {
    if let Some(view) = tray.ends.get_mut(&end)
        && let Some(at) = view.places.iter().position(|place| place.id == *id)
    {
        view.at = Some(at);
    }
    let is_nowhere =
        |end: &&End| !end.is_optional() && tray.ends.get(end).is_some_and(|view| view.at.is_none());
    let was_held = tray.held == Some(end);
    let next = tray.tool.ends().iter().find(is_nowhere).copied();
    tray.held = if was_held { next } else { None };
    tray.which = None;
}

/// Brings the tray to where the ends are and to what was taken.
pub fn follow(tray: &mut TrayView, briefing: &Briefing, session: Option<&Session>, words: &Words) {
    tray.counter.jobs = counter::jobs(tray.counter.trade, briefing, session, words);
    let step = line(tray).and_then(|line| parse(&line, briefing).ok().flatten());
    tray.ready.line = step.as_ref().map(step_words::line);
    let Some(session) = session else {
        tray.ready.cost = None;
        return;
    };
    tray.ready.cost = step
        .and_then(|step| session.book_price(&step))
        .map(|price| price_words(price, &briefing.prices.currency, words));
    let shows_number = matches!(tray.tool, Tool::Meter | Tool::Clamp | Tool::Gauge);
    tray.ready.predicted = last::open_prediction(session.log(), shows_number, words);
    tray.reading = last::reading(session.log(), tray, briefing, words);
    let sighted = session.vehicle_in_sight();
    for end in tray.ends.values_mut() {
        let point = end.place().and_then(|place| briefing.vehicle.test_point(&place.id));
        let obstacle = point.and_then(|point| sighted.assembly().obstacle_to_probing(point));
        end.blocked = obstacle.map(|obstacle| refusal_words::obstacle(&obstacle, words));
    }
}

/// What something takes, in words.
fn price_words(price: Till, currency: &str, words: &Words) -> String {
    let time = minutes(price.minutes, words);
    if price.money.0 == 0 {
        words.say("tray-takes", &[("time", time.into())])
    } else {
        let money = money(price.money, currency, words);
        words.say("tray-takes-and-costs", &[("time", time.into()), ("money", money.into())])
    }
}

/// The line of the tool in hand; nothing while one of its ends is nowhere.
fn line(tray: &TrayView) -> Option<String> {
    let at = |end: End| Some(tray.ends.get(&end)?.place()?.id.as_str());
    Some(match tray.tool {
        Tool::Meter => {
            let function = step_words::meter_function(tray.meter.function);
            if let Some(hand) = at(End::Hand) {
                return Some(format!(
                    "wiggle {hand} {function} {} {}",
                    at(End::Red)?,
                    at(End::Black)?
                ));
            }
            let front = if tray.meter.from_front { " from-front" } else { "" };
            format!("measure {function} {} {}{front}", at(End::Red)?, at(End::Black)?)
        }
        Tool::Lamp => format!("lamp {} {}", at(End::Tip)?, at(End::Clip)?),
        Tool::Clamp => format!("clamp {}", at(End::Jaws)?),
        Tool::Power => {
            let reversed = if tray.power.reversed { " reversed" } else { "" };
            format!("power {} for {} s{reversed}", at(End::PowerPlug)?, tray.power.seconds)
        }
        Tool::Scope => {
            let signal = match tray.signal {
                Signal::CoilCurrent => "current",
                Signal::DriverPin => "pin",
            };
            format!("scope {signal} {}", at(End::ScopeProbe)?)
        }
        Tool::Reader => match tray.request {
            Request::Codes => "read codes",
            Request::FreezeFrame => "read freeze-frame",
            Request::Readiness => "read readiness",
            Request::LiveData => "read live-data",
            Request::TestResults => "read test-results",
            Request::Vehicle => "read vehicle-information",
        }
        .to_owned(),
        Tool::Gauge => {
            let speed = tray.gauge.rpm.map_or_else(|| "idle".to_owned(), |rpm| rpm.to_string());
            let warm = if tray.gauge.warm { " warm" } else { "" };
            format!("gauge {speed}{warm}")
        }
        Tool::Dipstick => "dipstick".to_owned(),
        Tool::Drive => format!("drive {}", tray.roads.place()?.id),
        Tool::Counter => tray.counter.chosen.clone()?,
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::scenario::deal::deal;
    use crate::scenario::load::load;
    use crate::workshop::view::counter::Trade;
    use std::path::Path;
    use std::sync::Arc;

    fn begun(scenario: &str) -> Session {
        let case = deal(&Arc::new(load(Path::new(scenario)).unwrap()), 1).unwrap();
        Session::begin_without_history(case.briefing, case.hidden).unwrap()
    }

    #[test]
    fn a_tool_that_the_case_leaves_out_does_not_lie_on_the_tray() {
        let words = Words::for_language("en-GB");
        let whole = tray(&begun("coal-wharf"), &words);
        assert_eq!((whole.tool, whole.tools), (Tool::Meter, Tool::ALL.to_vec()));
        let lean = tray(&begun("lime-kiln"), &words);
        let there = [Tool::Reader, Tool::Gauge, Tool::Dipstick, Tool::Drive, Tool::Counter];
        assert_eq!((lean.tool, lean.tools), (Tool::Reader, there.to_vec()));
    }

    /// What a part costs at the counter is what fitting it puts into the till, its grade and its wait are said.
    #[test]
    fn a_part_of_another_grade_is_sold_as_what_it_is() {
        let (session, words) = (begun("corn-exchange"), Words::for_language("en-GB"));
        let jobs = counter::jobs(Trade::Parts, session.briefing(), Some(&session), &words);
        let of = |line: &str| jobs.iter().find(|job| job.line == line).unwrap();
        let used = of("fit intake-valve breakers-4470");
        assert!(used.name.contains("(used)"), "{}", used.name);
        let price = used.price.as_ref().unwrap();
        assert!(price.contains("19.33") && price.contains("20 min"), "{price}");
        let pattern = of("fit intake-valve ow-4470");
        assert!(pattern.name.contains("(pattern part)"), "{}", pattern.name);
        assert!(pattern.price.as_ref().unwrap().contains("46.50"), "{:?}", pattern.price);
        let makers = of("fit intake-valve hd-4470-1");
        assert!(!makers.name.contains('('), "{}", makers.name);
        assert!(makers.price.as_ref().unwrap().contains("180 min"), "{:?}", makers.price);
    }
}
