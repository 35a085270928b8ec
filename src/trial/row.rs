//! What came of one session.

use crate::assessment::debrief::Debrief;
use crate::assessment::mark::{About, Critical};
use crate::assessment::rubric::MarkCategory;
use crate::reasoning::plan::budget::Bounds;
use crate::session::step::Ending;
use crate::units::Money;
use crate::virtual_apprentices::policy::Policy;

/// How a session came out.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Outcome {
    /// Handed back as repaired, and the customer does not come back.
    Repaired,
    /// Handed back with no fault found, and the customer does not come back.
    NoFaultFound,
    /// Handed back as repaired or without a fault, and the customer comes back.
    CameBack,
    /// Handed to somebody else.
    Referred,
    /// Handed back with nothing wrong but what was found and offered, and the customer has declined.
    Declined,
    /// Not handed back after the most steps that an apprentice may take.
    Unfinished,
}

impl Outcome {
    /// Every outcome.
    pub const ALL: [Self; 6] = [
        Self::Repaired,
        Self::NoFaultFound,
        Self::CameBack,
        Self::Referred,
        Self::Declined,
        Self::Unfinished,
    ];

    /// The word by which files name it.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Repaired => "repaired",
            Self::NoFaultFound => "no-fault-found",
            Self::CameBack => "came-back",
            Self::Referred => "referred",
            Self::Declined => "declined",
            Self::Unfinished => "unfinished",
        }
    }

    /// The outcome of a word.
    #[must_use]
    pub fn of_word(word: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|outcome| outcome.word() == word)
    }

    /// The outcome of an ending; `None` for a session that did not end. `is_settled` says that all that is still wrong was
    /// found, offered and declined.
    #[must_use]
    pub const fn of(ending: Option<Ending>, comes_back: bool, is_settled: bool) -> Self {
        match ending {
            Some(Ending::Declined) if is_settled => Self::Declined,
            None => Self::Unfinished,
            Some(Ending::Repaired | Ending::NoFaultFound) if comes_back => Self::CameBack,
            Some(Ending::Repaired) => Self::Repaired,
            Some(Ending::NoFaultFound) => Self::NoFaultFound,
            Some(Ending::Referred | Ending::Unsafe | Ending::Declined) => Self::Referred,
        }
    }

    /// Whether the vehicle went back as it should.
    #[must_use]
    pub const fn is_right(self) -> bool {
        matches!(self, Self::Repaired | Self::NoFaultFound | Self::Declined)
    }
}

/// What the rubric says of a session.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Judged {
    /// Points out of a hundred.
    pub total: f64,
    /// Share earned of each category, 0 to 1, in the order of [`MarkCategory::ALL`].
    pub shares: [f64; MarkCategory::ALL.len()],
    /// Every part of the proof was shown.
    pub proved: bool,
    /// Handed back as repaired without codes cleared and a road test that ran the monitors.
    pub unproved: bool,
    /// The pass line was reached and nothing critical happened.
    pub passed: bool,
    /// Sum of the expert's regrets, as far as they are shown and at most [units of the currency]; `None` for
    /// a session that nobody finished, at which no expert has looked.
    pub regret: Option<Bounds>,
    /// Expected cost of the job at the start under the expert's plan [units of the currency]; `None` as
    /// before.
    pub value: Option<Bounds>,
}

impl Judged {
    /// The figures of a debrief.
    #[must_use]
    pub fn of(debrief: &Debrief) -> Self {
        let share = |category| {
            debrief.marks.iter().find(|mark| mark.category == category).map_or(0.0, |m| m.share)
        };
        let remarks = debrief.marks.iter().flat_map(|mark| &mark.remarks);
        let of_proof = remarks.filter(|remark| matches!(remark.about, About::Proof(_)));
        let (mut shown, mut missing) = (0, 0);
        for remark in of_proof {
            shown += usize::from(remark.good);
            missing += usize::from(!remark.good);
        }
        Self {
            total: debrief.total,
            shares: MarkCategory::ALL.map(share),
            proved: shown > 0 && missing == 0,
            unproved: debrief.critical.contains(&Critical::Unproved),
            passed: debrief.passed,
            regret: Some(Bounds {
                lower: debrief.review.total_regret(),
                upper: debrief.review.total_regret_at_most(),
            }),
            value: Some(debrief.review.value_at_start),
        }
    }

    /// The figures of a session that was never finished: nothing is earned.
    #[must_use]
    pub const fn of_unfinished() -> Self {
        Self {
            total: 0.0,
            shares: [0.0; MarkCategory::ALL.len()],
            proved: false,
            unproved: true,
            passed: false,
            regret: None,
            value: None,
        }
    }
}

/// One session of one policy on one case.
#[derive(Debug, Clone, PartialEq)]
pub struct Row {
    /// Seed of the case.
    pub seed: u64,
    /// Who worked it.
    pub policy: Policy,
    /// The faults that were there, each as kind and place, joined by a plus; empty for none.
    pub fault: String,
    /// How it came out.
    pub outcome: Outcome,
    /// Steps taken.
    pub steps: u32,
    /// Repairs that were done.
    pub repairs: u32,
    /// Working time [min].
    pub minutes: u32,
    /// Things bought.
    pub things: Money,
    /// Time and things together, at the labour rate.
    pub spent: Money,
    /// What the come-back costs; nothing where there is none.
    pub comeback: Money,
    /// What the rubric says; `None` where it was not asked.
    pub judged: Option<Judged>,
}

impl Row {
    /// The place of a row in every table.
    #[must_use]
    pub const fn place(&self) -> (u64, Policy) {
        (self.seed, self.policy)
    }

    /// What the case cost in all [units of the currency].
    #[must_use]
    pub fn cost(&self) -> f64 {
        (self.spent + self.comeback).as_units()
    }
}

/// Rows of one scenario, in their order of seed and policy, with what they belong to.
#[derive(Debug, Clone, PartialEq)]
pub struct Rows {
    /// Which trial they belong to.
    pub of: Origin,
    /// The rows.
    pub rows: Vec<Row>,
}

/// What a row's figures hang on besides seed and policy: rows of different origins are not comparable.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub struct Origin {
    /// Name of the scenario.
    pub scenario: String,
    /// Fingerprint of the texts of scenario and vehicle.
    pub fingerprint: String,
    /// Sign of the currency of every amount.
    pub currency: String,
    /// Version of the program.
    pub program: String,
}
