//! What the bay shows of hidden things: only what the events have told.
//!
//! The rule. What is off and what is unplugged is seen by anybody. A seal that tore under the hand is seen as it tears,
//! since an event says so then. Everything else on a part, in a plug or along a wire – sludge, varnish, corrosion, a
//! spread terminal, a burnt strip, a bare stretch, a flattened seal – is drawn from the look that found it, not before,
//! even if the part lies on the bench. A later look replaces what an earlier one found. Work that an event reports
//! takes away what it mends; work that was refused takes nothing away.

use crate::session::attempt::Entry;
use crate::session::event::{Event, Sight};
use crate::session::step::Step;
use crate::vehicle::spec::{Id, VehicleSpec};
use crate::workshop::view::bay::Mark;
use std::collections::{BTreeMap, BTreeSet};

/// What was found on what.
type Marks = BTreeMap<Id, BTreeSet<Mark>>;

/// What the log tells of the things in the bay.
#[must_use]
pub fn marks(log: &[Entry], spec: &VehicleSpec) -> Marks {
    let mut marks = Marks::new();
    for entry in log {
        if let Step::Look { place } = &entry.step {
            look(place, &entry.events, spec, &mut marks);
        }
        for event in &entry.events {
            follow(&entry.step, event, spec, &mut marks);
        }
    }
    marks.retain(|_, found| !found.is_empty());
    marks
}

/// A look at a place says everything that is to be seen there.
fn look(place: &Id, events: &[Event], spec: &VehicleSpec, marks: &mut Marks) {
    let sights: Vec<Sight> = events
        .iter()
        .filter_map(|event| match event {
            Event::Seen { sight, .. } => Some(*sight),
            _ => None,
        })
        .collect();
    // What is hidden is not looked at, and a look under the bonnet does not say where.
    if sights.is_empty() || sights.contains(&Sight::Hidden) || !is_thing(place, spec) {
        return;
    }
    let found: BTreeSet<Mark> = sights.into_iter().filter_map(mark_of).collect();
    // A look at a plug says that one of its contacts is green, not which; a sound plug has sound contacts.
    if found.is_empty() {
        for pin in spec.pins_at(place) {
            marks.remove(pin);
        }
    }
    marks.insert(place.clone(), found);
}

fn is_thing(place: &Id, spec: &VehicleSpec) -> bool {
    spec.part(place).is_some() || spec.element(place).is_some()
}

fn follow(step: &Step, event: &Event, spec: &VehicleSpec, marks: &mut Marks) {
    let mut take = |place: &Id, gone: &[Mark]| {
        if let Some(found) = marks.get_mut(place) {
            found.retain(|mark| !gone.contains(mark));
        }
    };
    match event {
        Event::SealTorn { valve } => {
            let found = marks.entry(valve.clone()).or_default();
            found.remove(&Mark::UsedSeal);
            found.insert(Mark::TornSeal);
        }
        Event::Cleaned { valve } => take(valve, &[Mark::Sludge, Mark::Varnish]),
        Event::Refitted { part } if matches!(step, Step::Refit { new_seal: true, .. }) => {
            take(part, &[Mark::TornSeal, Mark::UsedSeal]);
        }
        Event::Fitted { valve: place, .. } | Event::Replaced { element: place } => {
            marks.remove(place);
        }
        Event::Mended { element } => {
            marks.remove(element);
            // The plug was green because of this contact, as far as anybody knows until the next look.
            for connector in spec.parts.iter().map(|part| &part.id) {
                if spec.pins_at(connector).contains(&element) {
                    marks.remove(connector);
                }
            }
        }
        _ => {}
    }
}

const fn mark_of(sight: Sight) -> Option<Mark> {
    match sight {
        Sight::Corrosion => Some(Mark::Corrosion),
        Sight::SpreadTerminal => Some(Mark::SpreadTerminal),
        Sight::BlownFuse => Some(Mark::BlownFuse),
        Sight::RubbedThrough => Some(Mark::RubbedThrough),
        Sight::Sludge => Some(Mark::Sludge),
        Sight::TornSeal => Some(Mark::TornSeal),
        Sight::UsedSeal => Some(Mark::UsedSeal),
        Sight::SpoolSticks | Sight::SpoolSeized => Some(Mark::Varnish),
        Sight::Sound | Sight::Hidden => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::scenario::load;
    use crate::session::event::{Breach, Refusal};
    use crate::session::step::Manner;
    use crate::vehicle::spec::Care;

    fn id(name: &str) -> Id {
        Id::from(name)
    }

    fn seen(place: &str, sights: &[Sight]) -> Entry {
        let event = |sight: &Sight| Event::Seen { place: id(place), sight: *sight };
        Entry { step: Step::Look { place: id(place) }, events: sights.iter().map(event).collect() }
    }

    fn after(log: &[Entry]) -> Marks {
        marks(log, &load::demo().unwrap().vehicle)
    }

    fn only(place: &str, mark: Mark) -> Marks {
        Marks::from([(id(place), BTreeSet::from([mark]))])
    }

    #[test]
    fn limit_a_part_that_was_only_taken_off_shows_nothing() {
        let valve = id("intake-valve");
        let step = Step::Remove { part: valve.clone(), manner: Manner::Careful };
        let off = Entry { step, events: vec![Event::Removed { part: valve }] };
        assert_eq!(after(&[off]), Marks::new());
        assert_eq!(after(&[seen("intake-valve", &[Sight::Hidden])]), Marks::new());
        assert_eq!(after(&[seen("engine-bay", &[Sight::TornSeal])]), Marks::new());
    }

    #[test]
    fn closed_form_a_seal_that_tears_is_seen_at_once_and_gone_with_a_new_one() {
        let valve = id("intake-valve");
        let torn = Entry {
            step: Step::Remove { part: valve.clone(), manner: Manner::Pulled },
            events: vec![
                Event::AgainstCare { breach: Breach::Part(valve.clone(), Care::BreakSealLoose) },
                Event::SealTorn { valve: valve.clone() },
            ],
        };
        assert_eq!(after(std::slice::from_ref(&torn)), only("intake-valve", Mark::TornSeal));
        let refit = |new_seal: bool| Entry {
            step: Step::Refit { part: valve.clone(), new_seal },
            events: vec![Event::Refitted { part: valve.clone() }],
        };
        assert_eq!(after(&[torn.clone(), refit(false)]), only("intake-valve", Mark::TornSeal));
        assert_eq!(after(&[torn, refit(true)]), Marks::new());
    }

    #[test]
    fn closed_form_a_later_look_replaces_an_earlier_one_and_work_takes_away_what_it_mends() {
        let found = seen("intake-valve", &[Sight::Sludge, Sight::UsedSeal]);
        let clean = |events| Entry { step: Step::Clean { valve: id("intake-valve") }, events };
        let done = clean(vec![Event::Cleaned { valve: id("intake-valve") }]);
        assert_eq!(after(&[found.clone(), done]), only("intake-valve", Mark::UsedSeal));
        let refused = clean(vec![Event::Refused { reason: Refusal::EngineRuns }]);
        assert_eq!(after(&[found.clone(), refused])[&id("intake-valve")].len(), 2);
        let again = seen("intake-valve", &[Sight::Sound]);
        assert_eq!(after(&[found, again]), Marks::new());
    }

    #[test]
    fn closed_form_mending_a_contact_clears_its_plug() {
        let plug = seen("intake-connector", &[Sight::Corrosion]);
        assert_eq!(after(std::slice::from_ref(&plug)), only("intake-connector", Mark::Corrosion));
        let mended = Entry {
            step: Step::Mend { element: id("intake-feed-pin") },
            events: vec![Event::Mended { element: id("intake-feed-pin") }],
        };
        assert_eq!(after(&[plug, mended]), Marks::new());
    }
}
