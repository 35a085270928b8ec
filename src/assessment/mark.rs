//! A mark and what it rests on.

use super::rubric::MarkCategory;
use crate::control_module::code::Code;
use crate::faults::FaultName;
use crate::reasoning::expert::Proposal;
use crate::session::event::Breach;
use crate::session::step::Section;
use crate::vehicle::spec::Id;

/// One mark.
#[derive(Debug, Clone, PartialEq)]
pub struct Mark {
    /// What for.
    pub category: MarkCategory,
    /// Share of the points earned, 0 to 1.
    pub share: f64,
    /// What earned or lost it, in the order of the session.
    pub remarks: Vec<Remark>,
}

/// One piece of evidence for a mark.
#[derive(Debug, Clone, PartialEq)]
pub struct Remark {
    /// The entry of the log that it is about; `None` for something that never happened.
    pub entry: Option<usize>,
    /// What is remarked.
    pub about: About,
    /// Whether it speaks for the apprentice.
    pub good: bool,
}

/// What a remark says.
#[derive(Debug, Clone, PartialEq)]
pub enum About {
    /// A step cost more than the best one would have.
    Regret {
        /// How much more in expectation, at least [units of the currency].
        least: f64,
        /// At most.
        most: f64,
        /// What would have been best.
        best: Proposal,
    },
    /// A diagnosis or a repair came while its chance was low and tests were still worth their cost.
    Premature {
        /// Chance on the evidence that it is right, or mends something that is wrong [0 to 1].
        chance: f64,
        /// How much more it cost in expectation than the best, at least and at most [units of the
        /// currency]; `None` for a diagnosis, which costs nothing of itself.
        price: Option<(f64, f64)>,
        /// The test that would have been best.
        best: Proposal,
    },
    /// A test could tell nothing.
    Redundant {
        /// It was made before on the vehicle as it was; otherwise everything that may still be wrong would
        /// have shown the same.
        is_repeated: bool,
        /// What it cost [units of the currency].
        cost: f64,
    },
    /// Steps of which the expert's bounds say nothing; they do not count.
    NotTold {
        /// How many.
        count: usize,
        /// The most that any of them may have cost more than the best [units of the currency].
        most: f64,
    },
    /// No step cost more than it needed to.
    NoRegret,
    /// A part came off more than once.
    RemovedAgain(Id),
    /// Nothing came off twice.
    NoDetour,
    /// A prediction was met, or missed.
    Prediction {
        /// Met.
        met: bool,
    },
    /// The reading was of another quantity than the prediction: volts said, ohms read.
    OtherQuantity,
    /// What a test without a display showed was as predicted, or not.
    Sign {
        /// As predicted.
        met: bool,
    },
    /// Fewer predictions than three.
    FewPredictions(usize),
    /// A reading was taken in a way that spoils it, or care was broken.
    Breach(Breach),
    /// All readings were taken as they should be.
    SoundReadings,
    /// Confidences against the evidence.
    Confidence {
        /// Half the sum of squared differences, 0 best to 1.
        distance: f64,
    },
    /// No confidences were given before the diagnosis.
    NoConfidence,
    /// A repair with its chance on the evidence.
    Repair {
        /// Chance that it would take the fault away [0 to 1].
        chance: f64,
    },
    /// A part that went in brought a fault of its own: it was worn.
    WornPart {
        /// The fault.
        fault: FaultName,
    },
    /// One of several faults that were there together was mended, or was not.
    Part {
        /// The fault.
        fault: FaultName,
        /// Mended.
        is_mended: bool,
    },
    /// A fault was found and offered, and the customer has declined its repair.
    Declined {
        /// The fault.
        fault: FaultName,
    },
    /// The vehicle came back, or did not.
    CameBack {
        /// Came back.
        came_back: bool,
    },
    /// A part of the proof.
    Proof(ProofPart),
    /// Handed back as repaired before it was shown that the repair worked.
    ClosedUnproved,
    /// A code that no fault of this case has set was erased, with or without a word to the customer.
    Unrelated {
        /// The code.
        code: Code,
        /// The customer was told.
        reported: bool,
    },
    /// No rule of care was broken.
    NoBreach,
    /// Parts were left off.
    LeftOff(Id),
    /// A part of the record.
    Written(Section),
}

/// What makes up the proof of a repair.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum ProofPart {
    /// Codes and freeze frame read before they were cleared.
    Recorded,
    /// Codes cleared after the repair.
    Cleared,
    /// Key on afterwards: no circuit code came back.
    KeyOnCheck,
    /// A road test on which the monitors of the codes at issue ran and passed.
    RoadTest,
    /// Codes read again after the road test, and none of them back.
    Rescan,
    /// Where the customer has declined what is still wrong: the record written after that.
    Declined,
}

impl ProofPart {
    /// The parts of the proof of a repair, in the order of the work.
    pub const ALL: [Self; 5] =
        [Self::Recorded, Self::Cleared, Self::KeyOnCheck, Self::RoadTest, Self::Rescan];
}

/// What fails a session whatever the sum of its marks.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Critical {
    /// The engine was run without oil although the stick had shown it.
    Unsafe,
    /// Handed back as repaired without proof.
    Unproved,
    /// Handed back as repaired, and the customer comes back.
    NotRepaired,
}

impl Mark {
    pub(super) const fn new(category: MarkCategory, share: f64, remarks: Vec<Remark>) -> Self {
        Self { category, share: share.clamp(0.0, 1.0), remarks }
    }
}

impl Remark {
    pub(super) const fn good(entry: Option<usize>, about: About) -> Self {
        Self { entry, about, good: true }
    }

    pub(super) const fn bad(entry: Option<usize>, about: About) -> Self {
        Self { entry, about, good: false }
    }
}
