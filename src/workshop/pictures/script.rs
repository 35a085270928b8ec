//! What is done before each picture: the user's own actions, so that a picture shows what anybody can reach.

use crate::vehicle::spec::Id;
use crate::workshop::bay::camera::Viewpoint;
use crate::workshop::view::action::Action;
use crate::workshop::view::bay::BayAction;
use crate::workshop::view::case::Pane;
use crate::workshop::view::debrief::{DebriefAction, Side};
use crate::workshop::view::settings::{Motion, Shade, TextSize};
use std::collections::VecDeque;

/// The case of the pictures.
const SEED: &str = "2";
/// Its steps.
const STEPS: &str = include_str!("../../../assets/pictured/steps.txt");
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

/// Every picture in the order in which they are taken.
#[must_use]
pub fn shots() -> VecDeque<Shot> {
    let (first, rest) = STEPS.split_once(AT_WORK).unwrap_or((STEPS, ""));
    // The rest of the remark's own line is none of the steps.
    let rest = rest.split_once('\n').map_or("", |(_, rest)| rest);
    let place = |name: &str| Action::Bay(BayAction::GoTo(Id::from(name)));
    let shot = |name, actions: Vec<Action>| Shot { name, actions: actions.into() };
    let begin = [Action::SetMotion(Motion::None), Action::TypeSeed(SEED.to_owned()), Action::Begin];
    VecDeque::from([
        shot("front", Vec::new()),
        shot("settings", vec![Action::OpenSettings(true)]),
        shot("bay", [vec![Action::OpenSettings(false)], begin.into()].concat()),
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
        .flat_map(|line| [Action::TypeLine(line.to_owned()), Action::TakeStep])
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
