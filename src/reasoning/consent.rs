//! What the customer has agreed to, as far as a log tells.
//!
//! A customer who names a limit speaks of the repair alone: its work and its things, not of finding the fault. What is left
//! of it follows from the log; what a repair would take of it from the price list. Nobody knows the limit before asking.

use super::belief::was_refused;
use super::remedy::Remedy;
use super::tariff::work_price;
use crate::session::attempt::Entry;
use crate::session::event::Event;
use crate::session::setup::Briefing;
use crate::session::step::Step;
use crate::units::Money;

/// Where the customer and the workshop stand.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Consent {
    /// Nobody has asked.
    NotAsked,
    /// Whatever it takes.
    Everything,
    /// Up to a limit.
    UpTo {
        /// What is left of it; below zero once more was done.
        left: Money,
        /// Asked for more, the customer has said no.
        is_final: bool,
    },
}

impl Consent {
    /// What a log tells.
    #[must_use]
    pub fn of(log: &[Entry], briefing: &Briefing) -> Self {
        let mut consent = Self::NotAsked;
        for entry in log {
            for event in &entry.events {
                match event {
                    Event::Approved => consent = Self::Everything,
                    Event::ApprovedUpTo { money } => {
                        consent = Self::UpTo { left: *money, is_final: false };
                    }
                    Event::MoreDeclined { left } => {
                        consent = Self::UpTo { left: *left, is_final: true };
                    }
                    _ => {}
                }
            }
            if let Self::UpTo { left, .. } = &mut consent
                && Remedy::in_step(&entry.step).is_some()
                && !matches!(entry.step, Step::TopUpOil)
                && !was_refused(entry)
            {
                let labour = briefing.prices.labour_per_hour;
                for event in &entry.events {
                    if let Event::Spent { minutes, money } = event {
                        left.0 -= (minutes.at_rate(labour) + *money).0;
                    }
                }
            }
        }
        consent
    }

    /// Whether a repair lies within it. Filling up oil is asked of nobody.
    #[must_use]
    pub fn covers(self, remedy: &Remedy, briefing: &Briefing) -> bool {
        match self {
            Self::NotAsked => false,
            Self::Everything => true,
            Self::UpTo { left, .. } => price(remedy, briefing) <= left,
        }
    }

    /// Whether the customer was asked for more and has declined what this repair would take.
    #[must_use]
    pub fn declines(self, remedy: &Remedy, briefing: &Briefing) -> bool {
        matches!(self, Self::UpTo { is_final: true, .. }) && !self.covers(remedy, briefing)
    }
}

/// What a repair takes of a customer's limit.
fn price(remedy: &Remedy, briefing: &Briefing) -> Money {
    match remedy {
        Remedy::TopUp => Money(0),
        Remedy::Together(parts) => parts.iter().map(|part| price(part, briefing)).sum(),
        remedy => {
            let steps = remedy.work(briefing);
            steps.iter().map(|step| work_price(briefing, step)).sum()
        }
    }
}
