//! The bay as the desk lays it out: names, what is known of a place, and what can be done there.

use super::seen::marks;
use crate::scenario::load;
use crate::session::attempt::Session;
use crate::session::event::Sight;
use crate::session::step::Step;
use crate::vehicle::assembly::Obstacle;
use crate::vehicle::spec::{Care, Id, PartKind};
use crate::wording::at_place::lines_at;
use crate::wording::catalogue::Words;
use crate::wording::step_parser::parse;
use crate::wording::{place, refusal_words, sense_words};
use crate::workshop::bay::model::{Model, Thing};
use crate::workshop::view::bay::{BayView, CardView, Mark, PlaceView, StepAt};
use crate::workshop::view::case::LineView;
use std::sync::Arc;

/// The bay of the vehicle that the program carries, everything in place; nothing where its file is broken, which the
/// beginning of a case reports.
#[must_use]
pub fn showroom() -> Option<BayView> {
    let loaded = load::demo().ok()?;
    Some(BayView::new(Arc::new(Model::of(&loaded.vehicle)), Vec::new()))
}

/// The bay of a session as it stands.
#[must_use]
pub fn bay(session: &Session, words: &Words) -> BayView {
    let model = Arc::new(Model::of(&session.briefing().vehicle));
    let name = |thing: &Thing| PlaceView {
        id: thing.id.clone(),
        name: place::place(&thing.id, words),
        sort: thing.sort,
        is_off: false,
    };
    let places = model.things.iter().map(name).collect();
    let mut bay = BayView::new(model, places);
    follow(&mut bay, session);
    bay
}

/// Brings the bay to what is off and what was seen.
pub fn follow(bay: &mut BayView, session: &Session) {
    bay.known.off = session.parts_off().cloned().collect();
    bay.known.marks = marks(session.log(), &session.briefing().vehicle);
    // A look at a plug does not say which contact; so all of them are drawn as the worst.
    let connectors: Vec<Id> = bay.known.marks.keys().cloned().collect();
    for connector in connectors {
        let Some(found) = bay.known.marks.get(&connector).cloned() else { continue };
        let spec = &session.briefing().vehicle;
        if spec.part(&connector).is_some_and(|part| part.kind == PartKind::Connector) {
            for pin in spec.pins_at(&connector) {
                bay.known.marks.entry(pin.clone()).or_insert_with(|| found.clone());
            }
        }
    }
    for place in &mut bay.places {
        place.is_off = bay.known.off.contains(&place.id);
    }
}

/// Whether the line can go on with a place.
#[must_use]
pub fn fits(id: &Id, line: &LineView) -> bool {
    !line.text.trim().is_empty() && line.words.iter().any(|offer| offer.word == id.as_str())
}

/// What is known of a place and what can be done there.
#[must_use]
pub fn card(
    id: &Id,
    session: &Session,
    bay: &BayView,
    line: &LineView,
    words: &Words,
) -> Option<CardView> {
    let place = bay.place(id)?;
    let briefing = session.briefing();
    let spec = &briefing.vehicle;
    let assembly = session.vehicle_in_sight();
    let assembly = assembly.assembly();
    let part = spec.part(id);
    let mut state = Vec::new();
    if let Some(part) = part {
        let key = match (part.kind, place.is_off) {
            (PartKind::Connector, true) => "bay-unplugged",
            (PartKind::Connector, false) => "bay-plugged",
            (_, true) => "bay-on-the-bench",
            (_, false) => "bay-in-place",
        };
        state.push(words.say(key, &[]));
    }
    let found = bay.known.marks.get(id);
    state.extend(found.into_iter().flatten().map(|mark| found_on(*mark, words)));
    let obstacle = part.map_or_else(
        || spec.test_point(id).and_then(|point| assembly.obstacle_to_probing(point)),
        |part| {
            if place.is_off {
                assembly.obstacle_to_refitting(spec, &part.id)
            } else {
                assembly.obstacle_to_removing(spec, &part.id)
            }
        },
    );
    let blocked =
        obstacle.as_ref().map(|obstacle: &Obstacle| refusal_words::obstacle(obstacle, words));
    let mut steps = Vec::new();
    for at in lines_at(id, briefing) {
        let fits = match &at.step {
            Some(Step::Remove { .. } | Step::Unplug { .. }) => !place.is_off,
            Some(Step::Refit { .. } | Step::Plug { .. }) => place.is_off,
            _ => true,
        };
        if !fits {
            continue;
        }
        let meaning = words.say(at.meaning, &[]);
        let is_refit = matches!(at.step, Some(Step::Refit { .. }));
        let with_seal = format!("{} with new-seal", at.line);
        let wants_seal = part.is_some_and(|part| part.care.contains(&Care::NewSeal));
        let is_whole = at.step.is_some();
        steps.push(StepAt { line: at.line, meaning: meaning.clone(), is_whole });
        if is_refit && wants_seal && matches!(parse(&with_seal, briefing), Ok(Some(_))) {
            steps.push(StepAt { line: with_seal, meaning, is_whole });
        }
    }
    // Whole steps before begun ones.
    steps.sort_by_key(|step| !step.is_whole);
    Some(CardView {
        id: id.clone(),
        name: place.name.clone(),
        state,
        blocked,
        fits_line: fits(id, line),
        steps,
    })
}

fn found_on(mark: Mark, words: &Words) -> String {
    let sight = match mark {
        Mark::Corrosion => Sight::Corrosion,
        Mark::SpreadTerminal => Sight::SpreadTerminal,
        Mark::BlownFuse => Sight::BlownFuse,
        Mark::RubbedThrough => Sight::RubbedThrough,
        Mark::Sludge => Sight::Sludge,
        Mark::TornSeal => Sight::TornSeal,
        Mark::UsedSeal => Sight::UsedSeal,
        Mark::Varnish => Sight::SpoolSticks,
    };
    words.say("bay-seen", &[("sight", sense_words::sight(sight, words).into())])
}
