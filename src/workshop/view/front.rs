//! The front page.

use crate::scenario::schema::Level;
use std::path::PathBuf;

/// What the front page shows.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct FrontView {
    /// Nobody has used the program here yet, as far as it knows.
    pub is_first_start: bool,
    /// What is to be done with the session of a sealed case that was just handed over, or that was asked for again.
    pub handed_over: Option<String>,
    /// The scenarios that a case can be begun of.
    pub scenarios: Vec<ScenarioView>,
    /// Which of them is chosen.
    pub chosen: usize,
    /// What the field for a scenario file holds.
    pub file: String,
    /// Whether the case will be an assessed one.
    pub is_assessed: bool,
    /// What the seed field holds.
    pub seed: String,
    /// Why that is no seed.
    pub seed_problem: Option<String>,
    /// The sessions that are kept, the newest first; nothing while they are looked for.
    pub kept: Option<Vec<KeptFile>>,
}

impl FrontView {
    /// Whether the chosen scenario can only be worked to be assessed.
    #[must_use]
    pub fn must_be_assessed(&self) -> bool {
        self.scenarios.get(self.chosen).is_some_and(|scenario| scenario.is_always_assessed)
    }

    /// Whether the chosen one is a sealed case, of which nobody chooses the seed.
    #[must_use]
    pub fn is_sealed(&self) -> bool {
        self.scenarios.get(self.chosen).is_some_and(|scenario| scenario.sealed_for.is_some())
    }
}

/// A scenario, as it is offered.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ScenarioView {
    /// Its title.
    pub title: String,
    /// One sentence on it.
    pub about: String,
    /// How much it asks; a sealed case does not say.
    pub level: Option<Level>,
    /// The file of the user's that it comes from.
    pub file: Option<String>,
    /// Its author wants every session assessed.
    pub is_always_assessed: bool,
    /// Whom it was sealed for, where it is a sealed case.
    pub sealed_for: Option<String>,
}

/// A session file.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct KeptFile {
    /// Where it is.
    pub path: PathBuf,
    /// Its name, without folder and ending.
    pub name: String,
    /// What is known of it.
    pub state: KeptState,
    /// How long ago it was written; nothing where the clock says that it will be.
    pub age: Option<Age>,
}

/// What is known of a session file.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum KeptState {
    /// Not handed over yet.
    Unfinished {
        /// Steps taken.
        steps: usize,
        /// It is an assessed one.
        is_assessed: bool,
    },
    /// Handed over.
    Finished {
        /// Steps taken.
        steps: usize,
        /// It is an assessed one.
        is_assessed: bool,
    },
    /// Handed over under a seal, which only its assessor opens.
    Sealed {
        /// Steps taken.
        steps: usize,
    },
    /// It cannot be used, and why.
    Broken(String),
}

/// How long ago something was, as people say it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Age {
    /// Less than a minute.
    Now,
    /// Whole minutes.
    Minutes(u64),
    /// Whole hours.
    Hours(u64),
    /// Whole days.
    Days(u64),
}

impl Age {
    /// From seconds.
    #[must_use]
    pub const fn of_seconds(seconds: u64) -> Self {
        match seconds {
            0..60 => Self::Now,
            60..3_600 => Self::Minutes(seconds / 60),
            3_600..86_400 => Self::Hours(seconds / 3_600),
            _ => Self::Days(seconds / 86_400),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::Age;

    #[test]
    fn limit_an_age_is_said_in_the_greatest_whole_unit() {
        for (seconds, age) in [
            (0, Age::Now),
            (59, Age::Now),
            (60, Age::Minutes(1)),
            (3_599, Age::Minutes(59)),
            (3_600, Age::Hours(1)),
            (86_399, Age::Hours(23)),
            (86_400, Age::Days(1)),
            (u64::MAX, Age::Days(u64::MAX / 86_400)),
        ] {
            assert_eq!(Age::of_seconds(seconds), age);
        }
    }
}
