//! What is done before each picture: the user's own actions, so that a picture shows what anybody can reach.

use crate::scenario::load::ScenarioText;
use crate::scenario::writing::starters::starters;
use crate::vehicle::spec::Id;
use crate::workshop::bay::camera::Viewpoint;
use crate::workshop::view::action::Action;
use crate::workshop::view::bay::BayAction;
use crate::workshop::view::case::Pane;
use crate::workshop::view::counter::Trade;
use crate::workshop::view::debrief::{DebriefAction, Side};
use crate::workshop::view::road::RoadAction;
use crate::workshop::view::settings::{Contrast, Motion, Shade, TextSize};
use crate::workshop::view::tray::{Tool, TrayAction};
use crate::workshop::view::writer::{Section, WriterAction};
use std::collections::VecDeque;

/// The case of the pictures.
const SEED: &str = "2";
/// Its steps.
const STEPS: &str = include_str!("../../../assets/pictured/steps.txt");
/// The scenario whose counter has more than the maker's own parts.
const COUNTER_OF: &str = "corn-exchange";
/// The remark before which the case is pictured at work.
const AT_WORK: &str = "# A picture of the case";

/// A picture with what is done for it.
#[derive(Debug, Clone, PartialEq)]
pub struct Shot {
    /// Name of its file, without ending.
    pub name: &'static str,
    /// What is done before it is taken, one after the other, each when the one before has had its effect.
    pub actions: VecDeque<Action>,
}

/// Steps with each instrument in turn; a line that begins with a sign of equality names a picture that is taken there.
const INSTRUMENTS: &str = include_str!("../../../assets/pictured/instruments.txt");
/// Names of the pictures that [`INSTRUMENTS`] asks for, with what is in hand on each.
const IN_HAND: [(&str, Tool); 10] = [
    ("meter", Tool::Meter),
    ("lamp", Tool::Lamp),
    ("clamp", Tool::Clamp),
    ("power", Tool::Power),
    ("scope", Tool::Scope),
    ("reader", Tool::Reader),
    ("results", Tool::Reader),
    ("gauge", Tool::Gauge),
    ("stick", Tool::Dipstick),
    ("road", Tool::Drive),
];

/// Every picture in the order in which they are taken.
#[must_use]
pub fn shots() -> VecDeque<Shot> {
    let mut shots = pages();
    shots.extend(instruments());
    shots.extend(kinds_of_reader());
    shots.extend(terms());
    shots
}

/// A case with tools, time and parts of its own, at both sizes of the text, and where they are written.
fn terms() -> [Shot; 5] {
    let shot = |name, actions: Vec<Action>| Shot { name, actions: actions.into() };
    let number = ScenarioText::carried().iter().position(|it| it.scenario_name == COUNTER_OF);
    let begun = starters().iter().position(|it| it.name == COUNTER_OF);
    let line = |text: &str| [Action::TypeLine(text.to_owned()), Action::TakeStep];
    let mut open = vec![
        Action::SetShade(Shade::Light),
        Action::SetContrast(Contrast::Ordinary),
        Action::ToFront,
        Action::ChooseScenario(number.unwrap_or_default()),
        Action::TypeSeed(SEED.to_owned()),
        Action::Begin,
    ];
    open.extend(line("note Dry all round, no sludge on the stick"));
    open.extend(line("ask approval"));
    open.extend([
        Action::Tray(TrayAction::Show(true)),
        Action::Tray(TrayAction::Take(Tool::Counter)),
        Action::Tray(TrayAction::SetTrade(Trade::Parts)),
    ]);
    [
        shot("counter", open),
        shot("notes", vec![Action::ShowPane(Pane::Log)]),
        shot(
            "counter-large",
            vec![Action::SetText(TextSize::Double), Action::ShowPane(Pane::Tray)],
        ),
        shot(
            "terms",
            vec![
                Action::SetText(TextSize::Normal),
                Action::ToFront,
                Action::Writer(WriterAction::Open),
                Action::Writer(WriterAction::Begin(begun.unwrap_or_default())),
                Action::Writer(WriterAction::Show(Section::Prices)),
            ],
        ),
        shot("terms-large", vec![Action::SetText(TextSize::Double)]),
    ]
}

/// Each instrument in hand, with what it has just shown; the last one is on the road.
fn instruments() -> Vec<Shot> {
    let mut before = vec![Action::ToFront, Action::TypeSeed(SEED.to_owned()), Action::Begin];
    before.push(Action::Tray(TrayAction::Show(true)));
    let mut shots = Vec::new();
    for part in INSTRUMENTS.split_inclusive('\n') {
        if let Some(wanted) = part.strip_prefix("= ")
            && let Some((name, tool)) = IN_HAND.into_iter().find(|(name, _)| *name == wanted.trim())
        {
            before.push(Action::Tray(TrayAction::Take(tool)));
            shots.push(Shot { name, actions: std::mem::take(&mut before).into() });
        } else {
            // The one that drives is pictured on its way.
            before.extend(steps(part).into_iter().filter(|it| !matches!(it, Action::Road(_))));
        }
    }
    shots
}

/// The same for readers of another language, of high contrast, and for whoever is here for the first time.
fn kinds_of_reader() -> [Shot; 5] {
    let shot = |name, actions: Vec<Action>| Shot { name, actions: actions.into() };
    [
        shot(
            "german",
            vec![
                Action::Road(RoadAction::ToTheEnd),
                Action::SetLanguage("de"),
                Action::Tray(TrayAction::Take(Tool::Meter)),
            ],
        ),
        shot("german-front", vec![Action::ToFront]),
        shot("round", vec![Action::SetLanguage("en-GB"), Action::BeginGuide]),
        shot("contrast", vec![Action::SetContrast(Contrast::High)]),
        shot("contrast-dark", vec![Action::SetShade(Shade::Dark), Action::ShowPane(Pane::Log)]),
    ]
}

/// The pages, on a case of their own.
fn pages() -> VecDeque<Shot> {
    let (first, rest) = STEPS.split_once(AT_WORK).unwrap_or((STEPS, ""));
    // The rest of the remark's own line is none of the steps.
    let rest = rest.split_once('\n').map_or("", |(_, rest)| rest);
    let place = |name: &str| Action::Bay(BayAction::GoTo(Id::from(name)));
    let shot = |name, actions: Vec<Action>| Shot { name, actions: actions.into() };
    let begin = [Action::SetMotion(Motion::None), Action::TypeSeed(SEED.to_owned()), Action::Begin];
    VecDeque::from([
        shot("front", Vec::new()),
        shot("settings", vec![Action::OpenSettings(true)]),
        shot(
            "writer",
            vec![
                Action::OpenSettings(false),
                Action::Writer(WriterAction::Open),
                Action::Writer(WriterAction::Begin(0)),
                Action::Writer(WriterAction::Show(Section::Faults)),
            ],
        ),
        shot("bay", [vec![Action::ToFront], begin.into()].concat()),
        shot("valve", [steps(first), vec![place("exhaust-valve")]].concat()),
        shot("at-work", vec![Action::Bay(BayAction::View(Viewpoint::Bench))]),
        shot("log", vec![Action::ShowPane(Pane::Log)]),
        shot(
            "large",
            vec![
                Action::SetText(TextSize::Double),
                Action::ShowPane(Pane::Bay),
                place("exhaust-connector"),
            ],
        ),
        shot(
            "dark",
            vec![
                Action::SetText(TextSize::Normal),
                Action::SetShade(Shade::Dark),
                Action::Bay(BayAction::View(Viewpoint::Whole)),
            ],
        ),
        shot("debrief", [vec![Action::SetShade(Shade::Light)], steps(rest)].concat()),
        shot(
            "steps",
            vec![
                Action::Debrief(DebriefAction::Show(Side::Steps)),
                Action::Debrief(DebriefAction::GoTo(10)),
                Action::Debrief(DebriefAction::AskOthers),
            ],
        ),
    ])
}

/// The lines of a text as steps that are typed and taken.
fn steps(text: &str) -> Vec<Action> {
    text.lines()
        .filter(|line| !line.is_empty() && !line.starts_with('#'))
        .flat_map(|line| {
            let end = line.starts_with("drive ").then_some(Action::Road(RoadAction::ToTheEnd));
            [Action::TypeLine(line.to_owned()), Action::TakeStep].into_iter().chain(end)
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::scenario::deal::deal;
    use crate::scenario::load;
    use crate::session::attempt::Session;
    use crate::session::event::Event;
    use crate::wording::step_parser::parse;
    use std::collections::BTreeSet;
    use std::sync::Arc;

    #[test]
    fn limit_every_picture_has_a_name_of_its_own() {
        let names: BTreeSet<&str> = shots().iter().map(|shot| shot.name).collect();
        assert_eq!(names.len(), shots().len());
    }

    #[test]
    fn limit_every_step_with_an_instrument_can_be_taken_and_every_picture_is_asked_for() {
        let case = deal(&Arc::new(load::demo().unwrap()), SEED.parse().unwrap()).unwrap();
        let mut session = Session::begin(Arc::clone(&case.briefing), case.hidden.clone()).unwrap();
        let is_step = |line: &&str| !line.starts_with(['#', '=']);
        for line in INSTRUMENTS.lines().filter(is_step) {
            let events = session.take(&parse(line, &case.briefing).unwrap().unwrap()).unwrap();
            let refused = events.iter().find(|event| matches!(event, Event::Refused { .. }));
            assert_eq!(refused, None, "{line}");
        }
        let names: Vec<&str> = instruments().iter().map(|shot| shot.name).collect();
        assert_eq!(names, IN_HAND.map(|(name, _)| name));
    }

    #[test]
    fn limit_every_step_of_the_pictures_can_be_taken_and_hands_the_vehicle_over() {
        let case = deal(&Arc::new(load::demo().unwrap()), SEED.parse().unwrap()).unwrap();
        let mut session = Session::begin(Arc::clone(&case.briefing), case.hidden.clone()).unwrap();
        for line in STEPS.lines().filter(|line| !line.is_empty() && !line.starts_with('#')) {
            let events = session.take(&parse(line, &case.briefing).unwrap().unwrap()).unwrap();
            let refused = events.iter().find(|event| matches!(event, Event::Refused { .. }));
            assert_eq!(refused, None, "{line}");
        }
        assert!(session.ending().is_some());
        assert!(STEPS.contains(AT_WORK));
    }
}
