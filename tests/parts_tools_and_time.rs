//! Parts of other grades, tools that a case leaves out, and its time: what an apprentice, an expert and a virtual
//! apprentice make of them.
#![expect(clippy::unwrap_used, reason = "a test fails by panicking")]

use faultwright::assessment::debrief::debrief;
use faultwright::assessment::mark::About;
use faultwright::assessment::rubric::MarkCategory;
use faultwright::faults::{Fault, FaultKind, FaultName, apply, worn_kinds};
use faultwright::instruments::multimeter::{Display, Multimeter};
use faultwright::reasoning::belief::Belief;
use faultwright::reasoning::probe::probes;
use faultwright::reasoning::remedy::Remedy;
use faultwright::reasoning::world::Worlds;
use faultwright::scenario::draw::{any_case, draw};
use faultwright::scenario::load::{Loaded, load};
use faultwright::scenario::suppose::suppositions;
use faultwright::session::attempt::Session;
use faultwright::session::event::{Event, Refusal, Sight};
use faultwright::session::setup::{Briefing, Hidden};
use faultwright::session::step::{Ending, Step};
use faultwright::session::toolbox::{TimeLimit, Tool, Tools};
use faultwright::units::{Minutes, Money};
use faultwright::vehicle::condition::Condition;
use faultwright::vehicle::spec::Id;
use faultwright::virtual_apprentices::policy::Policy;
use faultwright::virtual_apprentices::work::work;
use faultwright::wording::step_parser::parse;
use std::path::Path;
use std::sync::{Arc, OnceLock};

fn scenario() -> &'static Arc<Loaded> {
    static SCENARIO: OnceLock<Arc<Loaded>> = OnceLock::new();
    SCENARIO.get_or_init(|| Arc::new(load(Path::new("corn-exchange")).unwrap()))
}

fn briefing() -> Arc<Briefing> {
    Arc::new(scenario().briefing())
}

fn shorted() -> Fault {
    let name = FaultName { kind: FaultKind::ShortedTurns, place: Id::from("intake-valve") };
    Fault { name, severity: 0.6 }
}

/// A vehicle with a shorted winding, which the customer has driven.
fn begin(briefing: &Arc<Briefing>) -> Session {
    let mut condition = Condition::sound(&briefing.vehicle);
    assert!(apply(&shorted(), &briefing.vehicle, &mut condition));
    let (faults, meter) = (vec![shorted()], Multimeter::ideal());
    let hidden = Hidden { condition, faults, old_codes: Vec::new(), meter, seed: 0 };
    Session::begin(Arc::clone(briefing), hidden).unwrap()
}

fn step(line: &str, briefing: &Briefing) -> Step {
    parse(line, briefing).unwrap().unwrap()
}

/// Takes steps written one a line, none of which may be refused; what followed from the last.
#[track_caller]
fn take(session: &mut Session, lines: &str) -> Vec<Event> {
    let mut last = Vec::new();
    for line in lines.lines() {
        let step = step(line, &Arc::clone(session.briefing()));
        last = session.take(&step).unwrap();
        assert!(!last.iter().any(|e| matches!(e, Event::Refused { .. })), "{line}: {last:?}");
    }
    last
}

fn refusal(events: &[Event]) -> Option<&Refusal> {
    events.iter().find_map(|event| match event {
        Event::Refused { reason } => Some(reason),
        _ => None,
    })
}

const TO_THE_VALVE: &str = "remove engine-cover\nunplug intake-connector\nremove intake-valve";
const ROAD: &str = "refit intake-valve with new-seal\nplug intake-connector\nrefit engine-cover\n\
    key on\nclear codes\nkey off\ndrive proving-drive\nkey on\nread codes";

/// Fits a part, looks at it, and reads its winding and, after a road, the codes.
fn fitted(number: &str) -> (Vec<Event>, f64, Vec<Event>) {
    let mut session = begin(&briefing());
    take(&mut session, TO_THE_VALVE);
    take(&mut session, &format!("fit intake-valve {number}"));
    let seen = take(&mut session, "look intake-valve");
    let read =
        take(&mut session, "zero leads\nmeasure ohms intake-valve-feed intake-valve-control");
    let ohms = read.iter().find_map(|event| match event {
        Event::Reading { display: Display::Value { value, .. }, .. } => Some(*value),
        _ => None,
    });
    (seen, ohms.unwrap(), take(&mut session, ROAD))
}

fn has_codes(events: &[Event]) -> bool {
    events.iter().any(|event| match event {
        Event::Codes { stored, pending, .. } => !stored.is_empty() || !pending.is_empty(),
        _ => false,
    })
}

/// Closed form: the nominal 9.3 ohm of the maker's winding, 1.09 times, by the temperature coefficient of annealed copper at
/// 20 °C, 0.003 93 per kelvin (IEC 60028), in a workshop of 17 °C; the meter shows a tenth.
#[test]
fn verif_a_pattern_part_reads_as_it_is_wound_and_works() {
    let (seen, ohms, codes) = fitted("ow-4470");
    let expected = 9.3 * 1.09 * (1.0 + 0.003_93 * (17.0 - 20.0));
    assert!((ohms - expected).abs() < 0.15, "{ohms} {expected}");
    let part = briefing().vehicle.valve_part(&Id::from("hd-4470-1")).unwrap().clone();
    assert!(ohms > part.ohms_most, "outside the book's limits, {ohms}");
    assert!(seen.iter().any(|e| matches!(e, Event::Seen { sight: Sight::Sound, .. })), "{seen:?}");
    assert!(!has_codes(&codes), "{codes:?}");
}

#[test]
fn verif_a_worn_part_shows_on_the_bench_and_on_the_road() {
    let (seen, _, codes) = fitted("breakers-4470");
    let sights: Vec<Sight> = seen
        .iter()
        .filter_map(|event| match event {
            Event::Seen { sight, .. } => Some(*sight),
            _ => None,
        })
        .collect();
    assert_eq!(sights, [Sight::Sludge, Sight::SpoolSticks]);
    assert!(has_codes(&codes), "{codes:?}");
}

/// What is paid and how long it takes: price, and the bay for as long as the part takes to come; nobody works meanwhile.
#[test]
fn verif_a_part_costs_its_price_and_the_bay_while_it_comes() {
    let briefing = briefing();
    // Three hours at 16.00, twenty minutes at 16.00, none.
    for (number, price, wait, rent) in [
        ("hd-4470-1", 74_20, 180, 48_00),
        ("breakers-4470", 14_00, 20, 5_33),
        ("ow-4470", 46_50, 0, 0),
    ] {
        let mut session = begin(&briefing);
        take(&mut session, TO_THE_VALVE);
        let line = format!("fit intake-valve {number}");
        let told = session.book_price(&step(&line, &briefing)).unwrap();
        let before = session.till();
        let events = take(&mut session, &line);
        let after = session.till();
        assert_eq!(after.money, before.money + Money(price + rent), "{number}");
        assert_eq!(after.minutes, before.minutes + briefing.prices.minutes.fetch_part, "{number}");
        assert_eq!((told.minutes, told.money), (Minutes(10), Money(price + rent)), "{number}");
        let waited = events.iter().find_map(|event| match event {
            Event::Waited { minutes } => Some(*minutes),
            _ => None,
        });
        assert_eq!(waited.unwrap_or_default(), Minutes(wait), "{number}");
    }
}

/// A part that stands for another fits where that fits, and nowhere else.
#[test]
fn limit_a_part_that_nobody_sells_is_refused() {
    let mut session = begin(&briefing());
    take(&mut session, TO_THE_VALVE);
    let number = Id::from("hd-9999");
    let fit = Step::Fit { valve: Id::from("intake-valve"), part_number: number.clone() };
    let before = session.till();
    assert_eq!(refusal(&session.take(&fit).unwrap()), Some(&Refusal::DoesNotFit(number)));
    assert_eq!(session.till(), before);
}

/// The expert renews a valve with the cheapest part that is not worn, its wait counted.
#[test]
fn verif_an_expert_takes_the_cheapest_sound_part() {
    let renewed_with = |change: &dyn Fn(&mut Briefing)| {
        let mut briefing = Briefing::clone(&briefing());
        change(&mut briefing);
        match Remedy::Renew(Id::from("intake-valve")).work(&briefing).as_slice() {
            [Step::Fit { part_number, .. }] => part_number.to_string(),
            other => panic!("{other:?}"),
        }
    };
    // 46.50 at once, against 74.20 and three hours of the bay, and 14.00 for a spool that sticks.
    assert_eq!(renewed_with(&|_| {}), "ow-4470");
    let number = || Id::from("ow-4470");
    let dearer = |money| {
        move |it: &mut Briefing| {
            it.shelf.others.get_mut(&number()).unwrap().price = Money(money);
        }
    };
    // 74.20 and 48.00 for the wait are 122.20: the same price for both leaves the maker's own.
    assert_eq!(renewed_with(&dearer(12_219)), "ow-4470");
    assert_eq!(renewed_with(&dearer(12_220)), "hd-4470-1");
    assert_eq!(renewed_with(&|it| it.shelf.others.clear()), "hd-4470-1");
}

/// What a worn part brings is wrong with the vehicle from then on: an expert would not close up over it.
#[test]
fn verif_a_worn_part_is_a_fault_to_an_expert() {
    let briefing = briefing();
    let wanted = suppositions(scenario());
    let wanted: Vec<_> =
        wanted.into_iter().filter(|it| it.faults == [shorted().name] && it.variant == 0).collect();
    let worlds = Worlds::begin(&briefing, &wanted, &|_, _| {}).unwrap();
    for (number, left) in [("breakers-4470", vec![FaultKind::StickingSpool]), ("ow-4470", vec![])] {
        let mut belief = Belief::prior(worlds.clone());
        let mut session = begin(&briefing);
        take(&mut session, &format!("{TO_THE_VALVE}\nfit intake-valve {number}"));
        for entry in session.log() {
            belief.learn(entry).unwrap();
        }
        let kinds: Vec<_> = belief.faults_left(0).iter().map(|fault| fault.kind).collect();
        assert_eq!(kinds, left, "{number}");
        let lies = session.truth().condition().valves[&Id::from("intake-valve")].clone();
        assert_eq!(worn_kinds(&lies).collect::<Vec<_>>(), left, "{number}");
    }
}

/// The marks say why the customer comes back: the part that went in was worn. One that was cleaned on the bench before the
/// road is not named, and nobody comes back.
#[test]
fn verif_the_marks_name_a_worn_part() {
    let briefing = briefing();
    let wanted = suppositions(scenario());
    let wanted: Vec<_> = wanted.into_iter().filter(|it| it.faults == [shorted().name]).collect();
    let worlds = Worlds::begin(&briefing, &wanted, &|_, _| {}).unwrap();
    for (number, then, is_worn) in [
        ("breakers-4470", "", true),
        ("breakers-4470", "clean intake-valve\n", false),
        ("ow-4470", "", false),
    ] {
        let mut session = begin(&briefing);
        take(&mut session, "commit shorted-turns intake-valve\nask approval");
        take(&mut session, &format!("{TO_THE_VALVE}\nfit intake-valve {number}\n{then}{ROAD}"));
        take(&mut session, "key off\nhand over");
        let (rubric, truth) = (&scenario().scenario.rubric, vec![shorted()]);
        let judged = debrief(&session, truth, worlds.clone(), rubric, &|_, _| {}).unwrap();
        let mark = judged.marks.iter().find(|it| it.category == MarkCategory::Repair).unwrap();
        let place = Id::from("intake-valve");
        let fault = FaultName { kind: FaultKind::StickingSpool, place };
        let named =
            mark.remarks.iter().any(|it| it.about == About::WornPart { fault: fault.clone() });
        assert_eq!((named, judged.comes_back()), (is_worn, is_worn), "{number}: {mark:?}");
        // Cleaning a part that is not known to be dirty is work without a reason.
        // Cleaning it on the bench is good work: the part is known to be sticky.
        assert_eq!(mark.share, if is_worn { 0.0 } else { 1.0 }, "{number}{then}");
    }
}

/// A line for every tool, and none for what is always there.
const WITH_A_TOOL: [(Tool, &str); 6] = [
    (Tool::Multimeter, "measure volts battery-plus battery-minus"),
    (Tool::TestLamp, "lamp battery-plus battery-minus"),
    (Tool::CurrentProbe, "zero clamp"),
    (Tool::Scope, "scope current intake-valve"),
    (Tool::PressureGauge, "gauge fit"),
    (Tool::PowerLead, "power intake-valve for 1 s"),
];

#[test]
fn limit_a_tool_that_the_case_leaves_out_is_refused_and_costs_nothing() {
    assert_eq!(WITH_A_TOOL.map(|(tool, _)| tool), Tool::ALL);
    for (tool, line) in WITH_A_TOOL {
        let others = Tool::ALL.into_iter().filter(|other| *other != tool).collect();
        let without = Briefing { tools: Tools::Only(others), ..Briefing::clone(&briefing()) };
        let only = Tools::Only([tool].into());
        let with = Briefing { tools: only, ..Briefing::clone(&briefing()) };
        for (case, is_refused) in [(without, true), (with, false)] {
            let mut session = begin(&Arc::new(case));
            let step = step(line, &Arc::clone(session.briefing()));
            let events = session.take(&step).unwrap();
            let refused = refusal(&events) == Some(&Refusal::NoSuchTool(tool));
            assert_eq!(refused, is_refused, "{line}: {events:?}");
            if is_refused {
                assert_eq!(session.till().minutes, Minutes(0), "{line}");
            }
        }
    }
    let none = Briefing { tools: Tools::Only([].into()), ..Briefing::clone(&briefing()) };
    take(
        &mut begin(&Arc::new(none)),
        "dipstick\nlook engine-bay\nkey on\nread codes\nread live-data",
    );
}

/// The expert plans with what is there.
#[test]
fn verif_no_test_is_planned_with_a_tool_that_is_not_there() {
    let spec = &briefing().vehicle;
    let all = probes(spec, &Tools::All).len();
    let mut without = 0;
    for tool in Tool::ALL {
        let tools = Tools::Only(Tool::ALL.into_iter().filter(|other| *other != tool).collect());
        let left = probes(spec, &tools);
        let uses = |step: &Step| Tool::of(step) == Some(tool);
        assert!(!left.iter().any(|probe| probe.steps.iter().any(uses)), "{tool:?}");
        without += all - left.len();
    }
    // Each test that is left out uses one of them; eyes, stick and reader are what is left without any.
    assert_eq!(probes(spec, &Tools::Only([].into())).len(), all - without);
}

/// The step that passes the limit is finished; then nothing goes but closing up, writing and handing over. A wait is no work.
#[test]
fn verif_when_the_time_is_up_the_vehicle_can_only_be_closed_and_handed_back() {
    let limit = TimeLimit::UpTo { minutes: Minutes(30) };
    let briefing = Briefing { time_limit: limit, ..Briefing::clone(&briefing()) };
    let mut session = begin(&Arc::new(briefing));
    // Fetching a part is the step that passes the limit, after 15 minutes.
    take(&mut session, &format!("{TO_THE_VALVE}\nfit intake-valve hd-4470-1"));
    assert!(session.till().minutes < Minutes(30), "{:?}", session.till());
    take(&mut session, "clean intake-valve");
    assert!(session.till().minutes > Minutes(30), "{:?}", session.till());
    let before = session.till();
    for line in [
        "look intake-valve",
        "measure ohms intake-valve-feed intake-valve-control",
        "key on",
        "drive proving-drive",
        "ask approval",
        "dipstick",
        "read codes",
    ] {
        let step = step(line, &Arc::clone(session.briefing()));
        let events = session.take(&step).unwrap();
        assert_eq!(refusal(&events), Some(&Refusal::TimeIsUp), "{line}");
    }
    assert_eq!(session.till(), before);
    take(
        &mut session,
        "read job-sheet\nsuspect shorted-turns intake-valve 90%\n\
        commit shorted-turns intake-valve\nrefit intake-valve with new-seal\n\
        plug intake-connector\nrefit engine-cover\nwrite cause no time\nhand over referred",
    );
    assert_eq!(session.ending(), Some(Ending::Referred));
}

/// Virtual apprentices take no step for which the case has no tool, and none loses itself when the time is up.
#[test]
fn verif_virtual_apprentices_keep_to_tools_and_time() {
    let lime = Arc::new(load(Path::new("lime-kiln")).unwrap());
    let worlds =
        Worlds::begin(&Arc::new(lime.briefing()), &suppositions(&lime), &|_, _| {}).unwrap();
    for policy in [Policy::RandomTester, Policy::PartsSwapper, Policy::ByTheBook, Policy::NearFirst]
    {
        for seed in 1..=2 {
            let case = draw(&lime, seed, &any_case).unwrap();
            for minutes in [None, Some(40)] {
                let mut briefing = Briefing::clone(&case.briefing);
                if let Some(minutes) = minutes {
                    briefing.time_limit = TimeLimit::UpTo { minutes: Minutes(minutes) };
                }
                let briefing = Arc::new(briefing);
                let mut session =
                    Session::begin(Arc::clone(&briefing), case.hidden.clone()).unwrap();
                let mut apprentice = policy.apprentice(&briefing, &worlds, seed);
                assert!(work(&mut session, apprentice.as_mut()).unwrap(), "{policy:?} {seed}");
                let refused: Vec<&Refusal> =
                    session.log().iter().filter_map(|entry| refusal(&entry.events)).collect();
                let allowed = minutes.map_or(0, |_| 1);
                assert!(
                    refused.len() <= allowed && refused.iter().all(|it| **it == Refusal::TimeIsUp),
                    "{policy:?} {seed} {minutes:?}: {refused:?}"
                );
                assert_eq!(session.parts_off().count(), 0, "{policy:?} {seed}");
            }
        }
    }
}
