//! How far somebody has come in the round for the first time: told by the events alone, like everything that is known of
//! a session. It judges nothing; whatever order the tasks are done in is right.

use crate::session::attempt::Entry;
use crate::session::event::Event;
use crate::workshop::view::guide::{GuideView, Task};

/// The seed of the case that the round is made on, of the first scenario that the program carries.
pub const SEED: u64 = 7;

/// What a log shows to be done.
#[must_use]
pub fn progress(log: &[Entry]) -> GuideView {
    let mut guide = GuideView::default();
    for task in log.iter().flat_map(|entry| &entry.events).filter_map(task_of) {
        guide.done[task as usize] = true;
    }
    guide
}

/// The task that an event shows to be done.
const fn task_of(event: &Event) -> Option<Task> {
    match event {
        Event::JobSheetShown => Some(Task::Sheet),
        Event::Seen { .. } | Event::OilSeen { .. } => Some(Task::Look),
        Event::Reading { .. }
        | Event::Watched { .. }
        | Event::LampGlows { .. }
        | Event::Clamped { .. }
        | Event::Captured { .. }
        | Event::GaugeRead { .. } => Some(Task::Measure),
        Event::Suspected { .. } => Some(Task::Suspect),
        Event::Committed { .. }
        | Event::Fitted { .. }
        | Event::Cleaned { .. }
        | Event::Mended { .. }
        | Event::Replaced { .. }
        | Event::OilFilled { .. }
        | Event::OilChanged { .. } => Some(Task::Decide),
        Event::Driven { .. } => Some(Task::Prove),
        _ => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::workshop::desk::tests::taken_directly;

    #[test]
    fn replay_the_round_is_ticked_off_by_what_followed_and_not_by_what_was_tried() {
        let lines = [
            ("ask symptom", None),
            ("dipstick", Some(Task::Look)),
            ("read job-sheet", Some(Task::Sheet)),
            ("measure volts battery-plus battery-minus", Some(Task::Measure)),
            ("suspect low-oil sump 60%", Some(Task::Suspect)),
            ("commit low-oil sump", Some(Task::Decide)),
            ("drive town", Some(Task::Prove)),
        ];
        let taken = &lines.map(|(line, _)| line);
        let mut expected = GuideView::default();
        assert_eq!(expected.next(), Some(Task::Sheet));
        let session = taken_directly(SEED, taken);
        for (number, (line, task)) in lines.iter().enumerate() {
            if let Some(task) = task {
                expected.done[*task as usize] = true;
            }
            assert_eq!(progress(&session.log()[..=number]), expected, "{line}");
        }
        assert_eq!(expected.next(), None);
    }

    #[test]
    fn limit_a_refused_step_ticks_nothing_off() {
        // A valve under its cover cannot be taken hold of.
        let session = taken_directly(SEED, &["clean intake-valve"]);
        assert!(matches!(
            session.log()[0].events.as_slice(),
            [.., Event::Refused { .. }] | [Event::Refused { .. }, ..]
        ));
        assert_eq!(progress(session.log()), GuideView::default());
    }
}
