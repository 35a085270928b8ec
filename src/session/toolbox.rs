//! Which tools a case allows, and for how long.
//!
//! Eyes, hands, the dipstick and the code reader are always there: without the reader no repair could be proved.

use crate::session::step::{KeyPosition, Step};
use crate::units::Minutes;
use serde::{Deserialize, Serialize};
use std::collections::BTreeSet;

/// A tool that a case may leave out.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[cfg_attr(test, derive(schemars::JsonSchema))]
pub enum Tool {
    /// The multimeter, for readings and for watching while something is wiggled.
    Multimeter,
    /// The test lamp.
    TestLamp,
    /// The current probe.
    CurrentProbe,
    /// The scope.
    Scope,
    /// The oil pressure gauge.
    PressureGauge,
    /// The fused lead that powers a valve from the battery.
    PowerLead,
}

impl Tool {
    /// Every tool.
    pub const ALL: [Self; 6] = [
        Self::Multimeter,
        Self::TestLamp,
        Self::CurrentProbe,
        Self::Scope,
        Self::PressureGauge,
        Self::PowerLead,
    ];

    /// The word that scenarios call it by.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Multimeter => "Multimeter",
            Self::TestLamp => "TestLamp",
            Self::CurrentProbe => "CurrentProbe",
            Self::Scope => "Scope",
            Self::PressureGauge => "PressureGauge",
            Self::PowerLead => "PowerLead",
        }
    }

    /// The tool that a step cannot do without.
    #[must_use]
    pub const fn of(step: &Step) -> Option<Self> {
        match step {
            Step::Measure { .. }
            | Step::MeasureFromFront { .. }
            | Step::Wiggle { .. }
            | Step::ZeroLeads
            | Step::ReplaceMeterFuse => Some(Self::Multimeter),
            Step::TestLamp { .. } => Some(Self::TestLamp),
            Step::Clamp { .. } | Step::ZeroClamp => Some(Self::CurrentProbe),
            Step::Scope { .. } => Some(Self::Scope),
            Step::FitGauge | Step::ReadGauge { .. } | Step::RemoveGauge => {
                Some(Self::PressureGauge)
            }
            Step::Power { .. } => Some(Self::PowerLead),
            _ => None,
        }
    }
}

/// The tools of a case.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize)]
#[cfg_attr(test, derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub enum Tools {
    /// Everything that the workshop has.
    #[default]
    All,
    /// These, beside eyes, hands, the dipstick and the code reader.
    Only(BTreeSet<Tool>),
}

impl Tools {
    /// Whether a tool is there.
    #[must_use]
    pub fn has(&self, tool: Tool) -> bool {
        match self {
            Self::All => true,
            Self::Only(tools) => tools.contains(&tool),
        }
    }

    /// Whether a step can be taken with what is there.
    #[must_use]
    pub fn allow(&self, step: &Step) -> bool {
        Tool::of(step).is_none_or(|tool| self.has(tool))
    }

    /// What is there, in the order of [`Tool::ALL`].
    pub fn there(&self) -> impl Iterator<Item = Tool> + '_ {
        Tool::ALL.into_iter().filter(|tool| self.has(*tool))
    }
}

/// How long an apprentice may work.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[cfg_attr(test, derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub enum TimeLimit {
    /// As long as it takes.
    #[default]
    None,
    /// So much working time on the till. The step that passes it is still finished; after it the vehicle can only be closed
    /// up, written up and handed back. Waiting for a part does not count.
    UpTo {
        /// The limit [min].
        minutes: Minutes,
    },
}

impl TimeLimit {
    /// Working time that is left; `None` without a limit.
    #[must_use]
    pub fn left(self, spent: Minutes) -> Option<Minutes> {
        match self {
            Self::None => None,
            Self::UpTo { minutes } => Some(Minutes(minutes.0.saturating_sub(spent.0))),
        }
    }

    /// Whether a step comes too late after so much working time. What closes up, writes up and hands back never does, nor
    /// what is read and noted without touching the vehicle.
    #[must_use]
    pub fn is_over_for(self, step: &Step, spent: Minutes) -> bool {
        let may_always = matches!(
            step,
            Step::ReadJobSheet
                | Step::Refit { .. }
                | Step::Plug { .. }
                | Step::Key { position: KeyPosition::Off }
                | Step::RemoveGauge
                | Step::Suspect { .. }
                | Step::Note { .. }
                | Step::Commit { .. }
                | Step::Write { .. }
                | Step::ReportCode { .. }
                | Step::HandOver { .. }
        );
        !may_always && self.left(spent) == Some(Minutes(0))
    }
}
