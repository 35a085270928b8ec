//! Where a job stands: looking for what is wrong, or showing that it is right now.

use crate::control_module::code::Code;
use crate::reasoning::belief::was_refused;
use crate::reasoning::remedy::Remedy;
use crate::session::attempt::Entry;
use crate::session::event::Event;
use crate::vehicle::run_record::Idling;
use std::collections::BTreeSet;

/// Where a job stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Stage {
    /// Looking for what is wrong: steps are weighed.
    Searching,
    /// A repair is done and is being proved, which is a duty.
    Proving {
        /// Codes have been cleared since the repair, so that a code or a lamp speaks of now.
        cleared: bool,
    },
}

impl Stage {
    /// Where it stands after an entry. A repair that is seen not to have ended the concern ends its own
    /// proof: codes are back, the lamp is on again, or the engine does not run as it should.
    pub(super) fn after(self, entry: &Entry, own: &BTreeSet<Code>) -> Self {
        if Remedy::in_step(&entry.step).is_some() && !was_refused(entry) {
            return Self::Proving { cleared: false };
        }
        let Self::Proving { mut cleared } = self else {
            return self;
        };
        for event in &entry.events {
            cleared |= *event == Event::CodesCleared;
            let shows_concern = match event {
                Event::Codes { stored, pending, .. } => {
                    cleared && stored.iter().chain(pending).any(|code| own.contains(code))
                }
                Event::Driven { engine_lamp, oil_lamp, quality, .. } => {
                    *oil_lamp || *quality != Idling::Smooth || (cleared && *engine_lamp)
                }
                Event::Idles { quality } => *quality != Idling::Smooth,
                _ => false,
            };
            if shows_concern {
                return Self::Searching;
            }
        }
        Self::Proving { cleared }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::session::step::Step;
    use crate::vehicle::spec::Id;

    fn after(stage: Stage, step: Step, events: Vec<Event>) -> Stage {
        stage.after(&Entry { step, events }, &BTreeSet::from([Code(0x0010)]))
    }

    fn codes(code: u16) -> Event {
        Event::Codes {
            stored: vec![Code(code)],
            pending: Vec::new(),
            permanent: Vec::new(),
            lamp: false,
            complete: Vec::new(),
        }
    }

    /// A code that was there before the clear says nothing of the repair, nor does one from elsewhere.
    #[test]
    fn closed_form_only_a_code_that_came_back_ends_a_proof() {
        let repair = Step::Clean { valve: Id::from("intake-valve") };
        let proving = after(Stage::Searching, repair, Vec::new());
        assert_eq!(proving, Stage::Proving { cleared: false });
        assert_eq!(after(proving, Step::ReadCodes, vec![codes(0x0010)]), proving);
        let cleared = after(proving, Step::ClearCodes, vec![Event::CodesCleared]);
        assert_eq!(after(cleared, Step::ReadCodes, vec![codes(0x0456)]), cleared);
        assert_eq!(after(cleared, Step::ReadCodes, vec![codes(0x0010)]), Stage::Searching);
        let rough = Event::Idles { quality: Idling::Rough };
        assert_eq!(after(proving, Step::Dipstick, vec![rough]), Stage::Searching);
        assert_eq!(after(Stage::Searching, Step::Dipstick, Vec::new()), Stage::Searching);
    }
}
