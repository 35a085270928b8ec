//! What is doubtful about a file that can be used.
//!
//! A warning is a [`Problem`] of another kind: it has the same place in a text, and stops nothing.

use super::problem::Problem;
use crate::faults::FaultName;
use crate::units::Money;
use crate::vehicle::spec::Id;
use serde::Serialize;

/// One thing that is doubtful about a scenario.
pub type Warning = Problem<WarningKind>;

/// What is doubtful.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case", tag = "warning")]
pub enum WarningKind {
    /// A fault whose weight is zero: no case ever has it.
    NeverDrawn,
    /// The list has one entry that can be drawn, so there is nothing to find out.
    OnlyFault,
    /// One entry is drawn more often than all the others together: a guess is right more often than not.
    Dominates {
        /// Share of all draws, 0 to 1.
        share: f64,
    },
    /// More often than not the vehicle is sound.
    MostlySound {
        /// Share of all draws, 0 to 1.
        share: f64,
    },
    /// Something that costs nothing, so that its use is never weighed.
    FreeOfCharge,
    /// A come-back that is cheaper than a part: to hand back what is not mended may be the cheapest way.
    CheapComeback {
        /// The part.
        part_number: Id,
        /// Its price.
        price: Money,
    },
    /// The job sheet names a fault that can be drawn, in words.
    NamesFault {
        /// The words, as they stand there.
        words: String,
        /// The fault.
        fault: FaultName,
    },
    /// The job sheet names the place of a fault, and other faults that can be drawn are elsewhere.
    NamesPlace {
        /// The words, as they stand there.
        words: String,
        /// The place.
        place: Id,
    },
    /// A decoy that is never there.
    NeverThere,
    /// Every session passes.
    AlwaysPassed,
    /// Only a session without any fault of its own passes.
    HardlyPassed,
    /// No sentence for whoever chooses among scenarios.
    NoAbout,
    /// No note for instructors.
    NoTeaching,
    /// A fault that the customer never notices, at any severity it can have: no case is dealt with it.
    NeverNoticed {
        /// The faults of the entry.
        faults: Vec<FaultName>,
    },
    /// A fault that no affordable test tells from another: cases with it may be refused.
    NotTold {
        /// The faults of the entry.
        faults: Vec<FaultName>,
        /// What it is not told from; none for a sound vehicle.
        rival: Vec<FaultName>,
    },
}
