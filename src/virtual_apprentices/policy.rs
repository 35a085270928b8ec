//! The policies by name.

use super::by_the_book::ByTheBook;
use super::information_seeker::InformationSeeker;
use super::job::Job;
use super::near_first::NearFirst;
use super::parts_swapper::PartsSwapper;
use super::planner::Planner;
use super::random_tester::RandomTester;
use super::seen::VirtualApprentice;
use crate::numerics::streams::Streams;
use crate::reasoning::world::Worlds;
use crate::session::setup::Briefing;
use std::sync::Arc;

/// A way of finding a fault.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Policy {
    /// Takes tests at random and then guesses.
    RandomTester,
    /// Fits what the code names, then the next thing.
    PartsSwapper,
    /// Goes through the trade's sequence of tests, whatever the codes say is likely.
    ByTheBook,
    /// Weighs the evidence, and always takes the test that is nearest to hand.
    NearFirst,
    /// Weighs the evidence, and takes the test that tells most for its cost.
    InformationSeeker,
    /// Does what the expert of the debrief would do.
    Planner,
}

impl Policy {
    /// Every policy, in the order of the table.
    pub const ALL: [Self; 6] = [
        Self::RandomTester,
        Self::PartsSwapper,
        Self::ByTheBook,
        Self::NearFirst,
        Self::InformationSeeker,
        Self::Planner,
    ];

    /// The word by which options and files name it.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::RandomTester => "random",
            Self::PartsSwapper => "parts-swapper",
            Self::ByTheBook => "by-the-book",
            Self::NearFirst => "near-first",
            Self::InformationSeeker => "information-seeker",
            Self::Planner => "planner",
        }
    }

    /// The policy of a word.
    #[must_use]
    pub fn of_word(word: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|policy| policy.word() == word)
    }

    /// Somebody who works by this policy on one case. `worlds` is what the scenario says might be the
    /// truth, which only those who weigh evidence look at; `seed` makes every guess the same each time.
    #[must_use]
    pub fn apprentice(
        self,
        briefing: &Arc<Briefing>,
        worlds: &Worlds,
        seed: u64,
    ) -> Box<dyn VirtualApprentice> {
        let stream = || Streams::new(seed).stream(&format!("virtual apprentice {}", self.word()));
        match self {
            Self::RandomTester => Box::new(Job::new(RandomTester::new(stream(), briefing))),
            Self::PartsSwapper => Box::new(Job::new(PartsSwapper::default())),
            Self::ByTheBook => Box::new(Job::new(ByTheBook::default())),
            Self::NearFirst => Box::new(Job::new(NearFirst::new(briefing, worlds.clone()))),
            Self::InformationSeeker => {
                Box::new(Job::new(InformationSeeker::new(briefing, worlds.clone())))
            }
            Self::Planner => Box::new(Job::new(Planner::new(briefing, worlds.clone()))),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn limit_every_policy_is_found_by_its_own_word_alone() {
        for policy in Policy::ALL {
            assert_eq!(Policy::of_word(policy.word()), Some(policy));
        }
        assert_eq!(Policy::of_word("guesser"), None);
    }
}
