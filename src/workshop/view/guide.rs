//! The round for whoever is here for the first time.

/// Something to try. The order is that in which it is offered.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Task {
    /// Read the job sheet.
    Sheet,
    /// Look at something.
    Look,
    /// Take a reading.
    Measure,
    /// Name a suspect.
    Suspect,
    /// Commit to a diagnosis, or repair something.
    Decide,
    /// Prove it on the road.
    Prove,
}

impl Task {
    /// Every task in its order.
    pub const ALL: [Self; 6] =
        [Self::Sheet, Self::Look, Self::Measure, Self::Suspect, Self::Decide, Self::Prove];
}

/// How far somebody has come in the round.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct GuideView {
    /// Which of [`Task::ALL`] are done.
    pub done: [bool; Task::ALL.len()],
}

impl GuideView {
    /// Whether a task is done.
    #[must_use]
    pub const fn is_done(self, task: Task) -> bool {
        self.done[task as usize]
    }

    /// The next thing to try; nothing when everything was tried.
    #[must_use]
    pub fn next(self) -> Option<Task> {
        Task::ALL.into_iter().find(|task| !self.is_done(*task))
    }
}
